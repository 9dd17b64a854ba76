// What a code of a finding, or of the reason why there is no run, is about.
#include "catalog/words/words.h"
#include "cli/command.h"
#include "quantity/input_error.h"
#include "quantity/printable.h"
#include "report/json/explain_json.h"
#include "report/text/explain_text.h"

#include <CLI/CLI.hpp>
#include <fmt/format.h>

#include <algorithm>
#include <memory>
#include <ostream>
#include <string>
#include <vector>

namespace riserun::cli {

namespace {

using report::Explanation;

/// Codes that hold a word of what was asked for.
std::vector<std::string> like(const std::string& asked) {
  std::string words = catalog::lower_case(asked);
  std::replace(words.begin(), words.end(), '_', ' ');
  std::vector<std::string> codes;
  for (const Explanation& row : report::explanations())
    for (const catalog::Token& word : catalog::split_words(words))
      if (word.text.size() > 2 && row.code.find(word.text) != std::string_view::npos) {
        codes.emplace_back(row.code);
        break;
      }
  return codes;
}

quantity::Problem no_such_code(const std::string& asked) {
  const std::vector<std::string> near = like(asked);
  std::string message = fmt::format("'{}' is no code of a finding", quantity::printable(asked));
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
  CLI::App* verb = app.add_subcommand("explain", "What a finding's code means, why it matters and what mends it");
  verb->add_option("codes", *codes, "As \"no_gauge\", which stands behind the finding in the book; none: all of them");
  verb->callback(
      [codes, &session] { session.chosen_verb = [codes, &session] { return run_explain(*codes, session); }; });
}

}  // namespace riserun::cli
