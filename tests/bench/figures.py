"""Runs what the build folder's bench/ holds and prints one table of figures: ours beside other people's searches.

    figures.py BUILD_FOLDER [PAIRS]

All searches get the same random port pairs, one pair after the other in turn, so that a machine that is busy slows all
alike; processor time, not the clock on the wall. A figure is a median.
"""

import json
import pathlib
import random
import resource
import statistics
import subprocess
import sys
import time

import networkx

SOURCE = pathlib.Path(__file__).resolve().parents[2]
ONE_PART = 1_000_000_000


def processor_time(command, times=7):
    """Seconds of processor time of a whole process, cold start to end: median."""
    def once():
        before = resource_use()
        subprocess.run(command, stdout=subprocess.DEVNULL, stderr=subprocess.DEVNULL, check=False)
        return resource_use() - before
    return statistics.median(once() for _ in range(times))


def resource_use():
    usage = resource.getrusage(resource.RUSAGE_CHILDREN)
    return usage.ru_utime + usage.ru_stime


class Networkx:
    """The part graph as it is, and folded beforehand: of parallel arcs the cheapest only."""

    def __init__(self, text):
        first, *lines = text.splitlines()
        self.types = int(first) // 4
        self.graph = networkx.MultiDiGraph()
        self.folded = networkx.DiGraph()
        for line in lines:
            start, end, weight = map(int, line.split())
            self.graph.add_edge(start, end, weight=weight)
            known = self.folded.get_edge_data(start, end)
            if known is None or weight < known["weight"]:
                self.folded.add_edge(start, end, weight=weight)
        for graph in (self.graph, self.folded):
            graph.add_nodes_from(range(int(first)))

    def timed(self, graph, start, goal, weight=None):
        """The distance (-1: none) and the nanoseconds that one shortest path took."""
        begun = time.thread_time_ns()
        try:
            path = networkx.shortest_path(graph, 4 * start, 4 * goal + 1, weight=weight)
        except networkx.NetworkXNoPath:
            path = None
        took = time.thread_time_ns() - begun
        if path is None:
            return -1, took
        return sum(self.folded[a][b]["weight"] for a, b in zip(path, path[1:])), took


