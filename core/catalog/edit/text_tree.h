// The text of a YAML file as values that know from which byte to which byte they stand, so that one of them can be
// changed and all the rest stays as it was written: comments, blank lines, the order of keys, the style of numbers.
#pragma once

#include "catalog/edit/job_path.h"
#include "catalog/yaml/document.h"

#include <cstddef>
#include <string>
#include <string_view>
#include <vector>

namespace riserun::catalog {

struct TextNode {
  enum class Shape { text, list, map, empty };

  Shape shape = Shape::empty;
  bool flow = false;   // of a list or map: written in brackets
  std::string key;     // under which it stands in a map
  std::string scalar;  // of a text, quotes resolved
  std::vector<TextNode> children;

  // Bytes of the file.
  std::size_t entry = 0;    // where the key begins; in a list without brackets the dash; otherwise `begin`
  std::size_t key_end = 0;  // behind the key, before its colon
  std::size_t begin = 0;
  std::size_t end = 0;  // behind the last byte of the value; comments after it do not count
  int line = 0;         // 1-based, of the value
  int column = 0;       // 1-based, in characters

  bool is_text() const { return shape == Shape::text; }
  bool is_list() const { return shape == Shape::list; }
  bool is_map() const { return shape == Shape::map; }
  const TextNode* child(const PathStep& step) const;
  TextNode* child(const PathStep& step);
};

/// The same values under the same keys in the same order, wherever they stand.
bool same_meaning(const TextNode& a, const TextNode& b);

/// @param text      the document's own text, with its byte order mark if it has one
/// @param document  parsed from that text without a problem
TextNode tree_of(std::string_view text, const Document& document);

}  // namespace riserun::catalog
