"""Lid maps of `riserun plan JOB --json`, checked with nothing but a table of bosses and plain geometry: no two bungs
overlap, wrench and welds have their room, the hole takes the boss, baffles and stays stand where equal bays put them,
and card, book and drawing say the same places.

`lid_test.py PROGRAM EXAMPLES`.
"""
import json
import math
import pathlib
import re
import subprocess
import sys
import tempfile
import unittest

PROGRAM, EXAMPLES = sys.argv[1], pathlib.Path(sys.argv[2])
INCH = 0.0254
# Size: outside diameter of its class 3000 coupling (ASME B16.11) and of its pipe (ASME B36.10), in inches.
BOSS = {"1/4": 0.75, "1/2": 1.12, "3/4": 1.38, "1": 1.75, "1-1/4": 2.25, "1-1/2": 2.5, "2": 3.0}
PIPE = {"1/4": 0.54, "1/2": 0.84, "3/4": 1.05, "1": 1.315, "1-1/4": 1.66, "1-1/2": 1.9, "2": 2.375}
# Behind the jaw of the wrench that this pipe takes, in inches; common practice.
JAW = {"1/4": 0.8, "1/2": 1.1, "3/4": 1.1, "1": 1.4, "1-1/4": 1.4, "1-1/2": 1.7, "2": 1.7}
EPS = 1e-6

JOB = """name: Lid
units: {units}
reservoir:
  inside: {{length: {length}, width: {width}, height: 14 in}}
  sheet: {sheet} in steel
  supports: {{{supports}}}
  ports: {{{ports}}}
table: {{inside: {{length: 44 in, width: 22 in}}, floor height: 30 in, depth: 3 in, rim: 5 in,
        ports: {{inlet: {{port: 1 FNPT, where: floor}}}}}}
riser: {{bung: riser bung}}
air: {{delivery: 3 scfm, receiver: 8 gal, receiver pressure: 110 psi, set pressure: 1.2 psi}}
connections:
  - {{name: water up, from: riser bung, to: inlet, carries: water, need: [hose]}}
"""
SIX = {"riser bung": "1", "air bung": "1/2", "gauge bung": "1/4", "relief bung": "3/4", "vent bung": "3/4", "spare": "1-1/4"}
JOBS = {
    "baffles": ({"length": "40 in", "width": "20 in", "supports": "baffles across: 2, baffles along: 1"}, SIX, {}),
    "turned": ({"length": "20 in", "width": "44 in", "supports": "baffles across: 3"}, SIX, {}),
    "rows": ({"length": "48 in", "width": "24 in", "supports": "lid bays: 4 x 2, lid stays: rows"}, SIX, {}),
    "posts": ({"length": "60 in", "width": "30 in", "supports": "lid bays: 5 x 3, lid stays: posts", "units": "metric"}, SIX, {}),
    "some given": ({"length": "40 in", "width": "20 in", "supports": "baffles across: 1"}, SIX,
                   {"riser bung": (28, 12), "spare": (8, 6)}),
    "stiff": ({"length": "44 in", "width": "22 in", "supports":
               "lid bays: 4 x 2, floor bays: 4 x 2, long side bays: 4 x 1, short side bays: 2 x 1, lid stays: posts"},
              SIX, {}),
    "bare": ({"length": "12 in", "width": "16 in", "supports": "baffles across: 0"},
             {"riser bung": "1", "air bung": "1/2"}, {}),
}
# Rows and baffles in one lid, of sheet thick enough that slots are bevelled: what is cut over them.
CUT = {**JOBS, "both": ({"length": "44 in", "width": "22 in", "sheet": "3/8", "supports":
                         "baffles across: 1, lid bays: 4 x 2, lid stays: rows, long side bays: 4 x 1"}, SIX, {}),
       "thin": ({"length": "40 in", "width": "20 in", "sheet": "0.105", "supports": "baffles across: 4, baffles along: 1"},
                SIX, {})}


def run(*words):
    return subprocess.run([PROGRAM, *map(str, words)], capture_output=True, text=True)


