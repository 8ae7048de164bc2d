// A published curve: points read from a figure or a table, with the error of reading. The points live in
// data/curves/<id>.csv with a card <id>.toml beside them and are compiled in.
#pragma once

#include <span>
#include <string_view>

#include "quell/base/method.h"

namespace quell {

/// Piecewise-linear curve, at least two points, x strictly increasing. Outside its points it holds the end value; ask
/// `range().contains(x)` first where that matters.
struct Curve {
  std::string_view id;
  std::string_view title;
  std::string_view x_symbol;
  std::string_view y_symbol;
  std::string_view source;  ///< key in data/sources.bib
  std::string_view place;
  Provenance provenance;
  double reading_error;  ///< relative
  std::string_view remarks;
  std::span<const double> x;
  std::span<const double> y;

  double at(double value) const noexcept;
  constexpr Range range() const { return {x.front(), x.back()}; }
};

/// All curves of data/curves, sorted by id.
std::span<const Curve> all_curves();

/// The curve of that id. A missing id is a fault of the programmer and stops the program.
const Curve& curve(std::string_view id);

/// The same, null where there is none.
const Curve* find_curve(std::string_view id);

}  // namespace quell
