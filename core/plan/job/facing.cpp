#include "plan/job/facing.h"

namespace riserun::plan {

std::optional<Facing> axis_of(const JobPort& port) {
  if (!port.place) return std::nullopt;
  switch (*port.place) {
    case Place::lid:
      return Facing::up;
    case Place::floor:
      return Facing::down;
    case Place::side:
      return Facing::aside;
    case Place::over_rim:
      break;
  }
  return std::nullopt;
}

std::optional<Facing> facing_of(const Job& job, const std::string& name) {
  const JobPort* of_table = port_named(job.table.ports, name);
  const JobPort* port = of_table != nullptr ? of_table : port_named(job.reservoir.ports, name);
  if (port == nullptr) return std::nullopt;
  if (!port->place) {
    if (of_table != nullptr) return Facing::down;
    return port == riser_bung(job) ? std::optional(Facing::up) : std::nullopt;
  }
  return axis_of(*port).value_or(Facing::aside);
}

std::optional<bool> look_at_each_other(const Job& job, const std::string& from, const std::string& to) {
  const auto one = facing_of(job, from);
  const auto other = facing_of(job, to);
  if (!one || !other) return std::nullopt;
  return (*one == Facing::up && *other == Facing::down) || (*one == Facing::down && *other == Facing::up);
}

}  // namespace riserun::plan
