#include "gui/views/sheets/list_sheet.h"

#include "gui/views/sheets/remarks.h"
#include "report/words/lid_rows.h"
#include "report/words/list_words.h"
#include "report/words/step_lists.h"

#include <fmt/format.h>
#include <imgui.h>

#include <algorithm>

namespace riserun::views {

namespace {

class ListRows {
 public:
  ListRows(const Scene& scene, ListState& state) : scene_(scene), state_(state), units_(scene.shown.units) {}

  /// A heading and the table under it; false: it cannot be seen.
  bool begin(const std::string& words, const char* id) {
    ImGui::Spacing();
    strong(scene_, words);
    if (!ImGui::BeginTable(id, 4, ImGuiTableFlags_RowBg | ImGuiTableFlags_SizingStretchProp)) return false;
    ImGui::TableSetupColumn("tick", ImGuiTableColumnFlags_WidthFixed, ImGui::GetFrameHeight() + scene_.px(44.0F));
    ImGui::TableSetupColumn("what", ImGuiTableColumnFlags_WidthStretch, 5.0F);
    ImGui::TableSetupColumn("how much", ImGuiTableColumnFlags_WidthFixed, scene_.px(104.0F));
    ImGui::TableSetupColumn("what for", ImGuiTableColumnFlags_WidthStretch, 4.0F);
    return true;
  }

  void row(const std::string& key, const std::string& count, const std::string& what, const std::string& beside,
           const std::string& what_for, const std::string& under = "") {
    ImGui::TableNextRow();
    ImGui::TableNextColumn();
    ImGui::PushID(key.c_str());
    bool ticked = state_.ticked.count(key) > 0;
    if (ImGui::Checkbox("##tick", &ticked)) {
      if (ticked)
        state_.ticked.insert(key);
      else
        state_.ticked.erase(key);
    }
    ImGui::SameLine();
    ImGui::TextUnformatted(count.c_str());
    ImGui::PopID();
    const Ink ink = ticked ? Ink::faint_text : Ink::text;
    cell(what, ink);
    if (!under.empty()) {
      ImGui::PushFont(scene_.fonts.small);
      wrapped(scene_, Ink::faint_text, under);
      ImGui::PopFont();
    }
    cell(beside, ink);
    cell(what_for, Ink::faint_text);
  }

  /// Where the row that was drawn last stands.
  void note(const std::string& name) const { note_item(scene_, "row " + name); }

  void buy(const plan::ListItem& item) {
    const std::string name = report::item_name(item, units_);
    row("buy " + item.id + name, report::quantity_of(item), name, report::price_of(item),
        report::joined(item.used_for, ", "),
        item.instead.empty() ? "" : "or: " + report::joined(item.instead, "; or "));
  }

  void cut(const plan::CutItem& item) {
    const std::string stock = report::stock_words(item.stock, units_);
    row("cut " + stock + item.used_for, fmt::format("{}", item.quantity), "from " + stock,
        report::cut_size(item, units_), item.used_for, report::cut_remark(item, units_));
  }

  void hole(const report::HoleRow& hole) {
    const std::string key = fmt::format("hole {} {} {}", hole.used_for, hole.size, hole.where);
    row(key, fmt::format("{}", hole.count), hole.what, hole.size, hole.used_for, hole.where);
    note(key);
  }

 private:
  void cell(const std::string& text, Ink ink) {
    ImGui::TableNextColumn();
    ImGui::AlignTextToFramePadding();
    wrapped(scene_, ink, text);
  }

