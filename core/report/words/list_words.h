// How a line of a list is put in words.
#pragma once

#include "plan/plan.h"

#include <string>
#include <string_view>
#include <vector>

namespace riserun::report {

std::string joined(const std::vector<std::string>& words, std::string_view between);
/// `1 x 4 nipple, galvanized (special order)`.
std::string item_name(const plan::ListItem& item);

}  // namespace riserun::report
