// Rows of the head of the file and of [project].
#include "quell/io/schema_rows.h"

namespace quell::io {
namespace {

// clang-format off: a table is read in rows
const Key rows[] = {
    {.section = "", .name = "units", .kind = Kind::choice, .required = true, .choices = "SI|US customary",
     .example_si = "\"SI\"", .example_us = "\"US customary\"",
     .help = "System in which bare numbers of this file stand and in which results are printed. A value with a unit may use "
             "either.",
     .set = [](Draft& d, const Value& v) { d.site.units = v.choice == 0 ? UnitSystem::si : UnitSystem::us; }},
    {.section = "", .name = "project", .kind = Kind::table, .required = true, .help = "What the report prints about the work."},
    {.section = "", .name = "crest", .kind = Kind::table, .required = true, .help = "The overflow crest."},
    {.section = "", .name = "gates", .kind = Kind::table, .all_or_nothing = true,
     .help = "Gates on an ogee crest: bays of one width with a gate each."},
    {.section = "", .name = "outlets", .kind = Kind::tables,
     .help = "Outlets through the dam that run beside the spillway and do not enter the basin.",
     .set = [](Draft& d, const Value&) { d.site.outlets.push_back({}); }},
    {.section = "", .name = "chute", .kind = Kind::table, .required = true,
     .help = "From its start below the crest down to the apron: a polyline of slopes. It starts at the tangent point of an ogee, at the "
             "downstream edge of a broad crest, at floor_level below a sharp crest or a labyrinth."},
    {.section = "", .name = "river", .kind = Kind::table, .required = true,
     .help = "The river below the basin. It needs one of [river.rating], [river.section], [river.gauging] and [river.survey]."},
    {.section = "", .name = "floods", .kind = Kind::table, .all_or_nothing = true,
     .help = "Floods to be routed through the reservoir, and the record of yearly floods."},
    {.section = "", .name = "reservoir", .kind = Kind::table, .all_or_nothing = true,
     .help = "Storage of the reservoir and the levels of the dam."},
    {.section = "", .name = "discharges", .kind = Kind::table, .required = true,
     .help = "The range of discharges to design for."},
    {.section = "", .name = "basin", .kind = Kind::table, .help = "Wishes and limits for the stilling basin."},
    {.section = "", .name = "ground", .kind = Kind::table, .help = "Ground and foundation at the basin."},
    {.section = "", .name = "slab", .kind = Kind::table, .help = "Slab of the basin, its drains and anchors, for the safety checks."},
    {.section = "", .name = "walls", .kind = Kind::table, .help = "Walls of the basin and the fill behind them, for the safety checks."},
    {.section = "", .name = "elements", .kind = Kind::table, .help = "Forces on blocks, piers and sills, for the safety checks."},
    {.section = "", .name = "foundation", .kind = Kind::table, .help = "Soil below crest and basin, and cutoffs against seepage."},
    {.section = "", .name = "laboratory", .kind = Kind::table, .help = "Laboratory in which a physical model could be built."},
    {.section = "", .name = "accepted", .kind = Kind::tables,
     .help = "Findings that somebody accepts, with a reason: printed beside them, and no verdict changes.",
     .set = [](Draft& d, const Value&) { d.site.accepted.push_back({}); }},

    {.section = "project", .name = "name", .kind = Kind::text, .required = true, .example_si = "\"Invented dam\"",
     .help = "Name of the project.", .set = [](Draft& d, const Value& v) { d.site.project.name = v.text; }},
    {.section = "project", .name = "author", .kind = Kind::text, .example_si = "\"A. Engineer\"",
     .help = "Who did the work.", .set = [](Draft& d, const Value& v) { d.site.project.author = v.text; }},
    {.section = "project", .name = "datum", .kind = Kind::text, .example_si = "\"m above sea level\"",
     .help = "Datum of every level in the file.", .set = [](Draft& d, const Value& v) { d.site.project.datum = v.text; }},
    {.section = "project", .name = "status", .kind = Kind::text, .example_si = "\"preliminary\"",
     .help = "Status of the work.", .set = [](Draft& d, const Value& v) { d.site.project.status = v.text; }},
    {.section = "project", .name = "notes", .kind = Kind::text, .example_si = "\"Data of the first survey.\"",
     .help = "Anything the reader of the report should know.",
     .set = [](Draft& d, const Value& v) { d.site.project.notes = v.text; }},
    {.section = "project", .name = "altitude", .kind = Kind::quantity, .dimension = dimension::length, .range = level_range,
     .preset_words = "sea level", .example_si = "\"640 m\"", .example_us = "\"2100 ft\"",
     .help = "Height of the site above sea level: the pressure of the atmosphere, against cavitation, follows from it.",
     .set =
         [](Draft& d, const Value& v) {
           d.site.project.has_altitude = true;
           d.site.project.altitude = v.number;
         }},
    {.section = "project", .name = "water_temperature", .kind = Kind::number, .range = {0.0, 40.0}, .preset = "15",
     .example_si = "10",
     .help = "Temperature of the water in degrees Celsius, for the pressure of vapour.",
     .set = [](Draft& d, const Value& v) { d.site.project.water_temperature = v.number; }},
};
// clang-format on

}  // namespace

std::span<const Key> head_rows() {
  return rows;
}

}  // namespace quell::io
