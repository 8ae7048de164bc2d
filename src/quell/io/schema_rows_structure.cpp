// Rows of [crest] and [chute].
#include "quell/io/schema_rows.h"

namespace quell::io {
namespace {

using site::CrestEdge;
using site::CrestShape;
using site::UpstreamFace;

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

// clang-format off: a table is read in rows
const Key rows[] = {
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
     .derive = [](Draft& d) { return if_known(d.site.chute.end_width = d.site.chute.width); }},
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
};
// clang-format on

}  // namespace

std::span<const Key> structure_rows() {
  return rows;
}

}  // namespace quell::io
