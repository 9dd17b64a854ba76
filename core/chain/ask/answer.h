// What the chain search answers: a chain, or why there is none.
#pragma once

#include "chain/ask/run.h"
#include "quantity/fact.h"

#include <optional>
#include <string>
#include <variant>
#include <vector>

namespace riserun::chain {

using quantity::Fact;
using quantity::Facts;

/// A change that makes a chain, and what the best chain then comes to. Found by a search.
struct Lift {
  enum class By { part, rule, freedom, several_rules };
  By by = By::rule;
  Facts what;  // what to do, all of it
  int part_count = 0;
  int buy_count = 0;
  Price price;
};

/// Why there is no chain, and the smallest change that would make one.
struct NoChain {
  Fact reason;
  std::vector<PortTypeId> reachable_from;  // open ports that can be got to from the from side, nearest first
  std::vector<PortTypeId> reachable_to;
  std::optional<PartId> special_order;  // the one part that, ordered, completes a chain
  std::optional<Fact> missing_part;     // the one part that, asked for, would; else that, if it existed, would:
                                        // "3/4 MNPT x 3/4 MGHT adapter"
  std::vector<PartId> to_buy;           // where nothing may be bought: the fewest parts that would complete a chain
  Facts look_alikes;                    // traps between the two ports: what must not be tried, and why
  Facts mends;                          // "let one end spin", "allow a union" ...: each alone is enough
  // Rules of the request that no chain keeps together, by their codes in askable.h and with what they ask: a smallest
  // such set, so that all but any one of them can be kept. Empty: there is no chain whatever rules are given up.
  Facts conflict;
  std::vector<Lift> lifts;                // beside mends
  bool only_the_distance = false;         // the ports can be joined, but not at the distance asked for
  std::optional<Length> nearest_below{};  // distances that can be made
  std::optional<Length> nearest_above{};
};

using Answer = std::variant<Chain, NoChain>;

/// "these two cannot both be kept: ...": at least two rules.
Fact cannot_be_kept(Facts rules);

/// The run as ChainRequest::taken asks for it: every part with the ports that it is gone through by.
std::vector<TakenPart> taken_parts(const Chain& chain);

/// Alternatives may have that many parts more than the fewest possible; longer chains are left out.
inline constexpr int kMorePartsThanFewest = 3;

/// A chain of the answer, best first.
struct Alternative {
  Chain chain;
  std::vector<std::string> same_in;  // materials of the rows folded under this one: "brass", or by part "iron + nylon"
};

/// What to take when a part of a chain is not on the shelf and the rest of it lies in the cart.
struct Substitute {
  PartId instead_of;
  std::optional<Chain> chain;    // as if nothing had been bought yet; nullopt: nothing on sale makes up for the part
  std::vector<PartId> buy_also;  // beyond the rest of the cart, in chain order; a part twice where two are needed
  std::vector<PartId> put_back;  // of the cart, what this chain has no use for
};

}  // namespace riserun::chain
