// One thing spoiled in a good site file: the message, its line, and nothing else.
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
  const char* at;       ///< words on the line where the problem must be shown, after the change
  const char* message;  ///< part of it
};

std::ostream& operator<<(std::ostream& out, const Case& c) {
  return out << c.name;
}
std::string name_of_case(const testing::TestParamInfo<Case>& tested) {
  return tested.param.name;
}

class OneFault : public testing::TestWithParam<Case> {};

TEST_P(OneFault, IsToldOnceWithItsLine) {
  const Case& c = GetParam();
  const std::string text = spoiled(good_site, c.from, c.to);
  ASSERT_FALSE(text.empty()) << "the text to replace does not occur";
  const io::SiteFile file = io::read_site_text(text, "site.toml");
  ASSERT_EQ(file.problems.size(), 1u) << all_problems(file);
  const io::Problem& problem = file.problems.front();
  EXPECT_THAT(problem.message, HasSubstr(c.message));
  EXPECT_EQ(problem.line, line_of(text, c.at)) << all_problems(file);
  EXPECT_EQ(problem.file, "site.toml");
}

const Case keys[] = {
    {"missing_key", "design_head = \"5 m\"\n", "", "[crest]",
     "design_head is missing in [crest]: write it like \"6.5 m\" or \"21 ft\""},
    {"missing_units", "units = \"SI\"\n", "", "[project]",
     "units is missing at the head of the file: write \"SI\" or \"US customary\""},
    {"empty_name", "\"Invented\"", "\" \"", "name", "name is empty"},
    {"mistyped_key", "design_head", "design_haed", "design_haed", "did you mean 'design_head'?"},
    {"key_with_its_section", "level = \"130 m\"", "crest_level = \"130 m\"", "crest_level", "did you mean 'level'?"},
    {"capital_key", "net_width", "Net_Width", "Net_Width", "did you mean 'net_width'?"},
    {"key_elsewhere", "width = \"34 m\"", "width = \"34 m\"\npiers = 2", "piers",
     "unknown key 'piers' in [chute]; it belongs in [crest]"},
    {"unknown_key", "steps = 30", "steps = 30\ncolour = \"red\"", "colour", "known are design_flood, check_flood"},
    {"mistyped_section", "[discharges]", "[discharge]\n[discharges]", "[discharge]", "did you mean 'discharges'?"},
    {"section_as_value", "units = \"SI\"", "units = \"SI\"\nground = 4", "ground", "ground is a section: write [ground]"},
    {"list_as_table", "[[discharges.floods]]", "[discharges.floods]", "[discharges.floods]",
     "write [[discharges.floods]] before"},
    {"duplicate_key", "design_head = \"5 m\"", "design_head = \"5 m\"\ndesign_head = \"6 m\"", "design_head = \"6 m\"",
     "'design_head' stands twice"},
    {"both_of_a_pair", "roughness_height", "manning_n = 0.013\nroughness_height", "roughness_height",
     "roughness_height and manning_n exclude each other"},
    {"none_of_a_pair", "roughness_height = \"0.6 mm\"\n", "", "[chute]", "[chute] needs one of roughness_height and manning_n"},
    {"slope_and_reaches", "slope = \"0.8H:1V\"", "slope = \"0.8H:1V\"\nreaches = [{ slope = \"1H:1V\" }]", "reaches",
     "slope and reaches exclude"},
    {"pier_nose_and_number", "[chute]", "piers = 1\npier_nose = \"round\"\npier_contraction = 0.02\n[chute]",
     "pier_contraction", "exclude each other"},
    {"rating_and_section", "[discharges]",
     "[river.section]\nbottom_width = \"20 m\"\nside_slope = \"2H:1V\"\nbed_slope = 0.001\nmanning_n = 0.03\n[discharges]",
     "[river.section]", "[river.rating] and [river.section] exclude each other"},
};
INSTANTIATE_TEST_SUITE_P(Keys, OneFault, testing::ValuesIn(keys), name_of_case);

