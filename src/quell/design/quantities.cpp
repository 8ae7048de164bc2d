#include "quell/design/quantities.h"

#include <algorithm>
#include <cmath>

namespace quell::design {
namespace {

double slab_thickness(double y2) {
  return std::clamp(0.15 * y2, 0.6, 2.0);
}
double wall_thickness(double height) {
  return 0.30 + 0.10 * height;
}

/// Area of a closed outline, m2.
double outline_area(const dissipators::Outline& outline) {
  double twice = 0.0;
  for (std::size_t i = 0; i < outline.size(); ++i) {
    const auto& a = outline[i];
    const auto& b = outline[(i + 1) % outline.size()];
    twice += a.x * b.z - b.x * a.z;
  }
  return std::abs(twice) / 2.0;
}

constexpr Symbol slab_in[] = {{"y2", "largest sequent depth", dimension::length, above_zero}};
constexpr Symbol slab_out[] = {{"s", "thickness of the slab", dimension::length, above_zero}};
constexpr Symbol wall_in[] = {{"H", "height of the walls above the apron", dimension::length, above_zero}};
constexpr Symbol wall_out[] = {{"t", "mean thickness of the walls", dimension::length, above_zero}};
constexpr Symbol concrete_in[] = {{"L", "length of the basin", dimension::length, above_zero},
                                  {"W", "width of the basin", dimension::length, above_zero},
                                  {"H", "height of the walls above the apron", dimension::length, above_zero},
                                  {"s", "thickness of the slab", dimension::length, above_zero},
                                  {"t", "mean thickness of the walls", dimension::length, above_zero},
                                  {"Ve", "volume of blocks, piers and sill", dimension::volume, {0.0, no_limit}}};
constexpr Symbol concrete_out[] = {{"Vc", "volume of concrete", dimension::volume, above_zero}};

double volume(double L, double W, double H, double s, double t, double Ve) {
  return L * (W + 2.0 * t) * s + 2.0 * L * H * t + Ve;
}

const Method slab_method{
    .id = "quantity.slab_thickness.first_measure",
    .title = "Thickness of the basin's slab, first measure",
    .equation = "s = min(2, max(0.6, 0.15*y2))",
    .inputs = slab_in,
    .outputs = slab_out,
    .source = "practice",
    .place = "anchored slabs are 0.6 to 2.0 m thick; the share 0.15 between is quell's own, for comparison only",
    .provenance = Provenance::common_practice,
    .accuracy = "order of size: uplift and fluctuation decide",
    .evaluate = [](std::span<const double> in, std::span<double> out) -> Outcome<void> {
      out[0] = slab_thickness(in[0]);
      return {};
    }};

const Method wall_method{.id = "quantity.wall_thickness.first_measure",
                         .title = "Mean thickness of the basin's walls, first measure",
                         .equation = "t = 0.3 + 0.1*H",
                         .inputs = wall_in,
                         .outputs = wall_out,
                         .source = "practice",
                         .place = "cantilever walls of usual slenderness; for comparison only",
                         .provenance = Provenance::common_practice,
                         .accuracy = "order of size: earth and water pressure decide",
                         .evaluate = [](std::span<const double> in, std::span<double> out) -> Outcome<void> {
                           out[0] = wall_thickness(in[0]);
                           return {};
                         }};

const Method concrete_method{.id = "quantity.concrete.first_measure",
                             .title = "Concrete of the basin, first measure",
                             .equation = "Vc = L*(W + 2*t)*s + 2*L*H*t + Ve",
                             .inputs = concrete_in,
                             .outputs = concrete_out,
                             .source = "momentum",
                             .place = "geometry of slab, two walls and elements",
                             .provenance = Provenance::derived,
                             .accuracy = "exact for the thicknesses given",
                             .evaluate = [](std::span<const double> in, std::span<double> out) -> Outcome<void> {
                               out[0] = volume(in[0], in[1], in[2], in[3], in[4], in[5]);
                               return {};
                             }};

}  // namespace

QuantityInput quantity_input(const Option& option, std::span<const site::ToeFlow> flows) {
  QuantityInput input{
      .length = option.length, .width = 0.5 * (option.width + option.structure.end_width), .wall_height = option.wall_height};
  for (const auto& flow : flows) input.largest_y2 = std::max(input.largest_y2, flow.y2);
  return input;
}

Quantities concrete(const QuantityInput& input, const dissipators::Structure& structure, Working* working) {
  Quantities result;
  result.riprap = structure.riprap_volume;
  if (!structure.is_paved) return result;
  result.slab_thickness = slab_thickness(input.largest_y2);
  result.wall_thickness = wall_thickness(input.wall_height);
  result.slab_concrete = input.length * (input.width + 2.0 * result.wall_thickness) * result.slab_thickness;
  result.wall_concrete = 2.0 * input.length * input.wall_height * result.wall_thickness;
  for (const auto& element : structure.elements)
    result.element_concrete += element.rows * element.count * element.width * outline_area(element.profile);
  result.concrete = volume(input.length, input.width, input.wall_height, result.slab_thickness, result.wall_thickness,
                           result.element_concrete);
  constexpr std::string_view walls = "from the floor to the top of the walls";
  trace(working, slab_method, {told(input.largest_y2, "largest over the discharges")}, {result.slab_thickness},
        "slab thickness");
  trace(working, wall_method, {told(input.wall_height, walls)}, {result.wall_thickness}, "mean wall thickness");
  trace(working, concrete_method,
        {told(input.length, "of the floor as built"), told(input.width, "mean width of the basin"),
         told(input.wall_height, walls), told(result.slab_thickness, "the slab's, above"),
         told(result.wall_thickness, "the walls', above"),
         told(result.element_concrete, "outlines of blocks and sills times their widths")},
        {result.concrete}, "concrete as a first measure");
  return result;
}

std::span<const Method* const> methods() {
  static const Method* const list[] = {&slab_method, &wall_method, &concrete_method};
  return list;
}

}  // namespace quell::design
