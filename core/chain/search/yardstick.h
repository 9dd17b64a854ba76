// How far a run is from being of one material, as the orders line and bin look at it.
#pragma once

#include "chain/part/move.h"

#include <algorithm>
#include <cmath>
#include <optional>
#include <utility>
#include <vector>

namespace riserun::chain {

/// What a run's parts are held against: the materials of its ends.
struct EndMetals {
  std::vector<MaterialId> known;
  /// No two metals meet that must be kept apart: what an end far off is made of then matters to no part.
  bool parted = false;
  /// First and last end of a chain, of two metals that must be kept apart: a part that keeps them apart (a dielectric
  /// union) has what goes before it to the first metal, what goes behind it to the last.
  std::optional<std::pair<MaterialId, MaterialId>> two_sides{};
  ShownMetal first{}, last{};  // of a chain's two ends

  void add(const PortEnd& end) {
    if (end.material) known.push_back(*end.material);
  }
};

inline EndMetals end_metals(const Catalog& catalog, const ChainRequest& request) {
  EndMetals metals{{}, request.galvanic == Galvanic::avoid};
  metals.first = shown_metal(request.from);
  metals.last = shown_metal(request.to);
  metals.add(request.from);
  metals.add(request.to);
  if (!metals.parted && parting_cause(catalog, request) == PartingCause::anywhere)
    metals.two_sides.emplace(*request.from.material, *request.to.material);
  return metals;
}

/// Steps of the galvanic series in volts, as handbooks print it, and more of them than between any two metals.
inline constexpr double kStep = 0.05;
inline constexpr std::int64_t kFarthest = 40;

inline std::int64_t steps_between(const catalog::Material& a, const catalog::Material& b) {
  if (!a.metal || !b.metal) return kFarthest;
  return std::min<std::int64_t>(kFarthest, std::llround(std::abs(a.anodic_index_volts - b.anodic_index_volts) / kStep));
}

/// Three counts of a run in one number, of which there are fewer than 2^20: joints whose metals must be kept apart
/// (with them the parts between two such ends that are of a metal to be kept apart from one of them), parts that are
/// not of a known end's own metal, and the steps from metal to metal over its joints.
inline constexpr std::int64_t kNotOwn = std::int64_t{1} << 20;
inline constexpr std::int64_t kClash = kNotOwn << 20;

/// By material: what a part of it weighs.
/// @param apart  not empty: the part is a go-between, whose metal should go with these and be near the end's own
inline std::vector<std::int64_t> weights_against(const Catalog& catalog, const std::vector<MaterialId>& apart,
                                                 MaterialId own) {
  std::vector<std::int64_t> weights;
  weights.reserve(catalog.materials().size());
  for (std::uint32_t row = 0; row < catalog.materials().size(); ++row) {
    const bool clashes = std::any_of(apart.begin(), apart.end(), [&](MaterialId end) {
      return catalog.galvanic(end, {row}) == catalog::GalvanicVerdict::keep_apart;
    });
    weights.push_back(clashes ? kClash : 0);
    if (catalog.same_metal(own, {row})) continue;
    weights.back() += kNotOwn;
    if (!apart.empty()) weights.back() += steps_between(catalog.material(own), catalog.material({row}));
  }
  return weights;
}

/// Two materials that a run is measured by: an end's own (invalid: none is known), and the one of which it is to be. An
/// end's own is whatever is the same metal: a steel table takes black iron as its own. One of two sides measures by the
/// first end up to the part that keeps the metals apart, by the last end behind it, and runs with such a part alone.
class Yardstick {
 public:
  /// @param weights  of each material against an end's own, weights_against; empty: no end's is known
  /// @param behind  the same behind the part that keeps the ends' metals apart; empty: it has one side alone
  Yardstick(std::vector<std::int64_t> weights, MaterialId one, const EndMetals& ends,
            std::vector<std::int64_t> behind = {})
      : weights_(std::move(weights)),
        behind_(std::move(behind)),
        one_(one),
        parted_(ends.parted),
        counts_steps_(!ends.two_sides) {}

