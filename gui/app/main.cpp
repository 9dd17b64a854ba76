// riserun-view [JOB]: the window.
#include "catalog/load/load.h"
#include "gui/app/window.h"
#include "gui/model/session/state_folder.h"
#include "quantity/input_error.h"

#include <CLI/CLI.hpp>

#include <algorithm>
#include <charconv>
#include <filesystem>
#include <iostream>
#include <string>
#include <string_view>
#include <vector>

namespace {

using namespace riserun;

constexpr int kSmallest = 200;
constexpr int kLargest = 16384;  // px a side; no screen has more

struct Words {
  app::WindowWishes window;
  std::filesystem::path job;
  std::filesystem::path state;
  std::vector<std::filesystem::path> catalogs;
};

bool read_whole(std::string_view text, int& number) {
  const auto [end, error] = std::from_chars(text.data(), text.data() + text.size(), number);
  return error == std::errc() && end == text.data() + text.size();
}

/// `1280x800`. Empty: done; otherwise what is wrong.
std::string read_size(const std::string& text, app::WindowWishes& wishes) {
  const std::string_view all = text;
  const std::size_t cross = std::min(all.find('x'), all.size());
  int width = 0;
  int height = 0;
  if (!read_whole(all.substr(0, cross), width) || !read_whole(all.substr(std::min(cross + 1, all.size())), height))
    return "'" + text + "' is no size; it is written as 1280x800";
  if (std::min(width, height) < kSmallest || std::max(width, height) > kLargest)
    return "'" + text + "': each side goes from " + std::to_string(kSmallest) + " to " + std::to_string(kLargest);
  wishes.width = width;
  wishes.height = height;
  return "";
}

void add_words(CLI::App& app, Words& words, std::string& size) {
  app.add_option("job", words.job, "The job to open; left out: a page with new, recent and examples");
  app.add_option("--size", size, "Of the window, in pixels, like 1280x800; left out: as it was last")
      ->check([&words](const std::string& text) { return read_size(text, words.window); });
  app.add_option("--scale", words.window.scale, "Of text and spaces; left out: the screen's own")
      ->check(CLI::Range(0.5, 4.0));
  app.add_option("--catalog", words.catalogs, "Your own parts and prices; may be given several times")
      ->allow_extra_args(false);
  app.add_option("--state", words.state, "Folder for recent files and copies for recovery");
  app.add_option("--places", words.window.places, "File that tells after each frame where things stand, for tests");
  app.add_flag("--cost", words.window.print_cost, "At the end, say what the frames have cost");
}

void show(const Words& words) {
  const auto catalog = std::make_shared<const catalog::Catalog>(catalog::load_shipped_catalog(words.catalogs));
  gui::Model model({catalog, words.state});
  if (!words.job.empty()) model.post(gui::Open{words.job});
  app::WindowWishes wishes = words.window;
  wishes.start_page = words.job.empty();
  wishes.state = words.state.empty() ? gui::state_folder() : words.state;
  app::Window window(wishes);
  window.run(model);
}

}  // namespace

int main(int count, char** arguments) {
  CLI::App app{"Plans the plumbing of a water reservoir under a work table, in a window", "riserun-view"};
  Words words;
  std::string size;
  add_words(app, words, size);
  app.set_version_flag("--version", "riserun-view " RISERUN_VERSION);
  try {
    app.parse(count, arguments);
    show(words);
    return 0;
  } catch (const CLI::ParseError& error) {
    return app.exit(error) == 0 ? 0 : 2;
  } catch (const std::exception& error) {
    std::cerr << error.what() << '\n';
    return 2;
  }
}
