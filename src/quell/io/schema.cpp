#include "quell/io/schema.h"

#include "quell/base/method.h"

namespace quell::io {
namespace {

using site::CrestEdge;
using site::CrestShape;
using site::UpstreamFace;

constexpr Range level_range{-500.0, 9000.0};
constexpr Range width_range{1e-12, 5000.0};
constexpr Range discharge_range{1e-12, 1e6};

constexpr std::array<double, 4> pier_contractions{0.01, 0.0, 0.02, 0.1};
constexpr std::array<double, 3> abutment_contractions{0.20, 0.10, 0.0};

// Keys of [crest] that belong to some shapes only, each with the reason why the others do not take it.
constexpr Condition ogee_head{"shape", "ogee", "only the ogee is shaped for a head"};
constexpr Condition ogee_face{"shape", "ogee", "only the ogee has a curve upstream of its crest that follows the face"};
constexpr Condition ogee_piers{"shape", "ogee",
                               "the published coefficients of this shape hold for a clear crest over the full width"};
constexpr Condition broad{"shape", "broad", "only the broad crest has a length along the flow"};
constexpr Condition broad_edge{"shape", "broad", "only the broad crest has such an edge"};
constexpr Condition labyrinth{"shape", "labyrinth", "only the labyrinth is folded"};
constexpr Condition fall{"shape", "sharp|labyrinth", "the chute begins at the crest itself, without a fall"};

template <std::size_t N>
double pick(const std::array<double, N>& values, const Value& v) {
  return values[static_cast<std::size_t>(v.choice)];
}

void set_rating_level(Draft& d, const Value& v, site::TailwaterCase which) {
  d.site.river.rating.level[site::index_of(which)] = v.numbers;
}

// clang-format off: a table is read in rows
const Key rows[] = {
    {.section = "", .name = "units", .kind = Kind::choice, .required = true, .choices = "SI|US customary",
     .example_si = "\"SI\"", .example_us = "\"US customary\"",
     .help = "System in which bare numbers of this file stand and in which results are printed. A value with a unit may use "
             "either.",
     .set = [](Draft& d, const Value& v) { d.site.units = v.choice == 0 ? UnitSystem::si : UnitSystem::us; }},
    {.section = "", .name = "project", .kind = Kind::table, .required = true, .help = "What the report prints about the work."},
    {.section = "", .name = "crest", .kind = Kind::table, .required = true, .help = "The ungated overflow crest."},
    {.section = "", .name = "chute", .kind = Kind::table, .required = true,
     .help = "From its start below the crest down to the apron: a polyline of slopes. It starts at the tangent point of an ogee, at the "
             "downstream edge of a broad crest, at floor_level below a sharp crest or a labyrinth."},
    {.section = "", .name = "river", .kind = Kind::table, .required = true,
     .help = "The river below the basin. It needs one of [river.rating] and [river.section]."},
    {.section = "", .name = "discharges", .kind = Kind::table, .required = true,
     .help = "The range of discharges to design for."},
    {.section = "", .name = "basin", .kind = Kind::table, .help = "Wishes and limits for the stilling basin."},
    {.section = "", .name = "ground", .kind = Kind::table, .help = "Ground and foundation at the basin."},

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
         },
     .derive = [](Draft&) { return 0.0; }},
    {.section = "project", .name = "water_temperature", .kind = Kind::number, .range = {0.0, 40.0}, .preset = "15",
     .example_si = "10",
     .help = "Temperature of the water in degrees Celsius, for the pressure of vapour.",
     .set = [](Draft& d, const Value& v) { d.site.project.water_temperature = v.number; }},

