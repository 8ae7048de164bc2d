// Pieces that several types share: rows of blocks that fill a width, their outlines, walls and length of a jump basin, and
// findings with a limit.
#pragma once

#include "quell/base/step_input.h"
#include "quell/dissipators/catalogue.h"

namespace quell::dissipators {

/// Where numbers of the workings come from.
inline constexpr std::string_view of_longest = "of the discharge that asks for the longest basin";
inline constexpr std::string_view of_largest = "of the largest discharge";

/// A row across the basin: 2*clearance + count*width + (count-1)*spacing = basin width.
struct Row {
  int count;
  double width, spacing, clearance;  ///< m
};

/// Blocks as wide as their spaces with half a space at each wall; `nominal` is the width aimed at. At least one block.
Row half_space_row(double basin_width, double nominal);

/// Dentates as wide as their spaces with one against each wall, none wider than `widest`.
Row dentate_row(double basin_width, double widest);

/// An element of that row, still without its outline.
Element element_of(const Row& row, double basin_width, double height);

/// Chute blocks of height h on a chute of `slope`: level top, vertical downstream face at the toe.
Element chute_blocks(const Row& row, double basin_width, double height, double slope);

/// Baffle piers with a vertical upstream face at `face`, a top of 0.2 of the height and a downstream face 1:1.
Element baffle_piers(const Row& row, double basin_width, double height, double face);

/// A sill over the whole width, upstream face `run`:1 (horizontal to vertical), that ends at `basin_end`.
Element solid_sill(double basin_width, double height, double run, double basin_end);

/// Dentated sill of height 0.2 y2 with dentates no wider than 0.15 y2, that ends at `basin_end`.
Element dentated_sill(double basin_width, double y2, double basin_end);

/// Height (m) of the solid end sill from F1 and y1, F1 held between `lowest` and 17.
double solid_sill_height(double F1, double y1, double lowest) noexcept;

/// The flow of the largest discharge, which sizes the elements.
const site::ToeFlow& sizing_flow(const SizingInput& input);

/// The flow that asks for the greatest length.
const site::ToeFlow& longest_flow(const Dissipator& type, const SizingInput& input);

/// Length, invert curve, freeboard and level floor, which every basin for a jump on a level apron takes from its flows in the
/// same way.
Structure jump_basin(const Dissipator& type, const SizingInput& input, Working* working);

/// Greatest of 0.1 (V1 + y2) over the flows, m.
double largest_freeboard(std::span<const site::ToeFlow> flows, Working* working);

/// Smallest radius of the curve between chute and apron for chutes of 45 degrees and steeper, none for flatter ones, which may
/// meet the apron at an angle.
double invert_radius(const Setting& setting, double largest_depth);

/// The length that the type asks for and, where the site file holds none, has; with a horizontal floor over it.
void set_length(Structure& structure, double required, const Setting& setting);

/// Horizontal floor from 0 to the structure's length.
void set_level_floor(Structure& structure);

/// Adds the force on one element's upstream face as if the entering jet met it whole: the basin swept out.
void add_face_load(Structure& structure, std::string_view kind, std::string_view name, double area, const StepInput& V1,
                   Working* working);

/// The largest value of a member over the flows, with its discharge.
struct Extreme {
  double value, discharge;
};
Extreme largest(std::span<const site::ToeFlow> flows, double site::ToeFlow::* member);
Extreme smallest(std::span<const site::ToeFlow> flows, double site::ToeFlow::* member);

/// Where a rule comes from.
struct Rule {
  std::string_view source;
  std::string_view place;
  Provenance provenance;
};
inline constexpr Rule common_practice{"practice", "", Provenance::common_practice};

/// A finding with a limit: judged, and with the advice only where it is not met.
Finding limit_finding(std::string id, std::string title, double value, LimitSense sense, double limit, Dimension dimension,
                      Status otherwise, std::string text, std::string advice, const Rule& rule);

/// A statement without a limit: which of several published rules was used, and what the other one would give.
Finding choice_note(std::string id, std::string title, double value, Dimension dimension, std::string text, const Rule& rule);

/// Width of blocks over the width that their rule aims at: whole blocks may make them wider.
Finding width_finding(std::string_view type_id, std::string_view what, double width, double nominal, const Rule& rule);

/// "at 430 m3/s" as a token, for texts of findings that name a discharge.
std::string at_discharge(double discharge);

}  // namespace quell::dissipators
