// Pipe offsets against the constants that pipe fitters reckon with (common practice, as any pipe trades manual gives
// them): travel = set x 1.414 with 45 degree elbows, run = set; with 90s the travel is the set. A rolling offset's true
// set is the root of the sum of the squares of its two offsets.
#include "catalog/load/load.h"
#include "catalog/words/avoided_parts.h"
#include "chain/finder.h"

#include <gtest/gtest.h>

#include <cmath>
#include <string>

namespace riserun::chain {
namespace {

const catalog::Catalog& shipped() {
  static const catalog::Catalog catalog = catalog::load_catalog(std::string(RISERUN_SOURCE_DIR) + "/catalog");
  return catalog;
}

void ban(ChainRequest& request, const std::string& words) {
  for (const PartId part : catalog::find_avoided_parts(shipped(), words)) request.banned[part.row] = true;
}

/// A run of 1 in pipe between two ports, with elbows of the one kind only.
Chain offset_run(const Span& span, const std::string& other_elbows) {
  ChainRequest request;
  const auto npt = *shipped().find_kind("npt");
  const auto size = *shipped().find_size("1");
  request.from.type = request.to.type = *shipped().find_port_type({npt, size, catalog::End::female});
  request.from.freedom = request.to.freedom = Freedom::spinning;
  request.banned.assign(shipped().parts().size(), false);
  ban(request, other_elbows);
  ban(request, "hose");
  // Cut pipe makes the offset to the mark, so that the constants show.
  for (const char* stock : {"nipple", "connector", "coupling", "street elbow"}) ban(request, stock);
  request.smallest_bore = inches(1.0);
  request.most_parts = 9;
  const Answer answer = Finder(shipped()).find_span(request, span);
  const Chain* chain = std::get_if<Chain>(&answer);
  EXPECT_NE(chain, nullptr) << std::get<NoChain>(answer).reason.code;
  return chain ? *chain : Chain{};
}

TEST(Offset, With45sTravelsTheSetTimes1414AndRunsTheSet) {
  const Chain chain = offset_run({inches(40.0), inches(12.0), {}}, "90");
  ASSERT_TRUE(chain.span);
  EXPECT_NEAR(chain.span->bend_degrees, 45.0, 1e-9);
  EXPECT_NEAR(in_inches(chain.span->travel), 12.0 * 1.414, 0.01);
  EXPECT_NEAR(in_inches(chain.span->lands_aside), 12.0, 1e-3);
  EXPECT_NEAR(in_inches(chain.span->lands), 40.0, 1e-3);
}

TEST(Offset, With90sTravelsTheSet) {
  const Chain chain = offset_run({inches(30.0), inches(14.0), {}}, "45");
  ASSERT_TRUE(chain.span);
  EXPECT_NEAR(chain.span->bend_degrees, 90.0, 1e-9);
  EXPECT_NEAR(in_inches(chain.span->travel), 14.0, 1e-3);
  EXPECT_NEAR(in_inches(chain.span->lands), 30.0, in_inches(chain.span->band));
}

// Offsets of 6 and 8 in at right angles: 10 in true set; times 1.414 is 14.14 in of travel.
TEST(Offset, RollsByTheRootOfTheSumOfTheSquares) {
  const Span span{inches(40.0), inches(6.0), inches(8.0)};
  EXPECT_NEAR(in_inches(span.aside()), 10.0, 1e-9);
  const Chain chain = offset_run(span, "90");
  ASSERT_TRUE(chain.span);
  EXPECT_NEAR(in_inches(chain.span->travel), 14.14, 0.01);
}

// Cut length of the travel piece: centre to centre less both take-outs plus both engagements (common practice). A 45 of
// 1 in has 1.12 in from centre to end (ASME B16.3, from memory); NPT 1 in goes in 0.400 + 0.2609 in (ASME B1.20.1).
TEST(Offset, CutsTheTravelPieceByCentresLessTakeOutsPlusEngagements) {
  const Chain chain = offset_run({inches(40.0), inches(8.0), {}}, "90");
  ASSERT_TRUE(chain.span);
  double travel_piece = 0.0;
  int bends = 0;
  for (const RunPart& link : chain.parts) {
    bends += shipped().family(shipped().part(link.part).family).name == "45 elbow" ? 1 : 0;
    if (bends == 1 && link.cut_length) travel_piece = in_inches(*link.cut_length);
  }
  EXPECT_EQ(bends, 2);
  EXPECT_NEAR(travel_piece, 8.0 * std::sqrt(2.0) - 2.0 * 1.12 + 2.0 * (0.400 + 0.2609), 0.002);
}

}  // namespace
}  // namespace riserun::chain
