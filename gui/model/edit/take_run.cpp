#include "gui/model/edit/take_run.h"

#include "chain/finder.h"
#include "gui/model/edit/parts_in_words.h"
#include "gui/model/edit/places_in_text.h"
#include "report/words/say.h"

#include <fmt/format.h>

#include <algorithm>

namespace riserun::gui {

namespace {

using catalog::Catalog;
using catalog::PartId;
using chain::Chain;
using chain::TakenPart;

constexpr const char* kTake = "take";

const plan::ConnectionPlan* connection_of(const plan::Plan& plan, const std::string& name) {
  for (const plan::ConnectionPlan& connection : plan.connections)
    if (connection.name == name) return &connection;
  return nullptr;
}

/// Asks for runs of one connection, under the rules that its plan has.
class Runs {
 public:
  Runs(const Catalog& catalog, const plan::ConnectionPlan& connection) : finder_(catalog), connection_(connection) {}

  chain::Answer made_of(const std::vector<TakenPart>& parts) const {
    return connection_.span ? finder_.make(connection_.request, *connection_.span, parts)
                            : finder_.make(connection_.request, parts);
  }

  /// The best run that holds the one part, and not the other where that is given.
  std::optional<Chain> best_with(PartId part, std::optional<PartId> without) const {
    chain::ChainRequest request = connection_.request;
    if (request.needs.size() >= chain::kMostNeeds) return std::nullopt;
    request.taken.reset();
    request.needs.push_back({finder_.catalog().part(part).name, {part}});
    request.banned.resize(finder_.catalog().parts().size(), false);
    request.banned[part.row] = false;
    if (without) request.banned[without->row] = true;
    chain::Answer answer = connection_.span ? finder_.find_span(request, *connection_.span) : finder_.find(request);
    Chain* chain = std::get_if<Chain>(&answer);
    return chain != nullptr ? std::optional(std::move(*chain)) : std::nullopt;
  }

  /// As few ports said as will do.
  std::vector<TakenPart> shortest(std::vector<TakenPart> parts) const {
    std::vector<TakenPart> plain = parts;
    for (TakenPart& part : plain) part.through.reset();
    const chain::Answer answer = made_of(plain);
    const bool is_it = std::holds_alternative<Chain>(answer) && taken_parts(std::get<Chain>(answer)) == parts;
    return is_it ? plain : parts;
  }

