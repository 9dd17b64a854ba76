// What is asked of the chain search.
#pragma once

#include "catalog/bin.h"
#include "catalog/catalog.h"

#include <optional>
#include <string>
#include <vector>

namespace riserun::chain {

using catalog::Catalog;
using catalog::MaterialId;
using catalog::PartId;
using catalog::PortTypeId;

/// What decides between chains, first to last. A tie beyond that goes to the chain with fewer bushings and close
/// nipples (common practice), and what still ties to the sequence of part ids that sorts first, plugs behind the part
/// that they are in.
///
/// `line` is what a fitter buys (common practice), each key only where those before it tie:
///   1. line size kept: least narrowing. The line size is the smaller of the two ends', by nominal size over all kinds
///      (of those that name a tube's outside diameter, by the line that it is: Catalog::line_inches); each port passed
///      that is smaller weighs as much as it takes more head than the line: (line / size)^4 - 1.
///   2. no foreign thread: fewest ports of a kind that Catalog::foreign_threads() keeps to other ends, plugs' included;
///      between ends of two metals that Galvanic::avoid keeps apart, one that does (plastic thread) is at home.
///      A thread that is at home on an end alone (garden hose thread) is foreign at each joint between two parts of the
///      run too, unless every end has it, the base of an assembly has it, or a need asks for a hose with such ends.
///   3. kind kept: fewest ports passed, and plugs, of a kind with which no end is at home (what goes onto nothing but
///      the ends' own kinds is of them: push-in on air tube); what bends (hose; not tube of an end's kind over a span),
///      twice where it stands less than kHouseWater; under Galvanic::warn what keeps metals apart (dielectric unions),
///      with ports of unlike kinds only where no end's metal is known, or both are and need not be kept apart.
///   4. fewest size changes: parts whose two passed ports differ in nominal size; each weighs in 3. as a port does.
///   5. fewest parts, plugs included.
///   6. one material: fewest joints, inside the run and at known ends, whose two metals must be kept apart; a device,
///      which comes in the metal that it is made in, has none. Then fewest parts that are not of an end's own metal (of
///      the better of the two, where known; steel and black iron are one, Catalog::same_metal), then, where an end's is
///      known, the fewest steps of the galvanic series over all joints (brass goes into copper before stainless; what
///      is no metal is farthest), then fewest that are not of the run's commonest; a device is of any here, too. What
///      bends counts in joints alone, and in steps where it ends in metal: no hose is of the line's metal. Neither
///      metals kept apart nor steps count where Galvanic::avoid parts them anyway. A chain between two known metals
///      that must be kept apart is a go-between: with the joints count its parts that must be kept apart from an end's
///      (brass between copper and steel), and steps are those of parts from an end's own. There the parts before the
///      first that parts the two (a dielectric union) are held against the first end alone, those behind it against the
///      last, itself against neither.
///   7. the lowest price to pay.
/// In an assembly a port's line size is the greatest over the targets beyond it of the smaller of that target and the
/// base, and its ends are the base and those targets; a target that a device is chosen for has the least of their
/// sizes. A part with several ways on has a size change for each that differs from the port entered.
enum class Order {
  line,
  parts,   // fewest parts, then lowest price to pay
  price,   // lowest price to pay, then fewest parts
  loss,    // least head at the flow, then fewest parts, then price
  length,  // shortest end to end, then fewest parts, then price
  bin,     // as `line`, with fewest parts to buy between foreign thread and kind
};

/// What a house's water has at a tap: 40 to 60 psi, the range of a well's pressure switch (common practice). Clear
/// vinyl tubing stands less, and goes into a line only where nothing else bends.
inline const GaugePressure kHouseWater = psig(60.0);

/// The order looks at line size, kind and material.
constexpr bool keeps_the_line(Order order) { return order == Order::line || order == Order::bin; }

/// What an end of the chain can still do once the other side of it is in place. Where an end turns and one moves along,
/// any joint can be the last: what is screwed up draws in. Where none turns but one slides, a joint made without
/// turning either side; where none moves along, though one turn, a closing one.
enum class Freedom {
  fixed,     // neither turns nor moves
  sliding,   // moves along its axis, cannot turn
  spinning,  // turns, cannot move along its axis
  loose,     // turns and moves
};

constexpr bool can_turn(Freedom freedom) { return freedom == Freedom::spinning || freedom == Freedom::loose; }
/// Whether an end moves along its axis, so that it takes up what a joint draws in, or a distance is off.
constexpr bool moves_along(Freedom freedom) { return freedom == Freedom::sliding || freedom == Freedom::loose; }

struct PortEnd {
  PortTypeId type;
  std::optional<MaterialId> material;  // of the thing that has the port; unknown: no galvanic verdict there
  Freedom freedom = Freedom::loose;
  std::string called{};    // what texts call it: "the riser bung"; empty: "the first port" or "the last port"
  bool on_vessel = false;  // of a tank's wall, which is large beside any part
  bool operator==(const PortEnd&) const = default;
};

/// What texts call the two ends of a request.
std::string name_of_first(const PortEnd& from);
std::string name_of_last(const PortEnd& to);

/// Something that the chain must hold: every part whose family, material or size matches all the words counts. One part
/// meets all the needs that it matches, but the same need named twice asks for two parts (and so does a need within
/// another, as people ask: needs.h). Devices and parts with more
/// than two ports are put in only where they meet a need that is still open; their spare ports are plugged.
struct Need {
  std::string words;          // as written: "ball valve"
  std::vector<PartId> parts;  // what satisfies it; not empty
  bool required = true;       // false: it lets its parts in and may stay open (for needs in no order)
  bool before_all = false;    // of an assembly: every target is beyond its part, if that can be
  bool operator==(const Need&) const = default;
};

/// Parts that are kept out, and what texts call them: "brass".
struct Avoidance {
  std::string words;
  std::vector<PartId> parts;
  bool operator==(const Avoidance&) const = default;
};

/// One part of a run that a person has chosen.
struct TakenPart {
  /// Ports by which it is entered and left. None: the way through that the order likes best; of a plug: none.
  struct Through {
    std::uint8_t enter = 0;
    std::uint8_t leave = 1;
    bool operator==(const Through&) const = default;
  };
  PartId part;
  std::optional<Through> through{};
  bool operator==(const TakenPart&) const = default;
};

/// More than one bushing in a chain is poor practice (common practice).
inline constexpr int kUsualMostBushings = 1;

enum class Service { water, air };
enum class Galvanic { warn, avoid };

/// So many needs can be told apart while a chain grows: those of a chain, and of an assembly with its branches.
inline constexpr std::size_t kMostNeeds = 8;

/// What a person may ask of a run. Each field has a row in ask/askable.h, which says its name, its range and what is
/// told of it where it cannot be kept.
struct RunRules {
  std::vector<Need> needs;         // in any order along the chain
  bool needs_in_order = false;     // met one after the other as given, from the first port on
  std::vector<Avoidance> avoided;  // the bans of ChainRequest::banned that have names
  std::optional<int> most_parts;
  std::optional<int> most_bushings;
  std::optional<GaugePressure> rating;  // every part must stand at least that
  std::optional<Temperature> hottest;   // every part must be proved for it; a rating then counts at that heat
  bool vacuum = false;                  // every part must be proved to stand it
  std::optional<Length> smallest_bore;
  std::optional<Length> room;  // free radius round the run: every body that is turned must have its swing_radius
  Galvanic galvanic = Galvanic::warn;
  bool special_order = false;
  bool operator==(const RunRules&) const = default;
};

struct ChainRequest : RunRules {
  PortEnd from;
  PortEnd to;
  Order order = Order::line;
  std::vector<bool> banned;    // by part row; empty: none banned
  std::vector<bool> not_sold;  // by part row: the shelf is empty, what is in the bin stays; empty: all are to be had
  Service service = Service::water;
  /// A run that makes a distance may narrow the line more than the best chain at any distance, and take a hose that has
  /// no room to be bowed in: for who judges that by himself, as a plan does.
  bool may_narrow = false;
  bool dry = false;                               // it carries air, though parts that are not proved for air are let in
  VolumeFlow flow = us_gallons_per_minute(10.0);  // for order loss and the reported head
  catalog::Bin bin;                               // free, each as often as it is there
  /// This run and no other, where it keeps all of the above: its parts from the first port on, the plugs of a part
  /// behind it in the order of its ports. None: whichever is best.
  std::optional<std::vector<TakenPart>> taken{};
  bool operator==(const ChainRequest&) const = default;
};

}  // namespace riserun::chain
