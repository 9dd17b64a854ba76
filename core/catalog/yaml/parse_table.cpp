#include "catalog/yaml/parse_table.h"

#include "catalog/yaml/limits.h"
#include "quantity/plain_ascii.h"
#include "quantity/printable.h"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <map>
#include <string>
#include <vector>

namespace riserun::catalog::detail {

namespace {

struct Cell {
  std::size_t offset = 0;  // byte of the file at which its text begins
  std::string_view text;
};

std::string lower_case(std::string_view text) {
  std::string lower(text);
  std::transform(lower.begin(), lower.end(), lower.begin(), &quantity::lower);
  return lower;
}

std::string_view trimmed(std::string_view text) {
  const std::size_t begin = text.find_first_not_of(" \t");
  return begin == std::string_view::npos ? text.substr(0, 0)
                                         : text.substr(begin, text.find_last_not_of(" \t") + 1 - begin);
}

char separator_of(std::string_view text) {
  const std::string_view head = text.substr(0, text.find_first_of("\r\n"));
  constexpr std::array<char, 3> kSeparators = {',', ';', '\t'};
  return *std::max_element(kSeparators.begin(), kSeparators.end(), [&](char a, char b) {
    return std::count(head.begin(), head.end(), a) < std::count(head.begin(), head.end(), b);
  });
}

class TableReader {
 public:
  TableReader(DocumentData& data, Problems& problems)
      : data_(data), problems_(problems), separator_(separator_of(data.text)) {}

  void read() {
    data_.nodes.emplace_back().shape = Shape::list;
    while (at_ < data_.text.size()) {
      const std::vector<Cell> cells = next_record();
      if (std::all_of(cells.begin(), cells.end(), [](const Cell& cell) { return cell.text.empty(); })) continue;
      if (heads_.empty())
        read_heads(cells);
      else if (data_.nodes.size() + 2 * cells.size() > kMostValues)
        return give_up(cells.front().offset);
      else
        add_row(cells);
    }
  }

 private:
  void report(std::size_t offset, std::string message) { problems_.add(data_.problem_at(offset, std::move(message))); }

  void give_up(std::size_t offset) {
    report(offset, fmt::format("more than {} cells in one table", kMostValues / 2));
    at_ = data_.text.size();
  }

  bool ends_record(std::size_t at) const { return data_.text[at] == '\n' || data_.text[at] == '\r'; }

  std::vector<Cell> next_record() {
    std::vector<Cell> cells;
    for (;;) {
      cells.push_back(next_cell());
      if (at_ >= data_.text.size()) return cells;
      if (data_.text[at_] == separator_) {
        ++at_;
        continue;
      }
      at_ += data_.text.compare(at_, 2, "\r\n") == 0 ? 2 : 1;
      return cells;
    }
  }

  /// Leaves `at_` on the separator or the line's end behind it.
  Cell next_cell() {
    const std::string_view text = data_.text;
    const std::size_t first = text.find_first_not_of(separator_ == '\t' ? " " : " \t", at_);
    const bool in_quotes = first != std::string_view::npos && text[first] == '"';
    return in_quotes ? quoted_cell(first + 1) : plain_cell();
  }

  Cell plain_cell() {
    const std::size_t begin = at_;
    while (at_ < data_.text.size() && data_.text[at_] != separator_ && !ends_record(at_)) ++at_;
    const std::string_view inside = trimmed(std::string_view(data_.text).substr(begin, at_ - begin));
    return {static_cast<std::size_t>(inside.data() - data_.text.data()), inside};
  }

  Cell quoted_cell(std::size_t begin) {
    const std::string_view text = data_.text;
    bool doubled = false;
    std::size_t end = begin;
    for (; end < text.size(); ++end) {
      if (text[end] != '"') continue;
      if (text.substr(end + 1, 1) != "\"") break;
      doubled = true;
      ++end;
    }
    if (end >= text.size()) {
      report(begin - 1, "a quote is opened and never closed");
      at_ = text.size();
      return {begin, {}};
    }
    std::string_view inside = text.substr(begin, end - begin);
    if (doubled) {
      std::string& made = data_.made_texts.emplace_back();
      for (std::size_t i = 0; i < inside.size(); ++i) {
        made += inside[i];
        if (inside[i] == '"') ++i;
      }
      inside = made;
    }
    at_ = end + 1;
    while (at_ < text.size() && text[at_] == ' ') ++at_;
    if (at_ < text.size() && text[at_] != separator_ && !ends_record(at_)) {
      report(at_, "after the closing quote comes the next cell, and not more text");
      while (at_ < text.size() && text[at_] != separator_ && !ends_record(at_)) ++at_;
    }
    if (const auto wrong = quantity::first_unprintable(inside))
      report(begin, wrong->words() + " in a cell: a text is one line of letters, digits, signs and blanks");
    return {begin, trimmed(inside)};
  }

  std::uint32_t add(Shape shape, std::size_t offset, std::string_view text = {}) {
    const auto line = std::upper_bound(data_.line_starts.begin(), data_.line_starts.end(), offset);
    Node node;
    node.shape = shape;
    node.offset = static_cast<std::uint32_t>(offset);
    node.line = static_cast<std::uint32_t>(line - data_.line_starts.begin()) - 1;
    node.text = text;
    data_.nodes.push_back(node);
    return static_cast<std::uint32_t>(data_.nodes.size() - 1);
  }

  void read_heads(const std::vector<Cell>& cells) {
    if (cells.size() > kMostKeys) {
      report(cells[kMostKeys].offset, fmt::format("more than {} columns in one table", kMostKeys));
      at_ = data_.text.size();
      return;
    }
    std::map<std::string_view, std::size_t> seen;
    for (const Cell& cell : cells) {
      const std::string_view head = data_.made_texts.emplace_back(lower_case(cell.text));
      heads_.push_back(cell.text.empty() ? kNoNode : add(Shape::text, cell.offset, head));
      if (!cell.text.empty() && !seen.emplace(head, cell.offset).second)
        report(cell.offset, fmt::format("two columns have the head '{}'; keep one", head));
    }
  }

  void link(std::uint32_t child, std::uint32_t parent, std::uint32_t& last) {
    data_.nodes[child].parent = parent;
    (last == kNoNode ? data_.nodes[parent].first : data_.nodes[last].next) = child;
    last = child;
    ++data_.nodes[parent].count;
  }

  void add_row(const std::vector<Cell>& cells) {
    const std::uint32_t row = add(Shape::map, cells.front().offset);
    link(row, 0, last_row_);
    std::uint32_t last = kNoNode;
    for (std::size_t column = 0; column < cells.size(); ++column) {
      if (cells[column].text.empty()) continue;
      if (column >= heads_.size())
        return report(cells[column].offset,
                      fmt::format("more cells than the {} heads of the first line; put a text that holds a '{}' in "
                                  "quotes",
                                  heads_.size(), separator_));
      if (heads_[column] == kNoNode) continue;
      const std::uint32_t cell = add(Shape::text, cells[column].offset, cells[column].text);
      data_.nodes[cell].key = heads_[column];
      link(cell, row, last);
    }
  }

  DocumentData& data_;
  Problems& problems_;
  char separator_;
  std::size_t at_ = 0;
  std::vector<std::uint32_t> heads_;  // by column; kNoNode: without one
  std::uint32_t last_row_ = kNoNode;
};

}  // namespace

bool is_table_name(std::string_view name) {
  return name.size() >= 4 && lower_case(name.substr(name.size() - 4)) == ".csv";
}

void parse_table(DocumentData& data, Problems& problems) { TableReader(data, problems).read(); }

}  // namespace riserun::catalog::detail
