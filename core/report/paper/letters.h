// How wide words are in the letters of our pages.
#pragma once

#include <memory>
#include <string>

namespace riserun::report {

/// A size in points, 1/72 in.
struct Lettering {
  double size = 7.5;
  bool bold = false;
};

/// Measures as the pages write; without a page.
class Letters {
 public:
  Letters();
  ~Letters();
  Letters(const Letters&) = delete;
  Letters& operator=(const Letters&) = delete;

  /// In points.
  double width_of(const std::string& words, const Lettering& lettering) const;

 private:
  struct Measure;
  std::unique_ptr<Measure> measure_;
};

}  // namespace riserun::report
