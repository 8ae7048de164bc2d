// What a stepped chute delivers to the basin: the energy head that is left at its toe.
#pragma once

#include <optional>

#include "quell/hydraulics/stepped_energy.h"

namespace quell::hydraulics {

enum class SteppedRegime { nappe, transition, skimming };

/// "nappe flow", "transition", "skimming flow".
std::string_view name_of(SteppedRegime regime);

/// Whose relation for the energy head that is left.
enum class SteppedBasis { boes_hager, hunt_kadavy, chanson };

struct SteppedChuteInput {
  double q;            ///< m2/s, > 0
  double step_height;  ///< s, m, > 0
  double phi;          ///< angle of the line through the step edges, rad, > 0
  double Hdam;         ///< drop from the crest to the toe, m, >= 0
  /// Where none is named: Boes and Hager above 26 degrees (they leave the most energy, the safe side), Hunt and Kadavy below.
  std::optional<SteppedBasis> basis = std::nullopt;
};

struct SteppedToe {
  SteppedRegime regime;        ///< by Chanson's limits
  SteppedBasis basis;          ///< the relation used
  double residual_head;        ///< Hres: energy head over the toe, m
  double depth;                ///< clear-water depth at the toe, normal to the step edges, m
  double inception_length;     ///< Li along the step edges, m; by the authors of `basis`
  double length;               ///< from the crest to the toe along the step edges, m
  double mixture_depth;        ///< h90 of uniform flow, Boes and Hager, m: for the walls
  std::string_view objection;  ///< why the result lies outside what the authors measured; empty where it does not
  constexpr bool inside_range() const { return objection.empty(); }
  constexpr bool aerated() const { return length > inception_length; }
};

/// The depth is the supercritical one of the energy head that is left, with the energy coefficient of the authors (1.1 Boes and
/// Hager, 1 the others), and not below the depth that Hunt and Kadavy measured where theirs is the basis. Hres is continuous in
/// q and Hdam except where `basis` is left open and phi passes 26 degrees. No answer where an input is impossible or the head
/// would not carry q. Allocates nothing.
Outcome<SteppedToe> stepped_chute_toe(const SteppedChuteInput& input) noexcept;

namespace record {
extern const Method stepped_toe;
}  // namespace record

}  // namespace quell::hydraulics
