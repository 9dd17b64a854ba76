#include "chain/bin/allocate.h"

#include "chain/answers/order_instead.h"
#include "chain/bin/split.h"
#include "chain/build/assemble.h"
#include "chain/build/span_run.h"
#include "chain/search/best_chain.h"
#include "chain/search/bin_use.h"
#include "chain/search/tie_key.h"
#include "chain/tree/best_tree.h"

#include <algorithm>
#include <map>
#include <memory>

namespace riserun::chain {

namespace {

struct ServedRow {
  Order order;
  catalog::Bin most;
  Demand demand;
  std::shared_ptr<const Single> best;
};

}  // namespace

struct Served::Book : std::vector<ServedRow> {};

namespace {

class Allocating {
 public:
  Allocating(const PreparedCatalog& prepared, const std::vector<Demand>& demands, const catalog::Bin& bin, Order order,
             Served& served)
      : prepared_(prepared),
        folded_(prepared.folded()),
        demands_(demands),
        bin_(bin),
        order_(order),
        served_(served.book()) {
    for (catalog::BinItem& item : bin_.items) item.count = std::max(item.count, 0);
  }

  Allocation run();

 private:
  Split whole_bin();
  std::optional<std::size_t> contested(const Split& split) const;
  void part(Split split, std::size_t item);
  void narrow(Split& split);
  void put(Split split);
  const Single* single(std::size_t demand, const Counts& most);
  Single best_of(std::size_t demand, const Counts& most) const;
  bool make_chain(const ChainRequest& request, Single& made) const;
  bool make_span(const ChainRequest& request, const Span& span, Single& made) const;
  void try_tree(const AssemblyRequest& asked, const Counts& most, Single& best) const;
  AssemblyRequest with_bin(AssemblyRequest request, catalog::Bin bin) const;
  void read_tree(const BranchTree& tree, Single& made) const;
  void take(PartId part, Single& made) const;
  void try_end(std::size_t demand, std::optional<std::size_t> end, bool from_bin, Counts most, Single& best) const;
  catalog::Bin bin_of(const Counts& counts) const;
  Allotment allotment(std::size_t demand, const Single& single) const;

