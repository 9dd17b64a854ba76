// The runs from end to end, and what is done when.
#include "report/card/card_parts.h"
#include "report/words/list_words.h"
#include "report/words/run_words.h"
#include "report/words/say.h"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <optional>

namespace riserun::report {

namespace {

using plan::ConnectionPlan;
using plan::Plan;
using plan::WorkPhase;
using plan::WorkStep;

/// The steps of the whole job, as short as a card has them; a step without a row is one of a run.
constexpr auto kShort = std::to_array<Words>({
    {"work_baffle_places", "baffle {0:, }"},
    {"work_baffles", "weld in {0:#baffle|baffles}"},
    {"work_tight_baffles", "weld in {0:#baffle|baffles}, tight all round"},
    {"work_bungs", "weld in {0:and}"},
    {"work_bungs_into_closed", "a port left open, weld in {0:and}"},
    {"work_cut_riser", "cut the riser, bung {2} under lid"},
    {"work_cut_welded_riser", "cut the riser, {2} below lid, thread its top"},
    {"work_cut_welded_riser_of_stock", "cut the riser, {2} below lid, its thread up"},
    {"work_hole_for_coupling", "a {2} hole for the coupling of {0}"},
    {"work_riser_as_it_is", "riser not cut, bung {2} under lid"},
    {"work_riser_for_bushing_as_it_is", "riser not cut, coupling {2} under lid"},
    {"work_cut_riser_for_bushing", "cut the riser, coupling {2} under lid"},
    {"work_bushing_from_above",
     "the riser in its {2} x {3} bushing, let the riser down through {0}, {1} off the floor"},
    {"work_bushing_then_riser", "its {2} x {3} bushing in {0}, screw the riser into it, {1} off floor"},
    {"work_riser_from_inside", "screw it in, {1} off floor"},
    {"work_riser_from_above", "let the riser down through {0}, {1} off the floor"},
    {"work_weld_riser", "weld it through the lid, {0} off the floor"},
    {"work_coupling_on_riser", "then screw its {0} coupling onto it, sealed"},
    {"work_last_look", "look inside"},
    {"work_mouse_holes", "mouse-holes {0} x {1} in every bay of the floor's bars"},
    {"work_stays", "weld in the stays"},
    {"work_stays_of_your_own", "weld in the stays (on no cut list)"},
    {"work_weld_lid_to", "weld lid on, every slot and hole too"},
    {"work_weld_lid", "weld the lid on"},
    {"work_leak_test", "at {0:mark}, from afar, by the sheet (--all)"},
    {"work_no_leak_test_yet", "none yet: no relief valve for a rig at {0:mark}"},
    {"work_bench_test_relief_by_finer_gauge", "{0}: bench-test first"},
    {"work_bench_test_relief", "valve of {0} bench-tested first: opens at {1:mark} to {2:mark}"},
    {"work_bench_test_relief_over_test", "valve of {0} bench-tested first: opens at {1:mark} to {2:mark}"},
    {"work_test_with_water", "with water only: the walls stand no test with air"},
    {"work_settle_what_is_open", "not before what is open is settled"},
    {"work_charge_at_table", "charge {0} at table"},
    {"work_charge_at_port", "charge {1} through {0}"},
    {"work_regulator_at_its_mark", "regulator to its mark, air on"},
    {"work_set_regulator", "riser stopped, vent cracked: regulator until the gauge shows {2:mark}, mark it"},
    {"work_vent_outdoors", "vent led outdoors, open when idle"},
    {"work_purge", "each day first: vent open, air through for {0}"},
    {"work_watch_first_fill", "hand on vent"},
});

std::string short_step(const WorkStep& step, UnitSystem units) {
  const auto* const found =
      std::find_if(kShort.begin(), kShort.end(), [&](const Words& words) { return words.code == step.what.code; });
  return found == kShort.end() ? "" : fill(found->text, step.what.values, units);
}

void add_once(std::vector<std::string>& all, std::string one) {
  if (!one.empty() && std::find(all.begin(), all.end(), one) == all.end()) all.push_back(std::move(one));
}

/// The job's own steps of some phases, in short.
std::string steps_of(const Plan& plan, std::initializer_list<WorkPhase> phases, UnitSystem units) {
  std::vector<std::string> steps;
  for (const WorkStep& step : plan.work.steps)
    if (step.number == 0 && std::find(phases.begin(), phases.end(), step.phase) != phases.end())
      add_once(steps, short_step(step, units));
  return joined(steps, "; ");
}

/// The runs that have steps of that phase, in its order.
std::vector<std::string> runs_in(const Plan& plan, WorkPhase phase) {
  std::vector<std::string> runs;
  for (const WorkStep& step : plan.work.steps)
    if (step.phase == phase && step.number > 0 && step.of != "riser") add_once(runs, step.of);
  return runs;
}

/// The runs of which more than a piece is made up there.
std::vector<std::string> made_in_the_vise(const Plan& plan) {
  std::vector<std::string> runs;
  for (const WorkStep& step : plan.work.steps)
    if (step.phase == WorkPhase::in_the_vise && step.what.code.find("screw") == 0 && step.of != "riser")
      add_once(runs, step.of);
  return runs;
}

/// Without what it is cut to, which stands in the list of cuts.
std::string part_words(const Plan& plan, const chain::RunPart& link) {
  return stock_name(plan.catalog->part(link.part));
}

/// A gauge or a valve that goes into its bung without a part between.
bool is_straight_in(const ConnectionPlan& connection) {
  return connection.ends_in && connection.run() != nullptr && connection.run()->parts.empty();
}

/// A run that branches, a row for each arm: where it leaves the part that it branches on, what is on it, and its end.
class Arms {
 public:
  Arms(const Plan& plan, const ConnectionPlan& connection)
      : plan_(plan), connection_(connection), run_(*connection.run()) {}

