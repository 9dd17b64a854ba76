"""Letters in the window: none below 11 points, none a scaled picture of another size, none outside the box it is in."""
import pathlib
import re
import shutil
import sys
import tempfile
import time
import unittest

sys.path.insert(0, str(pathlib.Path(__file__).parent))
from driven import EXAMPLES, VIEW  # noqa: E402
from screen import Screen, Window  # noqa: E402


class Letters(unittest.TestCase):
    def check(self, places, where):
        self.assertGreater(places["letters"][0], 100, where)
        self.assertEqual(places["scaled letters"], (0.0,), where)
        self.assertGreaterEqual(places["smallest letters"][0], 10.9, where)
        checked = 0
        for name, box in places.items():
            number = re.match(r"text (\d+) ", name)
            if not number:
                continue
            room = places[f"room {number[1]}"]
            for side in (0, 1):
                self.assertGreaterEqual(box[side], room[side] - 1.5, f"{where}: {name} leaves its box")
            for side in (2, 3):
                self.assertLessEqual(box[side], room[side] + 1.5, f"{where}: {name} leaves its box")
            checked += 1
        return checked

    def look(self, example, width, height, scale):
        folder = pathlib.Path(tempfile.mkdtemp(prefix="riserun-letters-"))
        screen = Screen(width, height)
        window = None
        try:
            shutil.copy(EXAMPLES / example, folder / "bench.yaml")
            window = Window(screen, VIEW, folder, folder / "bench.yaml", size=f"{width}x{height}", scale=str(scale))
            window.ready()
            for sheet in range(2, 7):
                window.key(f"ctrl+{sheet}")
                window.wait_for(lambda p, s=sheet: p["sheet"] == (float(s - 1),), f"sheet {sheet}")
                time.sleep(0.5)
                self.check(window.places(), f"{example}, {scale}, sheet {sheet}")
            window.key("ctrl+1")
            window.key("f")
            for zoom in ["f"] + 6 * ["minus"] + ["f"] + 8 * ["equal"]:
                window.key(zoom)
                time.sleep(0.3)
                self.assertGreater(self.check(window.places(), f"{example}, {scale}, {zoom}"), 5)
        finally:
            if window:
                window.kill()
            screen.close()
            shutil.rmtree(folder)

    def test_small(self):
        self.look("bevel-bench.yaml", 1280, 800, 1)

    def test_large_at_twice_the_scale(self):
        self.look("one-part-short.yaml", 2560, 1440, 2)


if __name__ == "__main__":
    unittest.main(argv=sys.argv[:1])
