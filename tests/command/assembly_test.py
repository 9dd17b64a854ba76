"""Branched assemblies on the command line: what is printed, what is in the JSON, what is refused."""
import json
import re
import subprocess
import sys
import unittest

PROGRAM = sys.argv[1]
MANIFOLD = ("1/2 FNPT", "1/4 FNPT", "1/4 MNPT", "3/4 MNPT", "1/2 MNPT")


def run(*words):
    return subprocess.run([PROGRAM, "chain", *words], capture_output=True, text=True)


class AirManifold(unittest.TestCase):
    """On one 1/2 bung: supply hose end, gauge, relief valve, exhaust valve."""

    def setUp(self):
        done = run(*MANIFOLD, "--air", "--json")
        self.assertEqual(done.returncode, 0, done.stderr)
        self.answer = json.loads(done.stdout)
        self.assembly = self.answer["assemblies"][0]
        catalog = subprocess.run([PROGRAM, "catalog", "--json"], capture_output=True, text=True)
        self.catalog = json.loads(catalog.stdout)
        self.parts = {part["id"]: part for part in self.catalog["parts"]}

    def test_every_port_is_followed_by_one_thing_that_mates(self):
        pairs = set()
        for row in self.catalog["mates"]:
            pairs.add((row["a"]["kind"], row["a"]["end"], row["b"]["kind"], row["b"]["end"]))
            pairs.add((row["b"]["kind"], row["b"]["end"], row["a"]["kind"], row["a"]["end"]))

        def mates(a, b):
            (size_a, kind_a, end_a), (size_b, kind_b, end_b) = a.split(), b.split()
            return size_a == size_b and (kind_a, end_a, kind_b, end_b) in pairs

        ports, parts = self.answer["ports"], self.assembly["parts"]
        self.assertTrue(mates(ports[0], parts[0]["enter"]))
        targets, children = [], [0]
        for part in parts:
            self.assertEqual(len(part["ports"]) + 1, len(self.parts[part["id"]]["ports"]))
            for port in part["ports"]:
                self.assertEqual(sum(key in port for key in ("part", "target", "plug")), 1)
                if "part" in port:
                    children.append(port["part"])
                    self.assertTrue(mates(port["type"], parts[port["part"]]["enter"]))
                elif "target" in port:
                    targets.append(port["target"])
                    self.assertTrue(mates(port["type"], ports[1 + port["target"]]))
        self.assertEqual(sorted(targets), [0, 1, 2, 3])
        self.assertEqual(sorted(children), list(range(len(parts))))

    def test_sums_are_those_of_the_parts(self):
        ids = [part["id"] for part in self.assembly["parts"]]
        ids += [port["plug"]["id"] for part in self.assembly["parts"] for port in part["ports"] if "plug" in port]
        self.assertEqual(self.assembly["part_count"], len(ids))
        self.assertEqual(self.assembly["buy_count"], len(ids))
        self.assertAlmostEqual(self.assembly["price_usd"], sum(self.parts[i]["price_usd"] for i in ids), places=6)
        self.assertEqual(len(self.assembly["joints"]), len(self.assembly["parts"]) + 4)

    def test_it_stands_air_and_has_a_step_for_every_joint(self):
        self.assertTrue(self.assembly["air"])
        self.assertTrue(self.assembly["buildable"])
        self.assertGreaterEqual(len(self.assembly["steps"]), len(self.assembly["joints"]))
        self.assertTrue(any("relief valve must never be fed" in caution for caution in self.assembly["cautions"]))

    def test_price_order_costs_no_more(self):
        done = json.loads(run(*MANIFOLD, "--air", "--order", "price", "--json").stdout)
        self.assertLessEqual(done["assemblies"][0]["price_usd"], self.assembly["price_usd"])

    def test_text_is_a_tree_with_every_target(self):
        text = run(*MANIFOLD, "--air").stdout
        self.assertTrue(text.startswith("From 1/2 FNPT to 1/4 FNPT, 1/4 MNPT, 3/4 MNPT, 1/2 MNPT\n"))
        for row, port in enumerate(MANIFOLD[1:], 1):
            self.assertIn(f"= target {row}: {port}", text)
        self.assertIn("Build order", text)


