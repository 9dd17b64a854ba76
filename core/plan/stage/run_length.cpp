#include "plan/stage/run_length.h"

#include "plan/hose_bands.h"
#include "plan/job/facing.h"
#include "plan/stage/connection_request.h"
#include "plan/stage/hose_round.h"
#include "quantity/nearly.h"

#include <algorithm>
#include <cmath>
#include <cstdint>
#include <utility>
#include <variant>
#include <vector>

namespace riserun::plan {

namespace {

using chain::Chain;
using chain::Freedom;
using quantity::fact;

// Of a hose between its barbs: less neither bends nor takes up what is out of line (common practice).
const Length kLeastFreeHose = inches(2.0);
constexpr double kBoresOfFreeHose = 2.0;
// A gap worked out of heights: the length of a bung or of a fitting that stands there already (common practice).
const Length kGapMayBeOff = inches(1.0);
/// What an assumed gap may be off: a full coupling of 1 in pipe that is welded in under the table's floor hangs down by
/// its length (2-3/8 in, ASME B16.11).
const Length kOffAssumed = inches(2.5);
/// What a hose may be longer than its gap: half of it, at least 4 in. More lies in a loop that kinks and holds water
/// (common practice).
constexpr double kMostSlack = 0.5;
const Length kLeastSlack = inches(4.0);
const Length kTape = inches(1.0 / 16.0);  // so that a length that was rounded in printing may be typed back

/// Hose and tube: what is sold by the length.
std::vector<PartId> sold_by_length_in(const Catalog& catalog, const Chain& chain) {
  std::vector<PartId> pieces;
  for (const chain::RunPart& part : chain.parts)
    if (catalog.part(part.part).cut_to_length) pieces.push_back(part.part);
  return pieces;
}

/// The height of a port's face: given, or worked out for the riser's bung in the lid and for a port in the table's
/// floor.
std::optional<Length> face_height(const Job& job, const RiserPlan& riser, const std::string& name, bool& assumed) {
  const JobPort* port = find_port(job, name);
  if (port == nullptr) return std::nullopt;
  if (port->face_height) return port->face_height;
  assumed = true;
  if (name == riser.bung && !is_air_port(job, name)) return job.reservoir.height + riser.bung_face;
  const bool in_table_floor =
      port_named(job.table.ports, name) != nullptr && port->place.value_or(Place::floor) == Place::floor;
  if (in_table_floor) return job.table.floor_height;
  // Another bung of the lid stands as high as the riser's, near enough for a length that is measured when it is cut.
  const bool in_lid =
      port_named(job.reservoir.ports, name) != nullptr && port->place.value_or(Place::lid) == Place::lid;
  if (in_lid && !is_air_port(job, name)) return job.reservoir.height + riser.bung_face;
  return std::nullopt;
}

bool asks_for_hose(const Catalog& catalog, const chain::ChainRequest& request) {
  return std::any_of(request.needs.begin(), request.needs.end(), [&](const chain::Need& need) {
    return std::any_of(need.parts.begin(), need.parts.end(), [&](PartId part) { return catalog.part(part).flexible; });
  });
}

/// The one hose of the run that is cut to length; nullopt: it has none, or several.
std::optional<PartId> only_hose(const Catalog& catalog, const Chain& chain) {
  const std::vector<PartId> pieces = sold_by_length_in(catalog, chain);
  return pieces.size() == 1 && catalog.part(pieces.front()).flexible ? std::optional(pieces.front()) : std::nullopt;
}

/// Of the run without its hoses, with what their joints take in.
Length rigid_length(const Catalog& catalog, const Chain& chain) {
  Length length = chain.length;
  for (const chain::RunPart& part : chain.parts)
    if (catalog.part(part.part).cut_to_length)
      length -= part.cut_length.value_or(straight_length(catalog.part(part.part)));
  return length;
}

/// Of the hoses' ends, what is pushed onto barbs.
Length length_on_barbs(const Catalog& catalog, const Chain& chain) {
  Length sum{};
  for (const chain::RunJoint& joint : chain.joints)
    if (is_clamped(catalog, joint)) sum = sum + joint.make_up;
  return sum;
}

std::optional<TightHose> too_tight(const chain::HoseFit& fit, Length gap, Length rigid, Length aside) {
  if (aside <= metres(0.0) || gap - rigid >= fit.least_room) return std::nullopt;
  const Length least_gap = rigid + fit.least_room + kTape;
  const Length most_aside = fit.most_aside - kTape;
  return TightHose{aside, fit.radius, least_gap, std::max(most_aside, metres(0.0)),
                   most_aside > metres(0.0) ? fact("gap_or_offset_for_hose", least_gap, most_aside)
                                            : fact("gap_for_hose", least_gap)};
}

bool moves(Freedom freedom) { return freedom == Freedom::sliding || freedom == Freedom::loose; }

/// The lengths of a run that makes its span.
void settle_span(const Catalog& catalog, ConnectionPlan& plan) {
  const Chain& chain = *plan.chain();
  // A hose is longer than the distance that it makes.
  const bool slack = chain.span && chain.span->make == chain::SpanMake::hose;
  plan.run_length = slack ? chain.span->lands : chain.length;
  plan.run_tolerance = chain.length_tolerance;
  for (const chain::RunPart& part : chain.parts)
    if (part.cut_length && catalog.part(part.part).flexible) plan.hose_length = part.cut_length;
}

/// What the run takes with the shortest hose: its barbs are in it to the end, and between them enough is free to bend.
std::optional<Length> least_with_hose(const Catalog& catalog, const ConnectionPlan& plan) {
  const std::vector<PartId> hoses = sold_by_length_in(catalog, *plan.chain());
  if (hoses.size() != 1 || !plan.hose_length) return std::nullopt;
  const Length least = rigid_length(catalog, *plan.chain()) + length_on_barbs(catalog, *plan.chain());
  return least + std::max(kLeastFreeHose, catalog.part(hoses.front()).ports[0].bore * kBoresOfFreeHose);
}

/// The two faces look at each other: a hose between them lies straight.
bool lies_straight(const Job& job, const JobConnection& connection) {
  const auto is_flat = [](const JobPort* port) {
    return port != nullptr && (!port->place || *port->place == Place::lid || *port->place == Place::floor);
  };
  return !connection.offset && is_flat(find_port(job, connection.from)) && is_flat(find_port(job, connection.to));
}

/// Of several pieces, or of tube, that are cut to one length: what each makes of the gap; zero: there is none.
Length share_of_gap(const ConnectionPlan& plan, Length rigid, std::size_t pieces) {
  return plan.gap ? (*plan.gap - rigid) / static_cast<double>(pieces) : Length();
}

}  // namespace

std::optional<Length> gap_between(const Job& job, const RiserPlan& riser, const JobConnection& connection,
                                  bool& assumed, Remarks& remarks) {
  // What looks up and what looks aside have no straight line between them: their heights are what a hose rises.
  if (look_at_each_other(job, connection.from, connection.to) == false) return std::nullopt;
  if (connection.gap) return connection.gap;
  const auto from = face_height(job, riser, connection.from, assumed);
  const auto to = face_height(job, riser, connection.to, assumed);
  if (!from || !to) return std::nullopt;
  if (look_at_each_other(job, connection.from, connection.to) == true) {
    const bool downward = facing_of(job, connection.to) == Facing::up;
    const auto& [bung, bung_name] = downward ? std::pair(*to, connection.to) : std::pair(*from, connection.from);
    const auto& [port, port_name] = downward ? std::pair(*from, connection.from) : std::pair(*to, connection.to);
    if (port <= bung) {
      remarks.refuse({Topic::connections,
                      fact("table_port_under_bung", port_name, port, bung_name, bung),
                      {},
                      fact("raise_the_table_over_the_bung", bung)});
      return std::nullopt;
    }
  }
  const Length gap = *from > *to ? *from - *to : *to - *from;
  if (assumed) remarks.assume(fact("gap_of_connection", connection.name, gap), key_of(job, connection, "gap"));
  return gap;
}

std::optional<chain::Span> span_of(const chain::Finder& finder, const JobConnection& connection,
                                   const ConnectionPlan& plan) {
  if (!plan.gap || connection.hose_length || connection.ends_in) return std::nullopt;
  if (moves(plan.request.from.freedom) || moves(plan.request.to.freedom)) return std::nullopt;
  const chain::Span span{*plan.gap, connection.offset.value_or(metres(0.0)), metres(0.0)};
  if (!plan.gap_assumed) return span;
  const bool cut_to_it = !connection.take && asks_for_hose(finder.catalog(), plan.request);
  return cut_to_it && finder.can_join(plan.request, span) ? std::optional(span) : std::nullopt;
}

std::optional<TightHose> tight_hose(const chain::Finder& finder, const JobConnection& connection,
                                    const ConnectionPlan& plan) {
  if (!plan.gap || !asks_for_hose(finder.catalog(), plan.request)) return std::nullopt;
  const chain::Answer answer = finder.find(plan.request);
  const auto* chain = std::get_if<Chain>(&answer);
  const auto hose = chain != nullptr ? only_hose(finder.catalog(), *chain) : std::nullopt;
  if (!hose) return std::nullopt;
  const Length rigid = rigid_length(finder.catalog(), *chain);
  const Length aside = connection.offset.value_or(metres(0.0));
  return too_tight(finder.fit_hose(*hose, *plan.gap - rigid, aside), *plan.gap, rigid, aside);
}

void settle_hose(const Inputs& inputs, const chain::Finder& finder, const RiserPlan& riser,
                 const JobConnection& connection, ConnectionPlan& plan, Remarks& remarks) {
  const Catalog& catalog = inputs.catalog;
  const Chain* chain = plan.chain();
  if (chain->span) return settle_span(catalog, plan);
  plan.run_length = chain->length;
  plan.run_tolerance = chain->length_tolerance;
  const std::vector<PartId> hoses = sold_by_length_in(catalog, *chain);
  if (hoses.empty()) return;
  const Length usual = straight_length(catalog.part(hoses.front()));
  const Length rigid = rigid_length(catalog, *chain);
  const Length aside = connection.offset.value_or(metres(0.0));
  plan.hose_length = connection.hose_length.value_or(usual);
  Length taken_aside{};  // by the bends: of the hose, what does not make the distance
  if (const auto hose = only_hose(catalog, *chain); hose && plan.gap) {
    const Length room = *plan.gap - rigid;
    const chain::HoseFit fit = finder.fit_hose(*hose, room, aside);
    const bool stands_still = !moves(plan.request.from.freedom) && !moves(plan.request.to.freedom);
    if (stands_still) plan.tight_hose = too_tight(fit, *plan.gap, rigid, aside);
    if (!connection.hose_length && room > metres(0.0)) plan.hose_length = plan.tight_hose ? room : fit.cut;
    if (catalog.part(*hose).remnant) plan.hose_length = std::min(*plan.hose_length, usual);
    if (!plan.tight_hose && room > metres(0.0)) taken_aside = fit.taut - room;
  } else if (const Length each = share_of_gap(plan, rigid, hoses.size());
             !connection.hose_length && aside <= metres(0.0) && each >= kLeastFreeHose) {
    plan.hose_length = each;
  } else if (const auto rise = plan.gap ? std::nullopt
                                        : rise_of(catalog, inputs.job, riser, connection, *chain,
                                                  finder.fit_hose(hoses.front(), usual, aside).radius,
                                                  length_on_barbs(catalog, *chain))) {
    plan.hose_rise = rise;
    const double count = static_cast<double>(hoses.size());
    if (!connection.hose_length)
      plan.hose_length = rise->same_wall ? rise->least / count : std::max(usual, rise->least / count);
    plan.hose_rise->guessed = !connection.hose_length;
    plan.hose_rise->short_of = rise->same_wall ? quantity::more_than(rise->least, *plan.hose_length * count)
                                               : *plan.hose_length * count + rigid < rise->rise;
  }
  const bool to_the_gap = plan.gap && (only_hose(catalog, *chain) || *plan.hose_length != usual);
  if (!connection.hose_length && !to_the_gap) {
    remarks.assume(fact("hose_length", catalog.part(hoses.front()).name, connection.name, *plan.hose_length),
                   key_of(inputs.job, connection, "hose length"));
  }
  plan.run_length = rigid + *plan.hose_length * static_cast<double>(hoses.size()) - taken_aside;
  if (!connection.hose_length && plan.gap) plan.run_length = std::min(plan.run_length, *plan.gap);  // the rest is slack
}

void count_clamps(const Catalog& catalog, ConnectionPlan& plan) {
  for (const chain::RunJoint& joint : plan.chain()->joints) {
    if (!is_clamped(catalog, joint)) continue;
    ++plan.hose_joints;
    plan.clamps += static_cast<int>(bands_on(joint.make_up).size());
  }
}

/// What the hoses of a run are longer than their gap by, where that lies in a loop.
std::optional<Length> hangs_through(const Catalog& catalog, const ConnectionPlan& plan, Length aside) {
  const std::vector<PartId> hoses = sold_by_length_in(catalog, *plan.chain());
  if (hoses.empty() || !plan.hose_length) return std::nullopt;
  const Length whole = rigid_length(catalog, *plan.chain()) + *plan.hose_length * static_cast<double>(hoses.size());
  const Length most = *plan.gap + std::max(*plan.gap * kMostSlack, kLeastSlack) + aside;
  return quantity::more_than(whole, most) ? std::optional(whole - *plan.gap) : std::nullopt;
}

/// The request without what was taken, and without such needs.
template <class Is>
chain::ChainRequest asked_without(const chain::ChainRequest& asked, Is is) {
  chain::ChainRequest request = asked;
  request.taken.reset();
  std::erase_if(request.needs, is);
  return request;
}

/// End to end, of the shortest run between the connection's ports that has no hose, a union in place of that; what else
/// the job needs in it is in it. nullopt: there is none.
std::optional<Length> shortest_rigid_run(RunSearch& search, const ConnectionPlan& plan) {
  const Catalog& catalog = search.finder().catalog();
  const auto bends = [](const catalog::Part& part) { return part.flexible; };
  // "hose" is a word of rigid parts, too.
  chain::ChainRequest request = asked_without(plan.request, [&](const chain::Need& need) {
    return std::any_of(need.parts.begin(), need.parts.end(), [&](PartId part) { return bends(catalog.part(part)); });
  });
  if (request.needs.size() < plan.request.needs.size()) {
    chain::Need in_place{"union", {}};
    for (std::uint32_t row = 0; row < catalog.parts().size(); ++row)
      if (catalog.part({row}).closing && !bends(catalog.part({row}))) in_place.parts.push_back({row});
    request.needs.push_back(std::move(in_place));
  }
  request.order = chain::Order::length;
  request.banned.resize(catalog.parts().size(), false);
  for (std::size_t row = 0; row < request.banned.size(); ++row)
    if (bends(catalog.parts()[row])) request.banned[row] = true;
  const chain::Answer& answer = search.find(request, {});
  const auto* chain = std::get_if<chain::Chain>(&answer);
  return chain != nullptr ? std::optional(chain->length) : std::nullopt;
}

/// A hose goes into the connection's gap, in place of a union where one is asked for.
bool hose_fits_gap(RunSearch& search, const ConnectionPlan& plan, Length offset) {
  const Catalog& catalog = search.finder().catalog();
  chain::ChainRequest request = asked_without(plan.request, [&](const chain::Need& need) {
    return std::all_of(need.parts.begin(), need.parts.end(), [&](PartId part) { return catalog.part(part).closing; });
  });
  chain::Need hose{"hose", {}};
  for (std::uint32_t row = 0; row < catalog.parts().size(); ++row)
    if (const catalog::Part& part = catalog.part({row}); part.flexible && part.cut_to_length && !part.remnant)
      hose.parts.push_back({row});
  if (hose.parts.empty()) return false;
  request.needs.push_back(std::move(hose));
  return search.can_join(request, chain::Span{*plan.gap, offset, Length()});
}

/// Room in the gap for a run without a hose, as far as its threads give.
bool has_room_for_rigid(RunSearch& search, const ConnectionPlan& plan) {
  const auto shortest = shortest_rigid_run(search, plan);
  return shortest && quantity::at_most(*shortest, *plan.gap + plan.run_tolerance);
}

void check_gap(const Inputs& inputs, RunSearch& search, ConnectionPlan& plan, const JobConnection& connection) {
  if (!plan.gap || (plan.chain()->span && !plan.gap_assumed)) return;
  const auto least = lies_straight(inputs.job, connection) ? least_with_hose(inputs.catalog, plan) : std::nullopt;
  const Length may_be_off = plan.gap_assumed ? kGapMayBeOff : Length{};
  if (least && *plan.gap + plan.run_tolerance + may_be_off < *least) {
    plan.missed_gap = MissedGap{false, true, *least - *plan.gap, least, has_room_for_rigid(search, plan)};
    return;
  }
  if (plan.chain()->span) return;
  if (!plan.hose_length && connection.offset && *connection.offset > inches(0.25))
    plan.cautions.push_back(fact("ports_out_of_line", *connection.offset));
  const Length off = *plan.gap - plan.run_length;
  const bool too_long = off < metres(0.0);
  const Length miss = too_long ? off * -1.0 : off;
  if (const auto over = hangs_through(inputs.catalog, plan, connection.offset.value_or(metres(0.0)))) {
    plan.missed_gap = MissedGap{true, true, *over, std::nullopt};
    return;
  }
  // A hose that is a little too long hangs through.
  if (miss <= plan.run_tolerance || (plan.hose_length && too_long)) return;
  const bool gives_way = too_long && (moves(plan.request.from.freedom) || moves(plan.request.to.freedom));
  // What hangs under the table's floor takes of an assumed gap and never adds to it: a run too long for that does not
  // go in. A hose of a length that the job gives is as short as it is.
  if (!gives_way && (!plan.gap_assumed || too_long || plan.hose_length || quantity::more_than(miss, kOffAssumed))) {
    plan.missed_gap = MissedGap{too_long, plan.hose_length.has_value(), miss};
    if (!too_long) return;
    plan.missed_gap->rigid_fits = has_room_for_rigid(search, plan);
    plan.missed_gap->hose_fits = hose_fits_gap(search, plan, connection.offset.value_or(Length()));
    return;
  }
  plan.cautions.push_back(fact(too_long ? "run_too_long" : "run_too_short", miss, *plan.gap, plan.run_tolerance));
}

}  // namespace riserun::plan
