// What can be seen and measured of an open end: the candidate's side of `identify`. All of it comes from the catalog.
#pragma once

#include "catalog/catalog.h"
#include "catalog/identify/bench_tools.h"
#include "catalog/identify/thread_form.h"

#include <optional>
#include <vector>

namespace riserun::catalog {

struct PortTraits {
  PortTypeId type;
  PortType port;
  std::optional<LengthBand> outside;  // across a male thread's crests, a tube or a barb
  std::optional<LengthBand> inside;   // between a female thread's crests, or the bore
  std::optional<ThreadDiameters> thread;
  double threads_per_inch = 0.0;
  Length thread_length{};
  bool tapered = false;
  bool washer = false;  // carries the washer or gasket that the joint seals on
  bool swivel = false;  // a nut that turns by itself
  double flank_angle_degrees = 0.0;
  double cone_angle_degrees = 0.0;
  double common_inch = 0.0;  // share of the shelf, kind and size together; only ratios count
  double common_metric = 0.0;
  std::vector<double> material_share;  // by material row: how often parts with that kind of end are made of it

  bool threaded() const { return threads_per_inch > 0.0; }
};

/// Every end of the catalog that can be told by measuring it, in the catalog's order.
std::vector<PortTraits> recognisable_ports(const Catalog& catalog);

/// Other kinds of the same thread that only differ in something that needs no measuring (metal or plastic).
std::vector<PortTypeId> same_thread(const Catalog& catalog, PortTypeId type);
/// The end of a kind that can be told by measuring, with the thread of this one; nullopt: there is none.
std::optional<PortTypeId> measured_as(const Catalog& catalog, PortTypeId type);

/// Whether threads of that size meet at all: the male is neither so large that it stays outside, its flanks beyond the
/// female's roots, nor so small that it slips in without gripping. Crests are 0.65 of the pitch high (ASME B1.1).
bool threads_meet(const PortTraits& male, const PortTraits& female);

/// How many turns the male goes into the female by hand, nominal: none when it does not start; nullopt when it
/// slips in without gripping.
///
/// With p the male's pitch, d the difference of the pitches, c = (female pitch diameter at the mouth) - (male pitch
/// diameter where it begins): after n turns flanks that do not advance together have drifted apart by n d, while a
/// taper has used up n p/16 of the diameter. It stops when the drift takes up what axial play is left,
///     n d = tan(30 deg) (c - n p/16),   n = c / (d / tan(30 deg) + p/16 where one of the two is tapered)
/// which for a taper in its own taper is L1/p, the standard's hand-tight turns (ASME B1.20.1, 3.1.6). A straight male
/// in a straight female of its own pitch goes in to the washer, the cone or the end of the thread. 55 degree flanks are
/// taken as touching at the pitch diameter, too.
std::optional<double> hand_turns(const Catalog& catalog, const PortTraits& male, const PortTraits& female);

}  // namespace riserun::catalog
