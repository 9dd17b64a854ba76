#include "gui/model/session/state_folder.h"

#include "gui/model/session/job_file.h"

#include <fcntl.h>
#include <sys/file.h>
#include <unistd.h>

#include <algorithm>
#include <cstdlib>
#include <fstream>
#include <system_error>

namespace riserun::gui {

namespace {

namespace fs = std::filesystem;

constexpr std::string_view kFirstWords = "# unsaved work on: ";
constexpr int kMostCopies = 1000;

fs::path recent_list(const fs::path& state) { return state / "recent"; }
fs::path window_file(const fs::path& state) { return state / "window"; }
fs::path habits_file(const fs::path& state) { return state / "view.yaml"; }
fs::path copies_folder(const fs::path& state) { return state / "unsaved"; }

fs::path lock_of(fs::path copy) { return copy.replace_extension(".lock"); }

std::vector<std::string> lines_of(const std::string& text) {
  std::vector<std::string> lines;
  for (std::size_t at = 0; at < text.size();) {
    const std::size_t end = std::min(text.find('\n', at), text.size());
    if (end > at) lines.push_back(text.substr(at, end - at));
    at = end + 1;
  }
  return lines;
}

std::vector<fs::path> listed(const fs::path& state) {
  const auto text = read_whole(recent_list(state));
  std::vector<fs::path> files;
  if (const auto* good = std::get_if<std::string>(&text))
    for (const std::string& line : lines_of(*good)) files.emplace_back(line);
  return files;
}

/// A descriptor that holds the lock; -1: another has it.
int lock(const fs::path& file) {
  const int descriptor = ::open(file.c_str(), O_RDWR | O_CREAT | O_CLOEXEC, 0600);
  if (descriptor < 0) return -1;
  if (::flock(descriptor, LOCK_EX | LOCK_NB) == 0) return descriptor;
  ::close(descriptor);
  return -1;
}

bool is_owned(const fs::path& copy) {
  const int descriptor = lock(lock_of(copy));
  if (descriptor >= 0) ::close(descriptor);
  return descriptor < 0;
}

/// The file name in the first line, and the text after it.
std::optional<std::pair<std::string, std::string>> split(const std::string& copy) {
  const std::size_t end = copy.find('\n');
  if (!copy.starts_with(kFirstWords) || end == std::string::npos) return std::nullopt;
  return std::pair(copy.substr(kFirstWords.size(), end - kFirstWords.size()), copy.substr(end + 1));
}

std::optional<Recovery> recovery_of(const fs::path& file) {
  const auto text = read_whole(file);
  const auto parts = std::holds_alternative<std::string>(text) ? split(std::get<std::string>(text)) : std::nullopt;
  if (!parts) return std::nullopt;
  Recovery copy;
  copy.file = file;
  copy.job_file = parts->first;
  copy.name = copy.job_file.empty() ? "a job without a file" : copy.job_file.filename().string();
  copy.saved_at = stamp_of(file).changed_at / 1'000'000'000;
  return copy;
}

}  // namespace

fs::path state_folder() {
  // The specification holds a path that is not absolute for none.
  if (const char* state = std::getenv("XDG_STATE_HOME"); state != nullptr && fs::path(state).is_absolute())
    return fs::path(state) / "riserun";
  const char* home = std::getenv("HOME");
  return home != nullptr && fs::path(home).is_absolute() ? fs::path(home) / ".local/state/riserun" : fs::path();
}

std::vector<fs::path> recent_files(const fs::path& state) {
  std::vector<fs::path> files;
  std::error_code error;
  for (const fs::path& file : listed(state))
    if (files.size() < kMostRecent && fs::is_regular_file(file, error)) files.push_back(file);
  return files;
}

void note_recent(const fs::path& state, const fs::path& file) {
  if (state.empty()) return;
  std::error_code error;
  fs::create_directories(state, error);
  const fs::path whole = fs::absolute(file, error).lexically_normal();
  if (whole.string().find('\n') != std::string::npos) return;  // the list holds a file a line
  std::vector<fs::path> files = listed(state);
  std::erase(files, whole);
  files.insert(files.begin(), whole);
  std::string text;
  for (std::size_t i = 0; i < files.size() && i < kMostRecent; ++i) text += files[i].string() + "\n";
  write_whole(recent_list(state), text);
}

ViewState habits(const fs::path& state) {
  ViewState kept;
  const auto text = read_whole(habits_file(state));
  if (const auto* good = std::get_if<std::string>(&text)) {
    const ViewState all = read_view(*good);
    kept.units = all.units;
    kept.looks = all.looks;
  }
  return kept;
}

void note_habits(const fs::path& state, const ViewState& view) {
  if (state.empty()) return;
  std::error_code error;
  fs::create_directories(state, error);
  ViewState kept;
  kept.units = view.units;
  kept.looks = view.looks;
  write_whole(habits_file(state), write_view(kept));
}

std::optional<WindowPlace> window_place(const fs::path& state) {
  constexpr int kSmallest = 200;
  constexpr int kLargest = 16384;
  std::ifstream file(window_file(state));
  WindowPlace place;
  if (!(file >> place.left >> place.top >> place.width >> place.height)) return std::nullopt;
  const auto in_range = [](int side) { return side >= kSmallest && side <= kLargest; };
  if (!in_range(place.width) || !in_range(place.height)) return std::nullopt;
  if (std::abs(place.left) > kLargest || std::abs(place.top) > kLargest) return std::nullopt;
  return place;
}

void note_window_place(const fs::path& state, const WindowPlace& place) {
  if (state.empty()) return;
  std::error_code error;
  fs::create_directories(state, error);
  write_whole(window_file(state), std::to_string(place.left) + " " + std::to_string(place.top) + " " +
                                      std::to_string(place.width) + " " + std::to_string(place.height) + "\n");
}

Copy::Copy(fs::path state) : folder_(state.empty() ? fs::path() : copies_folder(state)) {}

Copy::~Copy() {
  if (lock_ < 0) return;
  // A copy that is kept for recovery needs no lock any more; the empty file goes with it later.
  std::error_code error;
  if (!fs::exists(file_, error)) ::unlink(lock_of(file_).c_str());
  ::close(lock_);
}

bool Copy::take_number() {
  std::error_code error;
  fs::create_directories(folder_, error);
  for (int number = 1; number <= kMostCopies; ++number) {
    const fs::path file = folder_ / (std::to_string(number) + ".yaml");
    if (fs::exists(file, error)) continue;  // left by another: it waits to be recovered
    const int descriptor = lock(lock_of(file));
    if (descriptor < 0) continue;
    file_ = file;
    lock_ = descriptor;
    return true;
  }
  return false;
}

bool Copy::keep(const fs::path& job_file, const std::string& text) {
  if (folder_.empty() || (lock_ < 0 && !take_number())) return false;
  const std::string name = job_file.string();
  const std::string head = name.find('\n') == std::string::npos ? name : "";
  return !write_whole(file_, std::string(kFirstWords) + head + "\n" + text).has_value();
}

void Copy::drop() {
  if (lock_ >= 0) ::unlink(file_.c_str());
}

std::vector<Recovery> recoveries(const fs::path& state) {
  std::vector<Recovery> copies;
  std::error_code error;
  for (fs::directory_iterator entry(copies_folder(state), error), end; !error && entry != end; entry.increment(error)) {
    if (entry->path().extension() != ".yaml" || entry->path().filename().string().starts_with(".")) continue;
    if (is_owned(entry->path())) continue;
    if (auto copy = recovery_of(entry->path())) copies.push_back(std::move(*copy));
  }
  std::sort(copies.begin(), copies.end(), [](const Recovery& a, const Recovery& b) { return a.saved_at > b.saved_at; });
  return copies;
}

std::optional<std::string> text_of(const Recovery& copy) {
  const auto text = read_whole(copy.file);
  const auto parts = std::holds_alternative<std::string>(text) ? split(std::get<std::string>(text)) : std::nullopt;
  return parts ? std::optional(parts->second) : std::nullopt;
}

void remove(const Recovery& copy) {
  ::unlink(copy.file.c_str());
  ::unlink(lock_of(copy.file).c_str());
}

}  // namespace riserun::gui
