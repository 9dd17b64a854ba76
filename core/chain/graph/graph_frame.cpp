#include "chain/graph/graph_frame.h"

#include "chain/graph/asked_arcs.h"
#include "chain/part/head.h"

#include <algorithm>
#include <numeric>

namespace riserun::chain {

namespace {

// Heads of changes of bore, each worked out once.
class BoreChanges {
 public:
  explicit BoreChanges(VolumeFlow flow) : flow_(flow) {}
  std::int64_t head(std::int64_t from, std::int64_t to) {
    if (from == to) return 0;
    const auto [found, is_new] = known_.try_emplace({from, to}, 0);
    if (is_new) found->second = change_of_bore_head(from, to, flow_);
    return found->second;
  }

 private:
  VolumeFlow flow_;
  std::map<std::pair<std::int64_t, std::int64_t>, std::int64_t> known_;
};

}  // namespace

GraphFrame::GraphFrame(const FoldedCatalog& folded, const Rules& rules, const GraphExtras& extras)
    : folded_(&folded), all_measures_(extras.all_measures) {
  const ChainRequest& request = rules.request();
  // The folding for least head tells bores apart, as all measures together must.
  const bool by_make = keeps_the_line(request.order) && !all_measures_;
  const auto classes =
      folded.classes({request.galvanic == Galvanic::avoid, by_make, all_measures_ ? Order::loss : request.order,
                      in_cubic_metres_per_second(request.flow)});
  std::vector<Move> asked = asked_moves(folded, rules, extras);
  moves_.reserve(classes->class_count() + asked.size() + extras.wished.size());  // most frames hold no more
  add_folded(*classes, rules, extras);
  for (Move& move : asked) moves_.push_back(std::move(move));
  moves_.insert(moves_.end(), extras.wished.begin(), extras.wished.end());
  if (by_make) find_alike(rules, extras);
  counts_the_bin_ = std::any_of(moves_.begin(), moves_.end(), [](const Move& m) { return !m.bin_uses.empty(); });
  make_nodes(rules);
  make_arcs(rules);
}

// Parts that a need names come by their own moves, so that meeting the need is never overlooked.
void GraphFrame::add_folded(const WayClasses& classes, const Rules& rules, const GraphExtras& extras) {
  const Catalog& catalog = folded_->catalog();
  const ChainRequest& request = rules.request();
  const auto add_best_of = [&](std::span<const Way> ways, bool special, std::optional<bool> bushing) {
    const auto best = std::find_if(ways.begin(), ways.end(), [&](const Way& way) {
      const PartId part = way.part();
      if (bushing && is_bushing(catalog, catalog.part(part)) != *bushing) return false;
      return rules.buyable(part) != special && !catalog.part(part).remnant && rules.admits(part) &&
             goes_in_unasked(catalog, request, catalog.part(part)) && rules.groups_of(part) == 0 &&
             rules.admits_way(catalog.part(part), way.enter(), way.leave());
    });
    if (best == ways.end()) return;
    Move& move = moves_.emplace_back(bought_move(catalog, request, best->part(), best->enter(), best->leave()));
    move.own.wishes = special || extras.purchase_is_wish ? 1 : 0;
    if (request.order == Order::loss) move.own.nanometres = own_head(catalog, move, request.flow);
  };
  const auto add_best = [&](std::span<const Way> ways, bool special) {
    if (!extras.counts_bushings) return add_best_of(ways, special, {});
    add_best_of(ways, special, false);
    add_best_of(ways, special, true);
  };
  for (std::size_t row = 0; row < classes.class_count(); ++row) {
    if (extras.every_length)
      add_each_length(classes.ways_of(row), rules, extras);
    else if (all_measures_)
      add_undominated(classes.ways_of(row), rules, extras);
    else
      add_best(classes.ways_of(row), false);
    if (extras.special_order_is_wish) add_best(classes.ways_of(row), true);
  }
}

// The ways stand best first, so that the first of each length is its best.
void GraphFrame::add_each_length(std::span<const Way> ways, const Rules& rules, const GraphExtras& extras) {
  const Catalog& catalog = folded_->catalog();
  const std::size_t first = moves_.size();
  for (const Way& way : ways) {
    const PartId part = way.part();
    if (has_no_one_length(catalog, catalog.part(part))) continue;  // comes at the length that it takes up
    if (!rules.buyable(part) || !rules.admits(part) || rules.groups_of(part) != 0 ||
        !goes_in_unasked(catalog, rules.request(), catalog.part(part)) ||
        !rules.admits_way(catalog.part(part), way.enter(), way.leave()))
      continue;
    Move move = bought_move(catalog, rules.request(), part, way.enter(), way.leave());
    const auto alike = [&](const Move& m) {
      return shape_of(m) == shape_of(move) && (!extras.counts_bushings || m.bushing == move.bushing);
    };
    if (std::any_of(moves_.begin() + static_cast<std::ptrdiff_t>(first), moves_.end(), alike)) continue;
    if (rules.request().order == Order::loss) move.own.nanometres = own_head(catalog, move, rules.request().flow);
    moves_.push_back(std::move(move));
  }
}

void GraphFrame::add_undominated(std::span<const Way> ways, const Rules& rules, const GraphExtras& extras) {
  const Catalog& catalog = folded_->catalog();
  const std::size_t first = moves_.size();
  for (const Way& way : ways) {
    const PartId part = way.part();
    if (!rules.buyable(part) || !rules.admits(part) || rules.groups_of(part) != 0 ||
        !goes_in_unasked(catalog, rules.request(), catalog.part(part)) ||
        !rules.admits_way(catalog.part(part), way.enter(), way.leave()))
      continue;
    Move& move = moves_.emplace_back(bought_move(catalog, rules.request(), part, way.enter(), way.leave()));
    move.own.nanometres = own_head(catalog, move, rules.request().flow);
  }
  keep_undominated(*folded_, moves_, first, extras.counts_bushings);
}

// Moves that a search before the last keys cannot tell apart stand side by side already, class by class; those of one
// class that come in every length are brought together.
void GraphFrame::find_alike(const Rules& rules, const GraphExtras& extras) {
  const Order order = rules.request().order;
  const bool by_material = rules.request().galvanic == Galvanic::avoid;
  const auto key = [&](const Move& m) {
    return std::tuple(m.enter_type, m.leave_type, m.closes, m.bow, m.only_for_need, m.groups, m.no_grip,
                      by_material ? m.enter_material : MaterialId{}, by_material ? m.leave_material : MaterialId{},
                      extras.counts_bushings && m.bushing, extras.every_length ? shape_of(m) : Shape{}, m.cut,
                      m.cut && fills_by_bending(folded_->catalog(), folded_->catalog().part(m.part)),
                      cost_of(order, m.own));
  };
  if (extras.every_length) {
    std::vector<std::pair<decltype(key(moves_.front())), Move>> sorted;
    sorted.reserve(moves_.size());
    for (Move& move : moves_) {
      auto its_key = key(move);
      sorted.emplace_back(std::move(its_key), std::move(move));
    }
    std::stable_sort(sorted.begin(), sorted.end(), [](const auto& a, const auto& b) { return a.first < b.first; });
    for (std::size_t row = 0; row < moves_.size(); ++row) moves_[row] = std::move(sorted[row].second);
  }
  alike_end_.resize(moves_.size());
  std::uint32_t first = 0;
  for (std::uint32_t row = 1; row <= moves_.size(); ++row) {
    if (row < moves_.size() && moves_[row].bin_uses.empty() && moves_[first].bin_uses.empty() &&
        key(moves_[row]) == key(moves_[first]))
      continue;
    std::fill(alike_end_.begin() + first, alike_end_.begin() + row, row);
    first = row;
  }
}

void GraphFrame::make_nodes(const Rules& rules) {
  const bool by_material = rules.request().galvanic == Galvanic::avoid;
  const bool by_bore = all_measures_ || rules.request().order == Order::loss;
  const auto node_of = [&](const Move& move) {
    return Node{move.leave_type, by_material ? move.leave_material : MaterialId{}, by_bore ? move.leave_bore : 0,
                move.no_grip, move.bow};
  };
  nodes_.reserve(moves_.size());
  for (const Move& move : moves_) nodes_.push_back(node_of(move));
  std::sort(nodes_.begin(), nodes_.end());
  nodes_.erase(std::unique(nodes_.begin(), nodes_.end()), nodes_.end());
  move_to_.reserve(moves_.size());
  first_entering_.assign(folded_->catalog().port_types().size() + 1, 0);
  for (const Move& move : moves_) {
    const auto node = std::lower_bound(nodes_.begin(), nodes_.end(), node_of(move));
    move_to_.push_back(static_cast<std::uint32_t>(node - nodes_.begin()));
  }
  for (std::uint32_t row = 0; row < moves_.size(); row = alike_end(row))
    ++first_entering_[moves_[row].enter_type.row + 1];
  std::partial_sum(first_entering_.begin(), first_entering_.end(), first_entering_.begin());
  entering_.resize(first_entering_.back());
  std::vector<std::uint32_t> next(first_entering_.begin(), first_entering_.end() - 1);
  for (std::uint32_t row = 0; row < moves_.size(); row = alike_end(row))
    entering_[next[moves_[row].enter_type.row]++] = row;
}

// Where the bore tells nodes apart for the sake of the head, all other measures see fewer nodes.
std::vector<std::uint32_t> GraphFrame::alike_but_for_bore() const {
  if (!all_measures_) return {};
  std::map<Node, std::uint32_t> rows;
  std::vector<std::uint32_t> alike;
  for (Node node : nodes_) {
    node.bore = 0;
    alike.push_back(rows.try_emplace(node, static_cast<std::uint32_t>(rows.size())).first->second);
  }
  return alike;
}

void GraphFrame::make_arcs(const Rules& rules) {
  const Catalog& catalog = folded_->catalog();
  BoreChanges changes(rules.request().flow);
  std::vector<std::uint32_t> first{0};
  std::vector<Arc> arcs;
  for (const Node& node : nodes_) {
    for (const catalog::Mate& mate : catalog.mates(node.type)) {
      for (const std::uint32_t move : moves_entering(mate.other)) {
        const std::int64_t change = node.bore > 0 ? changes.head(node.bore, moves_[move].enter_bore) : 0;
        if (const auto made = arc(rules, node, mate, move, change)) arcs.push_back(*made);
      }
    }
    first.push_back(static_cast<std::uint32_t>(arcs.size()));
  }
  arcs_ = RowGraph<Arc>(std::move(first), std::move(arcs));
}

// Lengths: what goes in at the open ends is shifted along the chain, from each joint to the part before it, so that no
// arc is negative: body >= what its own two ends put in. The sum over a chain is out by the two given ends only.
std::optional<Arc> GraphFrame::arc(const Rules& rules, const Node& open, const catalog::Mate& mate, std::uint32_t row,
                                   std::int64_t change) const {
  const Move& move = moves_[row];
  const catalog::MatingRule& rule = folded_->catalog().mating_rules()[mate.rule];
  if (!may_join(rules, open.open_end(), {move.enter_type, move.enter_material, move.no_grip}, rule))
    return std::nullopt;
  Measures measures = move.own;
  measures.micrometres += folded_->insertion_micrometres(open.type) - folded_->make_up_micrometres(open.type, mate) -
                          folded_->insertion_micrometres(move.leave_type);
  measures.nanometres += change;
  return Arc{{move.groups, move.only_for_need, move.closes || rules.joint_closes(rule, open.bow, move.bow)},
             move_to_[row],
             row,
             cost(rules, measures)};
}

}  // namespace riserun::chain
