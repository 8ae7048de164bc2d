// From a finding to its step of the workings, and from a step back to the inputs of the site file: over all examples and all
// types of the catalogue.
#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <cstdio>
#include <map>
#include <set>
#include <string>

#include "quell/base/units.h"
#include "quell/base/working.h"
#include "quell/design/design.h"
#include "quell/hydraulics/definitions.h"
#include "quell/io/schema.h"
#include "quell/io/site_file.h"

namespace quell {
namespace {

design::DesignResult design_of(const std::string& example, bool with_workings = true) {
  const auto file = io::read_site_file(QUELL_ROOT "/examples/" + example + "/site.toml");
  EXPECT_TRUE(file.good()) << example;
  const auto types = dissipators::catalogue();
  auto result = design::run_design(file.site, {.types = types, .with_workings = with_workings});
  EXPECT_TRUE(result) << example;
  return std::move(*result);
}

bool is_near(double a, double b) {
  return std::abs(a - b) <= 1e-9 * std::max(1.0, std::abs(b));
}

class Workings : public testing::TestWithParam<const char*> {};

TEST_P(Workings, AFindingWithInputsHasAStepOfItsOwn) {
  const auto result = design_of(GetParam());
  int with_inputs = 0;
  for (const auto& option : result.options) {
    if (!option.sized) continue;
    for (const auto& finding : option.findings) {
      if (finding.method.inputs.empty()) continue;
      ++with_inputs;
      const auto number = step_behind(finding, option.working);
      ASSERT_TRUE(number.found()) << finding.id;
      const auto& step = option.working.sections()[number.section - 1].steps[number.step - 1];
      EXPECT_EQ(step.method, finding.method.method) << finding.id;
      for (std::size_t i = 0; i < step.inputs.size(); ++i) EXPECT_EQ(step.inputs[i], finding.method.inputs[i].value);
      EXPECT_TRUE(std::all_of(step.outputs.begin(), step.outputs.end(), [](double y) { return std::isfinite(y); }))
          << finding.id;
    }
  }
  EXPECT_GT(with_inputs, 100);
}

// Where the method gives the value itself, the step must end at the number that the finding prints: what is printed and what is
// judged come from two computations.
TEST_P(Workings, TheStepEndsAtTheNumberThatIsJudged) {
  const std::set<std::string_view> exact{"tailwater.margin.levels",
                                         "tailwater.ratio.levels",
                                         "level.difference.definition",
                                         "flow.unit_discharge.continuity",
                                         "flow.velocity.continuity",
                                         "flow.froude_number.rectangular",
                                         "crest.head_ratio.definition",
                                         "crest.least_pressure.hager",
                                         "cavitation.index.chute",
                                         "basin.flotation.etl_307",
                                         "slab.thickness.uplift",
                                         "slab.joint_uplift.stagnation",
                                         "protection.gradation.straight_line",
                                         "protection.creep_ratio.lane",
                                         "wall.stability.l_shaped",
                                         "basin.bearing.straight_line",
                                         "wall.natural_frequency.cantilever",
                                         "slab.natural_frequency.anchors",
                                         "wall.fluctuation_peak.velocity_head",
                                         "seepage.cutoff_depth.khosla",
                                         "scour.depth.novak_basin"};
  const auto result = design_of(GetParam());
  int compared = 0;
  for (const auto& option : result.options) {
    if (!option.sized) continue;
    for (const auto& finding : option.findings) {
      const auto* method = finding.method.method;
      if (method == nullptr || finding.method.inputs.empty() || exact.count(method->id.view()) == 0) continue;
      if (finding.id == "river.gradation") continue;                            // a ratio of two of its outputs
      if (finding.id == "elements.abrasion" && finding.value == 0.0) continue;  // nothing draws stones in: not judged
      const auto number = step_behind(finding, option.working);
      ASSERT_TRUE(number.found()) << finding.id;
      const auto& outputs = option.working.sections()[number.section - 1].steps[number.step - 1].outputs;
      EXPECT_TRUE(std::any_of(outputs.begin(), outputs.end(),
                              [&](double y) { return is_near(y, finding.value) || is_near(y, finding.limit); }))
          << option.type->record().id.view() << " " << finding.id << ": " << finding.value << " against " << outputs.front();
      ++compared;
    }
  }
  EXPECT_GT(compared, 60);
}

TEST_P(Workings, EveryKeyNamedIsAKeyOfTheSiteFile) {
  std::set<std::string> keys;
  for (const auto& key : io::schema()) keys.insert(std::string(key.section) + "." + std::string(key.name));
  const auto result = design_of(GetParam());
  std::set<std::string> seen;
  for (const auto& option : result.options) {
    for (const auto& finding : option.findings)
      if (!finding.key.empty()) seen.emplace(finding.key);
    for (const auto& section : option.working.sections())
      for (const auto& step : section.steps) {
        ASSERT_EQ(step.keys.size(), step.inputs.size());
        for (const auto& key : step.keys)
          if (!key.empty()) seen.insert(key);
      }
  }
  EXPECT_GT(seen.size(), 8u);
  for (const auto& key : seen) EXPECT_EQ(keys.count(key), 1u) << key;
}

// A reader can walk from every number back to the site file: it is an input, or an earlier step gives it, or words say where it
// comes from.
TEST_P(Workings, EveryNumberPutInSaysWhereItComesFrom) {
  const auto result = design_of(GetParam());
  std::set<std::string> orphans;
  for (const auto& option : result.options) {
    const auto& sections = option.working.sections();
    for (std::size_t s = 0; s < sections.size(); ++s)
      for (std::size_t k = 0; k < sections[s].steps.size(); ++k) {
        const auto& step = sections[s].steps[k];
        for (std::size_t i = 0; i < step.inputs.size(); ++i)
          if (step.keys[i].empty() && step.words[i].empty() && !origin_of_input(option.working, {s + 1, k + 1}, i).found())
            orphans.insert(std::string(step.method->id.view()) + " " + std::string(step.method->inputs[i].name.view()) +
                           " in " + std::string(option.type->record().id.view()) + ": " + step.purpose);
      }
  }
  for (const auto& orphan : orphans) ADD_FAILURE() << orphan;
}

// What is said to be an input is the input: the same number, unless it only follows from it.
TEST_P(Workings, ANumberWithAKeyIsTheOneInTheFile) {
  const std::set<std::string> follows{"chute.slope",         // an angle, from a ratio
                                      "chute.step_height"};  // may be given as a number of steps
  const auto file = io::read_site_file(std::string(QUELL_ROOT "/examples/") + GetParam() + "/site.toml");
  std::map<std::string, double> given;
  for (const auto& input : file.inputs)
    if (const auto quantity = parse_quantity(input.typed); quantity && quantity->has_unit)
      given[input.section + "." + input.key] = quantity->value;
  int compared = 0;
  std::set<std::string> wrong;
  for (const auto& option : design_of(GetParam()).options)
    for (const auto& section : option.working.sections())
      for (const auto& step : section.steps)
        for (std::size_t i = 0; i < step.inputs.size(); ++i) {
          const auto found = given.find(step.keys[i]);
          if (found == given.end() || follows.count(step.keys[i]) > 0) continue;
          ++compared;
          if (!is_near(step.inputs[i], found->second))
            wrong.insert(step.keys[i] + " in " + std::string(option.type->record().id.view()) + ", " +
                         std::string(step.method->id.view()) + ": " + std::to_string(step.inputs[i]) + " for " +
                         std::to_string(found->second));
        }
  for (const auto& one : wrong) ADD_FAILURE() << one;
  EXPECT_GT(compared, 100);
}

INSTANTIATE_TEST_SUITE_P(Examples, Workings,
                         testing::Values("01-gravity-dam", "02-small-dam", "03-labyrinth", "04-stepped-dam", "05-gated-dam",
                                         "06-canal-drop"));

// Two findings in three of a design lead to a step, and nearly all to a step or to the input that they judge; the others are
// counts and statements.
TEST(WorkingSteps, FindingsLeadToAStepOrToAnInput) {
  for (const auto* example : {"01-gravity-dam", "05-gated-dam"}) {
    const auto result = design_of(example);
    const auto& chosen = result.options[static_cast<std::size_t>(result.chosen)];
    const auto led = std::count_if(chosen.findings.begin(), chosen.findings.end(),
                                   [&](const Finding& finding) { return step_behind(finding, chosen.working).found(); });
    const auto keyed = std::count_if(chosen.findings.begin(), chosen.findings.end(), [&](const Finding& finding) {
      return !finding.key.empty() && !step_behind(finding, chosen.working).found();
    });
    const auto all = static_cast<long>(chosen.findings.size());
    std::printf("%s: of %ld findings %ld lead to a step, %ld more to an input\n", example, all, static_cast<long>(led),
                static_cast<long>(keyed));
    EXPECT_GE(3 * led, 2 * all) << example;
    EXPECT_GE(10 * (led + keyed), 9 * all) << example;
  }
}

TEST(WorkingSteps, NothingIsRecordedWhereNoWorkingIsAskedFor) {
  for (const auto& option : design_of("01-gravity-dam", false).options) EXPECT_EQ(option.working.step_count(), 0u);
}

TEST(WorkingSteps, AnInputComesFromTheNearestEarlierStepThatGaveIt) {
  Working working;
  working.open_section("one");
  working.add(hydraulics::record::unit_discharge, {1550.0, given(37.0, "basin.width")}, {1550.0 / 37.0}, "");
  working.add(hydraulics::record::mean_velocity, {1550.0 / 37.0, 1.25}, {1550.0 / 37.0 / 1.25}, "");
  EXPECT_EQ(origin_of_input(working, {1, 2}, 0).step, 1u);
  EXPECT_FALSE(origin_of_input(working, {1, 2}, 1).found()) << "no step gave it";
  EXPECT_FALSE(origin_of_input(working, {1, 1}, 1).found()) << "an input of the site file comes from there";
}

TEST(WorkingSteps, ARoundNumberIsTakenForTheSameUnderTheSameSymbolOnly) {
  Working working;
  working.open_section("one");
  working.add(hydraulics::record::unit_discharge, {40.0, 20.0}, {2.0}, "");
  working.add(hydraulics::record::mean_velocity, {2.0, 2.0}, {1.0}, "");
  working.add(hydraulics::record::level_difference, {4.0, 2.0}, {2.0}, "");
  working.add(hydraulics::record::mean_velocity, {2.0, 2.0}, {1.0}, "");
  EXPECT_EQ(origin_of_input(working, {1, 2}, 0).step, 1u) << "q is q";
  EXPECT_FALSE(origin_of_input(working, {1, 2}, 1).found()) << "a depth is no discharge per unit width";
  EXPECT_FALSE(origin_of_input(working, {1, 4}, 1).found()) << "a difference of levels of 2 m is not this depth of 2 m";
}

TEST(WorkingSteps, WordsStandInWhereNoStepGivesTheNumber) {
  Working working;
  working.open_section("one");
  working.add(hydraulics::record::unit_discharge, {told(1550.0, "the largest"), given(37.0, "basin.width")}, {1550.0 / 37.0},
              "");
  working.add(hydraulics::record::mean_velocity, {told(1550.0 / 37.0, "of that discharge"), 1.25}, {1550.0 / 37.0 / 1.25}, "");
  const auto& steps = working.sections()[0].steps;
  EXPECT_EQ(steps[0].words[0], "the largest");
  EXPECT_TRUE(steps[0].words[1].empty());
  EXPECT_TRUE(origin_of_input(working, {1, 2}, 0).found()) << "the step is the better answer";
}

TEST(WorkingSteps, TheSameStepIsAddedOnce) {
  Working working;
  working.open_section("one");
  working.add_behind({&hydraulics::record::crest_head_ratio, {3.0, 2.0}}, "head");
  working.add_behind({&hydraulics::record::crest_head_ratio, {3.0, 2.0}}, "the same again");
  working.add_behind({&hydraulics::record::crest_head_ratio, {}}, "no inputs");
  ASSERT_EQ(working.step_count(), 1u);
  EXPECT_EQ(working.sections()[0].steps[0].outputs[0], 1.5);
}

}  // namespace
}  // namespace quell
