// Which further measurement tells most: mutual information of candidate and outcome, outcome by outcome.
#include "catalog/identify/identify.h"

#include <algorithm>
#include <cmath>
#include <initializer_list>

namespace riserun::catalog {

namespace {

constexpr double kWorthAsking = 0.05;   // bits
constexpr double kNegligible = 1e-3;    // confidence below which a candidate is left out of the reckoning
constexpr std::size_t kPartsToTry = 3;  // the leading candidates' own partners
constexpr std::size_t kMostSteps = 2000;

struct Contender {
  const PortTraits* port;
  double confidence;
};

/// What is still in question, and what has been asked already.
struct Inquiry {
  const Catalog& catalog;
  const std::vector<PortTraits>& ports;
  const Measurements& measured;
  std::vector<Contender> contenders;

  template <class Seen>
  bool asked() const {
    return std::any_of(measured.seen.begin(), measured.seen.end(),
                       [](const Observation& seen) { return std::holds_alternative<Seen>(seen); });
  }
};

double entropy_bits(const std::vector<double>& shares) {
  double sum = 0.0;
  double weighted = 0.0;
  for (const double share : shares) {
    if (share <= 0.0) continue;
    sum += share;
    weighted += share * std::log2(share);
  }
  return sum > 0.0 ? std::log2(sum) - weighted / sum : 0.0;
}

/// Probability of each outcome for each contender; densities on a grid become probabilities by their sum.
std::vector<std::vector<double>> chances(const Inquiry& inquiry, const std::vector<Observation>& outcomes) {
  std::vector<std::vector<double>> table(outcomes.size(), std::vector<double>(inquiry.contenders.size()));
  std::vector<double> sums(inquiry.contenders.size());
  for (std::size_t o = 0; o < outcomes.size(); ++o) {
    const PortTraits* known = known_part(inquiry.catalog, inquiry.ports, outcomes[o]);
    for (std::size_t c = 0; c < inquiry.contenders.size(); ++c) {
      table[o][c] =
          weigh(inquiry.catalog, *inquiry.contenders[c].port, outcomes[o], inquiry.measured.shelf, known).likelihood;
      sums[c] += table[o][c];
    }
  }
  for (std::vector<double>& row : table)
    for (std::size_t c = 0; c < row.size(); ++c)
      row[c] = sums[c] > 0.0 ? row[c] / sums[c] : 1.0 / static_cast<double>(outcomes.size());
  return table;
}

double gain_bits(const Inquiry& inquiry, const std::vector<Observation>& outcomes) {
  std::vector<double> before;
  double total = 0.0;
  for (const Contender& contender : inquiry.contenders) {
    before.push_back(contender.confidence);
    total += contender.confidence;
  }
  double left = 0.0;
  for (const std::vector<double>& row : chances(inquiry, outcomes)) {
    std::vector<double> after(row.size());
    double chance = 0.0;
    for (std::size_t c = 0; c < row.size(); ++c) {
      after[c] = row[c] * before[c];
      chance += after[c];
    }
    left += chance / total * entropy_bits(after);
  }
  return entropy_bits(before) - left;
}

std::vector<Observation> diameters(const Inquiry& inquiry, Tool tool, bool inside) {
  double low = 1e9;  // metres
  double high = 0.0;
  for (const Contender& contender : inquiry.contenders) {
    const std::optional<LengthBand>& band = inside ? contender.port->inside : contender.port->outside;
    if (!band) continue;
    low = std::min(low, in_metres(band->low));
    high = std::max(high, in_metres(band->high));
  }
  const double error = in_metres(reading_error(tool));
  std::vector<Observation> outcomes;
  for (double at = low - kImpossible * error; at <= high + kImpossible * error && outcomes.size() < kMostSteps;
       at += 0.5 * error)
    outcomes.emplace_back(DiameterReading{metres(at), tool, inside});
  return outcomes;
}

std::vector<Observation> counts() {
  constexpr double kFewest = 6.0;
  constexpr double kMost = 34.0;
  std::vector<Observation> outcomes;
  for (double threads = kFewest; threads <= kMost; threads += 0.5) outcomes.emplace_back(ThreadCount{threads, {}});
  return outcomes;
}

std::vector<Observation> trials(PortTypeId known) {
  std::vector<Observation> outcomes;
  for (double turns = 0.0; turns <= kMostTurns; turns += 0.5) outcomes.emplace_back(HandTrial{known, turns});
  return outcomes;
}

std::vector<Observation> materials(const Catalog& catalog) {
  std::vector<Observation> outcomes;
  for (std::uint32_t row = 0; row < catalog.materials().size(); ++row)
    outcomes.emplace_back(MaterialSeen{MaterialId{row}});
  return outcomes;
}

/// What a contender's own partner is: of its own kind if there is one.
std::optional<PortTypeId> partner(const Inquiry& inquiry, const PortTraits& port) {
  std::optional<PortTypeId> any;
  for (const Mate& mate : inquiry.catalog.mates(port.type)) {
    const PortType& other = inquiry.catalog.port_type(mate.other);
    if (!inquiry.catalog.kind(other.kind).recognition) continue;
    if (other.kind == port.port.kind) return mate.other;
    if (!any) any = mate.other;
  }
  return any;
}

class Asking {
 public:
  explicit Asking(const Inquiry& inquiry) : inquiry_(inquiry) {}

