#include "report/json/schema_json.h"

#include "plan/job/job_keys.h"

#include <nlohmann/json.hpp>

namespace riserun::report {

namespace {

using Json = nlohmann::ordered_json;
using plan::JobForm;
using plan::JobKey;

const JobKey* row_of(const std::string& path) {
  for (const JobKey& key : plan::job_keys())
    if (key.path == path) return &key;
  return nullptr;
}

Json schema_of(const JobKey& key);

/// The keys of a map.
Json map_of(const std::string& path) {
  Json schema{{"type", "object"}, {"properties", Json::object()}, {"additionalProperties", false}};
  Json needed = Json::array();
  for (const JobKey* key : plan::keys_under(path)) {
    if (key->path.ends_with("[]") || key->path.ends_with(".*")) continue;
    schema["properties"][std::string(key->name())] = schema_of(*key);
    if (key->needed) needed.push_back(key->name());
  }
  if (!needed.empty()) schema["required"] = std::move(needed);
  return schema;
}

/// An item of a list, or what stands behind a name of one's own: its map, or the words alone that stand for one.
Json item_of(const std::string& path) {
  const JobKey* row = row_of(path);
  Json map = row == nullptr ? Json::object() : map_of(path);
  const bool words_do = path.ends_with("take[]") || path.ends_with(".*");
  return words_do ? Json{{"anyOf", {{{"type", "string"}}, std::move(map)}}} : map;
}

Json schema_of(const JobKey& key) {
  Json schema;
  switch (key.form) {
    case JobForm::map:
      schema = map_of(key.path);
      break;
    case JobForm::names:
      schema = {{"type", "object"}, {"additionalProperties", item_of(key.path + ".*")}};
      break;
    case JobForm::list:
      schema = {{"type", "array"}, {"items", item_of(key.path + "[]")}};
      break;
    case JobForm::file:
      schema = {{"anyOf", {{{"type", "array"}, {"items", item_of(key.path + "[]")}}, {{"type", "string"}}}}};
      break;
    case JobForm::words:
      schema = {{"anyOf", {{{"type", "array"}, {"items", {{"type", "string"}}}}, {{"type", "string"}}}}};
      break;
    case JobForm::choice:
      schema = {{"enum", key.choices}};
      break;
    case JobForm::yes_no:
      schema = {{"enum", {"yes", "no", true, false}}};  // as YAML 1.2 and 1.1 read `yes`
      break;
    case JobForm::count:
      schema = {{"type", {"integer", "string"}}};
      break;
    case JobForm::text:
    case JobForm::number:
    case JobForm::quantity:
      schema = {{"type", {"string", "number"}}};
      break;
  }
  schema["description"] = key.help + ".";
  return schema;
}

}  // namespace

std::string job_schema_json() {
  Json schema{{"$schema", "https://json-schema.org/draft/2020-12/schema"}, {"title", "A job of Riserun"}};
  schema.update(map_of(""));
  return schema.dump(1) + "\n";
}

}  // namespace riserun::report
