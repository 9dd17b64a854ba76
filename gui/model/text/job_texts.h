// The text of a job and where its values stand, as the catalog's editing of YAML texts has them.
#pragma once

#include "catalog/edit/job_path.h"
#include "catalog/edit/job_text.h"
#include "catalog/edit/text_lines.h"
#include "catalog/edit/text_tree.h"
#include "catalog/edit/yaml_writing.h"

namespace riserun::gui {

using catalog::at;
using catalog::CannotEdit;
using catalog::column_of;
using catalog::Content;
using catalog::Edited;
using catalog::in_double_quotes;
using catalog::is_blank;
using catalog::JobPath;
using catalog::JobText;
using catalog::kByteOrderMark;
using catalog::line_end;
using catalog::line_start;
using catalog::next_line;
using catalog::PathStep;
using catalog::TextNode;
using catalog::written_in_brackets;

}  // namespace riserun::gui
