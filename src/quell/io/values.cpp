#include "quell/io/values.h"

#include <fmt/format.h>

#include <cmath>
#include <numbers>

#include "quell/io/nearest.h"
#include "quell/io/shown.h"
#include "quell/io/slope.h"
#include "quell/io/uncertainty_reader.h"

namespace quell::io {
namespace {

/// Reads values of one key; every member answers false after it has noted the problem.
class ValueReader {
 public:
  ValueReader(const Key& key, UnitSystem system, ProblemList& problems) : key_(key), system_(system), problems_(problems) {}

  bool read(const toml::node& node, Value& value) {
    switch (key_.kind) {
      case Kind::text:
      case Kind::file: return text(node, value.text);
      case Kind::choice: return choice(node, value.choice);
      case Kind::quantity:
      case Kind::number: return quantity(node, value.number);
      case Kind::angle: return angle(node, value.number);
      case Kind::whole_number: return whole_number(node, value.number);
      case Kind::slope:
      case Kind::side_slope: return slope(node, value.number);
      case Kind::width: return width(node, value);
      case Kind::texts:
      case Kind::quantities: return list(node, value);
      case Kind::spread: return spread(node, value);
      case Kind::uncertainty:
      case Kind::table:
      case Kind::tables: break;
    }
    return false;
  }

 private:
  const Key& key_;
  UnitSystem system_;
  ProblemList& problems_;

  bool fail(const toml::node& node, std::string message) {
    problems_.problem(place_of(node), std::move(message));
    return false;
  }

  bool mistyped(const toml::node& node) { return fail(node, fmt::format("{} is mistyped: {}", key_.name, how_to_write(key_))); }

  bool text(const toml::node& node, std::string& result) {
    const auto found = node.value_exact<std::string>();
    if (!found) return mistyped(node);
    if (found->size() > 20000) return fail(node, fmt::format("{} is longer than 20 000 characters", key_.name));
    if (find_control(*found)) return fail(node, fmt::format("{} holds a control character", key_.name));
    if ((key_.required || key_.kind == Kind::file) && found->find_first_not_of(" \t\n\r") == std::string::npos)
      return fail(node, fmt::format("{} is empty", key_.name));
    result = *found;
    return true;
  }

  /// Escapes such as "\u0000" bring back what the check of the file's bytes kept out.
  static bool find_control(const std::string& words) {
    for (const char c : words)
      if ((static_cast<unsigned char>(c) < 0x20u && c != '\n' && c != '\t' && c != '\r') || c == 0x7F) return true;
    return false;
  }

  bool choice(const toml::node& node, int& result) {
    const auto found = node.value_exact<std::string>();
    const std::vector<std::string_view> choices = choices_of(key_);
    const auto same = [](std::string_view a, std::string_view b) {
      return a.size() == b.size() && std::equal(a.begin(), a.end(), b.begin(), [](char x, char y) {
               return std::tolower(static_cast<unsigned char>(x)) == std::tolower(static_cast<unsigned char>(y));
             });
    };
    for (std::size_t i = 0; found && i < choices.size(); ++i)
      if (same(*found, choices[i])) {
        result = static_cast<int>(i);
        return true;
      }
    const std::string_view meant = found ? nearest(*found, choices) : std::string_view{};
    return fail(node, fmt::format("{} must be {}{}", key_.name, how_to_write(key_).substr(std::string_view("write ").size()),
                                  meant.empty() ? std::string() : fmt::format("; did you mean \"{}\"?", meant)));
  }

  /// Number or text with a unit, in SI and within the range of the key.
  bool quantity(const toml::node& node, double& result) {
    double value = 0.0;
    if (node.is_number()) {
      value = *node.value<double>();
      if (!std::isfinite(value))
        return fail(node, fmt::format("{} must be a finite number; {}", key_.name, how_to_write(key_)));
      value = from_unit(value, key_.dimension, system_);
    } else if (node.is_string()) {
      if (!quantity_text(node, *node.value_exact<std::string>(), value)) return false;
    } else {
      return mistyped(node);
    }
    if (!in_range(node, value)) return false;
    result = value;
    return true;
  }

