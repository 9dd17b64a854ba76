"""Branched assemblies on the command line: what is printed, what is in the JSON, what is refused."""
import json
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
            self.assertIn("allowed: parts, price, bin", self.refused("--order", order))

    def test_more_than_eight_targets_are_bad_input(self):
        self.assertEqual(run("1 FNPT", *["1 MNPT"] * 9).returncode, 2)

    def test_no_assembly_is_status_1_with_its_reason(self):
        done = run("1 FNPT", "1 MNPT", "3 FNPT", "--rating", "5000 psi", "--json")
        self.assertEqual(done.returncode, 1)
        answer = json.loads(done.stdout)
        self.assertEqual(answer["assemblies"], [])
        self.assertIn("target 2 (3 FNPT) cannot be reached from the base (1 FNPT)", answer["why_none"]["reason"])
        self.assertEqual(answer["why_none"]["targets"], [1])
        self.assertEqual(answer["why_none"]["mends"], ["accept a rating below 5000 psi"])


if __name__ == "__main__":
    unittest.main(argv=sys.argv[:1])
