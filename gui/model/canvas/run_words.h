// Where the words of a run stand: each part's own beside it with a line to it, or its name in a list under the picture.
#pragma once

#include "gui/model/canvas/placed_run.h"

namespace riserun::gui {

/// What is drawn of it, without words.
Box bounds_of(const RunBlock& block);

/// Puts title and words beside an upright run, over or under a level one, or in a list under it.
void place_words(RunBlock& block, const WordSizes& words, const Stance& stance);

/// ... of an upright run that leads straight on to another port: between the two.
void place_words_between_ends(RunBlock& block, const WordSizes& words);

}  // namespace riserun::gui
