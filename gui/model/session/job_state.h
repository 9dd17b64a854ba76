// The job being edited as the views see it: values that are never changed once handed out.
#pragma once

#include "gui/model/text/job_texts.h"
#include "plan/plan.h"
#include "quantity/input_error.h"

#include <cstdint>
#include <filesystem>
#include <map>
#include <memory>
#include <optional>
#include <string>
#include <vector>

namespace riserun::gui {

/// How the file on disk stands to the one that was read or saved last.
enum class OnDisk { none, same, changed, gone };

struct FileState {
  std::filesystem::path path;  // empty: not saved yet
  bool unsaved = false;        // the text is not what was read or saved last
  OnDisk on_disk = OnDisk::none;
};

/// A value of the job's text.
struct WrittenValue {
  std::string text;  // quotes resolved
  int line = 0;      // 1-based
  int column = 0;    // 1-based, in characters
};

/// A wrong entry: what was typed into a field, and why it is not in the job.
struct WrongEntry {
  std::string written;
  std::string reason;  // as the command would say it
};

/// After the last act. Each act makes a new one with a higher revision.
struct JobState {
  std::uint64_t revision = 0;
  std::uint64_t first_revision = 0;  // of this document: older ones were of another
  std::string text;
  std::shared_ptr<const plan::Job> job;         // of this text; nullptr: it does not load
  std::vector<quantity::Problem> problems;      // then, why not: each with line and column
  std::map<JobPath, WrittenValue> values;       // every scalar of the text; empty when it is no YAML
  std::map<JobPath, WrongEntry> wrong_entries;  // by field; gone once the field is set right or given up
  std::optional<std::string> undo_name;         // of the act that undo would take back; none: nothing to undo
  std::optional<std::string> redo_name;
  FileState file;
};

/// The plan that is shown.
struct PlanState {
  std::shared_ptr<const plan::Plan> plan;  // the last good one; nullptr: none yet
  std::uint64_t revision = 0;              // of the job that it was made from
  bool current = false;                    // it is of the job as it stands, and no entry is wrong
  bool working = false;                    // a newer one is being worked out
};

/// Something that happened and is to be told: an act that was refused, a file that could not be saved.
struct Notice {
  enum class Kind { done, refused } kind = Kind::done;
  std::string text;                           // "Saved bench.yaml"
  std::vector<quantity::Problem> problems{};  // with line and column, where it has any
  std::optional<std::uint64_t> of{};          // of an act: the revision that came of it, for as long as that stands
};

/// A job that was being edited when the program ended without saving it.
struct Recovery {
  std::filesystem::path file;      // of the copy
  std::filesystem::path job_file;  // empty: it had none
  std::string name;                // of the job, or of its file
  std::int64_t saved_at = 0;       // seconds since 1970
};

}  // namespace riserun::gui
