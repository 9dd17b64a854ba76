#include "chain/span/cut_pieces.h"

#include "chain/graph/keep_best.h"
#include "chain/part/head.h"
#include "chain/span/bow.h"

#include <algorithm>
#include <cmath>

namespace riserun::chain {

using catalog::Part;

namespace {

const Length kGrip = inches(1.0);
const Length kRack = feet(10.0);   // rigid tube comes in lengths of 10 ft
const Length kReel = feet(100.0);  // hose and PEX come off reels and in coils (both common practice)

Length deepest_joint(const Catalog& catalog, PortTypeId type) {
  Length deepest{};
  for (const catalog::Mate& mate : catalog.mates(type))
    deepest = std::max(deepest, make_up(catalog, type, mate.other, catalog.mating_rules()[mate.rule]));
  return deepest;
}

/// The same, with what the joint asks to be left bare outside.
Length deepest_with_bare(const Catalog& catalog, PortTypeId type) {
  Length deepest{};
  for (const catalog::Mate& mate : catalog.mates(type)) {
    const catalog::MatingRule& rule = catalog.mating_rules()[mate.rule];
    const catalog::Seal* seal = catalog.seal(rule.seal);
    deepest = std::max(deepest, make_up(catalog, type, mate.other, rule) + (seal ? seal->bare : Length{}));
  }
  return deepest;
}

bool may_be_bowed_in(const Catalog& catalog, PortTypeId type) {
  const auto mates = catalog.mates(type);
  return std::any_of(mates.begin(), mates.end(), [&](const catalog::Mate& mate) {
    const catalog::MatingRule& rule = catalog.mating_rules()[mate.rule];
    return rule.closing && rule.bowed;
  });
}

Length thread_length(const Catalog& catalog, PortTypeId type) {
  const catalog::JointSize* size = catalog.joint_size(catalog.port_type(type));
  return size ? size->thread_length : Length{};
}

Length as_sold(const Part& part) { return part.ports[0].reach + part.ports[1].reach; }

bool is_cut(const Part& part) { return part.cut_to_length || part.threaded_when_cut; }

std::int64_t in_joints(const Catalog& catalog, const Part& part) {
  const Length goes_in = insertion(catalog, part.ports[0].type) + insertion(catalog, part.ports[1].type);
  return in_micrometres(
      std::max(goes_in, deepest_joint(catalog, part.ports[0].type) + deepest_joint(catalog, part.ports[1].type)));
}

class CutMoves {
 public:
  CutMoves(const FoldedCatalog& folded, const Rules& rules, const Rules& asked, const std::vector<bool>& counted,
           std::int64_t aside, std::int64_t most)
      : folded_(folded), rules_(rules), asked_(asked), counted_(counted), aside_(aside), most_(most) {}

  std::vector<Move> all();

 private:
  void find_nipples();
  bool is_cut_short(const Part& part) const;
  void add(PartId part, std::size_t enter);
  void add_made_up(Move move);
  void add_lengths(Move move);
  std::int64_t least_to_bow(const Part& part) const;
  void add_between(Move move, const HoseRun& run, std::int64_t low, std::int64_t most);
  void add_priced(Move move, const Part& part);
  void fold();