  std::vector<CardRow> rows() {
    std::vector<std::string> trunk = {connection_.from};
    follow(0, trunk, connection_.name, "");
    return std::move(rows_);
  }

 private:
  /// Along the parts until one branches or an end is reached, then the arms of that one.
  void follow(std::size_t row, std::vector<std::string>& words, const std::string& name, const std::string& start) {
    const chain::RunPart& link = run_.parts[row];
    words.push_back(part_words(plan_, link));
    const auto arms = std::count_if(link.ports.begin(), link.ports.end(),
                                    [](const chain::Follower& port) { return port.leads_on(); });
    if (arms > 1) rows_.push_back({name, start + joined(words, " > ") + ", which has:"});
    bool to_a_side = false;
    for (std::size_t port = 0; port < link.ports.size(); ++port) {
      if (!link.ports[port].leads_on()) continue;
      if (arms == 1) return go_on(link.ports[port], words, name, start);
      const bool straight = leads_straight_on(part_of(link), link.enter, port);
      std::vector<std::string> arm;
      go_on(link.ports[port], arm, "",
            fmt::format("{}, {}: ", part_of(link).name,
                        straight    ? "straight on"
                        : to_a_side ? "to the other side"
                                    : "to a side"));
      to_a_side = to_a_side || !straight;
    }
  }

  void go_on(const chain::Follower& to, std::vector<std::string>& words, const std::string& name,
             const std::string& start) {
    if (to.what == chain::Follower::What::part) return follow(to.row, words, name, start);
    const chain::RunEnd& end = run_.ends[to.row];
    words.push_back(end.device ? fmt::format("{} ({})", plan_.catalog->part(*end.device).name, end.port.called)
                               : end.port.called);
    rows_.push_back({name, start + joined(words, " > ")});
  }

  const catalog::Part& part_of(const chain::RunPart& link) const { return plan_.catalog->part(link.part); }

  const Plan& plan_;
  const ConnectionPlan& connection_;
  const chain::Run& run_;
  std::vector<CardRow> rows_;
};

/// The table is set down onto the run's hose, which is too short to be bent on.
bool table_comes_last(const Plan& plan, const ConnectionPlan& connection) {
  return std::any_of(plan.work.steps.begin(), plan.work.steps.end(), [&](const WorkStep& step) {
    return step.of == connection.name && step.what.code.starts_with("work_table_held_up");
  });
}

CardRow run_row(const Plan& plan, const ConnectionPlan& connection) {
  const chain::Run* run = connection.run();
  if (run == nullptr || !run->buildable) return {connection.name, "does not go together yet"};
  std::vector<std::string> words;
  words.reserve(run->parts.size() + 2);
  words.push_back(connection.from);
  for (const chain::RunPart& link : run->parts) {
    words.push_back(part_words(plan, link));
    for (const chain::Follower& port : link.plugs())
      words.back() += fmt::format(" (its open end: {})", stock_name(plan.catalog->part(port.plug)));
  }
  words.push_back(connection.ends_in ? plan.catalog->part(*connection.ends_in).name : connection.to);
  return {connection.name, joined(words, " > ") + (table_comes_last(plan, connection) ? "; table last" : "")};
}

void add_run(const Plan& plan, const ConnectionPlan& connection, Card& card) {
  const chain::Run* run = connection.run();
  if (!connection.branched || run == nullptr || !run->buildable || run->parts.empty()) {
    card.work.push_back(run_row(plan, connection));
    return;
  }
  for (CardRow& row : Arms(plan, connection).rows()) card.work.push_back(std::move(row));
}

}  // namespace

void add_card_work(const Plan& plan, UnitSystem units, Card& card) {
  add_row(card.work, "tank", steps_of(plan, {WorkPhase::before_lid, WorkPhase::lid}, units));
  add_row(card.work, "test", steps_of(plan, {WorkPhase::leak_test}, units));
  // Into a closed tank from above, when it has been tested.
  add_row(card.work, "riser", steps_of(plan, {WorkPhase::in_the_vise, WorkPhase::on_the_tank}, units));
  std::vector<std::string> first;
  if (const std::vector<std::string> made = made_in_the_vise(plan); !made.empty())
    first.push_back("in the vise: " + joined(made, ", "));
  std::vector<const ConnectionPlan*> in_order;
  // A relief valve that is proved goes on with the leak test.
  for (const WorkPhase phase : {WorkPhase::leak_test, WorkPhase::on_the_tank})
    for (const std::string& name : runs_in(plan, phase))
      for (const ConnectionPlan& connection : plan.connections)
        if (connection.name == name) in_order.push_back(&connection);
  for (const ConnectionPlan& connection : plan.connections)
    if (std::find(in_order.begin(), in_order.end(), &connection) == in_order.end()) in_order.push_back(&connection);
  std::vector<std::string> straight_in;
  for (const ConnectionPlan* connection : in_order)
    if (is_straight_in(*connection)) straight_in.push_back(connection->name);
  if (!straight_in.empty()) first.push_back("straight into their bungs: " + joined(straight_in, ", "));
  add_row(card.work, "first", joined(first, "; "));
  for (const ConnectionPlan* connection : in_order)
    if (!is_straight_in(*connection)) add_run(plan, *connection, card);
  add_row(card.work, "fill", steps_of(plan, {WorkPhase::first_fill}, units));
}

}  // namespace riserun::report
