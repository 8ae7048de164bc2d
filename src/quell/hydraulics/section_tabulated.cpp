#include "quell/hydraulics/section_tabulated.h"

#include <algorithm>
#include <cmath>
#include <limits>

#include "quell/base/roots.h"
#include "quell/hydraulics/specific_energy.h"

namespace quell::hydraulics {

Outcome<TabulatedSection> TabulatedSection::of(std::span<const double> x, std::span<const double> z) {
  if (x.size() != z.size() || x.size() < 2) return no_answer("a section needs two points or more, with as many x as z");
  double lowest = std::numeric_limits<double>::infinity();
  for (std::size_t i = 1; i < x.size(); ++i) {
    if (!(x[i] >= x[i - 1])) return no_answer("the points of a section go from bank to bank: x must not fall");
    if (x[i] > x[i - 1]) lowest = std::min({lowest, z[i - 1], z[i]});
  }
  if (!std::isfinite(lowest)) return no_answer("a section without width holds no water");
  return TabulatedSection(x, z, lowest);
}

Outcome<TabulatedSection> TabulatedSection::after(std::span<const double> values, std::size_t singles) {
  const std::size_t length = (values.size() - singles) / 2;
  return of(values.subspan(singles, length), values.subspan(singles + length));
}

TabulatedSection::Wetted TabulatedSection::wetted(double y) const {
  const double level = lowest_ + y;
  Wetted sum;
  for (std::size_t i = 1; i < x_.size(); ++i) {
    const double deep = level - std::min(z_[i - 1], z_[i]);
    if (!(deep > 0.0)) continue;
    const double rise = std::abs(z_[i] - z_[i - 1]);
    const double shallow = std::max(0.0, deep - rise);
    const double share = deep < rise ? deep / rise : 1.0;  // of the panel that is under water
    const double dx = share * (x_[i] - x_[i - 1]);
    sum.area += dx * (deep + shallow) / 2.0;
    sum.top_width += dx;
    sum.perimeter += std::hypot(dx, deep - shallow);
    sum.first_moment += dx * (deep * deep + deep * shallow + shallow * shallow) / 6.0;
  }
  sum.perimeter += std::max(0.0, level - z_.front()) + std::max(0.0, level - z_.back());
  return sum;
}

double TabulatedSection::bank_depth() const {
  return std::min(z_.front(), z_.back()) - lowest_;
}

Layer TabulatedSection::layer_at(double y) const {
  Layer layer{.bottom = 0.0, .top = std::numeric_limits<double>::infinity(), .area = 0.0, .width = 0.0, .spread = 0.0};
  for (const double z : z_) {
    const double depth = z - lowest_;
    if (depth <= y)
      layer.bottom = std::max(layer.bottom, depth);
    else
      layer.top = std::min(layer.top, depth);
  }
  const bool above_all = !std::isfinite(layer.top);
  layer.area = area(layer.bottom);
  // The width may leap at the bottom, where a level berm lies: it is read inside the layer.
  const double thickness = above_all ? 1.0 : layer.top - layer.bottom;
  const double lower = top_width(layer.bottom + 0.25 * thickness);
  if (!above_all) layer.spread = (top_width(layer.bottom + 0.75 * thickness) - lower) / (0.5 * thickness);
  layer.width = std::max(0.0, lower - 0.25 * thickness * layer.spread);
  return layer;
}

Layer::Crossings Layer::critical_depths(double discharge) const {
  const double K = discharge * discharge / gravity;
  const auto excess = [&](double y) { return K * width_at(y) - std::pow(area_at(y), 3); };
  const auto crossing = [&](double from, double to) -> std::optional<double> {
    if (!(from < to) || (excess(from) > 0.0) == (excess(to) > 0.0)) return std::nullopt;
    const auto depth = find_root(excess, from, to, 1e-15 * to);
    return depth ? std::optional(*depth) : std::nullopt;
  };
  // Bounds from T h <= A above the highest point and A <= T h above the lowest.
  const double end = std::isfinite(top) ? top : bottom + std::cbrt(K / (width * width)) * (1.0 + 1e-9);
  const double start = area > 0.0 ? bottom : bottom + 0.5 * std::cbrt(K / std::pow(width_at(end), 2));
  // F^2 = K T/A^3 grows up to the depth at which T^2 = A spread/3, and falls from there.
  const double squared = (spread * area - width * width / 2.0) / 2.5;
  const double turn = squared > width * width ? bottom + (std::sqrt(squared) - width) / spread : start;
  const double parting = std::clamp(turn, start, std::max(start, end));
  return {.to_supercritical = crossing(start, parting), .to_subcritical = crossing(parting, end)};
}

Outcome<CriticalDepths> critical_depths(const TabulatedSection& section, double discharge) {
  if (!(discharge > 0.0)) return no_answer("critical depth needs a discharge above zero");
  CriticalDepths found{.least_energy = 0.0, .count = 0};
  double least = std::numeric_limits<double>::infinity();
  for (double bottom = 0.0; std::isfinite(bottom);) {
    const Layer layer = section.layer_at(bottom);
    if (const auto depth = layer.critical_depths(discharge).to_subcritical) {
      ++found.count;
      const double energy = specific_energy(section, discharge, *depth);
      if (energy < least) found.least_energy = *depth;
      least = std::min(least, energy);
    }
    bottom = layer.top;
  }
  if (found.count == 0) return no_answer("no critical depth was found");
  return found;
}

namespace record {
namespace {
constexpr Symbol x_symbol{"x",       "stations of the points, from bank to bank", dimension::length,
                          any_value, std::numeric_limits<double>::quiet_NaN(),    {},
                          true};
constexpr Symbol z_symbol{
    "z", "levels of the points", dimension::length, any_value, std::numeric_limits<double>::quiet_NaN(), {}, true};
constexpr Symbol geometry_in[] = {{"y", "depth above the lowest point", dimension::length, above_zero}, x_symbol, z_symbol};
constexpr Symbol critical_in[] = {{"Q", "discharge", dimension::discharge, above_zero}, x_symbol, z_symbol};
constexpr Symbol geometry_out[] = {
    {"A", "area", dimension::area, {0.0, no_limit}},
    {"T", "surface width", dimension::length, {0.0, no_limit}},
    {"P", "wetted perimeter", dimension::length, {0.0, no_limit}},
    {"Aybar", "first moment: area times depth of its centroid", dimension::volume, {0.0, no_limit}}};
constexpr Symbol yc_out[] = {{"yc", "critical depth above the lowest point", dimension::length, above_zero}};

std::string_view geometry_condition(std::span<const double> in) {
  const auto section = TabulatedSection::after(in, 1);
  if (section && in[0] > section->bank_depth()) return water_above_the_bank;
  return {};
}

std::string_view critical_condition(std::span<const double> in) {
  const auto section = TabulatedSection::after(in, 1);
  if (!section) return section.error().reason;
  const auto depths = critical_depths(*section, in[0]);
  if (!depths) return depths.error().reason;
  if (depths->count > 1) return "the section has several critical depths: the one of the least energy is given";
  if (depths->least_energy > section->bank_depth()) return water_above_the_bank;
  return {};
}
}  // namespace

const Method section_geometry_tabulated{
    .id = "section.geometry.tabulated",
    .title = "Area, surface width, wetted perimeter and first moment of a surveyed section",
    .kind = EquationKind::procedure,
    .equation =
        "Sums over the panels between successive points, of wetted width dx and depths h1 and h2, the panels that cross "
        "the surface cut there: A = sum dx (h1 + h2)/2, T = sum dx, P = sum sqrt(dx^2 + (h1 - h2)^2), "
        "A ybar = sum dx (h1^2 + h1 h2 + h2^2)/6.",
    .inputs = geometry_in,
    .outputs = geometry_out,
    .source = "momentum",
    .place = "geometry of a polygon",
    .provenance = Provenance::derived,
    .accuracy = "exact",
    .remarks = "All water below the level counts, behind a ridge too.",
    .condition = geometry_condition,
    .evaluate = [](std::span<const double> in, std::span<double> out) -> Outcome<void> {
      const auto section = TabulatedSection::after(in, 1);
      if (!section) return tl::unexpected(section.error());
      const auto wetted = section->wetted(in[0]);
      out[0] = wetted.area;
      out[1] = wetted.top_width;
      out[2] = wetted.perimeter;
      out[3] = wetted.first_moment;
      return {};
    }};

const Method critical_depth_tabulated{
    .id = "section.critical_depth.tabulated",
    .title = "Critical depth in a surveyed section",
    .kind = EquationKind::procedure,
    .equation =
        "Q^2 T = g A^3 in every layer between the levels of successive points; of several such depths that are minima of "
        "the specific energy, the one with the least energy.",
    .inputs = critical_in,
    .outputs = yc_out,
    .source = "momentum",
    .place = "least specific energy at given discharge, energy coefficient 1",
    .provenance = Provenance::derived,
    .accuracy = "solved to 1e-12",
    .remarks = "With a berm or a flood plain a single velocity for the whole section is itself a rough assumption.",
    .condition = critical_condition,
    .evaluate = [](std::span<const double> in, std::span<double> out) -> Outcome<void> {
      const auto section = TabulatedSection::after(in, 1);
      if (!section) return tl::unexpected(section.error());
      const auto depths = critical_depths(*section, in[0]);
      if (!depths) return tl::unexpected(depths.error());
      out[0] = depths->least_energy;
      return {};
    }};

}  // namespace record
}  // namespace quell::hydraulics
