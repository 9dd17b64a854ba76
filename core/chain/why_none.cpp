#include "chain/why_none.h"

#include "chain/best_route.h"
#include "chain/cheapest_purchase.h"
#include "chain/reach.h"
#include "chain/wishes.h"

#include <fmt/format.h>

#include <algorithm>

namespace riserun::chain {

namespace {

/// One rule taken off: what is asked then, what to tell the person to do, and why there is none while it stands.
struct Relaxation {
  ChainRequest request;
  std::string mend;
  std::string reason;
};

class WhyNone {
 public:
  WhyNone(const Network& network, const ChainRequest& request)
      : network_(network), catalog_(network.catalog()), request_(request) {}

  NoChain explain();

 private:
  std::vector<Relaxation> relaxations() const;
  void add_held_ends(std::vector<Relaxation>& all) const;
  void add_needs(std::vector<Relaxation>& all) const;
  std::string reason(const std::vector<Relaxation>& mending) const;
  std::optional<std::string> need_without_part() const;
  bool joined_without_rules() const;
  bool nothing_is_sold() const {
    return !request_.not_sold.empty() &&
           std::find(request_.not_sold.begin(), request_.not_sold.end(), false) == request_.not_sold.end();
  }
  std::string purchase(const std::vector<PartId>& parts) const;

