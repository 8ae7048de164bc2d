// The walls as a first L-shaped section under a few load cases: empty basin, sudden stop of the flow, jump in the basin, and an
// earthquake where the site gives one.
#include <algorithm>
#include <cmath>

#include "quell/base/quantity_text.h"
#include "quell/checks/origins.h"
#include "quell/checks/wall_section.h"
#include "quell/dissipators/parts.h"
#include "quell/hydraulics/wall_loads.h"

namespace quell::checks {

using dissipators::choice_note;
using dissipators::limit_finding;

namespace {

constexpr double base_share = 0.65;  ///< width of the base over the height of the wall: a first section
constexpr dissipators::Rule first_check{"practice", "1.5 in every load case: no source gives less for the rare ones",
                                        Provenance::common_practice};
constexpr dissipators::Rule sliding_rule{
    "em_2100_2005", "least factors: usual 1.5, unusual 1.3, extreme 1.1, by the class of the structure", Provenance::memory};

constexpr CaseKind empty_basin{"empty", "Empty basin, ground water behind", 1.3};
constexpr CaseKind drawdown{"drawdown", "Sudden stop of the flow, water left behind", 1.3};
constexpr CaseKind operating_inward{"operating_inward", "Jump in the basin, tailwater behind", 1.5};
constexpr CaseKind operating_outward{"operating_outward", "Jump in the basin, low water behind", 1.5};
constexpr CaseKind earthquake{"earthquake", "Earthquake, no flood", 1.1};

/// How much of what is needed the worse of both factors reaches.
double reserve(const WallLoadCase& load) {
  return std::min(load.overturning / load.overturning_needed, load.sliding / load.sliding_needed);
}
void keep_worse(const WallLoadCase& candidate, WallLoadCase& worst) {
  if (worst.id.empty() || reserve(candidate) < reserve(worst) ||
      (reserve(candidate) == reserve(worst) && candidate.force > worst.force))
    worst = candidate;
}

double peak_pulse(const BasinView& view, double velocity) {
  return hydraulics::wall_pulse({.k = view.site.walls.fluctuation_peak, .Cp = view.site.walls.fluctuation_rms, .V = velocity});
}

/// Level of the river without flow, its bed lowered as allowed for, over the apron.
double no_flow_depth(const BasinView& view) {
  return view.site.river.bed_level - view.site.river.bed_degradation - view.apron_level;
}

/// Panel by panel over all states; the pulses act as far as the roller reaches.
void judge_operating(const BasinView& view, const WallSection& section, Safety& safety) {
  WallLoadCase inward, outward;
  const double low = no_flow_depth(view);
  for (const auto& state : view.states)
    for (const auto& panel : safety.panels) {
      const bool in_roller = panel.from < roller_length(state);
      WallState load{.outside = state.available_depth,
                     .inside = jump_depth_over(state, panel.from, panel.to),
                     .pulse = in_roller ? peak_pulse(view, state.toe->V1) : 0.0,
                     .discharge = state.toe->discharge};
      keep_worse(section.under(operating_inward, load, true), inward);
      load.outside = std::min(low, state.available_depth);
      // A drowned jump stands as deep as the tailwater.
      load.inside = std::max(load.inside, state.available_depth);
      keep_worse(section.under(operating_outward, load, false), outward);
    }
  for (const auto& load : {inward, outward})
    if (!load.id.empty()) safety.wall.cases.push_back(load);
}

void judge_earthquake(const BasinView& view, const WallSection& section, Safety& safety) {
  const auto& walls = view.site.walls;
  const auto note = [&safety, &walls](double kh, std::string text) {
    safety.findings.push_back(choice_note("walls.earthquake", "Horizontal acceleration judged on the walls, over g", kh,
                                          dimension::none, std::move(text),
                                          {"mononobe_matsuo_1929", "level fill, upright wall", Provenance::memory}));
    safety.findings.back().key = "walls.seismic_coefficient";
    if (kh > 0.0)
      safety.findings.back().method = {
          &hydraulics::record::earth_coefficient_in_earthquake,
          {given(walls.fill_friction, "walls.fill_friction"), told(0.0, "no friction counted on the wall"),
           given(kh, "walls.seismic_coefficient"), told(0.0, "no vertical acceleration counted")}};
  };
  if (!walls.has_seismic)
    return note(0.0, "No earthquake was judged: the site gives no seismic_coefficient in [walls]. The national code decides.");
  const auto coefficient = [&walls](double kh) {
    return hydraulics::earth_coefficient_in_earthquake({.phi = walls.fill_friction, .delta = 0.0, .kh = kh, .kv = 0.0});
  };
  const auto moved = coefficient(walls.seismic_coefficient);
  const auto still = coefficient(0.0);
  if (!moved || !still) return note(walls.seismic_coefficient, "Not judged: the fill itself slides at this acceleration.");
  // An ordinary day: the smallest discharge, and the ground water with it.
  const TailwaterState* ordinary = nullptr;
  for (const auto& state : view.states)
    if (state.tailwater_case == site::TailwaterCase::expected &&
        (ordinary == nullptr || state.toe->discharge < ordinary->toe->discharge))
      ordinary = &state;
  if (ordinary == nullptr) return;
  const WallState load{.outside = ordinary->available_depth,
                       .inside = ordinary->available_depth,
                       .kh = walls.seismic_coefficient,
                       .dK = *moved - *still,
                       .discharge = ordinary->toe->discharge};
  auto worst = section.under(earthquake, load, true);
  keep_worse(section.under(earthquake, load, false), worst);
  safety.wall.cases.push_back(worst);
  note(walls.seismic_coefficient,
       "Fill by the sliding wedge on top of earth at rest, water by Westergaard, inertia of wall and soil on the heel; "
       "tailwater "
       "of the smallest discharge on both sides. A wall that cannot yield bears more.");
}

std::string case_text(const WallLoadCase& load) {
  return "Worst load case: " + std::string(load.name) + " (" + quantity_token(load.outside, dimension::length) + " behind, " +
         quantity_token(load.inside, dimension::length) + " in the basin, " + quantity_token(load.force, {0, 6, -12}) +
         (load.is_inward ? " inward" : " outward") +
         (load.pulse > 0.0 ? ", of it a pulse of " + quantity_token(load.pulse, dimension::pressure) +
                                 " on the whole wetted height: an envelope"
                           : std::string{}) +
         ").";
}

StepInput width_of_base(const BasinView& view, double width) {
  return width == view.site.walls.base_width ? given(width, "walls.base_width")
                                             : told(width, "0.65 of the height of the wall, the stem at least");
}

/// The balance of a load case.
FindingMethod balance_of(const BasinView& view, const WallLoadCase& load) {
  const auto& in = load.balance;
  return {&hydraulics::record::wall_stability,
          {told(in.F, "all forces on stem and base, the way it is driven"),
           told(in.M, "of these forces, about the floor of the basin"), slab_thickness(view),
           told(in.W1, "stem as drawn, times its unit weight"), told(in.a1, "middle of the stem, from the edge it turns about"),
           told(in.W2, "base as drawn, times its unit weight"), told(in.W3, "earth and water that stand on the heel"),
           told(in.a3, "middle of the heel, from the edge it turns about"), width_of_base(view, in.B),
           told(in.u1, "pressure of the water on the side it is driven to"),
           told(in.u2, "pressure of the water on the side that drives"), given(in.phi, "walls.base_friction")}};
}

/// The finding with the balance of its load case behind it.
Finding behind(Finding finding, const BasinView& view, const WallLoadCase& load, std::string_view key) {
  finding.method = balance_of(view, load);
  finding.key = key;
  return finding;
}

std::string ground_words(const BasinView& view) {
  return view.site.ground.has_level ? ""
                                    : " [ground] level is not given: the fill is taken to the top of the wall where it drives "
                                      "it, and as none where it would hold it.";
}

template <class Less>
const WallLoadCase& worst_case(const WallCheck& wall, Less less) {
  return *std::min_element(wall.cases.begin(), wall.cases.end(), less);
}

void add_bearing(const BasinView& view, Safety& safety) {
  const auto& worst = worst_case(
      safety.wall, [](const WallLoadCase& a, const WallLoadCase& b) { return a.largest_bearing > b.largest_bearing; });
  const auto& walls = view.site.walls;
  const bool gapes = std::any_of(safety.wall.cases.begin(), safety.wall.cases.end(),
                                 [](const WallLoadCase& load) { return load.leaves_base; });
  const std::string text = case_text(worst) + (gapes ? " In at least one case the force leaves the base." : "");
  const char* title = "Largest bearing pressure below the wall";
  safety.findings.push_back(walls.has_bearing
                                ? limit_finding("walls.bearing", title, worst.largest_bearing, LimitSense::at_most,
                                                walls.bearing_allowed, dimension::pressure, Status::caution, text,
                                                "Widen the base, or improve the ground.", dissipators::common_practice)
                                : choice_note("walls.bearing", title, worst.largest_bearing, dimension::pressure,
                                              text + " What the ground may take is not given: [walls] bearing_allowed.",
                                              dissipators::common_practice));
  if (gapes) {
    safety.findings.back().sense = LimitSense::note;
    safety.findings.back().status = Status::caution;
    safety.findings.back().advice = "Widen the base, or lower what drives the wall.";
  }
  safety.findings.back().key = "walls.bearing_allowed";
  if (!(worst.largest_bearing > 0.0)) return;
  safety.wall.bearing_by = balance_of(view, worst);
  safety.findings.back().method = {
      &hydraulics::record::bearing_pressure,
      {told(worst.normal, "weights less uplift on the base, of that balance"),
       told(worst.eccentricity, "of the balance of that load case"), width_of_base(view, safety.wall.base)}};
}

void add_findings(const BasinView& view, Safety& safety) {
  const auto& wall = safety.wall;
  const auto& turned = worst_case(wall, [](const WallLoadCase& a, const WallLoadCase& b) {
    return a.overturning / a.overturning_needed < b.overturning / b.overturning_needed;
  });
  const auto& slid = worst_case(wall, [](const WallLoadCase& a, const WallLoadCase& b) {
    return a.sliding / a.sliding_needed < b.sliding / b.sliding_needed;
  });
  if (std::isfinite(turned.overturning))
    safety.findings.push_back(behind(
        limit_finding(
            "walls.overturning", "Safety of the wall against overturning, free-standing", turned.overturning,
            LimitSense::at_least, turned.overturning_needed, dimension::none, Status::caution,
            case_text(turned) + " An L-shaped wall " + quantity_token(wall.base, dimension::length) + " wide at its base." +
                ground_words(view),
            "Preliminary: a structural engineer must design the walls. Widen the base, drain the fill, or tie wall and slab.",
            first_check),
        view, turned, "walls.base_width"));
  if (std::isfinite(slid.sliding))
    safety.findings.push_back(
        behind(limit_finding("walls.sliding", "Safety of the wall against sliding, without the slab as a strut", slid.sliding,
                             LimitSense::at_least, slid.sliding_needed, dimension::none, Status::caution,
                             case_text(slid) + " The slab between the walls usually carries what friction does not.",
                             "Preliminary: let the slab act as a strut, or key the base.", sliding_rule),
               view, slid, "walls.base_friction"));
  add_bearing(view, safety);
}

}  // namespace

void judge_walls(const BasinView& view, Safety& safety) {
  auto& wall = safety.wall;
  if (!(view.wall_height > 0.0) || !(view.wall_thickness > 0.0)) return;
  const double wished = view.site.walls.base_width;
  const WallSection section(view, wished > 0.0 ? wished : base_share * view.wall_height);
  wall.height = view.wall_height;
  wall.thickness = view.wall_thickness;
  wall.base = section.base();
  double velocity = 0.0;
  double highest = no_flow_depth(view);
  for (const auto& state : view.states) {
    velocity = std::max(velocity, state.toe->V1);
    highest = std::max(highest, state.available_depth);
  }
  wall.fluctuation = peak_pulse(view, velocity);
  wall.cases.reserve(5);
  // Ground water stands no higher than the ground; what stands free above it falls with the river.
  const double ground_water = std::min(safety.flotation.groundwater_level - view.apron_level, section.fill());
  wall.cases.push_back(section.under(empty_basin, {.outside = ground_water, .inside = -view.slab_thickness}, true));
  const double stopped = no_flow_depth(view);
  const double left = stopped + view.site.walls.drawdown_lag * (highest - stopped);
  wall.cases.push_back(
      section.under(drawdown, {.outside = std::max(stopped, std::min(left, section.fill())), .inside = stopped}, true));
  judge_operating(view, section, safety);
  judge_earthquake(view, section, safety);
  add_findings(view, safety);
  safety.findings.push_back(
      choice_note("walls.fluctuation", "Peak pressure of the jump on a wall, local", wall.fluctuation, dimension::pressure,
                  quantity_token(view.site.walls.fluctuation_peak, dimension::none) + " times an rms of " +
                      quantity_token(view.site.walls.fluctuation_rms, dimension::none) +
                      " velocity heads: uncertain, over the wetted height of the roller.",
                  {"practice", "three to five times the rms", Provenance::common_practice}));
  const auto& given_walls = view.site.walls;
  safety.findings.back().key = "walls.fluctuation_rms";
  safety.findings.back().method = {
      &hydraulics::record::wall_pulse,
      {given(given_walls.fluctuation_peak, "walls.fluctuation_peak"),
       given(given_walls.fluctuation_rms, "walls.fluctuation_rms"), told(velocity, "largest velocity of the entering flow")}};
}

}  // namespace quell::checks
