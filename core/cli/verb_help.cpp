// Help by words, and what other programs make of the same tables: the manual page, completion for shells, the schema of
// a job for editors.
#include "catalog/words/words.h"
#include "cli/command.h"
#include "cli/completion.h"
#include "cli/manual_page.h"
#include "cli/verbs.h"
#include "plan/job/job_keys.h"
#include "report/json/plan_schema.h"
#include "report/json/schema_json.h"
#include "report/text/help_text.h"
#include "report/words/glossary.h"
#include "report/words/help_topics.h"

#include <CLI/CLI.hpp>
#include <fmt/format.h>

#include <algorithm>
#include <ostream>
#include <sstream>

namespace riserun::cli {

namespace {

struct Options {
  std::vector<std::string> words;
  std::string schema;
  bool manual = false;
  std::string shell;
};

bool says_all(const std::string& text, const std::vector<std::string>& words) {
  const std::string lower = catalog::lower_case(text);
  return std::all_of(words.begin(), words.end(), [&](const std::string& word) {
    return lower.find(catalog::lower_case(word)) != std::string::npos;
  });
}

/// Verbs and their options that have all the words in name and help.
std::string options_with(const CLI::App& app, const std::vector<std::string>& words) {
  std::string text;
  const auto add = [&](const std::string& name, const std::string& help) {
    if (says_all(name + " " + help, words)) text += report::wrapped("  " + name + "  ", help + ".", 80);
  };
  for (const auto& [name, verb] : verb_rows(app)) {
    add("riserun " + name, verb->get_description());
    for (const CLI::Option* option : verb->get_options([](const CLI::Option* o) { return !o->get_lnames().empty(); }))
      if (option->get_lnames().front() != "help")
        add(fmt::format("riserun {} --{}", name, option->get_lnames().front()), option->get_description());
  }
  return text;
}

std::string topics_with(const std::vector<std::string>& words) {
  std::string text;
  for (const report::HelpTopic& topic : report::help_topics()) {
    if (!says_all(std::string(topic.title), words)) continue;
    std::istringstream paragraphs{std::string(topic.text)};
    for (std::string paragraph; std::getline(paragraphs, paragraph);) text += report::wrapped("  ", paragraph, 80);
  }
  return text;
}

/// Words of the trade whose own name has all the words; all of them under `glossary`.
std::string terms_with(const std::vector<std::string>& words) {
  std::string text;
  for (const report::Term& term : report::glossary())
    if (says_all("glossary " + std::string(term.name), words))
      text += report::wrapped(fmt::format("  {}: ", term.name), std::string(term.meaning) + ".", 80);
  return text;
}

int help_with(const CLI::App& app, const std::vector<std::string>& words, const Session& session) {
  std::vector<const plan::JobKey*> keys;
  for (const plan::JobKey& key : plan::job_keys())
    if (says_all(key.path + " " + key.help, words)) keys.push_back(&key);
  const std::string options = options_with(app, words);
  const std::string topics = topics_with(words) + terms_with(words);
  session.out << topics << (topics.empty() ? "" : "\n");
  if (!keys.empty()) session.out << "In a job file\n" << report::keys_text(keys);
  if (!options.empty()) session.out << (keys.empty() ? "" : "\n") << "On the command line\n" << options;
  if (!topics.empty() || !keys.empty() || !options.empty()) return kDone;
  session.out << fmt::format(
      "Nothing says '{}'. riserun help lists the verbs, riserun help job all keys of a job; verdict, order, words, "
      "files and glossary are explained.\n",
      fmt::join(words, " "));
  return kNoSolution;
}

int run_help(const CLI::App& app, const Options& options, const Session& session) {
  if (!options.schema.empty()) {
    session.out << (options.schema == "plan" ? report::plan_schema_json() : report::schema_json(options.schema));
  } else if (options.manual) {
    session.out << manual_page(app);
  } else if (!options.shell.empty()) {
    session.out << completion_for(options.shell, app);
  } else if (options.words.empty()) {
    // Of the whole program: help() of itself would be that of the verb that was read, which is this one.
    session.out << app.get_formatter()->make_help(&app, app.get_name(), CLI::AppFormatMode::Normal);
  } else if (options.words == std::vector<std::string>{"job"}) {
    std::vector<const plan::JobKey*> keys;
    for (const plan::JobKey& key : plan::job_keys()) keys.push_back(&key);
    session.out << report::keys_text(keys);
  } else {
    return help_with(app, options.words, session);
  }
  return kDone;
}

}  // namespace

void add_help_verb(CLI::App& app, Session& session) {
  const auto options = std::make_shared<Options>();
  CLI::App* verb = app.add_subcommand("help", "What a key of a job, a verb or an option is, by any words of it");
  verb->add_option("words", options->words,
                   "As \"regulator\" or \"bare panel\"; \"job\" for all keys of a job, \"verdict\", \"order\", "
                   "\"words\", \"files\", \"glossary\"");
  std::vector<std::string> schemas = report::schema_files();
  schemas.emplace_back("plan");
  verb->add_option(
          "--schema", options->schema,
          "The JSON Schema of such a file, for editors: job, bin, or catalog, which is own parts and prices; "
          "joints, materials, losses or pipe of a catalog folder of your own; or plan, of what plan --json says")
      ->check(CLI::IsMember(schemas));
  verb->add_flag("--man", options->manual, "The manual page");
  verb->add_option("--completion", options->shell, "What completes riserun's words in that shell")
      ->check(CLI::IsMember({"bash", "zsh", "fish"}));
  verb->callback([options, &app, &session] {
    session.chosen_verb = [options, &app, &session] { return run_help(app, *options, session); };
  });
}

}  // namespace riserun::cli
