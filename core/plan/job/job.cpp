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
  // Otherwise it is where the water leaves for the table: a way that comes down from there is a drain of its own where
  // another goes up, and no riser hangs in a coupling that ends in the lid where another reaches through it.
  const auto dips = [](const JobPort& port) { return port.bung != reservoir::BungKind::half_coupling; };
  const JobPort* bung = nullptr;
  int least = 0;
  for (const JobConnection& connection : job.connections) {
    if (connection.carries.value_or(Service::water) != Service::water) continue;
    const JobPort* up =
        port_named(job.table.ports, connection.to) != nullptr ? port_named(ports, connection.from) : nullptr;
    const JobPort* down =
        port_named(job.table.ports, connection.from) != nullptr ? port_named(ports, connection.to) : nullptr;
    const JobPort* port = up != nullptr ? up : down;
    if (port == nullptr) continue;
    const int rank = (up != nullptr ? 0 : 2) + (dips(*port) ? 0 : 1);
    if (bung != nullptr && rank >= least) continue;
    bung = port;
    least = rank;
  }
  return bung;
}

}  // namespace riserun::plan
