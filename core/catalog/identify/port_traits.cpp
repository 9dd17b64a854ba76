#include "catalog/identify/port_traits.h"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace riserun::catalog {

namespace {

// How far an end without a thread may be off its catalog diameter: drawn tube and pipe under its standard, about half
// a percent (ASTM B88, D1785, F876: from memory); barbs and hose, for which there is no standard, 3 % (common
// practice).
constexpr double kStandardTube = 0.006;
constexpr double kNoStandard = 0.03;
// A size that no part of the catalog stocks is rarer on the shelf by so much (an estimate).
constexpr double kOnlyOrdered = 0.5;
constexpr double kNoPart = 0.2;
constexpr double kStaysOut = 0.65;  // of the pitch: the male's pitch diameter is the female's major one
constexpr double kSlipsIn = 1.0;    // of the pitch: with more play than that, crests (0.65 p high each) pass each other

/// The rule that tells how an end of that kind is made up with its own kind; else the first that starts from it.
const MatingRule* own_rule(const Catalog& catalog, const PortType& port) {
  const MatingRule* started = nullptr;
  for (const MatingRule& rule : catalog.mating_rules()) {
    const bool is_a = rule.kind_a == port.kind && rule.end_a == port.end;
    const bool is_b = rule.kind_b == port.kind && rule.end_b == port.end;
    if ((is_a || is_b) && rule.kind_a == rule.kind_b) return &rule;
    if (is_a && started == nullptr) started = &rule;
  }
  return started;
}

void set_seal(const Catalog& catalog, PortTraits& traits) {
  const MatingRule* rule = own_rule(catalog, traits.port);
  if (rule == nullptr) return;
  const Seal* seal = catalog.seal(rule->seal);
  const bool on_washer = seal != nullptr && seal->on_washer;
  const bool nut = rule->turning == Turning::neither && traits.threaded();
  // A nut holds its washer; a body that is screwed in has it under the shoulder of the male.
  traits.washer = on_washer && traits.port.end == (nut ? End::female : End::male);
  traits.swivel = nut && traits.port.end == End::female;
}

void set_diameters(const JointKind& kind, const JointSize& size, PortTraits& traits) {
  const End end = traits.port.end;
  traits.thread = thread_diameters(kind, size);
  if (traits.thread) {
    if (end == End::male) traits.outside = traits.thread->over_male_crests;
    if (end == End::female) traits.inside = traits.thread->between_female_crests;
    return;
  }
  const double spread = kind.standard == "common practice" ? kNoStandard : kStandardTube;
  const auto band = [&](Length across) { return LengthBand{across * (1.0 - spread), across * (1.0 + spread)}; };
  const bool has_bore = size.bore > Length{};
  if (end != End::female && size.outside_diameter > Length{}) traits.outside = band(size.outside_diameter);
  if (end == End::neither && has_bore) traits.inside = band(size.bore);
  if (end == End::female) traits.inside = band(has_bore ? size.bore : size.outside_diameter);
}

double on_the_shelf(const Catalog& catalog, PortTypeId type) {
  const auto uses = catalog.uses(type);
  if (uses.empty()) return kNoPart;
  const auto stocked = [&](const PortUse& use) { return catalog.part(use.part).stocked; };
  return std::any_of(uses.begin(), uses.end(), stocked) ? 1.0 : kOnlyOrdered;
}

/// Shares with half a part added to each material, so that none is impossible.
std::vector<double> material_shares(const Catalog& catalog, const JointKind& kind, KindId kind_id, End end) {
  std::vector<double> shares(catalog.materials().size(), 0.5);
  for (const JointSize& size : kind.sizes) {
    const auto type = catalog.find_port_type({kind_id, size.size, end});
    if (!type) continue;
    for (const PortUse& use : catalog.uses(*type)) shares[catalog.part(use.part).material.row] += 1.0;
  }
  double all = 0.0;
  for (const double share : shares) all += share;
  for (double& share : shares) share /= all;
  return shares;
}

bool can_be_told(const Recognition& recognition, End end) {
  return end == End::neither || (end == End::male ? recognition.male : recognition.female);
}

PortTraits traits_of(const Catalog& catalog, PortTypeId type, const JointKind& kind, const JointSize& size) {
  PortTraits traits;
  traits.type = type;
  traits.port = catalog.port_type(type);
  traits.threads_per_inch = kind.threaded ? size.threads_per_inch : 0.0;
  traits.thread_length = size.thread_length;
  traits.tapered = kind.tapered;
  traits.flank_angle_degrees = kind.recognition->flank_angle_degrees;
  traits.cone_angle_degrees = kind.recognition->cone_angle_degrees;
  set_diameters(kind, size, traits);
  set_seal(catalog, traits);
  const double shelf = on_the_shelf(catalog, type);
  traits.common_inch = kind.recognition->common_inch * shelf;
  // What an inch counter has to order says nothing about a metric one.
  traits.common_metric = kind.recognition->common_metric * (catalog.uses(type).empty() ? kNoPart : 1.0);
  return traits;
}

bool same_measures(const JointSize& a, const JointSize& b) {
  return a.outside_diameter == b.outside_diameter && a.threads_per_inch == b.threads_per_inch;
}

/// The end of that other kind with the same thread and size name.
std::optional<PortTypeId> twin(const Catalog& catalog, PortTypeId type, std::uint32_t other_row) {
  const PortType& port = catalog.port_type(type);
  const KindId other_id{other_row};
  const JointKind& kind = catalog.kind(port.kind);
  const JointKind& other = catalog.kind(other_id);
  if (other_id == port.kind || !kind.threaded || !other.threaded || kind.tapered != other.tapered) return std::nullopt;
  const PortType wanted{other_id, port.size, port.end};
  const JointSize* mine = catalog.joint_size(port);
  const JointSize* theirs = catalog.joint_size(wanted);
  if (mine == nullptr || theirs == nullptr || !same_measures(*mine, *theirs)) return std::nullopt;
  return catalog.find_port_type(wanted);
}

}  // namespace

