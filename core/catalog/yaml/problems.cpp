#include "catalog/yaml/problems.h"

#include <algorithm>
#include <iterator>
#include <tuple>

namespace riserun::catalog {

void Problems::add(quantity::Problem problem) { problems_.push_back(std::move(problem)); }

void Problems::take(Problems other) {
  problems_.insert(problems_.end(), std::make_move_iterator(other.problems_.begin()),
                   std::make_move_iterator(other.problems_.end()));
}

void Problems::throw_if_any() && {
  if (problems_.empty()) return;
  std::vector<std::string> files;  // in the order in which they were first complained about
  const auto rank = [&](const quantity::Problem& problem) {
    return std::find(files.begin(), files.end(), problem.file) - files.begin();
  };
  for (const quantity::Problem& problem : problems_)
    if (std::find(files.begin(), files.end(), problem.file) == files.end()) files.push_back(problem.file);
  std::stable_sort(problems_.begin(), problems_.end(), [&](const auto& a, const auto& b) {
    return std::tuple(rank(a), a.line, a.column) < std::tuple(rank(b), b.line, b.column);
  });
  const auto same = [](const quantity::Problem& a, const quantity::Problem& b) {
    return a.file == b.file && a.line == b.line && a.column == b.column && a.message == b.message;
  };
  problems_.erase(std::unique(problems_.begin(), problems_.end(), same), problems_.end());
  throw quantity::InputError(std::move(problems_));
}

}  // namespace riserun::catalog
