// What reading a written quantity gives: the quantity, or why the text is none.
#pragma once

#include <cstddef>
#include <string>
#include <variant>

namespace riserun::quantity {

/// Why a text is not the quantity that was asked for. `offset` is the byte of the text at which the mistake stands.
struct ReadError {
  std::string message;
  std::size_t offset = 0;
};

template <class T>
using Reading = std::variant<T, ReadError>;

/// Both ends belong to it.
template <class T>
struct Range {
  T low;
  T high;
};

}  // namespace riserun::quantity
