// Wrong jobs: each mistake with the exact message, place and caret that it must get.
#include "plan/job/read_job.h"
#include "unit/plan/bench_job.h"
#include "unit/plan/shipped.h"

#include <gmock/gmock.h>

namespace riserun::plan {
namespace {

/// The bench job with one piece of its text replaced.
struct BadJob {
  const char* name;
  const char* from;
  const char* to;
  const char* messages;
};

class WrongJob : public testing::TestWithParam<BadJob> {};

TEST_P(WrongJob, IsRefusedWithThisMessage) {
  const BadJob& row = GetParam();
  try {
    read_job(*shipped_catalog(), with(kBench, row.from, row.to), "bench.yaml");
    FAIL() << "it loaded";
  } catch (const InputError& error) {
    EXPECT_STREQ(error.what(), row.messages);
  }
}

TEST(BenchJob, LoadsAsItStands) {
  const Job job = read_job(*shipped_catalog(), kBench, "bench.yaml");
  EXPECT_EQ(job.name, "Test bench");
  EXPECT_NEAR(in_inches(job.reservoir.length), 40.0, 1e-9);
  EXPECT_NEAR(in_inches(job.reservoir.sheet.thickness), 0.1345, 1e-9);
  EXPECT_EQ(job.connections.size(), 2u);
  EXPECT_EQ(job.connections[0].needs.size(), 1u);
}

TEST(BenchJob, ANinthNeedIsRefused) {
  std::string needs = "need: [union";
  for (int more = 1; more < 9; ++more) needs += ", union";
  const auto load = [&] { read_job(*shipped_catalog(), with(kBench, "need: [union", needs), "bench.yaml"); };
  EXPECT_THAT(load, testing::ThrowsMessage<InputError>(
                        testing::HasSubstr("need: 9 things are asked for; allowed are at most 8")));
}

TEST(BenchJob, MoreConnectionsAndThingsKeptOutThanABenchHasAreRefusedBeforeTheyAreRead) {
  std::string connections = "connections:\n";
  std::string avoid = "need: [union], avoid: [zorb";
  for (int more = 0; more < 513; ++more) connections += "  - {zorb: 1}\n";
  for (int more = 0; more < 257; ++more) avoid += ", zorb";
  const auto load = [&](const std::string& from, const std::string& to) {
    return [=] { read_job(*shipped_catalog(), with(kBench, from, to), "bench.yaml"); };
  };
  EXPECT_THAT(load("connections:\n", connections), testing::ThrowsMessage<InputError>(testing::AllOf(
                                                       testing::HasSubstr("connections; allowed are at most 512"),
                                                       testing::Not(testing::HasSubstr("unknown key")))));
  EXPECT_THAT(load("need: [union", avoid), testing::ThrowsMessage<InputError>(testing::HasSubstr(
                                               "avoid: 258 things are kept out; allowed are at most 256")));
}

// clang-format off
INSTANTIATE_TEST_SUITE_P(
    Job, WrongJob,
    testing::Values(
    BadJob{"UnknownKeyAtTheTop", "altitude: 600 ft", "altitute: 600 ft",
           "bench.yaml:29:1: error: unknown key 'altitute'; did you mean 'altitude'? (allowed: name, units, reservoir, table, riser, connections, air, vent, water temperature, hottest, coldest, against heat, against frost, altitude, liquid, cutting, test pressure, measured fill time, relief valve, bin, prices, measured or wishes) [unknown_key]\n"
            "  altitute: 600 ft\n"
            "  ^"},
    BadJob{"WaterOutOfTheAirSupply", "to: air bung, carries: air", "to: air bung, carries: water",
           "bench.yaml:27:60: error: connections[2].carries: 'regulator' is an end of the supply under 'air': it carries air. A water main is no supply of it, and is never joined to a closed flat tank: fill through an open port [wrong_value]\n"
            "    - {name: air in, from: regulator, to: air bung, carries: water}\n"
            "                                                             ^"},
    BadJob{"NutForABung", "port: 1 FNPT, bung: full coupling", "port: 1 FNPSM, bung: full coupling",
           "bench.yaml:9:24: error: reservoir.ports.riser bung.port: 1 FNPSM swivel is on a nut that turns, and no wall of a reservoir carries one; a bung or a tapped hole is FNPT, or another thread that stands still [wrong_value]\n"
            "      riser bung: {port: 1 FNPSM, bung: full coupling, where: lid}\n"
            "                         ^"},
    BadJob{"MaleCoupling", "port: 1 FNPT, bung: full coupling", "port: 1 MNPT, bung: full coupling",
           "bench.yaml:9:38: error: reservoir.ports.riser bung: a coupling's or a bushing's thread is female, and '1 MNPT' is male [wrong_value]\n"
            "      riser bung: {port: 1 MNPT, bung: full coupling, where: lid}\n"
            "                                       ^"},
    BadJob{"MaleRiserBung", "riser bung: {port: 1 FNPT, bung: full coupling, where: lid}\n", "riser bung: {port: 1 MNPT, where: lid}\n",
           "bench.yaml:9:17: error: reservoir.ports.riser bung: a coupling's or a bushing's thread is female, and '1 MNPT' is male; the riser screws into it, unless it is welded: 'bung: welded riser' [wrong_value]\n"
            "      riser bung: {port: 1 MNPT, where: lid}\n"
            "                  ^"},
    BadJob{"MaleBungToWeldIn", "air bung: 1/2 FNPT", "air bung: {port: 1/2 MNPT, welded in: no}",
           "bench.yaml:10:15: error: reservoir.ports.air bung: a coupling's or a bushing's thread is female, and '1/2 MNPT' is male; what is to be welded in is a coupling [wrong_value]\n"
            "      air bung: {port: 1/2 MNPT, welded in: no}\n"
            "                ^"},
    BadJob{"UnknownKeyInAMap", "rim: 5 in", "rimm: 5 in",
           "bench.yaml:13:3: error: table: unknown key 'rimm'; did you mean 'rim'? (allowed: inside, depth, floor height, rim, solid share or ports) [unknown_key]\n"
            "    rimm: 5 in\n"
            "    ^"},
    BadJob{"UnknownKeyOfAPort", "bung: full coupling", "bong: full coupling",
           "bench.yaml:9:32: error: reservoir.ports.riser bung: unknown key 'bong'; did you mean 'bung'? (allowed: port, material, where, bung, bung part, welded in, bung length, projects, face height or at) [unknown_key]\n"
            "      riser bung: {port: 1 FNPT, bong: full coupling, where: lid}\n"
            "                                 ^"},
    BadJob{"UnknownKeyOfAConnection", "carries: water", "carry: water",
           "bench.yaml:26:51: error: connections[1]: unknown key 'carry' (allowed: name, from, to, ends in, branches, hose length, take, held, need, in order, most parts, most bushings, rating, hottest, vacuum, smallest bore, room, galvanic, carries, avoid, special order, order, gap or offset) [unknown_key]\n"
            "    - {name: water up, from: riser bung, to: inlet, carry: water, need: [union], held: {from: fixed, t...\n"
            "                                                    ^"},
    BadJob{"MissingReservoir", "reservoir:", "reservior:",
           "bench.yaml:1:1: error: 'reservoir' is missing [missing_key]\n"
            "  name: Test bench\n"
            "  ^\n"
            "bench.yaml:3:1: error: unknown key 'reservior'; did you mean 'reservoir'? (allowed: name, units, reservoir, table, riser, connections, air, vent, water temperature, hottest, coldest, against heat, against frost, altitude, liquid, cutting, test pressure, measured fill time, relief valve, bin, prices, measured or wishes) [unknown_key]\n"
            "  reservior:\n"
            "  ^"},
    BadJob{"MissingInside", "  inside: {length: 40 in, width: 20 in, height: 14 in}\n", "",
           "bench.yaml:4:3: error: reservoir: 'inside' is missing [missing_key]\n"
            "    sheet: 10 ga steel\n"
            "    ^"},
    BadJob{"MissingHeight", ", height: 14 in}", "}",
           "bench.yaml:4:11: error: reservoir.inside: 'height' is missing [missing_key]\n"
            "    inside: {length: 40 in, width: 20 in}\n"
            "            ^"},
    BadJob{"MissingDepth", "  depth: 4 in\n", "",
           "bench.yaml:12:3: error: table: 'depth' is missing [missing_key]\n"
            "    inside: {length: 44 in, width: 22 in}\n"
            "    ^"},
    BadJob{"MissingFloorHeight", "  floor height: 30 in\n", "",
           "bench.yaml:12:3: error: table: 'floor height' is missing [missing_key]\n"
            "    inside: {length: 44 in, width: 22 in}\n"
            "    ^"},
    BadJob{"MissingSheet", "  sheet: 10 ga steel\n", "",
           "bench.yaml:4:3: error: reservoir: 'sheet' is missing [missing_key]\n"
            "    inside: {length: 40 in, width: 20 in, height: 14 in}\n"
            "    ^"},
    BadJob{"MissingAirPlate", "  delivery: 3 scfm\n  receiver: 8 gal\n", "",
           "bench.yaml:20:3: error: air: 'delivery' or 'receiver' is missing [missing_key]\n"
            "    regulator range: 15 psi\n"
            "    ^"},
    BadJob{"NoUnit", "units: inch\nreservoir:\n  inside: {length: 40 in", "reservoir:\n  inside: {length: 40",
           "bench.yaml:3:22: error: reservoir.inside.length: '40': no unit; length takes in, ft, mm, cm, m, um, mil; 'units: inch' would make it 40 in [no_unit]\n"
            "    inside: {length: 40, width: 20 in, height: 14 in}\n"
            "                       ^"},
    BadJob{"WrongUnit", "length: 40 in", "length: 40 psi",
           "bench.yaml:4:23: error: reservoir.inside.length: '40 psi': 'psi' is a unit of pressure; length takes in, ft, mm, cm, m, um, mil [wrong_unit]\n"
            "    inside: {length: 40 psi, width: 20 in, height: 14 in}\n"
            "                        ^"},
    BadJob{"NoNumber", "length: 40 in", "length: long in",
           "bench.yaml:4:20: error: reservoir.inside.length: 'long in': does not begin with a number; length is a number and a unit, like 5-1/2 in [not_a_number]\n"
            "    inside: {length: long in, width: 20 in, height: 14 in}\n"
            "                     ^"},
    BadJob{"ZeroDenominator", "rim: 5 in", "rim: 5 1/0 in",
           "bench.yaml:13:12: error: table.rim: '5 1/0 in': the fraction 1/0 has a zero denominator [not_a_number]\n"
            "    rim: 5 1/0 in\n"
            "             ^"},
    BadJob{"NegativeLength", "rim: 5 in", "rim: -5 in",
           "bench.yaml:13:8: error: table.rim: '-5 in': length cannot be negative [out_of_range]\n"
            "    rim: -5 in\n"
            "         ^"},
    BadJob{"TooLong", "length: 40 in", "length: 400 ft",
           "bench.yaml:4:20: error: reservoir.inside.length: '400 ft': out of range; allowed is 0.166667 ft to 40 ft [out_of_range]\n"
            "    inside: {length: 400 ft, width: 20 in, height: 14 in}\n"
            "                     ^"},
    BadJob{"TooShort", "height: 14 in", "height: 1/2 in",
           "bench.yaml:4:49: error: reservoir.inside.height: '1/2 in': out of range; allowed is 2 in to 480 in [out_of_range]\n"
            "    inside: {length: 40 in, width: 20 in, height: 1/2 in}\n"
            "                                                  ^"},
    BadJob{"DepthOutOfRange", "depth: 4 in", "depth: 1/32 in",
           "bench.yaml:15:10: error: table.depth: '1/32 in': out of range; allowed is 0.125 in to 120 in [out_of_range]\n"
            "    depth: 1/32 in\n"
            "           ^"},
    BadJob{"GaugeWithoutMetal", "sheet: 10 ga steel", "sheet: 10 ga",
           "bench.yaml:5:15: error: reservoir.sheet: '10 ga': a gauge number needs its metal, as it means another thickness in each: 0.1345 in for steel, 0.1382 in for galvanized, 0.1406 in for stainless, 0.1019 in for aluminium, like 10 ga steel [wrong_value]\n"
            "    sheet: 10 ga\n"
            "                ^"},
    BadJob{"ThicknessWithoutMetal", "sheet: 10 ga steel", "sheet: 3/16 in",
           "bench.yaml:5:10: error: reservoir.sheet: the metal is missing after the thickness; allowed are steel, galvanized, stainless, aluminium, commercial steel sheet, a36, S235, HRPO, 316, 6061 or 3003 [wrong_value]\n"
            "    sheet: 3/16 in\n"
            "           ^"},
    BadJob{"UnknownMetal", "sheet: 10 ga steel", "sheet: 3/16 in tin",
           "bench.yaml:5:10: error: reservoir.sheet: 'tin' is not a sheet metal that is known; allowed are steel, galvanized, stainless, aluminium, commercial steel sheet, a36, S235, HRPO, 316, 6061 or 3003 [wrong_value]\n"
            "    sheet: 3/16 in tin\n"
            "           ^"},
    BadJob{"SheetTooThin", "sheet: 10 ga steel", "sheet: 0.001 in steel",
           "bench.yaml:5:10: error: reservoir.sheet: '0.001 in': out of range; allowed is 0.02 in to 2 in [out_of_range]\n"
            "    sheet: 0.001 in steel\n"
            "           ^"},
    BadJob{"YieldTooHigh", "charge: 9 in", "yield: 900 ksi",
           "bench.yaml:7:10: error: reservoir.yield: '900 ksi': out of range; allowed is 2.90075 ksi to 290.075 ksi [out_of_range]\n"
            "    yield: 900 ksi\n"
            "           ^"},
    BadJob{"UltimateBelowYield", "charge: 9 in", "yield: 50 ksi\n  ultimate: 40 ksi",
           "bench.yaml:8:13: error: reservoir.ultimate: 40 ksi is less than the yield of 50 ksi [wrong_value]\n"
            "    ultimate: 40 ksi\n"
            "              ^"},
    BadJob{"AllowanceLeavesTooLittle", "charge: 9 in", "corrosion allowance: 0.0633 in",
           "bench.yaml:7:24: error: reservoir.corrosion allowance: 0.0633 in leaves too little of a sheet of 0.1265 in; allowed is up to half of it [wrong_value]\n"
           "    corrosion allowance: 0.0633 in\n"
           "                         ^"},
    BadJob{"AllowanceOutOfRange", "charge: 9 in", "corrosion allowance: 1 in",
           "bench.yaml:7:24: error: reservoir.corrosion allowance: '1 in': out of range; allowed is 0 in to 0.5 in [out_of_range]\n"
           "    corrosion allowance: 1 in\n"
           "                         ^"},
    BadJob{"BaysUnreadable", "baffles across: 2", "lid bays: 3 by 2",
           "bench.yaml:6:24: error: reservoir.supports.lid bays: '3 by 2' is not a number of bays along and across, such as 3 x 2; allowed is 1 to 50 each way [wrong_value]\n"
            "    supports: {lid bays: 3 by 2}\n"
            "                         ^"},
    BadJob{"BaysZero", "baffles across: 2", "lid bays: 0 x 2",
           "bench.yaml:6:24: error: reservoir.supports.lid bays: '0 x 2' is not a number of bays along and across, such as 3 x 2; allowed is 1 to 50 each way [wrong_value]\n"
            "    supports: {lid bays: 0 x 2}\n"
            "                         ^"},
    BadJob{"PanelAndLayout", "baffles across: 2", "baffles across: 2, widest bare panel: {length: 20 in, width: 10 in}",
           "bench.yaml:6:13: error: reservoir.supports: give the widest bare panel or how the walls are divided, not both [wrong_value]\n"
            "    supports: {baffles across: 2, widest bare panel: {length: 20 in, width: 10 in}}\n"
            "              ^"},
    BadJob{"PanelTooLong", "baffles across: 2", "widest bare panel: {length: 60 in, width: 10 in}",
           "bench.yaml:6:33: error: reservoir.supports.widest bare panel: a panel of 60 in x 10 in does not fit any wall of the reservoir; allowed is up to the bare lid, 40 in x 20 in, or a bare side, 40 in x 14 in [wrong_value]\n"
            "    supports: {widest bare panel: {length: 60 in, width: 10 in}}\n"
            "                                  ^"},
    BadJob{"TooManyBaffles", "baffles across: 2", "baffles across: 51",
           "bench.yaml:6:30: error: reservoir.supports.baffles across: '51': out of range; allowed is 0 to 50 [out_of_range]\n"
            "    supports: {baffles across: 51}\n"
            "                               ^"},
    BadJob{"SolidShareTooLarge", "baffles across: 2", "baffles across: 2, solid share: 80 %",
           "bench.yaml:6:46: error: reservoir.supports.solid share: '80 %': out of range; allowed is 0 to 0.5 [out_of_range]\n"
            "    supports: {baffles across: 2, solid share: 80 %}\n"
            "                                               ^"},
    BadJob{"ChargeOverTheLid", "charge: 9 in", "charge: 15 in",
           "bench.yaml:7:11: error: reservoir.charge: 15 in is more than the inside height of 14 in [wrong_value]\n"
            "    charge: 15 in\n"
            "            ^"},
    BadJob{"ObstacleFillsTheBox", "charge: 9 in", "under the riser: 14 in",
           "bench.yaml:7:20: error: reservoir.under the riser: 14 in fills the inside height of 14 in [wrong_value]\n"
            "    under the riser: 14 in\n"
            "                     ^"},
    BadJob{"LidWord", "charge: 9 in", "lid: shut",
           "bench.yaml:7:8: error: reservoir.lid: 'shut' is not one of open or welded [not_one_of]\n"
            "    lid: shut\n"
            "         ^"},
    BadJob{"ShapeNotABox", "charge: 9 in", "shape: horizontal cylinder",
           "bench.yaml:7:10: error: reservoir.shape: Riserun plans for a flat-sided box; 'horizontal cylinder' is not worked out [wrong_value]\n"
            "    shape: horizontal cylinder\n"
            "           ^"},
    BadJob{"TableUnderTheLid", "floor height: 30 in", "floor height: 12 in",
           "bench.yaml:14:17: error: table.floor height: 12 in is not over the reservoir, which is 14 in high inside; heights count from the reservoir's inside floor [wrong_value]\n"
            "    floor height: 12 in\n"
            "                  ^"},
    BadJob{"RimUnderTheDepth", "rim: 5 in", "rim: 3 in",
           "bench.yaml:13:8: error: table.rim: 3 in is lower than the wanted depth of 4 in [wrong_value]\n"
            "    rim: 3 in\n"
            "         ^"},
    BadJob{"PortUnreadable", "port: 1 FNPT, bung", "port: 1 FTP, bung",
           "bench.yaml:9:26: error: reservoir.ports.riser bung.port: 'FTP' is not understood; close to it: fip, fpt or ftg [unknown_port]\n"
            "      riser bung: {port: 1 FTP, bung: full coupling, where: lid}\n"
            "                           ^"},
    BadJob{"PortSizeThatIsNotMade", "air bung: 1/2 FNPT", "air bung: 7/16 FNPT",
           "bench.yaml:10:15: error: reservoir.ports.air bung: '7/16' is not a size of NPT, which comes in 1/16, 1/8, 1/4, 3/8, 1/2, 3/4, 1, 1-1/4 ... [unknown_port]\n"
            "      air bung: 7/16 FNPT\n"
            "                ^"},
    BadJob{"BungWord", "bung: full coupling", "bung: ful coupling",
           "bench.yaml:9:38: error: reservoir.ports.riser bung.bung: 'ful coupling' is not one of full coupling, half coupling, welded riser or double-tapped bushing; did you mean 'full coupling'? [not_one_of]\n"
            "      riser bung: {port: 1 FNPT, bung: ful coupling, where: lid}\n"
            "                                       ^"},
    BadJob{"WhereWord", "inlet: {port: 1 FNPT, where: floor}", "inlet: {port: 1 FNPT, where: rim}",
           "bench.yaml:17:34: error: table.ports.inlet.where: 'rim' is not one of floor, side or over rim [not_one_of]\n"
            "      inlet: {port: 1 FNPT, where: rim}\n"
            "                                   ^"},
    BadJob{"MaterialUnknown", "inlet: {port: 1 FNPT, where: floor}", "inlet: {port: 1 FNPT, material: bras}",
           "bench.yaml:17:37: error: table.ports.inlet.material: no material is called 'bras'; there are black iron, galvanized, brass, stainless, copper, forged steel, mild steel, aluminium, PVC, polypropylene, PEX, nylon, rubber or vinyl; did you mean 'brass'? [wrong_value]\n"
            "      inlet: {port: 1 FNPT, material: bras}\n"
            "                                      ^"},
    BadJob{"PortNameTwice", "    inlet: {port: 1 FNPT, where: floor}", "    inlet: {port: 1 FNPT, where: floor}\n    air bung: 1/2 FNPT",
           "bench.yaml:18:5: error: table.ports: the name 'air bung' is used for a port of the reservoir already [wrong_value]\n"
            "      air bung: 1/2 FNPT\n"
            "      ^"},
    BadJob{"PortNameTwiceInOneMap", "    air bung: 1/2 FNPT", "    air bung: 1/2 FNPT\n    air bung: 1/4 FNPT",
           "bench.yaml:11:5: error: 'air bung' stands here twice, first in line 10 [duplicate_key]\n"
            "      air bung: 1/4 FNPT\n"
            "      ^"},
    BadJob{"ConnectionToNowhere", "to: inlet", "to: inlett",
           "bench.yaml:26:44: error: connections[1].to: no port is called 'inlett'; there are riser bung, air bung, inlet or regulator; did you mean 'inlet'? [wrong_value]\n"
            "    - {name: water up, from: riser bung, to: inlett, carries: water, need: [union], held: {from: fixed...\n"
            "                                             ^"},
    BadJob{"ConnectionFromNowhere", "from: regulator", "from: compressor",
           "bench.yaml:27:26: error: connections[2].from: no port is called 'compressor'; there are riser bung, air bung, inlet or regulator [wrong_value]\n"
            "    - {name: air in, from: compressor, to: air bung, carries: air}\n"
            "                           ^"},
    BadJob{"ConnectionWithoutFarEnd", ", to: inlet", "",
           "bench.yaml:26:5: error: connections[1]: the far end is missing: 'to' names a port, 'ends in' a device, 'branches' several ends [wrong_value]\n"
            "    - {name: water up, from: riser bung, carries: water, need: [union], held: {from: fixed, to: fixed}...\n"
            "      ^"},
    BadJob{"ConnectionWithTwoFarEnds", "to: inlet", "to: inlet, ends in: pressure gauge",
           "bench.yaml:26:60: error: connections[1].ends in: a connection has 'to' or 'ends in', not both [wrong_value]\n"
            "    - {name: water up, from: riser bung, to: inlet, ends in: pressure gauge, carries: water, need: [un...\n"
            "                                                             ^"},
    BadJob{"PortUsedTwice", "from: regulator, to: air bung", "from: regulator, to: inlet",
           "bench.yaml:27:41: error: connections[2].to: the port 'inlet' is taken by the connection 'water up' already [wrong_value]\n"
            "    - {name: air in, from: regulator, to: inlet, carries: air}\n"
            "                                          ^\n"
            "bench.yaml:27:41: error: connections[2].to: air from the supply goes to the table here and never reaches the reservoir; one end must be a port of the reservoir [wrong_value]\n"
            "    - {name: air in, from: regulator, to: inlet, carries: air}\n"
            "                                          ^"},
    BadJob{"TwoConnectionsOfOneName", "name: air in", "name: water up",
           "bench.yaml:27:5: error: connections[2]: two connections are called 'water up' [wrong_value]\n"
            "    - {name: water up, from: regulator, to: air bung, carries: air}\n"
            "      ^"},
    BadJob{"TakenPartThatIsNotThere", "need: [union]", "take: [close-nipple/black-iron/one]",
           "bench.yaml:26:74: error: connections[1].take[1]: no part of the catalog has the id 'close-nipple/black-iron/one'; did you mean 'close-nipple/black-iron/1-8'? [wrong_value]\n"
            "  ...ter up, from: riser bung, to: inlet, carries: water, take: [close-nipple/black-iron/one], held: {fro...\n"
            "                                                                 ^"},
    BadJob{"TakenPartGoneThroughByAPortThatItHasNot", "need: [union]", "take: [{part: union/black-iron/1, enter: 1, leave: 3}]",
           "bench.yaml:26:74: error: connections[1].take[1]: '1 union' has 2 ports: 'enter' and 'leave' are two of them [wrong_value]\n"
            "  ...ter up, from: riser bung, to: inlet, carries: water, take: [{part: union/black-iron/1, enter: 1, lea...\n"
            "                                                                 ^"},
    BadJob{"NeedNoPartFits", "need: [union]", "need: [onion]",
           "bench.yaml:26:74: error: connections[1].need[1]: no part knows the word 'onion'; did you mean union? [unknown_part]\n"
            "  ...ter up, from: riser bung, to: inlet, carries: water, need: [onion], held: {from: fixed, to: fixed}}\n"
            "                                                                 ^"},
    BadJob{"AvoidNoPartFits", "need: [union]", "avoid: [unobtainium valve]",
           "bench.yaml:26:75: error: connections[1].avoid[1]: no part knows the word 'unobtainium'; allowed: what a part is called "
           "('nipple', 'brass hex nipple'), a material (black iron, galvanized, brass, stainless, copper, forged steel, mild steel, aluminium, "
           "PVC, polypropylene, PEX, nylon, rubber, vinyl) or a kind of joint (NPT, NPT in plastic, NPSM, garden hose thread, BSP taper, BSP "
           "parallel, BSP parallel swivel nut, hose, copper solder, PVC socket, weld, air quick-connect, PEX, push-on, compression, class 150 "
           "flange, cam-and-groove, 37 degree flare, 45 degree flare, flared tube, air tube, push-in, drain sleeve, clamp band) [unknown_part]\n"
            "  ...er up, from: riser bung, to: inlet, carries: water, avoid: [unobtainium valve], held: {from: fixed, ...\n"
            "                                                                 ^"},
    BadJob{"EndsInATee", "to: inlet", "ends in: tee",
           "bench.yaml:26:49: error: connections[1].ends in: no part with one or two ports matches 'tee', so nothing can end in it [wrong_value]\n"
            "    - {name: water up, from: riser bung, ends in: tee, carries: water, need: [union], held: {from: fix...\n"
            "                                                  ^"},
    BadJob{"HeldWord", "held: {from: fixed, to: fixed}", "held: {from: fixed, to: stuck}",
           "bench.yaml:26:106: error: connections[1].held.to: 'stuck' is not one of fixed, sliding, spinning or loose [not_one_of]\n"
            "  ...let, carries: water, need: [union], held: {from: fixed, to: stuck}}\n"
            "                                                                 ^"},
    BadJob{"OrderWord", "need: [union]", "order: cheapest",
           "bench.yaml:26:74: error: connections[1].order: 'cheapest' is not one of line, parts, price, loss, length or bin [not_one_of]\n"
            "  ...ter up, from: riser bung, to: inlet, carries: water, order: cheapest, held: {from: fixed, to: fixed}...\n"
            "                                                                 ^"},
    BadJob{"CarriesWord", "carries: water", "carries: steam",
           "bench.yaml:26:60: error: connections[1].carries: 'steam' is not one of water or air [not_one_of]\n"
            "    - {name: water up, from: riser bung, to: inlet, carries: steam, need: [union], held: {from: fixed,...\n"
            "                                                             ^"},
    BadJob{"GapNegative", "need: [union]", "gap: -2 in",
           "bench.yaml:26:72: error: connections[1].gap: '-2 in': length cannot be negative [wrong_value]\n"
            "  ...water up, from: riser bung, to: inlet, carries: water, gap: -2 in, held: {from: fixed, to: fixed}}\n"
            "                                                                 ^"},
    BadJob{"RiserBungUnknown", "riser: {bung: riser bung}", "riser: {bung: riser bong}",
           "bench.yaml:18:15: error: riser.bung: no port is called 'riser bong'; there are riser bung or air bung; did you mean 'riser bung'? [wrong_value]\n"
            "  riser: {bung: riser bong}\n"
            "                ^"},
    BadJob{"RiserBungOnTheTable", "riser: {bung: riser bung}", "riser: {bung: inlet}",
           "bench.yaml:18:15: error: riser.bung: 'inlet' is not a port of the reservoir, where the riser hangs [wrong_value]\n"
            "  riser: {bung: inlet}\n"
            "                ^"},
    BadJob{"RiserPipeNoSize", "riser: {bung: riser bung}", "riser: {pipe: thick}",
           "bench.yaml:18:15: error: riser.pipe: 'thick': does not begin with a number; sizes are whole inches and fractions up to 48, like 3/4 or 1-1/4 [not_a_number]\n"
            "  riser: {pipe: thick}\n"
            "                ^"},
    BadJob{"NoAir", "delivery: 3 scfm", "delivery: 0 scfm",
           "bench.yaml:20:13: error: air.delivery: '0 scfm': out of range; allowed is 0.01 scfm to 2000 scfm [out_of_range]\n"
            "    delivery: 0 scfm\n"
            "              ^"},
    BadJob{"DeliveryInWaterUnits", "delivery: 3 scfm", "delivery: 3 gpm",
           "bench.yaml:20:15: error: air.delivery: '3 gpm': 'gpm' is a unit of flow; air flow takes scfm, scfh, L/min, L/s, L/h, m3/h, m3/min, m3/s [wrong_unit]\n"
            "    delivery: 3 gpm\n"
            "                ^"},
    BadJob{"SetPressureOverRange", "regulator range: 15 psi", "regulator range: 15 psi\n  set pressure: 20 psi",
           "bench.yaml:23:17: error: air.set pressure: 20 psi is more than the regulator range of 15 psi [wrong_value]\n"
            "    set pressure: 20 psi\n"
            "                  ^"},
    BadJob{"SetPressureZero", "regulator range: 15 psi", "set pressure: 0 psi",
           "bench.yaml:22:17: error: air.set pressure: '0 psi': out of range; allowed is 0.01 psi to 300 psi [out_of_range]\n"
            "    set pressure: 0 psi\n"
            "                  ^"},
    BadJob{"RatedFlowOfNothing", "regulator range: 15 psi", "rated flow: 0 scfm",
           "bench.yaml:22:15: error: air.rated flow: '0 scfm': out of range; allowed is 0.1 scfm to 2000 scfm [out_of_range]\n"
            "    rated flow: 0 scfm\n"
            "                ^"},
    BadJob{"LockUpOfALine", "regulator range: 15 psi", "lock up: 60 psi",
           "bench.yaml:22:12: error: air.lock up: '60 psi': out of range; allowed is 0 psi to 30 psi [out_of_range]\n"
            "    lock up: 60 psi\n"
            "             ^"},
    BadJob{"RestrictorOfNothing", "regulator range: 15 psi", "restrictor: 0.001 in",
           "bench.yaml:22:15: error: air.restrictor: '0.001 in': out of range; allowed is 0.01 in to 12 in [out_of_range]\n"
            "    restrictor: 0.001 in\n"
            "                ^"},
    BadJob{"ReliefValveRise", "altitude: 600 ft", "relief valve: {rise: 60 psi}",
           "bench.yaml:29:22: error: relief valve.rise: '60 psi': out of range; allowed is 0 psi to 50 psi [out_of_range]\n"
            "  relief valve: {rise: 60 psi}\n"
            "                       ^"},
    BadJob{"DroopOverOne", "regulator range: 15 psi", "droop: 150 %",
           "bench.yaml:22:10: error: air.droop: '150 %': out of range; allowed is 0 to 0.9 [out_of_range]\n"
            "    droop: 150 %\n"
            "           ^"},
    BadJob{"ReceiverNegative", "receiver: 8 gal", "receiver: -8 gal",
           "bench.yaml:21:13: error: air.receiver: '-8 gal': volume cannot be negative [out_of_range]\n"
            "    receiver: -8 gal\n"
            "              ^"},
    BadJob{"VentCountZero", "vent: {bore: 1/2 in}", "vent: {count: 0}",
           "bench.yaml:24:15: error: vent.count: '0': out of range; allowed is 1 to 20 [out_of_range]\n"
            "  vent: {count: 0}\n"
            "                ^"},
    BadJob{"VentBoreTooLarge", "vent: {bore: 1/2 in}", "vent: {bore: 2 ft}",
           "bench.yaml:24:14: error: vent.bore: '2 ft': out of range; allowed is 0.000833333 ft to 1 ft [out_of_range]\n"
            "  vent: {bore: 2 ft}\n"
            "               ^"},
    BadJob{"WaterBoils", "water temperature: 60 degF", "water temperature: 212 degF",
           "bench.yaml:28:20: error: water temperature: '212 degF': out of range; allowed is 33 degF to 176 degF [out_of_range]\n"
            "  water temperature: 212 degF\n"
            "                     ^"},
    BadJob{"WaterFrozen", "water temperature: 60 degF", "water temperature: 20 degF",
           "bench.yaml:28:20: error: water temperature: '20 degF': out of range; allowed is 33 degF to 176 degF [out_of_range]\n"
            "  water temperature: 20 degF\n"
            "                     ^"},
    BadJob{"AltitudeTooHigh", "altitude: 600 ft", "altitude: 20000 ft",
           "bench.yaml:29:11: error: altitude: '20000 ft': out of range; allowed is -1640.42 ft to 16404.2 ft [out_of_range]\n"
            "  altitude: 20000 ft\n"
            "            ^"},
    BadJob{"TestPressureTooHigh", "altitude: 600 ft", "test pressure: 60 psi",
           "bench.yaml:29:16: error: test pressure: '60 psi': out of range; allowed is 0.05 psi to 15 psi [out_of_range]\n"
            "  test pressure: 60 psi\n"
            "                 ^"},
    BadJob{"LiquidUnknown", "altitude: 600 ft", "liquid: brine",
           "bench.yaml:29:9: error: liquid: 'brine' is not worked out; allowed is water, or water with up to 10 % of soluble oil, coolant, inhibitor or propylene glycol; acids, lyes, salt and bleach eat the tank [wrong_value]\n"
            "  liquid: brine\n"
            "          ^"},
    BadJob{"ReliefTolerance", "altitude: 600 ft", "relief valve: {tolerance: 60 psi}",
           "bench.yaml:29:27: error: relief valve.tolerance: '60 psi': out of range; allowed is 0 psi to 50 psi [out_of_range]\n"
            "  relief valve: {tolerance: 60 psi}\n"
            "                            ^"},
    BadJob{"HotterThanBoiling", "altitude: 600 ft", "hottest: 212 degF",
           "bench.yaml:29:10: error: hottest: '212 degF': out of range; allowed is -76 degF to 210.2 degF [out_of_range]\n"
            "  hottest: 212 degF\n"
            "           ^"},
    BadJob{"PassagesWord", "supports: {baffles across: 2}", "supports: {baffles across: 2, passages: wide}",
           "bench.yaml:6:43: error: reservoir.supports.passages: 'wide' is neither yes nor no [not_one_of]\n"
            "    supports: {baffles across: 2, passages: wide}\n"
            "                                            ^"},
    BadJob{"UnitsWord", "units: inch", "units: imperial",
           "bench.yaml:2:8: error: units: 'imperial' is not one of inch or metric [not_one_of]\n"
            "  units: imperial\n"
            "         ^"},
    BadJob{"FillTimeNoUnit", "altitude: 600 ft", "wishes: {fill time: 3}",
           "bench.yaml:29:22: error: wishes.fill time: '3': no unit; it can be 3 s or 3 min [no_unit]\n"
            "  wishes: {fill time: 3}\n"
            "                       ^"},
    BadJob{"CostCapNoUnit", "altitude: 600 ft", "wishes: {cost cap: 60}",
           "bench.yaml:29:22: error: wishes.cost cap: '60': no currency; a price is dollars and cents, like $2.10 or 2.10 usd [wrong_value]\n"
            "  wishes: {cost cap: 60}\n"
            "                       ^"},
    BadJob{"BinUnknownPart", "altitude: 600 ft", "bin:\n  - {part: 1 x 4 capacitor black iron, count: 1}",
           "bench.yaml:30:18: error: bin[1].part: no part knows the word 'capacitor' [unknown_part]\n"
            "    - {part: 1 x 4 capacitor black iron, count: 1}\n"
            "                   ^"},
    BadJob{"BinSeveralParts", "altitude: 600 ft", "bin:\n  - {part: 1 x 4 nipple, count: 1}",
           "bench.yaml:30:12: error: bin[1].part: '1 x 4 nipple' fits 4 parts, say which: nipple/black-iron/1x4, nipple/galvanized/1x4, nipple/stainless/1x4, nipple/brass/1x4 [ambiguous_part]\n"
            "    - {part: 1 x 4 nipple, count: 1}\n"
            "             ^"},
    BadJob{"BinFileMissing", "altitude: 600 ft", "bin: no-such-bin.yaml",
           "no-such-bin.yaml: error: there is no such file [file_not_read]"},
    BadJob{"MeasuredNothing", "altitude: 600 ft", "measured:\n  - {part: union/black-iron/1}",
           "bench.yaml:30:5: error: measured[1]: nothing was measured: give length, bore or rating [wrong_value]\n"
            "    - {part: union/black-iron/1}\n"
            "      ^"},
    BadJob{"MeasuredUnknownPart", "altitude: 600 ft", "measured:\n  - {part: onion, length: 2 in}",
           "bench.yaml:30:12: error: measured[1].part: no part knows the word 'onion'; did you mean union? [unknown_part]\n"
            "    - {part: onion, length: 2 in}\n"
            "             ^"},
    BadJob{"ListForAMap", "air:\n  delivery: 3 scfm\n  receiver: 8 gal\n  regulator range: 15 psi\n  ports: {regulator: 1/4 FNPT}\n", "air: [3 scfm]\n",
           "bench.yaml:19:6: error: air: a map of keys is expected here, not a list [wrong_shape]\n"
            "  air: [3 scfm]\n"
            "       ^"},
    BadJob{"ConnectionsNotAList", "connections:\n", "connections: none\nignored:\n",
           "bench.yaml:25:14: error: connections: a list is expected here, not a text [wrong_shape]\n"
            "  connections: none\n"
            "               ^\n"
            "bench.yaml:26:1: error: unknown key 'ignored' (allowed: name, units, reservoir, table, riser, connections, air, vent, water temperature, hottest, coldest, against heat, against frost, altitude, liquid, cutting, test pressure, measured fill time, relief valve, bin, prices, measured or wishes) [unknown_key]\n"
            "  ignored:\n"
            "  ^"},
    BadJob{"SecondDocument", "altitude: 600 ft", "---\naltitude: 600 ft",
           "bench.yaml:29:1: error: a second document begins here: one file holds one document [not_yaml]\n"
            "  ---\n"
            "  ^"},
    BadJob{"UnclosedQuote", "name: Test bench", "name: \"Test bench",
           "bench.yaml:1:7: error: this quote is not closed on its line [not_yaml]\n"
            "  name: \"Test bench\n"
            "        ^"},
    BadJob{"TabForIndent", "  rim: 5 in", "\trim: 5 in",
           "bench.yaml:13:2: error: this line does not fit the ones above it: look at its indent, and for a missing ':' or '-' [not_yaml]\n"
            "   rim: 5 in\n"
            "   ^"},
    BadJob{"TwoMistakesAtOnce", "rim: 5 in\n  floor height: 30 in", "rim: 5 psi\n  floor height: tall",
           "bench.yaml:13:10: error: table.rim: '5 psi': 'psi' is a unit of pressure; length takes in, ft, mm, cm, m, um, mil [wrong_unit]\n"
            "    rim: 5 psi\n"
            "           ^\n"
            "bench.yaml:14:17: error: table.floor height: 'tall': does not begin with a number; length is a number and a unit, like 5-1/2 in [not_a_number]\n"
            "    floor height: tall\n"
            "                  ^"}),
    name_of<BadJob>);
// clang-format on

}  // namespace
}  // namespace riserun::plan
