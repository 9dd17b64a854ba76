// The window on the screen: GLFW and OpenGL 3 behind ImGui. It sleeps until something happens.
#pragma once

#include "gui/model/session/model.h"

#include <filesystem>
#include <memory>

namespace riserun::app {

struct WindowWishes {
  int width = 0;  // points, for content scale 1; 0: as it was last, else 1280 x 800
  int height = 0;
  std::filesystem::path state;   // the folder that remembers the window's place; empty: nothing does
  float scale = 0.0F;            // of text and spaces; 0: the screen's own
  bool start_page = false;       // until a job is opened or begun
  bool print_cost = false;       // at the end, what the frames have cost
  std::filesystem::path places;  // written after each frame: where things stand; empty: not written
};

class Window {
 public:
  /// @throws std::runtime_error when there is no screen or no OpenGL 3
  explicit Window(const WindowWishes& wishes);
  ~Window();
  Window(const Window&) = delete;
  Window& operator=(const Window&) = delete;

  /// Until the person leaves.
  void run(gui::Model& model);

 private:
  struct Inside;
  std::unique_ptr<Inside> inside_;
};

}  // namespace riserun::app
