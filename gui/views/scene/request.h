// What a sheet asks for while it is drawn. Drawing changes neither the job nor the desk around it: the desk gathers
// what was asked and carries it out once the frame is drawn.
#pragma once

#include "gui/model/session/command.h"
#include "gui/views/scene/command.h"
#include "quantity/quantities.h"

#include <filesystem>
#include <iterator>
#include <string>
#include <utility>
#include <variant>
#include <vector>

namespace riserun::views {

/// Sets the hand of the clock and lets it rest there.
struct Seek {
  quantity::Time to{};
};

/// The other chains of a connection of the plan that is shown.
struct WorkOutAlternatives {
  std::string connection;
};

/// Puts the plan's papers into a folder.
struct ExportTo {
  std::filesystem::path folder;
};

/// The program ends after this frame.
struct Leave {
  bool only_if_saved = false;
};

/// Goes on to another job, after what was asked about this one; the model refuses where work would be lost.
struct GoOn {
  gui::Command to;
};

/// The start page, in front of a job that has no file yet. It stays as it is.
struct BackToStart {};
/// From there to the job again.
struct BackToJob {};

/// A part on the plumbing sheet, chosen.
struct ShowPart {
  std::string key;  // of its node
};

/// The measurements of that name, with the cursor in one of them.
struct ShowField {
  std::string label;
  gui::JobPath at{};
};

using Request = std::variant<gui::Command, Do, Seek, WorkOutAlternatives, ExportTo, Leave, GoOn, BackToStart, BackToJob,
                             ShowPart, ShowField>;
using Requests = std::vector<Request>;

inline void append(Requests& to, Requests more) {
  to.insert(to.end(), std::make_move_iterator(more.begin()), std::make_move_iterator(more.end()));
}

}  // namespace riserun::views
