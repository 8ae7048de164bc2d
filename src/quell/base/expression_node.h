// Private to the expressions: the syntax tree and the table of functions.
#pragma once

#include <cstddef>
#include <memory>
#include <string>
#include <string_view>
#include <vector>

#include "quell/base/curve.h"
#include "quell/base/expression.h"

namespace quell {

namespace syntax {

/// A function of the language: of one argument, or of two and more where `fold` is set.
struct Function {
  std::string_view name;
  double (*single)(double);
  double (*fold)(double, double);
  std::string_view printed;  ///< upright name in MathML; empty where the function has a notation of its own
};

/// Null where there is no such function.
const Function* find_function(std::string_view name);

/// `g`, `rho`, `gamma_w`, `nu`, `pi`: null for any other name.
const double* find_constant(std::string_view name);

}  // namespace syntax

struct Expression::Node {
  enum class Kind { number, name, negative, sum, difference, product, quotient, power, call, curve, equation };
  using Pointer = std::shared_ptr<const Node>;

  Kind kind = Kind::number;
  std::size_t position = 0;  ///< byte in the text
  std::string text;          ///< number as typed, name, or name of the function
  double value = 0.0;        ///< of a number
  const syntax::Function* function = nullptr;
  const Curve* curve = nullptr;
  std::vector<Pointer> parts;
};

}  // namespace quell
