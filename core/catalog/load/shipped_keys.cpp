#include "catalog/load/shipped_keys.h"

#include <iterator>
#include <utility>

namespace riserun::catalog {

namespace {

using Form = KeyForm;

const std::vector<std::string_view> kEndShapes = {"plain",  "barb",  "hose", "nut",     "cone",   "groove", "levers",
                                                  "collar", "crimp", "plug", "coupler", "flange", "bands"};

std::vector<FileKey> keys_of_seals() {
  return {
      {"seals", Form::list, "What makes a joint tight", {}, true},
      {"seals[].name", Form::text, "What the seal is called", {}, true},
      {"seals[].instruction", Form::text, "How it is put on", {}, true},
      {"seals[].at the bench", Form::yes_no, "Made on a loose piece, before that goes into the run"},
      {"seals[].consumable", Form::text, "What is bought for it"},
      {"seals[].clamped", Form::yes_no, "A hose clamp goes over the joint"},
      {"seals[].washer", Form::yes_no, "It seals on a washer"},
      {"seals[].heat", Form::yes_no, "It is made with heat"},
      {"seals[].bare", Form::quantity, "Tube left free at the mouth for nut, collar and tool, 1 mm to 1 m"},
      {"seals[].tape", Form::map, "Tape that it takes"},
      {"seals[].tape.per joint", Form::quantity, "Length of tape on one joint, 1 mm to 1000 m", {}, true},
      {"seals[].tape.per roll", Form::quantity, "Length of tape on a roll, 1 mm to 1000 m", {}, true},
      {"seals[].source", Form::text, "Where that comes from", {}, true},
  };
}

std::vector<FileKey> keys_of_kinds() {
  return {
      {"kinds", Form::list, "Kinds of joint", {}, true},
      {"kinds[].id", Form::text, "Lower case, its words joined by `-`", {}, true},
      {"kinds[].name", Form::text, "What the kind is called", {}, true},
      {"kinds[].standard", Form::text, "The standard that it is made to", {}, true},
      {"kinds[].thread", Form::choice, "The form of its thread", {"taper", "straight", "none"}, true},
      {"kinds[].by outside diameter", Form::yes_no, "Its sizes name the tube's outside diameter"},
      {"kinds[].notation", Form::map, "How each of its ends is written", {}, true},
      {"kinds[].notation.male", Form::text, "As `MNPT`"},
      {"kinds[].notation.female", Form::text, "As `FNPT`"},
      {"kinds[].notation.neither", Form::text, "Of an end that is neither, as a flange's"},
      {"kinds[].shape", Form::map, "What its ends are drawn as"},
      {"kinds[].shape.male", Form::choice, "Of the male end", kEndShapes},
      {"kinds[].shape.female", Form::choice, "Of the female end", kEndShapes},
      {"kinds[].shape.neither", Form::choice, "Of an end that is neither", kEndShapes},
      {"kinds[].read as", Form::map, "Words that people use for it"},
      {"kinds[].read as.kind", Form::words, "Of the kind"},
      {"kinds[].read as.male", Form::words, "Of its male end"},
      {"kinds[].read as.female", Form::words, "Of its female end"},
      {"kinds[].read as.neither", Form::words, "Of an end that is neither"},
      {"kinds[].source", Form::text, "Where its measures come from", {}, true},
      {"kinds[].recognise", Form::map, "How it is told by measuring it; a kind without it is not offered"},
      {"kinds[].recognise.flank angle", Form::number, "Included angle of the thread in degrees, 55 or 60"},
      {"kinds[].recognise.cone angle", Form::number, "Half angle of its cone in degrees"},
      {"kinds[].recognise.common", Form::map, "How common it is, by shelf; only the ratios count", {}, true},
      {"kinds[].recognise.common.inch", Form::number, "On an inch shelf", {}, true},
      {"kinds[].recognise.common.metric", Form::number, "On a metric shelf", {}, true},
      {"kinds[].recognise.ends", Form::words, "Ends that may be met: male, female; both where it is left out"},
      {"kinds[].recognise.shelf names", Form::map, "What the shelf calls it"},
      {"kinds[].recognise.shelf names.male", Form::words, "Of the male end"},
      {"kinds[].recognise.shelf names.female", Form::words, "Of the female end"},
      {"kinds[].recognise.marks", Form::words, "Marks that it bears"},
      {"kinds[].recognise.source", Form::text, "Where that comes from", {}, true},
      {"kinds[].sizes", Form::map, "Its measures by size", {}, true},
      {"kinds[].sizes.columns",
       Form::words,
       "Heads with their units: size, `outside diameter (in)` and so on",
       {},
       true},
      {"kinds[].sizes.rows", Form::any, "A list of rows, each a list of cells", {}, true},
  };
}

std::vector<FileKey> keys_of_mating() {
  return {
      {"mating", Form::list, "What goes into what", {}, true},
      {"mating[].a", Form::text, "A kind and its end, as `npt male`; make-up and turns are its own", {}, true},
      {"mating[].b", Form::text, "The kind and end that it goes into", {}, true},
      {"mating[].sizes", Form::any, "Pairs of sizes, as `[[1/2, 5/8]]`; equal sizes where it is left out"},
      {"mating[].seal", Form::text, "A seal by its name, or none", {}, true},
      {"mating[].turns", Form::choice, "Which side is turned to make it up", {"either", "neither"}, true},
      {"mating[].comes apart", Form::yes_no, "It may be taken apart again; yes where it is left out"},
      {"mating[].closing", Form::yes_no, "It closes a run between two fixed ends"},
      {"mating[].lengthwise", Form::yes_no, "Its two sides go together along the run"},
      {"mating[].bowed in", Form::yes_no, "A hose or tube that is bowed to go over or into the other side"},
      {"mating[].end bows", Form::yes_no, "So does the hose or tube of an end that stands; no for a stiff one"},
      {"mating[].source", Form::text, "Where that comes from", {}, true},
      {"look-alikes", Form::list, "What must not go together although it looks as if it would"},
      {"look-alikes[].kinds", Form::words, "Two kinds, all their ends"},
      {"look-alikes[].a", Form::text, "A kind and its end, in place of `kinds`"},
      {"look-alikes[].b", Form::text, "The other"},
      {"look-alikes[].sizes", Form::any, "Pairs of sizes; equal sizes where it is left out"},
      {"look-alikes[].reason", Form::text, "What happens where they are forced", {}, true},
      {"look-alikes[].source", Form::text, "Where that comes from", {}, true},
      {"foreign threads", Form::list, "Kinds that are at home elsewhere and are used last"},
      {"foreign threads[].kind", Form::text, "The kind", {}, true},
      {"foreign threads[].at home", Form::words, "Kinds of a run's ends where it belongs", {}, true},
      {"foreign threads[].keeps metals apart between", Form::words, "Kinds between which it parts two metals"},
      {"foreign threads[].only at its end", Form::yes_no, "It stands at the end of a run alone"},
      {"foreign threads[].source", Form::text, "Where that comes from", {}, true},
  };
}

std::vector<FileKey> all_joints_keys() {
  std::vector<FileKey> keys = keys_of_seals();
  for (std::vector<FileKey> more : {keys_of_kinds(), keys_of_mating()})
    keys.insert(keys.end(), std::make_move_iterator(more.begin()), std::make_move_iterator(more.end()));
  return keys;
}

}  // namespace

const std::vector<FileKey>& joints_keys() {
  static const std::vector<FileKey> keys = all_joints_keys();
  return keys;
}

const std::vector<FileKey>& materials_keys() {
  static const std::vector<FileKey> keys = {
      {"galvanic", Form::map, "How far two wetted metals may stand apart", {}, true},
      {"galvanic.watch above", Form::quantity, "Difference of anodic indexes to watch, as `0.25 V`", {}, true},
      {"galvanic.keep apart above", Form::quantity, "Difference above which they are kept apart", {}, true},
      {"galvanic.source", Form::text, "Where that comes from", {}, true},
      {"materials", Form::list, "What parts, reservoirs and tables are made of", {}, true},
      {"materials[].id", Form::text, "Lower case, its words joined by `-`", {}, true},
      {"materials[].name", Form::text, "What it is called", {}, true},
      {"materials[].aliases", Form::words, "What it is called as well"},
      {"materials[].sort", Form::text,
       "What it and others are called together, as `plastic`; a metal is `metal` where it is left out"},
      {"materials[].metal", Form::yes_no, "yes where it is left out"},
      {"materials[].anodic index", Form::quantity, "Of a metal, as `0.85 V`"},
      {"materials[].compressed air", Form::yes_no, "It may hold compressed air; yes where it is left out"},
      {"materials[].roughness", Form::quantity, "Of its wall, 0 to 5 mm", {}, true},
      {"materials[].welds to", Form::text, "What it is welded to"},
      {"materials[].not welded", Form::text, "Why it is not welded"},
      {"materials[].galls", Form::yes_no, "Its threads seize without a lubricant"},
      {"materials[].coat on", Form::text, "The material under it, by its id"},
      {"materials[].pits", Form::yes_no, "Chloride pits it"},
      {"materials[].threads", Form::yes_no, "It is cut with a pipe thread; a metal is, where it is left out"},
      {"materials[].hottest", Form::quantity, "Temperature that it stands"},
      {"materials[].source", Form::text, "Where its figures come from", {}, true},
  };
  return keys;
}

const std::vector<FileKey>& losses_keys() {
  static const std::vector<FileKey> keys = {
      {"items", Form::list, "Head lost in fittings; each has `crane n`, `three-k` or both", {}, true},
      {"items[].name", Form::text, "What families call it by", {}, true},
      {"items[].crane n", Form::number, "K = n times the fully rough friction factor, 0 to 10000"},
      {"items[].three-k", Form::any, "Three numbers: K1, Ki, Kd"},
      {"items[].scatter", Form::number, "Share by which published figures differ, 0 to 1", {}, true},
      {"items[].dirty", Form::number, "Times its loss before it is cleaned, 1 to 100"},
      {"items[].source", Form::text, "Where its figures come from", {}, true},
  };
  return keys;
}

const std::vector<FileKey>& bores_keys() {
  static const std::vector<FileKey> keys = {
      {"bores", Form::list, "Tables of bores by size, for families to refer to", {}, true},
      {"bores[].name", Form::text, "What families call it by, as `schedule 40`", {}, true},
      {"bores[].source", Form::text, "Where its figures come from", {}, true},
      {"bores[].columns", Form::words, "`size`, and `bore (in)` or `bore (mm)`", {}, true},
      {"bores[].rows", Form::any, "A list of rows, each a size and its bore", {}, true},
  };
  return keys;
}

}  // namespace riserun::catalog
