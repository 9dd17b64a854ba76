// The water's way from the riser's lower end to the table, as elements of a line.
#include "plan/stage/drafting.h"
#include "quantity/write.h"

#include <algorithm>

namespace riserun::plan {

namespace {

using hydraulics::LineElement;
using hydraulics::LineEnd;

const Length kCommercialSteel = millimetres(0.046);  // Crane TP-410 A-23

Length riser_roughness(const Draft& draft) {
  const auto material = draft.plan.riser.material;
  const Length listed = material ? draft.catalog().material(*material).roughness : metres(0.0);
  return listed > metres(0.0) ? listed : kCommercialSteel;
}

LineElement riser_element(const Draft& draft) {
  const RiserPlan& riser = draft.plan.riser;
  LineElement element;
  element.name = "riser, " + riser.request.pipe.name;
  element.bore = riser.request.pipe.bore;
  element.length = std::max(riser.riser.cut_length, inches(1.0));
  element.roughness = riser_roughness(draft);
  return element;
}

/// What of the bung the water touches between the riser's end and the nipple's.
LineElement bung_element(const Draft& draft) {
  const RiserPlan& riser = draft.plan.riser;
  LineElement element;
  element.name = "bung";
  element.bore = std::max(riser.request.bung_opening, riser.request.pipe.bore);
  element.length =
      std::max(metres(0.0), riser.request.bung_length - riser.riser.make_up - riser.request.pipe.upper_make_up);
  element.roughness = riser_roughness(draft);
  return element;
}

/// The hose elements at the length that this job gives them.
void fit_hoses(const Draft& draft, const ConnectionPlan& connection, std::vector<LineElement>& elements) {
  if (!connection.hose_length || connection.chain()->span) return;
  for (const chain::ChainPart& part : connection.chain()->parts) {
    const catalog::Part& row = draft.catalog().part(part.part);
    if (!row.cut_to_length) continue;
    for (LineElement& element : elements)
      if (element.name == row.name) element.length = *connection.hose_length;
  }
}

std::vector<LineElement> chain_elements(const Draft& draft, const ConnectionPlan& connection) {
  std::vector<LineElement> elements = chain::line_elements(draft.catalog(), *connection.chain());
  fit_hoses(draft, connection, elements);
  if (connection.from != draft.plan.riser.bung) std::reverse(elements.begin(), elements.end());
  return elements;
}

/// Where no fittings are known: plain pipe of the riser's bore, straight up from the lid to the table.
LineElement assumed_run(Draft& draft) {
  const Length up = draft.settled.table.floor_height - draft.settled.box.height;
  LineElement element = riser_element(draft);
  element.name = "plain pipe from the lid to the table";
  element.length = std::max(up, inches(1.0));
  draft.assume("line from the lid to the table",
               "plain pipe of the riser's bore, " + write_length(element.length, draft.units()),
               "no fittings are known for it: no water connection from the riser's bung to the table has a chain");
  return element;
}

/// Water leaves into the open table and comes back from it. Crane TP-410 A-29: exit 1.0; entry flush 0.5, inward
/// projecting 0.78.
LineEnd table_end(bool over_the_rim) { return {over_the_rim ? 0.78 : 0.5, 1.0, 0.2, "Crane TP-410 A-29"}; }

}  // namespace

void draft_line(Draft& draft) {
  const Job& job = draft.plan.job;
  std::vector<LineElement> elements{riser_element(draft), bung_element(draft)};
  bool over_the_rim = false;
  const bool known =
      draft.plan.water_connection && draft.plan.connections[*draft.plan.water_connection].chain() != nullptr;
  if (known) {
    const ConnectionPlan& connection = draft.plan.connections[*draft.plan.water_connection];
    for (LineElement& element : chain_elements(draft, connection)) elements.push_back(std::move(element));
    const JobPort* from = port_named(job.table.ports, connection.from);
    const JobPort* port = from != nullptr ? from : port_named(job.table.ports, connection.to);
    over_the_rim = port != nullptr && port->place == Place::over_rim;
  } else {
    elements.push_back(assumed_run(draft));
  }
  draft.plan.line = hydraulics::Line(std::move(elements), draft.plan.riser.riser.inlet, table_end(over_the_rim));
}

}  // namespace riserun::plan
