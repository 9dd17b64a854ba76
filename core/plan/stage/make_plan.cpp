#include "plan/advice/check.h"
#include "plan/judge/judge.h"
#include "plan/plan.h"
#include "plan/planning.h"
#include "plan/settle/marked_devices.h"
#include "plan/sold.h"
#include "plan/stage/air.h"
#include "plan/stage/bin.h"
#include "plan/stage/bungs.h"
#include "plan/stage/cautions.h"
#include "plan/stage/connections.h"
#include "plan/stage/drains.h"
#include "plan/stage/leak_test.h"
#include "plan/stage/levels.h"
#include "plan/stage/lid_map.h"
#include "plan/stage/lid_openings.h"
#include "plan/stage/line.h"
#include "plan/stage/list.h"
#include "plan/stage/prove_relief.h"
#include "plan/stage/relief.h"
#include "plan/stage/riser.h"
#include "plan/stage/run_search.h"
#include "plan/stage/transfer.h"
#include "plan/stage/vent.h"
#include "plan/stage/walls.h"
#include "plan/stage/ways.h"
#include "plan/stage/work.h"

#include <algorithm>
#include <optional>
#include <utility>

namespace riserun::plan {

namespace {

/// @param search  of the plan's catalog
Plan planned(std::shared_ptr<const Catalog> catalog, Job job, Upto upto, RunSearch& search);

/// @param least_relief  that a relief valve is to open at whose words name no pressure
Plan planned_with(std::shared_ptr<const Catalog> catalog, Job job, std::optional<GaugePressure> least_relief, Upto upto,
                  RunSearch& search) {
  Plan plan;
  plan.catalog = std::move(catalog);
  plan.job = std::move(job);

  Remarks remarks;
  const Job marked = with_marks(*plan.catalog, plan.job, least_relief, remarks);
  const Settled settled = settle(marked, remarks);
  const Inputs inputs{*plan.catalog, marked, settled, upto};
  check_bungs(inputs, remarks);

  const MeasuredRiser measured = measure_riser(inputs, remarks);
  AskedConnections asked = ask_connections(inputs, search, measured.plan, remarks);
  const BinShares shares = share_bin(inputs, search, asked.demands, measured, ports_to_plug(plan.job, asked.plans));
  plan.riser = plan_riser(inputs, measured, shares.left, shares.riser, remarks);
  Connections connections = plan_connections(inputs, search, plan.riser, std::move(asked), shares, remarks);
  plan.connections = std::move(connections.plans);
  plan.water_connection = connections.water;
  const ConnectionPlan* water = plan.water_connection ? &plan.connections[*plan.water_connection] : nullptr;

  plan.ways = plan_ways(inputs, plan.connections);
  const AirWays air = find_air_ways(inputs, plan.ways, water, remarks);
  plan.line = plan_line(inputs, plan.riser, water, remarks);
  plan.levels = plan_levels(inputs, plan.riser, plan.line, water, remarks);
  offer_uncut(inputs, plan.levels, plan.riser, remarks);
  plan.drains = plan_drains(inputs, plan.connections, plan.ways, plan.levels);
  const WallLimit limit = find_wall_limit(inputs, plan.levels.charge_depth, remarks);
  plan.transfer = plan_transfer(inputs, plan.riser, plan.line, plan.levels, limit, air, remarks);
  plan.transfer.vent = plan_vent(inputs, plan.riser, plan.transfer);
  if (water != nullptr && water->chain() == nullptr) plan.transfer.missing_run = water->name;
  plan.air = plan_air(plan.transfer.system, plan.transfer.fill);
  plan.walls = plan_walls(
      inputs, limit,
      {plan.levels.charge_depth, plan.transfer.setting, plan.transfer.in_use,
       water != nullptr && !plan.job.riser.foot_valve && !has_a_valve(*plan.catalog, plan.ways, water->name)},
      remarks);
  plan.walls.passages = find_passages(inputs, plan.riser.request.pipe.bore, remarks);
  add_mouse_holes(inputs, plan.riser.request.pipe.bore, plan.walls, remarks);
  plan.lid_map = plan_lid_map(inputs, plan.connections, plan.riser, remarks);
  plan.lid_map.openings = lid_openings(inputs, plan.walls);
  plan.relief = plan_relief(inputs, plan.ways, air, plan.walls, plan.transfer, remarks);
  plan.leak_test =
      plan_leak_test(inputs, search.finder(), plan.connections, shares.plugs,
                     {plan.levels, plan.walls, plan.relief, plan.transfer.setting, plan.transfer.system, plan.ways},
                     connections.left, remarks);
  if (upto == Upto::end) put_proofs_on_sheet(inputs, plan);
  plan.findings = judge(plan, settled, std::move(remarks.findings));
  plan.verdict = verdict_of(plan.findings);
  if (upto == Upto::findings) return plan;
  keep_what_mends(plan,
                  [&](Job other) { return planned(plan.catalog, std::move(other), Upto::findings, search).findings; });
  plan.list = plan_list(inputs, {plan.connections, plan.riser, plan.walls, plan.leak_test, plan.findings, plan.levels},
                        connections.left, remarks);
  plan.work = plan_work(inputs, plan);
  caution_whole_job(inputs, plan, remarks);

  plan.assumptions = std::move(remarks.assumptions);
  plan.cautions = std::move(remarks.cautions);
  plan.notes = std::move(remarks.notes);
  return plan;
}

/// The lowest mark that stays shut at the setting which the plan then comes to; nullopt: that which is expected does,
/// or none does.
std::optional<GaugePressure> relief_that_suits(const std::shared_ptr<const Catalog>& catalog, const Job& job,
                                               RunSearch& search) {
  constexpr int kMostTries = 4;
  std::optional<GaugePressure> least;
  for (int tries = 0; tries < kMostTries; ++tries) {
    const Plan plan = planned_with(catalog, job, least, Upto::findings, search);
    const bool opens_in_use = std::any_of(plan.findings.begin(), plan.findings.end(), [](const Finding& finding) {
      return finding.reason.code == "relief_valve_blows_in_use" || finding.reason.code == "relief_valve_weeps";
    });
    if (!opens_in_use) return least;
    least = relief_sold_above(*catalog, plan.relief.set_pressure);
    if (!least) return std::nullopt;
  }
  return std::nullopt;
}

Plan planned(std::shared_ptr<const Catalog> catalog, Job job, Upto upto, RunSearch& search) {
  std::optional<GaugePressure> least;
  if (names_no_relief_mark(*catalog, job)) least = relief_that_suits(catalog, job, search);
  return planned_with(std::move(catalog), std::move(job), least, upto, search);
}

Plan planned_anew(std::shared_ptr<const Catalog> catalog, Job job, Upto upto) {
  if (job.own_catalog) catalog = job.own_catalog;
  RunSearch search(*catalog);
  return planned(std::move(catalog), std::move(job), upto, search);
}

}  // namespace

Planning::Planning(std::shared_ptr<const Catalog> catalog) : catalog_(std::move(catalog)) {}
Planning::~Planning() = default;
Planning::Planning(Planning&&) noexcept = default;
Planning& Planning::operator=(Planning&&) noexcept = default;

Plan Planning::plan(Job job) {
  constexpr std::size_t kMostKept = 2000;  // a job of 170 runs asks some hundred questions; each change asks more
  const std::shared_ptr<const Catalog> catalog = job.own_catalog ? job.own_catalog : catalog_;
  if (searched_ != catalog || search_->kept() > kMostKept) {
    search_ = std::make_unique<RunSearch>(*catalog);
    searched_ = catalog;
  }
  return planned(catalog, std::move(job), Upto::end, *search_);
}

Plan make_plan(std::shared_ptr<const Catalog> catalog, Job job) {
  return planned_anew(std::move(catalog), std::move(job), Upto::end);
}

std::vector<Finding> findings_of(std::shared_ptr<const Catalog> catalog, Job job) {
  return planned_anew(std::move(catalog), std::move(job), Upto::findings).findings;
}

}  // namespace riserun::plan
