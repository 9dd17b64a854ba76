// The runs of the plan, as the canvas draws them: pipes, parts on their axis, words beside them. Three levels of
// detail: far off a run is a line with its name and count; nearer each part has its words; nearest, ports and joints
// too.
#pragma once

#include "gui/views/canvas/canvas.h"
#include "gui/views/canvas/canvas_state.h"
#include "gui/views/scene/scene.h"

namespace riserun::views {

enum class Detail { runs, parts, section };
/// By the room that letters have: below a zoom at which those of parts would be too small, runs are folded.
Detail detail_at(float zoom);

/// The pipe from a run to a vessel's port.
void paint_pipe(const Scene& scene, const Lens& lens, std::size_t link);

void paint_run(const Scene& scene, const Lens& lens, std::size_t run, const CanvasState& state, std::size_t hovered);

}  // namespace riserun::views
