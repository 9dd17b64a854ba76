// Kinds of joint (NPT, garden hose thread, hose barb ...), the open ends that parts have, and the rules that say which
// end mates which. All of it is data, loaded from catalog/joints.yaml; the program knows no thread by name.
#pragma once

#include "catalog/ids.h"
#include "quantity/quantities.h"

#include <optional>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

namespace riserun::catalog {

enum class End : std::uint8_t { male, female, neither };

constexpr std::string_view end_name(End end) {
  return end == End::male ? "male" : end == End::female ? "female" : "neither";
}

/// An open end by kind, nominal size and end; what a port notation such as `1-1/4 FNPT` names.
struct PortType {
  KindId kind;
  SizeId size;
  End end = End::neither;
  auto operator<=>(const PortType&) const = default;
};

/// What one nominal size of a kind measures. Lengths are zero where the kind has no such thing (a hose has no pitch).
struct JointSize {
  SizeId size;
  Length outside_diameter{};         // of the male thread, the tube or the barb
  Length major_diameter{};           // over the male thread's crests where that is not the outside diameter
  double threads_per_inch = 0.0;     // 0: not a thread
  Length hand_tight_engagement{};    // length that goes in by hand; for an unthreaded joint all that goes in
  Length wrench_engagement{};        // further length when tightened, nominal
  Length thread_length{};            // useful thread on the male end
  double turns_past_hand_low = 0.0;  // turns past hand-tight, trade range
  double turns_past_hand_high = 0.0;
  Length bore{};  // plain bore of pipe, tube or hose of that size where the kind fixes one

  /// Make-up: what goes in when the joint is tight, nominal.
  Length make_up() const { return hand_tight_engagement + wrench_engagement; }
  /// Half-width of the band of make-up that thread tolerance leaves: one turn for a taper thread (ASME B1.20.1, 3.2).
  Length make_up_tolerance{};
};

/// The two shelves that a part may come from: the commonness of a kind differs between them.
enum class Shelf : std::uint8_t { inch, metric };

/// What helps to tell an end of a kind by measuring it at the bench.
struct Recognition {
  double flank_angle_degrees = 0.0;  // included angle of the thread; 0: not a thread
  double cone_angle_degrees = 0.0;   // half angle of the cone that it seals on; 0: no cone
  double common_inch = 0.0;          // how common on a shelf, as shares of some whole: only their ratios count
  double common_metric = 0.0;
  bool male = true;  // which ends can be told by measuring them
  bool female = true;
  std::vector<std::string> male_names;  // as the shelf has them, besides the notation: "MIP", "MPT"
  std::vector<std::string> female_names;
  std::vector<std::string> marks;  // as cast or stamped into the part: "NPT", "R"
  std::string source;

  double common(Shelf shelf) const { return shelf == Shelf::inch ? common_inch : common_metric; }
};

/// What an end looks like from outside, for drawings; a thread is drawn as one besides.
enum class EndShape : std::uint8_t {
  plain,    // as wide as it is: pipe, tube, socket
  barb,     // teeth that a hose is pushed over
  hose,     // the hose itself
  nut,      // a hexagon nut that turns
  cone,     // a thread that ends in a cone
  groove,   // a ring that cams reach into
  levers,   // a socket with two cam levers
  collar,   // a socket with a release ring at its mouth
  crimp,    // ribs with a crimped ring
  plug,     // a plug of a quick coupling
  coupler,  // its socket, with the sleeve that is pulled back
  flange,   // a disk with bolt holes
  bands,    // a sleeve with a band clamp
};

struct JointKind {
  std::string id;               // "npt", used in files and JSON
  std::string name;             // "NPT", used in print
  std::string standard;         // "ASME B1.20.1"
  std::string male_notation;    // "MNPT": how a male end is written after its size; empty: no such end
  std::string female_notation;  // "FNPT"
  std::string neither_notation;
  // More ways in which people write it, lower case: the kind alone ("pipe thread"), or the kind with its end ("mip").
  std::vector<std::string> kind_words;
  std::vector<std::string> male_words;
  std::vector<std::string> female_words;
  std::vector<std::string> neither_words;
  EndShape male_shape = EndShape::plain;
  EndShape female_shape = EndShape::plain;
  EndShape neither_shape = EndShape::plain;
  bool threaded = false;
  bool tapered = false;
  bool by_outside = false;  // a size names the outside diameter of the tube, not what goes through it
  std::vector<JointSize> sizes;
  std::string source;
  std::optional<Recognition> recognition;  // none: it is not told by measuring
};

/// Which side is turned when a joint is made up.
enum class Turning : std::uint8_t {
  either,   // one body is screwed into or onto the other: one of the two sides must be free to turn
  neither,  // a nut, clamp, cam or solder makes it: both bodies stay still
};

/// One row of the mating table: an `a` end goes together with a `b` end. The pair is unordered, but where the kinds
/// differ, a's sizes say how far the joint goes in: a nut with a washer stops a pipe thread short.
struct MatingRule {
  KindId kind_a;
  End end_a = End::neither;
  KindId kind_b;
  End end_b = End::neither;
  std::vector<std::pair<SizeId, SizeId>> sizes;  // (size of a, size of b); empty: the same size on both sides
  std::string seal;  // "thread sealant", "hose washer", "clamp", "solder" ...: a name from Catalog::seals
  Turning turning = Turning::either;
  bool closing = false;  // made up without turning either side, and so can be the last joint between two fixed ends
  bool comes_apart = true;
  std::string source;
  bool lengthwise = false;  // one body slides into the other along the run, so that the run must first open by that
  bool bowed = false;    // so does a hose or a tube, which opens the run by bowing: it closes it only where it has room
  bool end_bows = true;  // so does the hose or tube of an end that stands; copper that comes out of a wall does not
};

/// How a joint is made tight and what it uses up.
struct Seal {
  std::string name;         // "thread sealant"
  std::string instruction;  // what the fitter does: "tape 3 turns with the thread, first thread bare"
  std::string consumable;   // what the shopping list needs: "PTFE tape or paste"; empty: nothing
  std::string source;
  bool clamped = false;     // by a part of its own, a hose clamp, in place of the consumable
  bool on_washer = false;   // on a washer or gasket that lies in or on one of the two ends
  bool hot = false;         // made with heat, which chars tape and spoils a valve's seats
  bool at_bench = false;    // its tool takes room round a loose piece: made before that goes into the run
  Length bare{};            // of the tube that goes in, left free at the mouth for its nut or collar and what turns it
  Length tape_per_joint{};  // zero: what it uses up is counted by the joint
  Length tape_per_roll{};
};

/// Two ends that look or start to screw together but must never be joined. Unordered; `sizes` empty: every size; an end
/// left out: every end of that kind.
struct LookAlike {
  KindId kind_a;
  KindId kind_b;
  std::vector<std::pair<SizeId, SizeId>> sizes;
  std::string reason;
  std::string source;
  std::optional<End> end_a;
  std::optional<End> end_b;
};

/// A thread that a fitter puts into a run only where an end of the run is at home with it: garden hose thread, plastic
/// thread in metal. `at_home`: the kinds of such ends.
struct ForeignThread {
  KindId kind;
  std::vector<KindId> at_home;
  std::string source;
  std::vector<KindId> keeps_apart{};  // at home with these, too, where unlike metals must be kept apart
  bool only_at_end = false;           // at home on the end that has it, and nowhere else along the run
};

}  // namespace riserun::catalog
