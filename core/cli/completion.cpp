#include "cli/completion.h"

#include "cli/verbs.h"
#include "report/words/explanations.h"

#include <CLI/CLI.hpp>
#include <fmt/format.h>

#include <vector>

namespace riserun::cli {

namespace {

struct Verb {
  std::string name;
  std::string help;
  std::vector<std::pair<std::string, std::string>> options;  // "--air", and what it is
  std::vector<std::string> further;                          // its own verbs: "take"
};

std::vector<std::pair<std::string, std::string>> options_of(const CLI::App& app) {
  std::vector<std::pair<std::string, std::string>> options;
  for (const CLI::Option* option : app.get_options([](const CLI::Option* o) { return !o->get_lnames().empty(); }))
    options.emplace_back("--" + option->get_lnames().front(), option->get_description());
  return options;
}

std::vector<Verb> verbs_of(const CLI::App& app) {
  std::vector<Verb> verbs;
  const auto common = options_of(app);
  for (const CLI::App* verb : app.get_subcommands([](const CLI::App*) { return true; })) {
    // A verb of a verb is completed as a word of it.
    verbs.push_back({verb->get_name(), verb->get_description(), options_of(*verb), {}});
    verbs.back().options.insert(verbs.back().options.end(), common.begin(), common.end());
    for (const VerbRow& further : verb_rows(*verb)) verbs.back().further.push_back(further.name);
    if (verb->get_name() == "explain")
      for (const report::Explanation& row : report::explanations()) verbs.back().further.emplace_back(row.code);
  }
  return verbs;
}

std::string names_of(const Verb& verb) {
  std::string names;
  for (const auto& [name, help] : verb.options) names += (names.empty() ? "" : " ") + name;
  return names;
}

std::string in_single_quotes(const std::string& text) {
  std::string quoted = "'";
  for (const char c : text) quoted += c == '\'' ? std::string("'\\''") : std::string(1, c);
  return quoted + "'";
}

std::string for_bash(const std::vector<Verb>& verbs) {
  std::string cases;
  std::string names;
  for (const Verb& verb : verbs) {
    names += (names.empty() ? "" : " ") + verb.name;
    cases += fmt::format("    {}) words=\"{}\" further=\"{}\" ;;\n", verb.name, names_of(verb),
                         fmt::join(verb.further, " "));
  }
  return fmt::format(
      "# Completion of riserun for bash.\n_riserun() {{\n  local word=\"${{COMP_WORDS[COMP_CWORD]}}\" words=\"\" "
      "further=\"\"\n"
      "  if [ \"$COMP_CWORD\" -eq 1 ]; then\n    COMPREPLY=($(compgen -W \"{}\" -- \"$word\"))\n    return\n  fi\n"
      "  case \"${{COMP_WORDS[1]}}\" in\n{}  esac\n  case \"$word\" in\n"
      "    -*) COMPREPLY=($(compgen -W \"$words\" -- \"$word\")) ;;\n"
      "    *) COMPREPLY=($(compgen -W \"$further\" -- \"$word\") $(compgen -f -- \"$word\")) ;;\n  esac\n}}\n"
      "complete -o filenames -F _riserun riserun\n",
      names, cases);
}

std::string for_zsh(const std::vector<Verb>& verbs) {
  std::string cases;
  std::string names;
  for (const Verb& verb : verbs) {
    names += fmt::format(" {}", in_single_quotes(verb.name + ":" + verb.help));
    cases +=
        fmt::format("    {}) options=({}) further=({}) ;;\n", verb.name, names_of(verb), fmt::join(verb.further, " "));
  }
  return fmt::format(
      "#compdef riserun\n# Completion of riserun for zsh.\n_riserun() {{\n  local -a verbs options further\n  "
      "verbs=({} )\n"
      "  if (( CURRENT == 2 )); then\n    _describe verb verbs\n    return\n  fi\n  case $words[2] in\n{}  esac\n"
      "  if [[ $words[CURRENT] == -* ]]; then\n    compadd -- $options\n  else\n    compadd -- $further\n    _files\n  "
      "fi\n}}\n"
      "compdef _riserun riserun\n",
      names, cases);
}

std::string for_fish(const std::vector<Verb>& verbs) {
  std::string script = "# Completion of riserun for fish.\n";
  for (const Verb& verb : verbs) {
    script += fmt::format("complete -c riserun -n __fish_use_subcommand -f -a {} -d {}\n", verb.name,
                          in_single_quotes(verb.help));
    if (!verb.further.empty())
      script += fmt::format("complete -c riserun -n '__fish_seen_subcommand_from {}' -f -a '{}'\n", verb.name,
                            fmt::join(verb.further, " "));
    for (const auto& [name, help] : verb.options)
      script += fmt::format("complete -c riserun -n '__fish_seen_subcommand_from {}' -l {} -d {}\n", verb.name,
                            name.substr(2), in_single_quotes(help));
  }
  return script;
}

}  // namespace

std::string completion_for(const std::string& shell, const CLI::App& app) {
  const std::vector<Verb> verbs = verbs_of(app);
  if (shell == "bash") return for_bash(verbs);
  return shell == "zsh" ? for_zsh(verbs) : for_fish(verbs);
}

}  // namespace riserun::cli
