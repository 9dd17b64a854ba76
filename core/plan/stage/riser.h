// The riser: which bung it hangs in, what pipe it is, and what it is cut from.
#pragma once

#include "chain/finder.h"
#include "plan/plan.h"
#include "plan/stage/bin_left.h"
#include "plan/stage/inputs.h"

#include <optional>
#include <vector>

namespace riserun::plan {

/// A riser with its measures, and the nipples that it could be cut from.
struct MeasuredRiser {
  RiserPlan plan;                // but for its stock; without a material it cannot be made
  std::vector<PartId> in_bin;    // longest first
  std::vector<PartId> on_shelf;  // shortest first
  std::vector<PartId> to_order;  // shortest first: what no shelf has
};

MeasuredRiser measure_riser(const Inputs& inputs, Remarks& remarks);

/// What the riser asks of the bin: each nipple there that is long enough, and the shelf's shortest.
std::vector<chain::EndPart> riser_stock(const Catalog& catalog, const MeasuredRiser& measured);

/// The riser with what it is cut from: `from_bin`, which the bin gave for it, or what the shelf has. A nipple that is
/// left in the bin may serve uncut.
RiserPlan plan_riser(const Inputs& inputs, const MeasuredRiser& measured, const BinLeft& bin_left,
                     std::optional<PartId> from_bin, Remarks& remarks);

/// Leaves a stock piece uncut to be chosen only where the water left over its higher end still fills the table.
void offer_uncut(const Inputs& inputs, const Levels& levels, RiserPlan& plan, Remarks& remarks);

}  // namespace riserun::plan
