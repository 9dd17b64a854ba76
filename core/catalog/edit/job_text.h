// The text of a job and the few ways in which it is edited. Each edit yields a new text that differs where it was
// edited and nowhere else; it is read back and must mean just what was asked, otherwise the edit is refused.
#pragma once

#include "catalog/edit/text_tree.h"
#include "catalog/edit/yaml_writing.h"
#include "quantity/input_error.h"

#include <string>
#include <string_view>
#include <utility>
#include <variant>
#include <vector>

namespace riserun::catalog {

class JobText;

/// Why a text cannot be edited like that; a sentence.
struct CannotEdit {
  std::string reason;
};

using Edited = std::variant<JobText, CannotEdit>;

/// What becomes of the lines of comments right over a row that is taken out.
enum class CommentsAbove : bool { stay, go_too };

class JobText {
 public:
  /// The text, or what is wrong with it as YAML. `name` stands for the file in messages.
  static std::variant<JobText, std::vector<quantity::Problem>> read(std::string text, const std::string& name);

  const std::string& text() const { return text_; }
  const TextNode& root() const { return root_; }
  /// nullptr: nothing stands there.
  const TextNode* find(const JobPath& path) const;

  /// Writes the value in place of what stands there; makes the key, and the maps around it, where there is none. A
  /// place just behind the end of a list adds a row.
  Edited set(const JobPath& path, const Content& content) const;
  /// Adds a row to a list; makes the list where there is none, and a list of a lone text.
  Edited append(const JobPath& list, const Content& row) const;
  /// Takes out a key or a row; and the list or map that it was the last of.
  /// @param comments  above it: lines right over a row are of the row where it lists things, each with its own
  Edited remove(const JobPath& path, CommentsAbove comments = CommentsAbove::stay) const;

 private:
  JobText(std::string text, TextNode root, std::string name)
      : text_(std::move(text)), root_(std::move(root)), name_(std::move(name)) {}
  Edited checked(std::string text, const TextNode& meant) const;
  std::string with_replaced(const std::vector<const TextNode*>& nodes, const Content& content) const;

  std::string text_;
  TextNode root_;
  std::string name_;
};

}  // namespace riserun::catalog
