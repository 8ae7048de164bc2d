#include "quell/hydraulics/reservoir_storage.h"

#include <algorithm>
#include <cmath>
#include <limits>

namespace quell::hydraulics {
namespace {

/// What is wrong with a table over the level, if anything.
Outcome<void> check_levels(std::span<const double> level, std::span<const double> value) {
  if (level.size() != value.size() || level.size() < 2)
    return no_answer("a storage curve needs two points or more, with a value for every level");
  for (std::size_t i = 0; i < level.size(); ++i) {
    if (!std::isfinite(level[i]) || !std::isfinite(value[i])) return no_answer("a storage curve holds finite numbers only");
    if (i > 0 && !(level[i] > level[i - 1]))
      return bad_input("level", level[i], level[i - 1], no_limit, "the levels of a storage curve must rise");
  }
  return {};
}
}  // namespace

Outcome<StorageCurve> StorageCurve::from_areas(std::span<const double> level, std::span<const double> area,
                                               double lowest_storage) {
  if (const auto good = check_levels(level, area); !good) return tl::unexpected(good.error());
  for (const double a : area)
    if (!(a >= 0.0)) return bad_input("area", a, 0.0, no_limit, "no area is below zero");
  if (!(area.back() > 0.0)) return bad_input("area", area.back(), above_zero.lowest, no_limit, "the highest area is zero");
  StorageCurve curve;
  curve.panels_.reserve(level.size());
  double storage = lowest_storage;
  for (std::size_t i = 1; i < level.size(); ++i) {
    const double h = level[i] - level[i - 1];
    if (area[i - 1] == 0.0 && area[i] == 0.0)
      return bad_input("area", 0.0, above_zero.lowest, no_limit, "two areas in succession are zero: nothing is stored between");
    curve.panels_.push_back({level[i - 1], storage, area[i - 1], (area[i] - area[i - 1]) / h});
    storage += 0.5 * h * (area[i - 1] + area[i]);
    if (!(storage > curve.panels_.back().storage)) return no_answer("the storage does not grow from one level to the next");
  }
  const double slope = std::max(0.0, curve.panels_.back().slope);
  curve.panels_.push_back({level.back(), storage, area.back(), slope});
  return curve;
}

Outcome<StorageCurve> StorageCurve::from_storages(std::span<const double> level, std::span<const double> storage) {
  if (const auto good = check_levels(level, storage); !good) return tl::unexpected(good.error());
  StorageCurve curve;
  curve.panels_.reserve(level.size());
  for (std::size_t i = 1; i < level.size(); ++i) {
    if (!(storage[i] > storage[i - 1]))
      return bad_input("storage", storage[i], storage[i - 1], no_limit, "the storage must grow with the level");
    curve.panels_.push_back({level[i - 1], storage[i - 1], (storage[i] - storage[i - 1]) / (level[i] - level[i - 1]), 0.0});
  }
  curve.panels_.push_back({level.back(), storage.back(), curve.panels_.back().area, 0.0});
  return curve;
}

std::size_t StorageCurve::panel_of(double level) const noexcept {
  const auto above =
      std::upper_bound(panels_.begin(), panels_.end(), level, [](double h, const Panel& panel) { return h < panel.level; });
  return above == panels_.begin() ? 0 : static_cast<std::size_t>(above - panels_.begin()) - 1;
}

double StorageCurve::storage(double level) const noexcept {
  const Panel& panel = panels_[panel_of(level)];
  const double h = std::max(0.0, level - panel.level);
  return panel.storage + h * (panel.area + 0.5 * panel.slope * h);
}

double StorageCurve::area(double level) const noexcept {
  const Panel& panel = panels_[panel_of(level)];
  return panel.area + panel.slope * std::max(0.0, level - panel.level);
}

double StorageCurve::level_at(double storage) const noexcept {
  const auto above =
      std::upper_bound(panels_.begin(), panels_.end(), storage, [](double s, const Panel& panel) { return s < panel.storage; });
  std::size_t panel = above == panels_.begin() ? 0 : static_cast<std::size_t>(above - panels_.begin()) - 1;
  return level_at(storage, panel);
}

double conic_volume(const ContourPair& contours) noexcept {
  return contours.h / 3.0 * (contours.A1 + contours.A2 + std::sqrt(contours.A1 * contours.A2));
}

double end_area_volume(const ContourPair& contours) noexcept {
  return 0.5 * contours.h * (contours.A1 + contours.A2);
}

double recession_storage(const Recession& recession) noexcept {
  return recession.Ts * (recession.Q1 - recession.Q2 * (1.0 + std::log(recession.Q1 / recession.Q2)));
}

double triangular_attenuation(const AttenuationInput& input) noexcept {
  return input.Qi * (1.0 - input.S / input.V);
}

double climate_factor(double p, double dT) noexcept {
  return std::pow(1.0 + p, dT);
}

namespace record {
namespace {
constexpr Range not_negative{0.0, no_limit};
constexpr double must_be_given = std::numeric_limits<double>::quiet_NaN();
constexpr Symbol storage_in[] = {
    {"H", "level", dimension::length, any_value},
    {"level", "levels of the table, rising", dimension::length, any_value, must_be_given, {}, true},
    {"area", "areas at the levels", dimension::area, not_negative, must_be_given, {}, true}};
constexpr Symbol storage_out[] = {{"S", "storage above the first level", dimension::volume, not_negative},
                                  {"A", "area of the water", dimension::area, not_negative}};
constexpr Symbol contours_in[] = {{"A1", "area of the lower contour", dimension::area, not_negative},
                                  {"A2", "area of the upper contour", dimension::area, not_negative},
                                  {"h", "distance of the contours", dimension::length, not_negative}};
constexpr Symbol volume_out[] = {{"V", "volume between them", dimension::volume, not_negative}};
constexpr Symbol recession_in[] = {{"Q1", "inflow now", dimension::discharge, above_zero},
                                   {"Q2", "outflow held from now on", dimension::discharge, above_zero},
                                   {"Ts", "time in which the inflow falls to 1/e", dimension::time, above_zero}};
constexpr Symbol recession_out[] = {{"S", "storage until the inflow equals the outflow", dimension::volume, not_negative}};
constexpr Symbol attenuation_in[] = {{"Qi", "peak inflow", dimension::discharge, above_zero},
                                     {"S", "storage taken up", dimension::volume, not_negative},
                                     {"V", "volume of the flood", dimension::volume, above_zero}};
constexpr Symbol attenuation_out[] = {{"Qo", "peak outflow", dimension::discharge, not_negative}};
constexpr Symbol climate_in[] = {
    {.name = "p", .meaning = "rise per degree", .dimension = dimension::none, .range = {0.0, 0.2}, .possible = {-0.99, 1.0}},
    {.name = "dT",
     .meaning = "degrees of warming, kelvin",
     .dimension = dimension::none,
     .range = {0.0, 8.0},
     .possible = {0.0, 20.0}}};
constexpr Symbol climate_out[] = {{"F", "factor on the rain", dimension::none, above_zero}};
}  // namespace

const Method reservoir_storage_tabulated{
    .id = "reservoir.storage.tabulated",
    .title = "Storage and area of a reservoir from a table of levels and areas",
    .kind = EquationKind::procedure,
    .equation =
        "Between two levels the area is straight and the storage its integral: S = S1 + h (A1 + A)/2, with h the height above "
        "the lower level. Above the last level the line of the area goes on.",
    .inputs = storage_in,
    .outputs = storage_out,
    .source = "momentum",
    .place = "integral of the area over the level",
    .provenance = Provenance::derived,
    .accuracy = "exact for the table; surveyed areas are known to 2 to 5 %, less well after years of silting",
    .condition = [](std::span<const double> in) -> std::string_view {
      const auto levels = in.subspan(1, (in.size() - 1) / 2);
      if (in[0] > levels.back()) return "the level is above the table: the line of the area was drawn on";
      return {};
    },
    .evaluate = [](std::span<const double> in, std::span<double> out) -> Outcome<void> {
      const std::size_t n = (in.size() - 1) / 2;
      const auto curve = StorageCurve::from_areas(in.subspan(1, n), in.subspan(1 + n));
      if (!curve) return tl::unexpected(curve.error());
      if (in[0] < curve->lowest_level())
        return bad_input("H", in[0], curve->lowest_level(), no_limit, "below the table nothing is known");
      out[0] = curve->storage(in[0]);
      out[1] = curve->area(in[0]);
      return {};
    }};

const Method reservoir_volume_conic{.id = "reservoir.volume.conic",
                                    .title = "Volume between two contours as the frustum of a pyramid",
                                    .equation = "V = h/3*(A1 + A2 + sqrt(A1*A2))",
                                    .inputs = contours_in,
                                    .outputs = volume_out,
                                    .source = "momentum",
                                    .place = "geometry of similar contours",
                                    .provenance = Provenance::derived,
                                    .accuracy = "exact for similar contours",
                                    .evaluate = [](std::span<const double> in, std::span<double> out) -> Outcome<void> {
                                      out[0] = conic_volume({.A1 = in[0], .A2 = in[1], .h = in[2]});
                                      return {};
                                    }};

const Method reservoir_volume_end_area{.id = "reservoir.volume.end_area",
                                       .title = "Volume between two contours from the mean of their areas",
                                       .equation = "V = h*(A1 + A2)/2",
                                       .inputs = contours_in,
                                       .outputs = volume_out,
                                       .source = "momentum",
                                       .place = "geometry, area straight over the level",
                                       .provenance = Provenance::derived,
                                       .accuracy = "exact for an area straight over the level",
                                       .remarks = "Above the conic volume, by half where one contour is a point.",
                                       .evaluate = [](std::span<const double> in, std::span<double> out) -> Outcome<void> {
                                         out[0] = end_area_volume({.A1 = in[0], .A2 = in[1], .h = in[2]});
                                         return {};
                                       }};

const Method reservoir_surcharge_recession{
    .id = "reservoir.surcharge_storage.recession",
    .title = "Storage that fills while the inflow recedes to a held outflow",
    .equation = "S = Ts*(Q1 - Q2*(1 + ln(Q1/Q2)))",
    .inputs = recession_in,
    .outputs = recession_out,
    .source = "em_3600",
    .place = "induced surcharge; integral of Q1 exp(-t/Ts) - Q2 to the time at which it is zero",
    .provenance = Provenance::derived,
    .accuracy = "exact for an exponential recession",
    .condition = [](std::span<const double> in) -> std::string_view {
      return in[1] <= in[0] ? std::string_view{} : "the outflow is above the inflow: nothing fills";
    },
    .evaluate = [](std::span<const double> in, std::span<double> out) -> Outcome<void> {
      if (in[1] > in[0]) return bad_input("Q2", in[1], 0.0, in[0], "an outflow above the inflow fills no storage");
      out[0] = std::max(0.0, recession_storage({.Q1 = in[0], .Q2 = in[1], .Ts = in[2]}));
      return {};
    }};

const Method reservoir_attenuation_triangular{
    .id = "reservoir.attenuation.triangular",
    .title = "Peak outflow estimated from the storage taken up, inflow and outflow triangular",
    .equation = "Qo = Qi*(1 - S/V)",
    .inputs = attenuation_in,
    .outputs = attenuation_out,
    .source = "momentum",
    .place = "mass balance of two triangles on one base",
    .provenance = Provenance::derived,
    .accuracy = "10 to 20 %, as a rule too low",
    .remarks = "For a first look only: design takes the routed flood.",
    .evaluate = [](std::span<const double> in, std::span<double> out) -> Outcome<void> {
      if (in[1] > in[2]) return bad_input("S", in[1], 0.0, in[2], "no more can be stored than flows in");
      out[0] = triangular_attenuation({.Qi = in[0], .S = in[1], .V = in[2]});
      return {};
    }};

const Method flood_climate_factor{.id = "flood.climate_factor.compound",
                                  .title = "Factor on rain and flood for a warmer climate",
                                  .equation = "F = (1 + p)^dT",
                                  .inputs = climate_in,
                                  .outputs = climate_out,
                                  .source = "martel_2021",
                                  .place = "abstract: about 7 % more rain for each degree, more for rare and short rain",
                                  .provenance = Provenance::seen,
                                  .accuracy = "a planning allowance; the rise per degree is known to half of itself at best",
                                  .remarks = "Losses do not grow with the rain, so that a flood peak as a rule grows by more.",
                                  .evaluate = [](std::span<const double> in, std::span<double> out) -> Outcome<void> {
                                    out[0] = climate_factor(in[0], in[1]);
                                    return {};
                                  }};

}  // namespace record
}  // namespace quell::hydraulics
