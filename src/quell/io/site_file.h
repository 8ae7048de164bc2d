// Reading a site file: TOML 1.0 text to site::Site, with every problem collected: file, line, column, what is wrong, what
// would be right, and the nearest valid key.
#pragma once

#include <filesystem>
#include <functional>
#include <string>
#include <string_view>
#include <tl/expected.hpp>
#include <vector>

#include "quell/site/site.h"

namespace quell::io {

/// One problem in an input file. Line and column count from 1; 0 where the problem has no place.
struct Problem {
  std::string file;
  int line = 0;
  int column = 0;
  std::string message;  ///< what is wrong and what would be right, one or two sentences
  std::string excerpt;  ///< the line of text, may be empty
  std::string key{};    ///< where it stands in the site file: "chute.reaches[2].slope"; empty in other files or where unknown
};

/// "site.toml:12:15: error: …" with the excerpt and a caret under it. `label` is "remark" for remarks.
std::string to_text(const Problem& problem, std::string_view label = "error");

/// One input as typed, for the report's echo of inputs.
struct EchoedInput {
  std::string section;      ///< "crest"
  std::string key;          ///< "design_head"
  std::string typed;        ///< "6.5 m", as in the file
  std::string meaning;      ///< help text of the key
  bool is_default = false;  ///< not in the file: quell's default was taken
  int line = 0;             ///< in the site file, from 1; 0 for a default
};

struct SiteFile {
  site::Site site;
  std::vector<EchoedInput> inputs;
  std::string path;
  std::string digest;             ///< SHA-256 of the file's bytes and of every file it names, hex
  std::vector<Problem> problems;  ///< empty: `site` may be used
  std::vector<Problem> remarks;   ///< tolerated, and said: decimal comma in a CSV, a byte order mark
  bool good() const { return problems.empty(); }
};

/// Reads and judges. Never throws; files over 16 MB, directories and text that is not UTF-8 are problems.
SiteFile read_site_file(const std::filesystem::path& path);

/// The bytes of a file that the site file names, by the name that stands there; the error is a sentence.
using FileSource = std::function<tl::expected<std::string, std::string>(const std::string& name)>;

/// The same from text in memory; `path` is used for messages and for the place of files named in it.
SiteFile read_site_text(std::string_view text, const std::filesystem::path& path);

/// Nothing is read from disk: files come from `source`, and `path` is used for messages alone.
SiteFile read_site_text(std::string_view text, const std::filesystem::path& path, const FileSource& source);

}  // namespace quell::io
