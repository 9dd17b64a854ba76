#include "plan/stage/inputs.h"

#include "quantity/read.h"

#include <fmt/format.h>

#include <algorithm>

namespace riserun::plan {

std::string key_of(const Job& job, const JobConnection& connection, const char* key) {
  const std::vector<JobConnection>& all = job.connections;
  const auto place =
      std::find_if(all.begin(), all.end(), [&](const auto& each) { return each.name == connection.name; });
  return fmt::format("connections[{}].{}", place - all.begin() + 1, key);
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