class RulesOfBranches(unittest.TestCase):
    """On one 1 in bung: supply with regulator and restrictor, gauge above, relief valve, exhaust valve."""

    PORTS = ("1 FNPT", "1/4 FNPT", "1/4 MNPT", "3/4 MNPT", "1/2 FNPT")
    RULES = ("--air", "--branch-feeds", "1", "--branch-need", "1=60 psi air regulator", "--branch-need",
             "1=1/16 in hole restrictor", "--special-order", "--branch-looks", "2=straight on", "--branch-relief", "3", "--branch-need",
             "4=brass ball valve")

    def setUp(self):
        done = run(*self.PORTS, *self.RULES, "--json")
        self.assertEqual(done.returncode, 0, done.stderr)
        self.assembly = json.loads(done.stdout)["assemblies"][0]

    def way_to(self, target):
        """Rows of the parts on the way, from the base, each with the port that leads on."""
        parts = self.assembly["parts"]
        way, row, seek = [], None, ("target", target)
        for at in reversed(range(len(parts))):
            for port in parts[at]["ports"]:
                if port.get(seek[0]) == seek[1]:
                    way.append((parts[at], port["port"]))
                    seek = ("part", at)
        return way[::-1]

    def families(self, target):
        return [part["id"].split("/")[0] for part, _ in self.way_to(target)]

    def test_each_way_has_what_was_asked_of_it_and_nothing_else_has(self):
        self.assertIn("air-regulator", self.families(0))
        self.assertIn("restrictor", self.families(0))
        self.assertIn("ball-valve", self.families(3))
        for target in (1, 2):
            self.assertFalse({"air-regulator", "restrictor", "ball-valve"} & set(self.families(target)), target)

    def test_the_regulator_points_to_the_base(self):
        [leave] = [port for part, port in self.way_to(0) if part["id"].startswith("air-regulator")]
        self.assertEqual(leave, 0)

    def test_the_relief_valve_is_fed_in_its_own_size(self):
        for part, _ in self.way_to(2):
            self.assertNotIn(part["enter"].split()[0], ("1/8", "1/4", "3/8", "1/2"))
        self.assertGreater(self.assembly["ends"][2]["smallest_bore_m"], 0.0187)
        self.assertAlmostEqual(self.assembly["ends"][0]["smallest_bore_m"], 0.0625 * 0.0254, places=6)
        self.assertFalse(any("a relief valve must never be fed" in c for c in self.assembly["cautions"]))

    def test_the_gauge_is_straight_above_the_base(self):
        catalog = json.loads(subprocess.run([PROGRAM, "catalog", "--json"], capture_output=True, text=True).stdout)
        headings = {part["id"]: [p["heading_degrees"] for p in part["ports"]] for part in catalog["parts"]}
        for part, leave in self.way_to(1):
            turn = abs(headings[part["id"]][part["enter_port"]] - headings[part["id"]][leave])
            self.assertAlmostEqual(turn % 360, 180)

    def test_a_relief_valve_on_a_smaller_base_is_refused_with_its_reason(self):
        done = run("1/2 FNPT", "1/4 MNPT", "3/4 MNPT", "--branch-relief", "2", "--json")
        self.assertEqual(done.returncode, 1)
        none = json.loads(done.stdout)["why_none"]
        self.assertEqual(none["reason"],
                         "target 2 (3/4 MNPT) cannot be reached from the base (1/2 FNPT) as asked: every way to target 2 "
                         "(3/4 MNPT) is smaller than the relief valve's own inlet; give it a port of its own size")
        self.assertEqual(none["mends"], [])

    def test_a_rule_that_cannot_be_met_is_named_with_its_branch_and_its_mend(self):
        done = run("1 FNPT", "1/4 MNPT", "3/4 MNPT", "--branch-bore", "1=1 in", "--json")
        none = json.loads(done.stdout)["why_none"]
        self.assertIn("every way to target 1 (1/4 MNPT) narrows below 1 in", none["reason"])
        self.assertEqual(none["mends"], ["accept a bore below 1 in on the way to target 1 (1/4 MNPT)"])

    def test_needs_of_a_branch_come_in_the_order_given(self):
        needs = ["60 psi air regulator", "check valve", "1/16 in hole restrictor"]
        families = {"60 psi air regulator": "air-regulator", "check valve": "spring-check-valve",
                    "1/16 in hole restrictor": "restrictor"}
        for order in (needs, needs[::-1], needs[1:] + needs[:1]):
            words = [word for need in order for word in ("--branch-need", "1=" + need)]
            done = run(*self.PORTS, "--air", "--branch-feeds", "1", *words, "--branch-in-order", "1",
                       "--special-order", "--json")
            self.assertEqual(done.returncode, 0, done.stderr)
            self.assembly = json.loads(done.stdout)["assemblies"][0]
            self.assertEqual([f for f in self.families(0) if f in families.values()], [families[n] for n in order])

    def test_bushings_are_limited_over_all_branches(self):
        ports = ("1 FNPT", "1/4 MNPT", "1/4 FNPT", "1 MNPT", "--order", "price")

        def bushings(*words):
            done = run(*ports, *words, "--json")
            self.assertEqual(done.returncode, 0, done.stderr)
            assembly = json.loads(done.stdout)["assemblies"][0]
            return sum("bushing" in part["name"] for part in assembly["parts"]), assembly["price_usd"]

        free, price = bushings()
        none, dearer = bushings("--most-bushings", "0")
        self.assertGreater(free, 0)
        self.assertEqual(none, 0)
        self.assertGreater(dearer, price)
        done = run(*ports, "--most-bushings", "0", "--need", "hex bushing", "--json")
        self.assertEqual(done.returncode, 1)
        self.assertIn("allow more bushings", json.loads(done.stdout)["why_none"]["mends"])

    def test_room_is_kept_and_named(self):
        done = run("1 FNPT", "1/4 MNPT", "1/2 MNPT", "--room", "0.9 in", "--json")
        self.assertEqual(done.returncode, 1)
        self.assertIn("make more room round the run than 0.9 in", json.loads(done.stdout)["why_none"]["mends"])

    def test_only_the_branch_that_asks_gets_what_it_needs(self):
        for asks in ("1", "2"):
            done = run("1 FNPT", "1/2 MNPT", "1/2 MNPT", "--branch-need", asks + "=ball valve", "--json")
            self.assembly = json.loads(done.stdout)["assemblies"][0]
            for target in (0, 1):
                self.assertEqual("ball-valve" in self.families(target), str(target + 1) == asks)

    def test_a_close_nipple_is_turned_by_hand_and_never_held(self):
        text = " ".join(run("3/4 FNPT", "3/4 MNPT", "1/2 FNPT").stdout.split())
        [row] = [int(r) for r in re.findall(r"Screw part (\d+) \(3/4 close nipple\)", text)]
        self.assertIn(f"turn part {row} hand-tight and no more: what goes onto it draws it up", text)
        self.assertIn(f"part {row} draws up in both, so no wrench touches its threads", text)
        self.assertNotIn(f"hold part {row} with", text)

    def test_the_tree_fits_on_a_page(self):
        for words in (self.PORTS + self.RULES, MANIFOLD, ("3/4 FNPT", "1/2 MNPT", "1/4 MNPT", "1/2 FNPT")):
            self.assertLessEqual(max(map(len, run(*words).stdout.splitlines())), 100)

    def test_wrong_words_are_said_exactly(self):
        for words, message in (
                (("--branch-bore", "3=1/2 in"), "'3' is no branch; the ports behind the base count from 1 to 2"),
                (("--branch-relief", "0"), "'0' is no branch; the ports behind the base count from 1 to 2"),
                (("--branch-bore", "1/2 in"),
                 "the number of a branch, '=' and what holds there is wanted, as \"2=3/4 in\""),
                (("--branch-need", "1="), "the number of a branch, '=' and what holds there is wanted, as \"1=regulator\""),
                (("--branch-looks", "1=up"), "'up' is not known here; allowed: anywhere, straight on, to a side")):
            done = run("1 FNPT", "1 MNPT", "3/4 MNPT", *words)
            self.assertEqual((done.returncode, done.stdout), (2, ""), words)
            self.assertIn(f"{words[0]}:", done.stderr)
            self.assertIn(f"error: {message} [", done.stderr)

    def test_between_two_ports_there_are_no_branches(self):
        done = run("1 FNPT", "3/4 MNPT", "--branch-relief", "1")
        self.assertEqual(done.returncode, 2)
        self.assertIn("is for a branched assembly: give a base and two or more ports behind it", done.stderr)


