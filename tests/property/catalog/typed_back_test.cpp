// What is printed of the catalog is read again as the same thing: the name of every part, every port.
#include "catalog/load/load.h"
#include "catalog/words/part_search.h"
#include "catalog/words/port_notation.h"

#include <gtest/gtest.h>

#include <map>
#include <string>
#include <vector>

namespace riserun::catalog {
namespace {

const Catalog& shipped() {
  static const Catalog catalog = load_catalog(std::string(RISERUN_SOURCE_DIR) + "/catalog");
  return catalog;
}

std::string printed(const Part& part, const char* between) {
  return part.name + between + shipped().material(part.material).name;
}

TEST(PrintedNames, OfEveryPartFindThatPartAlone) {
  PartSearch search(shipped());
  for (std::uint32_t row = 0; row < shipped().parts().size(); ++row) {
    const Part& part = shipped().part(PartId{row});
    for (const char* between : {", ", " "}) {
      const std::string name = printed(part, between);
      const auto one = search.find_one(name);
      ASSERT_TRUE(std::holds_alternative<PartId>(one)) << std::get<NotationError>(one).message;
      EXPECT_EQ(std::get<PartId>(one), PartId{row}) << name;
      const auto needed = search.find_called(name);
      ASSERT_TRUE(std::holds_alternative<std::vector<PartId>>(needed)) << std::get<NotationError>(needed).message;
      EXPECT_EQ(std::get<std::vector<PartId>>(needed), std::vector{PartId{row}}) << name;
    }
    EXPECT_EQ(search.find(part.id), std::vector{PartId{row}});
  }
}

/// A table that has the material in a column of its own prints the name alone.
TEST(PrintedNames, AloneFindAllThatArePrintedSo) {
  std::map<std::string, std::vector<PartId>> alike;
  for (std::uint32_t row = 0; row < shipped().parts().size(); ++row)
    alike[shipped().part(PartId{row}).name].push_back(PartId{row});
  PartSearch search(shipped());
  for (const auto& [name, parts] : alike) EXPECT_EQ(search.find(name), parts) << name;
}

TEST(PrintedPorts, AreReadAsThemselves) {
  const PortNotation notation(shipped());
  int ports = 0;
  for (std::uint32_t row = 0; row < shipped().port_types().size(); ++row) {
    const PortTypeId type{row};
    for (const std::string& text : {shipped().written(type), shipped().spelled(type)}) {
      const auto read = notation.read(text);
      ASSERT_TRUE(std::holds_alternative<PortTypeId>(read)) << std::get<NotationError>(read).message;
      EXPECT_EQ(std::get<PortTypeId>(read), type) << text;
      for (std::uint32_t metal = 0; metal < shipped().materials().size(); ++metal) {
        const std::string of_metal = text + " " + shipped().materials()[metal].name;
        const auto made = notation.read_made(of_metal);
        ASSERT_TRUE(std::holds_alternative<MadePort>(made)) << std::get<NotationError>(made).message;
        EXPECT_EQ(std::get<MadePort>(made).type, type) << of_metal;
        // `copper` is a word of a solder joint, too: then it says nothing more.
        if (!std::holds_alternative<PortTypeId>(notation.read(of_metal))) {
          EXPECT_EQ(std::get<MadePort>(made).material, MaterialId{metal}) << of_metal;
        }
        ++ports;
      }
    }
  }
  EXPECT_GT(ports, 1000);
}

}  // namespace
}  // namespace riserun::catalog
