#include "plan/way.h"

namespace riserun::plan {

std::optional<Length> Way::bore() const {
  std::optional<Length> least;
  for (const WayPart& part : parts)
    if (part.bore && (!least || *part.bore < *least)) least = part.bore;
  return least;
}

}  // namespace riserun::plan
