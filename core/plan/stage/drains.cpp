#include "plan/stage/drains.h"

#include "chain/finder.h"
#include "hydraulics/mouth.h"
#include "plan/judge/drain.h"

#include <algorithm>

namespace riserun::plan {

namespace {

const Length kFilmOnFloor = inches(1.0 / 8.0);  // on a floor, what is left then shows as puddles: common practice

/// Water into the drain and out of it into the open (Crane TP-410 A-29): entry flush 0.5, exit 1.0.
hydraulics::LineEnd open_end() { return {0.5, 1.0, 0.2, "Crane TP-410 A-29"}; }

/// The device at the way's end as the water meets it: from the port that it is screwed on by to its other one.
std::vector<hydraulics::LineElement> elements_of_device(const Catalog& catalog, const chain::RunEnd& end) {
  const catalog::Part& part = catalog.part(*end.device);
  chain::RunPart link;
  link.part = *end.device;
  link.enter = end.device_port;
  link.ports.resize(part.ports.size());
  for (std::size_t port = 0; port < link.ports.size(); ++port)
    if (port != link.enter) link.ports[port].what = chain::Follower::What::end;
  if (part.ports.size() > 1) {
    chain::Chain alone;
    alone.parts = {std::move(link)};
    return chain::line_elements(catalog, alone);
  }
  hydraulics::LineElement element;
  element.name = part.name;
  element.bore = part.ports[0].bore;
  return {std::move(element)};
}

/// As the water runs down it, from the table's port on; a drain has it so already.
Way from_the_table(const Job& job, Way way, const ConnectionPlan& connection) {
  if (port_named(job.table.ports, connection.to) == nullptr) return way;
  std::reverse(way.parts.begin(), way.parts.end());
  for (WayPart& part : way.parts) {
    std::swap(part.enter, part.leave);
    std::reverse(part.elements.begin(), part.elements.end());
  }
  return way;
}

/// All that the water meets from the port on; what has no bore, as a blank of a catalog of one's own, is left out.
std::vector<hydraulics::LineElement> elements_of(const Catalog& catalog, const Way& way, const chain::RunEnd& end) {
  std::vector<hydraulics::LineElement> elements;
  for (const WayPart& part : way.parts) elements.insert(elements.end(), part.elements.begin(), part.elements.end());
  if (end.device)
    for (hydraulics::LineElement& element : elements_of_device(catalog, end)) elements.push_back(std::move(element));
  std::erase_if(elements, [](const hydraulics::LineElement& element) { return !(element.bore > Length()); });
  return elements;
}

/// What a part that lets the water one way alone asks for; one that stands against it opens at nothing.
void find_check(const Inputs& inputs, const Way& way, DrainPlan& drain) {
  const auto meets = [&](PartId id, std::uint8_t enter) {
    const catalog::Part& part = inputs.catalog.part(id);
    if (!part.one_way) return;
    const PressureDifference opens = part.opens_at ? *part.opens_at - GaugePressure() : inputs.settled.check_valve;
    const Length head = metres(in_metres(head_of(opens, inputs.settled.water.density)));
    drain.check = id;
    drain.held = enter == 0 ? std::max(drain.held, head) : drain.full;
  };
  for (const WayPart& part : way.parts) meets(part.part, part.enter);
}

/// Where the way takes the water in.
struct Mouth {
  Length bore{};
  Length height{};        // of its middle, or of a floor's
  bool in_floor = false;  // the water falls over its rim at the last
};

/// @param area  of the vessel's water
/// @param low   depth at which it ends, over the mouth's height
Time time_down_to(const hydraulics::Line& line, const Settled& settled, const DrainPlan& drain, const Mouth& mouth,
                  Area area) {
  constexpr int kSteps = 24;
  // In a square root of the depth, in which the flow is nearly even.
  const Length drop = drain.full - drain.left_at;
  Time time{};
  for (int step = 0; step < kSteps; ++step) {
    const double upper = static_cast<double>(kSteps - step) / kSteps;
    const double lower = static_cast<double>(kSteps - step - 1) / kSteps;
    const double middle = 0.5 * (upper + lower);
    const Length over = drain.left_at + drop * middle * middle - mouth.height;
    VolumeFlow flow =
        line.flow_at(metres_of_head(in_metres(over - drain.held)), hydraulics::Direction::forward, settled.water);
    if (mouth.in_floor) flow = std::min(flow, hydraulics::flow_over_rim(mouth.bore, over));
    time += area * (drop * (upper * upper - lower * lower)) / flow;
  }
  return time;
}

std::optional<Mouth> mouth_of(const Job& job, const ConnectionPlan& connection, Length bore, bool& of_table) {
  const JobPort* far = port_named(job.table.ports, connection.to);
  const JobPort* table = far != nullptr ? far : port_named(job.table.ports, connection.from);
  const JobPort* tank = port_named(job.reservoir.ports, connection.from);
  of_table = table != nullptr;
  if (table != nullptr) {
    if (table->place == Place::over_rim) return std::nullopt;
    return Mouth{bore, table->opens_at.value_or(Length()), table->place != Place::side};
  }
  if (tank == nullptr || !tank->place || *tank->place == Place::lid) return std::nullopt;
  if (*tank->place == Place::floor) return Mouth{bore, Length(), true};
  return Mouth{bore, tank->face_height.value_or(bore), false};
}

std::optional<DrainPlan> drain_by(const Inputs& inputs, const ConnectionPlan& connection, const std::vector<Way>& ways,
                                  const Way& as_built, const chain::RunEnd& end, const Levels& levels) {
  const Catalog& catalog = inputs.catalog;
  if (as_built.use != WayUse::water || !way_is_opened_by_hand(catalog, as_built)) return std::nullopt;
  if (!as_built.device && !leads_back(catalog, inputs.job, ways, connection)) return std::nullopt;
  const Way way = from_the_table(inputs.job, as_built, connection);
  std::vector<hydraulics::LineElement> elements = elements_of(catalog, way, end);
  if (elements.empty()) return std::nullopt;
  DrainPlan drain;
  const auto mouth = mouth_of(inputs.job, connection, elements.front().bore, drain.of_table);
  if (!mouth) return std::nullopt;
  drain.full = drain.of_table ? levels.table_depth : levels.charge_depth;
  find_check(inputs, way, drain);
  for (const WayPart& part : way.parts)
    if (catalog.family(catalog.part(part.part).family).role == catalog::Role::restrictor) drain.restrictor = part.part;
  const Length shows = mouth->in_floor ? kFilmOnFloor : drain.of_table ? kFilmOnFloor : mouth->bore / 2.0;
  drain.left_at = std::min(drain.full, mouth->height + drain.held + shows);
  const Area area = drain.of_table ? inputs.settled.table.free_area() : inputs.settled.box.free_area();
  const bool has_lip = !mouth->in_floor && !drain.of_table;
  const Length lip = std::max(Length(), mouth->height - mouth->bore / 2.0);
  drain.stays_at = has_lip ? std::min(drain.full, lip + drain.held) : drain.left_at;
  drain.left = area * drain.stays_at;
  if (drain.left_at < drain.full) {
    const hydraulics::Line line(std::move(elements), open_end(), open_end());
    drain.time = time_down_to(line, inputs.settled, drain, *mouth, area);
  }
  return drain;
}

}  // namespace

std::vector<DrainPlan> plan_drains(const Inputs& inputs, const std::vector<ConnectionPlan>& connections,
                                   const std::vector<Way>& ways, const Levels& levels) {
  std::vector<DrainPlan> drains;
  for (std::size_t row = 0; row < ways.size(); ++row) {
    const Way& way = ways[row];
    const ConnectionPlan* connection = connection_named(connections, way.connection);
    if (connection == nullptr || connection->run() == nullptr) continue;
    const auto end = std::find(connection->ends.begin(), connection->ends.end(), way.end) - connection->ends.begin();
    if (auto drain =
            drain_by(inputs, *connection, ways, way, connection->run()->ends[static_cast<std::size_t>(end)], levels)) {
      drain->way = row;
      drains.push_back(*drain);
    }
  }
  return drains;
}

}  // namespace riserun::plan
