// The finder of one plan and of the plans that try its mends, with what it has answered: a mend leaves most runs of a
// job as they are, and each is searched once.
#pragma once

#include "chain/finder.h"

#include <deque>
#include <optional>
#include <utility>
#include <vector>

namespace riserun::plan {

/// Answers as chain::Finder does. For one thread; what is kept is given up with it.
class RunSearch {
 public:
  /// The catalog must outlive it.
  explicit RunSearch(const catalog::Catalog& catalog) : finder_(catalog) {}

  /// What is asked once in a plan.
  const chain::Finder& finder() const { return finder_; }

  /// Questions whose answers are kept.
  std::size_t kept() const { return found_.size() + assembled_.size() + joined_.size() + served_.size(); }

  const chain::Answer& find(const chain::ChainRequest& request, const std::optional<chain::Span>& span);
  const chain::AssemblyAnswer& find_assembly(const chain::AssemblyRequest& request);
  bool can_join(const chain::ChainRequest& request, const std::optional<chain::Span>& span);
  chain::Allocation allocate(const std::vector<chain::Demand>& demands, const catalog::Bin& bin, chain::Order order) {
    return finder_.allocate(demands, bin, order, &served_);
  }

 private:
  template <class Question, class Answer>
  using Answered = std::deque<std::pair<Question, Answer>>;  // whose references stay
  using Between = std::pair<chain::ChainRequest, std::optional<chain::Span>>;

  chain::Finder finder_;
  chain::Served served_;
  Answered<Between, chain::Answer> found_;
  Answered<chain::AssemblyRequest, chain::AssemblyAnswer> assembled_;
  Answered<Between, bool> joined_;
};

}  // namespace riserun::plan
