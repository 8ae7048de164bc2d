// Good site files: what arrives in the struct, defaults, echo, the two unit systems, the reference.
#include "quell/io/site_file.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <fstream>
#include <iterator>

#include "quell/io/files.h"
#include "quell/io/schema.h"

namespace quell::io {
namespace {

constexpr const char* si_site = R"toml(units = "SI"
project = { name = "Invented" }
[crest]
level = "396.24 m"
design_head = "1.524 m"
net_width = "30.48 m"
approach_depth = "6.096 m"
upstream_face = "3V:2H"
piers = 2
pier_nose = "square"
abutment = "guided"
[chute]
reaches = [ { slope = "14.036243467926479 deg", end_level = "390.144 m" }, { slope = "50 %" } ]
width = "33.528 m"
end_width = "36.576 m"
end_width_level = 390.144
roughness_height = "0.6096 mm"
wall_height = "1.8288 m"
[river]
bed_level = "384.048 m"
bed_degradation = 0.3048
[river.section]
bottom_width = "18.288 m"
side_slope = "2H:1V"
bed_slope = "0.2 %"
manning_n = { low = 0.03, expected = 0.035, high = 0.042 }
[discharges]
design_flood = "99.108963072 m3/s"
check_flood = "135.9208636416 m3/s"
floods = [ { name = "A", discharge = "56.633693184 m3/s", return_period = 50 } ]
[basin]
tailwater_margin = "15.24 cm"
highest_apron = "383.4384 m"
apron_step = "0.03048 m"
[ground]
level = "387.096 m"
)toml";

/// The same site in feet; bare numbers are feet and ft3/s.
constexpr const char* us_site = R"toml(units = "us customary"
project = { name = "Invented" }
[crest]
level = 1300
design_head = "5 ft"
net_width = "1200 in"
approach_depth = 20.0
upstream_face = "3v:2h"
piers = 2
pier_nose = "square"
abutment = "guided"
[chute]
reaches = [ { slope = "4H:1V", end_level = 1280 }, { slope = 0.5 } ]
width = "110"
end_width = 120
end_width_level = "1 280 ft"
roughness_height = 0.002
wall_height = 6
[river]
bed_level = 1260
bed_degradation = 1
[river.section]
bottom_width = 60
side_slope = "1V:2H"
bed_slope = "500H:1V"
manning_n = { low = 0.03, expected = 0.035, high = 0.042 }
[discharges]
design_flood = "3 500 ft3/s"
check_flood = 4800
floods = [ { name = "A", discharge = "2_000 ft3/s", return_period = 50 } ]
[basin]
tailwater_margin = 0.5
highest_apron = 1258
apron_step = 0.1
[ground]
level = 1270
)toml";

std::vector<double> numbers_of(const site::Site& s) {
  std::vector<double> n{s.crest.crest_level,
                        s.crest.design_head,
                        s.crest.net_width,
                        s.crest.approach_depth,
                        static_cast<double>(s.crest.upstream_face),
                        static_cast<double>(s.crest.piers),
                        s.crest.pier_contraction,
                        s.crest.abutment_contraction,
                        s.chute.width,
                        s.chute.end_width,
                        s.chute.end_width_level,
                        s.chute.roughness_height,
                        s.chute.manning_n,
                        s.chute.wall_height,
                        s.river.bed_level,
                        s.river.bed_degradation,
                        s.river.section.bottom_width,
                        s.river.section.side_slope,
                        s.river.section.bed_slope,
                        s.river.section.manning_n[0],
                        s.river.section.manning_n[1],
                        s.river.section.manning_n[2],
                        s.discharges.smallest,
                        s.discharges.design_flood,
                        s.discharges.check_flood,
                        static_cast<double>(s.discharges.steps),
                        s.basin.width,
                        s.basin.largest_width,
                        s.basin.tailwater_margin,
                        s.basin.apron_step,
                        s.basin.highest_apron_level,
                        s.basin.lowest_apron_level,
                        s.ground.ground_level,
                        s.ground.foundation_level};
  for (const site::ChuteReach& reach : s.chute.reaches) n.insert(n.end(), {reach.slope, reach.end_level});
  for (const site::NamedFlood& flood : s.discharges.floods) n.insert(n.end(), {flood.discharge, flood.return_period});
  n.insert(n.end(), s.river.rating.discharge.begin(), s.river.rating.discharge.end());
  for (const auto& level : s.river.rating.level) n.insert(n.end(), level.begin(), level.end());
  return n;
}

