#include "quell/design/states.h"

#include <algorithm>

#include "quell/site/gates.h"

namespace quell::design {

std::vector<checks::TailwaterState> states_of(const Option& option, const dissipators::Setting& setting) {
  std::vector<checks::TailwaterState> states;
  const auto add = [&](const CaseResult& result) {
    states.push_back({.toe = &result.toe,
                      .tailwater_case = result.tailwater_case,
                      .tailwater_level = option.apron_level + result.available_depth,
                      .need = result.need,
                      .required_depth = result.required_depth,
                      .available_depth = result.available_depth});
  };
  // The governing discharge may lie between those of the range; it comes first, and the largest discharge stays last. Gate
  // patterns are judged apart.
  const auto& governing = option.governing;
  if (governing.gate_pattern.empty())
    states.push_back({.toe = &governing.toe,
                      .tailwater_case = governing.tailwater_case,
                      .tailwater_level = governing.tailwater_level,
                      .need = option.type->tailwater_need(governing.toe, setting),
                      .required_depth = governing.required_depth,
                      .available_depth = governing.available_depth});
  for (const auto& result : option.cases) add(result);
  return states;
}

std::vector<checks::PatternState> pattern_states(const PreparedSite& prepared, const Option& option) {
  std::vector<checks::PatternState> states;
  const auto patterns = site::all_patterns(prepared.site);
  for (std::size_t i = 0; i < prepared.patterns.size(); ++i) {
    const auto& data = prepared.patterns[i].data;
    const auto& low = option.pattern_cases[i * site::tailwater_cases.size()];
    const auto pattern = std::find_if(patterns.begin(), patterns.end(),
                                      [&](const site::GatePattern& one) { return one.name == data.gate_pattern; });
    states.push_back({.name = data.gate_pattern,
                      .toe = &low.toe,
                      .discharge = data.discharge,
                      .tailwater_level = option.apron_level + low.available_depth,
                      .margin = low.margin,
                      .sweep_out_reserve = low.available_depth - low.need.sweep_out,
                      .required_depth = low.required_depth,
                      .sweep_out_depth = low.need.sweep_out,
                      .largest_step = pattern == patterns.end() ? 0.0 : site::largest_step(*pattern),
                      .is_check = data.is_check});
  }
  return states;
}

}  // namespace quell::design
