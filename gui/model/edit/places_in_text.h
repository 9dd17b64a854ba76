// Where in the text of a job its connections, ports and wishes stand.
#pragma once

#include "gui/model/text/job_texts.h"

#include <optional>
#include <string>

namespace riserun::gui {

/// The name of a connection of the text: its own, or made of its ends.
std::string connection_name(const TextNode& connection);
/// The path of that connection; nullopt: there is none, see no_connection.
std::optional<JobPath> path_of_connection(const JobText& text, const std::string& name);
CannotEdit no_connection(const std::string& name);

/// Whether a bung's place in the lid stands there: two distances, in the file a list, in a field with a comma between.
bool is_place_in_lid(const JobPath& path);
/// Writes a value as it was typed into its field; a port that was written short gets a place for it.
Edited set_value(const JobText& text, const JobPath& path, const std::string& typed);

/// The path under which a value really stands: a port or a wish may be written short, as a text of its own.
JobPath as_written(const JobText& text, const JobPath& path);

}  // namespace riserun::gui
