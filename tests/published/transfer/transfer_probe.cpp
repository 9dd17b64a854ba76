// Solves the transfers that an outside judge asks for, one to a line of standard input, in plain SI numbers:
//
//   task(0 fill, 1 drain)  tolerance
//   reservoir area, height   table area, floor, rim   riser end, inlet height
//   number of elements, then for each: bore, length, roughness, fixed K
//   first end's entry K, exit K   last end's entry K, exit K
//   water density, viscosity   temperature, atmosphere
//   set pressure, droop, rated free air   compressor's free air (-1: a main)   receiver volume, its gauge pressure
//   feed bore, Cd   vent bore, Cd, count
//   number of openings behind the regulator, then for each: effective area, the difference that opens it
//   start: reservoir depth, table depth, ullage gauge pressure   wanted depth
//
// and answers with: stop, time, water moved, air regulated, air vented, air compressed, ullage pressure, peak flow.
#include "transfer/integrate.h"

#include <iomanip>
#include <iostream>
#include <sstream>
#include <string>

namespace {

using namespace riserun;
using namespace riserun::transfer;

double next(std::istream& in) {
  double value = 0.0;
  in >> value;
  return value;
}

hydraulics::Line read_line(std::istream& in) {
  std::vector<hydraulics::LineElement> elements(static_cast<std::size_t>(next(in)));
  for (hydraulics::LineElement& element : elements) {
    element.bore = metres(next(in));
    element.length = metres(next(in));
    element.roughness = metres(next(in));
    element.fixed_k = next(in);
  }
  hydraulics::LineEnd first, last;
  first.entry_k = next(in);
  first.exit_k = next(in);
  last.entry_k = next(in);
  last.exit_k = next(in);
  return {elements, first, last};
}

System read_system(std::istream& in) {
  System s;
  s.reservoir.length = metres(next(in));  // an area of that many square metres: one metre wide
  s.reservoir.width = metres(1.0);
  s.reservoir.height = metres(next(in));
  s.table.length = metres(next(in));
  s.table.width = metres(1.0);
  s.table.floor_height = metres(next(in));
  s.table.rim = metres(next(in));
  s.riser_end_height = metres(next(in));
  s.inlet_height = metres(next(in));
  s.line = read_line(in);
  s.water.density = kilograms_per_cubic_metre(next(in));
  s.water.viscosity = pascal_seconds(next(in));
  s.temperature = kelvins(next(in));
  s.atmosphere = absolute_pascals(next(in));
  s.air.set_pressure = gauge_pascals(next(in));
  s.air.droop = next(in);
  s.air.regulator_rated_flow = cubic_metres_per_second(next(in));
  const double delivery = next(in);
  if (delivery >= 0.0) s.air.free_air_delivery = cubic_metres_per_second(delivery);
  s.air.receiver = cubic_metres(next(in));
  s.air.receiver_pressure = gauge_pascals(next(in));
  s.air.feed_bore = metres(next(in));
  s.air.feed_discharge_coefficient = next(in);
  s.vent.bore = metres(next(in));
  s.vent.discharge_coefficient = next(in);
  s.vent.count = static_cast<int>(next(in));
  std::vector<hydraulics::AirElement> behind(static_cast<std::size_t>(next(in)));
  for (hydraulics::AirElement& element : behind) {
    element.effective_area = square_metres(next(in));
    element.opens_at = pascals(next(in));
  }
  s.air.after_regulator = hydraulics::AirLine(behind);
  return s;
}

const char* name_of(Stop stop) {
  switch (stop) {
    case Stop::goal_reached:
      return "goal";
    case Stop::riser_uncovered:
      return "riser";
    case Stop::pressures_balance:
      return "balance";
    case Stop::table_overflows:
      return "rim";
    case Stop::reservoir_full:
      return "full";
    case Stop::time_limit:
      return "limit";
  }
  return "";
}

void answer(const std::string& question) {
  std::istringstream in(question);
  RunOptions options;
  options.task = next(in) == 0.0 ? Task::fill : Task::drain;
  options.tolerance = next(in);
  options.keep_path = false;
  const System system = read_system(in);
  const Start start{metres(next(in)), metres(next(in)), gauge_pascals(next(in))};
  const Equations equations(system, start, options.task);
  options.goal_table = next(in) * equations.table_area;
  const Course r = run(equations, options);
  std::cout << name_of(r.stop) << ' ' << r.time << ' ' << r.state.water << ' ' << r.state.regulated << ' '
            << r.state.vented << ' ' << r.state.compressed << ' ' << equations.ullage_pressure(r.state) << ' '
            << r.peak_flow << std::endl;
}

}  // namespace

int main() {
  std::cout << std::setprecision(17);
  std::string question;
  while (std::getline(std::cin, question)) answer(question);
}