  bool quantity_text(const toml::node& node, const std::string& typed, double& value) {
    const auto parsed = parse_quantity(typed);
    if (!parsed) {
      Place place = place_of(node);
      place.column += 1 + static_cast<int>(parsed.error().position);
      problems_.problem(place, fmt::format("{}: {}", key_.name, parsed.error().message));
      return false;
    }
    if (parsed->has_unit && parsed->dimension != key_.dimension) {
      const std::string what = key_.dimension == dimension::none ? "number without unit" : name_of(key_.dimension);
      const std::string_view article = what.front() == 'a' ? "an" : "a";
      return fail(node, fmt::format("{} is {} {}: {}, not \"{}\"", key_.name, article, what, how_to_write(key_), typed));
    }
    value = parsed->has_unit ? parsed->value : from_unit(parsed->value, key_.dimension, system_);
    return true;
  }

  std::string shown(double si) const { return io::shown(si, key_.dimension, system_); }

  bool in_range(const toml::node& node, double value) {
    if (key_.range.contains(value)) return true;
    if (value <= 0.0 && key_.range.lowest == above_zero.lowest)
      return fail(node, fmt::format("{} must be greater than zero, not {}", key_.name, shown(value)));
    if (value < 0.0 && key_.range.lowest == 0.0)
      return fail(node, fmt::format("{} must not be negative, as {} is", key_.name, shown(value)));
    const double lowest = key_.range.lowest == above_zero.lowest ? 0.0 : key_.range.lowest;
    return fail(node, fmt::format("{} must lie between {} and {}; {} does not", key_.name, shown(lowest),
                                  shown(key_.range.highest), shown(value)));
  }

  /// Text with its unit or a number of degrees; in radians.
  bool angle(const toml::node& node, double& result) {
    constexpr double degree = std::numbers::pi / 180.0;
    double degrees = 0.0;
    if (node.is_number()) {
      degrees = *node.value<double>();
    } else if (const auto typed = node.value_exact<std::string>()) {
      const auto parsed = parse_quantity(*typed);
      if (!parsed || parsed->dimension != dimension::none || typed->find('%') != std::string::npos)
        return fail(node, fmt::format("{} is an angle: {}, not \"{}\"", key_.name, how_to_write(key_), *typed));
      degrees = parsed->has_unit ? parsed->value / degree : parsed->value;
    } else {
      return mistyped(node);
    }
    // A whole number of degrees does not come back whole from radians.
    if (!(degrees >= key_.range.lowest - 1e-9 && degrees <= key_.range.highest + 1e-9))
      return fail(node, fmt::format("{} must lie between {} and {} degrees; {:.6g} does not", key_.name, key_.range.lowest,
                                    key_.range.highest, degrees));
    result = degrees * degree;
    return true;
  }

  bool whole_number(const toml::node& node, double& result) {
    const auto found = node.value_exact<int64_t>();
    if (!found) return mistyped(node);
    const auto value = static_cast<double>(*found);
    if (!in_range(node, value)) return false;
    result = value;
    return true;
  }

  bool slope(const toml::node& node, double& result) {
    Slope found{0.0, 1.0};
    if (const auto typed = node.value_exact<std::string>()) {
      const auto parsed = parse_slope(*typed);
      if (!parsed) return fail(node, fmt::format("{}: {}, not \"{}\"", key_.name, parsed.error(), *typed));
      found = *parsed;
    } else if (node.is_number() && key_.kind == Kind::slope) {
      found.fall = *node.value<double>();
    } else {
      return mistyped(node);
    }
    const bool is_side = key_.kind == Kind::side_slope;
    const double value = is_side ? found.run / found.fall : found.fall / found.run;
    if (std::isnan(value)) return mistyped(node);
    if (!key_.range.contains(value)) {
      const std::string_view words = is_side ? "horizontal per vertical" : "fall per horizontal length";
      return fail(node, fmt::format("{} must lie between {} and {} ({}); {:.6g} does not", key_.name, key_.range.lowest,
                                    key_.range.highest, words, value));
    }
    result = value;
    return true;
  }

  bool width(const toml::node& node, Value& value) {
    if (const auto typed = node.value_exact<std::string>()) {
      if (*typed == "free") {
        value.is_free = true;
        return true;
      }
      constexpr std::string_view word[] = {"free"};
      if (!nearest(*typed, word).empty()) return fail(node, fmt::format("{}: did you mean \"free\"?", key_.name));
    }
    return quantity(node, value.number);
  }

