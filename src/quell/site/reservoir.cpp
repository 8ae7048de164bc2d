#include "quell/site/reservoir.h"

#include "quell/base/roots.h"
#include "quell/hydraulics/crest.h"
#include "quell/hydraulics/labyrinth.h"
#include "quell/hydraulics/weirs.h"
#include "quell/hydraulics/weirs_broad.h"
#include "quell/site/crest_outline.h"

namespace quell::site {
namespace {

double effective_length(const Crest& crest, double head) {
  return hydraulics::effective_crest_length(hydraulics::EffectiveLengthInput{.net_length = crest.net_width,
                                                                             .piers = static_cast<double>(crest.piers),
                                                                             .Kp = crest.pier_contraction,
                                                                             .Ka = crest.abutment_contraction,
                                                                             .He = head});
}

hydraulics::CrestDischargeInput ogee_input(const Crest& crest, double head) {
  return {.He = head,
          .Hd = crest.design_head,
          .P = crest.approach_depth,
          .L = effective_length(crest, head),
          .face = face_slope(crest.upstream_face)};
}

hydraulics::BroadWeirFlow broad_flow(const Crest& crest, double head) {
  const hydraulics::BroadWeirInput input{.He = head, .Lw = crest.crest_length, .b = crest.net_width};
  return crest.edge == CrestEdge::square ? hydraulics::square_edged_discharge(input)
                                         : hydraulics::long_throated_discharge(input);
}

Outcome<hydraulics::LabyrinthFlow> labyrinth_flow(const Crest& crest, double head) {
  return hydraulics::labyrinth_half_round(
      {.HT = head, .P = crest.approach_depth, .alpha = crest.sidewall_angle, .L = crest.developed_length});
}

/// Discharge of the sharp crest by the water level `h` (m) above it, and the total head that belongs to it.
struct SharpFlow {
  double discharge, head;
};
SharpFlow sharp_flow(const Crest& crest, double h) {
  const double discharge = hydraulics::rehbock_discharge({.h = h, .P = crest.approach_depth, .b = crest.net_width});
  const double approach = discharge / (crest.net_width * (h + crest.approach_depth));
  return {discharge, h + approach * approach / (2.0 * gravity)};
}

/// Water level (m) above the sharp crest at a total head.
Outcome<double> sharp_water_level(const Crest& crest, double head) {
  return find_root([&](double h) { return sharp_flow(crest, h).head - head; }, 0.0, head, 1e-14 * head);
}

/// The lowest of `upper` and its doubles at which `discharge_at` passes the discharge.
template <class Function>
double passing(Function&& discharge_at, double discharge, double upper) {
  while (discharge_at(upper) < discharge) upper *= 2.0;
  return upper;
}

/// Head at which a rating that rises without end passes the discharge.
template <class Function>
Outcome<double> head_of_rising(Function&& discharge_at, double discharge, double upper) {
  upper = passing(discharge_at, discharge, upper);
  return find_root([&](double head) { return discharge_at(head) - discharge; }, 0.0, upper, 1e-13 * upper);
}

Outcome<double> ogee_head(const Crest& crest, double discharge, double upper) {
  // Contractions shorten the crest as the head grows: beyond 3/5 of the head that closes it the discharge falls again.
  const double contraction = 2.0 * (crest.piers * crest.pier_contraction + crest.abutment_contraction);
  if (contraction > 0.0) upper = std::min(2.0 * upper, 0.6 * crest.net_width / contraction);
  while (crest_discharge(crest, upper) < discharge) {
    if (contraction > 0.0) return no_answer("the crest is too narrow for its contractions to pass this discharge");
    upper *= 2.0;
  }
  return find_root([&](double head) { return crest_discharge(crest, head) - discharge; }, 0.0, upper, 1e-12 * upper);
}

}  // namespace

double crest_discharge(const Crest& crest, double crest_head) {
  if (!(crest_head > 0.0)) return 0.0;
  switch (crest.shape) {
    case CrestShape::ogee: return hydraulics::crest_discharge(ogee_input(crest, crest_head));
    case CrestShape::broad: return broad_flow(crest, crest_head).Q;
    case CrestShape::sharp: {
      const auto h = sharp_water_level(crest, crest_head);
      return h ? sharp_flow(crest, *h).discharge : 0.0;
    }
    case CrestShape::labyrinth: {
      const auto flow = labyrinth_flow(crest, crest_head);
      return flow ? flow->Q : 0.0;
    }
  }
  return 0.0;
}

Outcome<double> crest_head(const Crest& crest, double discharge) {
  const double upper = std::cbrt(discharge * discharge / (crest.net_width * crest.net_width));  // where C is above 1
  switch (crest.shape) {
    case CrestShape::ogee: return ogee_head(crest, discharge, upper);
    case CrestShape::broad: return head_of_rising([&](double head) { return crest_discharge(crest, head); }, discharge, upper);
    case CrestShape::sharp: {
      const auto discharge_at = [&](double h) { return h > 0.0 ? sharp_flow(crest, h).discharge : 0.0; };
      const auto h = head_of_rising(discharge_at, discharge, upper);
      if (!h) return h;
      return sharp_flow(crest, *h).head;
    }
    case CrestShape::labyrinth:
      if (const auto flow = labyrinth_flow(crest, upper); !flow) return tl::unexpected(flow.error());
      return head_of_rising([&](double head) { return crest_discharge(crest, head); }, discharge, upper);
  }
  return no_answer("the crest has no shape");
}

namespace {

void trace_ogee(const Crest& crest, const StepInput& head, Working& working) {
  const auto input = ogee_input(crest, head.value);
  working.add(hydraulics::record::effective_length,
              {given(crest.net_width, "crest.net_width"), given(static_cast<double>(crest.piers), "crest.piers"),
               given(crest.pier_contraction, "crest.pier_contraction"),
               given(crest.abutment_contraction, "crest.abutment_contraction"), head},
              {input.L}, "effective length of the crest");
  working.add(
      hydraulics::record::ogee_discharge(input.face),
      {head, given(crest.design_head, "crest.design_head"), given(crest.approach_depth, "crest.approach_depth"), input.L},
      {hydraulics::crest_discharge(input)}, "discharge over the crest at this head");
  working.add(hydraulics::record::crest_least_pressure, {head, given(crest.design_head, "crest.design_head")},
              {hydraulics::crest_least_pressure_head({.He = head.value, .Hd = crest.design_head})},
              "least pressure on the crest");
}

void trace_broad(const Crest& crest, const StepInput& head, Working& working) {
  const auto flow = broad_flow(crest, head.value);
  constexpr std::string_view purpose = "discharge over the crest at this head";
  if (crest.edge == CrestEdge::square)
    working.add(hydraulics::record::weir_square_edged,
                {head, given(crest.crest_length, "crest.crest_length"), given(crest.net_width, "crest.net_width")},
                {flow.Cd, flow.Q}, purpose);
  else
    working.add(
        hydraulics::record::weir_long_throated,
        {head, given(crest.crest_length, "crest.crest_length"), given(crest.net_width, "crest.net_width"),
         told(0.0, "the crest is rated free; a drowned one is judged apart"), told(0.66, "vertical back, on the safe side")},
        {flow.Cd, flow.Q}, purpose);
}

void trace_sharp(const Crest& crest, const StepInput& head, Working& working) {
  const auto h = sharp_water_level(crest, head.value);
  if (!h) return;
  working.add(hydraulics::record::weir_rehbock,
              {told(*h, "head less the velocity head, found by trial"), given(crest.approach_depth, "crest.approach_depth"),
               given(crest.net_width, "crest.net_width")},
              {sharp_flow(crest, *h).discharge},
              "discharge over the crest: h is the reservoir level less the velocity head of the approach");
}

}  // namespace

void trace_crest(const Crest& crest, const StepInput& crest_head, Working& working) {
  switch (crest.shape) {
    case CrestShape::ogee: return trace_ogee(crest, crest_head, working);
    case CrestShape::broad: return trace_broad(crest, crest_head, working);
    case CrestShape::sharp: return trace_sharp(crest, crest_head, working);
    case CrestShape::labyrinth:
      if (const auto flow = labyrinth_flow(crest, crest_head.value))
        working.add(
            hydraulics::record::labyrinth_discharge_half_round,
            {crest_head, given(crest.approach_depth, "crest.approach_depth"),
             given(crest.sidewall_angle, "crest.sidewall_angle"), given(crest.developed_length, "crest.developed_length")},
            {flow->Cd, flow->Q}, "discharge over the crest at this head");
      return;
  }
}

}  // namespace quell::site
