"""One bin for the whole job, and the spares worth buying, as the built program prints them."""
import collections
import json
import pathlib
import subprocess
import sys
import tempfile
import unittest

PROGRAM, EXAMPLES = sys.argv[1], pathlib.Path(sys.argv[2])

BENCH = """reservoir:
  inside: {length: 40 in, width: 20 in, height: 14 in}
  sheet: 10 ga steel
  supports: {baffles across: 2}
  charge: 9 in
  ports:
    riser bung: {port: 1 FNPT, bung: full coupling, where: lid}
    left bung: {port: 1/2 FNPT, bung: half coupling, where: lid}
    right bung: {port: 1/2 FNPT, bung: half coupling, where: lid}
table:
  inside: {length: 44 in, width: 22 in}
  rim: 5 in
  floor height: 30 in
  depth: 4 in
air: {delivery: 3 scfm, receiver: 8 gal, regulator range: 15 psi, ports: {first: 1/2 FNPT, second: 1/2 FNPT}}
connections:
  - {name: left, from: first, to: left bung, carries: air, held: {from: loose, to: fixed}%s}
  - {name: right, from: second, to: right bung, carries: air, held: {from: loose, to: fixed}%s}
bin:
%s
wishes: {order: price}
"""


def run(*words):
    return subprocess.run([PROGRAM, *map(str, words)], capture_output=True, text=True)


def answer_to(job, verb, *words):
    with tempfile.TemporaryDirectory() as folder:
        file = pathlib.Path(folder) / "job.yaml"
        file.write_text(job)
        done = run(verb, file, *words, "--json")
    assert done.returncode in (0, 1), done.stderr
    return json.loads(done.stdout)


def taken(plan):
    count = collections.Counter()
    for connection in plan["connections"]:
        for part in connection["chains"][0]["parts"]:
            count[part["id"]] += part["from_bin"]
    return count


class OneBin(unittest.TestCase):
    def test_a_part_goes_to_the_connection_that_can_do_without_it_least(self):
        # The first could take the valve, too; the second needs one.
        bin_rows = "  - {part: 1/2 close nipple black iron, count: 1}\n  - {part: ball valve brass 1/2, count: 1}"
        plan = answer_to(BENCH % (", need: [1/2 nipple]", ", need: [ball valve brass 1/2]", bin_rows), "plan")
        valve = [part for part in plan["connections"][1]["chains"][0]["parts"] if "valve" in part["name"]]
        self.assertEqual([part["from_bin"] for part in valve], [True])
        self.assertLessEqual(max(taken(plan).values()), 1)

    def test_what_both_want_is_named_and_used_once(self):
        bin_rows = "  - {part: ball valve brass 1/2, count: 1}"
        plan = answer_to(BENCH % (", need: [ball valve]", ", need: [ball valve]", bin_rows), "plan")
        self.assertEqual(sum(taken(plan).values()), 1)
        self.assertTrue(any("More is wanted of these than the bin has" in note["text"] for note in plan["notes"]))


class PiecesOfHose(unittest.TestCase):
    BIN = """bin:
  - {part: 1 rubber hose, length: 18 in, count: 2}
  - {part: 1 rubber hose, length: 30 in}
"""

    def hose(self, span):
        with tempfile.TemporaryDirectory() as folder:
            file = pathlib.Path(folder) / "bin.yaml"
            file.write_text(self.BIN)
            done = run("chain", "1 FNPT", "1 FNPT", "--need", "hose", "--span", span, "--bin", file, "--order", "bin",
                       "--json")
        self.assertEqual(done.returncode, 0, done.stderr)
        [hose] = [part for part in json.loads(done.stdout)["chains"][0]["parts"] if part["id"].startswith("hose/")]
        return hose

    def test_the_shortest_run_takes_any_piece_and_a_longer_one_the_long_piece(self):
        self.assertTrue(self.hose("14 in")["from_bin"])
        long = self.hose("26 in")
        self.assertTrue(long["from_bin"])
        self.assertIn("a piece of 30 in", long["name"])

    def test_short_pieces_never_make_a_long_one(self):
        hose = self.hose("33 in")
        self.assertFalse(hose["from_bin"])
        self.assertIn("by the foot", hose["name"])
        self.assertEqual(hose["pieces"], 3)


class Spares(unittest.TestCase):
    def test_a_chain_names_its_least_spares_and_what_each_covers(self):
        done = run("chain", "1 FNPT", "3/4 MGHT", "--spares", "--json")
        self.assertEqual(done.returncode, 0, done.stderr)
        answer = json.loads(done.stdout)
        bought = {part["id"] for part in answer["chains"][0]["parts"] if not part["from_bin"]}
        self.assertEqual({out["missing"] for out in answer["stock_outs"]}, bought)
        self.assertLessEqual(sum(spare["qty"] for spare in answer["spares"]), len(bought))
        self.assertAlmostEqual(sum(spare["price_usd"] for spare in answer["spares"]), answer["spares_usd"])
        spares = {spare["id"]: spare for spare in answer["spares"]}
        for out in answer["stock_outs"]:
            for spare in out["spares"]:
                self.assertIn(out["missing"], spares[spare]["covers"])
            self.assertTrue(out["stand_in"])

    def test_the_text_says_what_to_buy_and_what_is_built_without_a_part(self):
        done = run("chain", "1 FNPT", "3/4 MGHT", "--spares")
        self.assertIn("Spares worth buying, about $", done.stdout)
        self.assertIn("covers ", done.stdout)
        self.assertIn("If one is missing", done.stdout)

    def test_the_list_of_a_job_has_one_set_for_all_its_connections(self):
        job = EXAMPLES / "bevel-bench.yaml"
        answer = json.loads(run("list", job, "--spares", "--json").stdout)
        self.assertLessEqual(sum(spare["qty"] for spare in answer["spares"]), len(answer["stock_outs"]))
        self.assertGreater(len({out["connection"] for out in answer["stock_outs"]}), 1)
        self.assertNotIn("spares", json.loads(run("list", job, "--json").stdout))
        self.assertIn("Spares worth buying", run("list", job, "--spares").stdout)

    def test_spares_are_for_two_ports(self):
        done = run("chain", "1 FNPT", "1/2 FNPT", "1/4 FNPT", "--spares")
        self.assertEqual(done.returncode, 2)
        self.assertIn("--spares", done.stderr)
        self.assertIn("is for a chain between two ports, not for a branched assembly", done.stderr)


if __name__ == "__main__":
    unittest.main(argv=sys.argv[:1])
