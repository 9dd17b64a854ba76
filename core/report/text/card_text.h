// The card as plain text, for the bench's printer and an 80 column terminal.
#pragma once

#include "report/card/card.h"
#include "report/text/text_layout.h"

#include <string>

namespace riserun::report {

inline constexpr std::size_t kCardWidth = 80;  // characters: the narrowest terminal, and a page in large type

/// @param job_file as the command line has it, for the word on where the rest stands
std::string card_text(const Card& card, const std::string& job_file, const Style& style);

}  // namespace riserun::report
