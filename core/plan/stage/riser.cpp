// The riser: which bung it hangs in, what pipe it is, and what it is cut from.
#include "plan/stage/riser.h"

#include "catalog/load/load.h"
#include "plan/job/weld_bung.h"
#include "plan/stage/bungs.h"
#include "plan/stage/levels.h"
#include "plan/stage/riser_bushing.h"
#include "plan/stage/riser_holder.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <utility>

namespace riserun::plan {

namespace {

using catalog::End;
using catalog::JointSize;
using reservoir::BungKind;
using reservoir::RiserRequest;

const char* const kAssumedSize = "1";
const Length kBetweenThreads = inches(0.5);  // riser and nipple in one bung: common practice
const Length kOverTheLid = inches(3.0);      // of a welded riser: thread and the jaw of a wrench (common practice)
const double kLeastShareUncut = 0.75;        // a nipple far shorter than the riser leaves too much water behind

/// Straight pipe with the same male end on both sides: nipples and longer pieces, in one material.
struct Nipple {
  PartId part;
  Length length{};
};

/// Shortest first.
std::vector<Nipple> nipples(const Catalog& catalog, PortTypeId end, MaterialId material) {
  std::vector<Nipple> found;
  for (const catalog::PortUse& use : catalog.uses(end)) {
    const catalog::Part& part = catalog.part(use.part);
    if (use.port == 0 && part.material == material && !part.remnant && catalog::is_threaded_pipe(catalog, part))
      found.push_back({use.part, straight_length(part)});
  }
  std::stable_sort(found.begin(), found.end(), [](const Nipple& a, const Nipple& b) { return a.length < b.length; });
  return found;
}

/// The male end that screws into that bung from below: the pipe's thread of the bung's own kind of joint.
std::optional<PortTypeId> riser_thread(const Catalog& catalog, PortTypeId bung, const std::string& size) {
  const catalog::PortType& type = catalog.port_type(bung);
  const auto wanted = catalog.find_size(size);
  if (!wanted) return std::nullopt;
  for (const catalog::Mate& mate : catalog.mates(bung)) {
    const catalog::PortType& other = catalog.port_type(mate.other);
    if (other.end != End::male || !catalog.kind(other.kind).tapered) continue;
    return catalog.find_port_type({other.kind, *wanted, End::male});
  }
  if (type.end == End::male && catalog.kind(type.kind).tapered)
    return catalog.find_port_type({type.kind, *wanted, End::male});
  return std::nullopt;
}

/// True if the catalog knows how wide that thread is.
bool is_measured(const Catalog& catalog, PortTypeId thread) {
  const JointSize* joint = catalog.joint_size(catalog.port_type(thread));
  return joint != nullptr && joint->outside_diameter > metres(0.0);
}

/// Where the job has no port for it: the bung that most fitters would weld in.
JobPort assumed_bung(const Inputs& inputs, Remarks& remarks) {
  JobPort port;
  const Catalog& catalog = inputs.catalog;
  const std::string size = inputs.job.riser.pipe_size.value_or(kAssumedSize);
  const auto kind = catalog.find_kind("npt");
  const auto row = catalog.find_size(size);
  if (kind && row) port.type = catalog.find_port_type({*kind, *row, End::female}).value_or(PortTypeId{});
  port.bung = BungKind::full_coupling;
  remarks.assume(fact("riser_bung", size), "riser.bung");
  return port;
}

/// What of a welded riser stands over the lid's inside: up to its face, else enough for thread and wrench.
void settle_above_lid(const Inputs& inputs, const JobPort& port, RiserRequest& request, Remarks& remarks) {
  if (port.face_height) {
    request.above_lid = std::max(metres(0.0), *port.face_height - inputs.settled.box.height);
    return;
  }
  request.above_lid = port.bung_length.value_or(kOverTheLid);
  if (!port.bung_length) remarks.assume(fact("welded_riser_above_lid", request.above_lid));
}

void settle_bung(const Inputs& inputs, const JobPort& port, RiserRequest& request, Remarks& remarks) {
  if (port.bung) {
    request.bung = *port.bung;
  } else {
    request.bung = BungKind::full_coupling;
    remarks.assume(fact("kind_of_riser_bung"));
  }
  const catalog::Part* part = weld_bung(inputs.catalog, port, request.bung);
  const JointSize* joint = port.type.valid() ? inputs.catalog.joint_size(inputs.catalog.port_type(port.type)) : nullptr;
  const Length make_up = joint != nullptr ? joint->make_up() : inches(0.7);
  const Length twice = make_up * 2.0 + kBetweenThreads;
  const Length usual = part != nullptr                           ? straight_length(*part)
                       : request.bung == BungKind::half_coupling ? twice / 2.0
                                                                 : twice;
  if (request.bung == BungKind::welded_riser) return settle_above_lid(inputs, port, request, remarks);
  if (request.bung == BungKind::double_tapped_bushing) {  // until the pipe is known, and with it the bushing
    request.bung_length = twice;
    request.bung_projection = twice / 2.0;
    return;
  }
  if (port.bung_length) {
    request.bung_length = *port.bung_length;
  } else {
    request.bung_length = usual;
    remarks.assume(part != nullptr ? fact("bung_length_of_catalog", usual, inputs.catalog.family(part->family).standard)
                                   : fact("bung_length_for_two_threads", usual, kBetweenThreads));
  }
  if (port.projects) {
    request.bung_projection = *port.projects;
  } else if (request.bung == BungKind::full_coupling && port.face_height) {
    request.bung_projection =
        std::max(metres(0.0), inputs.settled.box.height + request.bung_length - *port.face_height);
  } else if (request.bung == BungKind::full_coupling) {
    request.bung_projection = request.bung_length / 2.0;
    remarks.assume(fact("bung_projection", request.bung_projection));
  }
}

MaterialId settle_material(const Inputs& inputs, const std::vector<PartId>& bin_nipples, Remarks& remarks) {
  const Catalog& catalog = inputs.catalog;
  if (inputs.job.riser.material) return *inputs.job.riser.material;
  if (!bin_nipples.empty()) {
    const MaterialId material = catalog.part(bin_nipples.front()).material;
    remarks.assume(fact("riser_material_of_bin", catalog.material(material).name), "riser.material");
    return material;
  }
  // It stands in the water with the reservoir's own metal, which iron eats where that is aluminium.
  const reservoir::WeldMetal metal = inputs.settled.metal.weld_metal;
  const auto material = catalog.find_material(metal == reservoir::WeldMetal::stainless_steel ? "stainless"
                                              : metal == reservoir::WeldMetal::aluminium     ? "aluminium"
                                                                                             : "black-iron");
  const MaterialId chosen = material.value_or(MaterialId{0});
  remarks.assume(fact(inputs.job.reservoir.sheet.metal.empty() ? "riser_material" : "riser_material_of_reservoir",
                      catalog.material(chosen).name),
                 "riser.material");
  return chosen;
}

/// The nipples of the bin that could be the riser, and pieces of them with a thread left, the longest first; of one
/// length the piece last, as the riser's lower end needs no thread.
std::vector<PartId> nipples_in_bin(const Inputs& inputs, PortTypeId thread) {
  std::vector<PartId> found;
  for (const catalog::BinItem& item : inputs.job.bin.items) {
    const catalog::Part& part = inputs.catalog.part(item.part);
    if (item.count > 0 && part.sawn_ends < 2 && catalog::is_threaded_pipe(inputs.catalog, part) &&
        part.ports[0].type == thread)
      found.push_back(item.part);
  }
  std::stable_sort(found.begin(), found.end(), [&inputs](PartId a, PartId b) {
    const catalog::Part &one = inputs.catalog.part(a), &other = inputs.catalog.part(b);
    const Length of_one = straight_length(one), of_other = straight_length(other);
    return of_one != of_other ? of_one > of_other : one.sawn_ends < other.sawn_ends;
  });
  return found;
}

void settle_pipe(const Inputs& inputs, const JobPort& port, PortTypeId thread, MaterialId material, RiserPlan& plan,
                 Remarks& remarks) {
  const Catalog& catalog = inputs.catalog;
  const JointSize* joint = catalog.joint_size(catalog.port_type(thread));
  const std::vector<Nipple> made = nipples(catalog, thread, material);
  RiserRequest& request = plan.request;
  reservoir::RiserPipe& pipe = request.pipe;
  pipe.name = fmt::format("{} {} pipe", plan.size, catalog.material(material).name);
  if (joint != nullptr) {
    pipe.outside_diameter = joint->outside_diameter;
    pipe.make_up = joint->make_up();
    pipe.make_up_tolerance = joint->make_up_tolerance;
    pipe.bore = joint->bore;
  }
  if (!made.empty()) pipe.bore = catalog.part(made.front().part).ports[0].bore;
  if (!(pipe.bore > metres(0.0))) {
    pipe.bore = pipe.outside_diameter * 0.8;
    remarks.assume(fact("riser_bore", pipe.bore));
  }
  const JointSize* upper = port.type.valid() ? catalog.joint_size(catalog.port_type(port.type)) : nullptr;
  const bool through = request.bung == BungKind::full_coupling || request.bung == BungKind::double_tapped_bushing;
  if (upper != nullptr && through) pipe.upper_make_up = upper->make_up();
  const catalog::Part* body = weld_bung(catalog, port, request.bung);
  request.bung_opening = body != nullptr ? body->ports[0].bore : pipe.bore;
  if (upper != nullptr && request.bung == BungKind::double_tapped_bushing)
    request.bung_opening = upper->outside_diameter;
}

std::vector<Length> lengths_of(const Catalog& catalog, const std::vector<PartId>& parts) {
  std::vector<Length> lengths;
  lengths.reserve(parts.size());
  for (const PartId part : parts) lengths.push_back(straight_length(catalog.part(part)));
  std::sort(lengths.begin(), lengths.end());
  return lengths;
}

std::optional<PartId> with_length(const Catalog& catalog, const std::vector<PartId>& parts, Length length) {
  for (const PartId part : parts)
    if (straight_length(catalog.part(part)) == length) return part;
  return std::nullopt;
}

constexpr std::string_view kServesUncut = "stock_serves_uncut";  // the code of a note

/// The bin first: what it cannot do, the shelf does. Cut to length and used uncut are two questions.
void choose_stock(const Catalog& catalog, const std::vector<PartId>& bin, const std::vector<PartId>& shelf,
                  RiserPlan& plan) {
  std::vector<Length>& lengths = plan.request.pipe.stock_nipples;
  const Length cut = reservoir::plan_riser(plan.request).cut_length;
  const auto too_short = [&](Length length) { return length < cut * kLeastShareUncut; };
  lengths = lengths_of(catalog, bin);
  for (const PartId part : bin)
    if (catalog.part(part).sawn_ends > 0)
      plan.request.pipe.with_one_thread.push_back(straight_length(catalog.part(part)));
  std::erase_if(lengths, too_short);
  const reservoir::Riser from_bin = reservoir::plan_riser(plan.request);
  for (const Length& length : lengths_of(catalog, shelf)) {
    const bool for_cutting = length >= cut;
    if (!too_short(length) && (for_cutting ? !from_bin.stock : !from_bin.stock_uncut)) lengths.push_back(length);
  }
  plan.riser = reservoir::plan_riser(plan.request);
  const auto choose = [&](const std::optional<Length>& length, std::optional<PartId>& part, bool& is_from_bin) {
    if (!length) return;
    part = with_length(catalog, bin, *length);
    is_from_bin = part.has_value();
    if (!part) part = with_length(catalog, shelf, *length);
  };
  choose(plan.riser.stock, plan.stock_part, plan.stock_from_bin);
  choose(plan.riser.stock_uncut, plan.uncut_part, plan.uncut_from_bin);
}

/// Stands in for a riser that cannot be made, so that the rest of the plan still has figures: 1 in schedule 40 pipe
/// (ASME B36.10M).
void assume_pipe(RiserPlan& plan, Remarks& remarks) {
  plan.request.pipe.name = "1 in schedule 40 pipe";
  plan.request.pipe.bore = inches(1.049);
  plan.request.pipe.outside_diameter = inches(1.315);
  plan.request.bung_opening = plan.request.pipe.bore;
  plan.riser = reservoir::plan_riser(plan.request);
  remarks.assume(fact("riser_pipe"), "riser.pipe");
}

/// Under a closed lid: a coupling so wide that the pipe passes it from above, and in it a bushing that holds it.
void mend_closed_lid(const Inputs& inputs, const RiserPlan& plan, Finding& finding) {
  const JobPort* bung = riser_bung(inputs.job);
  if (bung == nullptr || !bung->type.valid()) return;
  const auto bushing =
      riser_bushing(inputs.catalog, bung->type, plan.request.pipe.outside_diameter, {}, metal_of_tank(inputs.settled));
  if (!bushing || bushing->small != plan.size) return;
  Remarks unsaid;
  RiserPlan mended = plan;
  mended.request.bung = BungKind::double_tapped_bushing;
  JobPort wider = *bung;
  wider.bung_part.reset();
  wider.bung_length.reset();
  hang_in_bushing(inputs, wider, mended, unsaid);
  const Length needed = reservoir::plan_riser(mended.request).headroom_needed;
  const Length free = inches(1.0) * std::ceil((needed / inches(1.0)).value());
  Changes changes = {{kRiserInBushing, bung->name}};
  if (plan.request.headroom && *plan.request.headroom < free) changes.push_back({"riser.headroom", free});
  finding.mend = fact("riser_through_a_wider_bung", bushing->large, bung->name, bushing->small, free);
  finding.ways_to_try = {std::move(changes)};
}

void refuse_what_cannot_be(const Inputs& inputs, const RiserPlan& plan, Remarks& remarks) {
  const reservoir::Riser& riser = plan.riser;
  for (const Fact& reason : riser.refusals) {
    Finding& finding = remarks.refuse({Topic::riser, reason, {}, {}});
    if (reason.code == "riser_may_stand_on_the_floor") {
      const Length clear = std::get<Length>(reason.values.at(2));
      finding.mend = fact("riser_clearance_of", clear);
      finding.ways_to_mend = {{{"riser.clearance", clear}}};
    }
    if (reason.code == "no_headroom_for_riser") {
      const Length free = inches(1.0) * std::ceil((riser.headroom_needed / inches(1.0)).value());
      finding.mend = fact("headroom_over_bung", free, plan.bung);
      finding.ways_to_mend = {{{"riser.headroom", free}}};
    }
    if (reason.code == "pipe_never_passes_its_thread" || reason.code == "pipe_wider_than_bung")
      mend_closed_lid(inputs, plan, finding);
  }
  for (const Fact& note : riser.notes)
    if (note.code != kServesUncut) remarks.note(Topic::riser, note);
}

}  // namespace

MeasuredRiser measure_riser(const Inputs& inputs, Remarks& remarks) {
  const Job& job = inputs.job;
  const Catalog& catalog = inputs.catalog;
  const JobPort* given = riser_bung(job);
  const JobPort port = given != nullptr ? *given : assumed_bung(inputs, remarks);
  MeasuredRiser measured;
  RiserPlan& plan = measured.plan;
  plan.bung = port.name;
  plan.request.box = inputs.settled.box;
  plan.request.wanted_clearance = job.riser.clearance;
  plan.request.obstacle_height = inputs.settled.obstacle_height;
  plan.request.headroom = job.riser.headroom;
  plan.request.lid_closed = inputs.settled.lid_closed;
  plan.size = job.riser.pipe_size.value_or(port.type.valid() ? catalog.size_name(catalog.port_type(port.type).size)
                                                             : kAssumedSize);
  settle_bung(inputs, port, plan.request, remarks);
  plan.bung_projection = plan.request.bung_projection;
  plan.bung_face = plan.request.bung_length - plan.request.bung_projection + plan.request.above_lid;
  const std::optional<PortTypeId> thread =
      port.type.valid() ? riser_thread(catalog, port.type, plan.size) : std::nullopt;
  if (!thread || !is_measured(catalog, *thread)) {
    remarks.refuse({Topic::riser,
                    port.type.valid() ? fact("no_pipe_fits_port", plan.size, catalog.written(port.type))
                                      : fact("no_pipe_fits_bung", plan.size),
                    {},
                    fact("give_riser_a_pipe_thread")});
    assume_pipe(plan, remarks);
    return measured;
  }
  plan.thread = thread;
  std::vector<PartId>& in_bin = measured.in_bin;
  in_bin = nipples_in_bin(inputs, *thread);
  const MaterialId material = settle_material(inputs, in_bin, remarks);
  plan.material = material;
  std::erase_if(in_bin, [&](PartId part) { return catalog.part(part).material != material; });
  settle_pipe(inputs, port, *thread, material, plan, remarks);
  for (const Nipple& nipple : nipples(catalog, *thread, material))
    (catalog.part(nipple.part).stocked ? measured.on_shelf : measured.to_order).push_back(nipple.part);
  const bool is_threaded = plan.request.bung != BungKind::welded_riser;
  if (is_threaded && !catalog.material(material).threads && measured.on_shelf.empty() && measured.to_order.empty())
    remarks.refuse({Topic::riser,
                    fact("riser_takes_no_thread", catalog.material(material).name),
                    {},
                    fact("riser_of_what_takes_a_thread")});
  hang_in_bushing(inputs, port, plan, remarks);
  plan.bung_face = plan.request.bung_length - plan.request.bung_projection + plan.request.above_lid;
  hold_riser(inputs, port, *thread, plan, remarks);
  plan.riser = reservoir::plan_riser(plan.request);
  return measured;
}

std::vector<chain::EndPart> riser_stock(const Catalog& catalog, const MeasuredRiser& measured) {
  const Length cut = measured.plan.riser.cut_length;
  std::vector<chain::EndPart> stock;
  const auto add = [&](const std::vector<PartId>& parts, bool on_sale) {
    for (const PartId part : parts)
      if (straight_length(catalog.part(part)) >= cut) stock.push_back({part, {}, on_sale});
  };
  add(measured.in_bin, false);
  std::reverse(stock.begin(), stock.end());  // the shortest first: least is cut off
  const std::size_t of_bin = stock.size();
  add(measured.on_shelf, true);
  stock.resize(std::min(stock.size(), of_bin + 1));
  return stock;
}

RiserPlan plan_riser(const Inputs& inputs, const MeasuredRiser& measured, const BinLeft& bin_left,
                     std::optional<PartId> from_bin, Remarks& remarks) {
  const Catalog& catalog = inputs.catalog;
  RiserPlan plan = measured.plan;
  if (!plan.material) return plan;  // it cannot be made, which has been said
  const Length cut = plan.riser.cut_length;
  std::vector<PartId> bin;
  for (const PartId part : measured.in_bin) {
    const bool too_short = straight_length(catalog.part(part)) < cut;
    if (part == from_bin || (too_short && bin_left.count_of(part) > 0)) bin.push_back(part);
  }
  std::vector<PartId> shelf = measured.on_shelf;
  const auto is_long_enough = [&](PartId part) { return straight_length(catalog.part(part)) >= cut; };
  if (std::none_of(shelf.begin(), shelf.end(), is_long_enough)) {
    const auto order = std::find_if(measured.to_order.begin(), measured.to_order.end(), is_long_enough);
    if (order != measured.to_order.end()) shelf.push_back(*order);
  }
  choose_stock(catalog, bin, shelf, plan);
  refuse_what_cannot_be(inputs, plan, remarks);
  return plan;
}

void offer_uncut(const Inputs& inputs, const Levels& levels, RiserPlan& plan, Remarks& remarks) {
  reservoir::Riser& riser = plan.riser;
  if (!riser.stock_uncut) return;
  const Length end = inputs.settled.obstacle_height + riser.stock_uncut_clearance;
  // A charge that the job gives also holds a day's losses; one that is worked out rises with the riser's end.
  const Length losses = inputs.job.reservoir.charge ? levels.days_loss : Length{};
  const Volume asked = water_of_a_fill(levels) + inputs.settled.box.volume_at(losses);
  const bool enough = riser.is_stock_uncut || usable_water(inputs.settled.box, levels, end) >= asked;
  for (const Fact& note : riser.notes)
    if (enough && note.code == kServesUncut) remarks.note(Topic::riser, note);
  if (enough) return;
  std::erase_if(riser.notes, [](const Fact& note) { return note.code == kServesUncut; });
  riser.stock_uncut.reset();
  plan.uncut_part.reset();
}

}  // namespace riserun::plan
