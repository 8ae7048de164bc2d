// The one document that a server works on: a site file and its CSV files, as text. Nothing here knows what the text means, but
// for the names of the files in it. Every change is on disk before it is answered for; the user's own files change only on
// save.
#pragma once

#include <filesystem>
#include <map>
#include <mutex>
#include <optional>
#include <string>
#include <tl/expected.hpp>

#include "quell/app/server/working_copy.h"

namespace quell::app::server {

/// Why something was not done: an HTTP status and a sentence.
struct Trouble {
  int status = 400;
  std::string error;
};

struct DocumentView {
  Content content;
  long revision = 0;
  long saved_revision = 0;  ///< the revision that is on the user's disk; other than `revision`: there is something to save
  bool recovered = false;   ///< `content` was left behind unsaved by an earlier run, and nobody has yet said to keep it
};

struct Change {
  long revision = 0;  ///< that the edit started from
  std::string text;
  std::map<std::string, std::optional<std::string>> files;  ///< the changed ones; nothing: no longer part of the document
};

class Document {
 public:
  template <typename T>
  using Result = tl::expected<T, Trouble>;

  explicit Document(std::filesystem::path state_folder) : state_folder_(std::move(state_folder)) {}

  /// The site file at `path`, or the unsaved copy of it where one was left behind.
  Result<void> open_path(const std::string& path);
  /// The copy that was left behind by a document without a path, or else a new document.
  Result<void> open_left_behind();
  Result<void> open_new();
  Result<void> open_text(std::string text, std::map<std::string, std::string> files);
  /// Keeps what was left behind, or throws it away and opens what is on disk.
  Result<void> recover(bool keep);

  DocumentView view() const;

  /// The new revision; 409 where the document has moved on.
  Result<long> change(const Change& change);

  /// To `path`, or where it came from. 409 where that would overwrite something that was not read here.
  Result<void> save(const std::optional<std::string>& path, bool overwrite);

  /// A file that the text names: of the document, or else beside the site file. The error is a sentence.
  tl::expected<std::string, std::string> file(const std::string& name) const;

 private:
  std::filesystem::path state_folder_;
  mutable std::mutex mutex_;
  Content content_;
  std::optional<WorkingCopy> copy_;  ///< nothing where the state folder failed us; the next change tries again
  long revision_ = 0;
  long saved_revision_ = 0;
  bool recovered_ = false;

  Result<void> begin(Content content, WorkingCopy::Claim claim);
  Result<void> claim_empty();
  Result<void> open_locked(const std::string& path);
};

/// Whether a file of this name may belong to a document: beside the site file or below, not hidden.
bool is_file_name(const std::string& name);

}  // namespace quell::app::server
