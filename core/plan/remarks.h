// What a plan says beside its figures: what was assumed, what must be watched, what is worth knowing, and why something
// cannot be done. Each stage of the plan adds its own, in the order in which they are printed. All of it are facts:
// core/report puts them into words.
#pragma once

#include "catalog/ids.h"
#include "plan/job/job.h"
#include "quantity/fact.h"
#include "reservoir/box_panels.h"

#include <cstdint>
#include <optional>
#include <string>
#include <vector>

namespace riserun::plan {

using quantity::fact;
using quantity::Fact;

/// What stands in for something that the job leaves out: what it is, the value taken, and why that one.
struct Assumption {
  Fact fact;
  std::string key;  // where the job would say it, "riser.material", "connections[2].gap"; empty: nowhere
};

/// The part of the plan that a caution, a note or a finding belongs to and is printed with.
/// `whole_job` stands before any figure; `care` is for the shop's daily use and stands last.
enum class Topic { whole_job, connections, riser, levels, transfer, walls, relief, leak_test, list, care };

struct Caution {
  Topic where = Topic::whole_job;
  Fact fact;
  std::string source;     // a standard, a report, or "common practice"
  bool standing = false;  // goes with every plan, whatever is in it
};

struct Note {
  Topic where = Topic::whole_job;
  Fact fact;
};

/// What was asked for, and beside it what may be; nullopt: nothing may.
struct Against {
  quantity::Value asked;
  std::optional<quantity::Value> allowed;
};

enum class Severity : std::uint8_t {
  refused,  // it cannot work, or must not be done
  not_yet,  // it works, but what must be there before air goes in is not in the job
};

/// What is missing and goes on the list, though no connection of the job asks for it.
struct Purchase {
  std::string id;
  std::string name;
  Fact measure;
  std::optional<catalog::PartId> part{};  // of the catalog, that is it
};

/// The key of a change that no key of a job says: each relief valve for the same one with that setting.
inline constexpr const char* kReliefSetting = "relief valve that opens at";
/// Another: each regulator that a need names for one of that range.
inline constexpr const char* kRegulatorOfRange = "regulator of range";
/// A restrictor with a hole up to that in the run, before the regulator that it names.
inline constexpr const char* kRestrictorInRun = "restrictor before the regulator";
/// The supports as a whole, and the sheet of another thickness, by its least.
inline constexpr const char* kSupports = "supports";
inline constexpr const char* kSheetThickness = "sheet of at least";
/// The device of the connection of that name is the part, on a bung of the part's own size.
inline constexpr const char* kDeviceOf = "device of";
/// The same of the branch of that name: its thread is none of a bung, so it alone changes.
inline constexpr const char* kDeviceOfBranch = "device of the branch";
/// A connection more that leads from the reservoir's port of that name, and ends in the part.
inline constexpr const char* kDeviceOn = "device on";
/// The connection of that name is left out; of a branched one all but the first way to the table. Ports that nothing is
/// on then end in plugs.
inline constexpr const char* kLineLeftOut = "line left out";
/// The connection of that name needs the part, too, on the reservoir's side of its regulator.
inline constexpr const char* kNeedOf = "need of";
/// The connection of that name takes parts that a store must order.
inline constexpr const char* kSpecialOrderIn = "ordered specially in";
/// The connection of that name needs no check valve.
inline constexpr const char* kCheckLeftOut = "check valve left out";
/// The connection of that name needs the part no more.
inline constexpr const char* kNeedLeftOut = "need left out";
/// The port of that name: of the reservoir into its lid, of the table into its floor.
inline constexpr const char* kPortIntoLid = "port into the lid";
inline constexpr const char* kPortIntoFloor = "port into the floor";
/// The reservoir is so high inside; what stands in its lid goes with that.
inline constexpr const char* kReservoirHeight = "reservoir of height";
/// The table and the faces of its ports stand so much higher.
inline constexpr const char* kTableHigher = "table higher by";
/// The riser hangs in a double-tapped bushing in that port of the reservoir.
inline constexpr const char* kRiserInBushing = "riser in a bushing";
/// The bung of that name stands at another place of the lid.
inline constexpr const char* kBungAt = "at";

/// What a mend changes in the job, in the job's own words; see advice/change.h.
struct Change {
  std::string key;                        // "air.set pressure"; "connections": one more, that ends in the part;
                                          // kReliefSetting and its like
  quantity::Value value{};                // empty text: the key is left out
  std::optional<catalog::PartId> part{};  // of the new connection, of kDeviceOf and its like, kNeedOf,
                                          // kNeedLeftOut
  std::optional<reservoir::SupportLayout> supports{};  // of kSupports
  std::optional<LidSpot> spot{};                       // of kBungAt

  bool operator==(const Change&) const = default;
};
using Changes = std::vector<Change>;

/// What to buy or change.
struct Mend {
  Fact fact;
  /// The mend as changes of the job: each row is one way to follow it. Empty: the job has no words for it.
  std::vector<Changes> ways_to_mend{};
  /// The same where no key says it (kReliefSetting and its like); the window writes those that it has words for.
  std::vector<Changes> ways_to_try{};
  std::vector<Purchase> buys{};  // where it takes the place of the finding's own mend, which buys other things
};

/// What is open: why the job must not go ahead as asked, or what must be bought, changed or said first.
struct Finding {
  Topic where = Topic::whole_job;
  Fact reason;
  std::optional<Against> numbers;  // where there are two to set side by side
  std::optional<Fact> mend;        // what to buy or change: the smallest change that lifts it
  Severity severity = Severity::refused;
  std::string source{};  // a standard, "common practice"; empty: it speaks for itself
  std::optional<Purchase> buy{};
  std::vector<Changes> ways_to_mend{};  // as those of Mend
  std::vector<Changes> ways_to_try{};
  std::vector<Mend> or_else{};       // tried in turn where the mend does not help or cannot be tried
  std::vector<Purchase> also_buy{};  // for what a mend opens and takes along
};

struct Remarks {
  std::vector<Assumption> assumptions;
  std::vector<Caution> cautions;
  std::vector<Note> notes;
  std::vector<Finding> findings;

  void assume(Fact fact, std::string key = "");
  void caution(Topic where, Fact fact, std::string source);
  void standing_caution(Topic where, Fact fact, std::string source);
  void note(Topic where, Fact fact);
  /// What its severity is: refused.
  /// @return the finding as it stands in the list, until the next one
  Finding& refuse(Finding finding);
};

}  // namespace riserun::plan
