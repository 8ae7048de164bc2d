// A flood through a reservoir whose surface is level: dS/dt = I - O(H), the storage S a function of the level H.
//
// The pool must be short enough to fill evenly; rain on it and losses belong to the inflow, which may therefore be below zero.
// The outflow is a function of the level, one for each stage of a gate rule.
#pragma once

#include <cstddef>
#include <limits>
#include <span>
#include <vector>

#include "quell/base/method.h"
#include "quell/hydraulics/reservoir_storage.h"

namespace quell::hydraulics {

/// Outflow (m3/s, not below zero and not falling) over the level (m, strictly rising), two points at least, straight between
/// them; zero below the first, the last slope held above the last. The first outflow is zero, unless the table begins at the
/// lowest level of the storage or below: an outflow that begins with a leap lets a small inflow neither rise nor fall.
struct RatingTable {
  std::vector<double> level;
  std::vector<double> discharge;
  double at(double height) const noexcept;
  /// The same where the level moves little from call to call: the search begins at `panel`, any number at first.
  double at(double height, std::size_t& panel) const noexcept;
  /// The same with the first slope held below the first level, where the line falls below zero.
  double line_at(double height, std::size_t& panel) const noexcept;
};

/// One setting of the outflow. It holds until the level rises above `up_level` (then the next stage holds) or falls below
/// `down_level` (then the one before), m. The last stage knows no next one, the first none before.
struct OutflowStage {
  RatingTable rating;
  double up_level = std::numeric_limits<double>::infinity();
  double down_level = -std::numeric_limits<double>::infinity();
};

struct RoutingInput {
  const StorageCurve& storage;
  std::span<const double> time;    ///< s, strictly rising, two at least
  std::span<const double> inflow;  ///< m3/s at the times, straight between them
  std::span<const OutflowStage> stages;
  std::size_t first_stage = 0;
  double initial_level;                                           ///< m, at the first time
  double tolerance = 1e-4;                                        ///< error of the level in one step, m
  double longest_step = std::numeric_limits<double>::infinity();  ///< s
  double after = 0.0;                                             ///< s routed beyond the last time, the inflow held
  std::size_t most_steps = 2'000'000;  ///< steps tried, beyond four to each time, before there is no answer
};

/// Rows at the times of the inflow (beyond the last, a last interval apart, 1000 at most), at both peaks, and two at each
/// change of stage, before and after it, with the same time.
struct RoutedFlood {
  std::vector<double> time;     ///< s, not falling
  std::vector<double> inflow;   ///< m3/s
  std::vector<double> outflow;  ///< m3/s
  std::vector<double> level;    ///< m
  std::vector<int> stage;
  double peak_level = 0.0;         ///< m, between the times too: there the outflow equals the inflow
  double peak_level_time = 0.0;    ///< s
  double peak_outflow = 0.0;       ///< m3/s
  double peak_outflow_time = 0.0;  ///< s
  double peak_inflow = 0.0;        ///< m3/s
  double volume_in = 0.0;          ///< m3
  double volume_out = 0.0;         ///< m3, integrated beside the storage
  double storage_change = 0.0;     ///< m3, of the end above the start, integrated beside the volume out
  double balance_error = 0.0;      ///< what flowed in and neither out nor into storage, of the larger volume
  int stage_changes = 0;
  bool storage_extrapolated = false;  ///< the level rose above the storage curve
};

/// Routes by Dormand and Prince's pair 5(4) with the error of the level held in each step. Steps end at the times of the
/// inflow, where the outflow of a stage begins, at the points of the tables where they matter, at the changes of stage and at
/// the peak. Storage and volume out are integrated together, so that the balance closes to rounding. No answer where the pool
/// empties, or where the stages change without end.
Outcome<RoutedFlood> route_level_pool(const RoutingInput& input);

/// Why the input cannot be routed, if it cannot.
Outcome<void> check_routing(const RoutingInput& input);

/// The same over a free crest at level zero: outflow `coefficient` H^1.5 (m3/s, the coefficient in m^1.5/s), exact instead of a
/// table. `input` has no stages.
Outcome<RoutedFlood> route_over_crest(const RoutingInput& input, double coefficient);

namespace record {
extern const Method reservoir_flood_crest;
extern const Method reservoir_flood_tabulated;
extern const Method reservoir_flood_gamma;
}  // namespace record

}  // namespace quell::hydraulics
