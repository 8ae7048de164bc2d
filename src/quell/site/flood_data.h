// The floods as given: a record of yearly floods, and inflows to the reservoir. Plain numbers in SI, no behaviour.
#pragma once

#include <string>
#include <vector>

namespace quell::site {

enum class FrequencyLaw { gumbel, log_pearson_3 };

/// Where the i-th largest of N floods is plotted: probability (i - a)/(N + 1 - 2a).
enum class PlottingPosition { cunnane, weibull, hazen, gringorten, blom };

/// The largest flow of each year, in the order of the file.
struct FloodRecord {
  std::vector<int> year{};             ///< empty where the file has none
  std::vector<double> yearly_flood{};  ///< m3/s, > 0
  FrequencyLaw law = FrequencyLaw::log_pearson_3;
  PlottingPosition plotting = PlottingPosition::cunnane;
  double confidence = 0.9;  ///< two-sided, of the limits drawn beside the fit, 0.5 to 0.99
  bool has_regional_skew = false;
  double regional_skew = 0.0;
  double regional_skew_error = 0.302;  ///< mean square error of the regional skew

  bool given() const { return !yearly_flood.empty(); }
};

enum class InflowShape {
  measured,      ///< from a file
  gamma,         ///< (t/tp)^m exp(m (1 - t/tp))
  dimensionless  ///< the standard dimensionless unit hydrograph
};

/// One inflow to the reservoir, to be routed.
struct Inflow {
  std::string name{};
  double return_period = 0.0;  ///< years; 0: none given
  InflowShape shape = InflowShape::measured;
  std::vector<double> time{};  ///< s, strictly increasing; measured
  std::vector<double> flow{};  ///< m3/s, >= 0; measured
  double peak = 0.0;           ///< m3/s; 0: from the record at the return period
  double time_to_peak = 0.0;   ///< s
  double base_flow = 0.0;      ///< m3/s
  double exponent = 3.7;       ///< m of the gamma form
};

struct Floods {
  double climate_factor = 1.0;  ///< on every ordinate of every inflow
  FloodRecord record{};
  std::vector<Inflow> inflows{};
};

/// Level, area and storage of the reservoir; one of area and storage is given.
struct Reservoir {
  std::vector<double> level{};    ///< m, strictly increasing
  std::vector<double> area{};     ///< m2, not decreasing; empty where storage is given
  std::vector<double> storage{};  ///< m3, strictly increasing; empty where area is given
  bool has_initial_level = false;
  double initial_level = 0.0;  ///< m before the flood; else the level that the gates hold, or the crest
  bool has_dam_crest = false;
  double dam_crest_level = 0.0;  ///< m
  double freeboard = 0.0;        ///< m, wanted above the highest level of the check flood

  bool given() const { return !level.empty(); }
};

}  // namespace quell::site
