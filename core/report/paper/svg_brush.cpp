#include "report/paper/svg_brush.h"

#include "quantity/printable.h"

#include <fmt/format.h>
#include <fmt/ranges.h>

namespace riserun::report {

namespace {

/// The five characters of XML 1.0, section 2.4, after what may not be printed was made visible.
std::string xml(const std::string& text) {
  std::string safe;
  for (const char c : quantity::printable(text)) {
    if (c == '&')
      safe += "&amp;";
    else if (c == '<')
      safe += "&lt;";
    else if (c == '>')
      safe += "&gt;";
    else if (c == '"')
      safe += "&quot;";
    else
      safe += c;
  }
  return safe;
}

std::string points_of(const std::vector<PagePoint>& way) {
  std::string text;
  for (const PagePoint& point : way) text += fmt::format("{}{:.2f},{:.2f}", text.empty() ? "" : " ", point.x, point.y);
  return text;
}

std::string paint(std::string_view what, Ink ink) {
  return fmt::format(R"({}="#{:06X}" class="{}{}")", what, hex_of(ink, false), what.front(), static_cast<int>(ink));
}

}  // namespace

void SvgBrush::fill(const std::vector<PagePoint>& outline, Ink ink, double opacity) {
  body_ += fmt::format("<polygon points=\"{}\" {}{}/>\n", points_of(outline), paint("fill", ink),
                       opacity < 1.0 ? fmt::format(" fill-opacity=\"{:.2f}\"", opacity) : "");
}

void SvgBrush::stroke(const std::vector<PagePoint>& way, bool closed, Ink ink, double width, Line line) {
  const std::vector<double> dashes = dashes_of(line);
  body_ += fmt::format("<{} points=\"{}\" fill=\"none\" {} stroke-width=\"{:.2f}\"{}/>\n",
                       closed ? "polygon" : "polyline", points_of(way), paint("stroke", ink), width,
                       dashes.empty() ? "" : fmt::format(" stroke-dasharray=\"{}\"", fmt::join(dashes, " ")));
}

void SvgBrush::words(PagePoint at, Anchor anchor, const std::string& text, Ink ink, const Lettering& lettering) {
  if (text.empty()) return;
  constexpr std::string_view kAnchors[] = {"start", "middle", "end"};
  body_ += fmt::format("<text x=\"{:.2f}\" y=\"{:.2f}\" text-anchor=\"{}\" font-size=\"{:.2f}\"{} {}>{}</text>\n", at.x,
                       at.y, kAnchors[static_cast<std::size_t>(anchor)], lettering.size,
                       lettering.bold ? " font-weight=\"bold\"" : "", paint("fill", ink), xml(text));
}

std::string SvgBrush::svg(double width, double height, const std::string& title, bool own_file) const {
  const std::string head =
      own_file ? fmt::format(
                     "<?xml version=\"1.0\" encoding=\"UTF-8\"?>\n<svg xmlns=\"http://www.w3.org/2000/svg\" "
                     "width=\"{0:.2f}pt\" height=\"{1:.2f}pt\" viewBox=\"0 0 {0:.2f} {1:.2f}\" ",
                     width, height)
               : fmt::format("<svg viewBox=\"0 0 {:.2f} {:.2f}\" role=\"img\" ", width, height);
  const std::string ground = own_file ? fmt::format("<style>{}</style>\n<rect width=\"100%\" height=\"100%\" {}/>\n",
                                                    dark_svg_style(), paint("fill", Ink::card))
                                      : "";
  return fmt::format("{}font-family=\"DejaVu Sans, Verdana, sans-serif\">\n<title>{}</title>\n{}{}</svg>\n", head,
                     xml(title), ground, body_);
}

std::string dark_svg_style() {
  std::string style = "@media screen and (prefers-color-scheme:dark){";
  for (int row = 0; row < static_cast<int>(Ink::count); ++row)
    style += fmt::format(".f{0}{{fill:#{1:06X}}}.s{0}{{stroke:#{1:06X}}}", row, hex_of(static_cast<Ink>(row), true));
  return style + "}";
}

}  // namespace riserun::report