  bool has_two_sides() const { return !behind_.empty(); }
  /// @param is_behind  such a part has come already; the first that comes is of both sides, and weighs against neither
  Rest rest_of(const Catalog& catalog, const Move& move, bool is_behind = false) const {
    Rest rest{{0, move.own.cents, move.own.cents, move.own.drawbacks, 0}};
    const bool parts_the_sides = has_two_sides() && !is_behind && parts_metals(catalog, move);
    const std::vector<std::int64_t> none;
    const std::vector<std::int64_t>& weights = is_behind ? behind_ : weights_;
    if (move.part.valid()) count(make_of(catalog, move.part), parts_the_sides ? none : weights, rest);
    for (const PartId plug : move.plugs) count(make_of(catalog, plug), weights, rest);
    std::size_t next_plug = 0;
    for (std::size_t port = 0; next_plug < move.plugs.size(); ++port) {
      if (port == move.enter || port == move.leave) continue;
      const PartId plug = move.plugs[next_plug++];
      rest = rest + of_joint(catalog, shown_metal(catalog, move.part, port), shown_metal(catalog, plug, 0));
    }
    return rest;
  }
  /// What it weighs that the two meet: whether they must be kept apart, and, where an end's metal is known, how far
  /// they are from each other; a hose that is of no metal is far from none, the nuts of a connector are of theirs.
  Rest of_joint(const Catalog& catalog, const ShownMetal& a, const ShownMetal& b) const {
    Rest rest;
    if (parted_ || !a.metal.valid() || !b.metal.valid()) return rest;
    if (catalog.galvanic(a.metal, b.metal) == catalog::GalvanicVerdict::keep_apart) rest.tuple[0] += kClash;
    const auto is_hose = [&](const ShownMetal& end) { return end.bends && !catalog.material(end.metal).metal; };
    if (counts_steps_ && !weights_.empty() && !is_hose(a) && !is_hose(b) && !catalog.same_metal(a.metal, b.metal))
      rest.tuple[0] += steps_between(catalog.material(a.metal), catalog.material(b.metal));
    return rest;
  }
  /// Of the materials alone.
  Rest rest_of(const std::vector<Make>& makes) const {
    Rest rest;
    for (const Make& make : makes) count(make, weights_, rest);
    return rest;
  }

 private:
  void count(const Make& make, const std::vector<std::int64_t>& weights, Rest& rest) const {
    const std::int64_t weight = weights.empty() ? 0 : weights[make.material.row];
    rest.tuple[0] += make.bends ? weight - weight % kClash : weight;
    rest.tuple[kWorthPlace] += make.device || make.bends || make.material == one_ ? 0 : kWorthOfOneMaterial;
  }

  std::vector<std::int64_t> weights_;  // by material
  std::vector<std::int64_t> behind_;
  MaterialId one_;
  bool parted_ = false;
  bool counts_steps_ = true;  // of joints; between two ends that must be kept apart the parts have them
};

/// Every pair of a known end's material and one that something but a device or a hose is of, then those of two sides.
inline std::vector<Yardstick> yardsticks(const Catalog& catalog, const EndMetals& ends, std::vector<Make> makes) {
  std::erase_if(makes, [](const Make& make) { return make.device || make.bends; });
  std::sort(makes.begin(), makes.end());
  makes.erase(std::unique(makes.begin(), makes.end()), makes.end());
  if (makes.empty()) makes.push_back({});
  std::vector<std::vector<std::int64_t>> weights;
  std::vector<MaterialId> apart;
  if (ends.two_sides) apart = {ends.two_sides->first, ends.two_sides->second};
  for (const MaterialId own : ends.known) weights.push_back(weights_against(catalog, apart, own));
  if (weights.empty()) weights.emplace_back();
  std::vector<Yardstick> all;
  all.reserve(weights.size() * makes.size());
  for (const std::vector<std::int64_t>& against : weights)
    for (const Make& make : makes) all.emplace_back(against, make.material, ends);
  if (!ends.two_sides) return all;
  const auto& [first, last] = *ends.two_sides;
  const std::vector<std::int64_t> before = weights_against(catalog, {first}, first);
  const std::vector<std::int64_t> behind = weights_against(catalog, {last}, last);
  for (const Make& make : makes) all.emplace_back(before, make.material, ends, behind);
  return all;
}

/// The rest of a chain as it is.
inline Rest rest_of(const Catalog& catalog, Order order, const EndMetals& ends, const std::vector<Move>& moves) {
  if (!keeps_the_line(order)) return {};
  std::vector<Make> makes;
  for (const Move& move : moves)
    for (const Make& make : makes_of(catalog, move)) makes.push_back(make);
  std::optional<Rest> least;
  for (const Yardstick& yardstick : yardsticks(catalog, ends, std::move(makes))) {
    Rest sum;
    bool is_behind = false;
    ShownMetal before = ends.first;
    for (const Move& move : moves) {
      sum = sum + yardstick.of_joint(catalog, before, shown_metal(catalog, move.part, move.enter)) +
            yardstick.rest_of(catalog, move, is_behind);
      before = shown_metal(catalog, move.part, move.leave);
      is_behind = yardstick.has_two_sides() && (is_behind || parts_metals(catalog, move));
    }
    sum = sum + yardstick.of_joint(catalog, before, ends.last);
    const bool may_measure = is_behind || !yardstick.has_two_sides();
    if (may_measure && (!least || sum < *least)) least = sum;
  }
  return *least;
}

}  // namespace riserun::chain
