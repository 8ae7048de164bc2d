#include "quell/io/toml_error.h"

#include <fmt/format.h>

namespace quell::io {
namespace {

std::string_view trimmed(std::string_view text) {
  while (!text.empty() && (text.front() == ' ' || text.front() == '\t')) text.remove_prefix(1);
  while (!text.empty() && (text.back() == ' ' || text.back() == '\t')) text.remove_suffix(1);
  return text;
}

bool is_letter(char c) {
  return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z');
}
bool is_digit(char c) {
  return c >= '0' && c <= '9';
}

/// `level = 412.5 m`, `shape = ogee`, `level = 412,5`: what is wrong with the value; empty where nothing is seen.
std::string slip_in_value(std::string_view line) {
  const std::size_t equals = line.find('=');
  if (equals == std::string_view::npos) return "";
  const std::string_view key = trimmed(line.substr(0, equals));
  const std::string_view value = trimmed(line.substr(equals + 1, line.find('#') - equals - 1));
  if (value.empty()) return fmt::format("'{}' has no value", key.substr(0, 60));
  if (value.size() > 60) return "";
  if (is_letter(value.front()) && value.find_first_of("\"'[]{}=") == std::string_view::npos)
    return fmt::format("words stand in quotes: {} = \"{}\"", key, value);
  const bool number = is_digit(value.front()) || value.front() == '-' || value.front() == '+' || value.front() == '.';
  if (!number || value.find_first_of("\"'[]{}=") != std::string_view::npos) return "";
  if (value.find(',') != std::string_view::npos) return "numbers have a decimal point and no comma";
  return fmt::format("a value with a unit or with spaces stands in quotes: {} = \"{}\"", key, value);
}

/// What stands in the last pair of single quotes.
std::string_view quoted_name(std::string_view text) {
  const std::size_t end = text.rfind('\'');
  if (end == std::string_view::npos || end == 0) return {};
  const std::size_t start = text.rfind('\'', end - 1);
  return start == std::string_view::npos ? std::string_view{} : text.substr(start + 1, end - start - 1);
}

}  // namespace

std::string explain_toml_error(std::string_view description, std::string_view line) {
  if (description.find("redefin") != std::string_view::npos || description.find("duplicate") != std::string_view::npos) {
    const std::string_view name = quoted_name(description);
    return name.empty() ? std::string("this key or section stands twice; keep one of the two")
                        : fmt::format("'{}' stands twice; keep one of the two", name.substr(0, 60));
  }
  const std::string slip = slip_in_value(line);
  constexpr std::string_view prefix = "Error while parsing ";
  if (description.substr(0, prefix.size()) == prefix) description.remove_prefix(prefix.size());
  return slip.empty() ? fmt::format("this is not TOML ({})", description) : slip;
}

}  // namespace quell::io
