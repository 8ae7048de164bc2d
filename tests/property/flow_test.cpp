// Properties of the flow over the whole chute and of a whole design: continuity over discharge, Froude similarity, workings
// that repeat, single flows, chutes that are too flat.
#include <fmt/format.h>
#include <gtest/gtest.h>

#include <algorithm>
#include <array>
#include <cmath>
#include <cstdio>
#include <vector>

#include "property/invariants.h"
#include "property/random_site.h"
#include "property/structure_checks.h"
#include "quell/base/expression.h"
#include "quell/design/design.h"
#include "quell/design/discharge_cases.h"

namespace quell::test {
namespace {

/// Energy level at the river bed's level for one discharge; NaN where there is no flow.
double energy_at(const site::Site& site, const site::ChuteGeometry& geometry, double level, double discharge) {
  const auto prepared = design::prepare_case(site, geometry, discharge);
  return prepared ? prepared->chute.energy_level_at(level) : std::nan("");
}

/// The largest step that remains when the discharges on both sides of the largest change are brought together; 0 where the flow
/// is continuous.
struct Gap {
  double discharge = 0.0, height = 0.0;
};

Gap largest_gap(const site::Site& site, const site::ChuteGeometry& geometry, double level) {
  const auto& range = site.discharges;
  constexpr int points = 120;
  std::vector<double> Q, H;
  for (int i = 0; i <= points; ++i) {
    Q.push_back(range.smallest * std::pow(range.check_flood / range.smallest, static_cast<double>(i) / points));
    H.push_back(energy_at(site, geometry, level, Q.back()));
    if (!std::isfinite(H.back())) return {};
  }
  // A step stands out where the change differs most from its neighbours'.
  std::size_t at = 1;
  double most = -1.0;
  for (std::size_t i = 1; i + 2 < H.size(); ++i) {
    const double bend = std::abs((H[i + 1] - H[i]) - 0.5 * ((H[i] - H[i - 1]) + (H[i + 2] - H[i + 1])));
    if (bend > most) {
      most = bend;
      at = i;
    }
  }
  double q0 = Q[at], q1 = Q[at + 1], h0 = H[at], h1 = H[at + 1];
  for (int i = 0; i < 34; ++i) {
    const double q = 0.5 * (q0 + q1);
    const double h = energy_at(site, geometry, level, q);
    if (std::abs(h - h0) > std::abs(h1 - h)) {
      q1 = q;
      h1 = h;
    } else {
      q0 = q;
      h0 = h;
    }
  }
  return {q0, std::abs(h1 - h0)};
}

TEST(ToeFlow, EnergyIsContinuousOverDischarge) {
  int checked = 0, layer_and_friction = 0, failed = 0;
  double worst_single = 0.0, worst_several = 0.0;
  for (int seed = 1; seed <= property_cases(400); ++seed) {
    const auto site = random_site(static_cast<std::uint64_t>(seed) + 600000, {.limits = false, .width_is_free = false});
    const double level = site.river.bed_level - 1.0;
    const auto geometry = site::chute_geometry(site, level - 1.0);
    if (!geometry || !(geometry->last_reach_level > level)) continue;
    const auto least = design::prepare_case(site, *geometry, site.discharges.smallest);
    const auto most = design::prepare_case(site, *geometry, site.discharges.check_flood);
    if (!least || !most) continue;
    ++checked;
    layer_and_friction += least->chute.critical_point_path() >= 0.0 && most->chute.critical_point_path() < 0.0;
    const Gap gap = largest_gap(site, *geometry, level);
    const double relative = gap.height / (site.crest.crest_level - level);
    double& worst = geometry->pieces.size() == 1 ? worst_single : worst_several;
    worst = std::max(worst, relative);
    if (relative > 1e-9 && ++failed <= 3)
      ADD_FAILURE() << "a step of " << gap.height << " m at " << gap.discharge << " m3/s\n" << describe(site);
  }
  std::printf("%d sites, %d of them pass from friction to layer; largest step over the drop: %g on one piece, %g on several\n",
              checked, layer_and_friction, worst_single, worst_several);
  EXPECT_GT(checked, property_cases(400) / 2);
  EXPECT_GT(layer_and_friction, property_cases(400) / 20);
  EXPECT_EQ(failed, 0);
}

/// Every length by `scale`, every discharge by scale^2.5.
site::Site scaled(site::Site site, double scale) {
  const double discharge_scale = std::pow(scale, 2.5);
  auto& crest = site.crest;
  for (double* length : {&crest.crest_level, &crest.design_head, &crest.net_width, &crest.approach_depth, &crest.crest_length,
                         &crest.developed_length, &crest.floor_level, &site.chute.width, &site.chute.end_width,
                         &site.chute.end_width_level, &site.chute.roughness_height, &site.chute.wall_height,
                         &site.river.bed_level, &site.river.bed_degradation, &site.basin.width, &site.basin.tailwater_margin,
                         &site.basin.apron_step, &site.basin.choices.flip_clearance, &site.basin.choices.rock_block_size})
    *length *= scale;
  for (auto& reach : site.chute.reaches) reach.end_level *= scale;
  for (auto& levels : site.river.rating.level)
    for (double& level : levels) level *= scale;
  for (double& discharge : site.river.rating.discharge) discharge *= discharge_scale;
  for (auto& flood : site.discharges.floods) flood.discharge *= discharge_scale;
  for (double* discharge : {&site.discharges.smallest, &site.discharges.design_flood, &site.discharges.check_flood})
    *discharge *= discharge_scale;
  return site;
}

bool friction_free(const site::Site& site) {
  const auto geometry = site::chute_geometry(site, 2.0 * site.river.bed_level - site.crest.crest_level - 1.0);
  if (!geometry) return false;
  const auto smallest = design::prepare_case(site, *geometry, site.discharges.smallest);
  return smallest && smallest->chute.critical_point_path() < 0.0;
}

// Only where the boundary layer stays below the surface at every discharge: viscosity, which does not scale, enters with
// friction. Left out besides: freeboard (0.1 s is a time of its own), the least block height of Type III, thicknesses of the
// concrete.
TEST(Similarity, ADesignScalesWithFroude) {
  int compared = 0;
  for (int seed = 1; seed <= property_cases(3000) && compared < 1000; ++seed) {
    const auto site = random_site(static_cast<std::uint64_t>(seed) + 500000,
                                  {.limits = false, .width_is_free = false, .scales_exactly = true});
    if (!friction_free(site)) continue;
    Random random(static_cast<std::uint64_t>(seed));
    const double scale = random.log_between(0.2, 5.0);
    const auto one = design::run_design(site, {.types = dissipators::catalogue()});
    const auto two = design::run_design(scaled(site, scale), {.types = dissipators::catalogue()});
    if (!one || !two) continue;
    for (std::size_t i = 0; i < one->options.size(); ++i) {
      const auto& a = one->options[i];
      const auto& b = two->options[i];
      ASSERT_EQ(a.sized, b.sized) << describe(site);
      if (!a.sized || !a.type->record().not_similar.empty()) continue;
      ++compared;
      const auto near = [&](double small, double large, const char* what) {
        EXPECT_NEAR(large / scale, small, 1e-9 * std::max(std::abs(small), a.governing.available_depth))
            << what << " of " << a.type->record().id.view() << ", scale " << scale << "\n"
            << describe(site);
      };
      near(a.apron_level, b.apron_level, "apron level");
      near(a.length, b.length, "length");
      const auto& toe_a = a.cases.back().toe;
      const auto& toe_b = b.cases.back().toe;
      near(toe_a.y1, toe_b.y1, "y1");
      near(toe_a.y2, toe_b.y2, "y2");
      EXPECT_NEAR(toe_b.F1, toe_a.F1, 1e-9 * toe_a.F1);
      EXPECT_NEAR(toe_b.V1, toe_a.V1 * std::sqrt(scale), 1e-9 * toe_b.V1);
      near(a.cases.back().energy_loss, b.cases.back().energy_loss, "energy loss");
      const double least_block = 0.2032;
      const bool blocks_scale = std::min(toe_a.y1, toe_b.y1) > least_block;
      if (a.structure.elements.size() != b.structure.elements.size()) ADD_FAILURE() << "another number of elements";
      for (std::size_t k = 0; k < std::min(a.structure.elements.size(), b.structure.elements.size()); ++k) {
        const auto& small = a.structure.elements[k];
        const auto& large = b.structure.elements[k];
        if (small.kind == "chute_block" && !blocks_scale) continue;
        EXPECT_EQ(small.count, large.count) << small.kind << "\n" << describe(site);
        near(small.height, large.height, "height of an element");
        near(small.width, large.width, "width of an element");
        near(small.station, large.station, "station of an element");
      }
    }
    if (testing::Test::HasFailure()) return;
  }
  std::printf("%d options compared at two scales\n", compared);
  EXPECT_GT(compared, std::min(900, property_cases(3000) / 10));
}

/// The recorded step again: through the record's own function, and through the printed equation.
std::string not_repeated(const WorkingStep& step) {
  // A profile is read between the steps of its integration, but repeated to its own end: each to the 1e-8 m that its record
  // says.
  const double absolute = step.method->kind == EquationKind::procedure ? 2e-8 : 1e-13;
  const auto same = [&](double a, double b) {
    return std::abs(a - b) <= std::max(absolute, 1e-7 * std::max(std::abs(a), std::abs(b)));
  };
  std::vector<double> again(step.outputs.size());
  const std::string id(step.method->id.view());
  if (const auto done = step.method->evaluate(step.inputs, again); !done) return id + ": " + std::string(done.error().reason);
  for (std::size_t i = 0; i < again.size(); ++i)
    if (!same(again[i], step.outputs[i]))
      return id + ": recorded " + fmt::format("{:.12g}", step.outputs[i]) + ", again " + fmt::format("{:.12g}", again[i]);
  if (step.method->kind != EquationKind::explicit_form) return {};
  const auto equation = Expression::parse(step.method->equation.view());
  if (!equation) return id + ": " + equation.error().message;
  std::vector<NamedValue> known;
  for (std::size_t i = 0; i < step.inputs.size(); ++i) known.push_back({step.method->inputs[i].name.view(), step.inputs[i]});
  const auto values = equation->evaluate(known);
  if (!values) return id + ": " + values.error().message;
  for (std::size_t i = 0; i < step.outputs.size(); ++i)
    for (const auto& [name, value] : *values)
      if (name == step.method->outputs[i].name.view() && !same(value, step.outputs[i]))
        return id + ": recorded " + fmt::format("{:.12g}", step.outputs[i]) + ", printed equation " +
               fmt::format("{:.12g}", value);
  return {};
}

TEST(Workings, EveryRecordedStepRepeats) {
  int steps = 0, broken = 0;
  for (int seed = 1; seed <= property_cases(300); ++seed) {
    const auto site = random_site(static_cast<std::uint64_t>(seed) + 400000, {.width_is_free = false});
    const auto result =
        design::run_design(site, {.types = dissipators::catalogue(), .with_workings = true, .with_profiles = true});
    if (!result) continue;
    for (const auto& option : result->options) {
      for (const auto& section : option.working.sections())
        for (const auto& step : section.steps) {
          ++steps;
          if (const auto what = not_repeated(step); !what.empty() && ++broken <= 5)
            ADD_FAILURE() << what << "\n" << describe(site);
        }
      for (const auto& profile : option.profiles)
        for (std::size_t i = 1; i < profile.chute.size(); ++i)
          if (profile.chute[i].energy_level > profile.chute[i - 1].energy_level + 1e-9 && ++broken <= 5)
            ADD_FAILURE() << "profile: energy rises\n" << describe(site);
    }
  }
  std::printf("%d recorded steps\n", steps);
  EXPECT_GT(steps, 20 * property_cases(300));
  EXPECT_EQ(broken, 0);
}

TEST(SingleFlow, EveryTypeSizesFromOneDischarge) {
  for (int seed = 1; seed <= property_cases(5000); ++seed) {
    Random random(static_cast<std::uint64_t>(seed));
    const double q = random.log_between(0.05, 100.0);
    const double width = random.log_between(0.5, 150.0);
    const double head = site::least_energy_head(q * width, width) * random.log_between(1.01, 100.0);
    const auto flow = site::toe_flow(q * width, width, 100.0 + head, 100.0 + 1.05 * head, 100.0);
    ASSERT_TRUE(flow.has_value());
    const double slope = random.log_between(0.1, 3.0);
    for (const auto* type : dissipators::catalogue()) {
      if (!dissipators::makes_jump(type->record().action)) continue;
      const site::BasinChoices choices;
      const dissipators::Setting setting{
          .choices = choices, .width = width, .chute_slope = slope, .crest_level = 100.0 + 0.9 * head};
      const std::array<double, 3> levels{100.0 + flow->y2, 100.0 + flow->y2, 100.0 + flow->y2};
      const dissipators::SizingInput input{
          .setting = setting, .flows = std::span(&*flow, 1), .tailwater_levels = std::span(&levels, 1), .apron_level = 100.0};
      const auto structure = type->size(input, nullptr);
      EXPECT_GE(structure.length, type->length(*flow, setting));
      EXPECT_EQ(structure.governing_length_discharge, flow->discharge);
      ASSERT_EQ(broken_elements(structure, width, slope), "")
          << type->record().id.view() << " q " << q << " W " << width << " E1 " << head;
      for (const auto& finding : dissipators::judge_limits(type->record(), input))
        EXPECT_TRUE(std::isfinite(finding.value) && std::isfinite(finding.limit));
    }
  }
}

TEST(TooFlat, TheOutcomeSaysSo) {
  int refused = 0, sites = 0;
  for (int seed = 1; seed <= property_cases(300); ++seed) {
    auto site = random_site(static_cast<std::uint64_t>(seed) + 300000, {.limits = false, .width_is_free = false});
    // Half of them are flat all the way, half on a long first reach.
    const double flat = 0.0005;
    const double start = site.crest.has_fall() ? site.crest.floor_level : site.crest.crest_level;
    if (seed % 2 == 0) {
      site.chute.reaches = {{flat, 0.0}};
    } else {
      site.chute.reaches = {{flat, start - 0.5}, {1.0, 0.0}};
    }
    site.chute.width = site.chute.end_width;
    const auto result = design::run_design(site, {.types = dissipators::catalogue()});
    ++sites;
    if (!result) {
      EXPECT_GT(result.error().reason.size(), 20u);
      refused += result.error().reason.find("too flat") != std::string_view::npos;
      continue;
    }
    EXPECT_EQ(broken_invariant(site, *result), "") << describe(site);
  }
  std::printf("%d of %d sites are refused as too flat\n", refused, sites);
  EXPECT_GT(refused, sites / 2);
}

}  // namespace
}  // namespace quell::test
