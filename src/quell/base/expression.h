// The equations that the report prints are executable: one text is typeset as MathML (with symbols, and with
// numbers put in) and evaluated by the tests against the C++ function beside it.
//
// Language: statements "name = expression" separated by ';'. Expressions: + - * / ^, parentheses, numbers, names,
// calls f(a, b). Functions: sqrt exp ln log10 sin cos tan asin acos atan sinh cosh tanh abs min max round ceil floor, and
// the id of any curve of data/curves with one argument. -x^2 is -(x^2), a^b^c is a^(b^c), a/b*c is (a/b)*c. `g`, `rho`,
// `gamma_w`, `nu` and `pi` are constants.
#pragma once

#include <functional>
#include <memory>
#include <span>
#include <string>
#include <string_view>
#include <tl/expected.hpp>
#include <vector>

namespace quell {

struct ExpressionError {
  std::size_t position = 0;
  std::string message;
};

struct NamedValue {
  std::string_view name;
  double value;
};

/// A parsed list of statements. Immutable.
class Expression {
 public:
  struct Node;  ///< syntax tree, private to the source

  static tl::expected<Expression, ExpressionError> parse(std::string_view text);

  /// Runs the statements in order; a name assigned by an earlier statement is known to the later ones. Returns every assigned
  /// name with its value, or what is missing ("unknown name 'y1'").
  tl::expected<std::vector<std::pair<std::string, double>>, ExpressionError> evaluate(std::span<const NamedValue> known) const;

  /// Left minus right side of the first statement, for implicit methods.
  tl::expected<double, ExpressionError> residual(std::span<const NamedValue> known) const;

  /// `<math display="block">` with one row per statement.
  std::string mathml() const;

  /// The same with values: `text_of(name)` gives the text of a number with its unit, or an empty string to leave the symbol.
  /// An assigned name keeps its symbol on the left and shows its value at the end: "y2 = (0.6 m / 2) (…) = 6.1 m".
  std::string mathml_with_values(const std::function<std::string(std::string_view)>& text_of) const;

  Expression(const Expression&) = default;
  Expression(Expression&&) noexcept = default;
  Expression& operator=(const Expression&) = default;
  Expression& operator=(Expression&&) noexcept = default;
  ~Expression() = default;

 private:
  Expression() = default;
  std::vector<std::shared_ptr<const Node>> statements_;
};

/// A symbol as inline MathML without the surrounding `<math>`: "y1" gives y with subscript 1, "dE" gives ΔE, "sigma" gives σ.
std::string symbol_mathml(std::string_view name);

/// The same as plain text for the terminal: "y1", "ΔE", "σ".
std::string symbol_text(std::string_view name);

}  // namespace quell
