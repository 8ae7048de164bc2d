#include "property/random_site.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <cstdlib>

#include "quell/site/reservoir.h"

namespace quell::test {
namespace {

using site::Site;

bool smooth(const SiteWishes& wishes) {
  return wishes.deep_flow || wishes.scales_exactly;
}

/// A head (m) for which the crest is made: the design head of an ogee, the scale of the floods of the others.
double characteristic_head(Random& random, double height, const SiteWishes& wishes) {
  if (smooth(wishes)) return std::clamp(height * random.between(0.2, 0.5), 0.5, 15.0);
  if (random.chance(0.1)) return random.log_between(0.2, 15.0);
  return std::clamp(height * random.log_between(0.03, 0.5), 0.2, 15.0);
}

void add_ogee(Random& random, site::Crest& crest, double head) {
  crest.design_head = head;
  crest.approach_depth = random.chance(0.1) ? 0.0 : head * random.log_between(0.1, 10.0);
  crest.upstream_face = static_cast<site::UpstreamFace>(random.whole(0, 3));
  if (random.chance(0.4)) {
    crest.piers = random.whole(1, 4);
    crest.pier_contraction = random.between(0.0, 0.02);
    crest.abutment_contraction = random.between(0.0, 0.1);
  }
  // At most half of the crest is lost to contractions at the design head; at higher heads some crests still run out of width.
  const double lost = 2.0 * (crest.piers * crest.pier_contraction + crest.abutment_contraction) * head;
  crest.net_width = std::max(crest.net_width, 2.0 * lost);
}

/// Weir and floor below it: high and low walls, and falls between none to speak of and a quarter of the dam. Returns the head
/// at which a labyrinth brings the chute no more water than other crests.
double add_fall(Random& random, site::Crest& crest, double head, double height) {
  if (crest.shape == site::CrestShape::labyrinth) {
    crest.sidewall_angle = random.between(6.0, 35.0) * 3.14159265358979 / 180.0;
    const double folds = 1.0 + (1.0 / std::sin(crest.sidewall_angle) - 1.0) * random.between(0.2, 0.95);
    crest.developed_length = crest.net_width * folds;
    head /= std::cbrt(folds * folds);
  }
  crest.approach_depth = head * random.log_between(crest.shape == site::CrestShape::sharp ? 0.4 : 0.8, 10.0);
  crest.floor_level = crest.crest_level - std::min(head * random.log_between(0.1, 3.0), 0.25 * height);
  return head;
}

double add_crest(Random& random, Site& site, double height, const SiteWishes& wishes) {
  auto& crest = site.crest;
  crest.crest_level = 100.0 + height;
  crest.net_width = random.log_between(3.0, 150.0);
  // Rehbock's formula holds a length of its own.
  const int shapes = wishes.scales_exactly ? 2 : 3;
  const int drawn = random.chance(0.55) ? 0 : random.whole(1, shapes);
  static constexpr site::CrestShape list[] = {site::CrestShape::ogee, site::CrestShape::broad, site::CrestShape::labyrinth,
                                              site::CrestShape::sharp};
  crest.shape = list[drawn];
  const double head = characteristic_head(random, height, wishes);
  switch (crest.shape) {
    case site::CrestShape::ogee: add_ogee(random, crest, head); break;
    case site::CrestShape::broad:
      crest.crest_length = head * random.log_between(0.7, 12.0);
      crest.edge = static_cast<site::CrestEdge>(random.whole(0, 1));
      crest.approach_depth = random.chance(0.1) ? 0.0 : head * random.log_between(0.1, 10.0);
      break;
    case site::CrestShape::sharp:
    case site::CrestShape::labyrinth: return add_fall(random, crest, head, height);
  }
  return head;
}

void add_chute(Random& random, Site& site, double height, double head, const SiteWishes& wishes) {
  auto& chute = site.chute;
  const double crest_level = site.crest.crest_level;
  const int reaches = random.chance(0.7) ? 1 : random.whole(2, 3);
  double level = crest_level - 0.3 * height;
  for (int i = 0; i < reaches; ++i) {
    const bool flat = !smooth(wishes) && random.chance(0.2);
    level -= height * random.between(0.05, 0.25);
    chute.reaches.push_back({flat ? random.log_between(0.1, 0.4) : random.log_between(smooth(wishes) ? 0.7 : 0.4, 3.0),
                             i + 1 < reaches ? level : 0.0});
  }
  // Seldom does the ogee end below the first reach.
  const double steepest = 0.925 * std::pow(0.56 * height / head, 0.46);
  if (site.crest.shape == site::CrestShape::ogee && !random.chance(0.03))
    chute.reaches.front().slope = std::min(chute.reaches.front().slope, steepest);
  chute.width = site.crest.net_width + 2.0 * site.crest.piers;
  chute.end_width = random.chance(0.7) ? chute.width : chute.width * random.between(0.6, 1.6);
  chute.end_width_level = crest_level - height * random.between(0.3, 1.1);
  if (random.chance(0.7))
    chute.roughness_height = random.log_between(5e-5, 5e-3);
  else
    chute.manning_n = random.between(0.010, 0.018);
  if (random.chance(0.5)) chute.wall_height = random.between(1.0, 8.0);
}

void add_discharges(Random& random, Site& site, double head, const SiteWishes& wishes) {
  auto& range = site.discharges;
  range.design_flood = site::crest_discharge(site.crest, head * random.between(0.6, 1.15));
  range.check_flood = random.chance(0.3) ? range.design_flood : range.design_flood * random.between(1.0, 1.35);
  range.smallest = range.design_flood * (smooth(wishes) ? random.between(0.1, 0.3) : random.log_between(0.005, 0.2));
  range.steps = random.whole(wishes.fewest_steps, wishes.most_steps);
  if (random.chance(0.3)) range.floods.push_back({"10-year flood", range.design_flood * random.between(0.3, 0.9), 10.0});
}

/// Depth (m) of tailwater that a jump would want on the river bed at the check flood, roughly.
double wanted_depth(const Site& site, double height) {
  const double q = site.discharges.check_flood / site.chute.end_width;
  const double reservoir_head = std::cbrt(q * q);
  return std::sqrt(2.0 * q * std::sqrt(2.0 * 9.81 * (height + reservoir_head)) / 9.81);
}

void add_rating(Random& random, Site& site, double height) {
  auto& river = site.river;
  river.source = site::TailwaterSource::rating;
  const double depth = wanted_depth(site, height) * random.log_between(0.25, 1.6);
  const double power = random.between(0.2, 1.0);
  const double base = random.chance(0.3) ? depth * random.between(0.0, 0.5) : 0.0;
  const int rows = random.whole(2, 12);
  const double first = site.discharges.smallest * random.between(0.2, 1.0);
  double level = -1e9;
  river.has_spread = random.chance(0.5);
  for (int i = 0; i < rows; ++i) {
    const double share = i / (rows - 1.0);
    const double discharge = first + (site.discharges.check_flood * 1.001 - first) * std::pow(share, 1.5);
    const bool flat = random.chance(0.15);
    const double wanted = river.bed_level + base + (depth - base) * std::pow(share, power) * random.between(0.9, 1.1);
    level = flat && i > 0 ? level : std::max(level, wanted);
    river.rating.discharge.push_back(discharge);
    const double spread = river.has_spread ? 0.08 * (level - river.bed_level) : 0.0;
    river.rating.level[0].push_back(level - spread);
    river.rating.level[1].push_back(level);
    river.rating.level[2].push_back(level + spread);
  }
}

void add_river(Random& random, Site& site, double height, const SiteWishes& wishes) {
  auto& river = site.river;
  river.bed_level = 100.0;
  river.bed_degradation = random.chance(0.5) ? random.between(0.0, 1.0) : 0.0;
  if (wishes.scales_exactly || random.chance(0.6)) {
    add_rating(random, site, height);
    return;
  }
  river.section.bottom_width = random.chance(0.05) ? 0.0 : site.chute.end_width * random.log_between(0.7, 3.0);
  river.section.side_slope = random.chance(0.2) && river.section.bottom_width > 0.0 ? 0.0 : random.between(0.5, 3.0);
  river.section.bed_slope = random.log_between(2e-4, 1e-2);
  const double n = random.between(0.025, 0.06);
  river.has_spread = random.chance(0.6);
  river.section.manning_n = river.has_spread ? std::array<double, 3>{0.8 * n, n, 1.2 * n} : std::array<double, 3>{n, n, n};
}

void add_basin(Random& random, Site& site, double height, const SiteWishes& wishes) {
  auto& basin = site.basin;
  basin.width = site.chute.end_width;
  if (wishes.other_widths && random.chance(0.1)) basin.width *= random.between(0.8, 1.3);
  if (wishes.width_is_free && random.chance(0.01)) basin.width_is_free = true;
  if (basin.width_is_free && random.chance(0.5)) basin.largest_width = site.chute.end_width * random.between(0.9, 1.5);
  if (random.chance(0.5)) basin.tailwater_margin = random.between(0.0, 1.0);
  static constexpr double steps[] = {0.01, 0.001, 0.05, 0.1, 0.5, 0.03048};
  basin.apron_step = steps[random.whole(0, 5)];
  if (wishes.held_lengths && random.chance(0.15)) basin.length = height * random.log_between(0.2, 5.0);
  if (!wishes.limits) return;
  if (random.chance(0.12)) {
    basin.has_lowest_apron = true;
    basin.lowest_apron_level = 100.0 - height * random.between(0.0, 0.6);
  }
  if (random.chance(0.12)) {
    basin.has_highest_apron = true;
    basin.highest_apron_level = 100.0 + height * random.between(-0.2, 0.2);
  }
  // The reader of site files refuses contradictory limits.
  if (basin.has_lowest_apron && basin.has_highest_apron && basin.highest_apron_level < basin.lowest_apron_level)
    std::swap(basin.highest_apron_level, basin.lowest_apron_level);
  site.ground.has_foundation = random.chance(0.3);
  site.ground.foundation_level = 95.0;
}

}  // namespace

// Scrambled, since neighbouring states are neighbours in one sequence.
Random::Random(std::uint64_t seed) : state_(seed) {
  state_ = static_cast<std::uint64_t>(unit() * 0x1.0p53) ^ (seed << 40);
}

double Random::unit() {
  state_ += 0x9E3779B97F4A7C15ULL;
  std::uint64_t z = state_;
  z = (z ^ (z >> 30)) * 0xBF58476D1CE4E5B9ULL;
  z = (z ^ (z >> 27)) * 0x94D049BB133111EBULL;
  return static_cast<double>((z ^ (z >> 31)) >> 11) * 0x1.0p-53;
}

double Random::between(double low, double high) {
  return low + (high - low) * unit();
}
double Random::log_between(double low, double high) {
  return low * std::pow(high / low, unit());
}
int Random::whole(int low, int high) {
  return low + static_cast<int>(unit() * (high - low + 1));
}

Site random_site(std::uint64_t seed, const SiteWishes& wishes) {
  Random random(seed);
  Site site;
  site.project.name = "random site " + std::to_string(seed);
  const double height = random.log_between(3.0, 150.0);
  const double head = add_crest(random, site, height, wishes);
  add_chute(random, site, height, head, wishes);
  if (smooth(wishes)) {
    site.chute.manning_n = 0.0;
    site.chute.roughness_height = random.log_between(5e-5, 3e-4);
  }
  add_discharges(random, site, head, wishes);
  add_river(random, site, height, wishes);
  add_basin(random, site, height, wishes);
  site.basin.types = {"type_1", "type_2", "type_3"};
  return site;
}

std::string describe(const Site& site) {
  std::string text = fmt::format(
      "{}: {} crest level {} Hd {} net width {} P {} face {} piers {} Kp {} Ka {} Lw {} edge {} alpha {} Lc {} floor {}; chute "
      "widths {} -> {} at level {}, ks {} n {}; "
      "reaches",
      site.project.name, name_of(site.crest.shape), site.crest.crest_level, site.crest.design_head, site.crest.net_width,
      site.crest.approach_depth, static_cast<int>(site.crest.upstream_face), site.crest.piers, site.crest.pier_contraction,
      site.crest.abutment_contraction, site.crest.crest_length, static_cast<int>(site.crest.edge), site.crest.sidewall_angle,
      site.crest.developed_length, site.crest.floor_level, site.chute.width, site.chute.end_width, site.chute.end_width_level,
      site.chute.roughness_height, site.chute.manning_n);
  for (const auto& reach : site.chute.reaches) text += fmt::format(" {} to {}", reach.slope, reach.end_level);
  text += fmt::format("; Q {} to {}, design {}, {} steps; bed {} degradation {}", site.discharges.smallest,
                      site.discharges.check_flood, site.discharges.design_flood, site.discharges.steps, site.river.bed_level,
                      site.river.bed_degradation);
  if (site.river.has_rating())
    for (std::size_t i = 0; i < site.river.rating.discharge.size(); ++i)
      text += fmt::format("{}{}:{}/{}/{}", i == 0 ? "; rating " : ", ", site.river.rating.discharge[i],
                          site.river.rating.level[0][i], site.river.rating.level[1][i], site.river.rating.level[2][i]);
  else
    text += fmt::format("; river b {} m {} S {} n {}/{}/{}", site.river.section.bottom_width, site.river.section.side_slope,
                        site.river.section.bed_slope, site.river.section.manning_n[0], site.river.section.manning_n[1],
                        site.river.section.manning_n[2]);
  text += fmt::format("; basin width {} free {} margin {} step {}", site.basin.width, site.basin.width_is_free,
                      site.basin.tailwater_margin, site.basin.apron_step);
  if (site.basin.has_lowest_apron) text += fmt::format(" lowest {}", site.basin.lowest_apron_level);
  if (site.basin.length > 0.0) text += fmt::format(" length {}", site.basin.length);
  if (site.basin.has_highest_apron) text += fmt::format(" highest {}", site.basin.highest_apron_level);
  return text;
}

int property_cases(int usual) {
  const char* given = std::getenv("QUELL_PROPERTY_CASES");
  return given != nullptr ? std::max(1, std::atoi(given)) : usual;
}

}  // namespace quell::test
