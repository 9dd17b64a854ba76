#include "transfer/flow_curve.h"

#include <algorithm>
#include <limits>

namespace riserun::transfer {
namespace {

// Flows from a drop a minute to a river, evenly in ln flow; ln head steps about twice as far.
constexpr double kLeastLogFlow = -23.0;  // 1e-10 m3/s
constexpr double kStep = 1.0 / 24.0;
constexpr std::size_t kCells = 24 * 26;  // up to 20 m3/s
constexpr double kClose = 1.0e-10;       // relative error of a flow at mid-cell that is let pass

double log_flow_at(std::size_t index) { return kLeastLogFlow + kStep * static_cast<double>(index); }

}  // namespace

FlowCurve::FlowCurve(hydraulics::CompiledLine line) : line_(std::move(line)), cells_(kCells), cell_(&outside_) {}

FlowCurve::Point FlowCurve::point(std::size_t index) {
  const double flow = std::exp(log_flow_at(index));
  const auto at = line_.head_and_slope(flow);
  return {std::log(at.head), at.head / (flow * at.slope)};
}

void FlowCurve::make(std::size_t index) {
  const Point low = point(index);
  const Point high = point(index + 1);
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
  cell.smooth = std::abs(std::log(head) - (low.log_head + t)) < kClose;
}

/// Steps from a guess: heads rise with flows, so the right cell is on the side that the head says.
void FlowCurve::find(double log_head) {
  cell_ = &outside_;
  const double flow = line_.flow(std::exp(log_head));
  if (!(flow > 0.0) || !std::isfinite(flow)) return;
  const double place = (std::log(flow) - kLeastLogFlow) / kStep;
  if (!(place >= 0.0) || place >= static_cast<double>(kCells - 1)) return;
  std::size_t index = static_cast<std::size_t>(place);
  for (int step = 0; step < 3; ++step) {
    if (!cells_[index].known) make(index);
    if (log_head < cells_[index].log_head && index > 0) {
      --index;
    } else if (log_head >= cells_[index].next_log_head && index + 1 < kCells) {
      ++index;
    } else {
      cell_ = &cells_[index];
      return;
    }
  }
}

}  // namespace riserun::transfer
