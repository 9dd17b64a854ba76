#include "plan/stage/part_tally.h"

#include "plan/stage/inputs.h"

#include <algorithm>
#include <tuple>

namespace riserun::plan {

namespace {

void count_use(ListItem& item, const std::string& use, int count) {
  const auto there = std::find(item.used_for.begin(), item.used_for.end(), use);
  if (there == item.used_for.end()) {
    item.used_for.push_back(use);
    item.count_for.push_back(count);
  } else {
    item.count_for[static_cast<std::size_t>(there - item.used_for.begin())] += count;
  }
}

}  // namespace

void PartTally::add(PartId part, bool from_bin, const std::string& used_for, int quantity) {
  ListItem& item = items_[{from_bin, part}];
  if (item.quantity == 0) {
    item = described(part);
    if (from_bin) item.special_order = false;  // it need not be ordered
  }
  item.quantity += quantity;
  count_use(item, used_for, quantity);
}

void PartTally::used_too(PartId part, const std::string& used_for) {
  for (const bool from_bin : {false, true}) {
    const auto there = items_.find({from_bin, part});
    if (there == items_.end()) continue;
    count_use(there->second, used_for, 0);
    return;
  }
}

void PartTally::add_unlisted(ListItem item) {
  item.count_for.assign(item.used_for.size(), item.quantity);
  for (ListItem& there : unlisted_) {
    if (there.id != item.id || there.measure != item.measure) continue;
    there.quantity += item.quantity;
    for (const std::string& use : item.used_for) count_use(there, use, item.quantity);
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
  item.name = stock_name(part);
  if (part.remnant) {
    item.piece = straight_length(part);
    item.sawn_ends = part.sawn_ends;
  } else {
    item.sold_as = part.sold_as;
  }
  item.size = part.size;
  item.material = catalog_.material(part.material).name;
  item.shelf = catalog_.family(part.family).shelf;
  item.each = part.price;
  item.priced_by = part.priced_by;
  item.beaten = part.beaten;
  item.special_order = !part.stocked && !part.remnant;
  item.measured = part.measured && !part.remnant;
  item.by_the_foot = catalog::sold_by_the_foot(part);
  return item;
}

}  // namespace riserun::plan
