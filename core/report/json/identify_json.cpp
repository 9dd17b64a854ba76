#include "report/json/identify_json.h"

#include "report/json/plain_json.h"
#include "report/words/identify_words.h"

#include <nlohmann/json.hpp>

namespace riserun::report {

namespace {

using catalog::Catalog;
using catalog::Evidence;
using catalog::Identification;
using json = nlohmann::ordered_json;

json evidence_json(const Catalog& catalog, const catalog::Observation& seen, const Evidence& evidence) {
  json result = {{"measured", observed(catalog, seen, UnitSystem::inch)}, {"agrees", evidence.agrees}};
  if (evidence.expected) {
    result["expected_low_m"] = in_metres(evidence.expected->low);
    result["expected_high_m"] = in_metres(evidence.expected->high);
    result["miss_m"] = in_metres(evidence.miss_length);
  }
  if (evidence.expected_number) result["expected"] = *evidence.expected_number;
  return result;
}

json candidate_json(const Catalog& catalog, const Identification& found, const catalog::Candidate& candidate) {
  const catalog::PortType& port = catalog.port_type(candidate.type);
  static const char* const kEnds[] = {"male", "female", "neither"};
  json also = json::array();
  for (const catalog::PortTypeId twin : same_thread(catalog, candidate.type)) also.push_back(catalog.written(twin));
  json evidence = json::array();
  for (std::size_t i = 0; i < candidate.evidence.size(); ++i)
    evidence.push_back(evidence_json(catalog, found.measured.seen[i], candidate.evidence[i]));
  return {{"port", catalog.written(candidate.type)},
          {"confidence", candidate.confidence},
          {"why", why(catalog, found.measured, candidate, UnitSystem::inch)},
          {"kind", catalog.kind(port.kind).id},
          {"size", catalog.size_name(port.size)},
          {"end", kEnds[static_cast<std::size_t>(port.end)]},
          {"standard", catalog.kind(port.kind).standard},
          {"names", other_names(catalog, candidate.type)},
          {"same_thread", also},
          {"evidence", evidence}};
}

json next_json(const Catalog& catalog, const catalog::NextMeasurement& next) {
  json result = {{"measure", question_name(next.question)},
                 {"instruction", instruction(catalog, next)},
                 {"gain_bits", next.gain_bits}};
  if (next.known) result["known_part"] = catalog.written(*next.known);
  return result;
}

json look_alike_json(const Catalog& catalog, const catalog::Resemblance& pair) {
  return {{"of", catalog.written(pair.of)},
          {"port", catalog.written(pair.other)},
          {"reason", pair.reason},
          {"ruled_out", pair.ruled_out}};
}

}  // namespace

std::string identify_json(const Catalog& catalog, const Identification& found) {
  json result = {{"measured", json::array()},
                 {"candidates", json::array()},
                 {"lookalikes", json::array()},
                 {"certain", found.certain},
                 {"verdict", ""},
                 {"undecided", json::array()},
                 {"next", nullptr},
                 {"further", json::array()},
                 {"nearest", json::array()}};
  for (const catalog::Observation& seen : found.measured.seen)
    result["measured"].push_back(observed(catalog, seen, UnitSystem::inch));
  for (const catalog::Candidate& candidate : found.candidates)
    result["candidates"].push_back(candidate_json(catalog, found, candidate));
  for (const catalog::Resemblance& pair : found.look_alikes)
    result["lookalikes"].push_back(look_alike_json(catalog, pair));
  result["verdict"] = found.candidates.empty() ? "nothing fits" : found.certain ? "known" : "cannot tell yet";
  for (const catalog::PortTypeId type : found.undecided) result["undecided"].push_back(catalog.written(type));
  const std::vector<catalog::NextMeasurement> next = next_measurements(catalog, found);
  for (std::size_t i = 0; i < next.size(); ++i) {
    if (i == 0)
      result["next"] = next_json(catalog, next[i]);
    else
      result["further"].push_back(next_json(catalog, next[i]));
  }
  for (const catalog::Candidate& candidate : found.nearest) {
    result["nearest"].push_back(candidate_json(catalog, found, candidate));
    result["nearest"].back()["misses"] = misses(catalog, found.measured, candidate, UnitSystem::inch);
  }
  return written_json(result);
}

}  // namespace riserun::report
