#include "catalog/yaml/document.h"

#include "catalog/yaml/limits.h"
#include "catalog/yaml/parse_table.h"
#include "catalog/yaml/parse_yaml.h"
#include "catalog/yaml/read_file.h"
#include "catalog/yaml/text_checks.h"

#include <optional>

namespace riserun::catalog {

Document::Document(std::unique_ptr<detail::DocumentData> data) : data_(std::move(data)) {}
Document::Document(Document&&) noexcept = default;
Document& Document::operator=(Document&&) noexcept = default;
Document::~Document() = default;

Document Document::load(const std::filesystem::path& path, Problems& problems) {
  std::optional<std::string> text = read_file(path, problems);
  if (text) return parse(std::move(*text), path.string(), problems);
  auto data = std::make_unique<detail::DocumentData>();
  data->file = path.string();
  data->find_lines();
  return Document(std::move(data));
}

Document Document::parse(std::string text, std::string name, Problems& problems) {
  auto data = std::make_unique<detail::DocumentData>();
  data->file = std::move(name);
  if (text.starts_with("\xEF\xBB\xBF")) text.erase(0, 3);  // a byte order mark says nothing in UTF-8
  const bool fits = text.size() <= kLargestFile;
  if (fits) data->text = std::move(text);
  data->find_lines();
  if (!fits) {
    problems.add({data->file, 0, 0, too_large(), {}, std::string(quantity::mistake::kFileNotRead)});
  } else if (detail::check_bytes(*data, problems)) {
    if (detail::is_table_name(data->file))
      detail::parse_table(*data, problems);
    else
      detail::parse_yaml(*data, problems);
  }
  return Document(std::move(data));
}

std::optional<quantity::UnitSystem> Document::settle_units(std::optional<quantity::UnitSystem> otherwise) {
  const Value own = root()["units"];
  data_->units = own.exists() ? std::nullopt : otherwise;
  if (own.text() == "inch") data_->units = quantity::UnitSystem::inch;
  if (own.text() == "metric") data_->units = quantity::UnitSystem::metric;
  data_->units_key = own.exists() ? "" : "units: inch";
  return data_->units;
}

Value Document::root() const {
  Value result(data_.get(), 0);
  result.missing_ = data_->nodes.empty();
  return result;
}

bool is_table_file(const std::filesystem::path& path) { return detail::is_table_name(path.string()); }

bool Document::is_table() const { return detail::is_table_name(data_->file); }

}  // namespace riserun::catalog
