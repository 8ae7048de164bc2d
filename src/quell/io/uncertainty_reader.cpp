#include "quell/io/uncertainty_reader.h"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <cmath>

#include "quell/io/nearest.h"
#include "quell/io/values.h"

namespace quell::io {
namespace {

using site::Distribution;

constexpr std::array<std::string_view, 7> entry_words{"value",  "distribution", "cov",        "deviation",
                                                      "lowest", "highest",      "uncertainty"};
constexpr std::string_view distributions = "normal|lognormal|triangular|uniform";  // in the order of the enumeration
constexpr double largest_variation = 2.0;

class UncertaintyReader {
 public:
  UncertaintyReader(const Key& key, const toml::node& node, std::optional<double> value, UnitSystem system,
                    ProblemList& problems)
      : key_(key), node_(node), value_(value.value_or(0.0)), system_(system), problems_(problems) {
    input_.of.mean = value_;
    input_.of.mode = value_;
  }

  std::optional<site::UncertainInput> read() {
    bool good = false;
    if (const auto name = node_.value_exact<std::string>(); name && key_.kind == Kind::uncertainty) {
      good = take_recommended(*name, node_);
    } else if (node_.is_table()) {
      good = known_words() && (has("uncertainty") ? by_name() : by_numbers());
    } else {
      fail(node_, fmt::format("{} is mistyped: write it like {}", key_.name, key_.example_si));
    }
    return good ? std::optional(input_) : std::nullopt;
  }

 private:
  const Key& key_;
  const toml::node& node_;
  double value_;
  UnitSystem system_;
  ProblemList& problems_;
  site::UncertainInput input_;

  const toml::table& table() const { return *node_.as_table(); }
  bool has(std::string_view word) const { return table().contains(word); }
  const toml::node& at(std::string_view word) const { return has(word) ? *table().get(word) : node_; }

  bool fail(const toml::node& node, std::string message) {
    problems_.problem(place_of(node), std::move(message));
    return false;
  }

  bool known_words() {
    bool good = true;
    for (const auto& [name, member] : table()) {
      const bool is_known = std::find(entry_words.begin(), entry_words.end(), name.str()) != entry_words.end();
      if (is_known && !(key_.kind == Kind::uncertainty && name.str() == "value")) continue;
      const std::string_view meant = nearest(name.str(), entry_words);
      good =
          fail(member, fmt::format("the uncertainty of {} has no '{}'; {}", owner(), name.str().substr(0, 60),
                                   meant.empty() || is_known
                                       ? std::string("known are distribution, cov, deviation, lowest, highest and uncertainty")
                                       : fmt::format("did you mean '{}'?", meant)));
    }
    return good;
  }

  /// What is uncertain, in words.
  std::string_view owner() const { return key_.kind == Kind::uncertainty ? std::string_view("the level") : key_.name; }

  bool by_name() {
    for (const std::string_view word : {"distribution", "cov", "deviation", "lowest", "highest"})
      if (has(word))
        return fail(at(word), fmt::format("a recommended uncertainty says its distribution itself; delete {}", word));
    const auto name = read_value(key_of_word(key_, "uncertainty"), at("uncertainty"), system_, problems_);
    return name && take_recommended(name->text, at("uncertainty"));
  }

  bool take_recommended(const std::string& name, const toml::node& node) {
    std::vector<std::string_view> names;
    for (const site::RecommendedUncertainty& one : site::recommended_uncertainties()) {
      names.push_back(one.name);
      if (one.name != name) continue;
      const bool is_share = one.variation > 0.0;
      if (!is_share && !(one.dimension == key_.dimension))
        return fail(node, fmt::format("'{}' is the deviation of a {}, which {} is not", name, name_of(one.dimension), owner()));
      if (is_share && !takes_variation(node, name)) return false;
      input_.name = name;
      input_.of.distribution = one.distribution;
      input_.of.deviation = is_share ? one.variation * std::abs(value_) : one.deviation;
      return positive_where_needed(node);
    }
    const std::string_view meant = nearest(name, names);
    return fail(node, fmt::format("there is no recommended uncertainty '{}'; {}", name.substr(0, 60),
                                  meant.empty() ? fmt::format("known are '{}'", fmt::join(names, "', '"))
                                                : fmt::format("did you mean '{}'?", meant)));
  }

