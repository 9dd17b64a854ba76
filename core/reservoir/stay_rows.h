// Where the rows of stays and the baffles of a wall stand along one of its measures, and the clear lengths between
// them.
#pragma once

#include "quantity/quantities.h"

#include <vector>

namespace riserun::reservoir {

/// Of so many plates that stand in an inside measure with equal bays between them, each middle from one wall's inside.
std::vector<Length> middles_of_baffles(Length inside, Length plate, int baffles);

/// Middles of the rows that stays have to make where they and the baffles divide a measure into so many bays: a row
/// that falls on a baffle is left out, as the baffle does its work; the others divide the clear bay between their
/// baffles. Rising. @pre bays > 0, baffles >= 0
std::vector<Length> middles_of_stays(Length inside, Length plate, int baffles, int bays);

/// Of what stands across a measure, its middle and its thickness.
struct Crossing {
  Length middle{};
  Length thickness{};
};

/// Clear lengths from wall to wall between what stands across, from one wall on; without anything the whole.
std::vector<Length> clear_lengths(Length inside, std::vector<Crossing> crossings);

}  // namespace riserun::reservoir