  const Scene& scene_;
  ListState& state_;
  UnitSystem units_;
};

/// Each list is numbered from 1 on, as its own steps point to one another.
void draw_steps(const std::string& title, const std::vector<report::StepList>& lists, ListRows& rows) {
  int step = 0;  // of all
  for (const report::StepList& list : lists) {
    const std::string heading = title + ": " + list.title;
    if (!rows.begin(heading, heading.c_str())) continue;
    for (std::size_t i = 0; i < list.steps.size(); ++i) {
      rows.row(fmt::format("{} {}", heading, i), fmt::format("{}", i + 1), list.steps[i].text, "", list.steps[i].of);
      rows.note(fmt::format("{} {}", title, ++step));
    }
    ImGui::EndTable();
  }
}

/// What has no price, the metal of stays and baffles by itself.
void draw_consumables(const Shown& shown, bool metal, ListRows& rows) {
  const std::vector<plan::Consumable>& all = shown.plan->list.consumables;
  const auto wanted = [&](const plan::Consumable& item) { return item.metal_of.empty() != metal; };
  if (std::none_of(all.begin(), all.end(), wanted)) return;
  if (!(metal ? rows.begin("Metal, by the steel yard", "metal")
              : rows.begin("Consumables and test gear", "consumables")))
    return;
  for (const plan::Consumable& item : all) {
    if (!wanted(item)) continue;
    const std::string name = report::consumable_name(item, shown.units);
    if (metal)
      rows.row("use " + name, "", fmt::format("{} of {}", item.quantity, name), "no price", item.metal_of, item.why);
    else
      rows.row("use " + name, "", name, item.quantity, item.why);
  }
  ImGui::EndTable();
}

/// Bars and pipes, then the holes of bungs and stays.
void draw_cuts(const Shown& shown, ListRows& rows) {
  const std::vector<report::HoleRow> holes = report::holes_to_cut(*shown.plan, shown.units);
  if ((shown.plan->list.cut.empty() && holes.empty()) || !rows.begin("Cut", "cut")) return;
  for (const plan::CutItem& item : shown.plan->list.cut) rows.cut(item);
  for (const report::HoleRow& hole : holes) rows.hole(hole);
  ImGui::EndTable();
}

/// Whoever has bought for a job that cannot be has bought in vain.
void draw_refused(const Scene& scene) {
  const std::string text = "There is nothing to buy, to cut or to weld while the job is refused.";
  wrapped(scene, Ink::refused, text);
  note_item(scene, text);
}

}  // namespace

Requests draw_list(const Scene& scene, ListState& state) {
  const plan::ShoppingList& list = scene.shown.plan->list;
  Requests asked;
  if (scene.shown.plan->verdict == plan::Verdict::refused) {
    draw_refused(scene);
    return asked;
  }
  if (ImGui::Button("Print")) asked.push_back(Do::print);
  ImGui::SameLine();
  if (ImGui::Button("Export ...")) asked.push_back(Do::export_list);
  ImGui::SameLine();
  ImGui::AlignTextToFramePadding();
  ImGui::TextDisabled("%s", report::sum_words(list).c_str());
  ListRows rows(scene, state);
  std::string shelf;
  bool open = false;
  for (const plan::ListItem& item : list.buy) {
    if (item.shelf != shelf || !open) {
      if (open) ImGui::EndTable();
      shelf = item.shelf;
      open = rows.begin("Buy: " + shelf, ("buy" + shelf).c_str());
      if (!open) break;
    }
    rows.buy(item);
  }
  if (open) ImGui::EndTable();
  draw_consumables(scene.shown, true, rows);
  draw_consumables(scene.shown, false, rows);
  if (!list.from_bin.empty() && rows.begin("Take from the bin", "bin")) {
    for (const plan::ListItem& item : list.from_bin)
      rows.row("bin " + item.id, report::quantity_of(item), report::item_name(item, scene.shown.units), "",
               report::joined(item.used_for, ", "));
    ImGui::EndTable();
  }
  draw_cuts(scene.shown, rows);
  draw_remarks(scene, plan::Topic::list);
  draw_steps("Order of work", report::work_steps(*scene.shown.plan, scene.shown.units), rows);
  draw_steps("Leak test", report::leak_test_steps(*scene.shown.plan, scene.shown.units), rows);
  return asked;
}

}  // namespace riserun::views
