// How the water is let out of the reservoir itself, and out of the table beside the line that fills it.
#pragma once

#include "plan/plan.h"

namespace riserun::plan {

/// A valve, worked by hand, stands on a port in its floor or in a side; one whose place is not said counts, too.
bool reservoir_can_be_emptied(const Plan& plan);

/// A port in its floor or in a side, from which no line leads up to the table alone: such a line drains nothing.
bool has_port_to_drain_by(const Plan& plan);

/// The connection that lets the water out of the table by a way of its own; nullptr: there is none. A plug, a check
/// valve or a coupler at its end lets none out, nor does one that does not go together.
const ConnectionPlan* table_drain(const Plan& plan);

/// The connection joins the table to a port of the reservoir that is not the riser's.
bool joins_table_and_tank(const Job& job, const ConnectionPlan& connection);

/// Such a one without branches, in which a valve stands that a hand opens: shut while air is in the reservoir, it is a
/// way back for the table's water and no second way up.
bool leads_back(const Catalog& catalog, const Job& job, const std::vector<Way>& ways, const ConnectionPlan& connection);

/// The line that fills the table drains it, too, to what `table_does_not_drain` lets stay; false: most of the water
/// stays, or none ever comes up.
bool drains_by_line(const Plan& plan);

/// That one, where the line lets no water back, or leaves most of it in the table; nullptr: the line drains it, or
/// nothing does.
const ConnectionPlan* drain_in_place_of_line(const Plan& plan);

/// The connection whose plug, in a port in the floor or a side, is all that the water could be let out by; nullptr:
/// there is none, or something else lets it out.
const ConnectionPlan* plugged_drain(const Plan& plan);

/// How the table empties by that connection; nullptr: not by a valve that a hand opens.
const DrainPlan* drain_of(const Plan& plan, const ConnectionPlan& connection);

}  // namespace riserun::plan
