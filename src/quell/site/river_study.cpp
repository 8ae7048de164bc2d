#include "quell/site/river_study.h"

#include <algorithm>
#include <cmath>

#include "quell/hydraulics/river_profile.h"
#include "quell/hydraulics/stage_discharge.h"
#include "quell/site/river.h"

namespace quell::site {
namespace {

constexpr double table_tolerance = 0.002;  ///< m
constexpr double both_tails = 1.645;       ///< standard errors for a band of 90 %
constexpr double start_difference = 0.5;   ///< m between the two starts that are compared

/// The surveyed river in one tailwater case.
class SurveyedRiver {
 public:
  static Outcome<SurveyedRiver> of(const River& river, TailwaterCase tailwater_case) {
    const auto& reach = river.reach;
    const double n_factor = tailwater_case == TailwaterCase::low    ? reach.low_n_factor
                            : tailwater_case == TailwaterCase::high ? reach.high_n_factor
                                                                    : 1.0;
    const double lowering = tailwater_case == TailwaterCase::low ? river.bed_degradation : 0.0;
    SurveyedRiver made(reach, tailwater_case);
    made.sections_.reserve(reach.sections.size());
    // The stations of a profile go upstream, the site's sections downstream.
    for (auto one = reach.sections.rbegin(); one != reach.sections.rend(); ++one) {
      auto section = hydraulics::RiverSection::of(survey_of(*one), n_factor, lowering);
      if (!section) return tl::unexpected(section.error());
      made.sections_.push_back(std::make_unique<const hydraulics::RiverSection>(std::move(*section)));
    }
    made.place_stations();
    if (reach.longest_spacing > 0.0 && made.stations_.size() > 1) {
      auto refined = hydraulics::refined(made.stations_, reach.longest_spacing);
      if (!refined) return tl::unexpected(refined.error());
      made.stations_ = std::move(refined->stations);
      for (auto& section : refined->sections) made.sections_.push_back(std::move(section));
    }
    return made;
  }

  /// Level at the basin, m.
  Outcome<double> level(double discharge) const {
    if (stations_.size() == 1) return control_level(discharge);
    const auto profile = run(discharge, 0.0);
    if (!profile) return tl::unexpected(profile.error());
    return profile->nodes.back().level;
  }

  Outcome<hydraulics::RiverProfileResult> profile(double discharge) const { return run(discharge, 0.0); }

  /// Difference at the basin (m) between the control's level and one higher by start_difference.
  Outcome<double> start_spread(double discharge) const {
    const auto low = run(discharge, 0.0);
    const auto high = run(discharge, start_difference);
    if (!low) return tl::unexpected(low.error());
    if (!high) return tl::unexpected(high.error());
    return std::abs(high->nodes.back().level - low->nodes.back().level);
  }

  bool is_profile() const { return stations_.size() > 1; }

 private:
  SurveyedRiver(const SurveyedReach& reach, TailwaterCase tailwater_case) : reach_(&reach), case_(tailwater_case) {}

  const SurveyedReach* reach_;
  TailwaterCase case_;
  std::vector<std::unique_ptr<const hydraulics::RiverSection>> sections_;
  std::vector<hydraulics::RiverStation> stations_;

  static hydraulics::SurveyedSection survey_of(const CrossSection& section) {
    hydraulics::SurveyedSection survey{.x = section.station,
                                       .z = section.level,
                                       .left_bank = section.left_bank,
                                       .right_bank = section.right_bank,
                                       .manning_n = section.manning_n};
    if (!section.point_n.empty()) {
      // A zone starts where the roughness changes.
      for (std::size_t i = 0; i < section.point_n.size(); ++i)
        if (survey.zone_n.empty() || section.point_n[i] != survey.zone_n.back()) {
          if (!survey.zone_start.empty() && section.station[i] == survey.zone_start.back()) {
            survey.zone_n.back() = section.point_n[i];
            continue;
          }
          survey.zone_start.push_back(section.station[i]);
          survey.zone_n.push_back(section.point_n[i]);
        }
    }
    return survey;
  }

  void place_stations() {
    const auto& all = reach_->sections;
    const double last = all.back().distance;
    for (std::size_t i = 0; i < all.size(); ++i) {
      const std::size_t given = all.size() - 1 - i;  // in the order of the site
      hydraulics::RiverStation station{sections_[i].get(), last - all[given].distance, {}};
      if (given + 1 < all.size()) {
        const auto& below = all[given + 1];
        const double channel = below.distance - all[given].distance;
        station.length = {below.left_distance > 0.0 ? below.left_distance : channel, channel,
                          below.right_distance > 0.0 ? below.right_distance : channel};
      }
      stations_.push_back(station);
    }
  }

