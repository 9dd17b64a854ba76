// The plan as nodes, pins and links: what stands on the canvas, before it has a place there.
#pragma once

#include "plan/plan.h"

#include <cstddef>
#include <optional>
#include <string>
#include <vector>

namespace riserun::gui {

enum class NodeKind {
  reservoir,
  table,
  air_supply,
  part,      // of a chain
  device,    // at the end of a connection: a gauge, a relief valve
  open_end,  // a connection that has no chain: stands where its parts would be
};

/// An open end of a node.
struct Pin {
  std::string port;  // name of a vessel's port; empty: a part's
  catalog::PortTypeId type;
  std::size_t part_port = 0;  // row of Part::ports
  bool spare = false;         // not in the run: plugged, or a vessel's port without a connection
  std::optional<catalog::PartId> plug;
};

inline constexpr std::size_t kNoRow = static_cast<std::size_t>(-1);

inline constexpr std::size_t kReservoir = 0;  // the first rows of a sketch
inline constexpr std::size_t kTable = 1;
inline constexpr std::size_t kAirSupply = 2;
inline constexpr std::size_t kVessels = 3;

struct Node {
  std::string key;  // the same after a change of the job for as long as the thing is there; kept in the side file
  NodeKind kind = NodeKind::part;
  std::optional<catalog::PartId> part;
  bool from_bin = false;
  std::size_t connection = kNoRow;               // row of Plan::connections
  std::size_t place = 0;                         // row of the run's parts
  std::optional<quantity::Length> cut_length{};  // of a piece that is cut to measure
  int pieces = 1;                                // of what it is sold in
  int bought = 0;                                // of these
  quantity::Price price{};                       // of what is bought, with the plugs in it
  int clamps = 0;                                // that are bought with it
  quantity::Price clamps_price{};
  std::vector<Pin> pins;  // of a part: pins[0] is entered; those that lead on follow, then the spare ones
};

struct PinAt {
  std::size_t node = 0;
  std::size_t pin = 0;
};

/// A joint, or the gap of a connection that has no chain.
struct Link {
  PinAt a;
  PinAt b;
  std::size_t connection = 0;  // as Node::connection
  std::size_t joint = kNoRow;  // row of the run's joints; kNoRow: not a joint
  std::string seal;            // of the mating rule: "sealant", "gasket", "clamp" ...; empty: not a joint
  bool closing = false;        // this joint closes the run
  catalog::GalvanicVerdict galvanic = catalog::GalvanicVerdict::fine;
  plan::Service service = plan::Service::water;
  bool towards_a = false;  // what is inside runs from b to a: a branch that feeds
};

struct Sketch {
  std::vector<Node> nodes;  // reservoir, table, air supply; then the parts in the order of the connections
  std::vector<Link> links;
};

/// The connection that a node or a link belongs to; nullptr, empty: to none.
const plan::ConnectionPlan* connection_at(const plan::Plan& plan, std::size_t connection);
std::string name_of_connection(const plan::Plan& plan, std::size_t connection);

}  // namespace riserun::gui
