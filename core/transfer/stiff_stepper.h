// Rosenbrock's method of fourth order with dense output (Boost odeint), for the stretches of a transfer where the air
// settles in milliseconds and the water moves for minutes. Behind a header of plain doubles because Boost 1.74's ublas,
// which odeint builds it on, doesn't compile as C++20: stiff_stepper.cpp alone is built as C++17.
#pragma once

#include <array>
#include <memory>
#include <utility>

namespace riserun::transfer {

class StiffStepper {
 public:
  using Vector = std::array<double, 4>;
  /// dy/dt of an autonomous system, and its derivatives by y.
  struct System {
    const void* self;
    void (*rates)(const void* self, const Vector& y, Vector& rate);
    void (*jacobian)(const void* self, const Vector& y, double (&by)[4][4]);
  };

  StiffStepper(const System& system, double tolerance, const Vector& y, double time, double first_step);
  ~StiffStepper();
  StiffStepper(const StiffStepper&) = delete;
  StiffStepper& operator=(const StiffStepper&) = delete;

  /// One accepted step: its two ends in time. Equal ends: no step was small enough.
  std::pair<double, double> step();
  /// State at a time within the last step.
  Vector at(double time) const;

 private:
  struct Inside;
  std::unique_ptr<Inside> inside_;
};

}  // namespace riserun::transfer
