// Measured jumps against our methods: a scatter with its bias, not checks that pass or fail. A set of data/measured is a CSV
// whose columns are the inputs of one method, one of its outputs as measured (all SI) and how the row is known; its card names
// them.
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "quell/output/drawing/scatter_figure.h"

namespace quell::app {

struct MeasuredPoint {
  double ours = 0.0;      ///< SI
  double measured = 0.0;  ///< SI
  double scale = 1.0;     ///< by which the figure divides both
  bool seen = true;       ///< read in a source; else recalled
  double ratio() const { return measured / ours; }
};

struct MeasuredSet {
  std::string name;
  std::string source;  ///< "Favre 1935"
  std::string title;
  std::string place;
  std::string method;
  std::string symbol;  ///< the output that was measured
  std::string figure;  ///< title of the panel
  std::string remarks;
  std::vector<MeasuredPoint> points;
  std::vector<std::string> faults;  ///< the set itself is wrong; each counts as a failure

  double bias() const;     ///< mean of measured over ours; 0 for no points
  double spread() const;   ///< standard deviation of that ratio (n - 1); 0 below two points
  double lowest() const;   ///< least ratio; 0 for no points
  double highest() const;  ///< largest ratio; 0 for no points
};

/// Reads one set and computes our value for every row. Never throws for what the texts hold.
MeasuredSet read_measured(std::string_view name, std::string_view card, std::string_view points);

/// The compiled-in sets whose name, source or method holds the pattern, those of one method together.
std::vector<MeasuredSet> measured_sets(std::string_view pattern);

/// One panel for each kind of figure, in the order of the sets.
std::vector<output::ScatterPanel> scatter_panels(const std::vector<MeasuredSet>& sets);

}  // namespace quell::app
