// The lid map as rows: where each bung stands, and the hole that it is set into.
#pragma once

#include "plan/plan.h"

#include <optional>
#include <string>
#include <vector>

namespace riserun::report {

/// A bung; what is not known is empty.
struct LidRow {
  std::string number;  // in the drawing
  std::string port;
  std::string from_left;
  std::string from_front;
  std::string hole;
  std::string boss;
  std::string room;    // radius that the wrench needs
  std::string remark;  // "proposed", "in the side"
};

std::vector<LidRow> lid_rows(const plan::Plan& plan, UnitSystem units);

/// Holes in the reservoir's walls: for a bung that is still to be welded in, or over what is welded to the lid from
/// outside.
struct HoleRow {
  Length across{};       // of a slot how long it is
  std::string size;      // as it is written
  std::string where;     // "6 in from the left, 3 in from the front (proposed)"
  std::string used_for;  // a bung's port, "posts", "baffles"
  int count = 1;
  std::string what = "hole in the reservoir";
  std::string in_short = "hole";  // the same on a card
  std::string in_short_where{};   // ... and where; empty: as above
  std::optional<Length> width{};  // of a slot
};

std::vector<HoleRow> holes_to_cut(const plan::Plan& plan, UnitSystem units);

/// From where the places are measured, and what the hole takes in.
std::string lid_datum(const plan::Plan& plan, UnitSystem units);

/// `24 in from the left, 10 in from the front`; empty where no place is known.
std::string place_words(const LidRow& row);

}  // namespace riserun::report
