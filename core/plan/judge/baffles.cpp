// Whether the baffles can be welded in: a torch and a hand go between them, and so does the riser.
#include "plan/judge/open.h"
#include "quantity/nearly.h"

#include <algorithm>
#include <cmath>

namespace riserun::plan {

namespace {

const Length kWeldersReach = inches(4.0);  // a gloved hand with a torch: common practice
const Length kRoundRiser = inches(0.5);    // beside it, on both sides together: common practice
const Length kEdgeLeft = inches(1.0);      // of a plate between its two cropped corners: common practice

Length bay(Length inside, Length plate, int baffles) {
  return (inside - plate * static_cast<double>(baffles)) / static_cast<double>(baffles + 1);
}

/// The most that leave bays so wide.
int most_baffles(Length inside, Length plate, Length least) {
  return std::max(0, static_cast<int>(std::floor(((inside - least) / (plate + least)).value() + quantity::kSameShare)));
}

void judge_row(const Plan& plan, Open& open, Length inside, int baffles, Length least, const char* which) {
  const Length plate = plan.job.reservoir.sheet.thickness;
  const Length between = bay(inside, plate, baffles);
  if (baffles == 0 || quantity::at_most(least, between)) return;
  open.not_yet(Topic::walls,
               fact("baffles_too_near", baffles, std::string(which), std::max(metres(0.0), between), least), {},
               fact("baffles_at_most", most_baffles(inside, plate, least), std::string(which)), "common practice");
}

}  // namespace

void judge_bays(const Plan& plan, const Settled& settled, Open& open) {
  const auto& layout = plan.job.reservoir.supports.layout;
  if (!layout || settled.lid_closed) return;
  const Length longer = std::max(settled.box.length, settled.box.width);
  const Length shorter = std::min(settled.box.length, settled.box.width);
  const Length least = std::max(kWeldersReach, plan.riser.request.pipe.outside_diameter + kRoundRiser);
  // A baffle along is in pieces between those across, each with its own corners cropped.
  const bool in_pieces = layout->baffles_along > 0 && plan.walls.passages;
  const Length corners =
      in_pieces ? 2.0 * std::max(plan.walls.passages->at_floor, plan.walls.passages->at_lid) + kEdgeLeft : Length{};
  judge_row(plan, open, longer, layout->baffles_across, std::max(least, corners), "across");
  judge_row(plan, open, shorter, layout->baffles_along, least, "along");
}

}  // namespace riserun::plan
