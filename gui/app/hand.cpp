#include "gui/app/hand.h"

#include <GLFW/glfw3.h>
#include <backends/imgui_impl_glfw.h>
#include <imgui.h>

#include <algorithm>
#include <cfloat>

namespace riserun::app {

namespace {

bool is_modifier(int key) { return key >= GLFW_KEY_LEFT_SHIFT && key <= GLFW_KEY_RIGHT_SUPER; }

bool is_alt(int key) { return key == GLFW_KEY_LEFT_ALT || key == GLFW_KEY_RIGHT_ALT; }

constexpr double kNowhere = -static_cast<double>(FLT_MAX);  // ImGui's place of a pointer that is elsewhere

}  // namespace

Hand::Hand() : x_(kNowhere), y_(kNowhere) {}

void Hand::key(int key, int scancode, int action, int modifiers) {
  events_.push_back({Event::What::key, key, scancode, action, modifiers});
}

void Hand::letter(unsigned int letter) { events_.push_back({Event::What::letter, 0, 0, 0, 0, letter}); }

void Hand::pointer(double x, double y) { events_.push_back({Event::What::pointer, 0, 0, 0, 0, 0, x, y}); }

void Hand::left() { pointer(kNowhere, kNowhere); }

void Hand::button(int button, int action) {
  if (button < kButtons) events_.push_back({Event::What::button, button, 0, action});
}

void Hand::wheel(double across, double up) { events_.push_back({Event::What::wheel, 0, 0, 0, 0, 0, across, up}); }

bool Hand::take(GLFWwindow* window, const Event& event) {
  if (event.what == Event::What::letter) {  // of the key that went down
    ImGui_ImplGlfw_CharCallback(window, event.letter);
    return true;
  }
  if (pressed_) return false;
  switch (event.what) {
    case Event::What::key:
      // A key that came up is pressed again in a frame of its own, or ImGui takes it for one that is held.
      if (event.action == GLFW_PRESS && std::count(released_.begin(), released_.end(), event.key) != 0) return false;
      if (event.action == GLFW_RELEASE) released_.push_back(event.key);
      ImGui_ImplGlfw_KeyCallback(window, event.key, event.scancode, event.action, event.modifiers);
      // Alt alone opens the menus: a frame has to see it down.
      pressed_ = event.action != GLFW_RELEASE && (!is_modifier(event.key) || is_alt(event.key));
      break;
    case Event::What::button:
      down_[event.key] = event.action != GLFW_RELEASE;
      pressed_ = true;
      break;
    case Event::What::wheel:
      ImGui_ImplGlfw_ScrollCallback(window, event.x, event.y);
      break;
    default:
      x_ = event.x;
      y_ = event.y;
  }
  return true;
}

void Hand::hand_on(GLFWwindow* window) {
  pressed_ = false;
  released_.clear();
  while (!events_.empty() && take(window, events_.front())) events_.pop_front();
  ImGuiIO& io = ImGui::GetIO();
  io.MousePos = {static_cast<float>(x_), static_cast<float>(y_)};
  std::copy(std::begin(down_), std::end(down_), io.MouseDown);
}

}  // namespace riserun::app
