"""A job begun without the mouse: the start page under the arrows, the first box under the cursor, boxes found by name."""
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


class Keyboard(unittest.TestCase):
    def setUp(self):
        self.folder = pathlib.Path(tempfile.mkdtemp(prefix="riserun-keyboard-"))
        self.screen = Screen(1280, 800)
        self.window = Window(self.screen, VIEW, self.folder)
        self.window.PATIENCE = 20.0
        self.window.wait_for(lambda p: "example bevel-bench" in p, "the start page")
        time.sleep(0.5)

    def tearDown(self):
        self.window.kill()
        self.screen.close()
        shutil.rmtree(self.folder)

    def marked(self):
        time.sleep(0.3)
        return [n[len("marked "):] for n in self.window.places() if n.startswith("marked ")]

    def new_job(self):
        self.window.key("ctrl+n")
        self.window.wait_for(lambda p: "field reservoir.inside.length" in p, "the five things")
        time.sleep(0.5)

    def test_the_start_pages_cards_are_walked_by_arrows_and_tab_and_opened_by_enter(self):
        window = self.window
        self.assertEqual(self.marked(), ["start new"], "the first card from the beginning")
        for key, card in (("Down", "start open"), ("Up", "start new"), ("Tab", "start open"), ("shift+Tab", "start new")):
            window.key(key)
            self.assertEqual(self.marked(), [card], key)
        window.key("Right")
        right = self.marked()
        self.assertEqual(len(right), 1)
        self.assertTrue(right[0].startswith("example "), right)
        while self.marked() != ["example bevel-bench"]:
            before = self.marked()
            window.key("Down")
            self.assertNotEqual(self.marked(), before, "the end of the examples")
        window.key("Return")
        window.wait_for(lambda p: "verdict READY" in p, "the example")

    def test_enter_begins_a_new_job_with_the_cursor_in_its_first_box(self):
        window = self.window
        window.key("Return")
        window.wait_for(lambda p: "field reservoir.inside.length" in p, "the five things")
        time.sleep(0.5)
        for text in ("48", "20", "15"):  # length, width, height
            before = window.revision()
            window.type(text)
            window.key("Tab")
            window.wait_for(lambda p, b=before: p["revision"][0] > b, f"{text} to be taken")
        shape = window.places()["elevation tank"]
        self.assertAlmostEqual((shape[2] - shape[0]) / (shape[3] - shape[1]), 48 / 15, delta=0.06)

    def test_a_new_jobs_box_is_found_by_its_name_and_has_the_cursor(self):
        window = self.window
        self.new_job()
        window.key("ctrl+k")
        window.wait_for(lambda p: "find" in p, "the line to type into")
        window.type("table length")
        window.wait_for(lambda p: "found table length" in p, "the box")
        window.key("Return")
        time.sleep(0.5)
        window.type("54 inn")
        window.key("Tab")
        window.wait_for(lambda p: "wrong table.inside.length" in p, "what was typed to be in the box that was found")

    def test_the_start_page_says_what_the_program_is_for_and_escape_leads_back_to_it(self):
        window = self.window
        self.assertIn("start what for", window.places())
        self.new_job()
        for _ in range(2):  # out of the box, then out of the job
            window.key("Escape")
        places = window.wait_for(lambda p: "start new" in p, "the start page again")
        self.assertNotIn("field reservoir.inside.length", places)
        window.key("Return")
        window.wait_for(lambda p: "field reservoir.inside.length" in p, "a new job once more")

    def test_tab_leads_into_the_boxes_of_an_open_job(self):
        window = self.window
        window.click("example bevel-bench")
        window.wait_for(lambda p: "verdict READY" in p and p["current"] == (1.0,), "the example's plan")
        window.key("ctrl+3")
        window.wait_for(lambda p: "field reservoir.inside.length" in p, "the boxes")
        time.sleep(0.5)
        window.key("Tab")
        time.sleep(0.5)
        before = window.revision()
        window.type("50 in")
        window.key("Tab")
        window.wait_for(lambda p: p["revision"][0] > before, "what was typed to be in the first box")
        self.assertNotIn("wrong reservoir.inside.length", window.places())

    def test_a_gauge_without_its_metal_is_refused_at_its_box_and_the_sheet_stays(self):
        window = self.window
        self.new_job()
        for text in ("48", "20", "15", "11 ga"):
            window.type(text)
            window.key("Tab")
        places = window.wait_for(lambda p: "wrong reservoir.sheet" in p, "the reason beside the box")
        self.assertEqual(places["sheet"], (2.0,))
        self.assertIn("field reservoir.sheet", places)

    def test_a_reason_is_read_to_its_end(self):
        window = self.window
        self.new_job()
        window.type("48 inn")
        window.key("Tab")
        window.wait_for(lambda p: "wrong reservoir.inside.length" in p, "the reason")
        places = window.places()
        said = [n for n in places if re.match(r"text \d+ '48 inn'", n)]
        self.assertEqual(len(said), 1, sorted(places))
        self.assertNotIn("width", said[0], "it is of the box that was typed into")
        self.assertTrue(said[0].endswith("did you mean 'in'?"), said)
        number = said[0].split()[1]
        text, room = places[said[0]], places["room " + number]
        self.assertTrue(room[0] <= text[0] and text[2] <= room[2] + 1 and text[3] <= room[3] + 1, (text, room))
        self.assertGreater(text[3] - text[1], 30, "folded")

    def test_mistakes_of_a_file_stand_at_their_boxes_which_take_another_value(self):
        self.window.kill()
        job = self.folder / "slips.yaml"
        text = (EXAMPLES / "bevel-bench.yaml").read_text()
        text = re.sub(r"(\n  sheet: )[^\n#]*", r"\g<1>11 ga", text)
        job.write_text(re.sub(r"(\n  depth: )[^\n#]*", r"\g<1>4 inn", text))
        self.window = window = Window(self.screen, VIEW, self.folder, job)
        window.PATIENCE = 20.0
        window.wait_for(lambda p: p["sheet"] == (5.0,), "the job file, where the mistakes stand")
        window.key("ctrl+3")
        window.wait_for(lambda p: "wrong reservoir.sheet" in p and "wrong table.depth" in p, "the marks")
        for key, text in (("reservoir.sheet", "3/16 in steel"), ("table.depth", "4 in")):
            window.click("field " + key)
            window.type(text)
            window.key("Tab")
            places = window.wait_for(lambda p, k=key: "wrong " + k not in p, key)
            self.assertEqual(places["sheet"], (2.0,), "the sheet stays")
        window.wait_for(lambda p: p["current"] == (1.0,) and "figure fill" in p, "the plan")


if __name__ == "__main__":
    unittest.main(argv=sys.argv[:1])
