// Random shops for the properties of a transfer: everyday ones, and wild ones from end to end of what can be asked for.
#pragma once

#include "transfer/transfer.h"

#include <cmath>
#include <random>

namespace riserun::transfer {

struct RandomJob {
  System system;
  Start fill_start;
  Length wanted{};
  Start drain_start;
};

class RandomShop {
 public:
  explicit RandomShop(unsigned seed) : engine_(seed) {}

  double between(double low, double high) { return std::uniform_real_distribution<double>(low, high)(engine_); }
  double by_decades(double low, double high) { return std::exp(between(std::log(low), std::log(high))); }
  bool one_in(int n) { return std::uniform_int_distribution<int>(1, n)(engine_) == 1; }

  /// A job that a shop could have; most fills and drains come to their end.
  RandomJob everyday() {
    RandomJob job;
    System& s = job.system;
    s.reservoir = {metres(between(0.5, 2.5)), metres(between(0.4, 1.0)), metres(between(0.25, 0.6)), between(0.0, 0.1)};
    s.table = {metres(between(0.5, 3.0)), metres(between(0.5, 1.2)), metres(between(0.6, 1.2)),
               metres(between(0.08, 0.25)), between(0.0, 0.2)};
    s.riser_end_height = metres(between(0.008, 0.03));
    s.inlet_height = one_in(3) ? metres(between(0.0, 0.06)) : metres(0.0);
    if (one_in(6)) s.inlet_height = s.table.rim + metres(between(0.0, 0.1));
    s.line = line(between(0.015, 0.08));
    surroundings(s);
    s.air = {gauge_pascals(0.0),
             between(0.05, 0.3),
             litres_per_minute(between(100.0, 1200.0)),
             {},
             {},
             bar_gauge(between(4.0, 9.0)),
             millimetres(between(3.0, 10.0)),
             0.8};
    if (!one_in(4)) s.air.free_air_delivery = litres_per_minute(between(20.0, 400.0));
    if (!one_in(3)) s.air.receiver = litres(between(5.0, 200.0));
    s.vent = {millimetres(between(5.0, 25.0)), 0.6, one_in(2) ? 1 : 2};

    const Length depth = between(0.7, 0.98) * s.reservoir.height;
    const Volume usable = s.reservoir.volume_at(depth - s.riser_end_height) - s.line.volume();
    job.wanted = between(0.3, 0.95) * std::min(s.table.rim, s.table.depth_at(usable));
    job.fill_start = {depth, {}, {}};
    const Length low = depth - s.reservoir.depth_at(s.table.volume_at(job.wanted) + s.line.volume());
    const Length lift = s.table.floor_height + std::max(job.wanted, s.inlet_height) - low;
    const Head head = metres_of_head(in_metres(lift));
    s.air.set_pressure = gauge_pascals(in_pascals(pressure_of(head, s.water.density)) * between(1.05, 3.0));
    job.drain_start = {low, job.wanted, gauge_pascals(in_pascals(pressure_of(head, s.water.density)))};
    return job;
  }

  /// Anything that is a system at all.
  RandomJob wild() {
    RandomJob job;
    System& s = job.system;
    s.reservoir = {metres(by_decades(0.02, 30.0)), metres(by_decades(0.02, 30.0)), metres(by_decades(0.02, 5.0)), 0.0};
    s.table = {metres(by_decades(0.02, 30.0)), metres(by_decades(0.02, 30.0)), metres(between(-0.5, 5.0)),
               metres(by_decades(0.01, 2.0)), between(0.0, 0.5)};
    s.riser_end_height = one_in(8) ? s.reservoir.height * between(0.5, 1.5) : metres(between(0.0, 0.03));
    s.inlet_height = s.table.rim * (one_in(3) ? 0.0 : between(0.0, 1.5));
    s.line = line(by_decades(0.003, 0.3));
    surroundings(s);
    s.air.set_pressure = gauge_pascals(one_in(10) ? 0.0 : by_decades(10.0, 1.0e6));
    s.air.droop = one_in(5) ? 0.0 : between(0.0, 1.0);
    if (!one_in(5)) s.air.regulator_rated_flow = cubic_metres_per_second(by_decades(1.0e-5, 0.1));
    if (!one_in(3)) s.air.free_air_delivery = cubic_metres_per_second(one_in(5) ? 0.0 : by_decades(1.0e-6, 0.1));
    if (one_in(2)) s.air.receiver = cubic_metres(by_decades(1.0e-4, 5.0));
    s.air.receiver_pressure = gauge_pascals(one_in(10) ? 0.0 : by_decades(1.0e3, 1.5e6));
    s.air.feed_bore = metres(one_in(10) ? 0.0 : by_decades(5.0e-4, 0.05));
    s.vent = {metres(one_in(10) ? 0.0 : by_decades(5.0e-4, 0.1)), 0.6, 1};
    job.fill_start = {s.reservoir.height * between(0.0, 1.1), s.table.rim * (one_in(2) ? 0.0 : between(0.0, 1.1)),
                      gauge_pascals(one_in(2) ? 0.0 : between(-5.0e3, 5.0e4))};
    job.wanted = s.table.rim * between(0.0, 1.3);
    job.drain_start = {s.reservoir.height * between(0.0, 1.0), s.table.rim * between(0.0, 1.1),
                       gauge_pascals(one_in(2) ? 0.0 : between(-5.0e3, 1.0e5))};
    return job;
  }

 private:
  hydraulics::Line line(double bore) {
    std::vector<hydraulics::LineElement> elements(std::uniform_int_distribution<std::size_t>(1, 5)(engine_));
    for (hydraulics::LineElement& element : elements) {
      element.name = "piece";
      element.bore = metres(bore * (one_in(2) ? 1.0 : between(0.6, 1.5)));
      element.length = metres(one_in(4) ? 0.0 : between(0.02, 1.0));
      element.roughness = millimetres(by_decades(0.0015, 0.3));
      element.fixed_k = one_in(2) ? 0.0 : between(0.0, 5.0);
      element.scatter = between(0.0, 0.5);
    }
    return {elements, {between(0.4, 1.2), 1.0, 0.2, ""}, {0.5, 1.0, 0.1, ""}};
  }

  void surroundings(System& s) {
    s.temperature = degrees_celsius(between(5.0, 45.0));
    s.water = {kilograms_per_cubic_metre(between(988.0, 1000.0)), pascal_seconds(between(5.5e-4, 1.5e-3)),
               absolute_pascals(2339.0)};
    s.atmosphere = absolute_pascals(between(8.0e4, 1.03e5));
  }

  std::mt19937 engine_;
};

}  // namespace riserun::transfer
