#include "property/catalog/edit/random_yaml.h"

#include <fmt/format.h>

namespace riserun::catalog::testing {

namespace {

class Writer {
 public:
  explicit Writer(std::mt19937& random) : random_(random) {}

  std::string file() {
    std::string text = chance(10) ? "\xEF\xBB\xBF" : "";
    if (chance(3)) text += "# A file of somebody's\n\n";
    if (chance(20)) {
      text += in_brackets_map(3) + "\n";
    } else {
      text += block_map(0, 3, false);
    }
    if (chance(4)) text += "# the end\n";
    if (chance(6) && text.ends_with('\n')) text.pop_back();
    if (chance(6)) text = with_returns(text);
    return text;
  }

 private:
  std::size_t pick(std::size_t n) { return std::uniform_int_distribution<std::size_t>(0, n - 1)(random_); }
  bool chance(std::size_t one_in) { return pick(one_in) == 0; }

  static std::string with_returns(const std::string& text) {
    std::string result;
    for (const char c : text) c == '\n' ? result += "\r\n" : result += c;
    return result;
  }

  std::string comment() {
    return chance(3) ? fmt::format("{}# note {{[:'\" {}", std::string(1 + pick(9), ' '), pick(99)) : "";
  }

  std::string own_line(std::size_t column) {
    if (chance(8)) return "\n";
    return chance(6) ? fmt::format("{}# {}: a key that sleeps\n", std::string(column, ' '), pick(9)) : "";
  }

  std::string key(bool brackets) {
    const std::string name = fmt::format("{}{}", std::vector{"depth ", "a.b", "größe", "k", "in: "}[pick(5)], count_++);
    const bool quote = name.find(':') != std::string::npos || chance(12);
    return quote || (brackets && chance(10)) ? "\"" + name + "\"" : name;
  }

  std::string scalar(bool brackets) {
    switch (pick(8)) {
      case 0:
        return fmt::format("'it''s {} # {{'", pick(50));
      case 1:
        return fmt::format("\"{}\\\" of \\\\ [a]\"", pick(50));
      case 2:
        return brackets ? fmt::format("{} in", pick(40)) : fmt::format("1'{}-11/16\", or [so]", pick(12));
      case 3:
        return fmt::format("-{}.50 ft", pick(9));
      case 4:
        return "½ zöllig";
      default:
        return fmt::format("{}-{}/16 in", pick(40), pick(16));
    }
  }

  /// A line break in brackets, now and then, with a comment before it.
  std::string gap() { return chance(7) ? comment() + "\n      " : " "; }

  std::string in_brackets_list(int depth) {
    std::string text = "[";
    const std::size_t n = pick(4);
    for (std::size_t i = 0; i < n; ++i) text += (i > 0 ? "," + gap() : "") + in_brackets(depth - 1);
    return text + (n > 0 && chance(8) ? ", ]" : "]");
  }

  std::string in_brackets_map(int depth) {
    std::string text = chance(4) ? "{ " : "{";
    const std::size_t n = 1 + pick(4);
    for (std::size_t i = 0; i < n; ++i) text += (i > 0 ? "," + gap() : "") + key(true) + ": " + in_brackets(depth - 1);
    return text + (chance(4) ? " }" : "}");
  }

  std::string in_brackets(int depth) {
    if (depth <= 0 || chance(2)) return scalar(true);
    return chance(2) ? in_brackets_list(depth) : in_brackets_map(depth);
  }

  /// What stands behind `key:` or a dash, with its line break.
  std::string value(std::size_t column, int depth) {
    if (depth > 0 && chance(3)) return "\n" + block_map(column + 2 + pick(3), depth - 1, false);
    if (depth > 0 && chance(4)) return "\n" + block_list(column + pick(2) * 2, depth - 1);
    if (chance(4)) return " " + (chance(2) ? in_brackets_list(2) : in_brackets_map(2)) + comment() + "\n";
    return " " + scalar(false) + comment() + "\n";
  }

  /// @param begun  the first key stands behind a dash
  std::string block_map(std::size_t column, int depth, bool begun) {
    std::string text;
    const std::size_t n = 1 + pick(5);
    for (std::size_t i = 0; i < n; ++i) {
      if (i > 0 || !begun) text += own_line(column) + std::string(column, ' ');
      text += key(false) + (chance(9) ? " :" : ":") + value(column, depth);
    }
    return text;
  }

  std::string block_list(std::size_t column, int depth) {
    std::string text;
    const std::size_t n = 1 + pick(4);
    for (std::size_t i = 0; i < n; ++i) {
      text += own_line(column) + std::string(column, ' ') + "-";
      if (depth > 0 && chance(2)) {
        text += " " + block_map(column + 2, depth - 1, true);
      } else if (chance(12)) {
        text += " - " + scalar(false) + "\n" + std::string(column + 2, ' ') + "- " + scalar(false) + "\n";
      } else {
        text += chance(3) ? " " + in_brackets_map(2) + comment() + "\n" : " " + scalar(false) + comment() + "\n";
      }
    }
    return text;
  }

  std::mt19937& random_;
  int count_ = 0;
};

void gather(const TextNode& node, const JobPath& path, std::vector<JobPath>& paths) {
  for (std::size_t i = 0; i < node.children.size(); ++i) {
    const JobPath below = node.is_map() ? path / node.children[i].key : path / i;
    paths.push_back(below);
    gather(node.children[i], below, paths);
  }
}

}  // namespace

std::string random_yaml(std::mt19937& random) { return Writer(random).file(); }

std::vector<JobPath> all_paths(const TextNode& root) {
  std::vector<JobPath> paths{JobPath()};
  gather(root, {}, paths);
  return paths;
}

}  // namespace riserun::catalog::testing
