// A value of the job as a field that is typed into.
#pragma once

#include "gui/model/edit/fields.h"
#include "gui/views/scene/scene.h"

#include <optional>
#include <string>

namespace riserun::views {

struct FieldText {
  std::string text;
  bool held = false;  // being typed into
  bool whole = true;  // all of it is seen in its box
};

/// As it stands in the job's text; empty: it does not.
std::string written_value(const gui::JobState& job, const gui::JobPath& at);
/// The units that the job's file names, which its bare numbers are in.
std::optional<UnitSystem> own_units(const gui::JobState& job);

/// As much of the words as the next box shows, with dots where that is not all; notes it for what it is.
/// @param besides  px of the box that are not for words: the arrow of a list
std::string in_box(const Scene& scene, const std::string& words, float besides);
/// So wide that the box shows all of the words, where there is room for that; px.
float box_for(const Scene& scene, const std::string& words, float least, float besides);

/// The field, which asks for the change once it is left. Its item is ImGui's last.
Requests type_entry(const Scene& scene, FieldText& entry, const gui::JobPath& at, gui::FieldKind kind,
                    const std::string& in_its_place);

}  // namespace riserun::views