class Refusals(unittest.TestCase):
    def refused(self, *words):
        done = run("1 FNPT", "1 MNPT", "3/4 MNPT", *words)
        self.assertEqual((done.returncode, done.stdout), (2, ""))
        return done.stderr

    def test_options_of_a_single_run_are_bad_input(self):
        for words in (("--first-end", "fixed"), ("--last-end", "loose"), ("--flow", "5 gpm"), ("--most-parts", "4")):
            self.assertIn(f"{words[0]}: error: is for a chain between two ports, not for a branched assembly",
                          self.refused(*words))

    def test_length_and_loss_orders_are_bad_input(self):
        for order in ("length", "loss"):
            self.assertIn("allowed: line, parts, price, bin", self.refused("--order", order))

    def test_more_than_eight_targets_are_bad_input(self):
        self.assertEqual(run("1 FNPT", *["1 MNPT"] * 9).returncode, 2)

    def test_no_assembly_is_status_1_with_its_reason(self):
        done = run("1 FNPT", "1 MNPT", "2 FNPT", "--rating", "3000 psi", "--json")
        self.assertEqual(done.returncode, 1)
        answer = json.loads(done.stdout)
        self.assertEqual(answer["assemblies"], [])
        self.assertIn("target 2 (2 FNPT) cannot be reached from the base (1 FNPT)", answer["why_none"]["reason"])
        self.assertEqual(answer["why_none"]["targets"], [1])
        self.assertEqual(answer["why_none"]["mends"], ["accept a rating below 3000 psi"])


if __name__ == "__main__":
    unittest.main(argv=sys.argv[:1])
