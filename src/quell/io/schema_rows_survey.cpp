// Rows of [river.survey] and [river.bed].
#include "quell/io/schema_rows.h"

namespace quell::io {
namespace {

constexpr Condition at_a_slope{"control", "normal", "only normal depth at the lower end needs a slope"};
constexpr Condition at_a_level{"control", "level", "only a known level at the lower end is given outright"};
constexpr Condition at_a_table{"control", "table", "only a rating at the lower end stands in a file"};

constexpr Range surveyed_n_range{0.008, 0.5};
constexpr Range station_range{-1e5, 1e5};

site::CrossSection& last_section(Draft& d) {
  return d.site.river.reach.sections.back();
}

// clang-format off: a table is read in rows
const Key rows[] = {
    {.section = "river.survey", .name = "control", .kind = Kind::choice, .required = true, .choices = "level|normal|critical|table",
     .example_si = "\"normal\"",
     .help = "What holds the water at the last section: a known level (a lake, a confluence), normal depth at a slope, critical depth "
             "(rapids, a sill, a fall), or a table of level over discharge.",
     .set = [](Draft& d, const Value& v) { d.site.river.reach.control = static_cast<site::RiverControl>(v.choice); }},
    {.section = "river.survey", .name = "control_slope", .kind = Kind::slope, .required = true, .only_for = at_a_slope,
     .range = {1e-6, 0.2}, .example_si = "0.002",
     .help = "Slope of the river below the last section.",
     .set = [](Draft& d, const Value& v) { d.site.river.reach.control_slope = v.number; }},
    {.section = "river.survey", .name = "control_level", .kind = Kind::spread, .dimension = dimension::length, .required = true,
     .only_for = at_a_level, .range = level_range, .example_si = "{ low = \"361 m\", expected = \"361.5 m\", high = \"363 m\" }",
     .example_us = "\"1186 ft\"",
     .help = "Level of the water at the last section, one or three.",
     .set = [](Draft& d, const Value& v) { d.site.river.reach.control_level = v.cases; }},
    {.section = "river.survey", .name = "control_file", .kind = Kind::file, .required = true, .only_for = at_a_table,
     .example_si = "\"lower_end.csv\"",
     .help = "CSV file with a rating at the last section, of the same columns as that of river.rating.",
     .set = kept_elsewhere},
    {.section = "river.survey", .name = "low_n_factor", .kind = Kind::number, .range = {0.5, 1.0}, .preset = "0.8",
     .example_si = "0.85",
     .help = "Factor on every Manning's n for the low tailwater.",
     .set = [](Draft& d, const Value& v) { d.site.river.reach.low_n_factor = v.number; }},
    {.section = "river.survey", .name = "high_n_factor", .kind = Kind::number, .range = {1.0, 2.0}, .preset = "1.25",
     .example_si = "1.2",
     .help = "Factor on every Manning's n for the high tailwater.",
     .set = [](Draft& d, const Value& v) { d.site.river.reach.high_n_factor = v.number; }},
    {.section = "river.survey", .name = "contraction", .kind = Kind::number, .range = {0.0, 0.8}, .preset = "0.1",
     .example_si = "0.1",
     .help = "Loss coefficient where the flow contracts, on the change of velocity head.",
     .set = [](Draft& d, const Value& v) { d.site.river.reach.contraction = v.number; }},
    {.section = "river.survey", .name = "expansion", .kind = Kind::number, .range = {0.0, 1.0}, .preset = "0.3", .example_si = "0.5",
     .help = "Loss coefficient where the flow expands, on the change of velocity head.",
     .set = [](Draft& d, const Value& v) { d.site.river.reach.expansion = v.number; }},
    {.section = "river.survey", .name = "friction_mean", .kind = Kind::choice,
     .choices = "conveyance|arithmetic|geometric|harmonic", .preset = "\"conveyance\"", .example_si = "\"geometric\"",
     .help = "Mean of the friction slopes of two sections.",
     .set = [](Draft& d, const Value& v) { d.site.river.reach.friction_mean = static_cast<site::FrictionMean>(v.choice); }},
    {.section = "river.survey", .name = "regime", .kind = Kind::choice, .choices = "subcritical|mixed",
     .preset = "\"subcritical\"", .example_si = "\"mixed\"",
     .help = "Whether supercritical stretches are followed too.",
     .set = [](Draft& d, const Value& v) { d.site.river.reach.is_mixed = v.choice == 1; }},
    {.section = "river.survey", .name = "longest_spacing", .kind = Kind::quantity, .dimension = dimension::length,
     .range = {0.1, 1e5}, .preset_words = "as surveyed", .example_si = "\"50 m\"", .example_us = "\"160 ft\"",
     .help = "Longest distance between sections; between those farther apart, others are interpolated.",
     .set = [](Draft& d, const Value& v) { d.site.river.reach.longest_spacing = v.number; }},
    {.section = "river.survey", .name = "uncertainty", .kind = Kind::uncertainty, .dimension = dimension::length,
     .example_si = "{ uncertainty = \"tailwater, field survey, fair n\" }",
     .help = "Uncertainty of the level at a given discharge, around the computed one.", .set = kept_elsewhere},
    {.section = "river.survey", .name = "sections", .kind = Kind::tables, .required = true,
     .help = "Surveyed cross-sections, going downstream; the first one is where the tailwater is wanted.",
     .set = [](Draft& d, const Value&) { d.site.river.reach.sections.push_back({}); }},

    {.section = "river.survey.sections", .name = "file", .kind = Kind::file, .required = true, .example_si = "\"section_1.csv\"",
     .help = "CSV file with the columns station, level and, where it varies along the section, n.",
     .set = [](Draft& d, const Value& v) { last_section(d).file = v.text; }},
    {.section = "river.survey.sections", .name = "distance", .kind = Kind::quantity, .dimension = dimension::length,
     .required = true, .range = {0.0, 1e6}, .example_si = "\"120 m\"", .example_us = "\"400 ft\"",
     .help = "Distance along the channel downstream of the basin's end, increasing from section to section.",
     .set = [](Draft& d, const Value& v) { last_section(d).distance = v.number; }},
    {.section = "river.survey.sections", .name = "left_distance", .kind = Kind::quantity, .dimension = dimension::length,
     .range = {1e-12, 1e6}, .preset_words = "as along the channel", .example_si = "\"110 m\"", .example_us = "\"360 ft\"",
     .help = "Distance along the left plain from the section before.",
     .set = [](Draft& d, const Value& v) { last_section(d).left_distance = v.number; }},
    {.section = "river.survey.sections", .name = "right_distance", .kind = Kind::quantity, .dimension = dimension::length,
     .range = {1e-12, 1e6}, .preset_words = "as along the channel", .example_si = "\"130 m\"", .example_us = "\"430 ft\"",
     .help = "Distance along the right plain from the section before.",
     .set = [](Draft& d, const Value& v) { last_section(d).right_distance = v.number; }},
    {.section = "river.survey.sections", .name = "left_bank", .kind = Kind::quantity, .dimension = dimension::length,
     .range = station_range, .preset_words = "the first station", .example_si = "\"24 m\"", .example_us = "\"80 ft\"",
     .help = "Station of the left bank, where the left plain meets the channel.",
     .set = [](Draft& d, const Value& v) { last_section(d).left_bank = v.number; }},
    {.section = "river.survey.sections", .name = "right_bank", .kind = Kind::quantity, .dimension = dimension::length,
     .range = station_range, .preset_words = "the last station", .example_si = "\"71 m\"", .example_us = "\"230 ft\"",
     .help = "Station of the right bank.",
     .set = [](Draft& d, const Value& v) { last_section(d).right_bank = v.number; }},
    {.section = "river.survey.sections", .name = "n_channel", .kind = Kind::number, .range = surveyed_n_range, .example_si = "0.035",
     .help = "Manning's n of the channel; needed where the file has no column n.",
     .set = [](Draft& d, const Value& v) { last_section(d).manning_n[1] = v.number; }},
    {.section = "river.survey.sections", .name = "n_left", .kind = Kind::number, .range = surveyed_n_range,
     .preset_words = "that of the channel", .example_si = "0.06",
     .help = "Manning's n of the left plain.",
     .set = [](Draft& d, const Value& v) { last_section(d).manning_n[0] = v.number; },
     .derive = [](Draft& d) { return if_known(last_section(d).manning_n[0] = last_section(d).manning_n[1]); }},
    {.section = "river.survey.sections", .name = "n_right", .kind = Kind::number, .range = surveyed_n_range,
     .preset_words = "that of the channel", .example_si = "0.06",
     .help = "Manning's n of the right plain.",
     .set = [](Draft& d, const Value& v) { last_section(d).manning_n[2] = v.number; },
     .derive = [](Draft& d) { return if_known(last_section(d).manning_n[2] = last_section(d).manning_n[1]); }},

    {.section = "river.bed", .name = "mean_size", .kind = Kind::quantity, .dimension = dimension::length, .required = true,
     .range = {1e-5, 2.0}, .example_si = "\"24 mm\"", .example_us = "\"1 in\"",
     .help = "Size of the bed material than which half is finer, by weight.",
     .set = [](Draft& d, const Value& v) { d.site.river.bed.mean_size = v.number; }},
    {.section = "river.bed", .name = "coarse_size", .kind = Kind::quantity, .dimension = dimension::length, .range = {1e-5, 5.0},
     .preset_words = "2.1 times mean_size", .example_si = "\"60 mm\"", .example_us = "\"2.4 in\"",
     .help = "Size than which nine tenths are finer.",
     .set = [](Draft& d, const Value& v) { d.site.river.bed.coarse_size = v.number; },
     .derive = [](Draft& d) { return if_known(d.site.river.bed.coarse_size = 2.1 * d.site.river.bed.mean_size); }},
    {.section = "river.bed", .name = "armour_size", .kind = Kind::quantity, .dimension = dimension::length, .range = {1e-5, 5.0},
     .preset_words = "the mean of the published methods", .example_si = "\"90 mm\"", .example_us = "\"3.5 in\"",
     .help = "Smallest size that the dominant discharge does not move.",
     .set = [](Draft& d, const Value& v) { d.site.river.bed.armour_size = v.number; }},
    {.section = "river.bed", .name = "coarser_share", .kind = Kind::number, .range = {0.0, 1.0}, .example_si = "0.12",
     .help = "Share of the bed, by weight, that is coarser than the armour size.",
     .set = [](Draft& d, const Value& v) { d.site.river.bed.coarser_share = v.number; }},
    {.section = "river.bed", .name = "armour_thickness", .kind = Kind::quantity, .dimension = dimension::length,
     .range = {1e-4, 5.0}, .example_si = "\"0.15 m\"", .example_us = "\"0.5 ft\"",
     .help = "Thickness of a complete armour layer.",
     .set = [](Draft& d, const Value& v) { d.site.river.bed.armour_thickness = v.number; }},
    {.section = "river.bed", .name = "dominant_discharge", .kind = Kind::quantity, .dimension = dimension::discharge,
     .required = true, .range = discharge_range, .example_si = "\"240 m3/s\"", .example_us = "\"8500 ft3/s\"",
     .help = "Discharge that shapes the bed.",
     .set = [](Draft& d, const Value& v) { d.site.river.bed.dominant_discharge = v.number; }},
    {.section = "river.bed", .name = "bed_width", .kind = Kind::quantity, .dimension = dimension::length, .required = true,
     .range = width_range, .example_si = "\"55 m\"", .example_us = "\"180 ft\"",
     .help = "Width of the bed at that discharge.",
     .set = [](Draft& d, const Value& v) { d.site.river.bed.bed_width = v.number; }},
    {.section = "river.bed", .name = "mean_depth", .kind = Kind::quantity, .dimension = dimension::length, .required = true,
     .range = {0.01, 200.0}, .example_si = "\"2.1 m\"", .example_us = "\"7 ft\"",
     .help = "Mean depth at that discharge.",
     .set = [](Draft& d, const Value& v) { d.site.river.bed.mean_depth = v.number; }},
    {.section = "river.bed", .name = "bed_slope", .kind = Kind::slope, .required = true, .range = {1e-6, 0.2},
     .example_si = "0.003",
     .help = "Slope of the bed today.", .set = [](Draft& d, const Value& v) { d.site.river.bed.bed_slope = v.number; }},
    {.section = "river.bed", .name = "manning_n", .kind = Kind::number, .required = true, .range = natural_n_range,
     .example_si = "0.03",
     .help = "Manning's n of the grains and forms of the bed.",
     .set = [](Draft& d, const Value& v) { d.site.river.bed.manning_n = v.number; }},
    {.section = "river.bed", .name = "control_distance", .kind = Kind::quantity, .dimension = dimension::length,
     .range = {1e-12, 1e6}, .preset_words = "none known", .example_si = "\"1800 m\"", .example_us = "\"5900 ft\"",
     .help = "Distance downstream to a bed that cannot sink: rock, a sill.",
     .set = [](Draft& d, const Value& v) { d.site.river.bed.control_distance = v.number; }},
};
// clang-format on

}  // namespace

std::span<const Key> survey_rows() {
  return rows;
}

}  // namespace quell::io
