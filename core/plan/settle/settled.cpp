#include "plan/settle/settled.h"

#include "quantity/nearly.h"
#include "reservoir/plug_welds.h"

#include <algorithm>
#include <utility>

namespace riserun::plan {

namespace {

// The defaults. Each stands here once, and settle() prints it with its reason.
const Temperature kRoomTemperature = degrees_fahrenheit(68.0);
const Temperature kColdestShop = degrees_celsius(3.0);   // below that its water may freeze: common practice
const Length kFreeboard = inches(1.0);                   // rim over the wanted depth
const GaugePressure kReceiverPressure = psig(90.0);      // low end of shop air, 90 to 125 psi: common practice
const GaugePressure kHighestShopPressure = psig(125.0);  // high end of it
const GaugePressure kRegulatorRange = psig(30.0);
// What a spring regulator comes back to, by its range: 0.2 to 0.5 psi for low-pressure types up to 0 to 30 psi, 1 to
// 2 psi for the general-purpose type (common practice); the worse of each.
const GaugePressure kLowPressureType = psig(30.0);
const PressureDifference kLowPressureRepeats = psi(0.5);
const PressureDifference kGeneralPurposeRepeats = psi(2.0);
const Length kFeedBore = inches(0.25);
const Length kVentBore = inches(0.5);
const double kDroop = 0.1;
const VolumeFlow kRegulatorRatedFlow = cubic_feet_per_minute(20.0);
const GaugePressure kLockUp = psig(0.3);             // low-pressure regulators: 0.2 to 0.5 psi
const GaugePressure kLockUpOfWideRange = psig(2.0);  // general-purpose ones: 1 to 3 psi
const GaugePressure kCheckValveOpens = psig(0.5);

/// Hands out what was given, or the default with a line in the list of assumptions.
class Assumer {
 public:
  explicit Assumer(Remarks& remarks) : remarks_(remarks) {}

  template <class T>
  T take(const std::optional<T>& given, T otherwise, const char* key, Fact assumed) {
    if (given) return *given;
    remarks_.assume(std::move(assumed), key);
    return otherwise;
  }
  void note(Fact assumed) { remarks_.assume(std::move(assumed)); }

