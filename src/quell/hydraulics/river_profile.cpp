#include "quell/hydraulics/river_profile.h"

#include <algorithm>
#include <cmath>

#include "quell/base/roots.h"

namespace quell::hydraulics {
namespace {

constexpr double level_tolerance = 1e-12;  // m
constexpr double first_search = 0.01;      // of the depth: how far from the neighbour's level the search begins
constexpr double highest_rise = 1e4;       // times the depth, in one step
constexpr double thinnest = 1e-6;          // of the critical depth

double mean_slope(FrictionAverage average, double Q, double K1, double K2) {
  const double S1 = (Q / K1) * (Q / K1);
  const double S2 = (Q / K2) * (Q / K2);
  switch (average) {
    case FrictionAverage::arithmetic: return (S1 + S2) / 2.0;
    case FrictionAverage::geometric: return Q * Q / (K1 * K2);
    case FrictionAverage::harmonic: return 2.0 * S1 * S2 / (S1 + S2);
    case FrictionAverage::conveyance: break;
  }
  return std::pow(2.0 * Q / (K1 + K2), 2);
}

struct End {
  SectionConveyance water;
  double head;    ///< alpha V^2/(2 g), m
  double energy;  ///< level of the energy line, m
};
End end_at(const RiverSection& section, double level, double Q) {
  End end{.water = section.at_level(level), .head = 0.0, .energy = 0.0};
  const double V = Q / end.water.area;
  end.head = end.water.alpha * V * V / (2.0 * gravity);
  end.energy = level + end.head;
  return end;
}

/// Energy lost between the two sections, m.
double loss_between(const StandardStep& step, const End& down, const End& up) {
  const double Q = step.discharge;
  double length = 0.0;
  for (std::size_t i = 0; i < 3; ++i)
    length += step.length[i] *
              (down.water.part_conveyance[i] / down.water.conveyance + up.water.part_conveyance[i] / up.water.conveyance);
  const double eddies =
      down.head > up.head ? step.loss.contraction * (down.head - up.head) : step.loss.expansion * (up.head - down.head);
  return 0.5 * length * mean_slope(step.average, Q, down.water.conveyance, up.water.conveyance) + eddies;
}

/// The root of f, which is positive at levels beyond the subcritical answer, next to `near` within [lowest, highest].
template <class Function>
Outcome<double> nearest_root(Function&& f, double near, double lowest, double highest, double first) {
  const bool upward = f(near) < 0.0;
  double from = near;
  for (double stride = first; upward ? from < highest : from > lowest; stride *= 1.6) {
    const double to = upward ? std::min(highest, from + stride) : std::max(lowest, from - stride);
    if ((f(to) < 0.0) != upward) return find_root(f, std::min(from, to), std::max(from, to), level_tolerance);
    from = to;
  }
  return no_answer("the step has no solution of this regime");
}

Outcome<void> check(const RiverProfileInput& input) {
  if (input.stations.size() < 2) return no_answer("a profile needs two stations or more");
  if (!(input.discharge > 0.0)) return bad_input("Q", input.discharge, 0.0, no_limit, "a profile needs a discharge above zero");
  if (!(input.contraction >= 0.0 && input.contraction <= 1.0))
    return bad_input("Cc", input.contraction, 0.0, 1.0, "a contraction loses part of the difference of the velocity heads");
  if (!(input.expansion >= 0.0 && input.expansion <= 1.0))
    return bad_input("Ce", input.expansion, 0.0, 1.0, "an expansion loses part of the difference of the velocity heads");
  for (std::size_t i = 1; i < input.stations.size(); ++i) {
    if (!(input.stations[i].station > input.stations[i - 1].station))
      return no_answer("the stations must rise from the downstream end upstream");
    if (!std::ranges::all_of(input.stations[i].length, [](double L) { return L > 0.0; }))
      return no_answer("every length between two stations must be above zero");
  }
  return {};
}

using Levels = std::vector<SteppedLevel>;

class Profile {
 public:
  explicit Profile(const RiverProfileInput& input) : input_(input), stations_(input.stations) {}

