// The shipped catalog itself: whole, sensible, and true to the rules of the trade.
#include "unit/catalog/shipped_catalog.h"

#include "catalog/words/part_search.h"
#include "unit/catalog/small_catalog.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <algorithm>
#include <chrono>
#include <cmath>
#include <set>

namespace riserun::catalog {
namespace {

PortTypeId port(std::string_view text) { return std::get<PortTypeId>(read_port(testing::shipped_catalog(), text)); }

TEST(ShippedCatalog, HasPartsOfEveryFamily) {
  std::set<std::uint32_t> seen;
  for (const Part& part : testing::shipped_catalog().parts()) seen.insert(part.family.row);
  for (std::uint32_t row = 0; row < testing::shipped_catalog().families().size(); ++row)
    EXPECT_TRUE(seen.contains(row)) << testing::shipped_catalog().families()[row].name;
  EXPECT_GT(testing::shipped_catalog().parts().size(), 2000U);
}

TEST(ShippedCatalog, HasTheFamiliesOfTheTrade) {
  for (const char* name : {"coupling",
                           "reducing coupling",
                           "bell reducer",
                           "hex bushing",
                           "face bushing",
                           "nipple",
                           "close nipple",
                           "reducing nipple",
                           "union",
                           "dielectric union",
                           "tee",
                           "reducing tee",
                           "cross",
                           "cap",
                           "plug",
                           "full coupling",
                           "half coupling",
                           "ball valve",
                           "check valve",
                           "pressure gauge",
                           "relief valve",
                           "hose",
                           "flexible connector"})
    EXPECT_FALSE(find_parts(testing::shipped_catalog(), name).empty()) << name;
}

TEST(ShippedCatalog, EveryPartIsWithinWhatCanBe) {
  for (const Part& part : testing::shipped_catalog().parts()) {
    SCOPED_TRACE(part.id);
    EXPECT_FALSE(part.name.empty());
    EXPECT_FALSE(part.size.empty());
    EXPECT_FALSE(part.source.empty());
    EXPECT_EQ(part.name.find('{'), std::string::npos);
    EXPECT_GT(part.price.cents(), 0);
    EXPECT_GT(in_psi(part.rating), 1.0);
    EXPECT_LE(in_psi(part.rating), 10000.0);
    ASSERT_GE(part.ports.size(), 1U);
    const bool drilled_fine = testing::shipped_catalog().family(part.family).role == Role::restrictor;  // to 1/32 in
    for (const Port& one : part.ports) {
      EXPECT_GT(in_inches(one.bore), drilled_fine ? 0.03 : 0.05);
      EXPECT_LT(in_inches(one.bore), 13.0);
      EXPECT_GE(in_inches(one.reach), 0.0);
      EXPECT_LT(in_feet(one.reach), 60.0);
      EXPECT_FALSE(testing::shipped_catalog().mates(one.type).empty()) << testing::shipped_catalog().written(one.type);
      const JointSize* joint = testing::shipped_catalog().joint_size(testing::shipped_catalog().port_type(one.type));
      ASSERT_NE(joint, nullptr);
      if (testing::shipped_catalog().port_type(one.type).end == End::male && joint->outside_diameter > Length{}) {
        EXPECT_LT(one.bore, joint->outside_diameter);
      }
    }
  }
}

// Two make-ups must fit into a part with two female ends, or the two pipe ends would meet inside it. A part whose ports
// are not in line has room around the corner.
TEST(ShippedCatalog, PipeEndsDoNotMeetInsideAStraightPartWithTwoFemaleThreads) {
  for (const Part& part : testing::shipped_catalog().parts()) {
    if (part.ports.size() != 2) continue;
    Length room{};
    bool both = true;
    for (const Port& one : part.ports) {
      const PortType type = testing::shipped_catalog().port_type(one.type);
      both = both && type.end == End::female && testing::shipped_catalog().kind(type.kind).id == "npt";
      room += one.reach - testing::shipped_catalog().joint_size(type)->make_up();
    }
    if (both) {
      EXPECT_GE(in_inches(room), 0.0) << part.id;
    }
  }
}

TEST(ShippedCatalog, PartIdsAreUniqueAndReadable) {
  std::set<std::string> ids;
  for (const Part& part : testing::shipped_catalog().parts()) {
    EXPECT_TRUE(ids.insert(part.id).second) << part.id;
    EXPECT_NE(part.id.find("/" + testing::shipped_catalog().material(part.material).id + "/"), std::string::npos)
        << part.id;
    EXPECT_EQ(part.id.find_first_not_of("abcdefghijklmnopqrstuvwxyz0123456789-./"), std::string::npos) << part.id;
    EXPECT_EQ(testing::shipped_catalog().find_part(part.id).value(),
              PartId{static_cast<std::uint32_t>(&part - testing::shipped_catalog().parts().data())});
  }
}

// A user's files name parts by id: these must not change.
TEST(ShippedCatalog, KnownPartIdsStay) {
  for (const char* id : {"reducing-coupling/black-iron/1x3-4", "nipple/galvanized/1x4", "union/black-iron/1",
                         "ball-valve/brass/3-4", "hex-bushing/black-iron/1x3-4", "check-valve/brass/1"})
    EXPECT_TRUE(testing::shipped_catalog().find_part(id).has_value()) << id;
}

TEST(ShippedCatalog, LoadsTheSameEachTime) {
  const Catalog again = load_catalog(std::filesystem::path(RISERUN_SOURCE_DIR) / "catalog");
  EXPECT_EQ(testing::written_out(testing::shipped_catalog()), testing::written_out(again));
}

TEST(ShippedCatalog, MatingIsMutual) {
  for (std::uint32_t row = 0; row < testing::shipped_catalog().port_types().size(); ++row) {
    for (const Mate& mate : testing::shipped_catalog().mates(PortTypeId{row})) {
      const auto back = testing::shipped_catalog().mates(mate.other);
      const auto is_back = [&](const Mate& other) { return other.other == PortTypeId{row} && other.rule == mate.rule; };
      EXPECT_TRUE(std::any_of(back.begin(), back.end(), is_back))
          << testing::shipped_catalog().written(PortTypeId{row});
    }
  }
}

TEST(ShippedCatalog, EveryMatingRuleJoinsSomethingAndNamesItsSealAndSource) {
  std::set<std::uint32_t> used;
  for (std::uint32_t row = 0; row < testing::shipped_catalog().port_types().size(); ++row)
    for (const Mate& mate : testing::shipped_catalog().mates(PortTypeId{row})) used.insert(mate.rule);
  for (std::uint32_t row = 0; row < testing::shipped_catalog().mating_rules().size(); ++row) {
    const MatingRule& rule = testing::shipped_catalog().mating_rules()[row];
    EXPECT_TRUE(used.contains(row)) << row;
    EXPECT_FALSE(rule.source.empty()) << row;
    EXPECT_FALSE(testing::shipped_catalog().notation(rule.kind_a, rule.end_a).empty()) << row;
    EXPECT_FALSE(testing::shipped_catalog().notation(rule.kind_b, rule.end_b).empty()) << row;
    if (!rule.seal.empty()) {
      EXPECT_NE(testing::shipped_catalog().seal(rule.seal), nullptr) << rule.seal;
    }
    if (rule.closing) {
      EXPECT_EQ(rule.turning, Turning::neither) << row;
    }
  }
}

TEST(ShippedCatalog, LookAlikesNeverMate) {
  ASSERT_FALSE(testing::shipped_catalog().look_alikes().empty());
  for (std::uint32_t a = 0; a < testing::shipped_catalog().port_types().size(); ++a)
    for (const Mate& mate : testing::shipped_catalog().mates(PortTypeId{a}))
      EXPECT_EQ(testing::shipped_catalog().look_alike(testing::shipped_catalog().port_type(PortTypeId{a}),
                                                      testing::shipped_catalog().port_type(mate.other)),
                nullptr)
          << testing::shipped_catalog().written(PortTypeId{a}) << " and "
          << testing::shipped_catalog().written(mate.other);
}

TEST(ShippedCatalog, PipeThreadsOfTheTwoSystemsNeverMate) {
  const auto is = [](const PortType& type, std::string_view begin) {
    return testing::shipped_catalog().kind(type.kind).id.starts_with(begin);
  };
  int npt_ends = 0;
  for (std::uint32_t row = 0; row < testing::shipped_catalog().port_types().size(); ++row) {
    const PortType& type = testing::shipped_catalog().port_type(PortTypeId{row});
    if (!is(type, "np")) continue;
    ++npt_ends;
    for (const Mate& mate : testing::shipped_catalog().mates(PortTypeId{row}))
      EXPECT_FALSE(is(testing::shipped_catalog().port_type(mate.other), "bsp"))
          << testing::shipped_catalog().written(PortTypeId{row});
  }
  EXPECT_GT(npt_ends, 20);
  EXPECT_NE(testing::shipped_catalog().look_alike(testing::shipped_catalog().port_type(port("1/2 MNPT")),
                                                  testing::shipped_catalog().port_type(port("1/2 FBSPT"))),
            nullptr);
}

TEST(ShippedCatalog, HoseThreadIsNotPipeThread) {
  EXPECT_EQ(testing::shipped_catalog().mating_rule(port("3/4 MGHT"), port("3/4 FNPT")), nullptr);
  EXPECT_EQ(testing::shipped_catalog().mating_rule(port("3/4 MNPT"), port("3/4 FGHT")), nullptr);
  EXPECT_NE(testing::shipped_catalog().look_alike(testing::shipped_catalog().port_type(port("3/4 MNPT")),
                                                  testing::shipped_catalog().port_type(port("3/4 FGHT"))),
            nullptr);
  EXPECT_NE(testing::shipped_catalog().mating_rule(port("3/4 MGHT"), port("3/4 FGHT")), nullptr);
}

TEST(ShippedCatalog, UnionsAndHosesCloseAChainAndCouplingsDoNot) {
  const auto all = [](std::string_view words, auto holds) {
    const std::vector<PartId> parts = find_parts(testing::shipped_catalog(), words);
    return !parts.empty() && std::all_of(parts.begin(), parts.end(),
                                         [&](PartId id) { return holds(testing::shipped_catalog().part(id)); });
  };
  EXPECT_TRUE(all("union", [](const Part& part) { return part.closing; }));
  EXPECT_TRUE(all("dielectric union", [](const Part& part) { return part.closing && part.dielectric; }));
  EXPECT_TRUE(all("coupling", [](const Part& part) { return !part.closing; }));
  EXPECT_TRUE(all("check valve", [](const Part& part) { return part.one_way; }));
  const MatingRule* on_barb = testing::shipped_catalog().mating_rule(port("3/4 barb"), port("3/4 hose"));
  ASSERT_NE(on_barb, nullptr);
  EXPECT_TRUE(on_barb->closing);
}

// OSHA hazard information bulletin of 13 December 1990: no PVC where compressed air can be.
TEST(ShippedCatalog, NoPvcWhereCompressedAirIs) {
  int plastic = 0;
  for (const Part& part : testing::shipped_catalog().parts()) {
    if (testing::shipped_catalog().material(part.material).id.find("pvc") == std::string::npos) continue;
    ++plastic;
    EXPECT_FALSE(part.air) << part.id;
  }
  EXPECT_GT(plastic, 10);
}

// ASME BPVC section VIII UG-135 (from memory): nothing that can shut stands before a relief valve, so that each such
// part must be known for one. A one-way part shuts by itself.
TEST(ShippedCatalog, WhateverCanShutIsMarked) {
  int marked = 0;
  for (const Part& part : testing::shipped_catalog().parts()) {
    const Family& family = testing::shipped_catalog().family(part.family);
    marked += family.can_shut ? 1 : 0;
    if (family.role == Role::relief_valve) continue;
    bool shuts = part.one_way;
    for (const char* word : {"valve", "bibb", "regulator", "air coupler", "wye"})
      shuts = shuts || family.name.find(word) != std::string::npos;
    EXPECT_EQ(family.can_shut, shuts) << part.id;
  }
  EXPECT_GT(marked, 30);
}

// Common practice: malleable, galvanized and brass fittings are not welded in.
TEST(ShippedCatalog, WeldBungsAreOfMetalThatIsWelded) {
  int bungs = 0;
  for (const Part& part : testing::shipped_catalog().parts()) {
    if (testing::shipped_catalog().family(part.family).weld_bung == WeldBung::none) continue;
    ++bungs;
    const std::string& material = testing::shipped_catalog().material(part.material).id;
    EXPECT_TRUE(material != "galvanized" && material != "brass" && material != "black-iron" && material != "pvc")
        << part.id;
  }
  EXPECT_GT(bungs, 10);
}

// A few tens of milliseconds in a Release build; several times that under sanitizers, on a busy machine more: this
// bound only catches a load that has become slow by an order of magnitude.
TEST(ShippedCatalog, LoadsQuickly) {
  const auto begin = std::chrono::steady_clock::now();
  load_catalog(std::filesystem::path(RISERUN_SOURCE_DIR) / "catalog");
  const std::chrono::duration<double> took = std::chrono::steady_clock::now() - begin;
  RecordProperty("milliseconds", static_cast<int>(took.count() * 1000.0));
  EXPECT_LT(took.count(), 6.0);
}

}  // namespace
}  // namespace riserun::catalog
