#include "plan/shop/bin_change.h"

#include "catalog/load/load.h"
#include "plan/stage/inputs.h"

#include <algorithm>

namespace riserun::plan {

namespace {

/// The bin that the part comes out of; of what is bought the first.
std::size_t bin_of(const Plan& plan, PartId part) {
  const std::vector<catalog::NamedBin>& bins = plan.job.bins;
  for (const ListItem& item : plan.list.from_bin)
    for (const BinPlace& place : item.lies_in)
      for (std::size_t row = 0; row < bins.size(); ++row)
        if (item.part == part && bins[row].name == place.bin) return row;
  return 0;
}

void add_ends(const Plan& plan, const chain::Run& run, const std::optional<Length>& each,
              std::vector<BinChange>& changes) {
  const Catalog& catalog = *plan.catalog;
  for (const chain::RunPart& link : run.parts) {
    const catalog::Part& part = catalog.part(link.part);
    if (!part.cut_to_length || part.threaded_when_cut) continue;
    if (link.from_bin && !part.remnant) continue;  // of a roll
    const std::optional<Length> cut = link.cut_length ? link.cut_length : each;
    const std::optional<PartId> whole = catalog::sold_part_of(catalog, part);
    if (!cut || !whole) continue;
    const Length end = straight_length(part) * static_cast<double>(link.pieces) - *cut;
    if (end >= kShortestPiece) changes[link.from_bin ? bin_of(plan, link.part) : 0].pieces.push_back({*whole, end});
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
    if (connection.run() != nullptr) add_ends(plan, *connection.run(), connection.hose_length, changes);
  return changes;
}

}  // namespace riserun::plan