const Case values[] = {
    {"wrong_unit", "\"600 m3/s\"", "\"600 m\"", "design_flood",
     "design_flood is a discharge: write it like \"850 m3/s\" or \"30 000 ft3/s\", not \"600 m\""},
    {"discharge_for_length", "\"30 m\"", "\"30 m3/s\"", "net_width", "net_width is a length"},
    {"unknown_unit", "\"130 m\"", "\"130 metrs\"", "level", "level: "},
    {"thousands_comma", "\"600 m3/s\"", "\"1,600 m3/s\"", "design_flood", "design_flood: "},
    {"truth_value", "\"130 m\"", "true", "level", "level is mistyped"},
    {"list_for_quantity", "\"130 m\"", "[1, 2]", "level", "level is mistyped"},
    {"date", "\"5 m\"", "2020-01-01", "design_head", "design_head is mistyped"},
    {"number_for_text", "\"Invented\"", "12", "name", "name is mistyped"},
    {"zero_width", "\"30 m\"", "\"0 m\"", "net_width", "net_width must be greater than zero"},
    {"negative_width", "\"34 m\"", "-34", "width = -34", "width must be greater than zero"},
    {"not_a_number", "\"130 m\"", "nan", "level", "level must be a finite number"},
    {"infinite", "\"600 m3/s\"", "inf", "design_flood", "design_flood must be a finite number"},
    {"infinite_text", "\"600 m3/s\"", "\"1e999 m3/s\"", "design_flood", "design_flood: "},
    {"huge", "\"130 m\"", "1e300", "level", "level must lie between -500 m and 9000 m"},
    {"steps_too_many", "steps = 30", "steps = 5000", "steps", "steps must lie between 2 and 2000"},
    {"steps_fraction", "steps = 30", "steps = 30.5", "steps", "steps is mistyped"},
    {"steps_overflow", "steps = 30", "steps = 9223372036854775807", "steps", "steps must lie between 2 and 2000"},
    {"slope_words", "\"0.8H:1V\"", "\"steep\"", "slope", "a slope is written like \"0.7H:1V\""},
    {"slope_without_letters", "\"0.8H:1V\"", "\"0.8:1\"", "slope", "a slope is written like \"0.7H:1V\""},
    {"slope_flat", "\"0.8H:1V\"", "\"50H:1V\"", "slope", "slope must lie between 0.05 and 5"},
    {"slope_upright", "\"0.8H:1V\"", "\"0H:1V\"", "slope", "slope must lie between 0.05 and 5"},
    {"slope_not_a_number", "\"0.8H:1V\"", "nan", "slope", "slope"},
    {"choice", "approach_depth", "upstream_face = \"vertcal\"\napproach_depth", "upstream_face", "did you mean \"vertical\"?"},
    {"other_system", "units = \"SI\"", "units = \"metric\"", "units", "units must be \"SI\" or \"US customary\""},
    {"unknown_type", "\"type_2\"", "\"type_22\"", "types", "unknown type 'type_22'; did you mean 'type_2'?"},
    {"type_twice", "\"type_2\"", "\"type_1\"", "types", "'type_1' stands twice"},
    {"no_types", "[\"type_1\", \"type_2\"]", "[]", "types", "types is an empty list"},
    {"type_as_number", "\"type_2\"", "2", "types", "types is mistyped"},
    {"width_word", "[basin]", "[basin]\nwidth = \"fre\"", "\"fre\"", "did you mean \"free\"?"},
    {"escaped_control", "\"Invented\"", "\"In\\u0000vented\"", "name", "holds a control character"},
};
INSTANTIATE_TEST_SUITE_P(Values, OneFault, testing::ValuesIn(values), name_of_case);

