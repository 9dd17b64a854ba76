// From words to the parts that a person keeps out by them: "no nipples" means close and hex nipples too.
#pragma once

#include "catalog/words/part_search.h"

#include <string_view>
#include <vector>

namespace riserun::catalog {

/// In part order: the parts that find_parts finds, and, where no size is named, every part that is called so: a trade
/// name of its family ends in the words, its material aside. A nipple is avoided with "PVC nipple" and "close nipple",
/// "brass nipple" with hex nipples of brass. Where the words name a kind of joint ("garden hose", "cam lock"), every
/// part with a port of that kind is kept out. After "just" the words mean what they mean anywhere else: "just nipple"
/// leaves close nipples in. Empty where find_parts finds nothing; why_no_avoided_parts then says why.
std::vector<PartId> find_avoided_parts(const Catalog& catalog, std::string_view words);
/// The same for many words.
std::vector<PartId> find_avoided_parts(PartSearch& search, std::string_view words);

/// Why find_avoided_parts finds nothing, and what can be avoided; the place is that in the words as they were given.
NotationError why_no_avoided_parts(PartSearch& search, std::string_view words);

/// The words without "just" before them.
std::string_view without_just(std::string_view words);

}  // namespace riserun::catalog
