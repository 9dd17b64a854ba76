#include "plan/shop/bin_change.h"

#include "catalog/load/load.h"
#include "plan/stage/cuts.h"
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

/// How many of a row the leak test alone is for.
int for_the_test(const ListItem& item) {
  int count = 0;
  for (std::size_t row = 0; row < item.used_for.size(); ++row)
    if (item.used_for[row] == kLeakTestUse) count += item.count_for[row];
  return std::min(count, item.quantity);
}

struct Cut {
  const chain::RunPart* link = nullptr;
  Length length{};
};

/// Of the pieces of all runs; in several branches a hose has the length that the catalog sells it in.
std::vector<Cut> cuts_of(const Plan& plan) {
  std::vector<Cut> cuts;
  for (const ConnectionPlan& connection : plan.connections) {
    if (connection.run() == nullptr) continue;
    for (const chain::RunPart& link : connection.run()->parts) {
      const catalog::Part& part = plan.catalog->part(link.part);
      const std::optional<Length> length =
          link.cut_length || !part.cut_to_length ? link.cut_length : connection.hose_length;
      if (length) cuts.push_back({&link, *length});
    }
  }
  return cuts;
}

bool of_a_roll(const Catalog& catalog, const chain::RunPart& link) {
  const catalog::Part& part = catalog.part(link.part);
  return link.from_bin && part.cut_to_length && !part.remnant;
}

void add_ends(const Plan& plan, const std::vector<Cut>& cuts, std::vector<BinChange>& changes) {
  const Catalog& catalog = *plan.catalog;
  const auto add = [&](PartId from, bool from_bin, Length end, int sawn_ends) {
    const std::optional<PartId> whole = catalog::sold_part_of(catalog, catalog.part(from));
    if (whole && end >= (sawn_ends > 0 ? kShortestPipe : kShortestPiece))
      changes[from_bin ? bin_of(plan, from) : 0].pieces.push_back({*whole, end, sawn_ends});
  };
  for (const auto& [link, length] : cuts)
    if (!of_a_roll(catalog, *link))
      add(link->part, link->from_bin, offcut_of(catalog, *link, length),
          catalog.part(link->part).threaded_when_cut ? std::min(2, catalog.part(link->part).sawn_ends + 1) : 0);
  // The saw takes the riser's thread with it and leaves the other one, where there was one.
  if (const std::optional<PartId> stock = plan.riser.stock_part)
    add(*stock, plan.riser.stock_from_bin, plan.riser.riser.offcut, catalog.part(*stock).sawn_ends + 1);
}

/// What is left of hose that lies in one bin by the foot, and is no roll: the feet that are left go with those that are
/// used, and a piece stands for both.
void rolls_to_pieces(const Plan& plan, const std::vector<Cut>& cuts, std::vector<BinChange>& changes) {
  const auto is_bought = [&](PartId part) {
    return std::any_of(plan.list.buy.begin(), plan.list.buy.end(),
                       [&](const ListItem& item) { return item.part == part; });
  };
  for (const ListItem& item : plan.list.from_bin) {
    if (!item.by_the_foot || !item.part || item.lies_in.size() > 1 || is_bought(*item.part)) continue;
    const std::size_t bin = bin_of(plan, *item.part);
    const int feet = plan.job.bins[bin].bin.count_of(*item.part);
    Length left = straight_length(plan.catalog->part(*item.part)) * static_cast<double>(feet);
    for (const Cut& cut : cuts)
      if (cut.link->part == *item.part) left -= cut.length;
    if (left >= kRoll) continue;
    for (BinChange::Count& count : changes[bin].counts)
      if (count.part == item.id) count.more = -feet;
    if (left >= kShortestPiece) changes[bin].pieces.push_back({*item.part, left});
  }
}

}  // namespace

std::vector<BinChange> changes_by(const Plan& plan) {
  const std::vector<catalog::NamedBin>& bins = plan.job.bins;
  std::vector<BinChange> changes(bins.size());
  if (changes.empty()) return changes;
  for (const ListItem& item : plan.list.from_bin) {
    int stays = for_the_test(item);
    if (bins.size() == 1) changes.front().counts.push_back({item.id, stays - item.quantity, stays});
    for (auto place = item.lies_in.rbegin(); place != item.lies_in.rend(); ++place) {
      const auto bin = std::find_if(bins.begin(), bins.end(), [&](const auto& one) { return one.name == place->bin; });
      const int here = std::min(stays, place->count);
      changes[static_cast<std::size_t>(bin - bins.begin())].counts.push_back({item.id, here - place->count, here});
      stays -= here;
    }
  }
  const std::vector<Cut> cuts = cuts_of(plan);
  add_ends(plan, cuts, changes);
  rolls_to_pieces(plan, cuts, changes);
  return changes;
}

}  // namespace riserun::plan
