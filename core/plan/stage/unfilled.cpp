#include "plan/stage/unfilled.h"

#include "plan/judge/higher_table.h"
#include "plan/judge/limits.h"
#include "plan/stage/more_air.h"

#include <cmath>
#include <utility>

namespace riserun::plan {

namespace {

using transfer::Stop;

/// What the table misses, put into the reservoir on top of the charge; to the next quarter of an inch.
Length deeper_charge(const Settled& settled, const Levels& levels, const transfer::Fill& fill) {
  const Volume missing = settled.table.volume_at(levels.table_depth) - settled.table.volume_at(fill.table_depth);
  const double steps = std::ceil((levels.charge_depth + settled.box.depth_at(missing)) / inches(0.25) - 1e-9);
  return inches(0.25) * (steps + 1.0);
}

}  // namespace

void refuse_by_air(const Inputs& inputs, const Levels& levels, const TransferPlan& plan, Remarks& remarks) {
  const transfer::Fill& fill = plan.fill;
  const Against depths{levels.table_depth, fill.table_depth};
  switch (fill.stop) {
    case Stop::goal_reached:
      return;
    case Stop::riser_uncovered: {
      if (!levels.enough) return;
      const Length charge = deeper_charge(inputs.settled, levels, fill);
      Finding& finding = remarks.refuse({Topic::transfer, fact("riser_uncovers_too_soon"), depths, {}});
      if (auto higher = higher_reservoir(inputs.job, charge)) {
        finding.mend = std::move(higher->fact);
        finding.ways_to_try = std::move(higher->ways_to_try);
      } else {
        finding.mend = fact("charge_so_deep", charge);
        finding.ways_to_mend = {{{"reservoir.charge", charge}}};
      }
      return;
    }
    case Stop::table_overflows: {
      const Length rim = levels.table_depth + kLeastFreeboard;
      remarks.refuse({Topic::transfer, fact("table_overflows_too_soon"), depths, fact("rim_so_high", rim)})
          .ways_to_mend = {{{"table.rim", rim}}};
      return;
    }
    case Stop::pressures_balance:
    case Stop::time_limit:
    case Stop::reservoir_full:
      break;
  }
  // A setting that is too low has been refused with its own numbers.
  if (in_pascals(plan.setting) <= in_pascals(fill.pressure_to_finish) * (1.0 + kBalances)) return;
  offer_more_air(inputs, levels, plan, remarks.refuse({Topic::transfer, fact("air_gives_out"), depths, {}}));
}

}  // namespace riserun::plan
