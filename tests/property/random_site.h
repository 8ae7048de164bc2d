// Random sites for the property tests: plausible ones and nasty ones, the same for the same seed on every machine.
#pragma once

#include <cstdint>
#include <string>
#include <vector>

#include "quell/site/site.h"

namespace quell::test {

/// SplitMix64: the standard library's distributions differ between implementations.
class Random {
 public:
  explicit Random(std::uint64_t seed);
  double unit();                                ///< in [0, 1)
  double between(double low, double high);      ///< uniform
  double log_between(double low, double high);  ///< uniform in the logarithm
  bool chance(double share) { return unit() < share; }
  int whole(int low, int high);  ///< both included

 private:
  std::uint64_t state_;
};

struct SiteWishes {
  int fewest_steps = 5;
  int most_steps = 8;
  bool limits = true;           ///< some sites limit the apron level
  bool width_is_free = true;    ///< a few sites leave the basin's width open
  bool other_widths = true;     ///< some basins are not as wide as the chute
  bool deep_flow = false;       ///< high heads on smooth chutes: little or no friction to integrate, so ten times cheaper
  bool held_lengths = false;    ///< some basins have a length that the site file holds
  bool scales_exactly = false;  ///< no Manning's n, no river section: nothing in the input has its own length scale
};

/// Dams of 3 to 150 m, crests of all shapes for heads of 0.2 to 15 m, slopes of 0.1 to 3, one to three reaches, ratings with
/// kinks and flat parts.
site::Site random_site(std::uint64_t seed, const SiteWishes& wishes = {});

/// The site in a few lines, to repeat a fault from the test's message.
std::string describe(const site::Site& site);

/// Number of cases: `usual`, or QUELL_PROPERTY_CASES where that is set.
int property_cases(int usual);

}  // namespace quell::test
