#include "chain/ask/askable.h"

#include <algorithm>
#include <array>
#include <cassert>

namespace riserun::chain {

namespace {

using quantity::Range;
using Words = std::string_view;

// In the order of the enumerations that they stand for.
constexpr std::array kFreedoms = std::to_array<Words>({"fixed", "sliding", "spinning", "loose"});
constexpr std::array kOrders = std::to_array<Words>({"line", "parts", "price", "loss", "length", "bin"});
constexpr std::array kServices = std::to_array<Words>({"water", "air"});
constexpr std::array kGalvanic = std::to_array<Words>({"warn", "avoid"});
constexpr std::array kFacings = std::to_array<Words>({"anywhere", "straight on", "to a side"});
// A run with several far ends has no one length and no one loss, and its ends either move or do not.
constexpr std::array kBranchFreedoms = std::to_array<Words>({"fixed", "loose"});
constexpr std::array kBranchOrders = std::to_array<Words>({"line", "parts", "price", "bin"});

std::vector<Askable> rows_of_a_run() {
  const Range<int> a_few{0, 40};
  return {
      {.code = "held_ends",
       .key = "held",
       .option = "--held",
       .help = "All ends are held still: a union, hose or swivel nut must close it",
       .flag = true,
       .kind = AskedKind::choice,
       .relief = Relief::give_up,
       .choices = kFreedoms,
       .branch_choices = kBranchFreedoms},
      {.code = "first_end",
       .option = "--first-end",
       .help = "How the first port can move: loose, spinning, sliding or fixed",
       .kind = AskedKind::choice,
       .choices = kFreedoms,
       .one_run = true},
      {.code = "last_end",
       .option = "--last-end",
       .help = "How the last port can move",
       .kind = AskedKind::choice,
       .choices = kFreedoms,
       .one_run = true},
      {.code = "need",
       .key = "need",
       .option = "--need",
       .help = "Something that must be in it, as \"ball valve\"; may be given again",
       .kind = AskedKind::parts,
       .relief = Relief::give_up},
      {.code = "order_of_needs",
       .key = "in order",
       .option = "--in-order",
       .help = "What --need asks for comes in the order given, from the first port on",
       .flag = true,
       .kind = AskedKind::yes_no,
       .relief = Relief::give_up,
       .field = &RunRules::needs_in_order,
       .one_run = true},
      {.code = "most_parts",
       .key = "most parts",
       .option = "--most-parts",
       .help = "No more parts than that",
       .kind = AskedKind::count,
       .relief = Relief::loosen,
       .field = &RunRules::most_parts,
       .range = a_few,
       .one_run = true},
      {.code = "most_bushings",
       .key = "most bushings",
       .option = "--most-bushings",
       .help = "No more bushings than that (left out: 1 in a chain, any number in a branched assembly)",
       .kind = AskedKind::count,
       .relief = Relief::loosen,
       .field = &RunRules::most_bushings,
       .range = a_few},
      {.code = "rating",
       .key = "rating",
       .option = "--rating",
       .help = "The pressure that every part must stand, as \"100 psi\"",
       .kind = AskedKind::pressure,
       .relief = Relief::loosen,
       .field = &RunRules::rating,
       .range = Range<GaugePressure>{psig(0.0), psig(3000.0)}},
      {.code = "hottest",
       .key = "hottest",
       .option = "--hottest",
       .help = "The hottest that it gets inside, as \"140 F\": every part must be proved for it, --rating at that heat",
       .kind = AskedKind::temperature,
       .relief = Relief::loosen,
       .field = &RunRules::hottest,
       .range = Range<Temperature>{degrees_fahrenheit(32.0), degrees_fahrenheit(500.0)}},
      {.code = "vacuum",
       .key = "vacuum",
       .option = "--vacuum",
       .help = "It can come under vacuum: every part must be proved for it",
       .flag = true,
       .kind = AskedKind::yes_no,
       .relief = Relief::give_up,
       .field = &RunRules::vacuum},
      {.code = "smallest_bore",
       .key = "smallest bore",
       .option = "--bore",
       .help = "The smallest bore allowed, as \"3/4 in\"",
       .kind = AskedKind::length,
       .relief = Relief::loosen,
       .field = &RunRules::smallest_bore,
       .range = Range<Length>{inches(0.05), inches(12.0)}},
      {.code = "room",
       .key = "room",
       .option = "--room",
       .help = "Free radius round the run: what is screwed up must have room to turn, as \"2 in\"",
       .kind = AskedKind::length,
       .relief = Relief::loosen,
       .field = &RunRules::room,
       .range = Range<Length>{inches(0.25), inches(120.0)}},
      {.code = "galvanic",
       .key = "galvanic",
       .option = "--galvanic",
       .help = "warn of unlike metals, or avoid them",
       .kind = AskedKind::choice,
       .relief = Relief::give_up,
       .field = &RunRules::galvanic,
       .choices = kGalvanic},
      {.code = "air",
       .key = "carries",
       .option = "--air",
       .help = "It carries compressed air: only parts proved for it",
       .flag = true,
       .kind = AskedKind::choice,
       .relief = Relief::give_up,
       .choices = kServices},
      {.code = "avoid",
       .key = "avoid",
       .option = "--avoid",
       .help = "A material, plastic or metal, a kind of joint, a part, or all that is called so, as \"nipple\" for "
               "close, hex and PVC nipples too and \"just nipple\" for that family alone; may be given again",
       .kind = AskedKind::parts,
       .relief = Relief::give_up},
      {.code = "ruled_out", .relief = Relief::give_up},
      {.code = "bin_only",
       .option = "--from-bin",
       .help = "Nothing is bought: what the bin has must do",
       .flag = true,
       .kind = AskedKind::yes_no,
       .relief = Relief::give_up},
      {.code = "stocked_only",
       .key = "special order",
       .option = "--special-order",
       .help = "Parts that a store must order are allowed",
       .flag = true,
       .kind = AskedKind::yes_no,
       .relief = Relief::give_up,
       .field = &RunRules::special_order},
      {.code = "order",
       .key = "order",
       .option = "--order",
       .help =
           "What decides: line (keeps the line's size and kind, then fewest size changes, parts, one material, price), "
           "parts, price, loss, length or bin",
       .kind = AskedKind::choice,
       .choices = kOrders,
       .branch_choices = kBranchOrders},
      {.code = "flow",
       .option = "--flow",
       .help = "Flow for the head lost, as \"12 gpm\" (10 gpm when left out)",
       .kind = AskedKind::flow,
       .one_run = true},
  };
}

std::vector<Askable> rows_of_a_distance() {
  const Range<Length> in_reach{Length{}, feet(60.0)};
  return {
      {.code = "distance",
       .key = "gap",
       .option = "--span",
       .help = "The distance between the two ports' faces, which look at each other: stock pieces, cut pipe or a hose "
               "make it; both ends are held unless --first-end or --last-end says otherwise",
       .of = AskedOf::distance,
       .kind = AskedKind::length,
       .relief = Relief::loosen,
       .field = &Span::along,
       .range = in_reach,
       .one_run = true},
      {.code = "offset",
       .key = "offset",
       .option = "--offset",
       .help = "With --span: how far apart the two ports' axes are",
       .of = AskedOf::distance,
       .kind = AskedKind::length,
       .relief = Relief::give_up,
       .field = &Span::offset,
       .range = in_reach,
       .one_run = true},
      {.code = "roll",
       .option = "--roll",
       .help = "With --offset: the second offset of a rolling one, at right angles to it",
       .of = AskedOf::distance,
       .kind = AskedKind::length,
       .relief = Relief::give_up,
       .field = &Span::roll,
       .range = in_reach,
       .one_run = true},
  };
}

std::vector<Askable> rows_of_a_branch() {
  return {
      {.code = "branch_need",
       .key = "need",
       .option = "--branch-need",
       .help = "Something that must be on its own way, behind the last tee, as \"1=regulator\"",
       .of = AskedOf::branch,
       .kind = AskedKind::parts,
       .relief = Relief::give_up,
       .like = "need",
       .example = "1=regulator"},
      {.code = "branch_order_of_needs",
       .key = "in order",
       .option = "--branch-in-order",
       .help = "What --branch-need asks for on its way comes in the order given, from the last tee on",
       .flag = true,
       .of = AskedOf::branch,
       .kind = AskedKind::yes_no,
       .relief = Relief::give_up,
       .field = &WayRules::needs_in_order},
      {.code = "branch_bore",
       .key = "smallest bore",
       .option = "--branch-bore",
       .help = "Smallest bore on the way to a port behind the base, as \"2=3/4 in\"",
       .of = AskedOf::branch,
       .kind = AskedKind::length,
       .relief = Relief::loosen,
       .field = &WayRules::smallest_bore,
       .range = Range<Length>{inches(0.01), inches(12.0)},
       .like = "smallest_bore",
       .example = "2=3/4 in"},
      {.code = "branch_avoid",
       .key = "avoid",
       .option = "--branch-avoid",
       .help = "A material, family or part to keep off its way, as \"3=check valve\"",
       .of = AskedOf::branch,
       .kind = AskedKind::parts,
       .relief = Relief::give_up,
       .example = "3=check valve"},
      {.code = "facing",
       .key = "looks",
       .option = "--branch-looks",
       .help = "Where it looks, seen from the base: \"1=straight on\" (no turn) or \"2=to a side\" (one quarter turn)",
       .of = AskedOf::branch,
       .kind = AskedKind::choice,
       .relief = Relief::give_up,
       .field = &WayRules::facing,
       .choices = kFacings,
       .example = "1=straight on"},
      {.code = "feeds",
       .key = "feeds",
       .option = "--branch-feeds",
       .help = "That port feeds the base: regulators and check valves point to the base",
       .flag = true,
       .of = AskedOf::branch,
       .kind = AskedKind::yes_no},
      {.code = "relief",
       .option = "--branch-relief",
       .help = "A relief valve goes there: nothing that can shut on its way, no size below its inlet",
       .flag = true,
       .of = AskedOf::branch,
       .kind = AskedKind::yes_no},
      {.code = "held_end",
       .key = "held",
       .of = AskedOf::branch,
       .kind = AskedKind::choice,
       .relief = Relief::give_up,
       .choices = kBranchFreedoms},
      {.code = "device", .key = "ends in", .of = AskedOf::branch, .kind = AskedKind::parts},
      {.code = "branch_special_order", .key = "special order", .of = AskedOf::branch, .kind = AskedKind::yes_no},
  };
}

std::vector<Askable> all_rows() {
  std::vector<Askable> rows = rows_of_a_run();
  for (const auto& more : {rows_of_a_distance(), rows_of_a_branch()}) rows.insert(rows.end(), more.begin(), more.end());
  return rows;
}

}  // namespace

std::span<const Askable> askables() {
  static const std::vector<Askable> kRows = all_rows();
  return kRows;
}

const Askable& askable(std::string_view code) {
  const auto row = std::find_if(askables().begin(), askables().end(), [&](const Askable& a) { return a.code == code; });
  assert(row != askables().end());
  return *row;
}

}  // namespace riserun::chain
