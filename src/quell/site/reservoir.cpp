#include "quell/site/reservoir.h"

#include "quell/base/roots.h"
#include "quell/hydraulics/crest.h"

namespace quell::site {
namespace {

hydraulics::FaceSlope face_of(const Crest& crest) {
  switch (crest.upstream_face) {
    case UpstreamFace::vertical: return hydraulics::FaceSlope::vertical;
    case UpstreamFace::slope_3_to_1: return hydraulics::FaceSlope::slope_3_to_1;
    case UpstreamFace::slope_3_to_2: return hydraulics::FaceSlope::slope_3_to_2;
    case UpstreamFace::slope_3_to_3: return hydraulics::FaceSlope::slope_3_to_3;
  }
  return hydraulics::FaceSlope::vertical;
}

double effective_length(const Crest& crest, double head) {
  return hydraulics::effective_crest_length({.net_length = crest.net_width,
                                             .piers = static_cast<double>(crest.piers),
                                             .Kp = crest.pier_contraction,
                                             .Ka = crest.abutment_contraction,
                                             .He = head});
}

hydraulics::CrestDischargeInput discharge_input(const Crest& crest, double head) {
  return {.He = head,
          .Hd = crest.design_head,
          .P = crest.approach_depth,
          .L = effective_length(crest, head),
          .face = face_of(crest)};
}

}  // namespace

double crest_discharge(const Crest& crest, double crest_head) {
  return hydraulics::crest_discharge(discharge_input(crest, crest_head));
}

Outcome<double> crest_head(const Crest& crest, double discharge) {
  // Contractions shorten the crest as the head grows: beyond 3/5 of the head that closes it the discharge falls again.
  const double contraction = 2.0 * (crest.piers * crest.pier_contraction + crest.abutment_contraction);
  double upper = std::cbrt(discharge * discharge / (crest.net_width * crest.net_width));  // C is above 1
  if (contraction > 0.0) upper = std::min(2.0 * upper, 0.6 * crest.net_width / contraction);
  while (crest_discharge(crest, upper) < discharge) {
    if (contraction > 0.0) return no_answer("the crest is too narrow for its contractions to pass this discharge");
    upper *= 2.0;
  }
  return find_root([&](double head) { return crest_discharge(crest, head) - discharge; }, 0.0, upper, 1e-12 * upper);
}

void trace_crest(const Crest& crest, double crest_head, Working& working) {
  const auto input = discharge_input(crest, crest_head);
  working.add(
      hydraulics::record::effective_length,
      {crest.net_width, static_cast<double>(crest.piers), crest.pier_contraction, crest.abutment_contraction, crest_head},
      {input.L}, "effective length of the crest");
  working.add(hydraulics::record::ogee_discharge(input.face), {crest_head, crest.design_head, crest.approach_depth, input.L},
              {hydraulics::crest_discharge(input)}, "discharge over the crest at this head");
  working.add(hydraulics::record::crest_least_pressure, {crest_head, crest.design_head},
              {hydraulics::crest_least_pressure_head({.He = crest_head, .Hd = crest.design_head})},
              "least pressure on the crest");
}

}  // namespace quell::site
