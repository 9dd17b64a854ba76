// Every chain that a request allows, tried one after the other: no graph, no search, no bound but a number of parts.
#pragma once

#include "chain/ask/answer.h"
#include "chain/ask/request.h"

#include <array>
#include <cmath>
#include <cstdint>
#include <optional>
#include <string>
#include <vector>

namespace riserun::chain::testing {

/// Micrometres, nanometres.
inline std::int64_t micro(Length length) { return std::llround(in_metres(length) * 1e6); }
inline std::int64_t nano(Length length) { return std::llround(in_metres(length) * 1e9); }

/// What a chain adds up to, worked out here anew.
struct Sums {
  std::int64_t parts = 0, cents = 0, micrometres = 0, nanometres = 0, buy = 0, drawbacks = 0;
  std::int64_t narrowing = 0, foreign_threads = 0, other_kinds = 0, size_changes = 0;
  std::int64_t clashing = 0, not_the_ends_own = 0, far_from_it = 0, not_of_one = 0;  // parts by material
  std::int64_t spare_unions = 0;  // behind what closes the run already, and met no need
  std::int64_t off_weight = 0;    // of a run that makes a distance: cents that weigh as much as what it is off
  std::vector<std::string> ids;   // in chain order, plugs behind the part that holds them
  std::vector<std::pair<std::uint8_t, std::uint8_t>> ways;  // ports used, in chain order
  bool operator==(const Sums&) const = default;
};

/// What an order compares, first to last; the drawbacks are the last of it.
using Tuple = std::array<std::int64_t, 12>;
/// Smaller is better.
Tuple tuple_of(Order order, const Sums& sums);

/// What a fitter counts at one port that a run goes through, or (of no size) at a plug: as Order::line states it.
/// @param line_inches  the size to be kept
/// @param kinds        of the run's ends
/// @param parts_its_ends  these are of metals that are to be kept apart
/// One metal is a coat on the other, or on what has its place in the galvanic series.
bool is_coated(const Catalog& catalog, MaterialId a, MaterialId b);
/// Inches of line by the name of a size; a kind that names the outside diameter is of the line an eighth below.
double size_of_line(const Catalog& catalog, const catalog::PortType& type);
void count_port(const Catalog& catalog, PortTypeId port, double line_inches, const std::vector<std::uint32_t>& kinds,
                bool is_plug, bool parts_its_ends, Sums& sums);
/// A joint between two parts, of a thread that is at home at an end alone: foreign where an end has it and another not.
/// @param entered  the port by which the outer part is entered
void count_inner_joint(const Catalog& catalog, PortTypeId entered, const std::vector<std::uint32_t>& kinds, Sums& sums);
/// Of a thread that is at home at an end alone; and whether a need may be met by a hose with ends of such a thread.
bool is_of_ends_alone(const Catalog& catalog, std::uint32_t kind);
bool asks_for_such_a_hose(const Catalog& catalog, const std::vector<Need>& needs);
/// What a body counts among the ports of another kind: a hose or tube, twice where it stands less than 60 psi; and what
/// keeps metals apart between ends of one kind, or of any where no end's metal is known, unless that is asked for.
std::int64_t count_body(const Catalog& catalog, const catalog::Part& part, const ChainRequest& request);
/// A hose bends so far that a joint at one of these ports closes, whichever goes onto it: also one that slides
/// together.
bool hose_closes(const Catalog& catalog, const catalog::Part& part, std::size_t one, std::size_t other);
/// A chain's parts stand in their order, between the first end and the last.
enum class Shape { chain, tree };
/// Fills in the parts that are of another material than they should be, plugs included.
void count_materials(const Catalog& catalog, const std::vector<PartId>& parts,
                     const std::vector<std::optional<MaterialId>>& ends, Galvanic galvanic, Shape shape, Sums& sums);
/// The same, then the ids, then the ports.
bool better(Order order, const Sums& a, const Sums& b);

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
    int bushings = 0;
    std::vector<bool> met;
    std::vector<int> uses;
    std::int64_t parts = 0, micrometres = 0, nanometres = 0, spare_unions = 0;
    std::vector<const Way*> ways;
  };

  void make_ways();
  void add_ways_with_plugs(const Way& way, std::size_t port);
  bool part_allowed(PartId part) const;
  bool metals_clash(std::optional<MaterialId> a, std::optional<MaterialId> b) const;
  bool closes(PortTypeId a, PortTypeId b) const;
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