const Case together[] = {
    {"check_below_design", "check_flood = \"800 m3/s\"", "check_flood = \"500 m3/s\"", "check_flood",
     "check_flood 500 m3/s is smaller than design_flood"},
    {"smallest_too_large",
     "smallest = \"30 m3/s\"\nsteps = 30\n[[discharges.floods]]\nname = \"20-year flood\"\ndischarge = \"300 m3/s\"",
     "smallest = \"700 m3/s\"\n[[discharges.floods]]\nname = \"20-year flood\"\ndischarge = \"750 m3/s\"", "smallest",
     "smallest 700 m3/s must be smaller"},
    {"crest_below_bed", "bed_level = \"100 m\"", "bed_level = \"130 m\"\nbed_degradation = 0", "level = \"130 m\"",
     "must lie above the river bed"},
    {"crest_below_apron", "highest_apron = \"99 m\"", "highest_apron = \"131 m\"", "highest_apron",
     "would not lie below the crest"},
    {"aprons_crossed", "highest_apron = \"99 m\"", "highest_apron = \"89 m\"", "highest_apron", "lies below lowest_apron"},
    {"flood_outside", "\"300 m3/s\"", "\"3000 m3/s\"", "\"3000 m3/s\"", "lies outside the range"},
    {"rating_not_increasing", "\"400 m3/s\"", "\"900 m3/s\"", "discharge = [\"20", "must increase: 900 m3/s follows 900 m3/s"},
    {"rating_unequal", "\"400 m3/s\", \"900 m3/s\"", "\"400 m3/s\", \"500 m3/s\", \"900 m3/s\"",
     "low = ", "this list has 3 levels, but there are 4 discharges"},
    {"rating_too_short", "\"900 m3/s\"", "\"700 m3/s\"", "[river.rating]",
     "the rating ends at 700 m3/s, but check_flood is 800 m3/s; add a row for 800 m3/s or more"},
    {"rating_starts_late", "\"20 m3/s\"", "\"50 m3/s\"", "[river.rating]",
     "the rating starts at 50 m3/s, but smallest is 30 m3/s"},
    {"level_falls", "\"103.4 m\", \"106.8 m\"", "\"106.4 m\", \"106.2 m\"", "expected = ", "must not fall"},
    {"low_above_expected", "\"100.5 m\"", "\"100.65 m\"",
     "expected = ", "the expected tailwater 100.6 m lies below the low one 100.65 m"},
    {"rating_wrong_unit", "\"103 m\"", "\"103 m2\"", "low = ", "low is a length"},
    {"tailwater_at_crest", "\"104 m\", \"107.5 m\"", "\"131 m\", \"132 m\"", "[river.rating]",
     "at 400 m3/s the tailwater 131 m reaches the crest at 130 m"},
    {"suction_above_range", "[basin]", "[slab]\npressure_range = 0.6\n[basin]", "pressure_range",
     "a suction of 0.8 is more than the whole range of 0.6"},
    {"pulses_out_of_order", "[basin]",
     "[[slab.pressure]]\nfroude = 5\nplace = 1\nrange = 1\nsuction = 0.5\n"
     "[[slab.pressure]]\nfroude = 5\nplace = 0.8\nrange = 1\nsuction = 0.5\n[basin]",
     "place = 0.8", "in order of the Froude number, then of the place"},
    {"foundation_above_ground", "[basin]", "[ground]\nlevel = 101\nfoundation_level = 102\n[basin]", "foundation_level",
     "lies above the ground"},
    {"narrow_chute", "width = \"34 m\"", "width = \"20 m\"", "width = \"20 m\"", "smaller than the clear width of the crest"},
    {"end_width_without_level", "width = \"34 m\"", "width = \"34 m\"\nend_width = \"40 m\"", "end_width",
     "add end_width_level"},
    {"end_width_level_high", "width = \"34 m\"", "width = \"34 m\"\nend_width = \"40 m\"\nend_width_level = 131",
     "end_width_level", "must lie between the river bed"},
    {"largest_with_fixed", "[basin]", "[basin]\nlargest_width = \"50 m\"", "largest_width",
     "has no meaning with a fixed width"},
    {"last_reach_ends", "slope = \"0.8H:1V\"", "reaches = [{ slope = \"1H:1V\", end_level = 110 }]", "reaches",
     "takes no end_level"},
    {"first_reach_endless", "slope = \"0.8H:1V\"", "reaches = [{ slope = \"2H:1V\" }, { slope = \"1H:1V\" }]", "reaches",
     "reach 1 of 2 lacks end_level"},
    {"reach_upwards", "slope = \"0.8H:1V\"", "reaches = [{ slope = \"2H:1V\", end_level = 131 }, { slope = \"1H:1V\" }]",
     "reaches", "must lie below 130 m"},
    {"reach_below_bed", "slope = \"0.8H:1V\"", "reaches = [{ slope = \"2H:1V\", end_level = 99 }, { slope = \"1H:1V\" }]",
     "reaches", "must lie above the river bed"},
};
INSTANTIATE_TEST_SUITE_P(Together, OneFault, testing::ValuesIn(together), name_of_case);