  const Network& network_;
  const Catalog& catalog_;
  const ChainRequest& request_;
};

template <class Change>
Relaxation relaxed(const ChainRequest& request, Change change, std::string mend, std::string reason) {
  Relaxation made{request, std::move(mend), std::move(reason)};
  change(made.request);
  return made;
}

void WhyNone::add_held_ends(std::vector<Relaxation>& all) const {
  if (Rules(catalog_, request_).closing() == Closing::none) return;
  const std::string reason =
      "neither end turns, and no chain has a union, a swivel, a hose or another joint that closes without turning";
  all.push_back(relaxed(
      request_, [](ChainRequest& r) { r.from.freedom = Freedom::loose; },
      fmt::format("let {} ({}) turn and move", name_of_first(request_.from), catalog_.written(request_.from.type)),
      reason));
  all.push_back(relaxed(
      request_, [](ChainRequest& r) { r.to.freedom = Freedom::loose; },
      fmt::format("let {} ({}) turn and move", name_of_last(request_.to), catalog_.written(request_.to.type)), reason));
}

void WhyNone::add_needs(std::vector<Relaxation>& all) const {
  for (std::size_t row = 0; row < request_.needs.size(); ++row) {
    const std::string& words = request_.needs[row].words;
    all.push_back(relaxed(
        request_, [&](ChainRequest& r) { r.needs.erase(r.needs.begin() + static_cast<std::ptrdiff_t>(row)); },
        fmt::format("do without the {}", words), fmt::format("no chain between the two ends can hold a {}", words)));
  }
}

std::vector<Relaxation> WhyNone::relaxations() const {
  std::vector<Relaxation> all;
  add_held_ends(all);
  add_needs(all);
  if (request_.most_parts)
    all.push_back(relaxed(
        request_, [](ChainRequest& r) { r.most_parts.reset(); }, "allow more parts",
        fmt::format("every chain takes more than {} part{}", *request_.most_parts,
                    *request_.most_parts == 1 ? "" : "s")));
  if (request_.rating)
    all.push_back(relaxed(
        request_, [](ChainRequest& r) { r.rating.reset(); },
        fmt::format("accept a rating below {:.4g} psi", in_psi(*request_.rating)),
        fmt::format("no chain stands {:.4g} psi in every part", in_psi(*request_.rating))));
  if (request_.smallest_bore)
    all.push_back(relaxed(
        request_, [](ChainRequest& r) { r.smallest_bore.reset(); },
        fmt::format("accept a bore below {:.3g} in", in_inches(*request_.smallest_bore)),
        fmt::format("every chain narrows below {:.3g} in", in_inches(*request_.smallest_bore))));
  if (request_.room)
    all.push_back(relaxed(
        request_, [](ChainRequest& r) { r.room.reset(); },
        fmt::format("make more room round the run than {:.3g} in", in_inches(*request_.room)),
        fmt::format("every chain holds a body that cannot be turned within {:.3g} in of the run",
                    in_inches(*request_.room))));
  if (request_.galvanic == Galvanic::avoid)
    all.push_back(relaxed(
        request_, [](ChainRequest& r) { r.galvanic = Galvanic::warn; },
        "accept metals side by side that should be kept apart, and watch the joint",
        "every chain brings metals together that should be kept apart"));
  if (request_.service == Service::air)
    all.push_back(relaxed(
        request_, [](ChainRequest& r) { r.service = Service::water; },
        "use the chain for water only, never under compressed air",
        "every chain holds a part that must not stand compressed air"));
  if (std::find(request_.banned.begin(), request_.banned.end(), true) != request_.banned.end())
    all.push_back(relaxed(
        request_, [](ChainRequest& r) { r.banned.clear(); }, "allow the parts that are ruled out",
        "every chain takes a part that is ruled out"));
  return all;
}

std::optional<std::string> WhyNone::need_without_part() const {
  const Rules rules(catalog_, request_);
  for (const Need& need : request_.needs) {
    const auto has_two_ports = [&](PartId part) { return catalog_.part(part).ports.size() >= 2; };
    if (std::none_of(need.parts.begin(), need.parts.end(), has_two_ports))
      return fmt::format("a {} has one port only and cannot stand in a chain", need.words);
    const auto may_be_had = [&](PartId part) {
      return has_two_ports(part) && rules.admits(part) && (rules.buyable(part) || request_.bin.count_of(part) > 0);
    };
    if (std::none_of(need.parts.begin(), need.parts.end(), may_be_had))
      return fmt::format("no {} is {} that the other rules allow", need.words,
                         nothing_is_sold() ? "in the bin" : "stocked");
  }
  return std::nullopt;
}

bool WhyNone::joined_without_rules() const {
  ChainRequest bare;
  bare.from = {request_.from.type, {}, Freedom::loose};
  bare.to = {request_.to.type, {}, Freedom::loose};
  bare.special_order = request_.special_order;
  bare.bin = request_.bin;
  bare.not_sold = request_.not_sold;
  return best_route(network_, bare).has_value();
}

std::string WhyNone::reason(const std::vector<Relaxation>& mending) const {
  const std::string from = catalog_.written(request_.from.type);
  const std::string to = catalog_.written(request_.to.type);
  if (const auto need = need_without_part()) return *need;
  if (!joined_without_rules())
    return fmt::format("no run of {}parts {}leads from {} to {}",
                       request_.special_order || nothing_is_sold() ? "" : "stocked ",
                       nothing_is_sold() ? "in the bin " : "", from, to);
  if (mending.empty()) return fmt::format("no chain from {} to {} keeps all the rules at once", from, to);
  if (Rules(catalog_, request_).closing() != Closing::none && request_.needs.empty() &&
      catalog_.mating_rule(request_.from.type, request_.to.type))
    return fmt::format("{} and {} would go straight together, but {}", from, to, mending.front().reason);
  return mending.front().reason;
}

std::string WhyNone::purchase(const std::vector<PartId>& parts) const {
  std::string text;
  Price price;
  for (const PartId id : parts) {
    const catalog::Part& part = catalog_.part(id);
    text += fmt::format("{} {} ({})", text.empty() ? "buy the" : " and the", part.name,
                        catalog_.material(part.material).name);
    price = price + part.price;
  }
  return fmt::format("{}, about ${:.2f}", text, in_dollars(price));
}

NoChain WhyNone::explain() {
  NoChain answer;
  const Rules rules(catalog_, request_);
  GraphExtras extras;
  extras.counted.assign(request_.bin.items.size(), false);
  const RequestGraph graph(network_, rules, extras);
  answer.reachable_from = reachable_from(rules, graph);
  answer.reachable_to = reachable_to(rules, graph);
  // Where parts do lead across, only the two ends themselves can be mistaken for mates.
  if (joined_without_rules())
    answer.look_alikes = look_alike_traps(catalog_, request_, {}, {});
  else
    answer.look_alikes = look_alike_traps(catalog_, request_, answer.reachable_from, answer.reachable_to);
  if (nothing_is_sold()) {
    answer.to_buy = cheapest_purchase(network_, request_);
  } else {
    answer.special_order = completing_special_order(network_, request_);
  }
  if (answer.to_buy.empty())
    if (const auto missing = missing_part(network_, request_)) answer.missing_part = missing->name;
  std::vector<Relaxation> mending = relaxations();
  std::erase_if(mending, [&](const Relaxation& r) { return !best_route(network_, r.request); });
  answer.reason = reason(mending);
  if (!answer.to_buy.empty()) answer.mends.push_back(purchase(answer.to_buy));
  if (answer.special_order)
    answer.mends.push_back(fmt::format("order the {}", catalog_.part(*answer.special_order).name));
  for (const Relaxation& relaxation : mending) answer.mends.push_back(relaxation.mend);
  return answer;
}

}  // namespace

NoChain why_none(const Network& network, const ChainRequest& request) { return WhyNone(network, request).explain(); }

}  // namespace riserun::chain