 private:
  Remarks& remarks_;
};

void settle_boxes(const Job& job, Settled& settled, Assumer& assume) {
  const JobReservoir& given = job.reservoir;
  const double solid =
      assume.take(given.supports.solid_fraction, 0.0, "reservoir.supports.solid share", fact("no_room_for_supports"));
  settled.box = {given.length, given.width, given.height, solid};
  settled.obstacle_height =
      assume.take(given.obstacle_height, metres(0.0), "reservoir.under the riser", fact("nothing_under_the_riser"));
  settled.lid_closed = assume.take(given.lid_closed, false, "reservoir.lid", fact("lid_not_welded_on"));

  const JobTable& table = job.table;
  const Length rim = table.depth + kFreeboard;
  const double table_solid = assume.take(table.solid_fraction, 0.0, "table.solid share", fact("no_slats"));
  settled.table = {table.length, table.width, table.floor_height,
                   assume.take(table.rim, rim, "table.rim", fact("rim", rim, kFreeboard)), table_solid};
}

/// Of a closed reservoir they are in it, and nobody knows of what.
void settle_baffles(const Job& job, Settled& settled, Assumer& assume) {
  const Length sheet = job.reservoir.sheet.thickness;
  const auto& layout = job.reservoir.supports.layout;
  settled.baffle_plate = settled.wall_thickness;
  if (!layout || layout->baffles_across + layout->baffles_along == 0 || settled.lid_closed) return;
  const Length plate = reservoir::baffle_plate(sheet);
  if (!quantity::more_than(plate, sheet)) return;
  settled.baffle_plate = plate;
  assume.note(fact("baffles_of_plate", plate, sheet));
}

void settle_walls(const Job& job, Settled& settled, Assumer& assume) {
  const Sheet& sheet = job.reservoir.sheet;
  settled.metal = reservoir::find_sheet_metal(sheet.metal, sheet.thickness).value_or(reservoir::sheet_metals().front());
  reservoir::SheetMetal& metal = settled.metal;
  const std::string source = metal.source;
  metal.yield =
      assume.take(job.reservoir.yield, metal.yield, "reservoir.yield", fact("yield_of_sheet", metal.yield, source));
  metal.ultimate =
      std::max(metal.ultimate, metal.yield);  // a given yield may pass what the metal is assumed to break at
  metal.ultimate = assume.take(job.reservoir.ultimate, metal.ultimate, "reservoir.ultimate",
                               fact("ultimate_of_sheet", metal.ultimate, source));
  if (sheet.least) assume.note(fact("least_of_gauge", *sheet.least, sheet.written, sheet.thickness));
  const Length rusts = assume.take(job.reservoir.corrosion_allowance, metres(0.0), "reservoir.corrosion allowance",
                                   fact("no_corrosion_allowance"));
  settled.wall_thickness = sheet.least.value_or(sheet.thickness) - rusts;
  settle_baffles(job, settled, assume);
  const reservoir::DesignStress design = reservoir::design_stress(metal);
  settled.design_stress = design.stress;
  settled.design_stress_basis = design.basis;
  assume.note(fact("design_stress", design.stress, design.basis));
}

void settle_air(const Job& job, Settled& settled, Assumer& assume) {
  const JobAir& given = job.air;
  transfer::AirSupply& air = settled.air;
  air.free_air_delivery =
      assume.take(given.delivery, cubic_metres_per_second(0.0), "air.delivery", fact("no_compressor"));
  air.receiver = assume.take(given.receiver, cubic_metres(0.0), "air.receiver", fact("no_receiver"));
  air.receiver_pressure = assume.take(given.receiver_pressure, kReceiverPressure, "air.receiver pressure",
                                      fact("receiver_pressure", kReceiverPressure));
  settled.full_supply = assume.take(given.receiver_pressure, kHighestShopPressure, "air.receiver pressure",
                                    fact("full_supply_pressure", kHighestShopPressure));
  settled.regulator_range = assume.take(given.regulator_range, kRegulatorRange, "air.regulator range",
                                        fact("regulator_range", kRegulatorRange));
  const PressureDifference repeats =
      settled.regulator_range <= kLowPressureType ? kLowPressureRepeats : kGeneralPurposeRepeats;
  settled.regulator_repeatability = assume.take(given.regulator_repeatability, repeats, "air.regulator repeatability",
                                                fact("regulator_repeatability", repeats, settled.regulator_range));
  air.droop = assume.take(given.droop, kDroop, "air.droop", fact("regulator_droop", 100.0 * kDroop));
  air.regulator_rated_flow = assume.take(given.rated_flow, kRegulatorRatedFlow, "air.rated flow",
                                         fact("regulator_rated_flow", kRegulatorRatedFlow));
  air.repeatability = settled.regulator_repeatability;
  const GaugePressure lock_up = settled.regulator_range > kLowPressureType ? kLockUpOfWideRange : kLockUp;
  air.lock_up =
      assume.take(given.lock_up, lock_up, "air.lock up", fact("regulator_lock_up", lock_up)) - GaugePressure();
  settled.check_valve = given.check_valve.value_or(kCheckValveOpens) - GaugePressure();  // assumed where one needs it
  if (given.restrictor)
    air.before_regulator = hydraulics::AirLine({hydraulics::drilled_hole("restrictor", *given.restrictor)});
  air.feed_bore = assume.take(given.feed_bore, kFeedBore, "air.feed bore", fact("feed_bore", kFeedBore));
  // Assumed where no connection lets the air out: see stage/air.cpp.
  settled.vent.bore = job.vent.bore.value_or(kVentBore);
  settled.vent.count = job.vent.count.value_or(1);
}

void settle_surroundings(const Job& job, Settled& settled, Assumer& assume) {
  settled.temperature = assume.take(job.water_temperature, kRoomTemperature, "water temperature",
                                    fact("water_temperature", kRoomTemperature));
  const Length altitude = assume.take(job.altitude, metres(0.0), "altitude", fact("at_sea_level"));
  settled.atmosphere = hydraulics::atmosphere_at(altitude).value_or(absolute_pascals(kStandardAtmosphere));
  settled.warmest = std::max(settled.temperature, job.hottest.value_or(settled.temperature));
  settled.coldest = std::min(settled.temperature,
                             assume.take(job.coldest, kColdestShop, "coldest", fact("coldest_place", kColdestShop)));
  // load_job keeps the temperature in range; a job made otherwise falls back on room temperature rather than fail.
  const auto water = hydraulics::water_at(settled.temperature);
  settled.water = water ? *water : *hydraulics::water_at(kRoomTemperature);
  if (job.liquid.glycol > 0.0) settled.water = hydraulics::with_propylene_glycol(settled.water, job.liquid.glycol);
}

}  // namespace

Length thickness_of_baffles(const Job& job, const Settled& settled) {
  return std::max(job.reservoir.sheet.thickness, settled.baffle_plate);
}

Settled settle(const Job& job, Remarks& remarks) {
  Assumer assume(remarks);
  Settled settled;
  settle_boxes(job, settled, assume);
  settle_walls(job, settled, assume);
  settle_air(job, settled, assume);
  settle_surroundings(job, settled, assume);
  const bool has_bin = !job.bin.items.empty();
  settled.order = assume.take(job.wishes.order, has_bin ? chain::Order::bin : chain::Order::line, "wishes.order",
                              fact(has_bin ? "order_of_a_job_with_a_bin" : "order_of_a_job_without_a_bin"));
  return settled;
}

}  // namespace riserun::plan
