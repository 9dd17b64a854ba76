#include "catalog/edit/text_tree.h"

#include "catalog/edit/text_lines.h"

#include <algorithm>

namespace riserun::catalog {

namespace {

/// Finds the ends of values, which a Document does not keep.
class TreeReader {
 public:
  TreeReader(std::string_view text, std::size_t shift) : text_(text), shift_(shift) {}

  /// @param around  column of the block that holds the value, -1 for the outermost
  TextNode read(const Value& value, int around) const {
    TextNode node;
    node.begin = node.entry = node.end = value.offset() + shift_;
    node.line = value.line();
    node.column = value.column();
    switch (value.shape()) {
      case Value::Shape::text:
        node.shape = TextNode::Shape::text;
        node.scalar = std::string(value.text());
        node.end = scalar_end(node.begin, value.text(), around);
        break;
      case Value::Shape::list:
        node.shape = TextNode::Shape::list;
        read_list(value, node);
        break;
      case Value::Shape::map:
        node.shape = TextNode::Shape::map;
        read_map(value, node);
        break;
      case Value::Shape::empty:
      case Value::Shape::missing:
        break;
    }
    return node;
  }

 private:
  char byte(std::size_t at) const { return at < text_.size() ? text_[at] : '\0'; }
  int column(std::size_t at) const { return static_cast<int>(column_of(text_, at)); }

  std::size_t quoted_end(std::size_t at) const {
    const char quote = byte(at);
    for (std::size_t i = at + 1; i < text_.size(); ++i) {
      if (quote == '"' && text_[i] == '\\') {
        ++i;
      } else if (text_[i] == quote) {
        if (quote == '"' || byte(i + 1) != '\'') return i + 1;
        ++i;
      }
    }
    return text_.size();
  }

  /// A text below a `|` or `>`: all further lines that are blank or deeper than what is around it.
  std::size_t block_end(std::size_t at, int around) const {
    std::size_t end = line_end(text_, at);
    for (std::size_t line = end + 1; line < text_.size(); line = line_end(text_, line) + 1) {
      const std::size_t first = text_.find_first_not_of(' ', line);
      const bool blank = first == std::string_view::npos || text_[first] == '\n' || text_[first] == '\r';
      if (blank) continue;
      if (static_cast<int>(first - line) <= around) break;
      end = line_end(text_, first);
    }
    return end;
  }

  std::size_t scalar_end(std::size_t at, std::string_view value, int around) const {
    const char first = byte(at);
    if (first == '"' || first == '\'') return quoted_end(at);
    if (first == '|' || first == '>') return block_end(at, around);
    return at + value.size();
  }

  /// Behind the bracket that closes a list or map whose last value ends at `at`.
  std::size_t bracket_end(std::size_t at, char close) const {
    while (at < text_.size() && text_[at] != close) at = text_[at] == '#' ? line_end(text_, at) : at + 1;
    return std::min(at + 1, text_.size());
  }

  void read_map(const Value& value, TextNode& node) const {
    node.flow = byte(node.begin) == '{';
    node.end = node.begin + (node.flow ? 1 : 0);
    const int column = node.flow ? -1 : this->column(node.begin);
    for (const auto& [key, item] : value.entries()) {
      TextNode child = read(item, column);
      child.key = std::string(key.text());
      child.entry = key.offset() + shift_;
      child.key_end = scalar_end(child.entry, key.text(), column);
      if (child.shape == TextNode::Shape::empty) child.begin = child.end = child.key_end;
      node.end = child.end;
      node.children.push_back(std::move(child));
    }
    if (node.flow) node.end = bracket_end(node.end, '}');
  }

  /// The dash of the next row of a list without brackets, from the end of the row before it.
  std::size_t next_dash(std::size_t at) const {
    for (at = line_end(text_, at) + 1; at < text_.size(); at = line_end(text_, at) + 1) {
      const std::size_t first = text_.find_first_not_of(" \r\n", at);
      if (first == std::string_view::npos) break;
      if (text_[first] != '#') return first;
      at = first;
    }
    return text_.size();
  }

  void read_list(const Value& value, TextNode& node) const {
    node.flow = byte(node.begin) == '[';
    node.end = node.begin + (node.flow ? 1 : 0);
    const int column = node.flow ? -1 : this->column(node.begin);
    std::size_t dash = node.begin;
    for (const Value& item : value.items()) {
      TextNode child = read(item, column);
      if (!node.flow) {
        child.entry = dash;
        if (child.shape == TextNode::Shape::empty) child.begin = child.end = dash + 1;
        dash = next_dash(child.end);
      }
      node.end = child.end;
      node.children.push_back(std::move(child));
    }
    if (node.flow) node.end = bracket_end(node.end, ']');
  }

  std::string_view text_;
  std::size_t shift_;
};

}  // namespace

const TextNode* TextNode::child(const PathStep& step) const { return const_cast<TextNode*>(this)->child(step); }

TextNode* TextNode::child(const PathStep& step) {
  if (const std::size_t* place = std::get_if<std::size_t>(&step))
    return is_list() && *place < children.size() ? &children[*place] : nullptr;
  if (!is_map()) return nullptr;
  for (TextNode& node : children)
    if (node.key == std::get<std::string>(step)) return &node;
  return nullptr;
}

bool same_meaning(const TextNode& a, const TextNode& b) {
  return a.shape == b.shape && a.key == b.key && a.scalar == b.scalar && a.children.size() == b.children.size() &&
         std::equal(a.children.begin(), a.children.end(), b.children.begin(), &same_meaning);
}

TextNode tree_of(std::string_view text, const Document& document) {
  const std::size_t shift = text.starts_with(kByteOrderMark) ? kByteOrderMark.size() : 0;
  return TreeReader(text, shift).read(document.root(), -1);
}

}  // namespace riserun::catalog
