// What the report prints is what the program computes: the printed equation of every method, evaluated as text, against its
// function, at the points of a low-discrepancy set (Sobol, shifted by a seeded random vector) within the ranges of the symbols.
#include <gtest/gtest.h>

#include <algorithm>
#include <boost/random/sobol.hpp>
#include <cmath>
#include <random>
#include <utility>

#include "quell/app/method_index.h"
#include "quell/base/expression.h"

namespace quell::app {
namespace {

constexpr int points = 4000;
constexpr int least_used = 100;
constexpr std::uint32_t seed = 20261125;
constexpr std::size_t list_length = 4;

/// Where the range of a symbol is open, what structures and rivers have.
Range sensible(Dimension d) {
  if (d == dimension::length) return {0.05, 50.0};
  if (d == dimension::discharge) return {0.1, 5000.0};
  if (d == dimension::unit_discharge) return {0.05, 200.0};
  if (d == dimension::velocity) return {0.1, 60.0};
  if (d == dimension::area) return {0.01, 20.0};
  if (d == dimension::volume) return {0.1, 1000.0};
  if (d == dimension::pressure) return {1e3, 2e5};
  if (d == dimension::none) return {0.01, 10.0};
  return {1e-3, 1e3};
}

Range sampled(const Symbol& symbol) {
  const Range own = symbol.range;
  const Range usual = sensible(symbol.dimension);
  const bool open_below = !own.bounded_below() || own.lowest == above_zero.lowest;
  const double lowest = open_below ? std::min(usual.lowest, own.highest / 2.0) : own.lowest;
  return {lowest, own.bounded_above() ? own.highest : std::max(usual.highest, 2.0 * lowest)};
}

/// Evenly in the logarithm where the range spans decades, else evenly.
double at(const Range& range, double share) {
  if (range.lowest > 0.0 && range.highest > 10.0 * range.lowest)
    return range.lowest * std::pow(range.highest / range.lowest, share);
  return range.lowest + (range.highest - range.lowest) * share;
}

class PointSet {
 public:
  explicit PointSet(std::span<const Symbol> symbols) : sobol_(numbers(symbols)), shift_(numbers(symbols)) {
    std::mt19937 random(seed);
    for (double& s : shift_) s = static_cast<double>(random()) / 4294967296.0;
  }
  /// Lists are written out; the first of them, along which the others are given, ascends.
  std::vector<double> next(std::span<const Symbol> symbols) {
    std::vector<double> point;
    bool first_list = true;
    for (const Symbol& symbol : symbols) {
      const std::size_t start = point.size();
      for (std::size_t i = 0; i < length(symbol); ++i) {
        const double share =
            static_cast<double>(sobol_()) / static_cast<double>((boost::random::sobol::max)()) + shift_[point.size()];
        point.push_back(at(sampled(symbol), share - std::floor(share)));
      }
      if (symbol.list && std::exchange(first_list, false))
        std::sort(point.begin() + static_cast<std::ptrdiff_t>(start), point.end());
    }
    return point;
  }

