// What is wrong with something a person wrote: a file, a command-line word, a field in the window. All problems of one
// input travel together in one InputError, so that they can be mended in one go.
#pragma once

#include <stdexcept>
#include <string>
#include <vector>

namespace riserun::quantity {

/// One mistake and where it stands. A mistake on the command line has no file and no line; `column` then counts within
/// the word that `source_line` holds (0: no column).
struct Problem {
  std::string file;
  int line = 0;    // 1-based; 0: not in a file
  int column = 0;  // 1-based, in characters
  std::string message;
  std::string source_line;
  std::string code{};  // of error_codes.h; empty: of the command line's own words

  /// `file:line:column: error: message [code]`, then the source line with a caret under the column. A long line is
  /// cut around it; tabs and characters of several bytes keep the caret in its place. What may not be printed
  /// (quantity/printable.h) is escaped, in the source line `?`.
  std::string text() const;
};

/// Thrown for bad input only; never for "no answer" and never for a bug. Holds at least one problem.
class InputError : public std::runtime_error {
 public:
  explicit InputError(std::vector<Problem> problems);
  const std::vector<Problem>& problems() const { return problems_; }

 private:
  std::vector<Problem> problems_;
};

}  // namespace riserun::quantity
