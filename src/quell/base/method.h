// The record of a method: what the report prints about a formula, written once beside the function that
// computes it. The same record guards the range at `quell calc`, typesets the equation in the workings, writes the
// documentation and drives the tests that evaluate the printed equation against the function.
#pragma once

#include <cstddef>
#include <limits>
#include <span>
#include <string_view>

#include "quell/base/outcome.h"
#include "quell/base/units.h"

namespace quell {

/// A text that must be given: it has no default, so a record that omits it does not compile.
class Text {
 public:
  // NOLINTNEXTLINE(google-explicit-constructor): records are written as plain string literals
  consteval Text(const char* text) : view_(text) {
    if (view_.empty()) throw "a record field must not be empty";
  }
  constexpr operator std::string_view() const { return view_; }  // NOLINT(google-explicit-constructor)
  constexpr std::string_view view() const { return view_; }

 private:
  std::string_view view_;
};

/// How the method is known, carried from the handbook into every working.
enum class Provenance {
  seen,             ///< read in the source named
  memory,           ///< recalled from the source named, not re-read
  common_practice,  ///< used in the trade, no published source
  derived           ///< follows from mass, momentum and energy with the assumptions stated
};

std::string_view name_of(Provenance provenance);

/// Closed interval in SI. The default is every finite number.
struct Range {
  double lowest = -std::numeric_limits<double>::max();
  double highest = std::numeric_limits<double>::max();
  constexpr bool contains(double value) const { return value >= lowest && value <= highest; }
  constexpr bool bounded_below() const { return lowest > -std::numeric_limits<double>::max(); }
  constexpr bool bounded_above() const { return highest < std::numeric_limits<double>::max(); }
};
inline constexpr double no_limit = std::numeric_limits<double>::max();
inline constexpr Range any_value{};
inline constexpr Range above_zero{1e-12, no_limit};

/// One symbol of a method. `name` is what `quell calc` takes and the equation holds; `optional_value` is used where an input
/// is not given (NaN: it must be given).
struct Symbol {
  Text name;
  Text meaning;
  Dimension dimension;
  Range range;  ///< where the method may be trusted; outside, the result is marked
  double optional_value = std::numeric_limits<double>::quiet_NaN();
  Range possible = {};  ///< beyond it the method cannot answer at all: a pipe fuller than full, a slope of 90 degrees
  bool list = false;    ///< takes a list of numbers, such as the points of a section
  constexpr bool required() const { return optional_value != optional_value; }
  /// `possible`, and not below zero where nothing below zero may be trusted.
  constexpr Range possible_values() const {
    const double least = range.lowest > 0.0 ? above_zero.lowest : range.lowest == 0.0 ? 0.0 : possible.lowest;
    return {least > possible.lowest ? least : possible.lowest, possible.highest};
  }
};

/// What stands in `Method::equation`.
enum class EquationKind {
  explicit_form,  ///< "a = …; y = …": evaluates to the outputs
  residual,       ///< "left = right" holding inputs and outputs: true when both sides agree
  procedure       ///< words: an algorithm, tested against independent integration
};

/// A method of hydraulics. All fields but `remarks` must be given.
struct Method {
  Text id;     ///< subject.quantity.basis
  Text title;  ///< what it gives, in words
  EquationKind kind = EquationKind::explicit_form;
  Text equation;                   ///< in the language of base/expression.h
  std::span<const Symbol> inputs;  ///< lists stand behind the single numbers, and all hold equally many
  std::span<const Symbol> outputs;
  Text source;  ///< key in data/sources.bib
  Text place;   ///< where in the source
  Provenance provenance;
  Text accuracy;  ///< stated accuracy, in words with a number where there is one
  std::string_view remarks = {};
  /// Why these inputs lie outside the method although each is inside its own range ("F1 <= 1: …"); empty where they do not.
  std::string_view (*condition)(std::span<const double> inputs) = nullptr;
  /// Computes the outputs from the inputs, both in the order of the symbols, in SI; a list is written out where it stands ("all
  /// x, then all z"). Outputs are finite where there is an answer. Called through `answer`, which has refused impossible
  /// values.
  Outcome<void> (*evaluate)(std::span<const double> inputs, std::span<double> outputs);

  /// The guarded call from outside: refuses an input that is impossible or no finite number by its symbol, value and allowed
  /// range, then evaluates; an answer that is not finite is none.
  Outcome<void> answer(std::span<const double> values, std::span<double> results) const;

  /// True where every input lies inside its range and the condition has no objection.
  bool covers(std::span<const double> values) const;

  bool takes_lists() const { return !inputs.empty() && inputs.back().list; }

  /// What `values` holds of the input with that index: one number, or its list.
  std::span<const double> values_of(std::size_t input, std::span<const double> values) const;
};

/// Puts a single result into `outputs`, or passes its reason on: the last line of many an `evaluate`.
inline Outcome<void> store(const Outcome<double>& value, std::span<double> outputs) {
  if (!value) return tl::unexpected(value.error());
  outputs[0] = *value;
  return {};
}

}  // namespace quell