  /// A share of the value has a meaning only where zero is no matter of choice, as it is for levels.
  bool takes_variation(const toml::node& node, std::string_view word) {
    const bool is_level = key_.kind == Kind::uncertainty || (key_.range.lowest < 0.0 && key_.dimension == dimension::length);
    if (!is_level && key_.range.lowest >= 0.0 && value_ != 0.0) return true;
    return fail(node, fmt::format("'{}' is a share of the value, and {}: give deviation", word,
                                  is_level        ? std::string("that of a level depends on the datum")
                                  : value_ == 0.0 ? fmt::format("{} is zero", key_.name)
                                                  : fmt::format("{} may lie on both sides of zero", key_.name)));
  }

  bool positive_where_needed(const toml::node& node) {
    if (input_.of.distribution != Distribution::lognormal || (value_ > 0.0 && key_.range.lowest >= 0.0)) return true;
    return fail(node, fmt::format("lognormal holds for values above zero only, and {} may lie below; take normal", owner()));
  }

  bool by_numbers() {
    if (!has("distribution"))
      return fail(node_, fmt::format("the uncertainty of {} lacks distribution (normal, lognormal, triangular, uniform), or "
                                     "uncertainty, the name of a recommended one",
                                     owner()));
    const auto choice = read_value(key_of_word(key_, "distribution"), at("distribution"), system_, problems_);
    if (!choice) return false;
    input_.of.distribution = static_cast<Distribution>(choice->choice);
    if (!positive_where_needed(at("distribution")) || !read_limits()) return false;
    const bool by_limits =
        input_.of.distribution == Distribution::triangular || input_.of.distribution == Distribution::uniform;
    return by_limits ? from_limits() : from_deviation();
  }

  bool read_limits() {
    if (has("lowest") != has("highest"))
      return fail(
          has("lowest") ? at("lowest") : at("highest"),
          fmt::format("{} has lowest and highest together; '{}' is missing", owner(), has("lowest") ? "highest" : "lowest"));
    if (!has("lowest")) return true;
    const auto lowest = read_value(key_of_word(key_, "lowest"), at("lowest"), system_, problems_);
    const auto highest = read_value(key_of_word(key_, "highest"), at("highest"), system_, problems_);
    if (!lowest || !highest) return false;
    input_.of.has_limits = true;
    input_.of.lowest = lowest->number;
    input_.of.highest = highest->number;
    if (!(input_.of.lowest < input_.of.highest)) return fail(at("highest"), "highest must lie above lowest");
    if (value_ >= input_.of.lowest && value_ <= input_.of.highest) return true;
    return fail(at("lowest"), key_.kind == Kind::uncertainty
                                  ? std::string("lowest and highest are errors of the level and must enclose zero")
                                  : fmt::format("the value of {} must lie between lowest and highest", key_.name));
  }

  bool from_limits() {
    site::Uncertainty& of = input_.of;
    for (const std::string_view word : {"cov", "deviation"})
      if (has(word))
        return fail(at(word), fmt::format("a {} distribution follows from lowest and highest; delete {}",
                                          site::name_of(of.distribution), word));
    if (!of.has_limits)
      return fail(node_,
                  fmt::format("a {} distribution of {} needs lowest and highest", site::name_of(of.distribution), owner()));
    const double a = of.lowest, b = of.highest, c = of.mode;
    const bool is_uniform = of.distribution == Distribution::uniform;
    of.mean = is_uniform ? (a + b) / 2.0 : (a + b + c) / 3.0;
    of.deviation = is_uniform ? (b - a) / std::sqrt(12.0) : std::sqrt((a * a + b * b + c * c - a * b - a * c - b * c) / 18.0);
    return true;
  }

