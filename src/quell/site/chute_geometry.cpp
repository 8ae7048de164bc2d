#include <cmath>

#include "quell/hydraulics/crest_shape.h"
#include "quell/hydraulics/crest_upstream.h"
#include "quell/hydraulics/energy.h"
#include "quell/hydraulics/friction.h"
#include "quell/site/chute_flow.h"
#include "quell/site/crest_foot.h"
#include "quell/site/reservoir.h"

namespace quell::site {
namespace {

/// Width (m) at a bed level: straight from the start to end_width_level, constant below.
double width_at(const Chute& chute, double start_level, double bed_level) {
  if (chute.width == chute.end_width || bed_level <= chute.end_width_level) return chute.end_width;
  const double share = (start_level - bed_level) / (start_level - chute.end_width_level);
  return chute.width + share * (chute.end_width - chute.width);
}

void add_piece(ChuteGeometry& geometry, const Chute& chute, double slope, double start_level, double end_level) {
  ChutePiece piece{.start_level = start_level, .angle = std::atan(slope)};
  piece.sine = std::sin(piece.angle);
  piece.cosine = std::cos(piece.angle);
  piece.length = (start_level - end_level) / piece.sine;
  piece.start_width = width_at(chute, geometry.start_level, start_level);
  piece.width_change = (width_at(chute, geometry.start_level, end_level) - piece.start_width) / piece.length;
  if (geometry.pieces.empty()) {
    piece.start_station = geometry.start_station;
    piece.start_path = geometry.start_path;
  } else {
    const auto& above = geometry.pieces.back();
    piece.start_station = above.start_station + above.length * above.cosine;
    piece.start_path = above.start_path + above.length;
  }
  geometry.pieces.push_back(piece);
}

/// Energy level (m) of the check flood where the chute starts; of the design head on an ogee.
double energy_level_of_check_flood(const Site& site) {
  if (site.crest.shape == CrestShape::ogee) return site.crest.crest_level + site.crest.design_head;
  const auto head = crest_head(site.crest, site.discharges.check_flood);
  return start_energy_level(site, site.discharges.check_flood, site.crest.crest_level + (head ? *head : 0.0));
}

/// Manning's n says how rough the chute is at one depth: the check flood's, where it arrives at the lowest level without loss.
double conversion_radius(const Site& site, const ChuteGeometry& geometry) {
  const double q = site.discharges.check_flood / site.chute.end_width;
  const double head = energy_level_of_check_flood(site) - site.river.bed_level;
  const auto depth = hydraulics::supercritical_depth({.q = q, .E = head, .cosine = geometry.pieces.back().cosine});
  const double d = depth ? *depth : hydraulics::critical_depth_on_slope(q, 1.0);
  return site.chute.end_width * d / (site.chute.end_width + 2.0 * d);
}

/// Where the layer starts upstream of the axis: the curvature of the quadrant begins there.
double upstream_path(const Crest& crest) {
  const auto face = face_slope(crest.upstream_face);
  if (face == hydraulics::FaceSlope::vertical) return hydraulics::upstream_quadrant_length * crest.design_head;
  return hydraulics::upstream_face_tangent(crest.design_head, hydraulics::face_inclination(face)).arc_length;
}

/// The start of the chute below the crest.
void set_start(const Crest& crest, double chute_slope, ChuteGeometry& geometry) {
  geometry.start_level = crest.has_fall() ? crest.floor_level : crest.crest_level;
  if (crest.shape != CrestShape::ogee) return;
  const auto tangent = hydraulics::crest_tangent_point(crest.design_head, chute_slope, face_slope(crest.upstream_face));
  geometry.start_station = tangent.x;
  geometry.start_level = crest.crest_level - tangent.y;
  geometry.start_path = upstream_path(crest) + tangent.arc_length;
}

}  // namespace

const ChutePiece& ChuteGeometry::piece_at_level(double bed_level) const noexcept {
  std::size_t index = pieces.size() - 1;
  while (index > 0 && bed_level > pieces[index].start_level) --index;
  return pieces[index];
}

const ChutePiece& ChuteGeometry::piece_at_path(double path) const noexcept {
  std::size_t index = pieces.size() - 1;
  while (index > 0 && path < pieces[index].start_path) --index;
  return pieces[index];
}

double ChuteGeometry::station_at_level(double bed_level) const noexcept {
  const auto& piece = piece_at_level(bed_level);
  return piece.start_station + (piece.start_level - bed_level) * piece.cosine / piece.sine;
}

Outcome<ChuteGeometry> chute_geometry(const Site& site, double lowest_level) {
  const auto& reaches = site.chute.reaches;
  if (reaches.empty()) return no_answer("the chute has no reach");
  ChuteGeometry geometry;
  set_start(site.crest, reaches.front().slope, geometry);
  geometry.crest_outline = crest_outline(site.crest, reaches.front().slope);
  geometry.lowest_level = lowest_level;
  geometry.crest_level = site.crest.shape == CrestShape::ogee ? site.crest.crest_level : geometry.start_level;
  geometry.step_height = site.chute.step_height;
  double level = geometry.start_level;
  for (std::size_t i = 0; i < reaches.size(); ++i) {
    const bool last = i + 1 == reaches.size();
    const double end_level = last ? lowest_level : reaches[i].end_level;
    if (!(end_level < level)) return no_answer("the chute does not fall from its start below the crest to its reaches");
    if (last) geometry.last_reach_level = level;
    const double kink = site.chute.end_width_level;
    const bool width_stops = site.chute.width != site.chute.end_width && kink < level && kink > end_level;
    if (width_stops) add_piece(geometry, site.chute, reaches[i].slope, level, kink);
    add_piece(geometry, site.chute, reaches[i].slope, width_stops ? kink : level, end_level);
    level = end_level;
  }
  geometry.roughness_height = site.chute.roughness_height;
  if (!(geometry.roughness_height > 0.0)) {
    geometry.manning_n = site.chute.manning_n;
    geometry.conversion_radius = conversion_radius(site, geometry);
    geometry.roughness_height =
        hydraulics::roughness_height_from_manning({.n = site.chute.manning_n, .R = geometry.conversion_radius});
  }
  return geometry;
}

}  // namespace quell::site
