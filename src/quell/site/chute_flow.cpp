#include "quell/site/chute_flow.h"

#include <algorithm>
#include <boost/math/tools/minima.hpp>
#include <cmath>
#include <functional>
#include <limits>

#include "quell/base/roots.h"
#include "quell/hydraulics/boundary_layer.h"
#include "quell/hydraulics/definitions.h"
#include "quell/hydraulics/energy.h"
#include "quell/hydraulics/friction.h"
#include "quell/hydraulics/stepped_chute.h"
#include "quell/site/toe.h"

namespace quell::site {
namespace {

constexpr std::string_view too_flat = "the chute is too flat for this discharge: the flow does not become supercritical on it";
constexpr int nodes_per_piece = 8;

double level_at(const ChutePiece& piece, double path) {
  return piece.start_level - (path - piece.start_path) * piece.sine;
}
double width_at(const ChutePiece& piece, double path) {
  return piece.start_width + (path - piece.start_path) * piece.width_change;
}
double end_path(const ChutePiece& piece) {
  return piece.start_path + piece.length;
}

/// The crest's own flow, whose streamlines curve, ends where the energy above the bed clearly exceeds the least.
bool leaves_crest(const ChutePiece& piece, double path, double discharge, double start_energy_level) {
  const double head = start_energy_level - level_at(piece, path);
  return head >= 1.3 * hydraulics::least_energy(discharge / width_at(piece, path), piece.cosine);
}

}  // namespace

ChuteFlow::Layer ChuteFlow::layer_at(const ChutePiece& piece, double path) const noexcept {
  Layer layer{};
  layer.unit_discharge = discharge_ / width_at(piece, path);
  const double head = start_energy_level_ - level_at(piece, path);
  const auto depth = hydraulics::supercritical_depth({.q = layer.unit_discharge, .E = head, .cosine = piece.cosine});
  layer.potential_depth = depth ? *depth : hydraulics::critical_depth_on_slope(layer.unit_discharge, piece.cosine);
  layer.potential_velocity = layer.unit_discharge / layer.potential_depth;
  layer.grown = path > 0.0 ? hydraulics::boundary_layer_thickness({.L = path, .ks = geometry_->roughness_height}) : 0.0;
  // delta = d with d = dp + 0.18 delta
  layer.full = layer.potential_depth / (1.0 - hydraulics::displacement_share);
  layer.thickness = std::min(layer.grown, layer.full);
  layer.loss = hydraulics::boundary_layer_head_loss(
      {.delta = layer.thickness, .u = layer.potential_velocity, .q = layer.unit_discharge});
  return layer;
}

Outcome<ChuteFlow> ChuteFlow::compute(const ChuteGeometry& geometry, double discharge, double start_energy_level) {
  ChuteFlow flow;
  flow.geometry_ = &geometry;
  flow.discharge_ = discharge;
  flow.start_energy_level_ = start_energy_level;
  const bool stepped = geometry.step_height > 0.0;
  if (auto done = stepped ? flow.follow_steps() : flow.follow_layer(); !done) return tl::unexpected(done.error());
  return flow;
}

/// The steps' own flow begins where the crest's ends; the air enters where the authors of the relation saw it.
Outcome<void> ChuteFlow::follow_steps() {
  const auto& piece = geometry_->pieces.front();
  if (!leaves_crest(piece, end_path(piece), discharge_, start_energy_level_)) return no_answer(too_flat);
  start_path_ = piece.start_path;
  if (!leaves_crest(piece, start_path_, discharge_, start_energy_level_)) {
    const double least = 1.3 * hydraulics::least_energy(discharge_ / piece.start_width, piece.cosine);
    start_path_ += (least - (start_energy_level_ - piece.start_level)) / piece.sine;
  }
  const auto toe = hydraulics::stepped_chute_toe({.q = discharge_ / piece.start_width,
                                                  .step_height = geometry_->step_height,
                                                  .phi = piece.angle,
                                                  .Hdam = geometry_->crest_level - geometry_->lowest_level});
  if (!toe) return tl::unexpected(toe.error());
  const double inception = std::max(start_path_, geometry_->start_path + toe->inception_length);
  critical_path_ = inception < end_path(piece) ? inception : -1.0;
  return {};
}

double ChuteFlow::energy_level_on_steps(double bed_level) const noexcept {
  const auto& piece = geometry_->pieces.front();
  const auto toe = hydraulics::stepped_chute_toe({.q = discharge_ / piece.start_width,
                                                  .step_height = geometry_->step_height,
                                                  .phi = piece.angle,
                                                  .Hdam = std::max(0.0, geometry_->crest_level - bed_level)});
  return toe ? std::min(start_energy_level_, bed_level + toe->residual_head) : start_energy_level_;
}

/// Adds a node with the largest loss so far, and returns that. Where the chute narrows, the computed loss may pass a peak
/// since `from` and fall again: the peak becomes a node too, so that the energy level does not rise after it.
double ChuteFlow::add_loss_node(const ChutePiece& piece, double from, const LossNode& here, double largest) {
  const auto gain = [&](double path) { return -layer_at(piece, path).loss; };
  if (piece.width_change < 0.0 && -gain(here.path - 1e-3 * (here.path - from)) > here.loss) {
    const auto [path, least] = boost::math::tools::brent_find_minima(gain, from, here.path, 26);
    largest = std::max(largest, -least);
    losses_.push_back({path, largest});
  }
  largest = std::max(largest, here.loss);
  losses_.push_back({here.path, largest});
  return largest;
}

/// Walks the pieces down: finds where the chute's flow starts, keeps the running largest loss, and stops where the layer
/// reaches the surface. That is where it fills the least depth passed so far: where the chute flattens, the flow thickens at
/// once, and without this the critical point, and with it the energy below, would jump at some discharge.
Outcome<void> ChuteFlow::follow_layer() {
  bool started = false;
  double largest_loss = 0.0;
  double least_full = std::numeric_limits<double>::max();
  for (std::size_t index = 0; index < geometry_->pieces.size(); ++index) {
    const auto& piece = geometry_->pieces[index];
    double from = piece.start_path;
    if (!started) {
      if (!leaves_crest(piece, end_path(piece), discharge_, start_energy_level_)) continue;
      if (!leaves_crest(piece, from, discharge_, start_energy_level_)) {
        const auto start = find_root(
            [&](double path) {
              return start_energy_level_ - level_at(piece, path) -
                     1.3 * hydraulics::least_energy(discharge_ / width_at(piece, path), piece.cosine);
            },
            from, end_path(piece), 1e-9);
        if (!start) return tl::unexpected(start.error());
        from = *start;
      }
      started = true;
      start_path_ = from;
    }
    double above = from;
    for (int i = 0; i <= nodes_per_piece; ++i) {
      const double path = from + (end_path(piece) - from) * i / nodes_per_piece;
      const auto layer = layer_at(piece, path);
      if (layer.grown < std::min(layer.full, least_full)) {
        least_full = std::min(least_full, layer.full);
        largest_loss = add_loss_node(piece, above, {path, layer.loss}, largest_loss);
        above = path;
        continue;
      }
      critical_path_ = path;
      if (i > 0) {
        const auto excess = [&](double at) {
          const auto here = layer_at(piece, at);
          return here.grown - std::min(here.full, least_full);
        };
        if (const auto critical = find_root(excess, above, path, 1e-10); critical) critical_path_ = *critical;
      }
      add_loss_node(piece, above, {critical_path_, layer_at(piece, critical_path_).loss}, largest_loss);
      return follow_friction(index);
    }
  }
  if (!started) return no_answer(too_flat);
  return {};
}

Outcome<void> ChuteFlow::follow_friction(std::size_t first_piece) {
  double energy_level = start_energy_level_ - losses_.back().loss;
  for (std::size_t index = first_piece; index < geometry_->pieces.size(); ++index) {
    const auto& piece = geometry_->pieces[index];
    const double from = std::max(piece.start_path, critical_path_);
    const hydraulics::ChuteStretch stretch{.discharge = discharge_,
                                           .start_width = width_at(piece, from),
                                           .width_change = piece.width_change,
                                           .start_level = level_at(piece, from),
                                           .sine = piece.sine,
                                           .cosine = piece.cosine,
                                           .ks = geometry_->roughness_height,
                                           .length = end_path(piece) - from};
    if (!(stretch.length > 0.0)) continue;
    const std::size_t first_node = friction_.size();
    if (auto done = hydraulics::integrate_energy(stretch, energy_level, friction_); !done) return done;
    for (std::size_t i = first_node; i < friction_.size(); ++i) friction_[i].x += from;
    energy_level = friction_.back().energy_level;
  }
  return {};
}

double ChuteFlow::energy_level_at_path(const ChutePiece& piece, double path) const noexcept {
  if (geometry_->step_height > 0.0) return energy_level_on_steps(level_at(piece, path));
  if (critical_path_ >= 0.0 && path >= critical_path_) {
    if (friction_.empty()) return start_energy_level_ - losses_.back().loss;
    return hydraulics::energy_between(friction_, path);
  }
  double loss = layer_at(piece, path).loss;
  for (const auto& node : losses_)
    if (node.path <= path) loss = std::max(loss, node.loss);
  return start_energy_level_ - loss;
}

double ChuteFlow::energy_level_at(double bed_level) const noexcept {
  const auto& piece = geometry_->piece_at_level(bed_level);
  return energy_level_at_path(piece, piece.start_path + (piece.start_level - bed_level) / piece.sine);
}

ChutePoint ChuteFlow::section_at(double bed_level) const {
  const auto& piece = geometry_->piece_at_level(bed_level);
  const double path = piece.start_path + (piece.start_level - bed_level) / piece.sine;
  ChutePoint point{.station = geometry_->station_at_level(bed_level),
                   .path = path,
                   .bed_level = bed_level,
                   .width = width_at(piece, path),
                   .slope_angle = piece.angle,
                   .energy_level = energy_level_at_path(piece, path)};
  const double q = discharge_ / point.width;
  point.fully_turbulent = critical_path_ >= 0.0 && path >= critical_path_;
  if (point.fully_turbulent || geometry_->step_height > 0.0) {
    const auto depth = hydraulics::supercritical_depth({.q = q, .E = point.energy_level - bed_level, .cosine = piece.cosine});
    point.depth = depth ? *depth : hydraulics::critical_depth_on_slope(q, piece.cosine);
    point.boundary_layer = point.depth;
  } else {
    const auto layer = layer_at(piece, path);
    point.depth = layer.potential_depth + hydraulics::displacement_share * layer.thickness;
    point.boundary_layer = layer.thickness;
  }
  point.velocity = q / point.depth;
  return point;
}

std::vector<ChutePoint> ChuteFlow::profile(double apron_level, int points) const {
  const double first = level_at(geometry_->piece_at_path(start_path_), start_path_);
  std::vector<double> levels;
  for (int i = 0; i <= points; ++i) levels.push_back(first + (apron_level - first) * i / points);
  for (const auto& piece : geometry_->pieces)
    if (piece.start_level < first && piece.start_level > apron_level) levels.push_back(piece.start_level);
  std::sort(levels.begin(), levels.end(), std::greater<>());
  std::vector<ChutePoint> sections;
  sections.reserve(levels.size());
  for (const double level : levels) sections.push_back(section_at(level));
  return sections;
}

void ChuteFlow::trace_energy(double bed_level, const ChuteOrigins& from, Working& working) const {
  const auto& bottom = geometry_->piece_at_level(bed_level);
  if (geometry_->step_height > 0.0) {
    const hydraulics::SteppedChuteInput input{.q = discharge_ / bottom.start_width,
                                              .step_height = geometry_->step_height,
                                              .phi = bottom.angle,
                                              .Hdam = geometry_->crest_level - bed_level};
    trace_unit_discharge(told(discharge_, from.discharge), given(bottom.start_width, from.width_key), "on the chute", working);
    if (const auto toe = hydraulics::stepped_chute_toe(input))
      working.add(hydraulics::record::stepped_toe,
                  {input.q, given(input.step_height, "chute.step_height"), given(input.phi, "chute.slope"),
                   told(input.Hdam, "crest above the level of the apron")},
                  {toe->residual_head, toe->depth, toe->inception_length}, "energy left by the steps, at the chute's foot");
    return;
  }
  const double bottom_path = bottom.start_path + (bottom.start_level - bed_level) / bottom.sine;
  const bool friction = critical_path_ >= 0.0 && bottom_path >= critical_path_;
  const double path = friction ? critical_path_ : bottom_path;
  const ChutePiece* piece = &geometry_->piece_at_path(path);
  const auto layer = layer_at(*piece, path);
  const std::string where = friction ? " at the critical point" : " at the chute's foot";
  const bool is_converted = geometry_->conversion_radius > 0.0;
  const StepInput roughness =
      is_converted ? StepInput(geometry_->roughness_height) : given(geometry_->roughness_height, "chute.roughness_height");
  if (is_converted)
    working.add(hydraulics::record::roughness_height_manning,
                {given(geometry_->manning_n, "chute.manning_n"),
                 told(geometry_->conversion_radius, "section of the check flood, arriving without loss")},
                {geometry_->roughness_height}, "roughness height of the chute");
  const double width = width_at(*piece, path);
  const StepInput start_level = told(start_energy_level_, from.start);
  trace_unit_discharge(told(discharge_, from.discharge),
                       piece->width_change == 0.0 ? given(width, from.width_key) : told(width, "of the chute there"),
                       "on the chute", working);
  working.add(hydraulics::record::level_difference, {start_level, told(level_at(*piece, path), "bed of the chute there")},
              {start_energy_level_ - level_at(*piece, path)}, "energy head without loss" + where);
  working.add(hydraulics::record::depth_from_energy_on_slope,
              {layer.unit_discharge, told(start_energy_level_ - level_at(*piece, path), "difference of the levels above"),
               given(piece->angle, "chute.slope")},
              {layer.potential_depth}, "depth without loss" + where);
  working.add(hydraulics::record::mean_velocity, {layer.unit_discharge, layer.potential_depth}, {layer.potential_velocity},
              "velocity without loss" + where);
  working.add(hydraulics::record::boundary_layer_em1603,
              {told(path, friction ? "along crest and chute, found by trial" : "along crest and chute, as drawn"), roughness},
              {hydraulics::boundary_layer_thickness({.L = path, .ks = geometry_->roughness_height})}, "boundary layer" + where);
  working.add(
      hydraulics::record::boundary_layer_head_loss,
      {told(layer.thickness, "boundary layer there, at most the flow's depth"), layer.potential_velocity, layer.unit_discharge},
      {layer.loss}, "head lost" + where);
  const double left = energy_level_at(bed_level);
  const bool nothing_else_lost = left == start_energy_level_ - layer.loss;
  const StepInput lost =
      nothing_else_lost ? StepInput(layer.loss) : told(start_energy_level_ - left, "all that is lost down to the chute's foot");
  working.add(hydraulics::record::energy_head_left, {start_level, lost, told(bed_level, "where the flow enters the basin")},
              {left - bed_level}, "energy head that reaches the apron");
  if (!friction || &bottom != piece || piece->width_change != 0.0) return;
  const double cosine = piece->cosine;
  const double start = energy_level_at_path(*piece, path);
  const auto d0 =
      hydraulics::supercritical_depth({.q = layer.unit_discharge, .E = start - level_at(*piece, path), .cosine = cosine});
  const auto end = section_at(bed_level);
  if (d0)
    working.add(
        hydraulics::record::chute_profile_darcy,
        {told(discharge_, from.discharge), given(end.width, from.width_key), given(piece->angle, "chute.slope"), roughness,
         told(*d0, "depth of the energy left at the critical point"), told(bottom_path - path, "along the chute, as drawn")},
        {end.depth, end.velocity, start - end.energy_level},
        "flow at the chute's foot, with friction below the critical point");
}

}  // namespace quell::site
