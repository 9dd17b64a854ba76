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

  void add(const PortEnd& end) {
    if (end.material) known.push_back(*end.material);
  }
};

inline EndMetals end_metals(const ChainRequest& request) {
  EndMetals metals{{}, request.galvanic == Galvanic::avoid};
  metals.add(request.from);
  metals.add(request.to);
  return metals;
}

/// Steps of the galvanic series in volts, as handbooks print it, and more of them than between any two metals.
inline constexpr double kStep = 0.05;
inline constexpr std::int64_t kFarthest = 40;

inline std::int64_t steps_between(const catalog::Material& a, const catalog::Material& b) {
  if (!a.metal || !b.metal) return kFarthest;
  return std::min<std::int64_t>(kFarthest, std::llround(std::abs(a.anodic_index_volts - b.anodic_index_volts) / kStep));
}

/// Three counts of a run's parts in one number, of which there are fewer than 2^20: those of a metal that a known end's
/// must be kept apart from, those that are not of the end's own, and the steps of these from it.
inline constexpr std::int64_t kNotOwn = std::int64_t{1} << 20;
inline constexpr std::int64_t kClash = kNotOwn << 20;

/// By material: what a part of it weighs.
inline std::vector<std::int64_t> weights_against(const Catalog& catalog, const EndMetals& ends, MaterialId own) {
  std::vector<std::int64_t> weights;
  weights.reserve(catalog.materials().size());
  for (std::uint32_t row = 0; row < catalog.materials().size(); ++row) {
    const auto eats = [&](MaterialId end) {
      return catalog.galvanic(end, {row}) == catalog::GalvanicVerdict::keep_apart;
    };
    const bool clashes = !ends.parted && std::any_of(ends.known.begin(), ends.known.end(), eats);
    weights.push_back(clashes ? kClash : 0);
    if (catalog.same_metal(own, {row})) continue;
    weights.back() += kNotOwn + (ends.parted ? 0 : steps_between(catalog.material(own), catalog.material({row})));
  }
  return weights;
}

/// Two materials that a run is measured by: an end's own (invalid: none is known), and the one of which it is to be. An
/// end's own is whatever is the same metal: a steel table takes black iron as its own.
class Yardstick {
 public:
  /// @param weights  of each material against an end's own, weights_against; empty: no end's is known
  Yardstick(std::vector<std::int64_t> weights, MaterialId one) : weights_(std::move(weights)), one_(one) {}

  Rest rest_of(const Catalog& catalog, const Move& move) const {
    Rest rest{{0, move.own.cents, move.own.cents, move.own.drawbacks, 0}};
    if (move.part.valid()) count(make_of(catalog, move.part), rest);
    for (const PartId plug : move.plugs) count(make_of(catalog, plug), rest);
    return rest;
  }
  /// Of the materials alone.
  Rest rest_of(const std::vector<Make>& makes) const {
    Rest rest;
    for (const Make& make : makes) count(make, rest);
    return rest;
  }

 private:
  void count(const Make& make, Rest& rest) const {
    rest.tuple[0] += weights_.empty() ? 0 : weights_[make.material.row];
    rest.tuple[kWorthPlace] += make.device || make.material == one_ ? 0 : kWorthOfOneMaterial;
  }

  std::vector<std::int64_t> weights_;  // by material
  MaterialId one_;
};

/// Every pair of a known end's material and one that something but a device is made of.
inline std::vector<Yardstick> yardsticks(const Catalog& catalog, const EndMetals& ends, std::vector<Make> makes) {
  std::erase_if(makes, [](const Make& make) { return make.device; });
  std::sort(makes.begin(), makes.end());
  makes.erase(std::unique(makes.begin(), makes.end()), makes.end());
  if (makes.empty()) makes.push_back({});
  std::vector<std::vector<std::int64_t>> weights;
  for (const MaterialId own : ends.known) weights.push_back(weights_against(catalog, ends, own));
  if (weights.empty()) weights.emplace_back();
  std::vector<Yardstick> all;
  all.reserve(weights.size() * makes.size());
  for (const std::vector<std::int64_t>& against : weights)
    for (const Make& make : makes) all.emplace_back(against, make.material);
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
    for (const Move& move : moves) sum = sum + yardstick.rest_of(catalog, move);
    if (!least || sum < *least) least = sum;
  }
  return *least;
}

}  // namespace riserun::chain
