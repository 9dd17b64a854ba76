#include "cli/branch_options.h"

#include <CLI/CLI.hpp>
#include <fmt/format.h>

#include <functional>

namespace riserun::cli {

namespace {

const std::vector<std::string> kFacings = {"anywhere", "straight on", "to a side"};

class BranchReader {
 public:
  BranchReader(const Stock& stock, std::size_t branches, WordReader& words)
      : catalog_(*stock.catalog), rules_(branches), words_(words) {}

  void read(const BranchOptions& options);
  std::vector<chain::BranchRules> take() { return std::move(rules_); }

 private:
  using Sink = std::function<void(chain::BranchRules&, const std::string&)>;
  void each(const std::string& option, const std::vector<std::string>& texts, const std::string& example,
            const Sink& sink);
  void each_number(const std::string& option, const std::vector<std::string>& texts,
                   const std::function<void(chain::BranchRules&)>& sink);
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

void BranchReader::each(const std::string& option, const std::vector<std::string>& texts, const std::string& example,
                        const Sink& sink) {
  for (const std::string& text : texts) {
    const std::size_t sign = text.find('=');
    if (sign == std::string::npos || sign + 1 == text.size()) {
      words_.add(option, text,
                 fmt::format("the number of a branch, '=' and what holds there is wanted, as \"{}\"", example), 0);
      continue;
    }
    if (chain::BranchRules* rules = branch(option, text, text.substr(0, sign))) sink(*rules, text.substr(sign + 1));
  }
}

void BranchReader::each_number(const std::string& option, const std::vector<std::string>& texts,
                               const std::function<void(chain::BranchRules&)>& sink) {
  for (const std::string& text : texts)
    if (chain::BranchRules* rules = branch(option, text, text)) sink(*rules);
}

void BranchReader::read(const BranchOptions& options) {
  each("--branch-bore", options.bores, "2=3/4 in", [&](chain::BranchRules& rules, const std::string& text) {
    rules.smallest_bore = words_.quantity("--branch-bore", text, &quantity::read_length);
  });
  each("--branch-need", options.needs, "1=regulator", [&](chain::BranchRules& rules, const std::string& text) {
    rules.needs.push_back({text, words_.parts(catalog_, "--branch-need", text)});
  });
  each("--branch-avoid", options.avoid, "3=check valve", [&](chain::BranchRules& rules, const std::string& text) {
    rules.banned.resize(catalog_.parts().size(), false);
    const chain::Avoidance avoidance = words_.avoidance(catalog_, "--branch-avoid", text);
    rules.avoid.push_back(avoidance.words);
    for (const catalog::PartId part : avoidance.parts) rules.banned[part.row] = true;
  });
  each("--branch-looks", options.looks, "1=straight on", [&](chain::BranchRules& rules, const std::string& text) {
    rules.facing = static_cast<chain::Facing>(words_.choice("--branch-looks", text, kFacings));
  });
  each_number("--branch-in-order", options.in_order, [](chain::BranchRules& rules) { rules.needs_in_order = true; });
  each_number("--branch-feeds", options.feeds,
              [](chain::BranchRules& rules) { rules.flow = chain::BranchFlow::to_base; });
  each_number("--branch-relief", options.reliefs, [](chain::BranchRules& rules) { rules.relief = true; });
}

}  // namespace

void add_branch_options(CLI::App& verb, BranchOptions& options) {
  const auto add = [&verb](const std::string& name, std::vector<std::string>& texts, const std::string& help) {
    verb.add_option(name, texts, help)->allow_extra_args(false)->group("Of one branch; may be given again");
  };
  add("--branch-bore", options.bores, "Smallest bore on the way to a port behind the base, as \"2=3/4 in\"");
  add("--branch-need", options.needs, "Something that must be on its way, as \"1=regulator\"");
  add("--branch-in-order", options.in_order,
      "What --branch-need asks for on its way comes in the order given, from the base on");
  add("--branch-avoid", options.avoid, "A material, family or part to keep off its way, as \"3=check valve\"");
  add("--branch-looks", options.looks,
      "Where it looks, seen from the base: \"1=straight on\" (no turn) or \"2=to a side\" (one quarter turn)");
  add("--branch-feeds", options.feeds, "That port feeds the base: regulators and check valves point to the base");
  add("--branch-relief", options.reliefs,
      "A relief valve goes there: nothing that can shut on its way, no size below its inlet");
}

std::vector<chain::BranchRules> read_branch_options(const BranchOptions& options, const Stock& stock,
                                                    std::size_t branches, WordReader& words) {
  BranchReader reader(stock, branches, words);
  reader.read(options);
  return reader.take();
}

void refuse_branch_options(const BranchOptions& options, WordReader& words) {
  const auto refuse = [&](const std::string& option, const std::vector<std::string>& texts) {
    for (const std::string& text : texts)
      words.add(option, text, "is for a branched assembly: give a base and two or more ports behind it", 0);
  };
  refuse("--branch-bore", options.bores);
  refuse("--branch-need", options.needs);
  refuse("--branch-in-order", options.in_order);
  refuse("--branch-avoid", options.avoid);
  refuse("--branch-looks", options.looks);
  refuse("--branch-feeds", options.feeds);
  refuse("--branch-relief", options.reliefs);
}

}  // namespace riserun::cli
