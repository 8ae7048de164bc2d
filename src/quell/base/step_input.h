// A number that goes into a step of the workings, and where it stands in the site file where it is one of the inputs.
#pragma once

#include <string_view>

namespace quell {

struct StepInput {
  double value = 0.0;      ///< SI
  std::string_view key{};  ///< key of the site file, "crest.design_head"; empty where the number was computed
  constexpr StepInput() = default;
  // NOLINTNEXTLINE(google-explicit-constructor): most inputs are computed and are written as they are
  constexpr StepInput(double number) : value(number) {}
  constexpr StepInput(double number, std::string_view site_key) : value(number), key(site_key) {}
};

/// An input of the site file, or what follows from it alone (a tangent from a slope, a step height from a number of steps).
constexpr StepInput given(double value, std::string_view key) {
  return {value, key};
}

}  // namespace quell
