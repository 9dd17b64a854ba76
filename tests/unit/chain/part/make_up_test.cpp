// How far the ends of the shipped catalog go into each other.
#include "catalog/load/load.h"
#include "catalog/words/port_notation.h"
#include "chain/part/move.h"

#include <gtest/gtest.h>

#include <string>

namespace riserun::chain {
namespace {

const Catalog& sold() {
  static const Catalog catalog = catalog::load_catalog(std::string(RISERUN_SOURCE_DIR) + "/catalog");
  return catalog;
}

PortTypeId port(const std::string& words) {
  static const catalog::PortNotation notation(sold());
  return notation.find(words).value();
}

double inches_in(const std::string& a, const std::string& b) {
  const PortTypeId one = port(a);
  const PortTypeId other = port(b);
  return in_inches(make_up(sold(), one, other, *sold().mating_rule(one, other)));
}

// A tube goes to the stop of what grips it, as makers mark it on the tube (common practice), whatever its own end goes
// into a cup of its kind: 1/2 copper 0.5 in (ASME B16.22, from memory).
TEST(MakeUp, OfATubeIsTheDepthOfWhatGripsIt) {
  EXPECT_NEAR(inches_in("1/2 copper tube", "1/2 solder cup"), 0.5, 1e-6);
  EXPECT_NEAR(inches_in("1/2 push-on", "1/2 copper tube"), 1.0, 1e-6);
  EXPECT_NEAR(inches_in("1/2 PEX tube", "1/2 push-on"), 1.0, 1e-6);
  EXPECT_NEAR(inches_in("1/4 push-in", "1/4 air tube"), 0.6, 1e-6);
  EXPECT_NEAR(inches_in("5/8 compression", "1/2 copper tube"), 0.6, 1e-6);
}

// Where the rule's kind is the shallower, it rules: a straight thread in a swivel takes less than a taper thread has.
TEST(MakeUp, OfAMaleThreadIsNoMoreThanTheFemaleTakes) {
  EXPECT_NEAR(inches_in("3/4 NPSM swivel", "3/4 MNPT"), 0.38, 1e-6);
}

// In a sleeve of 1-1/2 in each side a spigot bushing is all in with its own body.
TEST(MakeUp, IsNoMoreThanAFittingWithSuchAnEndHas) {
  const PortTypeId spigot = port("1-1/2 spigot");
  const double in_sleeve = inches_in("1-1/2 drain sleeve", "1-1/2 spigot");
  EXPECT_LT(in_sleeve, 1.5);
  EXPECT_GT(in_sleeve, in_inches(insertion(sold(), spigot)));
  for (const catalog::PortUse& use : sold().uses(spigot)) {
    const catalog::Part& part = sold().part(use.part);
    if (part.cut_to_length || part.ports.size() != 2) continue;
    const double body = in_inches(part.ports[0].reach + part.ports[1].reach);
    EXPECT_NEAR(in_inches(body_length(sold(), part, use.port, 1 - use.port)), body, 1e-6) << part.name;
  }
}

// The search adds up lengths that are never negative.
TEST(MakeUp, IsNeverMoreThanTheDeepest) {
  for (std::uint32_t row = 0; row < sold().port_types().size(); ++row)
    for (const catalog::Mate& mate : sold().mates({row})) {
      const Length in = make_up(sold(), {row}, mate.other, sold().mating_rules()[mate.rule]);
      EXPECT_LE(in_inches(in),
                in_inches(std::max(deepest_insertion(sold(), {row}), deepest_insertion(sold(), mate.other))) + 1e-9);
    }
}

}  // namespace
}  // namespace riserun::chain