def shipped(bench, pair_count):
    """A row for each pair: nanoseconds by what was asked, whether a chain joins it, and whether all agree."""
    graph = Networkx(subprocess.run([bench / "shipped_bench", "graph"], check=True, capture_output=True,
                                    text=True).stdout)
    types = graph.types
    dice = random.Random(20)
    goals = [goal for _ in range(-(-pair_count // types)) for goal in dice.sample(range(types), types)]
    rows = []
    while len(rows) < pair_count:
        asked = goals[len(rows):min(len(rows) + types, pair_count)]
        # A new process for each round of goals: each goal is new to it.
        with subprocess.Popen([bench / "shipped_bench", "ask"], stdin=subprocess.PIPE, stdout=subprocess.PIPE,
                              text=True, bufsize=1) as probe:
            for goal in asked:
                start = dice.randrange(types)
                probe.stdin.write(f"{start} {goal}\n")
                probe.stdin.flush()
                row = json.loads(probe.stdout.readline())
                by_weight, row["networkx"] = graph.timed(graph.graph, start, goal, "weight")
                folded, row["networkx_folded"] = graph.timed(graph.folded, start, goal, "weight")
                by_hops, row["networkx_hops"] = graph.timed(graph.graph, start, goal)
                row["agree"] = (row["agree"] and by_weight == folded == row["distance"]
                                and by_hops // ONE_PART == row["distance"] // ONE_PART)
                rows.append(row)
            probe.stdin.close()
    return graph, rows


class Table:
    def __init__(self):
        self.missed = 0

    def head(self, text):
        print(f"\n{text}")

    def block(self, what, ours, others):
        """Seconds; others: name, seconds, and how many times longer than ours it must take at least, or None."""
        print(f"  {what}: {spoken(ours)}")
        for name, seconds, target in others:
            verdict = ""
            if target is not None:
                met = seconds >= target * ours
                self.missed += not met
                verdict = f"   target {target}x: {'met' if met else 'MISSED'}"
            print(f"    {name:<56}{spoken(seconds):>10}{seconds / ours:>9.3g}x{verdict}")


def spoken(seconds):
    for unit, size in (("s", 1.0), ("ms", 1e-3), ("us", 1e-6)):
        if seconds >= size:
            return f"{seconds / size:.3g} {unit}"
    return f"{seconds * 1e9:.3g} ns"


def median(rows, key):
    return statistics.median(row[key] for row in rows) * 1e-9


OTHERS = {"networkx": ("networkx, Dijkstra", 500),
          "networkx_folded": ("networkx, Dijkstra, parallel parts folded beforehand", None),
          "networkx_hops": ("networkx, fewest parts only, from both ends", None),
          "igraph": ("igraph's C library, Dijkstra", 10),
          "boost": ("Boost, dijkstra_shortest_paths", 5),
          "boost_stopped": ("Boost, stopped at the goal", None)}


def show_shipped(table, graph, rows):
    joined = [row for row in rows if row["distance"] >= 0]
    agree = sum(row["agree"] for row in rows)
    table.head(f"Shipped catalog: {graph.graph.number_of_edges()} arcs, {len(rows)} random port pairs, {len(joined)} of "
               f"them joined by a chain; all searches agree on {agree} of {len(rows)}. Medians, joined pairs:")
    for ours, name in {"best": "best chain", "best_new_goal": "best chain, a goal not asked for before",
                       "find": "best chain with its build order"}.items():
        table.block(name, median(joined, ours),
                    [(other, median(joined, key), target) for key, (other, target) in OTHERS.items()])
    shown = statistics.median(row["rows"] for row in joined)
    for ours, name in {"all": f"all alternatives, {shown:g} rows with build orders",
                       "all_new_goal": "the same, a goal not asked for before"}.items():
        table.block(name, median(joined, ours),
                    [(OTHERS[key][0], median(joined, key), 1 if key == "networkx" else None)
                     for key in ("networkx", "networkx_folded", "networkx_hops")])
    table.head("Medians over all pairs, joined or not:")
    for ours, name in {"best": "best chain or none",
                       "best_new_goal": "best chain or none, a goal not asked for before"}.items():
        table.block(name, median(rows, ours),
                    [(other, median(rows, key), target) for key, (other, target) in OTHERS.items() if target])


def show_made(table, bench):
    table.head("Invented catalogs: the same ends, more and more parts; then the same parts, more and more ends")
    print(f"  {'parts':>9}{'pairs':>8}{'make':>9}{'fold':>9}{'all fold':>9}{'B/part':>8}{'+finder':>8}{'best':>9}"
          f"{'new goal':>9}{'all':>9}{'igraph':>9}{'ratio':>8}{'ratio new':>10}{'agree':>8}")
    for parts, kinds, sizes in ((10_000, 12, 20), (100_000, 12, 20), (1_000_000, 12, 20), (100_000, 4, 10),
                                (100_000, 8, 15), (100_000, 24, 40)):
        out = subprocess.run([bench / "made_bench", str(parts), str(kinds), str(sizes), "50"], check=True,
                             capture_output=True, text=True).stdout
        made = json.loads(out)
        seconds = {key: spoken(made[key] * 1e-9)
                   for key in ("make_ns", "fold_ns", "fold_all_ns", "best", "best_new_goal", "all", "igraph")}
        print(f"  {made['parts']:>9}{made['port_pairs']:>8}{seconds['make_ns']:>9}{seconds['fold_ns']:>9}"
              f"{seconds['fold_all_ns']:>9}{made['catalog_bytes_per_part']:>8}{made['finder_bytes_per_part']:>8}"
              f"{seconds['best']:>9}{seconds['best_new_goal']:>9}{seconds['all']:>9}{seconds['igraph']:>9}"
              f"{made['igraph'] / made['best']:>7.0f}x{made['igraph'] / made['best_new_goal']:>9.3g}x"
              f"{made['agree']:>5}/{made['pairs']}")
        if parts == 1_000_000:
            table.missed += made["igraph"] < 50 * made["best"]


def show_loading(table, bench, build):
    table.head("Loading")
    for parts in (0, 10_000):
        loaded = json.loads(subprocess.run([bench / "load_bench", str(parts)], check=True, capture_output=True,
                                           text=True).stdout)
        each = loaded["load_ns"] / loaded["parts"]
        print(f"  {loaded['parts']} parts from YAML: {spoken(loaded['load_ns'] * 1e-9)}, {spoken(each * 1e-9)} a part")
    files = sorted(str(path) for path in (SOURCE / "catalog").glob("*.yaml"))
    jobs = sorted((SOURCE / "examples").glob("*.yaml"), key=lambda path: path.stat().st_size)
    parse = processor_time([bench / "parse_only", *files, str(jobs[-1])])
    for name, words in {"plan": ["plan", str(jobs[-1])], "chain": ["chain", "1 FNPT", "3/4 GHT male"]}.items():
        whole = processor_time([build / "riserun", *words])
        times = whole / parse
        table.missed += name == "plan" and times > 3
        print(f"  riserun {name}, a whole process: {spoken(whole)}; one that only parses the same files: "
              f"{spoken(parse)}; {times:.2g}x"
              + (f"  target 3x at most: {'met' if times <= 3 else 'MISSED'}" if name == "plan" else ""))


def main(build, pair_count=500):
    build = pathlib.Path(build).resolve()
    bench = build / "bench"
    cores = subprocess.run(["nproc"], capture_output=True, text=True, check=True).stdout.strip()
    load = pathlib.Path("/proc/loadavg").read_text().split()[0]
    print(f"{cores} cores, load {load} at the start; processor time throughout; networkx {networkx.__version__}")
    table = Table()
    graph, rows = shipped(bench, int(pair_count))
    show_shipped(table, graph, rows)
    show_made(table, bench)
    show_loading(table, bench, build)
    print(f"\n{table.missed} targets missed")
    return 0 if all(row["agree"] for row in rows) else 1


if __name__ == "__main__":
    sys.exit(main(*sys.argv[1:]))
