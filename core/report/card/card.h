// The card: the one page of a plan that goes to the bench, in words and rows for whoever prints or draws it. It says
// what a person acts on, in the order in which he does; all else stands in the whole plan.
#pragma once

#include "plan/plan.h"

#include <string>
#include <utility>
#include <vector>

namespace riserun::report {

/// A name and what stands beside it.
struct CardRow {
  std::string name;
  std::string value;
};

/// What is open: why, and what mends it.
struct CardFinding {
  std::string reason;  // with its two numbers, where it has them
  std::string mend;    // empty: nothing is known
};

/// A piece to cut.
struct CardCut {
  std::string count;
  std::string size;
  std::string stock;   // empty: the sheet that the card names for all baffles
  std::string remark;  // from where it is measured; may be empty
  std::string used_for;
  bool is_opening = false;  // cut into a wall that is there

  /// What it is cut from, as it goes on behind the size: a hole is cut from nothing.
  std::string of_what() const { return stock.empty() ? "" : (is_opening ? " " : " from ") + stock; }
};

/// A line of the shopping list.
struct CardItem {
  std::string shelf;  // where in the store, in a word: "brass"; "metal": off the rack, or from the steel yard
  std::string quantity;
  std::string name;
  std::string price;  // "no price" of metal, which is sold by weight
  std::string used_for;
};

struct Card {
  std::string title;
  plan::Verdict verdict = plan::Verdict::ready;
  std::string verdict_words;          // "READY", "NOT YET: 2 open"
  std::vector<CardFinding> findings;  // the refused first
  std::string pressures;              // all of them beside the walls' limit
  std::vector<CardRow> settings;      // what is set, and what is marked on the tank
  std::vector<CardRow> running;       // up, down, how long
  std::vector<CardCut> cuts;
  std::string sheet;          // that the baffles take; empty: none
  std::vector<CardItem> buy;  // as a store is walked
  std::string cost;
  std::string from_bin;            // empty: nothing is
  std::string consumables;         // sealant, what the test and the charge are read with
  std::vector<CardRow> work;       // what is done when; each run from end to end, in the order in which they go on
  std::vector<std::string> watch;  // the cautions that come of this job
  std::size_t more_to_watch = 0;   // of them, in the whole plan only
};

/// Unless there is nothing to say.
inline void add_row(std::vector<CardRow>& rows, const char* name, std::string value) {
  if (!value.empty()) rows.push_back({name, std::move(value)});
}

}  // namespace riserun::report
