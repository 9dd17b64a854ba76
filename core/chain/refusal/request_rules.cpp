#include "chain/refusal/request_rules.h"

#include "chain/rules/rules.h"

#include <algorithm>
#include <map>
#include <string>
#include <type_traits>

namespace riserun::chain {

namespace {

using quantity::fact;
using quantity::Value;

// More words to avoid are one rule together, so that all rules fit one set of bits.
constexpr std::size_t kMostAvoidances = 24;

/// Codes are literals elsewhere; these are made once, of the rows' own.
std::string_view code_with(const Askable& row, const char* ending) {
  static const std::map<std::string, std::string, std::less<>> kCodes = [] {
    std::map<std::string, std::string, std::less<>> codes;
    for (const Askable& each : askables())
      for (const char* end : {"_alone", "_relief"}) {
        const std::string code = std::string(each.code) + end;
        codes.emplace(code, code);
      }
    return codes;
  }();
  return kCodes.find(std::string(row.code) + ending)->second;
}

/// What a figure of the row says in a sentence; nothing: the row holds none.
std::vector<Value> values_of(const ChainRequest& request, const Askable& row) {
  std::vector<Value> values;
  std::visit(
      [&](auto member) {
        if constexpr (std::is_invocable_v<decltype(member), const RunRules&>) {
          const auto& field = static_cast<const RunRules&>(request).*member;
          if constexpr (requires { field.has_value(); })
            if (field) values.push_back(quantity::value_of(*field));
        }
      },
      row.field);
  return values;
}

class RequestRules {
 public:
  RequestRules(const Catalog& catalog, const ChainRequest& request, const AskedThing& asked)
      : catalog_(catalog), request_(request), asked_(asked) {}

  std::vector<RequestRule> all() {
    for (const Askable& row : askables())
      if (row.of == AskedOf::run && row.relief != Relief::none) add(row);
    return std::move(rules_);
  }

 private:
  void add(const Askable& row);
  void add_held_ends(const Askable& row);
  void add_needs(const Askable& row);
  void add_avoided(const Askable& row);
  void add_ruled_out(const Askable& row);
  void add_stock(const Askable& row);
  void add_field(const Askable& row);
  RequestRule& made(const Askable& row, const std::vector<Value>& values, const Fact& of);
  bool nothing_is_sold() const {
    return !request_.not_sold.empty() &&
           std::find(request_.not_sold.begin(), request_.not_sold.end(), false) == request_.not_sold.end();
  }

