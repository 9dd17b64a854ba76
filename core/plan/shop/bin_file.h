// The bin as a file of the shop's: changed whole or not at all, with the text before the last change kept beside it.
#pragma once

#include "plan/shop/bin_change.h"

#include <filesystem>
#include <string>

namespace riserun::plan {

/// The text with the change in it.
/// @param name  of the file, for messages
/// @throws InputError when the text is no bin, or holds fewer than are taken; then nothing was changed
std::string changed_bin(const std::string& text, const std::string& name, const catalog::Catalog& catalog,
                        const BinChange& change);

/// `bin.yaml.before`: the text before the last change of `bin.yaml`.
std::filesystem::path before_file(const std::filesystem::path& bin);

/// What a list brings into the bin: the rows of a bin file, or of a table (`.csv`) that a plan was written to its rows
/// that were to be bought.
/// @throws InputError with every mistake
BinChange change_of_list(const std::filesystem::path& list, const catalog::Catalog& catalog);

}  // namespace riserun::plan
