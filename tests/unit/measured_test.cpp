// Measured data against our methods: the statistics, the faults of a set, and the figure.
#include "quell/app/measured.h"

#include <gmock/gmock.h>

#include <algorithm>
#include <cmath>
#include <filesystem>
#include <fstream>
#include <sstream>

#include "quell/app/check_texts.h"

namespace quell::app {
namespace {

using ::testing::HasSubstr;

constexpr std::string_view card =
    "source = \"chow_1959\"\ntitle = \"invented\"\nplace = \"p. 1\"\nmethod = \"jump.sequent_depth.rectangular\"\n"
    "measured = \"y2\"\nscale = \"y1\"\nfigure = \"Sequent depth\"\nremarks = \"invented\"\n";

/// V1 for F1 = 6 at y1 = 1 m, where y2 is 8 m.
constexpr std::string_view at_six = "18.79255171603899";

std::string rows(std::initializer_list<std::string_view> measured) {
  std::string text = "y1,V1,y2,known\n";
  for (const auto y2 : measured) text += "1," + std::string(at_six) + "," + std::string(y2) + ",seen\n";
  return text;
}

std::string read(const std::filesystem::path& path) {
  std::ifstream in(path, std::ios::binary);
  std::ostringstream text;
  text << in.rdbuf();
  return text.str();
}

TEST(Measured, BiasAndSpreadAreMeanAndStandardDeviationOfTheRatio) {
  const auto set = read_measured("invented", card, rows({"7.2", "8.0", "8.8"}));
  ASSERT_TRUE(set.faults.empty()) << set.faults.front();
  ASSERT_EQ(set.points.size(), 3U);
  EXPECT_NEAR(set.points[0].ours, 8.0, 1e-12);
  EXPECT_NEAR(set.bias(), 1.0, 1e-12);
  EXPECT_NEAR(set.spread(), 0.1, 1e-12);
  EXPECT_NEAR(set.lowest(), 0.9, 1e-12);
  EXPECT_NEAR(set.highest(), 1.1, 1e-12);
}

TEST(Measured, OnePointHasNoSpread) {
  const auto set = read_measured("invented", card, rows({"7.2"}));
  EXPECT_NEAR(set.bias(), 0.9, 1e-12);
  EXPECT_EQ(set.spread(), 0.0);
}

TEST(Measured, CallsAMalformedSetAFault) {
  const auto only_fault = [](std::string_view its_card, const std::string& points) {
    const auto set = read_measured("invented", its_card, points);
    EXPECT_TRUE(set.points.empty());
    return set.faults.empty() ? std::string("no fault") : set.faults.front();
  };
  EXPECT_THAT(only_fault("title = ", rows({"8"})), HasSubstr("line 1"));
  EXPECT_THAT(only_fault("title = \"t\"\n", rows({"8"})), HasSubstr("the card has no"));
  EXPECT_THAT(only_fault(card, ""), HasSubstr("no column 'y1'"));
  EXPECT_THAT(only_fault(card, "y1,V1,y2\n1,9,5\n"), HasSubstr("no column 'known'"));
  EXPECT_THAT(only_fault(card, "y1,V1,y2,known\n"), HasSubstr("no points"));
  EXPECT_THAT(only_fault(card, "y1,V1,y2,known\n1,9,5\n"), HasSubstr("line 2"));
  EXPECT_THAT(only_fault(card, "y1,V1,y2,known\n1,9,5,hearsay\n"), HasSubstr("known"));
  EXPECT_THAT(only_fault(card, "y1,V1,y2,known\n1,9,many,seen\n"), HasSubstr("numbers above zero"));
  EXPECT_THAT(only_fault(card, "y1,V1,y2,known\n1,much,5,seen\n"), HasSubstr("line 2"));
  EXPECT_THAT(only_fault(card, "y1,V1,y2,known\n1,2,1.1,seen\n"), HasSubstr("supercritical"));
  std::string other(card);
  EXPECT_THAT(only_fault(other.replace(other.find("jump.sequent"), 12, "jump.nothing"), rows({"8"})), HasSubstr("no method"));
}

TEST(Measured, CompiledInSetsAreThoseOnDiskAndSound) {
  const auto folder = std::filesystem::path(QUELL_ROOT) / "data" / "measured";
  std::size_t on_disk = 0;
  for (const auto& entry : std::filesystem::directory_iterator(folder)) on_disk += entry.path().extension() == ".csv" ? 1 : 0;
  ASSERT_EQ(measured_texts().size(), on_disk);
  for (const MeasuredText& text : measured_texts()) {
    EXPECT_EQ(text.points, read(folder / (std::string(text.name) + ".csv")));
    EXPECT_EQ(text.card, read(folder / (std::string(text.name) + ".toml")));
  }
  for (const MeasuredSet& set : measured_sets("")) EXPECT_TRUE(set.faults.empty()) << set.name << ": " << set.faults.front();
}

/// Ratios of measured to momentum depth as others have computed them for the same runs.
TEST(Measured, RatiosAreThoseComputedElsewhere) {
  const auto ratios_of = [](std::string_view name) {
    std::vector<double> ratios;
    for (const MeasuredSet& set : measured_sets(name))
      for (const auto& point : set.points) ratios.push_back(point.ratio());
    return ratios;
  };
  const auto near = [](double value) { return ::testing::DoubleNear(value, 0.0006); };
  EXPECT_THAT(ratios_of("gharangik"), ::testing::ElementsAre(near(0.942), near(0.938), near(0.942), near(0.903), near(0.916)));
  EXPECT_THAT(ratios_of("wagner"), ::testing::ElementsAre(near(0.859), near(0.861), near(0.852)));
  EXPECT_TRUE(measured_sets("no such laboratory").empty());
}

TEST(Scatter, HasAPanelForEachQuantityAndAMarkerForEachPoint) {
  const auto panels = scatter_panels(measured_sets(""));
  ASSERT_EQ(panels.size(), 2U);
  const std::string svg = output::scatter_svg(panels);
  const auto count = [&](std::string_view what) {
    std::size_t found = 0;
    for (auto at = svg.find(what); at != std::string::npos; at = svg.find(what, at + 1)) ++found;
    return found;
  };
  std::size_t points = 0;
  std::size_t sets = 0;
  for (const auto& panel : panels)
    for (const auto& series : panel.series) {
      EXPECT_THAT(svg, HasSubstr(series.name));
      points += series.points.size();
      ++sets;
    }
  EXPECT_EQ(count("class=\"f-point-"), points + sets) << "the points, and one in the legend for each set";
  EXPECT_EQ(count(">1:1<"), panels.size());
  EXPECT_EQ(count(">+10 %<"), panels.size());
  EXPECT_EQ(count("f-point-open\""), 4U) << "the four recalled tests";
  EXPECT_EQ(svg.find("nan"), std::string::npos);
}

TEST(Scatter, PutsEqualValuesOnTheDiagonal) {
  output::ScatterPanel panel{"t",
                             {{.name = "s", .bias = 1.0, .spread = 0.0, .points = {{1.0, 1.0, false}, {0.0, 0.0, false}}}}};
  const std::string svg = output::scatter_svg(std::vector{panel});
  // The two points are the first two circles; the frame is square, so that x grows as y falls.
  std::vector<double> numbers;
  for (auto at = svg.find("cx=\""); at != std::string::npos && numbers.size() < 4; at = svg.find("cx=\"", at + 1)) {
    numbers.push_back(std::stod(svg.substr(at + 4)));
    numbers.push_back(std::stod(svg.substr(svg.find("cy=\"", at) + 4)));
  }
  ASSERT_EQ(numbers.size(), 4U);
  EXPECT_GT(numbers[0], numbers[2] + 100.0);
  EXPECT_NEAR(numbers[0] - numbers[2], numbers[3] - numbers[1], 0.011);
}

}  // namespace
}  // namespace quell::app
