// The shop's own prices: a list of a file of keys, or a table.
#include "catalog/load/load.h"
#include "catalog/load/loading.h"
#include "catalog/words/part_search.h"
#include "catalog/yaml/limits.h"
#include "quantity/read.h"

#include <fmt/format.h>

#include <algorithm>
#include <initializer_list>
#include <map>

namespace riserun::catalog {

namespace {

/// What a table calls the price of one; `price each ($)` is the head of a list that a plan was written to.
constexpr std::string_view kPriceHeads[] = {"price", "price each ($)", "price each", "price ($)", "price (usd)"};

/// Prices as they come in, a part at most once in one list.
class PriceList {
 public:
  PriceList(CatalogBuilder& builder, Problems& problems) : builder_(builder), problems_(problems) {}

  void set(PartId id, Price price, const Value& where) {
    if (const auto [first, is_new] = seen_.emplace(id, where.line()); !is_new) {
      problems_.add(where, fmt::format("{}: '{}' has a price on line {} already; keep one", where.path(),
                                       builder_.so_far().part(id).id, first->second));
      return;
    }
    Part changed = builder_.so_far().part(id);
    changed.beaten.push_back({changed.price, changed.priced_by});
    changed.price = price;
    changed.priced_by = where.file();
    builder_.replace(id, std::move(changed));
  }

 private:
  CatalogBuilder& builder_;
  Problems& problems_;
  std::map<PartId, int> seen_;  // part, line
};

/// A number that stands in a column of prices is in dollars; with a comma for its point where the cells are separated
/// by another sign.
quantity::Reading<Price> read_price_cell(std::string_view text) {
  std::string plain(text);
  if (plain.find('.') == std::string::npos) std::replace(plain.begin(), plain.end(), ',', '.');
  if (plain.find_first_not_of("0123456789.") != std::string::npos) return read_positive_price(text);
  auto reading = read_positive_price(plain + " usd");
  if (auto* error = std::get_if<quantity::ReadError>(&reading)) error->offset = std::min(error->offset, text.size());
  return reading;
}

Value first_of(const Value& row, std::span<const std::string_view> heads) {
  for (const std::string_view head : heads)
    if (const Value cell = row[head]; cell.exists()) return cell;
  return row[heads.front()];
}

}  // namespace

quantity::Reading<Price> read_positive_price(std::string_view text) {
  return quantity::within(quantity::read_price(text), quantity::Range<Price>{cents(1), cents(10'000'000)}, text);
}

void read_prices(const Value& list, CatalogBuilder& builder, Problems& problems) {
  PartSearch search(builder.so_far());  // a price changes no words
  PriceList prices(builder, problems);
  for (const Value& value : read_list(list, problems)) {
    Fields fields(value, {"part", "price"}, problems);
    const auto part = fields.need_with("part", [&](std::string_view words) { return search.find_one(words); });
    const auto price = fields.need_with("price", read_positive_price);
    if (part && price) prices.set(*part, *price, value["part"]);
  }
}

void read_price_table(const Value& rows, CatalogBuilder& builder, Problems& problems) {
  PartSearch search(builder.so_far());
  PriceList prices(builder, problems);
  bool any = false;
  for (const Value& row : rows.items()) {
    const Value price_cell = first_of(row, kPriceHeads);
    if (!price_cell.exists()) continue;  // not priced yet
    any = true;
    const Value part_cell = first_of(row, std::initializer_list<std::string_view>{"id", "part"});
    if (!part_cell.exists()) {
      problems.add(price_cell, "whose price is that? a row has the part's words under 'part', or its name under 'id'");
      continue;
    }
    const auto part = read_with(
        part_cell, [&](std::string_view words) { return search.find_one(words); }, problems);
    const auto price = read_with(price_cell, read_price_cell, problems);
    if (part && price) prices.set(*part, *price, part_cell);
  }
  if (!any && problems.empty())
    problems.add(rows, "the table has no price: its first line names the columns, 'part' or 'id', and 'price'");
}

}  // namespace riserun::catalog
