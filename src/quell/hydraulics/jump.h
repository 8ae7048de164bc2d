// The classical hydraulic jump: smooth horizontal bed, rectangular section, hydrostatic pressure before and after.
//
// y1, V1, F1 = V1/sqrt(g y1) stand before the jump, y2 after it; Y = y2/y1. Sequent depth and loss follow from momentum and
// energy and are exact under these assumptions (F1 > 1); lengths are fits to laboratory data and good to about 10 %.
#pragma once

#include <string_view>

#include "quell/base/constants.h"
#include "quell/base/method.h"

namespace quell::hydraulics {

/// F = V/sqrt(g y), y > 0.
double froude_number(double velocity, double depth);

struct JumpInflow {
  double y1;  ///< m, > 0
  double V1;  ///< m/s, > 0
};

/// y2 (m) by Belanger: y1/2 (sqrt(1 + 8 F1^2) - 1). For F1 < 1 it returns the depth before the jump that ends at y1.
double sequent_depth(const JumpInflow& inflow);

struct SequentDepths {
  double y1;  ///< m, > 0
  double y2;  ///< m, > 0
};
/// dE (m) = (y2 - y1)^3/(4 y1 y2); positive where y2 > y1.
double jump_energy_loss(const SequentDepths& depths);

struct JumpLengthInput {
  double F1;
  double y2;  ///< m
};
/// Lj (m): length of the free jump on a horizontal apron by the curve of Engineering Monograph 25. F1 1.7 to 18; outside the
/// curve's end value is held.
double jump_length(const JumpLengthInput& input);

struct RollerInput {
  double F1;
  double y1;  ///< m
};
/// Lr (m) = y1 (160 tanh(F1/20) - 12) (Hager, Bremen and Kawagoshi 1990), 2.5 < F1 < 16, y1/b < 0.1; never below zero.
double roller_length(const RollerInput& input);

/// Lj (m) = 220 y1 tanh((F1 - 1)/22) (Hager 1992): the independent fit beside the curve.
double jump_length_hager(const RollerInput& input);

/// Class of a jump by the Froude number before it. The limits 1.7, 2.5, 4.5, 9 are not sharp.
enum class JumpClass { none = 0, undular = 1, weak = 2, oscillating = 3, steady = 4, strong = 5 };
JumpClass classify_jump(double F1);
std::string_view name_of(JumpClass jump_class);
std::string_view meaning_of(JumpClass jump_class);  ///< what it does and what that means for the design

namespace record {
extern const Method froude_number;
extern const Method sequent_depth_rectangular;
extern const Method energy_loss_rectangular;
extern const Method jump_length_em25;
extern const Method roller_length_hager_1990;
extern const Method jump_length_hager_1992;
extern const Method jump_class_em25;
}  // namespace record

}  // namespace quell::hydraulics
