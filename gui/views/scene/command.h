// Everything that the menus and the keyboard can do, in one table (command_table.cpp): what a menu shows beside it is
// the key that does it. A new command is a name in Do and a row there.
#pragma once

#include <optional>
#include <span>
#include <string>

namespace riserun::gui {
class Model;
}

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
  keypad_enter = 335,
};
constexpr Key letter(char capital) { return static_cast<Key>(capital); }
constexpr Key digit(int value) { return static_cast<Key>(static_cast<int>(Key::digit_0) + value); }
constexpr Key function_key(int number) { return static_cast<Key>(static_cast<int>(Key::f1) + number - 1); }

struct Desk;
struct Frame;

/// What a person can ask of the window by a menu, a key or a button; each has its row in the table of commands.
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
  mend_all,
  connect,
  add_port,
  remove_part,
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
  why,
  find,
  menus,
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
  speed_1,
  speed_10,
  speed_60,
  inch_or_metric,
  light_or_dark,
  larger_text,
  smaller_text,
  usual_text,
  keys,
  glossary,
  count,  // of them, no command
};

enum class Menu { file, edit, show, water, settings, help };

struct Shortcut {
  Key key = Key::none;
  bool ctrl = false;
  bool shift = false;
};
constexpr Shortcut ctrl(Key key) { return {key, true, false}; }
constexpr Shortcut ctrl_shift(Key key) { return {key, true, true}; }

struct CommandRow {
  Do what;
  Menu menu;
  const char* name;  // "Save as ..."
  Shortcut shortcut;
  void (*carry_out)(Frame&);                                   // does nothing where it cannot be done
  bool line_before = false;                                    // the menu draws a line over it
  bool (*possible)(const gui::Model&, const Desk&) = nullptr;  // else the menu shows it grey; none: always
};

/// Every command once, in the order of the menus.
std::span<const CommandRow> commands();
const CommandRow& row_of(Do what);
const char* name_of(Menu menu);
/// `Ctrl+Shift+S`; empty: no key.
std::string keys_of(const CommandRow& command);

/// The command of that key. While a field is being typed into, only those with Ctrl or a function key, and none that
/// the field itself understands.
std::optional<Do> command_for(const Shortcut& press, bool typing);

}  // namespace riserun::views
