#include "quell/app/server/document.h"

#include <fmt/format.h>

#include <algorithm>
#include <vector>

#include "quell/io/files.h"
#include "quell/io/input_text.h"
#include "quell/io/site_file.h"

namespace quell::app::server {
namespace {

namespace fs = std::filesystem;

constexpr std::size_t largest_document = 8u << 20u;  ///< bytes, all files together
constexpr std::size_t most_files = 500;
constexpr const char* new_text = "units = \"SI\"\n";

tl::unexpected<Trouble> trouble(int status, std::string error) {
  return tl::unexpected(Trouble{status, std::move(error)});
}

/// Files that the text names, in its order.
std::vector<std::string> names_in(const std::string& text) {
  std::vector<std::string> names;
  io::read_site_text(text, "site.toml", [&](const std::string& name) {
    names.push_back(name);
    return tl::expected<std::string, std::string>(tl::unexpected<std::string>("not needed"));
  });
  return names;
}

/// Text that JSON can carry byte for byte; the error says where it is none.
tl::expected<std::string, std::string> read_text_file(const fs::path& path) {
  auto bytes = io::read_input_file(path);
  if (!bytes) return bytes;
  if (const auto fault = io::find_text_fault(*bytes))
    return tl::unexpected(fmt::format("line {}: {}", fault->place.line, fault->message));
  return bytes;
}

fs::path folder_of(const Content& content) {
  return fs::path(content.path).parent_path();
}

/// Takes in the files that the text names and that stand beside the site file.
void adopt_files(Content& content) {
  if (content.path.empty()) return;
  for (const std::string& name : names_in(content.text)) {
    if (content.files.count(name) > 0 || !is_file_name(name)) continue;
    auto bytes = read_text_file(folder_of(content) / name);
    if (!bytes) continue;
    content.read[name] = io::sha256(*bytes);
    content.files[name] = std::move(*bytes);
  }
}

std::size_t size_of(const Content& content) {
  std::size_t size = content.text.size();
  for (const auto& [name, text] : content.files) size += name.size() + text.size();
  return size;
}

tl::expected<std::string, Trouble> absolute_path(const std::string& path) {
  if (path.empty()) return trouble(400, "name a path");
  if (const auto fault = io::find_text_fault(path)) return trouble(400, "the path holds a character that no path should");
  std::error_code error;
  const fs::path absolute = fs::absolute(path, error);
  if (error) return trouble(400, fmt::format("{}: {}", path, error.message()));
  return absolute.lexically_normal().string();
}

/// One file of a save.
struct Written {
  std::string key;  ///< in Content::read
  io::FileText file;
};

std::vector<Written> files_to_write(const Content& content, const fs::path& target) {
  std::vector<Written> list{{"", {target.filename().string(), content.text}}};
  for (const std::string& name : names_in(content.text))
    if (const auto found = content.files.find(name); found != content.files.end() && is_file_name(name))
      list.push_back({name, {name, found->second}});
  return list;
}

/// Whether `on_disk` is something that this document has not read: saving would destroy it.
bool is_foreign(const Content& content, const std::string& key, const std::string& on_disk, bool same_place) {
  const auto known = content.read.find(key);
  return !same_place || known == content.read.end() || known->second != io::sha256(on_disk);
}

}  // namespace

bool is_file_name(const std::string& name) {
  const fs::path path(name);
  if (name.empty() || name.size() > 200 || path.is_absolute() || io::find_text_fault(name) || !path.has_filename())
    return false;
  if (name.find_first_of("\\\n\t") != std::string::npos) return false;
  return std::all_of(path.begin(), path.end(), [](const fs::path& part) { return part.string().front() != '.'; });
}

Document::Result<void> Document::begin(Content content, WorkingCopy::Claim claim) {
  // The place of before is given up first: the same document may be opened anew. What it holds stays on disk.
  copy_.reset();
  auto copy = WorkingCopy::claim(state_folder_, content.path, claim);
  std::optional<Content> left;
  if (copy && copy->holds_something()) {
    left = copy->load();
    if (!left) copy = WorkingCopy::claim(state_folder_, content.path, WorkingCopy::Claim::empty);
  }
  if (!copy) return trouble(500, "no working copy can be kept: " + copy.error());
  copy_ = std::move(*copy);
  recovered_ = left && (left->text != content.text || left->files != content.files);
  if (left && !recovered_) copy_->discard();
  content_ = recovered_ ? std::move(*left) : std::move(content);
  ++revision_;
  saved_revision_ = recovered_ ? revision_ - 1 : revision_;
  return {};
}

Document::Result<void> Document::claim_empty() {
  copy_.reset();
  auto copy = WorkingCopy::claim(state_folder_, content_.path, WorkingCopy::Claim::empty);
  if (!copy) return trouble(500, "no working copy can be kept: " + copy.error());
  copy_ = std::move(*copy);
  return {};
}

Document::Result<void> Document::open_locked(const std::string& given) {
  const auto path = absolute_path(given);
  if (!path) return tl::unexpected(path.error());
  auto text = read_text_file(*path);
  if (!text) return trouble(400, fmt::format("{}: {}", *path, text.error()));
  Content content{*path, std::move(*text), {}, {}};
  content.read[""] = io::sha256(content.text);
  adopt_files(content);
  return begin(std::move(content), WorkingCopy::Claim::left_behind);
}

Document::Result<void> Document::open_path(const std::string& path) {
  const std::lock_guard lock(mutex_);
  return open_locked(path);
}

Document::Result<void> Document::open_left_behind() {
  const std::lock_guard lock(mutex_);
  return begin({"", new_text, {}, {}}, WorkingCopy::Claim::left_behind);
}

Document::Result<void> Document::open_new() {
  return open_text(new_text, {});
}

Document::Result<void> Document::open_text(std::string text, std::map<std::string, std::string> files) {
  const std::lock_guard lock(mutex_);
  return begin({"", std::move(text), std::move(files), {}}, WorkingCopy::Claim::empty);
}

Document::Result<void> Document::recover(bool keep) {
  const std::lock_guard lock(mutex_);
  if (!recovered_) return trouble(409, "there is nothing to recover");
  if (keep) {
    recovered_ = false;
    return {};
  }
  copy_->discard();
  if (content_.path.empty()) return begin({"", new_text, {}, {}}, WorkingCopy::Claim::empty);
  return open_locked(std::string(content_.path));
}

DocumentView Document::view() const {
  const std::lock_guard lock(mutex_);
  return {content_, revision_, saved_revision_, recovered_};
}

Document::Result<long> Document::change(const Change& change) {
  const std::lock_guard lock(mutex_);
  if (change.revision != revision_)
    return trouble(409, fmt::format("the document is at revision {}, the edit started from {}", revision_, change.revision));
  Content next = content_;
  next.text = change.text;
  for (const auto& [name, text] : change.files) {
    if (!is_file_name(name)) return trouble(400, fmt::format("'{}' is not a name of a file beside the site file", name));
    if (text) {
      next.files[name] = *text;
    } else {
      next.files.erase(name);
    }
  }
  adopt_files(next);
  if (size_of(next) > largest_document || next.files.size() > most_files)
    return trouble(413, "a document holds at most 8 MB in 500 files");
  if (!copy_)
    if (auto claimed = claim_empty(); !claimed) return tl::unexpected(claimed.error());
  if (auto stored = copy_->store(next); !stored)
    return trouble(500, fmt::format("the working copy could not be written: {}", stored.error()));
  content_ = std::move(next);
  recovered_ = false;
  return ++revision_;
}

Document::Result<void> Document::save(const std::optional<std::string>& given, bool overwrite) {
  const std::lock_guard lock(mutex_);
  const auto path = absolute_path(given.value_or(content_.path));
  if (!path) return tl::unexpected(path.error());
  const fs::path target(*path);
  const bool same_place = *path == content_.path;
  // Whoever holds the token may write site files, not just any file of the user's.
  if (!same_place && target.extension() != ".toml") return trouble(400, "the name of a site file ends with .toml");
  if (std::error_code error; !fs::is_directory(target.parent_path(), error))
    return trouble(400, fmt::format("there is no folder {}", target.parent_path().string()));
  std::vector<io::FileText> to_write;
  auto list = files_to_write(content_, target);
  for (const Written& one : list) {
    const fs::path place = target.parent_path() / one.file.name;
    std::error_code error;
    if (!fs::exists(place, error)) {
      to_write.push_back(one.file);
      continue;
    }
    const auto on_disk = io::read_input_file(place);
    if (!on_disk) return trouble(409, fmt::format("{} stands in the way: {}", place.string(), on_disk.error()));
    if (*on_disk == one.file.text) continue;
    if (!overwrite && is_foreign(content_, one.key, *on_disk, same_place))
      return trouble(409, place.string() + (same_place ? " has changed on disk since it was read here" : " exists already"));
    to_write.push_back(one.file);
  }
  if (auto written = io::write_files(target.parent_path(), to_write, io::Durability::on_disk); !written)
    return trouble(500, "nothing was saved: " + written.error());
  for (const Written& one : list) content_.read[one.key] = io::sha256(one.file.text);
  if (copy_) copy_->discard();
  saved_revision_ = revision_;
  recovered_ = false;
  if (same_place) return {};
  content_.path = *path;
  return claim_empty();
}

tl::expected<std::string, std::string> Document::file(const std::string& name) const {
  fs::path folder;
  {
    const std::lock_guard lock(mutex_);
    if (const auto found = content_.files.find(name); found != content_.files.end()) return found->second;
    if (content_.path.empty()) return tl::unexpected<std::string>("this document has no file of that name");
    folder = folder_of(content_);
  }
  if (!is_file_name(name)) return tl::unexpected<std::string>("only files beside the site file or below it are read here");
  return io::read_input_file(folder / name);
}

}  // namespace quell::app::server
