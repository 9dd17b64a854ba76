// What the window asks: for a file's name, for two ports, how many of a part there are, what to do with unsaved work.
#pragma once

#include "gui/views/scene/scene.h"

#include <cstddef>
#include <optional>
#include <string>

namespace riserun::views {

enum class Ask { nothing, open, save_as, export_to, leave, unsaved, connect, add_port, count_in_bin, other_choices };

/// The question that stands in front of all else, and what is typed into it.
struct QuestionState {
  Ask ask = Ask::nothing;
  bool opens = false;
  std::string answer;
  std::string answer_2;
  int choice = 0;
  std::string part;                    // catalog id that it is about; of Ask::connect: words of a device
  std::string connection;              // name
  std::size_t place = 0;               // row of the connection's parts
  std::optional<gui::Command> onward;  // another job, once the work on this one is saved or discarded

  /// Another question, with nothing typed yet but the answer.
  void put(Ask what, std::string answer = "");
};

Requests draw_questions(const Scene& scene, QuestionState& state);

}  // namespace riserun::views
