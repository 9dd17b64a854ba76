#include "report/text/explain_text.h"

namespace riserun::report {

std::string explain_text(const Explanation& row, const Style& style) {
  std::string text = std::string(row.code) + "\n";
  text += wrapped("  means   ", std::string(row.means), style.width);
  text += wrapped("  why     ", std::string(row.why), style.width);
  text += wrapped("  mend    ", std::string(row.mend), style.width);
  text += wrapped("  source  ", std::string(row.source), style.width);
  return text;
}

std::string explanations_text(const Style& style) {
  std::string text;
  for (const Explanation& row : explanations())
    text += wrapped("  " + std::string(row.code) + "  ", std::string(row.means), style.width);
  return text;
}

}  // namespace riserun::report
