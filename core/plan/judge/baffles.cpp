// Whether the baffles can be welded in: a torch and a hand go between them, and so does the riser.
#include "plan/judge/open.h"
#include "plan/judge/relief_room.h"
#include "plan/settle/wall_request.h"
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

/// The fewest plates, none nearer than may be, with which the walls keep their factor of 4 at what they see in use.
std::optional<reservoir::SupportLayout> fewest_that_do(const Plan& plan, const Settled& settled, int across,
                                                       int along) {
  reservoir::WallRequest request = wall_request(plan.job, settled, plan.levels.charge_depth);
  request.design_stress = quarter_of_yield(settled);
  std::optional<reservoir::SupportLayout> best;
  const auto pieces = [](const reservoir::SupportLayout& layout) {
    return layout.baffles_across + layout.baffles_along * (layout.baffles_across + 1);
  };
  for (int a = 0; a <= across; ++a)
    for (int b = 0; b <= along; ++b) {
      request.supports.baffles_across = a;
      request.supports.baffles_along = b;
      if (best && pieces(*best) <= pieces(request.supports)) continue;
      if (quantity::at_most(most_in_use(plan), reservoir::wall_limit(request))) best = request.supports;
    }
  return best;
}

/// Both ways, of the bays that must stay between.
struct Bays {
  Length longer{};
  Length shorter{};
  Length across{};
  Length along{};
};

void mend_baffles(const Plan& plan, const Settled& settled, const Bays& bays, Finding& finding) {
  const Length plate = thickness_of_baffles(plan.job, settled);
  const auto layout = fewest_that_do(plan, settled, most_baffles(bays.longer, plate, bays.across),
                                     most_baffles(bays.shorter, plate, bays.along));
  if (!layout) return;
  reservoir::WallRequest request = wall_request(plan.job, settled, plan.levels.charge_depth);
  request.supports = *layout;
  finding.or_else = {{fact("baffles_that_do", finding.mend->values.at(0), finding.mend->values.at(1),
                           layout->baffles_across, layout->baffles_along, reservoir::wall_limit(request)),
                      {},
                      {{{kSupports, {}, {}, *layout}}}}};
}

void judge_row(const Plan& plan, const Settled& settled, Open& open, const Bays& bays, bool across) {
  const auto& layout = plan.job.reservoir.supports.layout;
  const Length inside = across ? bays.longer : bays.shorter;
  const Length least = across ? bays.across : bays.along;
  const int baffles = across ? layout->baffles_across : layout->baffles_along;
  const char* which = across ? "across" : "along";
  const Length plate = thickness_of_baffles(plan.job, settled);
  const Length between = bay(inside, plate, baffles);
  if (baffles == 0 || quantity::at_most(least, between)) return;
  Finding& finding = open.not_yet(
      Topic::walls, fact("baffles_too_near", baffles, std::string(which), std::max(metres(0.0), between), least), {},
      fact("baffles_at_most", most_baffles(inside, plate, least), std::string(which)), "common practice");
  mend_baffles(plan, settled, bays, finding);
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
  const Bays bays{longer, shorter, std::max(least, corners), least};
  judge_row(plan, settled, open, bays, true);
  judge_row(plan, settled, open, bays, false);
}

}  // namespace riserun::plan
