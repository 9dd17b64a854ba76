// The plan: all that Riserun works out from a job. A plain value, made once by make_plan and never changed; it holds
// the catalog that it was made with (the user's measured parts and prices in it), so that it can be shown from any
// thread. What it says are facts and quantities, for whoever prints or draws them in the units asked for: the job's own
// units change nothing in it.
#pragma once

#include "catalog/catalog.h"
#include "chain/ask/answer.h"
#include "chain/ask/assembly.h"
#include "plan/job/job.h"
#include "plan/leak_test.h"
#include "plan/lid_map.h"
#include "plan/remarks.h"
#include "plan/shopping_list.h"
#include "plan/way.h"
#include "plan/work.h"
#include "quantity/quantities.h"
#include "reservoir/box.h"
#include "reservoir/box_panels.h"
#include "reservoir/riser.h"
#include "reservoir/stay_bars.h"
#include "reservoir/stay_spacing.h"
#include "reservoir/support_loads.h"
#include "reservoir/walls.h"
#include "transfer/transfer.h"

#include <cstdint>
#include <memory>
#include <optional>
#include <string>
#include <variant>
#include <vector>

namespace riserun::plan {

/// Worst of what is open. Ready: nothing is.
enum class Verdict : std::uint8_t { ready, not_yet, refused };

/// The bore that a run was to have, where nothing that may be used has it.
struct MissedBore {
  Length least{};
  double share_of_riser = 0.0;
  quantity::Fact mend;
  std::optional<Length> longer_gap{};  // in which a run of that bore has room, where the gap is what is in its way
};

/// A run that does not come out at the gap that the job gives, and by more than its threads give.
struct MissedGap {
  bool too_long = false;
  bool by_hose = false;  // what is too short is the hose that the job gives
  Length off{};
  std::optional<Length> hose_takes{};  // the gap has no room for a hose: what the run with the shortest takes
  // Of a gap with no room for what was asked:
  bool rigid_fits = false;  // a shorter run without a hose has room
  bool hose_fits = false;   // a hose in place of the rigid run has
};

/// A hose that cannot take the offset within its gap.
struct TightHose {
  Length offset{};
  Length radius{};       // that no bend of it is under
  Length least_gap{};    // that takes the offset
  Length most_offset{};  // that the gap takes; zero: none
  quantity::Fact mend;
};

/// A hose to an inlet in the table's side or over its rim, and the height that it goes up to it; or between two ports
/// in the reservoir's sides.
struct HoseRise {
  Length rise{};
  Length least{};         // of the hose: the rise and the bend into the inlet, to the next inch
  bool short_of = false;  // the hose that the job gives does not come up so far
  bool guessed = false;   // the job gives none: the way round the table's edge is the least that it goes
  bool same_wall =
      false;  // it comes out of the reservoir's sides and goes back into them: `rise` is what it goes along
};

/// A connection with one far end or with several.
struct ConnectionPlan {
  std::string name;
  std::string from;               // name of the port
  std::string to;                 // name of the port or of the device at the far end; of several, one after the other
  std::vector<std::string> ends;  // the same one by one
  Service service = Service::water;
  chain::ChainRequest request;  // as it was asked, with what was left of the bin; with several ends, `branched->rules`
  std::optional<chain::AssemblyRequest> branched;  // with several ends
  std::variant<chain::Run, chain::NoChain, chain::NoAssembly> answer;
  std::optional<PartId> ends_in;    // the device at the one far end
  std::optional<Length> gap;        // as given; the chain's length stands in the answer
  bool gap_assumed = false;         // a height that it was worked out of was not given
  std::optional<chain::Span> span;  // the distance that the chain was asked to make
  Length run_length{};              // from port to port, with the hose as it lies
  Length run_tolerance{};           // plus or minus, from the threads
  std::optional<MissedBore> missed_bore;
  std::optional<MissedGap> missed_gap;
  std::optional<TightHose> tight_hose;
  std::optional<HoseRise> hose_rise;
  std::optional<Length> hose_length;  // of each piece sold by the length in the chain, given or assumed
  int hose_joints = 0;                // hose ends that carry a clamp or two
  int clamps = 0;
  quantity::Facts cautions;  // the run's own and those that the job adds