    {.section = "crest", .name = "level", .kind = Kind::quantity, .dimension = dimension::length, .required = true,
     .range = level_range, .example_si = "\"412.5 m\"", .example_us = "\"1353 ft\"",
     .help = "Level of the crest.", .set = [](Draft& d, const Value& v) { d.site.crest.crest_level = v.number; }},
    {.section = "crest", .name = "shape", .kind = Kind::choice, .choices = "ogee|broad|sharp|labyrinth", .preset = "\"ogee\"",
     .example_si = "\"labyrinth\"",
     .help = "Shape of the crest: ogee, broad (level along the flow), sharp (thin plate over the full width) or labyrinth (folded "
             "wall with a half-round crest). Keys that belong to other shapes are refused.",
     .set = [](Draft& d, const Value& v) { d.site.crest.shape = static_cast<CrestShape>(v.choice); }},
    {.section = "crest", .name = "design_head", .kind = Kind::quantity, .dimension = dimension::length, .required = true,
     .only_for = ogee_head, .range = {1e-12, 50.0}, .example_si = "\"6.5 m\"", .example_us = "\"21 ft\"",
     .help = "Total head for which the ogee is shaped.",
     .set = [](Draft& d, const Value& v) { d.site.crest.design_head = v.number; }},
    {.section = "crest", .name = "net_width", .kind = Kind::quantity, .dimension = dimension::length, .required = true,
     .range = width_range, .example_si = "\"45 m\"", .example_us = "\"150 ft\"",
     .help = "Width of the crest clear of piers; for a labyrinth the width of the channel that it spans.",
     .set = [](Draft& d, const Value& v) { d.site.crest.net_width = v.number; }},
    {.section = "crest", .name = "approach_depth", .kind = Kind::quantity, .dimension = dimension::length, .required = true,
     .range = {0.0, 500.0}, .example_si = "\"30 m\"", .example_us = "\"100 ft\"",
     .help = "Height of the crest above the approach floor upstream; the height of the wall of a sharp crest or a labyrinth.",
     .set = [](Draft& d, const Value& v) { d.site.crest.approach_depth = v.number; }},
    {.section = "crest", .name = "upstream_face", .kind = Kind::choice, .only_for = ogee_face,
     .choices = "vertical|3V:1H|3V:2H|3V:3H", .preset = "\"vertical\"", .example_si = "\"3V:1H\"",
     .help = "Upstream face of the crest, vertical to horizontal.",
     .set = [](Draft& d, const Value& v) { d.site.crest.upstream_face = static_cast<UpstreamFace>(v.choice); }},
    {.section = "crest", .name = "piers", .kind = Kind::whole_number, .only_for = ogee_piers, .range = {0.0, 200.0},
     .preset = "0", .example_si = "3",
     .help = "Number of piers on the crest.",
     .set = [](Draft& d, const Value& v) { d.site.crest.piers = static_cast<int>(v.number); }},
    {.section = "crest", .name = "pier_nose", .kind = Kind::choice, .group = "pier shape", .only_for = ogee_piers,
     .choices = "round|pointed|square_rounded|square", .preset = "\"round\"", .example_si = "\"round\"",
     .help = "Shape of the pier noses: contraction of 0.01 round, 0 pointed, 0.02 square with rounded corners, 0.1 square.",
     .set = [](Draft& d, const Value& v) { d.site.crest.pier_contraction = pick(pier_contractions, v); }},
    {.section = "crest", .name = "pier_contraction", .kind = Kind::number, .group = "pier shape", .only_for = ogee_piers,
     .range = {0.0, 0.5}, .example_si = "0.01",
     .help = "Contraction coefficient of each pier, instead of pier_nose.",
     .set = [](Draft& d, const Value& v) { d.site.crest.pier_contraction = v.number; }},
    {.section = "crest", .name = "abutment", .kind = Kind::choice, .group = "abutment shape", .only_for = ogee_piers,
     .choices = "square|rounded|guided", .preset = "\"rounded\"", .example_si = "\"rounded\"",
     .help = "Shape of the abutments: contraction of 0.20 square, 0.10 rounded (radius 0.15 to 0.5 design heads, headwall "
             "square to "
             "the flow), 0 guided (larger radius, headwall at most 45 degrees to the flow).",
     .set = [](Draft& d, const Value& v) { d.site.crest.abutment_contraction = pick(abutment_contractions, v); }},
    {.section = "crest", .name = "abutment_contraction", .kind = Kind::number, .group = "abutment shape",
     .only_for = ogee_piers, .range = {0.0, 0.5}, .example_si = "0.1",
     .help = "Contraction coefficient of each abutment, instead of abutment.",
     .set = [](Draft& d, const Value& v) { d.site.crest.abutment_contraction = v.number; }},
    {.section = "crest", .name = "crest_length", .kind = Kind::quantity, .dimension = dimension::length, .required = true,
     .only_for = broad, .range = {0.05, 200.0}, .example_si = "\"6 m\"", .example_us = "\"20 ft\"",
     .help = "Length of the level crest along the flow.",
     .set = [](Draft& d, const Value& v) { d.site.crest.crest_length = v.number; }},
    {.section = "crest", .name = "edge", .kind = Kind::choice, .only_for = broad_edge, .choices = "square|rounded",
     .preset = "\"square\"", .example_si = "\"rounded\"",
     .help = "Upstream edge of the broad crest.",
     .set = [](Draft& d, const Value& v) { d.site.crest.edge = static_cast<CrestEdge>(v.choice); }},
    {.section = "crest", .name = "sidewall_angle", .kind = Kind::angle, .required = true, .only_for = labyrinth,
     .range = {6.0, 35.0}, .example_si = "\"15 deg\"",
     .help = "Angle of the side walls of the labyrinth from the direction of flow.",
     .set = [](Draft& d, const Value& v) { d.site.crest.sidewall_angle = v.number; }},
    {.section = "crest", .name = "developed_length", .kind = Kind::quantity, .dimension = dimension::length, .required = true,
     .only_for = labyrinth, .range = width_range, .example_si = "\"75 m\"", .example_us = "\"250 ft\"",
     .help = "Length of the labyrinth's crest along its centreline, all cycles together.",
     .set = [](Draft& d, const Value& v) { d.site.crest.developed_length = v.number; }},
    {.section = "crest", .name = "floor_level", .kind = Kind::quantity, .dimension = dimension::length, .required = true,
     .only_for = fall, .range = level_range, .example_si = "\"409 m\"", .example_us = "\"1342 ft\"",
     .help = "Bed level at which the chute begins below the crest. The height of the fall onto it is lost: the flow starts there "
             "with the energy of critical depth.",
     .set = [](Draft& d, const Value& v) { d.site.crest.floor_level = v.number; }},

