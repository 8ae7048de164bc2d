// The river below the basin as given. Plain numbers in SI, no behaviour.
#pragma once

#include <array>
#include <string>
#include <string_view>
#include <vector>

namespace quell::site {

enum class TailwaterCase { low, expected, high };
inline constexpr std::array<TailwaterCase, 3> tailwater_cases{TailwaterCase::low, TailwaterCase::expected, TailwaterCase::high};
constexpr std::size_t index_of(TailwaterCase tailwater_case) {
  return static_cast<std::size_t>(tailwater_case);
}
std::string_view name_of(TailwaterCase tailwater_case);  ///< "low", "expected", "high"

/// Tailwater as a table: level over discharge, straight between the rows.
struct TailwaterRating {
  std::vector<double> discharge{};             ///< m3/s, strictly increasing, at least two
  std::array<std::vector<double>, 3> level{};  ///< m, by TailwaterCase, not decreasing
  bool is_computed = false;  ///< made by quell from the river's data, close enough to be smooth; holds the allowances already
};

/// Tailwater as normal depth in a trapezoidal reach.
struct RiverSection {
  double bottom_width = 0.0;          ///< m, >= 0
  double side_slope = 0.0;            ///< m horizontal : 1 vertical, >= 0
  double bed_slope = 0.0;             ///< > 0
  std::array<double, 3> manning_n{};  ///< s/m^(1/3), by TailwaterCase: low n gives low water
};

/// Measured pairs of level and discharge; the tailwater is a power law through them.
struct Gauging {
  std::vector<double> level{};      ///< m
  std::vector<double> discharge{};  ///< m3/s, > 0
};

/// A surveyed cross-section, looking downstream, from the left to the right bank.
struct CrossSection {
  std::string file{};                 ///< as named in the site file, for messages and figures
  double distance = 0.0;              ///< m along the channel, downstream of the basin's end, >= 0; strictly increasing
  double left_distance = 0.0;         ///< m along the left plain from the section before; 0: as the channel
  double right_distance = 0.0;        ///< m along the right plain; 0: as the channel
  std::vector<double> station{};      ///< m across the river, not falling
  std::vector<double> level{};        ///< m
  std::vector<double> point_n{};      ///< Manning's n from each point to the next; empty: by plain and channel
  double left_bank = 0.0;             ///< m, station
  double right_bank = 0.0;            ///< m, station
  std::array<double, 3> manning_n{};  ///< left plain, channel, right plain
};

/// What holds the water at the lower end of the surveyed river.
enum class RiverControl {
  level,     ///< a known stage, such as a confluence or a lake
  normal,    ///< normal depth at a slope
  critical,  ///< rapids, a sill, a fall
  table      ///< a rating at the last section
};

enum class FrictionMean { conveyance, arithmetic, geometric, harmonic };

/// Tailwater by water-surface profiles through surveyed sections. One section: normal or critical depth in it.
struct SurveyedReach {
  std::vector<CrossSection> sections{};  ///< going downstream; the first is where the tailwater is wanted
  RiverControl control = RiverControl::normal;
  std::array<double, 3> control_level{};  ///< m, by TailwaterCase
  double control_slope = 0.0;             ///< > 0
  TailwaterRating control_rating{};       ///< m, by TailwaterCase, at the last section
  double low_n_factor = 0.8;              ///< on every n in the low case
  double high_n_factor = 1.25;            ///< in the high case
  double contraction = 0.1;
  double expansion = 0.3;
  FrictionMean friction_mean = FrictionMean::conveyance;
  bool is_mixed = false;         ///< follow supercritical stretches too
  double longest_spacing = 0.0;  ///< m, sections are interpolated to keep it; 0: as surveyed
};

/// Bed material and geometry for the estimates of how far the bed may sink below the dam.
struct RiverBed {
  bool given = false;
  double mean_size = 0.0;           ///< d50, m
  double coarse_size = 0.0;         ///< d90, m
  double fine_size = 0.0;           ///< d15, m; 0: mirrored from d50 and d85
  double upper_size = 0.0;          ///< d85, m; 0: between d50 and d90, straight over the logarithm of the size
  double armour_size = 0.0;         ///< m, smallest size that does not move; 0: from the mean of the published methods
  double coarser_share = 0.0;       ///< of the bed by weight coarser than the armour size, 0 to 1
  double armour_thickness = 0.0;    ///< m
  double dominant_discharge = 0.0;  ///< m3/s
  double bed_width = 0.0;           ///< m
  double mean_depth = 0.0;          ///< m at the dominant discharge
  double bed_slope = 0.0;
  double manning_n = 0.0;         ///< of the grains and forms, s/m^(1/3)
  double control_distance = 0.0;  ///< m downstream to a bed that cannot sink; 0: none known
};

/// How the tailwater is known.
enum class TailwaterSource { rating, section, gauging, survey };

struct River {
  double bed_level = 0.0;          ///< m, at the end of the basin
  double bed_degradation = 0.0;    ///< m, >= 0: lowers the low case only
  bool degradation_given = false;  ///< false: where the bed's data is given, the estimate is taken
  double lag_allowance = 0.0;      ///< m, >= 0: tailwater missing after the gates open; lowers the low case
  TailwaterSource source = TailwaterSource::section;
  bool has_spread = false;   ///< true where low and high differ from expected by the user's own data
  TailwaterRating rating{};  ///< given, or computed from gauging and survey
  RiverSection section;
  Gauging gauging;
  SurveyedReach reach;
  RiverBed bed;

  bool has_rating() const { return source == TailwaterSource::rating; }
};

}  // namespace quell::site
