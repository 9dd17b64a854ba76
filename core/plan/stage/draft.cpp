// What the stages of make_plan share.
#include "plan/stage/drafting.h"
#include "quantity/read.h"

#include <fmt/format.h>

#include <algorithm>

namespace riserun::plan {

bool BinLeft::take(PartId part) {
  for (catalog::BinItem& item : bin_.items) {
    if (item.part != part || item.count == 0) continue;
    --item.count;
    return true;
  }
  return false;
}

void BinLeft::take(const Bin& given) {
  for (const catalog::BinItem& item : given.items)
    for (int i = 0; i < item.count; ++i) take(item.part);
}

std::string Draft::key_of(const JobConnection& connection, const char* key) const {
  const std::vector<JobConnection>& all = plan.job.connections;
  const auto place =
      std::find_if(all.begin(), all.end(), [&](const auto& each) { return each.name == connection.name; });
  return fmt::format("connections[{}].{}", place - all.begin() + 1, key);
}

void Draft::assume(std::string what, std::string value, std::string why, std::string key) {
  plan.assumptions.push_back({std::move(what), std::move(value), std::move(why), std::move(key)});
}

void Draft::caution(Topic where, std::string text, std::string source) {
  plan.cautions.push_back({where, std::move(text), std::move(source), false});
}

void Draft::standing_caution(Topic where, std::string text, std::string source) {
  plan.cautions.push_back({where, std::move(text), std::move(source), true});
}

void Draft::note(Topic where, std::string text) { plan.notes.push_back({where, std::move(text)}); }

void Draft::refuse(Refusal refusal) { plan.refusals.push_back(std::move(refusal)); }

const JobPort* port_named(const std::vector<JobPort>& ports, const std::string& name) {
  for (const JobPort& port : ports)
    if (port.name == name) return &port;
  return nullptr;
}

const JobPort* find_port(const Job& job, const std::string& name) {
  for (const auto* ports : {&job.reservoir.ports, &job.table.ports, &job.air.ports})
    if (const JobPort* port = port_named(*ports, name)) return port;
  return nullptr;
}

const JobPort* riser_bung(const Job& job) {
  const std::vector<JobPort>& ports = job.reservoir.ports;
  if (job.riser.bung) return port_named(ports, *job.riser.bung);
  // Otherwise it is where the water leaves for the table.
  for (const JobConnection& connection : job.connections) {
    if (connection.carries.value_or(Service::water) != Service::water) continue;
    const bool up = port_named(job.table.ports, connection.to) != nullptr;
    const bool down = port_named(job.table.ports, connection.from) != nullptr;
    if (up && port_named(ports, connection.from) != nullptr) return port_named(ports, connection.from);
    if (down && port_named(ports, connection.to) != nullptr) return port_named(ports, connection.to);
  }
  return nullptr;
}

std::string part_title(const Catalog& catalog, PartId part) {
  const catalog::Part& row = catalog.part(part);
  const std::string& material = catalog.material(row.material).name;
  const bool named = row.name.find(material) != std::string::npos;
  return named ? row.name : fmt::format("{}, {}", row.name, material);
}

std::optional<GaugePressure> opens_at(const Catalog& catalog, PartId part) {
  const catalog::Part& row = catalog.part(part);
  if (catalog.family(row.family).name != "relief valve") return std::nullopt;
  const std::size_t set = row.size.find("set ");
  if (set == std::string::npos) return std::nullopt;
  const auto reading = read_pressure(std::string_view(row.size).substr(set + 4));
  const GaugePressure* pressure = std::get_if<GaugePressure>(&reading);
  return pressure != nullptr ? std::optional(*pressure) : std::nullopt;
}

std::optional<GaugePressure> full_scale(const Catalog& catalog, PartId part) {
  const catalog::Part& row = catalog.part(part);
  if (catalog.family(row.family).name != "pressure gauge") return std::nullopt;
  return row.rating;
}

Length straight_length(const catalog::Part& part) {
  Length length = metres(0.0);
  for (const catalog::Port& port : part.ports) length += port.reach;
  return length;
}

}  // namespace riserun::plan
