// What every method does with numbers that cannot be: it refuses them by symbol, value and allowed range, and never answers
// with something that is not finite. Over all methods, whatever their subject.
#include <gtest/gtest.h>

#include <cmath>
#include <limits>
#include <random>
#include <vector>

#include "quell/app/method_index.h"

namespace quell::app {
namespace {

constexpr int draws = 500;

/// Anything at all: from tiny to huge, now and then zero or below it.
double wild(std::mt19937& random) {
  const double size = std::pow(10.0, std::uniform_real_distribution(-12.0, 12.0)(random));
  const int kind = std::uniform_int_distribution(0, 9)(random);
  return kind == 0 ? 0.0 : kind == 1 ? -size : size;
}

/// A number inside the range of the symbol where the range is closed, else of a size found in structures.
double usual(const Symbol& symbol, std::mt19937& random) {
  const double low = symbol.range.bounded_below() ? symbol.range.lowest : -10.0;
  const double high = symbol.range.bounded_above() ? symbol.range.highest : std::max(10.0, 2.0 * low);
  return std::uniform_real_distribution(low, high)(random);
}

TEST(EveryMethod, AnswersWildNumbersWithFiniteOnesOrAReason) {
  std::mt19937 random(20261125);
  for (const Method* method : all_methods()) {
    std::vector<double> inputs(method->inputs.size());
    for (int i = 0; i < draws; ++i) {
      // Half the draws are wild in every input; the others in one only.
      const std::size_t lone = std::uniform_int_distribution<std::size_t>(0, inputs.size() - 1)(random);
      for (std::size_t k = 0; k < inputs.size(); ++k)
        inputs[k] = i % 2 == 0 || k == lone ? wild(random) : usual(method->inputs[k], random);
      std::vector<double> outputs(method->outputs.size(), std::nan(""));
      const auto done = method->answer(inputs, outputs);
      if (!done) {
        ASSERT_FALSE(done.error().reason.empty()) << method->id.view();
        continue;
      }
      for (const double value : outputs) ASSERT_TRUE(std::isfinite(value)) << method->id.view();
    }
  }
}

TEST(EveryMethod, RefusesAnImpossibleInputByItsSymbolValueAndRange) {
  std::mt19937 random(20261126);
  for (const Method* method : all_methods()) {
    for (std::size_t k = 0; k < method->inputs.size(); ++k) {
      const Range possible = method->inputs[k].possible_values();
      std::vector<double> impossible{std::nan("")};
      if (possible.bounded_below()) impossible.push_back(possible.lowest - 1.0);
      if (possible.bounded_above()) impossible.push_back(possible.highest + 1.0);
      for (const double value : impossible) {
        std::vector<double> inputs;
        for (const Symbol& symbol : method->inputs) inputs.push_back(usual(symbol, random));
        // The symbols before it are possible, so that it is the first to be refused.
        inputs[k] = value;
        std::vector<double> outputs(method->outputs.size());
        const auto done = method->answer(inputs, outputs);
        ASSERT_FALSE(done.has_value()) << method->id.view();
        EXPECT_TRUE(done.error().is_bad_input()) << method->id.view();
        EXPECT_EQ(done.error().symbol, method->inputs[k].name.view()) << method->id.view();
        EXPECT_EQ(std::isnan(value), std::isnan(done.error().value)) << method->id.view();
        EXPECT_EQ(done.error().lowest, possible.lowest) << method->id.view();
        EXPECT_EQ(done.error().highest, possible.highest) << method->id.view();
      }
    }
  }
}

}  // namespace
}  // namespace quell::app
