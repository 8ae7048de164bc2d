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

/// Whether the call waits until the disk has the bytes, so that not even a power cut loses them.
enum class Durability { usual, on_disk };

/// Writes every file or none: all temporaries first, then the renames. The folder is made where missing. A file that is there
/// already keeps its permissions, and a link goes on pointing at what it names. The error says which file and why.
tl::expected<void, std::string> write_files(const std::filesystem::path& folder, const std::vector<FileText>& files,
                                            Durability durability = Durability::usual);

/// SHA-256 of `bytes` as 64 hex digits (FIPS 180-4).
std::string sha256(std::string_view bytes);

}  // namespace quell::io
