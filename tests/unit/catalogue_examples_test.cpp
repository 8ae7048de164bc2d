// Worked examples of the dissipators beyond Types I to III, with their intermediate values. Each names its source; those
// without a published result are independent arithmetic on recalled rules (Python, November 2026).
#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>

#include "dissipator_case.h"
#include "quell/hydraulics/jet.h"
#include "quell/hydraulics/short_rules.h"

namespace quell {
namespace {

using test::DissipatorCase;
using test::element;
using test::finding;
using test::flow_of;
using test::foot;

double closed(const dissipators::Element& e) {
  return 2 * e.wall_clearance + e.count * e.width + (e.count - 1) * e.spacing;
}

// Independent arithmetic, rules of Peterka 1984, sec. 4, from memory: y1 = 1.20 m, V1 = 12.0 m/s, W = 22.5 m.
TEST(TypeFour, DeflectorBlocksAndSill) {
  const DissipatorCase one{.flows = {flow_of(1.20, 12.0, 22.5)}};
  const auto& flow = one.flows[0];
  EXPECT_NEAR(flow.F1, 3.497, 0.001);
  EXPECT_NEAR(flow.y2, 5.366, 0.001);
  EXPECT_NEAR(one.need("type_4").required, 5.902, 0.001);
  const auto structure = one.size("type_4");
  const auto& blocks = element(structure, "chute_block");
  EXPECT_EQ(blocks.count, 7);
  EXPECT_NEAR(blocks.width, 0.918, 0.001);
  EXPECT_NEAR(blocks.spacing, 2.296, 0.001);
  EXPECT_NEAR(blocks.wall_clearance, 1.148, 0.001);
  EXPECT_NEAR(blocks.height, 2.40, 1e-9);
  EXPECT_NEAR(closed(blocks), 22.5, 1e-9);
  const double face = blocks.station + blocks.length;
  EXPECT_NEAR(structure.length - face, 29.8, 0.15) << "5.55 sequent depths from the face of the blocks";
  EXPECT_NEAR(structure.end_sill_height, 1.473, 0.001);
  EXPECT_NEAR(blocks.profile[0].z - blocks.profile[1].z, 0.210, 0.001) << "5 degrees over 2.40 m";
}

TEST(TypeFour, IsRefusedAtAFroudeNumberAboveFourAndAHalf) {
  const DissipatorCase one{.flows = {flow_of(1.0, 6.8 * std::sqrt(9.81), 20)}};
  EXPECT_EQ(finding(one.findings("type_4"), "type_4.froude_highest").status, Status::fails);
}

// Independent arithmetic, fits of Subramanya, from memory: V1 = 20 m/s, y1 = 1.0 m, tan(phi) = 0.15.
TEST(SlopingApron, TailwaterAndLength) {
  DissipatorCase one{.flows = {flow_of(1.0, 20.0, 30)}};
  one.choices.apron_slope = 0.15;
  EXPECT_NEAR(one.flows[0].F1, 6.386, 0.001);
  EXPECT_NEAR(one.flows[0].y2, 8.544, 0.001);
  EXPECT_NEAR(one.need("sloping_apron").required, 13.99, 0.03);
  EXPECT_NEAR(one.size("sloping_apron").length, 57.25, 0.12);
  one.choices.apron_share = 0.6;
  EXPECT_NEAR(one.size("sloping_apron").length, 34.35, 0.07);
  const auto second = finding(one.findings("sloping_apron"), "sloping_apron.tailwater_second");
  EXPECT_NEAR(second.value, 15.02 / 13.99, 0.003) << "Rajaratnam's form asks for 7 % more";
}

// Independent arithmetic on the rules of Blaisdell 1959 as in HEC-14, from memory: box culvert 3.0 m wide, y1 = 0.3514 m,
// V1 = 11.195 m/s.
TEST(Saf, CulvertOutlet) {
  DissipatorCase one{.flows = {flow_of(0.3514, 11.195, 3.0)}, .slope = 0.5};
  one.choices.saf_reserve = false;
  EXPECT_NEAR(one.flows[0].F1, 6.030, 0.002);
  EXPECT_NEAR(one.flows[0].y2, 2.826, 0.003);
  EXPECT_NEAR(one.need("saf").required, 2.402, 0.005);
  const auto structure = one.size("saf");
  EXPECT_NEAR(structure.length, 3.246, 0.007);
  EXPECT_NEAR(structure.end_sill_height, 0.198, 0.0005);
  const auto& blocks = element(structure, "floor_block");
  EXPECT_EQ(blocks.count, 5);
  EXPECT_NEAR(blocks.width, 0.300, 1e-9);
  EXPECT_NEAR(blocks.station, 1.082, 0.003);
  EXPECT_NEAR(blocks.wall_clearance, 0.150, 1e-9);
  EXPECT_GE(blocks.wall_clearance, 3.0 / 8.0 * 0.3514);
  EXPECT_NEAR(one.need("saf").required + structure.freeboard, 3.344, 0.007) << "walls above the floor";
}

// The same rules: q = 3.0 m2/s, V1 = 12.0 m/s.
TEST(Saf, SmallChute) {
  DissipatorCase one{.flows = {flow_of(0.25, 12.0, 6.0)}};
  one.choices.saf_reserve = false;
  EXPECT_NEAR(one.flows[0].F1 * one.flows[0].F1, 58.7, 0.1) << "the source's own Froude number";
  EXPECT_NEAR(one.flows[0].y2, 2.587, 0.003);
  EXPECT_NEAR(one.need("saf").required, 2.199, 0.003);
  const auto structure = one.size("saf");
  EXPECT_NEAR(structure.length, 2.477, 0.003);
  EXPECT_NEAR(structure.end_sill_height, 0.181, 0.0005);
  EXPECT_NEAR(structure.freeboard, 0.862, 0.001);
  one.choices.saf_reserve = true;
  EXPECT_NEAR(one.need("saf").required / one.flows[0].y2, 0.90, 1e-9) << "5 % of the sequent depth on top";
}

// Independent arithmetic, rules of EM 1110-2-1602 and -1603, from memory: V1 = 16.0 m/s, y1 = 0.90 m.
TEST(BaffledEndSill, TwoRows) {
  DissipatorCase one{.flows = {flow_of(0.90, 16.0, 24)}};
  EXPECT_NEAR(one.flows[0].F1, 5.385, 0.001);
  EXPECT_NEAR(one.flows[0].y2, 6.418, 0.001);
  const auto structure = one.size("baffled_end_sill");
  EXPECT_NEAR(structure.length, 19.26, 0.02);
  EXPECT_NEAR(structure.elements[0].height, 0.90, 1e-9);
  EXPECT_NEAR(structure.elements[0].station, 9.63, 0.01);
  EXPECT_NEAR(structure.elements[1].station, 12.84, 0.01);
  EXPECT_EQ(structure.elements[1].count, structure.elements[0].count - 1) << "staggered";
  EXPECT_NEAR(structure.end_sill_height, 0.45, 1e-9);
  EXPECT_NEAR(one.need("baffled_end_sill").required, 6.42, 0.01);
  one.choices.baffled_full = false;
  EXPECT_NEAR(one.need("baffled_end_sill").required, 5.46, 0.01);
  one.choices.baffle_rows = 0;
  EXPECT_NEAR(one.size("baffled_end_sill").length, 25.67, 0.03);
  EXPECT_NEAR(one.need("baffled_end_sill").required, 6.42, 0.01) << "the reduced depth needs two rows";
}

// Design annex that quotes IS 7365 (seen): q = 77.42 m2/s, reservoir 42.0 m above the invert and 22.0 m above the crest,
// tailwater 16.8 m; the entering velocity 17.79 m/s follows from a chart.
TEST(RollerBucketSolid, DesignAnnex) {
  const double vt = std::sqrt(2 * 9.81 * 25.2);
  EXPECT_NEAR(vt, 22.24, 0.01);
  auto flow = flow_of(77.419 / (0.80 * vt), 0.80 * vt, 31.0);
  EXPECT_NEAR(flow.y1, 4.352, 0.005);
  EXPECT_NEAR(flow.F1, 2.722, 0.003);
  EXPECT_NEAR(flow.y2, 14.72, 0.015);
  EXPECT_NEAR(16.8 / flow.y2, 1.141, 0.002) << "within 1.1 to 1.4";
  EXPECT_NEAR(hydraulics::roller_bucket_radius(77.419, 42.0), 16.21, 0.02);
  // The flow stands at the level where the jet enters, 16.8 m above the invert.
  flow.reservoir_level = 42.0;
  flow.apron_level = 16.8;
  const DissipatorCase one{.flows = {flow}, .fall = 20.0};
  const auto structure = one.size("roller_bucket_solid");
  EXPECT_NEAR(structure.invert_radius, 16.21, 0.02) << "the largest of 16.21, 15.33 and 8.54 m";
  const auto need = one.need("roller_bucket_solid");
  EXPECT_NEAR(need.required, 1.1 * 14.72, 0.02);
  EXPECT_NEAR(need.largest, 1.4 * 14.72, 0.03);
}

// Independent arithmetic, rules of Peterka 1984, sec. 9, from memory: q = 50 ft3/s per ft.
TEST(BaffledApron, FiftyCubicFeetPerFoot) {
  const double q = 50 * foot * foot;
  site::ToeFlow bare{.discharge = q * 20, .width = 20, .unit_discharge = q};
  DissipatorCase one{.flows = {bare}, .slope = 0.5, .fall = 12.0};
  one.choices.drop_block_height = 0.8;
  one.flows[0] = dissipators::find_dissipator("baffled_apron")->from_crest(bare, one.setting());
  EXPECT_NEAR(one.flows[0].y1 / foot, 4.266, 0.005) << "critical depth";
  const auto structure = one.size("baffled_apron");
  const auto& blocks = element(structure, "apron_block");
  EXPECT_NEAR(blocks.height / foot, 3.413, 0.004);
  EXPECT_NEAR(structure.least_wall_height * std::cos(std::atan(0.5)) / foot, 10.24, 0.01) << "normal to the floor";
  EXPECT_NEAR(std::hypot(blocks.row_step, blocks.row_drop) / 2 / foot, 6.83, 0.01) << "rows of either kind alternate";
  EXPECT_NEAR(finding(one.findings("baffled_apron"), "baffled_apron.approach").value / foot, 6.72, 0.01);
  EXPECT_GE(blocks.width, blocks.height);
  EXPECT_LE(blocks.width, 1.5 * blocks.height);
  const auto& halves = element(structure, "wall_block");
  EXPECT_GE(halves.width, blocks.height / 3);
  EXPECT_LE(halves.width, blocks.height * 2 / 3 + 1e-9);
  EXPECT_NEAR(structure.length, 24.0, 1e-9) << "12 m of fall at 2:1";
}

TEST(BaffledApron, LimitsOfUnitDischarge) {
  const auto with = [](double q) {
    site::ToeFlow bare{.discharge = q * foot * foot * 20, .width = 20, .unit_discharge = q * foot * foot};
    DissipatorCase one{.flows = {bare}, .slope = 0.5, .fall = 12.0};
    one.flows[0] = dissipators::find_dissipator("baffled_apron")->from_crest(bare, one.setting());
    return one.findings("baffled_apron");
  };
  EXPECT_EQ(finding(with(59), "baffled_apron.unit_discharge").status, Status::ok);
  EXPECT_EQ(finding(with(61), "baffled_apron.unit_discharge").status, Status::caution);
  EXPECT_EQ(finding(with(77.6), "baffled_apron.unit_discharge_proven").status, Status::ok) << "proven by a model, Rhone 1971";
  EXPECT_EQ(finding(with(79), "baffled_apron.unit_discharge_proven").status, Status::fails);
}

// Course notes on canal structures (seen): 150 ft3/s under a head of 30 ft. Printed: V = 43.93 ft/s; the chart's width of 7.4
// jet sides is recalled.
TEST(Impact, BaffledOutletOfTheNotes) {
  const double V = std::sqrt(2 * 32.2 * 30) * foot;
  EXPECT_NEAR(V / foot, 43.93, 0.05);
  auto flow = flow_of(0.5, V, 4.0);
  flow.discharge = 150 * foot * foot * foot;
  DissipatorCase one{.flows = {flow}};
  const auto* type = dissipators::find_dissipator("impact");
  const double wide = type->own_width(flow, one.setting());
  EXPECT_NEAR(wide / foot, 14.4, 0.1);
  one.choices.impact_wide = false;
  EXPECT_NEAR(type->own_width(flow, one.setting()) / foot, 13.7, 0.1);
  one.flows[0].width = 14 * foot;
  const auto structure = one.size("impact");
  EXPECT_NEAR(structure.least_wall_height / foot, 10.75, 0.025 * 10.75) << "table of HEC-14 as reproduced, 14 ft";
  EXPECT_NEAR(structure.length / foot, 18.67, 0.025 * 18.67);
  EXPECT_NEAR(structure.end_sill_height / foot, 2.33, 0.025 * 2.33);
  EXPECT_NEAR(element(structure, "hanging_wall").station / foot, 8.00, 0.025 * 8.00);
  EXPECT_NEAR(finding(one.findings("impact"), "impact.riprap").value / foot, 0.7, 0.001);
}

TEST(Impact, IsRefusedBeyondFourHundredCubicFeetOrFiftyFeetASecond) {
  const auto with = [](double cubic_feet, double feet) {
    auto flow = flow_of(0.5, feet * foot, 4.0);
    flow.discharge = cubic_feet * foot * foot * foot;
    return DissipatorCase{.flows = {flow}}.findings("impact");
  };
  EXPECT_EQ(finding(with(399, 40), "impact.discharge").status, Status::ok);
  EXPECT_EQ(finding(with(401, 40), "impact.discharge").status, Status::fails);
  EXPECT_EQ(finding(with(150, 49.9), "impact.velocity").status, Status::ok);
  EXPECT_EQ(finding(with(150, 50.1), "impact.velocity").status, Status::fails);
}

// Independent arithmetic, rules of Donnelly and Blaisdell 1954 as in HEC-14, from memory: q = 2.5 m2/s, drop 2.50 m.
TEST(StraightDrop, NappeBlocksAndSill) {
  const site::ToeFlow bare{.discharge = 2.5 * 6, .width = 6, .unit_discharge = 2.5};
  DissipatorCase one{.flows = {bare}, .fall = 2.5, .levels = {{1.850, 1.850, 1.850}}};
  one.flows[0] = dissipators::find_dissipator("straight_drop")->from_crest(bare, one.setting());
  EXPECT_NEAR(one.flows[0].y1, 0.347, 0.001) << "Rand";
  EXPECT_NEAR(one.flows[0].y2, 1.749, 0.002) << "Rand";
  EXPECT_NEAR(one.need("straight_drop").required, 1.850, 0.001);
  const auto structure = one.size("straight_drop");
  EXPECT_NEAR(structure.length, 5.453, 0.005);
  const auto& blocks = element(structure, "floor_block");
  EXPECT_NEAR(blocks.height, 0.688, 0.001);
  EXPECT_NEAR(blocks.width, 0.344, 0.15 * 0.344) << "0.4 of critical depth, in whole blocks";
  EXPECT_NEAR(blocks.station, 3.259 + 0.688, 0.005) << "0.8 of critical depth behind the nappe";
  EXPECT_NEAR(structure.end_sill_height, 0.344, 0.001);
  EXPECT_NEAR(structure.freeboard, 0.731, 0.001);
}

TEST(StraightDrop, HighTailwaterLengthensTheBasinUntilItDrownsTheNappe) {
  const site::ToeFlow bare{.discharge = 2.5 * 6, .width = 6, .unit_discharge = 2.5};
  DissipatorCase one{.flows = {bare}, .fall = 2.5, .levels = {{1.850, 1.850, 1.850}}};
  one.flows[0] = dissipators::find_dissipator("straight_drop")->from_crest(bare, one.setting());
  const double usual = one.size("straight_drop").length;
  one.levels = {{1.850, 2.2, 2.6}};
  EXPECT_GT(one.size("straight_drop").length, usual);
  EXPECT_EQ(finding(one.findings("straight_drop"), "straight_drop.nappe").status, Status::ok);
  one.levels = {{1.850, 2.2, 3.2}};
  EXPECT_EQ(finding(one.findings("straight_drop"), "straight_drop.nappe").status, Status::fails);
}

// HEC-14, ch. 10, worked example, from memory, recomputed: box 2.44 m wide, 22.7 m3/s, depth 1.22 m, tailwater 0.85 m,
// stone of 0.55 m.
TEST(RiprapPool, WorkedExample) {
  DissipatorCase one{.flows = {flow_of(1.22, 7.63, 2.44)}, .levels = {{0.85, 0.85, 0.85}}};
  one.choices.pool_stone_size = 0.55;
  EXPECT_NEAR(one.flows[0].F1, 2.206, 0.002);
  const auto structure = one.size("riprap_pool");
  EXPECT_NEAR(-structure.floor[1].z, 1.878, 0.01) << "depth of the pool";
  EXPECT_NEAR(structure.floor[3].x, 18.78, 0.1);
  EXPECT_NEAR(structure.length, 28.18, 0.15);
  EXPECT_NEAR(structure.end_width, 21.2, 0.1);
  EXPECT_NEAR(finding(one.findings("riprap_pool"), "riprap_pool.depth").value, 3.42, 0.02);
}

// Design sheet that quotes IS 7365:1985 (seen): v = 22.34 m/s, y1 = 0.298 m, R = 10 m; printed 1.8168 t/m2.
TEST(FlipBucket, PressureOfTheDesignSheet) {
  EXPECT_NEAR(hydraulics::bucket_pressure_head({.V = 22.34, .R = 10.0, .d1 = 0.298}), 1.817, 0.006);
}

// Independent arithmetic, EM 1603 and Design of small dams, from memory: V = 30 m/s, 25 degrees, 20 m above the water, y1 = 1.5
// m.
TEST(FlipBucket, ThrowAndScour) {
  const double angle = 25 * M_PI / 180;
  EXPECT_NEAR(hydraulics::jet_throw({.V = 30, .theta = angle, .Y = 20}), 100.3, 0.1);
  EXPECT_NEAR(hydraulics::jet_throw_depth({.V = 30, .theta = angle, .Y = 20, .d = 1.5, .K = 1.0}), 102.8, 0.1);
  EXPECT_NEAR(hydraulics::jet_throw_depth({.V = 30, .theta = angle, .Y = 20, .d = 1.5, .K = 0.9}), 94.9, 0.1);
  const hydraulics::ScourInput scour{.q = 45, .H = 60, .h = 10, .d_m = 0.25};
  EXPECT_NEAR(hydraulics::scour_veronese(scour), 37.29, 0.08);
  EXPECT_NEAR(hydraulics::scour_mason_arumugam(scour), 41.45, 0.09);
  EXPECT_NEAR(hydraulics::scour_mason_arumugam_constant(scour), 32.22, 0.07);
}

TEST(FlipBucket, NeedsRockThatSomebodyHasShownToBeSound) {
  DissipatorCase one{.flows = {flow_of(1.5, 30, 20)}, .levels = {{-5.0, -4.0, -3.0}}, .bed_level = -15.0};
  EXPECT_EQ(finding(one.findings("flip_bucket"), "flip_bucket.rock").status, Status::fails);
  one.choices.is_sound_rock = true;
  EXPECT_EQ(finding(one.findings("flip_bucket"), "flip_bucket.rock").status, Status::ok);
}

// Screened types say which publication an engineer must take in hand, give no element, and never pass.
TEST(Screened, TypesNameThePublicationAndGiveNoElement) {
  for (const auto* type : dissipators::catalogue()) {
    if (type->record().withheld.empty()) continue;
    const std::string id(type->record().id.view());
    const DissipatorCase one{.flows = {flow_of(1.2, 12.0, 20)}};
    EXPECT_TRUE(one.size(id).elements.empty()) << id;
    EXPECT_EQ(finding(one.findings(id), id + ".sized").status, Status::fails) << id;
    EXPECT_NE(type->record().withheld.find("could not be read"), std::string_view::npos) << id;
  }
  EXPECT_FALSE(dissipators::find_dissipator("low_froude")->record().withheld.empty());
  EXPECT_FALSE(dissipators::find_dissipator("roller_bucket_slotted")->record().withheld.empty());
}

// A stepped chute: figure recalled from Stojnic et al. 2021.
TEST(TypeOne, IsLongerBelowSteps) {
  const DissipatorCase one{.flows = {flow_of(1.0, 5 * std::sqrt(9.81), 20)}};
  auto setting = one.setting();
  const auto* type = dissipators::find_dissipator("type_1");
  const double smooth = type->length(one.flows[0], setting);
  setting.is_stepped = true;
  EXPECT_NEAR(type->length(one.flows[0], setting) / smooth, 1.17, 1e-12);
}

// Cornell course notes 2006 (seen): six sequent depths below F1 = 2.5; the free jump is shorter.
TEST(TypeOne, SixSequentDepthsAtLowFroudeNumbersUnlessChosenOtherwise) {
  DissipatorCase one{.flows = {flow_of(1.0, 2.2 * std::sqrt(9.81), 20)}};
  EXPECT_NEAR(one.size("type_1").length / one.flows[0].y2, 6.0, 1e-9);
  one.choices.type_1_long = false;
  EXPECT_NEAR(one.size("type_1").length / one.flows[0].y2, 4.55, 0.01) << "4.35 at 2.0, 4.85 at 2.5";
}

}  // namespace
}  // namespace quell
