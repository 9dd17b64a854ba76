// catalog/joints.yaml: how a kind of joint is told at the bench.
#include "catalog/load/loading.h"

#include <array>

namespace riserun::catalog {

namespace {

double number_or(Loading& loading, const Value& value, double otherwise) {
  return value.exists() ? number_cell(loading, value).value_or(otherwise) : otherwise;
}

void read_common(Loading& loading, const Value& value, Recognition& recognition) {
  if (!value.exists()) return;
  Fields fields(value, {"inch", "metric"}, loading.problems);
  if (!fields.valid()) return;
  const std::array<std::pair<const char*, double Recognition::*>, 2> shelves = {
      {{"inch", &Recognition::common_inch}, {"metric", &Recognition::common_metric}}};
  for (const auto& [key, share] : shelves) {
    const Value cell = fields.need(key);
    if (!cell.exists()) continue;
    recognition.*share = number_or(loading, cell, 1.0);
    if (!(recognition.*share > 0.0)) loading.problems.add(cell, cell.path() + ": must be more than nothing");
  }
}

void read_shelf_names(Loading& loading, const Value& value, Recognition& recognition) {
  if (!value.exists()) return;
  Fields fields(value, {"male", "female"}, loading.problems);
  if (!fields.valid()) return;
  recognition.male_names = fields.texts("male");
  recognition.female_names = fields.texts("female");
}

void check_flank(Loading& loading, const Value& value, const Recognition& recognition, bool threaded) {
  const double angle = recognition.flank_angle_degrees;
  // Whitworth's and the American thread form: the plumbing trade has no third.
  if (threaded && angle != 55.0 && angle != 60.0)
    loading.problems.add(value, value.path() + ": a thread needs its 'flank angle', 55 or 60");
  if (!threaded && angle != 0.0)
    loading.problems.add(value["flank angle"], value["flank angle"].path() + ": the kind has no thread");
}

}  // namespace

Recognition load_recognition(Loading& loading, const Value& value, bool threaded) {
  Recognition recognition;
  Fields fields(value, {"flank angle", "cone angle", "common", "ends", "shelf names", "marks", "source"},
                loading.problems);
  if (!fields.valid()) return recognition;
  recognition.flank_angle_degrees = number_or(loading, fields.find("flank angle"), 0.0);
  recognition.cone_angle_degrees = number_or(loading, fields.find("cone angle"), 0.0);
  read_common(loading, fields.need("common"), recognition);
  if (const Value ends = fields.find("ends"); ends.exists()) {
    recognition.male = false;
    recognition.female = false;
    for (const Value& end : read_texts(ends, loading.problems)) {
      const std::optional<End> known = named_end(loading, end, end.text());
      if (known == End::male) recognition.male = true;
      if (known == End::female) recognition.female = true;
    }
  }
  read_shelf_names(loading, fields.find("shelf names"), recognition);
  recognition.marks = fields.texts("marks");
  recognition.source = fields.need_text("source");
  check_flank(loading, value, recognition, threaded);
  return recognition;
}

}  // namespace riserun::catalog
