// The writer of JSON against nlohmann's library, which reads back what was written and writes the same texts itself.
#include "quell/io/json_writer.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <array>
#include <bit>
#include <cmath>
#include <cstdint>
#include <cstdio>
#include <nlohmann/json.hpp>
#include <random>
#include <vector>

namespace quell::io {
namespace {

using Json = nlohmann::ordered_json;

template <typename Value>
std::string written(const Value& value, JsonNumbers numbers = JsonNumbers::exact) {
  JsonWriter writer(JsonStyle::compact, numbers);
  writer.root().put(value);
  return writer.take();
}

/// As the library writes it, every malformed byte sequence replaced.
std::string by_library(const Json& json, int indent = -1) {
  return json.dump(indent, ' ', false, Json::error_handler_t::replace);
}

/// Objects and arrays in each other, empty ones, and every kind of value. The two below must say the same.
void write_sample(JsonPlace at) {
  JsonObject json(at);
  json.member("name", "two \"basins\"");
  json.member("count", 3);
  json.member("least", -2147483647 - 1);
  json.member("is_set", true);
  json.member("is_held", false);
  json.member("level", 412.25);
  json.member("none", nullptr);
  json.text_or_null("known", "x");
  json.text_or_null("unknown", "");
  json.list("numbers", std::vector<double>{0.5, -1.0});
  json.list("nothing", std::vector<double>{});
  json.list("words", std::array<std::string_view, 2>{"a", ""});
  json.list("rows", std::array<int, 2>{1, 2}, [](JsonPlace place, int item) { place.put({item * 1.0, item * 2.0}); });
  json.list("scaled", std::array<int, 2>{1, 2}, [](JsonPlace place, int item, int factor) { place.put(item * factor); }, 10);
  {
    const JsonObject empty(json.member("empty"));
  }
  {
    JsonObject outer(json.member("outer"));
    JsonArray list(outer.member("list"));
    JsonObject inner(list.item());
    inner.member("deep", true);
  }
  json.member("last", "");
}

Json library_sample() {
  return Json{{"name", "two \"basins\""},
              {"count", 3},
              {"least", -2147483647 - 1},
              {"is_set", true},
              {"is_held", false},
              {"level", 412.25},
              {"none", nullptr},
              {"known", "x"},
              {"unknown", nullptr},
              {"numbers", {0.5, -1.0}},
              {"nothing", Json::array()},
              {"words", {"a", ""}},
              {"rows", Json::array({{1.0, 2.0}, {2.0, 4.0}})},
              {"scaled", {10, 20}},
              {"empty", Json::object()},
              {"outer", {{"list", Json::array({Json{{"deep", true}}})}}},
              {"last", ""}};
}

TEST(JsonWriter, BothStylesAreThoseOfTheLibrary) {
  JsonWriter lines(JsonStyle::lines), compact(JsonStyle::compact);
  write_sample(lines.root());
  write_sample(compact.root());
  EXPECT_EQ(lines.take(), by_library(library_sample(), 1));
  EXPECT_EQ(compact.take(), by_library(library_sample()));
}

TEST(JsonWriter, NumbersAreTheShortestThatReadBack) {
  EXPECT_EQ(written(0.1), "0.1");
  EXPECT_EQ(written(1e-7), "1e-07");
  EXPECT_EQ(written(1e22), "1e+22");
  EXPECT_EQ(written(-0.0), "-0.0");
  EXPECT_EQ(written(0.0), "0.0");
  EXPECT_EQ(written(12.0), "12.0");
  EXPECT_EQ(written(12), "12");
  EXPECT_EQ(written(1.0 / 3.0), "0.3333333333333333");
  EXPECT_EQ(written(5e-324), "5e-324");
  EXPECT_EQ(written(9999999999999998.0), "9999999999999998.0");
  EXPECT_EQ(written(1e16), "1e+16");
}

TEST(JsonWriter, WhatIsNotANumberIsNull) {
  for (const double value : {std::nan(""), HUGE_VAL, -HUGE_VAL}) {
    EXPECT_EQ(written(value), "null");
    EXPECT_EQ(written(value, JsonNumbers::nine_digits), "null");
  }
  EXPECT_EQ(written(number_if(false, 1.5)), "null");
  EXPECT_EQ(written(number_if(true, 1.5)), "1.5");
  EXPECT_EQ(written(above_zero(0.0)), "null");
  EXPECT_EQ(written(above_zero(2.5)), "2.5");
}

TEST(JsonWriter, AnyDoubleReadsBackAsItself) {
  std::mt19937_64 random(20240501);
  for (int i = 0; i < 20000; ++i) {
    const double value = std::bit_cast<double>(random());
    if (!std::isfinite(value)) continue;
    const auto read = Json::parse(written(value)).get<double>();
    ASSERT_EQ(std::bit_cast<std::uint64_t>(read), std::bit_cast<std::uint64_t>(value)) << written(value);
  }
}

TEST(JsonWriter, FewerDigitsWhereAskedFor) {
  EXPECT_EQ(written(1.0 / 3.0, JsonNumbers::nine_digits), "0.333333333");
  EXPECT_EQ(written(2.0 / 3.0 * 1e6, JsonNumbers::nine_digits), "666666.667");
  EXPECT_EQ(written(412.25, JsonNumbers::nine_digits), "412.25");
  EXPECT_EQ(written(12.0, JsonNumbers::nine_digits), "12");
  EXPECT_EQ(written(123456789012.0, JsonNumbers::nine_digits), "1.23456789e+11");
}

/// Near a tie the last digit may differ; among these numbers it does not.
TEST(JsonWriter, NineDigitsAreThoseOfTheCLibrary) {
  std::mt19937_64 random(11);
  std::uniform_real_distribution<double> exponent(-8.0, 14.0);
  for (int i = 0; i < 20000; ++i) {
    const double value = std::pow(10.0, exponent(random)) * (i % 2 == 0 ? 1.0 : -1.0);
    std::array<char, 40> expected{};
    std::snprintf(expected.data(), expected.size(), "%.9g", value);
    ASSERT_EQ(written(value, JsonNumbers::nine_digits), expected.data());
  }
}

TEST(JsonWriter, NineDigitsAtTheBordersOfTheirPowers) {
  EXPECT_EQ(written(0.0001, JsonNumbers::nine_digits), "0.0001");
  EXPECT_EQ(written(0.00001, JsonNumbers::nine_digits), "1e-05");
  EXPECT_EQ(written(0.00012345678949, JsonNumbers::nine_digits), "0.000123456789");
  EXPECT_EQ(written(-0.05, JsonNumbers::nine_digits), "-0.05");
  EXPECT_EQ(written(0.99999999996, JsonNumbers::nine_digits), "1");
  EXPECT_EQ(written(99999999.96, JsonNumbers::nine_digits), "100000000");
  EXPECT_EQ(written(999999999.4, JsonNumbers::nine_digits), "999999999");
  EXPECT_EQ(written(1e9, JsonNumbers::nine_digits), "1e+09");
  EXPECT_EQ(written(0.0, JsonNumbers::nine_digits), "0");
  EXPECT_EQ(written(-0.0, JsonNumbers::nine_digits), "-0");
}

TEST(JsonWriter, TextsAreEscapedAsTheLibraryDoes) {
  std::string controls;
  for (char c = 0; c < 0x30; ++c) controls += c;
  const std::string texts[] = {"",     "plain",        "a \"quoted\" \\ path",    controls,
                               "\x7F", "m³/s – ½ · 𝛼", std::string("nul\0nul", 7)};
  for (const std::string& text : texts) {
    EXPECT_EQ(written(text), by_library(text));
    EXPECT_EQ(Json::parse(written(text)).get<std::string>(), text);
  }
}

TEST(JsonWriter, MalformedUtf8IsReplaced) {
  // Lone continuation, overlong, surrogate, beyond the last code point, cut short at the end and before a good character.
  const std::string_view texts[] = {"\x80", "\xC0\xAF", "\xE0\x80\x80", "\xED\xA0\x80", "\xF4\x90\x80\x80",
                                    "\xFF", "a\xC3",    "\xE2\x82",     "\xE2\x82z",    "\xF0\x9F\x98\"\n"};
  for (const std::string_view text : texts) {
    EXPECT_EQ(written(text), by_library(std::string(text)));
    EXPECT_THAT(written(text), testing::HasSubstr("\xEF\xBF\xBD"));
  }
}

/// Bytes drawn where UTF-8 has its borders, so that good, cut and overlong sequences are all frequent.
TEST(JsonWriter, AnyBytesGiveTheTextOfTheLibrary) {
  const std::string_view bytes = "a\"\x1F\x7F\x80\x8F\x90\x9F\xA0\xBF\xC1\xC2\xDF\xE0\xE1\xED\xEE\xEF\xF0\xF1\xF4\xF5";
  std::mt19937_64 random(7);
  for (int i = 0; i < 20000; ++i) {
    std::string text;
    for (auto length = random() % 12; length > 0; --length) text += bytes[random() % bytes.size()];
    ASSERT_EQ(written(text), by_library(text)) << i;
  }
}

#ifndef NDEBUG
TEST(JsonWriterDeathTest, WrongNestingIsAsserted) {
  JsonWriter writer(JsonStyle::compact);
  EXPECT_DEATH({ writer.take(); }, "has_place_");
  EXPECT_DEATH(
      {
        JsonObject json(writer.root());
        json.member("empty");
        json.member("next", 1);
      },
      "has_place_");
  EXPECT_DEATH(
      {
        JsonObject json(writer.root());
        const JsonObject inner(json.member("inner"));
        json.member("outer", 1);
      },
      "innermost_");
  EXPECT_DEATH(
      {
        writer.root().put(1);
        writer.root().put(2);
      },
      "has_place_");
}
#endif

}  // namespace
}  // namespace quell::io
