#include "gui/model/edit/bin_edits.h"

#include "plan/shop/bin_text.h"

#include <fmt/format.h>

namespace riserun::gui {

namespace {

constexpr int kMostInBin = 10000;

}  // namespace

Edited count_in_bin(const Bench& bench, const CountInBin& act) {
  if (act.count < 0 || act.count > kMostInBin)
    return CannotEdit{fmt::format("{} is no count; allowed is 0 to {}.", act.count, kMostInBin)};
  const TextNode* list = bench.text.find(at("bin"));
  if (list != nullptr && list->is_text())
    return CannotEdit{fmt::format("The bin is kept in a file of its own, {}: change the count there.", list->scalar)};
  return plan::with_count(bench.text, bench.shipped, act.part, act.count);
}

}  // namespace riserun::gui
