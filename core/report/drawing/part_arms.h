// A part as arms from its middle out to its ports, measured for drawing.
#pragma once

#include "catalog/catalog.h"

#include <vector>

namespace riserun::report {

/// What an arm looks like; metres.
struct Arm {
  double heading = 0.0;  // degrees, as drawn
  double outside = 0.0;  // of the thread, tube or barb
  double bore = 0.0;
  double joint = 0.0;  // length of thread, barb or socket
  double pitch = 0.0;  // between the threads
  double reach = 0.0;  // from the middle, as drawn
  double start = 0.0;  // where a male end begins, from the middle; before it where below zero
  double half = 0.0;   // of the body's width beside the end
  catalog::KindId kind;
  bool female = false;
  bool threaded = false;
  bool tapered = false;
  bool covered = false;  // a socket that shows nothing of its own: the body is what is seen
  catalog::EndShape shape = catalog::EndShape::plain;
};

struct ArmSet {
  std::vector<Arm> arms;
  double body = 0.0;    // width of the widest
  double flats = 0.0;   // across the flats of what a wrench holds; 0: none
  double length = 0.0;  // of a straight part from port to port, as drawn
  bool straight = false;
  bool broken = false;  // drawn shorter than it is
};

/// Turned so that the entered port looks left, and over where the way out would look down.
ArmSet arms_of(const catalog::Catalog& catalog, const catalog::Part& part, std::size_t enter, std::size_t leave);

}  // namespace riserun::report
