#include "catalog/edit/job_text.h"

#include "catalog/edit/text_lines.h"

#include <fmt/format.h>

#include <algorithm>

namespace riserun::catalog {

namespace {

using Shape = TextNode::Shape;

std::string replaced(std::string_view text, std::size_t begin, std::size_t end, std::string_view by) {
  return std::string(text.substr(0, begin)).append(by).append(text.substr(end));
}

/// What the content means, without places: to be compared with what was read back.
TextNode meaning_of(const Content& content, std::string key) {
  TextNode node;
  node.key = std::move(key);
  if (const auto* text = std::get_if<std::string>(&content.what)) {
    node.shape = Shape::text;
    node.scalar = *text;
  } else if (const auto* list = std::get_if<Content::List>(&content.what)) {
    node.shape = Shape::list;
    for (const Content& item : *list) node.children.push_back(meaning_of(item, ""));
  } else {
    node.shape = Shape::map;
    for (const auto& [name, item] : std::get<Content::Map>(content.what))
      node.children.push_back(meaning_of(item, name));
  }
  return node;
}

/// Behind the lines of comment that follow a line and stand deeper than the column: they belong to what is above them.
std::size_t behind_own_comments(std::string_view text, std::size_t line, std::size_t column) {
  while (line < text.size()) {
    const std::size_t first = text.find_first_not_of(' ', line);
    if (first == std::string_view::npos || text[first] != '#' || first - line <= column) break;
    line = next_line(text, first);
  }
  return line;
}

std::string_view line_break_of(std::string_view text) {
  const std::size_t first = text.find('\n');
  return first != std::string_view::npos && first > 0 && text[first - 1] == '\r' ? "\r\n" : "\n";
}

/// Puts whole lines in at the start of a line, or behind a last line that has no end.
std::string with_lines(std::string_view text, std::size_t at, const std::string& lines) {
  const std::string_view newline = line_break_of(text);
  std::string broken;
  for (const char c : lines) c == '\n' ? broken.append(newline) : broken.append(1, c);
  if (at == text.size() && !text.ends_with('\n')) broken = std::string(newline) + broken;
  return replaced(text, at, at, broken);
}

/// A longer or shorter value moves the comment after it; where there is room, the comment keeps its column.
std::string with_value(std::string_view text, std::size_t begin, std::size_t end, std::string_view by) {
  const std::size_t comment = text.find_first_not_of(' ', end);
  const bool followed = comment != std::string_view::npos && text[comment] == '#' && comment >= end + 2;
  if (!followed) return replaced(text, begin, end, by);
  const std::size_t space = comment - begin;
  const std::string padding(by.size() + 2 <= space ? space - by.size() : 2, ' ');
  return replaced(text, begin, comment, std::string(by) + padding);
}

/// Where the walk along a path ends.
struct Reached {
  std::vector<const TextNode*> nodes;  // the root first; as far as they are there
  std::size_t steps = 0;               // of the path that were walked
};

Reached walk(const TextNode& root, const JobPath& path) {
  Reached reached{{&root}, 0};
  for (const PathStep& step : path.steps()) {
    const TextNode* next = reached.nodes.back()->child(step);
    if (next == nullptr) break;
    reached.nodes.push_back(next);
    ++reached.steps;
  }
  return reached;
}

TextNode* node_at(TextNode& root, const JobPath& path, std::size_t steps) {
  TextNode* node = &root;
  for (std::size_t i = 0; i < steps; ++i) node = node->child(path.steps()[i]);
  return node;
}

bool in_brackets(const std::vector<const TextNode*>& nodes) {
  return std::any_of(nodes.begin(), nodes.end(), [](const TextNode* node) { return node->flow; });
}

/// Before the closing bracket of a list or map that is written in brackets.
std::string into_brackets(std::string_view text, const TextNode& node, const std::string& entry) {
  if (node.children.empty()) return replaced(text, node.begin + 1, node.begin + 1, entry);
  std::size_t last = node.children.back().end;
  if (node.children.back().shape == Shape::empty)
    last = std::max(last, std::min(text.find_first_of(",]}", last), node.end - 1));
  const std::size_t next = text.find_first_not_of(" \t\r\n", last);
  const bool has_comma = next != std::string_view::npos && text[next] == ',';
  return has_comma ? replaced(text, next + 1, next + 1, " " + entry) : replaced(text, last, last, ", " + entry);
}

/// A new key in a map without brackets goes on a line of its own below the last.
std::string below_last_key(std::string_view text, const TextNode& map, const std::string& key, const Content& content) {
  const std::size_t column = column_of(text, map.begin);
  const std::size_t after = next_line(text, map.children.back().end);
  return with_lines(text, after, lines_of_entry(key, content, column));
}

/// A new row of a list without brackets is written as the last one is: on one line or below one another.
std::string below_last_row(std::string_view text, const TextNode& list, const Content& row) {
  const std::size_t column = column_of(text, list.begin);
  const std::size_t after = behind_own_comments(text, next_line(text, list.children.back().end), column);
  const bool one_line = !list.children.back().is_map() || list.children.back().flow;
  return with_lines(text, after, lines_of_row(row, column, one_line));
}

bool stands_first(std::string_view text, std::size_t at) {
  return is_blank(text.substr(line_start(text, at), at - line_start(text, at)));
}

/// Where the lines of comments begin that stand right over a row, as far in as the row.
std::size_t comments_above(std::string_view text, std::size_t row, std::size_t column) {
  while (row > 0) {
    const std::size_t line = line_start(text, row - 1);
    const std::size_t first = text.find_first_not_of(' ', line);
    if (first >= row || text[first] != '#' || column_of(text, first) != column) break;
    row = line;
  }
  return row;
}

std::string without_lines(std::string_view text, const TextNode& node, CommentsAbove comments) {
  std::size_t after = next_line(text, node.end);
  if (!stands_first(text, node.entry)) {
    // On the line of the dash above it: what follows moves up to there.
    const std::size_t next = text.find_first_not_of(" \r\n", after);
    return replaced(text, node.entry, std::min(next, text.size()), "");
  }
  if (!node.is_text()) after = behind_own_comments(text, after, column_of(text, node.entry));
  const std::size_t row = line_start(text, node.entry);
  const std::size_t first =
      comments == CommentsAbove::go_too ? comments_above(text, row, column_of(text, node.entry)) : row;
  return replaced(text, first, after, "");
}

/// From a list or map in brackets, with one of its commas.
std::string without_entry(std::string_view text, const TextNode& around, std::size_t place) {
  const TextNode& node = around.children[place];
  const bool is_last = place + 1 == around.children.size();
  if (!is_last) {
    const std::size_t next = around.children[place + 1].entry;
    const std::size_t comma = text.find(',', node.end);
    const bool plain = text.substr(node.end, next - node.end).find('#') == std::string_view::npos;
    return replaced(text, node.entry, plain ? next : comma + 1, "");
  }
  if (place == 0) return replaced(text, node.entry, node.end, "");
  const std::size_t before = around.children[place - 1].end;
  const std::size_t comma = text.find(',', before);
  const bool plain = text.substr(before, node.entry - before).find('#') == std::string_view::npos;
  if (plain) return replaced(text, before, node.end, "");
  return replaced(replaced(text, node.entry, node.end, ""), comma, comma + 1, "");
}

Content nested(const JobPath& path, std::size_t from, Content content) {
  for (std::size_t i = path.steps().size(); i-- > from;) {
    if (const auto* key = std::get_if<std::string>(&path.steps()[i])) {
      content = Content(Content::Map{{*key, std::move(content)}});
    } else {
      content = Content(Content::List{std::move(content)});
    }
  }
  return content;
}

/// The one step that is to be made in an existing list or map, with all that comes below it.
std::string with_new(std::string_view text, const std::vector<const TextNode*>& around, const PathStep& step,
                     const Content& content) {
  const TextNode& node = *around.back();
  const bool brackets = in_brackets(around);
  if (const auto* key = std::get_if<std::string>(&step)) {
    if (!brackets && !node.children.empty()) return below_last_key(text, node, *key, content);
    return into_brackets(text, node, written_scalar(*key, true) + ": " + written_in_brackets(content, true));
  }
  if (!brackets && !node.children.empty()) return below_last_row(text, node, content);
  return into_brackets(text, node, written_in_brackets(content, true));
}

}  // namespace

std::variant<JobText, std::vector<quantity::Problem>> JobText::read(std::string text, const std::string& name) {
  Problems problems;
  const Document document = Document::parse(text, name, problems);
  if (!problems.empty()) return std::vector(problems.all().begin(), problems.all().end());
  if (!document.root().exists()) return std::vector{quantity::Problem{name, 0, 0, "the file is empty", ""}};
  TextNode root = tree_of(text, document);
  return JobText(std::move(text), std::move(root), name);
}

const TextNode* JobText::find(const JobPath& path) const {
  const Reached reached = walk(root_, path);
  return reached.steps == path.steps().size() ? reached.nodes.back() : nullptr;
}

/// The edit holds only if the new text reads back as what was meant.
Edited JobText::checked(std::string text, const TextNode& meant) const {
  auto again = read(std::move(text), name_);
  if (JobText* good = std::get_if<JobText>(&again); good != nullptr && same_meaning(good->root_, meant))
    return std::move(*good);
  return CannotEdit{"The file is written in a way that cannot be edited at this place: change it in the text."};
}

Edited JobText::set(const JobPath& path, const Content& content) const {
  const Reached reached = walk(root_, path);
  TextNode meant = root_;
  TextNode* target = node_at(meant, path, reached.steps);
  const TextNode& node = *reached.nodes.back();
  const Content below = nested(path, reached.steps + 1, content);
  if (reached.steps == path.steps().size()) {
    if (!node.is_text() && node.shape != Shape::empty && !node.flow)
      return CannotEdit{fmt::format("{} holds several values: change one of them.", path.text())};
    *target = meaning_of(content, node.key);
    return checked(with_replaced(reached.nodes, content), meant);
  }
  const PathStep& step = path.steps()[reached.steps];
  if (node.shape == Shape::empty || node.is_text()) {
    if (node.is_text()) return CannotEdit{fmt::format("{} is a text and has nothing below it.", path.text())};
    const Content filled = nested(path, reached.steps, content);
    *target = meaning_of(filled, node.key);
    return checked(with_replaced(reached.nodes, filled), meant);
  }
  const auto* place = std::get_if<std::size_t>(&step);
  if (node.is_list() ? place == nullptr || *place != node.children.size() : place != nullptr)
    return CannotEdit{fmt::format("There is no {} in the file.", path.text())};
  target->children.push_back(meaning_of(below, place == nullptr ? std::get<std::string>(step) : ""));
  return checked(with_new(text_, reached.nodes, step, below), meant);
}

std::string JobText::with_replaced(const std::vector<const TextNode*>& nodes, const Content& content) const {
  const TextNode& node = *nodes.back();
  const bool brackets = in_brackets({nodes.begin(), nodes.end() - 1});
  std::string written = written_in_brackets(content, brackets);
  if (node.shape == Shape::empty) {
    const std::size_t colon = text_.find(':', node.key_end);
    const bool has_colon =
        colon != std::string::npos && is_blank(std::string_view(text_).substr(node.key_end, colon - node.key_end));
    if (has_colon) return replaced(text_, colon + 1, colon + 1, " " + written);
    return replaced(text_, node.end, node.end, (node.key.empty() ? " " : ": ") + written);
  }
  const char quote = text_[node.begin];
  const auto* plain = std::get_if<std::string>(&content.what);
  if (plain != nullptr && quote == '"' && node.is_text()) written = in_double_quotes(*plain);
  return with_value(text_, node.begin, node.end, written);
}

Edited JobText::append(const JobPath& list, const Content& row) const {
  const TextNode* node = find(list);
  if (node == nullptr || node->shape == Shape::empty) return set(list, Content(Content::List{row}));
  if (node->is_list()) return set(list / node->children.size(), row);
  if (node->is_text()) return set(list, Content(Content::List{Content(node->scalar), row}));
  return CannotEdit{fmt::format("{} is no list.", list.text())};
}

Edited JobText::remove(const JobPath& path, CommentsAbove comments) const {
  const Reached reached = walk(root_, path);
  if (path.empty() || reached.steps != path.steps().size())
    return CannotEdit{fmt::format("There is no {} in the file.", path.text())};
  std::size_t steps = reached.steps;
  while (steps > 1 && reached.nodes[steps - 1]->children.size() == 1) --steps;
  const TextNode& around = *reached.nodes[steps - 1];
  const auto place = static_cast<std::size_t>(reached.nodes[steps] - around.children.data());
  TextNode meant = root_;
  TextNode* parent = node_at(meant, path, steps - 1);
  parent->children.erase(parent->children.begin() + static_cast<std::ptrdiff_t>(place));
  return checked(
      around.flow ? without_entry(text_, around, place) : without_lines(text_, around.children[place], comments),
      meant);
}

}  // namespace riserun::catalog
