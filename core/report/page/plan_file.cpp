#include "report/page/plan_file.h"

#include "quantity/input_error.h"
#include "report/card/make_card.h"
#include "report/json/plan_json.h"
#include "report/page/list_csv.h"
#include "report/page/plan_html.h"
#include "report/page/plan_markdown.h"
#include "report/paper/plan_pdf.h"
#include "report/paper/plan_svg.h"
#include "report/text/card_text.h"

#include <fmt/format.h>

#include <algorithm>
#include <cctype>
#include <vector>

namespace riserun::report {

namespace {

std::string html_of(const plan::Plan& plan, const std::string& /*job_file*/, const Style& style) {
  return plan_html(plan, style.units);
}
std::string csv_of(const plan::Plan& plan, const std::string& /*job_file*/, const Style& style) {
  return list_csv(plan, style.units);
}
std::string markdown_of(const plan::Plan& plan, const std::string& /*job_file*/, const Style& style) {
  return plan_markdown(plan, style.units);
}
std::string json_of(const plan::Plan& plan, const std::string& /*job_file*/, const Style& style) {
  return plan_json(plan, style.units);
}
std::string text_of(const plan::Plan& plan, const std::string& job_file, const Style& style) {
  return card_text(card_of(plan, style.units), job_file, Style{style.units, false});
}

}  // namespace

std::span<const PlanForm> plan_forms() {
  static constexpr PlanForm kForms[] = {{".html", "card, list and steps for a phone", &html_of},
                                        {".pdf", "card, drawings and whole plan to print", &plan_pdf},
                                        {".svg", "the drawings", &plan_svg},

                                        {".csv", "list and cuts for a spreadsheet", &csv_of},
                                        {".md", "card and list in Markdown", &markdown_of},
                                        {".json", "the whole plan for a program", &json_of},
                                        {".txt", "the card", &text_of}};
  return kForms;
}

const PlanForm& plan_form_of(const std::string& file) {
  std::string ending = file.substr(std::min(file.rfind('.'), file.size()));
  for (char& c : ending) c = static_cast<char>(std::tolower(static_cast<unsigned char>(c)));
  std::vector<std::string> allowed;
  for (const PlanForm& form : plan_forms()) {
    if (form.ending == ending) return form;
    allowed.push_back(fmt::format("{} ({})", form.ending, form.what));
  }
  throw quantity::InputError(
      {{file, 0, 0, fmt::format("no form has this ending; there are {}", fmt::join(allowed, ", ")), ""}});
}

}  // namespace riserun::report
