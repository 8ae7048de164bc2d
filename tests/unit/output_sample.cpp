#include "unit/output_sample.h"

#include <cmath>

#include "quell/base/constants.h"

namespace quell::test {

namespace {

using dissipators::SizingInput;
using dissipators::Structure;
using dissipators::TailwaterNeed;
using dissipators::TypeRecord;

constexpr double apron = 368.30, width = 40.0, slope = 1.25, crest = 412.0, head = 6.5;

Outcome<void> unused(std::span<const double>, std::span<double>) {
  return {};
}

constexpr Symbol sequent_in[] = {{"y1", "depth before the jump", dimension::length, {0.01, 10.0}},
                                 {"F1", "Froude number before the jump", dimension::none, {1.7, 20.0}}};
constexpr Symbol sequent_out[] = {{"y2", "sequent depth", dimension::length, above_zero}};
constexpr Method sequent{"sample.sequent_depth",
                         "Sequent depth on a flat apron",
                         EquationKind::explicit_form,
                         "y2 = 0.5*y1*(sqrt(1 + 8*F1^2) - 1)",
                         sequent_in,
                         sequent_out,
                         "momentum",
                         "record",
                         Provenance::derived,
                         "exact for uniform velocity",
                         "Friction on the apron left out.",
                         nullptr,
                         &unused};

constexpr Symbol toe_in[] = {{"E1", "energy head above the apron", dimension::length, above_zero},
                             {"q", "unit discharge", dimension::unit_discharge, {0.1, 30.0}}};
constexpr Symbol toe_out[] = {{"y1", "depth at the toe", dimension::length, above_zero}};
constexpr Method toe_depth{"sample.toe_depth",
                           "Depth at the toe from the energy head",
                           EquationKind::residual,
                           "E1 = y1 + q^2/(2*g*y1^2)",
                           toe_in,
                           toe_out,
                           "momentum",
                           "record",
                           Provenance::derived,
                           "exact for uniform velocity",
                           {},
                           nullptr,
                           &unused};

constexpr Symbol profile_in[] = {{"Q", "discharge", dimension::discharge, above_zero}};
constexpr Symbol profile_out[] = {{"E1", "energy head above the apron", dimension::length, above_zero}};
constexpr Method profile{"sample.profile",
                         "Energy head at the toe",
                         EquationKind::procedure,
                         "The energy level is integrated down the chute; a < b & c are words with marks.",
                         profile_in,
                         profile_out,
                         "peterka_1984",
                         "section 2",
                         Provenance::memory,
                         "about 2 %",
                         {},
                         nullptr,
                         &unused};

constexpr std::string_view failure_modes[] = {"The jump is swept out where the tailwater falls short.",
                                              "Cavitation on the blocks at high entering velocity."};

constexpr TypeRecord records[] = {{.id = "sample_a",
                                   .name = "Blocks and dentated sill",
                                   .summary = "A short basin with chute blocks and a dentated end sill.",
                                   .source = "peterka_1984",
                                   .place = "section 2",
                                   .provenance = Provenance::memory,
                                   .failure_modes = failure_modes},
                                  {.id = "sample_b",
                                   .name = "Blocks, baffles and solid sill",
                                   .summary = "A shorter basin for moderate velocities.",
                                   .source = "peterka_1984",
                                   .place = "section 3",
                                   .provenance = Provenance::memory,
                                   .failure_modes = failure_modes},
                                  {.id = "sample_c",
                                   .name = "Impact wall",
                                   .summary = "A hanging wall for small discharges.",
                                   .source = "momentum",
                                   .place = "record",
                                   .provenance = Provenance::common_practice,
                                   .failure_modes = failure_modes}};

class SampleType final : public dissipators::Dissipator {
 public:
  explicit SampleType(std::size_t index) : index_(index) {}
  const TypeRecord& record() const override { return records[index_]; }
  TailwaterNeed tailwater_need(const site::ToeFlow& flow, const dissipators::Setting&) const noexcept override {
    return {0.83 * flow.y2, 1.0 * flow.y2, 1.1 * flow.y2, 1.3 * flow.y2};
  }
  double length(const site::ToeFlow& flow, const dissipators::Setting&) const noexcept override { return 4.3 * flow.y2; }
  Structure size(const SizingInput&, Working*) const override { return {}; }
  void trace_tailwater_need(const site::ToeFlow&, const dissipators::Setting&, Working&) const override {}

