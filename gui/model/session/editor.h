// The job being edited: its text, what it reads as, and the way back. Works on the caller's thread; model.h puts it on
// one of its own.
#pragma once

#include "gui/model/edit/act.h"
#include "gui/model/session/job_state.h"
#include "gui/model/text/job_texts.h"
#include "plan/job/read_job.h"
#include "plan/planning.h"

#include <memory>
#include <optional>
#include <string>
#include <vector>

namespace riserun::gui {

/// What came of an act.
struct Outcome {
  bool done = false;                          // false: nothing has changed
  std::string reason;                         // why not, a sentence
  std::vector<quantity::Problem> problems{};  // of the text as it would have been, with their places in it
};

class Editor {
 public:
  explicit Editor(std::shared_ptr<const catalog::Catalog> catalog);

  /// A text with no past: another document. `file` stands for it in messages, and files that it names are looked for
  /// beside it.
  void start(std::string text, std::filesystem::path file);
  /// The job goes by another file name; files that it names are looked for there.
  void rename(std::filesystem::path file);
  /// What would keep the text as it stands from loading, were it that file now; empty: nothing.
  std::vector<quantity::Problem> problems_as(const std::filesystem::path& file) const;
  /// A text from elsewhere, as one step of undo.
  void replace_text(std::string text, std::string name);

  /// @param goes_on  one step of undo together with the act before
  Outcome perform(const Act& act, bool goes_on = false);
  /// False: there is nothing to take back.
  bool undo();
  bool redo();
  void give_up_entry(const JobPath& path) { wrong_entries_.erase(path); }

  const std::string& text() const { return reading_.text; }
  const std::filesystem::path& file() const { return file_; }
  std::shared_ptr<const plan::Job> job() const { return reading_.job; }
  const std::vector<quantity::Problem>& problems() const { return reading_.problems; }
  std::uint64_t revision() const { return revision_; }
  /// All of it as the views see it; the file state is left to the caller.
  JobState state() const;

 private:
  /// A text and what it reads as.
  struct Reading {
    std::string text;
    std::optional<JobText> tree;           // none: it is no YAML
    std::shared_ptr<const plan::Job> job;  // nullptr: it does not load
    std::vector<quantity::Problem> problems;
  };
  struct Step {
    std::string text;      // after the act
    std::string name;      // of the act that led here
    std::string movement;  // that it may be part of; empty: of none that goes on
  };

  Reading read(std::string text) const;
  Reading read(JobText tree) const;
  void read_job_of(Reading& reading) const;
  Edited edited(const Act& act) const;
  std::shared_ptr<const plan::Plan> plan_of(const Reading& reading) const;
  static std::vector<quantity::Problem> wrong_with_value(const Act& act, const Reading& after);
  bool leads_on(const Act& act, const Reading& after) const;
  Outcome refuse(const Act& act, Outcome outcome);
  void keep(Reading reading, std::string name, std::string movement);
  void go_to(std::size_t step);

  std::shared_ptr<const catalog::Catalog> catalog_;
  // A change leaves most of a job as it was.
  mutable plan::ReadBefore before_;
  mutable plan::Planning planning_;
  std::filesystem::path file_;
  Reading reading_;
  std::vector<Step> steps_;
  std::size_t step_ = 0;  // row of steps_ that stands
  std::uint64_t revision_ = 0;
  std::uint64_t first_revision_ = 0;
  std::map<JobPath, WrongEntry> wrong_entries_;
};

}  // namespace riserun::gui
