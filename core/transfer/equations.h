// The differential equations of a transfer, one set both ways, in raw SI doubles for the inner loop.
//
// State: water W that has left the reservoir [m3], air G let through the regulator, air B let out of the vent, air C
// delivered by the compressor [kg]; all since the start.
//
//     ullage     V = V0 + W          m = m0 + G - B        p = m R T / V
//     receiver   mr = mr0 + C - G    pr = mr R T / Vr
//     head       H = (p - pa) / (rho g) + reservoir level - outlet level
//     dW/dt = flow that takes the head H in the line, in H's direction
//     dG/dt = least of: regulator, the row before it from pr to its outlet, and without a receiver the compressor
//     dB/dt = vents from p to pa
//     dC/dt = the compressor's free air while the receiver is below its stop pressure
//
// Water and air are conserved exactly: what is not in the state follows from it.
//
// Isothermal: a transfer lasts minutes over wet walls, and the ullage exchanges heat with them within seconds; the
// little that is left (a few kelvins in the first seconds) changes the pressure by about one part in a hundred for that
// long. The receiver is isothermal for the same reason.
// No inertia: the column's time constant is the sum of length over area, times flow, over 2 g H; for a metre or two of
// pipe under a foot of head that is a few tenths of a second, against minutes.
// The line fills from its riser end evenly over the height; while it does, it takes its full loss.
// The regulator opens in proportion to the fall of its outlet below the setting, is fully open at its rated flow, and
// never lets air back. Water that drains by a mouth in the floor is no more than falls over its rim
// (hydraulics/mouth.h). Its outlet stands above the ullage by what the row behind it takes.
#pragma once

#include "hydraulics/air_line.h"
#include "transfer/flow_curve.h"
#include "transfer/system.h"

#include <algorithm>
#include <vector>

namespace riserun::transfer {

enum class Task { fill, drain };

/// What a run changes against the system as given: ends of ranges, and resistances taken out to see what limits.
struct Tuning {
  hydraulics::Coefficients coefficients = hydraulics::Coefficients::nominal;
  double supply = 1.0;                    // on compressor, regulator, feed and vent
  double setting = 0.0;                   // Pa on the regulator's setting
  double line_share = 1.0;                // share of the line's loss that is left
  bool without_compressor_limit = false;  // the receiver stays at its pressure
  bool without_regulator_limit = false;   // ten times the rated flow
  bool without_feed_limit = false;        // ten times the bores before the regulator
  bool without_air_line_limit = false;    // ... behind it
  bool without_vent_limit = false;        // ten times the vents' bores
  bool without_mouth_limit = false;       // ten times the rim that the table's water falls over
};

struct State {
  double water = 0.0;       // m3
  double regulated = 0.0;   // kg
  double vented = 0.0;      // kg
  double compressed = 0.0;  // kg
};

/// Where moved water goes.
enum class Reach {
  line,   // into the line, the table's inlet is not reached; backward: out of the line
  table,  // into the table; backward: out of it while it covers the inlet
  rim,    // over the rim
};

/// Where the water is, in m3: as it was when `water` had been moved; only the place that `reach` names has changed
/// since.
struct Books {
  Reach reach = Reach::line;
  double water = 0.0;
  double line = 0.0;
  double table = 0.0;
  double spilled = 0.0;
};

class Equations {
 public:
  /// Throws InputError for what is not a system or a start.
  Equations(const System& system, const Start& start, Task task, const Tuning& tuning = {});

  // Places and pressures.
  Books start_books() const;
  /// Books that a slow move of that much water from the start would leave.
  Books books_after(double water) const;
  Books now(const Books& books, double water) const;
  double outlet_level(const Books& books, double water) const;
  double reservoir_level(double water) const { return (start_water - water) / reservoir_area; }
  double ullage(double water) const;
  double air(const State& s) const { return std::max(0.0, start_air + s.regulated - s.vented); }
  double ullage_pressure(const State& s) const { return air(s) * gas / ullage(s.water); }
  double receiver_pressure(const State& s) const;
  double head(const State& s, const Books& books) const;

