#include "property/chain/random_span.h"

#include "property/chain/every_span.h"

#include <algorithm>
#include <cmath>
#include <optional>
#include <string>
#include <utility>

namespace riserun::chain::testing {

using namespace riserun::catalog;  // NOLINT(google-build-using-namespace)

namespace {

PortTypeId type_of_some_port(Dice& dice, const Catalog& catalog) {
  const Part& part = catalog.part({static_cast<std::uint32_t>(dice.below(static_cast<int>(catalog.parts().size())))});
  return part.ports[static_cast<std::size_t>(dice.below(static_cast<int>(part.ports.size())))].type;
}

Part piece_to_cut(Dice& dice, const Catalog& catalog, int row) {
  Part part;
  part.id = part.name = std::string(1, static_cast<char>('a' + dice.below(26))) + "cut" + std::to_string(row);
  part.family = {0};
  part.material = {static_cast<std::uint32_t>(dice.one_of({0, 1, 1, 2, 3}))};
  const Length half = millimetres(dice.one_of({15.0, 25.0, 50.0, 100.0}));
  const PortTypeId one = type_of_some_port(dice, catalog);
  const PortTypeId other = dice.chance(60) ? one : type_of_some_port(dice, catalog);
  part.ports = {{one, millimetres(15.0), half, 180.0}, {other, millimetres(15.0), half, 0.0}};
  part.price = cents(dice.one_of({50, 100, 150}));
  part.rating = psig(300.0);
  part.stocked = dice.chance(85);
  const int how = dice.below(3);
  part.cut_to_length = how != 0;
  part.threaded_when_cut = how == 0;
  part.flexible = how == 2;
  return part;
}

/// Straight parts and bends of a few lengths, and pieces to cut.
Catalog world_with_lengths(Dice& dice) {
  const Catalog base = random_catalog(dice);
  CatalogBuilder builder(base);
  for (std::uint32_t row = 0; row < base.parts().size(); ++row) {
    Part part = base.part({row});
    const double turn = dice.one_of({180.0, 180.0, 180.0, 180.0, 270.0, 135.0});
    for (std::size_t i = 0; i < part.ports.size(); ++i) {
      part.ports[i].reach = millimetres(dice.one_of({5.0, 12.0, 20.0, 30.0, 45.0, 60.0}));
      part.ports[i].heading_degrees = i == 1   ? std::fmod(180.0 + turn, 360.0)
                                      : i == 0 ? 180.0
                                               : 90.0 * (i == 2 ? 1 : 3);
    }
    // A hose with its ends on it is straight, and as often as not long enough to be bowed.
    if (part.ports.size() == 2 && base.family(part.family).flexible && dice.chance(40)) {
      part.ports[1].heading_degrees = 0.0;
      for (Port& port : part.ports) port.reach = port.reach * static_cast<double>(dice.one_of({1, 4, 8, 12}));
    }
    // Between ends that stay where they are a run must close: every third part holds a closing joint.
    if (part.ports.size() == 2 && row % 3 == 0) part.closing = true;
    builder.replace({row}, part);
  }
  const int pieces = dice.one_of({0, 1, 2, 3});
  for (int i = 0; i < pieces; ++i) builder.add(piece_to_cut(dice, base, i));
  return std::move(builder).build();
}

Span random_span(Dice& dice) {
  Span span;
  span.along = millimetres(dice.chance(20) ? dice.below(30) : 5.0 * dice.below(70) + dice.below(3));
  if (dice.chance(45)) span.offset = millimetres(dice.one_of({10.0, 20.0, 35.0, 50.0, 80.0, 120.0}));
  if (span.offset > Length{} && dice.chance(30)) span.roll = millimetres(dice.one_of({15.0, 40.0, 90.0}));
  return span;
}

// As a rule the distance that some chain makes, give or take a few millimetres.
Span fitting_span(Dice& dice, Span made) {
  const Span any = random_span(dice);
  if (dice.chance(10)) return any;
  made.along = std::max(Length{}, made.along + millimetres(dice.between(-6, 6)));
  if (made.offset > Length{}) made.offset = std::max(millimetres(0.5), made.offset + millimetres(dice.between(-2, 2)));
  if (made.offset == Length{} && dice.chance(25)) made.offset = any.offset;
  return made;
}

SpanWorld drawn(Dice& dice, const ChangeOfWorld& change) {
  SpanWorld world{world_with_lengths(dice), {}, {}};
  ChainRequest& request = world.request;
  request = random_request(dice, world.catalog);
  if (dice.chance(60)) {
    request.banned.clear();
    request.most_parts.reset();
    request.rating.reset();
  }
  request.order = dice.one_of(
      {Order::line, Order::line, Order::parts, Order::price, Order::loss, Order::length, Order::bin, Order::bin});
  const auto still = [](Freedom f) {
    return f == Freedom::sliding ? Freedom::fixed : f == Freedom::loose ? Freedom::spinning : f;
  };
  request.from.freedom = still(request.from.freedom);
  request.to.freedom = still(request.to.freedom);
  if (change) change(dice, world.catalog, world.request);
  return world;
}

}  // namespace

// Most worlds in which no chain joins the two ports at any length are drawn again.
SpanWorld random_span_world(std::uint32_t seed, const ChangeOfWorld& change) {
  Dice dice(seed);
  SpanWorld world = drawn(dice, change);
  for (int tries = 0; tries < 6; ++tries) {
    const EverySpan every(world.catalog, world.request, {{}, dice.chance(45) ? millimetres(1.0) : Length{}, {}});
    const std::optional<Span> made = every.made_by_some_chain(dice, 200);
    if (!made) {
      world = drawn(dice, change);
      continue;
    }
    world.span = fitting_span(dice, *made);
    if (seed % 5 == 3) world.span.along += feet(1.0);  // longer than any nipple
    return world;
  }
  world.span = random_span(dice);
  return world;
}

}  // namespace riserun::chain::testing
