// A move: one part of the catalog, entered by one port and left by another, with what it adds to a chain.
#pragma once

#include "chain/part/measures.h"

#include <tuple>
#include <vector>

namespace riserun::chain {

/// A part spent from the bin by a move, by its row in the request's bin.
struct BinUse {
  std::uint32_t item = 0;
  int count = 0;
};

/// How a piece of hose or tube serves a joint into which it is bowed.
enum class Bow : std::uint8_t {
  none,       // it is no such piece
  has_room,   // it is long enough to be bowed until its end goes in
  too_short,  // it is not
};

struct Move {
  PartId part;  // invalid: a part that does not exist, wished for when there is no chain
  std::uint8_t enter = 0;
  std::uint8_t leave = 1;
  PortTypeId enter_type;
  PortTypeId leave_type;
  MaterialId enter_material;  // wetted metal that faces the neighbour; invalid: no galvanic verdict
  MaterialId leave_material;
  std::int64_t enter_bore = 0;  // nanometres; 0: not known
  std::int64_t leave_bore = 0;
  bool closes = false;  // holds a closing joint of its own
  Bow bow = Bow::none;
  bool bushing = false;
  bool only_for_need = false;  // enters only where a need asks for it
  bool no_grip = false;        // no bare pipe to hold: both its joints must be made by turning what goes onto it
  std::uint8_t groups = 0;     // the need groups that it meets
  std::vector<PartId> plugs;   // for the ports beyond the two, in port order
  std::vector<BinUse> bin_uses;
  Measures own;                      // plugs included; make-ups, changes of bore to a neighbour not
  std::int32_t bend = 0;             // thousandths of a degree by which the way through turns; 0: straight
  std::int64_t before_bend = 0;      // micrometres on the way in to the bend's corner
  std::int64_t after_bend = 0;       // and from there on
  bool cut = false;                  // a piece cut to measure: `own` holds the shortest that it can be
  bool stub = false;                 // of those: cut as short as its two joints let it be, between two fittings
  std::int64_t stretch = 0;          // micrometres that it can be longer than that
  int pieces = 1;                    // of what it is sold in, laid end to end in one length
  std::int64_t cut_micrometres = 0;  // the length that it is cut to, once that is settled; 0: as it comes
};

/// What a part is where material is looked at. A device comes in the metal that it is made in: the pipe beside it need
/// not follow (a brass valve goes into a run of black iron, common practice). Nor is what bends of any line's metal.
struct Make {
  MaterialId material;
  bool device = false;
  bool bends = false;
  auto operator<=>(const Make&) const = default;
};
Make make_of(const Catalog& catalog, PartId part);
/// The makes of a move's part and of its plugs, one for each.
std::vector<Make> makes_of(const Catalog& catalog, const Move& move);

/// What an end shows its neighbour where metals are looked at. Devices show nothing: they come in the metal that they
/// are made in. Nor does what keeps metals apart and has no second metal of its own.
struct ShownMetal {
  MaterialId metal;    // invalid: nothing
  bool bends = false;  // of a hose
  auto operator<=>(const ShownMetal&) const = default;
};
ShownMetal shown_metal(const Catalog& catalog, PartId part, std::size_t port);
inline ShownMetal shown_metal(const PortEnd& end) { return {end.material.value_or(MaterialId{}), false}; }

/// What moves must share to take the same room.
using Shape = std::tuple<std::int64_t, std::int32_t, std::int64_t, std::int64_t, int, std::int64_t>;
inline Shape shape_of(const Move& move) {
  return {move.own.micrometres, move.bend, move.before_bend, move.after_bend, (move.cut ? 1 : 0) + (move.stub ? 1 : 0),
          move.stretch};
}

/// Whether the part joins two ports unasked: a connector with just two ports.
bool is_plain_connector(const Catalog& catalog, const catalog::Part& part);
/// Made for vacuum, which cannot come about: then it goes in only where a need asks for it, as a device does.
inline bool is_only_for_vacuum(const ChainRequest& request, const catalog::Family& family) {
  return family.for_vacuum && !request.vacuum;
}
/// A plain connector that the request lets in unasked.
bool goes_in_unasked(const Catalog& catalog, const ChainRequest& request, const catalog::Part& part);
bool is_bushing(const Catalog& catalog, const catalog::Part& part);
bool is_close_nipple(const catalog::Part& part);
/// Two of its ports look neither along one axis nor the same way.
bool is_bent(const catalog::Part& part);

/// It is a hose, or has one in it.
bool bends(const Catalog& catalog, const catalog::Part& part);
/// A hose with its ends on it, of one length: a garden hose, a flexible connector. It has just two ports.
bool is_made_up_hose(const Catalog& catalog, const catalog::Part& part);
/// It takes up what is left of a distance by bending: a hose, cut or made up, and air tube.
bool fills_by_bending(const Catalog& catalog, const catalog::Part& part);
/// Along its run it has no one length: it is cut to measure or bends.
bool has_no_one_length(const Catalog& catalog, const catalog::Part& part);
/// What a part that bends weighs among the ports of another kind, as Order::line states it; 0: it does not bend.
std::int64_t bending(const Catalog& catalog, const catalog::Part& part);
/// Closes a run between two ends that stay where they are: nothing turns, and nothing must first slide apart.
/// One that is bowed in takes a piece with room beside it or, where no piece meets there, an end that bows.
/// @param a,b  of what meets; Bow::none: a fitting, or what stands at an end
inline bool closes_in_place(const catalog::MatingRule& rule, Bow a, Bow b) {
  if (!rule.closing || rule.lengthwise) return false;
  if (!rule.bowed || a == Bow::has_room || b == Bow::has_room) return true;
  return rule.end_bows && a == Bow::none && b == Bow::none;
}
/// It bends out of the way of a joint that closes, and be it one that slides together: a hose with cam couplings.
bool gives_way(const Catalog& catalog, const catalog::Part& part, std::size_t enter, std::size_t leave);
/// What gives a dielectric union its cause, where the request avoids no bad pairs: both ends of metals that must be
/// kept apart; or one end of a known metal, and then where the union is all there is between the two ends: what else
/// went between would meet its steel half unasked.
enum class PartingCause : std::uint8_t { none, between_the_ends, anywhere };
PartingCause parting_cause(const Catalog& catalog, const ChainRequest& request);
/// Its part keeps two metals apart, as a dielectric union does, and what is no metal.
inline bool parts_metals(const Catalog& catalog, const Move& move) {
  if (!move.part.valid()) return false;
  const catalog::Part& part = catalog.part(move.part);
  return part.dielectric || !catalog.material(part.material).metal;
}
/// It keeps two metals apart, as a dielectric union does, where the request gives no reason for it: it avoids no bad
/// pairs, and the part has ports of one kind, or there is no such cause.
bool parts_metals_for_nothing(const Catalog& catalog, const ChainRequest& request, const catalog::Part& part);
/// What a part weighs by itself among the ports of another kind, as Order::line states it.
std::int64_t other_kinds_of(const Catalog& catalog, const ChainRequest& request, const catalog::Part& part);
/// The two ports differ in nominal size.
bool changes_size(const Catalog& catalog, const catalog::Part& part, std::size_t enter, std::size_t leave);

/// Length that goes into the mate at a port of that type: of a male thread, a barb, a tube end; 0 for a female end.
Length insertion(const Catalog& catalog, PortTypeId type);
/// The same into the deepest of its mates: a tube goes further into what grips it than into a solder cup.
Length deepest_insertion(const Catalog& catalog, PortTypeId type);
/// Make-up of the joint between two ends, and half of its band: what the one that goes in puts in; between two kinds
/// what the rule's first kind says, and no more than every fitting with such an end has; a tube has it all.
/// @pre the rule joins them
Length make_up(const Catalog& catalog, PortTypeId a, PortTypeId b, const catalog::MatingRule& rule);
Length make_up_tolerance(const Catalog& catalog, PortTypeId a, PortTypeId b, const catalog::MatingRule& rule);
/// Length of the body from port to port, never less than what may go in at its two ends.
Length body_length(const Catalog& catalog, const catalog::Part& part, std::size_t enter, std::size_t leave);
/// Smallest bore at that port: the port's own, else what its kind fixes, else another port's; zero when none is known.
Length port_bore(const Catalog& catalog, const catalog::Part& part, std::size_t port);

std::int64_t in_micrometres(Length length);
Length from_micrometres(std::int64_t micrometres);
std::int64_t in_nanometres(Length length);

/// The part as a move bought at its price; no plugs, no head yet.
/// @pre enter and leave are two different ports of the part
Move bought_move(const Catalog& catalog, PartId part, std::size_t enter, std::size_t leave);
/// The same as a request weighs it.
Move bought_move(const Catalog& catalog, const ChainRequest& request, PartId part, std::size_t enter,
                 std::size_t leave);

}  // namespace riserun::chain
