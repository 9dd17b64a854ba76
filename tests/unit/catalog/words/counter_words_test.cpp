// What a person says at the counter is the right part or port, mistyped or not; what can be read two ways is said so.
#include "catalog/words/part_search.h"
#include "unit/catalog/shipped_catalog.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <set>
#include <string>
#include <variant>
#include <vector>

namespace riserun::catalog {
namespace {

using ::testing::HasSubstr;

struct Said {
  const char* words;
  const char* family;
  const char* size;  // of the first part; nullptr: any
};

// Common practice: names of the US trade, as they are said and as they are typed in a hurry.
constexpr Said kParts[] = {
    {"3/4 hose bibb", "hose bibb", "3/4 MNPT x 3/4 MGHT"},
    {"hose bib, half inch", "hose bibb", "1/2 MNPT x 3/4 MGHT"},
    {"boiler drain 1/2", "hose bibb", "1/2 MNPT x 3/4 MGHT"},
    {"sillcock", "hose bibb", nullptr},
    {"close nipple 3/4", "close nipple", "3/4 close"},
    {"3/4 black close nipple", "close nipple", "3/4 close"},
    {"all-thread nipple 1 in", "close nipple", "1 close"},
    {"running thread nipple", "close nipple", nullptr},
    {"1 x 6 nipple galv", "nipple", "1 x 6 in"},
    {"1-1/2 by 4 inch brass nipple", "nipple", "1-1/2 x 4 in"},
    {"long nipple", "nipple", nullptr},
    {"street ell 3/4", "90 street elbow", "3/4"},
    {"street 90 3/4", "90 street elbow", "3/4"},
    {"90 3/4 blk", "90 elbow", "3/4"},
    {"3/4 blk nip", "close nipple", nullptr},
    {"1 in ball vlv", "ball valve", "1"},
    {"3/4 cplg", "coupling", "3/4"},
    {"1 x 3/4 bshg", "hex bushing", "1 x 3/4"},
    {"1/2 shutoff", "ball valve", "1/2"},
    {"1 in street 90", "90 street elbow", "1"},
    {"service ell", "90 street elbow", nullptr},
    {"street 45", "45 street elbow", nullptr},
    {"1/2 ell", "90 elbow", "1/2"},
    {"3/4 galv 90", "90 elbow", "3/4"},
    {"45 ell 1-1/4", "45 elbow", "1-1/4"},
    {"swage nipple 1 x 3/4", "reducing nipple", "1 x 3/4"},
    {"swage, inch and a half by one inch", "reducing nipple", "1-1/2 x 1"},
    {"swedge nipple", "reducing nipple", nullptr},
    {"bell reducer 2 x 1", "reducing coupling", "2 x 1"},
    {"reducing bell 1-1/4 x 3/4", "reducing coupling", "1-1/4 x 3/4"},
    {"1 by half reducer", "reducing coupling", "1 x 1/2"},
    {"1 x half bushing", "hex bushing", "1 x 1/2"},
    {"hexagon bushing 3/4 x 1/4 black", "hex bushing", "3/4 x 1/4"},
    {"flush bushing 1 x 3/4", "face bushing", "1 x 3/4"},
    {"double tap bushing 1-1/4 x 3/4", "double-tapped bushing", "1-1/4 x 3/4"},
    {"merchant coupling 1/2", "coupling", "1/2"},
    {"half coupling 1-1/2", "half coupling", "1-1/2"},
    {"weld bung 3/4", "half coupling", "3/4"},
    {"boss, 1 inch", "half coupling", "1"},
    {"ground joint union 1", "union", "1"},
    {"1-1/4 galvanized union", "union", "1-1/4"},
    {"dielectric union 3/4 FIP x 3/4 cup", "dielectric union", "3/4 FNPT x 3/4 cup"},
    {"slip union 1-1/2", "PVC union", "1-1/2"},
    {"square head plug 1/2", "plug", "1/2"},
    {"countersunk plug 3/4", "countersunk plug", "3/4"},
    {"hex plug 1/4", "hex head plug", "1/4"},
    {"pipe cap 2", "cap", "2"},
    {"straight tee 1", "tee", "1"},
    {"four-way 1/2", "cross", "1/2"},
    {"reducing tee 1 x 1 x 3/4", "reducing tee", "1 x 1 x 3/4"},
    {"black pipe 1 x 36", "threaded pipe", "1 x 36 in"},
    {"gas pipe", "threaded pipe", nullptr},
    {"lever valve 1", "ball valve", "1"},
    {"full port ball valve 3/4", "ball valve", "3/4"},
    {"shut-off valve 1/2", "ball valve", "1/2"},
    {"gate 3/4", "gate valve", "3/4"},
    {"swing check 1-1/2", "check valve", "1-1/2"},
    {"flapper check", "check valve", nullptr},
    {"inline check valve 1/2", "spring check valve", "1/2"},
    {"spring check 1/8", "spring check valve", "1/8"},
    {"soft-seated check valve 3/8", "spring check valve", "3/8"},
    {"Y strainer 3/4", "pipe strainer", "3/4"},
    {"wye strainer", "pipe strainer", nullptr},
    {"whole-house filter", "sediment filter housing", nullptr},
    {"metering valve 1/4", "needle valve", "1/4"},
    {"0-30 psi gauge", "pressure gauge", "0 to 30 psi, 1/8 MNPT"},
    {"15 psi dial", "pressure gauge", "0 to 15 psi, 1/8 MNPT"},
    {"0-30 psi regulator", "air regulator", "1/4, 0 to 30 psi"},
    {"inches of water gauge", "draft gauge", nullptr},
    {"pop-off valve set 2 psi", "relief valve", "1/4 MNPT, set 2 psi"},
    {"safety valve 3/4 set 3 psi", "relief valve", "3/4 MNPT, set 3 psi"},
    {"industrial plug", "air plug", nullptr},
    {"1/4 industrial plug", "air plug", nullptr},
    {"1/4 industrial interchange plug", "air plug", nullptr},
    {"male air nipple 1/4", "air plug", nullptr},
    {"air hose fitting 1/4 male", "air plug", nullptr},
    {"quick-connect coupler 1/4", "air coupler", nullptr},
    {"quick disconnect 1/4 female", "air coupler", nullptr},
    {"quick disconnect", "air coupler", nullptr},
    {"flex line 3/4", "flexible connector", nullptr},
    {"relief valve set 55 inH2O", "relief valve", "1/4 MNPT, set 2 psi"},
    {"relief valve 55 in H2O", "relief valve", "1/4 MNPT, set 2 psi"},
    {"relief valve set 55 in wc", "relief valve", "1/4 MNPT, set 2 psi"},
    {"relief valve set 55 in w.c.", "relief valve", "1/4 MNPT, set 2 psi"},
    {"relief valve, 32 oz/in2", "relief valve", "1/4 MNPT, set 2 psi"},
    {"gauge 0 to 60 inches of water", "draft gauge", nullptr},
    {"0-60 inH2O gauge", "draft gauge", "0 to 60 inH2O, 1/4 MNPT"},
    {"gauge 0-30 in w.c.", "draft gauge", "0 to 30 inH2O, 1/4 MNPT"},
    {"low pressure regulator 0-10", "air regulator", nullptr},
    {"petcock 1/4", "ball valve", "1/4"},
    {"quarter turn valve 1/2", "ball valve", "1/2"},
    {"bell reducer 3/4 to 1/2", "reducing coupling", "3/4 x 1/2"},
    {"bushing 1/2 to 1/4", "hex bushing", "1/2 x 1/4"},
    {"clapper valve 1", "check valve", "1"},
    {"backflow check 1/2", "check valve", "1/2"},
    {"muffler 1/4", "vent muffler", "1/4"},
    {"breather 1/4", "vent muffler", "1/4"},
    {"orifice 1/16", "restrictor", nullptr},
    {"hose spigot 3/4", "hose bibb", nullptr},
    {"black nipple 1/2 x 2-1/2", "nipple", "1/2 x 2-1/2 in"},
    {"TBE nipple 1 x 3", "nipple", "1 x 3 in"},
    {"90 degree ell 3/4", "90 elbow", "3/4"},
    {"water separator 1/4", "air filter", "1/4"},
    {"push-in male connector 1/4 x 1/8", "push-in to male pipe", "1/4 push-in x 1/8 MNPT"},
    {"1/2 hose barb x 1/2 MIP brass", "barb to male pipe", "1/2 barb x 1/2 MNPT"},
    {"combo nipple 2", "combination nipple", "2 barb x 2 MNPT"},
    {"hose mender 3/4", "barb splicer", "3/4"},
    {"worm clamp 1", "hose clamp", "1"},
    {"radiator clamp", "hose clamp", nullptr},
    {"heater hose 3/4", "hose", "3/4"},
    {"clear tubing half inch", "hose", "1/2"},
    {"wire-wound suction hose 2", "suction hose", "2"},
    {"washing machine hose", "fill hose", nullptr},
    {"hose wye", "hose wye", nullptr},
    {"flare half union 1/2 x 1/2", "45 flare to male pipe", "1/2 male 45 flare x 1/2 MNPT"},
    {"flare nut 5/8", "45 flare nut", "5/8"},
    {"camlock C 2", "cam coupler C", "2"},
    {"type F camlock 1-1/2", "cam adapter F", "1-1/2"},
    {"sweat elbow 3/4", "copper 90 elbow", "3/4"},
    {"slip bushing 2 x 1-1/2", "PVC reducing bushing", "2 x 1-1/2"},
    {"grey nipple 1 x 4", "PVC nipple", "1 x 4 in"},
    {"white pipe 2", "PVC pipe", "2"},
    {"PVC male adapter 1-1/2", "PVC male adapter", "1-1/2 socket x 1-1/2 MNPT"},
    {"band coupling 2", "flexible drain sleeve", nullptr},
    {"tank adapter 1", "bulkhead fitting", "1"},
    // mistyped
    {"1/2 cuppling", "coupling", "1/2"},
    {"galvinized unoin 1", "union", "1"},
    {"reducng bushing 1 x 3/4", "hex bushing", "1 x 3/4"},
    {"presure guage 0-60", "pressure gauge", "0 to 60 psi, 1/8 MNPT"},
    {"air regulater 1/4", "air regulator", nullptr},
    {"stret elbow 1/2", "90 street elbow", "1/2"},
    {"nippel 3/4 x 3 brass", "nipple", "3/4 x 3 in"},
    {"dielectic union", "dielectric union", nullptr},
    {"stainles ball vlave 1", "ball valve", "1"},
    {"strianer 1/2", "pipe strainer", "1/2"},
    {"counterunk plug", "countersunk plug", nullptr},
    {"bulkhed fitting 3/4", "bulkhead fitting", "3/4"},
};

// A word that is two slips off a short one is another word: it is asked back for.
TEST(CounterWords, OnlyNearAreAskedBack) {
  const Catalog& catalog = testing::shipped_catalog();
  PartSearch search(catalog);
  for (const auto& [word, meant] : {std::pair("unicorn", "union"), std::pair("bushel", "bush")}) {
    const auto found = search.find_called(word);
    ASSERT_TRUE(std::holds_alternative<NotationError>(found)) << word;
    EXPECT_THAT(std::get<NotationError>(found).message, HasSubstr(std::string("did you mean ") + meant)) << word;
  }
}

TEST(CounterWords, WhatIsSaidOtherwiseIsToldAsWhatItIsTakenFor) {
  const Catalog& catalog = testing::shipped_catalog();
  PartSearch search(catalog);
  const auto taken = [&](const char* words) {
    return search.taken_for(words, std::get<std::vector<PartId>>(search.find_called(words)));
  };
  EXPECT_THAT(taken("unoin"), ::testing::Contains("union"));
  EXPECT_THAT(taken("petcock 1/4"), ::testing::ElementsAre("ball valve"));
  EXPECT_THAT(taken("ball valve"), ::testing::IsEmpty());
  EXPECT_THAT(taken("1 unions"), ::testing::IsEmpty());
}

struct SaidPort {
  const char* words;
  const char* port;
};

constexpr SaidPort kPorts[] = {
    {"three quarter FIP", "3/4 FNPT"},
    {"inch and a quarter male pipe", "1-1/4 MNPT"},
    {"half inch female iron pipe", "1/2 FNPT"},
    {"3/4 MHT", "3/4 MGHT"},
    {"female hose thread 3/4", "3/4 FGHT"},
    {"half inch barb", "1/2 barb"},
    {"dash eight JIC male", "1/2 male 37 flare"},
    {"1/2 SAE flare male", "1/2 male 45 flare"},
    {"1-1/2 male camlock", "1-1/2 cam adapter"},
    {"2 in female slip", "2 socket"},
    {"1 IPS female", "1 FNPT"},
    {"3/4 femal npt", "3/4 FNPT"},
    {"1/2 sweat cup", "1/2 solder cup"},
    {"1/4 push in", "1/4 push-in"},
    {"3/4 FIPT", "3/4 FNPT"},
    {"3/4 MIPT", "3/4 MNPT"},
    {"2 camlock coupler", "2 cam coupler"},
    {"2 camlock adapter", "2 cam adapter"},
    {"1/2 pushfit", "1/2 push-on"},
    {"3/8 rubber hose", "3/8 hose end"},
    {"1 FNTP", "1 FNPT"},
    {"3/4 garden hsoe male", "3/4 MGHT"},
    {"AN-6 male", "3/8 male 37 flare"},
    {"male -6 AN", "3/8 male 37 flare"},
    {"6 AN female", "3/8 female 37 flare swivel"},
    {"an 1/2 FNPT", "1/2 FNPT"},
    {"1/2 OD tube", "3/8 copper tube"},
    {"5/8 in OD PEX", "1/2 PEX tube"},
    {"1/2 OD compression", "1/2 compression"},
};

TEST(CounterWords, AreTheRightPartOrPort) {
  const Catalog& catalog = testing::shipped_catalog();
  PartSearch search(catalog);
  int wrong = 0;
  for (const Said& said : kParts) {
    const auto found = search.find_called(said.words);
    const auto* parts = std::get_if<std::vector<PartId>>(&found);
    std::string what = parts == nullptr ? std::get<NotationError>(found).message : "";
    bool right = false;
    if (parts != nullptr) {
      const Part& first = catalog.part(parts->front());
      what = first.id + " of size " + first.size;
      right = catalog.family(first.family).name == said.family && (said.size == nullptr || first.size == said.size);
    }
    if (right) continue;
    ++wrong;
    ADD_FAILURE() << said.words << ": " << what;
  }
  for (const SaidPort& said : kPorts) {
    const auto port = search.ports().read(said.words);
    const auto* type = std::get_if<PortTypeId>(&port);
    const std::string what = type ? catalog.written(*type) : std::get<NotationError>(port).message;
    if (what == said.port) continue;
    ++wrong;
    ADD_FAILURE() << said.words << ": " << what;
  }
  EXPECT_EQ(wrong, 0) << "of " << std::size(kParts) + std::size(kPorts);
  EXPECT_GE(std::size(kParts) + std::size(kPorts), 100U);
}

std::string error_of(const std::variant<std::vector<PartId>, NotationError>& found) {
  const auto* error = std::get_if<NotationError>(&found);
  return error ? error->message : "no error";
}

TEST(CounterWords, WhatCanBeReadTwoWaysNamesThem) {
  PartSearch search(testing::shipped_catalog());
  EXPECT_EQ(error_of(search.find_called("PRV")),
            "'PRV' can be read in several ways, say which: air regulator or relief valve");
  EXPECT_THAT(error_of(search.find_called("0-30 psi")), HasSubstr("air regulator or pressure gauge"));
  const auto port_error = [&](std::string_view text) {
    const auto port = search.ports().read(text);
    return std::holds_alternative<PortTypeId>(port) ? "no error" : std::get<NotationError>(port).message;
  };
  EXPECT_EQ(port_error("1/2 flare male"), "this can be read in several ways: 1/2 male 37 flare or 1/2 male 45 flare");
  EXPECT_THAT(port_error("1/2 flare"), HasSubstr("1/2 male 37 flare"));
  EXPECT_THAT(port_error("1/2 flare"), HasSubstr("1/2 male 45 flare"));
  EXPECT_EQ(port_error("2 camlock"), "the end is missing: 2 cam adapter or 2 cam coupler");
  const auto made_error = [&](std::string_view text) {
    const auto port = search.ports().read_made(text);
    return std::holds_alternative<MadePort>(port) ? "no error" : std::get<NotationError>(port).message;
  };
  EXPECT_EQ(made_error("3/4 copper"),
            "the kind of joint is missing; of copper there is 3/4 copper tube, 3/4 solder cup, 3/4 MNPT or 3/4 FNPT");
  EXPECT_EQ(port_error("1/2 push to connect"), "this can be read in several ways: 1/2 push-on or 1/2 push-in");
}

// Asked for by number, as at the counter: a number before the plural counts, or is a size.
TEST(CounterWords, ANumberThatMayCountSaysHowToWriteEither) {
  PartSearch search(testing::shipped_catalog());
  EXPECT_EQ(error_of(search.find_called("2 ball valves")),
            "'2 ball valves' can be a number of them or a size: for 2 of them ask for 'ball valve' 2 times, for the "
            "size write '2 in ball valve'");
  EXPECT_THAT(error_of(search.find_called("unions x2")), HasSubstr("for 2 of them ask for 'union' 2 times"));
  EXPECT_THAT(error_of(search.find_called("2 x union")), HasSubstr("for the size write '2 in union'"));
  for (const char* size : {"2 in ball valves", "2 ball valve", "1-1/2 unions", "3/4 x 1/2 bushings", "1 unions",
                           "1 x 2 nipple", "2 brass"})
    EXPECT_EQ(error_of(search.find_called(size)), "no error") << size;
}

TEST(CounterWords, OfWhatIsNotInTheCatalogSayWhatServes) {
  PartSearch search(testing::shipped_catalog());
  EXPECT_THAT(error_of(search.find_called("1 globe valve")), HasSubstr("'gate valve' or 'ball valve' shuts"));
  EXPECT_THAT(error_of(search.find_called("floor flange 1")), HasSubstr("'threaded flange'"));
  EXPECT_THAT(error_of(search.find_called("sight glasses")), HasSubstr("'vinyl hose'"));
  EXPECT_THAT(error_of(search.find_called("1/2 float valve")), HasSubstr("'ball valve'"));
  EXPECT_THAT(error_of(search.find_called("pipe dope")), HasSubstr("is no part"));
  EXPECT_THAT(error_of(search.find_called("1/2 CPVC elbow")), HasSubstr("'copper' and 'PEX'"));
  for (const char* served : {"vinyl hose", "gate valve", "ball valve", "check valve", "needle valve", "copper", "PEX"})
    EXPECT_EQ(error_of(search.find_called(served)), "no error") << served;
  const auto why_no_port = [&](std::string_view text) {
    const auto port = search.ports().read(text);
    return std::holds_alternative<PortTypeId>(port) ? "no error" : std::get<NotationError>(port).message;
  };
  EXPECT_THAT(why_no_port("1/2 CPVC"), HasSubstr("CPVC is not in the catalog"));
  EXPECT_THAT(why_no_port("3/8 ORB"), HasSubstr("O-ring boss"));
  // CTS is the outside diameter of copper tube and of PEX (ASTM B88, ASTM F876: published).
  EXPECT_EQ(why_no_port("1/2 CTS"), "this can be read in several ways: 1/2 copper tube or 1/2 PEX tube");
}

TEST(CounterWords, ALengthIsNoThread) {
  const Catalog& catalog = testing::shipped_catalog();
  PartSearch search(catalog);
  const auto sizes_of_all = [&](const std::variant<std::vector<PartId>, NotationError>& found) {
    std::set<std::string> sizes;
    for (const PartId id : std::get<std::vector<PartId>>(found)) sizes.insert(catalog.part(id).size);
    return sizes;
  };
  const std::set<std::string> sizes = sizes_of_all(search.find_called("3 in nipple"));
  EXPECT_TRUE(sizes.contains("1/2 x 3 in"));
  EXPECT_TRUE(sizes.contains("1 x 3 in"));
  EXPECT_FALSE(sizes.contains("1 x 4 in"));
  // Of one thread every length is listed.
  const std::set<std::string> listed = sizes_of_all(search.find_all("1 nipple black iron"));
  EXPECT_TRUE(listed.contains("1 x 2 in"));
  EXPECT_TRUE(listed.contains("1 x 6 in"));
  EXPECT_FALSE(listed.contains("1/2 x 3 in"));
}

// One letter too few in a word of four is a slip like any other.
TEST(CounterWords, AShortWordMayLackALetter) {
  PartSearch search(testing::shipped_catalog());
  EXPECT_EQ(error_of(search.find_called("1/2 bal valve")), "no error");
  EXPECT_THAT(error_of(search.find_called("1/2 qqq valve")), HasSubstr("no part knows the word"));
}

std::vector<std::string> families_called(std::string_view words) {
  const Catalog& catalog = testing::shipped_catalog();
  std::vector<std::string> names;
  const auto found = PartSearch(catalog).find_called(words);
  for (const PartId part : std::get<std::vector<PartId>>(found)) {
    const std::string& name = catalog.family(catalog.part(part).family).name;
    if (std::find(names.begin(), names.end(), name) == names.end()) names.push_back(name);
  }
  return names;
}

TEST(CounterWords, ANeedIsMetByAllThatIsCalledSo) {
  EXPECT_THAT(families_called("union"), ::testing::IsSupersetOf({"union", "PVC union", "dielectric union"}));
  EXPECT_THAT(families_called("union"), ::testing::Not(::testing::Contains("45 flare to male pipe")));  // a half union
  EXPECT_THAT(families_called("check valve"),
              ::testing::IsSupersetOf({"check valve", "spring check valve", "PVC true-union check valve"}));
  // A valve that shuts; what checks, relieves or regulates has a name of its own.
  EXPECT_THAT(families_called("valve"), ::testing::IsSupersetOf({"ball valve", "gate valve", "PVC ball valve"}));
  EXPECT_THAT(families_called("valve"),
              ::testing::Not(::testing::Contains(::testing::AnyOf("check valve", "spring check valve", "foot valve",
                                                                  "relief valve", "PVC true-union check valve"))));
  EXPECT_THAT(families_called("foot valve"), ::testing::ElementsAre("foot valve"));
  EXPECT_THAT(families_called("check valve"), ::testing::Not(::testing::Contains("foot valve")));
  EXPECT_THAT(families_called("ball valve"), ::testing::IsSupersetOf({"ball valve", "PVC ball valve"}));
  EXPECT_THAT(families_called("gauge"), ::testing::UnorderedElementsAre("pressure gauge", "draft gauge"));
  EXPECT_THAT(families_called("hose"), ::testing::IsSupersetOf({"hose", "suction hose"}));  // as_meant tells them apart
  EXPECT_THAT(families_called("brass union"), ::testing::Not(::testing::Contains("PVC union")));
  EXPECT_THAT(families_called("PVC union"), ::testing::ElementsAre("PVC union"));
}

// A range is written in many ways; what is sold is meant, or named.
TEST(CounterWords, ReadAPressureInAnyUnit) {
  PartSearch search(testing::shipped_catalog());
  const auto marks = [&](const char* words) {
    std::vector<double> found;
    for (const PartId id : search.find(words)) {
      const Part& part = testing::shipped_catalog().part(id);
      const auto& mark = part.full_scale ? part.full_scale : part.opens_at;
      found.push_back(mark ? std::round(in_psi(*mark) * 10.0) / 10.0 : -1.0);
    }
    std::sort(found.begin(), found.end());
    found.erase(std::unique(found.begin(), found.end()), found.end());
    return found;
  };
  using ::testing::ElementsAre;
  EXPECT_THAT(marks("0-15 psi regulator"), ElementsAre(15.0));
  EXPECT_THAT(marks("0 to 1 bar gauge"), ElementsAre(15.0));
  EXPECT_THAT(marks("0-4 bar regulator"), ElementsAre(60.0));
  EXPECT_THAT(marks("100 kPa gauge"), ElementsAre(15.0));
  EXPECT_THAT(marks("gauge 0-100 psig"), ElementsAre(100.0));
  EXPECT_THAT(marks("0.2 bar relief valve"), ElementsAre(3.0));
}

TEST(CounterWords, OfAPressureThatNobodySellsSayWhatIsSold) {
  PartSearch search(testing::shipped_catalog());
  for (const char* words : {"0-100 psi regulator", "100 psi regulator", "0-7 bar regulator"}) {
    const auto found = search.find_called(words);
    const auto* error = std::get_if<NotationError>(&found);
    ASSERT_NE(error, nullptr) << words;
    EXPECT_THAT(error->message,
                ::testing::AllOf(HasSubstr("air regulator of 10"), HasSubstr("is sold; there are those of"),
                                 HasSubstr("15"), HasSubstr("60")));
  }
}

}  // namespace
}  // namespace riserun::catalog
