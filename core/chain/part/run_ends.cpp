#include "chain/part/run_ends.h"

#include <algorithm>
#include <cmath>

namespace riserun::chain {

namespace {

constexpr double kTenths = 10.0;

// A fitting's loss goes with the fourth power of its bore at one flow: its own velocity head in those of the line.
std::int64_t narrowing(double line_inches, double inches) {
  if (inches <= 0.0 || inches >= line_inches) return 0;
  const double square = line_inches / inches * (line_inches / inches);
  return std::max<std::int64_t>(1, std::llround(kTenths * (square * square - 1.0)));
}

}  // namespace

bool RunEnds::has(catalog::KindId kind) const { return std::find(kinds.begin(), kinds.end(), kind) != kinds.end(); }

RunEnds run_ends(const Catalog& catalog, PortTypeId from, PortTypeId to) {
  const catalog::PortType& first = catalog.port_type(from);
  const catalog::PortType& last = catalog.port_type(to);
  return {std::min(catalog.nominal_inches(first.size), catalog.nominal_inches(last.size)), {first.kind, last.kind}};
}

void add_plugging(const Catalog& catalog, const RunEnds& ends, PortTypeId type, Measures& measures) {
  const catalog::KindId kind = catalog.port_type(type).kind;
  bool is_own = ends.has(kind);
  for (const catalog::ForeignThread& thread : catalog.foreign_threads()) {
    if (thread.kind != kind) continue;
    const bool at_home =
        std::any_of(thread.at_home.begin(), thread.at_home.end(), [&](catalog::KindId home) { return ends.has(home); });
    if (!at_home) measures.foreign_threads += 1;
    is_own = is_own || at_home;
  }
  if (!is_own) measures.other_kinds += 1;
}

void add_passing(const Catalog& catalog, const RunEnds& ends, PortTypeId type, Measures& measures) {
  add_plugging(catalog, ends, type, measures);
  measures.narrowing += narrowing(ends.line_inches, catalog.nominal_inches(catalog.port_type(type).size));
}

}  // namespace riserun::chain
