// What a tree's parts, joints, ends and ways must keep.
#include "property/chain/every_tree.h"
#include "property/chain/judged_duty.h"
#include "property/chain/swept.h"

#include <algorithm>
#include <numeric>

namespace riserun::chain::testing {

using namespace riserun::catalog;  // NOLINT(google-build-using-namespace)
using What = TreeItem::What;

bool TreeTrial::may_be_used(PartId id) const {
  const ChainRequest& rules = request_.rules;
  if (!rules.banned.empty() && rules.banned[id.row]) return false;
  if (!rules.special_order && !catalog_.part(id).stocked && rules.bin.count_of(id) == 0) return false;
  return stands(catalog_, rules, id);
}

bool TreeTrial::clash(std::optional<MaterialId> a, std::optional<MaterialId> b) const {
  if (request_.rules.galvanic != Galvanic::avoid || !a || !b) return false;
  return eats(catalog_, request_.rules.service == Service::water && !request_.rules.dry, *a, *b);
}

PortTypeId TreeTrial::type_at(const std::vector<TreeItem>& tree, Open open) const {
  if (open.host < 0) return request_.rules.from.type;
  return catalog_.part(tree[static_cast<std::size_t>(open.host)].part).ports[open.port].type;
}

PortTypeId TreeTrial::type_of(const TreeItem& item) const {
  if (item.what == What::target && !item.part.valid()) return request_.targets[item.kind].type;
  return catalog_.part(item.part).ports[item.enter].type;
}

std::string TreeTrial::wrong_joint(const std::vector<TreeItem>& tree, const TreeItem& item) const {
  if (!catalog_.mating_rule(type_at(tree, {item.host, item.host_port}), type_of(item))) return "ends that do not mate";
  const auto facing = [](const Part& part, std::size_t port) -> std::optional<MaterialId> {
    if (part.dielectric && !part.far_material) return std::nullopt;
    return part.material_at(port);
  };
  std::optional<MaterialId> inner = request_.rules.from.material;
  if (item.host >= 0) {
    const Part& host = catalog_.part(tree[static_cast<std::size_t>(item.host)].part);
    inner = item.what == What::plug ? host.material_at(item.host_port) : facing(host, item.host_port);
  }
  std::optional<MaterialId> outer;
  if (item.what == What::target)
    outer = item.part.valid() ? std::optional(catalog_.part(item.part).material_at(item.enter))
                              : request_.targets[item.kind].material;
  if (item.what == What::part) outer = facing(catalog_.part(item.part), item.enter);
  if (item.what == What::plug) outer = catalog_.part(item.part).material;
  const auto close_nipple = [&](bool is_part, PartId part) {
    return is_part && catalog_.part(part).name.find("close nipple") != std::string::npos;
  };
  const bool ungripped = close_nipple(item.what == What::part, item.part) ||
                         (item.host >= 0 && close_nipple(true, tree[static_cast<std::size_t>(item.host)].part));
  if (ungripped && item.what != What::plug &&
      catalog_.mating_rule(type_at(tree, {item.host, item.host_port}), type_of(item))->turning == Turning::neither)
    return "a close nipple that would have to be held";
  return clash(inner, outer) ? "metals that must not meet" : "";
}

// Ports that water or air goes through: the entered one, and those that lead on.
std::string TreeTrial::wrong_part(const std::vector<TreeItem>& tree, std::size_t row) const {
  const Part& part = catalog_.part(tree[row].part);
  if (!part_allowed(tree[row].part)) return "a part that is not allowed: " + part.id;
  if (tree[row].what == What::plug) {
    const bool plug = catalog_.family(part.family).role == Role::plug;
    return plug ? "" : "no plug: " + part.id;
  }
  std::vector<std::size_t> used{tree[row].enter};
  std::size_t followed = 0;
  for (const TreeItem& item : tree) {
    if (item.host != static_cast<int>(row)) continue;
    ++followed;
    if (item.what != What::plug) used.push_back(item.host_port);
  }
  if (followed + 1 != part.ports.size()) return "a port is left open or used twice: " + part.id;
  if (used.size() < 2) return "a part that leads nowhere: " + part.id;
  for (const std::size_t a : used) {
    if (request_.rules.room && swept(catalog_, part, a) > in_metres(*request_.rules.room)) return "no room to turn";
    if (request_.rules.smallest_bore && part.ports[a].bore < *request_.rules.smallest_bore) return "too narrow";
    for (const std::size_t b : used)
      if (!part.dielectric && clash(part.material_at(a), part.material_at(b))) return "metals of one part";
  }
  return "";
}

// Taken apart at everything that closes, no piece may hold two fixed ends.
std::string TreeTrial::wrong_ends(const std::vector<TreeItem>& tree) const {
  const std::size_t count = tree.size();
  const auto outer_half = [&](std::size_t row) { return count + 1 + row; };
  std::vector<std::size_t> piece(2 * count + 1);
  std::iota(piece.begin(), piece.end(), std::size_t{0});
  const auto join = [&](std::size_t a, std::size_t b) {
    const std::size_t gone = piece[b];
    const std::size_t kept = piece[a];
    std::replace(piece.begin(), piece.end(), gone, kept);
  };
  for (std::size_t row = 0; row < count; ++row) {
    const TreeItem& item = tree[row];
    const bool is_union = item.what == What::part && catalog_.part(item.part).ports.size() == 2 &&
                          (catalog_.part(item.part).closing || hose_closes(catalog_, catalog_.part(item.part), 0, 1));
    if (!is_union) join(row, outer_half(row));
    const std::size_t inner = item.host < 0 ? count : outer_half(static_cast<std::size_t>(item.host));
    const MatingRule& rule = *catalog_.mating_rule(type_at(tree, {item.host, item.host_port}), type_of(item));
    const auto is_piece = [&](const TreeItem& one) {
      return one.what == What::part && catalog_.part(one.part).cut_to_length;
    };
    const bool at_a_piece = is_piece(item) || (item.host >= 0 && is_piece(tree[static_cast<std::size_t>(item.host)]));
    const bool is_stiff = rule.bowed && !rule.end_bows && !at_a_piece;
    if (!rule.closing || rule.lengthwise || is_stiff) join(inner, row);
  }
  std::vector<std::size_t> fixed;
  if (request_.rules.from.freedom == Freedom::fixed) fixed.push_back(piece[count]);
  for (std::size_t row = 0; row < count; ++row)
    if (tree[row].what == What::target && request_.targets[tree[row].kind].freedom == Freedom::fixed)
      fixed.push_back(piece[row]);
  std::sort(fixed.begin(), fixed.end());
  return std::adjacent_find(fixed.begin(), fixed.end()) == fixed.end() ? "" : "two fixed ends with nothing that closes";
}

// From the target inwards to the base, part by part.
std::string TreeTrial::wrong_way(const std::vector<TreeItem>& tree, std::size_t target_row) const {
  const TreeItem& target = tree[target_row];
  const BranchRules& rules = request_.branch(target.kind);
  const auto nominal = [&](PortTypeId type) { return size_of_line(catalog_, catalog_.port_type(type)); };
  const bool minds_inlet = rules.relief && !rules.smallest_bore;
  const double inlet = nominal(type_of(target));
  if (minds_inlet && nominal(request_.rules.from.type) < inlet) return "the base is smaller than the inlet";
  int quarters = 0;
  std::uint8_t leave = target.host_port;
  for (int at = target.host; at >= 0; at = tree[static_cast<std::size_t>(at)].host) {
    const TreeItem& item = tree[static_cast<std::size_t>(at)];
    const Part& part = catalog_.part(item.part);
    const Length bore = std::min(part.ports[item.enter].bore, part.ports[leave].bore);
    if (!rules.banned.empty() && rules.banned[item.part.row]) return "a part that is kept off this way";
    if (rules.smallest_bore && bore < *rules.smallest_bore) return "too narrow for this target";
    if (rules.relief && catalog_.family(part.family).can_shut) return "something that shuts before a relief valve";
    if (minds_inlet && target.part.valid() && bore < catalog_.part(target.part).ports[target.enter].bore)
      return "narrower than the relief valve";
    if (minds_inlet && std::min(nominal(part.ports[item.enter].type), nominal(part.ports[leave].type)) < inlet)
      return "a smaller size than the inlet";
    if (part.arrow && (item.enter == 0) != (rules.flow == BranchFlow::from_base)) return "a one-way part wrong";
    const int degrees = static_cast<int>(part.ports[item.enter].heading_degrees - part.ports[leave].heading_degrees);
    const int apart = ((degrees % 360) + 360) % 360;
    const bool flexible = catalog_.family(part.family).flexible;
    if (rules.facing != Facing::any && (flexible || (apart != 180 && apart != 90 && apart != 270)))
      return "it looks in no direction that is known";
    quarters += apart == 180 ? 0 : 1;
    leave = item.host_port;
  }
  if (rules.facing == Facing::straight_on && quarters != 0) return "it does not look straight on";
  if (rules.facing == Facing::to_a_side && quarters != 1) return "it does not look to a side";
  return "";
}

}  // namespace riserun::chain::testing
