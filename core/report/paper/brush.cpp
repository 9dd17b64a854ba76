#include "report/paper/brush.h"

namespace riserun::report {

std::vector<double> Brush::dashes_of(Line line) {
  switch (line) {
    case Line::full:
      return {};
    case Line::hidden:
      return {2.4, 1.4};
    case Line::centre:
      return {8.0, 1.6, 1.6, 1.6};
  }
  return {};
}

}  // namespace riserun::report