  bool from_deviation() {
    if (has("cov") == has("deviation"))
      return fail(has("cov") ? at("deviation") : node_,
                  fmt::format("a {} distribution of {} needs {} cov (share of the value) {} deviation",
                              site::name_of(input_.of.distribution), owner(), has("cov") ? "either" : "one of",
                              has("cov") ? "or" : "and"));
    const std::string_view word = has("cov") ? "cov" : "deviation";
    const auto read = read_value(key_of_word(key_, word), at(word), system_, problems_);
    if (!read || (word == "cov" && !takes_variation(at(word), "cov"))) return false;
    input_.of.deviation = word == "cov" ? read->number * std::abs(value_) : read->number;
    return true;
  }
};

}  // namespace

std::span<const std::string_view> uncertainty_words() {
  return entry_words;
}

std::vector<std::string_view> words_of_value(const Key& key) {
  std::vector<std::string_view> words;
  if (key.kind == Kind::spread) words.assign(spread_words.begin(), spread_words.end());
  if (may_be_uncertain(key) || key.kind == Kind::uncertainty)
    for (const std::string_view word : uncertainty_words())
      if (key.kind != Kind::uncertainty || word != "value") words.push_back(word);
  return words;
}

Key key_of_word(const Key& key, std::string_view word) {
  Key part{.name = word, .kind = key.kind, .dimension = key.dimension, .range = key.range};
  part.example_si = key.example_si;
  part.example_us = key.example_us;
  if (word == "distribution") {
    part.kind = Kind::choice;
    part.choices = distributions;
  } else if (word == "cov") {
    part = {.name = word, .kind = Kind::number, .range = {1e-12, largest_variation}, .example_si = "0.05"};
  } else if (word == "uncertainty") {
    part.kind = Kind::text;
    part.example_si = "\"concrete roughness\"";
  } else if (word == "deviation" && key.kind != Kind::angle) {
    const bool has_unit = key.dimension != dimension::none;
    part.kind = has_unit ? Kind::quantity : Kind::number;
    part.range = {1e-12, key.range.bounded_above() ? key.range.highest : 9000.0};
    part.example_si = has_unit ? "\"0.2 m\"" : "0.02";
    part.example_us = has_unit ? "\"0.7 ft\"" : "";
  } else if (word == "deviation") {
    part.range = {1e-6, 90.0};
  } else if (key.kind == Kind::spread) {
    part.kind = key.dimension == dimension::none ? Kind::number : Kind::quantity;
  } else if (key.kind == Kind::uncertainty) {
    part.kind = Kind::quantity;
    part.range = {-100.0, 100.0};
    part.example_si = "\"-0.3 m\"";
    part.example_us = "\"-1 ft\"";
  }
  return part;
}

bool declares_uncertainty(const Key& key, const toml::node& node) {
  const toml::table* table = may_be_uncertain(key) ? node.as_table() : nullptr;
  if (table == nullptr) return false;
  return std::any_of(entry_words.begin(), entry_words.end(), [&](std::string_view word) { return table->contains(word); });
}

const toml::node* value_in(const Key& key, const toml::node& table, ProblemList& problems) {
  const toml::node* value = table.as_table()->get("value");
  if (value == nullptr)
    problems.problem(place_of(table),
                     fmt::format("{} lacks 'value' beside its uncertainty: value = {}", key.name, key.example_si));
  return value;
}

std::optional<site::UncertainInput> read_uncertainty(const Key& key, const toml::node& node, std::optional<double> value,
                                                     UnitSystem system, ProblemList& problems) {
  return UncertaintyReader(key, node, value, system, problems).read();
}

std::string typed_uncertainty(const Key& key, const toml::table& table, UnitSystem system) {
  std::string text;
  for (const std::string_view word : entry_words)
    if (const toml::node* node = word == "value" ? nullptr : table.get(word)) {
      const bool says_itself = word == "distribution" || word == "uncertainty";
      text += fmt::format("{}{}{}{}", text.empty() ? "" : ", ", says_itself ? "" : word, says_itself ? "" : " ",
                          typed_text(key_of_word(key, word), *node, system));
    }
  return text;
}

}  // namespace quell::io
