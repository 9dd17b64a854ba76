// The flow that a head drives through a line, made cheap for the inner loop: ln flow against ln head is nearly straight
// (slope 1 laminar, about 0.55 turbulent), so cubics through exact points and slopes give it to 1e-8 and mostly better;
// each point is worked out when it is first needed. Where a kink (a change between loss formulas) spoils a cubic, the
// line is solved.
#pragma once

#include "hydraulics/compiled_line.h"

#include <cmath>
#include <vector>

namespace riserun::transfer {

/// Raw SI. Remembers points: one object serves one thread.
class FlowCurve {
 public:
  explicit FlowCurve(hydraulics::CompiledLine line);
  FlowCurve(const FlowCurve&) = delete;
  FlowCurve& operator=(const FlowCurve&) = delete;

  /// Flow [m3/s] at a head [m] > 0.
  double flow(double head) {
    const double log_head = std::log(head);
    if (!(log_head >= cell_->log_head && log_head < cell_->next_log_head)) find(log_head);
    if (!cell_->smooth) return line_.flow(head);
    const double t = log_head - cell_->log_head;
    return std::exp(cell_->log_flow + t * (cell_->slope + t * (cell_->square + t * cell_->cube)));
  }

 private:
  /// Between two neighbouring points: ln flow as a cubic in ln head above `log_head`.
  struct Cell {
    bool known = false;
    bool smooth = false;
    double log_head = 0.0, next_log_head = 0.0;  // equal: holds nothing
    double log_flow = 0.0, slope = 0.0, square = 0.0, cube = 0.0;
  };
  struct Point {
    double log_head = 0.0;
    double slope = 0.0;  // d ln flow / d ln head; 0: not known yet
  };

  const Point& point(std::size_t index);
  void make(std::size_t index);
  void find(double log_head);

  hydraulics::CompiledLine line_;
  std::vector<Point> points_;
  std::vector<Cell> cells_;
  Cell outside_;  // solved, not interpolated
  const Cell* cell_;
  std::size_t index_;  // of the last cell found
};

}  // namespace riserun::transfer
