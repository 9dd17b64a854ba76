// Everything that the menus and the keyboard can do, in one table: what a menu shows beside it is the key that does it.
#pragma once

#include <optional>
#include <span>
#include <string>

namespace riserun::views {

/// Keys by the numbers that the window's library gives them: letters and digits by ASCII, others of their own.
enum class Key : int {
  none = 0,
  space = 32,
  minus = 45,
  digit_0 = 48,
  equal = 61,
  letter_a = 65,
  escape = 256,
  enter = 257,
  tab = 258,
  insert = 260,
  del = 261,
  right = 262,
  left = 263,
  down = 264,
  up = 265,
  home = 268,
  end = 269,
  f1 = 290,
};
constexpr Key letter(char capital) { return static_cast<Key>(capital); }
constexpr Key digit(int value) { return static_cast<Key>(static_cast<int>(Key::digit_0) + value); }
constexpr Key function_key(int number) { return static_cast<Key>(static_cast<int>(Key::f1) + number - 1); }

enum class Do {
  start_new,
  open,
  save,
  save_as,
  reload,
  print,
  export_list,
  leave,
  undo,
  redo,
  connect,
  add_port,
  never_use,
  use_this,
  other_choices,
  count_in_bin,
  sheet_connections,
  sheet_water,
  sheet_measurements,
  sheet_list,
  sheet_numbers,
  sheet_file,
  fit,
  nearer,
  farther,
  next_part,
  part_before,
  all_parts,
  play,
  step_on,
  step_back,
  to_start,
  to_end,
  inch_or_metric,
  light_or_dark,
  larger_text,
  smaller_text,
  usual_text,
};

enum class Menu { file, edit, show, water, settings };

struct Command {
  Do what;
  Menu menu;
  const char* name;  // "Save as ..."
  Key key = Key::none;
  bool ctrl = false;
  bool shift = false;
  bool line_before = false;  // the menu draws a line over it
};

std::span<const Command> commands();
const char* name_of(Menu menu);
/// `Ctrl+Shift+S`; empty: no key.
std::string keys_of(const Command& command);

struct KeyPress {
  Key key = Key::none;
  bool ctrl = false;
  bool shift = false;
};
/// The command of that key. While a field is being typed into, only those with Ctrl or a function key, and none that
/// the field itself understands.
std::optional<Do> command_for(const KeyPress& press, bool typing);

}  // namespace riserun::views
