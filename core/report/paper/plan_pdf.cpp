#include "report/paper/plan_pdf.h"

#include "quantity/printable.h"
#include "report/card/make_card.h"
#include "report/paper/pages.h"
#include "report/paper/pictures.h"
#include "report/text/card_text.h"
#include "report/text/plan_text.h"
#include "report/words/plan_keys.h"
#include "report/words/say.h"
#include "report/words/step_lists.h"

#include <fmt/format.h>

#include <algorithm>
#include <cctype>
#include <sstream>

namespace riserun::report {

namespace {

std::vector<TypedLine> lines_of(const std::string& text) {
  std::vector<TypedLine> lines;
  std::istringstream in(text);
  for (std::string line; std::getline(in, line);) lines.push_back({line});
  return lines;
}

/// The card's headings are its lines in capitals.
std::vector<TypedLine> card_lines(const std::string& text) {
  std::vector<TypedLine> lines = lines_of(text);
  bool after_gap = true;
  for (TypedLine& line : lines) {
    line.bold = after_gap;
    after_gap = line.text.empty();
  }
  return lines;
}

/// A row of a table that is too long for the page goes on below, at a gap between two of its cells.
void add_folded(std::vector<TypedLine>& lines, TypedLine line) {
  constexpr std::size_t kIndent = 10;
  while (quantity::count_characters(line.text) > kPageWidth) {
    const std::size_t gap = line.text.rfind("  ", kPageWidth);
    if (gap == std::string::npos || gap <= kIndent) break;
    const std::size_t next = line.text.find_first_not_of(' ', gap);
    const std::size_t end = line.text.find_last_not_of(' ', gap) + 1;
    if (next == std::string::npos || end <= kIndent) break;
    lines.push_back({line.text.substr(0, end), line.bold});
    line.text = std::string(kIndent, ' ') + line.text.substr(next);
  }
  lines.push_back(std::move(line));
}

/// A heading is the line over its row of dashes, which the bold letters stand for.
std::vector<TypedLine> book_lines(const std::string& text) {
  std::vector<TypedLine> lines;
  for (TypedLine& line : lines_of(text)) {
    const bool rule = !line.text.empty() && line.text.find_first_not_of('-') == std::string::npos;
    if (rule && !lines.empty())
      lines.back().bold = true;
    else
      add_folded(lines, std::move(line));
  }
  return lines;
}

void drawings(Pages& pages, const plan::Plan& plan, UnitSystem units) {
  pages.new_page();
  for (const Picture& picture : pictures_of(plan, units, pages.room(), pages.letters())) pages.picture(picture);
}

/// The leak test as a sheet that goes to the bench with a pen: what is read is written into it.
void leak_test_sheet(Pages& pages, const plan::Plan& plan, UnitSystem units) {
  const plan::LeakTestPlan& test = plan.leak_test;
  if (!test.possible || plan.verdict == plan::Verdict::refused) return;
  pages.new_page();
  pages.heading("Leak test, to be filled in");
  pages.sentence(fmt::format("At {}: {} The walls hold {}.", fill("{0:dial}", {test.pressure}, units),
                             say(test.basis, units), write_pressure(plan.walls.limit, units)));
  for (const StepList& list : leak_test_steps(plan, units)) {
    if (list.title == kReadings) continue;  // they are written into the table below
    pages.heading(list.title);
    for (const SaidStep& step : list.steps) pages.tick(step.text);
  }
  Form rise{{"rise to", "gauge", "time", "leaks found"}, {}};
  for (const plan::TestRung& rung : test.rungs)
    rise.rows.push_back({fill("{0:mark}", {rung.pressure}, units), "", "", ""});
  Form hold{{"after", "gauge", "air temperature", "metal temperature"}, {}};
  for (const Time& reading : test.readings) hold.rows.push_back({write_time(reading), "", "", ""});
  const Form signed_by{{"tested by", "date", "tight: yes or no", "mended where"}, {{"", "", "", ""}, {"", "", "", ""}}};
  pages.forms(kReadings, {rise, hold, signed_by});
}

}  // namespace

std::string plan_pdf(const plan::Plan& plan, const std::string& job_file, const Style& style) {
  const Style plain{style.units, false};
  Pages pages(paper_of(style.units), plan.job.name.empty() ? "Plan" : plan.job.name, name_and_verdict(plan), false);
  pages.typed(card_lines(card_text(card_of(plan, style.units), job_file, plain)), kCardWidth, true);
  drawings(pages, plan, style.units);
  leak_test_sheet(pages, plan, style.units);
  pages.new_page();
  pages.typed(book_lines(plan_text(plan, plain)), kPageWidth, false);
  return pages.finish();
}

}  // namespace riserun::report
