// riserun-view [JOB]: the window.
#include "catalog/load.h"
#include "gui/app/window.h"
#include "quantity/input_error.h"

#include <cstdlib>
#include <filesystem>
#include <iostream>
#include <string>
#include <vector>

namespace {

using namespace riserun;

constexpr const char* kUsage =
    "riserun-view [JOB]          plan a job in a window\n"
    "  --size WIDTHxHEIGHT       of the window, in pixels\n"
    "  --scale FACTOR            of text and spaces, 0.5 to 4; otherwise the screen's own\n"
    "  --catalog FILE            your own parts and prices; may be given several times\n"
    "  --state FOLDER            where recent files and copies for recovery are kept\n"
    "  --places FILE             write after each frame where things stand, for tests\n"
    "  --cost                    at the end, say what the frames have cost\n";

struct Words {
  app::WindowWishes window;
  std::filesystem::path job;
  std::filesystem::path state;
  std::vector<std::filesystem::path> catalogs;
};

/// @throws std::invalid_argument for what is not understood
Words read_words(const std::vector<std::string>& words) {
  Words read;
  for (std::size_t i = 0; i < words.size(); ++i) {
    const std::string& word = words[i];
    const auto next = [&]() -> const std::string& {
      if (i + 1 == words.size()) throw std::invalid_argument(word + " needs a value");
      return words[++i];
    };
    if (word == "--cost") {
      read.window.print_cost = true;
    } else if (word == "--scale") {
      read.window.scale = std::stof(next());
      if (!(read.window.scale >= 0.5F && read.window.scale <= 4.0F))
        throw std::invalid_argument("--scale goes from 0.5 to 4");
    } else if (word == "--size") {
      std::size_t used = 0;
      const std::string& size = next();
      read.window.width = std::stoi(size, &used);
      if (used >= size.size()) throw std::invalid_argument("--size is written as 1280x800");
      read.window.height = std::stoi(size.substr(used + 1));
    } else if (word == "--catalog") {
      read.catalogs.emplace_back(next());
    } else if (word == "--places") {
      read.window.places = next();
    } else if (word == "--state") {
      read.state = next();
    } else if (!word.empty() && word[0] == '-') {
      throw std::invalid_argument("no such word: " + word);
    } else {
      read.job = word;
    }
  }
  return read;
}

int show(const Words& words) {
  const auto catalog =
      std::make_shared<const catalog::Catalog>(catalog::load_catalog(catalog::find_catalog_folder(), words.catalogs));
  gui::Model model({catalog, words.state});
  if (!words.job.empty()) model.open(words.job);
  app::Window window(words.window);
  window.run(model);
  return 0;
}

}  // namespace

int main(int count, char** words) {
  try {
    const std::vector<std::string> all(words + 1, words + count);
    for (const std::string& word : all)
      if (word == "--help" || word == "-h") {
        std::cout << kUsage;
        return 0;
      }
    return show(read_words(all));
  } catch (const std::invalid_argument& error) {
    std::cerr << error.what() << '\n' << kUsage;
    return 2;
  } catch (const std::exception& error) {
    std::cerr << error.what() << '\n';
    return 2;
  }
}
