#include "report/json/error_json.h"

#include "report/json/plain_json.h"

#include <nlohmann/json.hpp>

#include <utility>

namespace riserun::report {

using json = nlohmann::ordered_json;

std::string error_json(const quantity::InputError& error) {
  json errors = json::array();
  for (const quantity::Problem& problem : error.problems())
    errors.push_back({{"file", problem.file},
                      {"line", problem.line},
                      {"column", problem.column},
                      {"code", problem.code.empty() ? json(nullptr) : json(problem.code)},
                      {"message", problem.message},
                      {"source_line", problem.source_line}});
  return written_json({{"errors", std::move(errors)}});
}

}  // namespace riserun::report
