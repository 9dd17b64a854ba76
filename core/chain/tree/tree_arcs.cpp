#include "chain/tree/tree_arcs.h"

#include "chain/ask/needs.h"
#include "chain/graph/keep_best.h"
#include "chain/graph/plugs.h"

#include <algorithm>
#include <map>
#include <tuple>

namespace riserun::chain {

using catalog::Part;

namespace {

/// A way to come by a part: bought, or from the bin, counted or not.
struct Source {
  Measures own;
  std::vector<Taking> takes;
};

struct Plug {
  PartId part;
  Source source;
};

// Free from an uncounted bin is never worse than bought; from a counted one, the rest of the assembly decides.
std::vector<Source> sources_of(const Rules& rules, const BranchDigits& digits, PartId id, bool buyable) {
  const Part& part = rules.catalog().part(id);
  Measures own;
  own.parts = 1;
  own.drawbacks = (is_bushing(rules.catalog(), part) ? 1 : 0) + (is_close_nipple(part) ? 1 : 0);
  std::vector<Source> sources;
  const std::vector<catalog::BinItem>& items = rules.request().bin.items;
  for (std::size_t item = 0; item < items.size(); ++item) {
    if (items[item].part != id || items[item].count <= 0) continue;
    const std::uint32_t digit = digits.of_bin_item[item];
    if (digit == UINT32_MAX) return {{own, {}}};
    sources.push_back({own, {{digit, 1}}});
  }
  if (!buyable) return sources;
  own.buy = 1;
  own.cents = part.price.weight();
  sources.push_back({own, {}});
  return sources;
}

class BranchMoves {
 public:
  BranchMoves(const FoldedCatalog& folded, const Rules& rules, const BranchGates& gates, const BranchDigits& digits,
              const RunEnds& ends)
      : folded_(folded),
        catalog_(folded.catalog()),
        rules_(rules),
        gates_(gates),
        digits_(digits),
        ends_(ends),
        by_make_(keeps_the_line(rules.request().order)) {}

  std::vector<BranchMove> all() {
    for (std::uint32_t row = 0; row < catalog_.parts().size(); ++row)
      if (rules_.admits({row})) add_part({row});
    fold();
    return std::move(moves_);
  }

 private:
  void add_part(PartId part);
  void add_uses(PartId part, const Source& source);
  void add_exits(PartId part, const Source& source, std::size_t enter, std::uint32_t mask);
  void add_with_plugs(BranchMove move, const Measures& own, std::size_t port);
  std::vector<Source> with_needs(PartId part, std::vector<Source> sources) const;
  const std::vector<Plug>& plugs_of(const Face& host);
  bool metals_meet(const Part& part, std::size_t enter, std::uint32_t mask) const;
  void fold();

