#include "chain/build/assemble.h"

#include "chain/build/build_order.h"
#include "chain/build/cautions.h"
#include "chain/build/joint_goods.h"
#include "chain/build/line_elements.h"
#include "chain/build/line_kept.h"
#include "chain/part/duty.h"
#include "chain/part/head.h"
#include "chain/tree/best_tree.h"

#include <algorithm>
#include <limits>

namespace riserun::chain {

using catalog::Part;
using What = Follower::What;

namespace {

/// An open end of the run so far: the base, or a port of a part.
struct PortLeftOpen {
  std::size_t inner = kBase;
  std::uint8_t port = 0;
};

/// Puts a run together from the base outwards, and hands the bin out along it: first come, first served, as often as a
/// part is there.
class Assembling {
 public:
  Assembling(const Catalog& catalog, const catalog::Bin& bin, Run& run) : catalog_(catalog), bin_(bin), run_(run) {}

  /// @param leads_on  bit by port: those that are not plugged
  std::size_t add_part(PortLeftOpen at, RunPart link, std::uint32_t leads_on, const std::vector<PartId>& plugs,
                       bool is_bought = false);
  void add_end(PortLeftOpen at, std::size_t end);
  /// Last of all: what joins may be had from the bin alone, what stands at an end can be ordered.
  void pay_devices();
  void add_up();

 private:
  void add_joint(PortLeftOpen at, bool to_end, std::size_t outer, PortTypeId b);
  void count(PartId part, bool from_bin, int pieces);

  const Catalog& catalog_;
  catalog::Bin bin_;
  Run& run_;
};

void Assembling::add_joint(PortLeftOpen at, bool to_end, std::size_t outer, PortTypeId b) {
  PortTypeId a = run_.base.type;
  if (at.inner != kBase) {
    RunPart& before = run_.parts[at.inner];
    a = catalog_.part(before.part).ports[at.port].type;
    before.ports[at.port] = {to_end ? What::end : What::part, outer, PartId{}, false};
  }
  const catalog::MatingRule* rule = catalog_.mating_rule(a, b);
  const auto row = static_cast<std::uint32_t>(rule - catalog_.mating_rules().data());
  run_.joints.push_back({at.inner, at.port, to_end, outer, a, b, row, make_up(catalog_, a, b, *rule),
                         make_up_tolerance(catalog_, a, b, *rule)});
}

std::size_t Assembling::add_part(PortLeftOpen at, RunPart link, std::uint32_t leads_on,
                                 const std::vector<PartId>& plugs, bool is_bought) {
  const std::size_t row = run_.parts.size();
  const Part& part = catalog_.part(link.part);
  link.from_bin = !is_bought && bin_.take(link.part, link.pieces);
  link.ports.resize(part.ports.size());
  std::size_t next = 0;
  for (std::size_t port = 0; port < link.ports.size() && next < plugs.size(); ++port) {
    if (port == link.enter || (leads_on >> port & 1u)) continue;
    const PartId plug = plugs[next++];
    link.ports[port] = {What::plug, 0, plug, bin_.take(plug)};
  }
  add_joint(at, false, row, part.ports[link.enter].type);
  run_.parts.push_back(std::move(link));
  return row;
}

void Assembling::add_end(PortLeftOpen at, std::size_t end) { add_joint(at, true, end, run_.ends[end].port.type); }

void Assembling::pay_devices() {
  for (RunEnd& end : run_.ends)
    if (end.device) end.from_bin = bin_.take(*end.device);
}

void Assembling::count(PartId id, bool from_bin, int pieces) {
  const Part& part = catalog_.part(id);
  run_.part_count += 1;
  run_.air = run_.air && stands_compressed_air(catalog_, part);
  if (from_bin) return;
  run_.buy_count += 1;
  run_.price += part.price * pieces;
}

// What a device stands is its own affair: a gauge stands its scale.
void Assembling::add_up() {
  run_.rating = gauge_pascals(std::numeric_limits<double>::infinity());
  for (const RunPart& link : run_.parts) {
    count(link.part, link.from_bin, link.pieces);
    run_.rating = std::min(run_.rating, catalog_.part(link.part).rating);
    for (const Follower& plug : link.plugs()) {
      count(plug.plug, plug.from_bin, 1);
      run_.rating = std::min(run_.rating, catalog_.part(plug.plug).rating);
    }
  }
  for (const RunEnd& end : run_.ends)
    if (end.device) count(*end.device, end.from_bin, 1);
}

void measure(const Catalog& catalog, VolumeFlow flow, Chain& chain) {
  for (const RunPart& link : chain.parts)
    chain.length += link.cut_length.value_or(body_length(catalog, catalog.part(link.part), link.enter, link.leave()));
  for (const RunJoint& joint : chain.joints) {
    chain.length -= joint.make_up;
    chain.length_tolerance += joint.make_up_tolerance;
  }
  std::vector<hydraulics::LineElement> elements = line_elements(catalog, chain);
  if (elements.empty() || in_cubic_metres_per_second(flow) <= 0.0) return;
  const hydraulics::LineEnd no_end{0.0, 0.0, 0.0, {}};
  const hydraulics::Line line(std::move(elements), no_end, no_end);
  chain.head = line.head_loss(flow, hydraulics::Direction::forward, chain_water());
}

PortEnd named(PortEnd end, std::string name) {
  end.called = std::move(name);
  return end;
}

/// Reads a tree in the order in which it is built: a part, then what follows at its ports, port by port.
class TreeReader {
 public:
  TreeReader(const Catalog& catalog, const AssemblyRequest& request, Assembling& made, Run& run)
      : catalog_(catalog), made_(made), run_(run), rows_(kinds_of_targets(catalog, request)) {}

