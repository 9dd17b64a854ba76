// What people and files call things, made safe in the languages that pages and tables are written in.
#pragma once

#include <string>
#include <string_view>

namespace riserun::report {

/// In the text of an HTML element or in a quoted attribute (WHATWG HTML, section 13.1).
std::string html(std::string_view text);
/// The same for an element's text, in which a measure like 3-15/16 is never broken over two lines: its end alone reads
/// as another measure.
std::string html_words(std::string_view text);
/// As CommonMark 0.30 shows it letter by letter.
std::string markdown(std::string_view text);
/// A field of RFC 4180, in quotes where it needs them. What a spreadsheet would take for a formula (it begins with
/// =, +, -, @ or a tab) gets an apostrophe before it.
std::string csv_text(std::string_view text);

}  // namespace riserun::report
