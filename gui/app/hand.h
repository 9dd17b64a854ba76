// What the hand has done to the window, in the order in which it was done, handed on to ImGui a little each frame.
// ImGui looks at keys and buttons once a frame: of what goes down and up between two frames it would see nothing, a
// click would lie where the pointer is by now, and of a key and a button it would not know which came first.
#pragma once

#include <deque>
#include <vector>

struct GLFWwindow;

namespace riserun::app {

class Hand {
 public:
  Hand();

  void key(int key, int scancode, int action, int modifiers);
  void letter(unsigned int letter);
  void pointer(double x, double y);
  /// The pointer has left the window.
  void left();
  void button(int button, int action);
  void wheel(double across, double up);

  bool waits() const { return !events_.empty(); }
  /// Before ImGui's new frame, after its GLFW half: as much as one frame can tell apart.
  void hand_on(GLFWwindow* window);

 private:
  struct Event {
    enum class What { key, letter, pointer, button, wheel } what;
    int key = 0, scancode = 0, action = 0, modifiers = 0;  // of a button: its number is `key`
    unsigned int letter = 0;
    double x = 0.0, y = 0.0;  // of the wheel: across, up
  };
  /// False: not in this frame.
  bool take(GLFWwindow* window, const Event& event);

  static constexpr int kButtons = 5;
  std::deque<Event> events_;
  double x_, y_;
  bool down_[kButtons] = {};
  bool pressed_ = false;       // in this frame: a key that is no Shift or Ctrl went down, or a button up or down
  std::vector<int> released_;  // keys that came up in this frame
};

}  // namespace riserun::app
