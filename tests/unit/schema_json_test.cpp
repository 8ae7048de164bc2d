// The schema as JSON against the rows, the reader and the unit parser.
#include "quell/io/schema_json.h"

#include <fmt/format.h>
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <nlohmann/json.hpp>
#include <set>

#include "quell/base/units.h"
#include "quell/io/problem_list.h"
#include "quell/io/schema.h"
#include "quell/io/uncertainty_reader.h"
#include "quell/io/values.h"

namespace quell::io {
namespace {

using Json = nlohmann::json;
using ::testing::ElementsAre;

const Json& schema_read() {
  static const Json json = Json::parse(schema_json());
  return json;
}

const Json& section(const std::string& name) {
  for (const Json& one : schema_read()["sections"])
    if (one["name"] == name) return one;
  ADD_FAILURE() << "no section " << name;
  return schema_read();
}

const Json& key(const std::string& section_name, const std::string& name) {
  for (const Json& one : section(section_name)["keys"])
    if (one["name"] == name) return one;
  ADD_FAILURE() << "no key " << name;
  return schema_read();
}

/// Every key of the JSON, with its row.
std::vector<std::pair<const Json*, const Key*>> all_keys() {
  std::vector<std::pair<const Json*, const Key*>> found;
  for (const Json& one : schema_read()["sections"])
    for (const Json& json : one["keys"])
      found.emplace_back(&json, find_key(full_name(json["section"].get<std::string>(), json["name"].get<std::string>())));
  return found;
}

bool reads(const Key& row, const std::string& typed, UnitSystem system) {
  const toml::table document = toml::parse("v = " + typed);
  ProblemList problems("test", {});
  const toml::node& node = *document.get("v");
  if (row.kind == Kind::uncertainty) return read_uncertainty(row, node, std::nullopt, system, problems).has_value();
  if (declares_uncertainty(row, node)) return true;
  return read_value(row, node, system, problems).has_value();
}

TEST(SchemaJson, HoldsEveryRowOnceInOrder) {
  std::set<std::string> seen;
  std::vector<const Key*> order;
  for (const auto& [json, row] : all_keys()) {
    ASSERT_NE(row, nullptr) << *json;
    EXPECT_TRUE(seen.insert(full_name(row->section, row->name)).second) << *json;
    if (!order.empty() && order.back()->section == row->section) {
      EXPECT_LT(order.back(), row) << *json;
    }
    order.push_back(row);
  }
  for (const Json& one : schema_read()["sections"]) {
    const auto name = one["name"].get<std::string>();
    if (name.empty()) continue;
    EXPECT_TRUE(seen.insert(name).second) << name;
    EXPECT_EQ(find_key(name)->kind == Kind::tables, one["is_list"].get<bool>()) << name;
  }
  EXPECT_EQ(seen.size(), schema().size());
}

TEST(SchemaJson, SectionsStandBeforeThoseBelowThem) {
  std::vector<std::string> names;
  for (const Json& one : schema_read()["sections"]) {
    const auto name = one["name"].get<std::string>();
    if (!name.empty()) {
      EXPECT_NE(std::find(names.begin(), names.end(), one["parent"].get<std::string>()), names.end()) << name;
    }
    names.push_back(name);
  }
  const auto place = [&](const char* name) { return std::find(names.begin(), names.end(), name) - names.begin(); };
  EXPECT_LT(place("crest"), place("gates"));
  EXPECT_LT(place("gates.rules"), place("chute"));
  EXPECT_LT(place("river.bed"), place("floods"));
  EXPECT_EQ(section("river.bed")["title"], "Bed");
  EXPECT_EQ(section("river.survey")["group"], "tailwater");
}

TEST(SchemaJson, EveryOfferedUnitIsRead) {
  int tried = 0;
  for (const auto& [json, row] : all_keys()) {
    if ((*json)["units"].is_null()) continue;
    for (const char* system : {"si", "us"})
      for (const Json& unit : (*json)["units"][system]) {
        const auto symbol = unit.get<std::string>();
        ++tried;
        if (symbol == "H:1V") {
          EXPECT_TRUE(reads(*row, fmt::format("\"{}{}\"", row->range.contains(2.0) ? 2 : 200, symbol), UnitSystem::si))
              << *json;
          continue;
        }
        const auto quantity = parse_quantity("1 " + symbol);
        ASSERT_TRUE(quantity.has_value()) << *json << symbol;
        EXPECT_TRUE(quantity->dimension == row->dimension) << *json << symbol;
      }
    if (row->dimension == dimension::none) continue;
    EXPECT_EQ((*json)["units"]["si"].front(), unit_symbol(row->dimension, UnitSystem::si));
    EXPECT_EQ((*json)["units"]["us"].front(), unit_symbol(row->dimension, UnitSystem::us));
  }
  EXPECT_GT(tried, 200);
}

TEST(SchemaJson, UnitsOfTheTrade) {
  EXPECT_THAT(key("crest", "level")["units"]["si"], ElementsAre("m", "cm", "mm", "hm", "km"));
  EXPECT_THAT(key("crest", "level")["units"]["us"], ElementsAre("ft", "in", "yd", "mi"));
  EXPECT_THAT(key("discharges", "design_flood")["units"]["si"], ElementsAre("m3/s"));
  EXPECT_THAT(key("discharges", "design_flood")["units"]["us"], ElementsAre("ft3/s"));
  EXPECT_THAT(key("outlets", "area")["units"]["si"], ElementsAre("m2", "ha"));
  EXPECT_THAT(key("outlets", "area")["units"]["us"], ElementsAre("ft2", "acre"));
  EXPECT_THAT(key("floods.inflows", "time_to_peak")["units"]["us"], ElementsAre("s", "min", "h", "d"));
  EXPECT_TRUE(key("gates", "coefficient")["units"]["si"].empty());
  EXPECT_TRUE(key("crest", "shape")["units"].is_null());
}

TEST(SchemaJson, RangesInBothSystems) {
  const Json& level = key("crest", "level")["range"];
  EXPECT_EQ(level["si"], (Json{{"lowest", -500.0}, {"highest", 9000.0}, {"unit", "m"}}));
  EXPECT_DOUBLE_EQ(level["us"]["highest"].get<double>(), 9000.0 / 0.3048);
  EXPECT_EQ(level["us"]["unit"], "ft");
  EXPECT_FALSE(level["excludes_lowest"].get<bool>());
  const Json& width = key("crest", "net_width")["range"];
  EXPECT_EQ(width["si"]["lowest"], 0.0);
  EXPECT_TRUE(width["excludes_lowest"].get<bool>());
  EXPECT_EQ(key("crest", "sidewall_angle")["range"]["us"]["unit"], "deg");
  EXPECT_TRUE(key("project", "name")["range"].is_null());
}

/// The limits themselves are read, and what lies beyond is not: the form and the reader agree.
TEST(SchemaJson, TheReaderHoldsTheSameRange) {
  int tried = 0;
  for (const auto& [json, row] : all_keys()) {
    const Json& range = (*json)["range"];
    if (range.is_null() || row->kind == Kind::side_slope || row->kind == Kind::whole_number) continue;
    const Json& si = range["si"];
    const auto typed = [&](double value) {
      return row->kind == Kind::quantities ? fmt::format("[{:.15g}]", value) : fmt::format("{:.15g}", value);
    };
    const double highest = si["highest"].get<double>();
    EXPECT_TRUE(reads(*row, typed(highest), UnitSystem::si)) << *json;
    EXPECT_FALSE(reads(*row, typed(highest + 1.0), UnitSystem::si)) << *json;
    if (range["excludes_lowest"].get<bool>()) {
      EXPECT_FALSE(reads(*row, typed(0.0), UnitSystem::si)) << *json;
    }
    const double lowest = si["lowest"].get<double>();
    EXPECT_FALSE(reads(*row, typed(lowest - 1.0), UnitSystem::si)) << *json;
    if (!range["excludes_lowest"].get<bool>()) {
      EXPECT_TRUE(reads(*row, typed(lowest), UnitSystem::si)) << *json;
    }
    ++tried;
  }
  EXPECT_GT(tried, 60);
}

TEST(SchemaJson, ExamplesAndPresetsAreRead) {
  for (const auto& [json, row] : all_keys()) {
    for (const char* name : {"example_si", "preset"}) {
      const Json& typed = (*json)[name];
      EXPECT_TRUE(typed.is_null() || reads(*row, typed, UnitSystem::si)) << *json;
    }
    if (const Json& typed = (*json)["example_us"]; !typed.is_null()) {
      EXPECT_TRUE(reads(*row, typed, UnitSystem::us)) << *json;
    }
    EXPECT_FALSE((*json)["help"].get<std::string>().empty()) << *json;
    EXPECT_FALSE((*json)["example_si"].is_null()) << *json;
  }
}

TEST(SchemaJson, ConditionsNameAChoiceOfTheirSection) {
  int conditions = 0;
  for (const auto& [json, row] : all_keys()) {
    const Json& condition = (*json)["only_for"];
    if (condition.is_null()) continue;
    ++conditions;
    const Json& chooser = key(std::string(row->section), condition["key"]);
    EXPECT_EQ(chooser["kind"], "choice");
    EXPECT_FALSE(condition["words"].empty());
    for (const Json& word : condition["words"]) {
      const Json& choices = chooser["choices"];
      EXPECT_NE(std::find(choices.begin(), choices.end(), word), choices.end()) << *json;
    }
  }
  EXPECT_GT(conditions, 10);
  EXPECT_THAT(key("crest", "sidewall_angle")["only_for"]["words"], ElementsAre("labyrinth"));
}

TEST(SchemaJson, UncertaintyAndFiles) {
  EXPECT_TRUE(key("crest", "design_head")["may_be_uncertain"].get<bool>());
  EXPECT_FALSE(key("crest", "shape")["may_be_uncertain"].get<bool>());
  EXPECT_THAT(key("crest", "design_head")["words"],
              ElementsAre("value", "distribution", "cov", "deviation", "lowest", "highest", "uncertainty"));
  EXPECT_THAT(key("river.rating", "uncertainty")["words"],
              ElementsAre("distribution", "cov", "deviation", "lowest", "highest", "uncertainty"));
  EXPECT_EQ(key("river.section", "manning_n")["words"].front(), "low");
  EXPECT_TRUE(key("reservoir", "file")["is_file"].get<bool>());
  EXPECT_FALSE(key("reservoir", "freeboard")["is_file"].get<bool>());
  const Json& uncertainty = schema_read()["uncertainty"];
  EXPECT_THAT(uncertainty["distributions"], ElementsAre("normal", "lognormal", "triangular", "uniform"));
  EXPECT_EQ(uncertainty["recommended"].size(), site::recommended_uncertainties().size());
}

}  // namespace
}  // namespace quell::io
