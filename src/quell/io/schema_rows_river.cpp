// Rows of [river], [river.rating], [river.section] and [river.gauging].
#include "quell/io/schema_rows.h"

namespace quell::io {
namespace {

using site::TailwaterSource;

void set_rating_level(Draft& d, const Value& v, site::TailwaterCase which) {
  d.site.river.rating.level[site::index_of(which)] = v.numbers;
}

// clang-format off: a table is read in rows
const Key rows[] = {
    {.section = "river", .name = "bed_level", .kind = Kind::quantity, .dimension = dimension::length, .required = true,
     .range = level_range, .example_si = "\"372 m\"", .example_us = "\"1220 ft\"",
     .help = "Level of the river bed at the end of the basin.",
     .set = [](Draft& d, const Value& v) { d.site.river.bed_level = v.number; }},
    {.section = "river", .name = "bed_degradation", .kind = Kind::quantity, .dimension = dimension::length,
     .range = {0.0, 100.0}, .preset = "\"0 m\"", .example_si = "\"0.5 m\"", .example_us = "\"1.5 ft\"",
     .help = "Allowance for the lowering of the river bed; it lowers the low tailwater only.",
     .set = [](Draft& d, const Value& v) { d.site.river.bed_degradation = v.number; }},
    {.section = "river", .name = "lag_allowance", .kind = Kind::quantity, .dimension = dimension::length, .range = {0.0, 50.0},
     .preset = "\"0 m\"", .example_si = "\"0.3 m\"", .example_us = "\"1 ft\"",
     .help = "Tailwater that is still missing when the gates have opened, because the river has yet to fill; it lowers the low "
             "tailwater only.",
     .set = [](Draft& d, const Value& v) { d.site.river.lag_allowance = v.number; }},
    {.section = "river", .name = "rating", .kind = Kind::table, .required = true, .group = "tailwater",
     .help = "Tailwater as a table of level over discharge, from a CSV file or inline.",
     .set = [](Draft& d, const Value&) { d.site.river.source = TailwaterSource::rating; }},
    {.section = "river", .name = "section", .kind = Kind::table, .required = true, .group = "tailwater",
     .help = "Tailwater as the normal depth of a trapezoidal reach, instead of a rating.",
     .set = [](Draft& d, const Value&) { d.site.river.source = TailwaterSource::section; }},
    {.section = "river", .name = "gauging", .kind = Kind::table, .required = true, .group = "tailwater",
     .help = "Tailwater as a power law through measured pairs of level and discharge, instead of a rating.",
     .set = [](Draft& d, const Value&) { d.site.river.source = TailwaterSource::gauging; }},
    {.section = "river", .name = "survey", .kind = Kind::table, .required = true, .group = "tailwater",
     .help = "Tailwater from water-surface profiles through surveyed sections, instead of a rating. With one section: normal or "
             "critical depth in it.",
     .set = [](Draft& d, const Value&) { d.site.river.source = TailwaterSource::survey; }},
    {.section = "river", .name = "bed", .kind = Kind::table, .all_or_nothing = true,
     .help = "Bed material and geometry, for estimates of how far the bed may sink. They stand in for bed_degradation where that is "
             "not given.",
     .set = [](Draft& d, const Value&) { d.site.river.bed.given = true; }},

    {.section = "river.rating", .name = "file", .kind = Kind::file, .required = true, .group = "rating",
     .example_si = "\"tailwater.csv\"",
     .help = "CSV file whose first row heads the columns with their units: discharge (m3/s), low (m), expected (m), high (m). "
             "Only discharge and expected (or level) are required; the columns may stand in any order.",
     .set = kept_elsewhere},
    {.section = "river.rating", .name = "discharge", .kind = Kind::quantities, .dimension = dimension::discharge,
     .required = true, .group = "rating", .range = {0.0, 1e6}, .example_si = "[\"10 m3/s\", \"100 m3/s\"]",
     .example_us = "[\"400 ft3/s\", \"4000 ft3/s\"]",
     .help = "Discharges of an inline table, increasing.",
     .set = [](Draft& d, const Value& v) { d.site.river.rating.discharge = v.numbers; }},
    {.section = "river.rating", .name = "level", .kind = Kind::quantities, .dimension = dimension::length, .group = "level",
     .range = level_range, .example_si = "[\"373 m\", \"375.2 m\"]", .example_us = "[\"1223 ft\", \"1231 ft\"]",
     .help = "Tailwater levels of an inline table, where only one level is known for each discharge.",
     .set = [](Draft& d, const Value& v) { set_rating_level(d, v, site::TailwaterCase::expected); }},
    {.section = "river.rating", .name = "low", .kind = Kind::quantities, .dimension = dimension::length, .range = level_range,
     .example_si = "[\"372.8 m\", \"374.6 m\"]", .example_us = "[\"1222 ft\", \"1229 ft\"]",
     .help = "Lowest tailwater levels.",
     .set = [](Draft& d, const Value& v) { set_rating_level(d, v, site::TailwaterCase::low); }},
    {.section = "river.rating", .name = "expected", .kind = Kind::quantities, .dimension = dimension::length, .group = "level",
     .range = level_range, .example_si = "[\"373 m\", \"375.2 m\"]", .example_us = "[\"1223 ft\", \"1231 ft\"]",
     .help = "Expected tailwater levels, the same as level.",
     .set = [](Draft& d, const Value& v) { set_rating_level(d, v, site::TailwaterCase::expected); }},
    {.section = "river.rating", .name = "high", .kind = Kind::quantities, .dimension = dimension::length, .range = level_range,
     .example_si = "[\"373.3 m\", \"375.9 m\"]", .example_us = "[\"1224 ft\", \"1233 ft\"]",
     .help = "Highest tailwater levels.",
     .set = [](Draft& d, const Value& v) { set_rating_level(d, v, site::TailwaterCase::high); }},
    {.section = "river.rating", .name = "uncertainty", .kind = Kind::uncertainty, .dimension = dimension::length,
     .example_si = "{ distribution = \"normal\", deviation = \"0.2 m\" }",
     .example_us = "{ distribution = \"normal\", deviation = \"0.7 ft\" }",
     .help = "Uncertainty of the level at a given discharge, around the expected one.", .set = kept_elsewhere},

    {.section = "river.section", .name = "bottom_width", .kind = Kind::quantity, .dimension = dimension::length,
     .required = true, .range = {0.0, 5000.0}, .example_si = "\"40 m\"", .example_us = "\"130 ft\"",
     .help = "Width of the river bed.", .set = [](Draft& d, const Value& v) { d.site.river.section.bottom_width = v.number; }},
    {.section = "river.section", .name = "side_slope", .kind = Kind::side_slope, .required = true, .range = {0.0, 50.0},
     .example_si = "\"2H:1V\"",
     .help = "Slope of the banks.", .set = [](Draft& d, const Value& v) { d.site.river.section.side_slope = v.number; }},
    {.section = "river.section", .name = "bed_slope", .kind = Kind::slope, .required = true, .range = {1e-6, 0.2},
     .example_si = "0.002",
     .help = "Slope of the river, fall per length.",
     .set = [](Draft& d, const Value& v) { d.site.river.section.bed_slope = v.number; }},
    {.section = "river.section", .name = "manning_n", .kind = Kind::spread, .required = true, .range = {0.01, 0.3},
     .example_si = "{ low = 0.03, expected = 0.035, high = 0.042 }",
     .help = "Manning's n of the river, one number or three. The low n gives the low tailwater.",
     .set =
         [](Draft& d, const Value& v) {
           d.site.river.section.manning_n = v.cases;
           d.site.river.has_spread = v.has_spread;
         }},

    {.section = "river.gauging", .name = "file", .kind = Kind::file, .required = true, .example_si = "\"gauging.csv\"",
     .help = "CSV file with the columns level and discharge.", .set = kept_elsewhere},
    {.section = "river.gauging", .name = "uncertainty", .kind = Kind::uncertainty, .dimension = dimension::length,
     .example_si = "{ distribution = \"normal\", deviation = \"0.2 m\" }",
     .example_us = "{ distribution = \"normal\", deviation = \"0.7 ft\" }",
     .help = "Uncertainty of the level at a given discharge, around the law.", .set = kept_elsewhere},
};
// clang-format on

}  // namespace

std::span<const Key> river_rows() {
  return rows;
}

}  // namespace quell::io
