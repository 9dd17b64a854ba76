#include "plan/stage/part_tally.h"

#include <algorithm>
#include <tuple>

namespace riserun::plan {

void PartTally::add(PartId part, bool from_bin, const std::string& used_for, int quantity) {
  ListItem& item = items_[{from_bin, part}];
  if (item.quantity == 0) {
    item = described(part);
    if (from_bin) item.special_order = false;  // it need not be ordered
  }
  item.quantity += quantity;
  if (std::find(item.used_for.begin(), item.used_for.end(), used_for) == item.used_for.end())
    item.used_for.push_back(used_for);
}

void PartTally::used_too(PartId part, const std::string& used_for) {
  for (const bool from_bin : {false, true}) {
    const auto there = items_.find({from_bin, part});
    if (there == items_.end()) continue;
    std::vector<std::string>& uses = there->second.used_for;
    if (std::find(uses.begin(), uses.end(), used_for) == uses.end()) uses.push_back(used_for);
    return;
  }
}

void PartTally::add_unlisted(ListItem item) {
  for (ListItem& there : unlisted_) {
    if (there.id != item.id || there.measure != item.measure) continue;
    there.quantity += item.quantity;
    if (there.used_for != item.used_for)
      there.used_for.insert(there.used_for.end(), item.used_for.begin(), item.used_for.end());
    return;
  }
  unlisted_.push_back(std::move(item));
}

std::vector<ListItem> PartTally::taken(bool from_bin) const {
  std::vector<ListItem> list;
  for (const auto& [key, item] : items_)
    if (key.first == from_bin) list.push_back(item);
  if (!from_bin) list.insert(list.end(), unlisted_.begin(), unlisted_.end());
  std::stable_sort(list.begin(), list.end(), [](const ListItem& a, const ListItem& b) {
    return std::tie(a.shelf, a.name, a.id) < std::tie(b.shelf, b.name, b.id);
  });
  return list;
}

ListItem PartTally::described(PartId id) const {
  const catalog::Part& part = catalog_.part(id);
  ListItem item;
  item.part = id;
  item.id = part.id;
  item.name = part.name;
  item.size = part.size;
  item.material = catalog_.material(part.material).name;
  item.shelf = catalog_.family(part.family).shelf;
  item.each = part.price;
  item.special_order = !part.stocked && !part.remnant;
  item.measured = part.measured && !part.remnant;
  item.by_the_foot = catalog::sold_by_the_foot(part);
  return item;
}

}  // namespace riserun::plan
