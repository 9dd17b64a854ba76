"""The window without a job, and a new one: five things are asked beside an elevation whose dimensions are the fields."""
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

GIVEN = [("field", "reservoir.inside.length", "48"), ("drawn", "reservoir.inside.width", "20"),
         ("drawn", "reservoir.inside.height", "15 in"), ("field", "reservoir.sheet", "3/16 in steel"),
         ("drawn", "reservoir.supports.baffles across", "2"), ("drawn", "table.inside.length", "4 ft 6 in"),
         ("field", "table.inside.width", "26"), ("field", "table.depth", "4"), ("drawn", "table.floor height", "31"),
         ("field", "air.delivery", "3.2 scfm")]


class Start(unittest.TestCase):
    def setUp(self):
        self.folder = pathlib.Path(tempfile.mkdtemp(prefix="riserun-start-"))
        self.screen = Screen(1280, 800)
        self.window = Window(self.screen, VIEW, self.folder)
        self.window.wait_for(lambda p: "start New" in p, "the start page")

    def tearDown(self):
        self.window.kill()
        self.screen.close()
        shutil.rmtree(self.folder)

    def give(self, where, key, text):
        before = self.window.revision()
        self.window.click(f"{where} {key}")
        self.window.type(text)
        self.window.key("Tab")
        return before

    def test_it_offers_new_recent_and_examples_and_shows_nobodys_tank(self):
        places = self.window.places()
        for part in ("start New", "start Recent", "start Examples", "start new", "example bevel-bench"):
            self.assertIn(part, places)
        self.assertFalse([n for n in places if n.startswith(("verdict", "figure", "tab ", "part "))], "no plan is shown")
        self.window.click("example bevel-bench")
        places = self.window.wait_for(lambda p: "verdict READY" in p and p["current"] == (1.0,), "the example's plan")
        self.assertEqual((places["has file"], places["unsaved"]), ((0.0,), (0.0,)), "a job of one's own, not the file")
        self.window.key("ctrl+shift+s")
        time.sleep(0.5)
        self.window.key("ctrl+a")
        self.window.type(str(self.folder / "mine.yaml"))
        self.window.key("Return")
        self.window.wait_for(lambda p: p["has file"] == (1.0,), "the save")
        self.window.kill()
        self.assertEqual((self.folder / "mine.yaml").read_text(), (EXAMPLES / "bevel-bench.yaml").read_text())
        self.window = Window(self.screen, VIEW, self.folder)
        self.window.wait_for(lambda p: "start Recent" in p, "the start page")
        time.sleep(1.0)
        self.window.click("recent " + str(self.folder / "mine.yaml"))
        self.window.wait_for(lambda p: "verdict READY" in p and p["has file"] == (1.0,), "the recent job")

    def test_five_things_are_asked_in_list_and_elevation_and_results_are_blank_until_then(self):
        window = self.window
        window.click("start new")
        window.wait_for(lambda p: "field reservoir.inside.length" in p, "the five things")
        for where, key, text in GIVEN:
            places = window.places()
            self.assertIn("still to give", places)
            self.assertIn("result fill blank", places)
            before = self.give(where, key, text)
            window.wait_for(lambda p, b=before: p["revision"][0] > b, f"{key} to be taken")
        places = window.wait_for(lambda p: p["current"] == (1.0,) and "figure fill" in p, "the plan")
        self.assertNotIn("result fill blank", places)
        self.assertNotIn("still to give", places)
        tank, table = places["elevation tank"], places["elevation table"]
        self.assertAlmostEqual((tank[2] - tank[0]) / (tank[3] - tank[1]), 48 / 15, delta=0.06, msg="to scale")
        self.assertAlmostEqual((table[2] - table[0]) / (tank[2] - tank[0]), 54 / 48, delta=0.02, msg="to one scale")
        window.key("ctrl+shift+s")
        time.sleep(0.5)
        window.key("ctrl+a")
        window.type(str(self.folder / "new.yaml"))
        window.key("Return")
        window.wait_for(lambda p: p["has file"] == (1.0,), "the save")
        text = (self.folder / "new.yaml").read_text()
        self.assertRegex(text, r"length: 48\b", "a bare number takes the job's unit")
        self.assertIn("# Write measures as you would say them", text, "with the starter's comments")

    def test_return_and_tab_go_through_what_is_asked_wherever_one_begins(self):
        window = self.window
        window.click("start new")
        window.wait_for(lambda p: "drawn reservoir.inside.length" in p, "the drawing's fields")
        window.click("drawn reservoir.inside.length")
        window.type("48")
        window.key("Tab")
        time.sleep(0.5)
        for text in ("20", "15"):
            window.type(text)
            window.key("Return")
            time.sleep(0.5)
        window.type("10 ga steel")
        window.key("Return")
        places = window.wait_for(lambda p: p["revision"][0] >= 4.0, "four values")
        for key, value in (("inside.length", "48 in"), ("inside.width", "20 in"), ("inside.height", "15 in"),
                           ("sheet", "10 ga steel")):
            box = places[f"field reservoir.{key}"]
            inside = [n for n, p in places.items() if n.startswith("text ") and box[0] <= p[0] <= box[2] and
                      box[1] <= p[1] <= box[3]]
            self.assertTrue(any(n.endswith(" " + value) for n in inside), (key, inside))

    def test_the_drawing_follows_what_is_typed_before_it_is_left(self):
        window = self.window
        window.click("start new")
        window.wait_for(lambda p: "field reservoir.inside.length" in p, "the five things")
        self.give("field", "reservoir.inside.length", "48")
        shape = lambda p: (p["elevation tank"][2] - p["elevation tank"][0]) / (  # noqa: E731
            p["elevation tank"][3] - p["elevation tank"][1])
        window.click("drawn reservoir.inside.height")
        window.type("24")
        window.wait_for(lambda p: abs(shape(p) - 2.0) < 0.05, "the tank as high as half its length")

    def test_escape_leaves_the_field_then_the_job_and_loses_no_entry(self):
        window = self.window
        missing = lambda p: next((n for n in p if n.endswith("to give") and n.startswith("verdict")), "")  # noqa: E731
        window.click("start new")
        window.wait_for(lambda p: "field reservoir.inside.length" in p, "the five things")
        self.give("field", "reservoir.inside.length", "48")
        before = missing(window.wait_for(lambda p: p["unsaved"] == (1.0,), "the entry"))
        window.click("field reservoir.inside.width")
        window.type("20")
        window.key("Escape")
        places = window.wait_for(lambda p: missing(p) not in ("", before), "what was typed to be taken")
        self.assertNotIn("start go on", places, "the first leaves the field")
        left = missing(places)
        for back in (lambda: window.click("start go on"), lambda: window.key("Escape"), lambda: window.key("Return")):
            window.key("Escape")
            window.wait_for(lambda p: "start go on" in p, "the start page")
            back()
            places = window.wait_for(lambda p: "start go on" not in p and missing(p), "the job again")
            self.assertEqual((missing(places), places["unsaved"]), (left, (1.0,)))
        window.key("Escape")
        window.click("start new")
        places = window.wait_for(lambda p: "answer Discard" in p, "the question before this one goes")
        self.assertEqual(places["unsaved"], (1.0,))

    def test_escape_that_closes_a_menu_leaves_the_job_and_no_key_changes_it_from_the_start_page(self):
        window = self.window
        window.click("start new")
        window.wait_for(lambda p: "field reservoir.inside.length" in p, "the five things")
        self.give("field", "reservoir.inside.length", "48")
        window.wait_for(lambda p: p["unsaved"] == (1.0,), "the entry")
        window.key("F10")
        time.sleep(0.5)
        window.key("Escape")
        time.sleep(0.5)
        self.assertNotIn("start go on", window.places(), "the first closed the menu")
        window.key("Escape")
        window.wait_for(lambda p: "start go on" in p, "the start page")
        before = window.revision()
        window.key("ctrl+z")
        time.sleep(0.5)
        self.assertEqual(window.revision(), before, "what cannot be seen is not taken back")

    def test_what_is_wrong_stands_beside_its_field_and_moves_nothing(self):
        window = self.window
        window.click("start new")
        window.wait_for(lambda p: "field table.depth" in p, "the five things")
        time.sleep(1.0)
        before = window.places()
        self.give("field", "reservoir.sheet", "thick enough")
        after = window.wait_for(lambda p: "wrong reservoir.sheet" in p, "the reason")
        for name, place in before.items():
            if re.match("(field|drawn) ", name):
                self.assertEqual(place, after[name], f"{name} stays where it was")
        self.give("field", "reservoir.sheet", "10 ga steel")
        window.wait_for(lambda p: "wrong reservoir.sheet" not in p, "the reason to go")

    def test_a_misspelt_key_is_shown_in_its_line_and_its_measure_is_not_asked_for(self):
        job = self.folder / "bench.yaml"
        text = (EXAMPLES / "bevel-bench.yaml").read_text()
        self.assertIn("inside: {length: 48 in", text)
        job.write_text(text.replace("inside: {length: 48 in", "inside: {lenght: 48 in"))
        self.window.kill()
        self.window = Window(self.screen, VIEW, self.folder, job)
        places = self.window.wait_for(lambda p: p["sheet"] == (5.0,), "the job file")
        self.assertFalse([n for n in places if "to give" in n])


if __name__ == "__main__":
    unittest.main(argv=sys.argv[:1])
