// What a run weighs under each order, counted anew from its parts: a fitter's rules as Order states them.
#pragma once

#include "chain/ask/answer.h"
#include "chain/ask/request.h"

#include <array>
#include <cmath>
#include <cstdint>
#include <optional>
#include <string>
#include <utility>
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
  std::vector<bool> asked_for;                              // in the same order: it met a need
  bool operator==(const Sums&) const = default;
};

/// What an order compares, first to last; the drawbacks are the last of it.
using Tuple = std::array<std::int64_t, 12>;
/// Smaller is better.
Tuple tuple_of(Order order, const Sums& sums);

/// One metal is a coat on the other, or on what has its place in the galvanic series.
bool is_coated(const Catalog& catalog, MaterialId a, MaterialId b);
/// Two metals that `avoid` lets not meet: in water or, half a volt apart, where it is dry.
bool eats(const Catalog& catalog, bool wet, MaterialId a, MaterialId b);
/// Inches of line by the name of a size; a kind that names the outside diameter is of the line an eighth below.
double size_of_line(const Catalog& catalog, const catalog::PortType& type);
/// What a fitter counts at one port that a run goes through, or (of no size) at a plug: as Order::line states it.
/// @param line_inches  the size to be kept
/// @param kinds        of the run's ends
/// @param parts_its_ends  these are of metals that are to be kept apart
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
/// What a port shows its neighbour: its metal, but a device nothing, nor what keeps metals apart and has no second one.
struct Shown {
  std::optional<MaterialId> metal;
  bool is_hose = false;
};
Shown shown_at(const Catalog& catalog, PartId part, std::size_t port);
using JudgedJoints = std::vector<std::pair<Shown, Shown>>;
/// A chain's parts stand in their order, between the first end and the last.
enum class Shape { chain, tree };
/// Fills in the parts that are of another material than they should be, plugs included.
void count_materials(const Catalog& catalog, const std::vector<PartId>& parts,
                     const std::vector<std::optional<MaterialId>>& ends, const JudgedJoints& joints, Galvanic galvanic,
                     Shape shape, Sums& sums);
/// The same, then the ids, then the ports.
bool better(Order order, const Sums& a, const Sums& b);

}  // namespace riserun::chain::testing
