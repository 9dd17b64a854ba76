#include "chain/part/wetted_area.h"

#include "chain/part/move.h"

#include <cmath>
#include <numbers>

namespace riserun::chain {

namespace {

constexpr double kTelling = 10.0;

}  // namespace

Area wetted_area(const Catalog& catalog, const catalog::Part& part, std::size_t enter, std::size_t leave) {
  const double bore = 0.5 * (in_metres(port_bore(catalog, part, enter)) + in_metres(port_bore(catalog, part, leave)));
  return square_metres(std::numbers::pi * bore * in_metres(body_length(catalog, part, enter, leave)));
}

AreaEffect effect_of_areas(Area anode, Area cathode) {
  const double small = in_square_metres(anode);
  const double large = in_square_metres(cathode);
  if (!(small > 0.0) || !(large > 0.0) || (std::isinf(small) && std::isinf(large))) return AreaEffect::none;
  if (large >= kTelling * small) return AreaEffect::worse;
  return small >= kTelling * large ? AreaEffect::milder : AreaEffect::none;
}

}  // namespace riserun::chain
