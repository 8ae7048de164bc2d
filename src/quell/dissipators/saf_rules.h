// Rules of the St. Anthony Falls (SAF) basin, shared by its rectangular and its flared form.
//
// Source: Blaisdell (1959) and Hydraulic Engineering Circular 14, recalled. F1 = V1/sqrt(g y1); the first source writes F for
// its square.
#pragma once

#include "quell/dissipators/parts.h"

namespace quell::dissipators::saf_rules {

/// C: published tailwater over the sequent depth, F1 1.7 to 17; held at 17 beyond.
double tailwater_factor(double F1) noexcept;

/// Depth (m) that design must provide: C y2, with 5 % of y2 on top where the choice asks for a reserve.
double required_depth(double F1, double y2, const site::BasinChoices& choices) noexcept;

/// L (m) = 4.5 y2/F1^0.76, y2 the sequent depth of a rectangular basin.
double basin_length(double F1, double y2) noexcept;

/// Chute blocks N1 = floor(W/(1.5 y1)), as wide as their spaces; half a block stands at each wall.
Row chute_row(double width, double y1);

/// Chute blocks with their halves at the walls, floor blocks at a third of the length opposite the openings, and the sill.
/// `width_at` gives the clear width over x.
void add_elements(Structure& structure, const SizingInput& input, double (*width_at)(double x, const Structure&, double width),
                  Working* working);

/// Greatest third of the sequent depth, m: what the walls rise above the tailwater.
double wall_freeboard(std::span<const site::ToeFlow> flows, Working* working);

Findings findings(std::string_view type_id, const SizingInput& input, const Structure& structure);

std::span<const Method* const> methods();
const Method& tailwater_record();
const Method& reserve_record();
const Method& length_record();

}  // namespace quell::dissipators::saf_rules
