// Beside the canvas: the chosen part, and its connection's other chains side by side.
#include "chain/finder.h"
#include "gui/model/edit/parts_in_words.h"
#include "gui/model/edit/take_out.h"
#include "gui/model/edit/take_run.h"
#include "gui/views/canvas/node_words.h"
#include "gui/views/scene/words.h"
#include "gui/views/sheets/connections_sheet.h"
#include "plan/run_cost.h"
#include "report/words/say.h"

#include <fmt/format.h>
#include <imgui.h>
#include <imgui_stdlib.h>

#include <optional>

namespace riserun::views {

namespace {

void act_button(const Scene& scene, Requests& asked, const char* words, Do what) {
  if (ImGui::Button(words)) asked.push_back(what);
  if (ImGui::IsItemHovered()) hint(scene, keys_of(row_of(what)));
}

void part_acts(const Scene& scene, Requests& asked, const gui::Node& node) {
  if (!node.part) return;
  if (node.kind != gui::NodeKind::part) return act_button(scene, asked, words::kRemove, Do::remove_part);
  const plan::ConnectionPlan* of = gui::connection_at(*scene.shown.plan, node.connection);
  if (of != nullptr && !of->branched) {
    act_button(scene, asked, words::kSwap, Do::other_choices);
    ImGui::SameLine();
  }
  if (gui::is_needed(scene.shown.plan->job, gui::name_of_connection(*scene.shown.plan, node.connection), *node.part))
    act_button(scene, asked, words::kRemove, Do::remove_part);
  else
    act_button(scene, asked, words::kExclude, Do::never_use);
  ImGui::SameLine();
  if (ImGui::GetContentRegionAvail().x < scene.px(210.0F)) ImGui::NewLine();
  act_button(scene, asked, words::kKeepThisPart, Do::use_this);
  ImGui::SameLine();
  act_button(scene, asked, words::kInStock, Do::count_in_bin);
}

/// What the list buys for it.
std::string cost_words(const Scene& scene, const plan::ConnectionPlan& connection) {
  const std::string cost = write_price(plan::cost_of(scene.shown.plan->list, connection.name));
  const plan::ClampsBought clamps = plan::clamps_bought(*scene.shown.plan, connection.name);
  return clamps.count == 0 ? cost : fmt::format("{}, {} clamps in it", cost, clamps.count);
}

std::string parts_in_one_line(const catalog::Catalog& catalog, const chain::Chain& chain) {
  std::string text;
  for (const chain::RunPart& part : chain.parts) text += (text.empty() ? "" : "\n") + catalog.part(part.part).name;
  return text.empty() ? "the two ports go straight together" : text;
}

gui::Command taking(const gui::Alternatives& all, std::size_t row) {
  if (row == 0 && all.taken) return gui::Perform{gui::BackToBest{all.connection}};
  return gui::Perform{gui::TakeRun{all.connection, gui::rows_of_run(*all.catalog, all.rows[row].chain)}};
}

constexpr const char* kColumns[] = {words::kRun, "parts", "buy", "price", "fill", "length", "head lost"};

/// Head tells nothing of air.
std::size_t columns_of(const plan::ConnectionPlan& connection) {
  return std::size(kColumns) - (connection.request.service == chain::Service::water ? 0 : 1);
}

/// The device at the end of a run, which is counted with its parts.
struct EndDevice {
  int parts = 0;
  int bought = 0;
};

EndDevice end_device(const Scene& scene, const std::string& connection) {
  EndDevice device;
  for (const gui::Node& node : scene.shown.sketch.nodes) {
    const plan::ConnectionPlan* of = gui::connection_at(*scene.shown.plan, node.connection);
    if (of == nullptr || of->name != connection || !of->ends_in || node.part != of->ends_in) continue;
    device = {1, node.bought > 0 ? 1 : 0};
  }
  return device;
}

/// From port to port; a device that is screwed straight in reaches into the port.
std::string length_words(quantity::Length length, UnitSystem units) {
  return length < quantity::Length{} ? "overlaps " + write_length(-length, units) : write_length(length, units);
}

void alternative_row(const Scene& scene, Requests& asked, const gui::Alternatives& all, std::size_t row,
                     std::size_t columns) {
  const chain::Chain& chain = all.rows[row].chain;
  const UnitSystem units = scene.shown.units;
  ImGui::TableNextRow();
  ImGui::TableNextColumn();
  ImGui::PushID(static_cast<int>(row));
  const char* what = row == 0 && all.taken ? words::kBestAgain : words::kUseThisRun;
  if (row == all.in_use)
    ImGui::TextUnformatted(all.taken ? words::kInUsePinned : words::kInUse);
  else if (ImGui::SmallButton(row < 9 ? fmt::format("{} ({})", what, row + 1).c_str() : what))
    asked.push_back(taking(all, row));
  note_item(scene, row != all.in_use ? fmt::format("take {}", row)
                   : all.taken       ? fmt::format("in use {} pinned", row)
                                     : fmt::format("in use {}", row));
  if (ImGui::IsItemHovered()) hint(scene, parts_in_one_line(*all.catalog, chain));
  ImGui::PopID();
  const gui::Comes* comes = row < all.comes.size() ? &all.comes[row] : nullptr;
  const EndDevice device = end_device(scene, all.connection);
  const std::string cells[] = {fmt::format("{}", chain.part_count + device.parts),
                               fmt::format("{}", chain.buy_count + device.bought),
                               comes == nullptr ? "..." : write_price(comes->price),
                               comes == nullptr ? "..."
                               : comes->fill    ? write_time(*comes->fill)
                                                : "never",
                               length_words(chain.length, units),
                               write_head(chain.head, units, 2)};
  for (std::size_t column = 0; column + 1 < columns; ++column) {
    const std::string& cell = cells[column];
    ImGui::TableNextColumn();
    ImGui::TextUnformatted(cell.c_str());
    note_item(scene, fmt::format("run {} {} {}", row, kColumns[column + 1], cell));
    if (ImGui::IsItemHovered()) hint(scene, parts_in_one_line(*all.catalog, chain));
  }
}

void alternatives(const Scene& scene, Requests& asked, const plan::ConnectionPlan& connection) {
  const gui::Alternatives* all = scene.model.alternatives(connection.name);
  if (all == nullptr) {
    asked.push_back(WorkOutAlternatives{connection.name});
    ImGui::TextDisabled("other runs are being worked out ...");
    return;
  }
  if (all->rows.empty()) {
    ImGui::TextDisabled("there are no other runs");
    return;
  }
  const std::size_t columns = columns_of(connection);
  if (!ImGui::BeginTable("alternatives", static_cast<int>(columns),
                         ImGuiTableFlags_RowBg | ImGuiTableFlags_SizingFixedFit))
    return;
  for (std::size_t column = 0; column < columns; ++column) ImGui::TableSetupColumn(kColumns[column]);
  ImGui::TableHeadersRow();
  for (std::size_t row = 0; row < all->rows.size(); ++row) alternative_row(scene, asked, *all, row, columns);
  ImGui::EndTable();
  note_place(scene, fmt::format("runs {}", all->rows.size()), {});
}

std::optional<std::size_t> row_in_job(const plan::Job& job, const std::string& connection) {
  for (std::size_t row = 0; row < job.connections.size(); ++row)
    if (job.connections[row].name == connection) return row;
  return std::nullopt;
}

/// The wishes that stand in the job, each with a button that drops it.
void wishes(const Scene& scene, Requests& asked, std::string& wish, const plan::JobConnection& connection) {
  const auto rows = [&](const char* title, gui::WishKind kind, const std::vector<std::string>& words) {
    for (const std::string& word : words) {
      ImGui::PushID(word.c_str());
      ImGui::TextDisabled("%s", title);
      ImGui::SameLine();
      ImGui::TextUnformatted(gui::title_of(*scene.shown.plan->catalog, word).c_str());
      ImGui::SameLine();
      if (ImGui::SmallButton(words::kRemove)) asked.push_back(gui::Perform{gui::DropWish{connection.name, kind, word}});
      ImGui::PopID();
    }
  };
  std::vector<std::string> needs;
  for (const chain::Need& need : connection.needs) needs.push_back(need.words);
  rows(words::kMustHave, gui::WishKind::need, needs);
  std::vector<std::string> avoided;
  for (const chain::Avoidance& avoidance : connection.avoided) avoided.push_back(avoidance.words);
  rows(words::kExclude, gui::WishKind::avoid, avoided);
  ImGui::SetNextItemWidth(ImGui::GetContentRegionAvail().x * 0.5F);
  ImGui::InputTextWithHint("##wish", "ball valve, brass ...", &wish);
  const auto add = [&](gui::WishKind kind) {
    if (wish.empty()) return;
    asked.push_back(gui::Perform{gui::AddWish{connection.name, kind, wish}});
    wish.clear();
  };
  ImGui::SameLine();
  if (ImGui::Button(words::kMustHave)) add(gui::WishKind::need);
  ImGui::SameLine();
  if (ImGui::Button(words::kExclude)) add(gui::WishKind::avoid);
}

/// Whether each end of the run can still turn or move once the other side is in place.
void ends(const Scene& scene, Requests& asked, const plan::ConnectionPlan& connection, std::size_t job_row) {
  static constexpr const char* kFreedoms[] = {"fixed", "sliding", "spinning", "loose"};
  const auto choose = [&](const char* key, const std::string& port, chain::Freedom freedom) {
    if (port.empty()) return;
    int chosen = static_cast<int>(freedom);
    ImGui::SetNextItemWidth(scene.px(110.0F));
    if (ImGui::Combo(fmt::format("{}##{}", port, key).c_str(), &chosen, words::kHeld, 4))
      asked.push_back(gui::Perform{gui::SetValue{gui::at("connections") / job_row / "held" / key, kFreedoms[chosen]}});
  };
  choose("from", connection.from, connection.request.from.freedom);
  if (!connection.ends_in) choose("to", connection.to, connection.request.to.freedom);
}

void mends(const Scene& scene, const quantity::Facts& all) {
  for (const std::string& mend : report::say_all(all, scene.shown.units)) wrapped(words::kFix + mend);
}

void no_chain(const Scene& scene, const chain::NoChain& none) {
  wrapped(scene, Ink::refused, "No run: " + report::say(none.reason, scene.shown.units));
  const catalog::Catalog& catalog = *scene.shown.plan->catalog;
  if (none.special_order) wrapped("One part on order would complete it: " + catalog.part(*none.special_order).name);
  if (none.missing_part)
    wrapped("One part would complete it, if it can be had: " + report::say(*none.missing_part, scene.shown.units));
  for (const std::string& trap : report::say_all(none.look_alikes, scene.shown.units)) wrapped("Trap: " + trap);
  mends(scene, none.mends);
}

void watch(const Scene& scene, const quantity::Facts& cautions) {
  for (const std::string& caution : report::say_all(cautions, scene.shown.units))
    wrapped(scene, Ink::caution, "Watch: " + caution);
}

void kept(const Scene& scene, const chain::Run& run) {
  if (const std::string words = report::kept_sentence(run, scene.shown.units); !words.empty()) wrapped(words);
}

void build_order(const Scene& scene, const std::vector<chain::BuildStep>& steps) {
  if (steps.empty() || !ImGui::CollapsingHeader("Build order")) return;
  for (std::size_t i = 0; i < steps.size(); ++i)
    wrapped(fmt::format("{}. {}", i + 1, report::say(steps[i].what, scene.shown.units)));
}

void no_assembly(const Scene& scene, const chain::NoAssembly& none) {
  wrapped(scene, Ink::refused, "Cannot be put together: " + report::say(none.reason, scene.shown.units));
  mends(scene, none.mends);
  if (none.way) no_chain(scene, *none.way);
}

/// What a branch ends in, and what is asked of it.
void branch_row(const Scene& scene, const plan::ConnectionPlan& connection, std::size_t target) {
  const chain::Assembly& assembly = *connection.assembly();
  const catalog::Catalog& catalog = *scene.shown.plan->catalog;
  const chain::RunEnd& end = assembly.ends[target];
  const chain::Chain way = chain::way_to(assembly, target);
  std::string text = fmt::format("{}: {} {} on its way", connection.ends[target], way.parts.size(),
                                 way.parts.size() == 1 ? "part" : "parts");
  if (end.device) text += fmt::format(", ends in {}", catalog.part(*end.device).name);
  if (const auto bore = chain::bore_of_way(catalog, assembly, target))
    text += fmt::format(", bore {}", write_thickness(*bore, scene.shown.units, 3));
  ImGui::Bullet();
  wrapped(text);
  if (ImGui::IsItemHovered()) hint(scene, parts_in_one_line(catalog, way));
}

void branches(const Scene& scene, const plan::ConnectionPlan& connection) {
  if (const chain::NoAssembly* none = connection.no_assembly()) no_assembly(scene, *none);
  const chain::Assembly* assembly = connection.assembly();
  if (assembly == nullptr) return;
  wrapped(fmt::format("{} to {} ends: {} parts, {}", connection.from, connection.ends.size(), assembly->part_count,
                      cost_words(scene, connection)));
  kept(scene, *assembly);
  for (std::size_t target = 0; target < connection.ends.size(); ++target) branch_row(scene, connection, target);
}

void one_run(const Scene& scene, Requests& asked, const plan::ConnectionPlan& connection) {
  const UnitSystem units = scene.shown.units;
  if (const chain::NoChain* none = connection.none()) no_chain(scene, *none);
  if (const chain::Chain* chain = connection.chain()) {
    const std::size_t count = chain->parts.size() + (connection.ends_in ? 1 : 0);
    wrapped(fmt::format("{} to {}: {} {}, {}", connection.from, connection.to, count, count == 1 ? "part" : "parts",
                        cost_words(scene, connection)));
    kept(scene, *chain);
    if (connection.gap)
      ImGui::TextDisabled("%s", fmt::format("gap {}, run {}", write_length(*connection.gap, units),
                                            write_length(connection.run_length, units))
                                    .c_str());
  }
  if (connection.chain() != nullptr || connection.request.taken) alternatives(scene, asked, connection);
}

void connection_particulars(const Scene& scene, Requests& asked, std::string& wish,
                            const plan::ConnectionPlan& connection) {
  strong(scene, connection.name);
  connection.branched ? branches(scene, connection) : one_run(scene, asked, connection);
  const plan::Job& job = scene.shown.plan->job;
  if (const auto row = row_in_job(job, connection.name)) {
    if (!connection.branched) ends(scene, asked, connection, *row);
    wishes(scene, asked, wish, job.connections[*row]);
  }
  if (const chain::Run* run = connection.run()) build_order(scene, run->steps);
  watch(scene, connection.cautions);
}

}  // namespace

Requests take_alternative(const Scene& scene, const CanvasState& canvas, std::size_t row) {
  const gui::Node* node = chosen_node(scene.shown.sketch, canvas);
  const auto* of = node != nullptr ? gui::connection_at(*scene.shown.plan, node->connection) : nullptr;
  if (of == nullptr || of->branched) return {};
  const std::string& connection = of->name;
  const gui::Alternatives* all = scene.model.alternatives(connection);
  if (all == nullptr) return {WorkOutAlternatives{connection}};
  if (row >= all->rows.size() || row == all->in_use) return {};
  return {taking(*all, row)};
}

Requests draw_particulars(const Scene& scene, ConnectionsState& state) {
  const plan::Plan& plan = *scene.shown.plan;
  const gui::Node* node = chosen_node(scene.shown.sketch, state.canvas);
  if (node == nullptr) return {};
  if (ImGui::BeginTable("title", 2)) {
    ImGui::TableSetupColumn("words", ImGuiTableColumnFlags_WidthStretch);
    ImGui::TableSetupColumn("close", ImGuiTableColumnFlags_WidthFixed);
    ImGui::TableNextColumn();
    strong(scene, title_of(plan, *node));
    ImGui::TableNextColumn();
    const bool closes = ImGui::SmallButton(words::kClose);
    note_item(scene, "close particulars");
    ImGui::EndTable();
    if (closes) {
      state.canvas.selected.clear();
      return {};
    }
  }
  if (node->part) {
    const catalog::Part& part = plan.catalog->part(*node->part);
    ImGui::TextDisabled("%s, %s", plan.catalog->material(part.material).name.c_str(),
                        source_words(plan, *node).c_str());
    // Where its figures are from is asked for once, not told of each part that the pointer passes.
    const std::string& source = part.source.empty() ? plan.catalog->family(part.family).source : part.source;
    if (!source.empty() && ImGui::IsItemHovered()) hint(scene, source);
  }
  Requests asked;
  part_acts(scene, asked, *node);
  const plan::ConnectionPlan* connection = gui::connection_at(plan, node->connection);
  if (connection == nullptr) return asked;
  ImGui::Separator();
  connection_particulars(scene, asked, state.wish, *connection);
  return asked;
}

}  // namespace riserun::views
