// The catalog as a plain weighted graph for other people's searches: one arc for each way through each part that may be
// used unasked, one for each pair of ends that go together. A chain between two ports is a path between two nodes.
#pragma once

#include "catalog/catalog.h"

#include <cstdint>
#include <optional>
#include <vector>

namespace riserun::bench {

/// A whole number that a double holds exactly: parts first, then cents.
using Weight = std::int64_t;
inline constexpr Weight kOnePart = 1'000'000'000;

struct PartArc {
  std::uint32_t from = 0;
  std::uint32_t to = 0;
  Weight weight = 0;  // 0: a joint
};

/// Four nodes for each port type: an open end, such a port as something that goes onto an open end, and the same two of
/// parts that no wrench can hold, which only go where the other side is turned.
struct PartGraph {
  std::uint32_t nodes = 0;
  std::vector<PartArc> arcs;
};

inline std::uint32_t open_end(catalog::PortTypeId type) { return 4 * type.row; }
inline std::uint32_t entered(catalog::PortTypeId type) { return 4 * type.row + 1; }

/// Stocked connectors with two ports; what a request without further wishes may use.
PartGraph part_graph(const catalog::Catalog& catalog);

/// Least weight of a path; nullopt: there is none.
using Distance = std::optional<Weight>;

}  // namespace riserun::bench
