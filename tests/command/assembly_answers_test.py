"""Branched assemblies and spares of the command pass an independent checker; and the checker sees what is wrong."""
import copy
import json
import pathlib
import random
import sys
import tempfile
import unittest

sys.path.insert(0, str(pathlib.Path(__file__).parent))
from answer_checker import Ask, Checker, Fault  # noqa: E402
from asked_program import AskedProgram  # noqa: E402
from assembly_checker import AssemblyAsk, AssemblyChecker  # noqa: E402

PROGRAM = AskedProgram(sys.argv[1])
CATALOG = PROGRAM.ask("catalog")
CHECKER = AssemblyChecker(Checker(CATALOG))
DEVICES = {words: PROGRAM.ids_of(words) for words in ("ball valve", "check valve", "60 psi air regulator")}


class Assemblies(unittest.TestCase):
    def check(self, ask, answer, options):
        for assembly in answer["assemblies"]:
            try:
                CHECKER.check(ask, assembly)
            except Fault as fault:
                self.fail(f"{ask.base} to {ask.targets} {options}: {fault}\n{json.dumps(assembly, indent=1)}")
        return len(answer["assemblies"])

    def random_request(self, dice, folder):
        sizes = ("1/4", "1/2", "3/4", "1")
        base = f"{dice.choice(sizes[2:])} npt female"
        targets = [f"{dice.choice(sizes)} npt {dice.choice(('male', 'female'))}" for _ in range(dice.choice((2, 2, 3, 4)))]
        options, ask = [], {}
        if dice.random() < 0.4:
            options.append("--held")
            ask["held"] = True
        if dice.random() < 0.4:
            options.append("--air")
            ask["air"] = True
        if dice.random() < 0.3:
            options += ["--most-bushings", "1"]
            ask["most_bushings"] = 1
        if dice.random() < 0.5:
            wanted = dice.sample(sorted(DEVICES), dice.choice((1, 2)))
            for words in wanted:
                options += ["--branch-need", f"1={words}"]
            ask["needs"] = {0: [DEVICES[words] for words in wanted]}
            options += ["--branch-in-order", "1", "--branch-feeds", "1"]
            ask["in_order"] = ask["feeds"] = (0,)
        if dice.random() < 0.4 and base.split()[0] == "1":
            options += ["--branch-relief", "2"]
            ask["reliefs"] = (1,)
        if dice.random() < 0.5:
            stock = dice.sample(sorted(p["id"] for p in CATALOG["parts"] if p["family"] in ("tee", "cross", "nipple", "plug")
                                       and all(q["size"] in sizes for q in p["ports"])), 12)
            ask["bin_counts"] = {part_id: dice.choice((1, 2)) for part_id in stock}
            bin_file = pathlib.Path(folder, "bin.yaml")
            bin_file.write_text("bin:\n" + "".join(f'  - {{part: "{part_id}", count: {count}}}\n'
                                                   for part_id, count in ask["bin_counts"].items()))
            options += ["--bin", bin_file, "--order", "bin"]
        return AssemblyAsk(base, targets, **ask), options

    def test_random_assemblies_hold_what_was_asked(self):
        dice = random.Random(7)
        found = 0
        with tempfile.TemporaryDirectory() as folder:
            for _ in range(14):
                ask, options = self.random_request(dice, folder)
                found += self.check(ask, PROGRAM.ask("chain", ask.base, *ask.targets, *options), options)
        self.assertGreater(found, 8)

    def test_a_wrong_assembly_is_seen(self):
        asked = {"needs": {0: [DEVICES["check valve"], DEVICES["60 psi air regulator"]]}, "in_order": (0,), "feeds": (0,),
                 "reliefs": (1,), "held": True, "air": True}
        ports = ("1 npt female", "1/2 npt male", "3/4 npt male", "1/4 npt male")
        ask = AssemblyAsk(ports[0], ports[1:], **asked)
        good = PROGRAM.ask("chain", *ports, "--held", "--air", "--branch-need", "1=check valve", "--branch-need",
                           "1=60 psi air regulator", "--branch-in-order", "1", "--branch-feeds", "1", "--branch-relief",
                           "2")["assemblies"][0]
        CHECKER.check(ask, good)
        seen = []

        def spoiled(change):
            assembly = copy.deepcopy(good)
            change(assembly)
            with self.assertRaises(Fault) as caught:
                CHECKER.check(ask, assembly)
            seen.append(str(caught.exception))

        tee = next(row for row, part in enumerate(good["parts"]) if len(part["ports"]) > 1)
        spoiled(lambda a: a["parts"].pop())
        spoiled(lambda a: a["parts"][tee]["ports"].pop())
        spoiled(lambda a: a["parts"][tee]["ports"].append(a["parts"][tee]["ports"][0]))
        spoiled(lambda a: a["parts"][0].update(from_bin=True))
        spoiled(lambda a: a["parts"][0].update(enter="3/4 npt male"))
        spoiled(lambda a: a["joints"][1].update(a="3/8 npt female"))
        spoiled(lambda a: a["joints"].pop())
        spoiled(lambda a: a.update(price_usd=a["price_usd"] - 1))
        spoiled(lambda a: a.update(buy_count=a["buy_count"] + 1))
        spoiled(lambda a: a["steps"].pop())
        spoiled(lambda a: a["steps"].insert(0, a["steps"][0]))
        spoiled(lambda a: a["steps"].reverse())
        self.assertGreater(len(set(seen)), 8, seen)
        for other in ({"needs": {0: asked["needs"][0][::-1]}}, {"feeds": ()}, {"reliefs": (0, 1)}, {"bores": {2: 0.1}},
                      {"air": True, "avoided": {good["parts"][0]["id"]}}, {"needs": {1: [{"no such part"}]}, "in_order": ()}):
            with self.assertRaises(Fault):
                CHECKER.check(AssemblyAsk(ports[0], ports[1:], **{**asked, **other}), good)
        with self.assertRaises(Fault):
            CHECKER.check(AssemblyAsk(ports[0], [ports[2], ports[1], ports[3]], **asked), good)


