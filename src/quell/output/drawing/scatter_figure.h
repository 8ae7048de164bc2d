// Measured against computed, one square panel for each quantity: the 1:1 line, 10 % above and below it, one marker for each set
// of measurements, and a legend with number, mean ratio and standard deviation.
#pragma once

#include <span>
#include <string>
#include <vector>

namespace quell::output {

struct ScatterPoint {
  double ours = 0.0;      ///< >= 0, no unit
  double measured = 0.0;  ///< >= 0, no unit
  bool recalled = false;  ///< from memory: an open marker
};

struct ScatterSeries {
  std::string name;
  double bias = 0.0;    ///< mean of measured over ours
  double spread = 0.0;  ///< its standard deviation; not printed below two points
  std::vector<ScatterPoint> points;
};

struct ScatterPanel {
  std::string title;
  std::vector<ScatterSeries> series;
};

/// As many panels as are given, two in a row.
std::string scatter_svg(std::span<const ScatterPanel> panels);

}  // namespace quell::output
