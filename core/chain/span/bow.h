// How hose and tube bend between two ends: the least radius, what a piece draws back when it is bowed out of the line,
// and between which distances a hose goes that comes made up.
#pragma once

#include "catalog/catalog.h"

#include <cstdint>
#include <optional>

namespace riserun::chain {

using catalog::Catalog;

/// Bores that a bend of hose or air tube has for its radius at the least (common practice; of nylon tube it is some
/// four outside diameters, SAE J844, from memory).
inline constexpr double kBoresOfBend = 6.0;
/// Of the length of a cut hose between its joints: under pressure it draws in by up to 4 % (SAE J517, from memory).
inline constexpr double kSlack = 0.04;
/// Of a made-up hose, which is bought as it comes: it does not pull at its ends (common practice; the figure is ours).
inline constexpr double kSlackOfMadeUp = 0.02;

/// Least radius in micrometres: of hose and air tube six bores, of PEX eight outside diameters (PPI, from memory),
/// which are ten bores.
double least_radius(const Catalog& catalog, const catalog::Part& part);

/// The same while a piece is put onto its second end: hose, for that moment, half of it (common practice; the figure is
/// ours); tube that goes into its fitting would kink, and has no less.
double radius_putting_on(const Catalog& catalog, const catalog::Part& part);

/// A piece between two ends in line, pulled out of the line, goes out, over and back in four arcs of one radius that
/// turn equally, so that its ends keep looking along the line (geometry). What its ends then come nearer by; each arc
/// turns by a right angle at the most. Micrometres, or any one unit.
double drawn_back(double length, double radius);
/// The least length that draws back so much, or in which each arc turns by a right angle.
double least_bowed(double by, double radius);

/// Between which distances a made-up hose goes, what its joints take in included, micrometres.
struct HoseReach {
  std::int64_t least = 0;
  std::int64_t most = 0;
};
/// It is as long as its gap with its slack, and no more than twice as long (common practice), the surplus bowed
/// no tighter than may be.
/// @param in_joints  micrometres that its joints take in
/// @param aside  micrometres between the axes of its two ends
/// @return nullopt: it does not reach so far aside
std::optional<HoseReach> reach_of(const Catalog& catalog, const catalog::Part& part, std::int64_t in_joints,
                                  std::int64_t aside);

}  // namespace riserun::chain
