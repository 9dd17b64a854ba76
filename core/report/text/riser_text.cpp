#include "report/text/figure_rows.h"
#include "report/text/plan_text.h"
#include "report/words/say.h"

#include <fmt/format.h>

namespace riserun::report {

namespace {

using plan::Plan;

std::string insertion_sentence(const reservoir::Riser& riser) {
  using reservoir::Insertion;
  switch (riser.insertion) {
    case Insertion::from_inside_before_lid_closes:
      return "It goes in from inside, before the lid closes.";
    case Insertion::through_the_bung:
      return "It goes in from above, through the bung.";
    case Insertion::welded_in:
      return "It is welded through the lid.";
    case Insertion::cannot_go_in:
      return "It cannot be put in as things are.";
  }
  return "";
}

std::string stock_name(const catalog::Catalog& catalog, catalog::PartId id, bool from_bin) {
  const catalog::Part& part = catalog.part(id);
  return part.name + ", " + catalog.material(part.material).name + (from_bin ? " (from the bin)" : " (buy)");
}

std::string rows_of(const catalog::Catalog& catalog, const plan::RiserPlan& plan, const Style& style) {
  const UnitSystem units = style.units;
  const reservoir::Riser& riser = plan.riser;
  const FigureGroup figures = riser_figures(plan);
  const UnitSystem other = units == UnitSystem::inch ? UnitSystem::metric : UnitSystem::inch;
  FigureRows rows(figures, style);
  rows.line("pipe", plan.request.pipe.name);
  // Where there is no room for a riser there is none to cut.
  if (riser.cut_length > Length{})
    rows.figure(
        "cut_length", "",
        fmt::format(" ({}), {}", written(figures["cut_length"], other), said(figures["cut_length"].beside, units)));
  rows.figure("make_up");
  rows.figure("clearance");
  rows.figure("curtain_to_bore", "", fmt::format(" ({})", said(figures["curtain_to_bore"].beside, units)));
  rows.figure(
      "inlet_k", "K = ",
      fmt::format(" plus or minus {} % [{}]", write_number(100.0 * riser.inlet.scatter, 2), riser.inlet.source));
  rows.figure("heel");
  if (riser.stock)
    rows.line("cut it from", fmt::format("{}, offcut {}",
                                         plan.stock_part ? stock_name(catalog, *plan.stock_part, plan.stock_from_bin)
                                                         : "a nipple " + write_length(*riser.stock, units) + " long",
                                         rows.value("offcut")));
  else if (riser.refusals.empty())
    rows.line("cut it from", plan.request.bung == reservoir::BungKind::welded_riser
                                 ? "pipe: thread its upper end, the lower one stays plain"
                                 : "pipe, no stock nipple does: thread one end" +
                                       (plan.thread ? ", " + catalog.written(*plan.thread) : std::string()));
  if (riser.stock_uncut && !riser.is_stock_uncut)
    rows.line("or leave it uncut",
              fmt::format("{} serves as it is, clearance {}",
                          plan.uncut_part ? stock_name(catalog, *plan.uncut_part, plan.uncut_from_bin)
                                          : "a nipple " + write_length(*riser.stock_uncut, units) + " long",
                          write_length(riser.stock_uncut_clearance, units)));
  rows.line("getting it in", insertion_sentence(riser));
  rows.line("getting it out", riser.can_be_drawn_out
                                  ? "Up through the bung, where " + write_length(riser.headroom_needed, units) +
                                        " are free over it; under a table that is lower, take that off first."
                                  : "It cannot be drawn out once the lid is closed.");
  return rows.text();
}

}  // namespace

std::string riser_text(const Plan& plan, const Style& style) {
  return heading("Riser", style) + rows_of(*plan.catalog, plan.riser, style) +
         remarks_text(plan, plan::Topic::riser, style);
}

std::string riser_text(const catalog::Catalog& catalog, const plan::RiserAlone& riser, const Style& style) {
  std::string text = heading("Riser", style);
  for (const plan::Finding& finding : riser.remarks.findings) text += finding_text(finding, style);
  text += rows_of(catalog, riser.plan, style);
  for (const plan::Note& note : riser.remarks.notes)
    text += wrapped("  Note: ", say(note.fact, style.units), style.width);
  return text + "\n" + heading("Assumed, because it was not said", style) +
         assumption_rows(riser.remarks.assumptions, style);
}

}  // namespace riserun::report
