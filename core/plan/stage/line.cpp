// The water's way from the riser's lower end to the table, as elements of a line.
#include "plan/stage/line.h"

#include "chain/finder.h"

#include <algorithm>

namespace riserun::plan {

namespace {

using hydraulics::LineElement;
using hydraulics::LineEnd;

const Length kCommercialSteel = millimetres(0.046);  // Crane TP-410 A-23

Length riser_roughness(const Catalog& catalog, const RiserPlan& riser) {
  const auto material = riser.material;
  const Length listed = material ? catalog.material(*material).roughness : metres(0.0);
  return listed > metres(0.0) ? listed : kCommercialSteel;
}

/// Steel and iron rust: 1.2 to 1.5 mm in old water pipe. What is as rough as new steel, or rougher, is taken to be of
/// them; brass, plastic and hose are smoother and stay so.
void let_age(std::vector<LineElement>& elements) {
  const Length kOldPipe = millimetres(1.5);
  const Length kAsRoughAsSteel = millimetres(0.04);
  for (LineElement& element : elements)
    if (element.roughness >= kAsRoughAsSteel) element.used_roughness = std::max(element.roughness, kOldPipe);
}

/// A foot valve with strainer, poppet disc: K = 420 fT (Crane TP-410, Appendix A).
const double kFootValve = 420.0;

LineElement riser_element(const Catalog& catalog, const RiserPlan& riser) {
  LineElement element;
  element.name = "riser, " + riser.request.pipe.name;
  element.bore = riser.request.pipe.bore;
  element.length = std::max(riser.riser.cut_length, inches(1.0));
  element.roughness = riser_roughness(catalog, riser);
  return element;
}

LineElement foot_valve_element(const RiserPlan& riser) {
  LineElement element;
  element.name = "foot valve";
  element.bore = riser.request.pipe.bore;
  element.crane_n = kFootValve;
  element.source = "Crane TP-410 Appendix A";
  return element;
}

/// What of the bung the water touches between the riser's end and the nipple's.
LineElement bung_element(const Catalog& catalog, const RiserPlan& riser) {
  LineElement element;
  element.name = "bung";
  element.bore = riser.bushing ? catalog.part(riser.bushing->part).ports[1].bore
                               : std::max(riser.request.bung_opening, riser.request.pipe.bore);
  element.length =
      std::max(metres(0.0), riser.request.bung_length - riser.riser.make_up - riser.request.pipe.upper_make_up);
  element.roughness = riser_roughness(catalog, riser);
  return element;
}

/// What holds a riser smaller than its bung, as the water meets it on its way up.
std::vector<LineElement> holder_elements(const Catalog& catalog, const RiserPlan& riser) {
  if (!riser.holder) return {};
  std::vector<LineElement> elements = chain::line_elements(catalog, *riser.holder);
  std::reverse(elements.begin(), elements.end());
  return elements;
}

/// The hose elements at the length that this job gives them.
void fit_hoses(const Catalog& catalog, const ConnectionPlan& connection, std::vector<LineElement>& elements) {
  if (!connection.hose_length || connection.chain()->span) return;
  for (const chain::RunPart& part : connection.chain()->parts) {
    const catalog::Part& row = catalog.part(part.part);
    if (!row.cut_to_length) continue;
    for (LineElement& element : elements)
      if (element.name == row.name) element.length = *connection.hose_length;
  }
}

std::vector<LineElement> chain_elements(const Catalog& catalog, const RiserPlan& riser,
                                        const ConnectionPlan& connection) {
  std::vector<LineElement> elements = chain::line_elements(catalog, *connection.chain());
  fit_hoses(catalog, connection, elements);
  if (connection.from != riser.bung) std::reverse(elements.begin(), elements.end());
  return elements;
}

/// Where no fittings are known: plain pipe of the riser's bore, straight up from the lid to the table.
LineElement assumed_run(const Inputs& inputs, const RiserPlan& riser, Remarks& remarks) {
  const Length up = inputs.settled.table.floor_height - inputs.settled.box.height;
  LineElement element = riser_element(inputs.catalog, riser);
  element.name = "plain pipe from the lid to the table";
  element.length = std::max(up, inches(1.0));
  remarks.assume(fact("plain_pipe_to_the_table", element.length));
  return element;
}

/// Water leaves into the open table and comes back from it. Crane TP-410 A-29: exit 1.0; entry flush 0.5, inward
/// projecting 0.78.
LineEnd table_end(bool over_the_rim) { return {over_the_rim ? 0.78 : 0.5, 1.0, 0.2, "Crane TP-410 A-29"}; }

}  // namespace

hydraulics::Line plan_line(const Inputs& inputs, const RiserPlan& riser, const ConnectionPlan* water,
                           Remarks& remarks) {
  const Job& job = inputs.job;
  std::vector<LineElement> elements;
  if (job.riser.foot_valve) elements.push_back(foot_valve_element(riser));
  elements.push_back(riser_element(inputs.catalog, riser));
  for (LineElement& element : holder_elements(inputs.catalog, riser)) elements.push_back(std::move(element));
  elements.push_back(bung_element(inputs.catalog, riser));
  bool over_the_rim = false;
  if (water != nullptr && water->chain() != nullptr) {
    for (LineElement& element : chain_elements(inputs.catalog, riser, *water)) elements.push_back(std::move(element));
    const JobPort* from = port_named(job.table.ports, water->from);
    const JobPort* port = from != nullptr ? from : port_named(job.table.ports, water->to);
    over_the_rim = port != nullptr && port->place == Place::over_rim;
  } else {
    elements.push_back(assumed_run(inputs, riser, remarks));
  }
  let_age(elements);
  return hydraulics::Line(std::move(elements), riser.riser.inlet, table_end(over_the_rim));
}

}  // namespace riserun::plan
