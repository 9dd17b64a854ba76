// A figure of a plan: what it is called, its value as a quantity, the range it lies in, what must be read with it, and
// where it comes from. The plan's text, its JSON and the window's sheet of numbers are written from the same figures,
// so that a label, a rounding and a source stand once.
#pragma once

#include "plan/plan.h"
#include "quantity/fact.h"
#include "quantity/write.h"

#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace riserun::report {

/// A text with places for values; the forms of words/say.h hold.
struct Phrase {
  std::string_view text;  // a literal
  std::vector<quantity::Value> values;
};

std::string said(const Phrase& phrase, UnitSystem units);

struct Figure {
  std::string_view key;                  // "cut_length": within its group
  std::string_view label;                // "cut length"
  quantity::Value value;                 // a quantity, a number, or a name
  std::string_view form{};               // how it is written, as in words/say.h; empty: the usual way
  std::optional<quantity::Value> low{};  // of its range; both or neither. A time that may never come has no end
  std::optional<quantity::Value> high{};
  std::optional<quantity::Value> also{};  // the same as another quantity: the volume of a depth
  std::optional<GaugePressure> limit{};   // of the walls: a pressure is not shown without it
  Phrase beside{};                        // what else must be read with it; the text empty: nothing
  Phrase source{};                        // a formula in words, a standard, "common practice"; never empty
};

struct FigureGroup {
  std::string_view key;    // "riser"
  std::string_view title;  // "Riser"
  plan::Topic topic;       // whose cautions, notes and findings stand under it
  std::vector<Figure> figures;

  /// @pre there is one of that key
  const Figure& operator[](std::string_view figure) const;
  /// nullptr: this plan has none of that key.
  const Figure* find(std::string_view figure) const;
};

/// `14-1/16 in`: the value alone.
std::string written(const Figure& figure, UnitSystem units);
/// `5/8 in (9/16 to 3/4 in)`: the value with its range, where it has one that can be seen.
std::string written_with_range(const Figure& figure, UnitSystem units);
/// `walls' limit 3.54 psi`; empty where it has none.
std::string written_limit(const Figure& figure, UnitSystem units);
/// `1.75 psi (48 in water)   (walls' limit 3.54 psi)`, as a line of text has it.
std::string written_with_limit(const Figure& figure, UnitSystem units);
/// `83.1 gal`: the same as another quantity; empty where it has none.
std::string written_also(const Figure& figure, UnitSystem units);
/// All that must be read with the value, for a column of its own; may be empty.
std::string written_beside(const Figure& figure, UnitSystem units);

}  // namespace riserun::report