 private:
  static std::size_t length(const Symbol& symbol) { return symbol.list ? list_length : 1; }
  static std::size_t numbers(std::span<const Symbol> symbols) {
    std::size_t sum = 0;
    for (const Symbol& symbol : symbols) sum += length(symbol);
    return sum;
  }
  boost::random::sobol sobol_;
  std::vector<double> shift_;
};

std::vector<NamedValue> named(const Method& method, std::span<const double> inputs, std::span<const double> outputs) {
  std::vector<NamedValue> known;
  for (std::size_t i = 0; i < method.inputs.size(); ++i)
    for (const double value : method.values_of(i, inputs)) known.push_back({method.inputs[i].name.view(), value});
  for (std::size_t i = 0; i < outputs.size(); ++i) known.push_back({method.outputs[i].name.view(), outputs[i]});
  return known;
}

std::string shown(const std::vector<NamedValue>& values) {
  std::string text;
  for (const auto& v : values) text += std::string(v.name) + " = " + std::to_string(v.value) + "; ";
  return text;
}

/// Runs `compare(inputs, outputs)` at the points where the method may be trusted and answers; stops at the first difference.
template <class Compare>
void sweep(const Method& method, const Compare& compare) {
  PointSet set(method.inputs);
  int used = 0;
  const int tries = method.takes_lists() ? 4 * points : points;  // points drawn at random seldom make a section
  for (int i = 0; i < tries; ++i) {
    const auto inputs = set.next(method.inputs);
    if (!method.covers(inputs)) continue;
    std::vector<double> outputs(method.outputs.size(), std::nan(""));
    if (!method.evaluate(inputs, outputs)) continue;
    ++used;
    for (const double value : outputs) ASSERT_TRUE(std::isfinite(value)) << shown(named(method, inputs, outputs));
    compare(inputs, outputs);
    if (::testing::Test::HasFatalFailure()) return;
  }
  EXPECT_GE(used, least_used) << "too few points lie inside the method";
}

std::string why(const ExpressionError& error) {
  return error.message + " at " + std::to_string(error.position);
}

void compare_explicit(const Method& method) {
  const auto equation = Expression::parse(method.equation.view());
  ASSERT_TRUE(equation) << why(equation.error());
  sweep(method, [&](const std::vector<double>& inputs, const std::vector<double>& outputs) {
    const auto values = equation->evaluate(named(method, inputs, {}));
    ASSERT_TRUE(values) << why(values.error());
    for (std::size_t i = 0; i < outputs.size(); ++i) {
      const auto name = method.outputs[i].name.view();
      const auto printed = std::find_if(values->begin(), values->end(), [&](const auto& v) { return v.first == name; });
      ASSERT_TRUE(printed != values->end()) << "the equation does not give " << name;
      ASSERT_NEAR(printed->second, outputs[i], 1e-10 * std::abs(outputs[i]))
          << name << " at " << shown(named(method, inputs, outputs));
    }
  });
}

/// Difference of the two sides, relative to the larger.
double scaled_residual(const Expression& left, const Expression& right, const std::vector<NamedValue>& known) {
  const auto l = left.evaluate(known);
  const auto r = right.evaluate(known);
  if (!l || !r) return std::nan("");
  const double a = l->front().second;
  const double b = r->front().second;
  return (a - b) / std::max(std::abs(a), std::abs(b));
}

/// True where the residual has the other sign within 32 units of the last place of `output`; beyond the equation's domain it is
/// NaN and counts for nothing.
template <class Residual>
bool sign_changes_nearby(double residual, double output, const Residual& residual_at) {
  double above = output;
  double below = output;
  for (int i = 0; i < 32; ++i) {
    above = std::nextafter(above, HUGE_VAL);
    below = std::nextafter(below, -HUGE_VAL);
    if (residual_at(above) * residual <= 0.0 || residual_at(below) * residual <= 0.0) return true;
  }
  return false;
}

void compare_residual(const Method& method) {
  const std::string_view text = method.equation.view();
  const auto equals = text.find('=');
  ASSERT_NE(equals, std::string_view::npos);
  ASSERT_TRUE(Expression::parse(text));
  const auto left = Expression::parse("side = " + std::string(text.substr(0, equals)));
  const auto right = Expression::parse("side = " + std::string(text.substr(equals + 1)));
  ASSERT_TRUE(left && right);
  sweep(method, [&](const std::vector<double>& inputs, const std::vector<double>& outputs) {
    const double residual = scaled_residual(*left, *right, named(method, inputs, outputs));
    ASSERT_FALSE(std::isnan(residual)) << shown(named(method, inputs, outputs));
    if (std::abs(residual) <= 1e-9) return;
    // Near a point where the equation itself loses digits (a conduit almost full) the output cannot be better than its own
    // rounding: the residual must then change its sign within a few units of the output's last place.
    ASSERT_TRUE(sign_changes_nearby(residual, outputs[0],
                                    [&](double value) {
                                      auto moved = outputs;
                                      moved[0] = value;
                                      return scaled_residual(*left, *right, named(method, inputs, moved));
                                    }))
        << "residual " << residual << " at " << shown(named(method, inputs, outputs));
  });
}

class PrintedEquation : public ::testing::TestWithParam<const Method*> {};

TEST_P(PrintedEquation, IsWhatIsComputed) {
  const Method& method = *GetParam();
  switch (method.kind) {
    case EquationKind::explicit_form: return compare_explicit(method);
    case EquationKind::residual: return compare_residual(method);
    // An algorithm in words, tested against independent integration: here only that every answer is finite.
    case EquationKind::procedure: return sweep(method, [](const std::vector<double>&, const std::vector<double>&) {});
  }
}

INSTANTIATE_TEST_SUITE_P(AllMethods, PrintedEquation, ::testing::ValuesIn(all_methods().begin(), all_methods().end()),
                         [](const auto& one) {
                           std::string name(one.param->id.view());
                           std::replace(name.begin(), name.end(), '.', '_');
                           return name;
                         });

/// The comparison itself can fail: a record whose equation is wrong by one part in a million.
TEST(PrintedEquations, AWrongOneIsFound) {
  const Method* right = find_method("jump.energy_loss.rectangular");
  ASSERT_NE(right, nullptr);
  const auto wrong = Expression::parse("dE = (y2 - y1)^3/(4.000004*y1*y2)");
  ASSERT_TRUE(wrong);
  int differences = 0;
  sweep(*right, [&](const std::vector<double>& inputs, const std::vector<double>& outputs) {
    const auto values = wrong->evaluate(named(*right, inputs, {}));
    ASSERT_TRUE(values);
    if (std::abs(values->front().second - outputs[0]) > 1e-10 * std::abs(outputs[0])) ++differences;
  });
  EXPECT_GT(differences, least_used);
}

}  // namespace
}  // namespace quell::app
