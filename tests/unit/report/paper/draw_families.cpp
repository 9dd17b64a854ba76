// draw_families FILE [covered]: a part of each family of the shipped catalog as SVG, its name under it; covered: a
// number in place of the name, so that a fitter can be asked what it is.
#include "catalog/load/load.h"
#include "report/drawing/part_drawing.h"
#include "report/paper/paint_shapes.h"
#include "report/paper/svg_brush.h"

#include <filesystem>
#include <fstream>

int main(int count, char** words) {
  using namespace riserun;
  if (count < 2) return 2;
  const bool covered = count > 2;
  constexpr double kCell = 118.0;  // points
  constexpr int kAcross = 8;
  const catalog::Catalog catalog = catalog::load_catalog(std::filesystem::path(RISERUN_SOURCE_DIR) / "catalog");
  report::SvgBrush brush;
  std::vector<const catalog::Part*> shown(catalog.families().size(), nullptr);
  for (const catalog::Part& part : catalog.parts())
    if (shown[part.family.row] == nullptr) shown[part.family.row] = &part;
  int cell = 0;
  for (const catalog::Part* part : shown) {
    if (part == nullptr) continue;
    const double left = kCell * (cell % kAcross);
    const double top = kCell * static_cast<int>(cell / kAcross);
    const report::Drawing drawing = report::part_drawing(catalog, *part, 0, part->ports.size() > 1 ? 1 : 0);
    const report::PixelBox box{static_cast<float>(left + 8.0), static_cast<float>(top + 8.0),
                               static_cast<float>(left + kCell - 8.0), static_cast<float>(top + kCell - 22.0)};
    report::paint_shapes(drawing, report::fitted(drawing, box, 1.0F), box, brush);
    const std::string name = covered ? std::to_string(cell + 1) : catalog.family(part->family).name;
    brush.words({left + kCell / 2.0, top + kCell - 8.0}, report::Anchor::middle, name, report::Ink::text, {5.6, false});
    ++cell;
  }
  std::ofstream(words[1], std::ios::binary)
      << brush.svg(kCell * kAcross, kCell * ((cell + kAcross - 1) / kAcross), "Families", true);
}
