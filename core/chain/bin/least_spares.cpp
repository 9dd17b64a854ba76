#include "chain/bin/least_spares.h"

#include "chain/bin/part_multisets.h"
#include "chain/bin/set_cover.h"
#include "chain/build/assemble.h"
#include "chain/search/best_chain.h"

#include <algorithm>
#include <set>

namespace riserun::chain {

namespace {

std::vector<PartId> each_once(const std::vector<PartId>& parts) {
  std::vector<PartId> once;
  for (const PartId part : parts)
    if (std::find(once.begin(), once.end(), part) == once.end()) once.push_back(part);
  return once;
}

/// The bin and the cart, without the one piece that is missing.
catalog::Bin left_without(const Chosen& chosen, std::optional<PartId> missing) {
  catalog::Bin bin = chosen.request.bin;
  for (catalog::BinItem& item : bin.items) item.count = std::max(item.count, 0);
  for (const PartId part : bought_parts(chosen.chain)) bin.add(part);
  if (missing) bin.take(*missing);
  return bin;
}

class LeastSpares {
 public:
  LeastSpares(const FoldedCatalog& folded, const std::vector<Chosen>& chosen, std::size_t most_together)
      : folded_(folded), chosen_(chosen), most_together_(static_cast<int>(most_together)) {
    for (const Chosen& one : chosen_) rules_.emplace_back(folded.catalog(), one.request);
  }

  Spares find();

 private:
  void add_stock_outs(std::size_t row, const PartClasses& classes);
  std::optional<Chain> stand_in(const StockOut& out) const;
  void add_to(std::vector<PartId>& parts, PartId part) const;
  std::vector<PartId> parts_of(const Pieces& pieces, const PartClasses& classes) const;

  const FoldedCatalog& folded_;
  std::vector<Chosen> chosen_;
  int most_together_ = 0;
  std::vector<Rules> rules_;
  std::vector<StockOut> outs_;
  std::vector<std::vector<Pieces>> ways_;  // beside outs_: spares of which each makes up for the part
};

// What a chain needs beyond what is left makes up for the missing part; sets that hold another such set add nothing.
void LeastSpares::add_stock_outs(std::size_t row, const PartClasses& classes) {
  const std::vector<PartId> bought = each_once(bought_parts(chosen_[row].chain));
  if (bought.empty()) return;
  std::vector<int> there(classes.count(), 0);
  for (const catalog::BinItem& item : left_without(chosen_[row], {}).items) there[classes.of(item.part)] += item.count;
  const std::vector<Pieces> chains = part_multisets(rules_[row], classes, there, most_together_);
  for (const PartId missing : bought) {
    --there[classes.of(missing)];
    std::set<std::pair<int, Pieces>> smallest_first;
    for (const Pieces& chain : chains) {
      Pieces further = beyond(chain, there);
      const int count = count_in(further);
      if (count <= most_together_) smallest_first.emplace(count, std::move(further));
    }
    ++there[classes.of(missing)];
    std::vector<Pieces>& ways = ways_.emplace_back();
    for (const auto& [count, further] : smallest_first) {
      const bool more = std::any_of(ways.begin(), ways.end(),
                                    [&further = further](const Pieces& less) { return is_within(less, further); });
      if (!more) ways.push_back(further);
    }
    StockOut out;
    out.chosen = row;
    out.missing = missing;
    const std::uint32_t own = classes.of(missing);
    out.only_itself = ways == std::vector<Pieces>{{{own, 1}}} && classes.size(own) == 1;
    outs_.push_back(std::move(out));
  }
}

std::optional<Chain> LeastSpares::stand_in(const StockOut& out) const {
  ChainRequest request = chosen_[out.chosen].request;
  request.bin = left_without(chosen_[out.chosen], out.missing);
  for (const PartId spare : out.spares) request.bin.add(spare);
  request.not_sold.assign(folded_.catalog().parts().size(), true);
  const std::optional<Route> route = best_chain(folded_, request);
  if (!route) return std::nullopt;
  return assemble(folded_.catalog(), request, route->moves);
}

void LeastSpares::add_to(std::vector<PartId>& parts, PartId part) const {
  if (std::find(parts.begin(), parts.end(), part) != parts.end()) return;
  const auto by_id = [&](PartId a, PartId b) { return folded_.rank(a) < folded_.rank(b); };
  parts.insert(std::upper_bound(parts.begin(), parts.end(), part, by_id), part);
}

std::vector<PartId> LeastSpares::parts_of(const Pieces& pieces, const PartClasses& classes) const {
  std::vector<PartId> parts;
  for (const auto& [row, count] : pieces)
    parts.insert(parts.end(), static_cast<std::size_t>(count), classes.cheapest(row));
  std::sort(parts.begin(), parts.end(), [&](PartId a, PartId b) { return folded_.rank(a) < folded_.rank(b); });
  return parts;
}

Spares LeastSpares::find() {
  const PartClasses classes(folded_, rules_);
  for (std::size_t row = 0; row < chosen_.size(); ++row) add_stock_outs(row, classes);
  std::vector<CoverPiece> pieces;
  for (std::uint32_t row = 0; row < classes.count(); ++row)
    pieces.push_back(
        {folded_.catalog().part(classes.cheapest(row)).price.weight(), folded_.rank(classes.cheapest(row))});
  const Pieces least = least_cover(ways_, pieces);
  Spares spares;
  spares.parts = parts_of(least, classes);
  for (std::size_t i = 0; i < outs_.size(); ++i) {
    outs_[i].spares = parts_of(first_covering(ways_[i], least, pieces), classes);
    // The search has the last word: should it know a rule that classes do not, one more of the same is always right.
    if (std::optional<Chain> chain = stand_in(outs_[i])) {
      outs_[i].stand_in = std::move(*chain);
    } else {
      outs_[i].stand_in = chosen_[outs_[i].chosen].chain;
      outs_[i].spares = {outs_[i].missing};
      add_to(spares.parts, outs_[i].missing);
    }
  }
  for (const PartId part : spares.parts) spares.price += folded_.catalog().part(part).price;
  spares.stock_outs = std::move(outs_);
  return spares;
}

}  // namespace

Spares least_spares(const FoldedCatalog& folded, const std::vector<Chosen>& chosen, std::size_t most_together) {
  return LeastSpares(folded, chosen, most_together).find();
}

}  // namespace riserun::chain
