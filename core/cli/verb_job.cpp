// The verbs that read a job and show its plan, or one part of it.
#include "cli/inputs.h"
#include "cli/patience.h"
#include "plan/job/read_job.h"
#include "plan/plan.h"
#include "plan/spares.h"
#include "quantity/error_codes.h"
#include "quantity/input_error.h"
#include "quantity/printable.h"
#include "report/card/make_card.h"
#include "report/file/write_file.h"
#include "report/json/plan_json.h"
#include "report/page/plan_file.h"
#include "report/text/card_text.h"
#include "report/text/plan_text.h"
#include "report/text/spares_text.h"
#include "report/words/plan_keys.h"

#include <CLI/CLI.hpp>
#include <fmt/format.h>

#include <filesystem>
#include <functional>
#include <ostream>

namespace riserun::cli {

namespace {

using Text = std::function<std::string(const plan::Plan&, const report::Style&)>;
using Json = std::string (*)(const plan::Plan&, UnitSystem);

plan::Plan plan_of(const std::string& job_file, const Session& session) {
  const Stock stock = load_stock(session.common);
  plan::Job job = load_job(stock, job_file, session.err);
  const Patience patience(session.err, "Planning");
  return plan::make_plan(stock.catalog, std::move(job));
}

int status_of(const plan::Plan& plan) { return plan.verdict == plan::Verdict::ready ? kDone : kNoSolution; }

int show_plan(const std::string& job_file, const Session& session, const Text& text, Json json) {
  const plan::Plan plan = plan_of(job_file, session);
  const report::Style style = session.style(plan.job.units);
  const auto written = [&] {
    const Patience patience(session.err, "Writing");  // the least spares are looked for here
    return session.common.json ? json(plan, style.units) : text(plan, style);
  };
  session.out << written();
  return status_of(plan);
}

int write_plan(const std::string& job_file, const std::string& file, bool force, const Session& session) {
  const report::PlanForm& form = report::plan_form_of(file);
  if (std::error_code unknown; !force && std::filesystem::exists(file, unknown))
    throw quantity::InputError({{file, 0, 0, "is there already, and stays; --force writes over it", "",
                                 std::string(quantity::mistake::kFileNotWritten)}});
  const plan::Plan plan = plan_of(job_file, session);
  report::write_file(file, form.write(plan, job_file, session.style(plan.job.units)),
                     force ? report::Overwrite::yes : report::Overwrite::no);
  session.out << fmt::format("{}: {}, {}\n", quantity::printable(file), form.what, report::key_of(plan.verdict));
  return status_of(plan);
}

std::string forms_in_words() {
  std::vector<std::string> words;
  for (const report::PlanForm& form : report::plan_forms())
    words.push_back(fmt::format("{} ({})", form.ending, form.what));
  return fmt::format("{}", fmt::join(words, ", "));
}

void add_job_verb(CLI::App& app, Session& session, const std::string& name, const std::string& about, const Text& text,
                  Json json) {
  const auto job_file = std::make_shared<std::string>();
  CLI::App* verb = app.add_subcommand(name, about);
  verb->add_option("job", *job_file, "The job file; - is the standard input")->required();
  verb->callback([job_file, text, json, &session] {
    session.chosen_verb = [job_file, text, json, &session] { return show_plan(*job_file, session, text, json); };
  });
}

/// A section by itself: what is open comes first, whatever the section.
template <std::string (*section)(const plan::Plan&, const report::Style&)>
std::string with_findings(const plan::Plan& plan, const report::Style& style) {
  return report::all_findings(plan, style) + section(plan, style);
}

std::string transfer_and_losses(const plan::Plan& plan, const report::Style& style) {
  return report::levels_text(plan, style) + "\n" + report::transfer_text(plan, style) + "\n" +
         report::losses_text(plan, style);
}

std::string walls_and_test(const plan::Plan& plan, const report::Style& style) {
  return report::walls_text(plan, style) + "\n" + report::leak_test_text(plan, style) + "\n" +
         report::standing_text(plan, {plan::Topic::walls, plan::Topic::relief, plan::Topic::leak_test}, style);
}

std::string list_and_spares(const plan::Plan& plan, const report::Style& style) {
  std::vector<std::string> names;
  for (const plan::ConnectionPlan& connection : plan.connections) names.push_back(connection.name);
  return report::list_text(plan, style) + "\n" + report::heading("Spares", style) +
         report::spares_text(*plan.catalog, plan::spares_for(plan), names, style);
}

std::string list_and_spares_json(const plan::Plan& plan, UnitSystem units) {
  return report::list_json(plan, plan::spares_for(plan), units);
}

std::string list_alone_json(const plan::Plan& plan, UnitSystem units) { return report::list_json(plan, units); }

std::string test_alone(const plan::Plan& plan, const report::Style& style) {
  return report::leak_test_text(plan, style) + "\n" + report::standing_text(plan, {plan::Topic::leak_test}, style);
}

std::string transfer_json(const plan::Plan& plan, UnitSystem /*units*/) { return report::transfer_json(plan); }
std::string walls_json(const plan::Plan& plan, UnitSystem /*units*/) { return report::walls_json(plan); }

}  // namespace

void add_plan_verb(CLI::App& app, Session& session) {
  struct Options {
    std::string job_file;
    std::string out;
    bool all = false;
    bool force = false;
  };
  const auto options = std::make_shared<Options>();
  CLI::App* verb = app.add_subcommand("plan", "The card of a job: one page for the bench");
  verb->add_option("job", options->job_file, "The job file; - is the standard input")->required();
  CLI::Option* all =
      verb->add_flag("--all", options->all, "The whole plan: every figure, joint, assumption and source");
  CLI::Option* out = verb->add_option("--out", options->out, "A file for it, by its ending: " + forms_in_words());
  verb->add_flag("--force", options->force, "Write over a file that is there")->needs(out);
  all->excludes(out);
  verb->callback([options, &session] {
    session.chosen_verb = [options, &session] {
      if (!options->out.empty()) return write_plan(options->job_file, options->out, options->force, session);
      if (options->all) return show_plan(options->job_file, session, &report::plan_text, &report::plan_json);
      const Text card = [&](const plan::Plan& plan, const report::Style& style) {
        return report::card_text(report::card_of(plan, style.units), options->job_file, style);
      };
      return show_plan(options->job_file, session, card, &report::plan_json);
    };
  });
}

void add_transfer_verb(CLI::App& app, Session& session) {
  add_job_verb(app, session, "transfer", "Filling and draining: pressures, times, losses",
               &with_findings<&transfer_and_losses>, &transfer_json);
}

void add_walls_verb(CLI::App& app, Session& session) {
  add_job_verb(app, session, "walls", "Panels, the pressure that they stand, relief, stored energy",
               &with_findings<&walls_and_test>, &walls_json);
}

void add_leak_test_verb(CLI::App& app, Session& session) {
  add_job_verb(app, session, "leak-test", "The leak test: what plugs which port, the rig, the steps",
               &with_findings<&test_alone>, &report::leak_test_json);
}

void add_list_verb(CLI::App& app, Session& session) {
  const auto job_file = std::make_shared<std::string>();
  const auto spares = std::make_shared<bool>(false);
  CLI::App* verb = app.add_subcommand("list", "Shopping list and cut list");
  verb->add_option("job", *job_file, "The job file; - is the standard input")->required();
  verb->add_flag(
      "--spares", *spares,
      "Also the fewest spare parts with which any one bought part of a run may be missing or broken (a search that "
      "grows with what a run needs, from a blink to a minute where it needs four things; Ctrl-C ends it)");
  verb->callback([job_file, spares, &session] {
    session.chosen_verb = [job_file, spares, &session] {
      if (*spares) return show_plan(*job_file, session, &with_findings<&list_and_spares>, &list_and_spares_json);
      return show_plan(*job_file, session, &with_findings<&report::list_text>, &list_alone_json);
    };
  });
}

}  // namespace riserun::cli
