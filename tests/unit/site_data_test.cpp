// Good site files with gates, reservoir, floods, surveyed river and uncertain values: what arrives in the struct.
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <cmath>

#include "bad_input/data_site_text.h"
#include "quell/base/source.h"
#include "quell/io/files.h"
#include "quell/site/uncertainty.h"

namespace quell::test {
namespace {

using testing::ElementsAre;
using testing::HasSubstr;

const io::SiteFile& good() {
  static const io::SiteFile file = read_data_site(good_data_site);
  return file;
}

const io::EchoedInput* echoed(const io::SiteFile& file, std::string_view section, std::string_view key) {
  for (const io::EchoedInput& input : file.inputs)
    if (input.section == section && input.key == key) return &input;
  return nullptr;
}

TEST(SiteData, Gates) {
  ASSERT_TRUE(good().good()) << all_problems(good());
  const site::Gates& gates = good().site.gates;
  EXPECT_EQ(gates.count, 3);
  EXPECT_EQ(gates.seat_level, 130.0) << "the level of the crest";
  EXPECT_EQ(gates.held_level, 138.0);
  EXPECT_EQ(gates.coefficient, 0.6);
  EXPECT_EQ(gates.radial_coefficient, 0.0);
  EXPECT_TRUE(gates.standard_patterns);
  ASSERT_EQ(gates.patterns.size(), 2u);
  EXPECT_THAT(gates.patterns[0].opening, ElementsAre(0.0, 4.0, 0.0));
  EXPECT_THAT(gates.patterns[0].level, ElementsAre(137.0, 138.0));
  EXPECT_FALSE(gates.patterns[0].is_check);
  EXPECT_TRUE(gates.patterns[1].is_check);
  EXPECT_TRUE(gates.patterns[1].level.empty());
  ASSERT_EQ(gates.rules.size(), 2u);
  EXPECT_EQ(gates.rules[0].pattern, 0u);
  EXPECT_EQ(gates.rules[1].pattern, 1u);
  EXPECT_EQ(gates.rules[1].open_level, 138.8);
  EXPECT_EQ(gates.rules[1].close_level, 138.1);
}

TEST(SiteData, PiersBetweenTheBaysAreTakenAndEchoed) {
  EXPECT_EQ(good().site.crest.piers, 2);
  const io::EchoedInput* piers = echoed(good(), "crest", "piers");
  ASSERT_NE(piers, nullptr);
  EXPECT_EQ(piers->typed, "between the bays: 2");
  EXPECT_TRUE(piers->is_default);
}

TEST(SiteData, WordsAndCoefficientsOfGates) {
  const io::SiteFile file =
      read_data_site(spoiled(good_data_site, "held_level",
                             "seat_level = \"129.8 m\"\nradial_coefficient = 0.7\nstandard_patterns = \"no\"\nheld_level"));
  ASSERT_TRUE(file.good()) << all_problems(file);
  EXPECT_EQ(file.site.gates.seat_level, 129.8);
  EXPECT_EQ(file.site.gates.radial_coefficient, 0.7);
  EXPECT_FALSE(file.site.gates.standard_patterns);
}

TEST(SiteData, Outlets) {
  ASSERT_EQ(good().site.outlets.size(), 1u);
  const site::Outlet& outlet = good().site.outlets[0];
  EXPECT_EQ(outlet.name, "bottom outlet");
  EXPECT_EQ(outlet.centre_level, 108.0);
  EXPECT_EQ(outlet.area, 4.5);
  EXPECT_EQ(outlet.coefficient, 0.6);
  EXPECT_FALSE(outlet.has_tail_level);
  EXPECT_TRUE(outlet.is_guaranteed);
}

TEST(SiteData, SurveyedRiver) {
  const site::River& river = good().site.river;
  EXPECT_EQ(river.source, site::TailwaterSource::survey);
  EXPECT_EQ(river.lag_allowance, 0.2);
  EXPECT_FALSE(river.degradation_given);
  EXPECT_EQ(river.bed_degradation, 0.0);
  EXPECT_EQ(river.reach.control, site::RiverControl::normal);
  EXPECT_EQ(river.reach.control_slope, 0.002);
  EXPECT_EQ(river.reach.high_n_factor, 1.25);
  ASSERT_EQ(river.reach.sections.size(), 2u);
  const site::CrossSection& first = river.reach.sections[0];
  EXPECT_EQ(first.file, "s1.csv");
  EXPECT_EQ(first.station.size(), 6u);
  EXPECT_EQ(first.left_bank, 10.0);
  EXPECT_THAT(first.manning_n, ElementsAre(0.06, 0.035, 0.035));
  EXPECT_TRUE(first.point_n.empty());
  const site::CrossSection& second = river.reach.sections[1];
  EXPECT_EQ(second.distance, 200.0);
  EXPECT_EQ(second.left_distance, 180.0);
  EXPECT_EQ(second.left_bank, 0.0) << "the first station";
  EXPECT_EQ(second.right_bank, 63.0) << "the last station";
  EXPECT_EQ(second.point_n.size(), 6u);
  EXPECT_TRUE(river.bed.given);
  EXPECT_DOUBLE_EQ(river.bed.coarse_size, 2.1 * 0.024);
  EXPECT_EQ(river.bed.armour_size, 0.0);
}

TEST(SiteData, FloodsAndReservoir) {
  const site::Site& site = good().site;
  EXPECT_EQ(site.floods.climate_factor, 1.1);
  EXPECT_EQ(site.floods.record.yearly_flood.size(), 11u);
  EXPECT_EQ(site.floods.record.law, site::FrequencyLaw::log_pearson_3);
  EXPECT_TRUE(site.floods.record.has_regional_skew);
  EXPECT_EQ(site.floods.record.regional_skew_error, 0.302);
  ASSERT_EQ(site.floods.inflows.size(), 2u);
  EXPECT_EQ(site.floods.inflows[0].shape, site::InflowShape::measured);
  EXPECT_EQ(site.floods.inflows[0].time[1], 3600.0);
  EXPECT_EQ(site.floods.inflows[1].shape, site::InflowShape::gamma);
  EXPECT_EQ(site.floods.inflows[1].time_to_peak, 21600.0);
  EXPECT_EQ(site.floods.inflows[1].peak, 0.0);
  EXPECT_EQ(site.floods.inflows[1].exponent, 3.7);
  EXPECT_THAT(site.reservoir.level, ElementsAre(120.0, 130.0, 138.0, 142.0));
  EXPECT_EQ(site.reservoir.area[1], 1.1e6);
  EXPECT_EQ(site.reservoir.freeboard, 1.0);
  EXPECT_FALSE(site.reservoir.has_initial_level);
}

TEST(SiteData, WithAnInflowTheDischargesAreNotYetKnown) {
  const site::Discharges& d = good().site.discharges;
  EXPECT_EQ(d.design_inflow, "100-year inflow");
  EXPECT_EQ(d.check_inflow, "1000-year inflow");
  EXPECT_EQ(d.design_flood, 0.0);
  EXPECT_EQ(d.check_flood, 0.0);
  EXPECT_EQ(d.smallest, 0.0);
  EXPECT_EQ(echoed(good(), "discharges", "smallest"), nullptr);
}

TEST(SiteData, WhatIsLeftOutIsNotThere) {
  const io::SiteFile file = io::read_site_text(good_site, "site.toml");
  ASSERT_TRUE(file.good()) << all_problems(file);
  EXPECT_FALSE(file.site.gates.given());
  EXPECT_FALSE(file.site.reservoir.given());
  EXPECT_FALSE(file.site.floods.record.given());
  EXPECT_FALSE(file.site.river.bed.given);
  EXPECT_EQ(file.site.river.source, site::TailwaterSource::rating);
  EXPECT_EQ(file.site.crest.piers, 0);
  for (const char* section : {"gates", "floods", "reservoir", "river.bed", "floods.record"})
    for (const io::EchoedInput& input : file.inputs) EXPECT_NE(input.section, section);
}

TEST(SiteData, DegradationIsGivenOnlyInTheFile) {
  EXPECT_TRUE(
      io::read_site_text(spoiled(good_site, "bed_level = \"100 m\"", "bed_level = \"100 m\"\nbed_degradation = 0"), "s.toml")
          .site.river.degradation_given);
  EXPECT_FALSE(io::read_site_text(good_site, "s.toml").site.river.degradation_given);
}

TEST(SiteData, TheDigestCoversEveryFile) {
  for (const auto& [name, text] : good_data_files()) {
    if (name == "gauging.csv") continue;  // not named by this site
    const io::SiteFile changed = read_data_site(good_data_site, {{name, text + "# one more line\n"}});
    ASSERT_TRUE(changed.good()) << name << all_problems(changed);
    EXPECT_NE(changed.digest, good().digest) << name;
  }
  EXPECT_EQ(read_data_site(good_data_site).digest, good().digest);
  std::string all(good_data_site);
  for (const char* name : {"s1.csv", "s2.csv", "record.csv", "inflow.csv", "storage.csv"}) all += good_data_files().at(name);
  EXPECT_EQ(good().digest, io::sha256(all));
}

TEST(SiteData, AFaultInAFileIsToldThere) {
  const io::SiteFile file =
      read_data_site(good_data_site, {{"s2.csv", "station (m),level (m),n\n0,9,0.1\n5,2,0.1\n4,9,0.1\n"}});
  ASSERT_EQ(file.problems.size(), 1u) << all_problems(file);
  EXPECT_THAT(file.problems[0].file, HasSubstr("s2.csv"));
  EXPECT_EQ(file.problems[0].line, 4);
}

TEST(SiteData, ALevelAtTheLowerEndMayBeThree) {
  const io::SiteFile file = read_data_site(
      spoiled(good_data_site, "control = \"normal\"\ncontrol_slope = 0.002",
              "control = \"level\"\ncontrol_level = { low = 101, expected = \"101.5 m\", high = \"10300 cm\" }"));
  ASSERT_TRUE(file.good()) << all_problems(file);
  EXPECT_THAT(file.site.river.reach.control_level, ElementsAre(101.0, 101.5, 103.0));
  EXPECT_EQ(echoed(file, "river.survey", "control_level")->typed, "low 101 (m), expected 101.5 m, high 10300 cm");
}

/// The uncertainty of the good site with `from` replaced by `to`.
site::UncertainInput declared(std::string_view from, std::string_view to) {
  const io::SiteFile file = io::read_site_text(spoiled(good_site, from, to), "site.toml");
  EXPECT_TRUE(file.good()) << to << "\n" << all_problems(file);
  EXPECT_EQ(file.site.uncertain.size(), 1u) << to;
  return file.site.uncertain.empty() ? site::UncertainInput{} : file.site.uncertain[0];
}

TEST(Uncertainty, ShareOfTheValue) {
  const io::SiteFile file = io::read_site_text(
      spoiled(good_site, "design_head = \"5 m\"", "design_head = { value = \"5 m\", distribution = \"normal\", cov = 0.05 }"),
      "s.toml");
  ASSERT_TRUE(file.good()) << all_problems(file);
  EXPECT_EQ(file.site.crest.design_head, 5.0);
  ASSERT_EQ(file.site.uncertain.size(), 1u);
  EXPECT_EQ(file.site.uncertain[0].key, "crest.design_head");
  EXPECT_EQ(file.site.uncertain[0].of.mean, 5.0);
  EXPECT_DOUBLE_EQ(file.site.uncertain[0].of.deviation, 0.25);
  EXPECT_FALSE(file.site.uncertain[0].of.has_limits);
  EXPECT_EQ(echoed(file, "crest", "design_head")->typed, "5 m; normal, cov 0.05");
}

TEST(Uncertainty, DeviationAndACut) {
  const site::UncertainInput level = declared(
      "level = \"130 m\"",
      "level = { value = \"130 m\", distribution = \"normal\", deviation = \"5 cm\", lowest = 129.9, highest = \"130.2 m\" }");
  EXPECT_EQ(level.key, "crest.level");
  EXPECT_DOUBLE_EQ(level.of.deviation, 0.05);
  EXPECT_TRUE(level.of.has_limits);
  EXPECT_EQ(level.of.lowest, 129.9);
  EXPECT_EQ(level.of.highest, 130.2);
}

// Mean and deviation of the two by their definitions: (a + c + b)/3 and sqrt((a2 + b2 + c2 - ab - ac - bc)/18), the example
// (0.025, 0.030, 0.040) with 0.03167 and 0.00312 computed by hand; (a + b)/2 and (b - a)/sqrt(12).
TEST(Uncertainty, TriangularAndUniformFollowFromTheirLimits) {
  const site::Uncertainty triangular =
      declared("roughness_height = \"0.6 mm\"",
               "manning_n = { value = 0.03, distribution = \"triangular\", lowest = 0.025, highest = 0.04 }")
          .of;
  EXPECT_NEAR(triangular.mean, 0.03167, 5e-6);
  EXPECT_NEAR(triangular.deviation, 0.00312, 5e-6);
  EXPECT_EQ(triangular.mode, 0.03);
  const site::Uncertainty uniform =
      declared("net_width = \"30 m\"",
               "net_width = { value = \"30 m\", distribution = \"uniform\", lowest = 29, highest = 32 }")
          .of;
  EXPECT_EQ(uniform.mean, 30.5);
  EXPECT_DOUBLE_EQ(uniform.deviation, 3.0 / std::sqrt(12.0));
}

TEST(Uncertainty, SlopesAndMembersOfLists) {
  const site::UncertainInput slope =
      declared("slope = \"0.8H:1V\"",
               "reaches = [{ slope = { value = \"1H:1V\", distribution = \"uniform\", lowest = \"1.1H:1V\", highest = "
               "\"0.9H:1V\" } }]");
  EXPECT_EQ(slope.key, "chute.reaches[1].slope");
  EXPECT_DOUBLE_EQ(slope.of.lowest, 1.0 / 1.1);
  EXPECT_DOUBLE_EQ(slope.of.highest, 1.0 / 0.9);
}

TEST(Uncertainty, OfASpreadTheExpectedValueIsMeant) {
  const std::string sectioned = [] {
    std::string text(good_site);
    const std::size_t from = text.find("[river.rating]");
    return text.replace(
        from, text.find("[discharges]") - from,
        "[river.section]\nbottom_width = 30\nside_slope = \"2H:1V\"\nbed_slope = 0.002\nmanning_n = { value = { low = "
        "0.03, expected = 0.035, high = 0.04 }, uncertainty = \"natural channel n\" }\n");
  }();
  const io::SiteFile file = io::read_site_text(sectioned, "site.toml");
  ASSERT_TRUE(file.good()) << all_problems(file);
  EXPECT_TRUE(file.site.river.has_spread);
  ASSERT_EQ(file.site.uncertain.size(), 1u);
  EXPECT_EQ(file.site.uncertain[0].of.distribution, site::Distribution::lognormal);
  EXPECT_DOUBLE_EQ(file.site.uncertain[0].of.deviation, 0.2 * 0.035);
  EXPECT_EQ(echoed(file, "river.section", "manning_n")->typed, "low 0.03, expected 0.035, high 0.04; natural channel n");
}

TEST(Uncertainty, OfARatingIsTheErrorOfTheLevel) {
  const site::UncertainInput by_name =
      declared("[river.rating]", "[river.rating]\nuncertainty = \"tailwater, field survey, good n\"");
  EXPECT_EQ(by_name.key, "river.rating");
  EXPECT_EQ(by_name.name, "tailwater, field survey, good n");
  EXPECT_EQ(by_name.of.mean, 0.0);
  EXPECT_DOUBLE_EQ(by_name.of.deviation, 0.3 * 0.3048);
  const site::UncertainInput by_table =
      declared("[river.rating]", "[river.rating]\nuncertainty = { uncertainty = \"tailwater, field survey, good n\" }");
  EXPECT_EQ(by_table.of.deviation, by_name.of.deviation);
  const site::UncertainInput by_numbers = declared(
      "[river.rating]", "[river.rating]\nuncertainty = { distribution = \"triangular\", lowest = -0.3, highest = \"0.6 m\" }");
  EXPECT_DOUBLE_EQ(by_numbers.of.mean, 0.1);
  EXPECT_EQ(by_numbers.of.lowest, -0.3);
}

TEST(Uncertainty, EveryRecommendationIsWhole) {
  for (const site::RecommendedUncertainty& one : site::recommended_uncertainties()) {
    EXPECT_NE(one.variation > 0.0, one.deviation > 0.0) << one.name;
    EXPECT_EQ(one.deviation > 0.0, !(one.dimension == dimension::none)) << one.name;
    EXPECT_FALSE(one.range.empty()) << one.name;
    const bool is_practice = one.source == "common practice, no published source";
    EXPECT_EQ(is_practice, one.provenance == Provenance::common_practice) << one.name;
    EXPECT_TRUE(is_practice || find_source(one.source) != nullptr) << one.name;
    EXPECT_LT(one.name.size(), 40u) << one.name;
  }
}

}  // namespace
}  // namespace quell::test
