#include "plan/stage/more_air.h"

#include <array>
#include <optional>

namespace riserun::plan {

namespace {

const Time kUsualFillTime = minutes(5.0);

/// Sizes that receivers and compressors are sold in (common practice).
constexpr std::array kReceiversGallons = {2.0, 3.0, 4.0, 6.0, 8.0, 11.0, 15.0, 20.0, 26.0, 30.0, 60.0, 80.0, 120.0};
constexpr std::array kDeliveriesScfm = {1.0, 1.5, 2.0, 2.5, 3.0, 4.0, 5.0, 6.0, 8.0, 10.0, 12.0, 15.0, 20.0};

bool fills_in_time(const TransferPlan& plan, const transfer::AirSupply& air, Length depth, Time in_time) {
  transfer::System system = plan.system;
  system.air = air;
  const transfer::Fill fill = transfer::fill(system, plan.start, depth, transfer::Detail::course);
  return fill.stop == transfer::Stop::goal_reached && fill.time <= in_time;
}

/// Never one that is smaller than what the job has and does not do.
std::optional<Volume> receiver_for(const TransferPlan& plan, Length depth, Time in_time) {
  transfer::AirSupply air = plan.system.air;
  for (const double size : kReceiversGallons) {
    if (us_gallons(size) <= plan.system.air.receiver) continue;
    air.receiver = us_gallons(size);
    if (fills_in_time(plan, air, depth, in_time)) return air.receiver;
  }
  return std::nullopt;
}

std::optional<VolumeFlow> compressor_for(const TransferPlan& plan, Length depth, Time in_time) {
  transfer::AirSupply air = plan.system.air;
  if (!air.free_air_delivery) return std::nullopt;
  const VolumeFlow has = *air.free_air_delivery;
  for (const double size : kDeliveriesScfm) {
    if (cubic_feet_per_minute(size) <= has) continue;
    air.free_air_delivery = cubic_feet_per_minute(size);
    if (fills_in_time(plan, air, depth, in_time)) return air.free_air_delivery;
  }
  return std::nullopt;
}

}  // namespace

void offer_more_air(const Inputs& inputs, const Levels& levels, const TransferPlan& plan, Finding& finding) {
  const Time in_time = inputs.job.wishes.fill_time.value_or(kUsualFillTime);
  const GaugePressure full = plan.system.air.receiver_pressure;
  const auto receiver = receiver_for(plan, levels.table_depth, in_time);
  const auto delivery = compressor_for(plan, levels.table_depth, in_time);
  if (receiver) finding.ways_to_mend.push_back({{"air.receiver", *receiver}});
  if (delivery) finding.ways_to_mend.push_back({{"air.delivery", *delivery}});
  if (receiver && delivery)
    finding.mend =
        fact("receiver_or_compressor", *receiver, full, fact("compressor_that_delivers", *delivery, in_time));
  else if (receiver)
    finding.mend = fact("receiver_that_holds", *receiver, full, in_time);
  else if (delivery)
    finding.mend = fact("compressor_that_delivers", *delivery, in_time);
}

}  // namespace riserun::plan
