#include "gui/views/drawing/playback.h"

namespace riserun::views {

void Playback::advance(const Timeline& timeline, Time frame) {
  if (!playing) return;
  const Time whole = timeline.whole();
  now += frame * speed;
  if (now < whole) return;
  now = whole;
  playing = false;
}

}  // namespace riserun::views