 private:
  const chain::Finder finder_;
  const plan::ConnectionPlan& connection_;
};

Content content_of(const Catalog& catalog, const std::vector<TakenPart>& parts) {
  Content::List rows;
  for (const TakenPart& taken : parts) {
    const std::string& id = catalog.part(taken.part).id;
    if (taken.through)
      rows.emplace_back(Content::Map{{"part", Content(id)},
                                     {"enter", Content(std::to_string(taken.through->enter + 1))},
                                     {"leave", Content(std::to_string(taken.through->leave + 1))}});
    else
      rows.emplace_back(id);
  }
  return Content(std::move(rows));
}

Edited with_taken(const Bench& bench, const std::string& connection, const Catalog& catalog,
                  const std::vector<TakenPart>& parts) {
  const auto path = path_of_connection(bench.text, connection);
  if (!path) return no_connection(connection);
  return bench.text.set(*path / kTake, content_of(catalog, parts));
}

std::optional<std::vector<TakenPart>> parts_of(const Catalog& catalog, const std::vector<TakenRow>& rows) {
  std::vector<TakenPart> parts;
  for (const TakenRow& row : rows) {
    const auto part = catalog.find_part(row.part);
    if (!part) return std::nullopt;
    parts.push_back({*part});
    if (row.enter > 0 && row.leave > 0)
      parts.back().through =
          TakenPart::Through{static_cast<std::uint8_t>(row.enter - 1), static_cast<std::uint8_t>(row.leave - 1)};
  }
  return parts;
}

CannotEdit no_plan(const std::string& connection) {
  return {fmt::format("'{}' has no plan as the job stands, so nothing can be chosen in it.", connection)};
}

/// The run with the other part in the place of the part, and with as many of its plugs as the other has room for.
std::vector<TakenPart> with_other(const Catalog& catalog, const Chain& chain, std::size_t place, PartId other) {
  std::vector<TakenPart> parts;
  for (std::size_t i = 0; i < chain.parts.size(); ++i) {
    const chain::RunPart& link = chain.parts[i];
    const std::vector<chain::Follower> plugs = link.plugs();
    parts.push_back({i == place ? other : link.part});
    const std::size_t spare = std::max<std::size_t>(2, catalog.part(parts.back().part).ports.size()) - 2;
    for (std::size_t plug = 0; plug < std::min(spare, plugs.size()); ++plug) parts.push_back({plugs[plug].plug});
  }
  return parts;
}

std::ptrdiff_t count_of(const Chain& chain, PartId part) {
  return std::count_if(chain.parts.begin(), chain.parts.end(), [&](const auto& link) { return link.part == part; });
}

}  // namespace

std::vector<TakenRow> rows_of_run(const Catalog& catalog, const Chain& chain) {
  std::vector<TakenRow> rows;
  for (const TakenPart& taken : taken_parts(chain)) {
    rows.push_back({catalog.part(taken.part).id});
    if (!taken.through) continue;
    rows.back().enter = taken.through->enter + 1;
    rows.back().leave = taken.through->leave + 1;
  }
  return rows;
}

Edited take_run(const Bench& bench, const TakeRun& act) {
  const std::shared_ptr<const plan::Plan> plan = bench.plan();
  const plan::ConnectionPlan* connection = plan ? connection_of(*plan, act.connection) : nullptr;
  if (connection == nullptr) return no_plan(act.connection);
  const auto parts = parts_of(*plan->catalog, act.run);
  if (!parts) return CannotEdit{"The catalog has not all parts of this run."};
  const Runs runs(*plan->catalog, *connection);
  const chain::Answer answer = runs.made_of(*parts);
  if (const auto* none = std::get_if<chain::NoChain>(&answer))
    return CannotEdit{
        fmt::format("'{}' cannot have this run: {}", act.connection, report::say(none->reason, plan->job.units))};
  return with_taken(bench, act.connection, *plan->catalog, runs.shortest(taken_parts(std::get<Chain>(answer))));
}

Edited back_to_best(const JobText& text, const BackToBest& act) {
  const auto path = path_of_connection(text, act.connection);
  if (!path) return no_connection(act.connection);
  return text.find(*path / kTake) == nullptr ? Edited(text) : text.remove(*path / kTake);
}

Edited swap_part(const Bench& bench, const SwapPart& act) {
  const std::shared_ptr<const plan::Plan> plan = bench.plan();
  const plan::ConnectionPlan* connection = plan ? connection_of(*plan, act.connection) : nullptr;
  if (connection == nullptr || connection->chain() == nullptr) return no_plan(act.connection);
  const Catalog& catalog = *plan->catalog;
  const Chain& chain = *connection->chain();
  const auto part = catalog.find_part(act.part);
  const auto other = catalog.find_part(act.other);
  const auto link = std::find_if(chain.parts.begin(), chain.parts.end(),
                                 [&](const chain::RunPart& each) { return part && each.part == *part; });
  if (!other || link == chain.parts.end())
    return CannotEdit{fmt::format("'{}' has no {}.", act.connection, title_of(catalog, act.part))};
  const Runs runs(catalog, *connection);
  const auto place = static_cast<std::size_t>(link - chain.parts.begin());
  const chain::Answer answer = runs.made_of(with_other(catalog, chain, place, *other));
  if (const Chain* made = std::get_if<Chain>(&answer))
    return with_taken(bench, act.connection, catalog, runs.shortest(taken_parts(*made)));
  for (const std::optional<PartId> without : {std::optional<PartId>(), part}) {
    const std::optional<Chain> best = runs.best_with(*other, without);
    const bool swapped =
        best && count_of(*best, *other) > count_of(chain, *other) && count_of(*best, *part) < count_of(chain, *part);
    if (swapped) return with_taken(bench, act.connection, catalog, runs.shortest(taken_parts(*best)));
  }
  return CannotEdit{fmt::format("{} cannot take the place of {} in '{}': {}.", title_of(catalog, act.other),
                                title_of(catalog, act.part), act.connection,
                                report::say(std::get<chain::NoChain>(answer).reason, plan->job.units))};
}

std::vector<std::string> taken_ids(const JobText& text, const JobPath& connection) {
  std::vector<std::string> ids;
  const TextNode* list = text.find(connection / kTake);
  if (list == nullptr) return ids;
  for (const TextNode& row : list->children) {
    const TextNode* part = row.is_text() ? &row : row.child("part");
    if (part != nullptr) ids.push_back(part->scalar);
  }
  return ids;
}

}  // namespace riserun::gui
