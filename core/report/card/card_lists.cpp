// What is cut and what is bought.
#include "report/card/card_parts.h"
#include "report/words/lid_rows.h"
#include "report/words/list_words.h"
#include "report/words/say.h"

#include <fmt/format.h>

#include <algorithm>

namespace riserun::report {

namespace {

constexpr std::size_t kUseWidth = 8;  // characters, that a count of further uses is worth

/// `air in`, or of several `air in +1`; the test as the order of work calls it.
std::string first_use(const std::vector<std::string>& uses) {
  if (uses.empty()) return "";
  // Which bung is welded in, the order of work says.
  const std::string first =
      uses.front() == plan::kLeakTestUse ? "test" : uses.front().substr(0, uses.front().find(':'));
  const std::string counted = uses.size() == 1 ? first : fmt::format("{} +{}", first, uses.size() - 1);
  return counted.size() <= kUseWidth ? counted : first;
}

bool is_baffle(const plan::CutItem& cut) { return cut.note && cut.note->code == "crop_baffle_corners"; }

/// From where it is measured, of a stay where it stands, and of a baffle what is cropped for water and air; all else is
/// in the whole plan.
std::string short_remark(const plan::CutItem& cut, UnitSystem units) {
  if (cut.note && cut.used_for.starts_with("stays")) {
    const std::string places = fill("{0:; }", {cut.note->values.back()}, units);
    return cut.datum.empty() || places.empty() ? cut.datum + places : cut.datum + "; " + places;
  }
  if (!is_baffle(cut)) return cut.datum;
  return fill("crop {0} at floor, {1} at lid", cut.note->values, units);
}

/// Of baffles of one way no word which way: where their middles stand tells it.
std::string short_use(const plan::CutItem& cut, const std::vector<plan::CutItem>& all) {
  return is_baffle(cut) && std::count_if(all.begin(), all.end(), &is_baffle) == 1 ? "baffles" : cut.used_for;
}

/// Of the shelf its first word, one of its kind; what is ordered lies on none.
std::string shelf_word(const plan::ListItem& item) {
  if (item.special_order) return "order";
  std::string word = item.shelf.substr(0, item.shelf.find(' '));
  if (word.ends_with('s') && word != "brass") word.pop_back();
  return word;
}

/// What it is but for its size: "hex nipple, brass"; empty where its name does not begin with that.
std::string kind_of(const plan::ListItem& item) {
  const std::string size = item.size + " ";
  const bool is_one_of_a_kind = item.measured || item.measure || item.piece || !item.sold_as.empty();
  if (item.size.empty() || is_one_of_a_kind || !item.name.starts_with(size)) return "";
  return item.name.substr(size.size()) + ", " + item.material;
}

/// Sizes of one kind that lie side by side on the shelf.
using Sizes = std::vector<plan::ListItem>;

std::vector<Sizes> by_kind(const std::vector<plan::ListItem>& items, bool special_order) {
  std::vector<Sizes> rows;
  for (const plan::ListItem& item : items) {
    if (item.special_order != special_order) continue;
    const auto same = std::find_if(rows.begin(), rows.end(), [&](const Sizes& row) {
      return !special_order && !kind_of(item).empty() && kind_of(row.front()) == kind_of(item) &&
             row.front().shelf == item.shelf;
    });
    if (same == rows.end())
      rows.push_back({item});
    else
      same->push_back(item);
  }
  return rows;
}

/// `1/4 hex nipple, brass`, of several sizes `hex nipple, brass: 1/4 (3), 3/4`.
std::string row_name(const Sizes& sizes, UnitSystem units) {
  if (sizes.size() > 1) {
    std::vector<std::string> words;
    words.reserve(sizes.size());
    for (const plan::ListItem& item : sizes)
      words.push_back(item.quantity == 1 ? item.size : fmt::format("{} ({})", item.size, item.quantity));
    return kind_of(sizes.front()) + ": " + joined(words, ", ");
  }
  plan::ListItem item = sizes.front();
  item.special_order = false;  // its shelf says so
  if (item.by_the_foot) {      // which is how it is sold
    item.name = fmt::format("{} ft of {}", item.quantity, item.name);
    item.sold_as.clear();
  }
  return item_name(item, units);
}

CardItem card_item(const Sizes& sizes, UnitSystem units) {
  int quantity = 0;
  Price price = sizes.front().price();
  std::vector<std::string> uses;
  for (std::size_t row = 0; row < sizes.size(); ++row) {
    quantity += sizes[row].quantity;
    if (row > 0) price += sizes[row].price();
    for (const std::string& use : sizes[row].used_for)
      if (std::find(uses.begin(), uses.end(), use) == uses.end()) uses.push_back(use);
  }
  return {shelf_word(sizes.front()), sizes.front().by_the_foot ? "1" : fmt::format("{}", quantity),
          row_name(sizes, units), price.known() ? write_price(price) : "price?", first_use(uses)};
}

}  // namespace

void add_card_lists(const plan::Plan& plan, UnitSystem units, Card& card) {
  for (const plan::CutItem& cut : plan.list.cut)
    card.cuts.push_back({fmt::format("{}", cut.quantity), cut_size(cut, units),
                         is_baffle(cut) ? "" : short_stock_words(cut.stock, units), short_remark(cut, units),
                         short_use(cut, plan.list.cut)});
  for (const HoleRow& hole : holes_to_cut(plan, units))
    card.cuts.push_back({fmt::format("{}", hole.count), hole.size, hole.in_short,
                         hole.in_short_where.empty() ? hole.where : hole.in_short_where, hole.used_for, true});
  for (const Sizes& sizes : by_kind(plan.list.buy, false)) card.buy.push_back(card_item(sizes, units));
  for (const plan::Consumable& item : plan.list.consumables)
    if (item.metal_of == "baffles")
      card.sheet = fmt::format("baffles: {} of {}, by weight", item.quantity, item.name);
    else if (!item.metal_of.empty())
      card.buy.push_back({"metal", "1", fmt::format("{} of {}", item.quantity, consumable_name(item, units)),
                          "no price", item.metal_of});
  for (const Sizes& sizes : by_kind(plan.list.buy, true)) card.buy.push_back(card_item(sizes, units));
  card.cost = card.buy.empty() ? "nothing but sealant" : write_about(cost_with_metal(plan.list));
  std::vector<std::string> taken;
  for (const plan::ListItem& item : plan.list.from_bin)
    taken.push_back(item_name(item, units) + (item.quantity == 1 ? "" : fmt::format(" ({})", quantity_of(item))));
  card.from_bin = joined(taken, "; ");
  std::vector<std::string> consumables;
  for (const plan::Consumable& item : plan.list.consumables) {
    if (!item.metal_of.empty()) continue;
    consumables.push_back(item.quantity.starts_with("1 ") || item.quantity == "1"
                              ? item.name
                              : fmt::format("{} ({})", item.name, item.quantity));
  }
  card.consumables = joined(consumables, "; ");
}

}  // namespace riserun::report
