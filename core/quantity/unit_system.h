// The two systems of units that a shop writes and reads in.
#pragma once

namespace riserun::quantity {

enum class UnitSystem { inch, metric };

}  // namespace riserun::quantity
