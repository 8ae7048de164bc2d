// Symbols of a surveyed river section among the inputs of a method, and the section they make.
#pragma once

#include <limits>
#include <string_view>

#include "quell/hydraulics/river_section.h"

namespace quell::hydraulics::record {

inline constexpr double must_be_given = std::numeric_limits<double>::quiet_NaN();
inline constexpr Range usual_n{0.008, 0.3};
inline constexpr Symbol left_symbol{"xl", "station of the left bank of the main channel", dimension::length, any_value};
inline constexpr Symbol right_symbol{"xr", "station of the right bank of the main channel", dimension::length, any_value};
inline constexpr Symbol n_left{"nl", "Manning's roughness of the left plain", dimension::manning, usual_n};
inline constexpr Symbol n_channel{"n", "Manning's roughness of the main channel", dimension::manning, usual_n};
inline constexpr Symbol n_right{"nr", "Manning's roughness of the right plain", dimension::manning, usual_n};
inline constexpr Symbol x_list{
    "x", "stations of the points, from the left to the right end", dimension::length, any_value, must_be_given, {}, true};
inline constexpr Symbol z_list{"z", "levels of the points", dimension::length, any_value, must_be_given, {}, true};

inline constexpr std::string_view above_the_bank =
    "the water stands above the lower end of the survey, where the walls are taken as vertical";

/// From the values of a method whose section (xl, xr, nl, n, nr, x, z) stands behind `before` single numbers.
Outcome<RiverSection> section_from(std::span<const double> in, std::size_t before);

}  // namespace quell::hydraulics::record
