#include "transfer/flow_curve.h"

#include <utility>

namespace riserun::transfer {
namespace {

// Flows from a drop a minute to a river, evenly in ln flow; ln head steps about twice as far.
constexpr double kLeastLogFlow = -23.0;  // 1e-10 m3/s
constexpr std::size_t kCellsPerUnit = 16;
constexpr double kStep = 1.0 / kCellsPerUnit;
constexpr std::size_t kCells = kCellsPerUnit * 26;  // up to 20 m3/s
constexpr double kClose =
    1.0e-8;                   // relative error of a flow at mid-cell that is let pass; at turbulent flow it is 1e-10
constexpr int kMostWalk = 6;  // cells from the last one to the wanted one; further: solve for it

double log_flow_at(std::size_t index) { return kLeastLogFlow + kStep * static_cast<double>(index); }

}  // namespace

FlowCurve::FlowCurve(hydraulics::CompiledLine line)
    : line_(std::move(line)), points_(kCells + 1), cells_(kCells), cell_(&outside_), index_(kCells) {}

const FlowCurve::Point& FlowCurve::point(std::size_t index) {
  Point& p = points_[index];
  if (p.slope == 0.0) {
    const double flow = std::exp(log_flow_at(index));
    const auto at = line_.head_and_slope(flow);
    p = {std::log(at.head), at.head / (flow * at.slope)};
  }
  return p;
}

void FlowCurve::make(std::size_t index) {
  const Point& low = point(index);
  const Point& high = point(index + 1);
  Cell& cell = cells_[index];
  const double width = high.log_head - low.log_head;
  const double mean_slope = kStep / width;
  cell.known = true;
  cell.log_head = low.log_head;
  cell.next_log_head = high.log_head;
  cell.log_flow = log_flow_at(index);
  cell.slope = low.slope;
  cell.square = (3.0 * mean_slope - 2.0 * low.slope - high.slope) / width;
  cell.cube = (low.slope + high.slope - 2.0 * mean_slope) / (width * width);
  const double t = 0.5 * width;
  const double middle = cell.log_flow + t * (cell.slope + t * (cell.square + t * cell.cube));
  const double head = line_.head(std::exp(middle));
  // A cell with a kink inside (laminar to turbulent, a fitting that changes its formula) is not smooth enough for its
  // cubic and is solved each time instead.
  cell.smooth = std::abs(std::log(head) - (low.log_head + t)) < kClose;
}

/// Heads rise with flows, so the right cell is on the side that the head says: walk there from the last one.
void FlowCurve::find(double log_head) {
  cell_ = &outside_;
  std::size_t index = index_;
  for (int walked = 0; walked < 2 * kMostWalk; ++walked) {
    if (index >= kCells || walked == kMostWalk) {
      const double flow = line_.flow(std::exp(log_head));
      const double place = (std::log(flow) - kLeastLogFlow) / kStep;
      if (!(place >= 0.0) || place >= static_cast<double>(kCells)) return;
      index = static_cast<std::size_t>(place);
    }
    if (log_head < point(index).log_head) {
      if (index == 0) return;
      --index;
    } else if (log_head >= point(index + 1).log_head) {
      if (++index == kCells) return;
    } else {
      if (!cells_[index].known) make(index);
      cell_ = &cells_[index];
      index_ = index;
      return;
    }
  }
}

}  // namespace riserun::transfer
