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
      list.cut.push_back({part_title(catalog, hose),
                          connection.hose_length.value_or(straight_length(catalog.part(hose))), metres(0.0), count,
                          connection.name, "end to end, cut square"});
  }
}

void cut_spans(const Catalog& catalog, const std::vector<ConnectionPlan>& connections, ShoppingList& list) {
  for (const ConnectionPlan& connection : connections) {
    if (connection.chain() == nullptr) continue;
    for (const chain::RunPart& part : connection.chain()->parts) {
      if (!part.cut_length) continue;
      const catalog::Part& row = catalog.part(part.part);
      const Length offcut = straight_length(row) * static_cast<double>(part.pieces) - *part.cut_length - kKerf;
      list.cut.push_back({part_title(catalog, part.part), *part.cut_length,
                          row.threaded_when_cut ? std::max(metres(0.0), offcut) : metres(0.0), 1, connection.name,
                          row.threaded_when_cut ? "end to end, then thread both ends" : "end to end, cut square"});
    }
  }
}

}  // namespace riserun::plan
