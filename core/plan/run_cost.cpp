#include "plan/run_cost.h"

#include <cstddef>

namespace riserun::plan {

namespace {

int count_for(const ListItem& item, std::string_view use) {
  for (std::size_t i = 0; i < item.used_for.size(); ++i)
    if (item.used_for[i] == use) return item.count_for[i];
  return 0;
}

Price price_of(const ListItem& item, int count) {
  if (count == 0) return {};
  return item.each.known() ? item.each * count : Price::unknown();
}

bool is_clamp(const Catalog& catalog, const ListItem& item) {
  if (!item.part) return item.id.starts_with("hose-clamp/");
  return catalog.family(catalog.part(*item.part).family).role == catalog::Role::hose_clamp;
}

}  // namespace

Price cost_of(const ShoppingList& list, std::string_view use) {
  Price cost;
  for (const ListItem& item : list.buy) cost += price_of(item, count_for(item, use));
  return cost;
}

ClampsBought clamps_bought(const Plan& plan, std::string_view connection) {
  ClampsBought clamps;
  for (const ListItem& item : plan.list.buy) {
    if (!is_clamp(*plan.catalog, item)) continue;
    const int count = count_for(item, connection);
    clamps.count += count;
    clamps.price += price_of(item, count);
  }
  return clamps;
}

int pieces_for(const std::vector<ListItem>& rows, PartId part, std::string_view connection) {
  for (const ListItem& item : rows)
    if (item.part == part) return count_for(item, connection);
  return 0;
}

}  // namespace riserun::plan
