// How short and how long each piece of a run can be that makes a distance.
#include "property/chain/every_span.h"
#include "property/chain/judged_duty.h"
#include "property/chain/judged_joint.h"

#include <algorithm>
#include <cmath>
#include <numbers>
#include <set>

namespace riserun::chain::testing {

using namespace riserun::catalog;  // NOLINT(google-build-using-namespace)

/// No straight stock that may be used goes between two ends like those of the pipe.
bool EverySpan::wants_nipples(PartId pipe) const {
  for (std::uint32_t row = 0; row < catalog_.parts().size(); ++row) {
    const Part& part = catalog_.part({row});
    if (part.ports.size() != 2 || !joins_unasked(catalog_, request_, part)) continue;
    if (part.cut_to_length || part.threaded_when_cut || is_hose_with_ends(part) || turn_of(part, 0, 1) != 0.0) continue;
    std::multiset<std::uint32_t> joins;
    std::multiset<std::uint32_t> wanted;
    for (const Port& port : part.ports) joins.insert(port.type.row);
    for (const Port& port : catalog_.part(pipe).ports) wanted.insert(port.type.row);
    const bool is_banned = !request_.banned.empty() && request_.banned[row];
    const bool is_had = part.stocked || request_.special_order || request_.bin.count_of({row}) > 0;
    if (joins == wanted && is_had && !is_banned && stands(catalog_, request_, {row})) return false;
  }
  return true;
}

std::int64_t EverySpan::deepest(PartId id) const {
  std::int64_t sum = 0;
  std::int64_t inserted = 0;
  for (const Port& port : catalog_.part(id).ports) {
    std::int64_t most = 0;
    for (const Mate& mate : catalog_.mates(port.type))
      most = std::max(most, depth_and_band(catalog_, port.type, mate.other).first);
    sum += most;
    inserted += deepest_of(catalog_, port.type);
  }
  return std::max(sum, inserted);
}

/// The same, with what the joints ask to be left bare.
std::int64_t EverySpan::deepest_bare(PartId id) const {
  std::int64_t sum = 0;
  for (const Port& port : catalog_.part(id).ports) {
    std::int64_t most = 0;
    for (const Mate& mate : catalog_.mates(port.type)) {
      const Seal* seal = catalog_.seal(catalog_.mating_rules()[mate.rule].seal);
      most = std::max(
          most, depth_and_band(catalog_, port.type, mate.other).first + (seal != nullptr ? micro(seal->bare) : 0));
    }
    sum += most;
  }
  return std::max(sum, deepest(id));
}

/// It bends and is not cut: it has its ends on it.
bool EverySpan::is_hose_with_ends(const Part& part) const {
  return (part.flexible || catalog_.family(part.family).flexible) && !part.cut_to_length && part.ports.size() == 2;
}

/// Room that such a hose goes over, from and to: with 2 % of slack, and no less than half its length; six bores are the
/// least radius of its bends.
std::optional<std::pair<std::int64_t, std::int64_t>> EverySpan::rooms_of(PartId id, std::int64_t aside) const {
  const Part& part = catalog_.part(id);
  const std::int64_t joints = deepest(id);
  const std::int64_t whole =
      std::max(micro(part.ports[0].reach) + micro(part.ports[1].reach),
               deepest_of(catalog_, part.ports[0].type) + deepest_of(catalog_, part.ports[1].type));
  const auto free = static_cast<double>(whole - joints);
  if (free <= 0.0) return std::nullopt;
  const double radius = 6.0 * static_cast<double>(micro(part.ports[0].bore));
  const auto y = static_cast<double>(aside);
  const auto two_bends = [&](double x) { return y == 0.0 ? x : (x * x + y * y) / y * std::atan2(y, x); };
  // It grows with the room where that is no less than the offset.
  if (two_bends(y) * 1.02 > free) return std::nullopt;
  double most = y;
  for (double step = free; step > 1e-5; step /= 2.0)
    if (two_bends(most + step) * 1.02 <= free) most += step;
  const double angle = std::min(free / 4.0 / radius, 1.895494);
  const double chord = free / angle * std::sin(angle);
  const double least = std::max(
      {y, std::sqrt(std::max(0.0, 4.0 * y * radius - y * y)), std::sqrt(std::max(0.0, chord * chord - y * y))});
  if (least > most) return std::nullopt;
  return std::pair(joints + static_cast<std::int64_t>(std::ceil(least - 1e-3)),
                   joints + static_cast<std::int64_t>(std::floor(most + 1e-3)));
}

/// Between two ends that stand still, a piece that is cut and bowed in: four arcs of one radius, out, over and back,
/// draw its end back by as much as goes over the other; three bores of what goes over in radius, six of other that
/// bends, ten of tube, no arc over a right angle.
std::int64_t EverySpan::bowed_in(PartId id) const {
  const Part& part = catalog_.part(id);
  std::vector<std::int64_t> depths;
  bool is_bowed = false;
  for (const Port& port : part.ports) {
    std::int64_t most = 0;
    for (const Mate& mate : catalog_.mates(port.type)) {
      const MatingRule& rule = catalog_.mating_rules()[mate.rule];
      is_bowed = is_bowed || (rule.bowed && rule.closing);
      most = std::max(most, depth_and_band(catalog_, port.type, mate.other).first);
    }
    depths.push_back(most);
  }
  if (!is_bowed || !part.cut_to_length) return 0;
  const bool is_put_over = catalog_.port_type(part.ports[0].type).end == End::female;
  const double radius = (!part.flexible ? 10.0
                         : is_put_over  ? 3.0
                                        : 6.0) *
                        static_cast<double>(micro(part.ports[0].bore));
  const double excess = static_cast<double>(*std::min_element(depths.begin(), depths.end())) / (4.0 * radius);
  double angle = std::numbers::pi / 2.0;  // Newton from above: angle - sin(angle) is convex there
  if (excess < angle - 1.0)
    for (int step = 0; step < 200 && angle > 1e-9; ++step)
      angle -= (angle - std::sin(angle) - excess) / (1.0 - std::cos(angle));
  return depths[0] + depths[1] + std::llround(4.0 * radius * angle / (part.flexible ? 1.04 : 1.0));
}

bool EverySpan::runs_on(const Part& part) const {
  return (part.flexible || catalog_.family(part.family).flexible) && is_as_an_end(part);
}

bool EverySpan::leaves_its_line(int kind) const {
  if (request_.order != Order::line || along_ <= 304800) return false;
  bool tube = false;
  bool hose = false;
  for (const Part& part : catalog_.parts()) {
    if (!is_as_an_end(part)) continue;
    const bool bends = part.flexible || catalog_.family(part.family).flexible;
    hose = hose || bends;
    tube = tube || (!bends && !part.threaded_when_cut && !part.remnant);
  }
  return (tube || hose) && !(tube && (kind == 0 || kind == 1)) && !(hose && kind == 8);
}

bool EverySpan::is_as_an_end(const Part& part) const {
  if (!part.cut_to_length) return false;
  std::set<std::uint32_t> kinds;
  for (const Port& port : part.ports) kinds.insert(catalog_.port_type(port.type).kind.row);
  const auto is_it = [&](PortTypeId end) { return *kinds.begin() == catalog_.port_type(end).kind.row; };
  return kinds.size() == 1 && (is_it(request_.from.type) || is_it(request_.to.type));
}

/// Of a piece that is cut: the least that its joints and the radius of its bends leave.
std::int64_t EverySpan::least_room(PartId id) const {
  const Part& part = catalog_.part(id);
  if (!part.flexible) return shortest(id);
  const std::int64_t bore = micro(part.ports[0].bore);
  const auto y = static_cast<double>(aside_);
  const double radius = 6.0 * static_cast<double>(bore);
  const auto for_radius = static_cast<std::int64_t>(std::ceil(std::sqrt(std::max(0.0, 4.0 * y * radius - y * y))));
  return deepest(id) + std::max({bore, aside_, for_radius});
}

/// At some length, of which there is enough.
bool EverySpan::can_have_room(const Link& link) const {
  if (link.stub) return room_of_stub(link.part) >= bowed_in(link.part);
  if (!link.cut || !catalog_.part(link.part).cut_to_length) return true;
  const auto piece = piece_in(link, std::max(least_room(link.part), bowed_in(link.part)));
  if (!piece) return false;
  return request_.special_order || catalog_.part(link.part).stocked ||
         pieces(link.part, *piece) <= request_.bin.count_of(link.part);
}

std::optional<std::int64_t> EverySpan::spare_unions(const Use& use, const Sums& sums,
                                                    const std::vector<bool>& have_room) const {
  const auto moves = [](Freedom f) { return f == Freedom::sliding || f == Freedom::loose; };
  if (moves(request_.from.freedom) || moves(request_.to.freedom)) return sums.spare_unions;
  enum class Piece { none, bows, stays };
  bool closed = false;
  std::int64_t spare = 0;
  Piece before = Piece::none;
  PortTypeId open = request_.from.type;
  const auto closes = [&](PortTypeId other, Piece piece) {
    const MatingRule& rule = *catalog_.mating_rule(open, other);
    if (!rule.closing || rule.lengthwise) return false;
    if (!rule.bowed) return true;
    if (before == Piece::none && piece == Piece::none) return rule.end_bows;
    return before == Piece::bows || piece == Piece::bows;
  };
  for (std::size_t i = 0; i < use.links.size(); ++i) {
    const Link& link = use.links[i];
    const Part& part = catalog_.part(link.part);
    const bool bows = have_room[i] || request_.may_narrow;
    const Piece piece = !part.cut_to_length ? Piece::none : bows ? Piece::bows : Piece::stays;
    spare += closed && part.closing && !sums.asked_for[i] ? 1 : 0;
    closed = closed || part.closing || closes(part.ports[link.enter].type, piece) ||
             (piece != Piece::stays && hose_closes(catalog_, part, link.enter, link.leave));
    before = piece;
    open = part.ports[link.leave].type;
  }
  closed = closed || closes(request_.to.type, Piece::none);
  return closed ? std::optional(spare) : std::nullopt;
}

std::optional<Sums> EverySpan::as_used(const Sums& sums, const std::vector<std::array<int, 3>>& ways) const {
  for (const Use& use : uses_of(links_of(sums)))
    if (ways_of(use) == ways) return sums_as_used(use, sums);
  return std::nullopt;
}

std::vector<std::array<int, 3>> EverySpan::ways_of(const Use& use) const {
  std::vector<std::array<int, 3>> ways;
  for (const Link& link : use.links) ways.push_back({link.enter, link.leave, link.cut ? 0 : link.stub ? 1 : 2});
  return ways;
}

std::optional<Sums> EverySpan::sums_as_used(const Use& use, const Sums& sums) const {
  const Measured run = measure(use);
  const std::int64_t travel =
      run.travel_cut < 0 ? run.travel : std::llround(static_cast<double>(aside_) / std::sin(run.angle));
  std::vector<bool> have_room;
  for (std::size_t i = 0; i < use.links.size(); ++i) {
    const Link& link = use.links[i];
    std::int64_t room = room_of_stub(link.part);
    if (run.travel_cut == static_cast<int>(i)) room = travel - run.travel;
    if (run.along_cut == static_cast<int>(i))
      room = along_ - std::llround(static_cast<double>(travel) * std::cos(run.angle)) - run.along;
    have_room.push_back(!link.is_sawn() || room >= bowed_in(link.part));
  }
  const std::optional<std::int64_t> spare = spare_unions(use, sums, have_room);
  if (!spare) return std::nullopt;
  Sums used = sums;
  used.spare_unions = *spare;
  for (const Link& link : use.links)
    if (link.is_sawn() && runs_on(catalog_.part(link.part))) used.other_kinds -= 1;
  return used;
}

bool EverySpan::keeps_bushings(const Use& use) const {
  const auto bushings = std::count_if(use.links.begin(), use.links.end(), [&](const Link& link) {
    return catalog_.family(catalog_.part(link.part).family).is_bushing;
  });
  return !request_.most_bushings || bushings <= *request_.most_bushings;
}

std::int64_t EverySpan::shortest(PartId id) const {
  const Part& part = catalog_.part(id);
  if (part.threaded_when_cut) {
    const std::int64_t inserted = deepest_of(catalog_, part.ports[0].type) + deepest_of(catalog_, part.ports[1].type);
    return std::max<std::int64_t>(25400, inserted);  // no thread of these worlds has a length of its own
  }
  return std::max<std::int64_t>(1, deepest_bare(id));
}

std::int64_t EverySpan::longest(PartId id) const {
  const Part& part = catalog_.part(id);
  if (part.threaded_when_cut) return micro(part.ports[0].reach + part.ports[1].reach);
  return part.flexible || catalog_.family(part.family).flexible ? 30480000 : 3048000;
}

/// Of a piece that is no longer than it must be: as short as its joints let it be, of a hose with ends lying straight.
std::int64_t EverySpan::room_of_stub(PartId id) const {
  if (!is_hose_with_ends(catalog_.part(id))) return shortest(id);
  const auto rooms = rooms_of(id, 0);
  return rooms ? rooms->second : 0;
}

int EverySpan::pieces(PartId id, std::int64_t length) const {
  const Part& part = catalog_.part(id);
  const std::int64_t sold = micro(part.ports[0].reach + part.ports[1].reach);
  if (!part.cut_to_length || sold == 0) return 1;
  return static_cast<int>((length + sold - 1) / sold);
}

/// Length of the piece that fills that room; nullopt: none does.
std::optional<std::int64_t> EverySpan::piece_in(const Link& link, std::int64_t room) const {
  const Part& part = catalog_.part(link.part);
  std::int64_t length = room;
  if (is_hose_with_ends(part)) {
    const auto rooms = rooms_of(link.part, aside_);
    if (!rooms || room < rooms->first || room > rooms->second) return std::nullopt;
    return 0;
  }
  if (part.flexible) {
    const std::int64_t free = room - deepest(link.part);
    const std::int64_t bore = micro(part.ports[0].bore);
    if (free < bore || free < aside_) return std::nullopt;
    if (aside_ == 0) length = deepest(link.part) + std::llround(static_cast<double>(free) * 1.04);
    if (aside_ > 0) {
      const auto x = static_cast<double>(free);
      const auto y = static_cast<double>(aside_);
      const double radius = (x * x + y * y) / (4.0 * y);
      if (x * x < 4.0 * y * 6.0 * static_cast<double>(bore) - y * y) return std::nullopt;
      length = deepest(link.part) + std::llround(2.0 * radius * 2.0 * std::atan(y / x) * 1.04);
    }
  } else if (length < shortest(link.part)) {
    return std::nullopt;
  }
  return length <= longest(link.part) ? std::optional(length) : std::nullopt;
}

}  // namespace riserun::chain::testing
