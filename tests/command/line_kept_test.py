"""Wherever networkx finds a run that keeps the line's size and kind, so does the answer of the default order.

Pairs of stocked pipe-thread ports, half of them of one size, held and free, with and without a valve, a union, a check
valve. An open end, what is met so far, whether the run is closed and its bushings are a node; a stocked part that goes
onto it by pipe threads no smaller than the line is an arc. It shares no code with the program.

Run with the program, and the number of pairs."""
import functools
import itertools
import pathlib
import random
import sys
import unittest

import networkx

sys.path.insert(0, str(pathlib.Path(__file__).parent))
from asked_program import AskedProgram  # noqa: E402

PROGRAM, PAIRS = AskedProgram(sys.argv[1]), int(sys.argv[2])
CATALOG = PROGRAM.ask("catalog")
NEEDS = ("ball valve", "union", "check valve")
IDS = {need: PROGRAM.ids_of(need) for need in NEEDS}
OTHER = {"male": "female", "female": "male"}


@functools.cache
def inches(size):
    whole, _, part = size.partition("-") if "-" in size else ("0", "", size)
    if "/" not in part:
        return float(whole) + float(part)
    above, below = part.split("/")
    return float(whole) + float(above) / float(below)


def ways():
    """Each way through a stocked part by two pipe threads: sizes and ends, and what it does for the run."""
    found = set()
    for part in CATALOG["parts"]:
        met = frozenset(need for need in NEEDS if part["id"] in IDS[need])
        two = len(part["ports"]) == 2 and all(port["kind"] == "npt" for port in part["ports"])
        if not two or not part["stocked"] or (part["role"] != "connector" and not met):
            continue
        for enter, leave in ((0, 1),) if part["one_way"] else ((0, 1), (1, 0)):
            a, b = part["ports"][enter], part["ports"][leave]
            found.add(((a["size"], a["end"]), (b["size"], b["end"]), part["closing"], "bushing" in part["family"],
                       met, part["role"] != "connector"))
    return found


WAYS = ways()
PORTS = sorted({port for way in WAYS for port in way[:2]})


@functools.cache
def graph(line, needs):
    """Nodes: open end, needs met, closed, bushings; all that keeps the line's size."""
    made = networkx.DiGraph()
    subsets = [frozenset(some) for count in range(len(needs) + 1) for some in itertools.combinations(needs, count)]
    kept = [way for way in WAYS if min(inches(way[0][0]), inches(way[1][0])) >= line]
    for enter, leave, closes, bushing, met, only_asked in kept:
        open_end = (enter[0], OTHER[enter[1]])
        for before, closed, bushings in itertools.product(subsets, (False, True), (0, 1)):
            after = before | (met & set(needs))
            if (only_asked and after == before) or bushings + bushing > 1:
                continue
            made.add_edge((open_end, before, closed, bushings), (leave, after, closed or closes, bushings + bushing))
    return made


def can_keep(first, last, held, needs):
    there = graph(min(inches(first[0]), inches(last[0])), needs)
    start = (first, frozenset(), not held, 0)
    if start not in there:
        return False
    wanted = {((last[0], OTHER[last[1]]), frozenset(needs), True, bushings) for bushings in (0, 1)}
    return not wanted.isdisjoint(networkx.descendants(there, start))


class LineKept(unittest.TestCase):
    def test_it_is_kept_wherever_it_can_be(self):
        dice = random.Random(1)
        can, cannot = 0, 0
        for number in range(PAIRS):
            first, last = dice.choice(PORTS), dice.choice(PORTS)
            if number % 2:
                last = (first[0], last[1])
            held = dice.random() < 0.5
            needs = tuple(need for need in NEEDS if dice.random() < 0.4)
            words = [word for need in needs for word in ("--need", need)]
            spelled = [f"{size} npt {end}" for size, end in (first, last)]
            if not can_keep(first, last, held, needs):
                cannot += 1
                continue
            can += 1
            with self.subTest(ports=spelled, held=held, needs=needs):
                chains = PROGRAM.ask("chain", *spelled, *words, *(("--held",) if held else ()))["chains"]
                self.assertTrue(chains, "networkx has a run, the program has none")
                line = min(inches(first[0]), inches(last[0]))
                passed = [part[side] for part in chains[0]["parts"] for side in ("enter", "leave")]
                for port in passed:
                    size, kind, _ = port.split(" ")
                    self.assertEqual(kind, "npt", passed)
                    self.assertGreaterEqual(inches(size), line, passed)
        print(f"{can} pairs whose line can be kept, all kept; {cannot} whose cannot", file=sys.stderr)
        self.assertGreater(can, PAIRS // 4)


if __name__ == "__main__":
    unittest.main(argv=sys.argv[:1])
