#include "plan/stage/work.h"

#include "plan/judge/dip.h"
#include "plan/stage/leak_test_steps.h"
#include "plan/stage/lid_map.h"
#include "plan/stage/lid_openings.h"
#include "plan/stage/lines_to_table.h"
#include "plan/stage/made_up.h"
#include "plan/stage/prove_relief.h"
#include "plan/stage/relief_valves.h"
#include "plan/stage/stay_places.h"
#include "quantity/nearly.h"

#include <algorithm>
#include <iterator>
#include <optional>
#include <string>
#include <utility>

namespace riserun::plan {

namespace {

using quantity::Facts;
using quantity::Texts;
using reservoir::Insertion;

class Work {
 public:
  Work(const Inputs& inputs, const Plan& plan) : inputs_(inputs), plan_(plan) {}

  WorkPlan written() {
    while_open();
    close_and_test();
    build_all();
    // Each phase as a whole: what is made up in the vise is there when the first run is begun.
    std::stable_sort(work_.steps.begin(), work_.steps.end(),
                     [](const WorkStep& a, const WorkStep& b) { return a.phase < b.phase; });
    first_fill();
    return std::move(work_);
  }

 private:
  void add(WorkPhase phase, Fact what, std::string of = {}, std::size_t number = 0) {
    work_.steps.push_back({all_in_.value_or(phase), std::move(what), std::move(of), static_cast<int>(number)});
  }
  void while_open();
  void place_baffles();
  void put_in_stays();
  void cut_openings_over_stays();
  void cut_hole_for_coupling();
  void hang_in_bushing(WorkPhase phase);
  void hang_riser();
  Fact weld_lid(const reservoir::SupportLayout& layout) const;
  void put_coupling_on_riser(WorkPhase phase);
  void close_and_test();
  void put_on_for_proof(const std::string& name);
  void build_for_test(const ConnectionPlan& connection);
  /// A run that is being built, as far as it has come.
  struct Begun {
    explicit Begun(const ConnectionPlan& of) : connection(&of), made(*of.run()) {}
    const ConnectionPlan* connection;
    MadeUp made;
    std::size_t next = 0;  // row of its steps
    std::optional<HoseOnLast> hose;
  };
  void build_all();
  void build_lines_to_table(const std::vector<const ConnectionPlan*>& lines);
  void build(const ConnectionPlan& connection);
  void build_to(Begun& begun, std::size_t end);
  void finish(Begun& begun);
  bool has_relief_valve(const ConnectionPlan& connection) const;
  void purge();
  Texts handles_of(const chain::Run& run) const;
  std::optional<std::string> dip_port() const;
  void charge();
  void first_fill();
  std::string riser_bung_name() const { return plan_.riser.bung.empty() ? "the riser's bung" : plan_.riser.bung; }

