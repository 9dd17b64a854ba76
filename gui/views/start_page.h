// What stands in the window while no job is open: a new one, the recent ones, the examples.
#pragma once

#include "gui/views/scene/scene.h"

#include <cstddef>
#include <cstdint>
#include <filesystem>
#include <optional>
#include <string>
#include <vector>

namespace riserun::views {

struct Example {
  std::filesystem::path file;
  std::string name;  // of the job
  std::string said;  // the first sentence of its comments
};

/// What is clicked, or walked to by arrows and Tab.
struct StartCard {
  std::string id;
  int column = 0;
};

struct StartState {
  bool shown = false;
  std::uint64_t over = 0;  // first revision of the document that it stands in front of; 0: none yet
  std::optional<std::vector<Example>> examples;  // once read
  std::vector<StartCard> cards;                  // as last drawn
  std::size_t marked = 0;                        // row of cards that Enter opens
  bool has_keys = false;                         // nothing stands before it that they are for
};

/// Whether it is in front: it goes when another document is opened or begun.
bool is_in_front(StartState& state, const gui::Model& model);

/// Whether it stands in front of entries that are in no file yet.
bool can_go_on(const gui::Model& model);

Requests draw_start_page(const Scene& scene, StartState& state);

/// The examples that came with the program, by name; none where they are gone.
std::vector<Example> read_examples(const std::filesystem::path& folder);

}  // namespace riserun::views
