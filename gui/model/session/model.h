// The job being edited, its plan and its files, for the window: commands go in, states come out. All work is done on
// threads of its own; nothing here makes the caller wait but settle(). Every function is for one thread, the window's.
#pragma once

#include "catalog/words/port_notation.h"
#include "gui/model/canvas/view_state.h"
#include "gui/model/session/alternatives.h"
#include "gui/model/session/command.h"
#include "gui/model/session/job_state.h"

#include <cstdint>
#include <filesystem>
#include <map>
#include <memory>
#include <string>
#include <string_view>
#include <variant>
#include <vector>

namespace riserun::gui {

struct Setup {
  std::shared_ptr<const catalog::Catalog> catalog;
  std::filesystem::path state_folder;  // recent files and copies for recovery; empty: state_folder() of state_folder.h
};

class Model {
 public:
  /// Starts with the starter job, which is planned at once.
  explicit Model(Setup setup);
  /// Writes the side file, and a copy for recovery when something is unsaved and was not given up.
  ~Model();
  Model(const Model&) = delete;
  Model& operator=(const Model&) = delete;

  // ---- once a frame
  /// Picks up what is ready. True: something changed.
  bool poll();
  /// Waits until every act is done and the plan is of the job as it stands. For tests and for leaving.
  void settle();

  // ---- what is shown
  const JobState& job() const { return *job_; }
  const PlanState& plan() const { return plan_; }
  /// As last set with SetView.
  const ViewState& view() const { return view_; }
  /// The unit system that is shown: the view's, otherwise the job's.
  quantity::UnitSystem units() const;
  /// What has happened since the last call.
  std::vector<Notice> take_notices();
  /// The shipped catalog; a plan has its own.
  const catalog::Catalog& catalog() const { return *setup_.catalog; }
  std::variant<catalog::MadePort, catalog::NotationError> read_port(std::string_view text) const;

  /// The other chains of a connection, of the plan that is shown; nullptr: not worked out yet.
  const Alternatives* alternatives(const std::string& connection) const;
  /// Newest first; files that are gone are left out.
  const std::vector<std::filesystem::path>& recent_files() const { return recent_; }
  const std::vector<Recovery>& recoveries() const { return recoveries_; }

  // ---- what is asked
  /// Done in the order in which they come, later; what has come of them, poll() picks up. Only the view is set at once.
  void post(Command command);
  /// Works out the other chains of a connection of the plan that is shown. Asked again for the same plan it does
  /// nothing.
  void work_out_alternatives(const std::string& connection);

 private:
  struct Threads;
  bool take_plan();

  Setup setup_;
  std::shared_ptr<const JobState> job_;
  PlanState plan_;
  ViewState view_;
  std::vector<Notice> notices_;
  std::vector<std::filesystem::path> recent_;
  std::vector<Recovery> recoveries_;
  std::vector<std::unique_ptr<const Alternatives>> alternatives_;  // the newest of each connection
  std::map<std::string, std::uint64_t> asked_;                     // revision for which each was asked
  catalog::PortNotation notation_;
  std::unique_ptr<Threads> threads_;
};

}  // namespace riserun::gui
