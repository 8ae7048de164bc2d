// The water surface along a river from surveyed section to surveyed section, by the standard step.
//
// Between a section 1 and the next one upstream 2:
//   w2 + h2 = w1 + h1 + L Sf + C |h1 - h2|,   h = alpha Q^2/(2 g A^2),
// with the mean friction slope Sf of both ends, the length L of plains and channel weighted with their mean discharges, and C
// the coefficient of contraction where the flow quickens downstream, else of expansion. Second order in L: the error falls with
// the square of the spacing. Steady flow, hydrostatic pressure, bed slopes to about 0.1.
//
// Levels in m; stations in m upstream of the downstream end.
#pragma once

#include <array>
#include <memory>
#include <span>
#include <vector>

#include "quell/hydraulics/river_section.h"

namespace quell::hydraulics {

struct RiverStation {
  const RiverSection* section;   ///< must outlive the station
  double station;                ///< m, rising upstream
  std::array<double, 3> length;  ///< m to the next station downstream: left plain, channel, right plain; 0 at the first
};

enum class FrictionAverage {
  conveyance,  ///< (2 Q/(K1 + K2))^2
  arithmetic,  ///< (Sf1 + Sf2)/2
  geometric,   ///< sqrt(Sf1 Sf2)
  harmonic     ///< 2 Sf1 Sf2/(Sf1 + Sf2)
};

enum class ProfileRegime {
  subcritical,    ///< from the downstream boundary upstream
  supercritical,  ///< from the upstream boundary downstream
  mixed           ///< both, at each section the one of the larger specific force; a jump where that changes
};

struct RiverBoundary {
  enum class Kind { known_level, normal_depth, critical };
  Kind kind = Kind::critical;
  double value = 0.0;  ///< level, m, or slope of the bed; nothing for critical
};

/// Losses of expanding and contracting flow.
struct EddyLoss {
  double contraction = 0.1;  ///< 0 to 1
  double expansion = 0.3;    ///< 0 to 1
};

struct RiverProfileInput {
  std::span<const RiverStation> stations;  ///< from downstream to upstream, two at least
  double discharge = 0.0;                  ///< m3/s, > 0
  RiverBoundary downstream = {};           ///< of the subcritical flow
  RiverBoundary upstream = {};             ///< of the supercritical flow
  double contraction = 0.1;
  double expansion = 0.3;
  FrictionAverage average = FrictionAverage::conveyance;
  ProfileRegime regime = ProfileRegime::subcritical;
};

struct RiverNode {
  double station = 0.0;
  double bed_level = 0.0;
  double level = 0.0;
  double critical_level = 0.0;
  double energy_level = 0.0;
  double velocity = 0.0;          ///< Q/A, m/s
  double froude = 0.0;            ///< root of RiverSection::froude_squared, 0 where that is negative
  double friction_slope = 0.0;    ///< (Q/K)^2
  double conveyance_ratio = 1.0;  ///< K over that of the next section downstream
  bool held_at_critical = false;  ///< the step has no solution of its regime here: set to the critical level
  bool jump = false;              ///< a jump lies between this section and the next upstream
  bool above_bank = false;        ///< the water stands above the lower end of the survey
};

struct RiverProfileResult {
  std::vector<RiverNode> nodes;  ///< from downstream to upstream
  bool spacing_wide = false;     ///< a ratio of conveyances outside 0.7 to 1.4: interpolate sections (`refined`)
};

/// The profile of one discharge, levels solved to 1e-12 m. Of several roots of a step the one next to the neighbour's level is
/// taken.
Outcome<RiverProfileResult> river_profile(const RiverProfileInput& input);

/// One reach between two neighbouring sections.
struct StandardStep {
  const RiverSection* downstream;
  const RiverSection* upstream;
  std::array<double, 3> length;  ///< m: left plain, channel, right plain
  double discharge;              ///< m3/s, > 0
  EddyLoss loss = {};
  FrictionAverage average = FrictionAverage::conveyance;
};
struct SteppedLevel {
  double level;           ///< m
  bool held_at_critical;  ///< there is no solution of this regime
};
/// Subcritical level upstream from the level downstream; critical_level is that of the upstream section.
Outcome<SteppedLevel> step_upstream(const StandardStep& step, double downstream_level, double critical_level);
/// Supercritical level downstream from the level upstream; critical_level is that of the downstream section.
Outcome<SteppedLevel> step_downstream(const StandardStep& step, double upstream_level, double critical_level);

/// Stations with interpolated sections between them, and the owner of these sections.
struct RefinedRiver {
  std::vector<std::unique_ptr<const RiverSection>> sections;  ///< the interpolated ones
  std::vector<RiverStation> stations;                         ///< points to them and to the surveyed ones
};
/// Sections interpolated evenly so that no channel length exceeds longest_spacing (m, > 0). Serves any number of profiles.
Outcome<RefinedRiver> refined(std::span<const RiverStation> stations, double longest_spacing);

/// Difference (m, >= 0) at the upstream end between subcritical profiles from a high and a low level downstream. Above 0.01 m
/// the reach is too short for the unknown downstream level to be forgotten.
Outcome<double> reach_error(const RiverProfileInput& input, double low_level, double high_level);

namespace record {
extern const Method river_level_conveyance;
extern const Method river_level_arithmetic;
extern const Method river_level_geometric;
extern const Method river_level_harmonic;
extern const Method river_level_surveyed;
}  // namespace record

}  // namespace quell::hydraulics
