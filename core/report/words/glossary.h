// What the words of the trade mean that a plan uses.
#pragma once

#include <span>
#include <string_view>

namespace riserun::report {

struct Term {
  std::string_view name;     // "riser"
  std::string_view meaning;  // a sentence without its full stop
};

/// By the alphabet.
std::span<const Term> glossary();

}  // namespace riserun::report