    {.section = "chute", .name = "slope", .kind = Kind::slope, .required = true, .group = "slope", .range = {0.05, 5.0},
     .example_si = "\"0.7H:1V\"",
     .help = "Slope of a chute with one straight face.",
     .set = [](Draft& d, const Value& v) { d.site.chute.reaches.push_back({v.number, 0.0}); }},
    {.section = "chute", .name = "reaches", .kind = Kind::tables, .required = true, .group = "slope",
     .help = "Straight pieces from its start down, instead of slope. The last one runs down to the apron.",
     .set = [](Draft& d, const Value&) { d.site.chute.reaches.push_back({}); }},
    {.section = "chute", .name = "width", .kind = Kind::quantity, .dimension = dimension::length, .required = true,
     .range = width_range, .example_si = "\"48 m\"", .example_us = "\"160 ft\"",
     .help = "Width between the chute walls at its start.",
     .set = [](Draft& d, const Value& v) { d.site.chute.width = v.number; }},
    {.section = "chute", .name = "end_width", .kind = Kind::quantity, .dimension = dimension::length, .range = width_range,
     .preset_words = "the same as width", .example_si = "\"54 m\"", .example_us = "\"175 ft\"",
     .help = "Width at the apron. The width changes linearly with bed level from width to this.",
     .set = [](Draft& d, const Value& v) { d.site.chute.end_width = v.number; },
     .derive = [](Draft& d) { return d.site.chute.end_width = d.site.chute.width; }},
    {.section = "chute", .name = "end_width_level", .kind = Kind::quantity, .dimension = dimension::length,
     .range = level_range, .example_si = "\"376 m\"", .example_us = "\"1235 ft\"",
     .help = "Bed level at which end_width is reached; needed where the two widths differ.",
     .set = [](Draft& d, const Value& v) { d.site.chute.end_width_level = v.number; }},
    {.section = "chute", .name = "roughness_height", .kind = Kind::quantity, .dimension = dimension::length, .required = true,
     .group = "roughness", .range = {1e-6, 0.5}, .example_si = "\"0.6 mm\"", .example_us = "\"0.002 ft\"",
     .help = "Equivalent sand roughness of the chute floor.",
     .set = [](Draft& d, const Value& v) { d.site.chute.roughness_height = v.number; }},
    {.section = "chute", .name = "manning_n", .kind = Kind::number, .required = true, .group = "roughness",
     .range = {0.005, 0.1}, .example_si = "0.013",
     .help = "Manning's n of the chute floor, instead of roughness_height.",
     .set = [](Draft& d, const Value& v) { d.site.chute.manning_n = v.number; }},
    {.section = "chute", .name = "surface", .kind = Kind::choice, .choices = "smooth|stepped", .preset = "\"smooth\"",
     .example_si = "\"smooth\"",
     .help = "Surface of the chute. Steps begin at its start and need one straight face (slope) and step_height; the energy "
             "that they take is carried through to the basin.",
     .set = [](Draft& d, const Value& v) { d.site.chute.is_stepped = v.choice == 1; }},
    {.section = "chute", .name = "step_height", .kind = Kind::quantity, .dimension = dimension::length, .range = {0.1, 3.0},
     .example_si = "\"0.9 m\"", .example_us = "\"3 ft\"",
     .help = "Vertical height of a step; given for a stepped chute only.",
     .set = [](Draft& d, const Value& v) { d.site.chute.step_height = v.number; }},
    {.section = "chute", .name = "wall_height", .kind = Kind::quantity, .dimension = dimension::length, .range = {1e-12, 100.0},
     .example_si = "\"4 m\"", .example_us = "\"13 ft\"",
     .help = "Height of the chute walls, normal to the floor.",
     .set = [](Draft& d, const Value& v) { d.site.chute.wall_height = v.number; }},

