// The ways that air and water take through the connections as they came out: what the physics sees of the fittings.
#pragma once

#include "hydraulics/line.h"
#include "plan/job/job.h"
#include "quantity/fact.h"

#include <optional>
#include <string>
#include <vector>

namespace riserun::plan {

/// A part on a way.
struct WayPart {
  PartId part;
  std::uint8_t enter = 0;  // ports, as the flow meets them
  std::uint8_t leave = 0;
  std::optional<Length> bore;                       // the narrowest place between them; nullopt: not known
  Length length{};                                  // along the way; of a hose the length that it is cut to
  std::vector<hydraulics::LineElement> elements{};  // what the flow meets in it, in its order
};

/// What a way is for.
enum class WayUse {
  feed,         // air from the supply to the reservoir
  vent,         // air from the reservoir to a device that lets it out
  relief,       // air from the reservoir to a relief valve that nothing can keep from it
  idle_relief,  // to a relief valve that guards nothing: Way::guards_nothing says why
  gauge,        // to a gauge; nothing flows
  water,
  other,  // air between two ports that are not of the supply
};

/// By how many degrees the way through a part turns aside, from the one port to the other; 0: straight on.
double turn_between(const catalog::Part& part, std::size_t enter, std::size_t leave);

/// The way to one end of a connection, its parts in the order in which the flow meets them; water runs both ways, and
/// has them from the base on.
struct Way {
  std::string connection;  // its name
  std::string end;         // name of the end that is not the base
  WayUse use = WayUse::other;
  bool to_base = false;                          // the flow comes in by the end
  bool branched = false;                         // the connection has other ends, which share parts of it
  std::vector<WayPart> parts;                    // without the device
  std::optional<PartId> device;                  // that stands at the end
  std::optional<quantity::Fact> guards_nothing;  // of a relief valve: why, where it stands
  bool upright = true;                           // a relief valve can be screwed in so that it stands upright

  /// The narrowest place; nullopt: there is no part, or no bore is known.
  std::optional<Length> bore() const;
};

/// The regulator that the air of a feed meets last: it sets the reservoir's pressure, those before it are first stages.
/// `parts.end()`: there is none.
std::vector<WayPart>::const_iterator last_regulator(const Catalog& catalog, const Way& way);

/// The regulator right before that one; `parts.end()`: there is none.
std::vector<WayPart>::const_iterator first_stage(const Catalog& catalog, const Way& way);

/// The first part on the way, its end not counted, that can stop the air or reduce it; nullptr: none can.
const catalog::Part* first_that_stops(const Catalog& catalog, const Way& way);

/// A valve stands on the way, or at its end, that a hand opens and shuts.
bool way_is_shut_by_hand(const Catalog& catalog, const Way& way);

/// It holds a valve that opens while a plug is pushed into it, and shuts as that leaves: no hand opens it alone.
bool shuts_itself(const Catalog& catalog, PartId part);

/// A valve stands on the way, or at its end, that a hand opens and leaves open, and the way does not end in what shuts
/// itself.
bool way_is_opened_by_hand(const Catalog& catalog, const Way& way);

/// A part that lets the flow one way alone stands in that connection.
bool runs_one_way(const Catalog& catalog, const std::vector<Way>& ways, const std::string& connection);

/// A valve or a check valve stands in that connection.
bool has_a_valve(const Catalog& catalog, const std::vector<Way>& ways, const std::string& connection);

}  // namespace riserun::plan
