#include "plan/job/job.h"

namespace riserun::plan {

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

}  // namespace riserun::plan
