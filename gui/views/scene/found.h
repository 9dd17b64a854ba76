// What words find: commands, parts on the canvas, fields of the measurements.
#pragma once

#include "gui/views/scene/request.h"

#include <string>
#include <vector>

namespace riserun::views {

struct Shown;

struct Found {
  std::string text;    // "Zoom to fit", "1 x 3/4 hex bushing", "inside length"
  std::string beside;  // its key, its run, its group
  Request leads_to;
};

/// Those that hold each of the words somewhere, upper and lower case alike: commands first, then parts, then fields; of
/// each the ones that begin with what was typed first. At most so many.
std::vector<Found> found_by(const std::string& words, const Shown& shown, const plan::Job* job, std::size_t most);

}  // namespace riserun::views
