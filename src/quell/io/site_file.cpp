#include "quell/io/site_file.h"

#include <fmt/format.h>
#include <toml++/toml.h>

#include "quell/dissipators/catalogue.h"
#include "quell/io/files.h"
#include "quell/io/input_text.h"
#include "quell/io/problem_list.h"
#include "quell/io/rating_csv.h"
#include "quell/io/section_reader.h"
#include "quell/io/site_checks.h"
#include "quell/io/toml_error.h"

namespace quell::io {
namespace {

Place read_at(const Draft& draft, std::string_view key) {
  const auto found = draft.read.find(key);
  return found == draft.read.end() ? Place{} : found->second;
}

std::vector<std::string_view> known_types() {
  std::vector<std::string_view> ids;
  for (const dissipators::Dissipator* type : dissipators::catalogue()) ids.push_back(type->record().id.view());
  return ids;
}

/// Completes an inline table: one level list for the missing ones, equal lengths.
bool complete_inline_rating(Draft& draft, ProblemList& problems) {
  site::TailwaterRating& rating = draft.site.river.rating;
  if (draft.read.count("river.rating.discharge") == 0) return false;
  const std::size_t expected = site::index_of(site::TailwaterCase::expected);
  if (rating.level[expected].empty()) {
    const bool was_mistyped = problems.problem_count() > 0;
    if (!was_mistyped)
      problems.problem(read_at(draft, "river.rating"), "the rating lacks level (or expected), a list as long as discharge");
    return false;
  }
  bool good = true;
  for (std::size_t i = 0; i < rating.level.size(); ++i) {
    if (rating.level[i].empty()) {
      rating.level[i] = rating.level[expected];
      draft.rating_level_places[i] = draft.rating_level_places[expected];
    } else {
      draft.site.river.has_spread = draft.site.river.has_spread || i != expected;
    }
    if (rating.level[i].size() == rating.discharge.size()) continue;
    if (good)
      problems.problem(draft.rating_level_places[i].front(), fmt::format("this list has {} levels, but there are {} discharges",
                                                                         rating.level[i].size(), rating.discharge.size()));
    good = false;
  }
  return good;
}

bool levels_beside_file(const Draft& draft, ProblemList& problems) {
  for (const std::string_view key : {"river.rating.level", "river.rating.low", "river.rating.expected", "river.rating.high"})
    if (draft.read.find(key) != draft.read.end()) {
      problems.problem(read_at(draft, key), "with a file, the levels stand in the file; delete them here");
      return true;
    }
  return false;
}

/// Reads and judges the rating, from its file or inline. `digest_text` grows by the file's bytes.
void read_rating(Draft& draft, const std::filesystem::path& folder, ProblemList& problems, SiteFile& result,
                 std::string& digest_text) {
  if (!draft.site.river.has_rating()) return;
  bool good = false;
  if (draft.rating_file.empty()) {
    good = complete_inline_rating(draft, problems) && check_rating(draft, problems);
  } else if (!levels_beside_file(draft, problems)) {
    const std::filesystem::path path = folder / draft.rating_file;
    const auto bytes = read_input_file(path);
    if (!bytes) {
      problems.problem(read_at(draft, "river.rating.file"), fmt::format("{}: {}", path.string(), bytes.error()));
      return;
    }
    digest_text += *bytes;
    ProblemList in_csv(path.string(), split_lines(*bytes));
    if (const auto fault = find_text_fault(*bytes)) {
      in_csv.problem(fault->place, fault->message);
    } else {
      good = read_rating_csv(*bytes, draft.site.units, draft, in_csv) && check_rating(draft, in_csv);
    }
    // The site file's own problems come first.
    SiteFile later;
    in_csv.hand_over(later);
    result.problems.insert(result.problems.end(), later.problems.begin(), later.problems.end());
    result.remarks.insert(result.remarks.end(), later.remarks.begin(), later.remarks.end());
  }
  if (good) draft.read["river.rating.checked"] = {};
}

void read_document(const toml::table& root, const std::filesystem::path& path, ProblemList& problems, SiteFile& result,
                   std::string& digest_text) {
  Draft draft;
  SectionReader(draft, result.inputs, problems).read_file(root);
  SiteFile from_csv;
  read_rating(draft, path.parent_path(), problems, from_csv, digest_text);
  check_site(draft, known_types(), problems);
  problems.hand_over(result);
  result.problems.insert(result.problems.end(), from_csv.problems.begin(), from_csv.problems.end());
  result.remarks.insert(result.remarks.end(), from_csv.remarks.begin(), from_csv.remarks.end());
  result.site = std::move(draft.site);
}

void read_text(std::string_view text, const std::filesystem::path& path, SiteFile& result, std::string& digest_text) {
  const bool had_mark = drop_byte_order_mark(text);
  ProblemList problems(path.string(), split_lines(text));
  if (had_mark) problems.remark({1, 1}, "the file starts with a byte order mark, which is skipped");
  auto fault = find_text_fault(text);
  if (!fault) fault = find_toml_fault(text);
  if (fault) {
    problems.problem(fault->place, fault->message);
    problems.hand_over(result);
    return;
  }
  try {
    const toml::table root = toml::parse(text, std::string_view{"site file"});
    read_document(root, path, problems, result, digest_text);
  } catch (const toml::parse_error& error) {
    const toml::source_position& at = error.source().begin;
    const Place place{static_cast<int>(at.line), static_cast<int>(at.column)};
    problems.problem(place, explain_toml_error(error.description(), problems.line(place.line)));
    problems.hand_over(result);
  }
}

}  // namespace

SiteFile read_site_text(std::string_view text, const std::filesystem::path& path) {
  SiteFile result;
  result.path = path.string();
  std::string digest_text(text);
  if (text.size() > largest_input_file) {
    result.problems.push_back({result.path, 0, 0, "the text is larger than 16 MB", ""});
    return result;
  }
  try {
    read_text(text, path, result, digest_text);
  } catch (const std::exception& error) {
    result.problems.push_back({result.path, 0, 0, fmt::format("the file could not be read: {}", error.what()), ""});
  }
  result.digest = sha256(digest_text);
  return result;
}

SiteFile read_site_file(const std::filesystem::path& path) {
  const auto bytes = read_input_file(path);
  if (bytes) return read_site_text(*bytes, path);
  SiteFile result;
  result.path = path.string();
  result.problems.push_back({result.path, 0, 0, bytes.error(), ""});
  return result;
}

}  // namespace quell::io
