// Quantities in sentences: printed in the reader's units, wherever a sentence comes from.
#include "quell/base/quantity_text.h"

#include <gtest/gtest.h>

#include <regex>
#include <string>

#include "quell/design/design.h"
#include "quell/io/site_file.h"
#include "quell/output/format.h"

namespace quell {
namespace {

TEST(QuantityText, ATokenIsPrintedInTheUnitsOfTheReader) {
  const std::string text =
      "a fall of " + quantity_token(60.96, dimension::length) + " at " + quantity_token(18.288, dimension::velocity);
  EXPECT_EQ(with_units(text, UnitSystem::si), "a fall of 60.96 m at 18.29 m/s");
  EXPECT_EQ(with_units(text, UnitSystem::us), "a fall of 200.0 ft at 60.00 ft/s");
}

TEST(QuantityText, ARoundFigureHasNoDigitsThatSayNothing) {
  const std::string fall = round_token(60.96, dimension::length);
  EXPECT_EQ(fall, "{{60.96|6,0,0|3}}") << "as it is written out in fixed texts";
  EXPECT_EQ(with_units(fall, UnitSystem::si), "61 m");
  EXPECT_EQ(with_units(fall, UnitSystem::us), "200 ft");
  EXPECT_EQ(with_units(round_token(46.4515, dimension::unit_discharge), UnitSystem::us), "500 ft²/s");
  EXPECT_EQ(with_units(round_token(0.005, dimension::length), UnitSystem::si), "5 mm");
  EXPECT_EQ(with_units(round_token(0.0254, dimension::length), UnitSystem::us), "1 in");
  EXPECT_EQ(with_units(round_token(1500.0, dimension::none), UnitSystem::si), "1500");
}

TEST(QuantityText, TheReportPrintsARoundFigureAlike) {
  EXPECT_EQ(output::Printer(UnitSystem::us).words("{{60.96|6,0,0|3}}"), "200\u202fft");
  EXPECT_EQ(output::Printer(UnitSystem::si).words("below {{-0.5|6,0,0|3}}"), "below −0.5\u202fm");
}

/// A number with a metric unit behind it: what a reader of feet must not meet.
bool has_metric_quantity(const std::string& text) {
  static const std::regex metric("[0-9] ?(m|mm|m/s|m2/s|m²/s|m3/s|m³/s|kPa|kN|kg)([^a-z0-9]|$)");
  return std::regex_search(text, metric);
}

bool has_us_quantity(const std::string& text) {
  static const std::regex us("[0-9] ?(ft|ft/s|ft2/s|ft3/s|lb|psf|psi|kip)([^a-z0-9]|$)");
  return std::regex_search(text, us);
}

/// Names that the site file gives stand in quotes, and as typed.
bool is_plain(std::string_view text) {
  static const std::regex name("'[^']*'");
  const std::string own = std::regex_replace(std::string(text), name, "");
  return !has_metric_quantity(with_units(own, UnitSystem::us)) && !has_us_quantity(with_units(own, UnitSystem::si));
}

TEST(QuantityText, AReaderOfFeetMeetsNoMetresNorOneOfMetresFeet) {
  ASSERT_TRUE(has_metric_quantity("above 15 m/s."));
  ASSERT_FALSE(has_metric_quantity("above 50 ft/s, 3 mice"));
  ASSERT_TRUE(has_us_quantity("up to 500 ft3/s per ft"));
  for (const auto* type : dissipators::catalogue()) {
    const auto& record = type->record();
    for (const auto list : {record.approach, record.failure_modes})
      for (const auto words : list) EXPECT_TRUE(is_plain(words)) << words;
    EXPECT_TRUE(is_plain(record.model)) << record.model;
    EXPECT_TRUE(is_plain(record.withheld)) << record.withheld;
  }
  for (const auto* example :
       {"01-gravity-dam", "02-small-dam", "03-labyrinth", "04-stepped-dam", "05-gated-dam", "06-canal-drop"}) {
    const auto file = io::read_site_file(std::string(QUELL_ROOT "/examples/") + example + "/site.toml");
    ASSERT_TRUE(file.good());
    const auto result = design::run_design(file.site, {.types = dissipators::catalogue()});
    ASSERT_TRUE(result);
    for (const auto& option : result->options) {
      EXPECT_TRUE(is_plain(option.statement)) << option.statement;
      for (const auto& finding : option.findings)
        for (const auto& text : {finding.title, finding.text, finding.advice})
          EXPECT_TRUE(is_plain(text)) << finding.id << ": " << text;
      for (const auto& element : option.structure.elements) EXPECT_TRUE(is_plain(element.remark)) << element.remark;
      for (const auto& load : option.structure.loads) EXPECT_TRUE(is_plain(load.remark)) << load.remark;
    }
  }
}

}  // namespace
}  // namespace quell