  const chain::Run* run() const { return std::get_if<chain::Run>(&answer); }
  const chain::Chain* chain() const { return branched ? nullptr : run(); }
  const chain::Assembly* assembly() const { return branched ? run() : nullptr; }
  const chain::NoChain* none() const { return std::get_if<chain::NoChain>(&answer); }
  const chain::NoAssembly* no_assembly() const { return std::get_if<chain::NoAssembly>(&answer); }
};

/// A bushing tapped from both sides, and the wider weld coupling that it is screwed into from above.
struct RiserBushing {
  PartId part;
  std::string large;               // nominal size of its outer thread, and of the coupling
  std::string small;               // of its inner threads, the riser's and the run's above
  Length length{};                 // of the bushing, end to end
  Length goes_in{};                // how far its lower end stands under the coupling's upper face, made up
  std::optional<PartId> coupling;  // nullopt: the catalog has none
};

struct RiserPlan {
  std::string bung;          // name of the port; empty: assumed
  Length bung_projection{};  // of the bung's lower end under the lid's inside, whatever holds the riser in it
  Length bung_face{};        // of what the run above meets, over the lid's inside: bung's or bushing's upper face
  std::optional<RiserBushing> bushing;  // that it hangs in
  reservoir::RiserRequest request;
  reservoir::Riser riser;
  std::string size;                  // nominal pipe size
  std::optional<PortTypeId> thread;  // that is cut on its upper end
  std::optional<MaterialId> material;
  std::optional<chain::Run> holder;  // of a riser smaller than its bung: from the bung's lower thread down to it
  std::optional<PartId> stock_part;  // the nipple that it is cut from
  bool stock_from_bin = false;
  std::optional<PartId> uncut_part;  // the nipple that serves as it is
  bool uncut_from_bin = false;
};

/// Depths are above the reservoir's inside floor or above the table's floor.
struct Levels {
  Length charge_depth{};  // water down
  Volume charge{};
  Length charge_mark_below_lid{};  // where the charge line is marked, from the lid's inside down
  Volume capacity{};
  Volume ullage_at_charge{};
  double ullage_fraction = 0.0;
  Volume need{};                // table at its wanted depth
  Volume usable{};              // from the charge down to the riser's end and its margin
  Volume heel{};                // below the riser's end
  Length uncover_margin{};      // water kept over the riser's end: the dip of the surface at a usual flow
  Length spare{};               // water down: what is there beyond what a fill takes; zero where it is short
  Length days_loss{};           // the same water, as a day's evaporation and splash off the table
  Length top_up_mark{};         // water down: below this a fill uncovers the riser
  Length reservoir_depth_up{};  // water up: what stands in the reservoir
  Length table_depth{};         // water up
  Length rim{};
  Volume rim_capacity{};
  Volume line_volume{};           // water that stands in riser and chain
  bool enough = true;             // usable >= need
  bool can_overflow = false;      // usable > rim capacity
  Length self_limiting_charge{};  // charge at which the riser uncovers before the table overflows
  Length least_charge{};          // that leaves a day's losses over the riser's end, on the rule
  Length rim_for_least{};         // that holds all of it, on the rule
  bool least_overflows = false;   // of that least charge more goes up, left alone, than the table holds to its rim
  Length inlet_height{};          // where the water comes into the table, above its floor: of a pipe over the rim its
                                  // highest point
  std::optional<Length> mouth_height{};  // of a pipe over the rim: where it ends, above the table's floor
  Length lift_start{};                   // height between the two surfaces when the fill starts
  Length lift_full{};                    // ... and when the table is at its depth
};

/// A pipe over the rim drains as a siphon, once it is full of water and as long as its end is covered.
struct SiphonPlan {
  Length crest{};  // above the table's floor
  Length mouth{};
  bool covered = false;  // the mouth, with the table at its depth
};

/// Water over the riser's end when the fill ends, and what it should be.
struct RiserMargin {
  VolumeFlow flow{};  // then
  Velocity velocity{};
  Length left{};
  Length dip{};     // least: the surface dips into a quiet mouth
  Length intake{};  // what is asked of the intakes of full-size pumps
};

/// The fountain when the water first comes up through the table's floor.
struct JetPlan {
  Velocity velocity{};
  Length height{};  // over the inlet: of the mean velocity
  Length most{};    // ... of the middle of the stream
  Length rim{};     // over the inlet
};

/// What the vent does to the time in which the table drains.
struct VentPlan {
  Time unthrottled{};            // that it takes with nothing in the air's way out
  std::optional<PartId> enough;  // a valve wide enough for a vent of its own size; only of a vent that is not
  Time with_enough{};            // that it takes with that one
};

struct TransferPlan {
  std::string missing_run;  // connection that should carry the water and does not go together: plain pipe stands for it
                            // in the equations, and no time is a promise; empty: none is missing
  transfer::System system;  // with the setting below
  transfer::Start start;
  Length wanted_depth{};  // of the table
  transfer::Fill fill;
  transfer::Drain drain;
  transfer::Start when_up;               // where draining starts
  std::optional<VentPlan> vent;          // none: the table does not drain, or by a siphon
  Length film{};                         // over the inlet, to which the table is counted as drained
  Length thinnest_film{};                // that stays on a floor that is well wetted
  Length oily_film{};                    // ... on an oily or painted one
  std::optional<Time> to_thinnest_film;  // none: it does not come to that
  Volume left_in_table{};                // what stays in the table after draining: with the thinnest film
  Volume left_if_oily{};                 // ... with the oily one
  std::optional<SiphonPlan> siphon;
  RiserMargin margin;
  std::optional<JetPlan> jet;       // of an inlet in the floor
  std::optional<Time> refill_time;  // that the compressor takes for the air of a fill; none: no compressor
  GaugePressure setting;            // of the regulator: given or recommended
  bool setting_given = false;
  GaugePressure least_setting;                     // on the dial, that finishes the fill
  GaugePressure usual_setting;                     // that is worked out where the job gives none and wishes for no time
  Fact setting_basis;                              // why this setting
  GaugePressure in_use;                            // that the walls are to stand without a failure: the setting that is
                                                   // wanted, or what the first of the relief valves lets it come to
  GaugePressure highest_setting;                   // what walls and regulator allow
  std::optional<GaugePressure> relief_stays_shut;  // setting up to which the job's relief valves do, the knob off
  PressureDifference knob_off{};                   // by what its gauge may be, and what the regulator comes back to
  std::optional<GaugePressure> setting_for_wish;   // that fills in the wished time; none: nothing wished or none does
};

/// A place on the way of the air.
struct AirPlace {
  std::string name;
  Length bore{};  // zero: the regulator's seat
  GaugePressure before;
  GaugePressure behind;
  bool before_regulator = false;
};

/// Where the air's pressure goes: from the receiver to the reservoir, at the greatest flow of the fill.
struct AirPlan {
  VolumeFlow greatest_flow{};    // free air
  std::vector<AirPlace> places;  // in the order in which the air meets them
  PressureDifference droop{};    // of the regulator at its rated flow
  PressureDifference lock_up{};  // its rise over the setting until it shuts tight
  VolumeFlow rated_flow{};
};

/// The row of stays that pays most.
struct NextStay {
  std::string what;                   // "one more baffle across the length"
  reservoir::SupportLayout supports;  // with it in
  GaugePressure limit_before;         // of the whole reservoir
  GaugePressure limit_after;
  std::string panel;  // that governs then, and its measures
  Length length{};
  Length width{};
};

/// Cropped corners of the baffles: how long each leg is.
struct Passages {
  Length at_floor{};
  Length at_lid{};
  bool assumed = false;
};

/// Mouse-holes at the foot of the bars that stand on the floor, one in every bay: limber holes, in a ship.
struct MouseHoles {
  Length along{};
  Length height{};
};

struct WallsPlan {
  reservoir::SheetMetal metal;
  std::vector<reservoir::Panel> panels;
  reservoir::WallCheck at_set;  // at the greatest air pressure of the fill
  GaugePressure limit;          // air pressure that the weakest panel may see
  GaugePressure four_to_one;    // at which the factor on yield is reservoir::kAirLiftFactor
  double factor_at_set = 0.0;   // on yield
  double factor_at_set_on_ultimate = 0.0;
  GaugePressure full_supply;  // receiver or main, with the regulator failed open and no other way out
  double factor_at_full_supply = 0.0;
  double factor_at_full_supply_on_ultimate = 0.0;
  Force lid_force{};  // at the set pressure
  std::optional<NextStay> next_stay;
  std::optional<reservoir::StayedSurface> stayed;  // where single stays make a grid
  std::optional<PressureDifference> stayed_limit;  // by the stayed-surface rule, where single stays make a grid
  std::optional<GaugePressure> span_limit;         // ... of it the air's, less the water on the floor
  std::string weakest;                             // what the limit is of: a panel, or the span between posts
  GaugePressure loads_at;                 // of the loads and the weld: the walls' limit, or a setting that passes it
  reservoir::SupportLoads loads;          // on stays and baffles of the lid
  std::vector<reservoir::StayBars> bars;  // that divide the walls beside the baffles, strong enough for loads_at
  Length weld_throat{};        // of the row of supports that carries most; without rows of the seam round the lid
  GaugePressure vacuum_limit;  // below the atmosphere, the reservoir empty; a positive number
  Temperature warmest;         // shut then, and cooled to the coldest, the moist air space comes to:
  Temperature coldest;
  std::optional<PressureDifference> cooling_vacuum;      // below the atmosphere; none: the riser lets air in
  std::optional<reservoir::StaySpacing> stays_for_use;   // where the walls do not stand what they see in use
  std::optional<reservoir::StaySpacing> stays_for_four;  // where that is not four times within the yield
  std::optional<Passages> passages;                      // through the baffles
  std::optional<MouseHoles> mouse_holes;                 // through the bars on the floor
};

/// A relief valve of the job as it stands in its way, with the regulator failed and the riser stopped.
struct ReliefValve {
  std::string connection;
  GaugePressure opens;      // as it is marked
  GaugePressure full_flow;  // opening at the most that its tolerance allows, and the rise to full flow on top
  Length own_bore{};
  Length bore{};         // the narrowest place, its own or its way's
  VolumeFlow passes{};   // free air, at full_flow
  VolumeFlow supply{};   // that the supply gives then, through the feed's narrowest place
  Length restrictor{};   // on the supply side: caps that at what it passes
  Length needed_bore{};  // of the valve: passes what the supply gives
};

/// A restrictor before the regulator that keeps a failed regulator within the walls' limit, as it can be bought; and
/// the job worked out again with it.
struct RestrictorPlan {
  Length widest{};              // bore that just does
  PartId part;                  // with the next smaller hole that is sold
  Length bore{};                // its hole
  GaugePressure riser_open;     // the greatest pressure with a failed regulator then
  GaugePressure riser_stopped;  // ... nothing leaves but by the relief valves of the job
  Time fill_time{};
};

struct ReliefPlan {
  bool given = false;          // a connection of the job ends in a relief valve
  GaugePressure set_pressure;  // of the relief valve: of the job's that opens first, or to buy
  VolumeFlow must_pass{};      // free air: all that the supply gives through the feed
  std::optional<GaugePressure> failed_regulator_pressure;  // that the ullage reaches with the riser open
  std::optional<Length> restrictor_bore;     // before the regulator: keeps that within the limit; to be bought
  std::optional<RestrictorPlan> restrictor;  // the same with what comes of it
  std::optional<Length> valve_bore;          // that passes the supply at the relief pressure
  std::vector<ReliefValve> valves;           // of the job
  GaugePressure held;                        // what the valves hold, the regulator failed and the riser stopped
  GaugePressure greatest;           // that can occur with what is in the job: that, and no less than the setting
  double factor_at_greatest = 0.0;  // on yield
  Force lid_force_at_greatest{};
};

/// A way out of the reservoir or of the table with a valve of its own: how the water runs out by it with nothing but
/// its own weight behind it.
struct DrainPlan {
  std::size_t way = 0;  // row of Plan::ways
  bool of_table = false;
  Length full{};  // depth of the water when it is opened
  Length held{};  // of water over the way's mouth, that opens the check valve on it; as much as `full`: nothing does
  std::optional<PartId> check;       // that holds it
  std::optional<PartId> restrictor;  // the narrowest on the way
  Length left_at{};                  // depth to which it runs full, or to a film that shows
  Length
      stays_at{};  // depth at which it stops: of a mouth in the reservoir's side its lower lip, to which it dribbles on
  Volume left{};   // that stays then
  std::optional<Time> time;  // to `left_at`; none: nothing comes out
};

struct Plan {
  std::shared_ptr<const Catalog> catalog;
  Job job;
  Verdict verdict = Verdict::ready;
  std::vector<Finding> findings;  // what is open, the refused first
  std::vector<Assumption> assumptions;
  std::vector<ConnectionPlan> connections;  // those with one far end, then those with several
  std::vector<Way> ways;                    // through them
  std::vector<DrainPlan> drains;            // those of them that let the water out
  RiserPlan riser;
  Levels levels;
  hydraulics::Line line;                        // riser's lower end to the table
  std::optional<std::size_t> water_connection;  // row of connections that the line runs through
  TransferPlan transfer;
  AirPlan air;
  WallsPlan walls;
  LidMap lid_map;
  ReliefPlan relief;
  LeakTestPlan leak_test;
  ShoppingList list;
  WorkPlan work;
  std::vector<Caution> cautions;
  std::vector<Note> notes;
};

/// The connection of that name, as a way has it; nullptr: there is none.
const ConnectionPlan* connection_named(const std::vector<ConnectionPlan>& connections, const std::string& name);

/// Works the whole job out. Bad input was refused by load_job already; what cannot be done, or not yet, is a Finding in
/// the plan.
/// @pre the job was read against this catalog
Plan make_plan(std::shared_ptr<const Catalog> catalog, Job job);

/// What is open in the plan of a job, its mends as they are proposed: none has been followed, which is most of the work
/// of make_plan.
/// @pre the job was read against this catalog
std::vector<Finding> findings_of(std::shared_ptr<const Catalog> catalog, Job job);

}  // namespace riserun::plan
