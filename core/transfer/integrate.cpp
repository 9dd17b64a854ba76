#include "transfer/integrate.h"

#include "transfer/runner.h"

namespace riserun::transfer {

Course run(const Equations& equations, const RunOptions& options) { return Runner(equations, options).go(); }

}  // namespace riserun::transfer
