#include "report/json/explain_json.h"

#include "report/json/plain_json.h"

#include <nlohmann/json.hpp>

namespace riserun::report {

std::string explanations_json(const std::vector<Explanation>& rows) {
  nlohmann::ordered_json list = nlohmann::ordered_json::array();
  for (const Explanation& row : rows)
    list.push_back(
        {{"code", row.code}, {"means", row.means}, {"why", row.why}, {"mend", row.mend}, {"source", row.source}});
  return written_json(list);
}

}  // namespace riserun::report
