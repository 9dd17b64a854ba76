#include "cli/asked_options.h"

#include "chain/ask/needs.h"

#include <CLI/CLI.hpp>
#include <fmt/format.h>

namespace riserun::cli {

namespace {

using chain::askable;
using chain::Askable;
using chain::AskedKind;
using chain::AskedOf;
using chain::Freedom;

std::string option_of(const Askable& row) { return std::string(row.option); }

bool is_option_of_a_run(const Askable& row) { return !row.option.empty() && row.of != AskedOf::branch; }

Freedom freedom(const AskedOptions& options, const char* end, WordReader& words) {
  if (options.has("held_ends")) return Freedom::fixed;
  const Askable& row = askable(end);
  if (!options.has(row.code)) return Freedom::loose;
  return static_cast<Freedom>(words.choice(option_of(row), options.text(row.code), row.choices));
}

void read_parts(const AskedOptions& options, const catalog::Catalog& catalog, WordReader& words,
                chain::ChainRequest& request) {
  const Askable& need = askable("need");
  for (const std::string& text : options.list(need.code))
    request.needs.push_back({text, words.parts(catalog, option_of(need), text)});
  refuse_too_many(need, options.list(need.code), chain::kMostNeeds, words);
  const Askable& avoid = askable("avoid");
  request.banned.assign(options.list(avoid.code).empty() ? 0 : catalog.parts().size(), false);
  for (const std::string& text : options.list(avoid.code)) {
    request.avoided.push_back(words.avoidance(catalog, option_of(avoid), text));
    for (const catalog::PartId part : request.avoided.back().parts) request.banned[part.row] = true;
  }
}

/// The rows that keep their value in a field of their own.
template <class Rules>
void read_fields(const AskedOptions& options, AskedOf of, WordReader& words, Rules& rules) {
  for (const Askable& row : chain::askables()) {
    if (row.of != of || std::holds_alternative<std::monostate>(row.field) || !options.has(row.code)) continue;
    if constexpr (std::is_base_of_v<chain::RunRules, Rules>) {
      if (row.kind == AskedKind::yes_no) chain::choose(rules, row, 1);
      if (row.kind == AskedKind::choice)
        chain::choose(rules, row, words.choice(option_of(row), options.text(row.code), row.choices));
      if (row.kind == AskedKind::yes_no || row.kind == AskedKind::choice) continue;
    }
    const std::string& text = options.text(row.code);
    if (const auto wrong = chain::read_into(rules, row, words.written(text)))
      words.add(option_of(row), text, wrong->message, wrong->offset);
  }
}

}  // namespace

bool AskedOptions::has(std::string_view code) const {
  const auto flag = flags.find(code);
  return (flag != flags.end() && flag->second) || !text(code).empty() || !list(code).empty();
}

const std::string& AskedOptions::text(std::string_view code) const {
  static const std::string kNone;
  const auto found = texts.find(code);
  return found == texts.end() ? kNone : found->second;
}

const std::vector<std::string>& AskedOptions::list(std::string_view code) const {
  static const std::vector<std::string> kNone;
  const auto found = lists.find(code);
  return found == lists.end() ? kNone : found->second;
}

void add_asked_options(CLI::App& verb, AskedOptions& options) {
  for (const Askable& row : chain::askables()) {
    if (!is_option_of_a_run(row)) continue;
    const std::string help(row.help);
    if (row.flag)
      verb.add_flag(option_of(row), options.flags[row.code], help);
    else if (row.kind == AskedKind::parts)
      verb.add_option(option_of(row), options.lists[row.code], help)->allow_extra_args(false);
    else
      verb.add_option(option_of(row), options.texts[row.code], help);
  }
  CLI::Option* held = verb.get_option(option_of(askable("held_ends")));
  for (const char* end : {"first_end", "last_end"}) verb.get_option(option_of(askable(end)))->excludes(held);
}

chain::ChainRequest read_request(const AskedOptions& options, const Stock& stock, WordReader& words) {
  chain::ChainRequest request;
  request.from.freedom = freedom(options, "first_end", words);
  request.to.freedom = freedom(options, "last_end", words);
  const Askable& order = askable("order");
  request.order = static_cast<chain::Order>(words.choice(option_of(order), options.text(order.code), order.choices));
  read_parts(options, *stock.catalog, words, request);
  request.most_bushings = chain::kUsualMostBushings;
  read_fields(options, AskedOf::run, words, request);
  request.needs = chain::told_apart(chain::as_meant(*stock.catalog, std::move(request.needs), request.vacuum),
                                    request.needs_in_order);
  request.service = options.has("air") ? chain::Service::air : chain::Service::water;
  if (const auto flow = words.quantity(option_of(askable("flow")), options.text("flow"), &quantity::read_volume_flow))
    request.flow = *flow;
  request.bin = stock.bin;
  if (options.has("bin_only") && stock.bin.items.empty())
    words.add(option_of(askable("bin_only")), "", "there is nothing in the bin; --bin names a file of what there is",
              0);
  if (options.has("bin_only")) request.not_sold.assign(stock.catalog->parts().size(), true);
  return request;
}

std::optional<chain::Span> read_span(const AskedOptions& options, WordReader& words, chain::ChainRequest& request) {
  chain::Span span;
  read_fields(options, AskedOf::distance, words, span);
  const bool asked = options.has("distance");
  if (!asked && options.has("offset"))
    words.add("--offset", options.text("offset"), "asks for --span too: the distance between the faces, along the axes",
              0);
  if (!options.has("offset") && options.has("roll"))
    words.add("--roll", options.text("roll"),
              "asks for --offset too: it is the second offset, at right angles to the first", 0);
  if (!asked) return std::nullopt;
  if (!options.has("first_end")) request.from.freedom = Freedom::fixed;
  if (!options.has("last_end")) request.to.freedom = Freedom::fixed;
  return span;
}

void refuse_options_of_one_run(const AskedOptions& options, WordReader& words) {
  for (const Askable& row : chain::askables()) {
    if (!is_option_of_a_run(row) || !row.one_run || !options.has(row.code)) continue;
    if (row.code == "order_of_needs")
      words.add(option_of(row), "",
                "is for a chain between two ports: an assembly branches, so its needs have no one order; "
                "--branch-in-order puts those of one branch in order",
                0);
    else
      words.add(option_of(row), options.text(row.code), "is for a chain between two ports, not for a branched assembly",
                0);
  }
  const Askable& order = askable("order");
  const std::string& text = options.text(order.code);
  const auto known = [&](std::span<const std::string_view> choices) {
    return std::find(choices.begin(), choices.end(), text) != choices.end();
  };
  if (known(order.choices) && !known(order.branch_choices))
    words.add(option_of(order), text,
              fmt::format("a branched assembly has no one length and no one loss; allowed: {}",
                          fmt::join(order.branch_choices, ", ")),
              0);
}

void refuse_too_many(const Askable& row, const std::vector<std::string>& texts, std::size_t most, WordReader& words) {
  if (texts.size() > most)
    words.add(option_of(row), texts[most],
              fmt::format("{} things are asked for; allowed are at most {}", texts.size(), most), 0);
}

}  // namespace riserun::cli