std::vector<PortTraits> recognisable_ports(const Catalog& catalog) {
  std::vector<PortTraits> ports;
  for (std::uint32_t row = 0; row < catalog.kinds().size(); ++row) {
    const KindId kind_id{row};
    const JointKind& kind = catalog.kind(kind_id);
    if (!kind.recognition) continue;
    for (const End end : {End::male, End::female, End::neither}) {
      if (catalog.notation(kind_id, end).empty() || !can_be_told(*kind.recognition, end)) continue;
      const std::vector<double> shares = material_shares(catalog, kind, kind_id, end);
      for (const JointSize& size : kind.sizes) {
        const auto type = catalog.find_port_type({kind_id, size.size, end});
        if (!type) continue;
        ports.push_back(traits_of(catalog, *type, kind, size));
        ports.back().material_share = shares;
      }
    }
  }
  return ports;
}

std::vector<PortTypeId> same_thread(const Catalog& catalog, PortTypeId type) {
  std::vector<PortTypeId> twins;
  for (std::uint32_t row = 0; row < catalog.kinds().size(); ++row) {
    if (catalog.kind(KindId{row}).recognition) continue;
    if (const auto other = twin(catalog, type, row)) twins.push_back(*other);
  }
  return twins;
}

std::optional<PortTypeId> measured_as(const Catalog& catalog, PortTypeId type) {
  if (catalog.kind(catalog.port_type(type).kind).recognition) return type;
  for (std::uint32_t row = 0; row < catalog.kinds().size(); ++row) {
    if (!catalog.kind(KindId{row}).recognition) continue;
    if (const auto other = twin(catalog, type, row)) return other;
  }
  return std::nullopt;
}

bool threads_meet(const PortTraits& male, const PortTraits& female) {
  if (!male.thread || !female.thread) return false;
  const double pitch = 1.0 / male.threads_per_inch;
  const double play = in_inches(female.thread->female_pitch_diameter - male.thread->male_pitch_diameter);
  return play > -kStaysOut * pitch && play <= kSlipsIn * pitch;
}

std::optional<double> hand_turns(const Catalog& catalog, const PortTraits& male, const PortTraits& female) {
  if (!male.thread || !female.thread) return std::nullopt;
  const double male_pitch = 1.0 / male.threads_per_inch;  // inches here and below
  const double drift = std::abs(male_pitch - 1.0 / female.threads_per_inch);
  const double play = in_inches(female.thread->female_pitch_diameter - male.thread->male_pitch_diameter);
  if (play > kSlipsIn * male_pitch) return std::nullopt;
  if (play <= 0.0) return 0.0;
  const double taper = male.tapered || female.tapered ? male_pitch / 16.0 : 0.0;
  const double lost_each_turn = drift * std::numbers::sqrt3 + taper;  // 1 / tan(30 deg)
  const MatingRule* rule = catalog.mating_rule(male.type, female.type);
  double most = in_inches(std::min(male.thread_length, female.thread_length)) / male_pitch;
  if (rule != nullptr && !(male.tapered && female.tapered)) {
    const PortTraits& first = rule->kind_a == male.port.kind && rule->end_a == End::male ? male : female;
    most = in_inches(catalog.joint_size(first.port)->hand_tight_engagement) / male_pitch;
  }
  return lost_each_turn > 0.0 ? std::min(most, play / lost_each_turn) : most;
}

}  // namespace riserun::catalog
