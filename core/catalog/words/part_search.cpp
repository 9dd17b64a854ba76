#include "catalog/words/part_search.h"

#include "catalog/words/counted_words.h"
#include "catalog/words/hole_words.h"
#include "catalog/words/not_here.h"
#include "catalog/words/part_fit.h"
#include "catalog/words/part_words.h"
#include "catalog/words/pressure_words.h"
#include "catalog/yaml/nearest_name.h"
#include "quantity/read.h"
#include "quantity/write.h"

#include <fmt/format.h>

#include <algorithm>
#include <cctype>
#include <charconv>
#include <cmath>
#include <map>
#include <optional>
#include <regex>
#include <set>
#include <tuple>
#include <utility>

namespace riserun::catalog {

namespace mistake = quantity::mistake;

namespace {

constexpr std::size_t kMostListed = 8;
constexpr std::size_t kMostWords = 24;
constexpr double kSameMark = 0.04;  // 1 bar is 14.5 psi, 4 bar 58: dials of 15 and 60 serve for both

/// What has a duty of its own (a check valve, a relief valve) means more than what is just put in (a ball valve), and
/// that more than what joins.
enum class Meaning : std::uint8_t { joins, put_in, has_duty };

Meaning meaning_of(Role role) {
  if (!only_if_asked(role)) return Meaning::joins;
  return role == Role::device ? Meaning::put_in : Meaning::has_duty;
}

/// Nearest first, for whom it did not say well.
std::vector<std::string_view> nearest_words(std::string_view word, const std::vector<std::string>& all) {
  std::vector<std::pair<std::size_t, std::string_view>> near;
  for (const std::string& known : all) {
    const std::size_t slips = slips_between(word, known);
    if (slips <= std::max<std::size_t>(1, std::max(word.size(), known.size()) / 3) && slips < known.size())
      near.emplace_back(slips, known);
  }
  std::sort(near.begin(), near.end());
  std::vector<std::string_view> result;
  for (const auto& [slips, known] : near)
    if (result.size() < 4) result.push_back(known);
  return result;
}

std::string some_of(const std::vector<std::string>& names) {
  std::string result;
  for (std::size_t i = 0; i < std::min(names.size(), kMostListed); ++i) result += (i == 0 ? "" : ", ") + names[i];
  return names.size() > kMostListed ? result + " ..." : result;
}

/// `1.6 mm hole` as the drill's fraction of an inch that it is sold by; what is no such hole stays.
std::string hole_in_inches(std::string_view words) {
  constexpr std::string_view kHole = "mm hole";
  const std::string text = lower_case(words);
  const std::size_t at = text.find(kHole);
  if (at == std::string::npos) return text;
  std::size_t begin = text.find_last_not_of(' ', at == 0 ? 0 : at - 1);
  if (begin == std::string::npos) return text;
  const std::size_t end = begin + 1;
  while (begin > 0 && (std::isdigit(static_cast<unsigned char>(text[begin - 1])) != 0 || text[begin - 1] == '.'))
    --begin;
  double millimetres = 0.0;
  if (std::from_chars(text.data() + begin, text.data() + end, millimetres).ptr != text.data() + end) return text;
  constexpr double kMillimetresPerSixtyFourth = 25.4 / 64.0;
  constexpr double kAsNamed = 0.03;  // a tenth of a millimetre names the drill
  int top = static_cast<int>(std::lround(millimetres / kMillimetresPerSixtyFourth));
  if (top < 1 || top > 64 || std::abs(top * kMillimetresPerSixtyFourth - millimetres) > kAsNamed * millimetres)
    return text;
  int under = 64;
  for (; top % 2 == 0 && under > 1; top /= 2) under /= 2;
  return fmt::format("{}{}/{} in hole{}", text.substr(0, begin), top, under, text.substr(at + kHole.size()));
}

/// `3 ft` as `36 in`, which is how lengths are named; nullopt: no feet are said.
std::optional<std::string> feet_in_inches(std::string_view words) {
  const std::string text = lower_case(words);
  if (text.find("ft") == std::string::npos && text.find("feet") == std::string::npos) return std::nullopt;
  static const std::regex kFeet("(^|[^0-9/.-])([0-9]+(?:[.][0-9]+|(?:[- ][0-9]+)?/[0-9]+)?) ?(?:ft|feet)(?![a-z])");
  std::smatch found;
  if (!std::regex_search(text, found, kFeet)) return std::nullopt;
  const auto feet = quantity::read_number(found[2].str());
  if (!std::holds_alternative<double>(feet)) return std::nullopt;
  const std::string inches = quantity::write_number(12.0 * std::get<double>(feet));
  return found.prefix().str() + found[1].str() + inches + " in" + found.suffix().str();
}

}  // namespace

PartSearch::PartSearch(const Catalog& catalog) : catalog_(catalog) {}
PartSearch::~PartSearch() = default;

void PartSearch::begin_anew() {
  sought_ = 0;
  constexpr std::size_t kMostKept = 4 * kMostSought;  // more than a job says; each letter typed makes another word
  if (found_.size() + called_.size() <= kMostKept) return;
  one_by_words_.clear();
  found_.clear();
  called_.clear();
}

const PortNotation& PartSearch::ports() {
  if (!ports_) ports_ = std::make_unique<const PortNotation>(catalog_);
  return *ports_;
}

PartWords& PartSearch::known_words() {
  if (!words_) words_ = std::make_unique<PartWords>(catalog_);
  return *words_;
}

std::string PartSearch::corrected(std::string_view words) {
  std::string text;
  std::size_t copied = 0;
  for (const Token& token : split_words(words)) {
    if (token.is_size || is_idle_word(token.text)) continue;
    const std::string word = without_plural(token.text);
    if (known_words().knows(word)) continue;
    const std::vector<std::string> meant = meant_by(word, known_words().all_words());
    if (meant.size() != 1) continue;
    text.append(words.substr(copied, token.offset - copied)).append(meant.front());
    copied = token.offset + token.length;
  }
  return text.append(words.substr(copied));
}

std::vector<PartId> PartSearch::find_spelled(std::string_view words, bool called) {
  const PartQuery query = plain_query(words);
  if (query.words.empty() && query.sizes.empty()) return {};
  if (query.words.size() + query.sizes.size() > kMostWords) return {};
  PartFit fit(catalog_, known_words(), called ? Naming::called : Naming::whole);
  std::vector<PartId> parts = fit.run(query, false);
  const bool named = !parts.empty() && fit.best_is_named();
  if (named) return parts;
  const PartQuery with_ports = query_with_ports(ports(), words);
  if (!parts.empty() && with_ports.ports.empty()) return parts;
  std::vector<PartId> by_port = fit.run(with_ports, true);
  return by_port.empty() ? parts : by_port;
}

const std::vector<PartId>& PartSearch::find_by(std::string_view words, bool called) {
  auto& known = called ? called_ : found_;
  if (const auto found = known.find(words); found != known.end()) return found->second;
  return known.emplace(words, look_up(words, called)).first->second;
}

std::vector<PartId> PartSearch::look_up(std::string_view words, bool called) {
  if (const std::optional<PartId> part = catalog_.find_part(words)) return {*part};
  // A printed name with its material is one part; without, `1 union` may be asked for as what is called so.
  std::vector<PartId> printed = known_words().printed_as(words);
  if (printed.size() == 1 || (!printed.empty() && !called)) return printed;
  ++sought_;
  if (const std::optional<std::string> inches = feet_in_inches(words)) {
    std::vector<PartId> long_ones = find_spelled(corrected(*inches), called);
    // A number of inches is no pressure that a valve is set to.
    std::erase_if(long_ones, [&](PartId id) { return catalog_.part(id).opens_at || catalog_.part(id).full_scale; });
    if (!long_ones.empty()) return long_ones;
    // What is sold in feet says so in its name: nothing else is taken for `10 ft`.
    long_ones = find_spelled(corrected(words), called);
    std::erase_if(long_ones, [&](PartId id) { return catalog_.part(id).name.find(" ft") == std::string::npos; });
    return long_ones;
  }
  std::vector<PartId> parts = find_spelled(words, called);
  if (!parts.empty()) return parts;
  const std::string meant = corrected(words);
  if (meant != words) parts = find_spelled(meant, called);
  if (parts.empty()) parts = find_by_pressure(words, called).parts;
  if (const std::string by_drill = hole_in_inches(words); parts.empty() && by_drill != lower_case(words))
    parts = find_spelled(by_drill, called);
  return parts;
}

// However it is written: a scale of 1 bar is the one that is sold as 15 psi.
PartSearch::ByPressure PartSearch::find_by_pressure(std::string_view words, bool called) {
  const std::optional<PressureWords> pressure = pressure_in(words);
  if (!pressure) return {};
  const std::vector<PartId> named = find_spelled(corrected(pressure->rest), called);
  ByPressure found;
  found.parts.reserve(named.size());
  std::map<double, std::string> sold;
  for (const PartId id : named) {
    const Part& part = catalog_.part(id);
    const auto& mark = part.full_scale ? part.full_scale : part.opens_at;
    if (!mark) continue;
    const double psi = in_psi(*mark);
    sold.emplace(psi, quantity::write_number(psi));
    if (std::abs(psi - in_psi(pressure->upto)) <= kSameMark * psi) found.parts.push_back(id);
  }
  if (!found.parts.empty() || sold.empty()) return found;
  std::vector<std::string> marks;
  marks.reserve(sold.size());
  for (const auto& [psi, text] : sold) marks.push_back(text);
  std::string message =
      fmt::format("no{} of {} psi is sold; there are those of {} psi",
                  named.empty() ? "" : " " + catalog_.family(catalog_.part(named.front()).family).name,
                  quantity::write_number(in_psi(pressure->upto)), fmt::join(marks, ", "));
  found.none = NotationError{std::move(message), pressure->offset, std::move(marks)};
  return found;
}

std::vector<PartId> PartSearch::find(std::string_view words) { return find_by(words, false); }

std::optional<NotationError> PartSearch::counted_or_sized(std::string_view words) {
  if (catalog_.find_part(words)) return std::nullopt;
  const std::optional<CountedWords> counted = counted_in(words);
  if (!counted || find_by(counted->rest, true).empty()) return std::nullopt;
  return NotationError{fmt::format("'{0}' can be a number of them or a size: for {1} of them ask for '{2}' {1} times, "
                                   "for the size write '{1} in {2}'",
                                   words, counted->number, counted->one),
                       0,
                       {},
                       mistake::kAmbiguousPart};
}

std::variant<std::vector<PartId>, NotationError> PartSearch::find_called(std::string_view words) {
  if (std::optional<NotationError> counted = counted_or_sized(words)) return std::move(*counted);
  std::vector<PartId> parts = find_by(words, true);
  if (parts.empty()) return why_none(words);
  if (std::optional<NotationError> error = two_ways(words, parts)) return std::move(*error);
  if (std::optional<NotationError> error = no_such_hole(catalog_, words, parts)) return std::move(*error);
  // First the families of that very name, and what is on the shelf.
  PartQuery query = plain_query(corrected(words));
  known_words().tell_numbers_from_sizes(query);
  const auto meaning = [&](PartId id) { return meaning_of(catalog_.family(catalog_.part(id).family).role); };
  Meaning plainest = Meaning::has_duty;
  for (const PartId id : parts) plainest = std::min(plainest, meaning(id));
  using Ranked = std::tuple<bool, bool, PartId>;
  std::vector<Ranked> ranked;
  for (const PartId id : parts) {
    const Part& part = catalog_.part(id);
    const bool by_name = known_words().is_whole_name(query, part.family, part.material);
    // `hose` asks for no suction hose, `valve` for no check valve: what means more has a name of its own.
    if (by_name || meaning(id) == plainest) ranked.emplace_back(!by_name, !part.stocked, id);
  }
  std::sort(ranked.begin(), ranked.end());
  parts.resize(ranked.size());
  std::transform(ranked.begin(), ranked.end(), parts.begin(), [](const Ranked& one) { return std::get<PartId>(one); });
  return parts;
}

std::optional<NotationError> PartSearch::two_ways(std::string_view words, const std::vector<PartId>& parts) {
  std::set<std::string> kinds;  // the families that are put in only where they are asked for
  bool plain = false;
  std::set<Role> roles;
  for (const PartId id : parts) {
    const Family& family = catalog_.family(catalog_.part(id).family);
    plain = plain || !only_if_asked(family.role);
    if (kinds.insert(family.name).second) roles.insert(family.role);
  }
  if (plain || roles.size() < 2 || names_a_thing(words)) return std::nullopt;
  std::vector<std::string_view> names(kinds.begin(), kinds.end());
  return NotationError{"'" + std::string(words) + "' can be read in several ways, say which: " + either_of(names),
                       0,
                       {names.begin(), names.end()},
                       mistake::kAmbiguousPart};
}

bool PartSearch::names_a_thing(std::string_view words) {
  const PartQuery query = plain_query(corrected(words));
  for (std::uint32_t family = 0; family < catalog_.families().size(); ++family)
    for (std::uint32_t material = 0; material < catalog_.materials().size(); ++material)
      if (known_words().is_called(query, {family}, {material})) return true;
  return false;
}

NotationError PartSearch::why_none(std::string_view words) {
  for (const Token& token : split_words(words))
    if (token.is_size && (token.text.starts_with('/') || token.text.ends_with('/')))
      return {"'" + token.text + "' is no size; a fraction has two numbers, as 3/4", token.offset, {}};
  if (const std::optional<NotHere> thing = not_here(words)) return {std::string(thing->instead), thing->offset, {}};
  if (auto by_pressure = find_by_pressure(words, true); by_pressure.none) return *std::move(by_pressure.none);
  PartQuery query = plain_query(words);
  if (query.words.empty() && query.sizes.empty())
    return {"words that name a part are expected, as in '1 x 3/4 reducing coupling'", 0, {}};
  if (query.words.size() + query.sizes.size() > kMostWords) return {"these are too many words for a part", 0, {}};
  PartFit fit(catalog_, known_words(), Naming::whole);
  known_words().tell_numbers_from_sizes(query);
  const std::vector<std::string>& all = known_words().all_words();
  for (Token& word : query.words) {
    if (std::binary_search(all.begin(), all.end(), word.text)) continue;
    if (std::vector<std::string> meant = meant_by(word.text, all); meant.size() == 1) {
      word.text = std::move(meant.front());
      continue;
    }
    const std::vector<std::string_view> near = nearest_words(word.text, all);
    std::string message = "no part knows the word '" + std::string(words.substr(word.offset, word.length)) + "'";
    if (!near.empty()) message += "; did you mean " + either_of(near) + "?";
    return {std::move(message), word.offset, {near.begin(), near.end()}};
  }
  const std::vector<std::string> wanted = std::exchange(query.sizes, {});
  std::vector<std::string> sizes;
  std::vector<std::string> near;  // those with one of the sizes asked for
  for (const PartId id : fit.run(query, true)) {
    const std::string& size = catalog_.part(id).size;
    if (std::find(sizes.begin(), sizes.end(), size) != sizes.end()) continue;
    sizes.push_back(size);
    const std::vector<std::string> has = sizes_of(size);
    if (std::find_first_of(has.begin(), has.end(), wanted.begin(), wanted.end()) != has.end()) near.push_back(size);
  }
  if (!near.empty()) sizes = std::move(near);
  if (sizes.empty() || query.words.empty()) return {"no part fits all of '" + std::string(words) + "'", 0, {}};
  return {"no part fits all of '" + std::string(words) + "'; the sizes are " + some_of(sizes), 0, sizes};
}

std::variant<PartId, NotationError> PartSearch::find_one(std::string_view words) {
  if (const auto known = one_by_words_.find(words); known != one_by_words_.end()) return known->second;
  std::vector<PartId> parts = find(words);
  if (sought_ > kMostSought)
    return NotationError{
        fmt::format("more than {} different descriptions of parts: name the others by their ids, which "
                    "'riserun catalog' lists",
                    kMostSought),
        0,
        {}};
  // The catalog's own part is meant, unless only parts measured by hand fit.
  const auto is_measured = [&](PartId part) { return catalog_.part(part).measured; };
  if (!std::all_of(parts.begin(), parts.end(), is_measured)) std::erase_if(parts, is_measured);
  if (parts.size() == 1) {
    one_by_words_.emplace(words, parts.front());
    return parts.front();
  }
  if (parts.empty()) return why_none(words);
  std::vector<std::string> ids;
  ids.reserve(parts.size());
  for (const PartId part : parts) ids.push_back(catalog_.part(part).id);
  return NotationError{
      "'" + std::string(words) + "' fits " + std::to_string(parts.size()) + " parts, say which: " + some_of(ids), 0,
      ids, mistake::kAmbiguousPart};
}

std::vector<PartId> find_parts(const Catalog& catalog, std::string_view words) {
  return PartSearch(catalog).find(words);
}

NotationError why_no_parts(const Catalog& catalog, std::string_view words) {
  return PartSearch(catalog).why_none(words);
}

}  // namespace riserun::catalog
