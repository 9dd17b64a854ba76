// Jobs that no fitter could build: each is refused at its place, and what just can be is not.
#include "plan/job/read_job.h"
#include "unit/plan/judge/ready_job.h"

#include <gmock/gmock.h>

namespace riserun::plan {
namespace {

using testing::HasSubstr;
using testing::StartsWith;

std::string said_of(const std::string& text) {
  try {
    read_job(*shipped_catalog(), text, "job.yaml");
  } catch (const InputError& error) {
    return error.what();
  }
  return "";
}

struct Slip {
  const char* name;
  const char* from;   // of the ready job; empty: `wrong` stands at its end
  const char* wrong;  // in its place
  const char* place;
  const char* said;
  const char* right;  // in its place, just inside; it loads
};

/// The ready job, its gap not measured.
const std::string& unmeasured() {
  static const std::string job = with(kReady, "gap: 14-3/8 in, ", "");
  return job;
}

class Impossible : public testing::TestWithParam<Slip> {};

TEST_P(Impossible, IsRefusedAtItsPlaceAndWhatJustCanBeIsNot) {
  const Slip& row = GetParam();
  const auto job = [&](const char* to) {
    return *row.from == '\0' ? unmeasured() + to + "\n" : with(unmeasured(), row.from, to);
  };
  EXPECT_THAT(said_of(job(row.wrong)), testing::AllOf(StartsWith(row.place), HasSubstr(row.said)));
  EXPECT_EQ(said_of(job(row.right)), "");
}

// A drain from the table back into the lid, named before the run that goes up, hangs no riser; nor does a coupling that
// ends in the lid where another reaches through it.
TEST(RiserBung, IsThatOfTheRunUpInWhateverOrderTheRunsStand) {
  const auto bung_of = [](const std::string& other, const char* runs) {
    std::string text = with(unmeasured(), "riser: {bung: riser bung}\n", "");
    text = with(text, "    vent bung: 1/2 FNPT\n", "    vent bung: 1/2 FNPT\n    other: " + other + "\n");
    text = with(text, "connections:\n", "connections:\n  - {name: first, " + std::string(runs) + ", carries: water}\n");
    return riser_bung(read_job(*shipped_catalog(), text, "job.yaml"))->name;
  };
  EXPECT_EQ(bung_of("1 FNPT", "from: outlet, to: other"), "riser bung");
  EXPECT_EQ(bung_of("{port: 1 FNPT, bung: half coupling}", "from: other, to: outlet"), "riser bung");
  EXPECT_EQ(bung_of("{port: 1 FNPT, bung: full coupling}", "from: other, to: outlet"), "other");
}

// The riser hangs where the run to the table leaves, whether the job names its bung or not.
TEST(Impossible, AirUpARiserThatNobodyNames) {
  const std::string unnamed = with(unmeasured(), "riser: {bung: riser bung}\n", "");
  EXPECT_EQ(said_of(unnamed), "");
  const std::string said = said_of(with(unnamed, "to: inlet, carries: water", "to: inlet, carries: air"));
  EXPECT_THAT(said,
              StartsWith("job.yaml:33:60: error: connections[1].carries: a run from the riser's bung to the table "
                         "carries water; allowed: water [wrong_value]"));
  // Beside a run of water one of air is another's matter.
  const std::string both = with(unnamed, "    vent bung: 1/2 FNPT\n", "    vent bung: 1/2 FNPT\n    spare: 1 FNPT\n");
  EXPECT_EQ(
      said_of(with(both, "vent: {bore: 1/2 in}\nconnections:\n",
                   "vent: {bore: 1/2 in}\nconnections:\n  - {name: other, from: spare, to: outlet, carries: air}\n")),
      "");
}

constexpr const char* kAirBung = "air bung: {port: 1/2 FNPT, where: lid}";
constexpr const char* kRiserBung = "riser bung: {port: 1 FNPT, bung: full coupling, where: lid}";
constexpr const char* kInlet = "inlet: {port: 1 FNPT, where: floor}";
constexpr const char* kWater = "need: [union], held: {from: fixed, to: fixed}}";

INSTANTIATE_TEST_SUITE_P(
    Job, Impossible,
    testing::Values(
        Slip{"LidBungAboveItsBox", kAirBung, "air bung: {port: 1/2 FNPT, where: lid, face height: 26.1 in}",
             "job.yaml:10:57: error: ",
             "the face of a bung in the lid cannot be 26-1/8 in over the inside floor of a box 14 in high; allowed is "
             "14 in to 26 in, or give its 'bung length'",
             "air bung: {port: 1/2 FNPT, where: lid, face height: 25.9 in}"},
        Slip{"LidBungUnderItsLid", kAirBung, "air bung: {port: 1/2 FNPT, where: lid, face height: 13.9 in}",
             "job.yaml:10:57: error: ", "allowed is 14 in to 26 in",
             "air bung: {port: 1/2 FNPT, where: lid, face height: 14.1 in}"},
        Slip{"BungOfKnownLength", kAirBung,
             "air bung: {port: 1/2 FNPT, where: lid, bung length: 2 in, face height: 16.1 in}",
             "job.yaml:10:76: error: ", "allowed is 14 in to 16 in [wrong_value]\n",
             "air bung: {port: 1/2 FNPT, where: lid, bung length: 2 in, face height: 15.9 in}"},
        Slip{"SideBungOverTheLid", "relief bung: 3/4 FNPT",
             "relief bung: {port: 3/4 FNPT, where: side, face height: 15 in}", "job.yaml:12:61: error: ",
             "bung in a side cannot be 15 in", "relief bung: {port: 3/4 FNPT, where: side, face height: 13 in}"},
        Slip{"BungOffTheLid", kAirBung, "air bung: {port: 1/2 FNPT, where: lid, at: [40-1/16 in, 5 in]}",
             "job.yaml:10:49: error: ", "40-1/16 in is off the lid, whose inside length is 40 in",
             "air bung: {port: 1/2 FNPT, where: lid, at: [36 in, 5 in]}"},
        Slip{"PlaceOnTheLidOfABungInASide", kAirBung,
             "air bung: {port: 1/2 FNPT, where: side, face height: 13 in, at: [5 in, 5 in]}",
             "job.yaml:10:69: error: ", "it is the place of a bung in the lid, and this one is elsewhere",
             "air bung: {port: 1/2 FNPT, where: side, face height: 13 in}"},
        Slip{"BungThatProjectsThroughTheFloor", kAirBung, "air bung: {port: 1/2 FNPT, where: lid, projects: 15 in}",
             "job.yaml:10:54: error: ", "15 in is more than the inside height of 14 in",
             "air bung: {port: 1/2 FNPT, where: lid, projects: 13 in}"},
        Slip{"BungThatIsShorterThanItProjects", kRiserBung,
             "riser bung: {port: 1 FNPT, bung: full coupling, where: lid, projects: 4 in}",
             "job.yaml:9:75: error: ", "4 in is more than the bung's own length of 2-3/8 in; or give its 'bung length'",
             "riser bung: {port: 1 FNPT, bung: full coupling, where: lid, projects: 2-1/4 in}"},
        Slip{"BungThatEndsInTheLid", kRiserBung,
             "riser bung: {port: 1 FNPT, bung: full coupling, where: lid, projects: 2-3/8 in}",
             "job.yaml:9:75: error: ", "it goes through 1/8 in of sheet; at most 2-1/4 in",
             "riser bung: {port: 1 FNPT, bung: full coupling, where: lid, projects: 2-1/4 in}"},
        Slip{"BungWhoseEndsAreFurtherApartThanItIsLong", kRiserBung,
             "riser bung: {port: 1 FNPT, bung: full coupling, where: lid, projects: 3/4 in, face height: 15-3/4 in}",
             "job.yaml:9:96: error: ", "has its upper face 15-5/8 in over the inside floor; allowed is that, 1/16 in",
             "riser bung: {port: 1 FNPT, bung: full coupling, where: lid, projects: 3/4 in, face height: 15-11/16 in}"},
        Slip{"BungWhoseFaceIsFurtherUpThanItIsLong", kRiserBung,
             "riser bung: {port: 1 FNPT, bung: full coupling, where: lid, face height: 20 in}",
             "job.yaml:9:78: error: ", "allowed is 14 in to 16-3/8 in, or give its 'bung length'",
             "riser bung: {port: 1 FNPT, bung: full coupling, where: lid, face height: 16-3/8 in}"},
        Slip{"RiserInTheFloor", kRiserBung, "riser bung: {port: 1 FNPT, bung: full coupling, where: floor}",
             "job.yaml:9:60: error: ", "so it must be in the lid; allowed is lid", kRiserBung},
        Slip{"RiserInASide", kRiserBung, "riser bung: {port: 1 FNPT, bung: full coupling, where: side}",
             "job.yaml:9:60: error: ", "so it must be in the lid; allowed is lid",
             "riser bung: {port: 1 FNPT, bung: full coupling}"},
        Slip{"InletInTheFloorAboveTheRim", kInlet, "inlet: {port: 1 FNPT, where: floor, opens at: 5.1 in}",
             "job.yaml:20:51: error: ", "over the rim of 5 in, where nothing in the floor of the table opens",
             "inlet: {port: 1 FNPT, where: floor, opens at: 4.9 in}"},
        Slip{"CrestUnderTheRim", kInlet, "inlet: {port: 1 FNPT, where: over rim, crest: 4 in}",
             "job.yaml:20:51: error: ", "4 in is under the rim of 5 in",
             "inlet: {port: 1 FNPT, where: over rim, crest: 6 in}"},
        Slip{"InletFaceAboveTheRim", kInlet, "inlet: {port: 1 FNPT, where: side, face height: 35.1 in}",
             "job.yaml:20:53: error: ", "over the rim, which stands 35 in over the reservoir's inside floor",
             "inlet: {port: 1 FNPT, where: side, face height: 34.9 in}"},
        Slip{"InletFaceAboveTheFloorThatItLooksDownFrom", kInlet,
             "inlet: {port: 1 FNPT, where: floor, face height: 30-1/8 in}", "job.yaml:20:54: error: ",
             "over the table's floor, from which 'inlet' looks down; over the reservoir's inside floor that stands 30 "
             "in: allowed is at most that",
             "inlet: {port: 1 FNPT, where: floor, face height: 30 in}"},
        Slip{"InletFaceAboveTheFloorWhereNoPlaceIsSaid", kInlet, "inlet: {port: 1 FNPT, face height: 31 in}",
             "job.yaml:20:40: error: ", "allowed is at most that", "inlet: {port: 1 FNPT, face height: 29 in}"},
        Slip{"HoseMuchShorterThanItsGap", kWater, "need: [hose], gap: 15 in, offset: 58.09 in, hose length: 29 in}",
             "job.yaml:34:124: error: ",
             "29 in is far too short for the 60 in between the two faces; allowed is from 30 in on",
             "need: [hose], gap: 15 in, offset: 58.09 in, hose length: 31 in}"},
        Slip{"GapWiderThanTheHeights", kWater, "need: [union], gap: 16.2 in, held: {from: fixed, to: fixed}}",
             "job.yaml:34:87: error: ",
             "connections[1].gap: 16-3/16 in does not go with the heights of its ports: over the reservoir's inside "
             "floor the face of 'riser bung' is at least 14 in up and that of 'inlet' at most 30 in, which leaves at "
             "most 16 in",
             "need: [union], gap: 16.1 in, held: {from: fixed, to: fixed}}"},
        Slip{"SideBungOnTheFloorsSeam", "relief bung: 3/4 FNPT",
             "relief bung: {port: 3/4 FNPT, where: side, face height: 0 in}", "job.yaml:12:61: error: ",
             "the centre of 'relief bung' in a side cannot stand 0 in over the inside floor of a box 14 in high: its "
             "boss is 1-3/8 in across and is welded all round, clear of the seams of floor and lid; allowed is 1 in to "
             "13 in",
             "relief bung: {port: 3/4 FNPT, where: side, face height: 1 in}"},
        Slip{"SideBungOnTheLidsSeam", "relief bung: 3/4 FNPT",
             "relief bung: {port: 3/4 FNPT, where: side, face height: 13-15/16 in}", "job.yaml:12:61: error: ",
             "allowed is 1 in to 13 in", "relief bung: {port: 3/4 FNPT, where: side, face height: 13 in}"},
        Slip{"PanelWiderThanTheBox", "supports: {baffles across: 2, baffles along: 1}",
             "supports: {widest bare panel: {length: 30 in, width: 21 in}}", "job.yaml:6:33: error: ",
             "a panel of 30 in x 21 in does not fit any wall of the reservoir; allowed is up to the bare lid, 40 in x "
             "20 in",
             "supports: {widest bare panel: {length: 30 in, width: 20 in}}"},
        Slip{"PanelInTheLidWiderThanTheLid", "supports: {baffles across: 2, baffles along: 1}",
             "supports: {widest bare panel: {length: 20.2 in, width: 20.2 in, in: lid}}", "job.yaml:6:33: error: ",
             "does not fit the lid", "supports: {widest bare panel: {length: 20 in, width: 20 in, in: lid}}"},
        Slip{"PanelNarrowerThanTheBaysBesideIt", "supports: {baffles across: 2, baffles along: 1}",
             "supports: {widest bare panel: {length: 10 in, width: 9 in}, floor bays: 2 x 2}", "job.yaml:6:33: error: ",
             "10 in x 9 in is not the widest: the 'floor bays' beside it leave panels of 20 in x 10 in",
             "supports: {widest bare panel: {length: 20 in, width: 10 in}, floor bays: 2 x 2}"},
        Slip{"FloorBaysBesidePosts", "supports: {baffles across: 2, baffles along: 1}",
             "supports: {lid bays: 5 x 3, lid stays: posts, floor bays: 8 x 4}", "job.yaml:6:61: error: ",
             "posts stand on the floor where they hold the lid, so its bays are the lid's; allowed is 5 x 3",
             "supports: {lid bays: 5 x 3, lid stays: posts, floor bays: 5 x 3}"},
        Slip{"PanelOfAnyWallNarrowerThanTheSides", "supports: {baffles across: 2, baffles along: 1}",
             "supports: {widest bare panel: {length: 13 in, width: 10 in, in: any wall}, long side bays: 3 x 1}",
             "job.yaml:6:33: error: ", "the 'long side bays' beside it leave panels of 14 in x 13-5/16 in",
             "supports: {widest bare panel: {length: 13 in, width: 10 in}, long side bays: 3 x 1}"},
        Slip{"FrostByWhatIsWorn", "", "against frost: guards and gloves", "job.yaml:42:16: error: ",
             "against frost: 'guards' does nothing against frost; allowed are drained, heated or antifreeze, and "
             "insulated beside one of them",
             "against frost: drained and insulated"},
        Slip{"HeatByAThickLid", "", "against heat: lid is thick", "job.yaml:42:15: error: ",
             "against heat: 'lid is thick' is no measure that is known against heat; allowed are guarded, insulated, "
             "covered or mixing valve, and gloves beside one of them",
             "against heat: table covered, gloves"},
        Slip{"HeatThatIsDenied", "", "against heat: covered, not guarded", "job.yaml:42:24: error: ",
             "'not guarded' takes back what is to be done against heat", "against heat: covered, no bare hands"},
        Slip{"AirThatNeverReachesTheReservoir", "to: air bung", "to: outlet", "job.yaml:35:40: error: ",
             "never reaches the reservoir; one end must be a port of the reservoir", "to: air bung"},
        Slip{"RiserThatCarriesAir", "to: inlet, carries: water", "to: inlet, carries: air", "job.yaml:34:60: error: ",
             "the riser hangs in 'riser bung', which carries water; air needs a port of its own",
             "to: inlet, carries: water"},
        Slip{"UltimateUnderTheSheetsOwnYield", "charge: 9 in", "ultimate: 29.9 ksi",
             "job.yaml:7:13: error: ", "29.9 ksi is less than the yield of 30 ksi", "ultimate: 30.1 ksi"},
        Slip{"MeasuredLongerThanAnySuchPart", "", "measured: [{part: 1 union black iron, length: 9.6 in}]",
             "job.yaml:42:47: error: ", "no 1 union is 9-5/8 in long; allowed is 1-5/16 in",
             "measured: [{part: 1 union black iron, length: 9.3 in}]"},
        Slip{"MeasuredShorterThanItsMakeUp", "", "measured: [{part: 1 union black iron, length: 1.3 in}]",
             "job.yaml:42:47: error: ", "1-5/16 in (what goes into its joints)",
             "measured: [{part: 1 union black iron, length: 1.4 in}]"},
        Slip{"MeasuredBoreOverTheThread", "", "measured: [{part: 1 union black iron, bore: 1.32 in}]",
             "job.yaml:42:45: error: ", "no 1 union has a bore of 1-5/16 in; allowed is less than",
             "measured: [{part: 1 union black iron, bore: 1.3 in}]"},
        Slip{"MeasuredTwice", "",
             "measured:\n  - {part: 1 union black iron, length: 3 in}\n  - {part: 1 union black iron, bore: 1 in}",
             "job.yaml:44:12: error: ", "'union/black-iron/1' was measured on line 43 already; keep one",
             "measured:\n  - {part: 1 union black iron, length: 3 in}\n  - {part: 1 union brass, bore: 1 in}"},
        Slip{"PricedTwice", "",
             "prices:\n  - {part: 1 union black iron, price: $3}\n  - {part: union/black-iron/1, price: $4}",
             "job.yaml:44:12: error: ", "'union/black-iron/1' has a price on line 43 already; keep one",
             "prices:\n  - {part: 1 union black iron, price: $3}\n  - {part: 1 union brass, price: $4}"},
        Slip{"UnknownMetal", "", "cutting: [steel, unobtainium]", "job.yaml:42:18: error: ",
             "'unobtainium' is no material that is known here; allowed are aluminium, magnesium", "cutting: [steel]"},
        Slip{"MisspeltMetal", "", "cutting: mild stel", "job.yaml:42:15: error: ", "did you mean 'steel'?",
             "cutting: mild steel"},
        Slip{"NoMetal", "", "cutting: [1234]", "job.yaml:42:11: error: ", "'1234' is no material",
             "cutting: [1234 al]"}),
    name_of<Slip>);

TEST(Cutting, ReadsAMetalInAnySpelling) {
  const auto cutting = [](const std::string& words) {
    return read_job(*shipped_catalog(), kReady + ("cutting: [" + words + "]\n"), "job.yaml").cutting;
  };
  for (const char* words : {"ALUMINIUM", "Aluminum", "aluminium 6061", "cast ALUMINUM", "al", "AL plate", "duralumin"})
    EXPECT_TRUE(cutting(words).aluminium) << words;
  for (const char* words : {"MAGNESIUM", "Mg", "mag", "cast magnesium"}) EXPECT_TRUE(cutting(words).magnesium) << words;
  for (const char* words : {"AL-LI", "Aluminium-Lithium", "aluminum lithium alloy"}) {
    EXPECT_TRUE(cutting(words).aluminium_lithium) << words;
    EXPECT_FALSE(cutting(words).aluminium) << words;
  }
  EXPECT_FALSE(cutting("Mild Steel, stainless, GLASS").aluminium);
}

// A run that ends short of its port is a finding where the job gives the gap, and a caution where it was assumed.
struct Gap {
  const char* name;
  const char* asked;
  const char* code;  // empty: nothing is open
};

class MissedGaps : public testing::TestWithParam<Gap> {};

TEST_P(MissedGaps, AreFindings) {
  const Plan plan = plan_of_text(with(unmeasured(), kWater, GetParam().asked));
  const std::string code = GetParam().code;
  if (code.empty()) {
    EXPECT_THAT(open_in(plan), testing::IsEmpty());
    return;
  }
  EXPECT_TRUE(has(plan, code)) << testing::PrintToString(open_in(plan));
  EXPECT_EQ(plan.verdict, Verdict::not_yet);
  for (const Finding& finding : plan.findings) {
    EXPECT_TRUE(finding.mend) << finding.reason.code;
  }
}

// Between held ends nipple, union and nipple come to 2-11/16 in, their threads give 3/8 in.
INSTANTIATE_TEST_SUITE_P(
    Job, MissedGaps,
    testing::Values(
        Gap{"RunShort", "need: [union], gap: 16 in, held: {from: fixed, to: loose}}", "run_short_of_its_gap"},
        Gap{"RunJustShort", "need: [union], gap: 3.1 in, held: {from: fixed, to: loose}}", "run_short_of_its_gap"},
        Gap{"RunThatTheThreadsBringThere", "need: [union], gap: 3 in, held: {from: fixed, to: loose}}", ""},
        Gap{"HoseLengthWithoutAHose", "need: [union], gap: 16 in, hose length: 12 in}", "run_short_of_its_gap"},
        Gap{"HoseShort", "need: [hose], gap: 16 in, hose length: 9 in}", "hose_short_of_its_gap"},
        Gap{"RunLong", "need: [union], gap: 1 in, hose length: 1 in}", "run_beyond_its_gap"},
        Gap{"RunLongToAnEndThatMoves", "need: [union], gap: 1 in, held: {from: fixed, to: loose}}", ""},
        Gap{"RunThatMakesIt", "need: [union], gap: 15-1/2 in, held: {from: fixed, to: fixed}}", ""}),
    name_of<Gap>);

}  // namespace
}  // namespace riserun::plan
