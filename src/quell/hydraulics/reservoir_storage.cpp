#include "quell/hydraulics/reservoir_storage.h"

#include <algorithm>
#include <cmath>

namespace quell::hydraulics {
namespace {

bool increases(std::span<const double> values) {
  for (std::size_t i = 1; i < values.size(); ++i)
    if (!(values[i] > values[i - 1])) return false;
  return true;
}

}  // namespace

Outcome<StorageCurve> StorageCurve::from_area(std::span<const double> level, std::span<const double> area) {
  if (level.size() < 2 || area.size() != level.size())
    return no_answer("a storage table needs two levels or more, each with its area");
  if (!increases(level)) return no_answer("the levels of a storage table must rise");
  StorageCurve curve;
  curve.level_.assign(level.begin(), level.end());
  curve.storage_.push_back(0.0);
  for (std::size_t i = 1; i < level.size(); ++i) {
    const double h = level[i] - level[i - 1];
    if (!(area[i - 1] >= 0.0) || !(area[i] > 0.0) || !(area[i] >= area[i - 1]))
      return no_answer("the areas of a storage table must not decrease");
    curve.area_.push_back(area[i - 1]);
    curve.spread_.push_back((area[i] - area[i - 1]) / h);
    curve.storage_.push_back(curve.storage_.back() + end_area_volume({area[i - 1], area[i], h}));
  }
  return curve;
}

Outcome<StorageCurve> StorageCurve::from_storage(std::span<const double> level, std::span<const double> storage) {
  if (level.size() < 2 || storage.size() != level.size())
    return no_answer("a storage table needs two levels or more, each with its storage");
  if (!increases(level)) return no_answer("the levels of a storage table must rise");
  if (!increases(storage)) return no_answer("the storage of a table must rise with its level");
  StorageCurve curve;
  curve.level_.assign(level.begin(), level.end());
  curve.storage_.assign(storage.begin(), storage.end());
  for (std::size_t i = 1; i < level.size(); ++i) {
    curve.area_.push_back((storage[i] - storage[i - 1]) / (level[i] - level[i - 1]));
    curve.spread_.push_back(0.0);
  }
  return curve;
}

std::size_t StorageCurve::piece_of_level(double level) const noexcept {
  const auto above = std::upper_bound(level_.begin() + 1, level_.end() - 1, level);
  return static_cast<std::size_t>(above - level_.begin()) - 1;
}

double StorageCurve::storage(double level) const noexcept {
  const std::size_t i = piece_of_level(level);
  const double h = std::max(0.0, level - level_[i]);
  return storage_[i] + h * (area_[i] + 0.5 * spread_[i] * h);
}

double StorageCurve::area(double level) const noexcept {
  const std::size_t i = piece_of_level(level);
  return area_[i] + spread_[i] * std::max(0.0, level - level_[i]);
}

double StorageCurve::level_at(double storage) const noexcept {
  std::size_t hint = 0;
  return level_at(storage, hint);
}

double StorageCurve::level_at(double storage, std::size_t& hint) const noexcept {
  const bool inside = storage >= storage_[hint] && storage < storage_[hint + 1];
  if (!inside) {
    const auto above = std::upper_bound(storage_.begin() + 1, storage_.end() - 1, storage);
    hint = static_cast<std::size_t>(above - storage_.begin()) - 1;
  }
  return level_in(hint, storage);
}

double StorageCurve::level_in(std::size_t i, double storage) const noexcept {
  const double v = std::max(0.0, storage - storage_[i]);
  // h of A h + B h^2/2 = v, in the form that keeps its digits where B is small.
  const double root = std::sqrt(area_[i] * area_[i] + 2.0 * spread_[i] * v);
  return v > 0.0 ? level_[i] + 2.0 * v / (area_[i] + root) : level_[i];
}

double conic_volume(const PrismoidInput& input) noexcept {
  return input.h / 3.0 * (input.A1 + input.A2 + std::sqrt(input.A1 * input.A2));
}

double end_area_volume(const PrismoidInput& input) noexcept {
  return input.h * (input.A1 + input.A2) / 2.0;
}

double surcharge_storage(const SurchargeInput& input) noexcept {
  return input.Ts * (input.Q1 - input.Q2 * (1.0 + std::log(input.Q1 / input.Q2)));
}

double attenuated_peak(const AttenuationInput& input) noexcept {
  return input.Qi * (1.0 - input.S / input.V);
}

double climate_factor(const ClimateInput& input) noexcept {
  return std::pow(1.0 + input.p, input.dT);
}

namespace record {
namespace {
constexpr Symbol prismoid_in[] = {{"A1", "area of the lower contour", dimension::area, {0.0, no_limit}},
                                  {"A2", "area of the upper contour", dimension::area, {0.0, no_limit}},
                                  {"h", "height between them", dimension::length, above_zero}};
constexpr Symbol volume_out[] = {{"V", "volume", dimension::volume, {0.0, no_limit}}};
constexpr Symbol surcharge_in[] = {{"Q1", "inflow when the outflow is first held", dimension::discharge, above_zero},
                                   {"Q2", "outflow held", dimension::discharge, above_zero},
                                   {"Ts", "time in which the inflow recedes to 1/e", dimension::time, above_zero}};
constexpr Symbol surcharge_out[] = {{"S", "storage needed", dimension::volume, {0.0, no_limit}}};
constexpr Symbol attenuation_in[] = {
    {"Qi", "peak inflow", dimension::discharge, above_zero},
    {"S", "storage above the level before the flood, at the peak", dimension::volume, {0.0, no_limit}},
    {"V", "volume of the inflow", dimension::volume, above_zero}};
constexpr Symbol attenuation_out[] = {{"Qo", "peak outflow", dimension::discharge, any_value}};
constexpr Symbol climate_in[] = {{"p", "increase per degree", dimension::none, {0.0, 0.2}},
                                 {"dT", "warming in degrees", dimension::none, {0.0, 6.0}}};
constexpr Symbol climate_out[] = {{"Fc", "factor on rain", dimension::none, above_zero}};

std::string_view held_below_inflow(std::span<const double> in) {
  return in[1] > in[0] ? "the outflow is held above the inflow: nothing need be stored" : "";
}
std::string_view stores_less(std::span<const double> in) {
  return in[1] > in[2] ? "more is stored than flows in" : "";
}
}  // namespace

const Method reservoir_volume_conic{.id = "reservoir.volume.conic",
                                    .title = "Volume between two contours of a natural valley",
                                    .equation = "V = h/3*(A1 + A2 + sqrt(A1*A2))",
                                    .inputs = prismoid_in,
                                    .outputs = volume_out,
                                    .source = "momentum",
                                    .place = "frustum of a cone",
                                    .provenance = Provenance::derived,
                                    .accuracy = "exact for a cone; as the contours",
                                    .evaluate = [](std::span<const double> in, std::span<double> out) -> Outcome<void> {
                                      out[0] = conic_volume({in[0], in[1], in[2]});
                                      return {};
                                    }};

const Method reservoir_volume_end_area{.id = "reservoir.volume.end_area",
                                       .title = "Volume between two contours by the mean of their areas",
                                       .equation = "V = h*(A1 + A2)/2",
                                       .inputs = prismoid_in,
                                       .outputs = volume_out,
                                       .source = "momentum",
                                       .place = "area straight between the contours",
                                       .provenance = Provenance::derived,
                                       .accuracy = "exact where the area changes in proportion to the height",
                                       .evaluate = [](std::span<const double> in, std::span<double> out) -> Outcome<void> {
                                         out[0] = end_area_volume({in[0], in[1], in[2]});
                                         return {};
                                       }};

const Method reservoir_surcharge{.id = "reservoir.surcharge.recession",
                                 .title = "Storage needed to hold the outflow while the inflow recedes",
                                 .equation = "S = Ts*(Q1 - Q2*(1 + ln(Q1/Q2)))",
                                 .inputs = surcharge_in,
                                 .outputs = surcharge_out,
                                 .source = "momentum",
                                 .place = "volume of an exponential recession above the outflow",
                                 .provenance = Provenance::derived,
                                 .accuracy = "exact for an exponential recession",
                                 .condition = held_below_inflow,
                                 .evaluate = [](std::span<const double> in, std::span<double> out) -> Outcome<void> {
                                   if (in[1] > in[0])
                                     return bad_input("Q2", in[1], 0.0, in[0],
                                                      "an outflow held above the inflow stores nothing");
                                   out[0] = surcharge_storage({in[0], in[1], in[2]});
                                   return {};
                                 }};

const Method reservoir_attenuation{.id = "reservoir.peak.triangular",
                                   .title = "Peak outflow of triangular hydrographs",
                                   .equation = "Qo = Qi*(1 - S/V)",
                                   .inputs = attenuation_in,
                                   .outputs = attenuation_out,
                                   .source = "momentum",
                                   .place = "volume between two triangles",
                                   .provenance = Provenance::derived,
                                   .accuracy = "may be 10 % low: for screening, never for design",
                                   .condition = stores_less,
                                   .evaluate = [](std::span<const double> in, std::span<double> out) -> Outcome<void> {
                                     out[0] = attenuated_peak({in[0], in[1], in[2]});
                                     return {};
                                   }};

const Method flood_climate_factor{.id = "flood.climate_factor.warming",
                                  .title = "Factor on rain for a warming of the air",
                                  .equation = "Fc = (1 + p)^dT",
                                  .inputs = climate_in,
                                  .outputs = climate_out,
                                  .source = "practice",
                                  .place = "about 7 % per degree by the moisture that air holds; more for short rain",
                                  .provenance = Provenance::common_practice,
                                  .accuracy = "a scenario, not a forecast; flood peaks grow by more than the rain",
                                  .evaluate = [](std::span<const double> in, std::span<double> out) -> Outcome<void> {
                                    out[0] = climate_factor({in[0], in[1]});
                                    return {};
                                  }};
}  // namespace record

}  // namespace quell::hydraulics