  void ask(NextMeasurement next, const std::vector<Observation>& outcomes) {
    if (outcomes.empty()) return;
    next.gain_bits = gain_bits(inquiry_, outcomes);
    if (next.gain_bits >= kWorthAsking) asked_.push_back(next);
  }
  /// Most first; what is easier to do stands first in a tie, as it was asked first.
  std::vector<NextMeasurement> ranked() && {
    std::stable_sort(asked_.begin(), asked_.end(),
                     [](const NextMeasurement& a, const NextMeasurement& b) { return a.gain_bits > b.gain_bits; });
    return std::move(asked_);
  }

 private:
  const Inquiry& inquiry_;
  std::vector<NextMeasurement> asked_;
};

void ask_sizes(const Inquiry& inquiry, Asking& asking) {
  const bool inside = inquiry.measured.end == End::female;
  bool measured = false;
  bool by_caliper = false;
  for (const Observation& seen : inquiry.measured.seen)
    if (const auto* reading = std::get_if<DiameterReading>(&seen)) {
      measured = true;
      by_caliper = by_caliper || reading->tool == Tool::caliper;
    }
  if (!measured) asking.ask({Question::diameter, {}, inside}, diameters(inquiry, Tool::tape, inside));
  if (measured && !by_caliper) asking.ask({Question::caliper, {}, inside}, diameters(inquiry, Tool::caliper, inside));
}

void ask_looks(const Inquiry& inquiry, Asking& asking) {
  if (!inquiry.asked<TaperSeen>()) asking.ask({Question::taper, {}}, {TaperSeen{true}, TaperSeen{false}});
  if (!inquiry.asked<SwivelSeen>()) asking.ask({Question::swivel, {}}, {SwivelSeen{true}, SwivelSeen{false}});
  if (!inquiry.asked<WasherSeen>()) asking.ask({Question::washer, {}}, {WasherSeen{true}, WasherSeen{false}});
  if (!inquiry.asked<SeatSeen>())
    asking.ask({Question::seat, {}},
               {SeatSeen{SeatShape::none}, SeatSeen{SeatShape::cone_37}, SeatSeen{SeatShape::cone_45}});
  if (!inquiry.asked<FlankSeen>()) asking.ask({Question::flank, {}}, {FlankSeen{55}, FlankSeen{60}});
}

void ask_trials(const Inquiry& inquiry, Asking& asking) {
  std::vector<PortTypeId> tried;
  for (const Contender& contender : inquiry.contenders) {
    if (tried.size() == kPartsToTry) return;
    const std::optional<PortTypeId> known = partner(inquiry, *contender.port);
    if (!known || std::find(tried.begin(), tried.end(), *known) != tried.end()) continue;
    tried.push_back(*known);
    asking.ask({Question::hand_trial, *known}, trials(*known));
  }
}

}  // namespace

std::vector<NextMeasurement> next_measurements(const Catalog& catalog, const Identification& found) {
  const std::vector<PortTraits> ports = recognisable_ports(catalog);
  Inquiry inquiry{catalog, ports, found.measured, {}};
  for (const Candidate& candidate : found.candidates) {
    if (candidate.confidence < kNegligible) continue;
    const auto traits =
        std::find_if(ports.begin(), ports.end(), [&](const PortTraits& p) { return p.type == candidate.type; });
    if (traits != ports.end()) inquiry.contenders.push_back({&*traits, candidate.confidence});
  }
  Asking asking(inquiry);
  if (inquiry.contenders.size() < 2) return {};
  const bool threaded = found.measured.threaded;
  if (threaded && !inquiry.asked<ThreadCount>()) asking.ask({Question::threads, {}}, counts());
  ask_sizes(inquiry, asking);
  if (threaded) {
    ask_looks(inquiry, asking);
    if (!inquiry.asked<HandTrial>()) ask_trials(inquiry, asking);
  } else if (!inquiry.asked<MaterialSeen>()) {
    asking.ask({Question::material, {}}, materials(catalog));
  }
  if (!inquiry.asked<OriginKnown>())
    asking.ask({Question::origin, {}}, {OriginKnown{Shelf::inch}, OriginKnown{Shelf::metric}});
  return std::move(asking).ranked();
}

}  // namespace riserun::catalog