  Outcome<RiverProfileResult> computed() {
    for (const RiverStation& station : stations_) {
      const auto level = station.section->critical_level(input_.discharge);
      if (!level) return tl::unexpected(level.error());
      critical_.emplace_back(*level);
    }
    Levels tranquil;
    Levels rapid;
    if (input_.regime != ProfileRegime::supercritical) {
      auto levels = upstream_march();
      if (!levels) return tl::unexpected(levels.error());
      tranquil = std::move(*levels);
    }
    if (input_.regime != ProfileRegime::subcritical) {
      auto levels = downstream_march();
      if (!levels) return tl::unexpected(levels.error());
      rapid = std::move(*levels);
    }
    return nodes_of(tranquil, rapid);
  }

 private:
  /// Where the flow starts: `sign` +1 for subcritical levels, at or above critical, -1 for supercritical ones.
  Outcome<SteppedLevel> start(const RiverBoundary& boundary, std::size_t i, double sign) const {
    const RiverSection& section = *stations_[i].section;
    double level = critical_[i];
    if (boundary.kind == RiverBoundary::Kind::known_level) level = boundary.value;
    if (boundary.kind == RiverBoundary::Kind::normal_depth) {
      const auto normal = section.normal_level(input_.discharge, boundary.value);
      if (!normal) return tl::unexpected(normal.error());
      level = *normal;
    }
    if (!(level > section.lowest_level()))
      return bad_input("w", level, section.lowest_level(), no_limit, "the level at the end of the river lies below its bed");
    const bool other_regime = sign * (level - critical_[i]) < 0.0;
    return SteppedLevel{.level = other_regime ? critical_[i] : level, .held_at_critical = other_regime};
  }

  StandardStep step_below(std::size_t i) const {
    return {.downstream = stations_[i - 1].section,
            .upstream = stations_[i].section,
            .length = stations_[i].length,
            .discharge = input_.discharge,
            .loss = {input_.contraction, input_.expansion},
            .average = input_.average};
  }

  Outcome<Levels> upstream_march() const {
    Levels levels(stations_.size());
    auto next = start(input_.downstream, 0, 1.0);
    for (std::size_t i = 0; next; ++i) {
      levels[i] = *next;
      if (i + 1 == levels.size()) return levels;
      next = step_upstream(step_below(i + 1), levels[i].level, critical_[i + 1]);
    }
    return tl::unexpected(next.error());
  }

  Outcome<Levels> downstream_march() const {
    Levels levels(stations_.size());
    auto next = start(input_.upstream, stations_.size() - 1, -1.0);
    for (std::size_t i = stations_.size() - 1; next; --i) {
      levels[i] = *next;
      if (i == 0) return levels;
      next = step_downstream(step_below(i), levels[i].level, critical_[i - 1]);
    }
    return tl::unexpected(next.error());
  }

  RiverProfileResult nodes_of(const Levels& tranquil, const Levels& rapid) const {
    RiverProfileResult result;
    result.nodes.reserve(stations_.size());
    bool below_is_tranquil = false;
    double K_below = 0.0;
    for (std::size_t i = 0; i < stations_.size(); ++i) {
      const RiverSection& section = *stations_[i].section;
      const double Q = input_.discharge;
      const bool is_tranquil = rapid.empty() || (!tranquil.empty() && section.specific_force(tranquil[i].level, Q) >=
                                                                          section.specific_force(rapid[i].level, Q));
      const SteppedLevel& chosen = is_tranquil ? tranquil[i] : rapid[i];
      const End end = end_at(section, chosen.level, Q);
      RiverNode node{.station = stations_[i].station,
                     .bed_level = section.lowest_level(),
                     .level = chosen.level,
                     .critical_level = critical_[i],
                     .energy_level = end.energy,
                     .velocity = Q / end.water.area,
                     .froude = std::sqrt(std::max(0.0, section.froude_squared(chosen.level, Q))),
                     .friction_slope = std::pow(Q / end.water.conveyance, 2),
                     .held_at_critical = chosen.held_at_critical,
                     .above_bank = end.water.above_bank};
      if (i > 0) {
        node.conveyance_ratio = end.water.conveyance / K_below;
        result.spacing_wide = result.spacing_wide || !(node.conveyance_ratio >= 0.7 && node.conveyance_ratio <= 1.4);
        if (below_is_tranquil && !is_tranquil) result.nodes.back().jump = true;
      }
      below_is_tranquil = is_tranquil && chosen.level > critical_[i];
      K_below = end.water.conveyance;
      result.nodes.emplace_back(node);
    }
    return result;
  }

