// Figures as named lines of a report, sentences among them.
#pragma once

#include "report/figures/figures.h"
#include "report/text/text_layout.h"

#include <string>

namespace riserun::report {

class FigureRows {
 public:
  FigureRows(FigureGroup group, const Style& style)
      : group_(std::move(group)), units_(style.units), width_(style.width) {}

  /// The figure under its label, with its range or the walls' limit; what the line says before and after it.
  /// @pre the group has it
  void figure(std::string_view key, const std::string& before = "", const std::string& after = "");
  /// The same where the plan has such a figure.
  void figure_if_any(std::string_view key, const std::string& before = "", const std::string& after = "");
  /// A line of its own.
  void line(const std::string& name, const std::string& value);

  /// The figure's value alone, for a sentence.
  std::string value(std::string_view key) const { return written(group_[key], units_); }
  /// `walls' limit 3.54 psi`, of a pressure.
  std::string limit(std::string_view key) const { return written_limit(group_[key], units_); }
  std::string label(std::string_view key) const { return std::string(group_[key].label); }
  const std::string& text() const { return text_; }

 private:
  FigureGroup group_;
  UnitSystem units_;
  std::size_t width_;
  std::string text_;
};

}  // namespace riserun::report