    {.section = "chute.reaches", .name = "slope", .kind = Kind::slope, .required = true, .range = {0.05, 5.0},
     .example_si = "\"2H:1V\"",
     .help = "Slope of this piece.", .set = [](Draft& d, const Value& v) { d.site.chute.reaches.back().slope = v.number; }},
    {.section = "chute.reaches", .name = "end_level", .kind = Kind::quantity, .dimension = dimension::length,
     .range = level_range, .example_si = "\"380 m\"", .example_us = "\"1250 ft\"",
     .help = "Bed level at its lower end; every piece but the last needs it, the last must not have it.",
     .set = [](Draft& d, const Value& v) { d.site.chute.reaches.back().end_level = v.number; }},

    {.section = "river", .name = "bed_level", .kind = Kind::quantity, .dimension = dimension::length, .required = true,
     .range = level_range, .example_si = "\"372 m\"", .example_us = "\"1220 ft\"",
     .help = "Level of the river bed at the end of the basin.",
     .set = [](Draft& d, const Value& v) { d.site.river.bed_level = v.number; }},
    {.section = "river", .name = "bed_degradation", .kind = Kind::quantity, .dimension = dimension::length,
     .range = {0.0, 100.0}, .preset = "\"0 m\"", .example_si = "\"0.5 m\"", .example_us = "\"1.5 ft\"",
     .help = "Allowance for the lowering of the river bed; it lowers the low tailwater only.",
     .set = [](Draft& d, const Value& v) { d.site.river.bed_degradation = v.number; }},
    {.section = "river", .name = "rating", .kind = Kind::table, .required = true, .group = "tailwater",
     .help = "Tailwater as a table of level over discharge, from a CSV file or inline.",
     .set = [](Draft& d, const Value&) { d.site.river.source = site::TailwaterSource::rating; }},
    {.section = "river", .name = "section", .kind = Kind::table, .required = true, .group = "tailwater",
     .help = "Tailwater as the normal depth of a trapezoidal reach, instead of a rating.", .set = [](Draft&, const Value&) {}},

