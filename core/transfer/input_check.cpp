#include "transfer/input_check.h"

#include "quantity/input_error.h"

#include <cmath>
#include <string>
#include <utility>

namespace riserun::transfer {
namespace {

using hydraulics::Direction;

struct Check {
  std::vector<quantity::Problem> problems;
  void at_least(double value, double least, bool open, const char* what) {
    if (std::isfinite(value) && (open ? value > least : value >= least)) return;
    fail(std::string(what) + (open ? " must be more than " : " must not be less than ") +
         (least == 0.0 ? "zero" : std::to_string(least)));
  }
  void fail(std::string message) {
    quantity::Problem problem;
    problem.message = std::move(message);
    problems.push_back(std::move(problem));
  }
  void positive(double value, const char* what) { at_least(value, 0.0, true, what); }
  void not_negative(double value, const char* what) { at_least(value, 0.0, false, what); }
  void finish() {
    if (!problems.empty()) throw quantity::InputError(std::move(problems));
  }
};

void check_water_side(Check& check, const System& s) {
  check.positive(in_square_metres(s.reservoir.free_area()), "the reservoir's area");
  check.positive(in_metres(s.reservoir.height), "the reservoir's height");
  check.positive(in_square_metres(s.table.free_area()), "the table's area");
  check.positive(in_metres(s.table.rim), "the table's rim");
  // A table below the reservoir is fed by its own weight and is no mistake; a kilometre below is.
  check.at_least(in_metres(s.table.floor_height), -1.0e3, false, "the height of the table's floor");
  check.not_negative(in_metres(s.riser_end_height), "the height of the riser's end");
  check.not_negative(in_metres(s.inlet_height), "the height of the table's inlet");
  check.not_negative(in_metres(s.mouth.bore), "the bore of the table's mouth");
  check.not_negative(in_metres(s.mouth.film), "the film over the table's mouth");
  check.not_negative(in_pascals(s.check.opens_at), "what opens the water's way up");
  check.positive(in_kilograms_per_cubic_metre(s.water.density), "the water's density");
  check.positive(in_pascal_seconds(s.water.viscosity), "the water's viscosity");
}

void check_air_side(Check& check, const System& s) {
  check.positive(in_kelvins(s.temperature), "the temperature");
  check.positive(in_pascals(s.atmosphere), "the atmosphere's pressure");
  check.not_negative(in_pascals(s.air.set_pressure), "the set pressure");
  if (s.air.first_stage) check.not_negative(in_pascals(s.air.first_stage->setting), "the first stage's setting");
  check.not_negative(s.air.droop, "the regulator's droop");
  check.not_negative(in_pascals(s.air.repeatability), "the regulator's repeatability");
  check.not_negative(in_pascals(s.air.lock_up), "the regulator's lock-up");
  check.not_negative(in_cubic_metres_per_second(s.air.regulator_rated_flow), "the regulator's rated flow");
  if (s.air.free_air_delivery) {
    check.not_negative(in_cubic_metres_per_second(*s.air.free_air_delivery), "the compressor's free air");
  }
  check.not_negative(in_cubic_metres(s.air.receiver), "the receiver's volume");
  check.not_negative(in_pascals(s.air.receiver_pressure), "the receiver's pressure");
  check.not_negative(in_metres(s.air.feed_bore), "the feed's bore");
  check.not_negative(s.air.feed_discharge_coefficient, "the feed's discharge coefficient");
  check.not_negative(in_metres(s.vent.bore), "the vent's bore");
  check.not_negative(s.vent.discharge_coefficient, "the vent's discharge coefficient");
  check.not_negative(s.vent.count, "the number of vents");
}

}  // namespace

void check_input(const System& s, const Start& start) {
  Check check;
  check_water_side(check, s);
  check_air_side(check, s);
  check.not_negative(in_metres(start.reservoir_depth), "the depth in the reservoir");
  check.not_negative(in_metres(start.table_depth), "the depth in the table");
  check.at_least(in_pascals(start.ullage_pressure), -0.99 * in_pascals(s.atmosphere), false, "the ullage's pressure");
  if (s.line.empty()) {
    check.fail("the line must have at least one element");
  } else {
    const VolumeFlow flow = cubic_metres_per_second(1.0e-3);
    for (const Direction direction : {Direction::forward, Direction::backward}) {
      check.positive(in_metres(s.line.head_loss(flow, direction, s.water)), "the head that the line takes");
    }
  }
  check.finish();
}

void check_wanted(Length wanted_depth) {
  Check check;
  check.not_negative(in_metres(wanted_depth), "the wanted depth");
  check.finish();
}

}  // namespace riserun::transfer
