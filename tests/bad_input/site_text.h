// A small good site file as text, for tests that spoil one thing in it. Invented data.
#pragma once

#include <unistd.h>

#include <algorithm>
#include <filesystem>
#include <fstream>
#include <string>
#include <string_view>

#include "quell/io/site_file.h"

namespace quell::test {

inline constexpr std::string_view good_site = R"toml(units = "SI"
[project]
name = "Invented"
[crest]
level = "130 m"
design_head = "5 m"
net_width = "30 m"
approach_depth = "20 m"
[chute]
slope = "0.8H:1V"
width = "34 m"
roughness_height = "0.6 mm"
[river]
bed_level = "100 m"
[river.rating]
discharge = ["20 m3/s", "400 m3/s", "900 m3/s"]
low = ["100.5 m", "103 m", "106 m"]
expected = ["100.6 m", "103.4 m", "106.8 m"]
high = ["100.7 m", "104 m", "107.5 m"]
[discharges]
design_flood = "600 m3/s"
check_flood = "800 m3/s"
smallest = "30 m3/s"
steps = 30
[[discharges.floods]]
name = "20-year flood"
discharge = "300 m3/s"
return_period = 20
[basin]
types = ["type_1", "type_2"]
highest_apron = "99 m"
lowest_apron = "90 m"
)toml";

/// `text` with the first `from` replaced by `to`; a `from` that does not occur gives an empty text, which no test expects.
inline std::string spoiled(std::string_view text, std::string_view from, std::string_view to) {
  std::string result(text);
  const std::size_t at = result.find(from);
  if (at == std::string::npos) return "";
  return result.replace(at, from.size(), to);
}

/// Line of the first occurrence, from 1; 0 where there is none.
inline int line_of(std::string_view text, std::string_view words) {
  const std::size_t at = text.find(words);
  if (at == std::string_view::npos) return 0;
  return 1 + static_cast<int>(std::count(text.begin(), text.begin() + static_cast<std::ptrdiff_t>(at), '\n'));
}

inline std::string all_problems(const io::SiteFile& file) {
  std::string text;
  for (const io::Problem& problem : file.problems) text += io::to_text(problem) + "\n";
  return text;
}

/// A folder for one test, removed afterwards. Tests run beside each other, one process each: its name holds the process.
class Folder {
 public:
  explicit Folder(const std::string& name)
      : path_(std::filesystem::path(QUELL_BUILD) / "test-folders" / (name + "-" + std::to_string(::getpid()))) {
    std::filesystem::remove_all(path_);
    std::filesystem::create_directories(path_);
  }
  Folder(const Folder&) = delete;
  Folder& operator=(const Folder&) = delete;
  ~Folder() {
    std::error_code ignored;
    std::filesystem::remove_all(path_, ignored);
  }
  std::filesystem::path write(const std::string& name, std::string_view text) const {
    std::ofstream(path_ / name, std::ios::binary) << text;
    return path_ / name;
  }
  const std::filesystem::path& path() const { return path_; }

 private:
  std::filesystem::path path_;
};

}  // namespace quell::test
