#define BOOST_UBLAS_NDEBUG 1  // its own checks cost ten times the work, and the sizes never change

#include "transfer/stiff_stepper.h"

#include <boost/numeric/odeint/stepper/generation.hpp>
#include <boost/numeric/odeint/stepper/rosenbrock4.hpp>
#include <boost/numeric/odeint/stepper/rosenbrock4_controller.hpp>
#include <boost/numeric/odeint/stepper/rosenbrock4_dense_output.hpp>
#include <boost/numeric/odeint/util/ublas_wrapper.hpp>

#include <algorithm>

namespace riserun::transfer {
namespace {

namespace odeint = boost::numeric::odeint;
using UblasVector = boost::numeric::ublas::vector<double>;
using UblasMatrix = boost::numeric::ublas::matrix<double>;
using Stepper = odeint::rosenbrock4_dense_output<odeint::rosenbrock4_controller<odeint::rosenbrock4<double>>>;

StiffStepper::Vector plain(const UblasVector& y) { return {y[0], y[1], y[2], y[3]}; }

struct Rates {
  StiffStepper::System system;
  void operator()(const UblasVector& y, UblasVector& rate, double) const {
    StiffStepper::Vector out;
    system.rates(system.self, plain(y), out);
    std::copy(out.begin(), out.end(), rate.begin());
  }
};

struct Jacobian {
  StiffStepper::System system;
  void operator()(const UblasVector& y, UblasMatrix& by, double, UblasVector& by_time) const {
    double out[4][4];
    system.jacobian(system.self, plain(y), out);
    for (std::size_t i = 0; i < 4; ++i) {
      for (std::size_t j = 0; j < 4; ++j) by(i, j) = out[i][j];
      by_time[i] = 0.0;
    }
  }
};

}  // namespace

struct StiffStepper::Inside {
  Stepper stepper;
  std::pair<Rates, Jacobian> system;
  UblasVector scratch;
};

StiffStepper::StiffStepper(const System& system, double tolerance, const Vector& y, double time, double first_step)
    : inside_(new Inside{Stepper({tolerance, tolerance}), {Rates{system}, Jacobian{system}}, UblasVector(4)}) {
  std::copy(y.begin(), y.end(), inside_->scratch.begin());
  inside_->stepper.initialize(inside_->scratch, time, first_step);
}

StiffStepper::~StiffStepper() = default;

std::pair<double, double> StiffStepper::step() {
  try {
    return inside_->stepper.do_step(inside_->system);
  } catch (const odeint::step_adjustment_error&) {
    const double stuck = inside_->stepper.current_time();
    return {stuck, stuck};
  }
}

StiffStepper::Vector StiffStepper::at(double time) const {
  inside_->stepper.calc_state(time, inside_->scratch);
  return plain(inside_->scratch);
}

}  // namespace riserun::transfer
