// What single demands were served with, kept from one allocation to the next: a plan and the plans that try its mends
// want mostly the same runs of the same bin.
#pragma once

#include <cstddef>
#include <memory>

namespace riserun::chain {

/// For one prepared catalog and one thread; what is kept is given up with it.
class Served {
 public:
  struct Book;

  Served();
  ~Served();
  Book& book() { return *book_; }
  /// Demands that were served.
  std::size_t size() const;

 private:
  std::unique_ptr<Book> book_;
};

}  // namespace riserun::chain
