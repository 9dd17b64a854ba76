#include "cli/completion.h"

#include "catalog/load/load.h"
#include "cli/verbs.h"
#include "plan/job/job_keys.h"
#include "report/words/explanations.h"

#include <CLI/CLI.hpp>
#include <fmt/format.h>

#include <algorithm>
#include <set>
#include <vector>

namespace riserun::cli {

namespace {

struct Verb {
  std::string name;
  std::string help;
  std::vector<std::pair<std::string, std::string>> options;  // "--air", and what it is
  std::vector<std::string> further;                          // what may stand behind it: "take", "1 FNPT"
};

/// What can be named: it may hold blanks.
struct Names {
  std::vector<std::string> ports;  // that parts have
  std::vector<std::string> parts;  // what they are called, and their materials
  std::vector<std::string> keys;   // of a job
};

/// The options whose value names parts.
constexpr std::string_view kNamesParts[] = {"--need", "--avoid"};

std::vector<std::string> sorted(const std::set<std::string>& names) { return {names.begin(), names.end()}; }

Names known_names() {
  const catalog::Catalog catalog = catalog::load_shipped_catalog();
  std::set<std::string> ports;
  for (const catalog::Part& part : catalog.parts())
    for (const catalog::Port& port : part.ports) ports.insert(catalog.written(port.type));
  std::set<std::string> parts;
  for (const catalog::Family& family : catalog.families()) parts.insert(family.name);
  for (const catalog::Material& material : catalog.materials()) parts.insert(material.name);
  std::set<std::string> keys;
  for (const plan::JobKey& key : plan::job_keys())
    if (!key.path.ends_with("[]") && !key.path.ends_with(".*")) keys.insert(std::string(key.name()));
  return {sorted(ports), sorted(parts), sorted(keys)};
}

std::vector<std::pair<std::string, std::string>> options_of(const CLI::App& app) {
  std::vector<std::pair<std::string, std::string>> options;
  for (const CLI::Option* option : app.get_options([](const CLI::Option* o) { return !o->get_lnames().empty(); }))
    options.emplace_back("--" + option->get_lnames().front(), option->get_description());
  return options;
}

std::vector<Verb> verbs_of(const CLI::App& app, const Names& names) {
  std::vector<Verb> verbs;
  const auto common = options_of(app);
  for (const CLI::App* verb : app.get_subcommands([](const CLI::App*) { return true; })) {
    // A verb of a verb is completed as a word of it.
    verbs.push_back({verb->get_name(), verb->get_description(), options_of(*verb), {}});
    verbs.back().options.insert(verbs.back().options.end(), common.begin(), common.end());
    for (const VerbRow& further : verb_rows(*verb)) verbs.back().further.push_back(further.name);
    if (verb->get_name() == "explain")
      for (const report::Explanation& row : report::explanations()) verbs.back().further.emplace_back(row.code);
    if (verb->get_name() == "chain") verbs.back().further = names.ports;
    if (verb->get_name() == "catalog") verbs.back().further = names.parts;
    if (verb->get_name() == "help") verbs.back().further = names.keys;
  }
  return verbs;
}

std::vector<std::string> options_of(const Verb& verb) {
  std::vector<std::string> names;
  for (const auto& [name, help] : verb.options) names.push_back(name);
  return names;
}

std::string in_single_quotes(const std::string& text) {
  std::string quoted = "'";
  for (const char c : text) quoted += c == '\'' ? std::string("'\\''") : std::string(1, c);
  return quoted + "'";
}

/// Each in quotes, as words of a shell.
std::string quoted(const std::vector<std::string>& names) {
  std::string words;
  for (const std::string& name : names) words += (words.empty() ? "" : " ") + in_single_quotes(name);
  return words;
}

/// What is offered is compared a line at a time, as a port's name has a blank; `-o filenames` has bash put what it
/// takes in quotes.
std::string for_bash(const std::vector<Verb>& verbs, const Names& names) {
  std::string cases;
  std::vector<std::string> all;
  for (const Verb& verb : verbs) {
    all.push_back(verb.name);
    cases += fmt::format("    {}) options=({}) further=({}) ;;\n", verb.name, quoted(options_of(verb)),
                         quoted(verb.further));
  }
  return fmt::format(
      "# Completion of riserun for bash.\n"
      "_riserun_offer() {{\n"
      "  local word=\"${{1#[\\\"\\']}}\" name\n  shift\n"
      "  for name in \"$@\"; do\n    case \"$name\" in \"$word\"*) COMPREPLY+=(\"$name\") ;; esac\n  done\n}}\n"
      "_riserun() {{\n  local word=\"${{COMP_WORDS[COMP_CWORD]}}\" options=() further=() file\n  COMPREPLY=()\n"
      "  if [ \"$COMP_CWORD\" -eq 1 ]; then\n    _riserun_offer \"$word\" {}\n    return\n  fi\n"
      "  case \"${{COMP_WORDS[COMP_CWORD-1]}}\" in\n    {}) _riserun_offer \"$word\" {}; return ;;\n  esac\n"
      "  case \"${{COMP_WORDS[1]}}\" in\n{}  esac\n"
      "  case \"$word\" in\n    -*) _riserun_offer \"$word\" \"${{options[@]}}\" ;;\n"
      "    *) _riserun_offer \"$word\" \"${{further[@]}}\"\n"
      "       while IFS= read -r file; do COMPREPLY+=(\"$file\"); done < <(compgen -f -- \"$word\") ;;\n  esac\n}}\n"
      "complete -o filenames -F _riserun riserun\n",
      quoted(all), fmt::join(kNamesParts, "|"), quoted(names.parts), cases);
}

std::string for_zsh(const std::vector<Verb>& verbs, const Names& names) {
  std::string cases;
  std::string all;
  for (const Verb& verb : verbs) {
    all += fmt::format(" {}", in_single_quotes(verb.name + ":" + verb.help));
    cases += fmt::format("    {}) options=({}) further=({}) ;;\n", verb.name, quoted(options_of(verb)),
                         quoted(verb.further));
  }
  return fmt::format(
      "#compdef riserun\n# Completion of riserun for zsh.\n_riserun() {{\n  local -a verbs options further\n  "
      "verbs=({} )\n"
      "  if (( CURRENT == 2 )); then\n    _describe verb verbs\n    return\n  fi\n"
      "  case $words[CURRENT-1] in\n    {}) compadd -- {}; return ;;\n  esac\n"
      "  case $words[2] in\n{}  esac\n"
      "  if [[ $words[CURRENT] == -* ]]; then\n    compadd -- $options\n  else\n    compadd -- $further\n    _files\n  "
      "fi\n}}\n"
      "compdef _riserun riserun\n",
      all, fmt::join(kNamesParts, "|"), quoted(names.parts), cases);
}

/// fish calls a function for what may stand there: a name a line.
std::string for_fish(const std::vector<Verb>& verbs, const Names& names) {
  std::string script = "# Completion of riserun for fish.\n";
  script += fmt::format("function __riserun_parts\n  printf '%s\\n' {}\nend\n", quoted(names.parts));
  for (const Verb& verb : verbs) {
    script += fmt::format("complete -c riserun -n __fish_use_subcommand -f -a {} -d {}\n", verb.name,
                          in_single_quotes(verb.help));
    if (!verb.further.empty()) {
      std::string function = "__riserun_" + verb.name;
      std::replace(function.begin(), function.end(), '-', '_');
      script += fmt::format(
          "function {0}\n  printf '%s\\n' {1}\nend\n"
          "complete -c riserun -n '__fish_seen_subcommand_from {2}' -f -a '({0})'\n",
          function, quoted(verb.further), verb.name);
    }
    for (const auto& [name, help] : verb.options) {
      const bool parts = std::find(std::begin(kNamesParts), std::end(kNamesParts), name) != std::end(kNamesParts);
      script += fmt::format("complete -c riserun -n '__fish_seen_subcommand_from {}' -l {} -d {}{}\n", verb.name,
                            name.substr(2), in_single_quotes(help), parts ? " -x -a '(__riserun_parts)'" : "");
    }
  }
  return script;
}

}  // namespace

std::string completion_for(const std::string& shell, const CLI::App& app) {
  const Names names = known_names();
  const std::vector<Verb> verbs = verbs_of(app, names);
  if (shell == "bash") return for_bash(verbs, names);
  return shell == "zsh" ? for_zsh(verbs, names) : for_fish(verbs, names);
}

}  // namespace riserun::cli
