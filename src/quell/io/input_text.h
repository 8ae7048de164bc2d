// Bytes from a file that a person gave, made safe to parse: the right kind of file, not too large, UTF-8, no control
// characters, and (for TOML) nothing that the parser below us answers badly.
#pragma once

#include <filesystem>
#include <optional>
#include <string>
#include <string_view>
#include <tl/expected.hpp>
#include <vector>

#include "quell/io/schema.h"

namespace quell::io {

inline constexpr std::size_t largest_input_file = 16u << 20u;  ///< bytes

/// What stops a text from being read, and where.
struct TextFault {
  Place place;
  std::string message;
};

/// The whole file, or a sentence that says why not: missing, a directory, a device, too large, not readable.
tl::expected<std::string, std::string> read_input_file(const std::filesystem::path& path);

/// First byte that is not UTF-8 or is a control character other than tab and line ends.
std::optional<TextFault> find_text_fault(std::string_view text);

/// First thing outside strings and comments that TOML does not have: a character beyond ASCII, or nesting deeper than any
/// site file needs (deep nesting would exhaust the stack of the parser).
std::optional<TextFault> find_toml_fault(std::string_view text);

/// Takes a byte order mark off the front; true where there was one.
bool drop_byte_order_mark(std::string_view& text);

/// Lines without their ends ("\n" or "\r\n").
std::vector<std::string_view> split_lines(std::string_view text);

}  // namespace quell::io
