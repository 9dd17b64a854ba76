#include "gui/views/drawing/playback.h"

namespace riserun::views {

void Playback::advance(const Timeline& timeline, Time frame) {
  if (!playing) return;
  const Time whole = timeline.whole();
  now += frame * static_cast<double>(whole / kShowLasts);
  if (now < whole) return;
  now = whole;
  playing = false;
}

}  // namespace riserun::views
