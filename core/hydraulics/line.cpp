#include "hydraulics/line.h"

#include "hydraulics/friction.h"

#include <algorithm>
#include <cassert>
#include <numbers>
#include <utility>

namespace riserun::hydraulics {

Line::Line(std::vector<LineElement> elements, LineEnd first_end, LineEnd last_end)
    : elements_(std::move(elements)), first_end_(std::move(first_end)), last_end_(std::move(last_end)) {
  assert(!elements_.empty());
  assert(std::all_of(elements_.begin(), elements_.end(), [](const LineElement& e) {
    return e.bore > Length() && e.length >= Length() && e.roughness >= Length();
  }));
}

Length Line::smallest_bore() const {
  if (elements_.empty()) return Length();
  return std::min_element(elements_.begin(), elements_.end(),
                          [](const LineElement& a, const LineElement& b) { return a.bore < b.bore; })
      ->bore;
}

Volume Line::volume() const {
  Volume total{};
  for (const LineElement& element : elements_) {
    total += std::numbers::pi / 4.0 * element.bore * element.bore * element.length;
  }
  return total;
}

std::vector<std::string> Line::beyond_moody_chart() const {
  std::vector<std::string> names;
  for (const LineElement& element : elements_) {
    if (element.length > Length() && element.roughness > kMoodyRelativeRoughness * element.bore) {
      names.push_back(element.name);
    }
  }
  return names;
}

}  // namespace riserun::hydraulics
