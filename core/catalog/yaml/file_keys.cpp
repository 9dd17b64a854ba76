#include "catalog/yaml/file_keys.h"

namespace riserun::catalog {

namespace {

/// The path without its last part.
std::string_view above(std::string_view path) {
  if (path.ends_with("[]")) return path.substr(0, path.size() - 2);
  const std::size_t dot = path.rfind('.');
  return dot == std::string_view::npos ? std::string_view() : path.substr(0, dot);
}

}  // namespace

std::string_view FileKey::name() const {
  const std::string_view whole = path;
  return whole.substr(whole.rfind('.') == std::string_view::npos ? 0 : whole.rfind('.') + 1);
}

std::vector<const FileKey*> keys_under(std::span<const FileKey> keys, std::string_view path) {
  std::vector<const FileKey*> under;
  for (const FileKey& key : keys)
    if (key.path != path && above(key.path) == path) under.push_back(&key);
  return under;
}

}  // namespace riserun::catalog
