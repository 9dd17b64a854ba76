// How a line of a list is put in words.
#pragma once

#include "plan/plan.h"
#include "quantity/write.h"

#include <string>
#include <string_view>
#include <vector>

namespace riserun::report {

std::string joined(const std::vector<std::string>& words, std::string_view between);
/// Of a part by its name, of a thing that the catalog has no part for in words: "set at 1.6 psi".
std::string item_size(const plan::ListItem& item, UnitSystem units);
/// ` [truck]`, ` [1 truck, 1 shop]`: where it lies, of several bins; else empty.
std::string places_of(const plan::ListItem& item);
/// `1 rubber hose, a piece of 36 in`, `1 rubber hose, by the foot`: as the store or the bin has it.
std::string item_called(const plan::ListItem& item, UnitSystem units);
/// `1 x 4 nipple, galvanized (special order)`; of several bins with the one that it lies in: `... [truck]`.
std::string item_name(const plan::ListItem& item, UnitSystem units);
/// `mild steel flat bar, 2 in x 1/4 in`.
std::string consumable_name(const plan::Consumable& item, UnitSystem units);
/// `2`, or of what is sold by the foot `2 ft`.
std::string quantity_of(const plan::ListItem& item);
/// `$2.10`, or `price?` where none is known.
std::string price_of(const plan::ListItem& item);
/// What is bought comes to; each kind of bar that the steel yard sells is one thing without price.
Price cost_with_metal(const plan::ShoppingList& list);
/// `About $41.00 and 3 without price in all; prices are indicative, but for 2 from prices.csv.`
std::string sum_words(const plan::ShoppingList& list);
/// `1 x 4 nipple, black iron: $2.10 each from p2.yaml, in place of $2.00 from p.csv and $1.90 of the catalog`, for each
/// row whose price is the shop's own.
std::vector<std::string> own_prices(const plan::ShoppingList& list, UnitSystem units);

/// `1-1/4 x 36 pipe, a piece of 21-7/8 in, one thread left, black iron`.
std::string stock_words(const plan::Stock& stock, UnitSystem units);
/// The same without the ends, and without how it is sold.
std::string short_stock_words(const plan::Stock& stock, UnitSystem units);
/// `14-1/16 in`, of a plate `20 in x 15 in`.
std::string cut_size(const plan::CutItem& item, UnitSystem units);
/// From where it is measured, its offcut, what else is cut of it; may be empty.
std::string cut_remark(const plan::CutItem& item, UnitSystem units);

}  // namespace riserun::report
