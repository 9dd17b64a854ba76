// A part: one fitting, pipe piece, hose or accessory with one or more ports, as a family's rule yields it.
#pragma once

#include "catalog/ids.h"
#include "catalog/joint.h"
#include "quantity/quantities.h"

#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace riserun::catalog {

struct Port {
  PortTypeId type;
  Length bore{};                 // smallest bore on the way in by this port
  Length reach{};                // from the part's centre to the end of the port, along the port's axis
  double heading_degrees = 0.0;  // direction the port looks, in the part's plane; a straight part has 180 and 0
  bool operator==(const Port&) const = default;
};

/// What the parts of a family are for. Connectors and plugs are put in unasked; all others only where they are asked
/// for by name or by what the plan needs.
enum class Role : std::uint8_t {
  connector,     // joins
  plug,          // closes a spare port: one port
  device,        // any other: a ball valve, a hose wye
  gauge,         // Part::full_scale says to what it reads
  relief_valve,  // Part::opens_at says at what
  check_valve,   // Family::check says how it closes, Part::opens_at at what it opens
  regulator,     // Part::full_scale says to what it can be set
  restrictor,    // its bore caps what can pass
  hose_clamp,    // its port's size is that of the hose it suits
};

constexpr bool only_if_asked(Role role) { return role != Role::connector && role != Role::plug; }
/// As a family's file writes it: `relief valve`.
std::string_view role_name(Role role);

/// What a family's parts are welded into a wall as.
enum class WeldBung : std::uint8_t { none, half_coupling, full_coupling, other };

/// What closes a check valve. A swinging flap closes by its weight, so only in a flat pipe or where the flow runs
/// upward; a spring closes any way up (common practice).
enum class CheckKind : std::uint8_t { none, spring, swing };

/// What the middle of a family's parts looks like, for drawings, where ports and role do not tell.
enum class BodyShape : std::uint8_t {
  usual,       // as ports and role have it
  ball_valve,  // lever
  gate_valve,  // bonnet and hand wheel
  needle_valve,
  bibb,      // hand wheel, spout
  strainer,  // a leg at 45 degrees
  bowl,      // hangs under the head
  muffler,
  bulkhead,  // flange and lock nut
  pipe,      // a piece of pipe, whatever its two ends are
};

/// A loss item of catalog/losses.yaml: how much head a kind of fitting takes.
struct LossItem {
  std::string name;       // "elbow 90 threaded"
  double crane_n = 0.0;   // K = n fT (Crane TP-410)
  double darby_k1 = 0.0;  // 3-K: K = k1/Re + ki (1 + kd / NPS^0.3), for low Reynolds numbers; 0: none
  double darby_ki = 0.0;
  double darby_kd = 0.0;  // NPS in inches
  double scatter = 0.0;   // relative half-range of the published values: 0.3 is plus or minus 30 %
  double dirty = 1.0;     // so many times that of a clean one, when it is due to be cleaned; 1: it does not clog
  std::string source;
};

struct Material {
  std::string id;    // "black-iron"
  std::string name;  // "black iron"
  std::vector<std::string> aliases;
  std::string sort;                 // a word for several materials, "plastic", "metal"; empty: none
  double anodic_index_volts = 0.0;  // for the galvanic verdict; NaN for a non-metal
  bool metal = true;
  bool compressed_air = true;  // false: shatters under compressed air (PVC)
  Length roughness{};
  std::string welds_to;    // sheet metal that a bung of it is welded to: "steel", "stainless steel"; empty: none
  std::string not_welded;  // why it is no weld bung: "zinc fume"; empty: nothing against it
  std::string source;
  std::optional<Temperature> hottest;  // water that parts of it stand; none: all there is
  bool pits = false;                   // lives by its skin of oxide: wet, it pits beside any nobler metal
  std::string coat_on;  // the material that it lies on as a coat, by id: zinc on iron; empty: it is solid
  bool galls = false;   // its threads seize on threads of their own kind
  bool threads = true;  // a pipe thread can be cut on pipe of it
};

/// Differences of anodic index between two wetted metals: up to the first the pair is fine, above the second it is to
/// be kept apart. The values here hold until catalog/materials.yaml sets its own (see its source there).
struct GalvanicLimits {
  double watch_above_volts = 0.25;
  double keep_apart_above_volts = 0.50;
  std::string source;
};

enum class GalvanicVerdict : std::uint8_t { fine, watch, keep_apart };

