#include "plan/stage/run_search.h"

#include <algorithm>

namespace riserun::plan {

namespace {

/// What was answered before, or what is found now.
template <class Answered, class Question, class Find>
const auto& answer_to(Answered& answered, const Question& question, Find find) {
  const auto known =
      std::find_if(answered.begin(), answered.end(), [&](const auto& before) { return before.first == question; });
  if (known != answered.end()) return known->second;
  auto answer = find();
  return answered.emplace_back(question, std::move(answer)).second;
}

}  // namespace

const chain::Answer& RunSearch::find(const chain::ChainRequest& request, const std::optional<chain::Span>& span) {
  return answer_to(found_, Between(request, span),
                   [&] { return span ? finder_.find_span(request, *span) : finder_.find(request); });
}

const chain::AssemblyAnswer& RunSearch::find_assembly(const chain::AssemblyRequest& request) {
  return answer_to(assembled_, request, [&] { return finder_.find_assembly(request); });
}

bool RunSearch::can_join(const chain::ChainRequest& request, const std::optional<chain::Span>& span) {
  return answer_to(joined_, Between(request, span), [&] { return finder_.can_join(request, span); });
}

}  // namespace riserun::plan
