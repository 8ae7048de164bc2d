// One thing spoiled in a good site with gates, reservoir, floods and surveyed river: the message, its file and line, and
// nothing else.
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "data_site_text.h"

namespace quell::test {
namespace {

using testing::HasSubstr;

struct Case {
  const char* name;
  const char* from;
  const char* to;
  const char* at;  ///< words on the line where the problem must be shown, after the change
  const char* message;
};

std::ostream& operator<<(std::ostream& out, const Case& c) {
  return out << c.name;
}
std::string name_of_case(const testing::TestParamInfo<Case>& tested) {
  return tested.param.name;
}

class DataFault : public testing::TestWithParam<Case> {};

TEST_P(DataFault, IsToldOnceWithItsLine) {
  const Case& c = GetParam();
  const std::string text = spoiled(good_data_site, c.from, c.to);
  ASSERT_FALSE(text.empty()) << "the text to replace does not occur";
  const io::SiteFile file = read_data_site(text);
  ASSERT_EQ(file.problems.size(), 1u) << all_problems(file);
  EXPECT_THAT(file.problems[0].message, HasSubstr(c.message));
  EXPECT_EQ(file.problems[0].line, line_of(text, c.at)) << all_problems(file);
  EXPECT_THAT(file.problems[0].file, HasSubstr("site.toml"));
}

TEST(DataSite, TheUnspoiledOneIsGood) {
  const io::SiteFile file = read_data_site(good_data_site);
  EXPECT_TRUE(file.good()) << all_problems(file);
  EXPECT_TRUE(file.remarks.empty());
}

const Case gates[] = {
    {"width_of_bays", "bay_width = \"10 m\"", "bay_width = \"10.02 m\"", "bay_width",
     "3 bays of 10.02 m are 30.06 m wide together, but the net_width of the crest is 30 m"},
    {"piers", "approach_depth = \"20 m\"", "approach_depth = \"20 m\"\npiers = 3", "piers",
     "3 bays have 2 piers between them, not 3; set piers = 2, or leave it out"},
    {"no_gates", "count = 3", "count = 0", "count", "count must lie between 1 and 200"},
    {"held_below_seat", "held_level = \"138 m\"", "held_level = \"130 m\"", "held_level",
     "held_level 130 m must lie above the seat of the gates at 130 m"},
    {"held_above_dam", "held_level = \"138 m\"", "held_level = \"142 m\"", "held_level",
     "held_level 142 m must lie below the top of the dam at 142 m"},
    {"held_missing", "held_level = \"138 m\"\n", "", "[gates]", "held_level is missing in [gates]"},
    {"both_coefficients", "held_level = \"138 m\"", "held_level = \"138 m\"\ncoefficient = 0.6\nradial_coefficient = 0.7",
     "radial_coefficient", "coefficient and radial_coefficient exclude each other"},
    {"too_few_openings", "\"0 m\", \"4 m\", \"0 m\"", "\"0 m\", \"4 m\"", "openings = [\"0 m\"", "2 openings for 3 gates"},
    {"opening_too_large", "\"0 m\", \"4 m\", \"0 m\"", "\"0 m\", \"9.1 m\", \"0 m\"", "\"9.1 m\"",
     "an opening of 9.1 m is more than full_opening 9 m"},
    {"opening_negative", "\"0 m\", \"4 m\", \"0 m\"", "\"0 m\", \"-1 m\", \"0 m\"", "\"-1 m\"",
     "openings must not be negative"},
    {"level_below_seat", "\"137 m\", \"138 m\"", "\"129 m\", \"138 m\"", "\"129 m\"", "at 129 m no water stands at the gates"},
    {"unknown_pattern", "pattern = \"all half\"", "pattern = \"all hafl\"", "all hafl", "did you mean 'all half'?"},
    {"unknown_pattern_far_off", "pattern = \"all half\"", "pattern = \"flood\"", "\"flood\"",
     "there is no pattern 'flood' in [[gates.patterns]]; known are 'middle gate', 'all half'"},
    {"standard_patterns_as_truth", "held_level", "standard_patterns = true\nheld_level", "standard_patterns",
     "standard_patterns must be \"yes\" or \"no\""},
    {"rules_out_of_order", "open_at = \"138.8 m\"\nclose_at = \"138.1 m\"", "open_at = \"138.2 m\"\nclose_at = \"138.1 m\"",
     "open_at = \"138.2 m\"\nclose_at = \"138.1 m\"", "open_at 138.2 m must lie above that of the rule before, 138.2 m"},
    {"rule_oscillates", "close_at = \"138.1 m\"", "close_at = \"138.9 m\"", "138.9",
     "close_at 138.9 m must lie below open_at 138.8 m: at a level between them the gates would open and close without end"},
    {"rules_end_together", "close_at = \"138.1 m\"", "close_at = \"137.8 m\" # all", "# all",
     "close_at 137.8 m must lie above that of the rule before, 137.8 m: the falling reservoir would end both rules at once"},
    {"rule_opens_less", "\"4 m\", \"4.5 m\", \"4 m\"", "\"1 m\", \"1.5 m\", \"1 m\"", "pattern = \"all half\"",
     "opens the gates by 3.5 m in all, less than the 4 m of the rule before"},
    {"rule_below_seat", "open_at = \"138.2 m\"\nclose_at = \"137.8 m\"", "open_at = \"129 m\"\nclose_at = \"128 m\"",
     "open_at = \"129 m\"", "open_at 129 m must lie above the seat"},
    {"not_an_ogee", "design_head = \"8 m\"", "shape = \"broad\"\ncrest_length = \"6 m\"", "[gates]",
     "gates stand on an ogee crest only, not on a broad one"},
    {"outlet_area", "area = \"4.5 m2\"", "area = \"4.5 m\"", "area", "area is an area: write it like"},
    {"outlet_guaranteed", "guaranteed = \"yes\"", "guaranteed = \"ye\"", "guaranteed", "did you mean \"yes\"?"},
};
INSTANTIATE_TEST_SUITE_P(Gates, DataFault, testing::ValuesIn(gates), name_of_case);

const Case river[] = {
    {"normal_without_slope", "control_slope = 0.002\n", "", "[river.survey]", "control_slope is missing in [river.survey]"},
    {"control_missing", "control = \"normal\"\ncontrol_slope = 0.002\n", "", "[river.survey]", "control is missing"},
    {"slope_of_a_level", "control = \"normal\"", "control = \"level\"\ncontrol_level = 103", "control_slope",
     "control_slope has no meaning with control = \"level\""},
    {"level_of_a_slope", "control = \"normal\"", "control = \"normal\"\ncontrol_level = 103", "control_level",
     "only a known level at the lower end is given outright"},
    {"control_below_bed", "control = \"normal\"\ncontrol_slope = 0.002", "control = \"level\"\ncontrol_level = \"98 m\"",
     "control_level", "the water at the last section, 98 m, lies below its lowest point at 99 m"},
    {"control_spread_falls", "control = \"normal\"\ncontrol_slope = 0.002",
     "control = \"level\"\ncontrol_level = { low = 103, expected = 102, high = 104 }", "control_level",
     "must not fall from low"},
    {"control_level_words", "control = \"normal\"\ncontrol_slope = 0.002", "control = \"level\"\ncontrol_level = true",
     "control_level", "write it like { low = \"361 m\""},
    {"control_file_missing", "control = \"normal\"\ncontrol_slope = 0.002", "control = \"table\"\ncontrol_file = \"no.csv\"",
     "control_file", "no.csv: there is no such file"},
    {"section_file_missing", "\"s1.csv\"", "\"s3.csv\"", "s3.csv", "there is no such file"},
    {"no_sections",
     "[[river.survey.sections]]\nfile = \"s1.csv\"\ndistance = \"0 m\"\nleft_bank = \"10 m\"\nright_bank = \"50 m\"\nn_channel "
     "= "
     "0.035\nn_left = 0.06\n[[river.survey.sections]]\nfile = \"s2.csv\"\ndistance = \"200 m\"\nleft_distance = \"180 m\"\n",
     "", "[river.survey]", "sections is missing in [river.survey]"},
    {"upstream", "distance = \"200 m\"", "distance = 0", "distance = 0",
     "distance 0 m must be larger than that of the section before, 0 m"},
    {"plain_of_the_first", "distance = \"0 m\"", "distance = \"0 m\"\nright_distance = 50", "right_distance",
     "distances along the plains begin with the second"},
    {"bank_outside", "right_bank = \"50 m\"", "right_bank = \"61 m\"", "right_bank",
     "right_bank 61 m lies outside the section, which goes from station 0 m to 60 m"},
    {"banks_crossed", "left_bank = \"10 m\"\nright_bank = \"50 m\"", "left_bank = \"50 m\"\nright_bank = \"10 m\"",
     "right_bank", "left_bank 50 m must lie left of right_bank 10 m"},
    {"no_n", "n_channel = 0.035\nn_left = 0.06\n", "", "[[river.survey.sections]]",
     "needs n_channel, or a column n in its file"},
    {"n_twice", "distance = \"200 m\"", "distance = \"200 m\"\nn_channel = 0.04", "n_channel = 0.04",
     "stands in the file of this section already"},
    {"two_tailwaters", "[river.bed]", "[river.gauging]\nfile = \"gauging.csv\"\n[river.bed]", "[river.gauging]",
     "[river.gauging] and [river.survey] exclude each other"},
    {"bed_incomplete", "mean_depth = \"2.1 m\"\n", "", "[river.bed]", "mean_depth is missing in [river.bed]"},
    {"bed_sizes_swapped", "mean_size = \"24 mm\"", "mean_size = \"24 mm\"\ncoarse_size = \"20 mm\"", "coarse_size",
     "coarse_size 0.02 m is smaller than mean_size 0.024 m"},
    {"lag_negative", "lag_allowance = \"0.2 m\"", "lag_allowance = -0.2", "lag_allowance",
     "lag_allowance must not be negative"},
};
INSTANTIATE_TEST_SUITE_P(River, DataFault, testing::ValuesIn(river), name_of_case);

const Case floods[] = {
    {"climate", "climate_factor = 1.1", "climate_factor = 11", "climate_factor", "climate_factor must lie between 0.5 and 3"},
    {"law", "regional_skew = -0.1", "law = \"gumble\"", "law", "did you mean \"gumbel\"?"},
    {"skew_of_gumbel", "regional_skew = -0.1", "law = \"gumbel\"\nregional_skew = -0.1", "regional_skew",
     "only log-Pearson III takes a skew"},
    {"skew_error_alone", "regional_skew = -0.1", "regional_skew_error = 0.2", "regional_skew_error",
     "has no meaning without regional_skew"},
    {"confidence", "regional_skew = -0.1", "confidence = 95", "confidence", "confidence must lie between 0.5 and 0.99"},
    {"measured_without_file", "file = \"inflow.csv\"\n", "", "[[floods.inflows]]", "file is missing in [floods.inflows[1]]"},
    {"file_of_a_shape", "shape = \"gamma\"", "shape = \"gamma\"\nfile = \"other.csv\"", "other.csv",
     "file has no meaning with shape = \"gamma\""},
    {"shape_without_time", "time_to_peak = \"6 h\"\n", "", "[[floods.inflows]]\nname = \"1000", "time_to_peak is missing"},
    {"exponent_of_another", "shape = \"gamma\"", "shape = \"dimensionless\"\nexponent = 4", "exponent",
     "only the gamma form has an exponent"},
    {"no_peak", "return_period = 1000\n", "", "[[floods.inflows]]\nname = \"1000",
     "needs peak, or return_period and [floods.record]"},
    {"no_record", "[floods.record]\nfile = \"record.csv\"\nregional_skew = -0.1\n", "", "return_period = 1000",
     "only with [floods.record]; add it, or give peak"},
    {"base_above_peak", "time_to_peak = \"6 h\"", "time_to_peak = \"6 h\"\npeak = 100\nbase_flow = 100", "base_flow",
     "base_flow 100 m3/s must be smaller than peak 100 m3/s"},
    {"no_reservoir", "[reservoir]\nfile = \"storage.csv\"\ndam_crest_level = \"142 m\"\n", "", "[[floods.inflows]]",
     "add [reservoir] with its storage"},
    {"unknown_inflow", "design_inflow = \"100-year inflow\"", "design_inflow = \"100-year inflw\"", "design_inflow",
     "design_inflow: there is no inflow '100-year inflw' in [[floods.inflows]]; did you mean '100-year inflow'?"},
    {"both_design_floods", "design_inflow = \"100-year inflow\"", "design_inflow = \"100-year inflow\"\ndesign_flood = 500",
     "design_flood", "design_flood and design_inflow exclude each other"},
    {"no_design_flood", "design_inflow = \"100-year inflow\"\n", "", "[discharges]",
     "[discharges] needs one of design_flood and design_inflow"},
    {"both_check_floods", "check_inflow", "check_flood = 700\ncheck_inflow", "check_inflow",
     "check_flood and check_inflow exclude each other"},
    {"initial_above_dam", "dam_crest_level = \"142 m\"", "dam_crest_level = \"142 m\"\ninitial_level = \"142.5 m\"",
     "initial_level", "initial_level 142.5 m lies above the top of the dam at 142 m"},
    {"freeboard_of_nothing", "dam_crest_level = \"142 m\"", "freeboard = 1", "freeboard", "add dam_crest_level"},
    {"table_too_low", "dam_crest_level = \"142 m\"", "dam_crest_level = \"143 m\"", "storage.csv",
     "the storage table ends at 142 m, but the top of the dam lies at 143 m"},
    {"table_too_high", "dam_crest_level = \"142 m\"", "dam_crest_level = \"142 m\"\ninitial_level = \"119 m\"", "storage.csv",
     "the storage table starts at 120 m, but initial_level is 119 m"},
};
INSTANTIATE_TEST_SUITE_P(Floods, DataFault, testing::ValuesIn(floods), name_of_case);

/// Each of these contradicts several keys, and each of them is told.
const Case contradictions[] = {
    {"river_above_crest", "level = \"130 m\"\ndesign_head = \"8 m\"", "level = \"99 m\"\ndesign_head = \"8 m\"",
     "file = \"s1.csv\"",
     "the river lies higher than the crest: the lowest point of the first section is at 99.5 m, the crest at 99 m"},
    {"dam_below_crest", "dam_crest_level = \"142 m\"", "dam_crest_level = \"129 m\"\n#", "dam_crest_level",
     "must lie above the crest of the spillway"},
};

TEST(DataSite, AContradictionOfManyKeysIsToldForEach) {
  for (const Case& c : contradictions) {
    const std::string text = spoiled(good_data_site, c.from, c.to);
    const io::SiteFile file = read_data_site(text);
    EXPECT_TRUE(std::any_of(file.problems.begin(), file.problems.end(),
                            [&](const io::Problem& problem) {
                              return problem.line == line_of(text, c.at) &&
                                     problem.message.find(c.message) != std::string::npos;
                            }))
        << c.name << "\n"
        << all_problems(file);
  }
}

TEST(DataSite, AnInflowWithoutListIsNamed) {
  std::string text(good_data_site);
  text.erase(text.find("[floods]"), text.find("[reservoir]") - text.find("[floods]"));
  const io::SiteFile file = read_data_site(text);
  ASSERT_EQ(file.problems.size(), 2u) << all_problems(file);
  EXPECT_THAT(file.problems[0].message, HasSubstr("design_inflow names an inflow of [[floods.inflows]], and there is none"));
}

TEST(DataSite, EachNameStandsOnce) {
  const std::string text = spoiled(good_data_site, "name = \"1000-year inflow\"", "name = \"100-year inflow\"");
  const std::string with_check = spoiled(text, "check_inflow = \"1000-year inflow\"", "check_inflow = \"100-year inflow\"");
  const io::SiteFile file = read_data_site(with_check);
  ASSERT_EQ(file.problems.size(), 1u) << all_problems(file);
  EXPECT_THAT(file.problems[0].message, HasSubstr("the name '100-year inflow' stands twice"));
  EXPECT_EQ(file.problems[0].line, line_of(with_check, "shape = \"gamma\"") - 1);
  const std::string patterns = spoiled(spoiled(good_data_site, "name = \"all half\"", "name = \"middle gate\""),
                                       "pattern = \"all half\"", "pattern = \"middle gate\"");
  const io::SiteFile gates_file = read_data_site(patterns);
  ASSERT_EQ(gates_file.problems.size(), 1u) << all_problems(gates_file);
  EXPECT_THAT(gates_file.problems[0].message, HasSubstr("the pattern 'middle gate' stands twice"));
}

TEST(DataSite, TheRatingAtTheLowerEndReachesTheCheckFlood) {
  std::string text = spoiled(good_data_site, "control = \"normal\"\ncontrol_slope = 0.002",
                             "control = \"table\"\ncontrol_file = \"lower.csv\"");
  const std::map<std::string, std::string> files{{"lower.csv", "discharge (m3/s),level (m)\n0,99.5\n800,106\n"}};
  EXPECT_TRUE(read_data_site(text, files).good()) << "without a known check flood there is nothing to compare";
  text = spoiled(text, "check_inflow = \"1000-year inflow\"", "check_flood = \"900 m3/s\"");
  const io::SiteFile file = read_data_site(text, files);
  ASSERT_EQ(file.problems.size(), 1u) << all_problems(file);
  EXPECT_THAT(file.problems[0].message, HasSubstr("the rating ends at 800 m3/s, but check_flood is 900 m3/s"));
  EXPECT_EQ(file.problems[0].line, line_of(text, "lower.csv"));
}

TEST(DataSite, AGaugingIsJudgedAgainstBedAndCrest) {
  std::string text(good_data_site);
  text.replace(text.find("[river.survey]"), text.find("[river.bed]") - text.find("[river.survey]"),
               "[river.gauging]\nfile = \"gauging.csv\"\n");
  const auto gauged = [&](const std::string& rows) {
    return read_data_site(text, {{"gauging.csv", "level (m),discharge (m3/s)\n" + rows}});
  };
  EXPECT_TRUE(gauged("101,10\n102,50\n103,120\n104,200\n").good());
  EXPECT_THAT(all_problems(gauged("99.9,10\n102,50\n103,120\n104,200\n")), HasSubstr("lies below the river bed at 100 m"));
  EXPECT_THAT(all_problems(gauged("131,10\n132,50\n133,120\n134,200\n")), HasSubstr("the river lies higher than the crest"));
}

}  // namespace
}  // namespace quell::test