  const RiverProfileInput& input_;
  std::span<const RiverStation> stations_;
  std::vector<double> critical_;
};

}  // namespace

Outcome<SteppedLevel> step_upstream(const StandardStep& step, double downstream_level, double critical_level) {
  const End down = end_at(*step.downstream, downstream_level, step.discharge);
  const auto excess = [&](double level) {
    const End up = end_at(*step.upstream, level, step.discharge);
    return up.energy - down.energy - loss_between(step, down, up);
  };
  const double near = std::max(downstream_level, critical_level);
  const double depth = near - step.upstream->lowest_level();
  const auto level = nearest_root(excess, near, critical_level, near + highest_rise * depth, first_search * depth);
  if (level) return SteppedLevel{.level = *level, .held_at_critical = false};
  if (excess(critical_level) > 0.0) return SteppedLevel{.level = critical_level, .held_at_critical = true};
  return tl::unexpected(level.error());
}

Outcome<SteppedLevel> step_downstream(const StandardStep& step, double upstream_level, double critical_level) {
  const End up = end_at(*step.upstream, upstream_level, step.discharge);
  const auto lacking = [&](double level) {
    const End down = end_at(*step.downstream, level, step.discharge);
    return up.energy - down.energy - loss_between(step, down, up);
  };
  const double bed = step.downstream->lowest_level();
  const double depth = critical_level - bed;
  const double lowest = bed + thinnest * depth;
  const double near = std::clamp(bed + upstream_level - step.upstream->lowest_level(), lowest, critical_level);
  const auto level = nearest_root(lacking, near, lowest, critical_level, first_search * depth);
  if (level) return SteppedLevel{.level = *level, .held_at_critical = false};
  if (lacking(critical_level) < 0.0) return SteppedLevel{.level = critical_level, .held_at_critical = true};
  return tl::unexpected(level.error());
}

Outcome<RiverProfileResult> river_profile(const RiverProfileInput& input) {
  if (const auto sound = check(input); !sound) return tl::unexpected(sound.error());
  return Profile(input).computed();
}

Outcome<RefinedRiver> refined(std::span<const RiverStation> stations, double longest_spacing) {
  if (!(longest_spacing > 0.0))
    return bad_input("longest_spacing", longest_spacing, 0.0, no_limit, "a spacing must be above zero");
  RefinedRiver river;
  for (std::size_t i = 0; i < stations.size(); ++i) {
    RiverStation station = stations[i];
    const int pieces = i == 0 ? 1 : std::max(1, static_cast<int>(std::ceil(station.length[1] / longest_spacing - 1e-9)));
    for (double& length : station.length) length /= pieces;
    for (int piece = 1; piece < pieces; ++piece) {
      const double share = static_cast<double>(piece) / pieces;
      auto section = RiverSection::interpolated(*stations[i - 1].section, *stations[i].section, share);
      if (!section) return tl::unexpected(section.error());
      river.sections.emplace_back(std::make_unique<const RiverSection>(std::move(*section)));
      const double at = stations[i - 1].station + share * (stations[i].station - stations[i - 1].station);
      river.stations.emplace_back(RiverStation{river.sections.back().get(), at, station.length});
    }
    river.stations.emplace_back(station);
  }
  return river;
}

Outcome<double> reach_error(const RiverProfileInput& input, double low_level, double high_level) {
  double ends[2];
  const double starts[] = {low_level, high_level};
  for (int i = 0; i < 2; ++i) {
    RiverProfileInput one = input;
    one.downstream = {.kind = RiverBoundary::Kind::known_level, .value = starts[i]};
    one.regime = ProfileRegime::subcritical;
    const auto profile = river_profile(one);
    if (!profile) return tl::unexpected(profile.error());
    ends[i] = profile->nodes.back().level;
  }
  return std::abs(ends[1] - ends[0]);
}

}  // namespace quell::hydraulics
