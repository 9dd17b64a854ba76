// A word to who waits: what takes over a second says on the terminal that it is still at it.
#pragma once

#include <condition_variable>
#include <iosfwd>
#include <mutex>
#include <optional>
#include <string>
#include <thread>

namespace riserun::cli {

/// While it lives, one line on `err` says each second, from the first on, what is being done, for how long, and how
/// to end it; the line goes with it. Only where `err` is std::cerr and that a terminal: nothing else should hold it.
class Patience {
 public:
  Patience(std::ostream& err, std::string doing);
  Patience(const Patience&) = delete;
  Patience& operator=(const Patience&) = delete;
  ~Patience();

 private:
  void tell();

  std::ostream& err_;
  std::string doing_;
  std::mutex mutex_;
  std::condition_variable done_;
  bool is_done_ = false;
  std::optional<std::thread> teller_;  // the last member: it looks at the others
};

}  // namespace riserun::cli
