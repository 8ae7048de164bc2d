// Rows of a routed flood, added one by one. Only for the sources of the level pool.
#pragma once

#include <algorithm>
#include <cmath>

#include "quell/hydraulics/level_pool.h"

namespace quell::hydraulics {

struct FloodRow {
  double time, inflow, outflow, level;
  int stage;
};

inline void append_row(RoutedFlood& flood, const FloodRow& row) {
  flood.time.push_back(row.time);
  flood.inflow.push_back(row.inflow);
  flood.outflow.push_back(row.outflow);
  flood.level.push_back(row.level);
  flood.stage.push_back(row.stage);
}

/// At its place in time, unless a row stands there.
inline void insert_row(RoutedFlood& flood, const FloodRow& row) {
  const auto at = std::lower_bound(flood.time.begin(), flood.time.end(), row.time);
  if (at != flood.time.end() && *at == row.time) return;
  const auto index = at - flood.time.begin();
  flood.time.insert(at, row.time);
  flood.inflow.insert(flood.inflow.begin() + index, row.inflow);
  flood.outflow.insert(flood.outflow.begin() + index, row.outflow);
  flood.level.insert(flood.level.begin() + index, row.level);
  flood.stage.insert(flood.stage.begin() + index, row.stage);
}

inline void reserve_rows(RoutedFlood& flood, std::size_t rows) {
  for (auto* column : {&flood.time, &flood.inflow, &flood.outflow, &flood.level}) column->reserve(rows);
  flood.stage.reserve(rows);
}

/// What neither flowed out nor stayed, of the larger of both volumes.
inline double balance_of(const RoutedFlood& flood) {
  const double larger = std::max(std::abs(flood.volume_in), std::abs(flood.volume_out));
  return larger > 0.0 ? (flood.volume_in - flood.volume_out - flood.storage_change) / larger : 0.0;
}

}  // namespace quell::hydraulics
