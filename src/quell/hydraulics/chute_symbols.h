// Symbols that many methods of the chute share: the angle of the bed, and degrees in the code.
#pragma once

#include <limits>

#include "quell/base/method.h"

namespace quell::hydraulics {

inline constexpr double must_be_given = std::numeric_limits<double>::quiet_NaN();
inline constexpr double degree = 0.017453292519943295;           ///< rad
inline constexpr double steepest_angle = 89.9 * degree;          ///< rad: beyond, a bed is a wall and its cosine vanishes
inline constexpr Dimension per_length{-6, 0, 0};                 ///< curvature, 1/m
inline constexpr Dimension chezy = dimension::weir_coefficient;  ///< m^(1/2)/s

/// Angle of a bed to the horizontal (rad), to be trusted from `lowest` to `highest` and refused where it is no slope.
constexpr Symbol bed_angle(Text name, double lowest, double highest) {
  return {name, "angle of the bed to the horizontal", dimension::none, {lowest, highest}, must_be_given, {0.0, steepest_angle}};
}

}  // namespace quell::hydraulics
