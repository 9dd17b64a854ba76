#include "catalog/yaml/document.h"

#include "catalog/yaml/document_data.h"

#include <algorithm>
#include <fstream>
#include <system_error>
#include <tuple>

namespace riserun::catalog {

namespace {

constexpr std::uintmax_t kLargestFile = 16U << 20U;
constexpr std::size_t kLongestSourceLine = 160;

const std::string kNoFile;

int characters_before(std::string_view line, std::size_t bytes) {
  const std::string_view part = line.substr(0, bytes);
  return static_cast<int>(std::count_if(part.begin(), part.end(), [](char c) { return (c & 0xC0) != 0x80; }));
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
    if (!failed && size > kLargestFile) return refuse("larger than 16 MB: this is not a file for this program");
  }
  std::ifstream stream(path, std::ios::binary);
  if (!stream) return refuse("cannot be opened for reading");
  std::string text;
  char buffer[65536];
  while (stream.read(buffer, sizeof buffer) || stream.gcount() > 0) {
    text.append(buffer, static_cast<std::size_t>(stream.gcount()));
    if (text.size() > kLargestFile) return refuse("larger than 16 MB: this is not a file for this program");
  }
  return text;
}

}  // namespace

namespace detail {

void DocumentData::find_lines() {
  line_starts = {0};
  for (std::size_t i = 0; i < text.size(); ++i) {
    const bool lone_return = text[i] == '\r' && (i + 1 == text.size() || text[i + 1] != '\n');
    if (text[i] == '\n' || lone_return) line_starts.push_back(static_cast<std::uint32_t>(i + 1));
  }
}

std::string_view DocumentData::line_text(std::uint32_t line) const {
  const std::size_t begin = line_starts[line];
  const std::size_t end = line + 1 < line_starts.size() ? line_starts[line + 1] : text.size();
  std::string_view whole = std::string_view(text).substr(begin, end - begin);
  while (!whole.empty() && (whole.back() == '\n' || whole.back() == '\r')) whole.remove_suffix(1);
  return whole;
}

quantity::Problem DocumentData::problem_at(std::size_t offset, std::string message) const {
  const auto after = std::upper_bound(line_starts.begin(), line_starts.end(), offset);
  const auto line = static_cast<std::uint32_t>(after - line_starts.begin()) - 1;
  const std::string_view whole = line_text(line);
  const int column = characters_before(whole, offset - line_starts[line]) + 1;
  std::string shown = whole.size() <= kLongestSourceLine ? std::string(whole) : std::string();
  for (char& c : shown)
    if (static_cast<unsigned char>(c) < 0x20) c = ' ';  // a tab would move the caret
  return {file, static_cast<int>(line) + 1, column, std::move(message), std::move(shown)};
}

}  // namespace detail

Value::Shape Value::shape() const { return data_ == nullptr || missing_ ? Shape::missing : data_->nodes[node_].shape; }

std::string_view Value::text() const { return is_text() ? data_->nodes[node_].text : std::string_view(); }

std::size_t Value::size() const { return is_list() || is_map() ? data_->nodes[node_].count : 0; }

std::vector<Value> Value::items() const {
  std::vector<Value> result;
  if (size() == 0) return result;
  result.reserve(size());
  for (std::uint32_t n = data_->nodes[node_].first; n != detail::kNoNode; n = data_->nodes[n].next)
    result.push_back(Value(data_, n));
  return result;
}

std::vector<std::pair<Value, Value>> Value::entries() const {
  std::vector<std::pair<Value, Value>> result;
  if (!is_map()) return result;
  for (const Value& value : items()) result.emplace_back(Value(data_, data_->nodes[value.node_].key), value);
  return result;
}

Value Value::operator[](std::string_view key) const {
  if (is_map()) {
    for (std::uint32_t n = data_->nodes[node_].first; n != detail::kNoNode; n = data_->nodes[n].next)
      if (data_->nodes[data_->nodes[n].key].text == key) return Value(data_, n);
  }
  Value result = *this;
  result.missing_ = true;
  return result;
}

const std::string& Value::file() const { return data_ == nullptr ? kNoFile : data_->file; }
int Value::line() const { return problem({}).line; }
int Value::column() const { return problem({}).column; }
std::size_t Value::offset() const { return data_ == nullptr || data_->nodes.empty() ? 0 : data_->nodes[node_].offset; }
std::string Value::source_line() const { return problem({}).source_line; }

std::string Value::path() const {
  std::string result;
  if (data_ == nullptr) return result;
  std::uint32_t at = node_;
  while (at != detail::kNoNode && data_->nodes[at].parent != detail::kNoNode) {
    const detail::Node& node = data_->nodes[at];
    const detail::Node& parent = data_->nodes[node.parent];
    if (node.key != detail::kNoNode) {
      result = "." + std::string(data_->nodes[node.key].text) + result;
    } else if (parent.shape == Shape::list) {
      std::size_t place = 1;
      for (std::uint32_t n = parent.first; n != at; n = data_->nodes[n].next) ++place;
      result = "[" + std::to_string(place) + "]" + result;
    }
    at = node.parent;
  }
  return result.starts_with('.') ? result.substr(1) : result;
}

quantity::Problem Value::problem(std::string message, std::size_t offset) const {
  if (data_ == nullptr) return {{}, 0, 0, std::move(message), {}};
  if (data_->nodes.empty()) return data_->problem_at(0, std::move(message));
  const detail::Node& node = data_->nodes[node_];
  std::size_t at = node.offset;
  // Within a text that stands in the file as it is, the mistake's own place.
  if (!missing_ && is_text() && node.text.data() >= data_->text.data() &&
      node.text.data() <= data_->text.data() + data_->text.size())
    at = static_cast<std::size_t>(node.text.data() - data_->text.data()) + std::min(offset, node.text.size());
  return data_->problem_at(at, std::move(message));
}

void Problems::add(quantity::Problem problem) { problems_.push_back(std::move(problem)); }

void Problems::take(Problems other) {
  problems_.insert(problems_.end(), std::make_move_iterator(other.problems_.begin()),
                   std::make_move_iterator(other.problems_.end()));
}

void Problems::throw_if_any() && {
  if (problems_.empty()) return;
  std::vector<std::string> files;  // in the order in which they were first complained about
  const auto rank = [&](const quantity::Problem& problem) {
    return std::find(files.begin(), files.end(), problem.file) - files.begin();
  };
  for (const quantity::Problem& problem : problems_)
    if (std::find(files.begin(), files.end(), problem.file) == files.end()) files.push_back(problem.file);
  std::stable_sort(problems_.begin(), problems_.end(), [&](const auto& a, const auto& b) {
    return std::tuple(rank(a), a.line, a.column) < std::tuple(rank(b), b.line, b.column);
  });
  const auto same = [](const quantity::Problem& a, const quantity::Problem& b) {
    return a.file == b.file && a.line == b.line && a.column == b.column && a.message == b.message;
  };
  problems_.erase(std::unique(problems_.begin(), problems_.end(), same), problems_.end());
  throw quantity::InputError(std::move(problems_));
}

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
  data->text = std::move(text);
  data->find_lines();
  if (data->text.size() > kLargestFile) {
    problems.add({data->file, 0, 0, "larger than 16 MB: this is not a file for this program", {}});
  } else if (detail::check_bytes(*data, problems)) {
    detail::parse_yaml(*data, problems);
  }
  return Document(std::move(data));
}

Value Document::root() const {
  Value result(data_.get(), 0);
  result.missing_ = data_->nodes.empty();
  return result;
}

}  // namespace riserun::catalog