struct Family {
  std::string name;                  // "reducing coupling"
  std::vector<std::string> aliases;  // "bell reducer"
  std::string standard;
  std::string shelf;  // where a store keeps it: "pipe fittings", "hose and clamps" ...
  Role role = Role::connector;
  WeldBung weld_bung = WeldBung::none;
  bool is_bushing = false;
  std::string source;
  bool can_shut = false;  // holds something that can stop the flow: keep it from between a tank and its relief valve
  bool flexible = false;  // bends: what is beyond it looks in no known direction
  CheckKind check = CheckKind::none;
  BodyShape shape = BodyShape::usual;
  bool for_vacuum = false;  // goes in unasked only where vacuum may come about (suction hose)
};

/// A price that another one was put in place of.
struct BeatenPrice {
  Price price;
  std::string priced_by;  // as in Part
  bool operator==(const BeatenPrice&) const = default;
};

struct Part {
  Part() = default;
  Part(const Part&) = default;
  Part& operator=(const Part&) = default;
  // Boost's quantities do not promise that moving them throws nothing, so that a growing list would copy its parts.
  Part(Part&&) noexcept = default;
  Part& operator=(Part&&) noexcept = default;
  ~Part() = default;
  bool operator==(const Part&) const = default;

  std::string id;       // stable, unique, readable: "reducing-coupling/black-iron/1x3-4"
  std::string name;     // "1 x 3/4 reducing coupling"
  std::string sold_as;  // the last words of the name where a piece of it goes without: "by the foot"
  std::string size;     // "1 x 3/4", and the length of a nipple: "1 x 4 in"
  FamilyId family;
  MaterialId material;
  std::vector<Port> ports;
  Price price;                      // indicative
  std::string priced_by;            // the shop's own file that says the price; empty: the catalog's
  std::vector<BeatenPrice> beaten;  // what it stands in place of, the catalog's own first
  GaugePressure rating{};           // at room temperature, for water
  bool stocked = true;              // on an ordinary store's shelf; false: special order
  bool air = true;                  // may stand compressed air
  bool closing = false;             // holds a closing joint of its own between its two sides (a union)
  bool dielectric = false;          // keeps its two sides' metals apart
  bool one_way = false;             // flow only from port 0 to port 1 (check valve)
  bool arrow = false;               // marked to be passed from port 0 to port 1 (strainer); so is what is one way
  bool straight_tapped = false;     // may be tapped straight instead of taper: a lesser seal
  bool cut_to_length = false;       // sold by length: `reach` is that of the default length
  bool threaded_when_cut = false;   // sold in sticks that may be cut shorter and threaded again
  bool flexible = false;            // takes an offset by bending (hose)
  bool remnant = false;             // one piece of what is sold by length, in the bin: no longer, and no more to buy
  int sawn_ends = 0;                // of a piece of pipe: ends that have lost their thread, though `ports` has it
  std::optional<MaterialId> far_material;   // wetted metal at the last port where it differs (dielectric union)
  LossItemId loss;                          // invalid: bore and length only
  LossItemId branch_loss;                   // for a tee entered or left by its branch
  Length across_flats{};                    // wrench size; zero: none stated
  Length outside_diameter{};                // of a round body, a weld bung's; zero: none stated
  Length hose_bore{};                       // of a made-up hose between its narrower end fittings; zero: as its ports
  std::optional<GaugePressure> opens_at;    // of a relief valve: its set pressure; of a check valve: where it opens
  std::optional<GaugePressure> full_scale;  // of a gauge or a regulator: the end of its range
  bool close = false;                       // threaded over its whole length: no bare pipe for a wrench
  bool names_material = false;              // its name says what it is made of
  bool measured = false;                    // measured by hand, not the catalog's figure
  std::string source;

  MaterialId material_at(std::size_t port) const {
    return far_material && port + 1 == ports.size() ? *far_material : material;
  }
};

/// The name without how it is sold, or which piece it is: "1-1/4 x 18 pipe" of "1-1/4 x 18 pipe, threaded both ends".
inline std::string stock_name(const Part& part) {
  const std::size_t rest = part.sold_as.empty() ? 0 : part.sold_as.size() + 2;
  return part.name.substr(0, part.name.size() - rest);
}

/// Threads to cut on a piece that is cut of it to measure: pipe brings one along while it has one. Of hose and tube
/// none.
inline int threads_to_cut(const Part& part) {
  if (!part.threaded_when_cut) return 0;
  return part.sawn_ends == 2 ? 2 : 1;
}

/// Hose and tube of which each foot is one part: a count of them is a length in feet, of one piece.
inline bool sold_by_the_foot(const Part& part) {
  if (!part.cut_to_length || part.remnant || part.ports.size() != 2) return false;
  const double feet = in_inches(part.ports[0].reach + part.ports[1].reach) / 12.0;
  return feet > 0.999 && feet < 1.001;
}

}  // namespace riserun::catalog