std::string all_problems(const SiteFile& file) {
  std::string text;
  for (const Problem& problem : file.problems) text += to_text(problem) + "\n";
  return text;
}

TEST(SiteFile, BothUnitSystemsGiveTheSameSite) {
  const SiteFile si = read_site_text(si_site, "si.toml");
  const SiteFile us = read_site_text(us_site, "us.toml");
  ASSERT_TRUE(si.good()) << all_problems(si);
  ASSERT_TRUE(us.good()) << all_problems(us);
  const std::vector<double> a = numbers_of(si.site);
  const std::vector<double> b = numbers_of(us.site);
  ASSERT_EQ(a.size(), b.size());
  for (std::size_t i = 0; i < a.size(); ++i) EXPECT_NEAR(a[i], b[i], 1e-12 * std::max(1.0, std::abs(a[i]))) << "number " << i;
  EXPECT_EQ(si.site.units, UnitSystem::si);
  EXPECT_EQ(us.site.units, UnitSystem::us);
  EXPECT_NE(si.digest, us.digest);
  EXPECT_EQ(si.digest, sha256(si_site));
}

TEST(SiteFile, ValuesArriveWhereTheyBelong) {
  const site::Site s = read_site_text(us_site, "us.toml").site;
  EXPECT_DOUBLE_EQ(s.crest.crest_level, 1300 * 0.3048);
  EXPECT_EQ(s.crest.upstream_face, site::UpstreamFace::slope_3_to_2);
  EXPECT_EQ(s.crest.piers, 2);
  EXPECT_EQ(s.crest.pier_contraction, 0.1);
  EXPECT_EQ(s.crest.abutment_contraction, 0.0);
  ASSERT_EQ(s.chute.reaches.size(), 2u);
  EXPECT_EQ(s.chute.reaches[0].slope, 0.25);
  EXPECT_DOUBLE_EQ(s.chute.reaches[0].end_level, 1280 * 0.3048);
  EXPECT_DOUBLE_EQ(s.chute.width, 110 * 0.3048);
  EXPECT_DOUBLE_EQ(s.chute.roughness_height, 0.002 * 0.3048);
  EXPECT_EQ(s.river.section.side_slope, 2.0);
  EXPECT_EQ(s.river.section.bed_slope, 0.002);
  EXPECT_TRUE(s.river.has_spread);
  EXPECT_FALSE(s.river.has_rating());
  EXPECT_DOUBLE_EQ(s.discharges.design_flood, 3500 * 0.3048 * 0.3048 * 0.3048);
  ASSERT_EQ(s.discharges.floods.size(), 1u);
  EXPECT_EQ(s.discharges.floods[0].name, "A");
  EXPECT_TRUE(s.basin.has_highest_apron);
  EXPECT_FALSE(s.basin.has_lowest_apron);
  EXPECT_TRUE(s.ground.has_level);
  EXPECT_FALSE(s.ground.has_foundation);
}

const EchoedInput* echoed(const SiteFile& file, std::string_view section, std::string_view key) {
  for (const EchoedInput& input : file.inputs)
    if (input.section == section && input.key == key) return &input;
  return nullptr;
}

TEST(SiteFile, DefaultsAreTakenAndEchoed) {
  const SiteFile file = read_site_text(us_site, "us.toml");
  const site::Site& s = file.site;
  EXPECT_NEAR(s.discharges.smallest, 0.05 * s.discharges.design_flood, 1e-12);
  EXPECT_EQ(s.discharges.steps, 40);
  EXPECT_THAT(s.basin.types, testing::ElementsAre("type_1", "type_2", "type_3"));
  EXPECT_FALSE(s.basin.width_is_free);
  EXPECT_EQ(s.basin.width, s.chute.end_width);
  const EchoedInput* steps = echoed(file, "discharges", "steps");
  ASSERT_NE(steps, nullptr);
  EXPECT_TRUE(steps->is_default);
  EXPECT_EQ(steps->typed, "40");
  const EchoedInput* level = echoed(file, "crest", "level");
  ASSERT_NE(level, nullptr);
  EXPECT_FALSE(level->is_default);
  EXPECT_EQ(level->typed, "1300 (ft)");
  EXPECT_EQ(echoed(file, "chute", "width")->typed, "110 (ft)");
  EXPECT_EQ(echoed(file, "crest", "net_width")->typed, "1200 in");
  EXPECT_EQ(echoed(file, "chute.reaches[2]", "slope")->typed, "0.5");
  EXPECT_EQ(echoed(file, "crest", "pier_contraction"), nullptr);
  for (const EchoedInput& input : file.inputs) EXPECT_FALSE(input.meaning.empty()) << input.key;
}

