"""What the sheets say of a plan: in the order of work, of a run without parts, where nothing flows, and of a mend to its end;
and under which name a job is saved."""
import pathlib
import sys
import time
import unittest

sys.path.insert(0, str(pathlib.Path(__file__).parent))
from driven import Driven  # noqa: E402


class OfAPlan(Driven):
    def test_every_step_of_the_order_of_work_stands_on_the_sheet_and_before_it_the_holes_of_bungs_and_stays(self):
        window = self.window
        window.key("ctrl+4")
        window.roll_to("row Order of work 1", "pane list")
        holes = [n for n in window.places() if n.startswith("row hole ")]
        self.assertTrue(any(n.startswith("row hole baffles 1-3/4 in") for n in holes), holes)
        seen = {}
        for _ in range(60):
            seen.update({n: p[1] for n, p in window.places().items() if n.startswith("row Order of work ")})
            if any(n.startswith("row Leak test") for n in window.places()):
                break
            window.hand("click", 5)
            time.sleep(0.3)
        numbers = sorted(int(n.split()[-1]) for n in seen)
        self.assertGreater(len(numbers), 10)
        self.assertEqual(numbers, list(range(1, len(numbers) + 1)))

    def test_a_device_alone_is_one_part_and_the_pane_can_be_closed(self):
        window = self.window

        def choose():
            window.key("ctrl+1")
            window.key("ctrl+k")
            window.type("relief valve relief")
            window.wait_for(lambda p: any(n.startswith("found ") and "relief valve" in n for n in p), "the valve")
            window.key("Return")
            return window.wait_for(lambda p: "pane particulars" in p and any(n.startswith("run 0 ") for n in p),
                                   "what is told of it")

        cells = [n for n in choose() if n.startswith("run 0 ")]
        self.assertIn("run 0 parts 1", cells)
        self.assertIn("run 0 buy 1", cells)
        self.assertFalse([n for n in cells if n.startswith("run 0 length -")], cells)
        window.key("Escape")
        window.wait_for(lambda p: "pane particulars" not in p, "the pane to close by Escape")
        choose()
        window.click("close particulars")
        window.wait_for(lambda p: "pane particulars" not in p, "the pane to close by its button")

    def test_a_name_without_an_ending_gets_the_job_files_and_can_be_opened_again(self):
        window = self.window
        window.key("ctrl+shift+s")
        time.sleep(1.0)
        window.key("ctrl+a")
        window.type(str(self.folder / "other"))
        window.key("Return")
        saved = self.folder / "other.yaml"
        window.wait_for(lambda p: saved.exists(), "the save")
        self.assertEqual(saved.read_text(encoding="utf-8"), self.original)
        self.assertFalse((self.folder / "other").exists())


class WhereNothingFlows(Driven):
    EXAMPLE = "one-part-short.yaml"

    def test_one_sentence_stands_for_clock_and_curves(self):
        self.window.key("ctrl+2")
        places = self.window.wait_for(lambda p: p["sheet"] == (1.0,) and "nothing flows" in p, "the sentence")
        self.assertNotIn("play", places)


if __name__ == "__main__":
    unittest.main(argv=sys.argv[:1])
