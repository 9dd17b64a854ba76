#include "plan/judge/drain.h"
#include "plan/judge/higher_table.h"
#include "plan/judge/hose_of_size.h"
#include "plan/judge/limits.h"
#include "plan/judge/open.h"
#include "plan/judge/wide_riser.h"
#include "quantity/nearly.h"

#include <algorithm>
#include <cmath>
#include <utility>

namespace riserun::plan {

namespace {

using reservoir::BungKind;

/// A run that does not go together is asked for with a check valve all the same.
void judge_asked_check(const Plan& plan, const ConnectionPlan& line, Open& open) {
  if (table_drain(plan) != nullptr) return;
  if (const chain::Need* check = asked_check(*plan.catalog, line))
    open.refuse(Topic::connections, fact("check_valve_against_drain", line.name, check->words), {},
                fact("leave_it_out_or_drain_elsewhere", check->words), "worked out");
}

/// A one-way part stops the water one way: up, or back down.
void judge_one_way(const Plan& plan, Open& open) {
  if (plan.job.riser.foot_valve && table_drain(plan) == nullptr)
    open.refuse(Topic::riser, fact("foot_valve_against_drain"), {}, fact("leave_out_foot_valve_or_drain_elsewhere"),
                "worked out")
        .ways_to_mend = {{{"riser.foot valve", "no"}}};
  if (!plan.water_connection) return;
  const ConnectionPlan& line = plan.connections[*plan.water_connection];
  if (line.chain() == nullptr) {
    judge_asked_check(plan, line, open);
    return;
  }
  const bool from_reservoir = port_named(plan.job.reservoir.ports, line.from) != nullptr;
  for (const chain::RunPart& link : line.chain()->parts) {
    const catalog::Part& part = plan.catalog->part(link.part);
    if (!part.one_way) continue;
    const bool lets_up = (link.enter == 0) == from_reservoir;
    if (!lets_up)
      open.refuse(Topic::connections, fact("check_valve_against_fill", line.name, part.name), {},
                  fact("leave_it_out_of_the_line", part.name), "worked out");
    else if (table_drain(plan) == nullptr)
      open.refuse(Topic::connections, fact("check_valve_against_drain", line.name, part.name), {},
                  fact("leave_it_out_or_drain_elsewhere", part.name), "worked out");
  }
}

std::optional<Finding> wide_riser(const Plan& plan) {
  return wider_than_its_bung(*plan.catalog, riser_bung(plan.job), plan.riser);
}

/// The line from the riser is not necked down far below it; where it had to be, that is said.
void judge_bore(const Plan& plan, Open& open) {
  if (wide_riser(plan)) return;  // which is what narrows it
  for (const ConnectionPlan& line : plan.connections)
    if (line.missed_bore && line.run() != nullptr) {
      Finding& finding = open.not_yet(
          Topic::connections,
          fact("line_below_the_least_bore", line.name, line.missed_bore->least, line.missed_bore->share_of_riser), {},
          line.missed_bore->mend, "common practice");
      if (auto higher = higher_table(plan.job, line)) {
        higher->fact = fact("either_mend", quantity::Facts{std::move(higher->fact), fact("least_bore_of_its_own")});
        finding.or_else = {std::move(*higher)};
      }
    }
}

/// What was worked out of an assumed height is mended by giving it.
Fact height_to_give(const Plan& plan, const ConnectionPlan& line) {
  quantity::Texts ports;
  for (const std::string& name : {line.from, line.to})
    if (const JobPort* port = find_port(plan.job, name); port != nullptr && !port->face_height) ports.push_back(name);
  return fact("measure_the_assumed_gap", std::move(ports));
}

/// A rigid run that is too long for its gap: the table goes up to it, or another run goes in.
void judge_run_beyond(const Plan& plan, const ConnectionPlan& line, Open& open) {
  const MissedGap& gap = *line.missed_gap;
  quantity::Facts mends;
  auto higher = higher_table(plan.job, line);
  if (higher) mends.push_back(std::move(higher->fact));
  if (gap.rigid_fits) mends.push_back(fact("shortest_run"));
  if (gap.hose_fits) mends.push_back(fact("hose_in_place_of_union"));
  if (mends.empty()) mends.push_back(height_to_give(plan, line));
  Finding& finding = open.not_yet(Topic::connections, fact("run_beyond_its_assumed_gap", line.name, gap.off, *line.gap),
                                  Against{line.run_length, *line.gap}, fact("either_mend", std::move(mends)),
                                  "take-outs of the parts");
  if (higher) finding.ways_to_try = std::move(higher->ways_to_try);
}

/// A run that ends short of its port, or beyond it, is no run.
void judge_gaps(const Plan& plan, Open& open) {
  for (const ConnectionPlan& line : plan.connections) {
    if (line.tight_hose && line.run() != nullptr) {
      Finding& finding = open.not_yet(
          Topic::connections,
          fact("hose_bends_do_not_fit", line.name, *line.gap, line.tight_hose->radius, line.tight_hose->offset), {},
          line.tight_hose->mend, "common practice");
      if (auto higher = higher_table(plan.job, line)) finding.or_else = {std::move(*higher)};
    }
    if (line.hose_rise && line.hose_rise->short_of && line.run() != nullptr)
      open.not_yet(Topic::connections,
                   fact(line.hose_rise->same_wall ? "hose_short_of_its_bends" : "hose_short_of_its_rise", line.name,
                        line.hose_rise->rise),
                   {},
                   fact(line.hose_rise->same_wall ? "hose_for_its_bends" : "hose_for_its_rise", line.hose_rise->least),
                   "worked out");
    if (!line.missed_gap) continue;
    const MissedGap& gap = *line.missed_gap;
    if (gap.hose_takes) {
      Finding& finding = open.not_yet(
          Topic::connections, fact("no_room_for_hose", line.name, *line.gap, *gap.hose_takes), {},
          gap.rigid_fits ? fact("gap_for_hose_or_rigid", *gap.hose_takes) : fact("gap_for_hose_alone", *gap.hose_takes),
          "common practice");
      if (auto higher = higher_table(plan.job, line)) {
        if (gap.rigid_fits)
          higher->fact = fact("either_mend", quantity::Facts{std::move(higher->fact), fact("union_in_place_of_hose")});
        finding.or_else = {std::move(*higher)};
      }
      continue;
    }
    if (gap.too_long && gap.by_hose) {
      open.not_yet(Topic::connections, fact("hose_loops_in_its_gap", line.name, gap.off, *line.gap), {},
                   fact("hose_cut_to_the_gap"), "common practice");
      continue;
    }
    if (line.gap_assumed && gap.too_long) {
      judge_run_beyond(plan, line, open);
      continue;
    }
    if (line.gap_assumed) {
      Finding& finding =
          open.not_yet(Topic::connections,
                       fact(gap.by_hose ? "hose_short_of_its_assumed_gap" : "run_short_of_its_assumed_gap", line.name,
                            gap.off, *line.gap),
                       {}, height_to_give(plan, line), "worked out");
      // Its hose is cut when the gap is measured.
      if (const auto hose = hose_of_size(plan, line); hose && !gap.by_hose && !line.request.taken)
        finding.or_else = {{fact("either_mend", quantity::Facts{*finding.mend, fact("hose_takes_up_the_gap")}),
                            {},
                            {{{kNeedOf, line.name, hose}}}}};
      continue;
    }
    const Fact mend = gap.too_long  ? fact("ports_further_apart", gap.off)
                      : gap.by_hose ? fact("longer_hose", *line.hose_length + gap.off)
                                    : fact("make_run_span_the_gap", gap.off);
    open.not_yet(Topic::connections,
                 fact(gap.too_long  ? "run_beyond_its_gap"
                      : gap.by_hose ? "hose_short_of_its_gap"
                                    : "run_short_of_its_gap",
                      line.name, gap.off, *line.gap, line.run_tolerance),
                 {}, mend, "worked out");
  }
}

/// How far it has to reach is known, by its ports' heights or by tape.
bool reach_is_known(const Plan& plan, const ConnectionPlan& connection) {
  const auto asked = std::find_if(plan.job.connections.begin(), plan.job.connections.end(),
                                  [&](const JobConnection& one) { return one.name == connection.name; });
  const bool by_tape = asked != plan.job.connections.end() && asked->hose_length;
  return connection.gap || connection.hose_rise || by_tape;
}

/// It leads up from the reservoir as the line does that the riser was taken for, and the job says nothing of which.
bool goes_up_as_well(const Plan& plan, const ConnectionPlan& connection) {
  const auto goes_up = [&](const ConnectionPlan& line) {
    return port_named(plan.job.reservoir.ports, line.from) != nullptr &&
           port_named(plan.job.table.ports, line.to) != nullptr;
  };
  return !plan.job.riser.bung && plan.water_connection && goes_up(connection) &&
         goes_up(plan.connections[*plan.water_connection]);
}

/// The fill is worked out for one line: another one from the reservoir to the table uncovers at its own height and
/// takes water that nothing here counts.
void judge_second_line(const Plan& plan, Open& open) {
  const auto on = [](const std::vector<JobPort>& ports, const ConnectionPlan& connection) {
    return port_named(ports, connection.from) != nullptr ||
           std::any_of(connection.ends.begin(), connection.ends.end(),
                       [&](const std::string& end) { return port_named(ports, end) != nullptr; });
  };
  for (std::size_t row = 0; row < plan.connections.size(); ++row) {
    const ConnectionPlan& connection = plan.connections[row];
    if (row == plan.water_connection) continue;
    if (!on(plan.job.reservoir.ports, connection) || !on(plan.job.table.ports, connection)) continue;
    const auto to_table = std::count_if(connection.ends.begin(), connection.ends.end(), [&](const std::string& end) {
      return port_named(plan.job.table.ports, end) != nullptr;
    });
    // Of a line that does not go together it is not known what stands in it; that is said.
    if (plan.water_connection && joins_table_and_tank(plan.job, connection) &&
        (connection.run() == nullptr || leads_back(*plan.catalog, plan.job, plan.ways, connection))) {
      if (connection.run() != nullptr && !reach_is_known(plan, connection))
        open.not_yet(Topic::connections, fact("way_back_of_unknown_reach", connection.name), {},
                     fact("measure_the_way_back"), "worked out");
      continue;
    }
    const bool forks = connection.branched && to_table > 1;
    if (connection.branched && !forks && !plan.water_connection) {
      open.not_yet(Topic::connections, fact("line_branches_on_its_way", connection.name), {},
                   fact("line_without_branches", connection.name), "worked out");
      continue;
    }
    Finding& finding = open.not_yet(
        Topic::connections, fact(forks ? "line_forks_to_the_table" : "second_line_to_the_table", connection.name), {},
        fact(forks ? "one_inlet_alone" : "one_line_alone", connection.name), "worked out");
    finding.ways_to_try = {{{kLineLeftOut, connection.name}}};
    if (!plan.water_connection || !joins_table_and_tank(plan.job, connection)) continue;
    finding.or_else = {{std::move(*finding.mend), {}, std::move(finding.ways_to_try)}};
    finding.mend = fact("valve_in_the_way_back", connection.name);
    if (goes_up_as_well(plan, connection))
      finding.mend =
          fact("either_mend", quantity::Facts{*finding.mend, fact("name_the_riser", connection.name, connection.from)});
    finding.ways_to_try.clear();
  }
}

/// Of an inlet that is not there already.
std::vector<Mend> inlet_into_floor(const Plan& plan) {
  if (!plan.water_connection) return {};
  const ConnectionPlan& line = plan.connections[*plan.water_connection];
  for (const JobPort& port : plan.job.table.ports)
    if ((port.name == line.from || port.name == line.to) && port.place && *port.place != Place::floor)
      return {into_floor(port.name)};
  return {};
}

/// Most of the water stays under the table's own drain, which stands high up; what its check valve holds has its own
/// finding.
void judge_own_drain(const Plan& plan, Open& open) {
  const ConnectionPlan* own = drain_in_place_of_line(plan);
  const DrainPlan* drain = own != nullptr ? drain_of(plan, *own) : nullptr;
  if (drain == nullptr || drain->check || drain->left <= plan.levels.need * kMostLeftInTable) return;
  Finding& finding =
      open.not_yet(Topic::transfer, fact("own_drain_stands_high", own->name, drain->left, plan.levels.need), {},
                   fact("lower_mouth_or_own_drain"), "worked out");
  const JobPort* port = port_named(plan.job.table.ports, own->from);
  if (port != nullptr && port->place == Place::side) {
    finding.mend = fact("port_into_floor", port->name);
    finding.ways_to_try = into_floor(port->name).ways_to_try;
  }
}

/// Most of the water stays: of a mouth over the rim that is not under water, of an inlet high up the side.
void judge_drain(const Plan& plan, Open& open) {
  judge_own_drain(plan, open);
  const TransferPlan& transfer = plan.transfer;
  const bool by_foot_valve = plan.job.riser.foot_valve;  // has its own finding
  if (by_foot_valve || transfer.fill.stop != transfer::Stop::goal_reached || table_drain(plan) != nullptr) return;
  if (transfer.left_in_table <= transfer.fill.volume * kMostLeftInTable) return;
  open.not_yet(Topic::transfer, fact("table_does_not_drain", transfer.left_in_table, transfer.fill.volume), {},
               fact("lower_mouth_or_own_drain"), "worked out")
      .or_else = inlet_into_floor(plan);
}

/// Filled to its depth, the table stands at its brim: a wave, or a regulator a little high, goes over.
void judge_freeboard(const Plan& plan, Open& open) {
  const Levels& levels = plan.levels;
  const Length least = levels.table_depth + kLeastFreeboard;
  if (quantity::at_most(least, levels.rim)) return;
  open.not_yet(Topic::levels, fact("table_stands_at_its_brim", levels.table_depth, levels.rim),
               Against{levels.rim, least}, fact("rim_over_the_water", least), "common practice")
      .ways_to_mend = {{{"table.rim", least}}};
}

/// What the clock says is another line, another charge or another pressure than what is worked out here.
void judge_measured_time(const Plan& plan, Open& open) {
  const auto& measured = plan.job.measured_fill_time;
  const transfer::Fill& fill = plan.transfer.fill;
  if (!measured || fill.stop != transfer::Stop::goal_reached) return;
  if (*measured <= kFarOff * fill.time && fill.time <= kFarOff * *measured) return;
  open.not_yet(Topic::transfer, fact("measured_time_is_far_off", *measured, fill.time), {}, fact("find_what_differs"),
               "common practice");
}

void judge_margin(const Plan& plan, Open& open) {
  const Levels& levels = plan.levels;
  if (!levels.enough || levels.spare >= levels.days_loss) return;
  const Length deeper = levels.least_charge;
  Finding& finding = open.not_yet(
      Topic::levels, fact("margin_below_a_days_loss", levels.spare, levels.days_loss, levels.top_up_mark), {},
      levels.least_overflows ? fact("charge_so_deep_with_rim", deeper, levels.rim_for_least)
                             : fact("charge_so_deep", deeper),
      "common practice");
  finding.ways_to_mend = {{{"reservoir.charge", deeper}}};
  if (auto higher = higher_reservoir(plan.job, deeper)) finding.or_else = {std::move(*higher)};
}

/// Filled to the lid, gauge, vent and relief valve stand in water.
void judge_air_space(const Plan& plan, Open& open) {
  const Levels& levels = plan.levels;
  if (quantity::at_most(kLeastAirSpace, levels.ullage_fraction)) return;
  const Length highest = plan.job.reservoir.height * (1.0 - kLeastAirSpace);
  open.not_yet(Topic::levels, fact("charge_leaves_no_air", levels.charge_mark_below_lid),
               Against{levels.charge_depth, highest}, fact("leave_charge_out"), "common practice")
      .ways_to_mend = {{{"reservoir.charge", ""}}};
}

/// Tapped from both sides for one thread, it holds no riser of another.
void judge_bushing(const Plan& plan, Open& open) {
  const JobPort* bung = riser_bung(plan.job);
  if (bung == nullptr || !bung->type.valid() || !plan.riser.material ||
      plan.riser.request.bung != BungKind::double_tapped_bushing)
    return;
  const std::string& size = plan.catalog->size_name(plan.catalog->port_type(bung->type).size);
  if (size == plan.riser.size) return;
  open.not_yet(Topic::riser, fact("bushing_does_not_hold_riser", plan.riser.size, bung->name, size), {},
               fact("bushing_tapped_for_riser", plan.riser.size, size), "worked out");
}

/// A pipe with another thread than the bung's is held by nothing unless a bushing takes it.
void judge_bung(const Plan& plan, Open& open) {
  const JobPort* bung = riser_bung(plan.job);
  const BungKind kind = plan.riser.request.bung;
  if (bung == nullptr || !plan.riser.material || kind == BungKind::double_tapped_bushing ||
      kind == BungKind::welded_riser)
    return;
  const std::string& size = plan.catalog->size_name(plan.catalog->port_type(bung->type).size);
  if (size == plan.riser.size || !(plan.riser.request.pipe.outside_diameter < plan.riser.request.bung_opening)) return;
  open.not_yet(Topic::riser, fact("riser_falls_through_bung", plan.riser.size, bung->name, size), {},
               fact("hold_riser_with_bushing", size, plan.riser.size), "worked out",
               Purchase{"double-tapped-bushing", "double-tapped bushing", fact("of_two_sizes", size, plan.riser.size)});
}

}  // namespace

void judge_water(const Plan& plan, const Settled& /*settled*/, Open& open) {
  judge_bore(plan, open);
  judge_gaps(plan, open);
  judge_one_way(plan, open);
  judge_drain(plan, open);
  judge_second_line(plan, open);
  judge_margin(plan, open);
  judge_measured_time(plan, open);
  judge_freeboard(plan, open);
  judge_air_space(plan, open);
  judge_bung(plan, open);
  if (auto wide = wide_riser(plan)) open.take(std::move(*wide));
  judge_bushing(plan, open);
}

}  // namespace riserun::plan
