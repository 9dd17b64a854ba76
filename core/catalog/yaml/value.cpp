#include "catalog/yaml/value.h"

#include <algorithm>

namespace riserun::catalog {

namespace {

const std::string kNoFile;

}  // namespace

Value::Shape Value::shape() const { return data_ == nullptr || missing_ ? Shape::missing : data_->nodes[node_].shape; }

std::string_view Value::text() const { return is_text() ? data_->nodes[node_].text : std::string_view(); }

quantity::Written Value::written() const {
  if (data_ == nullptr) return {text(), std::nullopt, {}};
  return {text(), data_->units, data_->units_key};
}

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

std::string at_path(const Value& value) {
  const std::string path = value.path();
  return path.empty() ? path : path + ": ";
}

}  // namespace riserun::catalog
