// The figures of a plan, group by group, in the order of the printed plan.
#pragma once

#include "report/figures/figure.h"

#include <optional>
#include <vector>

namespace riserun::report {

std::vector<FigureGroup> figures_of(const plan::Plan& plan);
/// The few that are read from six feet: set pressure, fill, drain, cut, price.
std::vector<Figure> headline_of(const plan::Plan& plan);

/// What decides about safety: the greatest pressure that can occur and the factor there, the setting, the walls' limit,
/// and up to where the factor is 4.
std::vector<Figure> safety_of(const plan::Plan& plan);
/// The factor of safety at the greatest pressure that can occur is below what a local rule may ask.
bool is_under_four(const plan::Plan& plan);

FigureGroup riser_figures(const plan::RiserPlan& plan);
FigureGroup levels_figures(const plan::Plan& plan);
/// Why no pressure holds the table at its depth: what keeps the water there, or lets it run; nullopt: one does.
std::optional<quantity::Fact> nothing_to_hold(const plan::TransferPlan& transfer);
FigureGroup filling_figures(const plan::Plan& plan);
FigureGroup draining_figures(const plan::Plan& plan);
FigureGroup walls_figures(const plan::Plan& plan);
FigureGroup relief_figures(const plan::Plan& plan);
/// Of a tank too weak for any test with air the pressure is zero.
FigureGroup leak_test_figures(const plan::Plan& plan);

}  // namespace riserun::report
