// What the judges of the single topics share: the plan that is judged, and the list of what is open in it.
#pragma once

#include "plan/plan.h"
#include "plan/settle/settled.h"

#include <optional>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

namespace riserun::plan {

/// Gathers what is open.
class Open {
 public:
  explicit Open(std::vector<Finding> findings) : findings_(std::move(findings)) {}

  /// Both give the finding as it stands in the list, until the next one.
  Finding& refuse(Topic where, Fact reason, std::optional<Against> numbers, std::optional<Fact> mend,
                  std::string source) {
    return add(Severity::refused, where, std::move(reason), std::move(numbers), std::move(mend), std::move(source));
  }
  Finding& not_yet(Topic where, Fact reason, std::optional<Against> numbers, std::optional<Fact> mend,
                   std::string source, std::optional<Purchase> buy = {}) {
    Finding& added =
        add(Severity::not_yet, where, std::move(reason), std::move(numbers), std::move(mend), std::move(source));
    added.buy = std::move(buy);
    return added;
  }
  void take(Finding finding) { findings_.push_back(std::move(finding)); }
  std::vector<Finding> findings() && { return std::move(findings_); }

 private:
  Finding& add(Severity severity, Topic where, Fact reason, std::optional<Against> numbers, std::optional<Fact> mend,
               std::string source) {
    return findings_.emplace_back(
        Finding{where, std::move(reason), std::move(numbers), std::move(mend), severity, std::move(source)});
  }

  std::vector<Finding> findings_;
};

/// The reservoir's port moved into its lid.
Mend into_lid(const std::string& port);
/// The table's port moved into its floor.
Mend into_floor(const std::string& port);

/// A connection leads from the port, or to it.
bool is_used(const Plan& plan, const std::string& port);

/// The port of the reservoir's lid that nothing is on and that is meant for the device: by the word in its name, else
/// the first in whose name no device is told; nullptr: there is none.
const JobPort* free_port_for(const Plan& plan, std::string_view word);

/// The finding's mend, which is to buy the part, with where that goes: on the port that is free, else on a bung that is
/// bought, too.
void put_on_lid(const Plan& plan, PartId part, const JobPort* port, Finding& finding);

/// The way's device, its gauge as it may be, changed for the part.
Change other_device(const Way& way, PartId part);

/// A connection with devices at its ends does not go together: what "stands nowhere" may stand there.
bool devices_are_missing(const Plan& plan);

/// A check valve that the connection was asked for; nullptr: none. A run that does not go together has it in its words.
const chain::Need* asked_check(const Catalog& catalog, const ConnectionPlan& connection);

/// The connection is a way out for the air that a hand opens, by its end.
bool is_asked_as_vent(const Catalog& catalog, const Job& job, const ConnectionPlan& connection);

/// The air's way from the supply does not go together: nothing is known of what comes through it.
bool feed_is_missing(const Plan& plan);

/// Regulator, its range, and where a restrictor stands to it.
void judge_air(const Plan& plan, const Settled& settled, Open& open);
/// What the setting may be off, by the regulator and by the gauge.
void judge_knob(const Plan& plan, const Settled& settled, Open& open);
/// The mark on the knob, that is made in the leak test by the gauge of its rig. Last of all: another relief valve asks
/// for another test.
void judge_knobs_mark(const Plan& plan, const Settled& settled, Open& open);
/// Figures of the job that no device has.
void judge_given_figures(const Plan& plan, const Settled& settled, Open& open);
/// @param valve_is_enough  what a relief valve of the job passes holds the reservoir
void judge_leak_test(const Plan& plan, const Settled& settled, bool valve_is_enough, Open& open);
/// Relief valves, and the leak test beside them.
void judge_relief(const Plan& plan, const Settled& settled, Open& open);
void judge_gauge(const Plan& plan, const Settled& settled, Open& open);
/// Ports that nothing closes, and ends that hold no water.
void judge_closed(const Plan& plan, const Settled& settled, Open& open);
/// A rod goes in through the lid, and no made-up joint comes off for it.
void judge_dip_port(const Plan& plan, const Settled& settled, Open& open);
/// A drain that is but plugged, where nothing else empties the reservoir.
void judge_plugged_drain(const Plan& plan, const Settled& settled, Open& open);
/// What a drain holds back, and how long it runs.
void judge_drains_by_weight(const Plan& plan, const Settled& settled, Open& open);
/// The way of the air out, so that the table drains and the pressure can be let off.
void judge_vent(const Plan& plan, const Settled& settled, Open& open);
/// The code's limit, the factor of safety, and tight baffles.
void judge_walls(const Plan& plan, const Settled& settled, Open& open);
/// Baffles too near to each other to be welded in.
void judge_bays(const Plan& plan, const Settled& settled, Open& open);
/// Bungs too near to each other, to a wall or to a stay.
void judge_lid(const Plan& plan, const Settled& settled, Open& open);
/// What stands on the lid has room under a table that lies over all of it.
void judge_lid_stacks(const Plan& plan, const Settled& settled, Open& open);
/// The riser's margin and its bung; valves in the water's way.
void judge_water(const Plan& plan, const Settled& settled, Open& open);
/// What shows or lets out the air stands over the water.
void judge_heights(const Plan& plan, const Settled& settled, Open& open);
/// Runs that turn: between ports that do not look at each other, or beside a hose between two that do.
void judge_turns(const Plan& plan, const Settled& settled, Open& open);
/// Hot water, and frost.
void judge_heat(const Plan& plan, const Settled& settled, Open& open);
/// What is cut over the reservoir, and what liquid is in it.
void judge_use(const Plan& plan, const Settled& settled, Open& open);

}  // namespace riserun::plan