def job_text(measures, ports, at):
    entries = []
    for name, size in ports.items():
        spot = f", at: [{at[name][0]} in, {at[name][1]} in]" if name in at else ""
        kind = ", bung: full coupling" if name == "riser bung" else ""
        entries.append(f"{name}: {{port: {size} FNPT, where: lid, welded in: no{kind}{spot}}}")
    return JOB.format(**{"units": "inch", "sheet": "3/16", **measures}, ports=", ".join(entries))


def inches(text):
    return float(text.split()[0]) * (INCH if text.endswith("in") else 1.0)


class Lids(unittest.TestCase):
    @classmethod
    def setUpClass(cls):
        cls.folder = tempfile.TemporaryDirectory()
        cls.path = pathlib.Path(cls.folder.name)

    @classmethod
    def tearDownClass(cls):
        cls.folder.cleanup()

    def plan(self, name, measures, ports, at):
        file = self.path / (name.replace(" ", "-") + ".yaml")
        file.write_text(job_text(measures, ports, at), encoding="utf-8")
        done = run("plan", file, "--json")
        self.assertIn(done.returncode, (0, 1), done.stdout + done.stderr)
        return file, json.loads(done.stdout)

    def spot(self, bung):
        return bung["at"]["from_left_m"], bung["at"]["from_front_m"]

    def check(self, lid, sizes):
        bungs = {bung["port"]: bung for bung in lid["bungs"]}
        self.assertEqual(list(bungs), list(sizes))
        for name, bung in bungs.items():
            boss, pipe, jaw = (table[sizes[name]] * INCH for table in (BOSS, PIPE, JAW))
            self.assertAlmostEqual(bung["outside_m"], boss, 6)
            self.assertAlmostEqual(bung["hole_m"], boss + INCH / 16, 6)
            self.assertGreaterEqual(bung["body_m"] + EPS, max(boss / 2, 0.7 * pipe))
            self.assertGreaterEqual(bung["turning_m"] + EPS, max(boss / 2, 0.7 * pipe) + jaw)
            self.assertIsNotNone(bung["at"], name)
            x, y = self.spot(bung)
            edge = boss / 2 + 2 * INCH  # torch and cup over the fillet; common practice
            for clear in (x, y, lid["length_m"] - x, lid["width_m"] - y):
                self.assertGreaterEqual(clear + EPS, edge, name)
            stay = boss / 2 + INCH
            for seam in lid["seams"]:
                off = abs((x if seam["across"] else y) - seam["at_m"]) - lid["plate_m"] / 2
                self.assertGreaterEqual(off + EPS, stay, name)
            for tie in lid["ties"]:
                off = math.hypot(x - tie["from_left_m"], y - tie["from_front_m"]) - lid["plate_m"] / 2
                self.assertGreaterEqual(off + EPS, stay, name)
        names = list(bungs)
        for i, one in enumerate(names):
            for other in names[i + 1:]:
                a, b = bungs[one], bungs[other]
                apart = math.dist(self.spot(a), self.spot(b))
                self.assertGreaterEqual(apart + EPS, (a["outside_m"] + b["outside_m"]), (one, other))
                self.assertGreaterEqual(apart + EPS, a["turning_m"] + b["body_m"], (one, other))
                self.assertGreaterEqual(apart + EPS, b["turning_m"] + a["body_m"], (one, other))

    def check_supports(self, measures, lid):
        length, width = inches(measures["length"]), inches(measures["width"])
        self.assertAlmostEqual(lid["length_m"], length, 9)
        self.assertAlmostEqual(lid["width_m"], width, 9)
        plate = lid["plate_m"]
        long_is_x = length >= width
        for key in ("across", "along"):
            found = re.search(rf"baffles {key}: (\d+)", measures["supports"])
            count = int(found.group(1)) if found else 0
            is_x = (key == "across") == long_is_x
            inside = length if is_x else width
            ats = sorted(seam["at_m"] for seam in lid["seams"] if seam["across"] == is_x and seam["baffle"])
            self.assertEqual(len(ats), count)
            faces = [0.0] + [face for at in ats for face in (at - plate / 2, at + plate / 2)] + [inside]
            bays = [faces[i + 1] - faces[i] for i in range(0, len(faces), 2)]
            for bay in bays:
                self.assertAlmostEqual(bay, bays[0], 9)
            self.assertAlmostEqual(sum(bays) + count * plate, inside, 9)
        grid = re.search(r"lid bays: (\d+) x (\d+)", measures["supports"])
        if grid:
            rows = (int(grid.group(1)) - 1, int(grid.group(2)) - 1)
            posts = "posts" in measures["supports"]
            self.assertEqual(len(lid["ties"]), rows[0] * rows[1] if posts else 0)
            self.assertEqual(len([s for s in lid["seams"] if not s["baffle"]]), 0 if posts else sum(rows))

    def thick_below(self, plan):
        """Each row of openings with the thickness of what is cut to stand below it, in the order of the two lists: of
        a post its side, of a bar its edge, of a baffle the sheet."""
        use = {"posts": "stays, lid to floor", "lid_bars": "stays, lid"}
        rows = {}
        for opening in plan["lid_map"]["openings"]:
            rows.setdefault(use.get(opening["over"], "stays, " + opening["wall"]), []).append(opening)
        for opening in rows.pop("stays, ", []):
            self.assertEqual(opening["over"], "baffles")
            yield opening, plan["lid_map"]["plate_m"]
        for used_for, openings in rows.items():
            cut = [c["thickness_m"] for c in plan["list"]["cut"] if c["for"] == used_for]
            self.assertEqual(len(cut), len(openings), used_for)
            yield from zip(openings, cut)

    def check_openings(self, plan):
        """No hole is wider than what stands under it, or the weld falls through into the tank (common practice); what
        is narrower than the lid is thick is bevelled open (AWS D1.1, plug and slot welds, from memory)."""
        lid = plan["lid_map"]
        pairs = list(self.thick_below(plan))
        self.assertEqual(len(pairs), len(lid["openings"]))
        for opening, below in pairs:
            self.assertGreater(opening["count"], 0)
            # No disc and no wire goes into less than 1/8 in (common practice).
            self.assertGreaterEqual(opening["width_m"], 0.125 * INCH - EPS, opening)
            self.assertLessEqual(opening["width_m"], below + EPS, opening)
            if opening["open_to_m"]:
                self.assertGreater(opening["open_to_m"], opening["width_m"])
            if opening["length_m"] and opening["apart_m"]:
                self.assertGreaterEqual(opening["apart_m"] + EPS, opening["length_m"], opening)
        return {opening["over"] for opening in lid["openings"]}

    def test_no_hole_in_the_lid_is_wider_than_what_stands_under_it(self):
        over = set()
        for name, (measures, sizes, at) in CUT.items():
            with self.subTest(name):
                over |= self.check_openings(self.plan(name, measures, sizes, at)[1])
        self.assertEqual(over, {"posts", "lid_bars", "uprights", "baffles"})

    def test_each_map_keeps_its_room(self):
        for name, (measures, sizes, at) in JOBS.items():
            with self.subTest(name):
                file, plan = self.plan(name, measures, sizes, at)
                lid = plan["lid_map"]
                self.check(lid, sizes)
                self.check_supports(measures, lid)
                for bung in lid["bungs"]:
                    given = at.get(bung["port"])
                    self.assertEqual(bung["proposed"], given is None)
                    if given:
                        self.assertAlmostEqual(self.spot(bung)[0], given[0] * INCH, 9)
                        self.assertAlmostEqual(self.spot(bung)[1], given[1] * INCH, 9)
                self.assertFalse([f for f in plan["findings"] if f["reason_fact"]["code"].startswith("bung")])

    def test_what_is_proposed_written_into_the_job_is_the_same_map_with_nothing_open(self):
        measures, sizes, _ = JOBS["baffles"]
        _, plan = self.plan("baffles", measures, sizes, {})
        at = {b["port"]: tuple(v / INCH for v in self.spot(b)) for b in plan["lid_map"]["bungs"]}
        _, again = self.plan("written", measures, sizes, at)
        self.assertEqual([self.spot(b) for b in again["lid_map"]["bungs"]],
                         [self.spot(b) for b in plan["lid_map"]["bungs"]])
        self.assertFalse([f for f in again["findings"] if f["reason_fact"]["code"].startswith("bung")])

    def test_a_bung_that_stands_too_near_is_named_and_its_mend_followed_closes_it(self):
        measures, sizes, _ = JOBS["some given"]
        for spots, code in (({"air bung": (20, 10)}, "bung_near_baffle"), ({"air bung": (1, 10)}, "bung_near_wall"),
                            ({"air bung": (10, 10), "vent bung": (12, 10)}, "bungs_too_near")):
            with self.subTest(code):
                _, plan = self.plan("near", measures, sizes, spots)
                findings = [f for f in plan["findings"] if f["reason_fact"]["code"].startswith("bung")]
                self.assertEqual([f["reason_fact"]["code"] for f in findings], [code])
                moved = re.search(r"move '(.+?)' to .*'at: \[(.+) in, (.+) in\]'", findings[0]["mend"])
                self.assertTrue(moved, findings[0]["mend"])
                spot = tuple(sum(map(mixed, text.split("-"))) for text in moved.groups()[1:])
                _, again = self.plan("mended", measures, sizes, {**spots, moved.group(1): spot})
                self.assertFalse([f for f in again["findings"] if f["reason_fact"]["code"].startswith("bung")])

    def test_card_book_and_drawing_say_the_same_places(self):
        measures, sizes, at = JOBS["some given"]
        file, plan = self.plan("some given", measures, sizes, at)
        card = " ".join(run("plan", file).stdout.split())
        self.assertIn("1-13/16 in hole, 28 in from the left, 12 in from the front (riser bung)", card)
        self.assertIn("2-5/16 in hole, 8 in from the left, 6 in from the front (spare)", card)
        book = run("plan", file, "--all").stdout
        self.assertRegex(book, r"1 +riser bung +28 in +12 in +1-13/16 in +1-3/4 in ")
        self.assertRegex(book, r"air bung .*proposed")
        svg = self.path / "lid.svg"
        self.assertIn(run("plan", file, "--out", svg, "--force").returncode, (0, 1))
        self.assertIn("riser bung, 28 in from the left, 12 in from the front", svg.read_text(encoding="utf-8"))

    def test_what_cannot_be_is_refused_at_its_place(self):
        measures, sizes, _ = JOBS["baffles"]
        for spot, said in (("[41 in, 5 in]", "41 in is off the lid, whose inside length is 40 in"),
                           ("[5 in, 20-1/2 in]", "20-1/2 in is off the lid, whose inside width is 20 in"),
                           ("[5 in]", "expected two distances"), ("5 in", "expected two distances"),
                           ("[-1 in, 5 in]", "-1 in")):
            file = self.path / "wrong.yaml"
            text = job_text(measures, sizes, {"air bung": ("X", "Y")}).replace("[X in, Y in]", spot)
            file.write_text(text, encoding="utf-8")
            done = run("plan", file)
            self.assertEqual(done.returncode, 2, done.stdout)
            self.assertIn(said, done.stderr)
            line = next(n for n, row in enumerate(text.splitlines(), 1) if spot in row)
            self.assertRegex(done.stderr, rf"wrong.yaml:{line}:\d+: error: ")

    def test_bungs_that_have_no_room_are_said_to_have_none(self):
        ports = {f"bung {i}": "2" for i in range(6)} | {"riser bung": "1"}
        measures = {"length": "12 in", "width": "10 in", "supports": "baffles across: 0"}
        file, plan = self.plan("full", measures, ports, {})
        none = [b for b in plan["lid_map"]["bungs"] if b["at"] is None]
        self.assertTrue(none)
        self.assertIn("no free place", " ".join(run("plan", file, "--all").stdout.split()))


def mixed(text):
    top, _, under = text.partition("/")
    return float(top) / float(under or 1)


if __name__ == "__main__":
    unittest.main(argv=sys.argv[:1])
