#include "report/text/help_text.h"

#include "report/text/text_layout.h"

#include <fmt/format.h>

namespace riserun::report {

using plan::JobForm;
using plan::JobKey;

std::string form_words(const JobKey& key) {
  switch (key.form) {
    case JobForm::map:
      return "further keys";
    case JobForm::names:
      return "names of your own, each with a port or a map";
    case JobForm::list:
      return "a list";
    case JobForm::files:
    case JobForm::file:
      return "a list, or the name of a file with one";
    case JobForm::words:
      return "words, or a list of them";
    case JobForm::text:
      return "words";
    case JobForm::choice:
      return fmt::format("{}", fmt::join(key.choices, ", "));
    case JobForm::yes_no:
      return "yes or no";
    case JobForm::count:
      return "a whole number";
    case JobForm::number:
      return "a number";
    case JobForm::quantity:
      return "a measure, as you would say it";
    case JobForm::any:
      return "as the shipped files have it";
  }
  return "";
}

std::string keys_text(const std::vector<const JobKey*>& keys) {
  std::string text;
  for (const JobKey* key : keys) {
    text += wrapped("  ", fmt::format("{}{}: {}", key->path, key->needed ? " (needed)" : "", form_words(*key)), 80);
    text += wrapped("      ", key->help + ".", 80);
  }
  return text;
}

}  // namespace riserun::report