  bool list(const toml::node& node, Value& value) {
    const toml::array* members = node.as_array();
    if (members == nullptr) return mistyped(node);
    if (members->empty()) return fail(node, fmt::format("{} is an empty list", key_.name));
    bool good = true;
    for (const toml::node& member : *members) {
      std::string word;
      double number = 0.0;
      good = (key_.kind == Kind::texts ? text(member, word) : quantity(member, number)) && good;
      value.texts.push_back(std::move(word));
      value.numbers.push_back(number);
      value.places.push_back(place_of(member));
    }
    return good;
  }

  bool spread(const toml::node& node, Value& value) {
    const toml::table* table = node.as_table();
    if (table == nullptr) {
      if (!quantity(node, value.cases[0])) return false;
      value.cases[1] = value.cases[2] = value.cases[0];
      return true;
    }
    const auto& names = spread_words;
    bool good = true;
    for (const auto& [name, member] : *table)
      if (std::find(names.begin(), names.end(), name.str()) == names.end()) {
        const std::string_view meant = nearest(name.str(), names);
        good = fail(member, fmt::format("{} has no '{}'; it is low, expected and high{}", key_.name, name.str(),
                                        meant.empty() ? std::string() : fmt::format("; did you mean '{}'?", meant)));
      }
    for (std::size_t i = 0; i < names.size(); ++i) {
      const toml::node* member = table->get(names[i]);
      if (member == nullptr)
        return good && fail(node, fmt::format("{} lacks '{}'; it is low, expected and high", key_.name, names[i]));
      good = quantity(*member, value.cases[i]) && good;
    }
    if (good && !(value.cases[0] <= value.cases[1] && value.cases[1] <= value.cases[2]))
      return fail(node, fmt::format("{} must not fall from low to expected to high", key_.name));
    value.has_spread = good && value.cases[0] < value.cases[2];
    return good;
  }
};

}  // namespace

Place place_of(const toml::node& node) {
  const toml::source_position& at = node.source().begin;
  return {static_cast<int>(at.line), static_cast<int>(at.column)};
}

std::optional<Value> read_value(const Key& key, const toml::node& node, UnitSystem system, ProblemList& problems) {
  Value value;
  if (!ValueReader(key, system, problems).read(node, value)) return std::nullopt;
  return value;
}

namespace {

/// In which a bare number of the key stands.
std::string bare_unit(const Key& key, UnitSystem system) {
  return key.kind == Kind::angle ? "deg" : unit_symbol(key.dimension, system);
}

}  // namespace

std::string typed_text(const Key& key, const toml::node& node, UnitSystem system) {
  if (const auto words = node.value_exact<std::string>()) {
    const bool bare = (key.kind == Kind::quantity || key.kind == Kind::angle || key.kind == Kind::spread) && !words->empty() &&
                      words->find_first_not_of("0123456789.+-eE_ ") == std::string::npos;
    const std::string unit = bare ? bare_unit(key, system) : std::string();
    return unit.empty() ? *words : fmt::format("{} ({})", *words, unit);
  }
  if (node.is_number()) {
    const std::string number =
        node.is_integer() ? fmt::format("{}", *node.value<int64_t>()) : fmt::format("{}", *node.value<double>());
    const std::string unit = bare_unit(key, system);
    return unit.empty() ? number : fmt::format("{} ({})", number, unit);
  }
  if (const toml::array* members = node.as_array()) {
    std::string text;
    for (const toml::node& member : *members) text += (text.empty() ? "" : ", ") + typed_text(key, member, system);
    return text;
  }
  if (const toml::table* members = node.as_table()) {
    if (key.kind == Kind::uncertainty) return typed_uncertainty(key, *members, system);
    if (declares_uncertainty(key, node)) {
      const toml::node* value = members->get("value");
      return fmt::format("{}; {}", value == nullptr ? "?" : typed_text(key, *value, system),
                         typed_uncertainty(key, *members, system));
    }
    std::string text;
    for (const std::string_view name : spread_words)
      if (const toml::node* member = members->get(name))
        text += fmt::format("{}{} {}", text.empty() ? "" : ", ", name, typed_text(key, *member, system));
    return text;
  }
  return "?";
}

}  // namespace quell::io