  /// What the control asks for at the last section.
  Outcome<double> control_level(double discharge) const {
    const auto& last = *stations_.front().section;
    switch (reach_->control) {
      case RiverControl::level: return reach_->control_level[index_of(case_)];
      case RiverControl::normal: return last.normal_level(discharge, reach_->control_slope);
      case RiverControl::critical: return last.critical_level(discharge);
      case RiverControl::table: return rated_level(reach_->control_rating, discharge, case_);
    }
    return no_answer("the river has no control");
  }

  Outcome<hydraulics::RiverProfileResult> run(double discharge, double raised) const {
    const auto start = control_level(discharge);
    if (!start) return tl::unexpected(start.error());
    hydraulics::RiverProfileInput input{.stations = stations_, .discharge = discharge};
    input.downstream = {hydraulics::RiverBoundary::Kind::known_level, *start + raised};
    input.upstream = {hydraulics::RiverBoundary::Kind::critical, 0.0};
    input.contraction = reach_->contraction;
    input.expansion = reach_->expansion;
    input.average = static_cast<hydraulics::FrictionAverage>(reach_->friction_mean);
    input.regime = reach_->is_mixed ? hydraulics::ProfileRegime::mixed : hydraulics::ProfileRegime::subcritical;
    return hydraulics::river_profile(input);
  }
};

Outcome<hydraulics::RatingFit> fit_of(const Gauging& gauging) {
  std::vector<hydraulics::GaugedPoint> points;
  points.reserve(gauging.level.size());
  for (std::size_t i = 0; i < gauging.level.size(); ++i) points.push_back({gauging.level[i], gauging.discharge[i]});
  return hydraulics::fit_rating(points);
}

/// Level by case at one discharge.
using Levels = std::array<double, 3>;

struct Row {
  double discharge;
  Levels level;
};

/// Rows between two, halved until the straight line keeps to the tolerance.
template <class LevelsAt>
Outcome<void> refine(const LevelsAt& levels_at, const Row& left, const Row& right, int depth, std::vector<Row>& rows) {
  if (depth == 0) return {};
  const double middle = 0.5 * (left.discharge + right.discharge);
  const auto levels = levels_at(middle);
  if (!levels) return tl::unexpected(levels.error());
  const Row row{middle, *levels};
  double error = 0.0;
  for (std::size_t i = 0; i < row.level.size(); ++i)
    error = std::max(error, std::abs(row.level[i] - 0.5 * (left.level[i] + right.level[i])));
  if (error > table_tolerance)
    if (auto done = refine(levels_at, left, row, depth - 1, rows); !done) return done;
  rows.push_back(row);
  if (error > table_tolerance) return refine(levels_at, row, right, depth - 1, rows);
  return {};
}

template <class LevelsAt>
Outcome<TailwaterRating> tabulated(const LevelsAt& levels_at, const RiverRange& range) {
  constexpr int parts = 8;
  constexpr int deepest = 7;
  std::vector<Row> rows;
  Row before{};
  for (int i = 0; i <= parts; ++i) {
    // Levels rise fastest at small discharges.
    const double share = static_cast<double>(i) / parts;
    const double discharge = range.smallest + (range.largest - range.smallest) * share * share;
    const auto levels = levels_at(discharge);
    if (!levels) return tl::unexpected(levels.error());
    const Row row{discharge, *levels};
    if (i > 0)
      if (auto done = refine(levels_at, before, row, deepest, rows); !done) return tl::unexpected(done.error());
    rows.push_back(row);
    before = row;
  }
  TailwaterRating table;
  table.is_computed = true;
  for (const auto& row : rows) {
    table.discharge.push_back(row.discharge);
    for (std::size_t i = 0; i < row.level.size(); ++i) table.level[i].push_back(row.level[i]);
  }
  return table;
}

/// The band of the gaugings' scatter: low water carries more at the same level than the law says.
Outcome<TailwaterRating> tabulate_gauging(const River& river, const RiverRange& range) {
  const auto fit = fit_of(river.gauging);
  if (!fit) return tl::unexpected(fit.error());
  const auto levels_at = [&](double discharge) -> Outcome<Levels> {
    const double level = fit->rating.level(discharge);
    const double half = both_tails * fit->level_spread(discharge);
    return Levels{level - half - river.bed_degradation, level, level + half};
  };
  return tabulated(levels_at, range);
}

Outcome<TailwaterRating> tabulate_survey(const River& river, const RiverRange& range) {
  std::vector<SurveyedRiver> rivers;
  for (const auto tailwater_case : tailwater_cases) {
    auto made = SurveyedRiver::of(river, tailwater_case);
    if (!made) return tl::unexpected(made.error());
    rivers.push_back(std::move(*made));
  }
  const auto levels_at = [&](double discharge) -> Outcome<Levels> {
    Levels levels{};
    for (std::size_t i = 0; i < levels.size(); ++i) {
      const auto level = rivers[i].level(discharge);
      if (!level) return tl::unexpected(level.error());
      levels[i] = *level;
    }
    return levels;
  };
  return tabulated(levels_at, range);
}

void add_profile(const SurveyedRiver& river, const DrawnDischarge& drawn, TailwaterCase tailwater_case, double length,
                 RiverStudy& study) {
  const auto profile = river.profile(drawn.discharge);
  if (!profile) return;
  RiverWater water{.label = drawn.label, .discharge = drawn.discharge, .tailwater_case = tailwater_case};
  for (auto node = profile->nodes.rbegin(); node != profile->nodes.rend(); ++node)
    water.points.push_back({.distance = length - node->station,
                            .bed_level = node->bed_level,
                            .level = node->level,
                            .critical_level = node->critical_level,
                            .energy_level = node->energy_level,
                            .froude_number = node->froude,
                            .held_at_critical = node->held_at_critical});
  if (tailwater_case == TailwaterCase::expected) {
    study.spacing_wide = study.spacing_wide || profile->spacing_wide;
    study.held_at_critical = static_cast<int>(
        std::count_if(water.points.begin(), water.points.end(), [](const RiverProfilePoint& p) { return p.held_at_critical; }));
  }
  study.water.push_back(std::move(water));
}

std::string survey_statement(const SurveyedReach& reach) {
  std::string control;
  switch (reach.control) {
    case RiverControl::level: control = "a known level"; break;
    case RiverControl::normal: control = "normal depth"; break;
    case RiverControl::critical: control = "critical depth"; break;
    case RiverControl::table: control = "a rating"; break;
  }
  if (reach.sections.size() == 1) return "Tailwater is " + control + " in one surveyed section.";
  return "Tailwater is computed by the standard step through " + std::to_string(reach.sections.size()) +
         " surveyed sections, upstream from " + control + " at the last one.";
}

Outcome<void> study_survey(const River& river, const std::vector<DrawnDischarge>& drawn, RiverStudy& study) {
  study.statement = survey_statement(river.reach);
  if (river.reach.sections.size() < 2) return {};
  const double length = river.reach.sections.back().distance;
  for (const auto tailwater_case : tailwater_cases) {
    const auto surveyed = SurveyedRiver::of(river, tailwater_case);
    if (!surveyed) return tl::unexpected(surveyed.error());
    // The last one drawn is the largest: its low and high water are drawn too.
    for (const auto& one : drawn)
      if (tailwater_case == TailwaterCase::expected || &one == &drawn.back())
        add_profile(*surveyed, one, tailwater_case, length, study);
    if (tailwater_case == TailwaterCase::expected && !drawn.empty()) {
      const auto spread = surveyed->start_spread(drawn.back().discharge);
      if (!spread) return tl::unexpected(spread.error());
      study.start_spread = *spread;
    }
  }
  return {};
}

}  // namespace

Outcome<TailwaterRating> tabulate_tailwater(const River& river, const RiverRange& range) {
  return river.source == TailwaterSource::gauging ? tabulate_gauging(river, range) : tabulate_survey(river, range);
}

Outcome<RiverStudy> study_river(const River& river, const std::vector<DrawnDischarge>& drawn) {
  RiverStudy study;
  study.degradation = estimate_degradation(river.bed);
  if (river.source == TailwaterSource::gauging) {
    const auto fit = fit_of(river.gauging);
    if (!fit) return tl::unexpected(fit.error());
    study.fit = {.zero_level = fit->rating.h0,
                 .factor = fit->rating.a,
                 .power = fit->rating.b,
                 .scatter = fit->standard_error,
                 .highest_gauged = fit->highest.discharge,
                 .lowest_gauged = fit->lowest.discharge};
    study.statement = "Tailwater is a power law through " + std::to_string(fit->points) +
                      " gaugings; low and high are its band of 90 %, beyond the highest gauging it is extended.";
  }
  if (river.source == TailwaterSource::survey)
    if (auto done = study_survey(river, drawn, study); !done) return tl::unexpected(done.error());
  return study;
}

}  // namespace quell::site
