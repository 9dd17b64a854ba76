"""The window at the sizes, scales and looks that people have: nothing that is named lies outside or over another."""
import pathlib
import shutil
import sys
import tempfile
import time
import unittest

sys.path.insert(0, str(pathlib.Path(__file__).parent))
from screen import Screen, Window  # noqa: E402

VIEW, EXAMPLES = sys.argv[1], pathlib.Path(sys.argv[2])
SHEETS = 6


def over_each_other(a, b):
    return a[0] < b[2] - 1 and b[0] < a[2] - 1 and a[1] < b[3] - 1 and b[1] < a[3] - 1


class Looks(unittest.TestCase):
    def look(self, width, height, scale, dark):
        folder = pathlib.Path(tempfile.mkdtemp(prefix="riserun-looks-"))
        screen = Screen(width, height)
        window = None
        try:
            shutil.copy(EXAMPLES / "bevel-bench.yaml", folder / "bench.yaml")
            window = Window(screen, VIEW, folder, folder / "bench.yaml", size=f"{width}x{height}", scale=str(scale))
            window.ready()
            if dark:
                window.key("ctrl+l")
            for sheet in range(1, SHEETS + 1):
                window.key(f"ctrl+{sheet}")
                window.wait_for(lambda p: p["sheet"] == (float(sheet - 1),), f"sheet {sheet}")
                time.sleep(0.5)
                self.check(window.places(), width, height, f"{width}x{height} at {scale}, sheet {sheet}")
            window.key("ctrl+q")
            self.assertEqual(window.wait_for_end()[0], 0)
        finally:
            if window:
                window.kill()
            screen.close()
            shutil.rmtree(folder)

    def check(self, places, width, height, where):
        fixed = {n: p for n, p in places.items() if n.startswith(("tab ", "figure ", "pane "))}
        self.assertGreaterEqual(len(fixed), 8, where)
        for name, place in fixed.items():
            self.assertGreaterEqual(place[0], 0, f"{where}: {name}")
            self.assertLessEqual(place[2], width + 1, f"{where}: {name} is cut off at the right")
            # On a low screen a sheet is rolled to its lower panes.
            if not name.startswith("pane "):
                self.assertLessEqual(place[3], height + 1, f"{where}: {name} is cut off at the bottom")
            for other, theirs in fixed.items():
                if other < name:
                    self.assertFalse(over_each_other(place, theirs), f"{where}: {name} lies over {other}")

    def test_small_light(self):
        self.look(1280, 800, 1, False)

    def test_small_dark_at_twice_the_scale(self):
        self.look(1280, 800, 2, True)

    def test_large_dark(self):
        self.look(1920, 1080, 1, True)

    def test_large_light_at_twice_the_scale(self):
        self.look(1920, 1080, 2, False)


if __name__ == "__main__":
    unittest.main(argv=sys.argv[:1])
