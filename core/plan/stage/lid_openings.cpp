#include "plan/stage/lid_openings.h"

#include "plan/stage/lid_map.h"
#include "plan/stage/stay_places.h"
#include "reservoir/plug_welds.h"
#include "reservoir/stay_rows.h"

#include <algorithm>
#include <utility>

namespace riserun::plan {

namespace {

using reservoir::ForcePerLength;
using reservoir::kTies;
using reservoir::StayBars;

class Openings {
 public:
  Openings(const Inputs& inputs, const WallsPlan& walls)
      : inputs_(inputs), walls_(walls), lid_(inputs.job.reservoir.sheet.thickness), metal_(walls.metal.weld_metal) {}

  std::vector<LidOpenings> all() && {
    for (const StayBars& bars : walls_.bars) {
      if (bars.wall == kTies) over_posts(bars);
      if (bars.wall == "lid") over_bar_of_lid(bars);
      const bool of_side = bars.wall == "long sides" || bars.wall == "short sides";
      if (of_side && !bars.between) over_uprights(bars);
    }
    over_baffles();
    return std::move(openings_);
  }

 private:
  void over_posts(const StayBars& ties) {
    LidOpenings holes{LidOpenings::Over::posts, {}, ties.count};
    holes.width = reservoir::plug_hole(ties.load, lid_, metal_);
    holes.places = places_of(inputs_, ties);
    openings_.push_back(std::move(holes));
  }

  /// As far in from the wall as the bar stands out from it.
  void over_uprights(const StayBars& bars) {
    LidOpenings slots{LidOpenings::Over::uprights, bars.wall, bars.count};
    slots.width = reservoir::slot_width(lid_, bars.thickness);
    slots.length = bars.height;
    slots.places = places_of(inputs_, bars);
    add(std::move(slots));
  }

  /// Pieces of one row that differ in length have slots of one kind.
  void over_bar_of_lid(const StayBars& bars) {
    const ForcePerLength load = bars.between ? walls_.loads.weld_of_row_along : walls_.loads.weld_of_row_across;
    add_row(LidOpenings::Over::lid_bars, bars.count, bars.length, {load, widest(!bars.between)}, bars.thickness,
            places_of(inputs_, bars));
  }

  void over_baffles() {
    const auto& layout = inputs_.job.reservoir.supports.layout;
    if (!layout) return;
    const reservoir::Box& box = inputs_.settled.box;
    const Length longer = std::max(box.length, box.width);
    const Length shorter = std::min(box.length, box.width);
    const Length plate = thickness_of_baffles(inputs_.job, inputs_.settled);
    const bool longer_from_left = box.length >= box.width;
    const auto places = [&](Length inside, int count, bool from_left) {
      return quantity::Facts{
          places_of_baffles(reservoir::middles_of_baffles(inside, inputs_.settled.baffle_plate, count), from_left)};
    };
    if (const int across = layout->baffles_across; across > 0)
      add_row(LidOpenings::Over::baffles, across, shorter, {walls_.loads.weld_of_row_across, widest(true)}, plate,
              places(longer, across, longer_from_left));
    if (const int along = layout->baffles_along; along > 0) {
      const int pieces = layout->baffles_across + 1;
      add_row(LidOpenings::Over::baffles, along * pieces, longer / static_cast<double>(pieces),
              {walls_.loads.weld_of_row_along, widest(false)}, plate, places(shorter, along, !longer_from_left));
    }
  }

  /// Between its slots nothing holds the lid: they stand no farther apart than single stays might at the walls' limit,
  /// and than the rows do, as the panels beside them are counted as held along their edges.
  Length widest(bool across) const {
    const reservoir::Box& box = inputs_.settled.box;
    const reservoir::WallBays bays =
        reservoir::lid_bays(inputs_.job.reservoir.supports.layout.value_or(reservoir::SupportLayout{}));
    const Length rows = across ? std::max(box.length, box.width) / static_cast<double>(bays.along)
                               : std::min(box.length, box.width) / static_cast<double>(bays.across);
    if (!(walls_.loads_at > GaugePressure())) return rows;
    return std::min(rows,
                    reservoir::stayed_plate_pitch(inputs_.settled.wall_thickness, walls_.loads_at - GaugePressure(),
                                                  inputs_.settled.design_stress));
  }

  void add_row(LidOpenings::Over over, int pieces, Length run, const reservoir::SlotLoad& load, Length under,
               quantity::Facts places) {
    const reservoir::SlotRow row = reservoir::slots_along(load, lid_, under, metal_);
    LidOpenings slots{over, {}, pieces * reservoir::slots_in(run, row)};
    slots.width = row.width;
    slots.length = std::min(row.length, run);
    slots.apart = row.apart;
    slots.places = std::move(places);
    add(std::move(slots));
  }

  void add(LidOpenings slots) {
    if (reservoir::is_bevelled(slots.width, lid_)) slots.open_to = reservoir::bevelled_to(lid_);
    openings_.push_back(std::move(slots));
  }

  const Inputs& inputs_;
  const WallsPlan& walls_;
  Length lid_;
  reservoir::WeldMetal metal_;
  std::vector<LidOpenings> openings_;
};

}  // namespace

std::vector<LidOpenings> lid_openings(const Inputs& inputs, const WallsPlan& walls) {
  return inputs.settled.lid_closed ? std::vector<LidOpenings>() : Openings(inputs, walls).all();
}

Fact cut_of(const LidOpenings& of) {
  switch (of.over) {
    case LidOpenings::Over::posts:
      break;
    case LidOpenings::Over::lid_bars:
      return fact("slots_over_lid_bars", of.count, of.width, of.length, of.apart, of.places);
    case LidOpenings::Over::uprights:
      return fact("slots_over_uprights", of.count, of.width, of.length, of.wall, of.places);
    case LidOpenings::Over::baffles:
      return fact("slots_over_baffles", of.count, of.width, of.length, of.apart, of.places);
  }
  return fact("holes_over_posts", of.count, of.width, of.places);
}

Fact weld_through(const LidOpenings& of) {
  switch (of.over) {
    case LidOpenings::Over::posts:
      break;
    case LidOpenings::Over::lid_bars:
      return fact("weld_to_lid_bars", of.count);
    case LidOpenings::Over::uprights:
      return fact("weld_to_uprights", of.count, of.wall);
    case LidOpenings::Over::baffles:
      return fact("weld_to_baffles", of.count);
  }
  return fact("weld_to_posts", of.count);
}

}  // namespace riserun::plan
