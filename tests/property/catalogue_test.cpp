// What must hold for every dissipator of the catalogue, found by iteration: no type is named here.
#include <fmt/format.h>
#include <gtest/gtest.h>
#include <rapidcheck.h>
#include <rapidcheck/gtest.h>

#include <unistd.h>

#include <cmath>
#include <filesystem>
#include <fstream>
#include <iterator>
#include <regex>
#include <set>

#include "dissipator_case.h"
#include "property/structure_checks.h"
#include "quell/base/constants.h"
#include "quell/design/design.h"
#include "quell/io/site_file.h"

namespace quell::test {
namespace {

using dissipators::Dissipator;
using dissipators::Limit;
using dissipators::Measure;
using dissipators::Setting;
using dissipators::SizingInput;
using dissipators::Structure;
using site::ToeFlow;

double real(double low, double high) {
  return low + (high - low) * 1e-6 * *rc::gen::resize(rc::kNominalSize, rc::gen::inRange(0, 1000001));
}

ToeFlow from_crest(const Dissipator& type, ToeFlow flow, const DissipatorCase& one) {
  return dissipators::replaces_chute(type.record().action) ? type.from_crest(flow, one.setting()) : flow;
}

DissipatorCase random_case(const Dissipator& type) {
  DissipatorCase one;
  const double width = real(4.0, 60.0);
  const double largest_depth = real(0.3, 3.0);
  const double froude = real(2.2, 9.0);
  one.slope = real(0.3, 1.6);
  one.choices.apron_slope = real(0.02, 0.3);
  one.choices.apron_share = real(0.6, 1.0);
  one.choices.saf_reserve = real(0.0, 1.0) < 0.5;
  one.choices.type_2_full = real(0.0, 1.0) < 0.5;
  one.choices.baffle_rows = static_cast<int>(real(0.0, 2.999));
  one.choices.baffled_full = real(0.0, 1.0) < 0.5;
  for (const double share : {0.2, 0.5, 0.8, 1.0}) {
    // Smaller discharges arrive with about the same velocity: their Froude number is higher.
    const double V = froude * std::sqrt(gravity * largest_depth) * (0.9 + 0.1 * share);
    one.flows.push_back(flow_of(largest_depth * share, V, width));
  }
  const double head = one.flows.back().energy_head * 1.1;
  one.fall = 0.9 * head;
  for (auto& flow : one.flows) {
    flow.reservoir_level = head;
    flow = from_crest(type, flow, one);
    one.levels.push_back({0.9 * flow.y2, 1.0 * flow.y2, 1.3 * flow.y2});
  }
  return one;
}

/// The same structure by Froude's law, `scale` times as large.
DissipatorCase scaled(const Dissipator& type, const DissipatorCase& one, double scale) {
  DissipatorCase large = one;
  large.fall *= scale;
  large.bed_level *= scale;
  large.choices.rock_block_size *= scale;
  large.choices.flip_clearance *= scale;
  large.choices.pool_stone_size *= scale;
  for (auto& flow : large.flows) {
    flow.discharge *= std::pow(scale, 2.5);
    flow.width *= scale;
    flow.unit_discharge *= std::pow(scale, 1.5);
    flow.y1 *= scale;
    flow.V1 *= std::sqrt(scale);
    flow.y2 *= scale;
    flow.energy_head *= scale;
    flow.reservoir_level *= scale;
    flow.apron_level *= scale;
  }
  for (auto& levels : large.levels)
    for (auto& level : levels) level *= scale;
  for (auto& flow : large.flows) flow = from_crest(type, flow, large);
  return large;
}

std::string broken_structure(const Dissipator& type, const DissipatorCase& one) {
  const std::string id(type.record().id.view());
  const Structure s = one.size(id);
  const double width = one.flows.back().width;
  if (!std::isfinite(s.length) || !(s.length > 0.0)) return "length";
  if (s.floor.size() < 2) return "no floor";
  if (std::abs(s.floor.back().x - s.length) > 1e-9 * s.length) return "the floor does not end at the length";
  for (std::size_t i = 1; i < s.floor.size(); ++i)
    if (s.floor[i].x < s.floor[i - 1].x - 1e-12) return "the floor runs back";
  if (s.end_width < width * (1.0 - 1e-12)) return "narrower at its end";
  if (s.is_paved && !(s.freeboard > 0.0 || s.least_wall_height > 0.0)) return "no walls";
  if (auto broken = broken_elements(s, width, one.slope); !broken.empty()) return broken;
  for (const auto& load : s.loads)
    if (!(std::isfinite(load.value) && load.value > 0.0) || load.name.empty()) return "a load that is none";
  const auto need = one.need(id);
  if (!(need.sweep_out <= need.required && need.required <= need.best_highest && need.best_highest <= need.largest))
    return fmt::format("need out of order: {} {} {} {}", need.sweep_out, need.required, need.best_highest, need.largest);
  const bool by_tailwater = type.record().level_rule == dissipators::LevelRule::tailwater;
  if (by_tailwater != (need.required > 0.0)) return "a need that does not go with what sets the level";
  for (const auto& flow : one.flows)
    if (type.length(flow, one.setting()) > s.length * (1.0 + 1e-9) && dissipators::makes_jump(type.record().action))
      return "a discharge asks for more length";
  return {};
}

RC_GTEST_PROP(Catalogue, GeometryClosesAndBlocksFit, ()) {
  for (const auto* type : dissipators::catalogue()) {
    const auto one = random_case(*type);
    const auto broken = broken_structure(*type, one);
    if (!broken.empty()) RC_FAIL(std::string(type->record().id.view()) + ": " + broken);
  }
}

std::string broken_held_length(const Dissipator& type, DissipatorCase one, double share) {
  const std::string id(type.record().id.view());
  const Structure free = one.size(id);
  one.length = share * free.length;
  const Structure held = one.size(id);
  const auto findings = one.with_input([&](const auto& input) { return dissipators::judge_length(type, input, held); });
  if (findings.size() != 1) return "not judged once";
  if (!(free.required_length > 0.0))
    return held.length == free.length && findings[0].status == Status::caution ? "" : "a fixed form was moved";
  if (dissipators::overlap_of(free) > 0.0 && free.elements.size() > 2)
    return "";  // piers and sill meet by the type's own rules
  if (held.length != one.length || held.required_length != free.required_length) return "not the length held";
  if (std::abs(held.floor.back().x - one.length) > 1e-9 * one.length) return "the floor does not end there";
  if ((findings[0].status == Status::ok) != (share >= 1.0)) return "judged wrongly";
  if (share >= 1.0 && dissipators::overlap_of(held) > 0.0) return "a longer basin has no room";
  return dissipators::overlap_of(held) > 0.0 ? "" : broken_elements(held, one.flows.back().width, one.slope);
}

RC_GTEST_PROP(Catalogue, AHeldLengthIsKeptOrTheFormForbidsIt, ()) {
  const double share = real(0.3, 2.0);
  for (const auto* type : dissipators::catalogue())
    if (const auto broken = broken_held_length(*type, random_case(*type), share); !broken.empty())
      RC_FAIL(std::string(type->record().id.view()) + ": " + broken);
}

TEST(Catalogue, SomeTypesHaveAnEndThatMovesAndSomeHaveNot) {
  DissipatorCase one{.flows = {flow_of(1.0, 15.0, 20.0)}, .length = 12.0};
  EXPECT_EQ(one.size("type_2").length, 12.0);
  EXPECT_NE(one.size("baffled_apron").length, 12.0);
}

/// Lengths of a structure, in a fixed order.
std::vector<double> lengths_of(const Structure& s) {
  std::vector<double> all{s.length, s.invert_radius, s.end_sill_height, s.end_width, std::cbrt(s.riprap_volume)};
  for (const auto& e : s.elements) {
    for (const double value : {e.height, e.width, e.spacing, e.wall_clearance, e.length, e.station, e.row_step})
      all.push_back(value);
    all.push_back(0.0);
    for (const auto& p : e.profile) {
      all.push_back(p.x);
      all.push_back(p.z);
    }
  }
  for (const auto& p : s.floor) all.push_back(p.z);
  return all;
}

std::vector<int> counts_of(const Structure& s) {
  std::vector<int> all;
  for (const auto& e : s.elements) all.insert(all.end(), {e.count, e.rows});
  return all;
}

double largest_difference(const Structure& small, const Structure& large, double scale) {
  const auto a = lengths_of(small), b = lengths_of(large);
  if (a.size() != b.size() || counts_of(small) != counts_of(large)) return 1.0;
  double worst = 0.0;
  for (std::size_t i = 0; i < a.size(); ++i) worst = std::max(worst, std::abs(b[i] - scale * a[i]) / (scale * small.length));
  return worst;
}

// Froude's law. Freeboard is a rule in metres and seconds, and published least sizes hold at every scale: the flows drawn are
// large enough for these not to bind.
RC_GTEST_PROP(Catalogue, DimensionsScaleByFroudesLaw, ()) {
  const double scale = real(1.0, 4.0);
  for (const auto* type : dissipators::catalogue()) {
    if (!type->record().not_similar.empty()) continue;
    const std::string id(type->record().id.view());
    const auto one = random_case(*type);
    const double difference = largest_difference(one.size(id), scaled(*type, one, scale).size(id), scale);
    if (difference > 1e-9) RC_FAIL(fmt::format("{}: {} of the length", id, difference));
    const auto small = one.need(id), large = scaled(*type, one, scale).need(id);
    RC_ASSERT(std::abs(large.required - scale * small.required) <= 1e-9 * scale * std::max(1.0, small.required));
  }
}

// The reason why a type does not scale must not be an excuse.
TEST(Catalogue, ATypeThatSaysItDoesNotScaleDoesNot) {
  for (const auto* type : dissipators::catalogue()) {
    if (type->record().not_similar.empty()) continue;
    const std::string id(type->record().id.view());
    DissipatorCase one{.flows = {flow_of(1.2, 15.0, 20)}, .slope = 0.5, .fall = 12.0};
    one.flows[0].reservoir_level = 14.0;
    one.levels = {{5.0, 5.0, 5.0}};
    one.flows[0] = from_crest(*type, one.flows[0], one);
    EXPECT_GT(largest_difference(one.size(id), scaled(*type, one, 3.0).size(id), 3.0), 1e-6) << id;
  }
}

// --- limits of use

/// One flow whose measures all hold with room, and the one that a limit looks at is set to `value`.
DissipatorCase case_at(const Limit& limit, double value) {
  ToeFlow flow = flow_of(1.0, 6.0 * std::sqrt(gravity), 20.0);
  flow.reservoir_level = 12.0;
  DissipatorCase one{.flows = {flow}, .fall = 10.0};
  auto& f = one.flows[0];
  switch (limit.measure) {
    case Measure::froude_number: f.F1 = value; break;
    case Measure::unit_discharge: f.unit_discharge = value; break;
    case Measure::velocity: f.V1 = value; break;
    case Measure::discharge: f.discharge = value; break;
    case Measure::fall: one.fall = value; break;
    case Measure::head: f.reservoir_level = value; break;
    case Measure::fall_ratio: one.fall = value * std::cbrt(f.unit_discharge * f.unit_discharge / gravity); break;
    case Measure::chute_slope: one.slope = value; break;
  }
  one.levels = {{1.0, 1.0, 1.0}};
  return one;
}

TEST(Catalogue, FindingsAppearExactlyAtTheirLimits) {
  int looked_at = 0;
  for (const auto* type : dissipators::catalogue())
    for (const auto& limit : type->record().limits) {
      const double good = limit.sense == LimitSense::at_most ? 1.0 - 1e-12 : 1.0 + 1e-12;
      const auto status = [&](double value) {
        return case_at(limit, value).with_input([&](const SizingInput& input) {
          return finding(dissipators::judge_limits(type->record(), input), limit.id.view());
        });
      };
      EXPECT_EQ(status(limit.limit * good).status, Status::ok) << limit.id.view();
      const auto beyond = status(limit.limit * (2.0 - good));
      EXPECT_EQ(beyond.status, limit.otherwise) << limit.id.view();
      EXPECT_FALSE(beyond.advice.empty()) << limit.id.view();
      EXPECT_EQ(beyond.asks_for_model, limit.of_tests) << limit.id.view();
      ++looked_at;
    }
  EXPECT_GT(looked_at, 40);
}

// A limit asked of the largest discharge alone must not judge the others, and every other one must.
TEST(Catalogue, LimitsLookAtTheDischargesTheyName) {
  for (const auto* type : dissipators::catalogue())
    for (const auto& limit : type->record().limits) {
      if (limit.measure == Measure::fall || limit.measure == Measure::chute_slope || limit.measure == Measure::fall_ratio)
        continue;
      const double bad = limit.sense == LimitSense::at_most ? 1.01 : 0.99;
      auto one = case_at(limit, limit.limit * bad);
      one.flows.push_back(case_at(limit, limit.limit * (2.0 - bad)).flows[0]);
      one.levels.push_back({1.0, 1.0, 1.0});
      const auto status = one.with_input([&](const SizingInput& input) {
        return finding(dissipators::judge_limits(type->record(), input), limit.id.view()).status;
      });
      EXPECT_EQ(status, limit.largest_only ? Status::ok : limit.otherwise) << limit.id.view();
    }
}

// --- units

/// Every length and discharge of a site file written in feet, with all digits.
std::string in_feet(const std::string& text) {
  static const std::regex quantity(R"re("([0-9.]+) (m|m3/s)")re");
  std::string out;
  auto from = text.cbegin();
  for (std::sregex_iterator it(text.begin(), text.end(), quantity), end; it != end; ++it) {
    const double value = std::stod((*it)[1].str());
    const bool length = (*it)[2].str() == "m";
    out.append(from, (*it)[0].first);
    out += fmt::format("\"{:.17g} {}\"", length ? value / foot : value / (foot * foot * foot), length ? "ft" : "ft3/s");
    from = (*it)[0].second;
  }
  out.append(from, text.cend());
  return std::regex_replace(out, std::regex("units = \"SI\""), "units = \"US customary\"");
}

TEST(Catalogue, FeetAndMetresGiveTheSameStructures) {
  const std::string folder = QUELL_ROOT "/examples/06-canal-drop/";
  std::ifstream file(folder + "site.toml");
  const std::string text((std::istreambuf_iterator<char>(file)), {});
  const auto path = std::filesystem::temp_directory_path() / fmt::format("quell-feet-{}.toml", getpid());
  std::ofstream(path) << in_feet(text);
  const auto metric = io::read_site_file(folder + "site.toml");
  const auto us = io::read_site_file(path.string());
  std::filesystem::remove(path);
  ASSERT_TRUE(metric.good());
  ASSERT_TRUE(us.good());
  auto feet = us.site;
  feet.basin.apron_step = metric.site.basin.apron_step;
  const auto a = design::run_design(metric.site, {.types = dissipators::catalogue()});
  const auto b = design::run_design(feet, {.types = dissipators::catalogue()});
  ASSERT_TRUE(a);
  ASSERT_TRUE(b);
  for (std::size_t i = 0; i < a->options.size(); ++i) {
    const auto& one = a->options[i];
    const auto& two = b->options[i];
    ASSERT_EQ(one.sized, two.sized);
    if (!one.sized) continue;
    EXPECT_NEAR(one.apron_level, two.apron_level, 1e-9) << one.statement;
    EXPECT_LT(largest_difference(one.structure, two.structure, 1.0), 1e-9) << one.type->record().id.view();
    EXPECT_EQ(one.findings.size(), two.findings.size());
    for (std::size_t k = 0; k < std::min(one.findings.size(), two.findings.size()); ++k)
      EXPECT_EQ(one.findings[k].status, two.findings[k].status) << one.findings[k].id;
  }
}

// --- records

TEST(Catalogue, RecordsSayWhatADesignerMustKnow) {
  std::set<std::string_view> ids, limits;
  for (const auto* type : dissipators::catalogue()) {
    const auto& record = type->record();
    EXPECT_TRUE(ids.insert(record.id.view()).second) << record.id.view() << " twice";
    EXPECT_FALSE(record.limits.empty()) << record.id.view();
    EXPECT_FALSE(record.approach.empty()) << record.id.view();
    EXPECT_GE(record.failure_modes.size(), 2U) << record.id.view();
    EXPECT_FALSE(record.model.empty()) << record.id.view();
    for (const auto& limit : record.limits) {
      EXPECT_TRUE(limits.insert(limit.id.view()).second) << limit.id.view() << " twice";
      EXPECT_EQ(limit.id.view().rfind(std::string(record.id.view()) + ".", 0), 0U) << limit.id.view();
      EXPECT_NE(limit.sense, LimitSense::note) << limit.id.view();
      EXPECT_NE(limit.otherwise, Status::ok) << limit.id.view();
    }
  }
  EXPECT_EQ(ids.size(), dissipators::catalogue().size());
}

}  // namespace
}  // namespace quell::test
