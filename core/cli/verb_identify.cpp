#include "catalog/identify/identify.h"
#include "cli/inputs.h"
#include "report/json/identify_json.h"
#include "report/text/identify_text.h"

#include <CLI/CLI.hpp>
#include <fmt/format.h>

#include <numbers>
#include <ostream>

namespace riserun::cli {

namespace {

using catalog::End;
using catalog::Measurements;
using catalog::Tool;

struct IdentifyOptions {
  std::string outside;
  std::string inside;
  std::string round;
  std::string tool;
  std::string end;
  std::string per_inch;
  std::string threads;
  std::string over;
  std::string taper;
  std::string washer;
  std::string swivel;
  std::string seat;
  std::string flank;
  std::string marks;
  std::string made;
  std::string turns;
  std::string into;
  std::string material;
  bool plain = false;
};

// Beyond these no pipe, hose or tube of a shop lies; a slip of the unit is caught here.
const quantity::Range<Length> kDiameters = {inches(0.1), inches(40.0)};
const quantity::Range<Length> kAround = {inches(0.3), inches(126.0)};
constexpr quantity::Range<double> kPerInch = {2.0, 100.0};
constexpr quantity::Range<double> kTurns = {0.0, 40.0};

quantity::Reading<Length> read_diameter(const quantity::Written& text) {
  return quantity::within(quantity::read_length(text), kDiameters, text);
}
quantity::Reading<Length> read_around(const quantity::Written& text) {
  return quantity::within(quantity::read_length(text), kAround, text);
}
quantity::Reading<double> read_per_inch(std::string_view text) {
  return quantity::within(quantity::read_number(text), kPerInch, text);
}
quantity::Reading<double> read_turns(std::string_view text) {
  return quantity::within(quantity::read_number(text), kTurns, text);
}

const std::vector<std::string_view> kYesNo = {"yes", "no"};

/// The options, turned into measurements; every mistake is gathered in the WordReader.
class Reader {
 public:
  Reader(const catalog::Catalog& catalog, const IdentifyOptions& options, const CommonOptions& common)
      : catalog_(catalog), options_(options), words_(common) {}

  Measurements read(catalog::Shelf home) {
    measurements_.shelf = home;
    measurements_.threaded = !options_.plain;
    read_diameters();
    read_count();
    read_looks();
    read_made();
    read_trial();
    read_end();
    check_plain();
    if (measurements_.seen.empty())
      words_.add("identify", "", "nothing measured; give at least one of --od, --id, --round, --tpi, --taper ...", 0);
    words_.finish();
    return std::move(measurements_);
  }

 private:
  void read_diameters() {
    static const std::vector<std::string_view> kTools = {"tape", "rule", "caliper"};
    const Tool tool = static_cast<Tool>(words_.choice("--tool", options_.tool, kTools));
    const auto outside = words_.quantity("--od", options_.outside, &read_diameter);
    const auto inside = words_.quantity("--id", options_.inside, &read_diameter);
    const auto round = words_.quantity("--round", options_.round, &read_around);
    if (outside) measurements_.seen.emplace_back(catalog::DiameterReading{*outside, tool, false});
    if (inside) measurements_.seen.emplace_back(catalog::DiameterReading{*inside, tool, true});
    if (round)
      measurements_.seen.emplace_back(catalog::DiameterReading{*round / std::numbers::pi, Tool::string, false});
  }

  void read_count() {
    const auto per_inch = words_.quantity("--tpi", options_.per_inch, &read_per_inch);
    if (per_inch) measurements_.seen.emplace_back(catalog::ThreadCount{*per_inch, {}});
    const auto count = words_.quantity("--threads", options_.threads, &quantity::read_number);
    const auto over = words_.quantity("--over", options_.over, &read_diameter);
    if (options_.threads.empty() != options_.over.empty())
      words_.add("--threads", options_.threads,
                 "a count and the length it was counted over go together: "
                 "--threads N --over L",
                 0);
    if (per_inch && count) words_.add("--threads", options_.threads, "the count is given twice; leave --tpi out", 0);
    if (!count || !over) return;
    const double threads = *count / in_inches(*over);
    if (kPerInch.low <= threads && threads <= kPerInch.high)
      measurements_.seen.emplace_back(catalog::ThreadCount{threads, *over});
    else
      words_.add(
          "--threads", options_.threads,
          fmt::format("makes {:.3g} threads per inch; allowed is {:g} to {:g}", threads, kPerInch.low, kPerInch.high),
          0);
  }

