// Pages of a PDF, filled from the top down; what is full goes on on the next one.
#pragma once

#include "quantity/write.h"
#include "report/paper/pictures.h"

#include <cstddef>
#include <memory>
#include <string>
#include <vector>

namespace riserun::report {

/// A line of letters of one width.
struct TypedLine {
  std::string text;
  bool bold = false;
};

/// Its heads, and rows of the words given, each as wide as its share of the page; what is empty is left as a line.
struct Form {
  std::vector<std::string> heads;
  std::vector<std::vector<std::string>> rows;
};

/// Writes a document; its text can be selected, its fonts are in it.
class Pages {
 public:
  /// @param title of the document; with `headed` it stands over each page
  /// @param at_foot  beside the number of each page
  Pages(Paper paper, std::string title, std::string at_foot, bool headed);
  ~Pages();
  Pages(const Pages&) = delete;
  Pages& operator=(const Pages&) = delete;

  void heading(const std::string& words);
  void sentence(const std::string& words);
  /// A box to tick, how many, what, and at the right what it costs or measures. A row is never split.
  void row(const std::string& count, const std::string& what, const std::string& beside, const std::string& under);
  /// A box to tick and what is to be done, over the whole width.
  void tick(const std::string& words);
  /// Lines in letters of one width, as large as lets so many of them stand in a line, and all of them on the page where
  /// that keeps them at 7 points or more.
  void typed(const std::vector<TypedLine>& lines, std::size_t columns, bool on_one_page);
  /// Drawn; begins a new page where this one has no room for the whole of it.
  void picture(const Picture& picture);
  /// Tables to write into, under a heading; all of it on a new page where this one has no room for the whole.
  void forms(const std::string& title, const std::vector<Form>& forms);
  void new_page();

  /// For what a picture may take, and how wide its words are.
  Room room() const;
  const Letters& letters() const;

  /// The bytes of the document. Nothing may be written after it.
  /// @throws std::runtime_error when the document could not be made
  std::string finish();

 private:
  struct Surface;

  double width() const;
  double height_of(const std::string& words, const std::string& font, double wide);
  void put(const std::string& words, const std::string& font, double left, double wide);
  void form(const std::vector<std::string>& heads, const std::vector<std::vector<std::string>>& rows);
  void head();
  void foot();
  void room_for(double high);

  Paper paper_;
  std::string title_;
  std::string at_foot_;
  bool headed_ = false;
  std::unique_ptr<Surface> drawing_;
  double down_ = 0.0;
  int number_ = 0;
};

}  // namespace riserun::report
