// What a refusal calls each rule of a request, and how to be rid of it.
#include "chain/refusal/least_conflict.h"
#include "chain/rules/rules.h"
#include "quantity/write.h"

#include <fmt/format.h>

#include <algorithm>

namespace riserun::chain {

namespace {

// More words to avoid are one rule together, so that all rules fit one set of bits.
constexpr std::size_t kMostAvoidances = 24;
constexpr std::size_t kMostNeeds = 8;

class RequestRules {
 public:
  RequestRules(const Catalog& catalog, const ChainRequest& request) : catalog_(catalog), request_(request) {}

  std::vector<RequestRule> all() {
    add_held_ends();
    add_needs();
    add_counts();
    add_duty();
    add_room_and_metals();
    add_avoided();
    const std::vector<bool>& gone = request_.not_sold;
    if (!gone.empty() && std::find(gone.begin(), gone.end(), false) == gone.end())
      add("bin_only", "only what is in the bin", "no run of what is in the bin does it", "buy what the bin lacks",
          [](ChainRequest& r) { r.not_sold.clear(); });
    else if (!request_.special_order)
      add({"stocked_only",
           "only what stores stock",
           fmt::format("no run of stocked parts leads from {} to {}", catalog_.written(request_.from.type),
                       catalog_.written(request_.to.type)),
           {"take parts that a store must order"},
           false,
           [](ChainRequest& r) { r.special_order = true; },
           {},
           {}});
    return std::move(rules_);
  }

 private:
  void add(RequestRule rule) { rules_.push_back(std::move(rule)); }
  template <class Change>
  void add(std::string key, std::string text, std::string alone, std::string mend, Change change) {
    rules_.push_back({std::move(key), std::move(text), std::move(alone), {std::move(mend)}, false, change, {}, {}});
  }
  void add_held_ends();
  void add_needs();
  void add_counts();
  void add_duty();
  void add_room_and_metals();
  void add_avoided();

  const Catalog& catalog_;
  const ChainRequest& request_;
  std::vector<RequestRule> rules_;
};

void RequestRules::add_held_ends() {
  if (Rules(catalog_, request_).closing() == Closing::none) return;
  const auto let_turn = [&](const std::string& name, const PortEnd& end) {
    return fmt::format("let {} ({}) turn and move", name, catalog_.written(end.type));
  };
  add({"held_ends",
       "both ends held, so that neither turns",
       "neither end turns, and no chain has a union, a swivel, a hose or another joint that closes without turning",
       {let_turn(name_of_first(request_.from), request_.from), let_turn(name_of_last(request_.to), request_.to)},
       true,
       [](ChainRequest& r) { r.from.freedom = Freedom::loose; },
       {},
       {}});
}

void RequestRules::add_needs() {
  const std::size_t count = std::min(request_.needs.size(), kMostNeeds);
  for (std::size_t row = 0; row < count; ++row) {
    const std::string& words = request_.needs[row].words;
    add({"need",
         fmt::format("a {} in it", words),
         fmt::format("no chain between the two ends can hold a {}", words),
         {fmt::format("do without the {}", words)},
         false,
         {},
         row,
         {}});
  }
  if (!request_.needs_in_order || count < 2) return;
  add("order_of_needs", "the needs in the order given", "no chain holds the needs in the order given",
      "let the needs come in any order", [](ChainRequest& r) { r.needs_in_order = false; });
}

std::string no_more_than(int most, const char* one, const char* more) {
  if (most == 0) return fmt::format("no {}", one);
  return most == 1 ? fmt::format("no more than one {}", one) : fmt::format("no more than {} {}", most, more);
}

void RequestRules::add_counts() {
  if (const auto most = request_.most_parts)
    add("most_parts", no_more_than(*most, "part", "parts"),
        fmt::format("every chain takes more than {} part{}", *most, *most == 1 ? "" : "s"), "allow more parts",
        [](ChainRequest& r) { r.most_parts.reset(); });
  if (const auto most = request_.most_bushings)
    add("most_bushings", no_more_than(*most, "bushing", "bushings"),
        fmt::format("every chain takes more than {} bushing{}", *most, *most == 1 ? "" : "s"), "allow more bushings",
        [](ChainRequest& r) { r.most_bushings.reset(); });
}

void RequestRules::add_duty() {
  if (request_.rating) {
    const double psi = in_psi(*request_.rating);
    const char* what = request_.service == Service::air ? " of air" : "";
    add("rating", fmt::format("{:.4g} psi{} in every part", psi, what),
        fmt::format("no chain stands {:.4g} psi{} in every part", psi, what),
        fmt::format("accept a rating below {:.4g} psi", psi), [](ChainRequest& r) { r.rating.reset(); });
  }
  if (request_.hottest) {
    const std::string heat = write_temperature(*request_.hottest, UnitSystem::inch);
    add("hottest", fmt::format("every part proved for {}", heat), fmt::format("no chain is proved for {}", heat),
        fmt::format("keep it cooler than {}", heat), [](ChainRequest& r) { r.hottest.reset(); });
  }
  if (request_.vacuum)
    add("vacuum", "every part proved for vacuum", "no chain is proved for vacuum",
        "make sure that no vacuum can come about", [](ChainRequest& r) { r.vacuum = false; });
}

void RequestRules::add_room_and_metals() {
  if (request_.smallest_bore) {
    const double bore = in_inches(*request_.smallest_bore);
    add("smallest_bore", fmt::format("{} bore everywhere", write_length(*request_.smallest_bore, UnitSystem::inch)),
        fmt::format("every chain narrows below {:.3g} in", bore), fmt::format("accept a bore below {:.3g} in", bore),
        [](ChainRequest& r) { r.smallest_bore.reset(); });
  }
  if (request_.room) {
    const double room = in_inches(*request_.room);
    add("room", fmt::format("{:.3g} in of room round the run", room),
        fmt::format("every chain holds a body that cannot be turned within {:.3g} in of the run", room),
        fmt::format("make more room round the run than {:.3g} in", room), [](ChainRequest& r) { r.room.reset(); });
  }
  if (request_.galvanic == Galvanic::avoid)
    add("galvanic", "no metals side by side that should be kept apart",
        "every chain brings metals together that should be kept apart",
        "accept metals side by side that should be kept apart, and watch the joint",
        [](ChainRequest& r) { r.galvanic = Galvanic::warn; });
  if (request_.service == Service::air)
    add("air", "nothing that compressed air can burst", "every chain holds a part that must not stand compressed air",
        "use the chain for water only, never under compressed air",
        [](ChainRequest& r) { r.service = Service::water; });
}

void RequestRules::add_avoided() {
  std::vector<bool> left = request_.banned;
  const std::size_t named = std::min(request_.avoided.size(), kMostAvoidances);
  for (std::size_t row = 0; row < named; ++row) {
    const Avoidance& avoidance = request_.avoided[row];
    for (const PartId part : avoidance.parts)
      if (part.row < left.size()) left[part.row] = false;
    add({"avoid",
         fmt::format("no {}", avoidance.words),
         fmt::format("every chain takes a {}", avoidance.words),
         {fmt::format("allow {}", avoidance.words)},
         false,
         {},
         {},
         row});
  }
  if (std::find(left.begin(), left.end(), true) == left.end()) return;
  add({"ruled_out",
       "none of the parts that are ruled out",
       "every chain takes a part that is ruled out",
       {"allow the parts that are ruled out"},
       false,
       {},
       {},
       {}});
}

}  // namespace

std::vector<RequestRule> rules_of(const Catalog& catalog, const ChainRequest& request) {
  return RequestRules(catalog, request).all();
}

}  // namespace riserun::chain
