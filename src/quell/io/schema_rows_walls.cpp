// Rows of [walls] and [elements].
#include "quell/io/schema_rows.h"

namespace quell::io {
namespace {

// clang-format off: a table is read in rows
const Key rows[] = {
    {.section = "walls", .name = "thickness", .kind = Kind::quantity, .dimension = dimension::length, .range = {0.1, 10.0},
     .preset_words = "a first measure from the height", .example_si = "\"1.2 m\"", .example_us = "\"4 ft\"",
     .help = "Mean thickness of the basin's walls.", .set = [](Draft& d, const Value& v) { d.site.walls.thickness = v.number; }},
    {.section = "walls", .name = "base_width", .kind = Kind::quantity, .dimension = dimension::length, .range = {0.3, 60.0},
     .preset_words = "0.65 of the height", .example_si = "\"8 m\"", .example_us = "\"26 ft\"",
     .help = "Width of the base of an L-shaped wall: the stem at the basin, the heel below the fill.",
     .set = [](Draft& d, const Value& v) { d.site.walls.base_width = v.number; }},
    {.section = "walls", .name = "moist_unit_weight", .kind = Kind::quantity, .dimension = dimension::unit_weight,
     .range = {15.0e3, 23.0e3}, .preset = "\"19 kN/m3\"", .example_si = "\"20 kN/m3\"", .example_us = "\"125 lbf/ft3\"",
     .help = "Unit weight of the fill above the water table. The defaults of the fill are common practice, no published source.",
     .set = [](Draft& d, const Value& v) { d.site.walls.moist_weight = v.number; }},
    {.section = "walls", .name = "submerged_unit_weight", .kind = Kind::quantity, .dimension = dimension::unit_weight,
     .range = {7.0e3, 14.0e3}, .preset = "\"11 kN/m3\"", .example_si = "\"10.5 kN/m3\"", .example_us = "\"65 lbf/ft3\"",
     .help = "Unit weight of the fill below the water table, less that of water.",
     .set = [](Draft& d, const Value& v) { d.site.walls.submerged_weight = v.number; }},
    {.section = "walls", .name = "earth_pressure", .kind = Kind::number, .range = {0.3, 1.0}, .preset = "0.5", .example_si = "0.45",
     .help = "Coefficient of earth pressure at rest.", .set = [](Draft& d, const Value& v) { d.site.walls.earth_pressure = v.number; }},
    {.section = "walls", .name = "fill_friction", .kind = Kind::angle, .range = {25.0, 45.0}, .preset = "\"30 deg\"",
     .example_si = "\"34 deg\"", .help = "Angle of friction of the fill, for the earthquake.",
     .set = [](Draft& d, const Value& v) { d.site.walls.fill_friction = v.number; }},
    {.section = "walls", .name = "base_friction", .kind = Kind::angle, .range = {10.0, 50.0}, .preset = "\"30 deg\"",
     .example_si = "\"35 deg\"", .help = "Angle of friction between the base and its ground.",
     .set = [](Draft& d, const Value& v) { d.site.walls.base_friction = v.number; }},
    {.section = "walls", .name = "bearing_allowed", .kind = Kind::quantity, .dimension = dimension::pressure, .range = {50.0e3, 20.0e6},
     .preset_words = "not judged", .example_si = "\"400 kPa\"", .help = "Bearing pressure that the ground may take.",
     .set = [](Draft& d, const Value& v) {
       d.site.walls.has_bearing = true;
       d.site.walls.bearing_allowed = v.number;
     }},
    {.section = "walls", .name = "drawdown_lag", .kind = Kind::number, .range = {0.0, 1.0}, .preset = "1", .example_si = "0.5",
     .help = "Share of the tailwater's fall that stays behind the walls when the flow stops at once: 1 where nothing drains, less only "
             "where the drains of the fill are proven.",
     .set = [](Draft& d, const Value& v) { d.site.walls.drawdown_lag = v.number; }},
    {.section = "walls", .name = "seismic_coefficient", .kind = Kind::number, .range = {0.01, 0.4}, .preset_words = "no earthquake judged",
     .example_si = "0.1", .help = "Horizontal acceleration of the design earthquake over that of gravity. The national code gives it.",
     .set = [](Draft& d, const Value& v) {
       d.site.walls.has_seismic = true;
       d.site.walls.seismic_coefficient = v.number;
     }},
    {.section = "walls", .name = "fluctuation_rms", .kind = Kind::number, .range = {0.0, 0.3}, .preset = "0.07", .example_si = "0.05",
     .help = "Rms of the pressure of the jump on a wall over the velocity head at the toe: taken from measurements on floors, uncertain.",
     .set = [](Draft& d, const Value& v) { d.site.walls.fluctuation_rms = v.number; }},
    {.section = "walls", .name = "fluctuation_peak", .kind = Kind::number, .range = {1.0, 6.0}, .preset = "4", .example_si = "5",
     .help = "Peak of that pressure over its rms: three to five for a Gaussian signal, uncertain.",
     .set = [](Draft& d, const Value& v) { d.site.walls.fluctuation_peak = v.number; }},
    {.section = "walls", .name = "concrete_modulus", .kind = Kind::quantity, .dimension = dimension::pressure, .range = {10.0e9, 50.0e9},
     .preset = "\"30000 MPa\"", .example_si = "\"28000 MPa\"", .help = "Young's modulus of the concrete, for the natural frequency.",
     .set = [](Draft& d, const Value& v) { d.site.walls.concrete_modulus = v.number; }},

    {.section = "elements", .name = "peak_factor", .kind = Kind::number, .range = {1.0, 4.0}, .preset = "1.5", .example_si = "1.8",
     .help = "Peak over mean force of the flow on a block, pier or sill. No source gives it: the default is an envelope of three to four "
             "times an rms of some tenth of the mean, to be confirmed by a model.",
     .set = [](Draft& d, const Value& v) { d.site.elements.peak_factor = v.number; }},
};
// clang-format on

}  // namespace

std::span<const Key> wall_rows() {
  return rows;
}

}  // namespace quell::io
