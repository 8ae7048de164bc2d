#include "quell/io/files.h"

#include <fcntl.h>
#include <fmt/format.h>
#include <unistd.h>

#include <cerrno>
#include <cstring>
#include <fstream>
#include <set>
#include <system_error>

namespace quell::io {
namespace {

namespace fs = std::filesystem;

/// Temporaries that vanish unless they were renamed, and folders that vanish again if this call made them in vain.
class Temporaries {
 public:
  Temporaries() = default;
  Temporaries(const Temporaries&) = delete;
  Temporaries& operator=(const Temporaries&) = delete;
  ~Temporaries() {
    std::error_code ignored;
    for (const fs::path& file : files_) fs::remove(file, ignored);
    for (auto folder = folders_.rbegin(); !kept_ && folder != folders_.rend(); ++folder) fs::remove(*folder, ignored);
  }
  void add_file(const fs::path& file) { files_.push_back(file); }
  void add_folder(const fs::path& folder) { folders_.push_back(folder); }
  void keep() { kept_ = true; }

 private:
  std::vector<fs::path> files_;
  std::vector<fs::path> folders_;
  bool kept_ = false;
};

std::string reason(const std::error_code& error) {
  return error.message();
}

/// Makes `folder` and its parents, remembering those that were not there.
tl::expected<void, std::string> make_folder(const fs::path& folder, Temporaries& temporaries) {
  std::vector<fs::path> missing;
  std::error_code error;
  for (fs::path at = folder; !at.empty() && !fs::exists(at, error); at = at.parent_path()) missing.push_back(at);
  for (auto at = missing.rbegin(); at != missing.rend(); ++at) {
    if (fs::create_directory(*at, error)) temporaries.add_folder(*at);
    if (error) return tl::unexpected<std::string>(fmt::format("cannot make the folder {}: {}", at->string(), reason(error)));
  }
  if (!folder.empty() && !fs::is_directory(folder, error))
    return tl::unexpected<std::string>(fmt::format("{} is not a folder", folder.string()));
  return {};
}

fs::path temporary_name(const fs::path& target) {
  fs::path name = target;
  name += ".quell-part";
  return name;
}

/// Waits until the disk has what was written to the file, or the names in the folder.
bool reached_disk(const fs::path& path) {
  const int descriptor = ::open(path.c_str(), O_RDONLY | O_CLOEXEC);
  if (descriptor < 0) return false;
  const bool good = ::fsync(descriptor) == 0;
  ::close(descriptor);
  return good;
}

/// Where a link points, so that the file is replaced and not the link.
fs::path link_target(const fs::path& path) {
  std::error_code error;
  const fs::path real = fs::is_symlink(path, error) ? fs::canonical(path, error) : path;
  return error ? path : real;
}

tl::expected<void, std::string> write_temporary(const fs::path& target, const std::string& text, Durability durability,
                                                Temporaries& temporaries) {
  std::error_code error;
  if (fs::is_directory(target, error))
    return tl::unexpected<std::string>(fmt::format("cannot write {}: it is a directory", target.string()));
  const fs::path name = temporary_name(target);
  std::ofstream stream(name, std::ios::binary | std::ios::trunc);
  if (!stream) return tl::unexpected<std::string>(fmt::format("cannot write {}: {}", target.string(), std::strerror(errno)));
  temporaries.add_file(name);
  stream.write(text.data(), static_cast<std::streamsize>(text.size()));
  stream.close();
  if (!stream) return tl::unexpected<std::string>(fmt::format("cannot write {}: {}", target.string(), std::strerror(errno)));
  if (const auto there = fs::status(target, error); fs::is_regular_file(there))
    fs::permissions(name, there.permissions(), error);
  if (durability == Durability::on_disk && !reached_disk(name))
    return tl::unexpected<std::string>(fmt::format("cannot write {}: {}", target.string(), std::strerror(errno)));
  return {};
}

/// Files are named from within the folder: no absolute path, no step upwards.
bool stays_inside(const std::string& name) {
  const fs::path path(name);
  if (name.empty() || path.is_absolute()) return false;
  for (const fs::path& part : path)
    if (part == "..") return false;
  return true;
}

}  // namespace

tl::expected<void, std::string> write_files(const fs::path& folder, const std::vector<FileText>& files, Durability durability) {
  Temporaries temporaries;
  if (auto made = make_folder(folder, temporaries); !made) return made;
  for (const FileText& file : files) {
    if (!stays_inside(file.name))
      return tl::unexpected<std::string>(fmt::format("'{}' is not a name inside the folder", file.name));
    const fs::path target = link_target(folder / file.name);
    if (auto made = make_folder(target.parent_path(), temporaries); !made) return made;
    if (auto written = write_temporary(target, file.text, durability, temporaries); !written) return written;
  }
  for (const FileText& file : files) {
    std::error_code error;
    const fs::path target = link_target(folder / file.name);
    fs::rename(temporary_name(target), target, error);
    if (error) return tl::unexpected<std::string>(fmt::format("cannot write {}: {}", target.string(), reason(error)));
    temporaries.keep();
    if (durability == Durability::on_disk && !reached_disk(target.parent_path().empty() ? "." : target.parent_path()))
      return tl::unexpected<std::string>(fmt::format("cannot write {}: {}", target.string(), std::strerror(errno)));
  }
  return {};
}

}  // namespace quell::io
