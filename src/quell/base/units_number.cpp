#include <cmath>
#include <locale>
#include <sstream>

#include "quell/base/units_text.h"

namespace quell::unit_text {
namespace {

// Bytes of the character at the front: 1 for ASCII and for a byte that is not UTF-8 (`valid` false).
std::size_t character_length(std::string_view text, bool& valid) {
  const auto byte = [&](std::size_t i) { return i < text.size() ? static_cast<unsigned char>(text[i]) : 0U; };
  const unsigned first = byte(0);
  const auto follows = [&](std::size_t i) { return (byte(i) & 0xC0U) == 0x80U; };
  valid = true;
  if (first < 0x80U) return 1;
  if (first >= 0xC2U && first <= 0xDFU && follows(1)) return 2;
  if (first >= 0xE0U && first <= 0xEFU && follows(1) && follows(2) && !(first == 0xE0U && byte(1) < 0xA0U) &&
      !(first == 0xEDU && byte(1) > 0x9FU))
    return 3;
  if (first >= 0xF0U && first <= 0xF4U && follows(1) && follows(2) && follows(3) && !(first == 0xF0U && byte(1) < 0x90U) &&
      !(first == 0xF4U && byte(1) > 0x8FU))
    return 4;
  valid = false;
  return 1;
}

}  // namespace

std::string quoted(std::string_view text) {
  std::string shown = "'";
  for (int count = 0; !text.empty() && count < 24; ++count) {
    bool valid = true;
    const std::size_t size = character_length(text, valid);
    const bool control = size == 1 && (static_cast<unsigned char>(text[0]) < 0x20U || text[0] == 0x7F);
    shown += valid && !control ? std::string(text.substr(0, size)) : "?";
    text.remove_prefix(size);
  }
  return shown + (text.empty() ? "'" : "…'");
}

Failure NumberReader::grouping_failure() const {
  return fail("Digits are grouped wrongly here: groups of exactly three, as in '18 500', or none, as in '18500'.");
}

// Takes the whole part, without its separators, into `digits`.
tl::expected<void, QuantityError> NumberReader::read_whole(std::string& digits) {
  const std::size_t first = digits_from(at_);
  digits.append(text_.substr(at_, first));
  at_ += first;
  std::string_view separator;
  while (true) {
    const std::size_t before = at_;
    const bool grouped = take("_") || take_space();
    const std::size_t group = digits_from(at_);
    if (!grouped || (group == 0 && text_[before] != '_')) {
      at_ = before;
      return {};
    }
    const auto used = text_.substr(before, at_ - before);
    if (separator.empty()) separator = used;
    if (group != 3 || first == 0 || first > 3 || used != separator) return grouping_failure();
    digits.append(text_.substr(at_, group));
    at_ += group;
  }
}

Failure NumberReader::comma_failure(const std::string& before) const {
  const std::size_t count = digits_from(at_ + 1);
  const std::string after(text_.substr(at_ + 1, count).substr(0, 12));
  std::string message = "A comma is not read in numbers, because it means different things in different countries. ";
  if (count == 3)
    message += "For thousands write " + quoted(before + after) + ", for a decimal " + quoted(before + "." + after) + ".";
  else if (count > 0)
    message += "Write the decimal point: " + quoted(before + "." + after) + ".";
  else
    message += "Write a decimal point, and group thousands by spaces as in '18 500'.";
  return fail(std::move(message));
}

Failure NumberReader::no_number() const {
  std::string word;
  while (is_letter(peek(word.size())) && word.size() < 9) word += static_cast<char>(peek(word.size()) | 0x20);
  if (word.starts_with("nan") || word.starts_with("inf")) return fail("Only finite numbers are read, such as '412.5 m'.");
  return fail("A quantity begins with a number, such as '412.5 m'.");
}

tl::expected<double, QuantityError> NumberReader::read_number() {
  const std::size_t start = at_;
  std::string digits = take("-") || take("\u2212") ? "-" : (take("+"), "");
  if (!is_digit(peek()) && !(peek() == '.' && is_digit(peek(1)))) return no_number();
  const std::string sign = std::exchange(digits, "");
  if (const auto whole = read_whole(digits); !whole) return Failure(whole.error());
  if (peek() == ',') return comma_failure(sign + digits);
  if (take(".")) read_decimals(digits);
  if (peek() == ',') return comma_failure(sign + digits);
  read_exponent(digits);
  double value = 0.0;
  std::istringstream stream(sign + digits);
  stream.imbue(std::locale::classic());
  if (!(stream >> value) || !std::isfinite(value)) {
    at_ = start;
    return fail("The number is too large.");
  }
  return value;
}

void NumberReader::read_decimals(std::string& digits) {
  const std::size_t count = digits_from(at_);
  digits += '.';
  digits.append(text_.substr(at_, count));
  at_ += count;
}

void NumberReader::read_exponent(std::string& digits) {
  const std::size_t sign = peek(1) == '-' || peek(1) == '+' ? 1 : 0;
  if ((peek() != 'e' && peek() != 'E') || !is_digit(peek(1 + sign))) return;
  const std::size_t count = 1 + sign + digits_from(at_ + 1 + sign);
  digits.append(text_.substr(at_, count));
  at_ += count;
}

}  // namespace quell::unit_text
