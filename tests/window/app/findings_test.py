"""The verdict in the window: what the badge says, its reasons, and the mends that are followed by a click."""
import pathlib
import re
import sys
import time
import unittest

sys.path.insert(0, str(pathlib.Path(__file__).parent))
from driven import Driven  # noqa: E402


def verdict(places):
    return next((name for name in places if name.startswith("verdict ")), "")


def watch(places):
    return next((name for name in places if name.startswith("WATCH")), "")


class Badge(Driven):
    def test_near_the_limit_it_is_not_as_above_a_factor_of_four(self):
        window = self.window
        self.assertEqual(verdict(window.places()), "verdict READY")
        self.assertEqual(watch(window.places()), "", "the factor is above 4")
        # Thinner walls stand the same pressures, with a factor below 4.
        before = self.type_into("reservoir.sheet", "1/8 in steel")
        places = window.wait_for_act(before)
        self.assertEqual(verdict(places), "verdict READY", "nothing is open")
        self.assertRegex(watch(places), r"^WATCH: factor 2[.]\d at [\d.]+ psi$", "the factor, and where it is that")
        window.click(verdict(places))
        window.wait_for(lambda p: "reason of watch" in p, "why it must be watched")

    def test_a_click_and_a_key_lead_to_the_reasons(self):
        window = self.window
        before = self.type_into("air.set pressure", "0.5 psi")
        places = window.wait_for_act(before)
        self.assertEqual(verdict(places), "verdict REFUSED")
        window.click(verdict(places))
        window.wait_for(lambda p: "reason 1" in p, "the reasons after a click")
        window.key("Escape")
        window.wait_for(lambda p: "close reasons" not in p, "the reasons to close")
        window.key("F4")
        window.wait_for(lambda p: "reason 1" in p, "the reasons after a key")
        window.click("close reasons")
        window.wait_for(lambda p: "close reasons" not in p, "the reasons to close")


class Three(Driven):
    """On a screen of 1280 x 800."""

    def prepare(self):
        text = self.job.read_text(encoding="utf-8")
        for good, bad in (("regulator range: 10 psi", "regulator range: 60 psi"), ("passages: yes", "passages: no"),
                          ("regulator repeatability: 0.05 psi", "regulator repeatability: 1 psi")):
            self.assertIn(good, text)
            text = text.replace(good, bad)
        self.job.write_text(text, encoding="utf-8")

    def test_findings_leave_the_plumbing_its_names(self):
        self.window.key("f")
        time.sleep(0.5)
        places = self.window.places()
        for number in (1, 2):
            self.assertIn(f"open {number}", places)
        self.assertIn("more findings", places)
        self.assertLess(places["open 2"][3] - places["open 1"][1], 800 / 8, "they take little of the height")
        said = re.sub(r"\s+", " ", " | ".join(n for n in places if n.startswith("text ")))
        for words in ("1-1/4 rubber hose, by the foot", "1/4 air regulator, 0 to 10 psi", "3/4 full-bore ball valve",
                      "3/4 MNPT relief valve, set 2 psi", "0 to 5 psi gauge, 1/4 MNPT"):
            self.assertIn(words, said)

    def test_keys_alone_mend_all(self):
        window = self.window
        window.key("F4")
        window.wait_for(lambda p: "mend all" in p, "the reasons")
        before = window.revision()
        window.key("Return")
        places = window.wait_for_act(before)
        self.assertNotIn("reason 3", places, "what a button mends is mended")

    def test_all_of_a_finding_stands_behind_its_line(self):
        self.window.click("open 1")
        self.window.wait_for(lambda p: "reason 1" in p, "the whole of it")


class Mended(Driven):
    def prepare(self):
        text = self.job.read_text(encoding="utf-8")
        begin = text.index("  - name: relief\n")
        text = text[:begin] + text[text.index("  - name:", begin + 5):]
        text = "".join(line for line in text.splitlines(True) if "relief bung:" not in line)
        self.job.write_text(text, encoding="utf-8")

    def test_a_click_on_a_finding_opens_the_reasons_where_it_stands_to_its_end(self):
        self.window.click("open 1")
        self.window.wait_for(lambda p: "reason 1" in p, "the reasons")

    def test_a_click_follows_the_mend_and_undo_takes_it_back(self):
        window = self.window
        self.assertEqual(verdict(window.places()), "verdict NOT YET")
        window.key("F4")
        mends = [n for n in window.wait_for(lambda p: "reason 1" in p, "the reasons") if n.startswith("mend of reason")]
        before = window.revision()
        window.click(mends[0])
        window.wait_for_act(before)
        window.key("Escape")
        window.key("ctrl+s")
        window.wait_for(lambda p: p["unsaved"] == (0.0,), "the save")
        self.assertIn("relief valve bung", self.job.read_text(encoding="utf-8"))
        window.key("ctrl+z")
        window.wait_for(lambda p: p["unsaved"] == (1.0,) and p["current"] == (1.0,), "the undo")
        window.key("ctrl+s")
        window.wait_for(lambda p: p["unsaved"] == (0.0,), "the save")
        self.leave()
        self.assertEqual(self.job.read_text(encoding="utf-8"), self.original)


class ByAnotherPart(Driven):
    """What no one key of the job says has its button, too; what nothing in the window writes says where to change it."""

    def prepare(self):
        text = self.job.read_text(encoding="utf-8")
        for good, bad in (("0 to 10 psi air regulator", "0 to 60 psi air regulator"), ("  regulator range: 10 psi\n", ""),
                          ("regulator repeatability: 0.05 psi", "regulator repeatability: 0.01 psi")):
            self.assertIn(good, text)
            text = text.replace(good, bad)
        self.job.write_text(text, encoding="utf-8")

    def test_a_button_takes_another_regulator_and_the_rest_is_said(self):
        window = self.window
        window.key("F4")
        places = window.wait_for(lambda p: "reason 2" in p, "the reasons")
        by_hand = [n[len("by hand "):] for n in places if n.startswith("by hand ")]
        self.assertEqual(len(by_hand), 1, "one of the two is left to the hand")
        self.assertNotIn("mend of " + by_hand[0], places)
        mend, = (n for n in places if n.startswith("mend of reason"))
        before = window.revision()
        window.click(mend)
        window.wait_for_act(before)
        window.key("Escape")
        window.key("ctrl+s")
        window.wait_for(lambda p: p["unsaved"] == (0.0,), "the save")
        self.assertEqual(self.job.read_text(encoding="utf-8"),
                         self.original.replace("0 to 60 psi air regulator", "0 to 10 psi air regulator"))


if __name__ == "__main__":
    unittest.main(argv=sys.argv[:1])
