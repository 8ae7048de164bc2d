// Rows of [basin] and [ground].
#include "quell/io/schema_rows.h"

namespace quell::io {
namespace {

// clang-format off: a table is read in rows
const Key rows[] = {
    {.section = "basin", .name = "types", .kind = Kind::texts, .preset = R"(["type_1", "type_2", "type_3"])",
     .example_si = "[\"type_2\"]",
     .help = "Candidate types of basin, in the order in which they are listed.",
     .set = [](Draft& d, const Value& v) { d.site.basin.types = v.texts; }},
    {.section = "basin", .name = "width", .kind = Kind::width, .dimension = dimension::length, .range = width_range,
     .preset_words = "the end width of the chute", .example_si = "\"free\"",
     .help =
         "Clear width of the basin: a length, or \"free\" for the width with the least concrete. Where it differs from the chute's end "
         "width, the walls change width on the last reach of the chute.",
     .set =
         [](Draft& d, const Value& v) {
           d.site.basin.width_is_free = v.is_free;
           d.site.basin.width = v.number;
         },
     .derive = [](Draft& d) { return if_known(d.site.basin.width = d.site.chute.end_width); }},
    {.section = "basin", .name = "largest_width", .kind = Kind::quantity, .dimension = dimension::length, .range = width_range,
     .example_si = "\"60 m\"", .example_us = "\"200 ft\"",
     .help = "Largest width allowed where the width is free.",
     .set = [](Draft& d, const Value& v) { d.site.basin.largest_width = v.number; }},
    {.section = "basin", .name = "length", .kind = Kind::quantity, .dimension = dimension::length,
     .range = basin_length_range,
     .preset_words = "what the type asks for", .example_si = "\"34 m\"", .example_us = "\"110 ft\"",
     .help = "Length from the toe of the chute to the end of the end sill, held as it is: an existing basin, or one that must end "
             "somewhere. A finding says what the type asks for and up to which discharge it is long enough.",
     .set = [](Draft& d, const Value& v) { d.site.basin.length = v.number; }},
    {.section = "basin", .name = "tailwater_margin", .kind = Kind::quantity, .dimension = dimension::length,
     .range = {0.0, 20.0}, .preset = "\"0 m\"", .example_si = "\"0.3 m\"", .example_us = "\"1 ft\"",
     .help = "Depth of tailwater asked for on top of what the type requires.",
     .set = [](Draft& d, const Value& v) { d.site.basin.tailwater_margin = v.number; }},
    {.section = "basin", .name = "highest_apron", .kind = Kind::quantity, .dimension = dimension::length, .range = level_range,
     .example_si = "\"370 m\"", .example_us = "\"1214 ft\"",
     .help = "Highest apron level allowed.",
     .set =
         [](Draft& d, const Value& v) {
           d.site.basin.has_highest_apron = true;
           d.site.basin.highest_apron_level = v.number;
         }},
    {.section = "basin", .name = "lowest_apron", .kind = Kind::quantity, .dimension = dimension::length, .range = level_range,
     .example_si = "\"362 m\"", .example_us = "\"1188 ft\"",
     .help = "Lowest apron level allowed.",
     .set =
         [](Draft& d, const Value& v) {
           d.site.basin.has_lowest_apron = true;
           d.site.basin.lowest_apron_level = v.number;
         }},
    {.section = "basin", .name = "apron_step", .kind = Kind::quantity, .dimension = dimension::length, .range = {0.001, 1.0},
     .preset = "\"0.01 m\"", .example_si = "\"0.05 m\"", .example_us = "\"0.1 ft\"",
     .help = "The apron level is rounded down to a multiple of this.",
     .set = [](Draft& d, const Value& v) { d.site.basin.apron_step = v.number; }},
};

const Key ground[] = {
    {.section = "ground", .name = "level", .kind = Kind::quantity, .dimension = dimension::length, .range = level_range,
     .example_si = "\"378 m\"", .example_us = "\"1240 ft\"",
     .help = "Ground level beside the basin.",
     .set =
         [](Draft& d, const Value& v) {
           d.site.ground.has_level = true;
           d.site.ground.ground_level = v.number;
         }},
    {.section = "ground", .name = "foundation_level", .kind = Kind::quantity, .dimension = dimension::length,
     .range = level_range, .example_si = "\"365 m\"", .example_us = "\"1197 ft\"",
     .help = "Level of sound foundation below the basin.",
     .set =
         [](Draft& d, const Value& v) {
           d.site.ground.has_foundation = true;
           d.site.ground.foundation_level = v.number;
         }},
};
// clang-format on

}  // namespace

std::span<const Key> basin_rows() {
  return rows;
}
std::span<const Key> ground_rows() {
  return ground;
}

}  // namespace quell::io
