#include "quell/site/uncertainty.h"

#include <array>

namespace quell::site {
namespace {

constexpr double foot = 0.3048;  ///< m; the deviations of stage were published in feet
constexpr std::string_view practice = "common practice, no published source";

/// A spread in proportion to the value, taken in the trade without a publication.
constexpr RecommendedUncertainty in_proportion(std::string_view name, Distribution distribution, double variation,
                                               std::string_view range) {
  return {name, distribution, variation, 0.0, dimension::none, range, practice, Provenance::common_practice};
}

/// Least standard deviation of the water level at a known discharge.
constexpr RecommendedUncertainty of_stage(std::string_view name, double feet, std::string_view range) {
  return {name, Distribution::normal, 0.0, feet * foot, dimension::length, range, "em1619_1996", Provenance::memory};
}

constexpr std::array recommendations{
    in_proportion("natural channel n", Distribution::lognormal, 0.20, "0.10 to 0.35; n from tables"),
    in_proportion("calibrated channel n", Distribution::lognormal, 0.10, "n calibrated to a gauged flood"),
    in_proportion("concrete n", Distribution::lognormal, 0.10, "0.08 to 0.12"),
    in_proportion("concrete roughness", Distribution::lognormal, 0.5, "height of 0.5 to 1 mm"),
    in_proportion("gate coefficient", Distribution::normal, 0.05, "0.03 to 0.08; free flow under the gate"),
    in_proportion("submerged gate coefficient", Distribution::normal, 0.10, "flow under the gate against tailwater"),
    in_proportion("gauged discharge", Distribution::normal, 0.05, "from a rating, inside the gauged range"),
    in_proportion("extrapolated discharge", Distribution::normal, 0.15, "0.10 to 0.20; from a rating beyond its gaugings"),
    of_stage("tailwater, field survey, good n", 0.3, "least deviation; sections surveyed, n well known"),
    of_stage("tailwater, field survey, fair n", 0.7, "least deviation; sections surveyed, n fairly known"),
    of_stage("tailwater, field survey, poor n", 1.3, "least deviation; sections surveyed, n poorly known"),
    of_stage("tailwater, map, good n", 0.6, "least deviation; sections from a topographic map, n well known"),
    of_stage("tailwater, map, fair n", 0.9, "least deviation; sections from a topographic map, n fairly known"),
    of_stage("tailwater, map, poor n", 1.5, "least deviation; sections from a topographic map, n poorly known"),
};

}  // namespace

std::string_view name_of(Distribution distribution) {
  switch (distribution) {
    case Distribution::normal: return "normal";
    case Distribution::lognormal: return "lognormal";
    case Distribution::triangular: return "triangular";
    case Distribution::uniform: return "uniform";
  }
  return "normal";
}

std::span<const RecommendedUncertainty> recommended_uncertainties() {
  return recommendations;
}

}  // namespace quell::site
