// A value with its uncertainty: what is refused, and where.
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "site_text.h"

namespace quell::test {
namespace {

using testing::HasSubstr;

struct Case {
  const char* name;
  const char* from;
  const char* to;
  const char* message;
};

std::ostream& operator<<(std::ostream& out, const Case& c) {
  return out << c.name;
}

class UncertaintyFault : public testing::TestWithParam<Case> {};

TEST_P(UncertaintyFault, IsToldOnceWithItsLine) {
  const Case& c = GetParam();
  const std::string text = spoiled(good_site, c.from, c.to);
  ASSERT_FALSE(text.empty()) << "the text to replace does not occur";
  const io::SiteFile file = io::read_site_text(text, "site.toml");
  ASSERT_EQ(file.problems.size(), 1u) << all_problems(file);
  EXPECT_THAT(file.problems[0].message, HasSubstr(c.message));
  // On the last line of what was written.
  const std::string_view to = c.to;
  const auto lines_above = static_cast<int>(std::count(to.begin(), to.end(), '\n'));
  EXPECT_EQ(file.problems[0].line, line_of(text, to) + lines_above) << all_problems(file);
  EXPECT_TRUE(file.site.uncertain.empty());
}

constexpr const char* head = "design_head = \"5 m\"";
constexpr const char* level = "level = \"130 m\"";
constexpr const char* roughness = "roughness_height = \"0.6 mm\"";

const Case cases[] = {
    {"no_value", head, "design_head = { distribution = \"normal\", cov = 0.05 }",
     "design_head lacks 'value' beside its uncertainty"},
    {"bad_value", head, "design_head = { value = \"5 s\", distribution = \"normal\", cov = 0.05 }", "design_head is a length"},
    {"no_distribution", head, "design_head = { value = \"5 m\", cov = 0.05 }",
     "lacks distribution (normal, lognormal, triangular, uniform), or uncertainty, the name of a recommended one"},
    {"distribution", head, "design_head = { value = \"5 m\", distribution = \"norml\", cov = 0.05 }",
     "did you mean \"normal\"?"},
    {"unknown_word", head, "design_head = { value = \"5 m\", distribution = \"normal\", deviaton = 0.05, cov = 0.05 }",
     "the uncertainty of design_head has no 'deviaton'; did you mean 'deviation'?"},
    {"neither_spread", head, "design_head = { value = \"5 m\", distribution = \"normal\" }",
     "a normal distribution of design_head needs one of cov (share of the value) and deviation"},
    {"both_spreads", head, "design_head = { value = \"5 m\", distribution = \"normal\", cov = 0.05, deviation = \"0.2 m\" }",
     "needs either cov (share of the value) or deviation"},
    {"cov_zero", head, "design_head = { value = \"5 m\", distribution = \"normal\", cov = 0 }",
     "cov must be greater than zero"},
    {"cov_in_percent_without_sign", head, "design_head = { value = \"5 m\", distribution = \"normal\", cov = 5 }",
     "cov must lie between 0 and 2"},
    {"deviation_unit", head, "design_head = { value = \"5 m\", distribution = \"normal\", deviation = \"0.2 m3/s\" }",
     "deviation is a length: write it like \"0.2 m\""},
    {"deviation_negative", head, "design_head = { value = \"5 m\", distribution = \"normal\", deviation = \"-0.2 m\" }",
     "deviation must be greater than zero"},
    {"cov_of_a_level", level, "level = { value = \"130 m\", distribution = \"normal\", cov = 0.001 }",
     "'cov' is a share of the value, and that of a level depends on the datum: give deviation"},
    {"lognormal_level", level, "level = { value = \"130 m\", distribution = \"lognormal\", deviation = 0.1 }",
     "lognormal holds for values above zero only, and level may lie below; take normal"},
    {"triangular_without_limits", head, "design_head = { value = \"5 m\", distribution = \"triangular\" }",
     "a triangular distribution of design_head needs lowest and highest"},
    {"uniform_with_deviation", head,
     "design_head = { value = \"5 m\", distribution = \"uniform\", lowest = 4, highest = 6, deviation = 1 }",
     "a uniform distribution follows from lowest and highest; delete deviation"},
    {"one_limit", head, "design_head = { value = \"5 m\", distribution = \"normal\", cov = 0.1, lowest = 4 }",
     "design_head has lowest and highest together; 'highest' is missing"},
    {"limits_crossed", head, "design_head = { value = \"5 m\", distribution = \"uniform\", lowest = 6, highest = 4 }",
     "highest must lie above lowest"},
    {"value_outside", head, "design_head = { value = \"5 m\", distribution = \"triangular\", lowest = 5.5, highest = 6 }",
     "the value of design_head must lie between lowest and highest"},
    {"limit_out_of_range", head, "design_head = { value = \"5 m\", distribution = \"uniform\", lowest = -1, highest = 6 }",
     "lowest must be greater than zero"},
    {"unknown_name", roughness, "roughness_height = { value = \"0.6 mm\", uncertainty = \"concrete roughnes\" }",
     "there is no recommended uncertainty 'concrete roughnes'; did you mean 'concrete roughness'?"},
    {"name_and_numbers", roughness,
     "roughness_height = { value = \"0.6 mm\", uncertainty = \"concrete roughness\", cov = 0.4 }",
     "a recommended uncertainty says its distribution itself; delete cov"},
    {"name_of_a_length", "steps = 30\n[[discharges.floods]]\nname = \"20-year flood\"\ndischarge = \"300 m3/s\"",
     "steps = 30\n[[discharges.floods]]\nname = \"20-year flood\"\ndischarge = { value = 300, uncertainty = \"tailwater, map, "
     "good n\" }",
     "is the deviation of a length, which discharge is not"},
    {"share_of_a_level", level, "level = { value = \"130 m\", uncertainty = \"concrete n\" }", "depends on the datum"},
    {"share_of_zero", "approach_depth = \"20 m\"", "approach_depth = { value = 0, distribution = \"normal\", cov = 0.1 }",
     "'cov' is a share of the value, and approach_depth is zero: give deviation"},
    {"number_for_a_whole", "steps = 30", "steps = { value = 30, distribution = \"normal\", cov = 0.1 }", "steps is mistyped"},
    {"rating_with_value", "[river.rating]",
     "[river.rating]\nuncertainty = { value = 1, distribution = \"normal\", deviation = 0.1 }",
     "the uncertainty of the level has no 'value'"},
    {"rating_lognormal", "[river.rating]", "[river.rating]\nuncertainty = { distribution = \"lognormal\", deviation = 0.1 }",
     "lognormal holds for values above zero only, and the level may lie below"},
    {"rating_cov", "[river.rating]", "[river.rating]\nuncertainty = { distribution = \"normal\", cov = 0.1 }",
     "depends on the datum: give deviation"},
    {"rating_limits", "[river.rating]",
     "[river.rating]\nuncertainty = { distribution = \"uniform\", lowest = 0.1, highest = 0.3 }", "must enclose zero"},
    {"rating_number", "[river.rating]", "[river.rating]\nuncertainty = 0.2", "uncertainty is mistyped: write it like {"},
};
INSTANTIATE_TEST_SUITE_P(Values, UncertaintyFault, testing::ValuesIn(cases),
                         [](const testing::TestParamInfo<Case>& tested) { return std::string(tested.param.name); });

}  // namespace
}  // namespace quell::test
