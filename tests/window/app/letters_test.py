"""Letters in the window: none below 11 points, none a scaled picture of another size, none outside the box it is in, none
cut off at its side."""
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

    def whole(self, places, where):
        """No letter is drawn without its left or its right side, whatever draws it."""
        cut = [(name, place) for name, place in places.items() if name.startswith("cut letter ")]
        self.assertEqual(places["cut letters"], (0.0,), f"{where}: {cut[:8]}")

    def whole_to_the_end(self, window, pane, where):
        """Down the whole pane, a turn of the wheel at a time."""
        place = window.wait_for(lambda p: pane in p, pane)[pane]
        window.hand("mousemove", int(place[2] - 40), int((place[1] + place[3]) / 2))
        before = None
        for turn in range(80):
            places = window.places()
            self.whole(places, f"{where}, turn {turn}")
            boxes = {n: p for n, p in places.items() if n.startswith(("field ", "row ", "whole "))}
            if boxes == before:
                return
            before = boxes
            window.hand("click", "--repeat", 4, "--delay", 20, 5)
            time.sleep(0.4)
        self.fail(f"{where}: {pane} has no end")

    def look(self, example, width, height, scale, change=str):
        folder = pathlib.Path(tempfile.mkdtemp(prefix="riserun-letters-"))
        screen = Screen(width, height)
        window = None
        try:
            text = (EXAMPLES / example).read_text(encoding="utf-8")
            (folder / "bench.yaml").write_text(change(text), encoding="utf-8")
            window = Window(screen, VIEW, folder, folder / "bench.yaml", size=f"{width}x{height}", scale=str(scale))
            window.ready()
            for sheet in range(2, 7):
                window.key(f"ctrl+{sheet}")
                window.wait_for(lambda p, s=sheet: p["sheet"] == (float(s - 1),), f"sheet {sheet}")
                time.sleep(0.5)
                where = f"{example}, {scale}, sheet {sheet}"
                self.check(window.places(), where)
                if sheet == 3 and change is str:
                    dotted = [n for n in window.places() if n.startswith("text ") and n.endswith("...")]
                    self.assertEqual(dotted, [], f"{where}: a box of the drawing is too narrow for what stands in it")
                if sheet == 3:
                    self.whole_to_the_end(window, "pane measurements", where)
                elif sheet != 6:  # the file's lines roll sideways
                    self.whole(window.places(), where)
            window.key("ctrl+1")
            window.key("f")
            time.sleep(0.5)
            self.whole(window.places(), f"{example}, {scale}, all in sight")
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

    def test_a_long_value_is_seen_whole(self):
        long = "Bevelling bench of the north shop, the one by the roller door that both shifts use for glass and for stone"

        def with_long_words(text):
            return re.sub(r"(?m)^name: .*$", f"name: {long}", text, count=1)

        self.look("bevel-bench.yaml", 1280, 800, 1, with_long_words)

    def test_a_metal_with_a_long_name_fits_the_drawing(self):
        self.look("one-part-short.yaml", 1280, 800, 1)

    def test_of_sixty_runs_each_is_named_with_its_count(self):
        ends = ["1/4 MNPT", "1/4 FNPT", "3/8 FNPT", "1/2 MNPT", "3/4 FNPT"]

        def with_many_runs(text):
            ports = "".join(f"    pa{i}: {ends[i % 2]}\n    pb{i}: {ends[i % 5]}\n" for i in range(54))
            runs = "".join(f"  - {{name: extra {i}, from: pa{i}, to: pb{i}, carries: air, need: [union]}}\n"
                           for i in range(54))
            return text.replace("    shop air:", ports + "    shop air:").replace("\nbin:", "\n" + runs + "bin:")

        folder = pathlib.Path(tempfile.mkdtemp(prefix="riserun-letters-"))
        screen = Screen(1280, 800)
        window = None
        try:
            text = (EXAMPLES / "bevel-bench.yaml").read_text(encoding="utf-8")
            (folder / "bench.yaml").write_text(with_many_runs(text), encoding="utf-8")
            window = Window(screen, VIEW, folder, folder / "bench.yaml", size="1280x800", scale="1")
            window.ready()
            window.key("f")
            time.sleep(0.5)
            said = [re.sub(r"^text \d+ ", "", name) for name in window.places() if name.startswith("text ")]
            runs = [text for text in said if text.startswith("extra ")]
            self.assertEqual(len(runs), 54, runs)
            for run in runs:
                self.assertRegex(run, r"^extra \d+(, pa\d+ to pb\d+)?:\s\d+ parts?, \$\d+\.\d\d$")
        finally:
            if window:
                window.kill()
            screen.close()
            shutil.rmtree(folder)

    def test_large_at_twice_the_scale(self):
        self.look("one-part-short.yaml", 2560, 1440, 2)


if __name__ == "__main__":
    unittest.main(argv=sys.argv[:1])
