#include "plan/judge/stiffer.h"

#include "plan/judge/limits.h"
#include "plan/settle/wall_request.h"
#include "reservoir/stay_spacing.h"

#include <array>

namespace riserun::plan {

namespace {

int bars_of(const reservoir::StaySpacing& spacing) {
  return spacing.stays + 2 * (spacing.long_side_stiffeners + spacing.short_side_stiffeners);
}

/// As the plan settles it for that thickness: plate promises more than thin sheet.
Stress yield_of_plate(const Job& job, Stress of_sheet, Length plate) {
  if (job.reservoir.yield) return *job.reservoir.yield;
  const auto metal = reservoir::find_sheet_metal(job.reservoir.sheet.metal, plate);
  return metal ? metal->yield : of_sheet;
}

constexpr std::array kSixteenths = {2, 3, 4, 5, 6, 7, 8, 10, 12};  // of an inch

}  // namespace

std::vector<Mend> stiffer_walls(const Job& job, const Settled& settled, Length charge, GaugePressure wanted,
                                Stress allowed) {
  std::vector<Mend> mends;
  reservoir::WallRequest request = wall_request(job, settled, charge);
  request.design_stress = allowed;
  if (reservoir::wall_limit(request) >= wanted) return mends;
  if (const auto spacing = reservoir::stay_spacing(request, wanted); spacing && bars_of(*spacing) <= kMostBars) {
    reservoir::WallRequest stayed = wall_request(job, settled, charge);
    stayed.supports = spacing->supports;
    const Fact every = fact("stays_every", reservoir::facts_of(*spacing), reservoir::wall_limit(stayed));
    const bool bare = job.reservoir.supports.layout && job.reservoir.supports.layout->bare;
    mends.push_back({bare ? fact("in_place_of_bare_panel", quantity::Facts{every}) : every,
                     {},
                     {{{kSupports, {}, {}, spacing->supports}}}});
  }
  const Stress yield = request.metal.yield;
  const double share_of_yield = allowed / yield;
  const Length rusts = job.reservoir.corrosion_allowance.value_or(Length{});
  for (const int sixteenths : kSixteenths) {
    const Length plate = inches(sixteenths / 16.0);
    if (plate - rusts <= settled.wall_thickness) continue;
    const Stress promised = yield_of_plate(job, yield, plate);
    request.thickness = plate - rusts;
    request.design_stress = promised * share_of_yield;
    if (reservoir::wall_limit(request) < wanted) continue;
    reservoir::WallRequest thicker = wall_request(job, settled, charge);
    thicker.thickness = plate - rusts;
    thicker.design_stress = promised * reservoir::kDesignShareOfYield;
    mends.push_back({fact("sheet_at_least", plate, reservoir::wall_limit(thicker)), {}, {{{kSheetThickness, plate}}}});
    break;
  }
  return mends;
}

std::vector<Mend> with_too(std::vector<Mend> mends, const Fact& also, const Changes& changes) {
  for (Mend& mend : mends) {
    mend.fact = fact("mends_together", quantity::Facts{mend.fact, also});
    for (Changes& way : mend.ways_to_try) way.insert(way.end(), changes.begin(), changes.end());
  }
  return mends;
}

}  // namespace riserun::plan
