// Every measurement and word of a job that can be edited in a field, with what it may hold.
#pragma once

#include "gui/model/text/job_texts.h"
#include "plan/job/job.h"
#include "quantity/write.h"

#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace riserun::gui {

enum class FieldKind {
  length,
  signed_length,
  volume,
  pressure,
  air_flow,
  stress,
  temperature,
  time,
  price,
  share,  // a number or a percentage
  count,
  sheet,  // "10 ga steel"
  size,   // nominal
  port,   // trade notation
  material,
  bays,       // "3 x 2"
  lid_place,  // "6 in, 5 in": from the left and from the front
  yes_no,
  choice,
  words,
};

struct Field {
  JobPath at;
  std::string label;  // "inside length"
  FieldKind kind = FieldKind::words;
  std::vector<std::string> choices;  // of FieldKind::choice, as the job file spells them
  bool needed = false;               // the job does not load without it
};

struct FieldGroup {
  std::string title;  // "reservoir", "port 'riser bung'", "connection 'water up'"
  JobPath at;
  std::vector<Field> fields;
};

/// All fields of the job, in reading order: whether they are in the file or not.
std::vector<FieldGroup> fields_of(const plan::Job& job);

/// What a field shows: the text as written when it is in that unit system, a bare number with the unit that it is in,
/// otherwise the same quantity in the other system's units. A text that is not understood comes back as it is.
/// @param own  the units of the job's file, which its bare numbers are in; nullopt: it names none
std::string shown_in(FieldKind kind, const std::string& written, quantity::UnitSystem units,
                     std::optional<quantity::UnitSystem> own);

/// The unit that a bare number typed into such a field is in; empty: it has none, or could be in several.
std::string_view unit_of_bare(FieldKind kind, quantity::UnitSystem units);

/// What is typed into a field that shows those units, as the job is to have it: a bare number is in the units that are
/// shown, and gets their unit where the job's own would make another quantity of it.
std::string as_typed_in(FieldKind kind, const std::string& typed, quantity::UnitSystem units,
                        std::optional<quantity::UnitSystem> own);

}  // namespace riserun::gui