  const Catalog& catalog_;
  const ChainRequest& request_;
  const AskedThing& asked_;
  std::vector<RequestRule> rules_;
  std::vector<bool> unnamed_;  // what is ruled out without a name
};

// Why nothing keeps it and what to do tell of what it is asked as well.
RequestRule& RequestRules::made(const Askable& row, const std::vector<Value>& values, const Fact& of) {
  std::vector<Value> more = values;
  more.push_back(quantity::value_of(of));
  std::vector<Value> relief = values;
  relief.push_back(Facts{});  // on no way in particular
  relief.push_back(quantity::value_of(asked_.it));
  RequestRule& rule = rules_.emplace_back();
  rule.row = &row;
  rule.rule = rule_of(row, values);
  rule.alone = alone_of(row, std::move(more));
  rule.reliefs = {relief_of(row, std::move(relief))};
  return rule;
}

// What is not kept in a field of its own has a line here.
void RequestRules::add(const Askable& row) {
  if (row.code == "held_ends") return add_held_ends(row);
  if (row.code == "need") return add_needs(row);
  if (row.code == "avoid") return add_avoided(row);
  if (row.code == "ruled_out") return add_ruled_out(row);
  if (row.code == "bin_only" || row.code == "stocked_only") return add_stock(row);
  if (row.code == "air") {
    if (request_.service == Service::air)
      made(row, {}, asked_.it).give_up = [](ChainRequest& r) {
        r.service = Service::water;
        r.dry = true;
      };
    return;
  }
  add_field(row);
}

void RequestRules::add_field(const Askable& row) {
  if (!is_asked(request_, row)) return;
  if (row.code == "order_of_needs" && request_.needs.size() < 2) return;
  std::vector<Value> values = values_of(request_, row);
  // Of air it is another pressure.
  if (row.code == "rating") values.push_back(request_.service == Service::air ? Facts{fact("of_air")} : Facts{});
  made(row, values, asked_.it).give_up = [&row](ChainRequest& r) { chain::give_up(r, row); };
}

void RequestRules::add_held_ends(const Askable& row) {
  if (Rules(catalog_, request_).closing() == Closing::none) return;
  const bool turns = can_turn(request_.from.freedom) || can_turn(request_.to.freedom);
  RequestRule& rule = made(row, {turns ? Facts{fact("nor_moves")} : Facts{}}, asked_.it);
  rule.give_up = [](ChainRequest& r) { r.from.freedom = Freedom::loose; };
  const auto let_turn = [&](const std::string& name, const PortEnd& end) {
    return relief_of(row, {name, catalog_.written(end.type)});
  };
  rule.reliefs = {let_turn(name_of_first(request_.from), request_.from),
                  let_turn(name_of_last(request_.to), request_.to)};
}

void RequestRules::add_needs(const Askable& row) {
  for (std::size_t need = 0; need < request_.needs.size(); ++need)
    made(row, {request_.needs[need].words}, asked_.with_its_ends).need = need;
}

void RequestRules::add_avoided(const Askable& row) {
  unnamed_ = request_.banned;
  const std::size_t named = std::min(request_.avoided.size(), kMostAvoidances);
  for (std::size_t avoided = 0; avoided < named; ++avoided) {
    for (const PartId part : request_.avoided[avoided].parts)
      if (part.row < unnamed_.size()) unnamed_[part.row] = false;
    made(row, {request_.avoided[avoided].words}, asked_.it).avoided = avoided;
  }
}

void RequestRules::add_ruled_out(const Askable& row) {
  if (std::find(unnamed_.begin(), unnamed_.end(), true) != unnamed_.end()) made(row, {}, asked_.it);
}

void RequestRules::add_stock(const Askable& row) {
  const bool of_bin = row.code == "bin_only";
  if (of_bin != nothing_is_sold() || (!of_bin && request_.special_order)) return;
  RequestRule& rule = made(row, {}, asked_.leads);
  if (of_bin)
    rule.give_up = [](ChainRequest& r) { r.not_sold.clear(); };
  else
    rule.give_up = [](ChainRequest& r) { r.special_order = true; };
}

std::vector<bool> bans_kept(const ChainRequest& request, const std::vector<RequestRule>& rules, RuleSet given_up) {
  std::vector<bool> banned(request.banned.size(), false);
  std::vector<bool> named(request.banned.size(), false);
  const auto mark = [&](const Avoidance& avoidance, std::vector<bool>& list) {
    for (const PartId part : avoidance.parts)
      if (part.row < list.size() && request.banned[part.row]) list[part.row] = true;
  };
  for (const RequestRule& rule : rules)
    if (rule.avoided) mark(request.avoided[*rule.avoided], named);
  for (std::size_t row = 0; row < rules.size(); ++row) {
    if (holds(given_up, row)) continue;
    if (rules[row].avoided) mark(request.avoided[*rules[row].avoided], banned);
    if (rules[row].code() != "ruled_out") continue;
    for (std::size_t part = 0; part < banned.size(); ++part)
      if (request.banned[part] && !named[part]) banned[part] = true;
  }
  return banned;
}

}  // namespace

AskedThing asked_chain(const Catalog& catalog, const ChainRequest& request) {
  return {fact("a_chain"), fact("a_chain_between_ends"),
          fact("from_to", catalog.written(request.from.type), catalog.written(request.to.type))};
}

AskedThing asked_assembly() { return {fact("an_assembly"), fact("an_assembly"), fact("there")}; }

Fact rule_of(const Askable& row, std::vector<Value> values) { return {row.code, std::move(values)}; }
Fact alone_of(const Askable& row, std::vector<Value> values) { return {code_with(row, "_alone"), std::move(values)}; }
Fact relief_of(const Askable& row, std::vector<Value> values) { return {code_with(row, "_relief"), std::move(values)}; }

Value value_said(const WayRules& rules, const Askable& row) {
  Value said;
  std::visit(
      [&](auto member) {
        if constexpr (std::is_invocable_v<decltype(member), const WayRules&>) {
          const auto& field = rules.*member;
          if constexpr (requires { field.has_value(); })
            said = quantity::value_of(*field);
          else if constexpr (std::is_enum_v<std::remove_cvref_t<decltype(field)>>)
            said = std::string(row.choices[static_cast<std::size_t>(field)]);
        }
      },
      row.field);
  return said;
}

std::vector<RequestRule> rules_of(const Catalog& catalog, const ChainRequest& request, const AskedThing& asked) {
  return RequestRules(catalog, request, asked).all();
}

ChainRequest without_but_needs(const ChainRequest& request, const std::vector<RequestRule>& rules, RuleSet given_up) {
  ChainRequest left = request;
  left.banned = bans_kept(request, rules, given_up);
  left.avoided.clear();
  for (std::size_t row = 0; row < rules.size(); ++row)
    if (holds(given_up, row) && rules[row].give_up) rules[row].give_up(left);
  return left;
}

ChainRequest without(const ChainRequest& request, const std::vector<RequestRule>& rules, RuleSet given_up) {
  ChainRequest left = without_but_needs(request, rules, given_up);
  left.needs.clear();
  for (std::size_t row = 0; row < rules.size(); ++row)
    if (rules[row].need && !holds(given_up, row)) left.needs.push_back(request.needs[*rules[row].need]);
  return left;
}

}  // namespace riserun::chain
