// What the site's data says before a basin is thought of: yearly floods, routed inflows, gates, river. The design runs over the
// site that `resolve` returns, in which every discharge and tailwater is a number.
#pragma once

#include <array>
#include <string>
#include <vector>

#include "quell/base/outcome.h"
#include "quell/site/site.h"

namespace quell::site {

/// The law fitted to the yearly floods, with the points to draw beside it.
struct FrequencyStudy {
  FrequencyLaw law = FrequencyLaw::log_pearson_3;
  int years = 0;
  double mean = 0.0;       ///< m3/s; of the logarithms to base 10 for log-Pearson III
  double deviation = 0.0;  ///< in the same unit
  double skew = 0.0;       ///< of the record (log-Pearson III)
  double skew_used = 0.0;  ///< weighted with the regional one where that was given
  double confidence = 0.0;
  std::vector<double> plotted_period{};  ///< years, of each flood of the record, the largest first
  std::vector<double> plotted_flood{};   ///< m3/s
  std::vector<double> period{};          ///< years, of the curve
  std::vector<double> quantile{};        ///< m3/s
  std::vector<double> lower{};           ///< m3/s, confidence limits
  std::vector<double> upper{};
  std::vector<double> outliers{};  ///< m3/s, floods of the record beyond the usual test for outliers
};

/// One inflow through the reservoir.
struct RoutedInflow {
  std::string name{};
  double return_period = 0.0;
  bool peak_from_record = false;
  std::vector<double> time{};     ///< s
  std::vector<double> inflow{};   ///< m3/s, climate factor applied
  std::vector<double> outflow{};  ///< m3/s, spillway and outlets
  std::vector<double> level{};    ///< m
  double peak_inflow = 0.0;
  double peak_inflow_time = 0.0;
  double peak_outflow = 0.0;   ///< m3/s
  double peak_spillway = 0.0;  ///< m3/s, share of the spillway in it
  double peak_level = 0.0;     ///< m
  double peak_level_time = 0.0;
  double volume_in = 0.0;            ///< m3
  double volume_out = 0.0;           ///< m3
  double storage_change = 0.0;       ///< m3
  double balance_error = 0.0;        ///< volume in, less out, less stored, over volume in
  double table_peak_outflow = 0.0;   ///< m3/s, by the storage-indication method with a table; 0 where it does not apply
  double table_peak_level = 0.0;     ///< m
  double one_shut_peak_level = 0.0;  ///< m, with one gate shut throughout; 0: no gates
  int gate_moves = 0;
  bool storage_extrapolated = false;
};

struct RiverProfilePoint {
  double distance = 0.0;  ///< m downstream of the basin
  double bed_level = 0.0, level = 0.0, critical_level = 0.0, energy_level = 0.0;
  double froude_number = 0.0;
  bool held_at_critical = false;  ///< no subcritical solution there: the level is the critical one
};

struct RiverWater {
  std::string label{};  ///< "design flood"
  double discharge = 0.0;
  TailwaterCase tailwater_case = TailwaterCase::expected;
  std::vector<RiverProfilePoint> points{};  ///< going downstream
};

/// Power law Q = a (h - h0)^b through gauged points.
struct GaugingFit {
  double zero_level = 0.0;      ///< h0, m
  double factor = 0.0;          ///< a, SI
  double power = 0.0;           ///< b
  double scatter = 0.0;         ///< standard error of ln Q
  double highest_gauged = 0.0;  ///< m3/s
  double lowest_gauged = 0.0;
};

/// Estimates of how far the bed may sink. Zero: not estimated.
struct DegradationEstimate {
  double armour_size = 0.0;                              ///< m, used
  std::vector<std::pair<std::string, double>> sizes{};   ///< method and size, m
  double to_armour = 0.0;                                ///< m, depth at which an armour layer is complete
  std::vector<std::pair<std::string, double>> slopes{};  ///< method and stable slope
  double to_slope = 0.0;  ///< m at the dam, by the flattest of the stable slopes over the distance to the control
  double depth = 0.0;     ///< m, the smaller of those that could be estimated
  bool known() const { return to_armour > 0.0 || to_slope > 0.0; }
};

struct RiverStudy {
  std::string statement{};          ///< one sentence: how the tailwater was found
  GaugingFit fit{};                 ///< for a gauging
  double start_spread = 0.0;        ///< m at the dam, between a low and a high start of the profile; 0 for one section
  int held_at_critical = 0;         ///< sections without a subcritical solution, at the check flood, expected case
  bool spacing_wide = false;        ///< conveyance changes by more than 0.7 to 1.4 between some neighbours
  std::vector<RiverWater> water{};  ///< profiles to draw
  DegradationEstimate degradation{};
};

struct Study {
  bool has_frequency = false;
  FrequencyStudy frequency;
  std::vector<RoutedInflow> inflows{};
  RiverStudy river;
};

struct ResolvedSite {
  Site site;
  Study study;
};

/// Derives what the site's data gives: floods from the record, routed outflows, the tailwater as a table, gate patterns. A site
/// that gives its discharges and tailwater outright comes back as it is. No answer where a flood empties the reservoir, the
/// water finds no level, or the river stands above the crest.
Outcome<ResolvedSite> resolve(const Site& site);

}  // namespace quell::site
