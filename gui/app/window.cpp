#include "gui/app/window.h"

#include "gui/app/hand.h"
#include "gui/app/letters.h"
#include "gui/model/session/state_folder.h"
#include "gui/views/desk.h"

#include <GLFW/glfw3.h>
#include <backends/imgui_impl_glfw.h>
#include <backends/imgui_impl_opengl3.h>
#include <fmt/format.h>
#include <imgui.h>

#include <algorithm>
#include <cmath>
#include <cstdio>
#include <ctime>
#include <fstream>
#include <optional>
#include <stdexcept>
#include <string>
#include <vector>

namespace riserun::app {

namespace {

using views::Do;
using views::Key;

// The commands' table names keys by these numbers.
static_assert(static_cast<int>(Key::f1) == GLFW_KEY_F1 && static_cast<int>(Key::enter) == GLFW_KEY_ENTER &&
              static_cast<int>(Key::del) == GLFW_KEY_DELETE && static_cast<int>(Key::up) == GLFW_KEY_UP &&
              static_cast<int>(Key::down) == GLFW_KEY_DOWN && static_cast<int>(Key::left) == GLFW_KEY_LEFT &&
              static_cast<int>(Key::right) == GLFW_KEY_RIGHT && static_cast<int>(Key::home) == GLFW_KEY_HOME &&
              static_cast<int>(Key::end) == GLFW_KEY_END && static_cast<int>(Key::escape) == GLFW_KEY_ESCAPE &&
              static_cast<int>(Key::letter_a) == GLFW_KEY_A && static_cast<int>(Key::digit_0) == GLFW_KEY_0 &&
              static_cast<int>(Key::equal) == GLFW_KEY_EQUAL && static_cast<int>(Key::minus) == GLFW_KEY_MINUS &&
              static_cast<int>(Key::space) == GLFW_KEY_SPACE && static_cast<int>(Key::tab) == GLFW_KEY_TAB &&
              static_cast<int>(Key::insert) == GLFW_KEY_INSERT);

constexpr int kUsualWidth = 1280;
constexpr int kUsualHeight = 800;
constexpr double kWorking = 0.02;     // s between looks at the model while it works
constexpr double kIdle = 0.5;         // ... while it rests: the file on disk may change
constexpr int kFramesAfterEvent = 3;  // ImGui needs a frame or two to settle what an event has begun

/// Processor time of this thread [s].
double processor_time() {
  timespec time{};
  clock_gettime(CLOCK_THREAD_CPUTIME_ID, &time);
  return static_cast<double>(time.tv_sec) + 1e-9 * static_cast<double>(time.tv_nsec);
}

struct Waiting {
  bool happened = false;
  bool wants_to_close = false;
  std::vector<std::string> dropped;
  Hand hand;
};

Waiting& waiting_of(GLFWwindow* window) { return *static_cast<Waiting*>(glfwGetWindowUserPointer(window)); }

/// Screens come and go: a window that would lie outside all of them is not put there.
bool on_a_screen(const gui::WindowPlace& place) {
  int count = 0;
  GLFWmonitor** screens = glfwGetMonitors(&count);
  for (int i = 0; i < count; ++i) {
    int left = 0, top = 0, width = 0, height = 0;
    glfwGetMonitorWorkarea(screens[i], &left, &top, &width, &height);
    if (place.left >= left && place.left < left + width && place.top >= top && place.top < top + height) return true;
  }
  return false;
}

}  // namespace

struct Window::Inside {
  WindowWishes wishes;
  GLFWwindow* window = nullptr;
  Waiting waiting;
  views::Desk desk;
  views::Fonts fonts;
  float lettered_for = 0.0F;  // scale that the fonts are drawn at
  std::optional<gui::Looks> looks;
  std::optional<LetterCount> letters;  // of these fonts, once counted
  std::string titled;                  // as the window system was told last
  std::vector<double> costs;           // s a frame, without what OpenGL does

  float scale() const {
    float across = 1.0F;
    float up = 1.0F;
    glfwGetWindowContentScale(window, &across, &up);
    return (wishes.scale > 0.0F ? wishes.scale : std::max(1.0F, across)) * desk.text_size;
  }

  /// Letters and measures anew when the scale or the looks have changed.
  void dress(const gui::Model& model) {
    const float wanted = scale();
    const gui::Looks look = model.view().looks;
    if (wanted == lettered_for && looks == look) return;
    views::apply(views::theme_of(look), wanted);
    looks = look;
    if (wanted == lettered_for) return;
    fonts = views::load_fonts(wanted);
    if (lettered_for > 0.0F) ImGui_ImplOpenGL3_DestroyFontsTexture();
    if (lettered_for > 0.0F) ImGui_ImplOpenGL3_CreateFontsTexture();
    lettered_for = wanted;
    letters.reset();
    desk.shown.texts = {};
  }

