// What is written beside the things on the canvas, and the room that it takes.
#pragma once

#include "gui/model/canvas/run_block.h"
#include "gui/views/scene/scene.h"

#include <string>
#include <vector>

namespace riserun::views {

// Points of words at a zoom of 1.
inline constexpr float kPartWords = 13.0F;
inline constexpr float kVesselWords = 13.0F;
inline constexpr float kListWide = 170.0F;   // points of the list under a run among many
inline constexpr float kWordsWide = 118.0F;  // points of the column beside an upright run

/// `1 x 3/4 hex bushing`, `Reservoir`.
std::string title_of(const plan::Plan& plan, const gui::Node& node);
/// What the bin or the store has to do with it: `in stock`, `buy $2.95`.
std::string source_words(const plan::Plan& plan, const gui::Node& node);

PartWords words_beside(const plan::Plan& plan, const gui::Sketch& sketch, std::size_t node, UnitSystem units);

/// `water up: 4 parts, $31.20`.
std::string title_of_run(const plan::Plan& plan, const gui::Sketch& sketch, std::size_t connection);

/// `1/4 MNPT and 1/4 FNPT: sealant`.
std::string title_of_joint(const plan::Plan& plan, const gui::Sketch& sketch, const gui::Link& link);

/// What stands in a vessel: its name and measures.
std::string vessel_words(const plan::Plan& plan, const gui::Node& node, UnitSystem units);

/// Of the whole plan, in lines that suit the canvas.
CanvasTexts canvas_texts(const plan::Plan& plan, const gui::Sketch& sketch, const Fonts& fonts, float scale,
                         UnitSystem units);

}  // namespace riserun::views
