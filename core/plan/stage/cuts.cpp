#include "plan/stage/cuts.h"

#include "plan/stage/inputs.h"

#include <algorithm>
#include <map>

namespace riserun::plan {

namespace {

const Length kKerf = inches(1.0 / 16.0);  // of a hacksaw or a pipe cutter's wheel: common practice

}  // namespace

void cut_riser(const Catalog& catalog, const RiserPlan& plan, ShoppingList& list) {
  if (!(plan.riser.cut_length > metres(0.0))) return;
  CutItem cut;
  cut.stock =
      plan.stock_part ? part_title(catalog, *plan.stock_part) : plan.request.pipe.name + ", to be threaded at one end";
  cut.length = plan.riser.cut_length;
  cut.offcut = plan.riser.offcut;
  cut.used_for = "riser";
  cut.datum =
      plan.request.bung == reservoir::BungKind::welded_riser ? "from the lid's inside" : "from the threaded end";
  list.cut.push_back(std::move(cut));
}

void cut_hoses(const Catalog& catalog, const std::vector<ConnectionPlan>& connections, ShoppingList& list) {
  for (const ConnectionPlan& connection : connections) {
    if (connection.run() == nullptr || connection.run()->span) continue;
    std::map<PartId, int> hoses;
    for (const chain::RunPart& part : connection.run()->parts)
      if (catalog.part(part.part).cut_to_length) ++hoses[part.part];
    for (const auto& [hose, count] : hoses)
      list.cut.push_back({.stock = part_title(catalog, hose),
                          .length = connection.hose_length.value_or(straight_length(catalog.part(hose))),
                          .width = {},
                          .quantity = count,
                          .used_for = connection.name,
                          .datum = "end to end, cut square",
                          .note = {}});
  }
}

void cut_spans(const Catalog& catalog, const std::vector<ConnectionPlan>& connections, ShoppingList& list) {
  for (const ConnectionPlan& connection : connections) {
    if (connection.chain() == nullptr) continue;
    for (const chain::RunPart& part : connection.chain()->parts) {
      if (!part.cut_length) continue;
      const catalog::Part& row = catalog.part(part.part);
      const Length offcut = straight_length(row) * static_cast<double>(part.pieces) - *part.cut_length - kKerf;
      list.cut.push_back(
          {.stock = part_title(catalog, part.part),
           .length = *part.cut_length,
           .width = {},
           .offcut = row.threaded_when_cut ? std::max(metres(0.0), offcut) : metres(0.0),
           .used_for = connection.name,
           .datum = row.threaded_when_cut ? "end to end, then thread both ends" : "end to end, cut square",
           .note = {}});
    }
  }
}

void cut_baffles(const Inputs& inputs, const WallsPlan& walls, ShoppingList& list) {
  const auto& layout = inputs.job.reservoir.supports.layout;
  if (!layout || !walls.passages || inputs.settled.lid_closed) return;
  const reservoir::Box& box = inputs.settled.box;
  const Length longer = std::max(box.length, box.width);
  const Length shorter = std::min(box.length, box.width);
  const auto plates = [&](Length length, int count, const char* which) {
    if (count == 0) return;
    list.cut.push_back({.stock = inputs.job.reservoir.sheet.written,
                        .length = length,
                        .width = box.height,
                        .quantity = count,
                        .used_for = which,
                        .datum = {},
                        .note = fact("crop_baffle_corners", walls.passages->at_floor, walls.passages->at_lid)});
  };
  plates(shorter, layout->baffles_across, "baffles across");
  const int pieces = layout->baffles_across + 1;
  plates(longer / static_cast<double>(pieces), layout->baffles_along * pieces, "baffles along");
}

}  // namespace riserun::plan
