// What the program remembers between runs, in the user's state folder (XDG Base Directory Specification 0.8): the files
// opened last, and copies of unsaved work.
//
// A copy is one file, `unsaved/NUMBER.yaml`, whose first line names the job's file and whose rest is the job's text,
// byte for byte. The program that owns it keeps a lock on `unsaved/NUMBER.lock`: a copy whose lock is free is one that
// its program did not live to save.
#pragma once

#include "gui/model/canvas/view_state.h"
#include "gui/model/session/job_state.h"

#include <filesystem>
#include <optional>
#include <string>
#include <vector>

namespace riserun::gui {

/// `$XDG_STATE_HOME/riserun`, otherwise `~/.local/state/riserun`; empty: there is no home.
std::filesystem::path state_folder();

inline constexpr std::size_t kMostRecent = 12;

/// Newest first; files that are gone are left out. What cannot be read is as good as none.
std::vector<std::filesystem::path> recent_files(const std::filesystem::path& state);
/// Puts the file first. A folder that cannot be written to is no hindrance to anything else.
void note_recent(const std::filesystem::path& state, const std::filesystem::path& file);

/// Unit system, for jobs that have no side file, and looks as the user set them last.
ViewState habits(const std::filesystem::path& state);
void note_habits(const std::filesystem::path& state, const ViewState& view);

/// Where the window stood on the screen, and how large it was; pixels.
struct WindowPlace {
  int left = 0, top = 0, width = 0, height = 0;
  bool operator==(const WindowPlace&) const = default;
};
/// As the program ended last; nullopt: not known, or no size that a window has.
std::optional<WindowPlace> window_place(const std::filesystem::path& state);
void note_window_place(const std::filesystem::path& state, const WindowPlace& place);

/// The copy of the job that this program has open.
class Copy {
 public:
  explicit Copy(std::filesystem::path state);
  ~Copy();
  Copy(const Copy&) = delete;
  Copy& operator=(const Copy&) = delete;

  /// Written whole, as every file. False: it could not be.
  bool keep(const std::filesystem::path& job_file, const std::string& text);
  void drop();

 private:
  bool take_number();
  std::filesystem::path folder_;
  std::filesystem::path file_;
  int lock_ = -1;
};

/// Copies that no living program owns, newest first.
std::vector<Recovery> recoveries(const std::filesystem::path& state);
/// The job's text in a copy; nullopt: it cannot be read.
std::optional<std::string> text_of(const Recovery& copy);
void remove(const Recovery& copy);

}  // namespace riserun::gui
