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
};

/// As it stands in the job's text; empty: it does not.
std::string written_value(const gui::JobState& job, const gui::JobPath& at);
/// The units that the job's file names, which its bare numbers are in.
std::optional<UnitSystem> own_units(const gui::JobState& job);

/// The field, which asks for the change once it is left. Its item is ImGui's last.
Requests type_entry(const Scene& scene, FieldText& entry, const gui::JobPath& at, gui::FieldKind kind,
                    const std::string& in_its_place);

}  // namespace riserun::views
