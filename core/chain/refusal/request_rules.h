// The rules of a request as things that can be given up one by one, made from the table of what can be asked.
#pragma once

#include "chain/ask/askable.h"
#include "quantity/fact.h"

#include <cstdint>
#include <functional>
#include <optional>
#include <vector>

namespace riserun::chain {

using quantity::Fact;
using quantity::Facts;
using RuleSet = std::uint64_t;  // bits by row of the rules of a request
inline bool holds(RuleSet set, std::size_t row) { return set >> row & 1u; }

/// What the rules are asked of, for the sentences.
struct AskedThing {
  Fact it;             // "chain", "assembly"
  Fact with_its_ends;  // "chain between the two ends"
  Fact leads;          // "from 1 FNPT to 3/4 MGHT", "there"
};
AskedThing asked_chain(const Catalog& catalog, const ChainRequest& request);
AskedThing asked_assembly();

/// One rule of a request.
struct RequestRule {
  const Askable* row = nullptr;
  Fact rule;                                   // the code of its row, with what is asked: "1-1/2 in bore everywhere"
  Fact alone;                                  // why there is none where this rule by itself allows none
  Facts reliefs;                               // what to do to be rid of it; each is enough
  std::function<void(ChainRequest&)> give_up;  // empty: `need` or `avoided` says what goes
  std::optional<std::size_t> need;             // row of the request's needs
  std::optional<std::size_t> avoided;          // row of the request's avoidances

  std::string_view code() const { return rule.code; }
  bool is_freedom() const { return code() == "held_ends"; }
};

/// Facts of a row: its rule, why nothing keeps it, what to do about it. Their codes are the row's own with an ending,
/// and their values are those of the rule first.
Fact rule_of(const Askable& row, std::vector<quantity::Value> values);
Fact alone_of(const Askable& row, std::vector<quantity::Value> values);
Fact relief_of(const Askable& row, std::vector<quantity::Value> values);

/// What a rule of a branch says in a sentence: its figure, its word; empty: no more than yes.
quantity::Value value_said(const WayRules& rules, const Askable& row);

/// All rules of the request, in the order of the table.
std::vector<RequestRule> rules_of(const Catalog& catalog, const ChainRequest& request, const AskedThing& asked);

/// The request without some of its rules. What a request rules out and no kept avoidance names stays out only where the
/// rule on it is kept.
ChainRequest without(const ChainRequest& request, const std::vector<RequestRule>& rules, RuleSet given_up);
/// The same with all needs as they are.
ChainRequest without_but_needs(const ChainRequest& request, const std::vector<RequestRule>& rules, RuleSet given_up);

}  // namespace riserun::chain
