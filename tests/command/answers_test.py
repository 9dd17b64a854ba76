"""Every answer of the command passes an independent checker; and the checker sees what is wrong."""
import copy
import json
import pathlib
import random
import sys
import unittest

sys.path.insert(0, str(pathlib.Path(__file__).parent))
from answer_checker import Ask, Checker, Fault  # noqa: E402
from asked_program import AskedProgram  # noqa: E402

PROGRAM, EXAMPLES = AskedProgram(sys.argv[1]), pathlib.Path(sys.argv[2])
PSI = 6894.757293168
CATALOG = PROGRAM.ask("catalog")
CHECKER = Checker(CATALOG)


def open_ports():
    """Ports of stocked connectors that some other stocked part goes onto."""
    ports = set()
    for part in CATALOG["parts"]:
        if part["stocked"] and part["role"] == "connector" and len(part["ports"]) > 1:
            ports.update(f"{p['size']} {p['kind']} {p['end']}" for p in part["ports"])
    return sorted(ports)


class Answers(unittest.TestCase):
    def check(self, ask, *options):
        answer = PROGRAM.ask("chain", ask.first, ask.last, *options)
        for chain in answer["chains"]:
            try:
                CHECKER.check(ask, chain)
            except Fault as fault:
                self.fail(f"{ask.first} to {ask.last} {options}: {fault}\n{json.dumps(chain, indent=1)}")
        return len(answer["chains"])

    def test_alternatives_between_random_ports_hold_what_was_asked(self):
        dice = random.Random(20)
        ports = open_ports()
        valves, unions = PROGRAM.ids_of("ball valve"), PROGRAM.ids_of("union")
        galvanized = PROGRAM.ids_of("galvanized")
        found = 0
        for _ in range(24):
            first, last = dice.sample(ports, 2)
            options, ask = ["--alternatives", 4], {}
            if dice.random() < 0.4:
                options.append("--held")
                ask["held"] = True
            if dice.random() < 0.3:
                options.append("--air")
                ask["air"] = True
            if dice.random() < 0.3:
                options += ["--rating", "120 psi"]
                ask["rating_pa"] = 120 * PSI
            if dice.random() < 0.3:
                options += ["--avoid", "galvanized"]
                ask["avoided"] = galvanized
            if dice.random() < 0.3:
                options += ["--need", "ball valve"]
                ask["needs"] = [valves]
            if dice.random() < 0.2:
                options += ["--need", "union"]
                ask["needs"] = [*ask.get("needs", []), unions]
            if dice.random() < 0.2:
                options += ["--bore", "0.5 in"]
                ask["bore_m"] = 0.0127
            found += self.check(Ask(first, last, **ask), *options)
        self.assertGreater(found, 20)

    def test_runs_that_make_a_distance_hold(self):
        dice = random.Random(31)
        sizes = ("1/2", "3/4", "1", "1-1/4", "1-1/2", "2")
        made = {}
        for _ in range(24):
            size = dice.choice(sizes)
            first, last = f"{size} npt {dice.choice(('male', 'female'))}", f"{size} npt {dice.choice(('male', 'female'))}"
            inches = dice.randrange(40, 700) / 16
            avoided = dice.choice(((), ("nipple",), ("nipple", "threaded pipe")))
            options = ["--span", f"{inches} in"]
            for words in avoided:
                options += ["--avoid", words]
            ask = Ask(first, last, held=True, span_m=inches * 0.0254, avoided=set().union(*map(PROGRAM.ids_of, avoided)))
            answer = PROGRAM.ask("chain", first, last, *options)
            for chain in answer["chains"]:
                made[chain["span"]["made_by"]] = made.get(chain["span"]["made_by"], 0) + 1
            self.check(ask, *options)
        self.assertGreater(len(made), 1, made)

    def test_connections_of_the_examples_hold(self):
        for example in sorted(EXAMPLES.glob("*.yaml")):
            plan = PROGRAM.ask("plan", example)
            for connection in plan["connections"]:
                for chain in connection["chains"]:
                    self.assertTrue(chain["buildable"], connection["name"])
                    CHECKER.check_lengths(chain)

    def test_a_wrong_answer_is_seen(self):
        ask = Ask("1 npt female", "1 npt female", held=True, needs=[PROGRAM.ids_of("ball valve")])
        good = PROGRAM.ask("chain", ask.first, ask.last, "--held", "--need", "ball valve", "--bore",
                           "0.9 in")["chains"][0]
        CHECKER.check(ask, good)

        def spoiled(change):
            chain = copy.deepcopy(good)
            change(chain)
            with self.assertRaises(Fault):
                CHECKER.check(ask, chain)

        spoiled(lambda c: c["parts"].pop())
        spoiled(lambda c: c["joints"][0].update(a="3/4 npt female"))
        spoiled(lambda c: c["parts"][0].update(from_bin=True))
        spoiled(lambda c: c.update(price_usd=c["price_usd"] + 1))
        spoiled(lambda c: c.update(length_m=c["length_m"] + 1e-4))
        spoiled(lambda c: c["joints"][1].update(make_up_m=0.02))
        spoiled(lambda c: c["steps"].pop(0))
        spoiled(lambda c: c["steps"].insert(0, c["steps"][0]))
        spoiled(lambda c: c["steps"].reverse())
        for loss in ({"needs": [{"no such part"}]}, {"air": True, "avoided": {good["parts"][0]["id"]}},
                     {"rating_pa": 1e9}, {"bore_m": 1.0}, {"most_parts": 1}):
            with self.assertRaises(Fault):
                CHECKER.check(Ask(ask.first, ask.last, **{"held": True, **loss}), good)


if __name__ == "__main__":
    unittest.main(argv=sys.argv[:1])
