#include "report/text/card_text.h"

#include "catalog/yaml/read_file.h"
#include "quantity/printable.h"

#include <fmt/format.h>

#include <algorithm>

namespace riserun::report {

namespace {

using quantity::count_characters;
using quantity::printable;

constexpr std::size_t kLeftWidth = 39;  // of the settings, beside how the table is run
constexpr std::size_t kNameWidth = 16;  // of a run, at most
constexpr std::size_t kUseWidth = 12;   // of what a part is for, at most

std::string title_line(const std::string& left, const std::string& right, const Style& style) {
  const std::size_t used = count_characters(left) + count_characters(right);
  std::string line = left;
  if (!right.empty()) line += std::string(used < kCardWidth ? kCardWidth - used : 1, ' ') + right;
  return (style.bold_headings ? "\033[1m" + line + "\033[0m" : line) + "\n";
}

/// What stands to the right of the heading stands under it where both have no room in one line.
std::string section(const std::string& left, const std::string& right, const Style& style) {
  if (count_characters(left) + count_characters(right) < kCardWidth) return "\n" + title_line(left, right, style);
  return "\n" + title_line(left, "", style) + wrapped("  ", right, kCardWidth);
}

std::vector<std::string> rows_in(const std::vector<CardRow>& rows, std::size_t name_width, std::size_t width) {
  std::vector<std::string> lines;
  for (const CardRow& row : rows)
    for (std::string& line :
         wrapped_lines(fmt::format("  {} ", padded(clipped(row.name, name_width), name_width)), row.value, width))
      lines.push_back(std::move(line));
  return lines;
}

std::string side_by_side(const std::vector<std::string>& left, const std::vector<std::string>& right) {
  std::string text;
  for (std::size_t row = 0; row < std::max(left.size(), right.size()); ++row) {
    std::string line = padded(row < left.size() ? left[row] : "", kLeftWidth);
    if (row < right.size()) line += right[row];
    text += line.substr(0, line.find_last_not_of(' ') + 1) + "\n";
  }
  return text;
}

std::string findings(const Card& card) {
  std::string text;
  for (std::size_t row = 0; row < card.findings.size(); ++row) {
    text += wrapped(fmt::format("  {}  ", row + 1), card.findings[row].reason, kCardWidth);
    if (!card.findings[row].mend.empty()) text += wrapped("     -> ", card.findings[row].mend, kCardWidth);
  }
  return text;
}

std::string settings(const Card& card, const Style& style) {
  return "\n" + title_line(padded("SET AND MARK", kLeftWidth) + "RUN IT", "", style) +
         side_by_side(rows_in(card.settings, 9, kLeftWidth - 1), rows_in(card.running, 4, kCardWidth - kLeftWidth));
}

constexpr std::size_t kWidestSize = 12;  // "14-15/16 in", and one to spare

std::string cuts(const Card& card, const Style& style) {
  if (card.cuts.empty()) return "";
  std::size_t size = 0;
  // A plate's two measures or a bar's three push no other row aside.
  for (const CardCut& cut : card.cuts)
    if (const std::size_t own = count_characters(cut.size); own <= kWidestSize) size = std::max(size, own);
  std::string text = section("CUT", card.sheet, style);
  for (const CardCut& cut : card.cuts)
    text += wrapped(fmt::format("  [ ] {} {} ", cut.count, padded(cut.size + (cut.stock.empty() ? "," : ""), size)),
                    fmt::format("{}{}{} ({})", cut.stock, cut.stock.empty() || cut.remark.empty() ? "" : ", ",
                                cut.remark, cut.used_for),
                    kCardWidth);
  return text;
}

struct BuyWidths {
  std::size_t shelf = 0;
  std::size_t quantity = 0;
  std::size_t used_for = 0;
};

/// The name wraps in its column; price and use stand on its first line.
std::string buy_line(const CardItem& item, const BuyWidths& widths, bool new_shelf) {
  const std::string start = fmt::format("{} [ ] {} ", padded(new_shelf ? item.shelf : "", widths.shelf),
                                        padded(item.quantity, widths.quantity));
  const std::size_t price_end = kCardWidth - widths.used_for - 1;
  const std::size_t name_end = price_end - count_characters(item.price) - 1;
  std::vector<std::string> lines = wrapped_lines(start, item.name, name_end);
  lines.front() =
      fmt::format("{} {} {}", padded(lines.front(), name_end), item.price, clipped(item.used_for, widths.used_for));
  std::string text;
  for (const std::string& line : lines) text += line + "\n";
  return text;
}

std::string buy(const Card& card, const Style& style) {
  std::string text = section("BUY", card.cost, style);
  BuyWidths widths;
  for (const CardItem& item : card.buy) {
    widths.shelf = std::max(widths.shelf, count_characters(item.shelf));
    widths.quantity = std::max(widths.quantity, count_characters(item.quantity));
    widths.used_for = std::max(widths.used_for, std::min(kUseWidth, count_characters(item.used_for)));
  }
  for (std::size_t row = 0; row < card.buy.size(); ++row)
    text += buy_line(card.buy[row], widths, row == 0 || card.buy[row].shelf != card.buy[row - 1].shelf);
  if (!card.consumables.empty()) text += wrapped("  besides: ", card.consumables, kCardWidth);
  if (!card.from_bin.empty()) text += wrapped("  from the bin: ", card.from_bin, kCardWidth);
  return text;
}

std::string rows(const std::string& title, const std::vector<CardRow>& list, const Style& style) {
  if (list.empty()) return "";
  std::size_t width = 0;
  for (const CardRow& row : list) width = std::max(width, count_characters(printable(row.name)));
  std::string text = section(title, "", style);
  for (const std::string& line : rows_in(list, std::min(width, kNameWidth), kCardWidth)) text += line + "\n";
  return text;
}

std::string watch(const Card& card, const std::string& job_file, const Style& style) {
  std::string text = section("BEFORE AIR GOES ON", "", style);
  for (const std::string& caution : card.watch) text += wrapped("  ! ", caution, kCardWidth);
  const std::string more = card.more_to_watch == 0 ? "" : fmt::format("{} more to watch, ", card.more_to_watch);
  // What came from the standard input cannot be typed back.
  const std::string all =
      job_file == catalog::kStandardInput ? "the same with --all" : "riserun plan " + job_file + " --all";
  return text + wrapped("  ", fmt::format("{}each joint, figure and source: {}", more, all), kCardWidth);
}

}  // namespace

std::string card_text(const Card& card, const std::string& job_file, const Style& style) {
  std::string text =
      title_line(clipped(card.title, kCardWidth - count_characters(card.verdict_words) - 2), card.verdict_words, style);
  text += findings(card);
  if (card.verdict != plan::Verdict::refused)
    text += wrapped("  ", card.pressures, kCardWidth) + settings(card, style) + cuts(card, style) + buy(card, style) +
            rows("ORDER OF WORK", card.work, style);
  return text + watch(card, job_file, style);
}

}  // namespace riserun::report
