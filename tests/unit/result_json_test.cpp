// result.json: the shape that outside checks rely on, and agreement with docs/result.schema.json by an independent validator.
#include "quell/io/result_json.h"

#include "quell/base/quantity_text.h"  // before <signal.h>, which makes si_value a macro

#include <unistd.h>

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <cstdlib>
#include <fstream>
#include <functional>
#include <nlohmann/json.hpp>

#include "quell/io/files.h"
#include "unit/output_sample.h"

namespace quell::io {
namespace {

using Json = nlohmann::ordered_json;
using testing::ElementsAre;

SiteFile sample_file() {
  SiteFile file;
  file.path = "site.toml";
  file.digest = sha256("");
  file.site = test::output_sample().site;
  file.inputs.push_back({"crest", "level", "412 m", "Level of the crest.", false});
  file.inputs.push_back({"", "units", "SI", "System.", false});
  return file;
}

Json sample_json() {
  return Json::parse(design_json(sample_file(), test::output_sample().result));
}

std::vector<std::string> keys_of(const Json& object) {
  std::vector<std::string> keys;
  for (const auto& [key, value] : object.items()) keys.push_back(key);
  return keys;
}

void expect_keys(const Json& object, std::initializer_list<const char*> keys) {
  for (const char* key : keys) EXPECT_TRUE(object.contains(key)) << key;
}

TEST(ResultJson, HoldsWhatTheContractNames) {
  const Json json = sample_json();
  EXPECT_THAT(keys_of(json),
              ElementsAre("program", "input", "site", "cases", "options", "chosen", "choice_reason", "all_requirements_met"));
  expect_keys(json["program"], {"version"});
  expect_keys(json["input"], {"path", "digest"});
  ASSERT_FALSE(json["cases"].empty());
  for (const Json& c : json["cases"]) {
    expect_keys(c, {"discharge", "return_period", "reservoir_level", "width", "origin", "tailwater"});
    EXPECT_THAT(keys_of(c["tailwater"]), ElementsAre("low", "expected", "high"));
  }
  ASSERT_FALSE(json["options"].empty());
  for (const Json& option : json["options"]) {
    expect_keys(option, {"type", "applicable", "apron_level", "width", "length", "wall_height", "end_sill_level", "governing",
                         "cases", "elements", "findings", "quantities"});
    expect_keys(option["governing"], {"discharge", "tailwater_case", "margin"});
    expect_keys(option["quantities"], {"concrete"});
    for (const Json& c : option["cases"])
      expect_keys(
          c, {"discharge", "tailwater_case", "y1", "V1", "F1", "y2", "required_depth", "available_depth", "margin", "jump"});
    for (const Json& e : option["elements"])
      expect_keys(e, {"kind", "count", "height", "width", "spacing", "length", "station"});
    for (const Json& f : option["findings"])
      expect_keys(f, {"id", "status", "value", "limit", "unit", "source", "text", "advice"});
  }
}

TEST(ResultJson, NumbersAreThoseOfTheResult) {
  const design::DesignResult result = test::output_sample().result;
  const Json json = sample_json();
  ASSERT_EQ(json["options"].size(), result.options.size());
  ASSERT_GE(result.chosen, 0);
  const auto chosen = static_cast<std::size_t>(result.chosen);
  EXPECT_EQ(json["chosen"], std::string(result.options[chosen].type->record().id.view()));
  const Json& option = json["options"][chosen];
  EXPECT_EQ(option["apron_level"].get<double>(), result.options[chosen].apron_level);
  EXPECT_EQ(option["governing"]["margin"].get<double>(), result.options[chosen].governing.margin);
  ASSERT_EQ(option["cases"].size(), result.options[chosen].cases.size());
  const design::CaseResult& last = result.options[chosen].cases.back();
  EXPECT_EQ(option["cases"].back()["y2"].get<double>(), last.toe.y2);
  EXPECT_EQ(option["cases"].back()["jump"], std::string(design::name_of(last.jump)));
}

TEST(ResultJson, AnOptionThatWasNotSizedHasNoNumbers) {
  const design::DesignResult result = test::output_sample().result;
  const Json json = sample_json();
  int unsized = 0;
  for (std::size_t i = 0; i < result.options.size(); ++i) {
    if (result.options[i].sized) continue;
    ++unsized;
    const Json& option = json["options"][i];
    for (const char* key : {"apron_level", "width", "length", "wall_height", "end_sill_level"})
      EXPECT_TRUE(option[key].is_null()) << key;
    for (const auto& [key, value] : option["governing"].items()) EXPECT_TRUE(value.is_null()) << key;
    EXPECT_TRUE(option["quantities"]["concrete"].is_null());
    EXPECT_TRUE(option["cases"].empty());
    EXPECT_TRUE(option["elements"].empty());
  }
  EXPECT_GT(unsized, 0) << "the sample holds no such option";
}

TEST(ResultJson, NothingChosenAndNoReturnPeriodAreNull) {
  design::DesignResult result;
  result.cases.push_back({.discharge = 5.0, .width = 10.0, .origin = "range"});
  const Json json = Json::parse(design_json(sample_file(), result));
  EXPECT_TRUE(json["chosen"].is_null());
  EXPECT_TRUE(json["cases"][0]["return_period"].is_null());
  EXPECT_TRUE(json["options"].is_array());
}

TEST(ResultJson, SentencesHoldQuantitiesInSi) {
  design::DesignResult result;
  result.choice_reason = "The apron lies at " + quantity_token(93.44, dimension::length) + ".";
  const Json json = Json::parse(design_json(sample_file(), result));
  EXPECT_EQ(json["choice_reason"], "The apron lies at " + format_quantity(93.44, dimension::length, UnitSystem::si) + ".");
}

TEST(ResultJson, TheSameInputGivesTheSameBytes) {
  const std::string text = design_json(sample_file(), test::output_sample().result);
  EXPECT_EQ(text, design_json(sample_file(), test::output_sample().result));
  EXPECT_EQ(text.back(), '\n');
}

/// Debian's python3-jsonschema on `json`: 0 valid, 1 not valid, 77 no validator here.
int validate(const Json& json) {
  const std::string path = std::string(QUELL_BUILD) + "/result_under_test-" + std::to_string(::getpid()) + ".json";
  std::ofstream(path) << json.dump();
  const std::string code =
      "import sys, json\n"
      "try:\n  import jsonschema\n"
      "except ImportError:\n  sys.exit(77)\n"
      "schema = json.load(open(sys.argv[1]))\n"
      "jsonschema.Draft7Validator.check_schema(schema)\n"
      "errors = list(jsonschema.Draft7Validator(schema).iter_errors(json.load(open(sys.argv[2]))))\n"
      "print(*[f'{list(e.absolute_path)}: {e.message}' for e in errors[:5]], sep='\\n')\n"
      "sys.exit(1 if errors else 0)\n";
  const std::string script = std::string(QUELL_BUILD) + "/validate_result-" + std::to_string(::getpid()) + ".py";
  std::ofstream(script) << code;
  const int status =
      std::system(("/usr/bin/python3 " + script + " " + QUELL_ROOT + "/docs/result.schema.json " + path).c_str());
  std::remove(path.c_str());
  std::remove(script.c_str());
  return status == -1 ? 77 : status / 256;
}

TEST(ResultJson, TheSchemaAgrees) {
  Json json = sample_json();
  const int status = validate(json);
  if (status == 77 || status == 127) GTEST_SKIP() << "no python3-jsonschema here";
  EXPECT_EQ(status, 0);
}

TEST(ResultJson, TheSchemaRefusesWhatIsSpoiled) {
  if (validate(sample_json()) >= 77) GTEST_SKIP() << "no python3-jsonschema here";
  const auto spoiled = [](const std::function<void(Json&)>& spoil) {
    Json json = sample_json();
    spoil(json);
    return validate(json);
  };
  EXPECT_EQ(spoiled([](Json& j) { j.erase("chosen"); }), 1);
  EXPECT_EQ(spoiled([](Json& j) { j["extra"] = 1; }), 1);
  EXPECT_EQ(spoiled([](Json& j) { j["options"][0]["cases"][0]["jump"] = "somewhere"; }), 1);
  EXPECT_EQ(spoiled([](Json& j) { j["options"][0]["apron_level"] = nullptr; }), 1);
  EXPECT_EQ(spoiled([](Json& j) { j["cases"][0]["discharge"] = "5 m3/s"; }), 1);
}

}  // namespace
}  // namespace quell::io
