// The acts that lead the solver to another chain: wishes are looked for, written into the job and proved on its plan.
#include "gui/model/edit/lead.h"
#include "gui/model/edit/parts_in_words.h"

#include <fmt/format.h>

#include <algorithm>

namespace riserun::gui {

namespace {

using catalog::PartId;
using chain::Order;

constexpr int kMostProofs = 8;  // a proof plans the whole job

const char* written(Order order) {
  switch (order) {
    case Order::parts:
      return "parts";
    case Order::price:
      return "price";
    case Order::loss:
      return "loss";
    case Order::length:
      return "length";
    case Order::bin:
      return "bin";
  }
  return "";
}

const plan::ConnectionPlan* connection_of(const plan::Plan& plan, const std::string& name) {
  for (const plan::ConnectionPlan& connection : plan.connections)
    if (connection.name == name) return &connection;
  return nullptr;
}

/// Carries edits out one after the other, and remembers the first that cannot be.
class Steps {
 public:
  explicit Steps(JobText text) : text_(std::move(text)) {}

  template <class Edit>
  void then(Edit edit) {
    if (!good_) return;
    Edited edited = edit(text_);
    good_ = std::holds_alternative<JobText>(edited);
    if (good_) text_ = std::get<JobText>(std::move(edited));
  }
  bool good() const { return good_; }
  const JobText& text() const { return text_; }

 private:
  JobText text_;
  bool good_ = true;
};

std::optional<JobText> with_wishes(const Bench& bench, const std::string& connection, const Lead& lead) {
  const auto row = row_of_connection(bench.text, connection);
  if (!row) return std::nullopt;
  const JobPath path = at("connections") / *row;
  Steps steps(bench.text);
  const auto words = [&](PartId part) { return Content(words_for(bench.catalog, part)); };
  if (lead.order) steps.then([&](const JobText& text) { return text.set(path / "order", written(*lead.order)); });
  for (const PartId part : lead.needs)
    steps.then([&](const JobText& text) { return text.append(path / "need", words(part)); });
  for (const PartId part : lead.avoids)
    steps.then([&](const JobText& text) { return text.append(path / "avoid", words(part)); });
  if (lead.most_parts)
    steps.then([&](const JobText& text) { return text.set(path / "most parts", std::to_string(*lead.most_parts)); });
  return steps.good() ? std::optional(steps.text()) : std::nullopt;
}

/// Looks for wishes after which the plan's chain is as `holds` wants it.
template <class Holds>
std::optional<JobText> proved(const Bench& bench, const plan::Plan& plan, const plan::ConnectionPlan& connection,
                              const PartRow& target, bool may_reorder, Holds holds) {
  const chain::Finder finder(*plan.catalog);
  std::optional<JobText> found;
  int proofs = 0;
  find_lead(finder, connection.request, target, may_reorder, [&](const Lead& lead) {
    if (++proofs > kMostProofs) return true;
    std::optional<JobText> text = with_wishes(bench, connection.name, lead);
    const auto after = text ? bench.plan_of(*text) : nullptr;
    const plan::ConnectionPlan* now = after ? connection_of(*after, connection.name) : nullptr;
    if (now == nullptr || now->chain() == nullptr || !holds(*after->catalog, parts_of(*now->chain()))) return false;
    found = std::move(text);
    return true;
  });
  return found;
}

std::vector<std::string> ids_of(const catalog::Catalog& catalog, const PartRow& row) {
  std::vector<std::string> ids;
  for (const PartId part : row) ids.push_back(catalog.part(part).id);
  return ids;
}

std::optional<PartRow> parts_of_ids(const catalog::Catalog& catalog, const std::vector<std::string>& ids) {
  PartRow row;
  for (const std::string& id : ids) {
    const auto part = catalog.find_part(id);
    if (!part) return std::nullopt;
    row.push_back(*part);
  }
  return row;
}

CannotEdit no_plan(const std::string& connection) {
  return {fmt::format("'{}' has no plan as the job stands, so nothing can be chosen in it.", connection)};
}

}  // namespace

Edited lead_to_alternative(const Bench& bench, const TakeAlternative& act) {
  const std::shared_ptr<const plan::Plan> plan = bench.plan();
  const plan::ConnectionPlan* connection = plan ? connection_of(*plan, act.connection) : nullptr;
  if (connection == nullptr) return no_plan(act.connection);
  const std::optional<PartRow> target = parts_of_ids(*plan->catalog, act.parts);
  if (!target) return CannotEdit{"The catalog has not all parts of this chain."};
  if (connection->chain() != nullptr && parts_of(*connection->chain()) == *target) return bench.text;
  std::optional<JobText> text =
      proved(bench, *plan, *connection, *target, true,
             [&](const catalog::Catalog& catalog, const PartRow& row) { return ids_of(catalog, row) == act.parts; });
  if (text) return std::move(*text);
  return CannotEdit{fmt::format(
      "No wish that a job can hold makes this chain the best one for '{}': no order, and no parts to use or to avoid.",
      act.connection)};
}

Edited lead_to_swap(const Bench& bench, const SwapPart& act) {
  const std::shared_ptr<const plan::Plan> plan = bench.plan();
  const plan::ConnectionPlan* connection = plan ? connection_of(*plan, act.connection) : nullptr;
  if (connection == nullptr || connection->chain() == nullptr) return no_plan(act.connection);
  const auto other = plan->catalog->find_part(act.other);
  const PartRow before = parts_of(*connection->chain());
  const std::vector<std::string> ids = ids_of(*plan->catalog, before);
  const auto place = std::find(ids.begin(), ids.end(), act.part);
  if (!other || place == ids.end())
    return CannotEdit{fmt::format("'{}' has no {}.", act.connection, title_of(*plan->catalog, act.part))};
  PartRow target = before;
  target[static_cast<std::size_t>(place - ids.begin())] = *other;
  const auto how_many = [](const std::vector<std::string>& all, const std::string& id) {
    return std::count(all.begin(), all.end(), id);
  };
  const auto swapped = [&](const catalog::Catalog& catalog, const PartRow& row) {
    const std::vector<std::string> now = ids_of(catalog, row);
    return how_many(now, act.other) > how_many(ids, act.other) && how_many(now, act.part) < how_many(ids, act.part);
  };
  if (auto text = proved(bench, *plan, *connection, target, false, swapped)) return std::move(*text);
  const PartId part = before[static_cast<std::size_t>(place - ids.begin())];
  for (const Lead& lead : {Lead{{}, {*other}, {}, {}}, Lead{{}, {*other}, {part}, {}}}) {
    std::optional<JobText> text = with_wishes(bench, act.connection, lead);
    const auto after = text ? bench.plan_of(*text) : nullptr;
    const plan::ConnectionPlan* now = after ? connection_of(*after, act.connection) : nullptr;
    if (now != nullptr && now->chain() != nullptr && swapped(*after->catalog, parts_of(*now->chain())))
      return std::move(*text);
  }
  return CannotEdit{fmt::format("{} cannot take the place of {} in '{}': no chain that can be screwed together has it.",
                                title_of(*plan->catalog, act.other), title_of(*plan->catalog, act.part),
                                act.connection)};
}

}  // namespace riserun::gui
