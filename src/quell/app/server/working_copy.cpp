#include "quell/app/server/working_copy.h"

#include <fcntl.h>
#include <fmt/format.h>
#include <sys/file.h>
#include <unistd.h>

#include <cerrno>
#include <cstdlib>
#include <cstring>
#include <fstream>
#include <nlohmann/json.hpp>
#include <utility>

#include "quell/io/files.h"

namespace quell::app::server {
namespace {

namespace fs = std::filesystem;

constexpr int most_copies = 1000;  ///< of one document
constexpr int format_number = 1;

/// Takes the lock; -1 where somebody has it or it cannot be made (then errno says why).
int take_lock(const fs::path& path) {
  const int descriptor = ::open(path.c_str(), O_RDWR | O_CREAT | O_CLOEXEC, 0600);
  if (descriptor < 0) return -1;
  if (::flock(descriptor, LOCK_EX | LOCK_NB) == 0) return descriptor;
  const int reason = errno;
  ::close(descriptor);
  errno = reason;
  return -1;
}

/// Copies of one document are numbered, so that two servers may hold the same one.
fs::path copy_file(const fs::path& folder, const std::string& path, int number) {
  const std::string name = path.empty() ? "unnamed" : io::sha256(path).substr(0, 16);
  return folder / fmt::format("{}-{}.json", name, number);
}

fs::path lock_of(fs::path file) {
  return file.replace_extension(".lock");
}

tl::expected<void, std::string> make_private(const fs::path& folder) {
  std::error_code error;
  fs::create_directories(folder, error);
  if (!error) fs::permissions(folder, fs::perms::owner_all, error);
  if (error) return tl::unexpected(fmt::format("{}: {}", folder.string(), error.message()));
  return {};
}

}  // namespace

std::optional<fs::path> WorkingCopy::state_folder() {
  const char* state = std::getenv("XDG_STATE_HOME");
  if (state != nullptr && fs::path(state).is_absolute()) return fs::path(state) / "quell";
  const char* home = std::getenv("HOME");
  if (home != nullptr && fs::path(home).is_absolute()) return fs::path(home) / ".local" / "state" / "quell";
  return std::nullopt;
}

tl::expected<WorkingCopy, std::string> WorkingCopy::claim(const fs::path& folder, const std::string& path, Claim claim) {
  if (auto made = make_private(folder); !made) return tl::unexpected(made.error());
  std::error_code ignored;
  for (const bool holds : {true, false}) {
    if (holds && claim == Claim::empty) continue;
    for (int number = 1; number <= most_copies; ++number) {
      const fs::path file = copy_file(folder, path, number);
      if (fs::exists(file, ignored) != holds) continue;
      const int lock = take_lock(lock_of(file));
      if (lock < 0 && errno != EWOULDBLOCK)
        return tl::unexpected(fmt::format("{}: {}", lock_of(file).string(), std::strerror(errno)));
      if (lock < 0) continue;
      WorkingCopy copy(file, lock);
      // Its owner may have filled or emptied it between the look and the lock.
      if (fs::exists(file, ignored) == holds) return copy;
    }
  }
  return tl::unexpected(fmt::format("{} holds too many copies that were never saved", folder.string()));
}

WorkingCopy::WorkingCopy(WorkingCopy&& other) noexcept : file_(std::move(other.file_)), lock_(std::exchange(other.lock_, -1)) {}

WorkingCopy& WorkingCopy::operator=(WorkingCopy&& other) noexcept {
  std::swap(file_, other.file_);
  std::swap(lock_, other.lock_);
  return *this;
}

WorkingCopy::~WorkingCopy() {
  if (lock_ >= 0) ::close(lock_);
}

std::optional<Content> WorkingCopy::load() const try {
  std::ifstream stream(file_, std::ios::binary);
  if (!stream) return std::nullopt;
  const auto json = nlohmann::json::parse(stream);
  if (json.at("format").get<int>() != format_number) return std::nullopt;
  return Content{json.at("path"), json.at("text"), json.at("files"), json.at("read")};
} catch (const nlohmann::json::exception&) {
  return std::nullopt;
}

tl::expected<void, std::string> WorkingCopy::store(const Content& content) const {
  const nlohmann::json json{{"format", format_number},
                            {"path", content.path},
                            {"text", content.text},
                            {"files", content.files},
                            {"read", content.read}};
  return io::write_files(file_.parent_path(), {{file_.filename().string(), json.dump()}}, io::Durability::on_disk);
}

bool WorkingCopy::holds_something() const {
  std::error_code ignored;
  return std::filesystem::exists(file_, ignored);
}

void WorkingCopy::discard() const {
  std::error_code ignored;
  fs::remove(file_, ignored);
}

}  // namespace quell::app::server
