#include "quell/io/site_file.h"

#include <fmt/format.h>
#include <toml++/toml.h>

#include "quell/dissipators/catalogue.h"
#include "quell/io/files.h"
#include "quell/io/input_text.h"
#include "quell/io/problem_list.h"
#include "quell/io/section_reader.h"
#include "quell/io/site_checks.h"
#include "quell/io/site_data.h"
#include "quell/io/toml_error.h"
#include "quell/io/toml_key.h"

namespace quell::io {
namespace {

std::vector<std::string_view> known_types() {
  std::vector<std::string_view> ids;
  for (const dissipators::Dissipator* type : dissipators::catalogue()) ids.push_back(type->record().id.view());
  return ids;
}

/// What is being read, and from where.
struct Reading {
  const std::filesystem::path& path;
  const FileSource& source;
  std::string digest_text;
};

void read_document(const toml::table& root, Reading& reading, ProblemList& problems, SiteFile& result) {
  Draft draft;
  SectionReader(draft, result.inputs, problems).read_file(root);
  SiteFile from_csv;
  complete_site(draft, {reading.path.parent_path(), reading.source, from_csv, reading.digest_text, result.inputs}, problems);
  check_site(draft, known_types(), problems);
  problems.hand_over(result);
  for (Problem& problem : result.problems) problem.key = key_at(root, {problem.line, problem.column});
  result.problems.insert(result.problems.end(), from_csv.problems.begin(), from_csv.problems.end());
  result.remarks.insert(result.remarks.end(), from_csv.remarks.begin(), from_csv.remarks.end());
  result.site = std::move(draft.site);
}

void read_text(std::string_view text, Reading& reading, SiteFile& result) {
  const bool had_mark = drop_byte_order_mark(text);
  ProblemList problems(result.path, split_lines(text));
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
    read_document(root, reading, problems, result);
  } catch (const toml::parse_error& error) {
    const toml::source_position& at = error.source().begin;
    const Place place{static_cast<int>(at.line), static_cast<int>(at.column)};
    problems.problem(place, explain_toml_error(error.description(), problems.line(place.line)));
    problems.hand_over(result);
  }
}

}  // namespace

SiteFile read_site_text(std::string_view text, const std::filesystem::path& path) {
  return read_site_text(text, path, [&](const std::string& name) { return read_input_file(path.parent_path() / name); });
}

SiteFile read_site_text(std::string_view text, const std::filesystem::path& path, const FileSource& source) {
  SiteFile result;
  result.path = path.string();
  Reading reading{path, source, std::string(text)};
  if (text.size() > largest_input_file) {
    result.problems.push_back({result.path, 0, 0, "the text is larger than 16 MB", ""});
    return result;
  }
  try {
    read_text(text, reading, result);
  } catch (const std::exception& error) {
    result.problems.push_back({result.path, 0, 0, fmt::format("the file could not be read: {}", error.what()), ""});
  }
  result.digest = sha256(reading.digest_text);
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
