#include "plan/riser_alone.h"

#include "plan/stage/drafting.h"

#include <utility>

namespace riserun::plan {

RiserAlone plan_riser_alone(std::shared_ptr<const Catalog> catalog, JobReservoir reservoir, JobRiser riser, Bin bin,
                            UnitSystem units) {
  Draft draft{{}, {}, BinLeft(std::move(bin)), {}};
  draft.plan.catalog = std::move(catalog);
  draft.plan.job.units = units;
  draft.settled.box = {reservoir.length, reservoir.width, reservoir.height, 0.0};
  draft.settled.obstacle_height = reservoir.obstacle_height.value_or(Length{});
  draft.settled.lid_closed = reservoir.lid_closed.value_or(false);
  if (!riser.bung && !reservoir.ports.empty()) riser.bung = reservoir.ports.front().name;
  draft.plan.job.reservoir = std::move(reservoir);
  draft.plan.job.riser = std::move(riser);
  draft_riser(draft);
  const std::vector<chain::EndPart> stock = riser_stock(draft);
  const bool from_bin = !stock.empty() && draft.bin.count_of(stock.front().part) > 0;
  settle_riser_stock(draft, from_bin ? std::optional(stock.front().part) : std::nullopt);
  return {std::move(draft.plan.riser), std::move(draft.plan.assumptions), std::move(draft.plan.refusals),
          std::move(draft.plan.notes)};
}

}  // namespace riserun::plan
