#include "plan/plan.h"

#include "plan/stage/drafting.h"

namespace riserun::plan {

namespace {

/// What the reader must act on; the standing cautions alone leave a plan at ok.
Status status_of(const Plan& plan) {
  if (!plan.refusals.empty()) return Status::refused;
  for (const ConnectionPlan& connection : plan.connections)
    if (!connection.cautions.empty()) return Status::caution;
  for (const ManifoldPlan& manifold : plan.manifolds)
    if (!manifold.cautions.empty()) return Status::caution;
  for (const Caution& caution : plan.cautions)
    if (!caution.standing) return Status::caution;
  return Status::ok;
}

}  // namespace

Plan make_plan(std::shared_ptr<const Catalog> catalog, Job job) {
  Bin bin = job.bin;
  Draft draft{{}, {}, BinLeft(std::move(bin)), {}};
  draft.plan.catalog = job.own_catalog ? job.own_catalog : std::move(catalog);
  draft.plan.job = std::move(job);
  draft.settled = settle(draft.plan.job, draft.plan.assumptions);
  draft_bungs(draft);
  draft_riser(draft);
  draft_connections(draft);
  draft_manifolds(draft);
  draft_line(draft);
  draft_levels(draft);
  draft_wall_limit(draft);
  draft_transfer(draft);
  draft_walls_in_use(draft);
  draft_relief(draft);
  draft_leak_test(draft);
  draft_list(draft);
  draft_cautions(draft);
  draft.plan.status = status_of(draft.plan);
  return std::move(draft.plan);
}

}  // namespace riserun::plan
