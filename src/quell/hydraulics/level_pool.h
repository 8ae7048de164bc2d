// A flood through a reservoir whose surface stays level: dS/dt = I(t) - O(H), S = S(H).
//
// Integrated by Dormand and Prince's pair 5(4) for storage and volume out together, in steps that end at every ordinate of the
// inflow and wherever the outflow changes its setting: what flows in, out and stays is then in balance to rounding. The
// classical storage-indication method with a table stands beside it as a check. Long narrow reservoirs, in which the flood
// raises a wedge, need the dynamic equations instead.
#pragma once

#include <limits>
#include <span>
#include <vector>

#include "quell/hydraulics/reservoir_storage.h"

namespace quell::hydraulics {

/// Discharge over level, straight between the points. Below the first its discharge; above the last the last slope.
struct RatingTable {
  std::vector<double> level;      ///< m, strictly increasing, two at least
  std::vector<double> discharge;  ///< m3/s, not decreasing
  double at(double level_wanted) const noexcept;
  double at(double level_wanted, std::size_t& hint) const noexcept;
};

/// A setting of the outflow. It holds until the level rises above `up_level`, when the next one takes over, or falls below
/// `down_level`, when the one before does.
struct OutflowStage {
  RatingTable rating;
  double up_level = std::numeric_limits<double>::infinity();
  double down_level = -std::numeric_limits<double>::infinity();
};

struct RoutingInput {
  const StorageCurve& storage;
  std::span<const double> time;    ///< s, strictly increasing, two at least
  std::span<const double> inflow;  ///< m3/s, straight between the times
  std::span<const OutflowStage> stages;
  std::size_t first_stage = 0;
  double initial_level = 0.0;  ///< m
  double tolerance = 1e-6;     ///< m of level in one step
};

/// At the ordinates of the inflow, at every change of setting (twice: before and after) and at the highest level.
struct RoutedFlood {
  std::vector<double> time, inflow, outflow, level;
  double peak_level = 0.0, peak_level_time = 0.0;
  double peak_outflow = 0.0, peak_outflow_time = 0.0;
  double peak_inflow = 0.0, peak_inflow_time = 0.0;
  double volume_in = 0.0, volume_out = 0.0, storage_change = 0.0;  ///< m3
  double balance_error = 0.0;                                      ///< (in - out - change)/in
  int stage_changes = 0;
  bool storage_extrapolated = false;  ///< the level rose above the storage table
};

/// No answer where the outflow empties the reservoir below its table, or the settings change back and forth without end.
Outcome<RoutedFlood> route_level_pool(const RoutingInput& input);

/// The same by storage indication with the table of the first stage's rating: equal steps (s), 2S/dt + O tabulated at the
/// levels of the rating and read by straight lines. No answer where dt is so long that 2S/dt - O falls below zero.
Outcome<RoutedFlood> route_storage_indication(const RoutingInput& input, double dt);

struct LinearReservoirStep {
  double K;       ///< S = K O, s, > 0
  double dt;      ///< s, > 0
  double I1, I2;  ///< inflow at both ends, m3/s
  double O1;      ///< outflow at the start
};
/// Outflow at the end (m3/s), with the inflow straight and the outflow taken as straight over the step.
double linear_reservoir_outflow(const LinearReservoirStep& step) noexcept;

struct DrainedLake {
  double H0;  ///< head on the weir, m, > 0
  double c;   ///< O = c H^1.5, m^1.5/s, > 0
  double A;   ///< area, m2, > 0
  double t;   ///< s, >= 0
};
/// Head (m) on the weir of a lake without inflow: (H0^-0.5 + c t/(2A))^-2.
double drained_lake_head(const DrainedLake& lake) noexcept;

/// One step of the third-order method of the textbooks, for a lake of area A with a weir c H^1.5: head (m) at the end.
struct ThirdOrderStep {
  double H;       ///< m at the start
  double I1, I2;  ///< m3/s at both ends
  double A;       ///< m2
  double c;       ///< m^1.5/s
  double dt;      ///< s
};
double third_order_head(const ThirdOrderStep& step) noexcept;

namespace record {
extern const Method reservoir_level_pool;
extern const Method reservoir_storage_table;
extern const Method reservoir_indication_step;
extern const Method reservoir_linear_step;
extern const Method reservoir_drained_lake;
extern const Method reservoir_third_order;
}  // namespace record

}  // namespace quell::hydraulics
