#include "chain/ask/assembly.h"
#include "chain/ask/spares.h"
#include "chain/finder.h"
#include "cli/branch_options.h"
#include "cli/inputs.h"
#include "report/json/plan_json.h"
#include "report/text/assembly_text.h"
#include "report/text/chain_text.h"
#include "report/text/spares_text.h"

#include <CLI/CLI.hpp>
#include <fmt/format.h>

#include <ostream>

namespace riserun::cli {

namespace {

struct ChainOptions {
  std::vector<std::string> ports;
  bool held = false;
  std::string first_end;
  std::string last_end;
  std::string order;
  std::vector<std::string> needs;
  std::vector<std::string> avoid;
  std::string rating;
  std::string smallest_bore;
  std::string room;
  bool from_bin = false;
  std::string flow;
  std::string galvanic;
  std::string most_parts;
  std::string most_bushings;
  std::string hottest;
  std::string alternatives;
  std::string span;
  std::string offset;
  std::string roll;
  std::string valve_stays;
  bool spares = false;
  bool air = false;
  bool vacuum = false;
  bool in_order = false;
  bool special_order = false;
  BranchOptions branches;
};

const std::vector<std::string> kOrders = {"parts", "price", "loss", "length", "bin"};
const std::vector<std::string> kFreedoms = {"loose", "spinning", "sliding", "fixed"};
const std::vector<std::string> kPorts = {"first", "last"};
const std::vector<std::string> kGalvanic = {"warn", "avoid"};

chain::Freedom freedom(WordReader& words, const std::string& option, const std::string& text) {
  using chain::Freedom;
  static constexpr Freedom kMeaning[] = {Freedom::loose, Freedom::spinning, Freedom::sliding, Freedom::fixed};
  return kMeaning[words.choice(option, text, kFreedoms)];
}

chain::Order order(WordReader& words, const std::string& text) {
  using chain::Order;
  static constexpr Order kMeaning[] = {Order::parts, Order::price, Order::loss, Order::length, Order::bin};
  return kMeaning[words.choice("--order", text, kOrders)];
}

quantity::Reading<Temperature> read_hottest(std::string_view text) {
  const quantity::Range<Temperature> range{degrees_fahrenheit(32.0), degrees_fahrenheit(500.0)};
  return quantity::within(quantity::read_temperature(text), range, text);
}

quantity::Reading<int> read_rows(std::string_view text) {
  quantity::Reading<int> reading = quantity::read_count(text);
  const int* rows = std::get_if<int>(&reading);
  if (rows && *rows < 1) return quantity::ReadError{"at least 1 is wanted: the best chain", 0};
  return reading;
}

quantity::Reading<Length> read_distance(std::string_view text) {
  return quantity::within(quantity::read_length(text), quantity::Range<Length>{Length{}, feet(60.0)}, text);
}

/// The distance between the two ports; nullopt: none is asked for. Ports with a distance between them stand still
/// unless it is said how they move.
std::optional<chain::Span> span_from(const ChainOptions& options, WordReader& words, chain::ChainRequest& request) {
  chain::Span span;
  const auto along = words.quantity("--span", options.span, &read_distance);
  span.offset = words.quantity("--offset", options.offset, &read_distance).value_or(Length{});
  span.roll = words.quantity("--roll", options.roll, &read_distance).value_or(Length{});
  if (options.span.empty() && !options.offset.empty())
    words.add("--offset", options.offset, "asks for --span too: the distance between the faces, along the axes", 0);
  if (options.offset.empty() && !options.roll.empty())
    words.add("--roll", options.roll, "asks for --offset too: it is the second offset, at right angles to the first",
              0);
  if (!options.span.empty() && !options.alternatives.empty())
    words.add("--alternatives", options.alternatives, "does not go with --span, which has one best answer", 0);
  if (!along) return std::nullopt;
  span.along = *along;
  if (options.first_end.empty()) request.from.freedom = chain::Freedom::fixed;
  if (options.last_end.empty()) request.to.freedom = chain::Freedom::fixed;
  return span;
}

/// The port that the valve is to stay on, and what does not go with that.
std::optional<chain::ReservoirEnd> valve_stays_from(const ChainOptions& options, const catalog::Catalog& catalog,
                                                    const chain::ChainRequest& request, WordReader& words) {
  if (options.valve_stays.empty()) return std::nullopt;
  const std::string& text = options.valve_stays;
  const auto end =
      words.choice("--valve-stays", text, kPorts) == 0 ? chain::ReservoirEnd::first : chain::ReservoirEnd::last;
  for (const auto& [given, other] : {std::pair(!options.span.empty(), "--span"), std::pair(options.spares, "--spares"),
                                     std::pair(!options.alternatives.empty(), "--alternatives")})
    if (given) words.add("--valve-stays", text, fmt::format("does not go with {}", other), 0);
  if (chain::valve_needs(catalog, request).empty())
    words.add("--valve-stays", text, "asks for a valve that shuts: --need \"ball valve\"", 0);
  else if (request.needs.size() >= chain::kMostNeedsInTurn)
    words.add("--valve-stays", text, fmt::format("goes with at most {} needs", chain::kMostNeedsInTurn - 1), 0);
  else if (!chain::can_weigh_valve_sides(catalog, request, end))
    words.add("--valve-stays", text,
              "cannot be weighed where one part may meet two needs, or a need and the union's, or where both fittings "
              "and devices may meet a need: name them more closely, or give their order, the union among them, with "
              "--in-order",
              0);
  return end;
}

/// What is asked, and how many chains are wanted; none given: the best alone.
struct Question {
  chain::ChainRequest request;
  std::optional<int> rows;
  std::optional<chain::Span> span;
  std::optional<chain::ReservoirEnd> valve_stays;
};

Question question_from(const ChainOptions& options, const Stock& stock) {
  const catalog::Catalog& catalog = *stock.catalog;
  WordReader words;
  Question question;
  chain::ChainRequest& request = question.request;
  request.from.type = words.port(catalog, options.ports[0]);
  request.to.type = words.port(catalog, options.ports[1]);
  // More than two: read again where they are used, but what is wrong with them is said with the rest.
  for (std::size_t i = 2; i < options.ports.size(); ++i) words.port(catalog, options.ports[i]);
  request.from.freedom = options.held ? chain::Freedom::fixed : freedom(words, "--first-end", options.first_end);
  request.to.freedom = options.held ? chain::Freedom::fixed : freedom(words, "--last-end", options.last_end);
  request.order = order(words, options.order);
  for (const std::string& need : options.needs) request.needs.push_back({need, words.parts(catalog, "--need", need)});
  request.banned.assign(options.avoid.empty() ? 0 : catalog.parts().size(), false);
  for (const std::string& avoid : options.avoid) {
    request.avoided.push_back(words.avoidance(catalog, "--avoid", avoid));
    for (const catalog::PartId part : request.avoided.back().parts) request.banned[part.row] = true;
  }
  request.needs_in_order = options.in_order;
  request.vacuum = options.vacuum;
  request.hottest = words.quantity("--hottest", options.hottest, &read_hottest);
  const auto bushings = words.quantity("--most-bushings", options.most_bushings, &quantity::read_count);
  request.most_bushings = bushings.value_or(chain::kUsualMostBushings);
  request.service = options.air ? chain::Service::air : chain::Service::water;
  request.rating = words.quantity("--rating", options.rating, &quantity::read_pressure);
  request.smallest_bore = words.quantity("--bore", options.smallest_bore, &quantity::read_length);
  request.room = words.quantity("--room", options.room, &quantity::read_length);
  request.galvanic =
      words.choice("--galvanic", options.galvanic, kGalvanic) == 1 ? chain::Galvanic::avoid : chain::Galvanic::warn;
  request.special_order = options.special_order;
  request.most_parts = words.quantity("--most-parts", options.most_parts, &quantity::read_count);
  if (const auto flow = words.quantity("--flow", options.flow, &quantity::read_volume_flow)) request.flow = *flow;
  request.bin = stock.bin;
  if (options.from_bin) request.not_sold.assign(catalog.parts().size(), true);
  question.span = span_from(options, words, request);
  if (question.span && options.spares)
    words.add("--spares", "", "is not for a run that makes a distance: a stand-in would have to make it too", 0);
  question.valve_stays = valve_stays_from(options, catalog, request, words);
  question.rows = words.quantity("--alternatives", options.alternatives, &read_rows);
  words.finish();
  return question;
}

std::string heading_of(const Stock& stock, const chain::ChainRequest& request) {
  return fmt::format("From {} to {}\n", stock.catalog->written(request.from.type),
                     stock.catalog->written(request.to.type));
}

std::optional<chain::Spares> spares_of(bool wanted, const chain::Finder& finder, const chain::ChainRequest& request,
                                       const chain::Chain* chain) {
  if (!wanted || chain == nullptr) return std::nullopt;
  return finder.least_spares({{request, *chain}});
}

void print_spares(const Stock& stock, const std::optional<chain::Spares>& spares, const Session& session) {
  if (spares) session.out << report::spares_text(*stock.catalog, *spares, {});
}

void print_alternatives(const Stock& stock, const chain::ChainRequest& request, const chain::Finder& finder,
                        const std::vector<chain::Alternative>& rows, bool with_spares, const Session& session) {
  const auto spares = spares_of(with_spares, finder, request, &rows.front().chain);
  const std::vector<chain::Substitute> substitutes = finder.substitutes(request, rows.front().chain);
  if (session.common.json) {
    session.out << report::alternatives_json(*stock.catalog, request, rows, substitutes, spares ? &*spares : nullptr);
    return;
  }
  session.out << heading_of(stock, request)
              << report::alternatives_text(*stock.catalog, request, rows, substitutes, session.style(UnitSystem::inch));
  print_spares(stock, spares, session);
}

// Options that say something of one run between two ends say nothing of an assembly.
void refuse_what_is_for_two_ports(const ChainOptions& options) {
  WordReader words;
  const auto refuse = [&](const std::string& option, const std::string& text) {
    if (!text.empty()) words.add(option, text, "is for a chain between two ports, not for a branched assembly", 0);
  };
  refuse("--first-end", options.first_end);
  refuse("--last-end", options.last_end);
  refuse("--flow", options.flow);
  refuse("--most-parts", options.most_parts);
  refuse("--alternatives", options.alternatives);
  if (options.in_order)
    words.add("--in-order", "",
              "is for a chain between two ports: an assembly branches, so its needs have no one order; "
              "--branch-in-order puts those of one branch in order",
              0);
  refuse("--span", options.span);
  refuse("--valve-stays", options.valve_stays);
  refuse("--spares", options.spares ? "yes" : "");
  if (options.order == "length" || options.order == "loss")
    words.add("--order", options.order,
              "a branched assembly has no one length and no one loss; allowed: parts, price, bin", 0);
  words.finish();
}

void refuse_what_is_for_branches(const ChainOptions& options) {
  WordReader words;
  refuse_branch_options(options.branches, words);
  words.finish();
}

int run_assembly(const ChainOptions& options, const Session& session) {
  refuse_what_is_for_two_ports(options);
  const Stock stock = load_stock(session.common);
  chain::AssemblyRequest request;
  request.rules = question_from(options, stock).request;
  if (options.most_bushings.empty()) request.rules.most_bushings.reset();  // of all branches together, if asked for
  WordReader words;
  for (std::size_t i = 1; i < options.ports.size(); ++i)
    request.targets.push_back({words.port(*stock.catalog, options.ports[i]), {}, request.rules.from.freedom, {}});
  request.branches = read_branch_options(options.branches, stock, request.targets.size(), words);
  words.finish();
  const chain::AssemblyAnswer answer = chain::find_assembly(*stock.catalog, request);
  if (session.common.json) {
    session.out << report::assembly_json(*stock.catalog, request, answer);
  } else {
    session.out << fmt::format("From {} to", stock.catalog->written(request.rules.from.type));
    for (std::size_t i = 0; i < request.targets.size(); ++i)
      session.out << (i ? ", " : " ") << stock.catalog->written(request.targets[i].type);
    session.out << '\n' << report::assembly_text(*stock.catalog, request, answer, session.style(UnitSystem::inch));
  }
  return std::holds_alternative<chain::Assembly>(answer) ? kDone : kNoSolution;
}

/// The best that leaves the valve on its port, or why there is none.
chain::Answer with_valve_left(const chain::Finder& finder, const catalog::Catalog& catalog,
                              const chain::ChainRequest& request, chain::ReservoirEnd end, chain::Answer answer) {
  if (std::holds_alternative<chain::NoChain>(answer)) return answer;
  if (auto left = finder.best_with_valve_left(request, end)) return std::move(*left);
  chain::NoChain none;
  none.reason = fmt::format("no chain has the {} beyond the valve, seen from the {} port",
                            chain::opening_beyond_valve(catalog, request, end),
                            end == chain::ReservoirEnd::first ? "first" : "last");
  none.mends.push_back("leave --valve-stays out: the valve then comes off with the run when it is opened");
  return none;
}

int run_chain(const ChainOptions& options, const Session& session) {
  if (options.ports.size() > 2) return run_assembly(options, session);
  refuse_what_is_for_branches(options);
  const Stock stock = load_stock(session.common);
  const auto [request, most_rows, span, valve_stays] = question_from(options, stock);
  const chain::Finder finder(*stock.catalog);
  if (most_rows) {
    const auto rows = finder.alternatives(request, static_cast<std::size_t>(*most_rows));
    if (!rows.empty()) {
      print_alternatives(stock, request, finder, rows, options.spares, session);
      return kDone;
    }
  }
  chain::Answer answer = span ? finder.find_span(request, *span) : finder.find(request);
  if (valve_stays) answer = with_valve_left(finder, *stock.catalog, request, *valve_stays, std::move(answer));
  const auto* found = std::get_if<chain::Chain>(&answer);
  const auto spares = spares_of(options.spares, finder, request, found);
  if (session.common.json) {
    session.out << report::chain_json(*stock.catalog, request, answer, spares ? &*spares : nullptr);
  } else {
    session.out << heading_of(stock, request)
                << report::chain_text(*stock.catalog, request, answer, session.style(UnitSystem::inch));
    print_spares(stock, spares, session);
  }
  return found ? kDone : kNoSolution;
}

}  // namespace

void add_chain_verb(CLI::App& app, Session& session) {
  const auto options = std::make_shared<ChainOptions>();
  CLI::App* verb = app.add_subcommand("chain", "Parts that join two open ports, and the order to build them in");
  verb->add_option("ports", options->ports,
                   "The port that you have and the port that you need: \"1 FNPT\" \"3/4 MGHT\"; with more than two, "
                   "the base and two to eight ports that branch off it")
      ->expected(2, 1 + static_cast<int>(chain::kMostTargets))
      ->required();
  CLI::Option* held =
      verb->add_flag("--held", options->held, "All ends are held still: a union, hose or swivel nut must close it");
  verb->add_option("--first-end", options->first_end, "How the first port can move: loose, spinning, sliding or fixed")
      ->excludes(held);
  verb->add_option("--last-end", options->last_end, "How the last port can move")->excludes(held);
  verb->add_option("--order", options->order, "What decides: parts, price, loss, length or bin");
  verb->add_option("--need", options->needs, "Something that must be in it, as \"ball valve\"; may be given again")
      ->allow_extra_args(false);
  verb->add_option("--avoid", options->avoid,
                   "A material, part, or all that is called so, as \"nipple\" for close, hex and PVC nipples too and "
                   "\"just nipple\" for that family alone; may be given again")
      ->allow_extra_args(false);
  verb->add_option("--rating", options->rating, "The pressure that every part must stand, as \"100 psi\"");
  verb->add_option("--bore", options->smallest_bore, "The smallest bore allowed, as \"3/4 in\"");
  verb->add_option("--room", options->room,
                   "Free radius round the run: what is screwed up must have room to turn, as \"2 in\"");
  verb->add_option("--flow", options->flow, "Flow for the head lost, as \"12 gpm\" (10 gpm when left out)");
  verb->add_option("--galvanic", options->galvanic, "warn of unlike metals, or avoid them");
  verb->add_option("--alternatives", options->alternatives,
                   "So many chains that a person may prefer, the best among them, and what to take where a part of it "
                   "is not on the shelf");
  verb->add_option("--span", options->span,
                   "The distance between the two ports' faces, which look at each other: stock pieces, cut pipe or a "
                   "hose make it; both ends are held unless --first-end or --last-end says otherwise");
  verb->add_option("--offset", options->offset, "With --span: how far apart the two ports' axes are");
  verb->add_option("--roll", options->roll, "With --offset: the second offset of a rolling one, at right angles to it");
  verb->add_flag("--spares", options->spares,
                 "The fewest spare parts with which any one bought part may be missing or broken");
  verb->add_option("--most-parts", options->most_parts, "No more parts than that");
  verb->add_option("--most-bushings", options->most_bushings,
                   "No more bushings than that (left out: 1 in a chain, any number in a branched assembly)");
  verb->add_option(
      "--valve-stays", options->valve_stays,
      "The port of the reservoir, first or last: a union, or the hose that is asked for, goes beyond the valve, "
      "seen from there, so that the valve stays when the run is opened");
  verb->add_flag("--in-order", options->in_order,
                 "What --need asks for comes in the order given, from the first port on");
  verb->add_option(
      "--hottest", options->hottest,
      "The hottest that it gets inside, as \"140 F\": every part must be proved for it, --rating at that heat");
  verb->add_flag("--vacuum", options->vacuum, "It can come under vacuum: every part must be proved for it");
  verb->add_flag("--air", options->air, "It carries compressed air: nothing that shatters");
  verb->add_flag("--from-bin", options->from_bin, "Nothing is bought: what the bin has must do");
  verb->add_flag("--special-order", options->special_order, "Parts that a store must order are allowed");
  add_branch_options(*verb, options->branches);
  verb->callback(
      [options, &session] { session.chosen_verb = [options, &session] { return run_chain(*options, session); }; });
}

}  // namespace riserun::cli
