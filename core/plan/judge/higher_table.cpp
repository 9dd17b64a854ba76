#include "plan/judge/higher_table.h"

#include "plan/judge/limits.h"
#include "quantity/nearly.h"

#include <cmath>
#include <utility>

namespace riserun::plan {

namespace {

const Length kStep = inches(1.0 / 8.0);

/// What the run takes at the least; nullopt: its gap has room for it.
std::optional<Length> wanted_gap(const ConnectionPlan& line) {
  if (line.tight_hose) return line.tight_hose->least_gap;
  if (line.missed_bore && line.missed_bore->longer_gap) return line.missed_bore->longer_gap;
  if (!line.missed_gap) return std::nullopt;
  if (line.missed_gap->too_long && !line.missed_gap->by_hose) return line.run_length;
  return line.missed_gap->hose_takes;
}

}  // namespace

std::optional<Mend> higher_table(const Job& job, const ConnectionPlan& line) {
  const auto wanted = wanted_gap(line);
  if (!wanted || !line.gap) return std::nullopt;
  const auto on_either_end = [&](const std::vector<JobPort>& ports) {
    const JobPort* port = port_named(ports, line.from);
    return port != nullptr ? port : port_named(ports, line.to);
  };
  const JobPort* below = on_either_end(job.reservoir.ports);
  const JobPort* above = on_either_end(job.table.ports);
  if (below == nullptr || above == nullptr) return std::nullopt;
  // An assumed gap is worked out of the table's height, and goes with it.
  if (!line.gap_assumed && (!below->face_height || !above->face_height)) return std::nullopt;
  const Length missing = *wanted - *line.gap;
  if (!quantity::more_than(missing, Length())) return std::nullopt;
  const Length higher = kStep * std::ceil((missing / kStep).value() - quantity::kSameShare);
  if (quantity::more_than(higher, kMostHigherTable)) return std::nullopt;
  const Length most_offset = line.tight_hose ? line.tight_hose->most_offset : Length();
  const Length floor = job.table.floor_height + higher;
  Fact raised = above->face_height
                    ? fact("table_so_much_higher", higher, floor, above->name, *above->face_height + higher)
                    : fact("table_floor_so_much_higher", higher, floor);
  Fact said = most_offset > Length()
                  ? fact("either_mend", quantity::Facts{std::move(raised), fact("offset_for_hose", most_offset)})
                  : std::move(raised);
  return Mend{std::move(said), {}, {{{kTableHigher, higher}}}};
}

std::optional<Mend> higher_reservoir(const Job& job, Length charge) {
  const Length least = charge / (1.0 - kLeastAirSpace);
  if (quantity::at_most(least, job.reservoir.height)) return std::nullopt;
  const Length height = inches(std::ceil(in_inches(least) * 4.0) / 4.0);
  return Mend{
      fact("reservoir_so_high", height, charge), {}, {{{kReservoirHeight, height}, {"reservoir.charge", charge}}}};
}

}  // namespace riserun::plan
