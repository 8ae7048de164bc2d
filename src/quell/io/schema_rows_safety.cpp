// Rows of [slab], [foundation], [laboratory] and [[accepted]].
#include "quell/io/schema_rows.h"

namespace quell::io {
namespace {

// clang-format off: a table is read in rows
const Key rows[] = {
    {.section = "slab", .name = "thickness", .kind = Kind::quantity, .dimension = dimension::length, .range = {0.1, 20.0},
     .preset_words = "a first measure from the sequent depth", .example_si = "\"1.5 m\"", .example_us = "\"5 ft\"",
     .help = "Thickness of the basin's slab.", .set = [](Draft& d, const Value& v) { d.site.slab.thickness = v.number; }},
    {.section = "slab", .name = "concrete_unit_weight", .kind = Kind::quantity, .dimension = dimension::unit_weight,
     .range = {20.0e3, 28.0e3}, .preset = "\"24 kN/m3\"", .example_si = "\"23.5 kN/m3\"", .example_us = "\"150 lbf/ft3\"",
     .help = "Unit weight of the concrete.",
     .set = [](Draft& d, const Value& v) { d.site.slab.concrete_unit_weight = v.number; }},
    {.section = "slab", .name = "panel_length", .kind = Kind::quantity, .dimension = dimension::length, .range = {1.0, 50.0},
     .preset = "\"10 m\"", .example_si = "\"12 m\"", .example_us = "\"40 ft\"", .help = "Length of a panel along the flow.",
     .set = [](Draft& d, const Value& v) { d.site.slab.panel_length = v.number; }},
    {.section = "slab", .name = "panel_width", .kind = Kind::quantity, .dimension = dimension::length, .range = {1.0, 50.0},
     .preset = "\"10 m\"", .example_si = "\"12 m\"", .example_us = "\"40 ft\"", .help = "Width of a panel across the flow.",
     .set = [](Draft& d, const Value& v) { d.site.slab.panel_width = v.number; }},
    {.section = "slab", .name = "drain_efficiency", .kind = Kind::number, .range = {0.0, 1.0}, .preset = "0.5",
     .example_si = "0.25",
     .help = "Share of the excess head that the drains take away while they work: 0.25 to 0.5 where nothing is measured, up to 0.67 "
             "where piezometers prove it. The checks also run with the drains failed.",
     .set = [](Draft& d, const Value& v) { d.site.slab.drain_efficiency = v.number; }},
    {.section = "slab", .name = "pressure_range", .kind = Kind::number, .range = {0.1, 2.0}, .preset = "1.6", .example_si = "1.1",
     .help = "Range of the pressure fluctuation on the floor, both extremes over the velocity head at the toe. No table of it could be "
             "read: the default is an envelope, to be confirmed by a model.",
     .set = [](Draft& d, const Value& v) { d.site.slab.pressure_range = v.number; }},
    {.section = "slab", .name = "suction", .kind = Kind::number, .range = {0.05, 1.0}, .preset = "0.8", .example_si = "0.5",
     .help = "The part of that range below the mean pressure: an envelope too.",
     .set = [](Draft& d, const Value& v) { d.site.slab.suction = v.number; }},
    {.section = "slab", .name = "pressure", .kind = Kind::tables,
     .help = "The fluctuation as a physical model measured it, by Froude number and place, instead of pressure_range and suction: in "
             "order of the Froude number, then of the place; straight between the points, the outermost held beyond them.",
     .set = [](Draft& d, const Value&) { d.site.slab.pressure.push_back({}); }},
    {.section = "slab", .name = "joints", .kind = Kind::choice, .choices = "sealed|open|one_failed", .preset = "\"one_failed\"",
     .example_si = "\"sealed\"",
     .help = "Worst state of the joints that the anchors must withstand: all sealed, all open, or one failed while the others hold, "
             "which lifts most. A finding says what the states left out would do.",
     .set = [](Draft& d, const Value& v) { d.site.slab.joints = static_cast<site::JointState>(v.choice); }},
    {.section = "slab", .name = "pulse_length", .kind = Kind::number, .range = {0.5, 20.0}, .preset = "2", .example_si = "3",
     .help = "Length over which the fluctuation hangs together, in depths at the toe; one to three are typical guesses.",
     .set = [](Draft& d, const Value& v) { d.site.slab.pulse_length = v.number; }},
    {.section = "slab", .name = "pulse_strouhal", .kind = Kind::number, .range = {0.001, 0.2}, .preset = "0.01", .example_si = "0.02",
     .help = "Strouhal number f y1/V1 of the pulses that carry the energy of a jump: the order of size is known, the number is not.",
     .set = [](Draft& d, const Value& v) { d.site.slab.pulse_strouhal = v.number; }},
    {.section = "slab", .name = "groundwater_level", .kind = Kind::quantity, .dimension = dimension::length, .range = level_range,
     .preset_words = "the highest tailwater", .example_si = "\"376 m\"", .example_us = "\"1234 ft\"",
     .help = "Highest ground water beside the basin while it is empty.",
     .set = [](Draft& d, const Value& v) {
       d.site.slab.has_groundwater = true;
       d.site.slab.groundwater_level = v.number;
     }},
    {.section = "slab", .name = "anchored", .kind = Kind::choice, .choices = "yes|no", .preset = "\"yes\"", .example_si = "\"no\"",
     .help = "Whether the slab is anchored to rock.", .set = [](Draft& d, const Value& v) { d.site.slab.is_anchored = v.choice == 0; }},
    {.section = "slab", .name = "bar_diameter", .kind = Kind::quantity, .dimension = dimension::length, .range = {0.01, 0.1},
     .preset = "\"32 mm\"", .example_si = "\"40 mm\"", .example_us = "\"1.25 in\"", .help = "Diameter of an anchor bar.",
     .set = [](Draft& d, const Value& v) { d.site.slab.bar_diameter = v.number; }},
    {.section = "slab", .name = "bar_spacing", .kind = Kind::quantity, .dimension = dimension::length, .range = {0.5, 10.0},
     .preset = "\"2 m\"", .example_si = "\"1.5 m\"", .example_us = "\"5 ft\"", .help = "Spacing of the anchor bars, both ways.",
     .set = [](Draft& d, const Value& v) { d.site.slab.bar_spacing = v.number; }},
    {.section = "slab", .name = "bar_yield", .kind = Kind::quantity, .dimension = dimension::pressure, .range = {200.0e6, 1200.0e6},
     .preset = "\"500 MPa\"", .example_si = "\"550 MPa\"", .help = "Yield stress of the anchor steel.",
     .set = [](Draft& d, const Value& v) { d.site.slab.bar_yield = v.number; }},
    {.section = "slab", .name = "hole_diameter", .kind = Kind::quantity, .dimension = dimension::length, .range = {0.03, 0.3},
     .preset = "\"90 mm\"", .example_si = "\"100 mm\"", .example_us = "\"4 in\"", .help = "Diameter of the anchor's hole.",
     .set = [](Draft& d, const Value& v) { d.site.slab.hole_diameter = v.number; }},
    {.section = "slab", .name = "rock_bond", .kind = Kind::quantity, .dimension = dimension::pressure, .range = {0.05e6, 3.0e6},
     .preset = "\"0.5 MPa\"", .example_si = "\"0.7 MPa\"", .help = "Bond allowed between grout and rock; pull-out tests decide.",
     .set = [](Draft& d, const Value& v) { d.site.slab.rock_bond = v.number; }},
    {.section = "slab", .name = "rock_unit_weight", .kind = Kind::quantity, .dimension = dimension::unit_weight, .range = {8.0e3, 22.0e3},
     .preset = "\"16.2 kN/m3\"", .example_si = "\"15.5 kN/m3\"", .help = "Submerged unit weight of the rock that the anchors hold.",
     .set = [](Draft& d, const Value& v) { d.site.slab.rock_unit_weight = v.number; }},

    {.section = "slab.pressure", .name = "froude", .kind = Kind::number, .required = true, .range = {1.0, 30.0}, .example_si = "6",
     .help = "Froude number at the toe.", .set = [](Draft& d, const Value& v) { d.site.slab.pressure.back().froude = v.number; }},
    {.section = "slab.pressure", .name = "place", .kind = Kind::number, .required = true, .range = {0.0, 20.0}, .example_si = "1.5",
     .help = "Distance from the toe in sequent depths.", .set = [](Draft& d, const Value& v) { d.site.slab.pressure.back().place = v.number; }},
    {.section = "slab.pressure", .name = "range", .kind = Kind::number, .required = true, .range = {0.01, 2.0}, .example_si = "0.9",
     .help = "Range of the fluctuation there, both extremes over the velocity head at the toe.",
     .set = [](Draft& d, const Value& v) { d.site.slab.pressure.back().range = v.number; }},
    {.section = "slab.pressure", .name = "suction", .kind = Kind::number, .required = true, .range = {0.005, 1.0}, .example_si = "0.4",
     .help = "The part of it below the mean pressure.", .set = [](Draft& d, const Value& v) { d.site.slab.pressure.back().suction = v.number; }},

    {.section = "foundation", .name = "soil", .kind = Kind::choice,
     .choices = "rock|very_fine_sand|fine_sand|medium_sand|coarse_sand|fine_gravel|medium_gravel|coarse_gravel|boulders|soft_clay|"
                "medium_clay|hard_clay|hardpan",
     .preset = "\"rock\"", .example_si = "\"coarse_sand\"",
     .help = "What crest and basin stand on; on soil the creep and the exit gradient are judged.",
     .set = [](Draft& d, const Value& v) { d.site.foundation.soil = static_cast<site::Soil>(v.choice); }},
    {.section = "foundation", .name = "upstream_cutoff", .kind = Kind::quantity, .dimension = dimension::length, .range = {0.0, 100.0},
     .preset = "\"0 m\"", .example_si = "\"6 m\"", .example_us = "\"20 ft\"", .help = "Depth of the cutoff under the upstream face.",
     .set = [](Draft& d, const Value& v) { d.site.foundation.upstream_cutoff = v.number; }},
    {.section = "foundation", .name = "downstream_cutoff", .kind = Kind::quantity, .dimension = dimension::length, .range = {0.0, 50.0},
     .preset = "\"0 m\"", .example_si = "\"4 m\"", .example_us = "\"13 ft\"", .help = "Depth of the cutoff at the end of the basin, below its slab.",
     .set = [](Draft& d, const Value& v) { d.site.foundation.downstream_cutoff = v.number; }},
    {.section = "foundation", .name = "toe_head_share", .kind = Kind::number, .range = {0.0, 1.0}, .preset_words = "by weighted creep",
     .example_si = "0.25",
     .help = "Share of the head between reservoir and tailwater that is left under the toe of the chute, behind the grout curtain and the "
             "drains of the dam, as piezometers or a seepage analysis show it. Without it the creep from the upstream face counts, "
             "which below a drained dam on rock is far on the safe side.",
     .set = [](Draft& d, const Value& v) {
       d.site.foundation.has_toe_head_share = true;
       d.site.foundation.toe_head_share = v.number;
     }},
    {.section = "foundation", .name = "middle_cutoff", .kind = Kind::quantity, .dimension = dimension::length, .range = {0.0, 100.0},
     .preset = "\"0 m\"", .example_si = "\"5 m\"", .example_us = "\"16 ft\"", .help = "Depth of a cutoff between the two, below the base.",
     .set = [](Draft& d, const Value& v) { d.site.foundation.middle_cutoff = v.number; }},
    {.section = "foundation", .name = "middle_cutoff_distance", .kind = Kind::quantity, .dimension = dimension::length,
     .range = {0.0, 1000.0}, .preset_words = "half way", .example_si = "\"12 m\"", .example_us = "\"40 ft\"",
     .help = "Distance of that cutoff from the upstream face.",
     .set = [](Draft& d, const Value& v) { d.site.foundation.middle_cutoff_distance = v.number; }},
    {.section = "foundation", .name = "underside_slope", .kind = Kind::side_slope, .range = {0.5, 50.0},
     .preset_words = "level", .example_si = "\"3H:1V\"",
     .help = "Slope at which the underside falls from the upstream cutoff; it corrects the pressure there.",
     .set = [](Draft& d, const Value& v) { d.site.foundation.underside_slope = v.number; }},
    {.section = "foundation", .name = "underside_slope_length", .kind = Kind::quantity, .dimension = dimension::length,
     .range = {0.0, 1000.0}, .preset = "\"0 m\"", .example_si = "\"9 m\"", .example_us = "\"30 ft\"",
     .help = "Horizontal length of that slope.",
     .set = [](Draft& d, const Value& v) { d.site.foundation.underside_slope_length = v.number; }},
    {.section = "foundation", .name = "soil_fine_size", .kind = Kind::quantity, .dimension = dimension::length, .range = {1e-6, 1.0},
     .preset_words = "not known", .example_si = "\"0.3 mm\"", .example_us = "\"0.012 in\"",
     .help = "Size than which 15 per cent of the soil are finer. With soil_mean_size and soil_upper_size the filter of the "
             "underdrains is designed.",
     .set = [](Draft& d, const Value& v) { d.site.foundation.soil_fine_size = v.number; }},
    {.section = "foundation", .name = "soil_mean_size", .kind = Kind::quantity, .dimension = dimension::length, .range = {1e-6, 1.0},
     .preset_words = "not known", .example_si = "\"0.8 mm\"", .example_us = "\"0.03 in\"",
     .help = "Size than which half of the soil is finer.",
     .set = [](Draft& d, const Value& v) { d.site.foundation.soil_mean_size = v.number; }},
    {.section = "foundation", .name = "soil_upper_size", .kind = Kind::quantity, .dimension = dimension::length, .range = {1e-6, 1.0},
     .preset_words = "not known", .example_si = "\"2 mm\"", .example_us = "\"0.08 in\"",
     .help = "Size than which 85 per cent of the soil are finer.",
     .set = [](Draft& d, const Value& v) { d.site.foundation.soil_upper_size = v.number; }},

    {.section = "laboratory", .name = "discharge", .kind = Kind::quantity, .dimension = dimension::discharge, .range = {0.005, 5.0},
     .preset = "\"0.25 m3/s\"", .example_si = "\"0.4 m3/s\"", .help = "Discharge that the laboratory of a physical model can pump.",
     .set = [](Draft& d, const Value& v) { d.site.laboratory.discharge = v.number; }},
    {.section = "laboratory", .name = "length", .kind = Kind::quantity, .dimension = dimension::length, .range = {2.0, 200.0},
     .preset = "\"25 m\"", .example_si = "\"30 m\"", .help = "Length of its floor.",
     .set = [](Draft& d, const Value& v) { d.site.laboratory.length = v.number; }},
    {.section = "laboratory", .name = "width", .kind = Kind::quantity, .dimension = dimension::length, .range = {0.3, 100.0},
     .preset = "\"6 m\"", .example_si = "\"8 m\"", .help = "Width of its floor.",
     .set = [](Draft& d, const Value& v) { d.site.laboratory.width = v.number; }},
    {.section = "laboratory", .name = "head", .kind = Kind::quantity, .dimension = dimension::length, .range = {0.5, 50.0},
     .preset = "\"3 m\"", .example_si = "\"5 m\"", .help = "Height of the tank's water over its floor.",
     .set = [](Draft& d, const Value& v) { d.site.laboratory.head = v.number; }},

    {.section = "accepted", .name = "finding", .kind = Kind::text, .required = true, .example_si = "\"tailwater.drowned\"",
     .help = "Id of the finding, as the report and result.json print it.",
     .set = [](Draft& d, const Value& v) { d.site.accepted.back().finding = v.text; }},
    {.section = "accepted", .name = "by", .kind = Kind::text, .required = true, .example_si = "\"A. Engineer\"",
     .help = "Who accepts it.", .set = [](Draft& d, const Value& v) { d.site.accepted.back().by = v.text; }},
    {.section = "accepted", .name = "reason", .kind = Kind::text, .required = true,
     .example_si = "\"Only below 90 m3/s, and the bed is rock.\"",
     .help = "Why it is accepted. The verdict stays; the reason is printed beside the finding.",
     .set = [](Draft& d, const Value& v) { d.site.accepted.back().reason = v.text; }},
};
// clang-format on

}  // namespace

std::span<const Key> safety_rows() {
  return rows;
}

}  // namespace quell::io
