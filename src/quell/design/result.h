// The result of a design: plain numbers in SI, for the report, the drawings, result.json and the terminal. No behaviour.
#pragma once

#include <array>
#include <string>
#include <string_view>
#include <vector>

#include "quell/base/finding.h"
#include "quell/base/working.h"
#include "quell/checks/safety.h"
#include "quell/dissipators/catalogue.h"
#include "quell/site/chute_flow.h"
#include "quell/site/jump_position.h"
#include "quell/site/site.h"
#include "quell/site/study.h"
#include "quell/site/toe.h"

namespace quell::design {

/// Where the jump stands.
enum class JumpPlace { on_apron, on_chute, past_sill, drowned };
std::string_view name_of(JumpPlace place);  ///< "on_apron", …

/// One discharge that the design runs over.
struct DischargeCase {
  double discharge = 0.0;                   ///< m3/s
  double return_period = 0.0;               ///< years; 0: none
  double reservoir_level = 0.0;             ///< m
  double crest_head = 0.0;                  ///< He, m
  double width = 0.0;                       ///< m, width in use at the crest
  std::string origin{};                     ///< "range", "design flood", the name of a named flood
  std::array<double, 3> tailwater_level{};  ///< m, by TailwaterCase
  std::array<double, 3> river_discharge{};  ///< m3/s in the river, with the outlets that run in that case
  std::string gate_pattern{};               ///< name; empty: no gates, or all bays alike
  double gate_opening = 0.0;                ///< m, of the bay that counts; 0: no gates, or clear of the water
  double bay_discharge = 0.0;               ///< m3/s through the most loaded bay; 0 where the whole width shares the flow
  bool is_check = false;                    ///< a pattern that is judged, but for which the apron is not set
};

/// One discharge in one tailwater case for one option.
struct CaseResult {
  double discharge = 0.0;
  site::TailwaterCase tailwater_case = site::TailwaterCase::low;
  site::ToeFlow toe{};
  double energy_loss = 0.0;           ///< dE of the free jump, m
  double jump_length = 0.0;           ///< m
  double shortest_length = 0.0;       ///< m, spread of the published correlations; 0 where none is meant for this Froude number
  double longest_length = 0.0;        ///< m
  double roller_length = 0.0;         ///< m
  double crest_depth = 0.0;           ///< m, highest surface of the free jump above the apron
  dissipators::TailwaterNeed need{};  ///< depths above the apron, m, without the user's margin
  double required_depth = 0.0;        ///< need.required plus the user's margin, m
  double available_depth = 0.0;       ///< tailwater level minus apron level, m
  double margin = 0.0;                ///< available minus required, m
  JumpPlace jump = JumpPlace::on_apron;
  site::JumpPosition position{};   ///< where its front stands
  double submergence = 0.0;        ///< (available depth - y2)/y2
  double sweep_out_reserve = 0.0;  ///< m, available depth less the depth at which the jump leaves the basin
  double sweep_out_discharge =
      0.0;  ///< m3/s that this tailwater level, held, would still keep in the basin; 0: more than the range
};

struct Governing {
  double discharge = 0.0;  ///< m3/s, refined between the discharges of the range
  site::TailwaterCase tailwater_case = site::TailwaterCase::low;
  double margin = 0.0;           ///< m, smallest of all
  double tailwater_level = 0.0;  ///< m
  site::ToeFlow toe{};
  double required_depth = 0.0;
  double available_depth = 0.0;
  std::string gate_pattern{};  ///< name of the pattern that governs; empty: all bays alike
};

/// Water surface for the long section at one discharge.
struct WaterProfile {
  double discharge = 0.0;
  std::string label{};  ///< "governing discharge", "design flood", …
  double reservoir_level = 0.0;
  double tailwater_level = 0.0;                           ///< m, low case
  std::vector<site::ChutePoint> chute{};                  ///< start of the chute to toe
  std::vector<dissipators::SectionPoint> jump_surface{};  ///< x from the front, depth above the apron; to the end of the jump
  CaseResult result{};                                    ///< in the low case
};

/// The water of one reported discharge in few points, for a page that moves it from one discharge to the next.
struct MovingWater {
  double discharge = 0.0;                     ///< m3/s
  std::vector<site::ChutePoint> chute{};      ///< start of the chute to toe
  std::array<std::vector<double>, 3> jump{};  ///< by TailwaterCase: depths above the apron, m, at equal steps from the front
                                              ///< to the end of the jump
};

struct Quantities {
  double slab_thickness = 0.0;    ///< m, first measure
  double wall_thickness = 0.0;    ///< m, mean, first measure
  double slab_concrete = 0.0;     ///< m3
  double wall_concrete = 0.0;     ///< m3
  double element_concrete = 0.0;  ///< m3
  double concrete = 0.0;          ///< m3, total
  double riprap = 0.0;            ///< m3 of stone that is part of the dissipator

  /// Concrete and stone, m3: what candidates are compared by.
  double built_volume() const { return concrete + riprap; }
};

/// One dissipator type, set and sized.
struct Option {
  const dissipators::Dissipator* type = nullptr;
  bool sized = false;           ///< false: no level or no toe flow was found, and `statement` says why; then only findings hold
  bool applicable = false;      ///< within the type's limits of use
  std::string statement{};      ///< one or two sentences: why it fits or not, which discharge governs
  double apron_level = 0.0;     ///< m
  double width = 0.0;           ///< m
  double length = 0.0;          ///< m
  double wall_top_level = 0.0;  ///< m
  double wall_height = 0.0;     ///< m above the apron
  double end_sill_level = 0.0;  ///< m, crest of the end sill; the apron level where there is none
  double chute_end_station = 0.0;  ///< m, horizontal from the crest to the toe
  Governing governing{};
  std::vector<CaseResult> cases{};          ///< discharge by discharge, each with low, expected, high
  std::vector<CaseResult> pattern_cases{};  ///< the same for the gate patterns: the toe flow is that of the most loaded bay
  dissipators::Structure structure{};
  Quantities quantities{};
  checks::Safety safety{};
  Findings findings{};
  std::vector<site::OutlinePoint>
      crest_outline{};  ///< approach floor to the start of the chute; filled with the profiles or the moving water
  std::vector<WaterProfile> profiles{};     ///< governing discharge, design flood, check flood, smallest
  std::vector<MovingWater> moving_water{};  ///< one for each discharge of `cases`, where it was asked for
  Working working{};                        ///< of the governing case, the sizing case and the quantities
};

struct DesignResult {
  site::ResolvedSite resolved{};  ///< the site that the design ran over, and what its data said
  std::vector<DischargeCase> cases{};
  std::vector<DischargeCase> pattern_cases{};  ///< gate patterns at their reservoir levels
  std::vector<Option> options{};               ///< in the order asked for
  int chosen = -1;                             ///< index in options; -1: none could be sized
  std::string choice_reason{};                 ///< a sentence
  bool all_requirements_met = false;
  double engine_seconds = 0.0;  ///< filled by the caller that has a clock
};

}  // namespace quell::design
