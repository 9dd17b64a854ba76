"""Units are what a plan is written in, and nothing of it depends on them: all that is no sentence is the same in both."""
import json
import pathlib
import random
import re
import subprocess
import sys
import tempfile
import unittest

PROGRAM, EXAMPLES = sys.argv[1], pathlib.Path(sys.argv[2])

# Keys whose value is a name or a code; all other texts may be sentences, which are written in units.
NAMES = {"name", "id", "code", "unit", "key", "where", "status", "stop", "walk_away", "from", "to", "service", "material", "stock", "seal"}

JOB = """name: Made up
units: inch
reservoir:
  inside: {length: %(long)d in, width: %(wide)d in, height: %(high)d in}
  sheet: %(sheet)s
  supports: {baffles across: %(baffles)d}
%(test)s  ports:
    riser bung: {port: %(riser)s FNPT, bung: full coupling, where: lid}
    air bung: 1/2 FNPT
    drain: 3/4 FNPT
table:
  inside: {length: %(long)d in, width: %(wide)d in}
  floor height: %(floor)d in
  depth: %(depth)s in
  ports:
    inlet: {port: 1 FNPT, where: %(where)s}
air:
  delivery: %(delivery)s scfm
%(air)s  ports: {regulator: 1/4 FNPT}
connections:
  - {name: water up, from: riser bung, to: inlet, carries: water%(water)s}
  - {name: air in, from: regulator, to: air bung, carries: air}
  - {name: relief, from: drain, ends in: relief valve set %(relief)s psi 3/4, carries: air}
%(wishes)s"""


def made_up(dice):
    return JOB % {
        "long": dice.randint(24, 60), "wide": dice.randint(16, 30), "high": dice.randint(8, 20),
        "sheet": dice.choice(("10 ga steel", "3/16 in steel", "12 ga stainless", "1/4 in aluminium", "4 mm steel")),
        "baffles": dice.randint(0, 3), "riser": dice.choice(("1", "1-1/4", "2")), "floor": dice.randint(20, 40),
        "depth": dice.choice(("2", "3-1/2", "5")), "where": dice.choice(("floor", "over rim")), "delivery": dice.choice(("1", "3", "9")),
        "test": dice.choice(("", "  lid: welded\n")), "air": dice.choice(("", "  set pressure: 1.2 psi\n", "  receiver: 8 gal\n")),
        "water": dice.choice(("", ", need: [union]", ", need: [ball valve, hose]")), "relief": dice.choice(("3", "5")),
        "wishes": dice.choice(("", "wishes: {fill time: 4 min}\n", "wishes: {cost cap: $40}\n", "test pressure: 1.3 psi\n"))}


def without_sentences(value, key=""):
    """Of a sentence it counts that there is one."""
    if isinstance(value, list):
        return [without_sentences(item, key) for item in value]
    if isinstance(value, dict):
        return {name: without_sentences(item, name) for name, item in value.items()}
    return "..." if isinstance(value, str) and key not in NAMES else value


