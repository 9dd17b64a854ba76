#include "chain/search/hitting_set.h"

#include <algorithm>
#include <cassert>
#include <vector>

namespace riserun::chain {

namespace {

using Set = std::uint64_t;

/// The smallest set that takes something of each; the first by its rows.
class HittingSet {
 public:
  HittingSet(int count, const std::vector<Set>& to_hit) : count_(count), to_hit_(to_hit) {}

  Set least() const {
    Set found = 0;
    for (int size = 0; !choose(0, size, 0, found); ++size) assert(size <= count_);
    return found;
  }

 private:
  bool choose(int from, int left, Set taken, Set& found) const {
    const Set later = ~Set{0} << from;
    const auto open = [&](Set set) { return (set & taken) == 0; };
    const bool done = std::none_of(to_hit_.begin(), to_hit_.end(), open);
    if (left == 0 || done) {
      found = taken;
      return done;
    }
    if (std::any_of(to_hit_.begin(), to_hit_.end(), [&](Set set) { return open(set) && (set & later) == 0; }))
      return false;
    for (int row = from; row < count_; ++row)
      if (choose(row + 1, left - 1, taken | Set{1} << row, found)) return true;
    return false;
  }

  int count_;
  const std::vector<Set>& to_hit_;
};

}  // namespace

std::optional<std::uint64_t> least_set(int count, const std::function<bool(std::uint64_t)>& is_good) {
  assert(count >= 0 && count <= 63);
  const Set all = (Set{1} << count) - 1;
  if (!is_good(all)) return std::nullopt;
  std::vector<Set> to_hit;
  while (true) {
    Set set = HittingSet(count, to_hit).least();
    if (is_good(set)) return set;
    for (int row = 0; row < count; ++row)
      if (const Set grown = set | Set{1} << row; grown != set && !is_good(grown)) set = grown;
    to_hit.push_back(all & ~set);
  }
}

}  // namespace riserun::chain
