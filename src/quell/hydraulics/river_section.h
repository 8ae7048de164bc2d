// A surveyed cross-section of a river: main channel and flood plains, parted by vertical lines at the bank stations.
//
// Divided channel: the parting lines are not wetted, the conveyances of the parts are added. A plain is parted again wherever
// its roughness changes; inside the main channel parts of different roughness are taken as one by Horton and Einstein. The
// method gives about 10 % too much flow while the water on the plains is shallow. All water below the level counts, behind a
// ridge too; above the lower end of the survey the walls go up vertically.
//
// The perimeter leaps where a level berm is wetted; beside flood plains the energy then leaps a little too, and a least energy
// just above such a leap is not looked for.
//
// Levels w and z, and stations x across the river, in m. Energy level E = w + alpha Q^2/(2 g A^2).
#pragma once

#include <array>
#include <span>
#include <vector>

#include "quell/base/constants.h"
#include "quell/base/method.h"

namespace quell::hydraulics {

/// Points (x, z) from the left to the right end looking downstream, x never falling. Water between left_bank and right_bank is
/// the main channel.
struct SurveyedSection {
  std::vector<double> x = {};         ///< m
  std::vector<double> z = {};         ///< m, as many
  double left_bank = 0.0;             ///< m, within the points
  double right_bank = 0.0;            ///< m, above left_bank
  std::array<double, 3> manning_n{};  ///< left plain, main channel, right plain; s/m^(1/3), > 0
  /// Finer zones, in place of manning_n: zone_n[i] holds from zone_start[i] (m, growing) to the next; the first also left of
  /// it.
  std::vector<double> zone_start = {};
  std::vector<double> zone_n = {};
  double alpha_part = 1.0;  ///< energy coefficient inside each part, >= 1
  double beta_part = 1.0;   ///< momentum coefficient inside each part, >= 1
};

struct SectionConveyance {
  double area = 0.0;                        ///< m2
  double perimeter = 0.0;                   ///< m
  double top_width = 0.0;                   ///< m
  double conveyance = 0.0;                  ///< K, m3/s: Q = K sqrt(Sf)
  double alpha = 1.0;                       ///< energy coefficient
  double beta = 1.0;                        ///< momentum coefficient
  double first_moment = 0.0;                ///< m3
  std::array<double, 3> part_area{};        ///< left plain, main channel, right plain, m2
  std::array<double, 3> part_conveyance{};  ///< m3/s
  bool above_bank = false;                  ///< the water stands above the lower end of the survey
};

struct CriticalLevels {
  double level;   ///< of the least energy, m
  int count = 0;  ///< minima of the energy
};

class RiverSection {
 public:
  /// n_factor (> 0) multiplies every roughness; the points strictly between the banks are lowered by `lowering` (m; negative
  /// where the bed has risen).
  static Outcome<RiverSection> of(const SurveyedSection& survey, double n_factor = 1.0, double lowering = 0.0);

  /// Between two sections, `share` (0 to 1) of the way from the first to the second: matched at the ends, the banks and the
  /// lowest point of the channel; in between point by point where both have equally many, by relative distance elsewhere.
  static Outcome<RiverSection> interpolated(const RiverSection& first, const RiverSection& second, double share);

  /// The same section, every level higher by `rise` (m).
  RiverSection raised(double rise) const;

  /// Everything about the water below a level; no water (area 0) at or below the lowest point. Does not allocate.
  SectionConveyance at_level(double level) const;

  double lowest_level() const { return levels_.front(); }
  double bank_level() const { return bank_level_; }  ///< lower end of the survey

  /// E, m; level above the lowest.
  double energy_level(double level, double Q) const;
  /// alpha Q^2/(2 g A^2), m.
  double velocity_head(double level, double Q) const;
  /// beta Q^2/(g A) + A ybar, m3.
  double specific_force(double level, double Q) const;
  /// alpha Q^2 T/(g A^3) - Q^2/(2 g A^2) d(alpha)/dw, which is 1 - dE/dw: 1 at a critical level.
  double froude_squared(double level, double Q) const;

  /// Lowest level of uniform flow, K = Q/sqrt(slope); Q > 0, slope > 0. To 1e-10 m.
  Outcome<double> normal_level(double Q, double slope) const;
  /// Level of the least energy of all, Q > 0: every layer between points is scanned in steps of 2 % of the depth or less.
  Outcome<double> critical_level(double Q) const;
  Outcome<CriticalLevels> critical_levels(double Q) const;

  /// The section as it is after lowering, factor and parting.
  std::span<const double> x() const { return x_; }
  std::span<const double> z() const { return z_; }

 private:
  friend class RiverSectionBuilder;
  struct Strip {  ///< one strip of water at the bottom of one layer, and what grows per metre of level
    double area = 0.0, width = 0.0, spread = 0.0, moment = 0.0;
    double perimeter = 0.0, perimeter_rate = 0.0;
    double friction = 0.0, friction_rate = 0.0;  ///< sum of P n^1.5: the conveyance of the strip is A^(5/3)/friction^(2/3)
  };
  struct Kinetic {  ///< alpha/A^2 = S/K^3 with S = sum(k^3/a^2) over the strips; and the growth per metre of level
    double S = 0.0, S_rate = 0.0, K = 0.0, K_rate = 0.0;
  };
  RiverSection() = default;
  std::size_t layer_of(double level) const;
  std::span<const Strip> strips_of(std::size_t layer) const;
  Kinetic kinetic(std::size_t layer, double level) const;
  double froude_squared_in(std::size_t layer, double level, double Q) const;
  CriticalLevels scan(double Q, bool all) const;

  std::vector<double> x_, z_;
  std::vector<double> n_;                       ///< of the panel from each point to the next
  std::size_t left_bank_ = 0, right_bank_ = 0;  ///< points
  std::vector<double> levels_;                  ///< at which a point lies, rising: each layer is (level, next level]
  std::vector<double> conveyance_;              ///< at the top of each layer but the last, which has none
  std::vector<std::size_t> part_;               ///< of each strip: 0 left plain, 1 main channel, 2 right plain
  std::vector<Strip> strips_;                   ///< layer by layer
  double bank_level_ = 0.0;
  double alpha_part_ = 1.0, beta_part_ = 1.0;
};

namespace record {
extern const Method river_conveyance_surveyed;
extern const Method river_normal_level_surveyed;
extern const Method river_critical_level_surveyed;
extern const Method velocity_coefficients_excess;
}  // namespace record

}  // namespace quell::hydraulics
