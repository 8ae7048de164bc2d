// Rows of [basin.choices]: choices between published rules, the conservative one by default, and sizes that a designer sets.
#include "quell/io/schema_rows.h"

namespace quell::io {
namespace {

site::BasinChoices& choices(Draft& d) {
  return d.site.basin.choices;
}

// clang-format off: a table is read in rows
const Key rows[] = {
    {.section = "basin", .name = "choices", .kind = Kind::table,
     .help = "Choices between published rules, each with the conservative one as its default, and sizes that the designer sets."},

    {.section = "basin.choices", .name = "invert_curve", .kind = Kind::number, .range = {4.0, 20.0}, .preset = "5",
     .example_si = "4",
     .help = "Smallest radius of the curve between a steep chute and the apron over the depth there; 4 is the least published.",
     .set = [](Draft& d, const Value& v) { choices(d).invert_curve = v.number; }},
    {.section = "basin.choices", .name = "type_1_length", .kind = Kind::choice, .choices = "six|jump", .preset = "\"six\"",
     .example_si = "\"jump\"",
     .help = "Length of the plain apron at low Froude numbers: six sequent depths, or the length of the free jump.",
     .set = [](Draft& d, const Value& v) { choices(d).type_1_long = v.choice == 0; }},
    {.section = "basin.choices", .name = "type_2_tailwater", .kind = Kind::choice, .choices = "sequent|sweep_out",
     .preset = "\"sequent\"", .example_si = "\"sweep_out\"",
     .help = "Margin of 5 % of the Type II basin's tailwater: on the sequent depth, or above sweep-out.",
     .set = [](Draft& d, const Value& v) { choices(d).type_2_full = v.choice == 0; }},
    {.section = "basin.choices", .name = "apron_slope", .kind = Kind::slope, .range = {0.02, 0.30}, .preset = "\"10H:1V\"",
     .example_si = "\"8H:1V\"", .help = "Slope of the sloping apron.",
     .set = [](Draft& d, const Value& v) { choices(d).apron_slope = v.number; }},
    {.section = "basin.choices", .name = "apron_share", .kind = Kind::number, .range = {0.6, 1.0}, .preset = "1",
     .example_si = "0.6",
     .help = "Length of the sloping apron over that of its jump; on rock about 0.6 is usual.",
     .set = [](Draft& d, const Value& v) { choices(d).apron_share = v.number; }},
    {.section = "basin.choices", .name = "saf_tailwater", .kind = Kind::choice, .choices = "reserve|published",
     .preset = "\"reserve\"", .example_si = "\"published\"",
     .help = "Tailwater of the SAF basins: with a reserve of 5 % of the sequent depth, or as published.",
     .set = [](Draft& d, const Value& v) { choices(d).saf_reserve = v.choice == 0; }},
    {.section = "basin.choices", .name = "saf_flare", .kind = Kind::number, .range = {0.001, 0.5},
     .preset_words = "the largest allowed", .example_si = "0.05",
     .help = "Flare of each wall of the flared SAF basin, lateral per longitudinal.",
     .set = [](Draft& d, const Value& v) { choices(d).saf_flare = v.number; }},
    {.section = "basin.choices", .name = "flared_sequent_depth", .kind = Kind::choice, .choices = "larger|radial",
     .preset = "\"larger\"", .example_si = "\"radial\"",
     .help = "Sequent depth of the flared SAF basin: the larger of the rectangular and the radial one, or the radial one.",
     .set = [](Draft& d, const Value& v) { choices(d).flared_larger = v.choice == 0; }},
    {.section = "basin.choices", .name = "baffle_rows", .kind = Kind::whole_number, .range = {0.0, 2.0}, .preset = "2",
     .example_si = "1", .help = "Rows of baffles of the end-sill basin.",
     .set = [](Draft& d, const Value& v) { choices(d).baffle_rows = static_cast<int>(v.number); }},
    {.section = "basin.choices", .name = "baffled_tailwater", .kind = Kind::choice, .choices = "full|reduced",
     .preset = "\"full\"", .example_si = "\"reduced\"",
     .help = "Tailwater of the end-sill basin: the sequent depth, or 0.85 of it, which is accepted with two rows of baffles.",
     .set = [](Draft& d, const Value& v) { choices(d).baffled_full = v.choice == 0; }},
    {.section = "basin.choices", .name = "impact_width", .kind = Kind::choice, .choices = "wide|points", .preset = "\"wide\"",
     .example_si = "\"points\"",
     .help = "Width of the impact basin: the wider rule, or straight between the points of the chart that are known.",
     .set = [](Draft& d, const Value& v) { choices(d).impact_wide = v.choice == 0; }},
    {.section = "basin.choices", .name = "drop_block_height", .kind = Kind::number, .range = {0.8, 0.9}, .preset = "0.9",
     .example_si = "0.8",
     .help = "Height of the blocks of the baffled apron over critical depth: 0.9 for canals, 0.8 for spillways.",
     .set = [](Draft& d, const Value& v) { choices(d).drop_block_height = v.number; }},
    {.section = "basin.choices", .name = "roller_lip_angle", .kind = Kind::angle, .range = {20.0, 60.0}, .preset = "\"45 deg\"",
     .example_si = "\"45 deg\"", .help = "Lip angle of the solid roller bucket.",
     .set = [](Draft& d, const Value& v) { choices(d).roller_lip_angle = v.number; }},
    {.section = "basin.choices", .name = "flip_lip_angle", .kind = Kind::angle, .range = {10.0, 45.0}, .preset = "\"30 deg\"",
     .example_si = "\"25 deg\"", .help = "Lip angle of the flip bucket; 20 to 35 degrees are usual.",
     .set = [](Draft& d, const Value& v) { choices(d).flip_lip_angle = v.number; }},
    {.section = "basin.choices", .name = "flip_clearance", .kind = Kind::quantity, .dimension = dimension::length,
     .range = {0.0, 50.0}, .preset = "\"1 m\"", .example_si = "\"2 m\"", .example_us = "\"6 ft\"",
     .help = "Invert of the flip bucket above the highest tailwater.",
     .set = [](Draft& d, const Value& v) { choices(d).flip_clearance = v.number; }},
    {.section = "basin.choices", .name = "rock_block_size", .kind = Kind::quantity, .dimension = dimension::length,
     .range = {0.001, 5.0}, .preset = "\"0.25 m\"", .example_si = "\"0.4 m\"", .example_us = "\"1 ft\"",
     .help = "Size of the blocks or grains of the bed in the plunge pool of a flip bucket; 0.25 m is usual for rock.",
     .set = [](Draft& d, const Value& v) { choices(d).rock_block_size = v.number; }},
    {.section = "basin.choices", .name = "sound_rock", .kind = Kind::choice, .choices = "no|yes", .preset = "\"no\"",
     .example_si = "\"yes\"", .help = "The river bed below is rock that a specialist has shown to stand a plunge pool.",
     .set = [](Draft& d, const Value& v) { choices(d).is_sound_rock = v.choice == 1; }},
    {.section = "basin.choices", .name = "pool_stone_size", .kind = Kind::quantity, .dimension = dimension::length,
     .range = {0.02, 3.0}, .preset_words = "the largest that keeps the pool two stones deep", .example_si = "\"0.5 m\"",
     .example_us = "\"1.5 ft\"", .help = "Median stone of the riprap-lined pool.",
     .set = [](Draft& d, const Value& v) { choices(d).pool_stone_size = v.number; }},
};
// clang-format on

}  // namespace

std::span<const Key> choice_rows() {
  return rows;
}

}  // namespace quell::io
