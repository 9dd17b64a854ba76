#include "catalog/load/part_bounds.h"

#include <algorithm>

namespace riserun::catalog {

namespace {

const double kMostOfListed = 4.0;
const Length kLongestPiece = feet(100.0);

const JointSize* size_of(const Catalog& catalog, PortTypeId id) {
  if (!id.valid()) return nullptr;
  const PortType& type = catalog.port_type(id);
  for (const JointSize& size : catalog.kind(type.kind).sizes)
    if (size.size == type.size) return &size;
  return nullptr;
}

}  // namespace

quantity::Range<Length> lengths_of(const Catalog& catalog, const Part& part) {
  Length listed{};
  Length together{};
  Length longest{};
  for (const Port& port : part.ports) {
    listed += port.reach;
    const JointSize* size = size_of(catalog, port.type);
    const Length in = size != nullptr ? size->make_up() : Length{};
    together += in;
    longest = std::max(longest, in);
  }
  const Length most = part.cut_to_length ? kLongestPiece : listed * kMostOfListed;
  return {std::min(together <= listed ? together : longest, listed), most};
}

std::optional<Length> bore_below(const Catalog& catalog, PortTypeId type) {
  const JointSize* size = size_of(catalog, type);
  if (size == nullptr || !(size->outside_diameter > Length{})) return std::nullopt;
  return std::max(size->outside_diameter, size->major_diameter);
}

std::optional<Length> bore_below(const Catalog& catalog, const Part& part) {
  std::optional<Length> least;
  for (const Port& port : part.ports)
    if (const auto below = bore_below(catalog, port.type); below && (!least || *below < *least)) least = below;
  return least;
}

}  // namespace riserun::catalog
