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
  explicit Random(std::uint64_t seed) : state_(seed * 0x9E3779B97F4A7C15ULL + 0x1234567ULL) {}
  double unit();                                      ///< in [0, 1)
  double between(double low, double high);            ///< uniform
  double log_between(double low, double high);        ///< uniform in the logarithm
  bool chance(double share) { return unit() < share; }
  int whole(int low, int high);                       ///< both included

 private:
  std::uint64_t state_;
};

struct SiteWishes {
  int fewest_steps = 5;
  int most_steps = 8;
  bool limits = true;           ///< some sites limit the apron level
  bool width_is_free = true;    ///< a few sites leave the basin's width open
  bool other_widths = true;     ///< some basins are not as wide as the chute
  bool scales_exactly = false;  ///< rough-free flow: no Manning's n, no tailwater section, thin boundary layer
};

/// Dams of 3 to 150 m, design heads of 0.2 to 15 m, slopes of 0.1 to 3, one to three reaches, ratings with kinks and flat parts.
site::Site random_site(std::uint64_t seed, const SiteWishes& wishes = {});

/// The site in a few lines, to repeat a fault from the test's message.
std::string describe(const site::Site& site);

/// Number of cases: `usual`, or QUELL_PROPERTY_CASES where that is set.
int property_cases(int usual);

}  // namespace quell::test
