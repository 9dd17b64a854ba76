#include "reservoir/plates.h"

#include <algorithm>
#include <cassert>
#include <cmath>
#include <cstddef>
#include <numbers>
#include <vector>

namespace riserun::reservoir {
namespace {

// Everything below is in units of the short side a = 1, the pressure q = 1 and the plate stiffness D = 1. x runs across
// the plate (|x| <= 1/2), y along it (|y| <= b/2 with b = long_over_short). All series run over odd numbers.

constexpr double kPi = std::numbers::pi;

constexpr int odd(std::size_t row) { return static_cast<int>(2 * row + 1); }
constexpr double sign(std::size_t row) { return row % 2 == 0 ? 1.0 : -1.0; }  // sin(m pi / 2) of the row's m

/// What each term of a series holds of its argument (half the plate's size along the wave's decay, in wave numbers).
struct Decay {
  double argument;
  double tanh;
  double sech;  // 0 once the hyperbolic cosine is beyond the range of a double

  explicit Decay(double x) : argument(x), tanh(std::tanh(x)), sech(1.0 / std::cosh(x)) {}
};

/// One edge moment M cos(k s), s along the edge, on both of two opposite edges of the plate with free edges.
struct EdgeTerm {
  double wave_number;  // k
  Decay decay;
  /// What the moment turns its own edges by, times the edge's length.
  double own_turn(double edge_length) const {
    return edge_length / (2.0 * wave_number) * (decay.tanh + decay.argument * decay.sech * decay.sech);
  }
  /// What the pressure turns them by, times the edge's length; negative: the plate bulges.
  double pressure_turn() const {
    return 2.0 / std::pow(wave_number, 4) * (decay.argument * decay.sech * decay.sech - decay.tanh);
  }
};

std::vector<EdgeTerm> edge_terms(std::size_t count, double edge_length, double other_length) {
  std::vector<EdgeTerm> terms;
  terms.reserve(count);
  for (std::size_t row = 0; row < count; ++row) {
    const double k = odd(row) * kPi / edge_length;
    terms.push_back({k, Decay(k * other_length / 2.0)});
  }
  return terms;
}

/// How a wave of moment on one pair of edges turns the other pair.
double cross_turn(double k, double kappa) {
  const double sum = k * k + kappa * kappa;
  return 4.0 * k * kappa / (sum * sum);
}

/// Solves the symmetric positive definite system in place by Cholesky's method; the answer replaces `right`.
void solve_cholesky(std::vector<double>& matrix, std::vector<double>& right) {
  const std::size_t n = right.size();
  for (std::size_t j = 0; j < n; ++j) {
    double* const row_j = &matrix[j * n];
    for (std::size_t i = 0; i < j; ++i) row_j[j] -= row_j[i] * row_j[i];
    row_j[j] = std::sqrt(row_j[j]);
    for (std::size_t r = j + 1; r < n; ++r) {
      double* const row_r = &matrix[r * n];
      for (std::size_t i = 0; i < j; ++i) row_r[j] -= row_r[i] * row_j[i];
      row_r[j] /= row_j[j];
    }
  }
  for (std::size_t j = 0; j < n; ++j) {
    for (std::size_t i = 0; i < j; ++i) right[j] -= matrix[j * n + i] * right[i];
    right[j] /= matrix[j * n + j];
  }
  for (std::size_t j = n; j-- > 0;) {
    for (std::size_t i = j + 1; i < n; ++i) right[j] -= matrix[i * n + j] * right[i];
    right[j] /= matrix[j * n + j];
  }
}

/// Coefficients of the edge moments that turn all edges back to level.
struct EdgeMoments {
  std::vector<double> on_short_edges;
  std::vector<double> on_long_edges;
};

// The long edges' unknowns stand on the diagonal of their own block, so they are eliminated first.
EdgeMoments solve_edge_moments(const std::vector<EdgeTerm>& short_terms, const std::vector<EdgeTerm>& long_terms,
                               double b) {
  const std::size_t n = short_terms.size();
  std::vector<double> matrix(n * n, 0.0);
  EdgeMoments moments{std::vector<double>(n), std::vector<double>(long_terms.size())};
  for (std::size_t i = 0; i < n; ++i) {
    matrix[i * n + i] = short_terms[i].own_turn(1.0);
    moments.on_short_edges[i] = short_terms[i].pressure_turn();
  }
  std::vector<double> column(n);
  for (const EdgeTerm& term : long_terms) {
    const double own = term.own_turn(b);
    const double pressure = term.pressure_turn();
    for (std::size_t i = 0; i < n; ++i) column[i] = cross_turn(short_terms[i].wave_number, term.wave_number);
    for (std::size_t i = 0; i < n; ++i) {
      const double factor = column[i] / own;
      for (std::size_t j = 0; j <= i; ++j) matrix[i * n + j] -= factor * column[j];
      moments.on_short_edges[i] -= factor * pressure;
    }
  }
  solve_cholesky(matrix, moments.on_short_edges);
  for (std::size_t row = 0; row < long_terms.size(); ++row) {
    double rest = long_terms[row].pressure_turn();
    for (std::size_t i = 0; i < n; ++i) {
      rest -= cross_turn(short_terms[i].wave_number, long_terms[row].wave_number) * moments.on_short_edges[i];
    }
    moments.on_long_edges[row] = rest / long_terms[row].own_turn(b);
  }
  return moments;
}

/// The moment in the middle of an edge: an alternating sum, so the mean of its last two partial sums is the best guess.
double moment_in_the_middle(const std::vector<double>& coefficients) {
  double sum = 0.0;
  for (std::size_t row = 0; row < coefficients.size(); ++row) sum += sign(row) * coefficients[row];
  return sum - 0.5 * sign(coefficients.size() - 1) * coefficients.back();
}

/// What edge moments do in the middle of the plate.
struct Middle {
  double deflection = 0.0;
  double moment_along_edge = 0.0;  // bending of strips that run along the edges which carry the moments
  double moment_across = 0.0;      // bending of strips that run from one of those edges to the other
};

Middle middle_from_edges(const std::vector<EdgeTerm>& terms, const std::vector<double>& coefficients, double nu) {
  Middle middle;
  for (std::size_t row = 0; row < terms.size(); ++row) {
    const auto& [k, decay] = terms[row];
    const double half = 0.5 * sign(row) * coefficients[row] * decay.sech;
    const double product = decay.argument * decay.tanh;
    middle.deflection += half * product / (k * k);
    middle.moment_along_edge += half * (product - nu * (product - 2.0));
    middle.moment_across += half * (2.0 - product + nu * product);
  }
  return middle;
}

constexpr std::size_t kTermsPerShortSide = 20;  // 1e-5 at every ratio: see plate_judge.py
constexpr double kStripRatio = 8.0;             // the ends' influence dies as exp(-4.2 b/a): 2e-15 in the middle here

}  // namespace

double PlateCoefficients::beta_greatest() const {
  return std::max({beta_short_span_centre, beta_long_span_centre, beta_long_edge, beta_short_edge, beta_corner_twist});
}

PlateCoefficients free_plate(double long_over_short, double poisson_ratio) {
  assert(long_over_short >= 1.0 && poisson_ratio >= 0.0 && poisson_ratio <= 0.5);
  const double nu = poisson_ratio;
  constexpr double kSumOfOddCubes = 1.0517997902646450;  // 1 + 1/3^3 + 1/5^3 + ... = 7 zeta(3) / 8
  double twist = kSumOfOddCubes;
  PlateCoefficients plate{
      .alpha_centre = 5.0 / 384.0, .beta_short_span_centre = 0.125, .beta_long_span_centre = nu / 8.0};
  for (std::size_t row = 0;; ++row) {
    const double m = odd(row);
    const double k = m * kPi;
    const Decay decay(k * long_over_short / 2.0);
    const double amplitude = sign(row) * 4.0 / std::pow(k, 5) * decay.sech * 0.5;
    const double product = decay.argument * decay.tanh;
    const double deflection = -amplitude * (product + 2.0);
    const double curvature = -amplitude * k * k * product;  // along y
    plate.alpha_centre += deflection;
    plate.beta_short_span_centre += k * k * deflection - nu * curvature;
    plate.beta_long_span_centre += nu * k * k * deflection - curvature;
    twist += (decay.tanh - 1.0 - decay.argument * decay.sech * decay.sech) / (m * m * m);
    if (decay.argument > 45.0) break;  // exp(-45) is below the last digit
  }
  plate.beta_corner_twist = (1.0 - nu) * 2.0 / (kPi * kPi * kPi) * twist;
  return plate;
}

PlateCoefficients held_plate(double long_over_short, double poisson_ratio) {
  const double b = std::min(long_over_short, kStripRatio);
  PlateCoefficients plate = free_plate(b, poisson_ratio);
  plate.beta_corner_twist = 0.0;
  const auto short_terms = edge_terms(kTermsPerShortSide, 1.0, b);
  const auto long_terms = edge_terms(static_cast<std::size_t>(std::ceil(kTermsPerShortSide * b)), b, 1.0);
  const EdgeMoments moments = solve_edge_moments(short_terms, long_terms, b);
  const Middle from_short = middle_from_edges(short_terms, moments.on_short_edges, poisson_ratio);
  const Middle from_long = middle_from_edges(long_terms, moments.on_long_edges, poisson_ratio);
  plate.alpha_centre += from_short.deflection + from_long.deflection;
  plate.beta_short_span_centre += from_short.moment_along_edge + from_long.moment_across;
  plate.beta_long_span_centre += from_short.moment_across + from_long.moment_along_edge;
  plate.beta_short_edge = -moment_in_the_middle(moments.on_short_edges);
  plate.beta_long_edge = -moment_in_the_middle(moments.on_long_edges);
  return plate;
}

}  // namespace riserun::reservoir
