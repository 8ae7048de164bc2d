// The formulas behind the published lengths, shared by their records and by the band. Private to hydraulics.
#pragma once

#include <algorithm>
#include <cmath>

#include "quell/hydraulics/jump_lengths.h"

namespace quell::hydraulics::fit {

/// Where no range is published the fit is taken for jumps with a roller, as far as the longest of the published ranges.
inline constexpr Range unpublished{1.7, 20.0};
inline constexpr Range bakhmeteff_range{2.5, 4.5};
inline constexpr Range marques_range{4.5, 10.0};
inline constexpr Range hager_range{1.0, 20.0};
inline constexpr Range em25_range{1.7, 18.0};

inline double rise(const JumpShape& j) {
  return j.y2 - j.y1;
}
inline double em25(const JumpShape& j) {
  return jump_length({.F1 = j.F1, .y2 = j.y2});
}
inline double hager(const JumpShape& j) {
  return jump_length_hager({.F1 = j.F1, .y1 = j.y1});
}
inline double elevatorski(const JumpShape& j) {
  return 6.9 * rise(j);
}
inline double smetana(const JumpShape& j) {
  return 6.0 * rise(j);
}
inline double bakhmeteff(const JumpShape& j) {
  return 5.0 * rise(j);
}
inline double kinney(const JumpShape& j) {
  return 6.02 * rise(j);
}
inline double aravin(const JumpShape& j) {
  return 5.4 * rise(j);
}
inline double pavlovski(const JumpShape& j) {
  return 2.5 * (1.9 * j.y2 - j.y1);
}
inline double chertousov(const JumpShape& j) {
  return 10.3 * j.y1 * std::pow(j.F1 - 1.0, 0.81);
}
inline double silvester(const JumpShape& j) {
  return 9.75 * j.y1 * std::pow(j.F1 - 1.0, 1.01);
}
inline double silvester_triangle(const JumpShape& j) {
  return 4.26 * j.y1 * std::pow(j.F1 - 1.0, 0.695);
}
inline double ivanchenko(const JumpShape& j) {
  return 10.6 * rise(j) * std::pow(j.F1, -0.37);
}
inline double woycicki(const JumpShape& j) {
  return std::max(0.0, rise(j) * (8.0 - 0.05 * j.y2 / j.y1));
}
inline double marques(const JumpShape& j) {
  return 8.5 * rise(j);
}
inline double marques_roller(const JumpShape& j) {
  return 6.0 * rise(j);
}
inline double carollo_roller(const JumpShape& j) {
  return 4.62 * rise(j);
}
inline double hager_roller(const JumpShape& j) {
  return std::max(0.0, 8.0 * j.y1 * (j.F1 - 1.5));
}
inline double wang_roller(const JumpShape& j) {
  return 6.0 * j.y1 * (j.F1 - 1.0);
}
inline double safranez_roller(const JumpShape& j) {
  return 5.9 * j.y1 * j.F1;
}
inline double narrow_roller(const JumpShape& j) {
  return roller_length_narrow({.F1 = j.F1, .y1 = j.y1});
}

// --- what the records share

using Values = std::span<const double>;
using Results = std::span<double>;

/// Inputs y1, y2.
template <double (*length)(const JumpShape&)>
Outcome<void> from_depths(Values in, Results out) {
  if (in[1] < in[0]) return bad_input("y2", in[1], in[0], no_limit, "the depth after a jump is above that before it");
  out[0] = length({.F1 = froude_number_of({.y1 = in[0], .y2 = in[1]}), .y1 = in[0], .y2 = in[1]});
  return {};
}

/// Inputs F1, y1.
template <double (*length)(const JumpShape&)>
Outcome<void> from_froude(Values in, Results out) {
  if (!(in[0] > 1.0)) return bad_input("F1", in[0], 1.0, no_limit, "flow that is not supercritical makes no jump");
  out[0] = length({.F1 = in[0], .y1 = in[1], .y2 = 0.0});
  return {};
}

/// Condition of the records that take the depths alone.
template <const Range& range>
std::string_view froude_within(Values in) {
  const double F1 = froude_number_of({.y1 = in[0], .y2 = in[1]});
  return range.contains(F1) ? std::string_view{} : "the Froude number of these depths lies outside the range of the fit";
}

}  // namespace quell::hydraulics::fit