  /// The window system takes long over a title: it is told only one that has changed.
  void title(const gui::Model& model) {
    const gui::FileState& file = model.job().file;
    const std::string name = file.path.empty() ? "new job" : file.path.filename().string();
    std::string wanted = fmt::format("{}{} - Riserun", name, file.unsaved ? " *" : "");
    if (wanted == titled) return;
    titled = std::move(wanted);
    glfwSetWindowTitle(window, titled.c_str());
  }

  void frame(gui::Model& model) {
    dress(model);
    ImGui_ImplOpenGL3_NewFrame();
    ImGui_ImplGlfw_NewFrame();
    waiting.hand.hand_on(window);
    const double before = processor_time();
    ImGui::NewFrame();
    views::Frame frame{model, desk, views::theme_of(model.view().looks), fonts, lettered_for};
    if (waiting.wants_to_close) views::carry_out(frame, Do::leave);
    waiting.wants_to_close = false;
    views::take_dropped(frame, waiting.dropped);
    waiting.dropped.clear();
    views::draw_desk(frame);
    ImGui::Render();
    costs.push_back(processor_time() - before);
    show(frame.theme);
    write_places(model);
  }

  void show(const views::Theme& theme) {
    int wide = 0;
    int high = 0;
    glfwGetFramebufferSize(window, &wide, &high);
    const views::Color& ground = theme[views::Ink::ground];
    glViewport(0, 0, wide, high);
    glClearColor(ground.red, ground.green, ground.blue, 1.0F);
    glClear(GL_COLOR_BUFFER_BIT);
    ImGui_ImplOpenGL3_RenderDrawData(ImGui::GetDrawData());
    glfwSwapBuffers(window);
  }

  /// One line a thing, its name and its numbers; `end` last, so that a reader knows when it has it all.
  void write_places(const gui::Model& model) {
    if (wishes.places.empty()) return;
    const gui::JobState& job = model.job();
    std::string text;
    const auto number = [&](const char* name, auto value) { text += fmt::format("{}\t{}\n", name, value); };
    number("revision", job.revision);
    number("planned", model.plan().revision);
    number("current", model.plan().current ? 1 : 0);
    number("has file", job.file.path.empty() ? 0 : 1);
    number("unsaved", job.file.unsaved ? 1 : 0);
    number("printing", desk.printing.valid() ? 1 : 0);
    number("sheet", static_cast<int>(desk.sheet));
    number("clock", in_seconds(desk.playback.now));
    number("frames", costs.size());
    if (!letters) letters.emplace(*ImGui::GetIO().Fonts);
    const LettersDrawn drawn = letters->of(*ImGui::GetDrawData());
    number("letters", drawn.all);
    number("scaled letters", drawn.scaled);
    number("smallest letters", drawn.smallest / scale());
    number("cut letters", drawn.cut.size());
    for (std::size_t i = 0; i < drawn.cut.size(); ++i)
      text += fmt::format("cut letter {}\t{:.1f} {:.1f}\n", i + 1, drawn.cut[i].x, drawn.cut[i].y);
    for (const auto& [key, box] : desk.places.boxes) {
      std::string name = key;
      std::replace(name.begin(), name.end(), '\n', ' ');
      text += fmt::format("{}\t{:.1f} {:.1f} {:.1f} {:.1f}\n", name, box.left, box.top, box.right, box.bottom);
    }
    std::filesystem::path written = wishes.places;
    written += ".new";
    std::ofstream(written, std::ios::binary) << text << "end\n";
    std::error_code no_throw;
    std::filesystem::rename(written, wishes.places, no_throw);  // a reader finds the old or the new, never a half
  }

