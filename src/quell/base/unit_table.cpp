#include "quell/base/unit_table.h"

#include <algorithm>
#include <cmath>
#include <vector>

namespace quell::unit_table {
namespace {

using namespace dimension;

constexpr Dimension mass{0, 6, 0};
constexpr Dimension energy{12, 6, -12};
constexpr Dimension force_per_length{0, 6, -12};
constexpr Dimension frequency{0, 0, -6};
constexpr Dimension per_length{-6, 0, 0};

constexpr long double inch = 0.0254L;
constexpr long double yard = 0.9144L;
constexpr long double pi = 3.14159265358979323846264338327950288L;

constexpr NamedUnit names[] = {
    {"m", 1.0L, length},
    {"cm", 0.01L, length},
    {"mm", 0.001L, length},
    {"hm", 100.0L, length},
    {"km", 1000.0L, length},
    {"metre", 1.0L, length},
    {"metres", 1.0L, length},
    {"meter", 1.0L, length},
    {"meters", 1.0L, length},
    {"in", inch, length},
    {"inch", inch, length},
    {"inches", inch, length},
    {"ft", foot, length},
    {"foot", foot, length},
    {"feet", foot, length},
    {"yd", yard, length},
    {"mi", 1609.344L, length},
    {"mile", 1609.344L, length},
    {"miles", 1609.344L, length},
    {"ha", 10000.0L, area},
    {"acre", 4046.8564224L, area},
    {"acres", 4046.8564224L, area},
    {"L", 0.001L, volume},
    {"l", 0.001L, volume},
    {"gal", 0.003785411784L, volume},
    {"s", 1.0L, dimension::time},
    {"sec", 1.0L, dimension::time},
    {"min", 60.0L, dimension::time},
    {"h", 3600.0L, dimension::time},
    {"hr", 3600.0L, dimension::time},
    {"hour", 3600.0L, dimension::time},
    {"hours", 3600.0L, dimension::time},
    {"d", 86400.0L, dimension::time},
    {"day", 86400.0L, dimension::time},
    {"days", 86400.0L, dimension::time},
    {"kg", 1.0L, mass},
    {"t", 1000.0L, mass},
    {"lb", pound, mass},
    {"slug", pound_force / foot, mass},
    {"N", 1.0L, force},
    {"kN", 1.0e3L, force},
    {"MN", 1.0e6L, force},
    {"kgf", 9.80665L, force},
    {"lbf", pound_force, force},
    {"kip", 1000.0L * pound_force, force},
    {"Pa", 1.0L, pressure},
    {"kPa", 1.0e3L, pressure},
    {"MPa", 1.0e6L, pressure},
    {"bar", 1.0e5L, pressure},
    {"psi", pound_force / (inch * inch), pressure},
    {"psf", pound_force / (foot * foot), pressure},
    {"J", 1.0L, energy},
    {"kJ", 1.0e3L, energy},
    {"W", 1.0L, power},
    {"kW", 1.0e3L, power},
    {"MW", 1.0e6L, power},
    {"hp", horsepower, power},
    {"cfs", foot* foot* foot, discharge},
    {"cumec", 1.0L, discharge},
    {"cumecs", 1.0L, discharge},
    {"rad", 1.0L, none},
    {"deg", pi / 180.0L, none},
    {"\u00b0", pi / 180.0L, none},
    {"%", 0.01L, none},
};

constexpr PrintedUnit rows[] = {
    {none, "number", "", "", 1.0L, "", "", 1.0L, "a bare number, %, deg"},
    {length, "length", "m", "m", 1.0L, "ft", "ft", foot, "m, ft"},
    {area, "area", "m2", "m²", 1.0L, "ft2", "ft²", foot* foot, "m2, ft2"},
    {volume, "volume", "m3", "m³", 1.0L, "yd3", "yd³", yard* yard* yard, "m3, yd3, ft3"},
    {dimension::time, "time", "s", "s", 1.0L, "s", "s", 1.0L, "s, min, h"},
    {velocity, "velocity", "m/s", "m/s", 1.0L, "ft/s", "ft/s", foot, "m/s, ft/s"},
    {acceleration, "acceleration", "m/s2", "m/s²", 1.0L, "ft/s2", "ft/s²", foot, "m/s2, ft/s2"},
    {discharge, "discharge", "m3/s", "m³/s", 1.0L, "ft3/s", "ft³/s", foot* foot* foot, "m3/s, ft3/s"},
    {unit_discharge, "discharge per width", "m2/s", "m²/s", 1.0L, "ft2/s", "ft²/s", foot* foot, "m2/s, ft2/s"},
    {weir_coefficient, "weir coefficient", "m^0.5/s", "m½/s", 1.0L, "ft^0.5/s", "ft½/s", 0.55208694967369059972145644711107L,
     "m^0.5/s, ft^0.5/s"},
    {manning, "Manning's n", "", "", 1.0L, "", "", 1.0L, "a bare number, s/m^(1/3)"},
    {density, "density", "kg/m3", "kg/m³", 1.0L, "lb/ft3", "lb/ft³", pound / (foot * foot * foot), "kg/m3, lb/ft3"},
    {pressure, "pressure", "kPa", "kPa", 1.0e3L, "psf", "psf", pound_force / (foot * foot), "kPa, psf, psi"},
    {force, "force", "kN", "kN", 1.0e3L, "kip", "kip", 1000.0L * pound_force, "kN, kip, lbf"},
    {unit_weight, "unit weight", "kN/m3", "kN/m³", 1.0e3L, "lbf/ft3", "lbf/ft³", pound_force / (foot * foot * foot),
     "kN/m3, lbf/ft3"},
    {power, "power", "kW", "kW", 1.0e3L, "hp", "hp", horsepower, "kW, hp"},
    {mass, "mass", "kg", "kg", 1.0L, "lb", "lb", pound, "kg, lb"},
    {energy, "energy or moment", "kN m", "kN·m", 1.0e3L, "kip ft", "kip·ft", 1000.0L * pound_force* foot, "kN m, lbf ft"},
    {force_per_length, "force per width", "kN/m", "kN/m", 1.0e3L, "lbf/ft", "lbf/ft", pound_force / foot, "kN/m, lbf/ft"},
    {frequency, "frequency", "s^-1", "s⁻¹", 1.0L, "s^-1", "s⁻¹", 1.0L, "s^-1"},
    {per_length, "number per length", "m^-1", "m⁻¹", 1.0L, "ft^-1", "ft⁻¹", 1.0L / foot, "m^-1, ft^-1"},
};

char lower(char c) {
  return c >= 'A' && c <= 'Z' ? static_cast<char>(c - 'A' + 'a') : c;
}

// Edits that turn one spelling into the other, in halves: a change of case costs half an edit.
int spelling_distance(std::string_view a, std::string_view b) {
  std::vector<int> row(b.size() + 1);
  for (std::size_t j = 0; j < row.size(); ++j) row[j] = 2 * static_cast<int>(j);
  for (const char letter : a) {
    int diagonal = row[0];
    row[0] += 2;
    for (std::size_t j = 0; j < b.size(); ++j) {
      const int change = letter == b[j] ? 0 : (lower(letter) == lower(b[j]) ? 1 : 2);
      const int best = std::min({diagonal + change, row[j] + 2, row[j + 1] + 2});
      diagonal = row[j + 1];
      row[j + 1] = best;
    }
  }
  return row.back();
}

}  // namespace

std::span<const NamedUnit> all_names() {
  return names;
}
std::span<const PrintedUnit> all_printed() {
  return rows;
}

const NamedUnit* find(std::string_view name) {
  for (const auto& unit : names)
    if (unit.name == name) return &unit;
  return nullptr;
}

std::string_view nearest(std::string_view name) {
  std::string_view best = names[0].name;
  int least = spelling_distance(name.substr(0, 32), best);
  for (const auto& unit : names) {
    const int distance = spelling_distance(name.substr(0, 32), unit.name);
    if (distance >= least) continue;
    least = distance;
    best = unit.name;
  }
  return best;
}

const PrintedUnit* printed(Dimension dimension) {
  for (const auto& row : rows)
    if (row.dimension == dimension) return &row;
  return nullptr;
}

long double power_of(long double base, int sixths) {
  if (sixths % 6 != 0) return std::pow(base, static_cast<long double>(sixths) / 6.0L);
  long double result = 1.0L;
  for (int i = 0; i < std::abs(sixths) / 6; ++i) result *= base;
  return sixths < 0 ? 1.0L / result : result;
}

}  // namespace quell::unit_table
