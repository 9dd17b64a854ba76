#include "property/chain/random_world.h"

#include <cstdlib>
#include <string>

namespace riserun::chain::testing {

using namespace riserun::catalog;  // NOLINT(google-build-using-namespace)

namespace {

constexpr const char* kSizes[] = {"1/2", "3/4", "1"};

void add_materials(CatalogBuilder& builder) {
  const auto add = [&](const char* id, double volts, bool metal, bool air, bool pits = false) {
    Material material;
    material.id = material.name = id;
    material.anodic_index_volts = volts;
    material.metal = metal;
    material.compressed_air = air;
    material.pits = pits;
    if (material.id == "stainless") material.coat_on = "steel";
    material.roughness = millimetres(metal ? 0.05 : 0.002);
    builder.add(material);
  };
  add("nylon", 0.0, false, true);
  add("steel", 0.85, true, true);
  add("stainless", 0.50, true, true, true);
  add("brass", 0.30, true, true);
  add("shattering plastic", 0.0, false, false);
  add("iron", 0.85, true, true);  // the metal that steel is, under another name
}

void add_kind(CatalogBuilder& builder, Dice& dice, const std::string& id, bool has_genders, int size_count) {
  JointKind kind;
  kind.id = kind.name = id;
  if (has_genders) {
    kind.male_notation = "M" + id;
    kind.female_notation = "F" + id;
  } else {
    kind.neither_notation = id;
  }
  kind.threaded = has_genders;
  kind.tapered = has_genders;
  for (int i = 0; i < size_count; ++i) {
    JointSize size;
    size.size = builder.size(kSizes[i]);
    size.outside_diameter = millimetres(20.0 + 7.0 * i);
    size.hand_tight_engagement = millimetres(dice.one_of({0.0, 8.0, 10.0}));
    size.wrench_engagement = millimetres(dice.one_of({0.0, 5.0}));
    size.make_up_tolerance = millimetres(2.0);
    size.turns_past_hand_low = 1.5;
    size.turns_past_hand_high = 3.0;
    kind.sizes.push_back(size);
  }
  kind.by_outside = builder.so_far().kinds().size() == 2;
  const KindId row = builder.add(kind);
  MatingRule rule;
  rule.kind_a = rule.kind_b = row;
  rule.end_a = has_genders ? End::male : End::neither;
  rule.end_b = has_genders ? End::female : End::neither;
  const int how = dice.below(4);
  rule.turning = how < 2 ? Turning::either : Turning::neither;
  rule.closing = how == 3;
  rule.lengthwise = how == 3 && row.row % 4 == 1;
  rule.bowed = how == 3 && row.row % 4 == 2;
  rule.end_bows = kind.sizes.front().hand_tight_engagement > Length{};
  rule.seal = row.row % 2 == 1 ? "nut" : "sealant";
  builder.add(rule);
}

// Two kinds that go together in one pair of sizes, as a hose goes on a barb of another name.
void add_cross_rule(CatalogBuilder& builder, Dice& dice) {
  MatingRule rule;
  rule.kind_a = {0};
  rule.kind_b = {1};
  rule.end_a = End::male;
  rule.end_b = builder.so_far().kinds()[1].threaded ? End::female : End::neither;
  rule.sizes = {{builder.size("1/2"), builder.size(dice.one_of({"1/2", "3/4"}))}};
  rule.turning = Turning::neither;
  rule.closing = dice.chance(50);
  rule.bowed = rule.closing;
  rule.end_bows = builder.so_far().kinds().size() % 2 == 0;
  rule.seal = "sealant";
  builder.add(rule);
}

PortTypeId random_type(CatalogBuilder& builder, Dice& dice) {
  const auto kinds = builder.so_far().kinds();
  const KindId kind{static_cast<std::uint32_t>(dice.below(static_cast<int>(kinds.size())))};
  const JointKind& table = kinds[kind.row];
  const SizeId size = table.sizes[static_cast<std::size_t>(dice.below(static_cast<int>(table.sizes.size())))].size;
  const End end = table.threaded ? (dice.chance(50) ? End::male : End::female) : End::neither;
  return builder.port_type({kind, size, end});
}

void add_families(CatalogBuilder& builder) {
  for (const Role role : {Role::connector, Role::device, Role::plug}) {
    for (const bool bushing : {false, true}) {
      Family family;
      family.name = std::string(role_name(role)) + (bushing ? " bushing" : "");
      family.role = role;
      family.is_bushing = bushing;
      family.can_shut = bushing != (role == Role::device);
      family.flexible = bushing;
      builder.add(family);
    }
  }
  Family for_vacuum;
  for_vacuum.name = "connector for vacuum";
  for_vacuum.is_bushing = for_vacuum.can_shut = for_vacuum.flexible = for_vacuum.for_vacuum = true;
  builder.add(for_vacuum);
}

Part random_part(CatalogBuilder& builder, Dice& dice, int row) {
  Part part;
  part.id = std::string(1, static_cast<char>('a' + dice.below(26))) + std::to_string(row);
  part.name = part.id;
  if (dice.chance(12)) part.name += " close nipple";
  const bool device = dice.chance(15);
  part.family = {static_cast<std::uint32_t>((device ? 2 : 0) + (dice.chance(15) ? 1 : 0))};
  part.material = {static_cast<std::uint32_t>(dice.one_of({0, 1, 1, 5, 2, 3, 3, 4}))};
  const int ports = dice.one_of({1, 2, 2, 2, 2, 2, 2, 2, 2, 2, 2, 3, 3, 4});
  for (int i = 0; i < ports; ++i) {
    Port port;
    port.type = random_type(builder, dice);
    port.bore = millimetres(dice.one_of({10.0, 15.0, 20.0}));
    port.reach = millimetres(dice.one_of({0.0, 12.0, 20.0, 30.0}));
    port.heading_degrees = dice.one_of({0.0, 45.0, 90.0, 180.0});
    part.ports.push_back(port);
  }
  if (ports == 1 && !device) part.family.row += 4;
  if (part.family.row == 1 && part.id.front() > 'u') part.family.row = 6;
  part.close = part.name != part.id;
  part.price = cents(dice.one_of({0, 100, 100, 100, 150, 200, 300}));
  // One material is dear, so that it is not worth its price to have the whole run of it.
  if (part.material.row == 2) part.price = part.price * 10;
  part.rating = psig(dice.one_of({50.0, 100.0, 150.0, 300.0}));
  part.stocked = dice.chance(85);
  part.air = dice.chance(90);
  part.closing = ports == 2 && dice.chance(10);
  part.one_way = part.arrow = ports == 2 && dice.chance(8);
  part.dielectric = dice.chance(8);
  if (dice.chance(8)) part.far_material = MaterialId{static_cast<std::uint32_t>(dice.below(5))};
  if (dice.chance(20)) part.across_flats = millimetres(dice.one_of({22.0, 30.0}));
  if (dice.chance(40)) part.loss = {static_cast<std::uint32_t>(dice.below(2))};
  return part;
}

void add_loss_items(CatalogBuilder& builder) {
  for (const double n : {30.0, 57.0}) {
    LossItem item;
    item.name = "fitting";
    item.crane_n = n;
    builder.add(item);
  }
}

// Of materials and of families; some are proved for nothing.
void add_duties(CatalogBuilder& builder, Dice& dice) {
  constexpr int kOfFamilies = 5;
  for (int i = 0; i < 7; ++i) {
    Duty duty;
    if (i != kOfFamilies)
      duty.materials = {{static_cast<std::uint32_t>(i < kOfFamilies ? i : i - 1)}};
    else
      duty.families = {{static_cast<std::uint32_t>(dice.below(4))}};
    if (!duty.families.empty() && duty.families.front().row < 2)
      duty.families.push_back({duty.families.front().row + 4});
    if (dice.chance(80)) duty.heat.push_back({degrees_celsius(50.0), dice.one_of({1.0, 1.0, 0.75})});
    if (!duty.heat.empty() && dice.chance(70)) duty.heat.push_back({degrees_celsius(80.0), 0.5});
    duty.under_air = dice.one_of({UnderAir::not_proved, UnderAir::as_water, UnderAir::as_water, UnderAir::limited});
    duty.air_limit = psig(110.0);
    duty.vacuum = dice.one_of({InVacuum::stands, InVacuum::stands, InVacuum::not_proved, InVacuum::collapses});
    duty.air_alone = !duty.families.empty() && duty.families.front().row % 2 == 1;  // of what is a bushing
    if (dice.chance(90)) builder.add(std::move(duty));
  }
}

// Most worlds have one. By dice of its own, so that all else is as it would be without.
void add_foreign_thread(CatalogBuilder& builder, int kinds) {
  std::uint32_t seed = 1;
  for (const Part& part : builder.so_far().parts())
    for (const char letter : part.id) seed = seed * 31 + static_cast<std::uint32_t>(letter);
  Dice dice(seed);
  if (dice.chance(40)) return;
  const auto some_kind = [&] { return KindId{static_cast<std::uint32_t>(dice.below(kinds))}; };
  const KindId kind = some_kind();
  ForeignThread thread{kind, {some_kind()}, "test"};
  if (dice.chance(50)) thread.keeps_apart.push_back(some_kind());
  thread.only_at_end = dice.chance(40);
  if (thread.only_at_end) thread.at_home = {kind};
  builder.add(std::move(thread));
}

}  // namespace

std::uint32_t first_world() {
  const char* skipped = std::getenv("RISERUN_RANDOM_SKIP");
  return 1 + static_cast<std::uint32_t>(skipped == nullptr ? 0 : std::stoul(skipped));
}

Catalog random_catalog(Dice& dice) {
  CatalogBuilder builder;
  add_materials(builder);
  add_families(builder);
  add_loss_items(builder);
  Seal nut{"nut", "nut on the tube", "", ""};
  nut.bare = millimetres(7.0);
  builder.add(nut);
  const int kinds = dice.between(2, 3);
  for (int i = 0; i < kinds; ++i)
    add_kind(builder, dice, std::string(1, static_cast<char>('A' + i)), i == 0 || dice.chance(60),
             kinds == 2 ? dice.between(2, 3) : 2);
  if (dice.chance(40)) add_cross_rule(builder, dice);
  const int parts = dice.one_of({5, 8, 10, 12, 14, 16, 18, 20});
  for (int i = 0; i < parts; ++i) {
    Part part = random_part(builder, dice, i);
    builder.add(std::move(part));
  }
  add_duties(builder, dice);
  add_foreign_thread(builder, kinds);
  return std::move(builder).build();
}

namespace {

PortEnd random_end(Dice& dice, const Catalog& catalog) {
  PortEnd end;
  end.type = {static_cast<std::uint32_t>(dice.below(static_cast<int>(catalog.port_types().size())))};
  if (dice.chance(50)) end.material = MaterialId{static_cast<std::uint32_t>(dice.below(6))};
  end.freedom = dice.one_of({Freedom::fixed, Freedom::sliding, Freedom::spinning, Freedom::loose, Freedom::loose});
  return end;
}

PartId random_row(Dice& dice, const Catalog& catalog) {
  return {static_cast<std::uint32_t>(dice.below(static_cast<int>(catalog.parts().size())))};
}

PortTypeId end_that_fits(Dice& dice, const Catalog& catalog, PortTypeId otherwise) {
  const Part& part = catalog.part(random_row(dice, catalog));
  if (part.ports.size() < 2) return otherwise;
  const auto mates = catalog.mates(part.ports[static_cast<std::size_t>(dice.below(2))].type);
  return mates.empty() ? otherwise : mates.front().other;
}

void add_needs(Dice& dice, const Catalog& catalog, ChainRequest& request) {
  const int needs = dice.one_of({0, 0, 0, 0, 1, 1, 2});
  for (int i = 0; i < needs; ++i) {
    Need need{"need " + std::to_string(i), {}};
    const int parts = dice.between(1, 4);
    for (int k = 0; k < parts; ++k) need.parts.push_back(random_row(dice, catalog));
    request.needs.push_back(need);
    if (dice.chance(15)) request.needs.push_back(need);
  }
}

void add_bin(Dice& dice, const Catalog& catalog, ChainRequest& request) {
  const int items = dice.between(1, 5);
  for (int i = 0; i < items; ++i) {
    const PartId part = random_row(dice, catalog);
    bool known = false;
    for (const BinItem& item : request.bin.items) known = known || item.part == part;
    if (!known) request.bin.items.push_back({part, dice.one_of({0, 1, 1, 1, 2})});
  }
}

}  // namespace

ChainRequest random_request(Dice& dice, const Catalog& catalog) {
  ChainRequest request;
  request.from = random_end(dice, catalog);
  request.to = random_end(dice, catalog);
  // Ends that some part goes onto, as a rule: else most requests would be refused.
  if (dice.chance(80)) request.from.type = end_that_fits(dice, catalog, request.from.type);
  if (dice.chance(80)) request.to.type = end_that_fits(dice, catalog, request.to.type);
  add_needs(dice, catalog, request);
  if (dice.chance(60)) add_bin(dice, catalog, request);
  if (dice.chance(30)) {
    request.banned.assign(catalog.parts().size(), false);
    for (int i = 0; i < 2; ++i) request.banned[random_row(dice, catalog).row] = true;
  }
  if (dice.chance(15)) request.service = Service::air;
  if (dice.chance(20)) request.rating = psig(dice.one_of({100.0, 120.0, 300.0}));
  if (dice.chance(25)) request.galvanic = Galvanic::avoid;  // over water it leaves few pairs of metals
  request.special_order = dice.chance(30);
  if (dice.chance(10)) request.smallest_bore = millimetres(15.0);
  if (dice.chance(20)) request.most_parts = dice.between(0, 5);
  if (dice.chance(20)) request.room = millimetres(dice.one_of({25.3, 31.7, 38.9}));
  request.flow = us_gallons_per_minute(dice.one_of({0.0, 2.0, 10.0}));
  request.needs_in_order = dice.chance(50);
  if (dice.chance(40)) request.most_bushings = dice.one_of({0, 0, 1});
  if (dice.chance(12)) request.hottest = degrees_celsius(dice.one_of({20.0, 50.0, 60.0, 90.0}));
  request.vacuum = dice.chance(8);
  return request;
}

void lift_other_rules(ChainRequest& request) {
  request.banned.clear();
  request.rating.reset();
  request.hottest.reset();
  request.most_parts.reset();
  request.most_bushings.reset();
  request.service = Service::water;
  request.galvanic = Galvanic::warn;
  request.special_order = true;
}

}  // namespace riserun::chain::testing
