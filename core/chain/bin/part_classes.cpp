#include "chain/bin/part_classes.h"

namespace riserun::chain {

namespace {

using Key = std::vector<std::int64_t>;

void add_way(const Rules& rules, const Move& move, Key& key) {
  const bool metals = rules.request().galvanic == Galvanic::avoid;
  key.insert(key.end(), {move.enter, move.leave, move.closes, std::int64_t(move.bow), move.only_for_need, move.no_grip,
                         move.bushing, metals ? std::int64_t{move.enter_material.row} : 0,
                         metals ? std::int64_t{move.leave_material.row} : 0});
}

void add_rules(const Rules& rules, PartId id, Key& key) {
  const catalog::Part& part = rules.catalog().part(id);
  key.push_back(rules.admits(id));
  if (!rules.admits(id)) return;
  key.insert(key.end(),
             {rules.buyable(id), rules.groups_of(id), goes_in_unasked(rules.catalog(), rules.request(), part)});
  if (rules.request().galvanic == Galvanic::avoid) {
    key.push_back(part.material.row);  // what a plug is judged by, whatever its port
    for (std::size_t port = 0; port < part.ports.size(); ++port) key.push_back(part.material_at(port).row);
  }
  for (std::size_t enter = 0; enter < part.ports.size(); ++enter)
    for (std::size_t leave = 0; leave < part.ports.size(); ++leave)
      if (enter != leave && rules.admits_way(part, enter, leave))
        add_way(rules, bought_move(rules.catalog(), id, enter, leave), key);
}

}  // namespace

PartClasses::PartClasses(const FoldedCatalog& folded, const std::vector<Rules>& rules) {
  const Catalog& catalog = folded.catalog();
  std::map<Key, std::uint32_t> rows;
  for (std::uint32_t row = 0; row < catalog.parts().size(); ++row) {
    const catalog::Part& part = catalog.part({row});
    Key key{static_cast<std::int64_t>(part.ports.size()), catalog::only_if_asked(catalog.family(part.family).role)};
    for (const catalog::Port& port : part.ports) key.push_back(port.type.row);
    for (const Rules& one : rules) add_rules(one, {row}, key);
    const auto [known, is_new] = rows.try_emplace(std::move(key), static_cast<std::uint32_t>(cheapest_.size()));
    class_of_.push_back(known->second);
    if (is_new) {
      cheapest_.push_back({row});
      sizes_.push_back(0);
    }
    ++sizes_[known->second];
    PartId& best = cheapest_[known->second];
    const auto rank = [&](PartId id) { return std::pair(catalog.part(id).price, folded.rank(id)); };
    if (rank({row}) < rank(best)) best = {row};
  }
}

}  // namespace riserun::chain
