#include "cli/inputs.h"
#include "plan/job/read_job.h"
#include "plan/job/weld_bung.h"
#include "plan/plan.h"
#include "plan/stage/riser_alone.h"
#include "quantity/nearly.h"
#include "quantity/write.h"
#include "report/json/plan_json.h"
#include "report/text/plan_text.h"

#include <CLI/CLI.hpp>
#include <fmt/format.h>

#include <ostream>

namespace riserun::cli {

namespace {

struct RiserOptions {
  std::string job;
  std::string height;
  std::string length;
  std::string width;
  std::string bung;
  std::string bung_kind;
  std::string bung_length;
  std::string projects;
  std::string pipe;
  std::string material;
  std::string clearance;
  std::string obstacle;
  std::string headroom;
  bool lid_closed = false;
};

const std::vector<std::string_view> kBungKinds = {"full coupling", "half coupling", "welded riser",
                                                  "double-tapped bushing"};

reservoir::BungKind bung_kind(WordReader& words, const std::string& text) {
  using reservoir::BungKind;
  static constexpr BungKind kMeaning[] = {BungKind::full_coupling, BungKind::half_coupling, BungKind::welded_riser,
                                          BungKind::double_tapped_bushing};
  return kMeaning[words.choice("--bung-kind", text, kBungKinds)];
}

plan::RiserAlone plan_from_options(const RiserOptions& options, const Stock& stock, const CommonOptions& common) {
  WordReader words(common);
  const auto length_of = [&](const char* option, const std::string& text) {
    return words.quantity(option, text, &quantity::read_length);
  };
  plan::JobReservoir reservoir;
  const auto inside = [&](const char* option, const std::string& text) {
    const Length value = length_of(option, text).value_or(inches(1.0));
    if (!(value > Length{})) words.add(option, text, "must be more than nothing", 0);
    return value;
  };
  reservoir.height = inside("--height", options.height);
  reservoir.length = inside("--length", options.length);
  reservoir.width = inside("--width", options.width);
  reservoir.obstacle_height = length_of("--obstacle", options.obstacle);
  reservoir.lid_closed = options.lid_closed;
  plan::JobPort bung;
  bung.name = "riser bung";
  const catalog::MadePort made = words.port(*stock.catalog, options.bung);
  bung.type = made.type;
  bung.material = made.material;
  bung.bung = bung_kind(words, options.bung_kind);
  if (bung.type.valid() && bung.bung != reservoir::BungKind::welded_riser &&
      stock.catalog->port_type(bung.type).end == catalog::End::male)
    words.add("--bung", options.bung,
              "the riser screws into its bung, and a coupling's or a bushing's thread is female; "
              "allowed: a female thread, as 1 FNPT, or --bung-kind \"welded riser\"",
              0);
  bung.bung_length = length_of("--bung-length", options.bung_length);
  bung.projects = length_of("--projects", options.projects);
  const auto length = plan::bung_length(*stock.catalog, bung, bung.bung.value_or(reservoir::BungKind::full_coupling));
  if (bung.projects && length && quantity::more_than(*bung.projects, *length))
    words.add(
        "--projects", options.projects,
        fmt::format("is more than the bung's own length of {}", quantity::write_length(*length, UnitSystem::inch)), 0);
  reservoir.ports.push_back(bung);
  plan::JobRiser riser;
  riser.clearance = length_of("--clearance", options.clearance);
  riser.headroom = length_of("--headroom", options.headroom);
  riser.pipe_size = words.quantity("--pipe", options.pipe, &quantity::read_size_name);
  if (riser.pipe_size && bung.type.valid() && bung.bung == reservoir::BungKind::double_tapped_bushing) {
    const std::string& thread = stock.catalog->size_name(stock.catalog->port_type(bung.type).size);
    if (*riser.pipe_size != thread)
      words.add("--pipe", options.pipe,
                fmt::format("a double-tapped bushing holds the riser in its own thread, which is what --bung says, and "
                            "that is {}; allowed: --pipe {}, or the bushing's thread for this pipe, --bung \"{} FNPT\"",
                            thread, thread, *riser.pipe_size),
                0);
  }
  riser.material = words.material(*stock.catalog, "--material", options.material);
  words.finish();
  return plan::plan_riser_alone(*stock.catalog, std::move(reservoir), std::move(riser), stock.bin);
}

int run_from_options(const RiserOptions& options, const Session& session) {
  const Stock stock = load_stock(session.common);
  const report::Style style = session.style(UnitSystem::inch);
  const plan::RiserAlone result = plan_from_options(options, stock, session.common);
  session.out << (session.common.json ? report::riser_json(result.plan.riser, style.units)
                                      : report::riser_text(*stock.catalog, result, style));
  return result.remarks.findings.empty() ? kDone : kNoSolution;
}

int run_from_job(const RiserOptions& options, const Session& session) {
  const Stock stock = load_stock(session.common);
  plan::Job job = load_job(stock, options.job, session.err);
  const report::Style style = session.style(job.units);
  const plan::Plan plan = plan::make_plan(stock.catalog, std::move(job));
  session.out << (session.common.json ? report::riser_json(plan, style.units)
                                      : report::all_findings(plan, style) + report::riser_text(plan, style));
  return plan.verdict == plan::Verdict::ready ? kDone : kNoSolution;
}

/// All that is missing at once.
void ask_for_measures(const RiserOptions& options) {
  std::vector<std::string_view> missing;
  for (const auto& [name, text] : {std::pair("--height", &options.height), std::pair("--length", &options.length),
                                   std::pair("--width", &options.width)})
    if (text->empty()) missing.emplace_back(name);
  if (missing.size() == 3) throw CLI::RequiredError("a job file, or --height, --length and --width,");
  if (missing.empty()) return;
  const char* verb = missing.size() > 1 ? "are" : "is";
  throw CLI::RequiredError(fmt::format("{} {} required", fmt::join(missing, " and "), verb),
                           CLI::ExitCodes::RequiredError);
}

}  // namespace

void add_riser_verb(CLI::App& app, Session& session) {
  const auto options = std::make_shared<RiserOptions>();
  options->bung = "1 FNPT";
  CLI::App* verb = app.add_subcommand("riser", "Riser length, clearance and heel, of a job or of a few measures");
  CLI::Option* job =
      verb->add_option("job", options->job, "The job file; without one, --height, --length and --width at least");
  CLI::Option* height = verb->add_option("--height", options->height, "Inside height of the reservoir, as \"14 in\"");
  height->excludes(job);
  for (CLI::Option* side : {verb->add_option("--length", options->length, "Inside length: the heel's volume needs it"),
                            verb->add_option("--width", options->width, "Inside width, likewise")})
    side->excludes(job);
  const auto add = [&](const char* name, std::string& text, const char* about) {
    verb->add_option(name, text, about)->needs(height)->excludes(job);
  };
  add("--bung", options->bung, "The bung's port (1 FNPT when left out)");
  add("--bung-kind", options->bung_kind, "full coupling, half coupling, welded riser or double-tapped bushing");
  add("--bung-length", options->bung_length, "End to end length of the bung");
  add("--projects", options->projects,
      "How far the bung's lower end reaches into the reservoir, under the lid's inside");
  add("--pipe", options->pipe, "Nominal size of the riser (the bung's when left out)");
  add("--material", options->material, "Material of the riser (black iron when left out)");
  add("--clearance", options->clearance, "Wanted clearance above the floor");
  add("--obstacle", options->obstacle, "Height of what lies on the floor under the bung");
  add("--headroom", options->headroom, "Free height above the bung, to draw the riser out");
  verb->add_flag("--lid-closed", options->lid_closed, "The lid is welded already")->needs(height)->excludes(job);
  verb->callback([options, &session] {
    if (options->job.empty()) ask_for_measures(*options);
    session.chosen_verb = [options, &session] {
      return options->job.empty() ? run_from_options(*options, session) : run_from_job(*options, session);
    };
  });
}

}  // namespace riserun::cli
