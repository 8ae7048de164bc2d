#include "quell/io/json_writer.h"

#include <fmt/compile.h>

#include <algorithm>
#include <array>
#include <cassert>
#include <cmath>
#include <cstdint>
#include <utility>

namespace quell::io {
namespace {

/// Length of the well-formed UTF-8 sequence that `text` starts with, and whether it is whole; otherwise of its longest start
/// that could still become one, at least 1 (The Unicode Standard, table 3-7 and "substitution of maximal subparts").
struct Sequence {
  std::size_t length;
  bool is_whole;
};
Sequence sequence_at(std::string_view text) {
  const auto byte = [&](std::size_t i) { return static_cast<unsigned char>(text[i]); };
  const unsigned lead = byte(0);
  if (lead < 0x80) return {1, true};
  if (lead < 0xC2 || lead > 0xF4) return {1, false};
  const std::size_t wanted = lead < 0xE0 ? 2 : lead < 0xF0 ? 3 : 4;
  // The second byte keeps out overlong forms, surrogates, and what lies beyond U+10FFFF.
  unsigned least = lead == 0xE0 ? 0xA0 : lead == 0xF0 ? 0x90 : 0x80;
  unsigned most = lead == 0xED ? 0x9F : lead == 0xF4 ? 0x8F : 0xBF;
  std::size_t length = 1;
  while (length < wanted && length < text.size() && byte(length) >= least && byte(length) <= most) {
    ++length;
    least = 0x80;
    most = 0xBF;
  }
  return {length, length == wanted};
}

/// Bytes that go into a JSON text as they are.
constexpr auto is_plain = [] {
  std::array<bool, 256> plain{};
  for (std::size_t i = 0x20; i < 0x80; ++i) plain[i] = i != '"' && i != '\\';
  return plain;
}();

/// How much of the start of `text` goes out as it is.
std::size_t good_length(std::string_view text) {
  std::size_t good = 0;
  while (good < text.size()) {
    if (is_plain[static_cast<unsigned char>(text[good])]) {
      ++good;
      continue;
    }
    const Sequence sequence = sequence_at(text.substr(good));
    if (sequence.length == 1 || !sequence.is_whole) break;
    good += sequence.length;
  }
  return good;
}

struct Escape {
  char character;
  std::string_view text;
};
constexpr Escape escapes[] = {{'"', "\\\""}, {'\\', "\\\\"}, {'\b', "\\b"}, {'\f', "\\f"},
                              {'\n', "\\n"}, {'\r', "\\r"},  {'\t', "\\t"}};

constexpr std::size_t longest_number = 40;

char* write_exact(char* at, double value) {
  constexpr double first_with_exponent = 1e16;
  at = fmt::format_to(at, FMT_COMPILE("{}"), value);
  const bool is_whole = std::abs(value) < first_with_exponent && value == std::trunc(value);
  return is_whole ? std::copy_n(".0", 2, at) : at;
}

constexpr int significant = 9;
/// From 1e-4, below which the shorter text has an exponent, to the number that has one digit too many.
constexpr double powers[] = {1e-4, 1e-3, 1e-2, 1e-1, 1e0, 1e1, 1e2, 1e3, 1e4, 1e5, 1e6, 1e7, 1e8, 1e9, 1e10, 1e11, 1e12};
constexpr int power_of_one = 4;
constexpr int power_of_most = power_of_one + significant;

/// As the nine digits of a whole number and the place of its decimal point: a third of the time of the general way.
char* write_rounded(char* at, double value) {
  const double size = std::abs(value);
  if (!(size >= powers[0] && size < powers[power_of_most])) return fmt::format_to(at, FMT_COMPILE("{:.9g}"), value);
  int next_power = 1;
  while (size >= powers[next_power]) ++next_power;
  int decimals = power_of_most - next_power;
  auto digits = static_cast<std::uint32_t>(std::lround(size * powers[power_of_one + decimals]));
  for (; decimals > 0 && digits % 10 == 0; --decimals) digits /= 10;
  std::array<char, 24> text{};  // from its end
  char* first = text.end();
  const auto take_digit = [&] {
    *--first = static_cast<char>('0' + digits % 10);
    digits /= 10;
  };
  if (decimals > 0) {
    for (; decimals > 0; --decimals) take_digit();
    *--first = '.';
  }
  do {
    take_digit();
  } while (digits > 0);
  if (value < 0.0) *--first = '-';
  return std::copy(first, text.end(), at);
}

}  // namespace

/// Room for what closes the open scopes stays free as well, so that their destructors cannot throw.
char* JsonWriter::room(std::size_t size) {
  const std::size_t needed = used_ + size + closing_;
  if (needed > text_.size()) text_.resize(needed > text_.capacity() ? 2 * needed : std::min(2 * needed, text_.capacity()));
  return text_.data() + used_;
}

void JsonWriter::wrote_to(const char* end) {
  used_ = static_cast<std::size_t>(end - text_.data());
}

void JsonWriter::append(std::string_view piece) {
  wrote_to(std::copy(piece.begin(), piece.end(), room(piece.size())));
}

/// Starts a line in the scope; in one line there is nothing to start.
char* JsonWriter::start_line(char* at) const {
  if (style_ == JsonStyle::compact) return at;
  *at = '\n';
  return std::fill_n(at + 1, depth_, ' ');
}

void JsonWriter::append_text(std::string_view text) {
  append("\"");
  while (true) {
    const std::size_t good = good_length(text);
    append(text.substr(0, good));
    text.remove_prefix(good);
    if (text.empty()) break;
    const Sequence odd = sequence_at(text);
    append_odd(text.substr(0, odd.length), odd.is_whole);
    text.remove_prefix(odd.length);
  }
  append("\"");
}

void JsonWriter::append_odd(std::string_view odd, bool is_utf8) {
  if (!is_utf8) return append("\xEF\xBF\xBD");
  for (const Escape& escape : escapes)
    if (escape.character == odd[0]) return append(escape.text);
  std::array<char, 8> code{};
  const auto end = fmt::format_to(code.data(), FMT_STRING("\\u{:04x}"), static_cast<unsigned>(odd[0]));
  append({code.data(), static_cast<std::size_t>(end - code.data())});
}

void JsonWriter::begin_value() {
  assert(has_place_);
  has_place_ = false;
}

std::string JsonWriter::take() {
  assert(!has_place_ && innermost_ == nullptr);
  text_.resize(used_);
  return std::move(text_);
}

void JsonPlace::put(std::nullptr_t) {
  writer_->begin_value();
  writer_->append("null");
}

void JsonPlace::put_bool(bool value) {
  writer_->begin_value();
  writer_->append(value ? "true" : "false");
}

void JsonPlace::put(int value) {
  writer_->begin_value();
  const fmt::format_int digits(value);
  writer_->append({digits.data(), digits.size()});
}

void JsonPlace::put(double value) {
  if (!std::isfinite(value)) return put(nullptr);
  writer_->begin_value();
  char* at = writer_->room(longest_number);
  writer_->wrote_to(writer_->numbers_ == JsonNumbers::exact ? write_exact(at, value) : write_rounded(at, value));
}

void JsonPlace::put(std::string_view text) {
  writer_->begin_value();
  writer_->append_text(text);
}

JsonScope::JsonScope(JsonPlace at, char opening, char closing)
    : writer_(*at.writer_), outer_(writer_.innermost_), closing_(closing) {
  writer_.begin_value();
  writer_.closing_ += writer_.depth_ + 2;  // newline, indent, bracket
  writer_.append({&opening, 1});
  writer_.innermost_ = this;
  ++writer_.depth_;
}

JsonScope::~JsonScope() {
  assert(writer_.innermost_ == this && !writer_.has_place_);
  --writer_.depth_;
  writer_.closing_ -= writer_.depth_ + 2;
  char* at = writer_.room(writer_.depth_ + 2);
  if (!empty_) at = writer_.start_line(at);
  *at = closing_;
  writer_.wrote_to(at + 1);
  writer_.innermost_ = outer_;
}

/// Comma and line of the next value, with room for `more` behind them.
char* JsonScope::start_next(std::size_t more) {
  assert(writer_.innermost_ == this && !writer_.has_place_);
  char* at = writer_.room(writer_.depth_ + 2 + more);
  if (!empty_) *at++ = ',';
  empty_ = false;
  return writer_.start_line(at);
}

/// The place behind what was written up to `end`.
JsonPlace JsonScope::place_at(const char* end) {
  writer_.wrote_to(end);
  writer_.has_place_ = true;
  return JsonPlace(writer_);
}

JsonPlace JsonScope::next() {
  return place_at(start_next(0));
}

JsonPlace JsonScope::next(std::string_view key) {
  char* at = start_next(key.size() + 4);
  *at++ = '"';
  at = std::copy(key.begin(), key.end(), at);
  *at++ = '"';
  *at++ = ':';
  if (writer_.style_ == JsonStyle::lines) *at++ = ' ';
  return place_at(at);
}

}  // namespace quell::io
