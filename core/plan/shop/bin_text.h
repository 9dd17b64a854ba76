// The bin in the text of a job or of a bin file, edited so that comments, order and style stay.
#pragma once

#include "catalog/catalog.h"
#include "catalog/edit/job_text.h"
#include "quantity/quantities.h"

#include <string>
#include <vector>

namespace riserun::plan {

/// Words that mean this part and no other: its name and material where they do, otherwise its id.
std::string words_for(const catalog::Catalog& catalog, catalog::PartId part);
/// Whether the words mean this part alone.
bool mean_only(const catalog::Catalog& catalog, const std::string& words, catalog::PartId part);

/// How many there are of a part now: nothing of it is left with 0.
/// @param catalog  without what the bin itself adds to it (measured parts, pieces)
/// @param part     its id; of a piece or a measured part the one that the reader gives it
catalog::Edited with_count(const catalog::JobText& text, const catalog::Catalog& catalog, const std::string& part,
                           int count);

/// How many the rows of the bin say.
int count_in(const catalog::JobText& text, const catalog::Catalog& catalog, const std::string& part);

/// One more piece of what is sold by length, or of pipe with so many sawn ends.
catalog::Edited with_piece(const catalog::JobText& text, const catalog::Catalog& catalog, catalog::PartId part,
                           Length length, int sawn_ends);

}  // namespace riserun::plan
