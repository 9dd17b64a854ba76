#include "plan/judge/stiffer.h"

#include "plan/judge/limits.h"
#include "plan/settle/wall_request.h"
#include "reservoir/stay_spacing.h"

#include <array>
#include <utility>

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

/// Of bays that a welder's hand and torch go into, and a plate's edges beside them (common practice).
const Length kNarrowestBay = inches(5.0);

/// Nothing is said yet of what holds the walls.
bool is_empty(const reservoir::SupportLayout& layout) {
  reservoir::SupportLayout none;
  none.floor_carried = layout.floor_carried;
  return layout == none;
}

/// One or two plates more of those that the job has, of an empty box as many as anybody welds into one: the fewest
/// pieces that do; nullopt: none do, or it is stayed by something else.
std::optional<Mend> more_baffles(const Job& job, const reservoir::WallRequest& asked, const Settled& settled,
                                 Length charge, GaugePressure wanted) {
  const auto& layout = job.reservoir.supports.layout;
  if (!layout || layout->bare) return std::nullopt;
  const bool empty = is_empty(*layout);
  if (!empty && layout->baffles_across + layout->baffles_along == 0) return std::nullopt;
  const int most_more = empty ? kMostBars : 2;
  const auto fit = [&](Length inside, int plates) {
    return inside - settled.baffle_plate * static_cast<double>(plates) >=
           kNarrowestBay * static_cast<double>(plates + 1);
  };
  const auto pieces = [](const reservoir::SupportLayout& each) {
    return each.baffles_across + each.baffles_along * (each.baffles_across + 1);
  };
  std::optional<reservoir::SupportLayout> best;
  for (int across = 0; across <= most_more; ++across)
    for (int along = 0; along <= most_more; ++along) {
      reservoir::WallRequest request = asked;
      request.supports.baffles_across = layout->baffles_across + across;
      request.supports.baffles_along = layout->baffles_along + along;
      if (!fit(job.reservoir.length, request.supports.baffles_across) ||
          !fit(job.reservoir.width, request.supports.baffles_along) ||
          (empty && pieces(request.supports) > kMostBars) || (best && pieces(*best) <= pieces(request.supports)))
        continue;
      if (reservoir::wall_limit(request) >= wanted) best = request.supports;
    }
  if (!best) return std::nullopt;
  reservoir::WallRequest stayed = wall_request(job, settled, charge);
  stayed.supports = *best;
  return Mend{fact("baffles_in_all", best->baffles_across, best->baffles_along, reservoir::wall_limit(stayed)),
              {},
              {{{kSupports, {}, {}, *best}}}};
}

}  // namespace

Mend with_the_lid_off(const Settled& settled, Mend mend) {
  if (!settled.lid_closed) return mend;
  mend.fact = fact("lid_comes_off_first", quantity::Facts{std::move(mend.fact)});
  for (Changes& way : mend.ways_to_try) way.push_back({"reservoir.lid", "open"});
  return mend;
}

namespace {

Mend stays_at(const Job& job, const Settled& settled, Length charge, const reservoir::StaySpacing& spacing) {
  reservoir::WallRequest stayed = wall_request(job, settled, charge);
  stayed.supports = spacing.supports;
  const Fact every = fact("stays_every", reservoir::facts_of(spacing), reservoir::wall_limit(stayed));
  const bool bare = job.reservoir.supports.layout && job.reservoir.supports.layout->bare;
  return with_the_lid_off(settled, {bare ? fact("in_place_of_bare_panel", quantity::Facts{every}) : every,
                                    {},
                                    {{{kSupports, {}, {}, spacing.supports}}}});
}

}  // namespace

std::vector<Mend> stiffer_walls(const Job& job, const Settled& settled, Length charge, GaugePressure wanted,
                                Stress allowed) {
  std::vector<Mend> mends;
  reservoir::WallRequest request = wall_request(job, settled, charge);
  request.design_stress = allowed;
  if (reservoir::wall_limit(request) >= wanted) return mends;
  const auto spacing = reservoir::stay_spacing(request, wanted);
  const bool by_bars = spacing && bars_of(*spacing) <= kMostBars;
  // Where the sides alone are weak a few flat bars on them do, and no baffle is welded in for those.
  const bool sides_alone = by_bars && spacing->stays == 0 && !spacing->lid_on_baffles;
  if (sides_alone) mends.push_back(stays_at(job, settled, charge, *spacing));
  auto baffles = more_baffles(job, request, settled, charge, wanted);
  const bool by_baffles = baffles.has_value();
  if (by_baffles) mends.push_back(with_the_lid_off(settled, std::move(*baffles)));
  // Into an empty box goes either; beside the baffles of another no rows of bars.
  const auto& layout = job.reservoir.supports.layout;
  if (by_bars && !sides_alone && (!by_baffles || (layout && is_empty(*layout))))
    mends.push_back(stays_at(job, settled, charge, *spacing));
  if (settled.lid_closed) return mends;  // the sheet of a box that is there is what it is
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
