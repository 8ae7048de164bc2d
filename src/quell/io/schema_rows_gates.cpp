// Rows of [gates] and [[outlets]].
#include "quell/io/schema_rows.h"

namespace quell::io {
namespace {

// clang-format off: a table is read in rows
const Key rows[] = {
    {.section = "gates", .name = "count", .kind = Kind::whole_number, .required = true, .range = {1.0, 200.0}, .example_si = "3",
     .help = "Number of bays, each with one gate.",
     .set = [](Draft& d, const Value& v) { d.site.gates.count = static_cast<int>(v.number); }},
    {.section = "gates", .name = "bay_width", .kind = Kind::quantity, .dimension = dimension::length, .required = true,
     .range = {1e-12, 200.0}, .example_si = "\"12 m\"", .example_us = "\"40 ft\"",
     .help = "Clear width of a bay; all bays together are the net_width of the crest.",
     .set = [](Draft& d, const Value& v) { d.site.gates.bay_width = v.number; }},
    {.section = "gates", .name = "full_opening", .kind = Kind::quantity, .dimension = dimension::length, .required = true,
     .range = {1e-12, 50.0}, .example_si = "\"9 m\"", .example_us = "\"30 ft\"",
     .help = "Height of the lip of a fully open gate above its seat.",
     .set = [](Draft& d, const Value& v) { d.site.gates.full_opening = v.number; }},
    {.section = "gates", .name = "seat_level", .kind = Kind::quantity, .dimension = dimension::length, .range = level_range,
     .preset_words = "the level of the crest", .example_si = "\"412.3 m\"", .example_us = "\"1352 ft\"",
     .help = "Level of the sill on which the gates close.",
     .set = [](Draft& d, const Value& v) { d.site.gates.seat_level = v.number; },
     .derive =
         [](Draft& d) {
           const bool is_known = d.read.count("crest.level") > 0;
           return is_known ? std::optional<double>(d.site.gates.seat_level = d.site.crest.crest_level) : std::nullopt;
         }},
    {.section = "gates", .name = "held_level", .kind = Kind::quantity, .dimension = dimension::length, .required = true,
     .range = level_range, .example_si = "\"420 m\"", .example_us = "\"1378 ft\"",
     .help = "Level of the reservoir that the gates hold in normal operation.",
     .set = [](Draft& d, const Value& v) { d.site.gates.held_level = v.number; }},
    {.section = "gates", .name = "coefficient", .kind = Kind::number, .group = "gate coefficient", .range = {0.4, 0.8},
     .preset = "0.6", .example_si = "0.62",
     .help = "Discharge coefficient of a partly open gate, in the formula with the heads on its lip and on its seat.",
     .set = [](Draft& d, const Value& v) { d.site.gates.coefficient = v.number; }},
    {.section = "gates", .name = "radial_coefficient", .kind = Kind::number, .group = "gate coefficient", .range = {0.4, 0.9},
     .example_si = "0.68",
     .help = "Coefficient of a radial gate from its own chart, on the least opening between lip and crest, instead of coefficient.",
     .set = [](Draft& d, const Value& v) { d.site.gates.radial_coefficient = v.number; }},
    {.section = "gates", .name = "standard_patterns", .kind = Kind::choice, .choices = "yes|no", .preset = "\"yes\"",
     .example_si = "\"no\"",
     .help = "Whether to judge besides: one gate open, one half open, and one shut.",
     .set = [](Draft& d, const Value& v) { d.site.gates.standard_patterns = v.choice == 0; }},
    {.section = "gates", .name = "patterns", .kind = Kind::tables,
     .help = "Ways to open the gates, each for the levels at which it is used.",
     .set = [](Draft& d, const Value&) { d.site.gates.patterns.push_back({}); }},
    {.section = "gates", .name = "rules", .kind = Kind::tables,
     .help = "Operation by level, in the order in which the reservoir rises; without rules the gates hold the level until they are "
             "fully open.",
     .set =
         [](Draft& d, const Value&) {
           d.site.gates.rules.push_back({});
           d.rule_patterns.emplace_back();
         }},

    {.section = "gates.patterns", .name = "name", .kind = Kind::text, .required = true, .example_si = "\"middle gate half open\"",
     .help = "Name of the pattern.", .set = [](Draft& d, const Value& v) { d.site.gates.patterns.back().name = v.text; }},
    {.section = "gates.patterns", .name = "openings", .kind = Kind::quantities, .dimension = dimension::length, .required = true,
     .range = {0.0, 50.0}, .example_si = "[\"0 m\", \"4.5 m\", \"0 m\"]", .example_us = "[\"0 ft\", \"15 ft\", \"0 ft\"]",
     .help = "Opening of each gate from the left, looking downstream; zero is shut.",
     .set = [](Draft& d, const Value& v) { d.site.gates.patterns.back().opening = v.numbers; }},
    {.section = "gates.patterns", .name = "levels", .kind = Kind::quantities, .dimension = dimension::length, .range = level_range,
     .preset_words = "the held level", .example_si = "[\"418 m\", \"420 m\"]", .example_us = "[\"1371 ft\", \"1378 ft\"]",
     .help = "Levels of the reservoir at which it is used.",
     .set = [](Draft& d, const Value& v) { d.site.gates.patterns.back().level = v.numbers; }},
    {.section = "gates.patterns", .name = "use", .kind = Kind::choice, .choices = "design|check", .preset = "\"design\"",
     .example_si = "\"check\"",
     .help = "Whether the apron is set for it, or it is judged only: a mishap or a test.",
     .set = [](Draft& d, const Value& v) { d.site.gates.patterns.back().is_check = v.choice == 1; }},

    {.section = "gates.rules", .name = "pattern", .kind = Kind::text, .required = true, .example_si = "\"all gates half open\"",
     .help = "Name of the pattern that holds.", .set = [](Draft& d, const Value& v) { d.rule_patterns.back() = v.text; }},
    {.section = "gates.rules", .name = "open_at", .kind = Kind::quantity, .dimension = dimension::length, .required = true,
     .range = level_range, .example_si = "\"420.5 m\"", .example_us = "\"1380 ft\"",
     .help = "Level of the rising reservoir from which the pattern holds.",
     .set = [](Draft& d, const Value& v) { d.site.gates.rules.back().open_level = v.number; }},
    {.section = "gates.rules", .name = "close_at", .kind = Kind::quantity, .dimension = dimension::length, .required = true,
     .range = level_range, .example_si = "\"419.8 m\"", .example_us = "\"1377 ft\"",
     .help = "Level of the falling reservoir below which the rule before it holds again; below open_at.",
     .set = [](Draft& d, const Value& v) { d.site.gates.rules.back().close_level = v.number; }},

    {.section = "outlets", .name = "name", .kind = Kind::text, .required = true, .example_si = "\"bottom outlet\"",
     .help = "Name of the outlet.", .set = [](Draft& d, const Value& v) { d.site.outlets.back().name = v.text; }},
    {.section = "outlets", .name = "centre_level", .kind = Kind::quantity, .dimension = dimension::length, .required = true,
     .range = level_range, .example_si = "\"385 m\"", .example_us = "\"1263 ft\"",
     .help = "Level of the centre of the section that controls its discharge.",
     .set = [](Draft& d, const Value& v) { d.site.outlets.back().centre_level = v.number; }},
    {.section = "outlets", .name = "area", .kind = Kind::quantity, .dimension = dimension::area, .required = true,
     .range = {1e-6, 1e4}, .example_si = "\"4.5 m2\"", .example_us = "\"48 ft2\"",
     .help = "Area of that section, of all its openings together.",
     .set = [](Draft& d, const Value& v) { d.site.outlets.back().area = v.number; }},
    {.section = "outlets", .name = "coefficient", .kind = Kind::number, .range = {0.3, 1.0}, .preset = "0.6",
     .example_si = "0.8",
     .help = "Discharge coefficient on that area, with all losses.",
     .set = [](Draft& d, const Value& v) { d.site.outlets.back().coefficient = v.number; }},
    {.section = "outlets", .name = "tail_level", .kind = Kind::quantity, .dimension = dimension::length, .range = level_range,
     .preset_words = "free outflow", .example_si = "\"388 m\"", .example_us = "\"1273 ft\"",
     .help = "Level of the water into which it discharges, where that lies above its centre.",
     .set =
         [](Draft& d, const Value& v) {
           d.site.outlets.back().has_tail_level = true;
           d.site.outlets.back().tail_level = v.number;
         }},
    {.section = "outlets", .name = "guaranteed", .kind = Kind::choice, .choices = "yes|no", .preset = "\"no\"",
     .example_si = "\"yes\"",
     .help = "Whether it runs in every flood, such as the water of turbines that cannot stop.",
     .set = [](Draft& d, const Value& v) { d.site.outlets.back().is_guaranteed = v.choice == 0; }},
};
// clang-format on

}  // namespace

std::span<const Key> gate_rows() {
  return rows;
}

}  // namespace quell::io
