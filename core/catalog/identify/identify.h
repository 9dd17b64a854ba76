// What thread is this? From what can be measured at the bench to ranked candidates, and to the one further measurement
// that would tell them apart best.
//
// The model is Bayes' rule over the catalog's ends. Before any measurement an end is as likely as it is common on the
// shelf: the shelf of the shop's country most of the time, the other one else (kHomeShelf). Each measurement multiplies
// that by how likely it is for that end, given what the tool may be off by (bench_tools.h) and what the thread's form
// and tolerances leave (thread_form.h). The confidence of a candidate is its share of the sum.
#pragma once

#include "catalog/identify/port_traits.h"

#include <optional>
#include <string>
#include <variant>
#include <vector>

namespace riserun::catalog {

/// Across the outside of a male, or the inside of a female, with that tool.
struct DiameterReading {
  Length across{};
  Tool tool = Tool::tape;
  bool inside = false;
};
/// Threads counted against a rule.
struct ThreadCount {
  double threads_per_inch = 0.0;
  Length over{};  // the length counted; nothing: one inch, or all that is there
};
struct TaperSeen {
  bool tapered = false;
};
struct WasherSeen {
  bool there = false;
};
/// The thread is on a nut that turns without its body.
struct SwivelSeen {
  bool turns = false;
};
enum class SeatShape : std::uint8_t { none, cone_37, cone_45, cone };  // `cone`: of an angle that was not gauged
struct SeatSeen {
  SeatShape shape = SeatShape::none;
};
/// The included angle that a thread gauge showed, 55 or 60.
struct FlankSeen {
  int degrees = 60;
};
/// A number with the threads per inch behind it, as 3/4-14: a nominal size, or the thread's own diameter.
struct PitchedMark {
  std::string text;
  Length across{};
  double threads_per_inch = 0.0;
};
/// Letters and a size, cast or stamped in.
struct MarkSeen {
  std::vector<KindId> kinds;  // what the letters stand for; none: no letters
  std::optional<End> end;
  std::optional<SizeId> size;
  std::optional<PitchedMark> pitched{};
  std::size_t letters = 0;            // how many stand for the kinds
  std::vector<std::string> unread{};  // words that say nothing of a thread: a class, a grade, a maker
};
/// Where it was made.
struct OriginKnown {
  Shelf shelf = Shelf::inch;
};
/// It goes into, or onto, a part that is known by so many turns by hand, and stops.
struct HandTrial {
  PortTypeId known;
  double turns = 0.0;
};
struct MaterialSeen {
  MaterialId material;
};

using Observation = std::variant<DiameterReading, ThreadCount, TaperSeen, WasherSeen, SwivelSeen, SeatSeen, FlankSeen,
                                 MarkSeen, OriginKnown, HandTrial, MaterialSeen>;

struct Measurements {
  std::vector<Observation> seen;
  std::optional<End> end;     // male or female, where that is known
  bool threaded = true;       // false: a plain tube, pipe, barb or hose
  Shelf shelf = Shelf::inch;  // the shop's own country
};

/// What one measurement says of one candidate.
struct Evidence {
  double likelihood = 0.0;  // probability, or density per unit of what is read; compare between candidates only
  std::optional<LengthBand> expected;     // what the diameter may be
  std::optional<double> expected_number;  // threads per inch, or turns
  double miss = 0.0;                      // how far the reading lies off, in times the tool's error; 0: within
  Length miss_length{};                   // the same for a diameter, beyond the band
  bool agrees = true;                     // it speaks for this candidate, or at least not against it
};

struct Candidate {
  PortTypeId type;
  double confidence = 0.0;
  double likelihood = 0.0;         // of all measurements together, without the prior
  std::vector<Evidence> evidence;  // in the order of Measurements::seen
};

/// An end that may be taken for a candidate.
struct Resemblance {
  PortTypeId of;
  PortTypeId other;
  std::string reason;
  bool ruled_out = false;  // by what was measured
};

struct Identification {
  Measurements measured;
  std::vector<Candidate> candidates;  // surest first; empty: nothing in the catalog fits
  std::vector<Resemblance> look_alikes;
  /// The leader holds nine tenths, no other is left that the measurements do not tell from it, the cone that it seals
  /// on, if any, was seen or marked, and no mark speaks against it.
  bool certain = false;
  std::vector<PortTypeId> undecided;  // what the leader cannot be told from yet
  std::vector<Candidate> nearest;     // only where nothing fits: what misses least
};

/// The candidates for what was measured.
Identification identify(const Catalog& catalog, const Measurements& measurements);

enum class Question : std::uint8_t {
  threads,
  diameter,
  caliper,
  taper,
  swivel,
  washer,
  seat,
  flank,
  hand_trial,
  origin,
  material,
};

struct NextMeasurement {
  Question question = Question::threads;
  std::optional<PortTypeId> known;  // for a trial by hand: the part to try
  bool inside = false;              // for a diameter
  double gain_bits = 0.0;           // expected reduction of the entropy over the candidates
};

/// Measurements that have not been made yet, by how much each is expected to tell of what is left, most first; none
/// that would tell next to nothing. The gain is the mutual information of candidate and outcome,
///     I = H(candidates) - sum over outcomes of P(outcome) H(candidates | outcome)   [bits]
/// Source: C. E. Shannon, "A Mathematical Theory of Communication", 1948; D. V. Lindley, "On a Measure of the
/// Information Provided by an Experiment", Ann. Math. Statist. 27(4), 1956.
std::vector<NextMeasurement> next_measurements(const Catalog& catalog, const Identification& found);

/// The letters and size of a mark, `G 3/4`, `NPT`; or why it says nothing.
struct MarkError {
  std::string message;
  std::size_t offset = 0;
};
std::variant<MarkSeen, MarkError> read_mark(const Catalog& catalog, std::string_view text);

/// What one measurement says of one end; `known` are the traits of the part of a trial by hand.
Evidence weigh(const Catalog& catalog, const PortTraits& port, const Observation& seen, Shelf home,
               const PortTraits* known);
/// The traits of the end that a trial by hand is made against; nullptr for other measurements.
const PortTraits* known_part(const Catalog& catalog, const std::vector<PortTraits>& ports, const Observation& seen);
/// How likely the end is before any measurement; only ratios count.
double prior(const PortTraits& port, Shelf home);

}  // namespace riserun::catalog
