// What a person has set about the view and not about the job: kept in a side file beside the job, `bench.view.yaml` for
// `bench.yaml`, so that the job itself stays as they wrote it. A side file that cannot be read is as good as none.
#pragma once

#include "gui/model/canvas/geometry.h"
#include "quantity/write.h"

#include <filesystem>
#include <map>
#include <optional>
#include <string>

namespace riserun::gui {

enum class Looks { light, dark };

struct ViewState {
  std::optional<quantity::UnitSystem> units;  // none: as the job says
  Looks looks = Looks::light;                 // of the whole program: from the habits, never from a job's side file
  std::map<std::string, Point> moved;         // how far each thing was moved by hand, by `moved_as`
  Point pan;
  float zoom = 1.0F;  // 0.05 to 8
  bool operator==(const ViewState&) const = default;
};

/// `bench.view.yaml` for `bench.yaml`.
std::filesystem::path side_file_of(const std::filesystem::path& job_file);
/// What the text says; whatever in it is not understood is left at its default. Never throws.
ViewState read_view(const std::string& text);
std::string write_view(const ViewState& view);

}  // namespace riserun::gui