TEST(SiteFile, TheSmallestFileIsEnough) {
  const SiteFile file = read_site_text(R"(units = "SI"
crest = { level = 130, design_head = 5, net_width = 30, approach_depth = 20 }
chute = { slope = 1.25, width = 30, manning_n = 0.014 }
river = { bed_level = 100, rating = { discharge = [10, 900], level = [101, 107] } }
discharges = { design_flood = 600 }
[project]
name = "Invented"
)",
                                       "site.toml");
  ASSERT_TRUE(file.good()) << all_problems(file);
  EXPECT_EQ(file.site.discharges.check_flood, 600.0);
  EXPECT_EQ(file.site.chute.end_width, 30.0);
  EXPECT_EQ(file.site.crest.abutment_contraction, 0.10);
  EXPECT_FALSE(file.site.river.has_spread);
  for (const auto& level : file.site.river.rating.level) EXPECT_THAT(level, testing::ElementsAre(101.0, 107.0));
}

TEST(SiteFile, AWidthMayBeFree) {
  std::string text(us_site);
  text.replace(text.find("[basin]"), 7, "[basin]\nwidth = \"free\"\nlargest_width = \"150 ft\"");
  const SiteFile file = read_site_text(text, "site.toml");
  ASSERT_TRUE(file.good()) << all_problems(file);
  EXPECT_TRUE(file.site.basin.width_is_free);
  EXPECT_DOUBLE_EQ(file.site.basin.largest_width, 150 * 0.3048);
}

TEST(SiteFile, AFixedBasinMayBeWiderThanTheChute) {
  std::string text(us_site);
  text.replace(text.find("[basin]"), 7, "[basin]\nwidth = \"150 ft\"");
  const SiteFile file = read_site_text(text, "site.toml");
  ASSERT_TRUE(file.good()) << all_problems(file);
  EXPECT_FALSE(file.site.basin.width_is_free);
  EXPECT_DOUBLE_EQ(file.site.basin.width, 150 * 0.3048);
}

TEST(SiteFile, AByteOrderMarkAndCarriageReturnsAreTolerated) {
  std::string text = "\xEF\xBB\xBF";
  for (const char* c = us_site; *c != '\0'; ++c) text += *c == '\n' ? std::string("\r\n") : std::string(1, *c);
  const SiteFile file = read_site_text(text, "site.toml");
  ASSERT_TRUE(file.good()) << all_problems(file);
  ASSERT_EQ(file.remarks.size(), 1u);
  EXPECT_EQ(to_text(file.remarks[0], "remark").substr(0, 21), "site.toml:1:1: remark");
}

TEST(SiteFile, ExamplesAreGood) {
  for (const char* name :
       {"01-gravity-dam", "02-small-dam", "03-labyrinth", "04-stepped-dam", "05-gated-dam", "06-canal-drop"}) {
    const SiteFile file = read_site_file(std::filesystem::path(QUELL_ROOT) / "examples" / name / "site.toml");
    EXPECT_TRUE(file.good()) << all_problems(file);
    EXPECT_TRUE(file.remarks.empty());
    // A surveyed river gets its spread from the roughness when it is resolved.
    EXPECT_TRUE(file.site.river.has_spread || file.site.river.source == site::TailwaterSource::survey);
  }
}

TEST(SiteFile, EveryRowOfTheSchemaIsWhole) {
  for (const Key& key : schema()) {
    const std::string name = full_name(key.section, key.name);
    EXPECT_FALSE(key.help.empty()) << name;
    if (key.kind == Kind::table) continue;
    EXPECT_NE(key.set, nullptr) << name;
    EXPECT_EQ(key.example_si.empty(), key.kind == Kind::tables) << name;
    EXPECT_TRUE(key.kind != Kind::quantity || key.range.bounded_above()) << name;
    EXPECT_EQ(key.kind == Kind::choice, !key.choices.empty()) << name;
  }
}

TEST(SiteFile, TheReferenceInDocsIsTheGeneratedOne) {
  std::ifstream stream(std::string(QUELL_ROOT) + "/docs/site-file.md", std::ios::binary);
  const std::string text{std::istreambuf_iterator<char>(stream), {}};
  EXPECT_EQ(text, site_file_reference()) << "docs/site-file.md is out of date";
  for (const Key& key : schema()) EXPECT_THAT(text, testing::HasSubstr(key.name));
}

}  // namespace
}  // namespace quell::io
