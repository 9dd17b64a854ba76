// Every number of the job, edited where it stands.
#pragma once

#include "gui/model/edit/fields.h"
#include "gui/views/scene/scene.h"
#include "gui/views/sheets/entry.h"

#include <cstdint>
#include <map>
#include <string>
#include <vector>

namespace riserun::views {

/// The field that is to have the cursor once it is drawn.
struct CursorWish {
  gui::JobPath at;           // empty: none
  std::uint64_t not_in = 0;  // first revision of the document that is being left
};

struct MeasurementsState {
  std::map<gui::JobPath, FieldText> fields;
  std::map<gui::JobPath, FieldText> drawn_fields;  // those that stand in the elevation
  bool with_elevation = false;                     // the five things stand over the groups, and not in them
  std::string sought;                              // words of the measurements that are shown; empty: all
  std::vector<gui::FieldGroup> groups;
  std::uint64_t groups_of = 0;            // revision
  std::map<gui::JobPath, float> heights;  // of groups, px, as last drawn
  gui::JobPath focused_group;             // whose field was typed into last
  CursorWish cursor;
  gui::JobPath then;  // the field that is to have it in the next frame; empty: none
};

/// The entry that is drawn next gets the cursor if it is wished there.
void place_cursor(const Scene& scene, const MeasurementsState& state, const gui::JobPath& at);
/// Enter leads from the entry that was drawn last to what is asked for next, as Tab does; from the drawing Tab leads
/// into that order, too.
void lead_on(MeasurementsState& state, const gui::JobPath& at, bool in_drawing);
/// After the sheet was drawn: the wish is fulfilled, or there is no such entry.
void forget_cursor(const Scene& scene, MeasurementsState& state);

Requests draw_measurements(const Scene& scene, MeasurementsState& state);

}  // namespace riserun::views
