// What a code of a finding, of a caution, or of the reason why there is no run, is about.
#include "catalog/words/words.h"
#include "catalog/yaml/nearest_name.h"
#include "cli/command.h"
#include "quantity/input_error.h"
#include "quantity/printable.h"
#include "report/json/explain_json.h"
#include "report/text/explain_text.h"

#include <CLI/CLI.hpp>
#include <fmt/format.h>

#include <algorithm>
#include <memory>
#include <optional>
#include <ostream>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

namespace riserun::cli {

namespace {

using report::Explanation;

/// How unlike a code is to what was asked: the words of it that the code lacks, and where it lacks any, the letters
/// that differ. Nothing where they have neither a word nor most letters in common.
std::optional<std::pair<std::size_t, std::size_t>> unlikeness(const std::string& asked, std::string_view code) {
  std::string words = asked;
  std::replace(words.begin(), words.end(), '_', ' ');
  std::size_t lacking = 0;
  bool any = false;
  for (const catalog::Token& word : catalog::split_words(words)) {
    const bool there = code.find(word.text) != std::string_view::npos;
    any = any || (there && word.text.size() > 2);
    lacking += there ? 0 : 1;
  }
  const std::size_t slips = catalog::edit_distance(asked, code);
  if (lacking == 0) return std::pair(lacking, std::size_t{0});
  return any || slips <= asked.size() / 3 ? std::optional(std::pair(lacking, slips)) : std::nullopt;
}

/// The few codes that are most like what was asked.
std::vector<std::string_view> nearest(const std::string& asked) {
  constexpr std::size_t kFew = 4;
  constexpr std::size_t kLongest = 80;  // longer than any code
  const std::string meant = catalog::lower_case(asked).substr(0, kLongest);
  std::vector<std::pair<std::pair<std::size_t, std::size_t>, std::string_view>> all;
  for (const Explanation& row : report::explanations())
    if (const auto far = unlikeness(meant, row.code)) all.emplace_back(*far, row.code);
  std::stable_sort(all.begin(), all.end(), [](const auto& a, const auto& b) { return a.first < b.first; });
  std::vector<std::string_view> few;
  for (std::size_t row = 0; row < std::min(kFew, all.size()); ++row) few.push_back(all[row].second);
  return few;
}

quantity::Problem no_such_code(const std::string& asked) {
  const std::vector<std::string_view> near = nearest(asked);
  std::string message = fmt::format("'{}' is no code of a finding or an error", quantity::printable(asked));
  message += near.empty() ? "; riserun explain lists them" : fmt::format("; like it: {}", fmt::join(near, ", "));
  return {"", 0, 0, std::move(message), ""};
}

int run_explain(const std::vector<std::string>& codes, const Session& session) {
  std::vector<Explanation> rows;
  std::vector<quantity::Problem> problems;
  for (const std::string& code : codes) {
    if (const Explanation* row = report::explanation_of(code))
      rows.push_back(*row);
    else
      problems.push_back(no_such_code(code));
  }
  if (!problems.empty()) throw quantity::InputError(std::move(problems));
  if (session.common.json) {
    session.out << report::explanations_json(codes.empty() ? report::explanations() : rows);
  } else if (codes.empty()) {
    session.out << report::explanations_text(session.style(UnitSystem::inch));
  } else {
    for (std::size_t row = 0; row < rows.size(); ++row)
      session.out << (row == 0 ? "" : "\n") << report::explain_text(rows[row], session.style(UnitSystem::inch));
  }
  return kDone;
}

}  // namespace

void add_explain_verb(CLI::App& app, Session& session) {
  const auto codes = std::make_shared<std::vector<std::string>>();
  CLI::App* verb = app.add_subcommand(
      "explain", "What the code of a finding, a caution or an error means, why it matters and what mends it");
  verb->add_option("codes", *codes,
                   "As \"no_gauge\", which stands behind a finding in the book, or behind an error; none: all of them");
  verb->callback(
      [codes, &session] { session.chosen_verb = [codes, &session] { return run_explain(*codes, session); }; });
}

}  // namespace riserun::cli
