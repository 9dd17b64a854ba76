// The door of the solver: with the plain values of ask/ it is all that the plan, the report and the window see of it.
// Folding the catalog is done once and kept, so that each further question is quick.
#pragma once

#include "chain/answers/valve_side.h"
#include "chain/ask/allocation.h"
#include "chain/ask/answer.h"
#include "chain/ask/assembly.h"
#include "chain/ask/spares.h"
#include "chain/bin/served.h"
#include "chain/build/line_elements.h"
#include "chain/part/duty.h"
#include "chain/rules/allowed_parts.h"

#include <memory>
#include <optional>
#include <string>
#include <vector>

namespace riserun::chain {

class PreparedCatalog;

/// Finds chains in one catalog. Safe to ask from several threads. Each question is looked at first; what cannot be
/// asked is an InputError, see check.h.
class Finder {
 public:
  /// Keeps a reference: the catalog must outlive the finder.
  explicit Finder(const Catalog& catalog);
  ~Finder();

  /// The best chain under the request's order, provably, or why there is none.
  Answer find(const ChainRequest& request) const;
  /// The best chain that makes a distance between the two ports, or why there is none. Where an end moves along its
  /// axis the distance is only a guide: the best chain of all is the answer, and its fit says what the end takes up.
  Answer find_span(const ChainRequest& request, const Span& span) const;
  /// The best branched assembly under the request's order, provably, or why there is none.
  AssemblyAnswer find_assembly(const AssemblyRequest& request) const;
  /// The run of just these parts, see ChainRequest::taken, or which of them or of their joints the request's rules do
  /// not let in.
  Answer make(const ChainRequest& request, const std::vector<TakenPart>& parts) const;
  Answer make(const ChainRequest& request, const Span& span, const std::vector<TakenPart>& parts) const;
  /// Whether there is a chain, or one that makes the distance with both ends held along their axes, without its sums
  /// and its build order.
  bool can_join(const ChainRequest& request, const std::optional<Span>& span = {}) const;

  /// How that hose lies.
  /// @param room  end to end of the hose along the axes, its ends on the barbs included
  /// @pre it is sold by the length and bends
  HoseFit fit_hose(catalog::PartId hose, Length room, Length aside) const;

  /// The best chain and what a person may prefer to it, whatever run is taken; empty where find() tells why there is
  /// none. Of the run that is taken the same holds for the questions below.
  std::vector<Alternative> alternatives(const ChainRequest& request, std::size_t most_rows) const;
  /// The best chain that makes a distance and what a person may prefer to it.
  std::vector<Alternative> alternatives(const ChainRequest& request, const Span& span, std::size_t most_rows) const;
  /// What to take for each bought part of an answer to the request when the shelf has none of it.
  std::vector<Substitute> substitutes(const ChainRequest& request, const Chain& chain) const;

  /// The best allocation of one bin to several demands; see bin/allocate.h for what is best.
  /// @param before  what this finder served before, and now adds to; nullptr: nothing
  Allocation allocate(const std::vector<Demand>& demands, const catalog::Bin& bin, Order order,
                      Served* before = nullptr) const;
  /// The least set of spares for chains that were chosen; see bin/least_spares.h.
  Spares least_spares(const std::vector<Chosen>& chosen, std::size_t most_together = kMostTogether) const;

  /// The best chain, or the best that makes the distance, that leaves the shut-off valve with the reservoir when the
  /// run is opened; see answers/valve_side.h for what can be asked.
  std::optional<Chain> best_with_valve_left(const ChainRequest& request, ReservoirEnd end,
                                            const std::optional<Span>& span = {}) const;

  /// What was searched near the answer to a request, nullptr where there is none, in the DOT language of Graphviz; see
  /// answers/picture.h.
  std::string picture(const ChainRequest& request, const Chain* answer) const;

  const Catalog& catalog() const;
  /// What the searches stand on, for measuring and for the tests.
  const PreparedCatalog& prepared() const { return *prepared_; }

 private:
  std::unique_ptr<const PreparedCatalog> prepared_;
};

/// Radius about a port's axis that must be free while the part is screwed up by it; see part/swing.h.
Length room_to_turn(const Catalog& catalog, const catalog::Part& part, std::size_t port);

/// How far one end of a hose comes back when it is bowed out of its line to be put on: at half of its least radius, see
/// span/bow.h.
/// @param free  length between its two barbs
Length drawn_back_by_bowing(const Catalog& catalog, const catalog::Part& hose, Length free);

/// Finder::find and Finder::find_assembly for a catalog that is asked once.
Answer find_chain(const Catalog& catalog, const ChainRequest& request);
AssemblyAnswer find_assembly(const Catalog& catalog, const AssemblyRequest& request);

}  // namespace riserun::chain
