#include "chain/ask/assembly.h"
#include "chain/ask/needs.h"
#include "chain/ask/spares.h"
#include "chain/finder.h"
#include "cli/asked_options.h"
#include "cli/branch_options.h"
#include "cli/inputs.h"
#include "cli/patience.h"
#include "report/file/write_file.h"
#include "report/json/answer_json.h"
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
  AskedOptions asked;
  BranchOptions branches;
  std::string alternatives;
  std::string valve_stays;
  std::string picture;
  bool spares = false;
};

constexpr std::string_view kPorts[] = {"first", "last"};

quantity::Reading<int> read_rows(std::string_view text) {
  quantity::Reading<int> reading = quantity::read_count(text);
  const int* rows = std::get_if<int>(&reading);
  if (rows && *rows < 1) return quantity::ReadError{"at least 1 is wanted: the best chain", 0};
  return reading;
}

/// The port that the valve is to stay on, and what does not go with that.
std::optional<chain::ReservoirEnd> valve_stays_from(const ChainOptions& options, const catalog::Catalog& catalog,
                                                    const chain::ChainRequest& request, WordReader& words) {
  if (options.valve_stays.empty()) return std::nullopt;
  const std::string& text = options.valve_stays;
  const auto end =
      words.choice("--valve-stays", text, kPorts) == 0 ? chain::ReservoirEnd::first : chain::ReservoirEnd::last;
  for (const auto& [given, other] :
       {std::pair(options.asked.has("distance"), "--span"), std::pair(options.spares, "--spares"),
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

Question question_from(const ChainOptions& options, const Stock& stock, const CommonOptions& common) {
  const catalog::Catalog& catalog = *stock.catalog;
  WordReader words(common);
  Question question;
  chain::ChainRequest& request = question.request;
  const catalog::MadePort from = words.port(catalog, options.ports[0]);
  const catalog::MadePort to = words.port(catalog, options.ports[1]);
  // More than two: read again where they are used, but what is wrong with them is said with the rest.
  for (std::size_t i = 2; i < options.ports.size(); ++i) words.port(catalog, options.ports[i]);
  request = read_request(options.asked, stock, words);
  request.from.type = from.type;
  request.from.material = from.material;
  request.to.type = to.type;
  request.to.material = to.material;
  request.galvanic = chain::galvanic_meant(*stock.catalog, request);
  question.span = read_span(options.asked, words, request);
  if (question.span && options.spares)
    words.add("--spares", "", "is not for a run that makes a distance: a stand-in would have to make it too", 0);
  question.valve_stays = valve_stays_from(options, catalog, request, words);
  question.rows = words.quantity("--alternatives", options.alternatives, &read_rows);
  words.finish();
  // Copper tube is of copper, though nobody says so.
  for (chain::PortEnd* end : {&request.from, &request.to})
    if (!end->material) end->material = catalog.metal_of_tube(end->type);
  return question;
}

/// As it was given: `1 FNPT`, `1 FNPT aluminium`.
std::string written(const Stock& stock, catalog::PortTypeId type, const std::optional<catalog::MaterialId>& material) {
  if (material == stock.catalog->metal_of_tube(type)) return stock.catalog->written(type);
  return stock.catalog->written(type) + (material ? " " + stock.catalog->material(*material).name : "");
}

std::string heading_of(const Stock& stock, const chain::ChainRequest& request) {
  return fmt::format("From {} to {}\n", written(stock, request.from.type, request.from.material),
                     written(stock, request.to.type, request.to.material));
}

std::optional<chain::Spares> spares_of(bool wanted, const chain::Finder& finder, const chain::ChainRequest& request,
                                       const chain::Chain* chain, const Session& session) {
  if (!wanted || chain == nullptr) return std::nullopt;
  const Patience patience(session.err, "Looking for the fewest spares");
  return finder.least_spares({{request, *chain}});
}

void print_spares(const Stock& stock, const std::optional<chain::Spares>& spares, const Session& session) {
  if (spares) session.out << report::spares_text(*stock.catalog, *spares, {}, session.style(UnitSystem::inch));
}

void print_alternatives(const Stock& stock, const chain::ChainRequest& request, const chain::Finder& finder,
                        const std::vector<chain::Alternative>& rows, bool with_spares, const Session& session) {
  const auto spares = spares_of(with_spares, finder, request, &rows.front().chain, session);
  // What stands in for a part of a run that makes a distance would have to make it too.
  std::vector<chain::Substitute> substitutes;
  if (!rows.front().chain.span) substitutes = finder.substitutes(request, rows.front().chain);
  if (session.common.json) {
    session.out << report::alternatives_json(*stock.catalog, request, rows, substitutes,
                                             session.style(UnitSystem::inch).units, spares ? &*spares : nullptr);
    return;
  }
  session.out << heading_of(stock, request)
              << report::taken_for_text(*stock.catalog, request, session.style(UnitSystem::inch))
              << report::alternatives_text(*stock.catalog, request, rows, substitutes, session.style(UnitSystem::inch));
  print_spares(stock, spares, session);
}

// Options that say something of one run between two ends say nothing of an assembly.
void refuse_what_is_for_two_ports(const ChainOptions& options) {
  WordReader words;
  refuse_options_of_one_run(options.asked, words);
  for (const auto& [option, text] :
       {std::pair("--alternatives", options.alternatives), std::pair("--valve-stays", options.valve_stays),
        std::pair("--picture", options.picture), std::pair("--spares", std::string(options.spares ? "yes" : ""))})
    if (!text.empty()) words.add(option, text, "is for a chain between two ports, not for a branched assembly", 0);
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
  request.rules = question_from(options, stock, session.common).request;
  if (!options.asked.has("most_bushings"))
    request.rules.most_bushings.reset();  // of all branches together, if asked for
  WordReader words(session.common);
  for (std::size_t i = 1; i < options.ports.size(); ++i) {
    const catalog::MadePort port = words.port(*stock.catalog, options.ports[i]);
    const auto metal = port.material ? port.material : stock.catalog->metal_of_tube(port.type);
    request.targets.push_back({port.type, metal, request.rules.from.freedom, {}});
  }
  request.branches = read_branch_options(options.branches, stock, request.targets.size(), request.rules.vacuum, words);
  words.finish();
  chain::put_before_all(*stock.catalog, request);
  const chain::AssemblyAnswer answer = chain::find_assembly(*stock.catalog, request);
  if (session.common.json) {
    session.out << report::assembly_json(*stock.catalog, request, answer, session.style(UnitSystem::inch).units);
  } else {
    session.out << fmt::format("From {} to", written(stock, request.rules.from.type, request.rules.from.material));
    for (std::size_t i = 0; i < request.targets.size(); ++i)
      session.out << (i ? ", " : " ") << written(stock, request.targets[i].type, request.targets[i].material);
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
  none.reason = quantity::fact("valve_is_not_left", chain::opening_beyond_valve(catalog, request, end),
                               kPorts[end == chain::ReservoirEnd::first ? 0 : 1]);
  none.mends.push_back(quantity::fact("leave_valve_stays_out"));
  return none;
}

void write_picture(const std::string& file, const std::string& picture) {
  report::write_file(file, picture, report::Overwrite::yes);
}

int run_chain(const ChainOptions& options, const Session& session) {
  if (options.ports.size() > 2) return run_assembly(options, session);
  refuse_what_is_for_branches(options);
  const Stock stock = load_stock(session.common);
  const auto [request, most_rows, span, valve_stays] = question_from(options, stock, session.common);
  const chain::Finder finder(*stock.catalog);
  if (most_rows) {
    const auto most = static_cast<std::size_t>(*most_rows);
    const auto rows = span ? finder.alternatives(request, *span, most) : finder.alternatives(request, most);
    if (!rows.empty()) {
      if (!options.picture.empty()) write_picture(options.picture, finder.picture(request, &rows.front().chain));
      print_alternatives(stock, request, finder, rows, options.spares, session);
      return kDone;
    }
  }
  chain::Answer answer = span ? finder.find_span(request, *span) : finder.find(request);
  if (valve_stays) answer = with_valve_left(finder, *stock.catalog, request, *valve_stays, std::move(answer));
  const auto* found = std::get_if<chain::Chain>(&answer);
  if (!options.picture.empty()) write_picture(options.picture, finder.picture(request, found));
  const auto spares = spares_of(options.spares, finder, request, found, session);
  if (session.common.json) {
    session.out << report::chain_json(*stock.catalog, request, answer, session.style(UnitSystem::inch).units,
                                      spares ? &*spares : nullptr);
  } else {
    session.out << heading_of(stock, request)
                << report::taken_for_text(*stock.catalog, request, session.style(UnitSystem::inch))
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
  add_asked_options(*verb, options->asked);
  verb->add_option("--alternatives", options->alternatives,
                   "So many chains that a person may prefer, the best among them, and what to take where a part of it "
                   "is not on the shelf");
  verb->add_option("--picture", options->picture,
                   "A file for a picture of what was searched near the answer, in Graphviz's language: open ends, the "
                   "parts between them, the answer bold");
  verb->add_flag(
      "--spares", options->spares,
      "The fewest spare parts with which any one bought part may be missing or broken; a search that grows with "
      "what is needed, from a blink to a minute with four needs in another order than line (Ctrl-C ends it)");
  verb->add_option(
      "--valve-stays", options->valve_stays,
      "The port of the reservoir, first or last: a union, or the hose that is asked for, goes beyond the valve, "
      "seen from there, so that the valve stays when the run is opened");
  add_branch_options(*verb, options->branches);
  verb->callback(
      [options, &session] { session.chosen_verb = [options, &session] { return run_chain(*options, session); }; });
}

}  // namespace riserun::cli