  template <class Seen>
  void yes_no(const char* option, const std::string& text) {
    if (!text.empty()) measurements_.seen.emplace_back(Seen{words_.choice(option, text, kYesNo) == 0});
  }

  void read_looks() {
    yes_no<catalog::TaperSeen>("--taper", options_.taper);
    yes_no<catalog::WasherSeen>("--washer", options_.washer);
    yes_no<catalog::SwivelSeen>("--swivel", options_.swivel);
    static const std::vector<std::string_view> kSeats = {"none", "37", "45", "cone"};
    if (!options_.seat.empty())
      measurements_.seen.emplace_back(
          catalog::SeatSeen{static_cast<catalog::SeatShape>(words_.choice("--seat", options_.seat, kSeats))});
    static const std::vector<std::string_view> kFlanks = {"55", "60"};
    if (!options_.flank.empty())
      measurements_.seen.emplace_back(
          catalog::FlankSeen{words_.choice("--flank", options_.flank, kFlanks) == 0 ? 55 : 60});
    if (options_.marks.empty()) return;
    const auto mark = catalog::read_mark(catalog_, options_.marks);
    if (const auto* seen = std::get_if<catalog::MarkSeen>(&mark)) {
      measurements_.seen.emplace_back(*seen);
    } else {
      const auto& error = std::get<catalog::MarkError>(mark);
      words_.add("--marks", options_.marks, error.message, error.offset);
    }
  }

  void read_made() {
    static const std::vector<std::string_view> kShelves = {"inch", "metric"};
    if (!options_.made.empty())
      measurements_.seen.emplace_back(
          catalog::OriginKnown{static_cast<catalog::Shelf>(words_.choice("--made", options_.made, kShelves))});
    if (const auto material = words_.material(catalog_, "--material", options_.material))
      measurements_.seen.emplace_back(catalog::MaterialSeen{*material});
  }

  void read_trial() {
    const auto turns = words_.quantity("--turns", options_.turns, &read_turns);
    if (options_.turns.empty() != options_.into.empty())
      words_.add("--turns", options_.turns, "the turns and the known part go together: --turns N --into PORT", 0);
    if (options_.into.empty()) return;
    const catalog::PortTypeId known = words_.port(catalog_, options_.into).type;
    if (!known.valid()) return;
    known_end_ = catalog_.port_type(known).end;
    const auto measured = catalog::measured_as(catalog_, known);
    if (!measured || !catalog_.kind(catalog_.port_type(*measured).kind).threaded)
      words_.add("--into", options_.into, "has no thread that a trial by hand could tell from", 0);
    else if (turns)
      measurements_.seen.emplace_back(catalog::HandTrial{known, *turns});
  }

  void say_end(const char* option, const std::string& text, End end) {
    if (measurements_.end && *measurements_.end != end)
      words_.add(option, text,
                 fmt::format("makes it a {} end, but another option makes it a {} one",
                             end == End::male ? "male" : "female", end == End::male ? "female" : "male"),
                 0);
    measurements_.end = end;
  }

