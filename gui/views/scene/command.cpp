#include "gui/views/scene/command.h"

#include <algorithm>
#include <cassert>

namespace riserun::views {

namespace {

/// What a text field does with Ctrl held: copy, cut, paste, all, undo, redo.
bool belongs_to_a_field(const Shortcut& press) {
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

const CommandRow& row_of(Do what) {
  const auto rows = commands();
  const auto row = std::find_if(rows.begin(), rows.end(), [&](const CommandRow& each) { return each.what == what; });
  assert(row != rows.end());
  return *row;
}

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
    case Menu::help:
      return "Help";
  }
  return "";
}

std::string keys_of(const CommandRow& command) {
  const Shortcut& keys = command.shortcut;
  if (keys.key == Key::none) return "";
  return std::string(keys.ctrl ? "Ctrl+" : "") + (keys.shift ? "Shift+" : "") + key_name(keys.key);
}

std::optional<Do> command_for(const Shortcut& press, bool typing) {
  if (typing && press.key < Key::f1 && (!press.ctrl || belongs_to_a_field(press))) return std::nullopt;
  // Ctrl+Y is the other habit for redo; + stands on = with Shift on many keyboards.
  if (press.ctrl && !press.shift && press.key == letter('Y')) return Do::redo;
  const bool plus = press.key == Key::equal;
  for (const CommandRow& row : commands())
    if (row.shortcut.key == press.key && row.shortcut.ctrl == press.ctrl && (row.shortcut.shift == press.shift || plus))
      return row.what;
  return std::nullopt;
}

}  // namespace riserun::views
