// Units at the edges: what is read, what is refused and why, what is printed.
#include "quell/base/units.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <array>
#include <cmath>
#include <locale>
#include <random>
#include <string>

namespace quell {

void PrintTo(const Dimension& d, std::ostream* out) {
  *out << "L" << d.length << " M" << d.mass << " T" << d.time;
}

namespace {

using ::testing::HasSubstr;

Quantity read(std::string_view text) {
  const auto quantity = parse_quantity(text);
  EXPECT_TRUE(quantity.has_value()) << text << ": " << (quantity ? "" : quantity.error().message);
  return quantity.value_or(Quantity{});
}

std::string refusal(std::string_view text) {
  const auto quantity = parse_quantity(text);
  EXPECT_FALSE(quantity.has_value()) << text;
  return quantity ? "" : quantity.error().message;
}

TEST(UnitsRead, ConvertsExactlyByDefinition) {
  struct Row {
    const char* text;
    double si;
    Dimension dimension;
  };
  // International foot 0.3048 m, pound 0.45359237 kg, standard gravity 9.80665 m/s2; the products are worked by hand.
  const Row rows[] = {
      {"1 ft", 0.3048, dimension::length},
      {"1 in", 0.0254, dimension::length},
      {"1 yd", 0.9144, dimension::length},
      {"1 mi", 1609.344, dimension::length},
      {"0.6 mm", 0.0006, dimension::length},
      {"25 cm", 0.25, dimension::length},
      {"1.5 km", 1500.0, dimension::length},
      {"1 ft2", 0.09290304, dimension::area},
      {"3 ha", 30000.0, dimension::area},
      {"1 acre", 4046.8564224, dimension::area},
      {"1 ft3", 0.028316846592, dimension::volume},
      {"1 yd3", 0.764554857984, dimension::volume},
      {"1 gal", 0.003785411784, dimension::volume},
      {"1 acre-ft", 1233.48183754752, dimension::volume},
      {"250 L", 0.25, dimension::volume},
      {"2.5 hm3", 2.5e6, dimension::volume},
      {"2 h", 7200.0, dimension::time},
      {"2 hr", 7200.0, dimension::time},
      {"1.5 day", 129600.0, dimension::time},
      {"1 ft3/s", 0.028316846592, dimension::discharge},
      {"1 cfs", 0.028316846592, dimension::discharge},
      {"60 L/min", 0.001, dimension::discharge},
      {"1 cfs/ft", 0.09290304, dimension::unit_discharge},
      {"1 m3/s/m", 1.0, dimension::unit_discharge},
      {"1 ft/s", 0.3048, dimension::velocity},
      {"36 km/h", 10.0, dimension::velocity},
      {"1 lbf", 4.4482216152605, dimension::force},
      {"1 kip", 4448.2216152605, dimension::force},
      {"1 slug ft/s2", 4.4482216152605, dimension::force},
      {"1 t", 1000.0, {0, 6, 0}},
      {"1 bar", 1e5, dimension::pressure},
      {"1 psi", 4.4482216152605 / (0.0254 * 0.0254), dimension::pressure},
      {"144 psf", 4.4482216152605 / (0.0254 * 0.0254), dimension::pressure},
      {"1 hp", 745.69987158227022, dimension::power},
      {"1 N m/s", 1.0, dimension::power},
      {"1 lb/ft3", 16.018463373960142, dimension::density},
      {"24 kN/m3", 24000.0, dimension::unit_weight},
      {"0.013 s/m^(1/3)", 0.013, dimension::manning},
      {"0.013 s m^(-1/3)", 0.013, dimension::manning},
      {"2.1 m^0.5/s", 2.1, dimension::weir_coefficient},
      {"2.1 m^(1/2)/s", 2.1, dimension::weir_coefficient},
      {"12 %", 0.12, dimension::none},
      {"180 deg", 3.14159265358979323846, dimension::none},
      {"90°", 1.57079632679489661923, dimension::none},
      {"0.5 rad", 0.5, dimension::none},
  };
  for (const auto& row : rows) {
    const auto quantity = read(row.text);
    EXPECT_DOUBLE_EQ(quantity.value, row.si) << row.text;
    EXPECT_EQ(quantity.dimension, row.dimension) << row.text;
    EXPECT_TRUE(quantity.has_unit) << row.text;
  }
}

TEST(UnitsRead, CubicFootPerSecondIsTheNearestDouble) {
  EXPECT_EQ(read("1 ft3/s").value, 0.028316846592);
}

TEST(UnitsRead, TakesTheManySpellingsOfOneUnit) {
  for (const char* text : {"7 m3/s", "7 m^3/s", "7 m³/s", "7 m3 s-1", "7 m³·s⁻¹", "7 m^3*s^-1", "7 m3 / s", "7m3/s",
                           "7 (m3)/(s)", "  7  m3/s  ", "7\u00a0m³/s", "+7 m3 s^(-1)", "7.0e0 m3/s", "7 m m2 /s", "7 cumec"}) {
    EXPECT_DOUBLE_EQ(read(text).value, 7.0) << text;
    EXPECT_EQ(read(text).dimension, dimension::discharge) << text;
  }
}

TEST(UnitsRead, GroupsThousandsBySpaceOrUnderscore) {
  EXPECT_DOUBLE_EQ(read("18 500 ft3/s").value, read("18500 ft3/s").value);
  EXPECT_DOUBLE_EQ(read("18_500 ft3/s").value, read("18500 ft3/s").value);
  EXPECT_DOUBLE_EQ(read("1 234 567.25 m").value, 1234567.25);
  EXPECT_DOUBLE_EQ(read("18\u202f500 m").value, 18500.0);
}

TEST(UnitsRead, BareNumberHasNoUnit) {
  const auto bare = read("-412.5");
  EXPECT_DOUBLE_EQ(bare.value, -412.5);
  EXPECT_FALSE(bare.has_unit);
  EXPECT_TRUE(read("12 %").has_unit);
  EXPECT_DOUBLE_EQ(read(".5").value, 0.5);
  EXPECT_DOUBLE_EQ(read("\u22123e-2 m").value, -0.03);
}

TEST(UnitsRefuse, CommaSaysHowToWriteIt) {
  EXPECT_THAT(refusal("412,5 m"), HasSubstr("'412.5'"));
  EXPECT_THAT(refusal("18,500 ft3/s"), HasSubstr("'18500'"));
  EXPECT_THAT(refusal("18,500 ft3/s"), HasSubstr("'18.500'"));
  EXPECT_EQ(parse_quantity("412,5 m").error().position, 3U);
}

TEST(UnitsRefuse, BadGrouping) {
  for (const char* text : {"12 5 m", "1 2345 m", "1234 567 m", "1_2 m", "1 234_567 m", "5 1/s", "1.5 000 m"})
    EXPECT_THAT(refusal(text), HasSubstr("18 500")) << text;
}

TEST(UnitsRefuse, WhatIsNoFiniteNumber) {
  for (const char* text : {"nan", "inf", "-inf", "Infinity m", "NaN m"})
    EXPECT_THAT(refusal(text), HasSubstr("finite")) << text;
  EXPECT_THAT(refusal("1e999 m"), HasSubstr("too large"));
  EXPECT_THAT(refusal("1e308 km"), HasSubstr("too large"));
  for (const char* text : {"", "   ", "m", "-", "--5 m", ".", "ft 3"})
    EXPECT_THAT(refusal(text), HasSubstr("begins with a number")) << text;
}

TEST(UnitsRefuse, UnknownNameGetsTheNearest) {
  EXPECT_THAT(refusal("3 fet"), HasSubstr("'ft'"));
  EXPECT_THAT(refusal("3 foots"), HasSubstr("'foot'"));
  EXPECT_THAT(refusal("3 KN"), HasSubstr("'kN'"));
  EXPECT_THAT(refusal("3 M"), HasSubstr("'m'"));
  EXPECT_THAT(refusal("3 m3/sek"), HasSubstr("'sec'"));
  EXPECT_THAT(refusal("3 kPaa"), HasSubstr("'kPa'"));
  EXPECT_EQ(parse_quantity("3 m3/sek").error().position, 5U);
}

TEST(UnitsRefuse, UnclearOrImpossibleUnits) {
  EXPECT_THAT(refusal("3 kg/m s2"), HasSubstr("parentheses"));
  EXPECT_THAT(refusal("3 m^1/2"), HasSubstr("m^(1/2)"));
  EXPECT_THAT(refusal("3 m^0.3"), HasSubstr("sixths"));
  EXPECT_THAT(refusal("3 m^99"), HasSubstr("power"));
  EXPECT_THAT(refusal("3 (m^12)^12"), HasSubstr("too large"));
  EXPECT_THAT(refusal("3 (m^(1/2))^(1/2)"), HasSubstr("sixths"));
  EXPECT_THAT(refusal("3 m/"), HasSubstr("too early"));
  EXPECT_THAT(refusal("3 (m/s"), HasSubstr("')'"));
  EXPECT_THAT(refusal("3 m)"), HasSubstr("not understood"));
  EXPECT_THAT(refusal("3 m;"), HasSubstr("not understood"));
  EXPECT_THAT(refusal(std::string("3 ") + std::string(5000, '(')), HasSubstr("too many"));
}

bool is_utf8(std::string_view text) {
  for (std::size_t i = 0; i < text.size();) {
    const auto first = static_cast<unsigned char>(text[i]);
    const std::size_t more = first < 0x80 ? 0 : first >= 0xF0 ? 3 : first >= 0xE0 ? 2 : first >= 0xC2 ? 1 : 9;
    if (i + more >= text.size() || more == 9) return false;
    for (std::size_t k = 1; k <= more; ++k)
      if ((static_cast<unsigned char>(text[i + k]) & 0xC0U) != 0x80U) return false;
    i += more + 1;
  }
  return true;
}

TEST(UnitsRead, AnyBytesGiveAQuantityOrASentence) {
  std::mt19937 random(20260101);  // fixed, so that a failure can be seen again
  const std::array<std::string_view, 24> pieces = {"1",    "18 500", "m", "ft", "/", "^", "(",        ")",
                                                   "-",    "·",      "³", "⁻",  "½", " ", "e-3",      "\xff",
                                                   "\xc2", "%",      "_", "kN", ".", ",", "\xe2\x81", "0"};
  int understood = 0;
  for (int round = 0; round < 20000; ++round) {
    std::string text = round % 2 == 0 ? "" : "7 ";
    const auto count = random() % 8;
    for (unsigned i = 0; i < count; ++i) {
      if (random() % 8 == 0)
        text += static_cast<char>(random() % 256);
      else
        text += pieces[random() % pieces.size()];
    }
    const auto quantity = parse_quantity(text);
    if (quantity) {
      ++understood;
      EXPECT_TRUE(std::isfinite(quantity->value)) << text;
    } else {
      EXPECT_LE(quantity.error().position, text.size());
      EXPECT_TRUE(is_utf8(quantity.error().message)) << quantity.error().message;
      EXPECT_FALSE(quantity.error().message.empty());
    }
  }
  EXPECT_GT(understood, 1000);  // else the pieces test nothing but refusals
}

const Dimension printed_dimensions[] = {dimension::length,
                                        dimension::area,
                                        dimension::volume,
                                        dimension::time,
                                        dimension::velocity,
                                        dimension::acceleration,
                                        dimension::discharge,
                                        dimension::unit_discharge,
                                        dimension::weir_coefficient,
                                        dimension::density,
                                        dimension::pressure,
                                        dimension::force,
                                        dimension::unit_weight,
                                        dimension::power,
                                        {0, 6, 0},
                                        {12, 6, -12},
                                        {0, 6, -12},
                                        {0, 0, -6},
                                        {-6, 0, 0},
                                        {-6, 6, -6},
                                        {5, -3, 2}};

TEST(UnitsPrint, EverySymbolAndLabelReadsBackToItsDimensionAndFactor) {
  for (const auto system : {UnitSystem::si, UnitSystem::us}) {
    for (const auto& dimension : printed_dimensions) {
      for (const auto& unit : {unit_symbol(dimension, system), unit_label(dimension, system)}) {
        const auto quantity = read("7 " + unit);
        EXPECT_EQ(quantity.dimension, dimension) << unit;
        EXPECT_DOUBLE_EQ(quantity.value, from_unit(7.0, dimension, system)) << unit;
        EXPECT_DOUBLE_EQ(to_unit(quantity.value, dimension, system), 7.0) << unit;
      }
    }
  }
}

TEST(UnitsPrint, TradesUnits) {
  EXPECT_EQ(unit_symbol(dimension::discharge, UnitSystem::si), "m3/s");
  EXPECT_EQ(unit_symbol(dimension::discharge, UnitSystem::us), "ft3/s");
  EXPECT_EQ(unit_label(dimension::discharge, UnitSystem::si), "m³/s");
  EXPECT_EQ(unit_symbol(dimension::volume, UnitSystem::us), "yd3");
  EXPECT_EQ(unit_symbol(dimension::pressure, UnitSystem::si), "kPa");
  EXPECT_EQ(unit_symbol(dimension::pressure, UnitSystem::us), "psf");
  EXPECT_EQ(unit_symbol(dimension::power, UnitSystem::us), "hp");
  EXPECT_EQ(unit_symbol(dimension::unit_weight, UnitSystem::us), "lbf/ft3");
  EXPECT_EQ(unit_symbol(dimension::none, UnitSystem::us), "");
}

TEST(UnitsPrint, ManningsNIsTheSameNumberInBothSystems) {
  EXPECT_EQ(format_quantity(0.013, dimension::manning, UnitSystem::si, 2), "0.013");
  EXPECT_EQ(format_quantity(0.013, dimension::manning, UnitSystem::us, 2), "0.013");
}

TEST(UnitsPrint, KeepsTheSignificantDigits) {
  const auto plain = [](double value, int digits = 4) { return format_number(value, dimension::none, UnitSystem::si, digits); };
  EXPECT_EQ(plain(412.5), "412.5");
  EXPECT_EQ(plain(2.0), "2.000");
  EXPECT_EQ(plain(0.6), "0.6000");
  EXPECT_EQ(plain(9.99996), "10.00");
  EXPECT_EQ(plain(-0.00012345), "-0.0001234");
  EXPECT_EQ(plain(0.0001), "0.0001000");
  EXPECT_EQ(plain(12345.6), "12346");  // digits before the point are never rounded away
  EXPECT_EQ(plain(9999999.0), "1.000e+07");
  EXPECT_EQ(plain(9999000.0), "9999000");
  EXPECT_EQ(plain(1.004e-6), "1.004e-06");
  EXPECT_EQ(plain(0.0), "0");
  EXPECT_EQ(plain(-0.0), "0");
}

TEST(UnitsPrint, FixedPlacesAndQuantities) {
  EXPECT_EQ(format_fixed(1234.567, dimension::length, UnitSystem::si, 2), "1234.57");
  EXPECT_EQ(format_fixed(-0.001, dimension::length, UnitSystem::si, 2), "0.00");
  EXPECT_EQ(format_fixed(-0.006, dimension::length, UnitSystem::si, 2), "-0.01");
  EXPECT_EQ(format_quantity(0.3048, dimension::length, UnitSystem::us), "1.000 ft");
  EXPECT_EQ(format_quantity(100.0, dimension::discharge, UnitSystem::us), "3531 ft³/s");
  EXPECT_EQ(format_quantity(0.25, dimension::none, UnitSystem::us, 2), "0.25");
}

struct DecimalComma : std::numpunct<char> {
  char do_decimal_point() const override { return ','; }
  char do_thousands_sep() const override { return '.'; }
  std::string do_grouping() const override { return "\3"; }
};

TEST(UnitsPrint, DoesNotHeedTheLocale) {
  const std::locale before = std::locale::global(std::locale(std::locale::classic(), new DecimalComma));
  const std::string printed = format_number(14112.5, dimension::none, UnitSystem::si, 6);
  const std::string fixed = format_fixed(14112.5, dimension::none, UnitSystem::si, 1);
  const double value = parse_quantity("14112.5 m").value_or(Quantity{}).value;
  std::locale::global(before);
  EXPECT_EQ(printed, "14112.5");
  EXPECT_EQ(fixed, "14112.5");
  EXPECT_DOUBLE_EQ(value, 14112.5);
}

TEST(UnitsPrint, NamesOfDimensions) {
  EXPECT_EQ(name_of(dimension::length), "length");
  EXPECT_EQ(name_of(dimension::discharge), "discharge");
  EXPECT_EQ(name_of(dimension::velocity), "velocity");
  EXPECT_EQ(name_of({-6, 6, -6}), "kg m^-1 s^-1");
  EXPECT_EQ(name_of({5, -3, 2}), "kg^(-1/2) m^(5/6) s^(1/3)");
  EXPECT_THAT(example_units(dimension::length), HasSubstr("m, ft"));
  EXPECT_FALSE(name_of(dimension::none).empty());
}

TEST(UnitsPrint, ExamplesAreOfTheirDimension) {
  for (const auto& dimension : printed_dimensions) {
    std::string rest = example_units(dimension);
    while (!rest.empty()) {
      const auto comma = rest.find(", ");
      EXPECT_EQ(read("1 " + rest.substr(0, comma)).dimension, dimension) << rest;
      rest = comma == std::string::npos ? "" : rest.substr(comma + 2);
    }
  }
}

// JSON holds SI: its unit must be that of the number beside it, never a thousand of it.
TEST(PrintedUnits, CoherentSymbolsStandForOne) {
  for (const auto& dimension : printed_dimensions) {
    const auto symbol = coherent_symbol(dimension);
    EXPECT_DOUBLE_EQ(read("1 " + symbol).value, 1.0) << symbol;
  }
  EXPECT_EQ(coherent_symbol(dimension::force), "N");
  EXPECT_EQ(coherent_symbol(dimension::pressure), "Pa");
  EXPECT_EQ(coherent_symbol(dimension::discharge), "m3/s");
}

}  // namespace
}  // namespace quell