const Case crests[] = {
    {"unknown_shape", "design_head", "shape = \"sharpe\"\ndesign_head", "shape",
     "shape must be \"ogee\", \"broad\", \"sharp\" or \"labyrinth\"; did you mean \"sharp\"?"},
    {"key_of_another_shape", "design_head", "crest_length = \"4 m\"\ndesign_head", "crest_length",
     "crest_length has no meaning with shape = \"ogee\": only the broad crest has a length along the flow; delete it, or set "
     "shape = \"broad\""},
    {"design_head_of_a_weir", "design_head = \"5 m\"", "shape = \"broad\"\ncrest_length = \"4 m\"\ndesign_head = \"5 m\"",
     "design_head",
     "design_head has no meaning with shape = \"broad\": only the ogee is shaped for a head; delete it, or set shape = "
     "\"ogee\""},
    {"piers_on_a_weir", "design_head = \"5 m\"", "shape = \"broad\"\ncrest_length = \"4 m\"\npiers = 2", "piers",
     "hold for a clear crest over the full width"},
    {"face_of_a_weir", "design_head = \"5 m\"", "shape = \"sharp\"\nfloor_level = \"127 m\"\nupstream_face = \"3V:1H\"",
     "upstream_face", "delete it, or set shape = \"ogee\""},
    {"floor_of_a_broad_crest", "design_head = \"5 m\"", "shape = \"broad\"\ncrest_length = \"4 m\"\nfloor_level = 120",
     "floor_level", "without a fall; delete it, or set shape = \"sharp\" or \"labyrinth\""},
    {"broad_without_length", "design_head = \"5 m\"", "shape = \"broad\"", "[crest]",
     "crest_length is missing in [crest]: write it like \"6 m\" or \"20 ft\""},
    {"sharp_without_floor", "design_head = \"5 m\"", "shape = \"sharp\"", "[crest]",
     "floor_level is missing in [crest]: write it like \"409 m\" or \"1342 ft\""},
    {"sharp_without_height", "design_head = \"5 m\"\nnet_width = \"30 m\"\napproach_depth = \"20 m\"",
     "shape = \"sharp\"\nfloor_level = \"127 m\"\nnet_width = \"30 m\"\napproach_depth = 0", "approach_depth",
     "approach_depth must be greater than zero for a sharp crest"},
    {"floor_above_crest", "design_head = \"5 m\"", "shape = \"sharp\"\nfloor_level = \"131 m\"", "floor_level",
     "floor_level 131 m must lie below the crest at 130 m"},
    {"floor_below_bed", "design_head = \"5 m\"", "shape = \"sharp\"\nfloor_level = \"99.5 m\"", "floor_level",
     "floor_level 99.5 m must lie above the river bed at 100 m"},
    {"labyrinth_angle", "design_head = \"5 m\"",
     "shape = \"labyrinth\"\nfloor_level = 127\ndeveloped_length = 80\nsidewall_angle = \"40 deg\"", "sidewall_angle",
     "sidewall_angle must lie between 6 and 35 degrees; 40 does not"},
    {"labyrinth_angle_as_length", "design_head = \"5 m\"",
     "shape = \"labyrinth\"\nfloor_level = 127\ndeveloped_length = 80\nsidewall_angle = \"15 m\"", "sidewall_angle",
     "sidewall_angle is an angle: write it like \"15 deg\", or a bare number of degrees, not \"15 m\""},
    {"labyrinth_short", "design_head = \"5 m\"",
     "shape = \"labyrinth\"\nfloor_level = 127\nsidewall_angle = 15\ndeveloped_length = \"25 m\"", "developed_length",
     "developed_length 25 m is smaller than the width that the labyrinth spans, net_width 30 m"},
    {"labyrinth_too_long", "design_head = \"5 m\"",
     "shape = \"labyrinth\"\nfloor_level = 127\nsidewall_angle = 30\ndeveloped_length = \"61 m\"", "developed_length",
     "side walls at 30 degrees to the flow have at most 60 m in a net_width of 30 m"},
    {"reach_above_the_floor",
     "design_head = \"5 m\"\nnet_width = \"30 m\"\napproach_depth = \"20 m\"\n[chute]\nslope = "
     "\"0.8H:1V\"",
     "shape = \"sharp\"\nfloor_level = 127\nnet_width = \"30 m\"\napproach_depth = \"20 m\"\n[chute]\nreaches = [{ slope = "
     "\"2H:1V\", end_level = 128 }, { slope = \"1H:1V\" }]",
     "reaches", "must lie below 127 m, where this reach starts"},
};
INSTANTIATE_TEST_SUITE_P(Crests, OneFault, testing::ValuesIn(crests), name_of_case);

