#include "cli/branch_options.h"

#include "chain/ask/askable.h"
#include "chain/ask/needs.h"

#include <CLI/CLI.hpp>
#include <fmt/format.h>

namespace riserun::cli {

namespace {

using chain::Askable;
using chain::AskedKind;

bool is_option_of_a_branch(const Askable& row) { return row.of == chain::AskedOf::branch && !row.option.empty(); }

class BranchReader {
 public:
  BranchReader(const Stock& stock, std::size_t branches, WordReader& words)
      : catalog_(*stock.catalog), rules_(branches), words_(words) {}

  void read(const BranchOptions& options);
  std::vector<chain::BranchRules> take() { return std::move(rules_); }

 private:
  void read(const Askable& row, const std::string& text);
  void read_value(const Askable& row, const std::string& text, chain::BranchRules& rules);
  chain::BranchRules* branch(const std::string& option, const std::string& text, const std::string& number);

  const catalog::Catalog& catalog_;
  std::vector<chain::BranchRules> rules_;
  WordReader& words_;
};

chain::BranchRules* BranchReader::branch(const std::string& option, const std::string& text,
                                         const std::string& number) {
  const auto reading = quantity::read_count(number);
  const int* row = std::get_if<int>(&reading);
  if (row && *row >= 1 && static_cast<std::size_t>(*row) <= rules_.size())
    return &rules_[static_cast<std::size_t>(*row) - 1];
  words_.add(option, text,
             fmt::format("'{}' is no branch; the ports behind the base count from 1 to {}", number, rules_.size()), 0);
  return nullptr;
}

/// What is not kept in a field of its own has a line here.
void BranchReader::read_value(const Askable& row, const std::string& text, chain::BranchRules& rules) {
  const std::string option(row.option);
  if (row.code == "branch_need") {
    rules.needs.push_back({text, words_.parts(catalog_, option, text)});
  } else if (row.code == "branch_avoid") {
    rules.banned.resize(catalog_.parts().size(), false);
    const chain::Avoidance avoidance = words_.avoidance(catalog_, option, text);
    rules.avoid.push_back(avoidance.words);
    for (const catalog::PartId part : avoidance.parts) rules.banned[part.row] = true;
  } else if (row.code == "feeds") {
    rules.flow = chain::BranchFlow::to_base;
  } else if (row.code == "relief") {
    rules.relief = true;
  } else if (row.kind == AskedKind::yes_no) {
    chain::choose(rules, row, 1);
  } else if (row.kind == AskedKind::choice) {
    chain::choose(rules, row, words_.choice(option, text, row.choices));
  } else if (const auto wrong = chain::read_into(rules, row, words_.written(text))) {
    words_.add(option, text, wrong->message, wrong->offset);
  }
}

/// "2=3/4 in", or the number alone.
void BranchReader::read(const Askable& row, const std::string& text) {
  const std::string option(row.option);
  const std::size_t sign = row.flag ? text.size() : text.find('=');
  if (!row.flag && (sign == std::string::npos || sign + 1 == text.size())) {
    words_.add(option, text,
               fmt::format("the number of a branch, '=' and what holds there is wanted, as \"{}\"", row.example), 0);
    return;
  }
  if (chain::BranchRules* rules = branch(option, text, text.substr(0, sign)))
    read_value(row, row.flag ? "" : text.substr(sign + 1), *rules);
}

void BranchReader::read(const BranchOptions& options) {
  for (const Askable& row : chain::askables()) {
    if (!is_option_of_a_branch(row)) continue;
    for (const std::string& text : options.lists.at(row.code)) read(row, text);
  }
}

}  // namespace

void add_branch_options(CLI::App& verb, BranchOptions& options) {
  for (const Askable& row : chain::askables())
    if (is_option_of_a_branch(row))
      verb.add_option(std::string(row.option), options.lists[row.code], std::string(row.help))
          ->allow_extra_args(false)
          ->group("Of one branch; may be given again");
}

std::vector<chain::BranchRules> read_branch_options(const BranchOptions& options, const Stock& stock,
                                                    std::size_t branches, bool vacuum, WordReader& words) {
  BranchReader reader(stock, branches, words);
  reader.read(options);
  std::vector<chain::BranchRules> rules = reader.take();
  for (chain::BranchRules& branch : rules)
    branch.needs =
        chain::told_apart(chain::as_meant(*stock.catalog, std::move(branch.needs), vacuum), branch.needs_in_order);
  return rules;
}

void refuse_branch_options(const BranchOptions& options, WordReader& words) {
  for (const Askable& row : chain::askables()) {
    if (!is_option_of_a_branch(row)) continue;
    for (const std::string& text : options.lists.at(row.code))
      words.add(std::string(row.option), text,
                "is for a branched assembly: give a base and two or more ports behind it", 0);
  }
}

}  // namespace riserun::cli
