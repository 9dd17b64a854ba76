#include "unit/chain/small_world.h"

#include <sstream>
#include <stdexcept>

namespace riserun::chain::testing {

using namespace riserun::catalog;  // NOLINT(google-build-using-namespace)

namespace {

struct KindRow {
  const char* id;
  const char* male;
  const char* female;
  bool tapered;
  Turning turning;
  bool closing;
  const char* seal;
};

constexpr KindRow kKinds[] = {
    {"A", "MA", "FA", true, Turning::either, false, "sealant"},
    {"B", "MB", "FB", true, Turning::either, false, "sealant"},
    {"G", "MG", "FG", false, Turning::either, false, "washer"},
    {"H", "barb", "hose", false, Turning::neither, true, "clamp"},
    {"C", "tube", "cup", false, Turning::neither, false, "solder"},
    {"K", "cam adapter", "cam coupler", false, Turning::neither, true, "washer"},
};

struct MaterialRow {
  const char* id;
  double volts;
  bool metal;
  bool air;
};

constexpr MaterialRow kMaterials[] = {{"iron", 0.85, true, true},      {"brass", 0.30, true, true},
                                      {"stainless", 0.50, true, true}, {"nylon", 0.0, false, true},
                                      {"pvc", 0.0, false, false},      {"steel", 0.85, true, true}};

void add_kinds(CatalogBuilder& builder) {
  for (const KindRow& row : kKinds) {
    JointKind kind;
    kind.id = kind.name = row.id;
    kind.male_notation = row.male;
    kind.female_notation = row.female;
    kind.threaded = row.turning == Turning::either;
    kind.tapered = row.tapered;
    double diameter = 20.0;
    for (const char* name : {"1/2", "3/4", "1"}) {
      JointSize size;
      size.size = builder.size(name);
      size.outside_diameter = millimetres(diameter += 6.0);
      size.hand_tight_engagement = millimetres(10.0);
      size.wrench_engagement = millimetres(kind.threaded ? 5.0 : 0.0);
      size.make_up_tolerance = millimetres(kind.threaded ? 2.0 : 0.0);
      size.turns_past_hand_low = kind.tapered ? 1.5 : 0.0;
      size.turns_past_hand_high = kind.tapered ? 3.0 : 0.0;
      kind.sizes.push_back(size);
    }
    const KindId id = builder.add(kind);
    builder.add(MatingRule{id,
                           End::male,
                           id,
                           End::female,
                           {},
                           row.seal,
                           row.turning,
                           row.closing,
                           std::string_view(row.seal) != "solder",
                           "",
                           std::string_view(row.id) == "K"});
  }
  LookAlike trap;
  trap.kind_a = {0};
  trap.kind_b = {1};
  trap.reason = "the pitch is the same, the thread form is not";
  builder.add(trap);
  builder.add(ForeignThread{{2}, {{2}}, ""});  // G
  builder.add(Seal{"sealant", "tape on the male thread", "tape", ""});
  builder.add(Seal{"washer", "washer in the female end, no tape", "washer", ""});
  builder.add(Seal{"clamp", "slide the clamp on, push the hose home, tighten the clamp", "clamp", ""});
  Seal solder{"solder", "clean, flux, heat and solder", "solder", ""};
  solder.hot = true;
  builder.add(std::move(solder));
}

void add_shelves(CatalogBuilder& builder) {
  for (const MaterialRow& row : kMaterials) {
    Material material;
    material.id = material.name = row.id;
    material.anodic_index_volts = row.volts;
    material.metal = row.metal;
    material.compressed_air = row.air;
    material.galls = material.id == "stainless";
    builder.add(material);
  }
  // What is not stated is not proved, for air as for all else.
  Duty stands;
  for (std::uint32_t row = 0; row < std::size(kMaterials); ++row)
    if (kMaterials[row].air) stands.materials.push_back({row});
  stands.under_air = UnderAir::as_water;
  builder.add(std::move(stands));
  const auto none = WeldBung::none;
  builder.add(Family{"connector", {}, "", "", Role::connector, none, false, ""});
  builder.add(Family{"device", {}, "", "", Role::device, none, false, ""});
  builder.add(Family{"bushing", {}, "", "", Role::connector, none, true, ""});
  builder.add(Family{"valve", {}, "", "", Role::device, none, false, "", true});
  builder.add(Family{"tubing", {}, "", "", Role::connector, none, false, "", false, true});
  builder.add(Family{"plug", {}, "", "", Role::plug, none, false, ""});
  builder.add(Family{"swing", {}, "", "", Role::check_valve, none, false, "", true, false, CheckKind::swing});
}

std::vector<std::string> split(const std::string& text, char separator) {
  std::vector<std::string> words;
  std::istringstream stream(text);
  for (std::string word; std::getline(stream, word, separator);) {
    const std::size_t start = word.find_first_not_of(' ');
    if (start != std::string::npos) words.push_back(word.substr(start, word.find_last_not_of(' ') - start + 1));
  }
  return words;
}

std::optional<PortType> read_type(CatalogBuilder& builder, const std::string& text) {
  const std::vector<std::string> words = split(text, ' ');
  if (words.size() != 3 || (words[2] != "male" && words[2] != "female")) return std::nullopt;
  const auto kind = builder.so_far().find_kind(words[1]);
  if (!kind) return std::nullopt;
  return PortType{*kind, builder.size(words[0]), words[2] == "male" ? End::male : End::female};
}

double number_after(const std::string& word, const std::string& name) {
  return word.starts_with(name + " ") ? std::stod(word.substr(name.size() + 1)) : 0.0;
}

void read_word(const CatalogBuilder& builder, const std::string& word, Part& part) {
  if (word == "device") part.family = {1};
  if (word == "bushing") part.family = {2};
  if (word == "valve") part.family = {3};
  if (word == "flexible") part.family = {4};
  if (word == "union") part.closing = true;
  if (word == "special") part.stocked = false;
  if (word == "bend") part.ports[1].heading_degrees = 90.0;
  if (word == "swing check") {
    part.family = {6};
    part.one_way = part.arrow = true;
    part.opens_at = psig(0.3);
  }
  if (word == "arrow") part.arrow = true;
  if (word == "one way") part.one_way = part.arrow = true;
  if (word == "dielectric") part.dielectric = true;
  if (word.ends_with("c") && word.find_first_not_of("0123456789c") == std::string::npos)
    part.price = cents(std::stol(word));
  if (const auto material = builder.so_far().find_material(word)) part.material = *material;
  if (const double rating = number_after(word, "rating"); rating > 0.0) part.rating = psig(rating);
  for (Port& port : part.ports) {
    if (const double bore = number_after(word, "bore"); bore > 0.0) port.bore = millimetres(bore);
    if (const double reach = number_after(word, "reach"); reach > 0.0) port.reach = millimetres(reach);
  }
}

void add_part(CatalogBuilder& builder, const std::string& line) {
  const std::size_t colon = line.find(": ");
  if (colon == std::string::npos) return;
  Part part;
  part.name = part.id = split(line.substr(0, colon), ':').front();
  part.family = {0};
  part.material = {0};
  part.rating = psig(300.0);
  for (const std::string& word : split(line.substr(colon + 2), ',')) {
    if (const auto type = read_type(builder, word))
      part.ports.push_back({builder.port_type(*type), millimetres(20.0), millimetres(20.0),
                            part.ports.empty() ? 180.0 : (part.ports.size() == 1 ? 0.0 : 90.0)});
    else
      read_word(builder, word, part);
  }
  if (part.ports.size() == 1) part.flexible = part.family.row == 4;
  if (part.ports.size() == 1 && (part.family.row == 0 || part.flexible)) part.family = {5};
  part.close = part.name.find("close") != std::string::npos;
  builder.add(std::move(part));
}

}  // namespace

SmallWorld::SmallWorld(const std::string& text) {
  CatalogBuilder builder;
  add_kinds(builder);
  add_shelves(builder);
  for (const std::string& line : split(text, '\n')) add_part(builder, line);
  catalog_ = std::move(builder).build();
}

PartId SmallWorld::part(const std::string& name) const {
  if (const auto found = catalog_.find_part(name)) return *found;
  throw std::invalid_argument("no part " + name);
}

PortEnd SmallWorld::end(const std::string& port, Freedom freedom) const {
  for (std::uint32_t row = 0; row < catalog_.port_types().size(); ++row)
    if (catalog_.spelled({row}) == port) return {{row}, {}, freedom};
  throw std::invalid_argument("no port " + port);
}

ChainRequest SmallWorld::ask(const std::string& from, const std::string& to, Order order) const {
  ChainRequest request;
  request.from = end(from);
  request.to = end(to);
  request.order = order;
  return request;
}

Need SmallWorld::need(const std::string& words, const std::vector<std::string>& names) const {
  Need need{words, {}};
  for (const std::string& name : names) need.parts.push_back(part(name));
  return need;
}

std::string SmallWorld::chain(const ChainRequest& request) const {
  const Answer answer = find(request);
  if (const auto* none = std::get_if<NoChain>(&answer)) return "none: " + said(none->reason);
  std::string names;
  for (const RunPart& link : std::get<Chain>(answer).parts) {
    names += (names.empty() ? "" : ", ") + catalog_.part(link.part).name + (link.from_bin ? "*" : "");
    for (const Follower& plug : link.plugs()) names += " [" + catalog_.part(plug.plug).name + "]";
  }
  return names.empty() ? "straight together" : names;
}

}  // namespace riserun::chain::testing