  /// Full to the lid but for the last ten-thousandth: nothing more runs back.
  double full_water() const { return capacity * (1.0 - 1.0e-4); }

  // Flows.
  double water_flow(double head) const;
  /// Most that leaves the table by its mouth, m3/s; infinite where no rim holds it back.
  double most_back(const Books& books, double water) const;
  /// Lowest level of the reservoir at which the riser, with that flow in it, draws no air.
  double uncovering_level(double flow) const;
  double regulator_flow(double pressure, double receiver) const { return air_in(pressure, receiver).flow; }
  State rates(const State& s, const Books& books, bool compressor_idles) const;
  /// Derivatives of the rates by the state, rows and columns in the order of State.
  void jacobian(const State& s, const Books& books, bool compressor_idles, double (&out)[4][4]) const;

  /// Greatest gauge pressure that the air side can hold at rest once that much water has gone.
  double pressure_at_rest(double water) const;
  /// Water gone when everything is at rest: at the supply's pressure, or with a sealed mass of air in the ullage.
  double water_at_rest() const;
  double water_at_rest_sealed(double sealed_air) const;

  // All raw SI: m, m2, m3, Pa absolute unless called gauge, kg, kg/s.
  double reservoir_area, capacity, start_water;
  double table_area, table_floor, rim_volume, inlet_volume, start_table;
  double riser_end, inlet_level;
  double line_volume, start_line;
  double rho_g, atmosphere, gas;  // gas = R T, J/kg
  double temperature;             // K
  double start_air;

  enum class Supply { shut, main, receiver, compressor_only };
  Supply supply = Supply::shut;
  double set_gauge = 0.0, set_absolute = 0.0, droop_band = 1.0, rated = 0.0;
  double supply_pressure = 0.0;  // of a main, or where the compressor stops
  double compressor = 0.0;
  double receiver_volume = 0.0, receiver_start = 0.0, receiver_stop = 0.0;
  bool vented = false;         // some way out is open
  double drained_table = 0.0;  // m3 in the table that is drained
  double check_head = 0.0;     // m that opens the water's way up
  bool one_way = false;        // no water comes back
  bool dip_uncovers = false;
  bool wall_friction = false;  // the line has wall friction: the last of a flow creeps

 private:
  void set_water(const System& system, const Start& start);
  void set_mouth(const System& system, const Tuning& tuning);
  void set_supply(const AirSupply& air, const Tuning& tuning);
  void set_vents(const Vent& vent, const Tuning& tuning);
  /// Air through the regulator and its slopes, on the side of every kink where the state is: a difference across one
  /// would mislead the method for stiff equations.
  struct AirIn {
    double flow = 0.0;         // kg/s
    double by_pressure = 0.0;  // kg/s per Pa
    double by_receiver = 0.0;
  };
  AirIn air_in(double pressure, double receiver) const;
  /// Out through the vents; negative: in.
  struct AirOut {
    double flow = 0.0;         // kg/s
    double by_pressure = 0.0;  // kg/s per Pa
  };
  AirOut air_out(double pressure) const;
  template <class Pressure>
  double rest(Pressure pressure_gauge) const;

  double line_share_;
  double rim_coefficient_ = 0.0;                       // of the mouth's rim: m3/s at 1 m; zero: no rim
  hydraulics::AirLine before_, after_;                 // the regulator
  hydraulics::AirLine behind_first_;                   // from the first stage to it
  double first_absolute_ = 0.0;                        // Pa, of the first stage; infinite: there is none
  double before_opens_ = 0.0, after_opens_ = 0.0;      // Pa
  std::vector<hydraulics::AirLine> vents_, vents_in_;  // out of the ullage, and into it
  // kg/s: where the next solution begins.
  mutable double last_air_ = 0.0;
  mutable std::vector<double> last_vented_;  // of each of vents_, then of vents_in_
  // The curves remember what they have worked out: an Equations serves one thread.
  mutable FlowCurve forward_;
  mutable FlowCurve backward_;
};

}  // namespace riserun::transfer
