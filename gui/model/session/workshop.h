// The open job on a thread of its own: commands go in and are done in order, states come out. The thread also looks at
// the disk and keeps the copy for recovery while nothing else is to be done.
#pragma once

#include "gui/model/session/command.h"
#include "gui/model/session/open_job.h"
#include "gui/model/session/planner.h"

#include <condition_variable>
#include <deque>
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
  Workshop(std::shared_ptr<const catalog::Catalog> catalog, std::filesystem::path state, Planner& planner);
  /// Does what was asked, then leaves the side file and the copy for recovery as they are to be.
  ~Workshop();
  Workshop(const Workshop&) = delete;
  Workshop& operator=(const Workshop&) = delete;

  /// Does not wait for it.
  void post(Command command);

  News take_news();
  bool is_idle() const;
  /// Waits until all is done that was asked.
  void wait() const;

 private:
  /// Carries a command out: one overload for each.
  struct CarryOut;

  Command next();
  void run();
  void rest();
  void tell(const Outcome& outcome, const std::string& done);
  void tell_act(std::string text);
  void show_document();
  void tell_files();
  void save_view();
  void publish();

  std::filesystem::path state_;  // folder
  Planner& planner_;
  OpenJob job_;  // the thread's alone, as are the next four
  ViewState view_;
  ViewState saved_view_;
  ViewState habits_;                      // units and looks as last chosen, for whichever job
  std::optional<std::uint64_t> planned_;  // revision that the planner was asked for last

  mutable std::mutex mutex_;
  mutable std::condition_variable changed_;
  std::deque<Command> commands_;
  News news_;
  bool busy_ = true;
  bool stopping_ = false;
  std::thread thread_;  // last: everything it uses is there when it starts
};

}  // namespace riserun::gui