  void print_cost() const {
    if (!wishes.print_cost || costs.empty()) return;
    std::vector<double> sorted = costs;
    std::sort(sorted.begin(), sorted.end());
    fmt::print("{} frames, processor time to build one: median {:.2f} ms, most {:.2f} ms\n", sorted.size(),
               1000.0 * sorted[sorted.size() / 2], 1000.0 * sorted.back());
  }
};

Window::Window(const WindowWishes& wishes) : inside_(std::make_unique<Inside>()) {
  inside_->wishes = wishes;
  inside_->desk.start.shown = wishes.start_page;
  inside_->desk.places.wanted = !wishes.places.empty();
  glfwSetErrorCallback([](int, const char*) {});
  if (glfwInit() == GLFW_FALSE) throw std::runtime_error("no screen: is DISPLAY set?");
  glfwWindowHint(GLFW_CONTEXT_VERSION_MAJOR, 3);
  glfwWindowHint(GLFW_CONTEXT_VERSION_MINOR, 2);
  glfwWindowHint(GLFW_OPENGL_PROFILE, GLFW_OPENGL_CORE_PROFILE);
  glfwWindowHint(GLFW_OPENGL_FORWARD_COMPAT, GLFW_TRUE);
  const auto last = wishes.width > 0 ? std::nullopt : gui::window_place(wishes.state);
  const int width = last ? last->width : wishes.width > 0 ? wishes.width : kUsualWidth;
  const int height = last ? last->height : wishes.height > 0 ? wishes.height : kUsualHeight;
  inside_->window = glfwCreateWindow(width, height, "Riserun", nullptr, nullptr);
  if (inside_->window == nullptr) {
    glfwTerminate();
    throw std::runtime_error("no OpenGL 3.2 on this screen");
  }
  GLFWwindow* window = inside_->window;
  if (last && on_a_screen(*last)) glfwSetWindowPos(window, last->left, last->top);
  glfwMakeContextCurrent(window);
  glfwSwapInterval(1);
  glfwSetWindowUserPointer(window, &inside_->waiting);
  glfwSetKeyCallback(window, [](GLFWwindow* w, int key, int scancode, int action, int modifiers) {
    waiting_of(w).hand.key(key, scancode, action, modifiers);
  });
  glfwSetCharCallback(window, [](GLFWwindow* w, unsigned int letter) { waiting_of(w).hand.letter(letter); });
  glfwSetMouseButtonCallback(
      window, [](GLFWwindow* w, int button, int action, int) { waiting_of(w).hand.button(button, action); });
  glfwSetScrollCallback(window, [](GLFWwindow* w, double across, double up) { waiting_of(w).hand.wheel(across, up); });
  glfwSetCursorPosCallback(window, [](GLFWwindow* w, double x, double y) { waiting_of(w).hand.pointer(x, y); });
  glfwSetCursorEnterCallback(window, [](GLFWwindow* w, int entered) {
    ImGui_ImplGlfw_CursorEnterCallback(w, entered);
    if (entered == GLFW_FALSE) waiting_of(w).hand.left();
  });
  glfwSetWindowFocusCallback(window, [](GLFWwindow* w, int focused) {
    waiting_of(w).happened = true;
    ImGui_ImplGlfw_WindowFocusCallback(w, focused);
  });
  glfwSetFramebufferSizeCallback(window, [](GLFWwindow* w, int, int) { waiting_of(w).happened = true; });
  glfwSetWindowRefreshCallback(window, [](GLFWwindow* w) { waiting_of(w).happened = true; });
  glfwSetWindowContentScaleCallback(window, [](GLFWwindow* w, float, float) { waiting_of(w).happened = true; });
  glfwSetWindowCloseCallback(window, [](GLFWwindow* w) {
    glfwSetWindowShouldClose(w, GLFW_FALSE);
    waiting_of(w).happened = waiting_of(w).wants_to_close = true;
  });
  glfwSetDropCallback(window, [](GLFWwindow* w, int count, const char** files) {
    waiting_of(w).happened = true;
    for (int i = 0; i < count; ++i) waiting_of(w).dropped.emplace_back(files[i]);
  });
  IMGUI_CHECKVERSION();
  ImGui::CreateContext();
  ImGui::GetIO().IniFilename = nullptr;
  ImGui_ImplGlfw_InitForOpenGL(window, false);
  ImGui_ImplOpenGL3_Init("#version 150");
}

Window::~Window() {
  gui::WindowPlace place;
  glfwGetWindowPos(inside_->window, &place.left, &place.top);
  glfwGetWindowSize(inside_->window, &place.width, &place.height);
  if (glfwGetWindowAttrib(inside_->window, GLFW_MAXIMIZED) == GLFW_FALSE)
    gui::note_window_place(inside_->wishes.state, place);
  inside_->print_cost();
  ImGui_ImplOpenGL3_Shutdown();
  ImGui_ImplGlfw_Shutdown();
  ImGui::DestroyContext();
  glfwDestroyWindow(inside_->window);
  glfwTerminate();
}

void Window::run(gui::Model& model) {
  Inside& inside = *inside_;
  int frames_left = kFramesAfterEvent;
  while (!inside.desk.leaving) {
    // What moves by itself is drawn on and on; otherwise the window waits for something to happen.
    const bool moves = inside.desk.playback.playing || frames_left > 0;
    if (moves)
      glfwPollEvents();
    else
      glfwWaitEventsTimeout(
          model.plan().working || ImGui::GetIO().WantTextInput ? (model.plan().working ? kWorking : 0.25) : kIdle);
    const bool printed = views::take_printed(inside.desk);
    const bool changed = model.poll() || printed;
    if (inside.waiting.happened || inside.waiting.hand.waits() || changed) frames_left = kFramesAfterEvent;
    inside.waiting.happened = false;
    if (frames_left <= 0 && !inside.desk.playback.playing && !ImGui::GetIO().WantTextInput)
      continue;  // a cursor blinks
    inside.frame(model);
    inside.title(model);
    --frames_left;
  }
}

}  // namespace riserun::app