    {.section = "river.rating", .name = "file", .kind = Kind::file, .required = true, .group = "rating",
     .example_si = "\"tailwater.csv\"",
     .help = "CSV file whose first row heads the columns with their units: discharge (m3/s), low (m), expected (m), high (m). "
             "Only discharge and expected (or level) are required; the columns may stand in any order.",
     .set = [](Draft&, const Value&) {}},
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

    {.section = "discharges", .name = "design_flood", .kind = Kind::quantity, .dimension = dimension::discharge,
     .required = true, .range = discharge_range, .example_si = "\"850 m3/s\"", .example_us = "\"30 000 ft3/s\"",
     .help = "Discharge for which the structure is designed.",
     .set = [](Draft& d, const Value& v) { d.site.discharges.design_flood = v.number; }},
    {.section = "discharges", .name = "check_flood", .kind = Kind::quantity, .dimension = dimension::discharge,
     .range = discharge_range, .preset_words = "the design flood", .example_si = "\"1100 m3/s\"",
     .example_us = "\"39 000 ft3/s\"",
     .help = "Largest discharge of the range.",
     .set = [](Draft& d, const Value& v) { d.site.discharges.check_flood = v.number; },
     .derive = [](Draft& d) { return d.site.discharges.check_flood = d.site.discharges.design_flood; }},
    {.section = "discharges", .name = "smallest", .kind = Kind::quantity, .dimension = dimension::discharge,
     .range = discharge_range, .preset_words = "5 % of the design flood", .example_si = "\"40 m3/s\"",
     .example_us = "\"1400 ft3/s\"",
     .help = "Smallest discharge of the range.", .set = [](Draft& d, const Value& v) { d.site.discharges.smallest = v.number; },
     .derive = [](Draft& d) { return d.site.discharges.smallest = 0.05 * d.site.discharges.design_flood; }},
    {.section = "discharges", .name = "steps", .kind = Kind::whole_number, .range = {2.0, 2000.0}, .preset = "40",
     .example_si = "60",
     .help = "Number of discharges from the smallest to the check flood, both included.",
     .set = [](Draft& d, const Value& v) { d.site.discharges.steps = static_cast<int>(v.number); }},
    {.section = "discharges", .name = "floods", .kind = Kind::tables,
     .help = "Floods with a name, computed besides the range.",
     .set = [](Draft& d, const Value&) { d.site.discharges.floods.push_back({}); }},

    {.section = "discharges.floods", .name = "name", .kind = Kind::text, .required = true, .example_si = "\"100-year flood\"",
     .help = "Name of the flood.", .set = [](Draft& d, const Value& v) { d.site.discharges.floods.back().name = v.text; }},
    {.section = "discharges.floods", .name = "discharge", .kind = Kind::quantity, .dimension = dimension::discharge,
     .required = true, .range = discharge_range, .example_si = "\"620 m3/s\"", .example_us = "\"22 000 ft3/s\"",
     .help = "Its discharge.", .set = [](Draft& d, const Value& v) { d.site.discharges.floods.back().discharge = v.number; }},
    {.section = "discharges.floods", .name = "return_period", .kind = Kind::number, .range = {1.0, 1e9}, .example_si = "100",
     .help = "Its return period in years.",
     .set = [](Draft& d, const Value& v) { d.site.discharges.floods.back().return_period = v.number; }},

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
     .derive = [](Draft& d) { return d.site.basin.width = d.site.chute.end_width; }},
    {.section = "basin", .name = "largest_width", .kind = Kind::quantity, .dimension = dimension::length, .range = width_range,
     .example_si = "\"60 m\"", .example_us = "\"200 ft\"",
     .help = "Largest width allowed where the width is free.",
     .set = [](Draft& d, const Value& v) { d.site.basin.largest_width = v.number; }},
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

std::span<const Key> schema() {
  return rows;
}

}  // namespace quell::io
