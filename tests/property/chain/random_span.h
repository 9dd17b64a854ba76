// Small random catalogs of straight parts, bends, pipe and hose, with a distance that some chain of them makes.
#pragma once

#include "chain/ask/request.h"
#include "chain/ask/span.h"
#include "property/chain/random_world.h"

#include <functional>

namespace riserun::chain::testing {

struct SpanWorld {
  catalog::Catalog catalog;
  ChainRequest request;
  Span span;
};

/// What a test asks for besides, before the distance is drawn.
using ChangeOfWorld = std::function<void(Dice&, const catalog::Catalog&, ChainRequest&)>;

/// The same seed makes the same world.
SpanWorld random_span_world(std::uint32_t seed, const ChangeOfWorld& change = {});

}  // namespace riserun::chain::testing
