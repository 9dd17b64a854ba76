// What the solver answers with: a run, the parts that join one port, the base, to one or more others, its ends. With
// one end it is a chain, with several a branched assembly; spare ports are plugged.
#pragma once

#include "chain/ask/request.h"
#include "chain/ask/span.h"
#include "quantity/fact.h"

#include <optional>
#include <string>
#include <vector>

namespace riserun::chain {

/// What follows at one port of a part.
struct Follower {
  enum class What : std::uint8_t {
    inner,  // the port that it is entered by
    part,
    end,
    plug,
    aside,  // in a way that was taken out of a run: what is not on it
  };
  What what = What::inner;
  std::size_t row = 0;    // of Run::parts, or of Run::ends
  PartId plug;            // for a plug
  bool from_bin = false;  // for a plug

  bool leads_on() const { return what == What::part || what == What::end; }
  bool operator==(const Follower&) const = default;
};

struct RunPart {
  PartId part;
  std::uint8_t enter = 0;
  bool from_bin = false;
  std::vector<Follower> ports;         // one for each port of the part
  std::optional<Length> cut_length{};  // end to end, of a piece that is cut to measure
  int pieces = 1;                      // of what it is sold in, in one length
  bool short_to_bow = false;           // of a cut piece: it has no room to be bowed into its last joint

  /// The first port that leads on; in a run with one end the only one.
  std::uint8_t leave() const;
  /// In port order.
  std::vector<Follower> plugs() const;
};

inline constexpr std::size_t kBase = static_cast<std::size_t>(-1);

/// A joint of the run, plugs left out.
struct RunJoint {
  std::size_t inner = kBase;  // row of the part nearer to the base; kBase: the base itself
  std::uint8_t inner_port = 0;
  bool to_end = false;
  std::size_t outer = 0;  // row of the part or of the end
  PortTypeId a;           // at the inner side
  PortTypeId b;
  std::uint32_t rule = 0;  // row of Catalog::mating_rules
  Length make_up{};
  Length make_up_tolerance{};
};

/// What stands at an end: the port asked for, or the device chosen.
struct RunEnd {
  PortEnd port;
  std::optional<PartId> device{};
  std::uint8_t device_port = 0;
  bool from_bin = false;  // the device
  bool feeds = false;     // what is inside runs from it to the base
};

/// A build step that makes no joint of the run: a plug in a spare port.
inline constexpr std::size_t kNoJoint = static_cast<std::size_t>(-1);

/// One step of the build order.
struct BuildStep {
  enum class Turns : std::uint8_t { nothing, inner, outer };
  quantity::Fact what;           // its sentence
  std::size_t joint = 0;         // row of Run::joints; joints.size() for a union's own nut; kNoJoint for a plug, a cut
  std::size_t row = 0;           // of the part that is plugged or cut, or of the union
  bool closing = false;          // closes the run
  Turns turns = Turns::nothing;  // which side of the joint turns
};

/// What joints use up that is no part of the run: "hose clamp", of one size, so often.
struct JointGood {
  std::string what;
  std::string size;
  int count = 0;
  std::optional<PartId> part{};  // where the catalog has it, with its price
};

/// Ends have the names that texts call them.
struct Run {
  PortEnd base;
  std::vector<RunPart> parts;    // from the base outwards: a part, then what follows at its ports, port by port
  std::vector<RunJoint> joints;  // in the same order; one for each part and each end
  std::vector<RunEnd> ends;
  int part_count = 0;  // plugs included, and the devices that were chosen with the run
  int buy_count = 0;
  Price price;             // of what must be bought
  GaugePressure rating{};  // of the weakest part, devices at the ends left out; water; infinite when there is no part
  bool air = true;         // every part may stand compressed air
  Length length{};         // with one end: from port to port, along the run, nominal
  Length length_tolerance{};  // plus or minus: the joints' bands added up, as if all fell the same way
  Head head{};                // with one end: lost at the request's flow
  bool buildable = true;      // false: neither end turns, and nothing can be made up without turning one of its sides
  std::vector<BuildStep> steps;
  std::vector<JointGood> goods{};
  quantity::Facts kept{};    // what it keeps of its line's size and kind; empty where the order does not look at it
  quantity::Facts cautions;  // galvanic pairs, one-way valves, bushings ...
  std::optional<SpanFit> span{};  // with one end: how it makes the distance that was asked for
};

/// A run with one end; its parts stand in a row, and joint i is before part i. No parts: the two ports go straight
/// together.
using Chain = Run;
/// A run with several ends.
using Assembly = Run;

/// The way from the base to one end, with what is plugged beside it: that of a run with one end is the run's own.
/// Only parts, joints and ends are filled.
Chain way_to(const Run& run, std::size_t end);
/// The same way, as what comes in by the end meets it.
Chain turned_round(Chain way);

}  // namespace riserun::chain
