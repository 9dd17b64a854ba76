#include "chain/ask/request.h"

namespace riserun::chain {

std::string name_of_first(const PortEnd& from) { return from.called.empty() ? "the first port" : from.called; }
std::string name_of_last(const PortEnd& to) { return to.called.empty() ? "the last port" : to.called; }

}  // namespace riserun::chain
