// A dissipator sized on flows given by depth and velocity: what unit and property tests start from.
#pragma once

#include <algorithm>
#include <cmath>
#include <stdexcept>
#include <vector>

#include "quell/dissipators/catalogue.h"

namespace quell::test {

inline constexpr double foot = 0.3048;

/// A toe flow from depth and velocity on a level apron at level 0.
inline site::ToeFlow flow_of(double y1, double V1, double width) {
  site::ToeFlow flow{.discharge = y1 * V1 * width, .width = width, .unit_discharge = y1 * V1, .y1 = y1, .V1 = V1};
  flow.F1 = V1 / std::sqrt(9.81 * y1);
  flow.y2 = y1 / 2 * (std::sqrt(1 + 8 * flow.F1 * flow.F1) - 1);
  flow.energy_head = y1 + V1 * V1 / 2 / 9.81;
  flow.reservoir_level = flow.energy_head;
  return flow;
}

/// Flows with what a site adds to them; the apron lies at level 0 and the crest at the reservoir's level less a tenth.
struct DissipatorCase {
  std::vector<site::ToeFlow> flows;
  site::BasinChoices choices{};
  double slope = 1.25;
  double fall = 30.0;  ///< m, crest above the apron
  std::vector<std::array<double, 3>> levels{};
  double bed_level = 1.0;
  double length = 0.0;  ///< m, held; 0: as the type asks

  dissipators::Setting setting() const {
    return {.choices = choices,
            .width = flows.back().width,
            .length = length,
            .chute_slope = slope,
            .crest_level = fall,
            .bed_level = bed_level,
            .lowest_bed_level = bed_level};
  }

  /// Calls `look(setting, input)` with a tailwater of 1.05 sequent depths where none is given.
  template <class Look>
  auto with_input(Look look) const {
    auto tailwater = levels;
    if (tailwater.empty())
      for (const auto& flow : flows) tailwater.push_back({1.05 * flow.y2, 1.05 * flow.y2, 1.05 * flow.y2});
    const auto set = setting();
    const dissipators::SizingInput input{.setting = set, .flows = flows, .tailwater_levels = tailwater, .apron_level = 0.0};
    return look(input);
  }

  dissipators::Structure size(std::string_view id) const {
    return with_input([&](const auto& input) { return dissipators::find_dissipator(id)->size(input, nullptr); });
  }

  /// The limits of its record and what it says of its own structure.
  Findings findings(std::string_view id) const {
    const auto* type = dissipators::find_dissipator(id);
    return with_input([&](const auto& input) {
      auto findings = dissipators::judge_limits(type->record(), input);
      for (auto& finding : type->findings(input, type->size(input, nullptr))) findings.push_back(std::move(finding));
      return findings;
    });
  }

  dissipators::TailwaterNeed need(std::string_view id) const {
    return dissipators::find_dissipator(id)->tailwater_need(flows.back(), setting());
  }
};

inline const dissipators::Element& element(const dissipators::Structure& structure, std::string_view kind) {
  const auto found = std::find_if(structure.elements.begin(), structure.elements.end(),
                                  [&](const dissipators::Element& e) { return e.kind == kind; });
  if (found == structure.elements.end()) throw std::runtime_error("no element " + std::string(kind));
  return *found;
}

inline const Finding& finding(const Findings& findings, std::string_view id) {
  const auto found = std::find_if(findings.begin(), findings.end(), [&](const Finding& f) { return f.id == id; });
  if (found == findings.end()) throw std::runtime_error("no finding " + std::string(id));
  return *found;
}

}  // namespace quell::test
