#include "catalog/identify/identify.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

namespace riserun::catalog {

namespace {

constexpr double kCertain = 0.9;
constexpr double kNamed = 0.01;  // a candidate with less has no look-alikes named
constexpr double kRuledOut = 0.001;
constexpr double kStillThere = 0.05;  // a candidate with less does not hold back a verdict
constexpr double kToldApart = 5.0;    // measurements that favour one this much tell the two apart
constexpr std::size_t kNearest = 3;

Evidence weigh_band(double reading, LengthBand band, double error) {
  Evidence evidence;
  const double low = in_metres(band.low);
  const double high = in_metres(band.high);
  const double outside = std::max({low - reading, reading - high, 0.0});
  evidence.expected = band;
  evidence.likelihood = reading_density(reading, low, high, error);
  evidence.miss = outside / error;
  evidence.miss_length = metres(outside);
  evidence.agrees = evidence.miss <= 1.0;
  return evidence;
}

Evidence weigh_number(double reading, double expected, double error) {
  Evidence evidence;
  evidence.expected_number = expected;
  evidence.likelihood = reading_density(reading, expected, expected, error);
  evidence.miss = std::abs(reading - expected) / error;
  evidence.agrees = evidence.miss <= 1.0;
  return evidence;
}

Evidence weigh_look(double likelihood, bool agrees) {
  Evidence evidence;
  evidence.likelihood = likelihood;
  evidence.agrees = agrees;
  return evidence;
}

/// A look with two outcomes: how sure it is where the end has it, and how often it is seen where it has not.
Evidence weigh_yes_no(bool seen, bool has, double seen_where_it_is, double seen_elsewhere) {
  const double yes = has ? seen_where_it_is : seen_elsewhere;
  return weigh_look(seen ? yes : 1.0 - yes, seen == has);
}

/// Something that the end does not have at all (a pitch on a tube): impossible.
Evidence impossible() {
  Evidence evidence;
  constexpr double kBeyondAllOthers = 1e6;
  evidence.miss = kBeyondAllOthers;
  evidence.agrees = false;
  return evidence;
}

/// The three cones and none share what is not the end's own.
double seat_chance(const PortTraits& port, double cone_degrees) {
  constexpr double kOtherCone = 0.08;  // a wrong angle read, or a seat that some makers cut
  constexpr double kNoConeSeen = 0.03;
  constexpr double kConeOnAPlainEnd = 0.02;
  if (port.cone_angle_degrees == 0.0) return cone_degrees == 0.0 ? 1.0 - 3 * kConeOnAPlainEnd : kConeOnAPlainEnd;
  if (cone_degrees == port.cone_angle_degrees) return kConeSeen;
  return cone_degrees == 0.0 ? kNoConeSeen : kOtherCone;
}

Evidence weigh_seat(const PortTraits& port, SeatShape shape) {
  const double own = port.cone_angle_degrees;
  switch (shape) {
    case SeatShape::none:
      return weigh_look(seat_chance(port, 0.0), own == 0.0);
    case SeatShape::cone_37:
      return weigh_look(seat_chance(port, 37.0), own == 37.0);
    case SeatShape::cone_45:
      return weigh_look(seat_chance(port, 45.0), own == 45.0);
    case SeatShape::cone:
      break;
  }
  return weigh_look(1.0 - seat_chance(port, 0.0), own != 0.0);
}

/// Its threads per inch, and the number before them its nominal size or the diameter of its thread.
bool has_designation(const PortTraits& port, const MarkSeen& mark) {
  constexpr double kRounded = 0.01;     // 11.5 and 11-1/2
  constexpr double kAcross = 1.0 / 64;  // in; the table's major diameters are rounded
  if (!port.thread || std::abs(port.threads_per_inch - mark.pitched->threads_per_inch) > kRounded) return false;
  if (mark.size && *mark.size == port.port.size) return true;
  return std::abs(in_inches(port.thread->over_male_crests.high - mark.pitched->across)) < kAcross;
}

Evidence weigh_mark(const PortTraits& port, const MarkSeen& mark) {
  bool agrees = true;
  double likelihood = 1.0;
  const auto take = [&](bool fits, double otherwise = kMarkOfAnother) {
    likelihood *= fits ? kMarkTrue : otherwise;
    agrees = agrees && fits;
  };
  const double of_letters =
      (1.0 - kMarkTrue) / std::pow(kLettersToMisread, static_cast<double>(std::max<std::size_t>(1, mark.letters)));
  if (!mark.kinds.empty())
    take(std::find(mark.kinds.begin(), mark.kinds.end(), port.port.kind) != mark.kinds.end(), of_letters);
  if (mark.end) take(*mark.end == port.port.end, 1.0 - kMarkTrue);
  if (mark.pitched)
    take(has_designation(port, mark));
  else if (mark.size)
    take(*mark.size == port.port.size);
  return weigh_look(likelihood, agrees);
}

Evidence weigh_origin(const PortTraits& port, Shelf made, Shelf home) {
  const double inch = port.common_inch * (home == Shelf::inch ? kHomeShelf : 1.0 - kHomeShelf);
  const double metric = port.common_metric * (home == Shelf::metric ? kHomeShelf : 1.0 - kHomeShelf);
  const double chance = (made == Shelf::inch ? inch : metric) / (inch + metric);
  return weigh_look(chance, chance >= 0.5);
}

/// Where the threads meet a trial is never decisive: it may have been spoiled. Where they do not, there is no turn.
Evidence weigh_trial(const Catalog& catalog, const PortTraits& port, double turns, const PortTraits* known) {
  if (known == nullptr || !port.threaded() || port.port.end == known->port.end) return impossible();
  constexpr double kNoTurn = 0.5;
  const PortTraits& male = port.port.end == End::male ? port : *known;
  const PortTraits& female = port.port.end == End::male ? *known : port;
  if (turns >= kNoTurn && !threads_meet(male, female)) return impossible();
  const bool own = catalog.mating_rule(port.type, known->type) != nullptr;
  const std::optional<double> expected = hand_turns(catalog, male, female);
  const double foreign = expected == 0.0 ? kCrossThreadTurns : kForeignTurnsError;
  const double error = own ? kTurnsError : foreign;
  Evidence evidence;
  if (expected) evidence = weigh_number(turns, *expected, error);
  evidence.agrees = expected && evidence.agrees;
  // Dirt and burrs stop it sooner: nothing takes it further than its threads go.
  const bool beyond = turns > expected.value_or(0.0) + kImpossible * error;
  evidence.likelihood = beyond ? 0.0 : (1.0 - kTrialSpoiled) * evidence.likelihood + kTrialSpoiled / kMostTurns;
  return evidence;
}

Evidence weigh_diameter(const PortTraits& port, const DiameterReading& reading) {
  const std::optional<LengthBand>& band = reading.inside ? port.inside : port.outside;
  return band ? weigh_band(in_metres(reading.across), *band, in_metres(reading_error(reading.tool))) : impossible();
}

Evidence weigh_count(const PortTraits& port, const ThreadCount& count) {
  if (!port.threaded()) return impossible();
  return weigh_number(count.threads_per_inch, port.threads_per_inch,
                      count_error(port.threads_per_inch, count.over, port.thread_length));
}

bool eligible(const PortTraits& port, const Measurements& measurements) {
  if (port.threaded() != measurements.threaded) return false;
  if (!measurements.end) return true;
  return port.port.end == *measurements.end || port.port.end == End::neither;
}

bool surer(const Candidate& a, const Candidate& b) {
  return a.confidence != b.confidence ? a.confidence > b.confidence : a.type < b.type;
}

double total_miss(const Candidate& candidate) {
  double sum = 0.0;
  for (const Evidence& evidence : candidate.evidence) sum += evidence.miss * evidence.miss;
  return sum;
}

/// Whether the bench cannot tell the two by size: diameters within a tape's error, threads within a count's.
bool near_in_size(const PortTraits& a, const PortTraits& b) {
  const auto& first = a.port.end == End::female ? a.inside : a.outside;
  const auto& second = b.port.end == End::female ? b.inside : b.outside;
  if (!first || !second || a.threaded() != b.threaded()) return false;
  const Length apart = std::max(first->low, second->low) - std::min(first->high, second->high);
  if (apart > reading_error(Tool::tape)) return false;
  if (!a.threaded()) return true;
  const Length shorter = std::min(a.thread_length, b.thread_length);
  return std::abs(a.threads_per_inch - b.threads_per_inch) <= count_error(a.threads_per_inch, {}, shorter);
}

std::string resemblance(const PortTraits& a, const PortTraits& b) {
  if (!a.threaded()) return "diameters within what a tape is off by; look at what it is made of and how it is joined";
  if (a.threads_per_inch == b.threads_per_inch)
    return fmt::format("both have {:g} threads per inch, and diameters within what a tape is off by",
                       a.threads_per_inch);
  return fmt::format(
      "{:g} and {:g} threads per inch, which a count over so short a thread hardly tells apart, and "
      "diameters within what a tape is off by",
      a.threads_per_inch, b.threads_per_inch);
}

/// What the catalog names as a look-alike, and whatever else tape and rule cannot tell apart.
std::optional<Resemblance> resemblance_of(const Catalog& catalog, const PortTraits& a, const PortTraits& b) {
  if (a.type == b.type || a.port.end != b.port.end) return std::nullopt;
  const LookAlike* known = a.port.kind == b.port.kind ? nullptr : catalog.look_alike(a.port, b.port);
  const bool near = near_in_size(a, b);
  if (known != nullptr && (a.port.size == b.port.size || near)) return Resemblance{a.type, b.type, known->reason};
  if (!near) return std::nullopt;
  return Resemblance{a.type, b.type, resemblance(a, b)};
}

void name_look_alikes(const Catalog& catalog, const std::vector<PortTraits>& ports, Identification& found) {
  const auto still_there = [&](PortTypeId type) {
    return std::any_of(found.candidates.begin(), found.candidates.end(),
                       [&](const Candidate& c) { return c.type == type && c.confidence >= kRuledOut; });
  };
  for (const Candidate& candidate : found.candidates) {
    if (candidate.confidence < kNamed) continue;
    const auto traits =
        std::find_if(ports.begin(), ports.end(), [&](const PortTraits& p) { return p.type == candidate.type; });
    for (const PortTraits& other : ports)
      if (auto pair = resemblance_of(catalog, *traits, other)) {
        pair->ruled_out = !still_there(other.type);
        found.look_alikes.push_back(std::move(*pair));
      }
  }
}

/// Whether the cone that the end seals on was looked at, or its mark read. Its thread alone is any machine thread's.
bool cone_is_known(const Catalog& catalog, const Identification& found) {
  const PortType& leader = catalog.port_type(found.candidates.front().type);
  if (catalog.kind(leader.kind).recognition->cone_angle_degrees == 0.0) return true;
  return std::any_of(found.measured.seen.begin(), found.measured.seen.end(), [&](const Observation& seen) {
    if (const auto* seat = std::get_if<SeatSeen>(&seen)) return seat->shape != SeatShape::none;
    const auto* mark = std::get_if<MarkSeen>(&seen);
    return mark != nullptr && std::find(mark->kinds.begin(), mark->kinds.end(), leader.kind) != mark->kinds.end();
  });
}

/// What is stamped in is seldom wrong: where it and the measuring clash, one of them was misread.
bool mark_speaks_against(const Identification& found) {
  const std::vector<Evidence>& evidence = found.candidates.front().evidence;
  for (std::size_t i = 0; i < evidence.size(); ++i)
    if (std::holds_alternative<MarkSeen>(found.measured.seen[i]) && !evidence[i].agrees) return true;
  return false;
}

void judge(const Catalog& catalog, Identification& found) {
  const Candidate& leader = found.candidates.front();
  for (const Candidate& other : found.candidates) {
    if (&other == &leader || other.confidence < kNamed) continue;
    const bool told_apart = other.confidence < kStillThere || leader.likelihood >= kToldApart * other.likelihood;
    if (!told_apart || leader.confidence < kCertain) found.undecided.push_back(other.type);
  }
  found.certain = leader.confidence >= kCertain && found.undecided.empty() && cone_is_known(catalog, found) &&
                  !mark_speaks_against(found);
}

void keep_nearest(std::vector<Candidate> misses, Identification& found) {
  const auto nearer = [](const Candidate& a, const Candidate& b) { return total_miss(a) < total_miss(b); };
  std::stable_sort(misses.begin(), misses.end(), nearer);
  misses.resize(std::min(misses.size(), kNearest));
  found.nearest = std::move(misses);
}

}  // namespace

double prior(const PortTraits& port, Shelf home) {
  const double own = home == Shelf::inch ? port.common_inch : port.common_metric;
  const double other = home == Shelf::inch ? port.common_metric : port.common_inch;
  return kHomeShelf * own + (1.0 - kHomeShelf) * other;
}

const PortTraits* known_part(const Catalog& catalog, const std::vector<PortTraits>& ports, const Observation& seen) {
  const auto* trial = std::get_if<HandTrial>(&seen);
  if (trial == nullptr) return nullptr;
  const std::optional<PortTypeId> type = measured_as(catalog, trial->known);
  const auto found = std::find_if(ports.begin(), ports.end(), [&](const PortTraits& p) { return p.type == type; });
  return found == ports.end() ? nullptr : &*found;
}

Evidence weigh(const Catalog& catalog, const PortTraits& port, const Observation& seen, Shelf home,
               const PortTraits* known) {
  struct Weigh {
    const Catalog& catalog;
    const PortTraits& port;
    Shelf home;
    const PortTraits* known;
    Evidence operator()(const DiameterReading& reading) const { return weigh_diameter(port, reading); }
    Evidence operator()(const ThreadCount& count) const { return weigh_count(port, count); }
    Evidence operator()(const TaperSeen& taper) const {
      return weigh_yes_no(taper.tapered, port.tapered, kTaperSeen, 1.0 - kTaperSeen);
    }
    Evidence operator()(const WasherSeen& washer) const {
      return weigh_yes_no(washer.there, port.washer, kWasherThere, kWasherElsewhere);
    }
    Evidence operator()(const SwivelSeen& swivel) const {
      return weigh_yes_no(swivel.turns, port.swivel, kSwivelSeen, 1.0 - kSwivelSeen);
    }
    Evidence operator()(const SeatSeen& seat) const { return weigh_seat(port, seat.shape); }
    Evidence operator()(const FlankSeen& flank) const {
      const bool same = port.flank_angle_degrees == flank.degrees;
      return weigh_look(same ? kFlankSeen : 1.0 - kFlankSeen, same);
    }
    Evidence operator()(const MarkSeen& mark) const { return weigh_mark(port, mark); }
    Evidence operator()(const OriginKnown& origin) const { return weigh_origin(port, origin.shelf, home); }
    Evidence operator()(const HandTrial& trial) const { return weigh_trial(catalog, port, trial.turns, known); }
    Evidence operator()(const MaterialSeen& made) const {
      const double share = port.material_share[made.material.row];
      return weigh_look(share, share * static_cast<double>(port.material_share.size()) >= 1.0);
    }
  };
  return std::visit(Weigh{catalog, port, home, known}, seen);
}

Identification identify(const Catalog& catalog, const Measurements& measurements) {
  const std::vector<PortTraits> ports = recognisable_ports(catalog);
  Identification found;
  found.measured = measurements;
  std::vector<Candidate> misses;
  double sum = 0.0;
  for (const PortTraits& port : ports) {
    if (!eligible(port, measurements)) continue;
    Candidate candidate{port.type, 0.0, 1.0, {}};
    for (const Observation& seen : measurements.seen) {
      candidate.evidence.push_back(weigh(catalog, port, seen, measurements.shelf, known_part(catalog, ports, seen)));
      candidate.likelihood *= candidate.evidence.back().likelihood;
    }
    candidate.confidence = candidate.likelihood * prior(port, measurements.shelf);
    sum += candidate.confidence;
    (candidate.confidence > 0.0 ? found.candidates : misses).push_back(std::move(candidate));
  }
  for (Candidate& candidate : found.candidates) candidate.confidence /= sum;
  std::sort(found.candidates.begin(), found.candidates.end(), surer);
  if (found.candidates.empty()) {
    keep_nearest(std::move(misses), found);
    return found;
  }
  name_look_alikes(catalog, ports, found);
  judge(catalog, found);
  return found;
}

}  // namespace riserun::catalog