const Case syntax[] = {
    {"unit_without_quotes", "\"130 m\"", "130 m", "level", "stands in quotes: level = \"130 m\""},
    {"word_without_quotes", "\"Invented\"", "Invented", "name", "words stand in quotes: name = \"Invented\""},
    {"decimal_comma", "\"130 m\"", "130,5", "level", "a decimal point and no comma"},
    {"no_value", "\"130 m\"", "", "level", "'level' has no value"},
    {"open_quote", "\"Invented\"", "\"Invented", "name", "this is not TOML"},
    {"letter_outside_quotes", "design_head", "d\xC3\xA9sign_head", "sign_head", "may stand only inside quotes or in a comment"},
    {"control_character", "Invented",
     "Inv\x01"
     "ented",
     "name", "control character 0x01"},
    {"not_utf8", "Invented", "Inv\xE9nted", "name", "byte 0xe9 is not UTF-8"},
    {"overlong_utf8", "Invented", "Inv\xC0\xAFnted", "name", "byte 0xc0 is not UTF-8"},
};
INSTANTIATE_TEST_SUITE_P(Syntax, OneFault, testing::ValuesIn(syntax), name_of_case);

TEST(BadSite, ReportsEveryProblemInTheOrderOfTheFile) {
  std::string text = spoiled(good_site, "\"130 m\"", "true");
  text = spoiled(text, "\"600 m3/s\"", "\"600 m\"");
  text = spoiled(text, "slope =", "slop =");
  const io::SiteFile file = io::read_site_text(text, "site.toml");
  ASSERT_EQ(file.problems.size(), 3u) << all_problems(file);
  EXPECT_LT(file.problems[0].line, file.problems[1].line);
  EXPECT_LT(file.problems[1].line, file.problems[2].line);
}

TEST(BadSite, ShowsTheLineWithACaret) {
  const io::SiteFile file = io::read_site_text(spoiled(good_site, "\"600 m3/s\"", "\"600 m\""), "dir/site.toml");
  ASSERT_EQ(file.problems.size(), 1u);
  EXPECT_EQ(
      io::to_text(file.problems[0]),
      "dir/site.toml:21:16: error: design_flood is a discharge: write it like \"850 m3/s\" or \"30 000 ft3/s\", not \"600 m\"\n"
      "    design_flood = \"600 m\"\n"
      "                   ^");
}

TEST(BadSite, NamesEveryMissingSection) {
  const io::SiteFile file = io::read_site_text("", "site.toml");
  const std::string text = all_problems(file);
  for (const char* section : {"[project]", "[crest]", "[chute]", "[river]", "[discharges]"})
    EXPECT_THAT(text, HasSubstr(section));
  EXPECT_EQ(file.problems.size(), 6u) << text;
  EXPECT_EQ(file.problems[0].line, 1);
}

}  // namespace
}  // namespace quell::test