  const PreparedCatalog& prepared_;
  const FoldedCatalog& folded_;
  const std::vector<Demand>& demands_;
  catalog::Bin bin_;
  Order order_;
  Served::Book& served_;
  std::map<std::pair<std::size_t, Counts>, std::shared_ptr<const Single>> known_;
  std::vector<Split> open_;  // a heap: the best stands first
  std::size_t splits_ = 0;
};

Allocation Allocating::run() {
  Allocation allocation;
  std::vector<bool> was_contested(bin_.items.size(), false);
  put(whole_bin());
  const Cost bound = open_.front().sum;
  const Rest bound_of_rest = open_.front().rest;
  const int unmet = open_.front().unmet;
  const int makes = open_.front().makes;
  while (true) {
    std::pop_heap(open_.begin(), open_.end(), is_worse);
    Split split = std::move(open_.back());
    open_.pop_back();
    const std::optional<std::size_t> item = contested(split);
    if (item) {
      was_contested[*item] = true;
      part(std::move(split), *item);
      continue;
    }
    allocation.of.reserve(demands_.size());
    for (std::size_t i = 0; i < demands_.size(); ++i) allocation.of.push_back(allotment(i, *split.singles[i]));
    allocation.proof.at_bound =
        split.sum == bound && split.rest == bound_of_rest && split.unmet == unmet && split.makes == makes;
    break;
  }
  for (std::size_t i = 0; i < bin_.items.size(); ++i)
    if (was_contested[i]) allocation.proof.contested.push_back(bin_.items[i].part);
  allocation.proof.splits = splits_;
  return allocation;
}

Split Allocating::whole_bin() {
  Counts all;
  for (const catalog::BinItem& item : bin_.items) all.push_back(item.count);
  Split split;
  split.most = Shares(demands_.size(), all);
  split.least = Shares(demands_.size(), Counts(all.size(), 0));
  split.singles.resize(demands_.size());
  narrow(split);
  return split;
}

std::optional<std::size_t> Allocating::contested(const Split& split) const {
  Counts taken(bin_.items.size(), 0);
  for (const Single* single : split.singles)
    for (std::size_t item = 0; item < taken.size(); ++item) taken[item] += single->taken[item];
  for (std::size_t item = 0; item < taken.size(); ++item)
    if (taken[item] > bin_.items[item].count) return item;
  return std::nullopt;
}

// Either the demand does with less of the part than it would take, or the others share what it leaves.
void Allocating::part(Split split, std::size_t item) {
  std::size_t demand = 0;
  while (split.singles[demand]->taken[item] <= split.least.of(demand)[item]) ++demand;
  const int taken = split.singles[demand]->taken[item];
  Split less = split;
  less.most.of(demand)[item] = taken - 1;
  narrow(less);
  put(std::move(less));
  Split keeps = std::move(split);
  keeps.least.of(demand)[item] = taken;
  int promised = 0;
  for (std::size_t i = 0; i < demands_.size(); ++i) promised += keeps.least.of(i)[item];
  const int left = bin_.items[item].count - promised;
  if (left < 0) return;
  for (std::size_t i = 0; i < demands_.size(); ++i) {
    int& most = keeps.most.of(i)[item];
    most = std::min(most, left + keeps.least.of(i)[item]);
  }
  narrow(keeps);
  put(std::move(keeps));
}

void Allocating::put(Split split) {
  open_.push_back(std::move(split));
  std::push_heap(open_.begin(), open_.end(), is_worse);
}

// Serves the demands that had more than they may take now.
void Allocating::narrow(Split& split) {
  split.number = splits_++;
  split.unmet = 0;
  split.makes = 0;
  split.sum = {};
  split.rest = {};
  for (std::size_t i = 0; i < demands_.size(); ++i) {
    const Single*& now = split.singles[i];
    const std::span<const int> most = split.most.of(i);
    const bool still = now != nullptr && std::equal(now->taken.begin(), now->taken.end(), most.begin(),
                                                    [](int taken, int at_most) { return taken <= at_most; });
    if (!still) now = single(i, Counts(most.begin(), most.end()));
    split.unmet += now->met ? 0 : 1;
    split.makes += now->make;
    split.sum = split.sum + now->cost;
    split.rest = split.rest + now->rest;
  }
}

const Single* Allocating::single(std::size_t demand, const Counts& most) {
  std::shared_ptr<const Single>& known = known_[{demand, most}];
  if (known) return known.get();
  const catalog::Bin bin = bin_of(most);
  for (const ServedRow& before : served_)
    if (before.order == order_ && before.most == bin && before.demand == demands_[demand])
      return (known = before.best).get();
  known = std::make_shared<const Single>(best_of(demand, most));
  served_.push_back({order_, bin, demands_[demand], known});
  return known.get();
}

Single Allocating::best_of(std::size_t demand, const Counts& most) const {
  Single best;
  best.taken.assign(most.size(), 0);
  const std::vector<EndPart>& ends = demands_[demand].ends;
  if (demands_[demand].branched)
    try_tree(*demands_[demand].branched, most, best);
  else if (ends.empty())
    try_end(demand, std::nullopt, false, most, best);
  for (std::size_t end = 0; end < ends.size(); ++end) {
    for (std::size_t item = 0; item < most.size(); ++item) {
      if (bin_.items[item].part != ends[end].part || most[item] == 0) continue;
      Counts rest = most;
      --rest[item];
      try_end(demand, end, true, std::move(rest), best);
    }
    if (ends[end].on_sale) try_end(demand, end, false, most, best);
  }
  return best;
}

bool Allocating::make_chain(const ChainRequest& request, Single& made) const {
  std::optional<Route> route = best_chain(prepared_, request);
  if (!route) return false;
  // The graph counts the make-up of the two outer ends to the length; between ends that makes a difference.
  Measures ends;
  ends.micrometres = -folded_.insertion_micrometres(request.from.type) - folded_.insertion_micrometres(request.to.type);
  made.cost = route->cost + cost_of(order_, ends);
  made.rest = route->rest;
  if (!request.bin.items.empty()) made.taken = uses_of_bin(request, route->moves);
  made.moves = std::move(route->moves);
  return true;
}

bool Allocating::make_span(const ChainRequest& request, const Span& span, Single& made) const {
  std::optional<SpanChoice> choice = best_span(folded_, request, span);
  if (!choice) return false;
  made.make = choice->before_cost;
  made.off = choice->route.off;
  made.cost = choice->route.cost;
  made.rest = choice->route.rest;
  // The distance settles the length, and what is weighed then is weighed as for the fewest parts.
  const auto& tuple = made.cost.tuple;
  if (order_ == Order::length) made.cost = {{tuple[0], 0, tuple[1], tuple[2], tuple[3]}};
  if (!request.bin.items.empty()) made.taken = uses_of_bin(request, choice->route.moves);
  made.moves = choice->route.moves;
  made.choice = std::move(choice);
  return true;
}

void Allocating::take(PartId part, Single& made) const {
  for (std::size_t item = 0; item < made.taken.size(); ++item)
    if (bin_.items[item].part == part) ++made.taken[item];
}

// From the base outwards, port by port: targets sort before parts, as AssemblyRequest states for its ties.
void Allocating::read_tree(const BranchTree& tree, Single& made) const {
  const auto add = [&](PartId part, std::size_t port) {
    made.key.ids.push_back((folded_.rank(part) + 1) * static_cast<std::uint32_t>(kMostPorts) +
                           static_cast<std::uint32_t>(port));
    take(part, made);
  };
  if (tree.target_kind) {
    made.key.ids.push_back(static_cast<std::uint32_t>(*tree.target_kind));
    if (tree.end.device.valid()) add(tree.end.device, tree.end.port);
    return;
  }
  add(tree.move.part, tree.move.enter);
  std::size_t next_plug = 0;
  std::size_t next_way = 0;
  for (std::size_t port = 0; port < folded_.catalog().part(tree.move.part).ports.size(); ++port) {
    if (port == tree.move.enter) continue;
    if (tree.move.leads_on(port))
      read_tree(tree.follows[next_way++], made);
    else
      add(tree.move.plugs[next_plug++], 0);
  }
}

AssemblyRequest Allocating::with_bin(AssemblyRequest request, catalog::Bin bin) const {
  request.rules.order = order_;
  request.rules.bin = std::move(bin);
  return request;
}

void Allocating::try_tree(const AssemblyRequest& asked, const Counts& most, Single& best) const {
  std::optional<BestTree> found = best_tree(folded_, with_bin(asked, bin_of(most)));
  if (!found) return;
  Single made;
  made.met = true;
  made.cost = found->cost;
  made.rest = found->rest;
  made.taken.assign(most.size(), 0);
  read_tree(found->tree, made);
  for (std::size_t item = 0; item < most.size(); ++item) made.taken[item] = std::min(made.taken[item], most[item]);
  made.tree = std::move(found->tree);
  best = std::move(made);
}

void Allocating::try_end(std::size_t demand, std::optional<std::size_t> end, bool from_bin, Counts most,
                         Single& best) const {
  Single made;
  made.met = true;
  made.end = end;
  made.end_from_bin = from_bin;
  made.taken.assign(most.size(), 0);
  if (demands_[demand].request) {
    ChainRequest request = *demands_[demand].request;
    request.order = order_;
    request.bin = bin_of(most);
    if (end) request.to = demands_[demand].ends[*end].end;
    if (std::none_of(most.begin(), most.end(), [](int count) { return count > 0; })) request.bin.items.clear();
    if (!(demands_[demand].span ? make_span(request, *demands_[demand].span, made) : make_chain(request, made))) return;
    for (std::size_t i = 0; i < made.taken.size(); ++i) made.taken[i] = std::min(made.taken[i], most[i]);
    made.key = tie_key(folded_, made.moves);
  }
  if (end) {
    const PartId part = demands_[demand].ends[*end].part;
    Measures measures;
    measures.parts = 1;
    measures.cents = from_bin ? 0 : folded_.catalog().part(part).price.weight();
    measures.buy = from_bin ? 0 : 1;
    made.cost = made.cost + cost_of(order_, measures);
    made.rest = made.rest + rest_of(order_, measures);
    if (from_bin) take(part, made);
  }
  if (!best.met || compare(made, best) < 0) best = std::move(made);
}

catalog::Bin Allocating::bin_of(const Counts& counts) const {
  catalog::Bin bin = bin_;
  for (std::size_t item = 0; item < counts.size(); ++item) bin.items[item].count = counts[item];
  return bin;
}

Allotment Allocating::allotment(std::size_t demand, const Single& single) const {
  Allotment allotment;
  allotment.met = single.met;
  allotment.given = bin_of(single.taken);
  if (!single.met) return allotment;
  allotment.end = single.end;
  allotment.end_from_bin = single.end_from_bin;
  if (single.tree)
    allotment.run = assemble(folded_.catalog(), with_bin(*demands_[demand].branched, allotment.given), *single.tree);
  if (!demands_[demand].request) return allotment;
  ChainRequest request = *demands_[demand].request;
  request.order = order_;
  request.bin = allotment.given;
  if (single.end) request.to = demands_[demand].ends[*single.end].end;
  if (single.end_from_bin) request.bin.take(demands_[demand].ends[*single.end].part);
  if (demands_[demand].span) {
    allotment.run = span_run(folded_, request, *demands_[demand].span, *single.choice);
  } else {
    allotment.run = assemble(folded_.catalog(), request, single.moves);
    add_order_instead(prepared_, request, *allotment.run);
  }
  return allotment;
}

}  // namespace

Served::Served() : book_(std::make_unique<Book>()) {}
Served::~Served() = default;
std::size_t Served::size() const { return book_->size(); }

Allocation allocate(const PreparedCatalog& prepared, const std::vector<Demand>& demands, const catalog::Bin& bin,
                    Order order, Served* before) {
  Served none;
  return Allocating(prepared, demands, bin, order, before != nullptr ? *before : none).run();
}

}  // namespace riserun::chain
