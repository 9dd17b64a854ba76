#include "property/chain/exhaustive.h"

#include "chain/finder.h"
#include "hydraulics/line.h"
#include "property/chain/judged_duty.h"
#include "property/chain/judged_joint.h"
#include "property/chain/swept.h"

#include <algorithm>
#include <cmath>
#include <set>
#include <tuple>

namespace riserun::chain::testing {

using namespace riserun::catalog;  // NOLINT(google-build-using-namespace)

namespace {

std::int64_t head_of(std::vector<hydraulics::LineElement> elements, VolumeFlow flow) {
  if (elements.empty() || in_cubic_metres_per_second(flow) == 0.0) return 0;
  const hydraulics::LineEnd open{0.0, 0.0, 0.0, {}};
  const hydraulics::Line line(std::move(elements), open, open);
  const Head head = line.head_loss(flow, hydraulics::Direction::forward, *hydraulics::water_at(degrees_celsius(20.0)));
  return std::llround(in_metres(head) * 1e9);
}

bool holds(const std::vector<PartId>& parts, PartId part) {
  return std::find(parts.begin(), parts.end(), part) != parts.end();
}

bool is_within(const Need& narrow, const Need& wide) {
  return std::all_of(narrow.parts.begin(), narrow.parts.end(), [&](PartId p) { return holds(wide.parts, p); });
}

bool same_parts(const Need& a, const Need& b) { return is_within(a, b) && is_within(b, a); }

bool one_within_the_other(const Need& a, const Need& b) { return is_within(a, b) || is_within(b, a); }

bool is_close_nipple(const Part& part) { return part.name.find("close nipple") != std::string::npos; }

bool turns_round(Freedom freedom) { return freedom == Freedom::loose || freedom == Freedom::spinning; }
bool moves_up(Freedom freedom) { return freedom == Freedom::loose || freedom == Freedom::sliding; }

}  // namespace

Exhaustive::Exhaustive(const Catalog& catalog, const ChainRequest& request) : catalog_(catalog), request_(request) {
  for (std::uint32_t row = 0; row < catalog.port_types().size(); ++row) deepest_.push_back(deepest_of(catalog, {row}));
  make_ways();
}

bool Exhaustive::part_allowed(PartId id) const {
  if (!request_.banned.empty() && request_.banned[id.row]) return false;
  return stands(catalog_, request_, id);
}

bool Exhaustive::metals_clash(std::optional<MaterialId> a, std::optional<MaterialId> b) const {
  if (request_.galvanic != Galvanic::avoid || !a || !b) return false;
  return eats(catalog_, request_.service == Service::water && !request_.dry, *a, *b);
}

void Exhaustive::make_ways() {
  for (std::uint32_t row = 0; row < catalog_.parts().size(); ++row) {
    const Part& part = catalog_.part({row});
    if (!part_allowed({row})) continue;
    const auto ports = static_cast<std::uint8_t>(part.ports.size());
    for (std::uint8_t enter = 0; enter < ports; ++enter) {
      for (std::uint8_t leave = 0; leave < ports; ++leave) {
        if (enter == leave || (part.arrow && (enter != 0 || leave != 1))) continue;
        const Port& in = part.ports[enter];
        const Port& out = part.ports[leave];
        if (request_.smallest_bore && std::min(in.bore, out.bore) < *request_.smallest_bore) continue;
        if (!part.dielectric && metals_clash(part.material_at(enter), part.material_at(leave))) continue;
        if (request_.room &&
            std::max(swept(catalog_, part, enter), swept(catalog_, part, leave)) > in_metres(*request_.room))
          continue;
        Way way{{row}, enter, leave, {}, 0, 0};
        way.length = std::max(micro(in.reach) + micro(out.reach), deepest_[in.type.row] + deepest_[out.type.row]);
        Chain alone;
        alone.parts.push_back(passed_through(catalog_, {row}, enter, leave));
        way.head = head_of(line_elements(catalog_, alone), request_.flow);
        add_ways_with_plugs(way, 0);
      }
    }
  }
}

RunPart passed_through(const Catalog& catalog, PartId part, std::uint8_t enter, std::uint8_t leave) {
  RunPart link{part, enter, false, {}};
  link.ports.resize(catalog.part(part).ports.size());
  link.ports[leave].what = Follower::What::end;
  return link;
}

void Exhaustive::add_ways_with_plugs(const Way& way, std::size_t port) {
  const Part& host = catalog_.part(way.part);
  while (port == way.enter || port == way.leave) ++port;
  if (port >= host.ports.size()) {
    ways_.push_back(way);
    return;
  }
  for (std::uint32_t row = 0; row < catalog_.parts().size(); ++row) {
    const Part& plug = catalog_.part({row});
    if (catalog_.family(plug.family).role != Role::plug || !part_allowed({row})) continue;
    if (!catalog_.mating_rule(host.ports[port].type, plug.ports[0].type)) continue;
    if (metals_clash(host.material_at(port), plug.material)) continue;
    Way plugged = way;
    plugged.plugs.push_back({row});
    add_ways_with_plugs(plugged, port + 1);
  }
}

// What is bowed in, and does not give where it stands at an end, takes a piece of tube on one side.
bool Exhaustive::closes(PortTypeId a, PortTypeId b, bool at_a_piece) const {
  const MatingRule& rule = *catalog_.mating_rule(a, b);
  const bool slides = request_.from.freedom == Freedom::sliding || request_.to.freedom == Freedom::sliding;
  const bool is_stiff = rule.bowed && !rule.end_bows && !at_a_piece;
  return (rule.closing && !rule.lengthwise && !is_stiff) ||
         (slides && (rule.closing || rule.turning == Turning::neither));
}

std::int64_t Exhaustive::bore_change(std::int64_t from, std::int64_t to) {
  if (from == 0 || from == to) return 0;
  const std::pair key(from, to);
  for (const auto& [known, head] : bore_changes_)
    if (known == key) return head;
  hydraulics::LineElement first;
  hydraulics::LineElement second;
  first.bore = metres(static_cast<double>(from) * 1e-9);
  second.bore = metres(static_cast<double>(to) * 1e-9);
  bore_changes_.emplace_back(key, head_of({first, second}, request_.flow));
  return bore_changes_.back().second;
}

Exhaustive::Begun Exhaustive::beginning() const {
  Begun begun;
  begun.open = request_.from.type;
  begun.material = request_.from.material;
  // What is screwed up draws in: it takes an end that turns, and one that moves up.
  const Freedom ends[] = {request_.from.freedom, request_.to.freedom};
  begun.closed = std::any_of(std::begin(ends), std::end(ends), turns_round) &&
                 std::any_of(std::begin(ends), std::end(ends), moves_up);
  begun.met.assign(request_.needs.size(), false);
  begun.uses.assign(catalog_.parts().size(), 0);
  return begun;
}

bool Exhaustive::use(std::vector<int>& uses, PartId part) const {
  const bool can_be_bought = request_.special_order || catalog_.part(part).stocked;
  return ++uses[part.row] <= request_.bin.count_of(part) || can_be_bought;
}

// A part meets each need that names it; of needs with the same parts, and in order of those of which one is within the
// other, one only. True: it met one more.
bool Exhaustive::meet_needs(std::vector<bool>& met, PartId part) const {
  std::vector<std::size_t> now;
  for (std::size_t i = 0; i < met.size(); ++i) {
    if (met[i]) continue;
    if (!holds(request_.needs[i].parts, part)) {
      if (request_.needs_in_order) break;
      continue;
    }
    const auto are_twins = request_.needs_in_order ? one_within_the_other : same_parts;
    const bool twin = std::any_of(now.begin(), now.end(),
                                  [&](std::size_t k) { return are_twins(request_.needs[k], request_.needs[i]); });
    if (twin && request_.needs_in_order) break;
    if (!twin) now.push_back(i);
  }
  for (const std::size_t i : now) met[i] = true;
  return !now.empty();
}

std::optional<Exhaustive::Begun> Exhaustive::extended(const Begun& begun, const Way& way) {
  const Part& part = catalog_.part(way.part);
  const Port& in = part.ports[way.enter];
  const Port& out = part.ports[way.leave];
  const MatingRule* joint = catalog_.mating_rule(begun.open, in.type);
  if (!joint) return std::nullopt;
  if (joint->turning == Turning::neither && (begun.no_grip || is_close_nipple(part))) return std::nullopt;
  const bool lined = part.dielectric && !part.far_material;
  if (!lined && metals_clash(begun.material, part.material_at(way.enter))) return std::nullopt;
  Begun next = begun;
  const bool asked_for = meet_needs(next.met, way.part);
  const bool unasked = part.ports.size() == 2 && joins_unasked(catalog_, request_, part);
  if (!unasked && !asked_for) return std::nullopt;
  if (!use(next.uses, way.part)) return std::nullopt;
  for (const PartId plug : way.plugs)
    if (!use(next.uses, plug)) return std::nullopt;
  next.open = out.type;
  next.no_grip = is_close_nipple(part);
  next.material = lined ? std::nullopt : std::optional(part.material_at(way.leave));
  next.closed = begun.closed || part.closing || closes(begun.open, in.type, begun.piece || part.cut_to_length) ||
                hose_closes(catalog_, part, way.enter, way.leave);
  next.piece = part.cut_to_length;
  next.asked_for.push_back(asked_for);
  next.spare_unions += begun.closed && part.closing && !asked_for ? 1 : 0;
  next.parts += 1 + static_cast<std::int64_t>(way.plugs.size());
  next.micrometres += way.length - depth_of_joint(catalog_, begun.open, in.type);
  next.nanometres += bore_change(begun.bore, nano(in.bore)) + way.head;
  next.bore = nano(out.bore);
  next.ways.push_back(&way);
  if (request_.most_parts && next.parts > *request_.most_parts) return std::nullopt;
  next.bushings += catalog_.family(part.family).is_bushing ? 1 : 0;
  if (request_.most_bushings && next.bushings > *request_.most_bushings) return std::nullopt;
  return next;
}

bool Exhaustive::finishes(const Begun& begun) const {
  const MatingRule* joint = catalog_.mating_rule(begun.open, request_.to.type);
  if (!joint || (joint->turning == Turning::neither && begun.no_grip)) return false;
  if (metals_clash(begun.material, request_.to.material)) return false;
  if (std::find(begun.met.begin(), begun.met.end(), false) != begun.met.end()) return false;
  return begun.closed || closes(begun.open, request_.to.type, begun.piece);
}

Sums Exhaustive::sums_of(const Begun& begun) const {
  Sums sums;
  sums.parts = begun.parts;
  sums.spare_unions = begun.spare_unions;
  sums.asked_for = begun.asked_for;
  sums.micrometres = begun.micrometres - depth_of_joint(catalog_, begun.open, request_.to.type);
  sums.nanometres = begun.nanometres;
  const PortType& first = catalog_.port_type(request_.from.type);
  const PortType& last = catalog_.port_type(request_.to.type);
  const double line = std::min(size_of_line(catalog_, first), size_of_line(catalog_, last));
  const std::vector<std::uint32_t> kinds{first.kind.row, last.kind.row};
  std::vector<PartId> parts;
  const bool on_hose = asks_for_such_a_hose(catalog_, request_.needs);
  const bool parts_its_ends = metals_clash(request_.from.material, request_.to.material);
  bool is_first = true;
  JudgedJoints joints;
  Shown left{request_.from.material, false};
  for (const Way* way : begun.ways) {
    const Part& part = catalog_.part(way->part);
    const PortTypeId in = part.ports[way->enter].type;
    const PortTypeId out = part.ports[way->leave].type;
    count_port(catalog_, in, line, kinds, false, parts_its_ends, sums);
    count_port(catalog_, out, line, kinds, false, parts_its_ends, sums);
    if (!is_first && !on_hose) count_inner_joint(catalog_, in, kinds, sums);
    is_first = false;
    sums.other_kinds += count_body(catalog_, part, request_);
    sums.size_changes +=
        size_of_line(catalog_, catalog_.port_type(in)) != size_of_line(catalog_, catalog_.port_type(out)) ? 1 : 0;
    parts.push_back(way->part);
    joints.emplace_back(left, shown_at(catalog_, way->part, way->enter));
    left = shown_at(catalog_, way->part, way->leave);
    std::size_t next_plug = 0;
    for (std::size_t port = 0; port < part.ports.size(); ++port)
      if (port != way->enter && port != way->leave)
        joints.emplace_back(shown_at(catalog_, way->part, port), shown_at(catalog_, way->plugs[next_plug++], 0));
    for (const PartId plug : way->plugs) {
      count_port(catalog_, catalog_.part(plug).ports[0].type, line, kinds, true, parts_its_ends, sums);
      parts.push_back(plug);
    }
    sums.drawbacks += catalog_.family(part.family).is_bushing ? 1 : 0;
    sums.drawbacks += is_close_nipple(part) ? 1 : 0;
    sums.ids.push_back(part.id);
    for (const PartId plug : way->plugs) sums.ids.push_back(catalog_.part(plug).id);
    sums.ways.emplace_back(way->enter, way->leave);
  }
  joints.emplace_back(left, Shown{request_.to.material, false});
  count_materials(catalog_, parts, {request_.from.material, request_.to.material}, joints, request_.galvanic,
                  Shape::chain, sums);
  for (std::uint32_t row = 0; row < begun.uses.size(); ++row) {
    const int bought = std::max(0, begun.uses[row] - request_.bin.count_of({row}));
    sums.buy += bought;
    sums.cents += bought * catalog_.part({row}).price.cents();
  }
  return sums;
}

void Exhaustive::explore(const Begun& begun, int depth, Exhausted& found) {
  ++looked_at_;
  if (finishes(begun)) {
    const Sums sums = sums_of(begun);
    for (std::size_t order = 0; order < found.best.size(); ++order)
      if (!found.best[order] || better(static_cast<Order>(order), sums, *found.best[order])) found.best[order] = sums;
    found.chains.push_back(sums);
  }
  for (const Way& way : ways_) {
    if (looked_at_ > budget_) return;
    if (begun.parts + 1 + static_cast<std::int64_t>(way.plugs.size()) > depth) continue;
    if (const auto next = extended(begun, way)) explore(*next, depth, found);
  }
}

Exhausted Exhaustive::run(std::size_t budget) {
  budget_ = budget;
  Exhausted complete;
  for (int depth = 0; depth <= 8; ++depth) {
    looked_at_ = 0;
    Exhausted found;
    found.depth = depth;
    explore(beginning(), depth, found);
    if (looked_at_ > budget_) break;
    complete = std::move(found);
  }
  return complete;
}

bool Exhaustive::any_chain() {
  // Of the uses only those count that must come from the bin; of the counts only those that are limited.
  const auto key_of = [this](const Begun& begun) {
    std::vector<int> uses;
    for (std::uint32_t row = 0; row < begun.uses.size(); ++row)
      if (!request_.special_order && !catalog_.part({row}).stocked) uses.push_back(begun.uses[row]);
    return std::tuple(begun.open, begun.material, begun.closed, begun.no_grip, begun.piece, begun.met, std::move(uses),
                      request_.most_parts ? begun.parts : 0, request_.most_bushings ? begun.bushings : 0);
  };
  std::vector<Begun> open{beginning()};
  std::set<decltype(key_of(open.front()))> known{key_of(open.front())};
  while (!open.empty()) {
    const Begun begun = std::move(open.back());
    open.pop_back();
    if (finishes(begun)) return true;
    for (const Way& way : ways_) {
      auto next = extended(begun, way);
      if (next && known.insert(key_of(*next)).second) open.push_back(std::move(*next));
    }
  }
  return false;
}

std::optional<Sums> Exhaustive::judge(const Chain& chain, std::string& why) {
  Begun begun = beginning();
  for (const RunPart& link : chain.parts) {
    std::vector<PartId> plugs;
    for (const Follower& plug : link.plugs()) plugs.push_back(plug.plug);
    const auto way = std::find_if(ways_.begin(), ways_.end(), [&](const Way& w) {
      return w.part == link.part && w.enter == link.enter && w.leave == link.leave() && w.plugs == plugs;
    });
    if (way == ways_.end()) {
      why = "the rules do not allow part " + catalog_.part(link.part).id;
      return std::nullopt;
    }
    const auto next = extended(begun, *way);
    if (!next) {
      why = "part " + catalog_.part(link.part).id + " may not follow";
      return std::nullopt;
    }
    begun = *next;
  }
  if (!finishes(begun)) {
    why = "the chain does not end as asked";
    return std::nullopt;
  }
  return sums_of(begun);
}

}  // namespace riserun::chain::testing