  const FoldedCatalog& folded_;
  const Rules& rules_;
  const Rules& asked_;
  const std::vector<bool>& counted_;
  const std::int64_t aside_;
  const std::int64_t most_;
  std::vector<Move> moves_;
  std::vector<std::pair<PortTypeId, PortTypeId>> nipples_;  // what the straight pieces of stock that are let in join
};

std::pair<PortTypeId, PortTypeId> joined_by(const Part& part) {
  return std::minmax(part.ports[0].type, part.ports[1].type);
}

void CutMoves::find_nipples() {
  const Catalog& catalog = folded_.catalog();
  for (std::uint32_t row = 0; row < catalog.parts().size(); ++row) {
    const Part& part = catalog.part({row});
    const bool is_had = asked_.buyable({row}) || asked_.request().bin.count_of({row}) > 0;
    if (!is_cut(part) && !is_made_up_hose(catalog, part) && goes_in_unasked(catalog, asked_.request(), part) &&
        !is_bent(part) && is_had && asked_.admits({row}))
      nipples_.push_back(joined_by(part));
  }
  std::sort(nipples_.begin(), nipples_.end());
}

bool CutMoves::is_cut_short(const Part& part) const {
  if (part.threaded_when_cut) return !std::binary_search(nipples_.begin(), nipples_.end(), joined_by(part));
  return part.cut_to_length && !part.flexible;
}

std::vector<Move> CutMoves::all() {
  const Catalog& catalog = folded_.catalog();
  find_nipples();
  for (std::uint32_t row = 0; row < catalog.parts().size(); ++row) {
    const Part& part = catalog.part({row});
    if (!(is_cut(part) || is_made_up_hose(catalog, part)) || part.ports.size() != 2 || !rules_.admits_cut({row}))
      continue;
    if (!goes_in_unasked(catalog, rules_.request(), part) && rules_.groups_of({row}) == 0) continue;
    for (const std::size_t enter : {0u, 1u})
      if (rules_.admits_way(part, enter, 1 - enter)) add({row}, enter);
  }
  fold();
  return std::move(moves_);
}

void CutMoves::add(PartId part, std::size_t enter) {
  Move move = bought_move(folded_.catalog(), rules_.request(), part, enter, 1 - enter);
  if (move.bend != 0) return;
  move.cut = true;
  move.groups = rules_.groups_of(part);
  // What stands too little for a house weighs on as that.
  if (is_line_of_an_end(folded_.catalog(), rules_.request(), folded_.catalog().part(part))) move.own.other_kinds -= 1;
  if (is_made_up_hose(folded_.catalog(), folded_.catalog().part(part)))
    add_made_up(std::move(move));
  else
    add_lengths(std::move(move));
}

// One takes up what is left over; beside it others lie straight, with the slack of a hose.
void CutMoves::add_made_up(Move move) {
  const Catalog& catalog = folded_.catalog();
  const Part& part = catalog.part(move.part);
  const std::int64_t joints = in_joints(catalog, part);
  if (const auto straight = reach_of(catalog, part, joints, 0)) {
    Move beside = move;
    beside.stub = true;
    beside.own.micrometres = straight->most;
    add_priced(std::move(beside), part);
  }
  const std::optional<HoseReach> reach = reach_of(catalog, part, joints, aside_);
  if (!reach) return;
  move.own.micrometres = reach->least;
  move.stretch = reach->most - reach->least;
  add_priced(std::move(move), part);
}

// The greatest room whose piece is no longer than that.
std::int64_t room_of(const HoseRun& run, std::int64_t length, std::int64_t low, std::int64_t high) {
  while (low < high) {
    const std::int64_t middle = low + (high - low + 1) / 2;
    if (run.length(middle) <= length)
      low = middle;
    else
      high = middle - 1;
  }
  return low;
}

// Only between ends that stand; and a plan, which may narrow, sets a vessel last where a hose cannot be bowed in.
std::int64_t CutMoves::least_to_bow(const Part& part) const {
  if (rules_.closing() != Closing::stays_still || rules_.request().may_narrow) return 0;
  return room_to_bow(folded_.catalog(), part);
}

// It goes in, but another joint has to close the run.
void make_too_short(const Part& part, Move& move) {
  move.bow = Bow::too_short;
  move.closes = part.closing;
}

void CutMoves::add_lengths(Move move) {
  const Catalog& catalog = folded_.catalog();
  const Part& part = catalog.part(move.part);
  const HoseRun run = hose_run(catalog, part, part.flexible ? aside_ : 0);
  const std::int64_t shortest =
      std::max<std::int64_t>(1, part.flexible ? run.least_room() : in_micrometres(shortest_cut(catalog, part)));
  const std::int64_t bowed = least_to_bow(part);
  const std::int64_t longest = in_micrometres(longest_cut(catalog, part));
  const std::int64_t sold = in_micrometres(as_sold(part));
  if (is_cut_short(part) && shortest <= longest) {
    Move stub = move;
    stub.stub = true;
    stub.own.micrometres = shortest;
    stub.pieces = part.cut_to_length && sold > 0 ? std::max(1, static_cast<int>((shortest + sold - 1) / sold)) : 1;
    if (shortest < bowed) make_too_short(part, stub);
    add_priced(std::move(stub), part);
  }
  // The shortest piece stands for all where even that is too long: it tells that such a run exists at all.
  const std::int64_t least_bowed = std::max(shortest, bowed);
  const std::int64_t most = std::max(least_bowed, std::min(most_, longest));
  if (shortest < least_bowed) {
    Move short_of_room = move;
    make_too_short(part, short_of_room);
    add_between(short_of_room, run, shortest, std::max(shortest, std::min(most_, least_bowed - 1)));
  }
  add_between(std::move(move), run, least_bowed, most);
}

// One for each number of pieces as sold.
void CutMoves::add_between(Move move, const HoseRun& run, std::int64_t low, std::int64_t most) {
  const Part& part = folded_.catalog().part(move.part);
  const std::int64_t longest = in_micrometres(longest_cut(folded_.catalog(), part));
  const std::int64_t sold = in_micrometres(as_sold(part));
  while (low <= most && run.length(low) <= longest) {
    move.pieces =
        part.cut_to_length && sold > 0 ? std::max(1, static_cast<int>((run.length(low) + sold - 1) / sold)) : 1;
    const std::int64_t piece_end = part.cut_to_length && sold > 0 ? std::min(longest, move.pieces * sold) : longest;
    const std::int64_t high = room_of(run, piece_end, low, most);
    move.own.micrometres = low;
    move.stretch = high - low;
    add_priced(move, part);
    low = high + 1;
  }
}

void CutMoves::add_priced(Move move, const Part& part) {
  if (rules_.request().order == Order::loss && !is_cut(part))
    move.own.nanometres = own_head(folded_.catalog(), move, rules_.request().flow);
  else if (rules_.request().order == Order::loss)
    move.own.nanometres =
        head_when_cut(folded_.catalog(), move, piece_length(folded_.catalog(), move, aside_, move.own.micrometres),
                      rules_.request().flow);
  if (rules_.buyable(move.part)) {
    move.own.cents = part.price.weight() * move.pieces;
    moves_.push_back(move);
  }
  const std::vector<catalog::BinItem>& items = rules_.request().bin.items;
  for (std::uint32_t item = 0; item < items.size(); ++item) {
    if (items[item].part != move.part || items[item].count < move.pieces) continue;
    move.own.cents = 0;
    move.own.buy = 0;
    if (counted_[item]) move.bin_uses.push_back({item, move.pieces});
    moves_.push_back(move);
  }
}

// Of moves that differ in nothing a search looks at, the best is enough. Counted ones are kept as they are.
void CutMoves::fold() {
  const Order order = rules_.request().order;
  const Catalog& catalog = folded_.catalog();
  const auto key = [&](const Move& m) {
    return std::tuple(m.enter_type, m.leave_type, m.closes, m.bow, m.only_for_need, m.groups, m.enter_material,
                      m.leave_material, m.enter_bore, m.leave_bore, m.no_grip, m.bushing, shape_of(m),
                      keeps_the_line(order) ? catalog.part(m.part).material : MaterialId{},
                      keeps_the_line(order) && parts_metals(catalog, m));
  };
  const auto goodness = [&](const Move& m) {
    return std::tuple(cost_of(order, m.own), rest_of(order, m.own), folded_.rank(m.part), m.enter, m.own.buy);
  };
  const auto counted = std::partition(moves_.begin(), moves_.end(), [](const Move& m) { return m.bin_uses.empty(); });
  // Where the head lost counts, it is only settled with the length: what is alike now may differ then.
  if (order != Order::loss) moves_.erase(keep_best(moves_.begin(), counted, key, goodness), counted);
}

}  // namespace

Length shortest_cut(const Catalog& catalog, const Part& part) {
  const PortTypeId ends[] = {part.ports[0].type, part.ports[1].type};
  const Length goes_in = deepest_insertion(catalog, ends[0]) + deepest_insertion(catalog, ends[1]);
  if (part.threaded_when_cut)
    return std::max(goes_in, thread_length(catalog, ends[0]) + thread_length(catalog, ends[1]) + kGrip);
  if (!part.flexible)
    return std::max(goes_in, deepest_with_bare(catalog, ends[0]) + deepest_with_bare(catalog, ends[1]));
  const Length taken_in = std::max(goes_in, deepest_joint(catalog, ends[0]) + deepest_joint(catalog, ends[1]));
  return taken_in + port_bore(catalog, part, 0);
}

namespace {

bool is_of_an_ends_kind(const Catalog& catalog, const ChainRequest& request, const Part& part) {
  if (!part.cut_to_length) return false;
  const auto kind = [&](PortTypeId type) { return catalog.port_type(type).kind; };
  const auto are_all = [&](PortTypeId end) {
    return std::all_of(part.ports.begin(), part.ports.end(),
                       [&](const catalog::Port& port) { return kind(port.type) == kind(end); });
  };
  return are_all(request.from.type) || are_all(request.to.type);
}

}  // namespace

bool is_line_of_an_end(const Catalog& catalog, const ChainRequest& request, const Part& part) {
  return bends(catalog, part) && is_of_an_ends_kind(catalog, request, part);
}

bool is_tube_of_an_end(const Catalog& catalog, const ChainRequest& request, const Part& part) {
  const bool is_pipe = part.threaded_when_cut || part.remnant;
  return !is_pipe && !bends(catalog, part) && is_of_an_ends_kind(catalog, request, part);
}

std::int64_t room_to_bow(const Catalog& catalog, const Part& part) {
  const PortTypeId ends[] = {part.ports[0].type, part.ports[1].type};
  if (!part.cut_to_length || !(may_be_bowed_in(catalog, ends[0]) || may_be_bowed_in(catalog, ends[1]))) return 0;
  const std::int64_t first = in_micrometres(deepest_joint(catalog, ends[0]));
  const std::int64_t second = in_micrometres(deepest_joint(catalog, ends[1]));
  const double length = least_bowed(static_cast<double>(std::min(first, second)), radius_putting_on(catalog, part));
  return first + second + std::llround(length / (1.0 + (part.flexible ? kSlack : 0.0)));
}

Length longest_cut(const Catalog& catalog, const Part& part) {
  if (part.threaded_when_cut || part.remnant) return as_sold(part);
  return bends(catalog, part) ? kReel : kRack;
}

std::int64_t HoseRun::least_room() const {
  const double y = static_cast<double>(aside);
  const auto least = static_cast<double>(tightest());
  const double for_radius = aside > 0 ? std::sqrt(std::max(0.0, 4.0 * y * least - y * y)) : 0.0;
  return in_joints + std::max({bore, aside, static_cast<std::int64_t>(std::ceil(for_radius))});
}

std::int64_t HoseRun::tightest() const { return std::llround(kBoresOfBend * static_cast<double>(bore)); }

// The same the other way: the smaller root of y^2 - 4 r y + x^2, and no more than the room for two right angles.
std::int64_t HoseRun::most_aside(std::int64_t room) const {
  const auto x = static_cast<double>(room - in_joints);
  const auto r = static_cast<double>(tightest());
  if (x <= static_cast<double>(bore)) return 0;
  return static_cast<std::int64_t>(x >= 2.0 * r ? x : 2.0 * r - std::sqrt(4.0 * r * r - x * x));
}

double HoseRun::radius(std::int64_t room) const {
  if (aside == 0) return 0.0;
  const double x = static_cast<double>(room - in_joints);
  const double y = static_cast<double>(aside);
  return (x * x + y * y) / (4.0 * y);
}

namespace {

// Two arcs of one radius, each turning by twice the angle whose tangent is offset over room.
double between_joints(const HoseRun& run, std::int64_t room) {
  const auto free = static_cast<double>(room - run.in_joints);
  if (run.aside == 0) return free;
  return 4.0 * run.radius(room) * std::atan2(static_cast<double>(run.aside), free);
}

}  // namespace

std::int64_t HoseRun::length(std::int64_t room) const {
  return in_joints + std::llround(between_joints(*this, room) * (1.0 + slack));
}

std::int64_t HoseRun::taut(std::int64_t room) const { return in_joints + std::llround(between_joints(*this, room)); }

HoseRun hose_run(const Catalog& catalog, const Part& part, std::int64_t aside) {
  return {in_joints(catalog, part), aside, in_micrometres(port_bore(catalog, part, 0)), part.flexible ? kSlack : 0.0};
}

std::int64_t piece_length(const Catalog& catalog, const Move& move, std::int64_t aside, std::int64_t room) {
  const Part& part = catalog.part(move.part);
  if (is_made_up_hose(catalog, part)) return in_micrometres(body_length(catalog, part, move.enter, move.leave));
  return part.flexible ? hose_run(catalog, part, aside).length(room) : room;
}

std::int64_t head_when_cut(const Catalog& catalog, const Move& move, std::int64_t micrometres, VolumeFlow flow) {
  return head_of_cut(catalog, catalog.part(move.part), move.enter, move.leave,
                     metres(static_cast<double>(micrometres) * 1e-6), flow);
}

std::vector<Move> cut_moves(const FoldedCatalog& folded, const Rules& rules, const Rules& asked,
                            const std::vector<bool>& counted, std::int64_t aside, std::int64_t most) {
  return CutMoves(folded, rules, asked, counted, aside, most).all();
}

}  // namespace riserun::chain
