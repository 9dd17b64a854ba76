#include "catalog/yaml/document.h"

#include "catalog/yaml/limits.h"
#include "catalog/yaml/parse_yaml.h"
#include "catalog/yaml/text_checks.h"

#include <fmt/format.h>

#include <cerrno>
#include <cstring>
#include <fstream>
#include <optional>
#include <system_error>

namespace riserun::catalog {

namespace {

std::string too_large() {
  return fmt::format("larger than {} MB: this is not a file for this program", kLargestFile >> 20U);
}

std::optional<std::string> read_file(const std::filesystem::path& path, Problems& problems) {
  const auto refuse = [&](std::string why) {
    problems.add({path.string(), 0, 0, std::move(why), {}});
    return std::nullopt;
  };
  std::error_code failed;
  const std::filesystem::file_status status = std::filesystem::status(path, failed);
  if (status.type() == std::filesystem::file_type::not_found) return refuse("there is no such file");
  if (status.type() == std::filesystem::file_type::directory) return refuse("this is a folder, not a file");
  if (status.type() == std::filesystem::file_type::regular) {
    const std::uintmax_t size = std::filesystem::file_size(path, failed);
    if (!failed && size > kLargestFile) return refuse(too_large());
  }
  errno = 0;
  std::ifstream stream(path, std::ios::binary);
  if (!stream) return refuse(fmt::format("cannot be opened for reading: {}", std::strerror(errno)));
  std::string text;
  char buffer[65536];
  while (stream.read(buffer, sizeof buffer) || stream.gcount() > 0) {
    text.append(buffer, static_cast<std::size_t>(stream.gcount()));
    if (text.size() > kLargestFile) return refuse(too_large());
  }
  if (stream.bad()) return refuse(fmt::format("cannot be read to its end: {}", std::strerror(errno)));
  return text;
}

}  // namespace

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
    problems.add({data->file, 0, 0, too_large(), {}});
  } else if (detail::check_bytes(*data, problems)) {
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

}  // namespace riserun::catalog
