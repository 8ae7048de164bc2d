#include "quell/io/json_writer.h"

#include <fmt/format.h>

#include <array>
#include <cassert>
#include <cmath>
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

}  // namespace

void JsonWriter::append(std::string_view piece) {
  // Room for what closes the scopes stays free, so that their destructors cannot throw.
  const std::size_t needed = text_.size() + piece.size() + closing_;
  if (needed > text_.capacity()) text_.reserve(2 * needed);
  text_.append(piece);
}

void JsonWriter::append_line() {
  if (style_ == JsonStyle::compact) return;
  append("\n");
  for (std::size_t i = 0; i < depth_; ++i) append(" ");
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
  std::array<char, 32> digits{};
  const auto end = writer_->significant_ > 0
                       ? fmt::format_to(digits.data(), FMT_STRING("{:.{}g}"), value, writer_->significant_)
                       : fmt::format_to(digits.data(), FMT_STRING("{}"), value);
  const std::string_view number(digits.data(), static_cast<std::size_t>(end - digits.data()));
  writer_->append(number);
  if (writer_->significant_ == 0 && number.find_first_not_of("-0123456789") == std::string_view::npos) writer_->append(".0");
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
  if (!empty_) writer_.append_line();
  writer_.append({&closing_, 1});
  writer_.innermost_ = outer_;
}

void JsonScope::start_next() {
  assert(writer_.innermost_ == this && !writer_.has_place_);
  if (!empty_) writer_.append(",");
  empty_ = false;
  writer_.append_line();
}

JsonPlace JsonScope::place() {
  writer_.has_place_ = true;  // last, so that a scope left by an exception waits for nothing
  return JsonPlace(writer_);
}

JsonPlace JsonScope::next() {
  start_next();
  return place();
}

JsonPlace JsonScope::next(std::string_view key) {
  start_next();
  writer_.append("\"");
  writer_.append(key);
  writer_.append(writer_.style_ == JsonStyle::compact ? "\":" : "\": ");
  return place();
}

}  // namespace quell::io
