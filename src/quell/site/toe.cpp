#include "quell/site/toe.h"

#include "quell/hydraulics/definitions.h"
#include "quell/hydraulics/energy.h"
#include "quell/hydraulics/jump.h"

namespace quell::site {

double least_energy_head(double discharge, double width) {
  return 1.3 * hydraulics::least_energy(discharge / width);
}

void trace_unit_discharge(const StepInput& discharge, const StepInput& width, std::string_view where, Working& working) {
  working.add_behind({&hydraulics::record::unit_discharge, {discharge, width}},
                     "discharge per unit width " + std::string(where));
}

Outcome<ToeFlow> toe_flow(double discharge, double width, double energy_level, double reservoir_level, double apron_level,
                          Working* working) {
  ToeFlow flow{.discharge = discharge,
               .width = width,
               .unit_discharge = discharge / width,
               .apron_level = apron_level,
               .reservoir_level = reservoir_level,
               .energy_head = energy_level - apron_level};
  if (!(flow.energy_head >= least_energy_head(discharge, width)))
    return no_answer("the drop to the apron is too small for supercritical flow");
  const auto y1 = hydraulics::supercritical_depth({.q = flow.unit_discharge, .E = flow.energy_head});
  if (!y1) return tl::unexpected(y1.error());
  flow.y1 = *y1;
  flow.V1 = flow.unit_discharge / flow.y1;
  flow.F1 = hydraulics::froude_number(flow.V1, flow.y1);
  flow.y2 = hydraulics::sequent_depth({.y1 = flow.y1, .V1 = flow.V1});
  trace(working, hydraulics::record::depth_from_energy,
        {flow.unit_discharge, told(flow.energy_head, "what the chute leaves, above the apron")}, {flow.y1}, "depth at the toe");
  trace(working, hydraulics::record::mean_velocity, {flow.unit_discharge, flow.y1}, {flow.V1}, "velocity at the toe");
  trace(working, hydraulics::record::froude_number, {flow.V1, flow.y1}, {flow.F1}, "Froude number at the toe");
  trace(working, hydraulics::record::sequent_depth_rectangular, {flow.y1, flow.V1}, {flow.y2}, "depth that the jump needs");
  return flow;
}

}  // namespace quell::site
