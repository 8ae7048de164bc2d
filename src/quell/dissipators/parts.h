// Pieces that several types share: rows of blocks that fill a width, their outlines, and findings with a limit.
#pragma once

#include "quell/dissipators/catalogue.h"

namespace quell::dissipators {

/// A row across the basin: 2*clearance + count*width + (count-1)*spacing = basin width.
struct Row {
  int count;
  double width, spacing, clearance;  ///< m
};

/// Blocks as wide as their spaces with half a space at each wall; `nominal` is the width aimed at. At least one block.
Row half_space_row(double basin_width, double nominal);

/// Dentates as wide as their spaces with one against each wall, none wider than `widest`.
Row dentate_row(double basin_width, double widest);

/// Chute blocks of height h on a chute of `slope`: level top, vertical downstream face at the toe.
Element chute_blocks(double basin_width, double height, double nominal_width, double slope);

/// The flow of the largest discharge, which sizes the elements.
const site::ToeFlow& sizing_flow(const SizingInput& input);

/// Length, invert curve and freeboard, which every jump basin takes from its flows in the same way; `length_method` is the
/// method behind Dissipator::length, from F1 and y2.
Structure common_structure(const Dissipator& type, const SizingInput& input, const Method& length_method, Working* working);

/// Smallest radius of the curve between chute and apron: 5 y1 for chutes of 45 degrees and steeper (4 y1 is the published
/// least), none for flatter ones, which may meet the apron at an angle.
double invert_radius(double chute_slope, double largest_depth);

/// The largest value of a member over the flows, with its discharge.
struct Extreme {
  double value, discharge;
};
Extreme largest(std::span<const site::ToeFlow> flows, double site::ToeFlow::* member);
Extreme smallest(std::span<const site::ToeFlow> flows, double site::ToeFlow::* member);

/// Where a rule comes from.
struct Rule {
  const char* source;
  const char* place;
  Provenance provenance;
};
inline constexpr Rule common_practice{"practice", "", Provenance::common_practice};

/// A finding with a limit: judged, and with the advice only where it is not met.
Finding limit_finding(std::string id, std::string title, double value, LimitSense sense, double limit, Dimension dimension,
                      Status otherwise, std::string text, std::string advice, const Rule& rule);

/// Marks a limit of the tested range: where it is not met, a physical model is required.
Finding tested_limit(Finding finding);

/// The limits of inflow Froude number of a basin for steady jumps: 4.5 at every discharge, and `highest` as a caution, since
/// small discharges pass it without governing anything.
Findings froude_limits(std::string_view type_id, const SizingInput& input, const Rule& lowest_rule, double highest,
                       const Rule& highest_rule);

/// "at 430 m3/s" as a token, for texts of findings that name a discharge.
std::string at_discharge(double discharge);

}  // namespace quell::dissipators
