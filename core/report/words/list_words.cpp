#include "report/words/list_words.h"

#include "catalog/words/piece_words.h"
#include "report/words/say.h"

#include <fmt/format.h>

#include <filesystem>
#include <map>

namespace riserun::report {

std::string joined(const std::vector<std::string>& words, std::string_view between) {
  return fmt::format("{}", fmt::join(words, between));
}

std::string item_size(const plan::ListItem& item, UnitSystem units) {
  return item.measure ? say(*item.measure, units) : item.size;
}

std::string places_of(const plan::ListItem& item) {
  if (item.lies_in.empty()) return "";
  if (item.lies_in.size() == 1) return fmt::format(" [{}]", item.lies_in.front().bin);
  std::vector<std::string> places;
  places.reserve(item.lies_in.size());
  for (const plan::BinPlace& place : item.lies_in) places.push_back(fmt::format("{} {}", place.count, place.bin));
  return fmt::format(" [{}]", joined(places, ", "));
}

namespace {

std::string with(std::string name, const std::string& more) { return more.empty() ? name : name + ", " + more; }

}  // namespace

std::string item_called(const plan::ListItem& item, UnitSystem units) {
  const std::string piece = item.piece ? catalog::piece_words(*item.piece, item.sawn_ends, units) : "";
  return with(with(item.name, item.sold_as), piece);
}

std::string stock_words(const plan::Stock& stock, UnitSystem units) {
  const std::string piece = stock.piece ? catalog::piece_words(*stock.piece, stock.sawn_ends, units) : "";
  return with(with(with(stock.name, stock.sold_as), piece), stock.material);
}

std::string short_stock_words(const plan::Stock& stock, UnitSystem units) {
  const std::string piece = stock.piece ? catalog::piece_words(*stock.piece, 0, units) : "";
  return with(with(stock.name, piece), stock.material);
}

std::string item_name(const plan::ListItem& item, UnitSystem units) {
  std::string name = item_called(item, units);
  if (!item.material.empty()) name += ", " + item.material;
  if (item.measure) name += ", " + say(*item.measure, units);
  if (item.measured) name += " (measured)";
  if (item.special_order) name += " (special order)";
  return name + places_of(item);
}

std::string consumable_name(const plan::Consumable& item, UnitSystem units) {
  std::vector<std::string> section;
  for (const Length& side : item.section) section.push_back(write_length(side, units));
  return with(item.name, joined(section, " x "));
}

std::string quantity_of(const plan::ListItem& item) {
  return item.by_the_foot ? fmt::format("{} ft", item.quantity) : fmt::format("{}", item.quantity);
}

std::string price_of(const plan::ListItem& item) { return item.each.known() ? write_price(item.price()) : "price?"; }

namespace {

std::string said_by(Price price, const std::string& file) {
  return (price.known() ? write_price(price) : "no price") +
         (file.empty() ? " of the catalog" : " from " + std::filesystem::path(file).filename().string());
}

}  // namespace

std::vector<std::string> own_prices(const plan::ShoppingList& list, UnitSystem units) {
  std::vector<std::string> rows;
  for (const plan::ListItem& item : list.buy) {
    if (item.priced_by.empty()) continue;
    std::vector<std::string> beaten;
    for (auto price = item.beaten.rbegin(); price != item.beaten.rend(); ++price)
      beaten.push_back(said_by(price->price, price->priced_by));
    rows.push_back(fmt::format("{}: {}, in place of {}", item_name(item, units), said_by(item.each, item.priced_by),
                               joined(beaten, " and ")));
  }
  return rows;
}

Price cost_with_metal(const plan::ShoppingList& list) {
  Price cost = list.total;
  for (const plan::Consumable& item : list.consumables)
    if (!item.metal_of.empty() && item.metal_of != "baffles") cost += Price::unknown();
  return cost;
}

std::string sum_words(const plan::ShoppingList& list) {
  const Price cost = cost_with_metal(list);
  const std::string sum = write_price(cost);
  const bool any_price = cost.known() || cost.cents() != 0;
  std::map<std::string, int> own;  // by the name of the file
  for (const plan::ListItem& item : list.buy)
    if (!item.priced_by.empty()) ++own[std::filesystem::path(item.priced_by).filename().string()];
  std::vector<std::string> files;
  files.reserve(own.size());
  for (const auto& [file, rows] : own) files.push_back(fmt::format("{} from {}", rows, file));
  return fmt::format("{}{} in all; prices are indicative{}{}.", any_price ? "About " : "", sum,
                     files.empty() ? "" : ", but for ", joined(files, " and "));
}

std::string cut_size(const plan::CutItem& item, UnitSystem units) {
  std::string size = write_length(item.length, units);
  for (const auto& measure : {item.width, item.thickness})
    if (measure) size += " x " + write_length(*measure, units);
  return size;
}

std::string cut_remark(const plan::CutItem& item, UnitSystem units) {
  std::vector<std::string> remarks;
  if (!item.datum.empty()) remarks.push_back(item.datum);
  if (item.offcut > Length{}) remarks.push_back("offcut " + write_length(item.offcut, units));
  if (item.note) remarks.push_back(say(*item.note, units));
  return joined(remarks, "; ");
}

}  // namespace riserun::report
