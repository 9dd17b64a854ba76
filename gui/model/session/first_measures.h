// The five things that a job cannot do without: both boxes, what stiffens the lower one, the water wanted and how high
// it is to go, and the compressor's plate.
#pragma once

#include "gui/model/edit/fields.h"
#include "gui/model/session/job_state.h"

#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace riserun::gui {

struct Measure {
  JobPath at;
  FieldKind kind;
  std::string_view label;  // "length"
  std::string_view name;   // what it is called without its thing beside it: "tank length"
  std::string_view help;   // one sentence
  bool needed = true;
};

struct Thing {
  std::string_view title;
  std::vector<Measure> measures;
};

const std::vector<Thing>& five_things();
/// What is asked for next after this one; empty after the last, and after what is not among them.
JobPath measure_after(const JobPath& at);

/// It is one of theirs.
bool is_first_measure(const JobPath& at);

/// What is wrong with a value of the job: an entry that was refused, or a mistake of the file that stands there.
std::optional<WrongEntry> wrong_at(const JobState& job, const JobPath& at);

/// The job does not load, and each of its mistakes stands at one of theirs.
bool only_first_measures_are_wrong(const JobState& job);

/// Names of those that the job still lacks.
std::vector<std::string> still_to_give(const JobState& job);

/// It lacks some of theirs, and nothing in its file is wrong but that: a key that is misspelt is a mistake, and what it
/// was to give is not asked for.
bool only_lacks_measures(const JobState& job);

/// The starter job without the five things, its comments kept.
/// @pre the catalog's part names in it are of no matter: it need not load
std::string blank_job();

}  // namespace riserun::gui
