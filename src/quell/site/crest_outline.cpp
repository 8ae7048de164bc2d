#include "quell/site/crest_outline.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <numbers>

#include "quell/hydraulics/crest_upstream.h"

namespace quell::site {
namespace {

constexpr int curve_points = 24;

void add_ogee(std::vector<OutlinePoint>& outline, const Crest& crest, double chute_slope) {
  const auto face = face_slope(crest.upstream_face);
  std::array<hydraulics::CrestPoint, curve_points / 2 + 1> quadrant{};
  hydraulics::crest_upstream_outline(crest.design_head, face, quadrant);
  const auto& start = quadrant.front();
  const double below = crest.approach_depth - start.y;
  if (below > 0.0) {
    const double run = face == hydraulics::FaceSlope::vertical ? 0.0 : below / std::tan(hydraulics::face_inclination(face));
    outline.push_back({start.x - run, crest.crest_level - crest.approach_depth});
  }
  for (const auto& point : quadrant)
    if (point.y <= crest.approach_depth) outline.push_back({point.x, crest.crest_level - point.y});
  const double end = hydraulics::crest_tangent_point(crest.design_head, chute_slope, face).x;
  for (int i = 1; i <= curve_points; ++i) {
    const double x = end * i / curve_points;
    outline.push_back({x, crest.crest_level - hydraulics::crest_profile({.x = x, .Hd = crest.design_head, .face = face})});
  }
}

void add_broad(std::vector<OutlinePoint>& outline, const Crest& crest) {
  const double upstream = -crest.crest_length;
  outline.push_back({upstream, crest.crest_level - crest.approach_depth});
  const double radius = crest.edge == CrestEdge::rounded ? std::min(0.1 * crest.crest_length, 0.5 * crest.approach_depth) : 0.0;
  const int arc_points = radius > 0.0 ? curve_points / 4 : 0;
  for (int i = 0; i < arc_points; ++i) {
    const double angle = std::numbers::pi / 2.0 * i / arc_points;
    outline.push_back({upstream + radius * (1.0 - std::cos(angle)), crest.crest_level - radius * (1.0 - std::sin(angle))});
  }
  outline.push_back({upstream + radius, crest.crest_level});
  outline.push_back({0.0, crest.crest_level});
}

/// Upright wall whose downstream side stands at the start of the chute, with a half-round or a level top.
void add_wall(std::vector<OutlinePoint>& outline, const Crest& crest, double thickness, bool is_round) {
  const double radius = is_round ? thickness / 2.0 : 0.0;
  outline.push_back({-thickness, crest.crest_level - crest.approach_depth});
  if (is_round) {
    for (int i = 0; i <= curve_points / 2; ++i) {
      const double angle = std::numbers::pi * (1.0 - 2.0 * i / curve_points);
      outline.push_back({-radius + radius * std::cos(angle), crest.crest_level - radius + radius * std::sin(angle)});
    }
  } else {
    outline.push_back({-thickness, crest.crest_level});
    outline.push_back({0.0, crest.crest_level});
  }
  outline.push_back({0.0, crest.floor_level});
}

}  // namespace

std::vector<OutlinePoint> crest_outline(const Crest& crest, double chute_slope) {
  std::vector<OutlinePoint> outline;
  switch (crest.shape) {
    case CrestShape::ogee: add_ogee(outline, crest, chute_slope); break;
    case CrestShape::broad: add_broad(outline, crest); break;
    case CrestShape::sharp: add_wall(outline, crest, 0.03 * crest.approach_depth, false); break;
    case CrestShape::labyrinth: add_wall(outline, crest, crest.approach_depth / 8.0, true); break;
  }
  return outline;
}

hydraulics::FaceSlope face_slope(UpstreamFace face) {
  switch (face) {
    case UpstreamFace::vertical: return hydraulics::FaceSlope::vertical;
    case UpstreamFace::slope_3_to_1: return hydraulics::FaceSlope::slope_3_to_1;
    case UpstreamFace::slope_3_to_2: return hydraulics::FaceSlope::slope_3_to_2;
    case UpstreamFace::slope_3_to_3: return hydraulics::FaceSlope::slope_3_to_3;
  }
  return hydraulics::FaceSlope::vertical;
}

}  // namespace quell::site
