// The stone as it is delivered, the filter between bed and stone, the stone that settles into the scour, and the filter of the
// slab's underdrains.
#include <algorithm>
#include <cmath>

#include "quell/base/quantity_text.h"
#include "quell/checks/safety.h"
#include "quell/dissipators/parts.h"
#include "quell/hydraulics/river_protection.h"

namespace quell::checks {

using dissipators::choice_note;
using dissipators::common_practice;
using dissipators::limit_finding;
using dissipators::Rule;
using hydraulics::stone_gravity;

namespace {

constexpr double largest_over_median = 1.5;
constexpr double wide_enough = 1.5;     ///< upper over lower limit that a quarry can keep, by practice
constexpr double least_layer = 0.15;    ///< m of a filter layer placed in the dry
constexpr double under_water = 1.5;     ///< more of every layer
constexpr double shallow_launch = 4.6;  ///< m of scour, from which on more stone is lost
constexpr Rule filter_rule{"hds_6_2001", "problem 6.11.2, ratios of D15, D50 and d85 between neighbours", Provenance::seen};

std::string length_words(double value) {
  return quantity_token(value, dimension::length);
}
std::string band_words(const hydraulics::SizeBand& band) {
  return length_words(band.least) + " to " + length_words(band.most);
}

/// d15 and d85 follow a straight line over the logarithm of the size through d50 and d90 where they are not given.
hydraulics::BaseInput bed_grading(const site::RiverBed& bed) {
  const double coarse = std::max(bed.coarse_size, bed.mean_size);
  const double upper =
      bed.upper_size > 0.0 ? bed.upper_size : bed.mean_size * std::pow(coarse / bed.mean_size, (85.0 - 50.0) / (90.0 - 50.0));
  const double fine = bed.fine_size > 0.0 ? bed.fine_size : bed.mean_size * bed.mean_size / upper;
  return {.d15 = std::min(fine, bed.mean_size), .d50 = bed.mean_size, .d85 = std::max(upper, bed.mean_size)};
}

/// As of stone: the larger of the largest grain and 1.5 medians, at least a spread layer, times what is lost where it is
/// placed (half more under water); to 5 cm.
FilterLayer placed(const hydraulics::LayerBand& band, double shape, double loss) {
  const double largest = band.D85.most * std::pow(shape, 15.0 / 70.0);
  const double thickness = loss * std::max({least_layer, largest, 1.5 * band.D50.most});
  return {.band = band, .thickness = 0.05 * std::ceil(thickness / 0.05 - 1e-9)};
}

std::vector<FilterLayer> placed(const hydraulics::FilterChain& chain, double loss) {
  std::vector<FilterLayer> layers;
  layers.reserve(chain.layers.size());
  for (const auto& band : chain.layers) layers.push_back(placed(band, chain.shape, loss));
  return layers;
}

std::string layer_words(const std::vector<FilterLayer>& layers) {
  std::string text;
  for (const auto& layer : layers)
    text += (text.empty() ? "From below: D15 " : "; then D15 ") + band_words(layer.band.D15) + ", D50 " +
            band_words(layer.band.D50) + ", D85 " + band_words(layer.band.D85) + ", " + length_words(layer.thickness) +
            " thick";
  return text + ".";
}

void grade(const RiverProtection& river, StoneLayers& layers) {
  const auto lower = graded_stone(river);
  const auto band = [&](double size) { return hydraulics::SizeBand{size, lower.band * size}; };
  layers.stone = {.D15 = band(lower.D15), .D50 = band(lower.D50), .D85 = band(lower.D85)};
  layers.largest = band(lower.D100);
  const hydraulics::SizeBand sizes[] = {layers.stone.D15, layers.stone.D50, layers.stone.D85, layers.largest};
  for (std::size_t i = 0; i < layers.mass.size(); ++i)
    layers.mass[i] = {hydraulics::stone_mass(sizes[i].least, stone_gravity),
                      hydraulics::stone_mass(sizes[i].most, stone_gravity)};
}

void design_filter(const site::RiverBed& bed, const RiverProtection& river, StoneLayers& layers) {
  layers.bed_known = bed.given;
  if (!bed.given) return;
  layers.bed = bed_grading(bed);
  layers.bed_derived = !(bed.fine_size > 0.0 && bed.upper_size > 0.0);
  layers.stone_on_bed = layers.stone.D15.most / layers.bed.d85;
  const auto chain = hydraulics::filter_chain({.base = layers.bed, .cover = layers.stone});
  layers.closes = chain.closes;
  layers.filter = placed(chain, under_water);
  for (auto& layer : layers.filter) layer.volume = layer.thickness * river.volume / river.thickness;
}

void launch(const RiverProtection& river, const BedScour& scour, StoneLayers& layers) {
  if (!scour.known || !(scour.grown > 0.0)) return;
  layers.launch_scour = scour.grown;
  // The factors count what is lost under water: the settled layer is as thick as one placed in the dry.
  const double settled = river.thickness / under_water;
  const hydraulics::LaunchInput input{.T = settled, .D = scour.grown};
  const auto apron = hydraulics::launching_apron(input);
  layers.launch_length = apron.length;
  layers.launch_volume =
      std::max(apron.volume,
               hydraulics::launch_volume({.T = settled, .D = scour.grown, .f = scour.grown > shallow_launch ? 1.75 : 1.5}));
  layers.launch_thickness = layers.launch_volume / layers.launch_length;
}

Finding gradation_finding(const StoneLayers& layers) {
  const auto mass = [](const hydraulics::SizeBand& kilograms) {
    return " (" + quantity_token(kilograms.least, dimension::mass) + " to " + quantity_token(kilograms.most, dimension::mass) +
           ")";
  };
  return choice_note(
      "river.gradation", "Heaviest stone over lower median, by size", layers.largest.most / layers.stone.D50.least,
      dimension::none,
      "D15 " + band_words(layers.stone.D15) + ", D50 " + band_words(layers.stone.D50) + mass(layers.mass[1]) + ", D85 " +
          band_words(layers.stone.D85) + ", D100 " + band_words(layers.largest) + mass(layers.mass[3]) + ".",
      {"em1601_1991", "heaviest stone at most five times the lower median's mass; D85/D15 1.4 to 2.2", Provenance::memory});
}

Finding filter_finding(const StoneLayers& layers) {
  constexpr std::string_view id = "river.filter";
  const std::string advice =
      " A geotextile with a protection layer may stand in for granular layers; no rule for its opening could be read, so a "
      "specialist must choose it for the bed.";
  if (!layers.bed_known)
    return limit_finding(std::string(id), "Filter below the stone, not judged", 0.0, LimitSense::note, 0.0, dimension::none,
                         Status::caution, "The site file has no [river.bed]: the grain of the bed is not known.",
                         "Give mean_size, coarse_size, fine_size and upper_size in [river.bed]: the layers follow from them.",
                         common_practice);
  const std::string derived =
      layers.bed_derived ? " The bed's d15 of " + length_words(layers.bed.d15) + " and d85 of " + length_words(layers.bed.d85) +
                               " are partly derived from its mean and coarse sizes: a sieve curve must confirm them."
                         : "";
  const std::string title = "D15 of the stone over d85 of the bed";
  if (layers.closes && layers.filter.empty())
    return limit_finding(std::string(id), title, layers.stone_on_bed, LimitSense::at_most, 5.0, dimension::none,
                         Status::caution, "The stone holds the bed without a filter." + derived, "", filter_rule);
  if (!layers.closes)
    return limit_finding(
        std::string(id), "Filter below the stone, none found", 0.0, LimitSense::note, 0.0, dimension::none, Status::caution,
        "No granular layer both holds and drains this bed: it is too even, or hardly finer than the stone." + derived + advice,
        "Use a geotextile, or a stone of wider gradation.", filter_rule);
  const auto& lowest = layers.filter.front().band.D15;
  const double room = lowest.most / lowest.least;
  const std::string narrow = room < wide_enough ? " The rules leave only a factor of " + quantity_token(room, dimension::none) +
                                                      " between the limits: hard to deliver, so test every batch or take a "
                                                      "geotextile."
                                                : "";
  return counted(choice_note(std::string(id), "Granular layers between bed and stone",
                             static_cast<double>(layers.filter.size()), dimension::none,
                             layer_words(layers.filter) + narrow + derived + advice, filter_rule));
}

}  // namespace

hydraulics::Gradation graded_stone(const RiverProtection& river) {
  return hydraulics::riprap_gradation({.De = river.stone_em25, .Di = river.stone_isbash_high, .k = largest_over_median});
}

FindingMethod graded_by(const RiverProtection& river) {
  return {&hydraulics::record::riprap_gradation,
          {told(river.stone_em25, "stone by Engineering Monograph 25"), told(river.stone_isbash_high, "stone by Isbash"),
           told(largest_over_median, "largest stone over the median, fixed here")}};
}

void judge_stone_layers(const BasinView& view, Safety& safety) {
  auto& layers = safety.layers;
  grade(safety.river, layers);
  design_filter(view.site.river.bed, safety.river, layers);
  launch(safety.river, safety.scour, layers);
  safety.findings.push_back(gradation_finding(layers));
  safety.findings.back().method = graded_by(safety.river);
  safety.findings.push_back(filter_finding(layers));
  safety.findings.back().key = "river.bed.mean_size";
  if (layers.bed_known)
    // What the bed asks of the layer on it; the further ones follow by the same rule.
    safety.findings.back().method = {
        &hydraulics::record::filter_on_base,
        {given(layers.bed.d15, "river.bed.fine_size"), given(layers.bed.d50, "river.bed.mean_size"),
         given(layers.bed.d85, "river.bed.upper_size")}};
  if (layers.launch_volume > 0.0)
    safety.findings.push_back(worked(
        hydraulics::record::launch_volume,
        {told(safety.river.thickness / under_water, "thickness of the stone over 1.5: as placed in the dry"),
         told(safety.scour.grown, "scour of one day, the depth of the flow at most"),
         told(safety.scour.grown > shallow_launch ? 1.75 : 1.5, "1.75 where the scour is deeper than 4.6 m, else 1.5")},
        choice_note("river.launch", "Stone that settles into the scour, in place at the end of the protection",
                    layers.launch_thickness, dimension::length,
                    "Instead of a cutoff below the scour: the last " + length_words(layers.launch_length) +
                        " of the stone this thick settle on 1V:2H as the bed sinks by " + length_words(layers.launch_scour) +
                        ". The scour is that of one day; a longer flood asks for more." +
                        (layers.launch_thickness > safety.river.thickness
                             ? " So thick an end is hard to place: a cutoff below the scour is the better choice."
                             : ""),
                    {"em1601_1991", "launchable stone, beside a rule of Indian practice", Provenance::memory})));
}

void judge_drain_filter(const BasinView& view, Safety& safety) {
  const auto& foundation = view.site.foundation;
  if (foundation.soil == site::Soil::rock) return;
  auto& layers = safety.layers;
  const double fine = foundation.soil_fine_size, mean = foundation.soil_mean_size, upper = foundation.soil_upper_size;
  layers.drain_known = fine > 0.0 && mean >= fine && upper >= mean;
  if (!layers.drain_known)
    return safety.findings.push_back(
        keyed("foundation.soil_mean_size",
              limit_finding("foundation.drain_filter", "Filter of the underdrains, not judged", 0.0, LimitSense::note, 0.0,
                            dimension::none, Status::caution,
                            "The sizes of the soil below the slab are not given, or do not rise with the share that is finer.",
                            "Give soil_fine_size, soil_mean_size and soil_upper_size in [foundation].", common_practice)));
  layers.drain = placed(hydraulics::drain_layers({.d15 = fine, .d50 = mean, .d85 = upper}), 1.0);
  safety.findings.push_back(counted(choice_note(
      "foundation.drain_filter", "Layers of the underdrains' filter", static_cast<double>(layers.drain.size()), dimension::none,
      layer_words(layers.drain) + " The last is gravel around a slotted pipe of {{0.1|6,0,0|3}} to {{0.2|6,0,0|3}} with "
                                  "cleanouts; no rule for its slots could be read: "
                                  "have the pipe tested against this gravel.",
      filter_rule)));
  safety.findings.back().key = "foundation.soil_mean_size";
}

}  // namespace quell::checks
