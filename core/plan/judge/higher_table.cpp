#include "plan/judge/higher_table.h"

#include "quantity/nearly.h"

#include <cmath>
#include <utility>

namespace riserun::plan {

namespace {

const Length kStep = inches(1.0 / 8.0);

/// What the hose takes at the least; nullopt: its gap has room, or it has none.
std::optional<Length> wanted_gap(const ConnectionPlan& line) {
  if (line.tight_hose) return line.tight_hose->least_gap;
  return line.missed_gap ? line.missed_gap->hose_takes : std::nullopt;
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
  if (below == nullptr || above == nullptr || !below->face_height || !above->face_height) return std::nullopt;
  const Length missing = *wanted - *line.gap;
  if (!quantity::more_than(missing, Length())) return std::nullopt;
  const Length higher = kStep * std::ceil((missing / kStep).value() - quantity::kSameShare);
  const Length most_offset = line.tight_hose ? line.tight_hose->most_offset : Length();
  Fact raised =
      fact("table_so_much_higher", higher, job.table.floor_height + higher, above->name, *above->face_height + higher);
  Fact said = most_offset > Length()
                  ? fact("either_mend", quantity::Facts{std::move(raised), fact("offset_for_hose", most_offset)})
                  : std::move(raised);
  return Mend{std::move(said), {}, {{{kTableHigher, higher}}}};
}

}  // namespace riserun::plan
