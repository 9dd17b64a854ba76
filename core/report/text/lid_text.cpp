#include "report/text/plan_text.h"
#include "report/words/lid_rows.h"

#include <fmt/format.h>

namespace riserun::report {

std::string lid_text(const plan::Plan& plan, const Style& style) {
  const std::vector<LidRow> said = lid_rows(plan, style.units);
  if (said.empty()) return "";
  std::vector<std::vector<std::string>> rows = {{"", "bung", "from left", "from front", "hole", "boss", "wrench", ""}};
  for (const LidRow& row : said)
    rows.push_back({row.number, row.port, row.from_left, row.from_front, row.hole, row.boss, row.room, row.remark});
  return heading("Bungs and the lid", style) + wrapped("  ", lid_datum(plan, style.units), style.width) +
         table(rows, "  ", {2, 3, 4, 5, 6}, style.width) + "\n";
}

}  // namespace riserun::report
