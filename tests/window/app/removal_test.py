"""A device is taken out of the job and comes back; what is open is mended, one by one or all at once, on the bungs that are
free; and the run from the shop's air stands where it is screwed in."""
import pathlib
import re
import sys
import time
import unittest

sys.path.insert(0, str(pathlib.Path(__file__).parent))
from driven import Driven  # noqa: E402


def verdict(places):
    return next((name for name in places if name.startswith("verdict ")), "")


def notices(places):
    return [name for name in places if name.startswith("notice ")]


def middle(place):
    return (place[0] + place[2]) / 2.0


class Hands(Driven):
    def saved(self):
        self.window.key("ctrl+s")
        self.window.wait_for(lambda p: p["unsaved"] == (0.0,), "the save")
        return self.job.read_text(encoding="utf-8")

    def choose(self, words):
        window = self.window
        window.key("ctrl+k")
        window.wait_for(lambda p: "find" in p, "the line to type into")
        window.type(words)
        window.wait_for(lambda p: any(n.startswith("found ") for n in p), words)
        window.key("Return")
        window.wait_for(lambda p: "pane particulars" in p, "what is told of it")
        time.sleep(0.3)


class Devices(Hands):
    def test_del_takes_the_relief_valve_out_says_so_and_undo_brings_it_back(self):
        window = self.window
        self.choose("relief valve relief")
        before = window.revision()
        window.key("Delete")
        places = window.wait_for_act(before)
        said = [n for n in notices(places) if "Remove 3/4 MNPT relief valve" in n]
        self.assertEqual(len(said), 1, notices(places))
        self.assertIn("Ctrl+Z", said[0])
        self.assertEqual(verdict(places), "verdict NOT YET")
        text = self.saved()
        self.assertNotIn("ends in: relief valve", text)
        self.assertIn("relief bung:", text, "the bung stays")
        before = window.revision()
        window.key("ctrl+z")
        places = window.wait_for_act(before)
        self.assertIn("Taken back", " ".join(notices(places)))
        self.assertEqual(self.saved(), self.original)

    def test_the_mend_uses_the_bung_that_is_free(self):
        window = self.window
        self.choose("relief valve relief")
        before = window.revision()
        window.key("Delete")
        window.wait_for_act(before)
        window.key("F4")
        places = window.wait_for(lambda p: "reason 1" in p, "the reasons")
        mends = [n for n in places if n.startswith("mend of reason")]
        before = window.revision()
        window.click(mends[0])
        window.wait_for_act(before)
        window.key("Escape")
        text = self.saved()
        self.assertIn("ends in: ", text)
        self.assertNotIn("relief valve bung", text)
        self.assertEqual(len(re.findall(r"from: relief bung", text)), 1)

    def test_the_menu_of_a_regulator_takes_its_need_out(self):
        window = self.window
        window.key("f")
        places = window.wait_for(lambda p: any("air-regulator" in n for n in p), "the regulator")
        window.click(next(n for n in sorted(places) if n.startswith("part ") and "air-regulator" in n), 3)
        before = window.revision()
        window.click("menu row Remove this part")
        window.wait_for_act(before)
        text = self.saved()
        self.assertIn("need: [1/16 in hole restrictor, light spring check valve]", text)
        self.assertNotIn("avoid", text)


class OfAManifold(Hands):
    EXAMPLE = "one-air-bung.yaml"

    def test_a_gauge_on_a_branch_is_taken_out_with_its_branch_alone(self):
        window = self.window
        self.choose("gauge air manifold")
        before = window.revision()
        window.key("Delete")
        window.wait_for_act(before)
        text = self.saved()
        self.assertNotIn("5 psi gauge", text)
        self.assertIn("- name: relief valve", text)
        self.assertIn("- name: exhaust", text)


class MendedAll(Hands):
    def prepare(self):
        text = self.job.read_text(encoding="utf-8")
        for name in ("relief", "gauge"):
            begin = text.index(f"  - name: {name}\n")
            text = text[:begin] + text[text.index("  - name:", begin + 5):]
        self.job.write_text(text, encoding="utf-8")

    def test_one_button_mends_all_and_one_undo_takes_it_back(self):
        window = self.window
        self.assertEqual(verdict(window.places()), "verdict NOT YET")
        before = window.revision()
        window.click("mend all")
        places = window.wait_for_act(before)
        self.assertEqual(verdict(places), "verdict READY")
        text = self.saved()
        self.assertNotEqual(text, self.original)
        before = window.revision()
        window.key("ctrl+z")
        window.wait_for_act(before)
        self.assertEqual(self.saved(), self.original)


class Sheet(Hands):
    EXAMPLE = "walls-too-thin.yaml"

    def test_a_thicker_sheet_is_one_button_and_keeps_its_metal(self):
        window = self.window
        window.key("F4")
        window.wait_for(lambda p: "mend of reason 1" in p, "the mend of the walls")
        before = window.revision()
        window.click("mend of reason 1")
        window.wait_for_act(before)
        window.key("Escape")
        self.assertRegex(self.saved(), r"\n  sheet: \d+/\d+ in steel\n")


class Walls(Hands):
    def prepare(self):
        text = self.job.read_text(encoding="utf-8")
        self.assertIn("baffles across: 2", text)
        self.job.write_text(text.replace("baffles across: 2", "baffles across: 14"), encoding="utf-8")

    def test_how_the_walls_are_divided_is_mended_by_a_button_and_seen_in_its_fields(self):
        window = self.window
        window.key("F4")
        places = window.wait_for(lambda p: "reason 1" in p, "the reasons")
        mends = [n for n in places if re.match(r"mend (\d+ )?of reason 1$", n)]
        self.assertTrue(mends, [n for n in places if "mend" in n])
        before = window.revision()
        window.click(mends[0])
        window.wait_for_act(before)
        window.key("Escape")
        text = self.saved()
        self.assertNotIn("baffles across: 14", text)
        window.key("ctrl+3")
        for key in ("baffles along", "lid bays", "floor bays"):
            window.roll_to("field reservoir.supports." + key, "pane measurements")


class AirLine(Hands):
    def test_the_run_from_the_shops_air_stands_on_its_bung_and_the_line_is_named(self):
        window = self.window
        window.key("f")
        time.sleep(0.5)
        places = window.places()
        bung, tank = places["pin air bung"], places["part reservoir"]
        parts = {n: p for n, p in places.items() if n.startswith("part air in/")}
        self.assertGreaterEqual(len(parts), 5)
        for name, place in parts.items():
            self.assertLess(abs(middle(place) - middle(bung)), 30, name)
            self.assertLess(place[1], tank[1], f"{name} stands over the lid")
        self.assertTrue([n for n in places if n.startswith("text ") and "shop's air line" in n])


if __name__ == "__main__":
    unittest.main(argv=sys.argv[:1])
