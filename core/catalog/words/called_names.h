// What a trade name calls a thing. For core/catalog's own files only.
#pragma once

#include <string>
#include <string_view>
#include <vector>

namespace riserun::catalog {

using WordList = std::vector<std::string>;

/// The words of a text as they stand, without plural, sizes among them.
WordList words_in_turn(std::string_view text);

/// "barb to male pipe" is a barb, "hose thread to pipe adapter" an adapter.
std::vector<WordList> called_by(const std::string& name);

bool ends_in(const WordList& name, const WordList& words);

}  // namespace riserun::catalog
