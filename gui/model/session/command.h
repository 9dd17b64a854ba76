// What the window asks of the model, as values: an act on the job, a step back, a file. Model::post takes one, the
// workshop carries it out on its thread; nothing stands between the two, so that a new command is a struct here and
// its case in workshop.cpp.
#pragma once

#include "gui/model/canvas/view_state.h"
#include "gui/model/edit/act.h"
#include "gui/model/session/job_state.h"

#include <filesystem>
#include <string>
#include <variant>

namespace riserun::gui {

/// A refused act changes nothing and leaves a notice or, of a SetValue, a wrong entry.
struct Perform {
  Act act;
  bool goes_on = false;  // the same hand movement as the act before, so that undo takes both back as one
};

struct Undo {};
struct Redo {};

/// Forgets what was typed wrongly into a field.
struct GiveUpEntry {
  JobPath at;
};

/// For the view alone: no act, no undo.
struct SetView {
  ViewState view;
};

/// Another job in place of this one. Refused while work is not saved, unless that is to be discarded: then it and its
/// copy go when the other one is open.
struct StartNew {
  bool discard = false;
  std::string text{};  // of the new job; empty: the starter job
};
struct Open {
  std::filesystem::path file;
  bool discard = false;
};
/// Refused while the job does not load. A file that was changed on disk meanwhile is not written over but by SaveAs.
struct Save {};
struct SaveAs {
  std::filesystem::path file;
};
/// Reads the file again after it was changed on disk; one step of undo.
struct Reload {};
/// Leaves what is on disk be: the next save writes over it.
struct KeepMine {};
/// Unsaved work is given up: no copy for recovery stays behind.
struct GiveUpUnsaved {};
/// Opens the copy as unsaved work on its file.
struct Recover {
  Recovery copy;
  bool discard = false;  // as of Open
};
struct Forget {
  Recovery copy;
};

using Command = std::variant<Perform, Undo, Redo, GiveUpEntry, SetView, StartNew, Open, Save, SaveAs, Reload, KeepMine,
                             GiveUpUnsaved, Recover, Forget>;

}  // namespace riserun::gui
