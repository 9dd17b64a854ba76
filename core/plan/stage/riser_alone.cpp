#include "plan/stage/riser_alone.h"

#include "plan/judge/wide_riser.h"
#include "plan/stage/riser.h"

#include <utility>

namespace riserun::plan {

RiserAlone plan_riser_alone(const Catalog& catalog, JobReservoir reservoir, JobRiser riser, Bin bin) {
  Job job;
  if (!riser.bung && !reservoir.ports.empty()) riser.bung = reservoir.ports.front().name;
  job.reservoir = std::move(reservoir);
  job.riser = std::move(riser);
  job.bin = std::move(bin);
  Settled settled;
  settled.box = {job.reservoir.length, job.reservoir.width, job.reservoir.height, 0.0};
  settled.obstacle_height = job.reservoir.obstacle_height.value_or(Length{});
  settled.lid_closed = job.reservoir.lid_closed.value_or(false);

  Remarks remarks;
  const Inputs inputs{catalog, job, settled};
  const MeasuredRiser measured = measure_riser(inputs, remarks);
  const std::vector<chain::EndPart> stock = riser_stock(catalog, measured);
  const bool from_bin = !stock.empty() && job.bin.count_of(stock.front().part) > 0;
  RiserPlan plan = plan_riser(inputs, measured, BinLeft(job.bin),
                              from_bin ? std::optional(stock.front().part) : std::nullopt, remarks);
  const JobPort* bung = job.reservoir.ports.empty() ? nullptr : &job.reservoir.ports.front();
  if (auto wide = wider_than_its_bung(catalog, bung, plan)) remarks.findings.push_back(std::move(*wide));
  return {std::move(plan), std::move(remarks)};
}

}  // namespace riserun::plan
