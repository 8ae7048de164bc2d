// Gates on the crest and low outlets, as given. Plain numbers in SI, no behaviour.
#pragma once

#include <string>
#include <vector>

namespace quell::site {

/// A way to open the gates: one opening for each bay, from the left.
struct GatePattern {
  std::string name{};
  std::vector<double> opening{};  ///< m, 0 to the full opening, one for each bay
  std::vector<double> level{};    ///< m, reservoir levels at which it is used; empty: the level that the gates hold
  bool is_check = false;          ///< judged, but the apron is not set for it: a mishap or a test
  bool is_standard = false;       ///< added by the program
};

/// One line of the operation by level: above `open_level` this pattern holds, until the level falls below `close_level`.
struct GateRule {
  std::size_t pattern = 0;   ///< index in patterns
  double open_level = 0.0;   ///< m
  double close_level = 0.0;  ///< m, below open_level
};

struct Gates {
  int count = 0;              ///< bays; 0: the crest has no gates
  double bay_width = 0.0;     ///< m, clear
  double full_opening = 0.0;  ///< m, lip above the seat
  double seat_level = 0.0;    ///< m
  double held_level = 0.0;    ///< m, the reservoir level that the gates hold in normal operation
  double coefficient = 0.6;   ///< Cd of the formula with two heads
  double radial_coefficient =
      0.0;                        ///< C of the formula with the least opening, from the gate's own chart; 0: the formula above
  bool standard_patterns = true;  ///< add one gate open, half open, and one shut, to be judged
  std::vector<GatePattern> patterns{};
  std::vector<GateRule> rules{};  ///< in order of open_level; empty: the gates hold the level until they are fully open

  bool given() const { return count > 0; }
};

/// An outlet through the dam that runs beside the spillway and does not enter the basin.
struct Outlet {
  std::string name{};
  double centre_level = 0.0;  ///< m, centre of the controlling section
  double area = 0.0;          ///< m2, of all its openings
  double coefficient = 0.6;
  bool has_tail_level = false;
  double tail_level = 0.0;     ///< m, level against which it discharges where that lies above its centre
  bool is_guaranteed = false;  ///< runs in every flood: counts in the low tailwater case too
};

}  // namespace quell::site
