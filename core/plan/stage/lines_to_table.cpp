#include "plan/stage/lines_to_table.h"

#include "plan/judge/drain.h"

#include <algorithm>

namespace riserun::plan {

BuildRank build_rank(const Plan& plan, const ConnectionPlan& connection) {
  const ConnectionPlan* water = plan.water_connection ? &plan.connections[*plan.water_connection] : nullptr;
  if (&connection == water || joins_table_and_tank(plan.job, connection)) return BuildRank::to_table;
  BuildRank first = BuildRank::other;
  for (const Way& way : plan.ways) {
    if (way.connection != connection.name) continue;
    if (way.use == WayUse::feed) return BuildRank::feed;
    if (way.use == WayUse::relief) first = std::min(first, BuildRank::relief);
    if (way.use == WayUse::gauge) first = std::min(first, BuildRank::gauge);
  }
  return first;
}

std::vector<const ConnectionPlan*> in_build_order(const Plan& plan) {
  std::vector<const ConnectionPlan*> order;
  for (const ConnectionPlan& connection : plan.connections)
    if (connection.run() != nullptr && connection.run()->buildable) order.push_back(&connection);
  std::stable_sort(order.begin(), order.end(), [&](const ConnectionPlan* a, const ConnectionPlan* b) {
    return build_rank(plan, *a) < build_rank(plan, *b);
  });
  return order;
}

bool table_goes_onto(const Plan& plan, const ConnectionPlan& connection, const HoseOnLast& hose) {
  if (hose.bends_on || build_rank(plan, connection) != BuildRank::to_table) return false;
  const bool from_table = port_named(plan.job.table.ports, connection.from) != nullptr;
  const JobPort* table = port_named(plan.job.table.ports, from_table ? connection.from : connection.to);
  const JobPort* tank = port_named(plan.job.reservoir.ports, from_table ? connection.to : connection.from);
  return table != nullptr && table->place.value_or(Place::floor) == Place::floor &&
         (tank == nullptr || tank->place.value_or(Place::lid) == Place::lid);
}

bool hose_hangs_on_table(const Plan& plan, const ConnectionPlan& connection, const HoseOnLast& hose) {
  const chain::Run& run = *connection.run();
  const chain::RunJoint& joint = run.joints[hose.joint];
  const bool onto_its_far_end = joint.inner != chain::kBase && run.parts[joint.inner].part == hose.hose;
  return onto_its_far_end == (port_named(plan.job.table.ports, connection.from) != nullptr);
}

}  // namespace riserun::plan
