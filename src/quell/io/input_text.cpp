#include "quell/io/input_text.h"

#include <fmt/format.h>

#include <fstream>
#include <system_error>

namespace quell::io {
namespace {

/// Bytes of the UTF-8 character at `position`, 0 where there is none: overlong forms, surrogates and numbers beyond U+10FFFF
/// are refused.
std::size_t utf8_length(std::string_view text, std::size_t position) {
  const auto byte = [&](std::size_t i) -> unsigned {
    return position + i < text.size() ? static_cast<unsigned char>(text[position + i]) : 0u;
  };
  const auto follows = [&](std::size_t i) { return (byte(i) & 0xC0u) == 0x80u; };
  const unsigned first = byte(0);
  if (first < 0x80u) return 1;
  if (first >= 0xC2u && first <= 0xDFu) return follows(1) ? 2 : 0;
  if (first >= 0xE0u && first <= 0xEFu) {
    const bool overlong = first == 0xE0u && byte(1) < 0xA0u;
    const bool surrogate = first == 0xEDu && byte(1) > 0x9Fu;
    return follows(1) && follows(2) && !overlong && !surrogate ? 3 : 0;
  }
  if (first >= 0xF0u && first <= 0xF4u) {
    const bool overlong = first == 0xF0u && byte(1) < 0x90u;
    const bool too_large = first == 0xF4u && byte(1) > 0x8Fu;
    return follows(1) && follows(2) && follows(3) && !overlong && !too_large ? 4 : 0;
  }
  return 0;
}

/// Walks TOML text character by character and knows whether it stands inside a string or a comment.
class TomlScanner {
 public:
  explicit TomlScanner(std::string_view text) : text_(text) {}

  std::optional<TextFault> run() {
    while (at_ < text_.size()) {
      const char c = text_[at_];
      if (c == '#') {
        skip_line();
      } else if (c == '"' || c == '\'') {
        skip_string(c);
      } else {
        if (auto fault = judge(c)) return fault;
        step();
      }
    }
    return std::nullopt;
  }

 private:
  static constexpr int deepest = 40;
  std::string_view text_;
  std::size_t at_ = 0;
  Place place_{1, 1};
  int brackets_ = 0;
  int dots_ = 0;  ///< since the start of the key or number

  void step() {
    if (text_[at_] == '\n') {
      ++place_.line;
      place_.column = 1;
    } else if ((static_cast<unsigned char>(text_[at_]) & 0xC0u) != 0x80u) {
      ++place_.column;
    }
    ++at_;
  }

  void steps(std::size_t count) {
    for (; count > 0 && at_ < text_.size(); --count) step();
  }

  void skip_line() {
    while (at_ < text_.size() && text_[at_] != '\n') step();
  }

  void skip_string(char quote) {
    const std::string triple(3, quote);
    const bool many_lines = text_.substr(at_, 3) == triple;
    steps(many_lines ? 3 : 1);
    while (at_ < text_.size()) {
      if (quote == '"' && text_[at_] == '\\') {
        steps(2);
      } else if (many_lines && text_.substr(at_, 3) == triple) {
        steps(3);
        return;
      } else if (!many_lines && (text_[at_] == quote || text_[at_] == '\n')) {
        step();
        return;
      } else {
        step();
      }
    }
  }

  std::optional<TextFault> judge(char c) {
    if (static_cast<unsigned char>(c) >= 0x80u) {
      const std::size_t length = std::max<std::size_t>(1, utf8_length(text_, at_));
      return TextFault{place_,
                       fmt::format("'{}' may stand only inside quotes or in a comment; keys are written with the letters "
                                   "a to z, digits and underscores",
                                   text_.substr(at_, length))};
    }
    if (c == '[' || c == '{') ++brackets_;
    if ((c == ']' || c == '}') && brackets_ > 0) --brackets_;
    dots_ = c == '.' ? dots_ + 1 : (c == ',' || c == '=' || c == '[' || c == '{' || c == '\n' ? 0 : dots_);
    if (brackets_ > deepest || dots_ > deepest)
      return TextFault{
          place_,
          fmt::format("lists and tables are nested more than {} deep here; a site file needs no more than three", deepest)};
    return std::nullopt;
  }
};

}  // namespace

tl::expected<std::string, std::string> read_input_file(const std::filesystem::path& path) {
  namespace fs = std::filesystem;
  std::error_code error;
  const fs::file_status status = fs::status(path, error);
  if (!fs::exists(status))
    return tl::unexpected<std::string>(error && error != std::errc::no_such_file_or_directory
                                           ? fmt::format("the file cannot be reached: {}", error.message())
                                           : std::string("there is no such file"));
  if (fs::is_directory(status)) return tl::unexpected<std::string>("this is a directory; name the file in it");
  if (!fs::is_regular_file(status)) return tl::unexpected<std::string>("this is not an ordinary file");
  const std::uintmax_t size = fs::file_size(path, error);
  if (error) return tl::unexpected<std::string>(fmt::format("the file cannot be read: {}", error.message()));
  if (size > largest_input_file)
    return tl::unexpected<std::string>(fmt::format("the file holds {:.1f} MB; at most {} MB are read",
                                                   static_cast<double>(size) / 1048576.0, largest_input_file >> 20u));
  std::ifstream stream(path, std::ios::binary);
  std::string bytes(static_cast<std::size_t>(size), '\0');
  if (!stream || !stream.read(bytes.data(), static_cast<std::streamsize>(size)))
    return tl::unexpected<std::string>("the file cannot be opened for reading; check its permissions");
  return bytes;
}

std::optional<TextFault> find_text_fault(std::string_view text) {
  Place place{1, 1};
  for (std::size_t i = 0; i < text.size();) {
    const auto byte = static_cast<unsigned char>(text[i]);
    const std::size_t length = utf8_length(text, i);
    if (length == 0)
      return TextFault{place, fmt::format("byte 0x{:02x} is not UTF-8 text; save the file with the encoding UTF-8", byte)};
    const bool line_end = byte == '\n' || (byte == '\r' && i + 1 < text.size() && text[i + 1] == '\n');
    if ((byte < 0x20u && byte != '\t' && !line_end) || byte == 0x7Fu)
      return TextFault{place, fmt::format("control character 0x{:02x} does not belong in a text file; delete it", byte)};
    if (byte == '\n') {
      ++place.line;
      place.column = 1;
    } else {
      ++place.column;
    }
    i += length;
  }
  return std::nullopt;
}

std::optional<TextFault> find_toml_fault(std::string_view text) {
  return TomlScanner(text).run();
}

bool drop_byte_order_mark(std::string_view& text) {
  if (text.substr(0, 3) != "\xEF\xBB\xBF") return false;
  text.remove_prefix(3);
  return true;
}

std::vector<std::string_view> split_lines(std::string_view text) {
  std::vector<std::string_view> lines;
  while (!text.empty()) {
    const std::size_t end = text.find('\n');
    std::string_view line = text.substr(0, end);
    if (!line.empty() && line.back() == '\r') line.remove_suffix(1);
    lines.push_back(line);
    text.remove_prefix(end == std::string_view::npos ? text.size() : end + 1);
  }
  return lines;
}

}  // namespace quell::io
