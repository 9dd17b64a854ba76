// From an act to the edits of the job's text that carry it out.
#pragma once

#include "catalog/catalog.h"
#include "gui/model/edit/act.h"
#include "gui/model/text/job_text.h"
#include "plan/plan.h"

#include <functional>
#include <memory>
#include <optional>
#include <string>

namespace riserun::gui {

/// What an act is carried out on.
struct Bench {
  const JobText& text;
  const catalog::Catalog& catalog;  // the job's own where it has one
  const catalog::Catalog& shipped;
  /// The plan of the text as it stands; nullptr: the job does not load.
  std::function<std::shared_ptr<const plan::Plan>()> plan;
  /// The plan of another text; nullptr: it does not load.
  std::function<std::shared_ptr<const plan::Plan>(const JobText&)> plan_of;
};

/// The text after the act, or why it cannot be done. For all acts but SetText.
Edited edit_for(const Act& act, const Bench& bench);

/// What undo calls the act: `Never use 1 x 3/4 hex bushing (black iron) in 'water up'`. `text` is that before the act.
std::string name_of(const Act& act, const catalog::Catalog& catalog, const JobText* text);

/// The name of a connection of the text: its own, or made of its ends.
std::string connection_name(const TextNode& connection);
/// The row of that connection in the list of the text; nullopt: there is none.
std::optional<std::size_t> row_of_connection(const JobText& text, const std::string& name);

/// The path under which a value really stands: a port or a wish may be written short, as a text of its own.
JobPath as_written(const JobText& text, const JobPath& path);

}  // namespace riserun::gui
