#include "report/file/write_file.h"

#include "quantity/error_codes.h"
#include "quantity/input_error.h"

#include <fcntl.h>
#include <signal.h>
#include <stdio.h>
#include <sys/stat.h>
#include <unistd.h>

#include <cerrno>
#include <charconv>
#include <cstring>
#include <filesystem>
#include <optional>
#include <string_view>
#include <utility>

namespace riserun::report {

namespace {

namespace fs = std::filesystem;

[[noreturn]] void refuse(const std::string& file, const std::string& why) {
  throw quantity::InputError({{file, 0, 0, why, "", std::string(quantity::mistake::kFileNotWritten)}});
}

[[noreturn]] void refuse_taken(const std::string& file) {
  refuse(file, "is there already; nothing is written over another file");
}

/// Closes what it was given, and takes an unfinished file away, whatever happens.
class Unfinished {
 public:
  Unfinished(int descriptor, fs::path name) : descriptor_(descriptor), name_(std::move(name)) {}
  ~Unfinished() {
    if (descriptor_ >= 0) ::close(descriptor_);
    if (!name_.empty()) ::unlink(name_.c_str());
  }
  Unfinished(const Unfinished&) = delete;
  Unfinished& operator=(const Unfinished&) = delete;

  /// Whether all is on the disk; else errno says why.
  bool fill(const std::string& text, bool flush) {
    for (std::size_t written = 0; written < text.size();) {
      const ssize_t count = ::write(descriptor_, text.data() + written, text.size() - written);
      if (count < 0 && errno == EINTR) continue;
      if (count < 0) return false;
      written += static_cast<std::size_t>(count);
    }
    if (flush && ::fsync(descriptor_) != 0) return false;
    return ::close(std::exchange(descriptor_, -1)) == 0;
  }

  /// Whether it has the file's name now.
  bool becomes(const fs::path& file, Overwrite overwrite) {
    if (overwrite == Overwrite::yes) {
      if (::rename(name_.c_str(), file.c_str()) != 0) return false;
      name_.clear();
      return true;
    }
    if (::renameat2(AT_FDCWD, name_.c_str(), AT_FDCWD, file.c_str(), RENAME_NOREPLACE) == 0) {
      name_.clear();
      return true;
    }
    // A file system that cannot do this may still know two names of one file.
    return errno == EINVAL && ::link(name_.c_str(), file.c_str()) == 0;
  }

 private:
  int descriptor_;
  fs::path name_;  // empty: nothing is to be taken away
};

/// Before and behind the number of the process in the name of an unfinished file.
std::string unfinished_start(const fs::path& file) { return "." + file.filename().string().substr(0, 200) + "."; }
constexpr std::string_view kUnfinishedEnd = ".unfinished";

/// Beside the file, as only a rename within a folder is all or nothing.
fs::path unfinished_name(const fs::path& file) {
  return file.parent_path() / (unfinished_start(file) + std::to_string(::getpid()) + std::string(kUnfinishedEnd));
}

/// The number of the process that was to finish the file; nullopt: its name is no such name.
std::optional<pid_t> process_of(const std::string& name, const std::string& start) {
  if (!name.starts_with(start) || !name.ends_with(kUnfinishedEnd)) return std::nullopt;
  pid_t number = 0;
  const char* const end = name.data() + name.size() - kUnfinishedEnd.size();
  const auto read = std::from_chars(name.data() + start.size(), end, number);
  return read.ec == std::errc() && read.ptr == end && number > 0 ? std::optional(number) : std::nullopt;
}

/// Those of a program that was killed while it wrote the same file; what still runs keeps its own.
void take_away_unfinished(const fs::path& file) {
  std::error_code ignored;
  const fs::path folder = file.has_parent_path() ? file.parent_path() : fs::path(".");
  for (fs::directory_iterator entry(folder, ignored), end; entry != end; entry.increment(ignored)) {
    const std::optional<pid_t> process = process_of(entry->path().filename().string(), unfinished_start(file));
    if (process && (*process == ::getpid() || (::kill(*process, 0) != 0 && errno == ESRCH)))
      ::unlink(entry->path().c_str());
  }
}

void write_in_place(const std::string& file, const std::string& text) {
  Unfinished open(::open(file.c_str(), O_WRONLY | O_CLOEXEC), {});
  if (!open.fill(text, false)) refuse(file, std::string("cannot be written: ") + std::strerror(errno));
}

}  // namespace

void write_file(const std::string& name, const std::string& text, Overwrite overwrite) {
  struct stat old {};
  const bool is_there = ::lstat(name.c_str(), &old) == 0;
  const bool is_link = is_there && S_ISLNK(old.st_mode);
  if (is_there && overwrite == Overwrite::no) refuse_taken(name);
  const bool leads_somewhere = ::stat(name.c_str(), &old) == 0;
  if (leads_somewhere && S_ISDIR(old.st_mode)) refuse(name, "this is a folder, not a file");
  if (leads_somewhere && !S_ISREG(old.st_mode)) return write_in_place(name, text);
  std::error_code failed;
  const fs::path target = is_link ? fs::weakly_canonical(name, failed) : fs::path(name);
  if (failed) refuse(name, "cannot be written: " + failed.message());
  const fs::path unfinished = unfinished_name(target);
  take_away_unfinished(target);
  const int descriptor = ::open(unfinished.c_str(), O_WRONLY | O_CREAT | O_EXCL | O_CLOEXEC, 0666);
  if (descriptor < 0) refuse(name, std::string("cannot be made: ") + std::strerror(errno));
  Unfinished made(descriptor, unfinished);
  if (leads_somewhere) ::fchmod(descriptor, old.st_mode & 07777);
  const bool done = made.fill(text, true) && made.becomes(target, overwrite);
  if (!done && errno == EEXIST) refuse_taken(name);
  if (!done) refuse(name, std::string("cannot be written: ") + std::strerror(errno));
}

}  // namespace riserun::report
