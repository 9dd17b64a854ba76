#include "property/chain/every_span.h"

#include "chain/finder.h"
#include "hydraulics/line.h"
#include "property/chain/judged_duty.h"
#include "property/chain/judged_joint.h"

#include <algorithm>
#include <cmath>
#include <map>
#include <numbers>
#include <set>

namespace riserun::chain::testing {

using namespace riserun::catalog;  // NOLINT(google-build-using-namespace)

namespace {

std::int64_t scaled(std::int64_t length, double factor) { return std::llround(static_cast<double>(length) * factor); }

}  // namespace

Sums with_spare_unions(Sums sums, const ChainRequest& request) {
  const auto moves = [](Freedom f) { return f == Freedom::sliding || f == Freedom::loose; };
  if (!moves(request.from.freedom) && !moves(request.to.freedom)) sums.other_kinds += sums.spare_unions;
  return sums;
}

void JudgedRun::set_off_the_line(Order by) {
  order = by;
  const bool looks_at_it = by == Order::line || by == Order::bin;
  off_the_line = {looks_at_it ? cost[0] : 0, looks_at_it ? cost[1] : 0, by == Order::line ? cost[2] : 0};
  const std::size_t kinds = by == Order::bin ? 3 : 2;
  strays = {looks_at_it ? cost[kinds] : 0, looks_at_it ? cost[kinds + 1] : 0};
}

// Kinds: 0 one piece of tube, 1 two, 2 stock that lands near, 3 stock, 4 one piece of pipe, 5 two, 6 a hose with ends,
// 7 a hose that is cut, 8 one of the kind of an end.
int JudgedRun::place(Order by) const {
  constexpr int kPlaces[] = {0, 0, 0, 1, 2, 2, 3, 3, 0};
  return by == Order::line || by == Order::bin ? kPlaces[kind] : 0;
}

bool JudgedRun::before(const JudgedRun& o) const {
  if (off_the_line != o.off_the_line) return off_the_line < o.off_the_line;
  if (leaves_its_line != o.leaves_its_line) return !leaves_its_line;
  if (order == Order::line) {
    // Threads to cut weigh as a part, joints that must all fall the same way as two; a hose comes last.
    constexpr std::int64_t kTrouble[] = {0, 0, 0, 2, 1, 2, 1000, 1000, 0};
    const std::pair own(strays.second, cost[4] + kTrouble[kind]);
    const std::pair others(o.strays.second, o.cost[4] + kTrouble[o.kind]);
    if (own != others) return own < others;
  }
  if (place(order) != o.place(order)) return place(order) < o.place(order);
  // A second piece that takes threads only where one strays more.
  if (place(order) == 2 && strays != o.strays) return strays < o.strays;
  if (place(order) == 2 && kind != o.kind) return kind < o.kind;
  return std::tie(cost, kind, off, ids, ways) < std::tie(o.cost, o.kind, o.off, o.ids, o.ways);
}

EverySpan::EverySpan(const Catalog& catalog, const ChainRequest& request, const Span& span)
    : catalog_(catalog), request_(request), along_(micro(span.along)), aside_(micro(span.aside())) {
  if (request_.order == Order::length) request_.order = Order::parts;
}

std::vector<EverySpan::Link> EverySpan::links_of(const Sums& sums) const {
  std::vector<Link> links;
  std::size_t at = 0;
  for (const auto& [enter, leave] : sums.ways) {
    Link link{*catalog_.find_part(sums.ids[at++]), enter, leave, {}, false};
    for (std::size_t spare = catalog_.part(link.part).ports.size() - 2; spare > 0; --spare)
      link.plugs.push_back(*catalog_.find_part(sums.ids[at++]));
    links.push_back(std::move(link));
  }
  return links;
}

std::optional<int> EverySpan::kind_of(const std::vector<Link>& links, int bends) const {
  int hoses = 0;
  int made_up = 0;
  int of_an_end = 0;
  int pipes[2] = {0, 0};
  int turned = 0;
  for (const Link& link : links) {
    const Part& part = catalog_.part(link.part);
    turned += turn_of(part, link.enter, link.leave) > 0.0 ? 1 : 0;
    if (!link.cut) continue;
    made_up += is_hose_with_ends(part) ? 1 : 0;
    of_an_end += runs_on(part) ? 1 : 0;
    if (part.flexible || is_hose_with_ends(part))
      ++hoses;
    else
      ++pipes[turned == 1 ? 1 : 0];
  }
  if (hoses > 1 || pipes[0] > 1 || pipes[1] > 1 || (hoses > 0 && pipes[0] + pipes[1] > 0)) return std::nullopt;
  if (bends != (hoses > 0 || aside_ == 0 ? 0 : 2)) return std::nullopt;
  const int cut = pipes[0] + pipes[1];
  const bool stubs = std::any_of(links.begin(), links.end(), [&](const Link& link) {
    return link.stub && !is_hose_with_ends(catalog_.part(link.part));
  });
  if (stubs && cut == 0) return std::nullopt;
  const bool lies_straight = std::any_of(links.begin(), links.end(), [&](const Link& link) {
    return link.stub && is_hose_with_ends(catalog_.part(link.part));
  });
  if (lies_straight && made_up == 0) return std::nullopt;
  if (hoses > 0) return made_up > 0 ? 6 : of_an_end > 0 ? 8 : 7;
  const bool is_tube = std::all_of(links.begin(), links.end(), [&](const Link& link) {
    return !link.is_sawn() || catalog_.part(link.part).cut_to_length;
  });
  return cut == 0 ? 2 : is_tube ? cut - 1 : cut + 3;
}

// Every choice of the pieces that may be cut; what is sold by the length always is.
std::vector<EverySpan::Use> EverySpan::uses_of(const std::vector<Link>& links) const {
  Use use{0, links, 0, 0.0};
  std::vector<std::size_t> free_choice;
  for (std::size_t i = 0; i < links.size(); ++i) {
    const Part& part = catalog_.part(links[i].part);
    const double turn = turn_of(part, links[i].enter, links[i].leave);
    if (turn > 90.0 || (use.bends > 0 && turn > 0.0 && turn != use.angle)) return {};
    if (turn > 0.0) {
      ++use.bends;
      use.angle = turn;
    }
    if (part.cut_to_length && (turn > 0.0 || part.ports.size() != 2)) return {};
    use.links[i].cut = part.cut_to_length;
    const bool rigid_tube = part.cut_to_length && !part.flexible;
    if (is_hose_with_ends(part) && turn > 0.0) return {};
    if ((part.threaded_when_cut || rigid_tube || is_hose_with_ends(part)) && turn == 0.0 && part.ports.size() == 2)
      free_choice.push_back(i);
  }
  // Digits of the choice: as it is sold (tube: a stub), cut to measure, and, of pipe for want of a nipple, a stub.
  std::size_t choices = 1;
  for (std::size_t k = 0; k < free_choice.size(); ++k) choices *= 3;
  std::vector<Use> uses;
  for (std::size_t choice = 0; choice < choices; ++choice) {
    Use chosen = use;
    bool is_one = true;
    std::size_t left = choice;
    for (const std::size_t place : free_choice) {
      Link& link = chosen.links[place];
      const std::size_t digit = left % 3;
      left /= 3;
      link.cut = digit == 1;
      const bool is_tube = catalog_.part(link.part).cut_to_length || is_hose_with_ends(catalog_.part(link.part));
      link.stub = digit == (is_tube ? 0 : 2);
      is_one =
          is_one && (digit < 2 || (!is_tube && wants_nipples(link.part) && shortest(link.part) <= longest(link.part)));
    }
    const auto kind = is_one ? kind_of(chosen.links, chosen.bends) : std::nullopt;
    if (!kind) continue;
    chosen.kind = *kind;
    uses.push_back(std::move(chosen));
  }
  return uses;
}

EverySpan::Measured EverySpan::measure(const Use& use) const {
  Measured sum;
  sum.angle = use.angle * std::numbers::pi / 180.0;
  bool travels = false;
  PortTypeId open = request_.from.type;
  const auto add = [&](std::int64_t length) { (travels ? sum.travel : sum.along) += length; };
  const auto join = [&](PortTypeId other) {
    const auto [make_up, tolerance] = depth_and_band(catalog_, open, other);
    add(-make_up);
    (travels ? sum.travel_band : sum.along_band) += tolerance;
  };
  for (std::size_t i = 0; i < use.links.size(); ++i) {
    const Link& link = use.links[i];
    const Part& part = catalog_.part(link.part);
    const Port& in = part.ports[link.enter];
    const Port& out = part.ports[link.leave];
    join(in.type);
    if (turn_of(part, link.enter, link.leave) > 0.0) {
      add(std::max(micro(in.reach), deepest_of(catalog_, in.type)));
      travels = !travels;
      add(std::max(micro(out.reach), deepest_of(catalog_, out.type)));
    } else if (link.stub) {
      add(room_of_stub(link.part));
    } else if (link.cut) {
      (travels ? sum.travel_cut : sum.along_cut) = static_cast<int>(i);
    } else {
      add(std::max(micro(in.reach) + micro(out.reach), deepest_of(catalog_, in.type) + deepest_of(catalog_, out.type)));
    }
    open = out.type;
  }
  join(request_.to.type);
  return sum;
}

std::int64_t EverySpan::extra_head(const Link& link, std::int64_t length) const {
  const auto head = [&](const std::optional<Length>& cut) {
    Chain alone;
    alone.parts.push_back(passed_through(catalog_, link.part, link.enter, link.leave));
    alone.parts.back().cut_length = cut;
    auto elements = line_elements(catalog_, alone);
    if (elements.empty() || in_cubic_metres_per_second(request_.flow) == 0.0) return std::int64_t{0};
    const hydraulics::LineEnd none{0.0, 0.0, 0.0, {}};
    const hydraulics::Line line(std::move(elements), none, none);
    return static_cast<std::int64_t>(
        std::llround(in_metres(line.head_loss(request_.flow, hydraulics::Direction::forward,
                                              *hydraulics::water_at(degrees_celsius(20.0)))) *
                     1e9));
  };
  return head(metres(static_cast<double>(length) * 1e-6)) - head(std::nullopt);
}

void EverySpan::consider(const Use& use, const Sums& sums, BestOfKind& best) const {
  Measured run = measure(use);
  const std::int64_t aside = use.kind >= 6 ? 0 : aside_;
  JudgedRun judged;
  judged.cut.assign(use.links.size(), 0);
  for (std::size_t i = 0; i < use.links.size(); ++i)
    if (use.links[i].stub && !is_hose_with_ends(catalog_.part(use.links[i].part)))
      judged.cut[i] = shortest(use.links[i].part);
  const double sine = std::sin(run.angle);
  const double cosine = std::cos(run.angle);
  judged.band = run.along_band + scaled(run.travel_band, cosine);
  judged.band_aside = scaled(run.travel_band, sine);
  const auto cut = [&](int link, std::int64_t room) {
    const auto piece = piece_in(use.links[static_cast<std::size_t>(link)], room);
    judged.cut[static_cast<std::size_t>(link)] = piece.value_or(0);
    return piece.has_value();
  };
  if (run.travel_cut >= 0) {
    const std::int64_t travel = std::llround(static_cast<double>(aside) / sine);
    if (!cut(run.travel_cut, travel - run.travel)) return;
    run.travel = travel;
  }
  judged.lands_aside = scaled(run.travel, sine);
  const std::int64_t off_aside = std::abs(judged.lands_aside - aside);
  if (run.travel_cut < 0 && off_aside > judged.band_aside) return;
  const std::int64_t by_travel = scaled(run.travel, cosine);
  if (run.along_cut >= 0) {
    if (!cut(run.along_cut, along_ - by_travel - run.along)) return;
    run.along = along_ - by_travel;
  }
  judged.lands = run.along + by_travel;
  const std::int64_t off_along = std::abs(judged.lands - along_);
  if (run.along_cut < 0 && off_along > judged.band) return;
  judged.off = off_along + off_aside;
  judged.kind = use.kind;
  // Too long it is near within three quarters of the band, too short within half.
  const auto is_far = [](std::int64_t miss, std::int64_t band) {
    return miss > 0 ? 4 * miss > 3 * band : -2 * miss > band;
  };
  if (use.kind == 2)
    judged.kind =
        is_far(judged.lands - along_, judged.band) || is_far(judged.lands_aside - aside, judged.band_aside) ? 3 : 2;
  // A cent for each 64 micrometres too long, two for each that it is too short.
  const auto weight = [](std::int64_t miss) { return (miss > 0 ? miss : -2 * miss) / 64; };
  judged.off_weight = weight(judged.lands - along_) + weight(judged.lands_aside - aside);
  const std::optional<Sums> used = sums_as_used(use, sums);
  if (used) price(std::move(judged), use, *used, best);
}

// Every choice of the cut pieces that come from the bin; single parts take what is left of it.
void EverySpan::price(JudgedRun run, const Use& use, const Sums& sums, BestOfKind& best) const {
  std::vector<std::size_t> cuts;
  for (std::size_t i = 0; i < use.links.size(); ++i)
    if (use.links[i].is_sawn()) cuts.push_back(i);
  Sums total = sums;
  total.off_weight = run.off_weight;
  for (const std::size_t i : cuts)
    if (request_.order == Order::loss && run.cut[i] > 0) total.nanometres += extra_head(use.links[i], run.cut[i]);
  run.ways = ways_of(use);
  run.ids = sums.ids;
  run.parts = sums.parts;
  for (std::size_t choice = 0; choice < std::size_t{1} << cuts.size(); ++choice) {
    std::map<PartId, int> taken;
    bool possible = true;
    total.cents = 0;
    total.buy = 0;
    const auto buy = [&](PartId part, int count) {
      possible = possible && (request_.special_order || catalog_.part(part).stocked);
      total.cents += catalog_.part(part).price.cents() * count;
      total.buy += 1;
    };
    for (std::size_t k = 0; k < cuts.size(); ++k) {
      const PartId part = use.links[cuts[k]].part;
      const int count = pieces(part, run.cut[cuts[k]]);
      if (choice >> k & 1u)
        taken[part] += count;
      else
        buy(part, count);
    }
    for (const auto& [part, count] : taken) possible = possible && count <= request_.bin.count_of(part);
    const auto single = [&](PartId part) {
      if (taken[part] < request_.bin.count_of(part))
        ++taken[part];
      else
        buy(part, 1);
    };
    for (const Link& link : use.links) {
      if (!link.is_sawn()) single(link.part);
      for (const PartId plug : link.plugs) single(plug);
    }
    if (!possible) continue;
    run.cents = total.cents;
    run.buy = total.buy;
    run.cost = tuple_of(request_.order, with_spare_unions(total, request_));
    run.set_off_the_line(request_.order);
    run.leaves_its_line = leaves_its_line(run.kind);
    if (floor_ && run.off_the_line[0] > *floor_) continue;
    auto& first = best[static_cast<std::size_t>(run.kind)];
    // What costs the same from the bin is not bought.
    if (!first || run.before(*first) || (!first->before(run) && run.buy < first->buy)) first = run;
  }
}

// A cut piece of which the bin does not hold even the shortest, and which nobody sells, cannot be had at any length.
bool EverySpan::can_be_had(const Link& link) const {
  if (is_hose_with_ends(catalog_.part(link.part)) && !rooms_of(link.part, link.stub ? 0 : aside_)) return false;
  if (!link.is_sawn() || request_.special_order || catalog_.part(link.part).stocked) return true;
  const std::int64_t least = piece_in(link, least_room(link.part)).value_or(shortest(link.part));
  return pieces(link.part, least) <= request_.bin.count_of(link.part);
}

// The least of all chains, whatever their length: of those tried, and of the one that the finder has, which may be
// longer.
void EverySpan::set_floor(std::size_t budget) {
  floor_.reset();
  if (request_.order != Order::line && request_.order != Order::bin) return;
  const auto consider_chain = [&](const Sums& sums) {
    floor_ = std::min(floor_.value_or(sums.narrowing), sums.narrowing);
  };
  for (const Sums& sums : Exhaustive(catalog_, request_).run(budget).chains) consider_chain(sums);
  const Answer answer = Finder(catalog_).find(request_);
  if (const Chain* chain = std::get_if<Chain>(&answer)) {
    std::string why;
    if (const auto sums = Exhaustive(catalog_, request_).judge(*chain, why)) consider_chain(*sums);
  }
}

std::optional<Span> EverySpan::made_by_some_chain(Dice& dice, std::size_t budget) const {
  std::vector<Use> uses;
  for (const Sums& sums : Exhaustive(catalog_, request_).run(budget).chains)
    for (Use& use : uses_of(links_of(sums))) uses.push_back(std::move(use));
  if (uses.empty()) return std::nullopt;
  const Use& use = uses[static_cast<std::size_t>(dice.below(static_cast<int>(uses.size())))];
  Measured run = measure(use);
  const auto room = [&](int link) -> std::int64_t {
    if (link < 0) return 0;
    const PartId part = use.links[static_cast<std::size_t>(link)].part;
    const std::int64_t more = std::int64_t{1000} * dice.below(90);
    if (!is_hose_with_ends(catalog_.part(part))) return shortest(part) + more;
    const auto rooms = rooms_of(part, 0);
    return rooms ? std::min(rooms->second, rooms->first + more) : 0;
  };
  run.along += room(run.along_cut);
  run.travel += room(run.travel_cut);
  const std::int64_t along = run.along + scaled(run.travel, std::cos(run.angle));
  const std::int64_t aside = scaled(run.travel, std::sin(run.angle));
  if (along < 0 || aside < 0) return std::nullopt;
  return Span{metres(static_cast<double>(along) * 1e-6), metres(static_cast<double>(aside) * 1e-6), {}};
}

std::optional<JudgedRun> EverySpan::best(std::size_t budget) {
  set_floor(budget);
  ChainRequest endless = request_;
  endless.most_bushings.reset();
  for (BinItem& item : endless.bin.items)
    if (item.count > 0) item.count = 1000;
  const Exhausted all = Exhaustive(catalog_, endless).run(budget);
  depth_ = all.depth;
  std::array<std::int64_t, kKinds> fewest{};
  fewest.fill(1000);
  std::vector<std::pair<Use, const Sums*>> uses;
  for (const Sums& sums : all.chains) {
    for (Use& use : uses_of(links_of(sums))) {
      if (!std::all_of(use.links.begin(), use.links.end(), [&](const Link& link) { return can_be_had(link); }))
        continue;
      std::vector<bool> have_room;
      for (const Link& link : use.links) have_room.push_back(can_have_room(link));
      if (!spare_unions(use, sums, have_room)) continue;
      auto& least = fewest[static_cast<std::size_t>(use.kind)];
      least = std::min(least, sums.parts);
      // What cuts pipe may cut tube in its place.
      if (use.kind < 2)
        fewest[static_cast<std::size_t>(use.kind) + 4] =
            std::min(fewest[static_cast<std::size_t>(use.kind) + 4], sums.parts);
      uses.emplace_back(std::move(use), &sums);
    }
  }
  BestOfKind of_kinds;
  for (const auto& [use, sums] : uses)
    if (sums->parts <= fewest[static_cast<std::size_t>(use.kind)] + 2 && keeps_bushings(use))
      consider(use, *sums, of_kinds);
  std::optional<JudgedRun> best;
  for (const std::optional<JudgedRun>& run : of_kinds)
    if (run && (!best || run->before(*best))) best = run;
  return best;
}

}  // namespace riserun::chain::testing
