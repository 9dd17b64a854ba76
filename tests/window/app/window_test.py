"""The window under real mouse and key events: what is done in it stands in the saved job, and nothing else changed."""
import difflib
import pathlib
import shutil
import subprocess
import sys
import time
import unittest

sys.path.insert(0, str(pathlib.Path(__file__).parent))
from driven import COMMAND, EXAMPLES, VIEW, Driven  # noqa: E402


def changed_lines(before, after):
    return [line for line in difflib.ndiff(before.splitlines(), after.splitlines()) if line[:2] in ("+ ", "- ")]


class Bench(Driven):
    def water_part(self):
        def is_it(name):
            return name.startswith("part ") and "hex-bushing" in name and "1-1-2" in name
        places = self.window.wait_for(lambda p: any(map(is_it, p)), "the bushing at the table")
        return next(filter(is_it, sorted(places)))

    def choose_water_part(self):
        self.window.click(self.water_part())
        self.window.wait_for(lambda p: "take 1" in p, "the alternatives")
        return self.window.revision()

    def plan(self):
        return subprocess.run([COMMAND, "plan", "--all", str(self.job)], capture_output=True, text=True)

    def test_an_alternative_a_ban_and_a_clearance_then_undo_twice_leaves_the_alternative(self):
        window = self.window
        before = self.choose_water_part()
        window.click("take 1")
        window.wait_for_act(before)

        before = window.revision()
        window.key("f")
        places = window.wait_for(lambda p: any("check-valve" in n for n in p), "the check valve, with all in sight")
        part = next(n for n in sorted(places) if "check-valve" in n)
        window.click(part)
        window.key("Delete")
        window.wait_for(lambda p: p["revision"][0] > before, "the ban")

        before = self.type_into("riser.clearance", "3/4 in")
        window.wait_for(lambda p: p["revision"][0] > before, "the clearance")
        self.assertEqual(self.job.read_text(encoding="utf-8"), self.original, "nothing is saved unasked")
        for _ in range(2):
            before = window.revision()
            window.key("ctrl+1")
            window.key("ctrl+z")
            window.wait_for(lambda p: p["revision"][0] > before, "the undo")
        window.key("ctrl+s")
        window.wait_for(lambda p: p["unsaved"] == (0.0,), "the save")
        self.leave()

        saved = self.job.read_text(encoding="utf-8")
        self.assertNotEqual(saved, self.original)
        self.assertIn("clearance: 5/8 in", saved)
        for line in self.original.splitlines():
            if line.strip().startswith("#") or "   #" in line:
                self.assertIn(line.split("#", 1)[1], saved, "comments stay")
        lines = changed_lines(self.original, saved)
        self.assertLessEqual(len(lines), 8, lines)
        done = self.plan()
        before = subprocess.run([COMMAND, "plan", "--all", str(EXAMPLES / "bevel-bench.yaml")], capture_output=True, text=True)
        self.assertEqual((done.returncode, done.stderr), (before.returncode, before.stderr))
        self.assertNotEqual(done.stdout, before.stdout, "the alternative is another chain")

    def test_a_changed_clearance_changes_one_line(self):
        before = self.type_into("riser.clearance", "3/4 in")
        self.window.wait_for_act(before)
        self.window.key("ctrl+s")
        self.window.wait_for(lambda p: p["unsaved"] == (0.0,), "the save")
        self.leave()
        self.assertEqual(changed_lines(self.original, self.job.read_text(encoding="utf-8")),
                         ["- riser: {bung: riser bung, clearance: 5/8 in, headroom: 12 in}",
                          "+ riser: {bung: riser bung, clearance: 3/4 in, headroom: 12 in}"])
        self.assertIn("clearance 3/4 in", self.plan().stdout)

    def test_two_ports_are_connected_by_pulling_a_line(self):
        window = self.window
        window.key("ctrl+6")
        window.key("ctrl+1")
        window.key("f")
        # The run from the riser bung is taken out in the file, which the window notices.
        start = self.original.index("  - name: water up\n")
        end = self.original.index("  - name:", start + 5)
        self.job.write_text(self.original[:start] + self.original[end:], encoding="utf-8")
        before = window.revision()
        window.key("F9")
        window.wait_for(lambda p: p["revision"][0] > before and p["planned"] == p["revision"], "the file read again")
        window.key("f")

        def pull(drop):
            places = window.wait_for(lambda p: "pin riser bung" in p and "pin table inlet" in p, "both pins")
            ends = [[int((p[0] + p[2]) / 2), int((p[1] + p[3]) / 2)]
                    for p in (places["pin riser bung"], places["pin table inlet"])]
            window.hand("mousemove", *ends[0])
            time.sleep(0.3)
            window.hand("mousedown", 1)
            for share in (0.3, 0.6, 1.0):
                window.hand("mousemove", *[int(a + (b - a) * share) for a, b in zip(*ends)])
                time.sleep(0.3)
            drop()
            window.hand("mouseup", 1)
            time.sleep(0.5)

        before = window.revision()
        pull(lambda: window.key("Escape"))
        self.assertEqual(window.revision(), before, "Esc abandons")
        pull(lambda: None)
        window.wait_for(lambda p: p["revision"][0] > before and p["planned"] == p["revision"], "the connection")
        window.key("ctrl+s")
        window.wait_for(lambda p: p["unsaved"] == (0.0,), "the save")
        self.leave()
        self.assertEqual(changed_lines(self.original[:start] + self.original[end:],
                                       self.job.read_text(encoding="utf-8")),
                         ["+   - from: riser bung", "+     to: table inlet"])

    def test_letters_follow_the_scale_while_the_window_is_open(self):
        height = lambda p: p["tab Plumbing"][3] - p["tab Plumbing"][1]  # noqa: E731
        usual = height(self.window.places())
        # All at once, as on a busy machine: none of them is lost between two frames.
        self.window.hand("key", "--delay", 1, "ctrl+equal", "ctrl+equal", "ctrl+equal")
        self.window.wait_for(lambda p: height(p) > 1.25 * usual, "larger letters")
        self.window.key("ctrl+0")
        self.window.wait_for(lambda p: abs(height(p) - usual) < 1.5, "the usual letters")

    def test_a_part_is_swapped_by_keys_alone_once_it_is_chosen(self):
        window = self.window
        before = self.choose_water_part()
        window.key("Return")
        window.wait_for(lambda p: "choice 0 chosen" in p, "the parts that fit, the first marked")
        window.key("Down")
        window.wait_for(lambda p: "choice 1 chosen" in p, "the next to be marked")
        window.key("Return")
        window.wait_for_act(before)
        window.key("ctrl+s")
        window.wait_for(lambda p: p["unsaved"] == (0.0,), "the save")
        self.assertIn("take:", "".join(changed_lines(self.original, self.job.read_text(encoding="utf-8"))))

    def test_a_field_that_waits_to_be_typed_into_is_drawn_seldom(self):
        self.window.key("ctrl+3")
        self.window.roll_to("field riser.clearance", "pane measurements")
        self.window.click("field riser.clearance")
        time.sleep(1.0)
        before = self.window.places()["frames"][0]
        time.sleep(3.0)
        self.assertLess(self.window.places()["frames"][0] - before, 20, "the cursor blinks, nothing else")

    def test_units_are_switched_without_planning_again(self):
        planned = self.window.places()["planned"]
        self.window.key("ctrl+m")
        self.window.key("ctrl+m")
        self.window.key("ctrl+m")
        places = self.window.wait_for(lambda p: p["current"] == (1.0,), "the plan as it was")
        self.assertEqual((places["planned"], places["unsaved"]), (planned, (0.0,)))
        self.leave()
        self.assertEqual(self.job.read_text(encoding="utf-8"), self.original)
        self.assertIn("units: metric", (self.folder / "bench.view.yaml").read_text(encoding="utf-8"))

    def test_a_slow_printer_holds_nothing_up(self):
        self.window.key("ctrl+p")
        places = self.window.wait_for(lambda p: p["printing"] == (1.0,), "printing to begin")
        self.window.key("ctrl+4")
        places = self.window.wait_for(lambda p: p["sheet"] == (3.0,), "another sheet meanwhile")
        self.assertEqual(places["printing"], (1.0,), "the printer is still at it")
        self.assertFalse((self.folder / "printed.pdf").exists())
        self.window.wait_for(lambda p: p["printing"] == (0.0,), "printing to end")
        self.assertTrue((self.folder / "printed.pdf").read_bytes().startswith(b"%PDF"))

    def test_new_open_and_quit_ask_for_work_that_is_not_saved(self):
        window = self.window
        before = self.type_into("riser.clearance", "3/4 in")
        window.wait_for_act(before)
        other = self.folder / "other.yaml"
        shutil.copy(EXAMPLES / "air-too-weak.yaml", other)
        copies = lambda: list(self.folder.rglob("unsaved/*.yaml"))  # noqa: E731
        # It is written when the window comes to it, on a busy machine after the plan is there.
        window.wait_for(lambda p: copies(), "the copy")
        for ask in (lambda: window.key("ctrl+n"), lambda: self.open_by_name(other)):
            ask()
            window.wait_for(lambda p: "answer Discard" in p, "the question")
            self.assertTrue(copies(), "the copy stays until it is answered")
            window.click("answer Cancel")
            window.wait_for(lambda p: "answer Cancel" not in p, "the question to go")
            self.assertEqual(window.places()["unsaved"], (1.0,))
        self.open_by_name(other)
        window.wait_for(lambda p: "answer Save" in p, "the question")
        window.click("answer Save")
        window.wait_for(lambda p: p["unsaved"] == (0.0,) and p["current"] == (1.0,), "the other job")
        self.assertIn("clearance: 3/4 in", self.job.read_text(encoding="utf-8"))
        window.key("ctrl+n")
        window.wait_for(lambda p: p["has file"] == (0.0,), "a new job, unasked: nothing was unsaved")
        self.leave()

    def open_by_name(self, file):
        self.window.key("ctrl+o")
        time.sleep(0.5)
        self.window.key("ctrl+a")
        self.window.type(str(file))
        self.window.key("Return")

    def test_a_wrong_entry_is_marked_and_the_last_good_plan_stays(self):
        before = self.type_into("riser.clearance", "3/4 psi")
        places = self.window.wait_for(lambda p: "wrong riser.clearance" in p, "the reason beside the field")
        self.assertEqual(places["current"], (0.0,))
        self.assertIn("verdict not up to date: 1 entry to fix", places)
        self.assertGreater(places["planned"][0], 0.0)
        self.window.click("discard riser.clearance")
        self.window.wait_for(lambda p: p["current"] == (1.0,) and "wrong riser.clearance" not in p, "the good plan again")
        self.assertEqual(self.job.read_text(encoding="utf-8"), self.original)
        self.assertGreaterEqual(self.window.revision(), before)


class Words(unittest.TestCase):
    """What stands behind the program's name."""

    def test_wrong_words_are_refused_in_words(self):
        for words, reason in ((["--size", "wide"], "'wide' is no size; it is written as 1280x800"),
                              (["--size", "1280x"], "'1280x' is no size"),
                              (["--size", "0x800"], "each side goes from 200 to 16384"),
                              (["--scale", "9"], "9 not in range"), (["--scale", "large"], "large"),
                              (["--wide"], "--wide"), (["one.yaml", "two.yaml"], "two.yaml"),
                              (["--catalog", "nowhere.yaml"], "nowhere.yaml")):
            done = subprocess.run([VIEW, *words], capture_output=True, text=True)
            self.assertEqual(done.returncode, 2, words)
            self.assertIn(reason, done.stderr)

    def test_help_names_every_option(self):
        done = subprocess.run([VIEW, "--help"], capture_output=True, text=True)
        self.assertEqual((done.returncode, done.stderr), (0, ""))
        for option in ("--size", "--scale", "--catalog", "--state"):
            self.assertIn(option, done.stdout)


if __name__ == "__main__":
    unittest.main(argv=sys.argv[:1])
