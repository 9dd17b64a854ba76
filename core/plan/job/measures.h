// What is done against hot water and against frost: a closed set, read by the words that a shop says. Of each it is
// known whether it handles the matter by itself.
#pragma once

#include <string>

namespace riserun::plan {

/// Against water that scalds. What keeps hand and water apart handles it; what is worn does beside that alone (the
/// order of controls: what guards before what is worn, ANSI/ASSP Z10, from memory).
struct AgainstHeat {
  std::string words;          // as the job says them
  bool guarded = false;       // fenced off, screened
  bool insulated = false;     // lagged: no hand comes to hot metal
  bool covered = false;       // the table has a cover or a hood
  bool mixing_valve = false;  // what is drawn is mixed or held cooler
  bool protection_worn = false;

  bool handles() const { return guarded || insulated || covered || mixing_valve; }
  bool operator==(const AgainstHeat&) const = default;
};

/// Against water that freezes. Insulation slows frost and stops none (common practice).
struct AgainstFrost {
  std::string words;
  bool drained = false;  // when it stands idle
  bool heated = false;
  bool antifreeze = false;
  bool insulated = false;

  bool handles() const { return drained || heated || antifreeze; }
  bool operator==(const AgainstFrost&) const = default;
};

}  // namespace riserun::plan
