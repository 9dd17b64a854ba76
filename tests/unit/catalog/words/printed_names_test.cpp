// What is printed is read back as the same thing: names of parts, ports, and ports with what they are in.
#include "catalog/words/part_search.h"
#include "catalog/words/port_notation.h"
#include "unit/catalog/shipped_catalog.h"

#include <gtest/gtest.h>

#include <vector>

namespace riserun::catalog {
namespace {

// As a list, a chain and the window print them: name, and name with material.
TEST(PrintedNames, AreReadBackAsTheSamePart) {
  const Catalog& catalog = testing::shipped_catalog();
  PartSearch search(catalog);
  for (std::uint32_t row = 0; row < catalog.parts().size(); ++row) {
    const Part& part = catalog.part(PartId{row});
    const std::string& material = catalog.material(part.material).name;
    for (const std::string& text : {part.name + ", " + material, part.name + " " + material}) {
      const auto one = search.find_one(text);
      ASSERT_TRUE(std::holds_alternative<PartId>(one)) << text << ": " << std::get<NotationError>(one).message;
      EXPECT_EQ(catalog.part(std::get<PartId>(one)).id, part.id) << text;
    }
    if (part.names_material) {
      EXPECT_EQ(search.find(part.name), std::vector{PartId{row}}) << part.name;
    }
  }
}

TEST(ManyDescriptions, AreCountedInOneReadingAlone) {
  PartSearch search(testing::shipped_catalog());
  const auto nothing = [](int i) { return "zz" + std::to_string(i); };
  for (int i = 0; i <= 1000; ++i) EXPECT_TRUE(search.find(nothing(i)).empty());
  EXPECT_TRUE(std::holds_alternative<NotationError>(search.find_one("a ball valve of 1 in, brass")));
  search.begin_anew();
  const auto found = search.find_one("a 1 in ball valve of brass, full-bore");
  EXPECT_TRUE(std::holds_alternative<PartId>(found)) << std::get<NotationError>(found).message;
}

TEST(PrintedNames, OfPortsAreReadBackWithWhatTheyAreIn) {
  const Catalog& catalog = testing::shipped_catalog();
  const PortNotation notation(catalog);
  for (std::uint32_t row = 0; row < catalog.port_types().size(); ++row) {
    const std::string port = catalog.written(PortTypeId{row});
    const auto bare = notation.read_made(port);
    ASSERT_TRUE(std::holds_alternative<MadePort>(bare)) << port;
    EXPECT_EQ(std::get<MadePort>(bare).type, PortTypeId{row}) << port;
    EXPECT_FALSE(std::get<MadePort>(bare).material) << port;
    for (std::uint32_t material = 0; material < catalog.materials().size(); ++material) {
      const std::string& name = catalog.materials()[material].name;
      const auto made = notation.read_made(port + " " + name);
      ASSERT_TRUE(std::holds_alternative<MadePort>(made)) << port << ' ' << name;
      EXPECT_EQ(std::get<MadePort>(made).type, PortTypeId{row}) << port << ' ' << name;
    }
  }
}

TEST(MadePorts, SayWhatTheThingIsMadeOf) {
  const Catalog& catalog = testing::shipped_catalog();
  const auto said = [&](std::string_view text) -> std::string {
    const auto made = read_made_port(catalog, text);
    if (const auto* error = std::get_if<NotationError>(&made)) return error->message;
    const auto& [type, material] = std::get<MadePort>(made);
    return catalog.written(type) + (material ? ", " + catalog.material(*material).name : "");
  };
  EXPECT_EQ(said("1 FNPT aluminium"), "1 FNPT, aluminium");
  EXPECT_EQ(said("1 FNPT, aluminum"), "1 FNPT, aluminium");
  EXPECT_EQ(said("brass 3/4 MGHT"), "3/4 MGHT, brass");
  EXPECT_EQ(said("1-1/2 FNPT stainless steel"), "1-1/2 FNPT, stainless");
  EXPECT_EQ(said("1 FNPT steel"), "1 FNPT, mild steel");
  EXPECT_EQ(said("1/2 copper tube"), "1/2 copper tube");
  EXPECT_EQ(said("1 FNPT copper"), "1 FNPT, copper");
  EXPECT_EQ(said("1 MNPT plastic"), "1 MNPT plastic");
  EXPECT_EQ(said("1 NPT brass"), "the end is missing: 1 MNPT or 1 FNPT");
}

}  // namespace
}  // namespace riserun::catalog
