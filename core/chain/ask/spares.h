// Which few spare parts keep one lost or broken part from stopping the work: what is asked and what is answered.
#pragma once

#include "chain/ask/answer.h"

#include <vector>

namespace riserun::chain {

/// A chain that was chosen, with the request that it answers: the request's bin is what the chain takes of it and what
/// it may still take.
struct Chosen {
  ChainRequest request;
  Chain chain;
};

/// One piece of a bought part is missing: all else that its chain was to be made of is there.
struct StockOut {
  std::size_t chosen = 0;  // row of the chains
  PartId missing;
  std::vector<PartId> spares;  // that stand in, least first; empty: the chain can be made without
  Chain stand_in;              // of the bin, the rest of the cart and these spares, nothing bought: the request's best
  bool only_itself = false;    // nothing stands in for it but one more of itself
};

struct Spares {
  std::vector<PartId> parts;  // by id; a part twice where two of it are needed
  Price price;
  std::vector<StockOut> stock_outs;  // each different bought part of each chain, in the order of the chains
};

/// A missing part is made up for with that many spares at most.
inline constexpr std::size_t kMostTogether = 3;

}  // namespace riserun::chain
