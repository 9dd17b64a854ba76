// A run of parts put together, to scale: each part where its joints put it, threads gone in as far as they go, what is
// long broken; with numbers for a list of its parts.
#pragma once

#include "catalog/catalog.h"
#include "chain/ask/run.h"
#include "report/drawing/drawing.h"
#include "report/drawing/part_drawing.h"

#include <optional>
#include <string>
#include <vector>

namespace riserun::report {

/// A part on the drawing, in the run's own order; plugs and the devices at the ends are among them.
struct RunItem {
  catalog::PartId part;
  std::optional<Length> cut_length;  // of a piece that is cut to measure
  bool broken = false;               // drawn shorter than it is
  Spot middle;
  double heading = 0.0;  // degrees: which way it goes on
  Spot low;              // of its outline
  Spot high;
  std::vector<PortSpot> ports;     // of each port of the part
  std::optional<std::size_t> end;  // of a device: row of the end that it stands at
};

struct RunPicture {
  Drawing drawing;
  std::vector<PortSpot> faces;  // of the ports that the run ends at, end by end; its base is at 0, 0
  std::vector<RunItem> items;   // the run's parts in their order, then devices and plugs
};

/// Male ends are drawn before the sockets that they go into.
RunPicture run_picture(const catalog::Catalog& catalog, const chain::Run& run);

/// Writes the number of each item, from 1 on, beside it, where it covers neither a part nor another number.
/// @param point  metres on the drawn thing to a point on the page
void number_items(RunPicture& picture, double point);

}  // namespace riserun::report