class Spares(unittest.TestCase):
    def ask(self, first, last, *options, **asked):
        return Ask(first, last, **asked), PROGRAM.ask("chain", first, last, "--spares", *options)

    def test_each_stand_in_can_be_made_of_what_is_there(self):
        union = PROGRAM.ids_of("union")
        for first, last, options, asked in (
                ("1 npt female", "3/4 ght male", (), {}),
                ("1-1/2 npt female", "1-1/2 npt female", ("--held",), {"held": True}),
                ("3/4 npt female", "1/2 npt male", ("--held", "--need", "union"), {"held": True, "needs": [union]})):
            ask, answer = self.ask(first, last, *options, **asked)
            self.assertTrue(answer["stock_outs"])
            CHECKER.check_spares(ask, answer)

    def test_wrong_spares_are_seen(self):
        ask, good = self.ask("1-1/2 npt female", "1-1/2 npt female", "--held", held=True)
        CHECKER.check_spares(ask, good)

        def spoiled(change):
            answer = copy.deepcopy(good)
            change(answer)
            with self.assertRaises(Fault):
                CHECKER.check_spares(ask, answer)

        spoiled(lambda a: a["spares"].pop())
        spoiled(lambda a: a["stock_outs"].pop())
        spoiled(lambda a: a["stock_outs"][0]["spares"].clear())
        spoiled(lambda a: a["stock_outs"][0]["stand_in"].pop())
        spoiled(lambda a: a["stock_outs"][0]["stand_in"].clear())
        spoiled(lambda a: a.update(spares_usd=a["spares_usd"] + 1))
        with self.assertRaises(Fault):
            CHECKER.check_spares(Ask(ask.first, ask.last, held=True, needs=[{"no such part"}]), good)


if __name__ == "__main__":
    unittest.main(argv=sys.argv[:1])
