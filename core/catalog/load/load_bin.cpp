// What the shop already has, and parts measured by hand.
#include "catalog/load/load.h"
#include "catalog/load/part_bounds.h"
#include "catalog/words/part_search.h"
#include "catalog/words/piece_words.h"
#include "catalog/yaml/document.h"
#include "catalog/yaml/fields.h"
#include "quantity/read.h"
#include "quantity/write.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <map>

namespace riserun::catalog {

namespace {

using quantity::Range;

quantity::Reading<int> read_item_count(std::string_view text) {
  return quantity::within(quantity::read_count(text), Range<int>{0, 10000}, text);
}

quantity::Reading<Length> read_measured_length(const quantity::Written& text) {
  return quantity::within(quantity::read_length(text), Range<Length>{millimetres(2.0), metres(100.0)}, text);
}

quantity::Reading<GaugePressure> read_measured_rating(const quantity::Written& text) {
  return quantity::within(quantity::read_pressure(text), Range<GaugePressure>{psig(0.1), psig(20000.0)}, text);
}

Length straight_reach(const Part& part) {
  Length sum{};
  for (const Port& port : part.ports) sum += port.reach;
  return sum;
}

bool is_straight(const Part& part) {
  if (part.ports.size() != 2) return false;
  const double turn = std::fmod(std::abs(part.ports[0].heading_degrees - part.ports[1].heading_degrees), 360.0);
  return std::abs(turn - 180.0) < 0.5;  // degrees; the least bend of the trade is 11-1/4
}

std::optional<Measured> read_measured(const Value& value, const Catalog& catalog, const Part& part,
                                      Problems& problems) {
  Fields fields(value, {"length", "rating"}, problems);
  if (!fields.valid()) return std::nullopt;
  Measured measured;
  measured.length = fields.find_with("length", read_measured_length);
  measured.rating = fields.find_with("rating", read_measured_rating);
  if (value.size() == 0) problems.add(value, value.path() + ": what was measured is missing: length or rating");
  if (measured.length && (!is_straight(part) || straight_reach(part) <= Length{})) {
    problems.add(value["length"], value["length"].path() +
                                      ": a length end to end belongs to a straight part with two ports, which '" +
                                      part.id + "' is not");
    return std::nullopt;
  }
  const auto [least, most] = lengths_of(catalog, part);
  if (measured.length && (*measured.length < least || *measured.length > most)) {
    const auto written = [](Length length) { return quantity::write_length(length, quantity::UnitSystem::inch); };
    problems.add(value["length"], value["length"].path() + ": no " + part.name + " is " + written(*measured.length) +
                                      " long; allowed is " + written(least) + " (what goes into its joints) to " +
                                      written(most));
    return std::nullopt;
  }
  return measured;
}

/// Each part once, where the file has it first.
Bin with_counts_added(const std::vector<BinItem>& lines) {
  Bin bin;
  std::map<PartId, std::size_t> rows;
  for (const BinItem& line : lines) {
    const auto [row, is_new] = rows.try_emplace(line.part, bin.items.size());
    if (is_new)
      bin.items.push_back(line);
    else
      bin.items[row->second].count += line.count;
  }
  return bin;
}

/// `length` of an item: a piece of hose or tube that is sold by length, or what is left of pipe, with its `ends`.
std::optional<PartId> read_piece(const Value& value, const Value& ends, PartId part, CatalogBuilder& builder,
                                 Problems& problems) {
  const std::optional<Length> length = read_with(value, read_measured_length, problems);
  const Part& row = builder.so_far().part(part);
  const bool is_pipe = is_threaded_pipe(builder.so_far(), row);
  if (!row.cut_to_length && !is_pipe) {
    problems.add(value, value.path() +
                            ": a piece has a length where it is sold by length, as hose is, or cut off a "
                            "pipe, which '" +
                            row.id + "' is not; what was measured goes under 'measured'");
    return std::nullopt;
  }
  if (!is_pipe) {
    if (ends.exists()) problems.add(ends, ends.path() + ": '" + row.id + "' has no threads at its ends to lose");
    return length && !ends.exists() ? std::optional(add_remnant(builder, part, *length)) : std::nullopt;
  }
  if (!ends.exists()) {
    problems.add(value, value.path() + ": of a piece of pipe 'ends' says what the saw left of its threads: " +
                            std::string(ends_of_piece(1)) + " or " + std::string(ends_of_piece(2)));
    return std::nullopt;
  }
  for (const int sawn : {1, 2})
    if (ends.text() == ends_of_piece(sawn)) {
      if (!length) return std::nullopt;
      const Length sold = straight_reach(row);
      if (*length <= sold) return add_remnant(builder, part, *length, sawn);
      problems.add(value, value.path() + ": a piece of " + row.name + " is no longer than " +
                              quantity::write_length(sold, quantity::UnitSystem::inch));
      return std::nullopt;
    }
  problems.add(ends, ends.path() + ": '" + std::string(ends.text()) + "' is none of the ends of a piece; allowed: " +
                         std::string(ends_of_piece(1)) + ", " + std::string(ends_of_piece(2)));
  return std::nullopt;
}

/// The words of an item, with the material that may be stated beside them.
std::optional<PartId> read_item_part(Fields& fields, PartSearch& search, Problems& problems) {
  const Value material = fields.find("material");
  const std::string beside = material.exists() ? " " + std::string(read_text(material, problems).value_or("")) : "";
  if (material.is_text() && !search.catalog().find_material(material.text())) {
    problems.add(material, material.path() + ": unknown material '" + std::string(material.text()) + "'");
    fields.need("part");
    return std::nullopt;
  }
  return fields.need_with("part", [&](std::string_view words) { return search.find_one(std::string(words) + beside); });
}

void read_item(const Value& value, CatalogBuilder& builder, PartSearch& search, Problems& problems,
               std::vector<BinItem>& rows) {
  Fields fields(value, {"part", "material", "count", "length", "ends", "measured"}, problems);
  if (!fields.valid()) return;
  std::optional<PartId> part = read_item_part(fields, search, problems);
  const Value count_value = fields.find("count");
  const std::optional<int> count = count_value.exists() ? read_with(count_value, read_item_count, problems) : 1;
  const Value measured_value = fields.find("measured");
  const Value length = fields.find("length");
  const Value ends = fields.find("ends");
  if (!part || !count) return;
  if (length.exists())
    part = read_piece(length, ends, *part, builder, problems);
  else if (ends.exists())
    problems.add(ends, ends.path() + ": a piece with these ends has a 'length', too");
  if (!part) return;
  if (measured_value.exists()) {
    const std::optional<Measured> measured =
        read_measured(measured_value, builder.so_far(), builder.so_far().part(*part), problems);
    if (!measured) return;
    part = add_measured(builder, *part, *measured);
  }
  rows.push_back({*part, *count});
}

Bin bin_of(Document document, std::optional<quantity::UnitSystem> units, CatalogBuilder& builder, Problems problems) {
  Bin bin;
  document.settle_units(units);
  const Value root = document.root();
  if (root.exists() || problems.empty()) {
    if (document.is_table()) {
      bin = read_bin(root, builder, problems);
    } else {
      if (!root.is_map()) problems.add(root, "the file holds no map of keys; a bin file has the key 'bin'");
      Fields fields(root.is_map() ? root : Value(), {"bin", "units"}, problems);
      read_units(fields);
      if (const Value list = fields.need("bin"); list.exists()) bin = read_bin(list, builder, problems);
    }
  }
  std::move(problems).throw_if_any();
  return bin;
}

constexpr std::string_view kPiece = "/piece-";  // in the id of a piece, before its length
constexpr std::string_view kMeasured = "/measured-";
constexpr std::string_view kRated = "/rated-";

}  // namespace

PartId add_measured(CatalogBuilder& builder, PartId part, const Measured& measured) {
  Part copy = builder.so_far().part(part);
  if (measured.length) {
    const double scale = in_metres(*measured.length) / in_metres(straight_reach(copy));
    for (Port& port : copy.ports) port.reach *= scale;
    copy.id += fmt::format("{}{}um", kMeasured, std::llround(in_metres(*measured.length) * 1e6));
    copy.name += ", measured " + quantity::write_length(*measured.length, quantity::UnitSystem::inch,
                                                        quantity::TapeMark::thirty_second);
  }
  if (measured.rating) {
    copy.rating = *measured.rating;
    copy.id += fmt::format("{}{}pa", kRated, std::llround(in_pascals(*measured.rating)));
  }
  copy.measured = true;
  copy.source = "measured by hand; the rest: " + copy.source;
  if (const std::optional<PartId> known = builder.so_far().find_part(copy.id)) return *known;
  return builder.add(std::move(copy));
}

bool is_threaded_pipe(const Catalog& catalog, const Part& part) {
  return part.ports.size() == 2 && part.ports[0].type == part.ports[1].type && !part.cut_to_length && !part.closing &&
         !part.one_way && !part.loss.valid() && !(part.across_flats > metres(0.0)) &&
         catalog.family(part.family).role == Role::connector &&
         catalog.port_type(part.ports[0].type).end == End::male &&
         catalog.kind(catalog.port_type(part.ports[0].type).kind).tapered;
}

std::string_view ends_of_piece(int sawn_ends) { return sawn_ends == 1 ? "one thread" : "plain"; }

PartId add_remnant(CatalogBuilder& builder, PartId part, Length length, int sawn_ends) {
  Part copy = builder.so_far().part(part);
  const double scale = in_metres(length) / in_metres(straight_reach(copy));
  for (Port& port : copy.ports) port.reach *= scale;
  // With zeros, as of equals the first id is taken: the shortest piece that does.
  copy.id += fmt::format("{}{:08}um", kPiece, std::llround(in_metres(length) * 1e6));
  if (sawn_ends > 0) copy.id += sawn_ends == 1 ? "-one-thread" : "-plain";
  copy.name = stock_name(copy);
  copy.sold_as = piece_words(length, sawn_ends, quantity::UnitSystem::inch);
  copy.name += ", " + copy.sold_as;
  copy.sawn_ends = sawn_ends;
  copy.threaded_when_cut = copy.threaded_when_cut || sawn_ends > 0;  // of a nipple, too
  copy.measured = copy.remnant = true;
  copy.stocked = false;
  copy.source = "a piece in the bin; the rest: " + copy.source;
  if (const std::optional<PartId> known = builder.so_far().find_part(copy.id)) return *known;
  return builder.add(std::move(copy));
}

std::optional<PartId> sold_part_of(const Catalog& catalog, const Part& part) {
  std::size_t end = part.id.size();
  for (const std::string_view mark : {kPiece, kMeasured, kRated}) end = std::min(end, part.id.find(mark));
  return catalog.find_part(part.id.substr(0, end));
}

std::vector<BinItem> read_bin_rows(const Value& list, CatalogBuilder& builder, Problems& problems) {
  std::vector<BinItem> rows;
  // Made once for all rows: it reads the words of the whole catalog.
  PartSearch search(builder.so_far());  // parts that are measured have the words of those that they stand for
  for (const Value& item : read_list(list, problems)) read_item(item, builder, search, problems, rows);
  return rows;
}

Bin read_bin(const Value& list, CatalogBuilder& builder, Problems& problems) {
  return with_counts_added(read_bin_rows(list, builder, problems));
}

Bin load_bin(CatalogBuilder& builder, const std::filesystem::path& file, std::optional<quantity::UnitSystem> units) {
  Problems problems;
  Document document = Document::load(file, problems);
  return bin_of(std::move(document), units, builder, std::move(problems));
}

Bin load_bin(CatalogBuilder& builder, const SourceText& text) {
  Problems problems;
  Document document = Document::parse(text.text, text.name, problems);
  return bin_of(std::move(document), std::nullopt, builder, std::move(problems));
}

}  // namespace riserun::catalog
