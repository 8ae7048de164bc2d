// Published lengths of the jump and of its roller, and how far they lie apart.
//
// Smooth horizontal bed, rectangular section unless said otherwise. Lengths count from the toe, in m. A roller length ends at
// the surface stagnation point; a jump length ends where the jet leaves the floor, where the surface is level, or where the
// flow has become that of the channel: each author has his own end, so that a roller length and a jump length are never mixed.
// All are fits to laboratory data: +-10 % is a good result, +-20 % usual, and two digits are what they deserve.
#pragma once

#include <span>
#include <string_view>

#include "quell/base/method.h"
#include "quell/hydraulics/jump.h"

namespace quell::hydraulics {

struct JumpShape {
  double F1;  ///< Froude number before the jump, > 1
  double y1;  ///< m, > 0
  double y2;  ///< m, > y1
};

/// F1 = sqrt(Y (Y + 1)/2), Y = y2/y1: the Froude number that belongs to two sequent depths.
double froude_number_of(const SequentDepths& depths);

/// A published length of the jump with the Froude numbers for which it is meant.
struct LengthFit {
  std::string_view author;
  Range F1;  ///< as published; 1.7 to 20 where nothing is published
  double (*length)(const JumpShape&);
};
/// The published lengths of the jump (not of the roller), the curve of Engineering Monograph 25 among them.
std::span<const LengthFit> jump_length_fits();

struct LengthBand {
  double lowest = 0.0;   ///< m
  double highest = 0.0;  ///< m
  int count = 0;         ///< how many fits are meant for this Froude number
};
/// Lowest and highest of `jump_length_fits` inside their ranges. F1 1.7 to 20; outside no fit is meant and there is no answer.
Outcome<LengthBand> jump_length_band(const JumpShape& jump);

/// Lr (m) = y1 (100 tanh(F1/12.5) - 12) for narrow flumes, 0.1 < y1/b < 0.7 (Hager, Bremen and Kawagoshi 1990); never below 0.
double roller_length_narrow(const RollerInput& input);

struct TrapezoidLengthInput {
  double m;   ///< side slope, horizontal to 1 vertical, 0 to 1.5
  double y1;  ///< m
  double y2;  ///< m
};
/// Lj (m) = Kz (y2 - y1) in a trapezoidal section, Kz by a table attributed to Sienchin; the end value is held outside.
double jump_length_trapezoidal(const TrapezoidLengthInput& input);

namespace record {
extern const Method jump_length_smetana_1934;
extern const Method jump_length_bakhmeteff_1936;
extern const Method jump_length_kinney_1935;
extern const Method jump_length_aravin_1935;
extern const Method jump_length_pavlovski_1940;
extern const Method jump_length_chertousov_1935;
extern const Method jump_length_silvester_1964;
extern const Method jump_length_ivanchenko_1936;
extern const Method jump_length_woycicki_1931;
extern const Method jump_length_elevatorski_1959;
extern const Method jump_length_marques_1997;
extern const Method jump_length_six_depths;
extern const Method jump_length_band;
extern const Method jump_length_triangular;
extern const Method jump_length_trapezoidal;
extern const Method jump_length_circular;
extern const Method roller_length_circular;
extern const Method roller_length_narrow;
extern const Method roller_length_hager_1992;
extern const Method roller_length_wang_2015;
extern const Method roller_length_safranez_1929;
extern const Method roller_length_marques_1997;
extern const Method roller_length_carollo_2007;
}  // namespace record

}  // namespace quell::hydraulics
