// How a section comes about: the survey is checked, parted at the banks and zones, and tabulated layer by layer.
#include <algorithm>
#include <cmath>
#include <limits>
#include <utility>

#include "quell/hydraulics/river_section.h"

namespace quell::hydraulics {

class RiverSectionBuilder {
 public:
  void add(double x, double z, double n_after) {
    section_.x_.push_back(x);
    section_.z_.push_back(z);
    section_.n_.push_back(n_after);
  }
  void banks(std::size_t left, std::size_t right) {
    section_.left_bank_ = left;
    section_.right_bank_ = right;
  }
  void coefficients(double alpha, double beta) {
    section_.alpha_part_ = alpha;
    section_.beta_part_ = beta;
  }
  Outcome<RiverSection> built();

  using Span = std::array<std::size_t, 2>;  ///< first and last point
  /// Adds what lies between the ends of two matched stretches, the last point left out.
  void blend(const RiverSection& first, Span of_first, const RiverSection& second, Span of_second, double share);
  static std::size_t lowest_of_channel(const RiverSection& section);
  static Outcome<RiverSection> between(const RiverSection& first, const RiverSection& second, double share);

 private:
  void part();
  void tabulate();
  RiverSection section_;
  std::vector<std::size_t> strip_of_panel_;
};

namespace {

Outcome<void> check(const SurveyedSection& survey, double n_factor) {
  if (survey.x.size() != survey.z.size() || survey.x.size() < 2)
    return no_answer("a section needs two points or more, with as many x as z");
  for (std::size_t i = 0; i < survey.x.size(); ++i) {
    if (!std::isfinite(survey.x[i]) || !std::isfinite(survey.z[i])) return no_answer("the points of a section must be finite");
    if (i > 0 && !(survey.x[i] >= survey.x[i - 1]))
      return no_answer("the points of a section go from bank to bank: x must not fall");
  }
  const double first = survey.x.front();
  const double last = survey.x.back();
  if (!(first < last)) return no_answer("a section without width holds no water");
  if (!(survey.left_bank >= first && survey.left_bank < last))
    return bad_input("xl", survey.left_bank, first, last, "the left bank must lie within the section");
  if (!(survey.right_bank > survey.left_bank && survey.right_bank <= last))
    return bad_input("xr", survey.right_bank, survey.left_bank, last,
                     "the right bank must lie between the left bank and the end of the section");
  if (survey.zone_start.size() != survey.zone_n.size()) return no_answer("every zone of roughness needs one start and one n");
  if (!std::ranges::is_sorted(survey.zone_start)) return no_answer("the zones of roughness must go from left to right");
  const auto rough = [](double n) { return n > 0.0 && std::isfinite(n); };
  if (survey.zone_n.empty() ? !std::ranges::all_of(survey.manning_n, rough) : !std::ranges::all_of(survey.zone_n, rough))
    return no_answer("every Manning roughness of a section must be above zero");
  if (!rough(n_factor)) return no_answer("the factor of the roughness must be above zero");
  if (!(survey.alpha_part >= 1.0 && survey.beta_part >= 1.0))
    return no_answer("the velocity coefficients inside a part must be 1 or more");
  return {};
}

/// Puts a point at x = at into the polyline unless there is one.
void divide(std::vector<double>& x, std::vector<double>& z, double at) {
  const auto after = std::ranges::lower_bound(x, at);
  if (after == x.begin() || after == x.end() || *after == at) return;
  const auto place = after - x.begin();
  const auto k = static_cast<std::size_t>(place);
  const double level = z[k - 1] + (z[k] - z[k - 1]) * (at - x[k - 1]) / (x[k] - x[k - 1]);
  x.insert(x.begin() + place, at);
  z.insert(z.begin() + place, level);
}

double zone_roughness(const SurveyedSection& survey, double x) {
  const auto next = std::ranges::upper_bound(survey.zone_start, x);
  const auto count = static_cast<std::size_t>(next - survey.zone_start.begin());
  return survey.zone_n[count == 0 ? 0 : count - 1];
}

}  // namespace

void RiverSectionBuilder::part() {
  const auto& n = section_.n_;
  for (std::size_t i = 0; i + 1 < section_.x_.size(); ++i) {
    const std::size_t part = i < section_.left_bank_ ? 0 : i < section_.right_bank_ ? 1 : 2;
    if (i == 0 || part != section_.part_.back() || (part != 1 && n[i] != n[i - 1])) section_.part_.push_back(part);
    strip_of_panel_.push_back(section_.part_.size() - 1);
  }
}

void RiverSectionBuilder::tabulate() {
  const auto& x = section_.x_;
  const auto& z = section_.z_;
  const auto& n = section_.n_;
  const std::size_t strips = section_.part_.size();
  std::vector<RiverSection::Strip> below(strips);
  for (std::size_t layer = 0; layer < section_.levels_.size(); ++layer) {
    const double bottom = section_.levels_[layer];
    for (auto& strip : below) strip.width = strip.spread = strip.perimeter_rate = strip.friction_rate = 0.0;
    for (std::size_t i = 0; i + 1 < x.size(); ++i) {
      auto& strip = below[strip_of_panel_[i]];
      const double low = std::min(z[i], z[i + 1]);
      const double rise = std::max(z[i], z[i + 1]) - low;
      const double dx = x[i + 1] - x[i];
      const double weight = n[i] * std::sqrt(n[i]);
      if (low > bottom) continue;
      if (bottom >= low + rise) {
        strip.width += dx;
        if (rise == 0.0 && bottom == low) {
          strip.perimeter += dx;
          strip.friction += dx * weight;
        }
      } else {
        strip.width += dx * (bottom - low) / rise;
        strip.spread += dx / rise;
        strip.perimeter_rate += std::hypot(dx, rise) / rise;
        strip.friction_rate += weight * std::hypot(dx, rise) / rise;
      }
    }
    const auto wall = [&](double end, std::size_t panel) {
      if (bottom < end) return;
      auto& strip = below[strip_of_panel_[panel]];
      strip.perimeter_rate += 1.0;
      strip.friction_rate += n[panel] * std::sqrt(n[panel]);
    };
    wall(z.front(), 0);
    wall(z.back(), x.size() - 2);
    section_.strips_.insert(section_.strips_.end(), below.begin(), below.end());
    if (layer + 1 == section_.levels_.size()) break;
    const double h = section_.levels_[layer + 1] - bottom;
    for (auto& strip : below) {
      strip.moment += (strip.area + (strip.width / 2.0 + strip.spread * h / 6.0) * h) * h;
      strip.area += (strip.width + strip.spread * h / 2.0) * h;
      strip.perimeter += strip.perimeter_rate * h;
      strip.friction += strip.friction_rate * h;
    }
    section_.conveyance_.push_back(section_.kinetic(layer, section_.levels_[layer + 1]).K);
  }
}

Outcome<RiverSection> RiverSectionBuilder::built() {
  auto& z = section_.z_;
  // A slot without width holds no water: nothing lies below the lowest point of a panel with width.
  double lowest = std::numeric_limits<double>::infinity();
  for (std::size_t i = 0; i + 1 < z.size(); ++i)
    if (section_.x_[i + 1] > section_.x_[i]) lowest = std::min({lowest, z[i], z[i + 1]});
  for (double& level : z) level = std::max(level, lowest);
  section_.bank_level_ = std::min(z.front(), z.back());
  section_.levels_ = z;
  std::ranges::sort(section_.levels_);
  const auto spare = std::ranges::unique(section_.levels_);
  section_.levels_.erase(spare.begin(), spare.end());
  part();
  tabulate();
  return std::move(section_);
}

Outcome<RiverSection> RiverSection::of(const SurveyedSection& survey, double n_factor, double lowering) {
  if (const auto sound = check(survey, n_factor); !sound) return tl::unexpected(sound.error());
  std::vector<double> x = survey.x;
  std::vector<double> z = survey.z;
  divide(x, z, survey.left_bank);
  divide(x, z, survey.right_bank);
  for (const double start : survey.zone_start) divide(x, z, start);
  const auto left = static_cast<std::size_t>(std::ranges::lower_bound(x, survey.left_bank) - x.begin());
  const auto right = static_cast<std::size_t>(std::ranges::upper_bound(x, survey.right_bank) - x.begin()) - 1;
  RiverSectionBuilder builder;
  for (std::size_t i = 0; i < x.size(); ++i) {
    const double middle = i + 1 < x.size() ? (x[i] + x[i + 1]) / 2.0 : x[i];
    const std::size_t part = i < left ? 0 : i < right ? 1 : 2;
    const double n = survey.zone_n.empty() ? survey.manning_n[part] : zone_roughness(survey, middle);
    builder.add(x[i], i > left && i < right ? z[i] - lowering : z[i], n * n_factor);
  }
  builder.banks(left, right);
  builder.coefficients(survey.alpha_part, survey.beta_part);
  return builder.built();
}

std::size_t RiverSectionBuilder::lowest_of_channel(const RiverSection& section) {
  const auto begin = section.z_.begin();
  const auto from = begin + static_cast<std::ptrdiff_t>(section.left_bank_);
  const auto to = begin + static_cast<std::ptrdiff_t>(section.right_bank_) + 1;
  return static_cast<std::size_t>(std::min_element(from, to) - begin);
}

void RiverSectionBuilder::blend(const RiverSection& first, Span of_first, const RiverSection& second, Span of_second,
                                double share) {
  const auto mix = [share](double a, double b) { return a + share * (b - a); };
  const std::size_t steps = of_first[1] - of_first[0];
  if (steps == of_second[1] - of_second[0]) {
    for (std::size_t i = 0; i < steps; ++i) {
      const std::size_t a = of_first[0] + i;
      const std::size_t b = of_second[0] + i;
      add(mix(first.x_[a], second.x_[b]), mix(first.z_[a], second.z_[b]), mix(first.n_[a], second.n_[b]));
    }
    return;
  }
  // By relative distance: a stretch of one point, or without width, lies wholly at its start.
  struct Stretch {
    const RiverSection& section;
    Span ends;
    double relative(std::size_t i) const {
      const double width = section.x_[ends[1]] - section.x_[ends[0]];
      return width > 0.0 ? (section.x_[i] - section.x_[ends[0]]) / width : 0.0;
    }
  };
  const Stretch stretches[] = {{first, of_first}, {second, of_second}};
  std::size_t here[] = {of_first[0], of_second[0]};
  const auto value = [&](int which, double at, const std::vector<double>& of) {
    const Stretch& stretch = stretches[which];
    const std::size_t i = here[which];
    if (i >= stretch.ends[1]) return of[i];
    const double from = stretch.relative(i);
    const double to = stretch.relative(i + 1);
    return to > from ? of[i] + (of[i + 1] - of[i]) * std::clamp((at - from) / (to - from), 0.0, 1.0) : of[i];
  };
  while (here[0] < of_first[1] || here[1] < of_second[1]) {
    const double at = std::max(stretches[0].relative(here[0]), stretches[1].relative(here[1]));
    add(mix(value(0, at, first.x_), value(1, at, second.x_)), mix(value(0, at, first.z_), value(1, at, second.z_)),
        mix(first.n_[here[0]], second.n_[here[1]]));
    const double next[] = {here[0] < of_first[1] ? stretches[0].relative(here[0] + 1) : 2.0,
                           here[1] < of_second[1] ? stretches[1].relative(here[1] + 1) : 2.0};
    const double least = std::min(next[0], next[1]);
    if (next[0] <= least) ++here[0];
    if (next[1] <= least) ++here[1];
  }
}

Outcome<RiverSection> RiverSectionBuilder::between(const RiverSection& first, const RiverSection& second, double share) {
  if (!(share >= 0.0 && share <= 1.0))
    return bad_input("share", share, 0.0, 1.0, "a section is interpolated between two others");
  const auto bends = [](const RiverSection& section) {
    return std::array{std::size_t{0}, section.left_bank_, lowest_of_channel(section), section.right_bank_,
                      section.x_.size() - 1};
  };
  const auto a = bends(first);
  const auto b = bends(second);
  RiverSectionBuilder builder;
  std::array<std::size_t, 5> at{};
  for (std::size_t i = 0; i < 4; ++i) {
    at[i] = builder.section_.x_.size();
    builder.blend(first, {a[i], a[i + 1]}, second, {b[i], b[i + 1]}, share);
  }
  builder.banks(at[1], at[3]);
  builder.blend(first, {a[4], a[4] + 1}, second, {b[4], b[4] + 1}, share);
  builder.coefficients(first.alpha_part_ + share * (second.alpha_part_ - first.alpha_part_),
                       first.beta_part_ + share * (second.beta_part_ - first.beta_part_));
  return builder.built();
}

Outcome<RiverSection> RiverSection::interpolated(const RiverSection& first, const RiverSection& second, double share) {
  return RiverSectionBuilder::between(first, second, share);
}

}  // namespace quell::hydraulics