  const Inputs& inputs_;
  const Plan& plan_;
  WorkPlan work_;
  std::optional<WorkPhase> all_in_;      // whatever phase the steps of a run are of otherwise
  std::vector<std::string> on_already_;  // connections that are on since the leak test
};

void Work::while_open() {
  const JobReservoir& reservoir = inputs_.job.reservoir;
  const bool closed = inputs_.settled.lid_closed;
  if (const auto& layout = reservoir.supports.layout; layout && !closed) {
    // As the cut list has them: one along is in pieces between those across.
    const int baffles = layout->baffles_across + layout->baffles_along * (layout->baffles_across + 1);
    if (baffles > 0) {
      place_baffles();
      add(WorkPhase::before_lid,
          fact(reservoir.supports.passages.value_or(true) ? "work_baffles" : "work_tight_baffles", baffles));
    }
    if (const auto& holes = plan_.walls.mouse_holes)
      add(WorkPhase::before_lid, fact("work_mouse_holes", holes->along, holes->height));
    // Bays that are the baffles' own take no bar.
    if (layout->bare) add(WorkPhase::before_lid, fact("work_stays_of_your_own"));
    put_in_stays();
  }
  Texts to_weld;
  for (const JobPort& port : reservoir.ports) {
    // Of a bushing that is screwed in it is the coupling round it.
    const bool screwed_in = port.bung == reservoir::BungKind::double_tapped_bushing;
    if (port.bung == reservoir::BungKind::welded_riser) continue;  // it is welded in itself
    if (!port.welded_in.value_or(!screwed_in))
      to_weld.push_back(screwed_in ? port.name + " (its coupling)" : port.name);
  }
  cut_hole_for_coupling();
  if (!to_weld.empty())
    add(WorkPhase::before_lid, fact(closed ? "work_bungs_into_closed" : "work_bungs", std::move(to_weld)));
  hang_riser();
  if (closed) return;
  cut_openings_over_stays();
  add(WorkPhase::before_lid, fact("work_last_look"));
}

// The job says how many; the walls' bays, and with them their limit, are those of even spacing.
void Work::place_baffles() {
  Facts places;
  for (const bool from_left : {true, false}) {
    std::vector<Length> middles;
    for (const LidSeam& seam : plan_.lid_map.seams)
      if (seam.baffle && seam.across == from_left) middles.push_back(seam.at);
    if (!middles.empty()) places.push_back(places_of_baffles(middles, from_left));
  }
  add(WorkPhase::before_lid, fact("work_baffle_places", std::move(places)));
}

/// A bar of the lid goes in before the lid, like a baffle: nobody comes to it from below afterwards.
void Work::put_in_stays() {
  const std::vector<reservoir::StayBars>& bars = plan_.walls.bars;
  if (bars.empty()) return;
  add(WorkPhase::before_lid, fact("work_stay_places", places_of_all_stays(inputs_, bars)));
  add(WorkPhase::before_lid, fact("work_stays"));
  if (std::any_of(bars.begin(), bars.end(), [](const reservoir::StayBars& each) { return each.wall == "lid"; }))
    add(WorkPhase::before_lid, fact("work_lid_bars"));
}

/// Over what ends at the lid, before it lies on: from inside nobody welds it.
void Work::cut_openings_over_stays() {
  Facts openings;
  Length open_to{};
  for (const LidOpenings& each : plan_.lid_map.openings) {
    openings.push_back(cut_of(each));
    open_to = std::max(open_to, each.open_to);
  }
  if (openings.empty()) return;
  if (open_to > metres(0.0)) openings.push_back(fact("slots_are_bevelled", open_to));
  add(WorkPhase::before_lid, fact("work_openings_over_stays", std::move(openings)));
}

/// In a lid that is closed a wider coupling takes the place of what the riser would have hung in.
void Work::cut_hole_for_coupling() {
  if (!plan_.riser.bushing || !inputs_.settled.lid_closed) return;
  for (const LidBung& bung : plan_.lid_map.bungs)
    if (bung.port == plan_.riser.bung && bung.to_weld && bung.hole > metres(0.0))
      add(WorkPhase::before_lid, fact("work_hole_for_coupling", bung.port, plan_.riser.bushing->large, bung.hole));
}

void Work::hang_in_bushing(WorkPhase phase) {
  const RiserPlan& riser = plan_.riser;
  add(riser.riser.insertion == Insertion::through_the_bung ? WorkPhase::in_the_vise : WorkPhase::before_lid,
      fact(riser.riser.is_stock_uncut ? "work_riser_for_bushing_as_it_is" : "work_cut_riser_for_bushing",
           riser.request.pipe.name, riser.riser.cut_length, riser.bung_projection));
  add(phase,
      fact(riser.riser.insertion == Insertion::through_the_bung ? "work_bushing_from_above" : "work_bushing_then_riser",
           riser_bung_name(), riser.riser.clearance, riser.bushing->large, riser.bushing->small));
}

void Work::hang_riser() {
  const RiserPlan& riser = plan_.riser;
  if (!riser.material || riser.riser.insertion == Insertion::cannot_go_in) return;
  const bool from_above = riser.riser.insertion == Insertion::through_the_bung;
  const WorkPhase phase = from_above ? WorkPhase::on_the_tank : WorkPhase::before_lid;
  if (riser.bushing) return hang_in_bushing(phase);
  if (riser.holder)
    for (std::size_t i = 0; i < riser.holder->steps.size(); ++i)
      add(WorkPhase::before_lid, riser.holder->steps[i].what, "riser", i + 1);
  add(from_above ? WorkPhase::in_the_vise : WorkPhase::before_lid,
      riser.riser.insertion == Insertion::welded_in
          ? fact(riser.stock_part ? "work_cut_welded_riser_of_stock" : "work_cut_welded_riser", riser.request.pipe.name,
                 riser.riser.cut_length, riser.riser.cut_length - riser.request.above_lid)
          : fact(riser.riser.is_stock_uncut ? "work_riser_as_it_is" : "work_cut_riser", riser.request.pipe.name,
                 riser.riser.cut_length, riser.bung_projection));
  if (riser.riser.insertion == Insertion::welded_in) {
    add(phase, fact("work_weld_riser", riser.riser.clearance));
    put_coupling_on_riser(phase);
    return;
  }
  add(phase, fact(from_above ? "work_riser_from_above" : "work_riser_from_inside", riser_bung_name(),
                  riser.riser.clearance, inputs_.settled.box.height - riser.riser.end_height));
}

/// A female port over a riser that is welded through the lid is that of a coupling on the riser's upper thread. Its
/// sealant would not stand the weld.
void Work::put_coupling_on_riser(WorkPhase phase) {
  const JobPort* port = riser_bung(inputs_.job);
  if (port == nullptr || !port->type.valid()) return;
  const catalog::PortType& type = inputs_.catalog.port_type(port->type);
  if (type.end == catalog::End::female)
    add(phase, fact("work_coupling_on_riser", inputs_.catalog.size_name(type.size), riser_bung_name()));
}

/// Through every opening that was cut, and no more: what is left out is not welded, and the walls' limit is not there.
Fact Work::weld_lid(const reservoir::SupportLayout& layout) const {
  Facts through;
  for (const LidOpenings& each : plan_.lid_map.openings) through.push_back(weld_through(each));
  if (layout.bare) through.push_back(fact("weld_to_stays_of_your_own"));
  return through.empty() ? fact("work_weld_lid") : fact("work_weld_lid_to", plan_.walls.loads_at, std::move(through));
}

void Work::close_and_test() {
  if (!inputs_.settled.lid_closed) {
    const auto& layout = inputs_.job.reservoir.supports.layout;
    add(WorkPhase::lid, layout ? weld_lid(*layout) : fact("work_weld_lid"));
  }
  const LeakTestPlan& test = plan_.leak_test;
  for (const ConnectionPlan& connection : plan_.connections)
    if (test.possible && closes_for_good(test, connection.from)) build_for_test(connection);
  add(WorkPhase::leak_test, work_of_leak_test(test));
  for (const Proof& proof : relief_proofs(inputs_, plan_)) {
    if (proof.on_the_tank()) put_on_for_proof(proof.connection);
    add(WorkPhase::leak_test, proof.what, proof.connection);
  }
}

/// It stays there: nobody screws a valve in twice.
void Work::put_on_for_proof(const std::string& name) {
  const ConnectionPlan* connection = connection_named(plan_.connections, name);
  if (connection == nullptr || connection->run() == nullptr || !connection->run()->buildable) return;
  add(WorkPhase::leak_test, fact("work_plug_out_for_valve", connection->from), name);
  build_for_test(*connection);
}

void Work::build_for_test(const ConnectionPlan& connection) {
  on_already_.push_back(connection.name);
  all_in_ = WorkPhase::leak_test;
  build(connection);
  all_in_.reset();
}

void Work::build_all() {
  std::vector<const ConnectionPlan*> order = in_build_order(plan_);
  std::erase_if(order, [&](const ConnectionPlan* each) {
    return std::find(on_already_.begin(), on_already_.end(), each->name) != on_already_.end();
  });
  std::vector<const ConnectionPlan*> to_table;
  const auto joins = [&](const ConnectionPlan* each) { return build_rank(plan_, *each) == BuildRank::to_table; };
  std::copy_if(order.begin(), order.end(), std::back_inserter(to_table), joins);
  for (const ConnectionPlan* connection : order) {
    if (!joins(connection))
      build(*connection);
    else if (connection == to_table.front())
      build_lines_to_table(to_table);
  }
}

/// The table is set down once: what stands on tank and table by then goes together in that one move, and every other
/// line is closed when it stands.
void Work::build_lines_to_table(const std::vector<const ConnectionPlan*>& lines) {
  std::vector<Begun> held;
  for (const ConnectionPlan* line : lines) {
    Begun begun(*line);
    begun.hose = hose_on_last(inputs_.catalog, *line);
    if (begun.hose && table_goes_onto(plan_, *line, *begun.hose)) held.push_back(std::move(begun));
  }
  Facts hoses;
  for (Begun& begun : held) {
    const ConnectionPlan& line = *begun.connection;
    const bool hangs = hose_hangs_on_table(plan_, line, *begun.hose);
    const std::string title = part_title(inputs_.catalog, begun.hose->hose);
    add(WorkPhase::on_the_tank,
        fact(hangs ? "work_table_held_up_hose_hangs" : "work_table_held_up", title, begun.hose->free), line.name);
    hoses.push_back(fact(hangs ? "hose_onto_lower_barb" : "barb_into_hose", title, begun.hose->into, line.name));
    std::size_t last = 0;
    while (last < line.run()->steps.size() && line.run()->steps[last].joint != begun.hose->joint) ++last;
    build_to(begun, last);
  }
  if (held.empty())
    add(WorkPhase::on_the_tank, fact("work_table_in_place"));
  else
    add(WorkPhase::on_the_tank, fact("work_table_onto_hose", std::move(hoses)), held.front().connection->name);
  for (Begun& begun : held) finish(begun);
  for (const ConnectionPlan* line : lines)
    if (std::none_of(held.begin(), held.end(), [&](const Begun& begun) { return begun.connection == line; }))
      build(*line);
}

void Work::build(const ConnectionPlan& connection) {
  Begun begun(connection);
  begun.hose = hose_on_last(inputs_.catalog, connection);
  finish(begun);
}

/// @param end  row of the first step that is left
void Work::build_to(Begun& begun, std::size_t end) {
  const std::vector<chain::BuildStep>& steps = begun.connection->run()->steps;
  for (; begun.next < end; ++begun.next) {
    const chain::BuildStep& step = steps[begun.next];
    add(begun.made.made_in_place(step) ? WorkPhase::on_the_tank : WorkPhase::in_the_vise, step.what,
        begun.connection->name, begun.next + 1);
  }
}

void Work::finish(Begun& begun) {
  const ConnectionPlan& connection = *begun.connection;
  const chain::Run& run = *connection.run();
  // What the table was set down on has been said.
  if (begun.hose && !table_goes_onto(plan_, connection, *begun.hose)) {
    std::size_t last = begun.next;
    while (last < run.steps.size() && run.steps[last].joint != begun.hose->joint) ++last;
    build_to(begun, last);
    add(WorkPhase::on_the_tank,
        fact(begun.hose->bends_on ? "work_bow_hose" : "work_hose_between_fixed_ports",
             part_title(inputs_.catalog, begun.hose->hose), begun.hose->into),
        connection.name);
  }
  build_to(begun, run.steps.size());
  if (has_relief_valve(connection)) add(WorkPhase::on_the_tank, fact("work_relief_upright"), connection.name);
  if (Texts handles = handles_of(run); !handles.empty())
    add(WorkPhase::on_the_tank, fact("work_handles", std::move(handles)), connection.name);
  if (connection.branched) add(WorkPhase::on_the_tank, fact("work_carry_arms"), connection.name);
}

bool Work::has_relief_valve(const ConnectionPlan& connection) const {
  return std::any_of(plan_.ways.begin(), plan_.ways.end(), [&](const Way& way) {
    return way.connection == connection.name && (way.use == WayUse::relief || way.use == WayUse::idle_relief);
  });
}

/// Of a job that makes hydrogen and says that vent and purge handle it: where the vent leads, and how long air is blown
/// through. Five volumes leave e^-5 of what was there, under a hundredth (mixed, common practice).
void Work::purge() {
  const Job& job = inputs_.job;
  if (!(job.cutting.aluminium || job.cutting.magnesium) || !job.vent.stays_open || !job.vent.purged) return;
  add(WorkPhase::first_fill, fact("work_vent_outdoors"));
  const auto& delivery = plan_.transfer.system.air.free_air_delivery;
  const VolumeFlow flow = delivery ? *delivery : plan_.air.greatest_flow;
  constexpr double kVolumes = 5.0;
  if (flow > VolumeFlow())
    add(WorkPhase::first_fill, fact("work_purge", kVolumes * plan_.levels.ullage_at_charge / flow, kVolumes));
}

/// What a hand works, and the dials.
Texts Work::handles_of(const chain::Run& run) const {
  Texts handles;
  const auto add_if_any = [&](PartId id) {
    const catalog::Part& part = inputs_.catalog.part(id);
    const catalog::Family& family = inputs_.catalog.family(part.family);
    const bool by_hand = family.can_shut && family.check == catalog::CheckKind::none;
    if (by_hand || family.role == catalog::Role::gauge) handles.push_back(part.name);
  };
  for (const chain::RunPart& link : run.parts) add_if_any(link.part);
  for (const chain::RunEnd& end : run.ends)
    if (end.device) add_if_any(*end.device);
  return handles;
}

/// A port in the lid that a rod goes down through: the vent's, which is open when the water is read, else another.
std::optional<std::string> Work::dip_port() const {
  if (const JobPort* port = plan::dip_port(plan_)) return port->name;
  for (const JobPort& port : inputs_.job.reservoir.ports)
    if (port.name != plan_.riser.bung && port.place.value_or(Place::lid) == Place::lid) return port.name;
  return std::nullopt;
}

/// Where the water goes in, and with what its depth is read.
void Work::charge() {
  const std::optional<std::string> port = dip_port();
  if (!plan_.levels.mouth_height && !inputs_.job.riser.foot_valve && plan_.water_connection &&
      !runs_one_way(inputs_.catalog, plan_.ways, plan_.connections[*plan_.water_connection].name))
    add(WorkPhase::first_fill, fact("work_charge_at_table", plan_.levels.charge));
  else if (port)
    add(WorkPhase::first_fill, fact("work_charge_at_port", *port, plan_.levels.charge));
  if (port) add(WorkPhase::first_fill, fact("work_dip", *port, plan_.levels.charge_depth, plan_.levels.top_up_mark));
}

void Work::first_fill() {
  if (plan_.verdict == Verdict::refused) return;
  if (plan_.verdict == Verdict::not_yet)
    add(WorkPhase::first_fill, fact("work_settle_what_is_open", plan_.findings.size()));
  add(WorkPhase::first_fill, fact("work_charge", plan_.levels.charge_depth, plan_.levels.charge_mark_below_lid));
  charge();
  purge();
  add(WorkPhase::first_fill, work_of_knob(plan_));
  add(WorkPhase::first_fill, fact("work_watch_first_fill"));
}

}  // namespace

WorkPlan plan_work(const Inputs& inputs, const Plan& plan) { return Work(inputs, plan).written(); }

}  // namespace riserun::plan
