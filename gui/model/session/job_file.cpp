#include "gui/model/session/job_file.h"

#include "catalog/yaml/limits.h"

#include <fcntl.h>
#include <signal.h>
#include <sys/stat.h>
#include <unistd.h>

#include <cerrno>
#include <charconv>
#include <cstring>
#include <fstream>
#include <system_error>
#include <utility>

namespace riserun::gui {

namespace {

namespace fs = std::filesystem;

constexpr std::string_view kUnfinished = ".saving";

FileError failed(const fs::path& file, const std::string& what, int error) {
  return {file.string() + ": " + what + ": " + std::strerror(error)};
}

/// Closes what it was given, whatever happens.
class Descriptor {
 public:
  explicit Descriptor(int number) : number_(number) {}
  ~Descriptor() {
    if (number_ >= 0) ::close(number_);
  }
  Descriptor(const Descriptor&) = delete;
  Descriptor& operator=(const Descriptor&) = delete;
  int number() const { return number_; }
  bool close() { return ::close(std::exchange(number_, -1)) == 0; }

 private:
  int number_;
};

bool write_all(int descriptor, const std::string& text) {
  for (std::size_t written = 0; written < text.size();) {
    const ssize_t count = ::write(descriptor, text.data() + written, text.size() - written);
    if (count < 0 && errno == EINTR) continue;
    if (count < 0) return false;
    written += static_cast<std::size_t>(count);
  }
  return true;
}

/// `.bench.yaml.1234.saving`: beside the file, as only a rename within a folder is all or nothing.
fs::path unfinished_name(const fs::path& file) {
  return file.parent_path() /
         ("." + file.filename().string() + "." + std::to_string(::getpid()) + std::string(kUnfinished));
}

/// Files that a killed program has left unfinished.
void sweep(const fs::path& file) {
  const std::string head = "." + file.filename().string() + ".";
  std::error_code error;
  for (fs::directory_iterator entry(file.parent_path().empty() ? "." : file.parent_path(), error), end;
       !error && entry != end; entry.increment(error)) {
    const std::string name = entry->path().filename().string();
    if (!name.starts_with(head) || !name.ends_with(kUnfinished) || name.size() <= head.size() + kUnfinished.size())
      continue;
    const char* first = name.data() + head.size();
    const char* last = name.data() + name.size() - kUnfinished.size();
    pid_t owner = 0;
    const auto [stop, wrong] = std::from_chars(first, last, owner);
    const bool is_number = wrong == std::errc() && stop == last && owner > 0;
    if (is_number && ::kill(owner, 0) != 0 && errno == ESRCH) ::unlink(entry->path().c_str());
  }
}

/// As the file that is replaced.
void keep_mode(int descriptor, const struct stat& old) {
  // The owner first: changing it may take mode bits away. Where it is not allowed, the file is the user's own.
  [[maybe_unused]] const int allowed = ::fchown(descriptor, old.st_uid, old.st_gid);
  ::fchmod(descriptor, old.st_mode & 07777);
}

void flush_folder(const fs::path& file) {
  const fs::path folder = file.parent_path().empty() ? fs::path(".") : file.parent_path();
  const Descriptor descriptor(::open(folder.c_str(), O_RDONLY | O_DIRECTORY | O_CLOEXEC));
  if (descriptor.number() >= 0) ::fsync(descriptor.number());
}

std::optional<FileError> write_unfinished(const fs::path& unfinished, const fs::path& file, const std::string& text) {
  ::unlink(unfinished.c_str());
  struct stat old {};
  const bool is_new = ::stat(file.c_str(), &old) != 0;
  // A new file gets what the user's mask leaves; until then nobody else can read what replaces a private one.
  Descriptor descriptor(::open(unfinished.c_str(), O_WRONLY | O_CREAT | O_EXCL | O_CLOEXEC, is_new ? 0666 : 0600));
  if (descriptor.number() < 0) return failed(file, "cannot be saved in this folder", errno);
  if (!is_new) keep_mode(descriptor.number(), old);
  if (!write_all(descriptor.number(), text) || ::fsync(descriptor.number()) != 0 || !descriptor.close())
    return failed(file, "cannot be saved", errno);
  return std::nullopt;
}

}  // namespace

FileStamp stamp_of(const fs::path& file) {
  struct stat status {};
  if (::stat(file.c_str(), &status) != 0) return {};
  return {true, static_cast<std::uint64_t>(status.st_dev), static_cast<std::uint64_t>(status.st_ino),
          static_cast<std::int64_t>(status.st_size),
          static_cast<std::int64_t>(status.st_mtim.tv_sec) * 1'000'000'000 + status.st_mtim.tv_nsec};
}

std::variant<std::string, FileError> read_whole(const fs::path& file) {
  std::error_code error;
  const fs::file_status status = fs::status(file, error);
  if (status.type() == fs::file_type::not_found) return FileError{file.string() + ": there is no such file"};
  if (status.type() == fs::file_type::directory) return FileError{file.string() + ": this is a folder, not a file"};
  std::ifstream stream(file, std::ios::binary);
  if (!stream) return failed(file, "cannot be opened for reading", errno);
  std::string text;
  char buffer[65536];
  while (stream.read(buffer, sizeof buffer) || stream.gcount() > 0) {
    text.append(buffer, static_cast<std::size_t>(stream.gcount()));
    if (text.size() > catalog::kLargestFile)
      return FileError{file.string() + ": larger than " + std::to_string(catalog::kLargestFile >> 20U) +
                       " MB: this is not a file for this program"};
  }
  return text;
}

std::optional<FileError> write_whole(const fs::path& name, const std::string& text) {
  std::error_code error;
  const fs::path target = fs::is_symlink(name, error) ? fs::weakly_canonical(name, error) : name;
  const fs::path file = error || target.empty() ? name : target;
  sweep(file);
  const fs::path unfinished = unfinished_name(file);
  if (auto why = write_unfinished(unfinished, file, text)) {
    ::unlink(unfinished.c_str());
    return why;
  }
  if (::rename(unfinished.c_str(), file.c_str()) != 0) {
    const int reason = errno;
    ::unlink(unfinished.c_str());
    return failed(file, "cannot be saved", reason);
  }
  flush_folder(file);
  return std::nullopt;
}

}  // namespace riserun::gui
