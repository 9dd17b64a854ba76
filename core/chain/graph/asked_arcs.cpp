#include "chain/graph/asked_arcs.h"

#include "chain/graph/keep_best.h"
#include "chain/graph/plugs.h"
#include "chain/part/head.h"
#include "chain/part/run_ends.h"

#include <algorithm>
#include <functional>

namespace riserun::chain {

using catalog::BinItem;
using catalog::Part;

namespace {

std::vector<std::uint32_t> ranks_of(const FoldedCatalog& folded, const Move& move) {
  std::vector<std::uint32_t> ranks{folded.rank(move.part)};
  for (const PartId plug : move.plugs) ranks.push_back(folded.rank(plug));
  return ranks;
}

/// One way to close a spare port.
struct Plug {
  PartId part;
  Measures own;
  std::optional<std::uint32_t> counted_item;  // row of the bin that it is counted against
};

class AskedMoves {
 public:
  AskedMoves(const FoldedCatalog& folded, const Rules& rules, const GraphExtras& extras)
      : folded_(folded),
        catalog_(folded.catalog()),
        rules_(rules),
        extras_(extras),
        ends_(run_ends(catalog_, rules.request())) {}

  std::vector<Move> all();

 private:
  void add_bought(PartId part);
  void add_from_bin(std::uint32_t item);
  void add_ways(PartId part, const std::function<void(Move&)>& pay);
  void add_with_plugs(Move move);
  std::vector<std::vector<Plug>> plugs_for(const Move& move) const;
  std::vector<Plug> plugs_of_port(const Part& host, std::size_t port) const;
  void consider_plug(std::vector<Plug>& counted, std::vector<Plug>& best, PartId id) const;
  bool better(const Plug& a, const Plug& b) const;
  bool keeps_the_line() const { return chain::keeps_the_line(rules_.request().order) && !extras_.all_measures; }
  void fold();

  int bin_count(PartId part, std::uint32_t& item) const;

