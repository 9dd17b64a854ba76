#include "gui/views/command.h"

namespace riserun::views {

namespace {

constexpr Command kCommands[] = {
    {Do::start_new, Menu::file, "New job", letter('N'), true},
    {Do::open, Menu::file, "Open ...", letter('O'), true},
    {Do::save, Menu::file, "Save", letter('S'), true, false, true},
    {Do::save_as, Menu::file, "Save as ...", letter('S'), true, true},
    {Do::reload, Menu::file, "Read again from disk", function_key(9)},
    {Do::export_list, Menu::file, "Export list, plan and PDF ...", letter('E'), true, false, true},
    {Do::print, Menu::file, "Print list", letter('P'), true},
    {Do::leave, Menu::file, "Quit", letter('Q'), true, false, true},

    {Do::undo, Menu::edit, "Undo", letter('Z'), true},
    {Do::redo, Menu::edit, "Redo", letter('Z'), true, true},
    {Do::other_choices, Menu::edit, "Other parts here ...", Key::enter, false, false, true},
    {Do::use_this, Menu::edit, "Use this part", letter('U')},
    {Do::never_use, Menu::edit, "Never use this part", Key::del},
    {Do::count_in_bin, Menu::edit, "I have some of these ...", letter('B')},
    {Do::connect, Menu::edit, "Connect two ports ...", letter('K'), true, false, true},
    {Do::add_port, Menu::edit, "Add a port ...", letter('P'), true, true},

    {Do::sheet_connections, Menu::show, "Connections", digit(1), true},
    {Do::sheet_water, Menu::show, "Water", digit(2), true},
    {Do::sheet_measurements, Menu::show, "Measurements", digit(3), true},
    {Do::sheet_list, Menu::show, "List", digit(4), true},
    {Do::sheet_numbers, Menu::show, "Numbers", digit(5), true},
    {Do::sheet_file, Menu::show, "Job file", digit(6), true},
    {Do::fit, Menu::show, "Show all", letter('F'), false, false, true},
    {Do::nearer, Menu::show, "Nearer", Key::equal},
    {Do::farther, Menu::show, "Farther", Key::minus},
    {Do::next_part, Menu::show, "Next part", Key::right},
    {Do::part_before, Menu::show, "Part before", Key::left},
    {Do::all_parts, Menu::show, "Select all parts", letter('A'), true},

    {Do::play, Menu::water, "Play or pause", Key::space},
    {Do::step_on, Menu::water, "Forward", Key::up},
    {Do::step_back, Menu::water, "Back", Key::down},
    {Do::to_start, Menu::water, "To the start", Key::home},
    {Do::to_end, Menu::water, "To the end", Key::end},

    {Do::inch_or_metric, Menu::settings, "Inch or metric", letter('M'), true},
    {Do::light_or_dark, Menu::settings, "Light or dark", letter('L'), true},
    {Do::larger_text, Menu::settings, "Larger text", Key::equal, true, false, true},
    {Do::smaller_text, Menu::settings, "Smaller text", Key::minus, true},
    {Do::usual_text, Menu::settings, "Usual text", digit(0), true},
};

/// What a text field does with Ctrl held: copy, cut, paste, all, undo, redo.
bool belongs_to_a_field(const KeyPress& press) {
  for (const char letter_of_field : {'A', 'C', 'V', 'X', 'Y', 'Z'})
    if (press.key == letter(letter_of_field)) return true;
  return false;
}

std::string key_name(Key key) {
  switch (key) {
    case Key::space:
      return "Space";
    case Key::minus:
      return "-";
    case Key::equal:
      return "+";
    case Key::escape:
      return "Esc";
    case Key::enter:
      return "Enter";
    case Key::del:
      return "Del";
    case Key::right:
      return "Right";
    case Key::left:
      return "Left";
    case Key::down:
      return "Down";
    case Key::up:
      return "Up";
    case Key::home:
      return "Home";
    case Key::end:
      return "End";
    default:
      break;
  }
  const int number = static_cast<int>(key);
  if (key >= Key::f1) return "F" + std::to_string(number - static_cast<int>(Key::f1) + 1);
  return std::string(1, static_cast<char>(number));
}

}  // namespace

std::span<const Command> commands() { return kCommands; }

const char* name_of(Menu menu) {
  switch (menu) {
    case Menu::file:
      return "File";
    case Menu::edit:
      return "Edit";
    case Menu::show:
      return "Show";
    case Menu::water:
      return "Water";
    case Menu::settings:
      return "Settings";
  }
  return "";
}

std::string keys_of(const Command& command) {
  if (command.key == Key::none) return "";
  return std::string(command.ctrl ? "Ctrl+" : "") + (command.shift ? "Shift+" : "") + key_name(command.key);
}

std::optional<Do> command_for(const KeyPress& press, bool typing) {
  if (typing && press.key < Key::f1 && (!press.ctrl || belongs_to_a_field(press))) return std::nullopt;
  // Ctrl+Y is the other habit for redo; + stands on = with Shift on many keyboards.
  if (press.ctrl && !press.shift && press.key == letter('Y')) return Do::redo;
  const bool plus = press.key == Key::equal;
  for (const Command& command : kCommands)
    if (command.key == press.key && command.ctrl == press.ctrl && (command.shift == press.shift || plus))
      return command.what;
  return std::nullopt;
}

}  // namespace riserun::views
