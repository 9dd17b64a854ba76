// Dial's queue: vertices by a small whole number of steps, a bucket for each number (R. B. Dial, "Algorithm 360:
// shortest-path forest with topological ordering", Communications of the ACM 12, 1969). A buffer for Boost's
// breadth_first_visit, in place of a heap.
#pragma once

#include <cstddef>
#include <cstdint>
#include <vector>

namespace riserun::chain {

/// A vertex whose number has become less is pushed again; where it stood before is then passed over. All operations
/// take O(1), and O(greatest number) over the life of the queue.
///
/// @tparam StepsOf  StepsOf(vertex): its number now, never less than that of the vertex last popped
template <class StepsOf>
class BucketQueue {
 public:
  explicit BucketQueue(StepsOf steps_of) : steps_of_(steps_of) {}

  void push(std::uint32_t vertex) {
    const std::size_t steps = steps_of_(vertex);
    if (buckets_.size() <= steps) buckets_.resize(steps + 1);
    buckets_[steps].push_back(vertex);
  }
  /// Goes on to the next vertex that is still where it was pushed to.
  bool empty() {
    for (; bucket_ < buckets_.size(); ++bucket_, next_ = 0)
      for (; next_ < buckets_[bucket_].size(); ++next_)
        if (steps_of_(top()) == bucket_) return false;
    return true;
  }
  /// @pre empty() has just said no
  std::uint32_t top() const { return buckets_[bucket_][next_]; }
  void pop() { ++next_; }

 private:
  StepsOf steps_of_;
  std::vector<std::vector<std::uint32_t>> buckets_;
  std::size_t bucket_ = 0;
  std::size_t next_ = 0;
};

}  // namespace riserun::chain
