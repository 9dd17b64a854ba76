#include "cli/manual_page.h"

#include "cli/verbs.h"
#include "plan/job/job_keys.h"
#include "report/text/help_text.h"
#include "report/words/explanations.h"
#include "report/words/help_topics.h"

#include <CLI/CLI.hpp>
#include <fmt/format.h>

#include <cctype>
#include <sstream>

namespace riserun::cli {

namespace {

/// No word of ours is an instruction of man(7).
std::string roff(const std::string& text) {
  std::string safe = text.starts_with('.') || text.starts_with('\'') ? "\\&" : "";
  for (const char c : text) {
    if (c == '\\')
      safe += "\\e";
    else if (c == '-')
      safe += "\\-";
    else
      safe += c;
  }
  return safe;
}

std::string in_capitals(std::string_view word) {
  std::string capitals;
  for (const char c : word) capitals += static_cast<char>(std::toupper(static_cast<unsigned char>(c)));
  return capitals;
}

std::string item(const std::string& name, const std::string& help) {
  return fmt::format(".TP\n.B {}\n{}.\n", roff(name), roff(help));
}

std::string options(const CLI::App& app) {
  std::string text;
  for (const CLI::Option* option : app.get_options([](const CLI::Option* o) { return !o->get_lnames().empty(); }))
    text += item("--" + option->get_lnames().front(), option->get_description());
  return text;
}

}  // namespace

std::string manual_page(const CLI::App& app) {
  std::string text = fmt::format(
      ".TH RISERUN 1 \"\" \"riserun {}\" \"User Commands\"\n.SH NAME\nriserun \\- plans a sealed water reservoir under "
      "an open work table\n.SH SYNOPSIS\n.B riserun\n.I VERB\n[OPTION]...\n.SH DESCRIPTION\n{}\n",
      RISERUN_VERSION, roff(app.get_description()));
  text += ".SH VERBS\n";
  for (const auto& [name, verb] : verb_rows(app)) {
    text += fmt::format(".SS {}\n{}.\n", roff(name), roff(verb->get_description()));
    for (const CLI::Option* option : verb->get_options([](const CLI::Option* o) { return o->get_positional(); }))
      text += item(option->get_name(true), option->get_description());
    text += options(*verb);
  }
  text += ".SH OPTIONS OF EVERY VERB\n" + options(app);
  text += ".SH KEYS OF A JOB\n";
  for (const plan::JobKey& key : plan::job_keys())
    text += item(key.path, fmt::format("{}{}. {}", report::form_words(key), key.needed ? ", needed" : "", key.help));
  for (const report::HelpTopic& topic : report::help_topics()) {
    text += fmt::format(".SH ON {}\n", roff(in_capitals(topic.title)));
    std::istringstream paragraphs{std::string(topic.text)};
    for (std::string paragraph; std::getline(paragraphs, paragraph);) text += ".PP\n" + roff(paragraph) + "\n";
  }
  text += ".SH CODES OF FINDINGS AND CAUTIONS\n";
  for (const report::Explanation& row : report::explanations())
    text += fmt::format(".TP\n.B {}\n{} {} {} [{}]\n", row.code, roff(std::string(row.means)),
                        roff(std::string(row.why)), roff(std::string(row.mend)), roff(std::string(row.source)));
  return text +
         ".SH EXIT STATUS\n.TP\n0\nDone; of a plan: ready.\n.TP\n1\nNo solution, not yet or refused: it says why.\n"
         ".TP\n2\nThe input is wrong, or the answer could not be written.\n"
         ".SH ENVIRONMENT\n.TP\n.B RISERUN_CATALOG\nThe folder of the catalog, where it does not stand by the "
         "program.\n"
         ".TP\n.B NO_COLOR\nNot empty: no bold headings. Nor are there where TERM is dumb.\n";
}

}  // namespace riserun::cli
