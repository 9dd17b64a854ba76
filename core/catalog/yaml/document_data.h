// What a Document holds inside: the text of the file and its values in one array. Others see them as a Value.
#pragma once

#include "quantity/error_codes.h"
#include "quantity/input_error.h"
#include "quantity/unit_system.h"

#include <cstddef>
#include <cstdint>
#include <deque>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace riserun::catalog::detail {

inline constexpr std::uint32_t kNoNode = UINT32_MAX;

enum class Shape : std::uint8_t { missing, empty, text, list, map };

struct Node {
  Shape shape = Shape::missing;
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
  std::vector<Node> nodes;                    // in the order of the file; the root first
  std::deque<std::string> made_texts;         // of texts that do not stand in the file as they are
  std::optional<quantity::UnitSystem> units;  // of its numbers without a unit
  std::string_view units_key;                 // what would settle them, where they are not

  void find_lines();
  std::string_view line_text(std::uint32_t line) const;
  /// A problem at a byte of the file.
  quantity::Problem problem_at(std::size_t offset, std::string message,
                               std::string_view code = quantity::mistake::kNotYaml) const;
};

}  // namespace riserun::catalog::detail
