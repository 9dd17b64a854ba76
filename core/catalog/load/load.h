// Loading: the folder of catalog files, a user's own catalog files, and the bin. Every mistake of all files of a load
// is reported at once, each with file, line and column; nothing is ever half-loaded.
#pragma once

#include "catalog/bin.h"
#include "catalog/catalog.h"
#include "catalog/yaml/problems.h"
#include "catalog/yaml/value.h"

#include <filesystem>
#include <optional>
#include <span>
#include <string>

namespace riserun::catalog {

/// The catalog of a folder: materials.yaml, joints.yaml, losses.yaml and pipe.yaml, then every other .yaml file in the
/// order of names (families), duty.yaml, then the extra files (a user's own families, parts, duties and prices, or a
/// table of prices) in the order given.
/// @throws InputError with every mistake of every file.
Catalog load_catalog(const std::filesystem::path& folder, std::span<const std::filesystem::path> extra_files = {});

/// A file that is in memory already.
struct SourceText {
  std::string name;  // its last part says which file of a catalog it is: `joints.yaml`
  std::string text;
};
/// The same from texts, in the order given: materials.yaml, joints.yaml, losses.yaml, pipe.yaml, families; then the
/// user's own.
Catalog load_catalog(std::span<const SourceText> texts, std::span<const SourceText> own_texts);

/// The folder of the shipped catalog: `catalog` beside the program, one level up, or under ../share/riserun; else that
/// of the source tree which the program was built from.
/// @throws InputError when there is none.
std::filesystem::path find_catalog_folder();

/// Whether the folder still holds all that it held when the program was built: every file, none with fewer lines. More
/// files and longer ones are welcome; a user's own files are not looked at.
/// @throws InputError that names each file that is missing or cut off.
void check_whole(const std::filesystem::path& folder);

/// The shipped catalog, which must be whole, and the extra files.
/// @throws InputError as load_catalog, find_catalog_folder and check_whole.
Catalog load_shipped_catalog(std::span<const std::filesystem::path> extra_files = {});

/// Reads a bin file (key `bin`), or a table with the columns part, count, length, material. A part measured by hand is
/// added to the builder as a copy of the catalog's part, with `measured` set; so build the catalog afterwards.
/// @throws InputError with every mistake of the file.
Bin load_bin(CatalogBuilder& builder, const std::filesystem::path& file,
             std::optional<quantity::UnitSystem> units = std::nullopt);
Bin load_bin(CatalogBuilder& builder, const SourceText& text);

/// Reads the list that stands under `bin` in a bin file or in a job.
Bin read_bin(const Value& list, CatalogBuilder& builder, Problems& problems);
/// The same row by row, as they stand: one item for each row that could be read, a part as often as it has rows.
std::vector<BinItem> read_bin_rows(const Value& list, CatalogBuilder& builder, Problems& problems);

/// What a person measured on a part in the hand; what was not measured stays as in the catalog.
struct Measured {
  std::optional<Length> length;  // end to end, of a part with two straight ports
  std::optional<GaugePressure> rating;
};
/// Adds a copy of the part with what was measured, and `measured` set. Both ports of a straight part reach in the same
/// proportion as before. The same measurements twice give the same part.
PartId add_measured(CatalogBuilder& builder, PartId part, const Measured& measured);
/// Adds a copy of what is sold by length, or of pipe with a thread at each end: a piece so long, `remnant`. The same
/// twice gives the same part.
/// @param sawn_ends  of pipe: 1, one thread is left; 2, plain at both ends; 0 of what has no threads to lose
PartId add_remnant(CatalogBuilder& builder, PartId part, Length length, int sawn_ends = 0);
/// Straight pipe with the same male thread at each end: a nipple, or a longer piece. What is cut off it is a piece with
/// sawn ends.
bool is_threaded_pipe(const Catalog& catalog, const Part& part);
/// `one thread`, `plain`: what the bin says of a piece with so many sawn ends, 1 or 2.
std::string_view ends_of_piece(int sawn_ends);
/// What a piece is cut from, as it is sold, or what was measured by hand, as the catalog has it; of any other part the
/// part itself.
std::optional<PartId> sold_part_of(const Catalog& catalog, const Part& part);

/// Reads the list that stands under `prices` in a user's catalog file: the prices in it replace those of the catalog.
void read_prices(const Value& list, CatalogBuilder& builder, Problems& problems);
/// The same from the rows of a table: columns `part` (words) or `id`, and `price`; other columns are let be, and so are
/// rows without a price.
void read_price_table(const Value& rows, CatalogBuilder& builder, Problems& problems);

}  // namespace riserun::catalog
