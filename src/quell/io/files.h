// Writing whole or not at all: temporary file beside the target, then rename.
#pragma once

#include <filesystem>
#include <string>
#include <string_view>
#include <tl/expected.hpp>
#include <vector>

namespace quell::io {

struct FileText {
  std::string name;  ///< relative to the folder written to
  std::string text;
};

/// Writes every file or none: all temporaries first, then the renames. The folder is made where missing. The error says which
/// file and why.
tl::expected<void, std::string> write_files(const std::filesystem::path& folder, const std::vector<FileText>& files);

/// SHA-256 of `bytes` as 64 hex digits (FIPS 180-4).
std::string sha256(std::string_view bytes);

}  // namespace quell::io
