#include "plan/stage/cuts.h"

#include "plan/stage/inputs.h"
#include "plan/stage/lid_map.h"
#include "plan/stage/stay_places.h"
#include "reservoir/stay_rows.h"

#include <algorithm>
#include <map>

namespace riserun::plan {

namespace {

using reservoir::kTies;

const Length kKerf = inches(1.0 / 16.0);  // of a hacksaw or a pipe cutter's wheel: common practice
/// Left at each welded edge of a plate or bar, so that it goes in: a fillet bridges 1/16 in without a larger leg (AWS
/// D1.1, from memory).
const Length kFitUp = inches(1.0 / 16.0);

/// What is welded at both its ends.
Length less_fit_up(Length between) { return between - 2.0 * kFitUp; }

/// What stands on the floor and is welded to the lid through an opening over it: between the two a plug or a slot weld
/// bridges 1/16 in at most (AWS D1.1 7.21, from memory).
Length up_to_lid(Length height) { return height - kFitUp; }

const std::string kThickerPlate = "3/16 in (5 mm) ";  // as it is sold: reservoir::kThinnestBar

bool stands_up(const reservoir::StayBars& bars) {
  return bars.wall == kTies || (!bars.between && (bars.wall == "long sides" || bars.wall == "short sides"));
}

Fact note_of(const reservoir::StayBars& bars, const WallsPlan& walls, const quantity::Facts& places) {
  if (!(bars.height > metres(0.0))) return fact("stay_of_a_section", bars.load, walls.loads_at, places);
  if (walls.mouse_holes && bars.wall == "floor")
    return fact("stay_with_mouse_holes", bars.load, walls.loads_at, walls.mouse_holes->along, walls.mouse_holes->height,
                places);
  return fact("stay_on_edge", bars.load, walls.loads_at, places);
}

/// Bars are of the sheet's metal, not of sheet.
std::string bar_metal(const std::string& sheet) {
  static const std::string kSheet = " sheet";
  std::string metal = sheet;
  if (metal.ends_with(kSheet)) metal.erase(metal.size() - kSheet.size());
  static const std::string kCommercial = "commercial ";
  if (metal.starts_with(kCommercial)) metal.erase(0, kCommercial.size());
  return metal;
}

/// A gap that was worked out of heights of which some were assumed.
bool has_assumed_gap(const ConnectionPlan& connection) { return connection.gap_assumed && connection.gap; }

/// Nobody has laid the hose round the table's edge yet.
bool is_guessed(const ConnectionPlan& connection) { return connection.hose_rise && connection.hose_rise->guessed; }

std::string datum_of(const ConnectionPlan& connection, const char* how) {
  return (has_assumed_gap(connection) || is_guessed(connection) ? "when its gap is measured: " : "") + std::string(how);
}

/// What must be done before the cut; nullopt: nothing.
std::optional<Fact> waits_for(const ConnectionPlan& connection) {
  if (is_guessed(connection)) return fact("cut_when_hose_is_laid", *connection.hose_length);
  if (!has_assumed_gap(connection)) return std::nullopt;
  return fact("cut_when_gap_is_measured", *connection.gap);
}

/// By the threads that are cut on the piece.
constexpr const char* kDatum[] = {"end to end, cut square", "from a threaded end; thread the sawn one",
                                  "end to end, then thread both ends"};

Stock stock_of(const Catalog& catalog, PartId id) {
  const catalog::Part& part = catalog.part(id);
  Stock stock{.name = stock_name(part),
              .sold_as = {},
              .piece = {},
              .sawn_ends = part.sawn_ends,
              .material = part.names_material ? "" : catalog.material(part.material).name};
  if (part.remnant)
    stock.piece = straight_length(part);
  else
    stock.sold_as = part.sold_as;
  return stock;
}

Stock stock_called(std::string name) {
  return {.name = std::move(name), .sold_as = {}, .piece = {}, .sawn_ends = 0, .material = {}};
}

}  // namespace

Length offcut_of(const Catalog& catalog, const chain::RunPart& part, Length cut) {
  const catalog::Part& row = catalog.part(part.part);
  const Length kerf = row.threaded_when_cut ? kKerf : metres(0.0);
  return std::max(metres(0.0), straight_length(row) * static_cast<double>(part.pieces) - cut - kerf);
}

void cut_riser(const Catalog& catalog, const RiserPlan& plan, ShoppingList& list) {
  if (!(plan.riser.cut_length > metres(0.0)) || plan.riser.is_stock_uncut) return;
  const bool is_welded = plan.request.bung == reservoir::BungKind::welded_riser;
  CutItem cut;
  cut.stock =
      plan.stock_part
          ? stock_of(catalog, *plan.stock_part)
          : stock_called(plan.request.pipe.name + (is_welded ? ", upper end threaded" : ", to be threaded at one end"));
  cut.length = plan.riser.cut_length;
  cut.offcut = plan.riser.offcut;
  cut.used_for = "riser";
  cut.datum = is_welded && !plan.stock_part ? "end to end" : "from the threaded end";
  list.cut.push_back(std::move(cut));
}

void cut_hoses(const Catalog& catalog, const std::vector<ConnectionPlan>& connections, ShoppingList& list) {
  for (const ConnectionPlan& connection : connections) {
    if (connection.run() == nullptr || connection.run()->span) continue;
    std::map<PartId, int> hoses;
    for (const chain::RunPart& part : connection.run()->parts)
      if (catalog.part(part.part).cut_to_length) ++hoses[part.part];
    for (const auto& [hose, count] : hoses)
      list.cut.push_back({.stock = stock_of(catalog, hose),
                          .length = connection.hose_length.value_or(straight_length(catalog.part(hose))),
                          .width = {},
                          .thickness = {},
                          .quantity = count,
                          .used_for = connection.name,
                          .datum = datum_of(connection, "end to end, cut square"),
                          .note = waits_for(connection)});
  }
}

void cut_spans(const Catalog& catalog, const std::vector<ConnectionPlan>& connections, ShoppingList& list) {
  for (const ConnectionPlan& connection : connections) {
    if (connection.chain() == nullptr) continue;
    for (const chain::RunPart& part : connection.chain()->parts) {
      if (!part.cut_length) continue;
      const catalog::Part& row = catalog.part(part.part);
      list.cut.push_back({.stock = stock_of(catalog, part.part),
                          .length = *part.cut_length,
                          .width = {},
                          .thickness = {},
                          .offcut = row.threaded_when_cut ? offcut_of(catalog, part, *part.cut_length) : metres(0.0),
                          .used_for = connection.name,
                          .datum = datum_of(connection, kDatum[threads_to_cut(row)]),
                          .note = waits_for(connection)});
    }
  }
}

void cut_baffles(const Inputs& inputs, const WallsPlan& walls, ShoppingList& list) {
  const auto& layout = inputs.job.reservoir.supports.layout;
  if (!layout || !walls.passages || inputs.settled.lid_closed) return;
  const reservoir::Box& box = inputs.settled.box;
  const Length longer = std::max(box.length, box.width);
  const Length shorter = std::min(box.length, box.width);
  const bool longer_from_left = box.length >= box.width;
  const Length plate = inputs.settled.baffle_plate;
  const bool is_thicker = plate > inputs.job.reservoir.sheet.thickness;
  const auto plates = [&](Length between, int count, const char* which, const Fact& stand) {
    if (count == 0) return;
    list.cut.push_back({.stock = stock_called(is_thicker ? kThickerPlate + bar_metal(walls.metal.name) + " plate"
                                                         : inputs.job.reservoir.sheet.written),
                        .length = less_fit_up(between),
                        .width = up_to_lid(box.height),
                        .thickness = {},
                        .quantity = count,
                        .used_for = which,
                        .datum = {},
                        .note = fact("crop_baffle_corners", walls.passages->at_floor, walls.passages->at_lid, stand)});
  };
  plates(shorter, layout->baffles_across, "baffles across",
         places_of_baffles(reservoir::middles_of_baffles(longer, plate, layout->baffles_across), longer_from_left));
  const int pieces = layout->baffles_across + 1;
  const Length of_those_across = plate * static_cast<double>(layout->baffles_across);
  plates((longer - of_those_across) / static_cast<double>(pieces), layout->baffles_along * pieces, "baffles along",
         places_of_baffles(reservoir::middles_of_baffles(shorter, plate, layout->baffles_along), !longer_from_left));
}

void cut_stays(const Inputs& inputs, const WallsPlan& walls, ShoppingList& list) {
  if (inputs.settled.lid_closed) return;
  for (const reservoir::StayBars& bars : walls.bars)
    list.cut.push_back(
        {.stock = stock_called(bar_metal(walls.metal.name) + (bars.wall == kTies ? " bar, square" : " flat bar")),
         .length = stands_up(bars) ? up_to_lid(bars.length) : less_fit_up(bars.length),
         .width = bars.height > metres(0.0) ? std::optional(bars.height) : std::nullopt,
         .thickness = bars.height > metres(0.0) ? std::optional(bars.thickness) : std::nullopt,
         .quantity = bars.count,
         .used_for = "stays, " + bars.wall,
         .datum = walls.mouse_holes && bars.wall == "floor" ? "mouse-holes at the foot" : "",
         .note = note_of(bars, walls, places_of(inputs, bars))});
}

}  // namespace riserun::plan