class Units(unittest.TestCase):
    def setUp(self):
        place = tempfile.TemporaryDirectory()
        self.addCleanup(place.cleanup)
        self.answers = {}  # by question: under the sanitizers each takes a second
        self.folder = pathlib.Path(place.name)
        for path in EXAMPLES.glob("*.yaml"):
            (self.folder / path.name).write_text(path.read_text(encoding="utf-8"), encoding="utf-8")

    def answer(self, verb, job, *words):
        asked = (verb, job.read_bytes(), words)
        if asked not in self.answers:
            self.answers[asked] = self.asked(verb, job, *words)
        return self.answers[asked]

    def asked(self, verb, job, *words):
        done = subprocess.run([PROGRAM, verb, job, "--json", *words], capture_output=True, text=True)
        self.assertLess(done.returncode, 2, done.stderr)
        return done.returncode, json.loads(done.stdout)

    def in_units(self, text, units):
        """The job as it says of itself what it is written in."""
        said = re.sub(r"(?m)^units:.*\n", "", text) + ("" if text.endswith("\n") else "\n") + f"units: {units}\n"
        path = self.folder / f"{units}.yaml"
        path.write_text(said, encoding="utf-8")
        return path

    def check(self, text, verbs):
        inch, metric = self.in_units(text, "inch"), self.in_units(text, "metric")
        for verb in verbs:
            asked = [self.answer(verb, inch), self.answer(verb, inch, "--units", "metric"), self.answer(verb, metric),
                     self.answer(verb, metric, "--units", "inch")]
            # The units that the job names are no more than what its words are written in.
            self.assertEqual(asked[0], asked[3], verb)
            self.assertEqual(asked[1], asked[2], verb)
            self.assertEqual(without_sentences(asked[0][1]), without_sentences(asked[1][1]), verb)
        return self.answer("plan", inch)[1], self.answer("plan", metric)[1]

    def test_an_example_is_the_same_plan_in_both(self):
        for path in sorted(EXAMPLES.glob("*.yaml")):
            text = path.read_text(encoding="utf-8")
            if "\nreservoir:" not in "\n" + text:
                continue
            # The other verbs print a piece of the same plan: of one job they are asked, too.
            verbs = ("plan", "list", "riser", "transfer", "walls") if path.name == "bevel-bench.yaml" else ("plan",)
            with self.subTest(path.name):
                inch, metric = self.check(text, verbs)
                self.assertNotEqual(inch["assumptions"], metric["assumptions"])

    def test_in_metric_what_is_set_by_a_dial_in_psi_is_said_in_psi_too(self):
        def run(*words):
            return subprocess.run([PROGRAM, *map(str, words)], capture_output=True, text=True)

        job = EXAMPLES / "bevel-bench.yaml"
        plan = json.loads(run("plan", job, "--json", "--units", "metric").stdout)
        self.assertTrue(any("psi gauge" in item["name"] for item in plan["list"]["buy"] + plan["list"]["bin"]))
        psi = 6894.757
        pressure = next(figure["value"] for group in plan["figures"] for figure in group["figures"] if figure["key"] == "set_pressure")
        setting = f"({pressure / psi:.3g} psi)"
        card = " ".join(run("plan", job, "--units", "metric").stdout.split())
        book = " ".join(run("plan", job, "--units", "metric", "--all").stdout.split())
        self.assertRegex(card, r"regulator [\d.]+ m?bar " + re.escape(setting))
        self.assertGreaterEqual(book.count(setting), 3)  # the setting, its mark in the test, its step in the work
        test = " ".join(run("leak-test", job, "--units", "metric").stdout.split())
        at = plan["walls"]["test_pressure_pa"] / psi
        said = [float(number) for number in re.findall(r"bar \(([\d.]+) psi\)", test)]
        for share in (0.25, 0.5, 0.75, 1.0):
            self.assertTrue(any(abs(number - share * at) < 0.006 for number in said), (share * at, said))
        # What is bought or read in psi, too: the relief valve's stamp and where it is proved to open, the gauge's dial.
        relief = float(re.search(r"relief valve, set ([\d.]+) psi", " ".join(i["name"] for i in plan["list"]["buy"] if "relief" in i["for"])).group(1))
        self.assertRegex(book, r"set at [\d.]+ bar \(%g psi\)" % relief)
        self.assertRegex(book, r"it must open between [\d.]+ bar \([\d.]+ psi\) and [\d.]+ bar \([\d.]+ psi\)")
        self.assertRegex(book, r"gauge to use 0 to [\d.]+ bar \(5 psi\)")
        # Not what nobody reads off one of these: the walls' limit, the hold pressure.
        self.assertNotRegex(book, r"(walls' limit|hold pressure) [\d.]+ bar \([\d.]+ psi")
        inch = run("plan", job, "--all").stdout
        self.assertNotRegex(inch, r"psi \([\d.]+ psi\)")

    def test_a_made_up_job_is_the_same_plan_in_both(self):
        dice = random.Random(20)
        for number in range(16):
            text = made_up(dice)
            with self.subTest(number, job=text):
                self.check(text, ("plan",))


if __name__ == "__main__":
    unittest.main(argv=sys.argv[:1])
