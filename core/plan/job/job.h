// The job: what a person says of the reservoir, the table, the ports between them, the air supply, the bin and their
// wishes. A plain value; everything that may be left out is optional and is filled in by settle() in settled.h, which
// states each assumption. The YAML form of it stands key by key in job_keys.h and in the starter that `riserun new`
// writes.
#pragma once

#include "catalog/bin.h"
#include "catalog/catalog.h"
#include "chain/ask/assembly.h"
#include "chain/ask/request.h"
#include "plan/job/measures.h"
#include "quantity/quantities.h"
#include "quantity/write.h"
#include "reservoir/box_panels.h"
#include "reservoir/riser.h"

#include <memory>
#include <optional>
#include <string>
#include <utility>
#include <vector>

namespace riserun::plan {

using catalog::Bin;
using catalog::Catalog;
using catalog::MaterialId;
using catalog::PartId;
using catalog::PortTypeId;
using chain::Service;

/// Where a port sits on its vessel. On the air supply it has no meaning.
enum class Place { lid, side, floor, over_rim };

/// A place in the lid, of an axis: from the inside of the left end, along the length, and of the front side.
struct LidSpot {
  Length from_left{};
  Length from_front{};

  bool operator==(const LidSpot&) const = default;
};

/// An open port that is there already: a bung of the reservoir, an inlet of the table, the end of the air line.
struct JobPort {
  std::string name;
  PortTypeId type;
  std::optional<MaterialId> material;
  std::optional<Place> place;
  std::optional<reservoir::BungKind> bung;  // reservoir only
  std::optional<PartId> bung_part;          // the part of the catalog that is the bung
  std::optional<bool> welded_in;            // false: the bung is still to be bought and welded in
  std::optional<Length> bung_length;        // end to end of the bung's body
  std::optional<Length> projects;           // of its lower end into the reservoir, under the lid's inside
  std::optional<Length> face_height;        // of the open face, above the reservoir's inside floor
  std::optional<LidSpot> at;                // of a bung in the lid
  std::optional<Length> opens_at;           // table only: where the water comes in, above the table's floor
  std::optional<Length> crest;              // table only: highest point of a pipe over the rim, above the table's floor
};

struct Sheet {
  std::string written;  // "10 ga steel", as the person wrote it
  Length thickness{};
  std::optional<Length> least;  // that the mill may deliver, where it is written as a gauge
  std::string metal;            // a name that reservoir::find_sheet_metal knows
};

struct Supports {
  std::optional<reservoir::SupportLayout> layout;
  std::optional<double> solid_fraction;  // share of the inside that supports and baffles fill
  std::optional<bool> floor_carried;     // it lies flat on what takes its load; else it stands on legs
  std::optional<bool> passages;          // for water and air through the baffles, at floor and lid; false: tight
};

struct JobReservoir {
  Length length{};
  Length width{};
  Length height{};
  Sheet sheet;
  std::optional<Stress> yield;
  std::optional<Stress> ultimate;
  std::optional<Length> corrosion_allowance;  // of the sheet's thickness, that may rust away
  Supports supports;
  std::optional<Length> charge;           // depth of the water put in
  std::optional<Length> obstacle_height;  // of what lies on the floor under the riser
  std::optional<bool> lid_closed;         // welded shut already
  std::vector<JobPort> ports;
};

struct JobTable {
  Length length{};
  Length width{};
  Length depth{};         // wanted
  Length floor_height{};  // above the reservoir's inside floor
  std::optional<Length> rim;
  std::optional<double> solid_fraction;  // share of the water's place that slats and grates fill
  std::vector<JobPort> ports;
};

struct JobRiser {
  std::optional<std::string> bung;       // name of the reservoir port that it hangs in
  std::optional<std::string> pipe_size;  // "1": nominal
  std::optional<MaterialId> material;
  std::optional<Length> clearance;
  std::optional<Length> headroom;  // free height above the bung
  bool foot_valve = false;         // under its end
};

/// A device that closes the far end of a connection: a gauge, a relief valve, a drain cock.
struct EndDevice {
  std::string words;
  std::vector<PartId> parts;  // what the words match; not empty
};

/// One of several far ends of a connection that branches: a port, or a device that closes it.
struct JobBranch : chain::WayRules {
  std::string name;
  std::string to;  // name of a port; empty: `ends_in`
  std::optional<EndDevice> ends_in;
  std::vector<chain::Avoidance> avoided;
  std::optional<bool> feeds;  // air or water comes in by it
  std::optional<chain::Freedom> freedom;
  bool special_order = false;  // of the device
};

/// What is asked of its run is told in the words of chain/ask/askable.h; what is left out is not asked, or assumed.
struct JobConnection : chain::RunRules {
  std::string name;
  std::string from;                 // name of a port
  std::string to;                   // name of a port; empty: `ends_in` or `branches`
  std::vector<JobBranch> branches;  // two to eight, or none
  std::optional<EndDevice> ends_in;
  std::optional<Service> carries;
  std::optional<chain::Freedom> from_freedom;
  std::optional<chain::Freedom> to_freedom;
  std::optional<chain::Order> order;
  std::optional<Length> gap;                          // between the two ports' faces, along the run
  std::optional<Length> offset;                       // between their axes
  std::optional<Length> hose_length;                  // of each hose in the chain
  bool tells_of_vacuum = false;                       // `vacuum`, yes or no, is the job's own word
  std::optional<std::vector<chain::TakenPart>> take;  // the run that was chosen, in place of the best
};

struct JobAir {
  std::optional<VolumeFlow> delivery;  // free air, from the compressor's plate; none: not given
  std::optional<Volume> receiver;
  std::optional<GaugePressure> receiver_pressure;
  std::optional<GaugePressure> regulator_range;               // full scale
  std::optional<PressureDifference> regulator_repeatability;  // plus or minus, of what it comes back to
  std::optional<GaugePressure> set_pressure;
  std::optional<double> droop;
  std::optional<VolumeFlow> rated_flow;      // of the regulator: free air, wide open
  std::optional<GaugePressure> lock_up;      // rise of its outlet over the setting until it shuts tight
  std::optional<Length> feed_bore;           // smallest bore between receiver and regulator
  std::optional<Length> restrictor;          // bore of a drilled hole right before the regulator
  std::optional<GaugePressure> check_valve;  // that opens a check or foot valve
  std::vector<JobPort> ports;
};

struct JobVent {
  std::optional<Length> bore;
  std::optional<int> count;
  bool stays_open = false;  // while nothing is lifted
  bool purged = false;      // the air space, before work begins
};

/// Of the job's relief valves, from the maker's sheet.
struct JobReliefValve {
  std::optional<PressureDifference> tolerance;  // plus or minus, of the set pressure
  std::optional<PressureDifference> rise;       // over the pressure at which it opens
};

/// What is cut, ground or cast over the reservoir and is not harmless there.
struct Cutting {
  bool aluminium = false;
  bool magnesium = false;
  bool aluminium_lithium = false;
};

struct Liquid {
  std::string name = "water";
  double glycol = 0.0;  // share of propylene glycol by volume, 0 to 0.1
  bool flammable = false;
};

struct Wishes {
  std::optional<Time> fill_time;
  std::optional<Price> cost_cap;
  std::optional<chain::Order> order;  // for every connection that does not say its own
};

struct Job {
  /// The catalog with the job's own prices and hand-measured parts in it, where it has any. It has all the rows of the
  /// catalog that the job was read against, under the same numbers.
  std::shared_ptr<const Catalog> own_catalog;
  std::string name;
  UnitSystem units = UnitSystem::inch;
  JobReservoir reservoir;
  JobTable table;
  JobRiser riser;
  std::vector<JobConnection> connections;
  JobAir air;
  JobVent vent;
  JobReliefValve relief_valve;
  std::optional<Temperature> water_temperature;
  std::optional<Temperature> hottest;  // that the water gets
  std::optional<Temperature> coldest;  // of the place where it stands
  AgainstHeat against_heat;            // how hot water is handled
  AgainstFrost against_frost;
  std::optional<Length> altitude;
  std::optional<GaugePressure> test_pressure;
  Cutting cutting;
  Liquid liquid;
  std::optional<Time> measured_fill_time;  // by the clock, beside what is worked out
  Bin bin;                                 // all that the shop has, of whichever bin
  std::vector<catalog::NamedBin> bins;     // where it lies, in the order in which they are emptied
  Wishes wishes;
};

/// The port of that name, wherever it is; nullptr: there is none.
const JobPort* find_port(const Job& job, const std::string& name);
/// The port of that name among these; nullptr: it is none of them.
const JobPort* port_named(const std::vector<JobPort>& ports, const std::string& name);
/// The reservoir port that the riser hangs in: named, or where water leaves for the table; nullptr: none is given.
const JobPort* riser_bung(const Job& job);

}  // namespace riserun::plan