  const FoldedCatalog& folded_;
  const Catalog& catalog_;
  const Rules& rules_;
  const GraphExtras& extras_;
  const RunEnds ends_;
  std::vector<Move> moves_;
};

std::vector<Move> AskedMoves::all() {
  for (const PartId part : rules_.needed_parts())
    if (rules_.admits(part) && !catalog_.part(part).remnant && (rules_.buyable(part) || extras_.special_order_is_wish))
      add_bought(part);
  const std::vector<BinItem>& items = rules_.request().bin.items;
  for (std::uint32_t item = 0; item < items.size(); ++item)
    if (items[item].count > 0 && rules_.admits(items[item].part)) add_from_bin(item);
  fold();
  return std::move(moves_);
}

void AskedMoves::add_bought(PartId part) {
  add_ways(part, [&](Move& move) { move.own.wishes += rules_.buyable(part) && !extras_.purchase_is_wish ? 0 : 1; });
}

void AskedMoves::add_from_bin(std::uint32_t item) {
  add_ways(rules_.request().bin.items[item].part, [&](Move& move) {
    move.own.cents = 0;
    move.own.buy = 0;
    if (extras_.counted[item]) move.bin_uses.push_back({item, 1});
  });
}

void AskedMoves::add_ways(PartId id, const std::function<void(Move&)>& pay) {
  const Part& part = catalog_.part(id);
  const std::uint8_t groups = rules_.groups_of(id);
  if (groups == 0 && !goes_in_unasked(catalog_, rules_.request(), part)) return;
  if (extras_.every_length && has_no_one_length(catalog_, part)) return;  // comes at the length that it takes up
  for (std::size_t enter = 0; enter < part.ports.size(); ++enter) {
    for (std::size_t leave = 0; leave < part.ports.size(); ++leave) {
      if (enter == leave || !rules_.admits_way(part, enter, leave)) continue;
      Move move = bought_move(catalog_, rules_.request(), id, enter, leave);
      move.groups = groups;
      pay(move);
      if (extras_.all_measures || rules_.request().order == Order::loss)
        move.own.nanometres = own_head(catalog_, move, rules_.request().flow);
      add_with_plugs(std::move(move));
    }
  }
}

void AskedMoves::add_with_plugs(Move move) {
  const std::vector<std::vector<Plug>> choices = plugs_for(move);
  std::vector<Move> made{std::move(move)};
  for (const std::vector<Plug>& plugs : choices) {
    std::vector<Move> longer;
    for (const Move& shorter : made) {
      for (const Plug& plug : plugs) {
        Move& next = longer.emplace_back(shorter);
        next.plugs.push_back(plug.part);
        next.own += plug.own;
        if (!plug.counted_item) continue;
        const auto same = std::find_if(next.bin_uses.begin(), next.bin_uses.end(),
                                       [&](const BinUse& use) { return use.item == *plug.counted_item; });
        if (same == next.bin_uses.end())
          next.bin_uses.push_back({*plug.counted_item, 1});
        else
          same->count += 1;
      }
    }
    made = std::move(longer);
  }
  moves_.insert(moves_.end(), std::make_move_iterator(made.begin()), std::make_move_iterator(made.end()));
}

std::vector<std::vector<Plug>> AskedMoves::plugs_for(const Move& move) const {
  const Part& host = catalog_.part(move.part);
  std::vector<std::vector<Plug>> choices;
  for (std::size_t port = 0; port < host.ports.size(); ++port)
    if (port != move.enter && port != move.leave) choices.push_back(plugs_of_port(host, port));
  return choices;
}

bool AskedMoves::better(const Plug& a, const Plug& b) const {
  // Where all measures count: what is in the bin costs nothing and is not bought, so that no order sees it otherwise.
  const auto goodness = [&](const Plug& plug) {
    const Order order = rules_.request().order;
    const Cost cost =
        extras_.all_measures ? Cost{{plug.own.wishes, plug.own.buy, plug.own.cents, 0, 0}} : cost_of(order, plug.own);
    return std::tuple(cost, rest_of(order, plug.own), folded_.rank(plug.part));
  };
  return goodness(a) < goodness(b);
}

// The best plug that no count holds back, where material counts the best of each make, and beside it each plug that is
// counted: which of them is best depends on what the rest of the chain takes from the bin.
std::vector<Plug> AskedMoves::plugs_of_port(const Part& host, std::size_t port) const {
  std::vector<Plug> plugs;
  std::vector<Plug> best;
  for (const PartId id : plugs_of(rules_, host.ports[port].type, host.material_at(port)))
    consider_plug(plugs, best, id);
  plugs.insert(plugs.end(), best.begin(), best.end());
  return plugs;
}

int AskedMoves::bin_count(PartId part, std::uint32_t& item) const {
  const std::vector<BinItem>& items = rules_.request().bin.items;
  for (item = 0; item < items.size(); ++item)
    if (items[item].part == part) return items[item].count;
  return 0;
}

void AskedMoves::consider_plug(std::vector<Plug>& counted, std::vector<Plug>& best, PartId id) const {
  const Part& part = catalog_.part(id);
  Plug plug{id, {}, {}};
  plug.own.parts = 1;
  if (keeps_the_line()) add_plugging(catalog_, ends_, part.ports[0].type, plug.own);
  std::uint32_t item = 0;
  const bool in_bin = bin_count(id, item) > 0;
  if (in_bin && extras_.counted[item]) {
    counted.push_back(plug);
    counted.back().counted_item = item;
  }
  if (!in_bin || extras_.counted[item]) {
    if (!rules_.buyable(id) && !extras_.special_order_is_wish) return;
    plug.own.cents = part.price.weight();
    plug.own.buy = 1;
    plug.own.wishes = rules_.buyable(id) && !extras_.purchase_is_wish ? 0 : 1;
  }
  const auto like = std::find_if(best.begin(), best.end(), [&](const Plug& other) {
    return !keeps_the_line() || make_of(catalog_, other.part) == make_of(catalog_, id);
  });
  if (like == best.end())
    best.push_back(plug);
  else if (better(plug, *like))
    *like = plug;
}

// Of moves that differ in nothing a search looks at, the best is enough. Counted ones are kept as they are.
void AskedMoves::fold() {
  const Order order = rules_.request().order;
  // Where material counts, those that differ in it alone end up side by side.
  const auto key = [&, this](const Move& m) {
    return std::tuple(m.enter_type, m.leave_type, m.closes, m.bow, m.only_for_need, m.groups, m.no_grip,
                      extras_.counts_bushings && m.bushing, extras_.every_length ? shape_of(m) : Shape{},
                      m.enter_material, m.leave_material, m.enter_bore, m.leave_bore,
                      keeps_the_line() ? makes_of(catalog_, m) : std::vector<Make>{},
                      keeps_the_line() ? m.own.other_kinds : 0, keeps_the_line() && parts_metals(catalog_, m));
  };
  const auto goodness = [&](const Move& m) {
    return std::tuple(cost_of(order, m.own), rest_of(order, m.own), ranks_of(folded_, m), m.enter, m.leave);
  };
  const auto counted = std::partition(moves_.begin(), moves_.end(), [](const Move& m) { return m.bin_uses.empty(); });
  if (extras_.all_measures) {
    std::vector<Move> kept(std::make_move_iterator(counted), std::make_move_iterator(moves_.end()));
    moves_.erase(counted, moves_.end());
    std::stable_sort(moves_.begin(), moves_.end(), [&](const Move& a, const Move& b) { return key(a) < key(b); });
    for (auto from = moves_.begin(); from != moves_.end();) {
      const auto to = std::find_if(from, moves_.end(), [&](const Move& m) { return key(m) != key(*from); });
      const std::size_t first = kept.size();
      kept.insert(kept.end(), from, to);
      keep_undominated(folded_, kept, first, extras_.counts_bushings);
      from = to;
    }
    moves_ = std::move(kept);
    return;
  }
  moves_.erase(keep_best(moves_.begin(), counted, key, goodness), counted);
}

}  // namespace

void keep_undominated(const FoldedCatalog& folded, std::vector<Move>& moves, std::size_t first, bool counts_bushings) {
  const auto begin = moves.begin() + static_cast<std::ptrdiff_t>(first);
  const auto goodness = [&](const Move& m) {
    return std::tuple(side_by_side(m.own), m.own.drawbacks, ranks_of(folded, m), m.enter, m.leave);
  };
  if (moves.size() - first > 1)
    std::sort(begin, moves.end(), [&](const Move& a, const Move& b) { return goodness(a) < goodness(b); });
  std::size_t kept = first;
  for (std::size_t row = first; row < moves.size(); ++row) {
    const bool beaten = std::any_of(begin, moves.begin() + static_cast<std::ptrdiff_t>(kept), [&](const Move& m) {
      if (counts_bushings && m.bushing && !moves[row].bushing) return false;
      return no_worse(side_by_side(m.own), side_by_side(moves[row].own));
    });
    if (beaten) continue;
    if (kept != row) moves[kept] = std::move(moves[row]);
    ++kept;
  }
  moves.resize(kept);
}

std::vector<Move> asked_moves(const FoldedCatalog& folded, const Rules& rules, const GraphExtras& extras) {
  return AskedMoves(folded, rules, extras).all();
}

}  // namespace riserun::chain
