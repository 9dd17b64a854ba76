// What a run is told to buy beside its parts, and what it is warned of.
#include "catalog/load/load.h"
#include "catalog/words/port_notation.h"
#include "chain/finder.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <string>

namespace riserun::chain {
namespace {

const Catalog& stocked() {
  static const Catalog catalog = catalog::load_catalog(std::string(RISERUN_SOURCE_DIR) + "/catalog");
  return catalog;
}

Chain run(const std::string& from, const std::string& to) {
  static const catalog::PortNotation notation(stocked());
  ChainRequest request;
  request.from.type = notation.find(from).value();
  request.to.type = notation.find(to).value();
  const Answer answer = Finder(stocked()).find(request);
  const Chain* chain = std::get_if<Chain>(&answer);
  EXPECT_NE(chain, nullptr) << from << " to " << to;
  return chain ? *chain : Chain{};
}

// A band of another size neither goes over the hose nor closes on it.
TEST(Clamps, AreOfTheHosesSize) {
  for (const char* size : {"1/4", "3/8", "1/2", "3/4", "1", "1-1/4", "1-1/2", "2"}) {
    const std::string barb = std::string(size) + " barb";
    const Chain chain = run(barb, barb);
    int clamps = 0;
    for (const JointGood& good : chain.goods) {
      if (!good.part) continue;
      const catalog::Part& clamp = stocked().part(*good.part);
      if (stocked().family(clamp.family).role != catalog::Role::hose_clamp) continue;
      clamps += good.count;
      EXPECT_EQ(good.size, size);
      EXPECT_EQ(stocked().size_name(stocked().port_type(clamp.ports[0].type).size), size) << clamp.name;
    }
    EXPECT_GE(clamps, 2) << size;
  }
}

bool is_called_narrow(const Chain& chain) {
  return std::any_of(chain.cautions.begin(), chain.cautions.end(),
                     [](const quantity::Fact& fact) { return fact.code == "much_narrower_than_the_ports"; });
}

// As wide as the smaller of its two ports is as wide as can be.
TEST(Narrow, IsLessThanTheSmallerOfTheTwoPorts) {
  EXPECT_FALSE(is_called_narrow(run("2 FNPT", "1/2 FNPT")));
  EXPECT_FALSE(is_called_narrow(run("1/2 FNPT", "2 FNPT")));
  EXPECT_FALSE(is_called_narrow(run("1 FNPT", "1 MNPT")));
}

}  // namespace
}  // namespace riserun::chain