  /// An outside is measured on a male, an inside on a female; a known part is tried on its opposite.
  void read_end() {
    static const std::vector<std::string_view> kEnds = {"male", "female"};
    if (!options_.end.empty())
      say_end("--end", options_.end, words_.choice("--end", options_.end, kEnds) == 0 ? End::male : End::female);
    if (!options_.outside.empty()) say_end("--od", options_.outside, End::male);
    if (!options_.round.empty()) say_end("--round", options_.round, End::male);
    if (!options_.inside.empty()) say_end("--id", options_.inside, End::female);
    if (known_end_ && *known_end_ != End::neither)
      say_end("--into", options_.into, *known_end_ == End::male ? End::female : End::male);
    for (const catalog::Observation& seen : measurements_.seen)
      if (const auto* mark = std::get_if<catalog::MarkSeen>(&seen); mark != nullptr && mark->end && !measurements_.end)
        measurements_.end = mark->end;
    if (!measurements_.end && !measurements_.seen.empty())
      words_.add("--end", "", "say whether it is the male or the female: --end male or --end female", 0);
  }

  void check_plain() {
    if (!options_.plain) return;
    const std::pair<const char*, const std::string*> threaded_only[] = {
        {"--tpi", &options_.per_inch},  {"--threads", &options_.threads}, {"--taper", &options_.taper},
        {"--flank", &options_.flank},   {"--turns", &options_.turns},     {"--swivel", &options_.swivel},
        {"--washer", &options_.washer}, {"--seat", &options_.seat},       {"--marks", &options_.marks}};
    for (const auto& [option, text] : threaded_only)
      if (!text->empty()) words_.add(option, *text, "is asked of a thread; --plain says that there is none", 0);
  }

  const catalog::Catalog& catalog_;
  const IdentifyOptions& options_;
  Measurements measurements_;
  std::optional<End> known_end_;
  WordReader words_;
};

int run_identify(const IdentifyOptions& options, const Session& session) {
  const Stock stock = load_stock(session.common);
  const report::Style style = session.style(UnitSystem::inch);
  const catalog::Shelf home = style.units == UnitSystem::metric ? catalog::Shelf::metric : catalog::Shelf::inch;
  const Measurements measured = Reader(*stock.catalog, options, session.common).read(home);
  const catalog::Identification found = catalog::identify(*stock.catalog, measured);
  session.out << (session.common.json ? report::identify_json(*stock.catalog, found)
                                      : report::identify_text(*stock.catalog, found, style));
  return found.candidates.empty() ? kNoSolution : kDone;
}

}  // namespace

void add_identify_verb(CLI::App& app, Session& session) {
  const auto options = std::make_shared<IdentifyOptions>();
  CLI::App* verb = app.add_subcommand("identify", "What thread is this? From what can be measured at the bench");
  const auto add = [&](const char* name, std::string& text, const char* about) { verb->add_option(name, text, about); };
  add("--od", options->outside, "Across the outside of a male, over the crests, as \"1-1/16 in\"");
  add("--id", options->inside, "Across the inside of a female, between the crests");
  add("--round", options->round, "Length of a string laid once round a male");
  add("--tool", options->tool, "What --od or --id was measured with: tape (when left out), rule or caliper");
  add("--end", options->end, "male or female, where no other option says so");
  add("--tpi", options->per_inch, "Threads per inch, counted against a rule");
  add("--threads", options->threads, "Threads counted over the length of --over");
  add("--over", options->over, "The length over which --threads were counted");
  add("--taper", options->taper, "yes or no");
  add("--washer", options->washer, "A washer or gasket belongs to it: yes or no");
  add("--swivel", options->swivel, "The thread is on a nut that turns by itself: yes or no");
  add("--seat", options->seat, "none, cone, or the cone's half angle: 37 or 45");
  add("--flank", options->flank, "The thread gauge that fits: 55 or 60 degrees");
  add("--marks", options->marks, "Letters and size on it: \"G 3/4\", NPT, Rc ...");
  add("--made", options->made, "Where it was made: inch or metric countries");
  add("--turns", options->turns, "Turns by hand into the known part of --into until it stops");
  add("--into", options->into, "The known part's port, as \"3/4 FNPT\"");
  add("--material", options->material, "What it is made of");
  verb->add_flag("--plain", options->plain, "No thread: a tube, pipe, barb or hose");
  verb->callback(
      [options, &session] { session.chosen_verb = [options, &session] { return run_identify(*options, session); }; });
}

}  // namespace riserun::cli
