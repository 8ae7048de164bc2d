// The limits of use of a type's record, judged over all discharges.
#include <cmath>

#include "quell/base/constants.h"
#include "quell/dissipators/parts.h"
#include "quell/hydraulics/definitions.h"
#include "quell/hydraulics/jump.h"
#include "quell/hydraulics/section.h"

namespace quell::dissipators {

std::string_view name_of(Action action) {
  static constexpr std::string_view names[] = {"level_jump", "sloping_jump", "roller", "blocks",
                                               "impact",     "fall",         "pool",   "jet"};
  return names[static_cast<std::size_t>(action)];
}

std::string_view name_of(Measure measure) {
  static constexpr std::string_view names[measure_count] = {
      "Froude number at the toe", "Unit discharge",    "Velocity at the toe",      "Discharge",
      "Fall from crest to apron", "Head on the apron", "Fall over critical depth", "Slope of the chute"};
  return names[static_cast<std::size_t>(measure)];
}

Dimension dimension_of(Measure measure) {
  static constexpr Dimension dimensions[measure_count] = {
      dimension::none,   dimension::unit_discharge, dimension::velocity, dimension::discharge,
      dimension::length, dimension::length,         dimension::none,     dimension::none};
  return dimensions[static_cast<std::size_t>(measure)];
}

double value_of(Measure measure, const site::ToeFlow& flow, const SizingInput& input) {
  const double fall = input.setting.crest_level - input.apron_level;
  switch (measure) {
    case Measure::froude_number: return flow.F1;
    case Measure::unit_discharge: return flow.unit_discharge;
    case Measure::velocity: return flow.V1;
    case Measure::discharge: return flow.discharge;
    case Measure::fall: return fall;
    case Measure::head: return flow.reservoir_level - input.apron_level;
    case Measure::fall_ratio: return fall / std::cbrt(flow.unit_discharge * flow.unit_discharge / gravity);
    case Measure::chute_slope: break;
  }
  return input.setting.chute_slope;
}

namespace {

/// Of each discharge, so that the finding names the one that decides.
bool varies(Measure measure) {
  return measure != Measure::fall && measure != Measure::chute_slope;
}

/// What gives the measure its value at one discharge. The slope of the chute is given as it is.
FindingMethod method_of(Measure measure, const site::ToeFlow& flow, const SizingInput& input) {
  const StepInput crest = given(input.setting.crest_level, "crest.level");
  constexpr std::string_view deciding = "of the discharge that decides";
  constexpr std::string_view found = "level of the apron, as this option sets it";
  switch (measure) {
    case Measure::froude_number:
      return {&hydraulics::record::froude_number, {told(flow.V1, deciding), told(flow.y1, deciding)}};
    case Measure::unit_discharge:
      return {&hydraulics::record::unit_discharge,
              {told(flow.discharge, deciding), flow.width == input.setting.width
                                                   ? given(flow.width, "basin.width")
                                                   : told(flow.width, "of the bay that is loaded most")}};
    case Measure::velocity:
      return {&hydraulics::record::mean_velocity, {told(flow.unit_discharge, deciding), told(flow.y1, deciding)}};
    case Measure::fall: return {&hydraulics::record::level_difference, {crest, told(input.apron_level, found)}};
    case Measure::head:
      return {&hydraulics::record::level_difference,
              {told(flow.reservoir_level, "of the reservoir, at the discharge that decides"), told(input.apron_level, found)}};
    case Measure::fall_ratio: return {&hydraulics::record::critical_depth_rectangular, {told(flow.unit_discharge, deciding)}};
    case Measure::discharge:
    case Measure::chute_slope: break;
  }
  return {};
}

Finding judge_limit(const Limit& limit, const SizingInput& input) {
  const auto flows = limit.largest_only ? input.flows.last(1) : input.flows;
  const site::ToeFlow* deciding = &flows.front();
  Extreme worst{value_of(limit.measure, *deciding, input), deciding->discharge};
  for (const auto& flow : flows) {
    const double value = value_of(limit.measure, flow, input);
    if (limit.sense == LimitSense::at_least ? value >= worst.value : value <= worst.value) continue;
    worst = {value, flow.discharge};
    deciding = &flow;
  }
  std::string text;
  if (varies(limit.measure))
    text = std::string(limit.sense == LimitSense::at_least ? "The smallest" : "The largest") + " of the range stands " +
           at_discharge(worst.discharge) + ".";
  else
    text = limit.measure == Measure::fall ? "Measured from the crest to the apron."
                                          : "Slope of the last reach of the chute, fall per horizontal length.";
  if (limit.largest_only) text = "At the largest discharge.";
  if (!limit.text.empty()) text += " " + std::string(limit.text);
  auto finding = limit_finding(std::string(limit.id.view()), std::string(limit.title.view()), worst.value, limit.sense,
                               limit.limit, dimension_of(limit.measure), limit.otherwise, std::move(text),
                               std::string(limit.advice.view()), {limit.source.view(), limit.place, limit.provenance});
  finding.method = method_of(limit.measure, *deciding, input);
  if (limit.measure == Measure::chute_slope) finding.key = "chute.slope";
  finding.asks_for_model = limit.of_tests && finding.status != Status::ok;
  return finding;
}

}  // namespace

Findings judge_limits(const TypeRecord& record, const SizingInput& input) {
  Findings findings;
  findings.reserve(record.limits.size() + 1);
  for (const auto& limit : record.limits) findings.push_back(judge_limit(limit, input));
  if (!record.withheld.empty())
    findings.push_back({.id = std::string(record.id.view()) + ".sized",
                        .status = Status::fails,
                        .title = "Proportions of the elements have a source that could be read",
                        .value = 0.0,
                        .limit = 1.0,
                        .sense = LimitSense::at_least,
                        .dimension = dimension::none,
                        .text = std::string(record.withheld),
                        .advice = "Take the publication named in hand and size the elements from it; choose a type that is "
                                  "sized here meanwhile.",
                        .source = std::string(record.source.view()),
                        .place = std::string(record.place.view()),
                        .provenance = record.provenance});
  return findings;
}

}  // namespace quell::dissipators
