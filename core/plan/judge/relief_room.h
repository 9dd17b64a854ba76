// What a relief valve and a leak test have room for between the pressure in use and what the walls stand.
#pragma once

#include "plan/judge/stiffer.h"
#include "plan/plan.h"
#include "plan/settle/settled.h"

#include <optional>
#include <vector>

namespace riserun::plan {

inline constexpr const char* kFactorOfFour = "California Code of Regulations, Title 8, section 3301(e)";

/// Of a setting over the pressure to finish, so that it lifts the water surely (common practice).
inline constexpr double kRoomToLift = 1.05;

/// So much that it holds as it is printed, and typed again.
GaugePressure typed(GaugePressure least);

/// The highest leak test that the walls allow, as it is printed.
GaugePressure most_test(const Plan& plan);

/// The lowest leak test from there on, as it is printed, that the walls allow and a relief valve is sold for; nullopt:
/// there is none.
std::optional<GaugePressure> test_that_has_relief(const Plan& plan, GaugePressure least);

/// The lowest pressure at which the valve may open, of what its mark says.
GaugePressure opens_at_least(const Plan& plan, GaugePressure mark);

/// A setting that is worked out finds room under a relief valve of that mark: it finishes the fill, and the regulator's
/// lock-up leaves the valve shut where it opens early by its tolerance.
bool setting_goes_under(const Plan& plan, GaugePressure mark);

/// Left alone the regulator locks up above its setting, which the knob itself may stand above (see `knob_off`).
GaugePressure left_alone(const Plan& plan);

/// By so much the reservoir may come over the setting when nothing is drawn: the regulator's lock-up, less the springs
/// behind it. A spring that leaks is none, so that it never comes to less than the setting.
PressureDifference locks_up_by(const transfer::AirSupply& air);

/// What the reservoir may come to in use.
GaugePressure most_in_use(const Plan& plan);

/// The lowest valve that is sold, stays shut while the tank is left alone, and is fully open below `most` as this one
/// would be; nullopt: none.
std::optional<GaugePressure> valve_that_fits(const Plan& plan, const ReliefValve& valve, GaugePressure most);

/// The highest valve that is sold below this one with which the walls keep their factor of 4, and the leak test stays
/// under `most`; the setting is then worked out anew under it. nullopt: none, or it would not let the water up.
std::optional<GaugePressure> valve_that_keeps_four(const Plan& plan, const ReliefValve& valve, GaugePressure most);

/// Of a valve whose tolerance and rise are assumed: to write down its own. Tried with those of a valve for low
/// pressure; nullopt: both are given.
std::optional<Mend> own_figures(const Plan& plan, const ReliefValve& valve);

/// Where the tolerance that the job gives lets no valve both stay shut and keep the walls' factor of 4: the lowest
/// valve that is sold which does with a closer tolerance, of 5 % of its mark or more (common practice: what valves for
/// a few psi hold), and that tolerance; nullopt: none does, or the job gives no tolerance.
///
/// @param by  by where it must be fully open; none: the least of what keeps the walls' factor at four and their limit
std::optional<Mend> closer_valve(const Plan& plan, const ReliefValve& valve, std::optional<GaugePressure> by = {});

/// A valve of its mark that opens nearer to it and is fully open sooner, so that the walls keep their factor there,
/// with figures that valves for a few psi have; nullopt: none has such.
///
/// @param by  by where it must be fully open, if that is less
std::optional<Mend> closer_and_sooner_valve(const Plan& plan, const ReliefValve& valve,
                                            std::optional<GaugePressure> by = {});

/// The lowest valve that is sold below this one, stays shut while the tank is left alone, and leaves the regulator room
/// to repeat. Where the walls do not keep their factor of 4 with it, nor with this one, the highest with which they do.
/// nullopt: none.
std::optional<GaugePressure> lower_mark(const Plan& plan, const Settled& settled, const ReliefValve& valve);
std::optional<Mend> lower_valve(const Plan& plan, const Settled& settled, const ReliefValve& valve);

/// A setting of the job's own, far over what the fill works well with, turned down to that; nullopt: it is not.
std::optional<Mend> turned_down(const Plan& plan);

/// What brings down what the reservoir may come to with this valve, the likeliest first: the setting turned down, the
/// valve's own figures, a lower one, one of a closer tolerance.
std::vector<Mend> less_to_see(const Plan& plan, const Settled& settled, const ReliefValve& valve);

/// The first mend is the finding's own, the others come before those that it has to be tried in turn.
void mend_first_by(std::vector<Mend> mends, Finding& finding);

/// What walls that are made stiffer are to stand, so that all mends of one plan ask for the same walls: what the
/// reservoir may come to in use, and with a relief valve that the setting has blown or weeping, the next one that fits.
GaugePressure wanted_of_walls(const Plan& plan);

/// Walls that stand so much at their design stress, or that keep the factor of 4.
std::vector<Mend> stiffer(const Plan& plan, const Settled& settled, GaugePressure wanted);
std::vector<Mend> stiffer_for_four(const Plan& plan, const Settled& settled, GaugePressure wanted);

}  // namespace riserun::plan
