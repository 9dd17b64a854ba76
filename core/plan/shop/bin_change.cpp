#include "plan/shop/bin_change.h"

#include "catalog/load/load.h"
#include "plan/stage/inputs.h"

#include <algorithm>

namespace riserun::plan {

namespace {

void add_ends(const Catalog& catalog, const chain::Run& run, const std::optional<Length>& each, BinChange& change) {
  for (const chain::RunPart& link : run.parts) {
    const catalog::Part& part = catalog.part(link.part);
    if (!part.cut_to_length || part.threaded_when_cut) continue;
    if (link.from_bin && !part.remnant) continue;  // of a roll
    const std::optional<Length> cut = link.cut_length ? link.cut_length : each;
    const std::optional<PartId> whole = catalog::sold_part_of(catalog, part);
    if (!cut || !whole) continue;
    const Length end = straight_length(part) * static_cast<double>(link.pieces) - *cut;
    if (end >= kShortestPiece) change.pieces.push_back({*whole, end});
  }
}

}  // namespace

std::vector<BinChange> changes_by(const Plan& plan) {
  const std::vector<catalog::NamedBin>& bins = plan.job.bins;
  std::vector<BinChange> changes(bins.size());
  if (changes.empty()) return changes;
  for (const ListItem& item : plan.list.from_bin) {
    if (bins.size() == 1) changes.front().counts.push_back({item.id, -item.quantity});
    for (const BinPlace& place : item.lies_in) {
      const auto bin = std::find_if(bins.begin(), bins.end(), [&](const auto& one) { return one.name == place.bin; });
      changes[static_cast<std::size_t>(bin - bins.begin())].counts.push_back({item.id, -place.count});
    }
  }
  for (const ConnectionPlan& connection : plan.connections)
    if (connection.run() != nullptr)
      add_ends(*plan.catalog, *connection.run(), connection.hose_length, changes.front());
  return changes;
}

}  // namespace riserun::plan
