#include "quell/hydraulics/roughness_parts.h"

#include <cmath>

namespace quell::hydraulics {

double composite_roughness(std::span<const RoughPart> parts) noexcept {
  double weighted = 0.0;
  double perimeter = 0.0;
  for (const RoughPart& part : parts) {
    weighted += part.P * std::pow(part.n, 1.5);
    perimeter += part.P;
  }
  return std::pow(weighted / perimeter, 2.0 / 3.0);
}

double conveyance(double A, double P, double n) noexcept {
  return A * std::pow(A / P, 2.0 / 3.0) / n;
}

CompoundConveyance compound_conveyance(std::span<const FlowPart> parts) noexcept {
  double A = 0.0;
  double K = 0.0;
  double energy = 0.0;
  double momentum = 0.0;
  for (const FlowPart& part : parts) {
    const double k = conveyance(part.A, part.P, part.n);
    A += part.A;
    K += k;
    energy += k * k * k / (part.A * part.A);
    momentum += k * k / part.A;
  }
  return {.K = K, .alpha = energy * A * A / (K * K * K), .beta = momentum * A / (K * K)};
}

namespace record {
namespace {
constexpr Range usual_n{0.008, 0.2};
constexpr Symbol horton_in[] = {{"P1", "wetted perimeter of the first part", dimension::length, above_zero},
                                {"n1", "its Manning roughness", dimension::manning, usual_n},
                                {"P2", "wetted perimeter of the second part", dimension::length, {0.0, no_limit}},
                                {"n2", "its Manning roughness", dimension::manning, usual_n},
                                {"P3", "wetted perimeter of the third part", dimension::length, {0.0, no_limit}, 0.0},
                                {"n3", "its Manning roughness", dimension::manning, usual_n, 0.03}};
constexpr Symbol part_in[] = {{"A", "area of flow", dimension::area, above_zero},
                              {"P", "wetted perimeter", dimension::length, above_zero},
                              {"n", "Manning's roughness", dimension::manning, usual_n}};
constexpr Symbol compound_in[] = {{"A1", "area of the left part", dimension::area, above_zero},
                                  {"P1", "its wetted perimeter", dimension::length, above_zero},
                                  {"n1", "its Manning roughness", dimension::manning, usual_n},
                                  {"A2", "area of the middle part", dimension::area, above_zero},
                                  {"P2", "its wetted perimeter", dimension::length, above_zero},
                                  {"n2", "its Manning roughness", dimension::manning, usual_n},
                                  {"A3", "area of the right part", dimension::area, above_zero},
                                  {"P3", "its wetted perimeter", dimension::length, above_zero},
                                  {"n3", "its Manning roughness", dimension::manning, usual_n}};
constexpr Symbol n_out[] = {{"n", "roughness of the whole section", dimension::manning, above_zero}};
constexpr Symbol K_out[] = {{"K", "conveyance: discharge over the root of the slope", dimension::discharge, above_zero}};
constexpr Symbol compound_out[] = {{"K", "conveyance: discharge over the root of the slope", dimension::discharge, above_zero},
                                   {"alpha", "energy coefficient", dimension::none, above_zero},
                                   {"beta", "momentum coefficient", dimension::none, above_zero}};
}  // namespace

const Method roughness_horton{
    .id = "section.roughness.horton",
    .title = "Roughness of a section whose perimeter has parts of different roughness (Horton, Einstein)",
    .equation = "n = ((P1*n1^1.5 + P2*n2^1.5 + P3*n3^1.5)/(P1 + P2 + P3))^(2/3)",
    .inputs = horton_in,
    .outputs = n_out,
    .source = "chow_1959",
    .place = "sec. 6-5, equal mean velocity in all parts",
    .provenance = Provenance::memory,
    .accuracy = "other rules for the same section differ by up to 30 %",
    .remarks = "For a simple channel. On a section with flood plains it gives far too little flow: add conveyances there.",
    .evaluate = [](std::span<const double> in, std::span<double> out) -> Outcome<void> {
      const RoughPart parts[] = {{in[0], in[1]}, {in[2], in[3]}, {in[4], in[5]}};
      out[0] = composite_roughness(parts);
      return {};
    }};

const Method conveyance_manning{.id = "section.conveyance.manning",
                                .title = "Conveyance of a section or of a part of one by Manning's formula",
                                .equation = "K = A*(A/P)^(2/3)/n",
                                .inputs = part_in,
                                .outputs = K_out,
                                .source = "chow_1959",
                                .place = "ch. 6, conveyance",
                                .provenance = Provenance::memory,
                                .accuracy = "n is rarely known better than 15 %",
                                .evaluate = [](std::span<const double> in, std::span<double> out) -> Outcome<void> {
                                  out[0] = conveyance(in[0], in[1], in[2]);
                                  return {};
                                }};

const Method conveyance_compound{
    .id = "section.conveyance.compound",
    .title = "Conveyance, energy and momentum coefficients of a section of three parts",
    .equation =
        "k1 = A1*(A1/P1)^(2/3)/n1; k2 = A2*(A2/P2)^(2/3)/n2; k3 = A3*(A3/P3)^(2/3)/n3; K = k1 + k2 + k3; "
        "alpha = (k1^3/A1^2 + k2^3/A2^2 + k3^3/A3^2)*(A1 + A2 + A3)^2/K^3; beta = (k1^2/A1 + k2^2/A2 + k3^2/A3)*(A1 + A2 + "
        "A3)/K^2",
    .inputs = compound_in,
    .outputs = compound_out,
    .source = "chow_1959",
    .place = "sec. 6-5, divided channel: flood plains and main channel parted by vertical lines",
    .provenance = Provenance::memory,
    .accuracy = "about 10 % too much flow while the water on the plains is shallow",
    .remarks = "Whether the dividing lines count in the perimeters is the user's choice; usually they do not.",
    .evaluate = [](std::span<const double> in, std::span<double> out) -> Outcome<void> {
      const FlowPart parts[] = {{in[0], in[1], in[2]}, {in[3], in[4], in[5]}, {in[6], in[7], in[8]}};
      const auto whole = compound_conveyance(parts);
      out[0] = whole.K;
      out[1] = whole.alpha;
      out[2] = whole.beta;
      return {};
    }};

}  // namespace record
}  // namespace quell::hydraulics
