#include "plan/settle/settled.h"

#include "quantity/write.h"

#include <fmt/format.h>

#include <algorithm>

namespace riserun::plan {

namespace {

// The defaults. Each stands here once, and settle() prints it with its reason.
const Temperature kRoomTemperature = degrees_fahrenheit(68.0);
const Length kFreeboard = inches(1.0);                   // rim over the wanted depth
const GaugePressure kReceiverPressure = psig(90.0);      // low end of shop air, 90 to 125 psi: common practice
const GaugePressure kHighestShopPressure = psig(125.0);  // high end of it
const GaugePressure kRegulatorRange = psig(30.0);
const Length kFeedBore = inches(0.25);
const Length kVentBore = inches(0.5);
const double kDroop = 0.1;
const VolumeFlow kRegulatorRatedFlow = cubic_feet_per_minute(20.0);

/// Hands out what was given, or the default with a line in the list of assumptions.
class Assumer {
 public:
  explicit Assumer(Remarks& remarks) : remarks_(remarks) {}

  template <class T>
  T take(const std::optional<T>& given, T otherwise, const char* key, const char* what, std::string value,
         const char* why) {
    if (given) return *given;
    remarks_.assume(what, std::move(value), why, key);
    return otherwise;
  }
  void note(std::string what, std::string value, std::string why) {
    remarks_.assume(std::move(what), std::move(value), std::move(why));
  }

 private:
  Remarks& remarks_;
};

void settle_boxes(const Job& job, Settled& settled, Assumer& assume) {
  const JobReservoir& given = job.reservoir;
  const double solid = assume.take(given.supports.solid_fraction, 0.0, "reservoir.supports.solid share",
                                   "room that supports take in the reservoir", "none",
                                   "stays and baffles of sheet take about 1 % (common practice)");
  settled.box = {given.length, given.width, given.height, solid};
  settled.obstacle_height =
      assume.take(given.obstacle_height, metres(0.0), "reservoir.under the riser",
                  "what lies on the floor under the riser", "nothing", "not given: look for a stay or an angle there");
  settled.lid_closed = assume.take(given.lid_closed, false, "reservoir.lid", "lid", "not yet welded on", "not given");

  const JobTable& table = job.table;
  const Length rim = table.depth + kFreeboard;
  const double table_solid =
      assume.take(table.solid_fraction, 0.0, "table.solid share", "room that slats take under water in the table",
                  "none", "not given: without them the table needs the most water");
  settled.table = {table.length, table.width, table.floor_height,
                   assume.take(table.rim, rim, "table.rim", "height of the table's rim", write_length(rim, job.units),
                               "1 in over the wanted depth, so that an overflow is not missed"),
                   table_solid};
}

void settle_walls(const Job& job, Settled& settled, Assumer& assume) {
  settled.metal = reservoir::find_sheet_metal(job.reservoir.sheet.metal).value_or(reservoir::sheet_metals().front());
  reservoir::SheetMetal& metal = settled.metal;
  const std::string source = metal.source;
  metal.yield = assume.take(job.reservoir.yield, metal.yield, "reservoir.yield", "yield strength of the sheet",
                            write_stress(metal.yield, job.units), source.c_str());
  metal.ultimate =
      assume.take(job.reservoir.ultimate, metal.ultimate, "reservoir.ultimate", "ultimate strength of the sheet",
                  write_stress(metal.ultimate, job.units), source.c_str());
  const reservoir::DesignStress design = reservoir::design_stress(metal);
  settled.design_stress = design.stress;
  settled.design_stress_basis = design.basis;
  assume.note("design stress of the walls", write_stress(design.stress, job.units) + ", " + design.basis,
              "screening value for flat tank walls (common practice)");
}

void settle_air(const Job& job, Settled& settled, Assumer& assume) {
  const JobAir& given = job.air;
  const UnitSystem units = job.units;
  transfer::AirSupply& air = settled.air;
  air.free_air_delivery = assume.take(given.delivery, cubic_metres_per_second(0.0), "air.delivery", "compressor",
                                      "none: the receiver's air alone", "only a receiver was given");
  air.receiver = assume.take(given.receiver, cubic_metres(0.0), "air.receiver", "receiver", "none",
                             "not given: the compressor's delivery alone must do it");
  air.receiver_pressure = assume.take(
      given.receiver_pressure, kReceiverPressure, "air.receiver pressure", "receiver pressure at the start of a fill",
      write_pressure(kReceiverPressure, units), "low end of shop air, 90 to 125 psi (common practice)");
  settled.full_supply = assume.take(
      given.receiver_pressure, kHighestShopPressure, "air.receiver pressure", "full supply pressure for the fault case",
      write_pressure(kHighestShopPressure, units), "high end of shop air, 90 to 125 psi (common practice)");
  settled.regulator_range =
      assume.take(given.regulator_range, kRegulatorRange, "air.regulator range", "regulator range",
                  "0 to " + write_pressure(kRegulatorRange, units), "low-pressure regulator (common practice)");
  air.droop = assume.take(given.droop, kDroop, "air.droop", "regulator droop", "10 %",
                          "usual for a small regulator at its rated flow (common practice)");
  air.regulator_rated_flow = kRegulatorRatedFlow;
  air.feed_bore = assume.take(given.feed_bore, kFeedBore, "air.feed bore", "smallest bore of the air feed",
                              write_length(kFeedBore, units), "1/4 in quick-connect (common practice)");
  settled.vent.bore = assume.take(job.vent.bore, kVentBore, "vent.bore", "vent bore", write_length(kVentBore, units),
                                  "1/2 in ball valve (common practice)");
  settled.vent.count = assume.take(job.vent.count, 1, "vent.count", "vents", "one", "not given");
}

void settle_surroundings(const Job& job, Settled& settled, Assumer& assume) {
  settled.temperature = assume.take(job.water_temperature, kRoomTemperature, "water temperature", "water temperature",
                                    write_temperature(kRoomTemperature, job.units), "room temperature");
  const Length altitude =
      assume.take(job.altitude, metres(0.0), "altitude", "altitude", "sea level", "standard atmosphere (ISO 2533)");
  settled.atmosphere = hydraulics::atmosphere_at(altitude).value_or(absolute_pascals(kStandardAtmosphere));
  // load_job keeps the temperature in range; a job made otherwise falls back on room temperature rather than fail.
  const auto water = hydraulics::water_at(settled.temperature);
  settled.water = water ? *water : *hydraulics::water_at(kRoomTemperature);
}

const char* order_name(chain::Order order) {
  switch (order) {
    case chain::Order::parts:
      return "fewest parts";
    case chain::Order::price:
      return "lowest price";
    case chain::Order::loss:
      return "least head lost";
    case chain::Order::length:
      return "shortest";
    case chain::Order::bin:
      return "fewest parts to buy";
  }
  return "";
}

}  // namespace

Settled settle(const Job& job, Remarks& remarks) {
  Assumer assume(remarks);
  Settled settled;
  settle_boxes(job, settled, assume);
  settle_walls(job, settled, assume);
  settle_air(job, settled, assume);
  settle_surroundings(job, settled, assume);
  const chain::Order order = job.bin.items.empty() ? chain::Order::parts : chain::Order::bin;
  settled.order = assume.take(job.wishes.order, order, "wishes.order", "what decides between fittings",
                              order_name(order), job.bin.items.empty() ? "no bin was given" : "a bin was given");
  return settled;
}

}  // namespace riserun::plan
