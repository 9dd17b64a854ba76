"""Habits: menus and the finder by keys, drawings exported and read by other programs, the window's size remembered, what a
change has changed."""
import pathlib
import re
import subprocess
import sys
import time
import unittest

sys.path.insert(0, str(pathlib.Path(__file__).parent))
from driven import VIEW, Driven  # noqa: E402
from screen import Window  # noqa: E402


class Habits(Driven):
    def test_menus_open_by_f10_and_by_alt_alone(self):
        for key in ("F10", "alt"):
            self.window.key(key)
            self.window.wait_for(lambda p: "menu File" in p, f"the menu by {key}")
            self.window.key("Right")
            self.window.wait_for(lambda p: "menu Edit" in p, "the next menu")
            self.window.key("Left")
            self.window.wait_for(lambda p: "menu File" in p, "the menu before")
            self.window.key("Escape")
            self.window.wait_for(lambda p: "menu File" not in p, "the menu to close")

    def test_what_is_typed_finds_a_part_a_command_and_a_measurement(self):
        window = self.window
        window.key("ctrl+k")
        window.wait_for(lambda p: "find" in p, "the line to type into")
        window.type("bibb")
        window.wait_for(lambda p: any(n.startswith("found ") and "bibb" in n for n in p), "the bibb")
        window.key("Return")
        window.wait_for(lambda p: "pane particulars" in p, "what is told of it")
        window.key("ctrl+k")
        window.type("results")
        window.wait_for(lambda p: "found Results" in p, "the sheet")
        window.key("Return")
        window.wait_for(lambda p: p["sheet"] == (4.0,), "the sheet")
        window.key("ctrl+k")
        window.type("headroom")
        window.wait_for(lambda p: "found headroom" in p, "the measurement")
        window.key("Return")
        window.wait_for(lambda p: "field riser.headroom" in p, "its field")

    def test_drawings_are_exported_and_other_programs_read_them(self):
        folder = self.folder / "papers"
        self.window.key("ctrl+e")
        time.sleep(0.7)
        self.window.key("ctrl+a")
        self.window.type(str(folder))
        self.window.key("Return")
        end = time.monotonic() + 60
        while time.monotonic() < end and not (folder / "plots.pdf").exists():
            time.sleep(0.3)
        time.sleep(0.5)
        for name in ("plumbing", "section", "plots"):
            svg = (folder / f"{name}.svg").read_text(encoding="utf-8")
            subprocess.run(["xmllint", "--noout", folder / f"{name}.svg"], check=True)
            text = subprocess.run(["pdftotext", folder / f"{name}.pdf", "-"], capture_output=True, text=True, check=True)
            png = (folder / f"{name}.png").read_bytes()
            self.assertTrue(png.startswith(b"\x89PNG"))
            self.assertGreater(int.from_bytes(png[16:20], "big"), 800)
            if name == "plumbing":
                for part in ("1-1/4 rubber hose", "hose bibb", "air regulator", "relief valve", "riser bung"):
                    self.assertIn(part, re.sub(r"(<[^>]+>|\s)+", " ", svg))
                    self.assertIn(part, " ".join(text.stdout.split()))

    def test_the_size_is_remembered(self):
        self.leave()
        state = self.folder / "state" / "window"
        self.assertTrue(state.exists())
        state.write_text("10 20 900 640\n", encoding="utf-8")
        self.window.places_file.unlink()
        again = Window(self.screen, VIEW, self.folder, self.job, size="")
        try:
            again.ready()
            found = again.places()["pane canvas"]
            self.assertLess(found[2], 900)
            self.assertGreater(found[2], 800)
            again.key("ctrl+q")
            self.assertEqual(again.wait_for_end()[0], 0)
        finally:
            again.kill()
        self.assertIn("900 640", state.read_text(encoding="utf-8"))

    def test_help_lists_the_keys_and_explains_the_words(self):
        window = self.window
        window.key("F1")
        window.wait_for(lambda p: "help Ctrl+S" in p, "the keys")
        window.click("help page Glossary")
        window.wait_for(lambda p: "help barb" in p and "help Ctrl+S" not in p, "the glossary")
        window.key("Escape")
        window.wait_for(lambda p: "help barb" not in p, "it to close")
        window.key("F2")
        window.wait_for(lambda p: "help barb" in p, "the glossary by its key")
        window.click("close help")
        window.wait_for(lambda p: "help barb" not in p, "it to close")

    def test_the_right_button_offers_what_can_be_done_there(self):
        window = self.window
        window.click("pin gauge bung", button=3)
        window.wait_for(lambda p: "menu row Measurements" in p, "the port's menu")
        window.click("menu row Measurements")
        window.wait_for(lambda p: p["sheet"] == (2.0,), "its measurements")
        window.key("ctrl+1")
        pane = window.wait_for(lambda p: "pane canvas" in p, "the sheet")["pane canvas"]
        window.hand("mousemove", int(pane[0] + 20), int(pane[1] + 12))
        time.sleep(0.3)
        window.hand("click", 3)
        window.wait_for(lambda p: "menu row Connect two ports ..." in p, "the sheet's menu")
        window.key("Escape")
        joint = next(name for name in sorted(window.places()) if name.startswith("joint ") and name.endswith(" of water up"))
        before = window.revision()
        window.click(joint, button=3)
        window.wait_for(lambda p: "menu row Ask for a union in this run" in p, "the joint's menu")
        window.click("menu row Ask for a union in this run")
        window.wait_for_act(before)
        window.key("ctrl+s")
        window.wait_for(lambda p: "union" in self.run_of("water up"), "the union in the job's file")

    def run_of(self, name):
        """What the saved job says of that connection."""
        return self.job.read_text(encoding="utf-8").split(f"name: {name}\n")[1].split("- name:")[0]

    def test_the_clock_runs_at_three_speeds(self):
        window = self.window
        window.key("ctrl+2")
        window.wait_for(lambda p: "speed \u00d760" in p, "the speeds")
        for speed, least, most in (("\u00d71", 0.5, 6.0), ("\u00d760", 30.0, 400.0)):
            window.key("Home")
            window.click("speed " + speed)
            before = window.places()["clock"][0]
            window.key("space")
            time.sleep(1.5)
            window.key("space")
            after = window.wait_for(lambda p: p["clock"][0] > before, "the clock to run")["clock"][0]
            self.assertTrue(least < after - before < most, (speed, before, after))

    def test_a_change_tells_what_it_has_changed(self):
        before = self.type_into("riser.clearance", "3/4 in")
        self.window.wait_for_act(before)
        self.window.key("ctrl+5")
        places = self.window.wait_for(lambda p: "changed cut riser" in p, "what has changed")
        self.assertNotIn("changed set", places)


if __name__ == "__main__":
    unittest.main(argv=sys.argv[:1])
