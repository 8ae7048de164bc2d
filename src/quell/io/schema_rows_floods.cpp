// Rows of [floods], [reservoir] and [discharges].
#include "quell/io/schema_rows.h"

namespace quell::io {
namespace {

constexpr Condition skewed{"law", "log_pearson_3", "only log-Pearson III takes a skew"};
constexpr Condition measured{"shape", "measured", "only a measured inflow stands in a file"};
constexpr Condition shaped{"shape", "gamma|dimensionless", "a measured inflow holds its own times and flows"};
constexpr Condition gamma_form{"shape", "gamma", "only the gamma form has an exponent"};

// clang-format off: a table is read in rows
const Key rows[] = {
    {.section = "floods", .name = "climate_factor", .kind = Kind::number, .range = {0.5, 3.0}, .preset = "1", .example_si = "1.2",
     .help = "Factor on every ordinate of every inflow.",
     .set = [](Draft& d, const Value& v) { d.site.floods.climate_factor = v.number; }},
    {.section = "floods", .name = "record", .kind = Kind::table, .all_or_nothing = true,
     .help = "Record of yearly floods, to which a law is fitted."},
    {.section = "floods", .name = "inflows", .kind = Kind::tables,
     .help = "Inflows to the reservoir, each routed through it. They need [reservoir].",
     .set = [](Draft& d, const Value&) { d.site.floods.inflows.push_back({}); }},

    {.section = "floods.record", .name = "file", .kind = Kind::file, .required = true, .example_si = "\"yearly_floods.csv\"",
     .help = "CSV file with the columns year, which may be left out, and flow.", .set = kept_elsewhere},
    {.section = "floods.record", .name = "law", .kind = Kind::choice, .choices = "log_pearson_3|gumbel",
     .preset = "\"log_pearson_3\"", .example_si = "\"gumbel\"",
     .help = "Law fitted to the record.",
     .set =
         [](Draft& d, const Value& v) {
           d.site.floods.record.law = v.choice == 0 ? site::FrequencyLaw::log_pearson_3 : site::FrequencyLaw::gumbel;
         }},
    {.section = "floods.record", .name = "plotting", .kind = Kind::choice, .choices = "cunnane|weibull|hazen|gringorten|blom",
     .preset = "\"cunnane\"", .example_si = "\"weibull\"",
     .help = "Formula for where the floods of the record are plotted.",
     .set = [](Draft& d, const Value& v) { d.site.floods.record.plotting = static_cast<site::PlottingPosition>(v.choice); }},
    {.section = "floods.record", .name = "confidence", .kind = Kind::number, .range = {0.5, 0.99}, .preset = "0.9",
     .example_si = "0.95",
     .help = "Confidence of the limits drawn beside the law, between both.",
     .set = [](Draft& d, const Value& v) { d.site.floods.record.confidence = v.number; }},
    {.section = "floods.record", .name = "regional_skew", .kind = Kind::number, .only_for = skewed, .range = {-3.0, 3.0},
     .example_si = "-0.1",
     .help = "Skew of the logarithms of floods in the region, which is weighted with that of the record.",
     .set =
         [](Draft& d, const Value& v) {
           d.site.floods.record.has_regional_skew = true;
           d.site.floods.record.regional_skew = v.number;
         }},
    {.section = "floods.record", .name = "regional_skew_error", .kind = Kind::number, .only_for = skewed, .range = {1e-6, 10.0},
     .preset_words = "0.302 where regional_skew is given", .example_si = "0.2",
     .help = "Mean square error of regional_skew.",
     .set = [](Draft& d, const Value& v) { d.site.floods.record.regional_skew_error = v.number; },
     .derive =
         [](Draft& d) {
           const site::FloodRecord& record = d.site.floods.record;
           return record.has_regional_skew ? std::optional<double>(record.regional_skew_error) : std::nullopt;
         }},

    {.section = "floods.inflows", .name = "name", .kind = Kind::text, .required = true, .example_si = "\"100-year inflow\"",
     .help = "Name of the inflow.", .set = [](Draft& d, const Value& v) { d.site.floods.inflows.back().name = v.text; }},
    {.section = "floods.inflows", .name = "return_period", .kind = Kind::number, .range = {1.0, 1e9}, .example_si = "100",
     .help = "Its return period in years.",
     .set = [](Draft& d, const Value& v) { d.site.floods.inflows.back().return_period = v.number; }},
    {.section = "floods.inflows", .name = "shape", .kind = Kind::choice, .choices = "measured|gamma|dimensionless",
     .preset = "\"measured\"", .example_si = "\"gamma\"",
     .help = "Shape over time: measured (from a file), gamma, or the standard dimensionless unit hydrograph.",
     .set = [](Draft& d, const Value& v) { d.site.floods.inflows.back().shape = static_cast<site::InflowShape>(v.choice); }},
    {.section = "floods.inflows", .name = "file", .kind = Kind::file, .required = true, .only_for = measured,
     .example_si = "\"inflow_100.csv\"",
     .help = "CSV file with the columns time and flow.", .set = kept_elsewhere},
    {.section = "floods.inflows", .name = "time_to_peak", .kind = Kind::quantity, .dimension = dimension::time, .required = true,
     .only_for = shaped, .range = {1.0, 1e8}, .example_si = "\"6 h\"", .help = "Time from the start of the inflow to its peak.",
     .set = [](Draft& d, const Value& v) { d.site.floods.inflows.back().time_to_peak = v.number; }},
    {.section = "floods.inflows", .name = "peak", .kind = Kind::quantity, .dimension = dimension::discharge, .only_for = shaped,
     .range = discharge_range, .preset_words = "from the record at the return period", .example_si = "\"900 m3/s\"",
     .example_us = "\"32 000 ft3/s\"",
     .help = "Its peak, base flow and all.",
     .set = [](Draft& d, const Value& v) { d.site.floods.inflows.back().peak = v.number; }},
    {.section = "floods.inflows", .name = "base_flow", .kind = Kind::quantity, .dimension = dimension::discharge,
     .only_for = shaped, .range = {0.0, 1e6}, .preset = "\"0 m3/s\"", .example_si = "\"15 m3/s\"", .example_us = "\"500 ft3/s\"",
     .help = "Flow of the river before and after.",
     .set = [](Draft& d, const Value& v) { d.site.floods.inflows.back().base_flow = v.number; }},
    {.section = "floods.inflows", .name = "exponent", .kind = Kind::number, .only_for = gamma_form, .range = {0.5, 20.0},
     .preset = "3.7", .example_si = "3",
     .help = "Exponent of the gamma form; the larger, the shorter the flood.",
     .set = [](Draft& d, const Value& v) { d.site.floods.inflows.back().exponent = v.number; }},

    {.section = "reservoir", .name = "file", .kind = Kind::file, .required = true, .example_si = "\"storage.csv\"",
     .help = "CSV file with the columns level and area, or level and storage.", .set = kept_elsewhere},
    {.section = "reservoir", .name = "initial_level", .kind = Kind::quantity, .dimension = dimension::length,
     .range = level_range, .preset_words = "the level that the gates hold, or the crest", .example_si = "\"412.5 m\"",
     .example_us = "\"1353 ft\"",
     .help = "Level before the flood.",
     .set =
         [](Draft& d, const Value& v) {
           d.site.reservoir.has_initial_level = true;
           d.site.reservoir.initial_level = v.number;
         }},
    {.section = "reservoir", .name = "dam_crest_level", .kind = Kind::quantity, .dimension = dimension::length,
     .range = level_range, .example_si = "\"422 m\"", .example_us = "\"1385 ft\"",
     .help = "Level of the top of the dam.",
     .set =
         [](Draft& d, const Value& v) {
           d.site.reservoir.has_dam_crest = true;
           d.site.reservoir.dam_crest_level = v.number;
         }},
    {.section = "reservoir", .name = "freeboard", .kind = Kind::quantity, .dimension = dimension::length, .range = {0.0, 20.0},
     .preset_words = "1 m where dam_crest_level is given", .example_si = "\"1.5 m\"", .example_us = "\"5 ft\"",
     .help = "Height of the top of the dam wanted above the highest level of the check flood.",
     .set = [](Draft& d, const Value& v) { d.site.reservoir.freeboard = v.number; },
     .derive =
         [](Draft& d) {
           site::Reservoir& reservoir = d.site.reservoir;
           return reservoir.has_dam_crest ? std::optional<double>(reservoir.freeboard = 1.0) : std::nullopt;
         }},

    {.section = "discharges", .name = "design_flood", .kind = Kind::quantity, .dimension = dimension::discharge,
     .required = true, .group = "design flood", .range = discharge_range, .example_si = "\"850 m3/s\"", .example_us = "\"30 000 ft3/s\"",
     .help = "Discharge for which the structure is designed.",
     .set = [](Draft& d, const Value& v) { d.site.discharges.design_flood = v.number; }},
    {.section = "discharges", .name = "check_flood", .kind = Kind::quantity, .dimension = dimension::discharge,
     .group = "check flood", .range = discharge_range, .preset_words = "the design flood", .example_si = "\"1100 m3/s\"",
     .example_us = "\"39 000 ft3/s\"",
     .help = "Largest discharge of the range.",
     .set = [](Draft& d, const Value& v) { d.site.discharges.check_flood = v.number; },
     .derive = [](Draft& d) { return if_known(d.site.discharges.check_flood = d.site.discharges.design_flood); }},
    {.section = "discharges", .name = "design_inflow", .kind = Kind::text, .required = true, .group = "design flood",
     .example_si = "\"100-year inflow\"",
     .help = "Name of the inflow whose routed outflow is the design flood, instead of design_flood.",
     .set = [](Draft& d, const Value& v) { d.site.discharges.design_inflow = v.text; }},
    {.section = "discharges", .name = "check_inflow", .kind = Kind::text, .group = "check flood",
     .example_si = "\"1000-year inflow\"",
     .help = "Name of the inflow whose routed outflow is the check flood, instead of check_flood.",
     .set = [](Draft& d, const Value& v) { d.site.discharges.check_inflow = v.text; }},
    {.section = "discharges", .name = "smallest", .kind = Kind::quantity, .dimension = dimension::discharge,
     .range = discharge_range, .preset_words = "5 % of the design flood", .example_si = "\"40 m3/s\"",
     .example_us = "\"1400 ft3/s\"",
     .help = "Smallest discharge of the range.", .set = [](Draft& d, const Value& v) { d.site.discharges.smallest = v.number; },
     .derive = [](Draft& d) { return if_known(d.site.discharges.smallest = 0.05 * d.site.discharges.design_flood); }},
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
};
// clang-format on

}  // namespace

std::span<const Key> flood_rows() {
  return rows;
}

}  // namespace quell::io
