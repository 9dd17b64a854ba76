// catalog/joints.yaml: which ends go together and which only look as if they did.
#include "catalog/load/loading.h"

#include <algorithm>
#include <tuple>

namespace riserun::catalog {

namespace {

struct KindEnd {
  KindId kind;
  End end = End::neither;
};

/// `npt male`
std::optional<KindEnd> read_kind_end(Loading& loading, const Value& value) {
  const std::optional<std::string_view> text = read_text(value, loading.problems);
  if (!text) return std::nullopt;
  const std::size_t blank = text->rfind(' ');  // the last one: a kind's name may hold blanks, an end has none
  if (blank == std::string_view::npos) {
    loading.problems.add(value, value.path() + ": a kind and its end are expected, as in 'npt male'");
    return std::nullopt;
  }
  const std::optional<KindId> kind = named_kind(loading, value, text->substr(0, blank));
  const std::optional<End> end = named_end(loading, value, text->substr(blank + 1));
  if (!kind || !end || !check_end(loading, value, *kind, *end)) return std::nullopt;
  return KindEnd{*kind, *end};
}

std::vector<std::pair<SizeId, SizeId>> read_size_pairs(Loading& loading, const Value& list, KindId a, KindId b) {
  std::vector<std::pair<SizeId, SizeId>> pairs;
  if (!list.exists()) return pairs;
  for (const Value& pair : read_list(list, loading.problems)) {
    const std::vector<Value> two = read_list(pair, loading.problems);
    if (two.size() != 2 || !two[0].is_text() || !two[1].is_text()) {
      loading.problems.add(pair, pair.path() + ": two sizes are expected, as in [1/2, 5/8]");
      continue;
    }
    const auto first = size_of_kind(loading, two[0], a, two[0].text());
    const auto second = size_of_kind(loading, two[1], b, two[1].text());
    if (first && second) pairs.emplace_back(*first, *second);
  }
  if (list.is_list() && list.size() == 0) loading.problems.add(list, list.path() + ": an empty list joins nothing");
  return pairs;
}

void check_seal(Loading& loading, const Value& value, std::string_view name) {
  if (name.empty() || name == "none" || loading.so_far().seal(name)) return;
  std::vector<std::string_view> known = {"none"};
  for (const Seal& seal : loading.so_far().seals()) known.push_back(seal.name);
  loading.problems.add(value, value.path() + ": unknown seal '" + std::string(name) + "'" + did_you_mean(name, known));
}

}  // namespace

void load_mating_rule(Loading& loading, const Value& value) {
  Fields fields(
      value,
      {"a", "b", "sizes", "seal", "turns", "comes apart", "closing", "lengthwise", "bowed in", "end bows", "source"},
      loading.problems);
  if (!fields.valid()) return;
  MatingRule rule;
  const std::optional<KindEnd> a = read_kind_end(loading, fields.need("a"));
  const std::optional<KindEnd> b = read_kind_end(loading, fields.need("b"));
  rule.seal = fields.need_text("seal");
  check_seal(loading, value["seal"], rule.seal);
  const auto turning =
      fields.choice<Turning>(fields.need("turns"), {{"either", Turning::either}, {"neither", Turning::neither}});
  rule.turning = turning.value_or(Turning::either);
  rule.comes_apart = fields.flag_or("comes apart", true);
  rule.closing = fields.flag_or("closing", false);
  rule.lengthwise = fields.flag_or("lengthwise", false);
  rule.bowed = fields.flag_or("bowed in", false);
  rule.end_bows = fields.flag_or("end bows", true);
  rule.source = fields.need_text("source");
  if (rule.closing && turning == Turning::either)
    loading.problems.add(value["closing"],
                         value["closing"].path() + ": a closing joint turns neither side ('turns: neither')");
  const Value sizes = fields.find("sizes");
  if (!a || !b) return;
  rule.kind_a = a->kind;
  rule.end_a = a->end;
  rule.kind_b = b->kind;
  rule.end_b = b->end;
  rule.sizes = read_size_pairs(loading, sizes, a->kind, b->kind);
  if (rule.seal == "none") rule.seal.clear();
  loading.builder.add(std::move(rule));
  loading.rule_places.push_back(value);
}

namespace {

/// `kinds: [npt, bspt]`: all ends of the two.
bool read_kinds(Loading& loading, const Value& value, LookAlike& pair) {
  const std::vector<Value> kinds = read_list(value, loading.problems);
  if (kinds.size() != 2) {
    if (value.is_list()) loading.problems.add(value, value.path() + ": two kinds are expected");
    return false;
  }
  const auto a = named_kind(loading, kinds[0], read_text(kinds[0], loading.problems).value_or(""));
  const auto b = named_kind(loading, kinds[1], read_text(kinds[1], loading.problems).value_or(""));
  if (a && b) std::tie(pair.kind_a, pair.kind_b) = std::pair(*a, *b);
  return a && b;
}

/// `a: npsm male`, `b: npt female`: these two ends.
bool read_ends(Loading& loading, Fields& fields, LookAlike& pair) {
  const std::optional<KindEnd> a = read_kind_end(loading, fields.need("a"));
  const std::optional<KindEnd> b = read_kind_end(loading, fields.need("b"));
  if (!a || !b) return false;
  std::tie(pair.kind_a, pair.kind_b) = std::pair(a->kind, b->kind);
  pair.end_a = a->end;
  pair.end_b = b->end;
  return true;
}

}  // namespace

void load_look_alike(Loading& loading, const Value& value) {
  Fields fields(value, {"kinds", "a", "b", "sizes", "reason", "source"}, loading.problems);
  if (!fields.valid()) return;
  LookAlike pair;
  pair.reason = fields.need_text("reason");
  pair.source = fields.need_text("source");
  const Value kinds = fields.find("kinds");
  const bool has_ends = value["a"].exists() || value["b"].exists();
  if (kinds.exists() == has_ends) {
    loading.problems.add(value, value.path() + ": either 'kinds', or 'a' and 'b' are expected");
    return;
  }
  if (!(has_ends ? read_ends(loading, fields, pair) : read_kinds(loading, kinds, pair))) return;
  pair.sizes = read_size_pairs(loading, fields.find("sizes"), pair.kind_a, pair.kind_b);
  loading.builder.add(std::move(pair));
  loading.look_alike_places.push_back(value);
}

void check_joints_of(const Catalog& catalog, const Loading& loading, Problems& problems) {
  // Asked of the finished catalog, port type by port type, and not of the rules: only there is it settled which of
  // several rules joins two ends, and which sizes there are at all.
  std::vector<bool> rule_used(catalog.mating_rules().size(), false);
  for (std::uint32_t row = 0; row < catalog.port_types().size(); ++row) {
    for (const Mate& mate : catalog.mates(PortTypeId{row})) {
      rule_used[mate.rule] = true;
      const LookAlike* trap = catalog.look_alike(catalog.port_type(PortTypeId{row}), catalog.port_type(mate.other));
      if (trap == nullptr || row > mate.other.row) continue;
      const auto trap_row = static_cast<std::size_t>(trap - catalog.look_alikes().data());
      problems.add(loading.look_alike_places[trap_row],
                   loading.look_alike_places[trap_row].path() + ": a mating rule joins " +
                       catalog.written(PortTypeId{row}) + " and " + catalog.written(mate.other));
    }
  }
  for (std::size_t row = 0; row < rule_used.size(); ++row)
    if (!rule_used[row])
      problems.add(
          loading.rule_places[row],
          loading.rule_places[row].path() + ": the rule joins no size of the two kinds that no earlier rule joins");
  std::vector<bool> seen(catalog.port_types().size(), false);
  for (std::size_t row = 0; row < loading.part_places.size(); ++row) {
    for (const Port& port : catalog.parts()[row].ports) {
      if (seen[port.type.row] || !catalog.mates(port.type).empty()) continue;
      seen[port.type.row] = true;
      problems.add(loading.part_places[row], loading.part_places[row].path() + ": nothing mates with " +
                                                 catalog.written(port.type) + " of the part '" +
                                                 catalog.parts()[row].id + "'");
    }
  }
}

}  // namespace riserun::catalog
