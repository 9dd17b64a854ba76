#include "chain/ask/span.h"

#include <cmath>

namespace riserun::chain {

using quantity::in_metres;
using quantity::metres;

Length Span::aside() const { return metres(std::hypot(in_metres(offset), in_metres(roll))); }

}  // namespace riserun::chain
