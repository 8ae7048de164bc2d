// A number that goes into a step of the workings, and where it comes from: the site file, an earlier step, or what is told.
#pragma once

#include <string_view>

namespace quell {

struct StepInput {
  double value = 0.0;        ///< SI
  std::string_view key{};    ///< key of the site file, "crest.design_head"; empty where the number was computed
  std::string_view words{};  ///< where it comes from, for a reader; empty where the key or an earlier step says it
  constexpr StepInput() = default;
  // NOLINTNEXTLINE(google-explicit-constructor): most inputs are computed and are written as they are
  constexpr StepInput(double number) : value(number) {}
  constexpr StepInput(double number, std::string_view site_key, std::string_view origin)
      : value(number), key(site_key), words(origin) {}
};

/// An input of the site file, or what follows from it alone (a tangent from a slope, a step height from a number of steps).
constexpr StepInput given(double value, std::string_view key) {
  return {value, key, {}};
}

/// A number that neither the site file nor a step gives: where it comes from, in words that live as long as the program ("found
/// by trial", "side of the block as set out"). An earlier step that yields it is shown instead.
constexpr StepInput told(double value, std::string_view words) {
  return {value, {}, words};
}

}  // namespace quell
