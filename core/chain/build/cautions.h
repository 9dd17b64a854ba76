// What a fitter must be told beside a chain: metals that do not suit, valves that stop the drain, weak or awkward
// parts.
#pragma once

#include "chain/ask/answer.h"

namespace riserun::chain {

/// Fills the cautions of a chain whose parts and joints are known.
void add_cautions(const Catalog& catalog, const ChainRequest& request, Chain& chain);

/// A chain with what was asked of it.
struct Run {
  ChainRequest request;
  Chain chain;
};
/// The cautions of chains that have parts in common, each said once.
std::vector<std::string> cautions_of(const Catalog& catalog, const std::vector<Run>& runs);

}  // namespace riserun::chain
