#include "report/text/explain_text.h"

#include "report/text/text_layout.h"

namespace riserun::report {

std::string explain_text(const Explanation& row) {
  std::string text = std::string(row.code) + "\n";
  text += wrapped("  means   ", std::string(row.means));
  text += wrapped("  why     ", std::string(row.why));
  text += wrapped("  mend    ", std::string(row.mend));
  text += wrapped("  source  ", std::string(row.source));
  return text;
}

std::string explanations_text() {
  std::string text;
  for (const Explanation& row : explanations())
    text += wrapped("  " + std::string(row.code) + "  ", std::string(row.means));
  return text;
}

}  // namespace riserun::report
