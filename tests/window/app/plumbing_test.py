"""The plumbing sheet: with all in sight every part is named, far off every run is, and nothing is dropped between."""
import pathlib
import re
import sys
import time
import unittest

sys.path.insert(0, str(pathlib.Path(__file__).parent))
from driven import Driven  # noqa: E402

RUNS = ("water up", "air in", "gauge", "relief", "vent", "drain")


def texts(places):
    return " | ".join(re.sub(r"^text \d+ ", "", name) for name in places if name.startswith("text "))


class Plumbing(Driven):
    def test_every_part_is_named_when_all_is_in_sight(self):
        self.window.key("f")
        time.sleep(0.5)
        places = self.window.places()
        canvas = places["pane canvas"]
        parts = {n: p for n, p in places.items() if n.startswith("part ") and "/" in n}
        self.assertEqual(len(parts), 16)
        for name, place in parts.items():
            self.assertGreaterEqual(place[0], canvas[0], name)
            self.assertLessEqual(place[2], canvas[2], name)
        said = re.sub(r"\s+", " ", texts(places))
        for words in ("1-1/4 rubber hose, by the foot, cut 12-3/8 in", "1/4 air regulator, 0 to 10 psi",
                      "3/4 full-bore ball valve", "3/4 MNPT relief valve, set 2 psi", "0 to 5 psi gauge, 1/4 MNPT",
                      "brass, in stock", "black iron, buy $5.00", "Reservoir 48 in x 20 in x 15 in"):
            self.assertIn(words, said)

    def test_far_off_each_run_is_a_line_with_its_name_and_count(self):
        self.window.key("f")
        for _ in range(5):
            self.window.key("minus")
        time.sleep(0.5)
        said = texts(self.window.places())
        for run in RUNS:
            self.assertIn(run + ":", said)
        self.assertIn("4 parts", said)
        self.assertNotIn("by the foot", said)

    def test_nearest_a_part_tells_its_ends_too(self):
        self.window.key("f")
        for _ in range(6):
            self.window.key("equal")
        time.sleep(0.5)
        self.assertIn(" bore ", texts(self.window.places()))

    def test_the_picture_is_an_elevation(self):
        self.window.key("f")
        time.sleep(0.5)
        places = self.window.places()
        tank, table, supply = places["part reservoir"], places["part table"], places["part air supply"]
        self.assertLess(table[3], tank[1], "the table stands over the tank")
        self.assertLess(supply[2], tank[0] + 1, "air comes from the left")
        self.assertGreater(places["part drain/device"][0], tank[2] - 20, "the drain is at the side")
        for device in ("gauge", "relief", "vent"):
            self.assertLess(places[f"part {device}/device"][3], tank[1] + 12, f"{device} stands over the lid")


class OnALargeScreen(Driven):
    """The parts are drawn larger there than the bungs that they stand on."""
    EXAMPLE = "air-too-weak.yaml"
    SIZE = (1920, 1080)

    def test_no_part_stands_on_the_name_of_its_port(self):
        self.window.key("f")
        time.sleep(0.5)
        places = self.window.places()
        names = {n: p for n, p in places.items() if re.match(r"text \d+ (\w+ bung|basin inlet)\b", n)}
        self.assertGreaterEqual(len(names), 6)
        parts = {n: p for n, p in places.items() if n.startswith("part ") and "/" in n}
        for name, words in names.items():
            for part, box in parts.items():
                beside = (words[2] <= box[0] + 1 or box[2] <= words[0] + 1 or words[3] <= box[1] + 1 or
                          box[3] <= words[1] + 1)
                self.assertTrue(beside, f"{part} stands on {name}: {box} {words}")


class ManifoldOfFive(Driven):
    """On a low screen, where the runs are folded."""
    EXAMPLE = "one-air-bung.yaml"
    SIZE = (1280, 720)

    def prepare(self):
        text = self.job.read_text(encoding="utf-8")
        self.assertIn("      - name: exhaust\n", text)
        self.job.write_text(text.replace("      - name: exhaust\n", "      - name: spare outlet\n        ends in: 1/4 pipe "
                                         "plug\n      - name: exhaust\n"), encoding="utf-8")

    def test_no_pipe_leads_through_the_name_of_a_run(self):
        self.window.key("f")
        time.sleep(0.5)
        places = self.window.places()
        names = {n: p for n, p in places.items() if re.match(r"text \d+ (water up|air manifold|drain):", n)}
        pipes = {n: p for n, p in places.items() if n.startswith("pipe ")}
        self.assertEqual(len(names), 3)
        self.assertGreaterEqual(len(pipes), 3)
        for name, words in names.items():
            for pipe, box in pipes.items():
                beside = (words[2] <= box[0] or box[2] <= words[0] or words[3] <= box[1] or box[3] <= words[1])
                self.assertTrue(beside, f"{pipe} leads through {name}: {box} {words}")


class OnASmallScreen(Driven):
    """Where the runs are folded and the canvas ends close under the drain."""
    EXAMPLE = "one-air-bung.yaml"
    SIZE = (1024, 700)

    def test_every_run_is_named_whole_and_off_the_lid(self):
        self.window.key("f")
        time.sleep(0.5)
        places = self.window.places()
        names = {n: p for n, p in places.items() if re.match(r"text \d+ (water up|air manifold|dip|drain):", n)}
        self.assertEqual(len(names), 4, texts(places))
        sight = places["pane canvas"]
        lid = places["part reservoir"]
        for name, words in names.items():
            self.assertLessEqual(words[3], sight[3], f"{name} is cut off")
            over_tank = lid[0] < words[2] and words[0] < lid[2]
            through_lid = over_tank and words[1] < lid[1] < words[3]
            self.assertFalse(through_lid, f"the lid runs through {name}: {words} {lid}")


class SixBranches(Driven):
    EXAMPLE = "one-air-bung.yaml"

    def prepare(self):
        text = self.job.read_text(encoding="utf-8")
        end = "  - name: dip  "
        self.assertIn(end, text)
        more = "      - name: spare\n        ends in: 1/4 plug\n      - name: second gauge\n        ends in: 15 psi gauge\n"
        self.job.write_text(text.replace(end, more + end), encoding="utf-8")

    def test_the_name_of_the_shops_line_stands_clear_of_the_table_and_of_other_words(self):
        self.window.key("f")
        time.sleep(0.5)
        places = self.window.places()
        lines = [n for n in places if re.match(r"text \d+ shop's air line", n)]
        self.assertTrue(lines, texts(places))
        others = [n for n in places if n == "part table" or (n.startswith("text ") and n not in lines)]
        for line in lines:
            left, top, right, bottom = places[line]
            for other in others:
                box = places[other]
                self.assertTrue(right <= box[0] or box[2] <= left or bottom <= box[1] or box[3] <= top, (line, other))


if __name__ == "__main__":
    unittest.main(argv=sys.argv[:1])
