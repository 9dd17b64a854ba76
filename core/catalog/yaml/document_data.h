// What a Document holds inside: the text of the file and its values in one array. For the document's own files only.
#pragma once

#include "catalog/yaml/document.h"

#include <deque>
#include <string>
#include <string_view>
#include <vector>

namespace riserun::catalog::detail {

inline constexpr std::uint32_t kNoNode = UINT32_MAX;

struct Node {
  Value::Shape shape = Value::Shape::missing;
  std::uint32_t offset = 0;  // byte of the file at which it begins
  std::uint32_t line = 0;    // 0-based
  std::uint32_t parent = kNoNode;
  std::uint32_t key = kNoNode;  // of a value in a map
  std::uint32_t first = kNoNode;
  std::uint32_t next = kNoNode;
  std::uint32_t count = 0;
  std::string_view text;
};

struct DocumentData {
  std::string file;
  std::string text;
  std::vector<std::uint32_t> line_starts;
  std::vector<Node> nodes;             // in the order of the file; the root first
  std::deque<std::string> made_texts;  // of texts that do not stand in the file as they are

  void find_lines();
  std::string_view line_text(std::uint32_t line) const;
  /// A problem at a byte of the file.
  quantity::Problem problem_at(std::size_t offset, std::string message) const;
};

/// Fills `data.nodes` from `data.text`.
void parse_yaml(DocumentData& data, Problems& problems);
/// Whether the text is fit for parsing: UTF-8, no control characters.
bool check_bytes(const DocumentData& data, Problems& problems);

}  // namespace riserun::catalog::detail
