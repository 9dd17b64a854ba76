// The job that is open: the editor, the file that it came from, and the copy that is kept while it is unsaved. Works on
// the caller's thread.
#pragma once

#include "gui/model/canvas/view_state.h"
#include "gui/model/session/editor.h"
#include "gui/model/session/job_file.h"
#include "gui/model/session/state_folder.h"

#include <filesystem>
#include <memory>
#include <optional>
#include <string>

namespace riserun::gui {

class OpenJob {
 public:
  /// The starter job, not saved yet.
  OpenJob(std::shared_ptr<const catalog::Catalog> catalog, std::filesystem::path state);

  Editor& editor() { return editor_; }
  const Editor& editor() const { return editor_; }

  /// With that text; empty: the starter job.
  void start_new(std::string text = "");
  /// A file that cannot be read leaves all as it was. One that does not load is opened, with its mistakes.
  Outcome open(const std::filesystem::path& file);
  Outcome save();
  Outcome save_as(const std::filesystem::path& file);
  /// The file as it is on disk now, as one step of undo.
  Outcome reload();
  /// The next save may write over what has changed on disk.
  void keep_mine();
  Outcome recover(const Recovery& copy);

  FileState file_state() const;
  bool is_unsaved() const { return editor_.text() != saved_text_; }
  /// True: how the file stands on disk has changed since the last look.
  bool look_at_disk();
  /// Brings the copy for recovery up to date: made while something is unsaved, gone when nothing is.
  void keep_copy();
  /// No copy of the job as it stands is kept.
  void give_up_unsaved();

  /// What the side file says; nothing where there is none.
  std::optional<ViewState> load_view() const;
  void save_view(const ViewState& view) const;

 private:
  Outcome write(const std::filesystem::path& file);

  std::filesystem::path state_;
  Editor editor_;
  std::filesystem::path file_;  // empty: not saved yet
  std::string saved_text_;
  FileStamp stamp_;  // of the file as it was read or saved
  OnDisk on_disk_ = OnDisk::none;
  std::unique_ptr<Copy> copy_;
  std::string copied_text_;
  std::optional<std::uint64_t> given_up_;  // revision of which no copy is wanted
};

/// The job and its state on disk, as the views see them.
JobState state_of(const OpenJob& job);

}  // namespace riserun::gui
