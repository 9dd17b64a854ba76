#include "report/text/figure_rows.h"

namespace riserun::report {

void FigureRows::figure(std::string_view key, const std::string& before, const std::string& after) {
  const Figure& figure = group_[key];
  const std::string value = figure.limit ? written_with_limit(figure, units_) : written_with_range(figure, units_);
  line(std::string(figure.label), before + value + after);
}

void FigureRows::figure_if_any(std::string_view key, const std::string& before, const std::string& after) {
  if (group_.find(key) != nullptr) figure(key, before, after);
}

void FigureRows::line(const std::string& name, const std::string& value) { text_ += named(name, value, width_); }

}  // namespace riserun::report
