#include "plan/settle/wall_request.h"

#include "reservoir/relief.h"

namespace riserun::plan {

reservoir::WallRequest wall_request(const Job& job, const Settled& settled, Length charge) {
  return {settled.box,
          settled.wall_thickness,
          job.reservoir.supports.layout.value_or(reservoir::SupportLayout{}),
          charge,
          settled.water.density,
          settled.metal,
          settled.design_stress,
          settled.design_stress_basis};
}

Stress quarter_of_yield(const Settled& settled) { return settled.metal.yield * (1.0 / reservoir::kAirLiftFactor); }

}  // namespace riserun::plan