 private:
  std::size_t index_;
};

const SampleType types[] = {SampleType(0), SampleType(1), SampleType(2)};

double head_on_crest(double discharge) {
  return std::pow(discharge / (2.15 * width), 2.0 / 3.0);
}

double tailwater(double discharge, double share) {
  return 377.0 + share * 7.2 * std::pow(discharge / 1200.0, 0.6);
}

double depth_for(double q, double energy) {
  double depth = q / std::sqrt(2.0 * gravity * energy);
  for (int i = 0; i < 30; ++i) depth = q / std::sqrt(2.0 * gravity * (energy - depth));
  return depth;
}

site::ToeFlow toe_of(double discharge) {
  site::ToeFlow toe;
  toe.discharge = discharge;
  toe.width = width;
  toe.unit_discharge = discharge / width;
  toe.apron_level = apron;
  toe.reservoir_level = crest + head_on_crest(discharge);
  toe.energy_head = 0.97 * (toe.reservoir_level - apron);
  toe.y1 = depth_for(toe.unit_discharge, toe.energy_head);
  toe.V1 = toe.unit_discharge / toe.y1;
  toe.F1 = toe.V1 / std::sqrt(gravity * toe.y1);
  toe.y2 = 0.5 * toe.y1 * (std::sqrt(1.0 + 8.0 * toe.F1 * toe.F1) - 1.0);
  return toe;
}

design::CaseResult case_of(const dissipators::Dissipator& type, double discharge, site::TailwaterCase which) {
  static constexpr double shares[] = {0.97, 1.0, 1.12};
  design::CaseResult result;
  result.discharge = discharge;
  result.tailwater_case = which;
  result.toe = toe_of(discharge);
  result.energy_loss = std::pow(result.toe.y2 - result.toe.y1, 3) / (4.0 * result.toe.y1 * result.toe.y2);
  result.jump_length = 6.0 * result.toe.y2;
  result.roller_length = 4.5 * result.toe.y2;
  result.need = type.tailwater_need(result.toe, dissipators::Setting{.choices = site::BasinChoices{}, .width = width});
  result.required_depth = result.need.required + 0.3;
  result.available_depth = tailwater(discharge, shares[site::index_of(which)]) - apron;
  result.margin = result.available_depth - result.required_depth;
  using design::JumpPlace;
  result.jump = result.available_depth > result.need.largest        ? JumpPlace::drowned
                : result.available_depth > result.need.best_highest ? JumpPlace::on_chute
                                                                    : JumpPlace::on_apron;
  return result;
}

design::WaterProfile profile_of(const dissipators::Dissipator& type, double discharge, std::string label, double toe_station) {
  design::WaterProfile water;
  water.discharge = discharge;
  water.label = std::move(label);
  water.result = case_of(type, discharge, site::TailwaterCase::low);
  water.reservoir_level = water.result.toe.reservoir_level;
  water.tailwater_level = water.result.available_depth + apron;
  const double tangent = head * std::pow(2.0 * slope / 1.85, 1.0 / 0.85);
  const double tangent_level = crest - std::pow(tangent, 1.85) / (2.0 * std::pow(head, 0.85));
  for (int i = 0; i <= 30; ++i) {
    site::ChutePoint p;
    const double share = i / 30.0;
    p.station = tangent + share * (toe_station - tangent);
    p.bed_level = tangent_level - share * (tangent_level - apron);
    p.width = width;
    p.slope_angle = std::atan(slope);
    p.energy_level = water.reservoir_level - share * 0.03 * (water.reservoir_level - apron);
    p.depth = depth_for(discharge / width, p.energy_level - p.bed_level);
    p.velocity = discharge / width / p.depth;
    water.chute.push_back(p);
  }
  return water;
}

dissipators::Element block_row(std::string_view kind, std::string_view name, int count, double size, double station,
                               double length) {
  dissipators::Element e;
  e.kind = kind;
  e.name = name;
  e.across = width;
  e.count = count;
  e.height = e.width = size;
  e.spacing = (width - count * size) / count;
  e.wall_clearance = 0.5 * e.spacing;
  e.length = length;
  e.station = station;
  e.profile = {{station, 0.0}, {station, size}, {station + 0.2 * length, size}, {station + length, 0.0}};
  return e;
}

Findings sample_findings() {
  Findings findings;
  findings.push_back({"sample.unit_discharge", Status::caution, "Unit discharge without a model test", 30.0, 18.6,
                      LimitSense::at_most, dimension::unit_discharge, "The unit discharge reaches 40 m²/s.",
                      "Have the basin tested in a hydraulic model.", "peterka_1984", "section 2", Provenance::memory});
  findings.push_back({"sample.froude", Status::ok, "Froude number within the tests", 8.6, 4.5, LimitSense::at_least,
                      dimension::none, "The Froude number stays above the limit.", "", "peterka_1984", "section 2",
                      Provenance::memory});
  findings.push_back({"sample.tailwater", Status::ok, "Tailwater margin", 0.02, 0.0, LimitSense::at_least, dimension::length,
                      "The smallest margin is positive.", "", "momentum", "", Provenance::derived});
  findings.push_back({"sample.access", Status::caution, "People near the basin", 0.0, 0.0, LimitSense::note, dimension::none,
                      "The roller traps people & boats.", "Fence the basin.", "", "", Provenance::common_practice});
  findings.push_back({"sample.velocity", Status::fails, "Entering velocity", 29.2, 18.0, LimitSense::at_most,
                      dimension::velocity, "Blocks stand in fast water: cavitation <must> be expected.",
                      "Aerate the flow or leave the blocks out.", "", "", Provenance::common_practice});
  return findings;
}

void add_working(Working& working, const site::ToeFlow& toe) {
  working.open_section("Governing discharge, low tailwater", "The case with the smallest margin.");
  working.add(profile, {toe.discharge}, {toe.energy_head}, "energy head at the toe");
  working.add(toe_depth, {toe.energy_head, toe.unit_discharge}, {toe.y1}, "depth at the toe");
  working.add(sequent, {toe.y1, toe.F1}, {toe.y2}, "sequent depth");
  working.open_section("Length");
  working.add(sequent, {toe.y1, 25.0}, {2.0 * toe.y2}, "a step outside its range");
}

design::Option chosen_option(const design::DesignResult& result) {
  design::Option option;
  option.type = &types[0];
  option.sized = option.applicable = true;
  option.statement = "All limits of use but one are kept; the check flood governs.";
  option.apron_level = apron;
  option.width = width;
  const double tangent = head * std::pow(2.0 * slope / 1.85, 1.0 / 0.85);
  const double tangent_level = crest - std::pow(tangent, 1.85) / (2.0 * std::pow(head, 0.85));
  option.chute_end_station = tangent + (tangent_level - apron) / slope;
  for (const auto& one : result.cases)
    for (const auto which : site::tailwater_cases) option.cases.push_back(case_of(types[0], one.discharge, which));
  option.governing.margin = 1e9;
  for (const auto& one : option.cases)
    if (one.margin < option.governing.margin)
      option.governing = {one.discharge, one.tailwater_case, one.margin,         one.available_depth + apron,
                          one.toe,       one.required_depth, one.available_depth};
  option.length = 62.4;
  option.wall_height = 19.0;
  option.wall_top_level = apron + option.wall_height;
  auto& structure = option.structure;
  structure.length = option.length;
  structure.governing_length_discharge = 1600.0;
  structure.invert_radius = 6.0;
  structure.end_sill_height = 2.9;
  structure.freeboard = 1.9;
  structure.end_width = width;
  structure.floor = {{0.0, 0.0}, {option.length, 0.0}};
  structure.elements.push_back(block_row("chute_block", "Chute blocks", 15, 1.33, -1.0, 2.2));
  structure.elements.push_back(block_row("dentate", "Dentated sill", 9, 2.9, option.length - 6.4, 6.4));
  structure.elements.back().remark = "Slots reach down to the apron.";
  option.end_sill_level = apron + structure.end_sill_height;
  option.quantities = {2.6, 2.2, 6490.0, 5216.0, 610.0, 12316.0};
  option.findings = sample_findings();
  option.profiles.push_back(profile_of(types[0], option.governing.discharge, "governing discharge", option.chute_end_station));
  option.profiles.push_back(profile_of(types[0], 800.0, "design flood", option.chute_end_station));
  option.profiles.push_back(profile_of(types[0], 1600.0, "check flood", option.chute_end_station));
  option.profiles.push_back(profile_of(types[0], 50.0, "smallest", option.chute_end_station));
  add_working(option.working, option.governing.toe);
  return option;
}

site::Site sample_site() {
  site::Site site;
  site.project = {"Invented & <Sample> \"Dam\"", "A. N. Engineer", "local datum", "Invented data for the tests of the report.",
                  "preliminary"};
  site.crest.crest_level = crest;
  site.crest.design_head = head;
  site.crest.net_width = width;
  site.crest.approach_depth = 36.0;
  site.chute.reaches.push_back({slope, 0.0});
  site.chute.width = site.chute.end_width = width;
  site.river.bed_level = 377.0;
  site.discharges.smallest = 50.0;
  site.discharges.design_flood = 1200.0;
  site.discharges.check_flood = 1600.0;
  site.discharges.floods = {{"10-year flood", 420.0, 10.0}, {"100-year flood", 800.0, 100.0}};
  site.basin.tailwater_margin = 0.3;
  site.ground = {true, 386.0, true, 364.0};
  return site;
}

}  // namespace

Sample output_sample() {
  Sample sample;
  sample.site = sample_site();
  auto& result = sample.result;
  for (int i = 0; i <= 31; ++i) {
    const double q = 50.0 + 50.0 * i;
    const std::string origin = q == 800.0    ? "100-year flood"
                               : q == 1200.0 ? "design flood"
                               : q == 1600.0 ? "check flood"
                                             : "range";
    result.cases.push_back({q,
                            q == 800.0 ? 100.0 : 0.0,
                            crest + head_on_crest(q),
                            head_on_crest(q),
                            width,
                            origin,
                            {tailwater(q, 0.97), tailwater(q, 1.0), tailwater(q, 1.12)}});
  }
  result.options.push_back(chosen_option(result));
  result.options.back().crest_outline = site::crest_outline(sample.site.crest, slope);
  auto second = result.options.front();
  second.type = &types[1];
  second.applicable = false;
  second.statement = "The velocity at the toe is above the limit of the type.";
  second.length = 41.0;
  result.options.push_back(second);
  design::Option third;
  third.type = &types[2];
  third.statement = "No apron level was found between the limits given.";
  result.options.push_back(third);
  result.chosen = 0;
  result.choice_reason = "The basin with blocks and dentated sill is the only type within its limits of use.";
  sample.context = {"0.0-test", "sites/sample <1>.toml", "3f2a9b17c4de8801", UnitSystem::si, {}};
  sample.context.inputs = {{"project", "name", "Invented & <Sample> \"Dam\"", "name of the project", false},
                           {"crest", "crest_level", "412 m", "level of the crest", false},
                           {"crest", "design_head", "6.5 m", "total head that fixes the shape", false},
                           {"crest", "upstream_face", "vertical", "slope of the upstream face", true}};
  return sample;
}

}  // namespace quell::test
