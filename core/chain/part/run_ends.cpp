#include "chain/part/run_ends.h"

#include "chain/part/metals.h"
#include "chain/part/move.h"

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

bool only_at_end(const Catalog& catalog, catalog::KindId kind) {
  const auto threads = catalog.foreign_threads();
  return std::any_of(threads.begin(), threads.end(),
                     [&](const catalog::ForeignThread& thread) { return thread.kind == kind && thread.only_at_end; });
}

bool RunEnds::has(catalog::KindId kind) const { return std::find(kinds.begin(), kinds.end(), kind) != kinds.end(); }

RunEnds run_ends(const Catalog& catalog, const ChainRequest& request, PortTypeId from, PortTypeId to) {
  const catalog::PortType& first = catalog.port_type(from);
  const catalog::PortType& last = catalog.port_type(to);
  return {std::min(catalog.line_inches(from), catalog.line_inches(to)),
          {first.kind, last.kind},
          must_part_its_ends(catalog, request),
          asks_for_hose_of_its_thread(catalog, request.needs)};
}

RunEnds run_ends(const Catalog& catalog, const ChainRequest& request) {
  return run_ends(catalog, request, request.from.type, request.to.type);
}

bool asks_for_hose_of_its_thread(const Catalog& catalog, const std::vector<Need>& needs) {
  const auto is_such_a_hose = [&](PartId id) {
    const catalog::Part& part = catalog.part(id);
    return bends(catalog, part) && std::any_of(part.ports.begin(), part.ports.end(), [&](const catalog::Port& port) {
             return only_at_end(catalog, catalog.port_type(port.type).kind);
           });
  };
  return std::any_of(needs.begin(), needs.end(), [&](const Need& need) {
    return std::any_of(need.parts.begin(), need.parts.end(), is_such_a_hose);
  });
}

void add_inner_joint(const Catalog& catalog, const RunEnds& ends, PortTypeId type, Measures& measures) {
  const catalog::KindId kind = catalog.port_type(type).kind;
  if (ends.runs_on_hose || !only_at_end(catalog, kind)) return;
  // Where no end has it, its ports are foreign already.
  const bool all_have_it =
      std::all_of(ends.kinds.begin(), ends.kinds.end(), [&](catalog::KindId k) { return k == kind; });
  if (ends.has(kind) && !all_have_it) measures.foreign_threads += 1;
}

namespace {

// What goes onto nothing but the ends' own kinds is of them: push-in is how air tube is joined.
bool joins_only(const Catalog& catalog, const RunEnds& ends, PortTypeId type) {
  const auto mates = catalog.mates(type);
  return !mates.empty() && std::all_of(mates.begin(), mates.end(), [&](const catalog::Mate& mate) {
    return ends.has(catalog.port_type(mate.other).kind);
  });
}

}  // namespace

void add_plugging(const Catalog& catalog, const RunEnds& ends, PortTypeId type, Measures& measures) {
  const catalog::KindId kind = catalog.port_type(type).kind;
  bool is_own = ends.has(kind) || joins_only(catalog, ends, type);
  for (const catalog::ForeignThread& thread : catalog.foreign_threads()) {
    if (thread.kind != kind) continue;
    const auto has = [&](catalog::KindId home) { return ends.has(home); };
    const bool at_home =
        std::any_of(thread.at_home.begin(), thread.at_home.end(), has) ||
        (ends.keeps_metals_apart && std::any_of(thread.keeps_apart.begin(), thread.keeps_apart.end(), has));
    if (!at_home) measures.foreign_threads += 1;
    is_own = is_own || at_home;
  }
  if (!is_own) measures.other_kinds += 1;
}

void add_passing(const Catalog& catalog, const RunEnds& ends, PortTypeId type, Measures& measures) {
  add_plugging(catalog, ends, type, measures);
  measures.narrowing += narrowing(ends.line_inches, catalog.line_inches(type));
}

}  // namespace riserun::chain
