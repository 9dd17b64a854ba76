// The open job on a thread of its own: commands go in and are done in order, states come out. The thread also looks at
// the disk and keeps the copy for recovery while nothing else is to be done.
#pragma once

#include "gui/model/session/open_job.h"
#include "gui/model/session/planner.h"

#include <condition_variable>
#include <deque>
#include <functional>
#include <memory>
#include <mutex>
#include <optional>
#include <thread>
#include <vector>

namespace riserun::gui {

/// What has come out since it was last taken.
struct News {
  std::shared_ptr<const JobState> job;  // nullptr: as before
  std::optional<ViewState> view;        // of a file that was opened
  std::vector<Notice> notices;
  std::optional<std::vector<std::filesystem::path>> recent;
  std::optional<std::vector<Recovery>> recoveries;
};

class Workshop {
 public:
  Workshop(const Setup& setup, Planner& planner);
  /// Does what was asked, then leaves the side file and the copy for recovery as they are to be.
  ~Workshop();
  Workshop(const Workshop&) = delete;
  Workshop& operator=(const Workshop&) = delete;

  // None of these waits for work.
  void perform(Act act, bool goes_on);
  void undo();
  void redo();
  void give_up_entry(JobPath at);
  void set_view(ViewState view);
  void start_new();
  void open(std::filesystem::path file);
  void save();
  void save_as(std::filesystem::path file);
  void reload();
  void keep_mine();
  void give_up_unsaved();
  void recover(Recovery copy);
  void forget(Recovery copy);

  News take_news();
  bool is_idle() const;
  /// Waits until all is done that was asked.
  void wait() const;

 private:
  /// An act, so that it can be joined with the next one of the same movement; or anything else.
  struct Command {
    std::optional<SetValue> value;
    bool goes_on = false;
    std::function<void()> run;
  };

  void ask(Command command);
  Command next();
  void run();
  void rest();
  void perform_now(const Act& act, bool goes_on);
  void tell(const Outcome& outcome, const std::string& done);
  void show_document();
  void tell_files();
  void save_view();
  void publish();

  Setup setup_;
  Planner& planner_;
  OpenJob job_;  // the thread's alone, as are the next three
  ViewState view_;
  ViewState saved_view_;
  std::optional<PlanRequest> asked_;  // of the planner, last

  mutable std::mutex mutex_;
  mutable std::condition_variable changed_;
  std::deque<Command> commands_;
  News news_;
  bool busy_ = true;
  bool stopping_ = false;
  std::thread thread_;  // last: everything it uses is there when it starts
};

}  // namespace riserun::gui
