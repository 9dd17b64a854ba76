// Every chain that a request allows, tried one after the other: no graph, no search, no bound but a number of parts.
#pragma once

#include "chain/ask/answer.h"
#include "chain/ask/request.h"
#include "property/chain/judged_order.h"

#include <array>
#include <cstdint>
#include <optional>
#include <string>
#include <vector>

namespace riserun::chain::testing {

/// A part by itself, entered by one port and left by another.
RunPart passed_through(const Catalog& catalog, PartId part, std::uint8_t enter, std::uint8_t leave);

struct Exhausted {
  std::array<std::optional<Sums>, 6> best;  // by order
  int depth = 0;                            // all chains of up to that many parts were tried
  std::vector<Sums> chains;                 // all of them
};

class Exhaustive {
 public:
  Exhaustive(const Catalog& catalog, const ChainRequest& request);
  /// Deepens part by part until that many beginnings of chains have been looked at.
  Exhausted run(std::size_t budget);
  /// Whether there is any chain at all, however long: every beginning that differs in what rules look at, once.
  bool any_chain();
  /// Sums of a given chain, or nullopt where it breaks a rule; `why` then says which.
  std::optional<Sums> judge(const Chain& chain, std::string& why);

 private:
  struct Way {
    PartId part;
    std::uint8_t enter = 0, leave = 0;
    std::vector<PartId> plugs;
    std::int64_t length = 0, head = 0;
  };
  struct Begun {
    PortTypeId open;
    std::optional<MaterialId> material;  // of the last part, or of the first port
    std::int64_t bore = 0;
    bool closed = false;
    bool no_grip = false;  // the last part is a close nipple
    bool piece = false;    // the last part is cut to length
    int bushings = 0;
    std::vector<bool> met;
    std::vector<int> uses;
    std::int64_t parts = 0, micrometres = 0, nanometres = 0, spare_unions = 0;
    std::vector<const Way*> ways;
    std::vector<bool> asked_for;  // beside them
  };

  void make_ways();
  void add_ways_with_plugs(const Way& way, std::size_t port);
  bool part_allowed(PartId part) const;
  bool metals_clash(std::optional<MaterialId> a, std::optional<MaterialId> b) const;
  bool closes(PortTypeId a, PortTypeId b, bool at_a_piece) const;
  std::int64_t bore_change(std::int64_t from, std::int64_t to);
  Begun beginning() const;
  std::optional<Begun> extended(const Begun& begun, const Way& way);
  bool finishes(const Begun& begun) const;
  bool use(std::vector<int>& uses, PartId part) const;
  bool meet_needs(std::vector<bool>& met, PartId part) const;
  Sums sums_of(const Begun& begun) const;
  void explore(const Begun& begun, int depth, Exhausted& found);

  const Catalog& catalog_;
  const ChainRequest& request_;
  std::vector<Way> ways_;
  std::vector<std::int64_t> deepest_;  // by port type: what it puts in at most
  std::vector<std::pair<std::pair<std::int64_t, std::int64_t>, std::int64_t>> bore_changes_;
  std::size_t looked_at_ = 0;
  std::size_t budget_ = 0;
};

}  // namespace riserun::chain::testing
