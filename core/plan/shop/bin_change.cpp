#include "plan/shop/bin_change.h"

#include <algorithm>

namespace riserun::plan {

namespace {

Length length_of(const catalog::Part& part) {
  Length sum{};
  for (const catalog::Port& port : part.ports) sum += port.reach;
  return sum;
}

/// The part of the catalog that a piece is of.
std::optional<PartId> whole_of(const Catalog& catalog, const catalog::Part& part) {
  return catalog.find_part(part.id.substr(0, part.id.find("/piece-")));
}

void add_ends(const Catalog& catalog, const chain::Run& run, const std::optional<Length>& each, BinChange& change) {
  for (const chain::RunPart& link : run.parts) {
    const catalog::Part& part = catalog.part(link.part);
    if (!part.cut_to_length || part.threaded_when_cut) continue;
    if (link.from_bin && !part.remnant) continue;  // of a roll
    const std::optional<Length> cut = link.cut_length ? link.cut_length : each;
    const std::optional<PartId> whole = whole_of(catalog, part);
    if (!cut || !whole) continue;
    const Length end = length_of(part) * static_cast<double>(link.pieces) - *cut;
    if (end >= kShortestPiece) change.pieces.push_back({*whole, end});
  }
}

}  // namespace

BinChange change_by(const Plan& plan) {
  BinChange change;
  for (const ListItem& item : plan.list.from_bin) change.counts.push_back({item.id, -item.quantity});
  for (const ConnectionPlan& connection : plan.connections)
    if (connection.run() != nullptr) add_ends(*plan.catalog, *connection.run(), connection.hose_length, change);
  return change;
}

}  // namespace riserun::plan
