#include "catalog/yaml/problems.h"

#include "catalog/yaml/limits.h"

#include <fmt/format.h>

#include <algorithm>
#include <iterator>
#include <tuple>

namespace riserun::catalog {

namespace {

/// In the order of files, as they were first complained about, and lines; each once.
std::vector<quantity::Problem> in_order(std::vector<quantity::Problem> problems) {
  std::vector<std::string> files;
  const auto rank = [&](const quantity::Problem& problem) {
    return std::find(files.begin(), files.end(), problem.file) - files.begin();
  };
  for (const quantity::Problem& problem : problems)
    if (std::find(files.begin(), files.end(), problem.file) == files.end()) files.push_back(problem.file);
  std::stable_sort(problems.begin(), problems.end(), [&](const auto& a, const auto& b) {
    return std::tuple(rank(a), a.line, a.column) < std::tuple(rank(b), b.line, b.column);
  });
  const auto same = [](const quantity::Problem& a, const quantity::Problem& b) {
    return a.file == b.file && a.line == b.line && a.column == b.column && a.message == b.message;
  };
  problems.erase(std::unique(problems.begin(), problems.end(), same), problems.end());
  return problems;
}

}  // namespace

void Problems::add(quantity::Problem problem) {
  if (problems_.size() < kMostMistakes) {
    problems_.push_back(std::move(problem));
    return;
  }
  std::vector<quantity::Problem> told = in_order(std::move(problems_));
  told.push_back(
      {problem.file, 0, 0, fmt::format("more than {} mistakes; the rest is not looked at", kMostMistakes), {}});
  throw quantity::InputError(std::move(told));
}

void Problems::take(Problems other) {
  problems_.insert(problems_.end(), std::make_move_iterator(other.problems_.begin()),
                   std::make_move_iterator(other.problems_.end()));
}

void Problems::throw_if_any() && {
  if (problems_.empty()) return;
  throw quantity::InputError(in_order(std::move(problems_)));
}

}  // namespace riserun::catalog
