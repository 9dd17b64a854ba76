// Sentences of what a run keeps of its line's size and kind; several stand in one line.
#include "report/words/say.h"

namespace riserun::report {

std::span<const Words> line_words() {
  static constexpr Words kWords[] = {
      {"below_the_least_bore",
       "narrower inside than {0:thickness3}, {1} of the riser's bore: nothing that may be used is that wide"},
      {"keeps_size_and_kinds", "keeps {0} in and {1:and} all the way"},
      {"keeps_size", "keeps {0} in"},
      {"nowhere_under", "is nowhere narrower than {0} in"},
      {"nowhere_narrower", "is nowhere narrower than {0}"},
      {"keeps_kinds", "keeps to {0:and} all the way"},
      {"keeps_every_way", "keeps the line's size and kind on every way"},
      {"narrows_for_want_of", "narrows to {0} in: nothing in {1} in that may be used makes this"},
      {"narrows_below_the_line", "narrows to {0} in, below the line's {1} in"},
      {"takes_for_want_of", "takes {0:and}: nothing of {1:and} alone that may be used makes this"},
      {"takes_to_buy_less", "takes {0:and}, so that fewest parts are bought"},
      {"takes_other_kinds", "takes {0:and}, which neither end has"},
      {"or_order", "or order {0:and}, which keeps both"},
      {"kept_to_end", "to {0}: {1:; }"},
  };
  return kWords;
}

}  // namespace riserun::report
