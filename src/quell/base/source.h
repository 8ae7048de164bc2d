// The bibliography: data/sources.bib compiled in. Methods, curves and findings hold keys.
#pragma once

#include <span>
#include <string>
#include <string_view>

namespace quell {

struct Source {
  std::string_view key;
  std::string_view author;
  std::string_view year;
  std::string_view title;
  std::string_view publication;
};

std::span<const Source> all_sources();
const Source* find_source(std::string_view key);

/// "Peterka 1984": for tables. A key without an entry is returned as it is.
std::string short_citation(std::string_view key);
/// "Peterka, A. J. (1984). Title. Publication."
std::string full_citation(std::string_view key);

}  // namespace quell
