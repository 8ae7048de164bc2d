// Uncertainty of an input, declared where the input stands. Nothing is sampled yet: the declaration is checked, kept and
// printed.
#pragma once

#include <span>
#include <string>
#include <string_view>

#include "quell/base/method.h"

namespace quell::site {

enum class Distribution { normal, lognormal, triangular, uniform };
std::string_view name_of(Distribution distribution);  ///< "normal", …

/// The distribution of one input, in its SI unit. For a rating it is that of the level at a given discharge.
struct Uncertainty {
  Distribution distribution = Distribution::normal;
  double mean = 0.0;       ///< normal, lognormal; the value of the input. 0 for a rating: the error of the level
  double deviation = 0.0;  ///< standard deviation, > 0; for triangular and uniform that of their limits
  bool has_limits = false;
  double lowest = 0.0;  ///< triangular, uniform; a cut of the others where given
  double mode = 0.0;    ///< triangular: the value of the input
  double highest = 0.0;
};

/// The uncertainty of one key of the site file.
struct UncertainInput {
  std::string key;  ///< "crest.design_head", "river.rating"
  Uncertainty of;
  std::string name;  ///< name of the recommendation taken; empty where the user gave the numbers
};

/// A recommended spread, offered by name.
struct RecommendedUncertainty {
  std::string_view name;  ///< "concrete roughness"
  Distribution distribution;
  double variation;         ///< coefficient of variation; 0 where `deviation` holds
  double deviation;         ///< SI; 0 where `variation` holds
  Dimension dimension;      ///< of the deviation; none where `variation` holds
  std::string_view range;   ///< of published or usual values, in words
  std::string_view source;  ///< key in data/sources.bib, or "common practice, no published source"
  Provenance provenance;
};
std::span<const RecommendedUncertainty> recommended_uncertainties();

}  // namespace quell::site
