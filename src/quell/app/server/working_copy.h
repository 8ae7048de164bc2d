// What was typed and not yet saved, kept on disk: a crash, a kill or a power cut costs nothing that was answered for.
//
// A copy is one JSON file in the user's state folder. A lock beside it, which the system lifts when its owner ends in whatever
// way, tells a copy in use from one that was left behind.
#pragma once

#include <filesystem>
#include <map>
#include <optional>
#include <string>
#include <tl/expected.hpp>

namespace quell::app::server {

/// A site file and the files that it names.
struct Content {
  std::string path;  ///< of the site file, absolute; empty: never saved
  std::string text;
  std::map<std::string, std::string> files;  ///< by the name that stands in the text
  std::map<std::string, std::string> read;   ///< SHA-256 of each file as it was on disk, the site file under ""
};

class WorkingCopy {
 public:
  enum class Claim {
    left_behind,  ///< one that was left behind, if there is any
    empty         ///< never one that holds something
  };

  /// `$XDG_STATE_HOME/quell`, or `~/.local/state/quell`; nothing where neither is set.
  static std::optional<std::filesystem::path> state_folder();

  /// A place for copies of the document at `path` (empty: of one without). Nobody else gets it until this object ends. The
  /// error says why the folder cannot be used.
  static tl::expected<WorkingCopy, std::string> claim(const std::filesystem::path& folder, const std::string& path,
                                                      Claim claim);

  WorkingCopy(WorkingCopy&& other) noexcept;
  WorkingCopy& operator=(WorkingCopy&& other) noexcept;
  ~WorkingCopy();

  bool holds_something() const;
  /// What is there; nothing where there is no copy, or none of a form that this program knows.
  std::optional<Content> load() const;
  /// On disk when it returns.
  tl::expected<void, std::string> store(const Content& content) const;
  void discard() const;

 private:
  WorkingCopy(std::filesystem::path file, int lock) : file_(std::move(file)), lock_(lock) {}

  std::filesystem::path file_;
  int lock_ = -1;
};

}  // namespace quell::app::server
