#include "chain/build/branch_assemble.h"

#include "chain/part/duty.h"

#include <algorithm>
#include <limits>

namespace riserun::chain {

using catalog::Part;
using What = PortFollower::What;

namespace {

class TreeReader {
 public:
  TreeReader(const Catalog& catalog, const AssemblyRequest& request, Assembly& assembly)
      : catalog_(catalog),
        request_(request),
        assembly_(assembly),
        kinds_(kinds_of_targets(catalog, request)),
        left_in_bin_(request.rules.bin.items) {}

  void read(const BranchTree& tree) {
    assembly_.rating = gauge_pascals(std::numeric_limits<double>::infinity());
    for (const PortEnd& target : request_.targets) assembly_.ends.push_back({target, std::nullopt, 0, false});
    follow(tree, kBase, 0, request_.rules.from.type);
    // Last of all: what joins may be had from the bin alone, what ends a branch can be ordered.
    for (AssemblyEnd& end : assembly_.ends) pay_device(end);
  }

 private:
  PortFollower follow(const BranchTree& tree, std::size_t inner, std::uint8_t inner_port, PortTypeId open);
  void add_joint(std::size_t inner, std::uint8_t inner_port, PortTypeId a, bool to_target, std::size_t outer);
  void put_device(AssemblyEnd& end, const TargetWay& way);
  void pay_device(AssemblyEnd& end);
  bool take(PartId part);
  void count(PartId part, bool from_bin);

  const Catalog& catalog_;
  const AssemblyRequest& request_;
  Assembly& assembly_;
  std::vector<std::vector<std::size_t>> kinds_;
  std::vector<catalog::BinItem> left_in_bin_;
};

// First come, first served, as often as a part is there.
bool TreeReader::take(PartId part) {
  const auto item =
      std::find_if(left_in_bin_.begin(), left_in_bin_.end(), [&](const auto& i) { return i.part == part; });
  const bool there = item != left_in_bin_.end() && item->count > 0;
  if (there) --item->count;
  count(part, there);
  return there;
}

void TreeReader::count(PartId id, bool from_bin) {
  const Part& part = catalog_.part(id);
  assembly_.part_count += 1;
  assembly_.rating = std::min(assembly_.rating, part.rating);
  assembly_.air = assembly_.air && stands_compressed_air(catalog_, part);
  if (from_bin) return;
  assembly_.buy_count += 1;
  assembly_.price += part.price;
}

void TreeReader::put_device(AssemblyEnd& end, const TargetWay& way) {
  const Part& part = catalog_.part(way.device);
  end.device = way.device;
  end.device_port = way.port;
  end.port.type = part.ports[way.port].type;
  end.port.material = part.material_at(way.port);
}

// What it stands is its own affair: a gauge stands its scale.
void TreeReader::pay_device(AssemblyEnd& end) {
  if (!end.device) return;
  const GaugePressure rating = assembly_.rating;
  end.from_bin = take(*end.device);
  assembly_.rating = rating;
}

void TreeReader::add_joint(std::size_t inner, std::uint8_t inner_port, PortTypeId a, bool to_target,
                           std::size_t outer) {
  const PortTypeId b = to_target ? assembly_.ends[outer].port.type
                                 : catalog_.part(assembly_.parts[outer].part).ports[assembly_.parts[outer].enter].type;
  const catalog::MatingRule* rule = catalog_.mating_rule(a, b);
  const auto row = static_cast<std::uint32_t>(rule - catalog_.mating_rules().data());
  assembly_.joints.push_back({inner,
                              inner_port,
                              to_target,
                              outer,
                              {a, b, row, make_up(catalog_, a, b, *rule), make_up_tolerance(catalog_, a, b, *rule)}});
}

PortFollower TreeReader::follow(const BranchTree& tree, std::size_t inner, std::uint8_t inner_port, PortTypeId open) {
  if (tree.target_kind) {
    std::vector<std::size_t>& rows = kinds_[*tree.target_kind];
    const std::size_t target = rows.front();
    rows.erase(rows.begin());
    if (tree.end.device.valid()) put_device(assembly_.ends[target], tree.end);
    add_joint(inner, inner_port, open, true, target);
    return {What::target, target, {}, false};
  }
  const std::size_t row = assembly_.parts.size();
  const bool from_bin = take(tree.move.part);
  assembly_.parts.push_back({tree.move.part, tree.move.enter, from_bin, {}});
  add_joint(inner, inner_port, open, false, row);
  const Part& part = catalog_.part(tree.move.part);
  std::vector<PortFollower> ports(part.ports.size());
  std::size_t next_plug = 0;
  std::size_t next_way = 0;
  for (std::size_t port = 0; port < ports.size(); ++port) {
    if (port == tree.move.enter) continue;
    if (tree.move.leads_on(port)) {
      ports[port] = follow(tree.follows[next_way++], row, static_cast<std::uint8_t>(port), part.ports[port].type);
    } else {
      const PartId plug = tree.move.plugs[next_plug++];
      ports[port] = {What::plug, 0, plug, take(plug)};
    }
  }
  assembly_.parts[row].ports = std::move(ports);
  return {What::part, row, {}, false};
}

}  // namespace

Assembly assemble_branches(const Catalog& catalog, const AssemblyRequest& request, const BranchTree& tree) {
  Assembly assembly;
  TreeReader(catalog, request, assembly).read(tree);
  AssemblyRequest settled = request;
  for (std::size_t row = 0; row < settled.targets.size(); ++row) settled.targets[row] = assembly.ends[row].port;
  add_branch_build_order(catalog, settled, assembly);
  add_branch_cautions(catalog, settled, assembly);
  return assembly;
}

}  // namespace riserun::chain
