#include <algorithm>
#include <cmath>
#include <utility>

#include "quell/base/constants.h"
#include "quell/base/expression_node.h"

namespace quell {

namespace syntax {
namespace {

using Unary = double (*)(double);

constexpr double pi = 3.14159265358979323846;

const Function functions[] = {
    {"sqrt", static_cast<Unary>(std::sqrt), nullptr, ""},
    {"exp", static_cast<Unary>(std::exp), nullptr, "exp"},
    {"ln", static_cast<Unary>(std::log), nullptr, "ln"},
    {"log10", static_cast<Unary>(std::log10), nullptr, ""},
    {"sin", static_cast<Unary>(std::sin), nullptr, "sin"},
    {"cos", static_cast<Unary>(std::cos), nullptr, "cos"},
    {"tan", static_cast<Unary>(std::tan), nullptr, "tan"},
    {"asin", static_cast<Unary>(std::asin), nullptr, "arcsin"},
    {"acos", static_cast<Unary>(std::acos), nullptr, "arccos"},
    {"atan", static_cast<Unary>(std::atan), nullptr, "arctan"},
    {"sinh", static_cast<Unary>(std::sinh), nullptr, "sinh"},
    {"cosh", static_cast<Unary>(std::cosh), nullptr, "cosh"},
    {"tanh", static_cast<Unary>(std::tanh), nullptr, "tanh"},
    {"abs", static_cast<Unary>(std::abs), nullptr, ""},
    {"round", static_cast<Unary>(std::round), nullptr, "round"},
    {"ceil", static_cast<Unary>(std::ceil), nullptr, ""},
    {"floor", static_cast<Unary>(std::floor), nullptr, ""},
    {"min", nullptr, [](double a, double b) { return std::min(a, b); }, "min"},
    {"max", nullptr, [](double a, double b) { return std::max(a, b); }, "max"},
};

constexpr std::pair<std::string_view, double> constants[] = {
    {"g", gravity}, {"rho", water_density}, {"gamma_w", water_unit_weight}, {"nu", water_viscosity}, {"pi", pi}};

}  // namespace

const Function* find_function(std::string_view name) {
  for (const auto& function : functions)
    if (function.name == name) return &function;
  return nullptr;
}

const double* find_constant(std::string_view name) {
  for (const auto& constant : constants)
    if (constant.first == name) return &constant.second;
  return nullptr;
}

}  // namespace syntax

namespace {

using Node = Expression::Node;
using Kind = Node::Kind;
using Value = tl::expected<double, ExpressionError>;

tl::unexpected<ExpressionError> fail(const Node& node, std::string message) {
  return tl::unexpected<ExpressionError>(ExpressionError{node.position, std::move(message)});
}

struct Names {
  std::span<const NamedValue> known;
  std::vector<std::pair<std::string, double>> assigned;

  const double* find(std::string_view name) const {
    for (auto at = assigned.rbegin(); at != assigned.rend(); ++at)
      if (at->first == name) return &at->second;
    for (const auto& value : known)
      if (value.name == name) return &value.value;
    return syntax::find_constant(name);
  }
};

Value value_of(const Node& node, const Names& names);

Value call(const Node& node, const Names& names) {
  auto result = value_of(*node.parts[0], names);
  if (result && node.kind == Kind::curve) result = node.curve->at(*result);
  if (node.kind == Kind::curve || !result) return result;
  if (node.function->single != nullptr) return node.function->single(*result);
  for (std::size_t i = 1; i < node.parts.size(); ++i) {
    const auto next = value_of(*node.parts[i], names);
    if (!next) return next;
    result = node.function->fold(*result, *next);
  }
  return result;
}

double combine(Kind kind, double left, double right) {
  switch (kind) {
    case Kind::sum: return left + right;
    case Kind::difference: return left - right;
    case Kind::product: return left * right;
    case Kind::quotient: return left / right;
    default: return std::pow(left, right);
  }
}

Value value_of(const Node& node, const Names& names) {
  if (node.kind == Kind::number) return node.value;
  if (node.kind == Kind::name) {
    const double* found = names.find(node.text);
    if (found == nullptr) return fail(node, "unknown name '" + node.text + "'");
    return *found;
  }
  if (node.kind == Kind::call || node.kind == Kind::curve) return call(node, names);
  const auto left = value_of(*node.parts[0], names);
  if (!left) return left;
  if (node.kind == Kind::negative) return -*left;
  const auto right = value_of(*node.parts[1], names);
  if (!right) return right;
  return combine(node.kind, *left, *right);
}

}  // namespace

tl::expected<std::vector<std::pair<std::string, double>>, ExpressionError> Expression::evaluate(
    std::span<const NamedValue> known) const {
  Names names{known, {}};
  for (const auto& statement : statements_) {
    const Node& target = *statement->parts[0];
    if (target.kind != Kind::name) return fail(target, "only a name can be given a value");
    const auto value = value_of(*statement->parts[1], names);
    if (!value) return tl::unexpected<ExpressionError>(value.error());
    if (!std::isfinite(*value)) return fail(*statement, "'" + target.text + "' has no finite value");
    names.assigned.emplace_back(target.text, *value);
  }
  return std::move(names.assigned);
}

tl::expected<double, ExpressionError> Expression::residual(std::span<const NamedValue> known) const {
  const Names names{known, {}};
  const Node& statement = *statements_.front();
  const auto left = value_of(*statement.parts[0], names);
  if (!left) return left;
  const auto right = value_of(*statement.parts[1], names);
  if (!right) return right;
  if (!std::isfinite(*left - *right)) return fail(statement, "the two sides have no finite difference");
  return *left - *right;
}

}  // namespace quell
