// The best run that makes a distance, found by measuring every chain that a request allows: no stages, no bounds.
#pragma once

#include "chain/ask/span.h"
#include "property/chain/exhaustive.h"
#include "property/chain/random_world.h"

#include <optional>

namespace riserun::chain::testing {

/// A run as the rule of choice compares it; the first difference decides, and less is better.
struct JudgedRun {
  int kind = 0;  // 0 stock near, 1 stock, 2 one piece cut, 3 two pieces cut, 4 hose
  Tuple cost{};
  std::int64_t off = 0;
  std::vector<std::string> ids;
  std::vector<std::array<int, 3>> ways;     // enter, leave, 0 for a piece that is cut, 1 for a stub
  std::vector<std::int64_t> cut;            // micrometres, by part; 0: as it comes
  std::int64_t lands = 0, lands_aside = 0;  // micrometres
  std::int64_t band = 0, band_aside = 0;
  std::int64_t off_weight = 0;  // cents
  std::int64_t parts = 0, cents = 0, buy = 0;
  std::array<std::int64_t, 3> off_the_line{};      // narrowing, foreign threads, of other kinds
  std::pair<std::int64_t, std::int64_t> strays{};  // ports of other kinds, size changes
  bool leaves_its_line = false;                    // an end is tube or hose, and over a long distance the run is not
  bool operator==(const JudgedRun&) const = default;
  void set_off_the_line(Order order);
  bool before(const JudgedRun& other) const;
  /// Of its kind, under an order that looks at the line: 0 near stock or cut tube, 1 stock, 2 cut pipe, 3 hose.
  int place(Order order) const;
  Order order = Order::line;  // that it is judged by
};

/// Where neither end moves along, a union behind what closes the run is a port of another kind, unless a need asks for
/// it.
Sums with_spare_unions(Sums sums, const ChainRequest& request);

class EverySpan {
 public:
  EverySpan(const Catalog& catalog, const ChainRequest& request, const Span& span);
  /// Best of all chains of up to depth() parts.
  std::optional<JudgedRun> best(std::size_t budget);
  int depth() const { return depth_; }
  /// A distance that some chain of two ports in line, or with a bend and back, makes; so that most are not refused.
  std::optional<Span> made_by_some_chain(Dice& dice, std::size_t budget) const;
  /// Of a chain used that way at this distance (JudgedRun::ways): its spare unions, and what bends counted as it is;
  /// nullopt: nothing closes it.
  std::optional<Sums> as_used(const Sums& sums, const std::vector<std::array<int, 3>>& ways) const;

 private:
  struct Link {
    PartId part;
    std::uint8_t enter = 0, leave = 0;
    std::vector<PartId> plugs;
    bool cut = false;
    bool stub = false;  // rigid tube, or pipe for want of a nipple, as short as its joints let it be
    bool is_sawn() const { return cut || stub; }
  };
  /// How a chain is put to use: as what kind of run, with which parts cut.
  struct Use {
    int kind = 0;
    std::vector<Link> links;
    int bends = 0;
    double angle = 0.0;
  };
  struct Measured {
    double angle = 0.0;
    std::int64_t along = 0, travel = 0, along_band = 0, travel_band = 0;
    int along_cut = -1, travel_cut = -1;  // links
  };

  void set_floor(std::size_t budget);
  std::vector<Link> links_of(const Sums& sums) const;
  std::vector<Use> uses_of(const std::vector<Link>& links) const;
  std::optional<int> kind_of(const std::vector<Link>& links, int bends) const;
  bool wants_nipples(PartId pipe) const;
  bool can_be_had(const Link& link) const;
  bool keeps_bushings(const Use& use) const;
  Measured measure(const Use& use) const;
  static constexpr std::size_t kKinds = 9;
  using BestOfKind = std::array<std::optional<JudgedRun>, kKinds>;
  std::vector<std::array<int, 3>> ways_of(const Use& use) const;
  std::optional<Sums> sums_as_used(const Use& use, const Sums& sums) const;
  void consider(const Use& use, const Sums& sums, BestOfKind& best) const;
  void price(JudgedRun run, const Use& use, const Sums& sums, BestOfKind& best) const;
  std::int64_t shortest(PartId part) const;
  std::int64_t longest(PartId part) const;
  std::int64_t deepest(PartId part) const;
  std::int64_t deepest_bare(PartId part) const;
  bool is_hose_with_ends(const catalog::Part& part) const;
  std::optional<std::pair<std::int64_t, std::int64_t>> rooms_of(PartId part, std::int64_t aside) const;
  std::int64_t room_of_stub(PartId part) const;
  std::int64_t bowed_in(PartId part) const;
  /// An end is of hose or rigid tube, the distance is over a foot, and a run of that kind is neither.
  bool leaves_its_line(int kind) const;
  /// It is cut to length, and one of the run's two ends is of the kind of both of its own.
  bool is_as_an_end(const catalog::Part& part) const;
  /// It is off a reel, and one of the run's two ends is of the kind of both of its own.
  bool runs_on(const catalog::Part& part) const;
  std::int64_t least_room(PartId part) const;
  bool can_have_room(const Link& link) const;
  /// Unions beyond what closes the run, where those pieces have room to be bowed in; nullopt: nothing closes it.
  std::optional<std::int64_t> spare_unions(const Use& use, const Sums& sums, const std::vector<bool>& have_room) const;
  std::optional<std::int64_t> piece_in(const Link& link, std::int64_t room) const;
  int pieces(PartId part, std::int64_t length) const;
  std::int64_t extra_head(const Link& link, std::int64_t length) const;

  const Catalog& catalog_;
  ChainRequest request_;
  std::int64_t along_ = 0, aside_ = 0;
  int depth_ = 0;
  std::optional<std::int64_t> floor_;  // narrowing of the best chain
};

}  // namespace riserun::chain::testing