  void read(const BranchTree& tree, PortLeftOpen at) {
    if (tree.target_kind) return read_end(tree, at);
    const std::size_t row =
        made_.add_part(at, {tree.move.part, tree.move.enter, false, {}}, tree.move.exit_ports, tree.move.plugs);
    std::size_t next = 0;
    for (std::size_t port = 0; port < catalog_.part(tree.move.part).ports.size(); ++port)
      if (tree.move.leads_on(port)) read(tree.follows[next++], {row, static_cast<std::uint8_t>(port)});
  }

 private:
  void read_end(const BranchTree& tree, PortLeftOpen at) {
    std::vector<std::size_t>& rows = rows_[*tree.target_kind];
    const std::size_t row = rows.front();
    rows.erase(rows.begin());
    if (tree.end.device.valid()) {
      const Part& part = catalog_.part(tree.end.device);
      RunEnd& end = run_.ends[row];
      end.device = tree.end.device;
      end.device_port = tree.end.port;
      end.port.type = part.ports[tree.end.port].type;
      end.port.material = part.material_at(tree.end.port);
    }
    made_.add_end(at, row);
  }

  const Catalog& catalog_;
  Assembling& made_;
  Run& run_;
  std::vector<std::vector<std::size_t>> rows_;  // of the ends, by kind
};

}  // namespace

Chain assemble(const Catalog& catalog, const ChainRequest& request, const std::vector<Move>& moves) {
  Chain chain;
  chain.base = named(request.from, name_of_first(request.from));
  chain.ends.push_back({named(request.to, name_of_last(request.to))});
  Assembling made(catalog, request.bin, chain);
  PortLeftOpen at;
  for (const Move& move : moves) {
    RunPart link{move.part, move.enter, false, {}, {}, move.pieces};
    link.short_to_bow = move.bow == Bow::too_short;
    if (move.cut_micrometres > 0) link.cut_length = metres(static_cast<double>(move.cut_micrometres) * 1e-6);
    // A piece to cut that the search bought leaves the bin to another one.
    at = {made.add_part(at, std::move(link), 1u << move.leave, move.plugs, move.cut && move.own.buy > 0), move.leave};
  }
  made.add_end(at, 0);
  made.add_up();
  measure(catalog, request.flow, chain);
  add_build_order(catalog, chain);
  add_joint_goods(catalog, chain);
  add_cautions(catalog, request.service, chain);
  if (keeps_the_line(request.order)) chain.kept = line_kept(catalog, request, chain, !request.taken);
  return chain;
}

Assembly assemble(const Catalog& catalog, const AssemblyRequest& request, const BranchTree& tree) {
  Assembly assembly;
  assembly.base = named(request.rules.from, name_of_base(request));
  for (std::size_t row = 0; row < request.targets.size(); ++row) {
    RunEnd& end = assembly.ends.emplace_back(RunEnd{named(request.targets[row], name_of_target(request, row))});
    end.feeds = request.branch(row).flow == BranchFlow::to_base;
  }
  Assembling made(catalog, request.rules.bin, assembly);
  TreeReader(catalog, request, made, assembly).read(tree, {});
  made.pay_devices();
  made.add_up();
  add_build_order(catalog, assembly);
  add_joint_goods(catalog, assembly);
  add_cautions(catalog, request.rules.service, assembly);
  add_caution_of_targets_not_behind(catalog, request, assembly);
  if (keeps_the_line(request.rules.order)) assembly.kept = line_kept(catalog, request.rules, assembly, true);
  const bool relief_is_known =
      std::any_of(request.branches.begin(), request.branches.end(), [](const BranchRules& b) { return b.relief; });
  if (!relief_is_known) add_caution_of_narrow_ways(catalog, assembly);
  return assembly;
}

std::vector<PartId> bought_parts(const Run& run) {
  std::vector<PartId> bought;
  for (const RunPart& link : run.parts) {
    if (!link.from_bin) bought.push_back(link.part);
    for (const Follower& plug : link.plugs())
      if (!plug.from_bin) bought.push_back(plug.plug);
  }
  return bought;
}

}  // namespace riserun::chain
