// Slopes and the nearest word.
#include <gtest/gtest.h>

#include <cmath>

#include "quell/io/nearest.h"
#include "quell/io/slope.h"

namespace quell::io {
namespace {

double tangent(const char* text) {
  const auto slope = parse_slope(text);
  return slope ? slope->fall / slope->run : std::nan("");
}

TEST(Slope, EverySpellingOfTheTrade) {
  EXPECT_DOUBLE_EQ(tangent("0.7H:1V"), 1.0 / 0.7);
  EXPECT_DOUBLE_EQ(tangent("1V:0.7H"), 1.0 / 0.7);
  EXPECT_DOUBLE_EQ(tangent("2 h : 1 v"), 0.5);
  EXPECT_DOUBLE_EQ(tangent("3V:2H"), 1.5);
  EXPECT_DOUBLE_EQ(tangent("25 %"), 0.25);
  EXPECT_DOUBLE_EQ(tangent("0.25"), 0.25);
  EXPECT_NEAR(tangent("45 deg"), 1.0, 1e-15);
  EXPECT_NEAR(tangent("35 deg"), 0.70020753820971, 1e-12);  // the tangent of 35 degrees, from Python's math.tan
  const auto upright = parse_slope("0H:1V");
  ASSERT_TRUE(upright.has_value());
  EXPECT_EQ(upright->run, 0.0);
}

TEST(Slope, RefusesWhatIsNotOne) {
  for (const char* text : {"", ":", "1:2", "1H:2H", "1V:2V", "-1H:1V", "0H:0V", "H:V", "1H:2V:3H", "1 m", "120 deg", "-5 deg",
                           "steep", "nanH:1V", "1H:infV", "0.7 m H:1V"})
    EXPECT_FALSE(parse_slope(text).has_value()) << text;
}

TEST(Nearest, FindsTheWordMeant) {
  const std::string_view valid[] = {"level", "design_head", "net_width", "approach_depth", "type_1", "type_2"};
  EXPECT_EQ(nearest("levle", valid), "level");
  EXPECT_EQ(nearest("design-head", valid), "design_head");
  EXPECT_EQ(nearest("DesignHead", valid), "design_head");
  EXPECT_EQ(nearest("crest_level", valid), "level");
  EXPECT_EQ(nearest("width_net", valid), "");
  EXPECT_EQ(nearest("Type 2", valid), "type_2");
  EXPECT_EQ(nearest("colour", valid), "");
  EXPECT_EQ(nearest("", valid), "");
  EXPECT_EQ(nearest(std::string(5000, 'a'), valid), "");
}

}  // namespace
}  // namespace quell::io
