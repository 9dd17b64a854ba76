// Whatever a job leaves out is assumed, and every assumption is in the plan with its value and its reason.
#include "plan/job/read_job.h"
#include "report/words/remark_words.h"
#include "unit/plan/bench_job.h"
#include "unit/plan/shipped.h"

#include <gmock/gmock.h>

namespace riserun::plan {
namespace {

std::optional<report::SaidAssumption> assumption(const Plan& plan, const std::string& what,
                                                 UnitSystem units = UnitSystem::inch) {
  for (const Assumption& row : plan.assumptions)
    if (report::SaidAssumption said = report::say(row, units); said.what == what) return said;
  return std::nullopt;
}

struct LeftOut {
  const char* name;
  const char* what;
  const char* value;
  const char* given;  // the same job with it given, as a line at the end of some map
  const char* from;
};

const Plan& five_things() {
  static const Plan plan = plan_of_text(kFiveThings);
  return plan;
}

class EveryAssumption : public testing::TestWithParam<LeftOut> {};

TEST_P(EveryAssumption, IsPrintedWhenLeftOutAndNotWhenGiven) {
  const LeftOut& row = GetParam();
  const auto left_out = assumption(five_things(), row.what);
  ASSERT_TRUE(left_out) << row.what;
  EXPECT_EQ(left_out->value, row.value);
  EXPECT_FALSE(left_out->why.empty());
  const Job job = read_job(*shipped_catalog(), with(kFiveThings, row.from, row.given), "bench.yaml");
  const Plan given = make_plan(shipped_catalog(), job);
  EXPECT_FALSE(assumption(given, row.what)) << row.what;
}

constexpr const char* kAir = "air: {delivery: 3 scfm}";
constexpr const char* kPanel = "supports: {widest bare panel: {length: 20 in, width: 13 in}}";

INSTANTIATE_TEST_SUITE_P(
    Job, EveryAssumption,
    testing::Values(
        LeftOut{"SolidShare", "room that supports take in the reservoir", "none",
                "supports: {widest bare panel: {length: 20 in, width: 13 in}, solid share: 1 %}", kPanel},
        LeftOut{"UnderTheRiser", "what lies on the floor under the riser", "nothing",
                "sheet: 10 ga steel\n  under the riser: 0 in", "sheet: 10 ga steel"},
        LeftOut{"Lid", "lid", "not yet welded on", "sheet: 10 ga steel\n  lid: open", "sheet: 10 ga steel"},
        LeftOut{"TableSolidShare", "room that slats take under water in the table", "none",
                "depth: 4 in\n  solid share: 0", "depth: 4 in"},
        LeftOut{"Rim", "height of the table's rim", "5 in", "depth: 4 in\n  rim: 6 in", "depth: 4 in"},
        LeftOut{"Yield", "yield strength of the sheet", "30 ksi", "sheet: 10 ga steel\n  yield: 36 ksi",
                "sheet: 10 ga steel"},
        LeftOut{"Ultimate", "ultimate strength of the sheet", "45 ksi", "sheet: 10 ga steel\n  ultimate: 60 ksi",
                "sheet: 10 ga steel"},
        LeftOut{"LeastOfGauge", "thickness of the sheet", "0.1265 in", "sheet: 0.131 in steel", "sheet: 10 ga steel"},
        LeftOut{"CorrosionAllowance", "corrosion allowance of the sheet", "none",
                "sheet: 10 ga steel\n  corrosion allowance: 0.01 in", "sheet: 10 ga steel"},
        LeftOut{"FloorOnLegs", "floor of the reservoir", "on legs: it bears water and air as the lid bears air",
                "supports: {widest bare panel: {length: 20 in, width: 13 in}, floor carried: yes}", kPanel},
        LeftOut{"BareSides", "stiffeners of the sides and ends", "none: bare from corner to corner",
                "supports: {widest bare panel: {length: 20 in, width: 13 in}, long side bays: 3 x 1}", kPanel},
        LeftOut{"Coldest", "coldest that the shut reservoir gets", "37.4 degF",
                "air: {delivery: 3 scfm}\ncoldest: 45 degF", kAir},
        LeftOut{"Receiver", "receiver", "none", "air: {delivery: 3 scfm, receiver: 8 gal}", kAir},
        LeftOut{"ReceiverPressure", "receiver pressure at the start of a fill", "90 psi",
                "air: {delivery: 3 scfm, receiver pressure: 100 psi}", kAir},
        LeftOut{"FullSupply", "full supply pressure for the fault case", "125 psi",
                "air: {delivery: 3 scfm, receiver pressure: 100 psi}", kAir},
        LeftOut{"RegulatorRange", "regulator range", "0 to 30 psi", "air: {delivery: 3 scfm, regulator range: 15 psi}",
                kAir},
        LeftOut{"Droop", "regulator droop", "10 %", "air: {delivery: 3 scfm, droop: 5 %}", kAir},
        LeftOut{"RatedFlow", "regulator's rated flow", "20 scfm", "air: {delivery: 3 scfm, rated flow: 12 scfm}", kAir},
        LeftOut{"LockUp", "rise of the regulator's outlet until it shuts tight", "0.3 psi",
                "air: {delivery: 3 scfm, lock up: 0.2 psi}", kAir},
        LeftOut{"FeedBore", "smallest bore before the regulator", "1/4 in",
                "air: {delivery: 3 scfm, feed bore: 3/8 in}", kAir},
        LeftOut{"VentBore", "vent bore", "1/2 in", "air: {delivery: 3 scfm}\nvent: {bore: 3/4 in}", kAir},
        LeftOut{"Vents", "vents", "one", "air: {delivery: 3 scfm}\nvent: {count: 2}", kAir},
        LeftOut{"Temperature", "water temperature", "68 degF", "air: {delivery: 3 scfm}\nwater temperature: 60 degF",
                kAir},
        LeftOut{"Altitude", "altitude", "sea level", "air: {delivery: 3 scfm}\naltitude: 600 ft", kAir},
        LeftOut{"Order", "what decides between fittings",
                "the line's size and kind kept, then fewest size changes, parts, one material, price",
                "air: {delivery: 3 scfm}\nwishes: {order: price}", kAir},
        LeftOut{"BareWhere", "where the widest bare panel is", "in the lid, and in the floor under the charge",
                "supports: {widest bare panel: {length: 20 in, width: 13 in, in: lid}}", kPanel},
        LeftOut{"RiserBung", "riser bung", "1 FNPT full coupling in the lid",
                "riser: {bung: b}\nreservoir:\n  ports: {b: {port: 1 FNPT, bung: full coupling}}\n", "reservoir:\n"},
        LeftOut{"RiserMaterial", "material of the riser", "black iron",
                "air: {delivery: 3 scfm}\nriser: {material: galvanized}", kAir},
        LeftOut{"Setting", "regulator setting", "1.75 psi (48 in water)",
                "air: {delivery: 3 scfm, set pressure: 2 psi}", kAir}),
    name_of<LeftOut>);

TEST(Assumptions, TheChargeIsWhatTheTableTakesAndATenthMore) {
  EXPECT_TRUE(assumption(five_things(), "charge"));
  EXPECT_TRUE(assumption(five_things(), "line from the lid to the table"));
  EXPECT_TRUE(assumption(five_things(), "where the water comes into the table"));
  EXPECT_TRUE(assumption(five_things(), "design stress of the walls"));
}

TEST(Assumptions, OfASupplyWithoutACompressorSayThatTheReceiverIsAlone) {
  const Plan plan = plan_of_text(with(kFiveThings, "air: {delivery: 3 scfm}", "air: {receiver: 60 gal}"));
  ASSERT_TRUE(assumption(plan, "compressor"));
  EXPECT_EQ(assumption(plan, "compressor")->value, "none: the receiver's air alone");
}

TEST(Assumptions, HoldPortsOfTheVesselsStillAndTheAirHoseLoose) {
  const Plan plan = plan_of_text(with(kBench, ", held: {from: fixed, to: fixed}", ""));
  ASSERT_TRUE(assumption(plan, "how 'riser bung' is held in 'water up'"));
  EXPECT_EQ(assumption(plan, "how 'riser bung' is held in 'water up'")->value, "fixed");
  EXPECT_EQ(assumption(plan, "how 'regulator' is held in 'air in'")->value, "free to turn and slide");
}

TEST(Assumptions, HaveValuesInTheUnitsAskedFor) {
  EXPECT_EQ(assumption(five_things(), "water temperature", UnitSystem::metric)->value, "20 degC");
  EXPECT_EQ(assumption(five_things(), "height of the table's rim", UnitSystem::metric)->value, "127 mm");
}

}  // namespace
}  // namespace riserun::plan