  const FoldedCatalog& folded_;
  const Catalog& catalog_;
  const Rules& rules_;
  const BranchGates& gates_;
  const BranchDigits& digits_;
  const RunEnds& ends_;
  const bool by_make_;  // material counts
  std::vector<BranchMove> moves_;
  std::map<Face, std::vector<Plug>> plugs_;
};

void add_taking(std::vector<Taking>& takes, Taking more) {
  const auto same = std::find_if(takes.begin(), takes.end(), [&](const Taking& t) { return t.digit == more.digit; });
  if (same == takes.end())
    takes.push_back(more);
  else
    same->count += more.count;
}

bool is_among(const std::vector<PartId>& sorted, PartId part) {
  return std::binary_search(sorted.begin(), sorted.end(), part);
}

// A part meets one need or several that follow one another, but of needs that take two parts one only. The last needs
// are met by what lies beyond, and it is the next before those that it can meet.
std::vector<Taking> ways_to_meet(const NeedDigit& need, PartId part) {
  if (need.in_order.empty())
    return need.names(part) ? std::vector{Taking{need.digit, 1, -1, need.kind, need.before_all}}
                            : std::vector<Taking>{};
  std::vector<Taking> ways;
  const std::size_t count = need.in_order.size();
  for (std::size_t beyond = 0; beyond < count; ++beyond) {
    for (std::size_t met = 1; met <= count - beyond; ++met) {
      const auto first = need.in_order.end() - static_cast<std::ptrdiff_t>(beyond + met);
      const auto last = first + static_cast<std::ptrdiff_t>(met);
      const bool takes_more =
          std::any_of(first + 1, last, [&](const auto& other) { return takes_two_parts(*first, other); });
      if (!is_among(*first, part) || takes_more) break;
      ways.push_back({need.digit, static_cast<int>(met), static_cast<int>(beyond), need.kind});
    }
  }
  return ways;
}

// A part may meet any of the needs that name it; a device must meet one.
std::vector<Source> BranchMoves::with_needs(PartId id, std::vector<Source> sources) const {
  const std::size_t plain = sources.size();
  for (const NeedDigit& need : digits_.needs) {
    const std::vector<Taking> ways = ways_to_meet(need, id);
    const std::size_t before = sources.size();
    for (const Taking& way : ways) {
      for (std::size_t row = 0; row < before; ++row) {
        Source made = sources[row];
        made.takes.push_back(way);
        sources.push_back(std::move(made));
      }
    }
  }
  const catalog::Family& family = catalog_.family(catalog_.part(id).family);
  const bool asked_only = catalog::only_if_asked(family.role) || is_only_for_vacuum(rules_.request(), family);
  if (asked_only) sources.erase(sources.begin(), sources.begin() + static_cast<std::ptrdiff_t>(plain));
  return sources;
}

void BranchMoves::add_part(PartId id) {
  const std::size_t ports = catalog_.part(id).ports.size();
  if (ports < 2 || ports > kMostPorts) return;
  for (const Source& source : with_needs(id, sources_of(rules_, digits_, id, rules_.buyable(id)))) add_uses(id, source);
}

void BranchMoves::add_uses(PartId id, const Source& source) {
  const std::size_t ports = catalog_.part(id).ports.size();
  for (std::size_t enter = 0; enter < ports; ++enter)
    for (std::uint32_t mask = 1; mask < 1u << ports; ++mask)
      if (!(mask >> enter & 1u)) add_exits(id, source, enter, mask);
}

bool BranchMoves::metals_meet(const Part& part, std::size_t enter, std::uint32_t mask) const {
  if (part.dielectric) return true;
  mask |= 1u << enter;
  for (std::size_t a = 0; a < part.ports.size(); ++a)
    for (std::size_t b = a + 1; b < part.ports.size(); ++b)
      if ((mask >> a & 1u) && (mask >> b & 1u) && !rules_.may_meet(part.material_at(a), part.material_at(b)))
        return false;
  return true;
}

void BranchMoves::add_exits(PartId id, const Source& source, std::size_t enter, std::uint32_t mask) {
  const Part& part = catalog_.part(id);
  const bool by_material = rules_.request().galvanic == Galvanic::avoid;
  if (!metals_meet(part, enter, mask)) return;
  BranchMove move;
  move.part = id;
  move.enter = static_cast<std::uint8_t>(enter);
  move.closes = part.ports.size() == 2 && (part.closing || gives_way(catalog_, part, 0, 1));
  move.takes = source.takes;
  if (digits_.bushings != UINT32_MAX && is_bushing(catalog_, part)) move.takes.push_back({digits_.bushings, 1});
  move.exit_ports = mask;
  Measures own = source.own;
  own.other_kinds += other_kinds_of(catalog_, rules_.request(), part);
  for (std::size_t port = 0; port < part.ports.size(); ++port) {
    if (!(mask >> port & 1u)) continue;
    // Against its arrow only towards what feeds the base, which the gate knows; all else is the same both ways.
    const bool against = part.arrow && enter > port;
    if (!rules_.admits_way(part, against ? port : enter, against ? enter : port)) return;
    move.gates.push_back(gates_.between(id, enter, port));
    if (move.gates.back().kinds == 0) return;
    const Move way = bought_move(catalog_, id, enter, port);
    move.enter_face = {way.enter_type, by_material ? way.enter_material : MaterialId{}, way.no_grip, way.bow};
    own.size_changes += way.own.size_changes;
    move.exits.push_back({way.leave_type, by_material ? way.leave_material : MaterialId{}, way.no_grip, way.bow});
  }
  if (by_make_) {
    move.makes.push_back(make_of(catalog_, id));
    move.entered = shown_metal(catalog_, id, enter);
  }
  for (std::size_t port = 0; port < part.ports.size(); ++port)
    if (move.leads_on(port)) move.left.push_back(by_make_ ? shown_metal(catalog_, id, port) : ShownMetal{});
  add_with_plugs(std::move(move), own, 0);
}

void BranchMoves::add_with_plugs(BranchMove move, const Measures& own, std::size_t port) {
  const Part& part = catalog_.part(move.part);
  while (port < part.ports.size() && (port == move.enter || move.leads_on(port))) ++port;
  if (port == part.ports.size()) {
    move.cost = cost_of(rules_.request().order, own);
    move.rest = rest_of(rules_.request().order, own);
    std::sort(move.takes.begin(), move.takes.end());
    moves_.push_back(std::move(move));
    return;
  }
  for (const Plug& plug : plugs_of({part.ports[port].type, part.material_at(port), false})) {
    BranchMove next = move;
    next.plugs.push_back(plug.part);
    if (by_make_ && plug.part.valid()) {
      next.makes.push_back(make_of(catalog_, plug.part));
      next.plugged.emplace_back(shown_metal(catalog_, move.part, port), shown_metal(catalog_, plug.part, 0));
    }
    for (const Taking& taking : plug.source.takes) add_taking(next.takes, taking);
    add_with_plugs(std::move(next), own + plug.source.own, port + 1);
  }
}

// The best plug that nothing counts, where material counts the best of each make, and beside it each that is counted.
const std::vector<Plug>& BranchMoves::plugs_of(const Face& host) {
  const auto [known, is_new] = plugs_.try_emplace(host);
  if (!is_new) return known->second;
  std::vector<Plug> all;
  for (const PartId id : chain::plugs_of(rules_, host.type, host.material)) {
    for (Source& source : sources_of(rules_, digits_, id, rules_.buyable(id))) {
      source.own.drawbacks = 0;
      if (by_make_) add_plugging(catalog_, ends_, catalog_.part(id).ports[0].type, source.own);
      all.push_back({id, std::move(source)});
    }
  }
  const auto goodness = [&](const Plug& p) {
    const Order order = rules_.request().order;
    return std::tuple(!p.source.takes.empty(), cost_of(order, p.source.own), rest_of(order, p.source.own),
                      folded_.rank(p.part));
  };
  std::sort(all.begin(), all.end(), [&](const Plug& a, const Plug& b) { return goodness(a) < goodness(b); });
  const auto is_beaten = [&](const Plug& plug) {
    return std::any_of(known->second.begin(), known->second.end(), [&](const Plug& better) {
      return !by_make_ || make_of(catalog_, better.part) == make_of(catalog_, plug.part);
    });
  };
  for (Plug& plug : all)
    if (!plug.source.takes.empty() || !is_beaten(plug)) known->second.push_back(std::move(plug));
  if (known->second.empty() && digits_.wish_plugs) known->second.push_back({});
  return known->second;
}

// Which ports are used tells two uses of one part apart only where it has some to choose from.
std::tuple<std::uint32_t, std::uint8_t> chosen_ports(const BranchMove& move) {
  if (move.exits.size() + move.plugs.size() == 1) return {};
  return {move.exit_ports, move.enter};
}

void BranchMoves::fold() {
  const auto key = [](const BranchMove& m) {
    return std::tuple<Face, bool, std::tuple<std::uint32_t, std::uint8_t>, const std::vector<Face>&,
                      const std::vector<Gate>&, const std::vector<Taking>&, const std::vector<Make>&, ShownMetal,
                      const std::vector<ShownMetal>&, const std::vector<std::pair<ShownMetal, ShownMetal>>&>(
        m.enter_face, m.closes, chosen_ports(m), m.exits, m.gates, m.takes, m.makes, m.entered, m.left, m.plugged);
  };
  const auto goodness = [&](const BranchMove& m) {
    std::vector<std::uint32_t> ranks{folded_.rank(m.part)};
    for (const PartId plug : m.plugs) ranks.push_back(folded_.rank(plug));
    return std::tuple(m.cost, m.rest, ranks.front(), m.enter, std::move(ranks));
  };
  moves_.erase(keep_best(moves_.begin(), moves_.end(), key, goodness), moves_.end());
}

}  // namespace

bool same_but_for_rest(const BranchMove& a, const BranchMove& b) {
  return a.enter_face == b.enter_face && a.closes == b.closes && chosen_ports(a) == chosen_ports(b) &&
         a.exits == b.exits && a.gates == b.gates && a.takes == b.takes && a.cost == b.cost;
}

std::vector<BranchMove> branch_moves(const FoldedCatalog& folded, const Rules& rules, const BranchGates& gates,
                                     const BranchDigits& digits, const RunEnds& ends) {
  return BranchMoves(folded, rules, gates, digits, ends).all();
}

std::vector<TargetWay> device_ways(const FoldedCatalog& folded, const Rules& rules, const BranchDigits& digits,
                                   const std::vector<catalog::PortUse>& devices) {
  const bool by_material = rules.request().galvanic == Galvanic::avoid;
  std::vector<TargetWay> ways;
  for (const catalog::PortUse& use : devices) {
    const Part& part = folded.catalog().part(use.part);
    const Face face{part.ports[use.port].type, by_material ? part.material_at(use.port) : MaterialId{}, false};
    for (Source& source : sources_of(rules, digits, use.part, true))
      ways.push_back({face, use.part, use.port, source.takes, cost_of(rules.request().order, source.own),
                      rest_of(rules.request().order, source.own)});
  }
  const auto key = [](const TargetWay& way) { return std::tie(way.face, way.takes); };
  const auto goodness = [&](const TargetWay& way) {
    return std::tuple(way.cost, way.rest, folded.rank(way.device), way.port);
  };
  ways.erase(keep_best(ways.begin(), ways.end(), key, goodness), ways.end());
  return ways;
}

}  // namespace riserun::chain
