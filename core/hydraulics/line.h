// A line of elements in a row: riser, fittings, hose. It knows what head a flow takes in either direction, element by
// element, and what flow a head drives. Water runs `forward` from the first element to the last (the fill).
#pragma once

#include "hydraulics/fluid.h"
#include "quantity/quantities.h"

#include <string>
#include <vector>

namespace riserun::hydraulics {

/// A piece of the line with one bore. Changes of bore between neighbours cost head of their own (Borda-Carnot for a
/// widening, Crane's contraction formula for a narrowing), whichever way the water runs.
struct LineElement {
  std::string name;       // as printed: "1 x 3/4 hex bushing"
  Length bore{};          // > 0
  Length length{};        // >= 0, wetted length for wall friction
  Length roughness{};     // >= 0, absolute
  double crane_n = 0.0;   // fitting loss K = n fT, fT for this element's bore
  double darby_k1 = 0.0;  // 3-K, used where it gives more than Crane (low Reynolds number); 0: none
  double darby_ki = 0.0;
  double darby_kd = 0.0;        // NPS in inches
  double nominal_inches = 0.0;  // NPS for the 3-K formula
  double fixed_k = 0.0;         // further loss on this bore's velocity head: an orifice, an entry
  double scatter = 0.0;         // relative half-range of the fitting loss
  double dirty = 1.0;           // >= 1, so many times the fitting loss when clogged: the high end, where it is more
  Length used_roughness{};      // of the wall when it is old: the high end of its range; zero: as now
  std::string source;           // of the fitting loss; empty: wall friction and change of bore only
};

/// How an end of the line meets its tank.
struct LineEnd {
  double entry_k = 0.5;  // loss when water enters here, on the velocity head of that end's bore
  double exit_k = 1.0;   // loss when it leaves here
  double scatter = 0.0;  // relative half-range of entry_k
  std::string source;
  double exit_scatter = 0.0;  // relative half-range of exit_k
};

enum class Direction { forward, backward };

/// Which end of each coefficient's range to use.
enum class Coefficients { low, nominal, high };

struct ElementLoss {
  std::string element;
  double k = 0.0;  // total loss coefficient on that element's own velocity head, wall friction included;
                   // 0 without flow; a change of bore counts on the smaller bore
  Velocity velocity{};
  Head head{};
  std::string source;
};

class Line {
 public:
  Line() = default;
  /// @pre at least one element, every bore positive
  Line(std::vector<LineElement> elements, LineEnd first_end, LineEnd last_end);

  const std::vector<LineElement>& elements() const { return elements_; }
  const LineEnd& first_end() const { return first_end_; }
  const LineEnd& last_end() const { return last_end_; }
  bool empty() const { return elements_.empty(); }

  /// Head taken by a flow >= 0 in that direction, the velocity head lost at the exit included. Continuous and strictly
  /// rising with the flow. Wall friction is known to 10 % where the flow is turbulent (Moody 1944, from memory), a
  /// narrowing to 30 % and a widening to 10 % (spread of published formulas): that, and the scatter of the elements
  /// and ends, is what `coefficients` spans.
  Head head_loss(VolumeFlow flow, Direction direction, const Water& water,
                 Coefficients coefficients = Coefficients::nominal) const;
  /// The flow that takes just that head, solved to 1e-12 relative; 0 for a head of 0 or less, infinite for a line that
  /// takes no head at any flow. For many calls use CompiledLine.
  VolumeFlow flow_at(Head head, Direction direction, const Water& water,
                     Coefficients coefficients = Coefficients::nominal) const;
  /// Where the head goes at a flow: ends, changes of bore and elements, in the order that the water meets them. Their
  /// heads, added in that order, are head_loss.
  std::vector<ElementLoss> losses(VolumeFlow flow, Direction direction, const Water& water,
                                  Coefficients coefficients = Coefficients::nominal) const;
  Length smallest_bore() const;
  /// Water that stands in the line when full.
  Volume volume() const;
  /// Elements whose wall is rougher, against their bore, than the Moody chart and Colebrook-White cover.
  std::vector<std::string> beyond_moody_chart() const;

 private:
  std::vector<LineElement> elements_;
  LineEnd first_end_;
  LineEnd last_end_;
};

}  // namespace riserun::hydraulics
