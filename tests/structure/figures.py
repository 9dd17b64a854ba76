"""The figures of the house: `figures.py [SOURCE_DIR] [--list]` prints them, and with --list what each one counts.

  room    a folder of core/ or gui/ that holds sources (core/chain/search)
  unit    a header and the source of the same name (core/chain/search/best_chain)
  arrow   one room includes another, or one unit another; up: against the order of include_order_test.py
  circle  rooms, or units, that reach each other by their includes

Needs networkx and universal-ctags (Debian: python3-networkx, universal-ctags).
"""

import argparse
import collections
import pathlib
import re
import subprocess
import sys

import networkx

import include_order_test as order

LONG_FILE, LONG_FUNCTION, LONG_CLASS = 400, 60, 200


def sources(root):
    return [path for top in ("core", "gui") for path in sorted((root / top).rglob("*")) if path.suffix in (".h", ".cpp")]


def graphs(root):
    """The includes between rooms, and those between units."""
    rooms = networkx.DiGraph()
    for path in sources(root):
        here = path.relative_to(root)
        rooms.add_node(str(here.parent))
        for target in order.includes_of(root, path):
            if target.parent != here.parent:
                rooms.add_edge(str(here.parent), str(target.parent))
    return rooms, networkx.DiGraph(order.units_of(root))


def circles(graph):
    return [sorted(circle) for circle in networkx.strongly_connected_components(graph) if len(circle) > 1]


def long_definitions(root):
    """Functions and classes longer than they should be, as `lines place name`, by what universal-ctags finds."""
    found = {"function": [], "class": []}
    words = ["ctags", "-x", "--languages=C++", "--kinds-C++=fcs", "--fields=+ne", "--_xformat=%K\t%N\t%n\t%{end}\t%F"]
    tags = subprocess.run([*words, *map(str, sources(root))], capture_output=True, text=True, check=True).stdout
    for kind, name, begin, end, file in (line.split("\t") for line in tags.splitlines()):
        lines = int(end) - int(begin) + 1 if end.isdigit() else 0
        place = f"{lines} {pathlib.Path(file).relative_to(root)}:{begin} {name}"
        if kind == "function" and lines > LONG_FUNCTION:
            found["function"].append(place)
        if kind in ("class", "struct") and lines > LONG_CLASS and file.endswith(".cpp"):
            found["class"].append(place)
    return found


def lines_of(root):
    """How many lines of the sources there are, not counting empty ones, how many are comments, and the long files."""
    counts, long_files = collections.Counter(), []
    for path in sources(root):
        lines = [line.strip() for line in path.read_text(encoding="utf-8").splitlines()]
        counts["all"] += sum(bool(line) for line in lines)
        counts["comment"] += sum(line.startswith("//") for line in lines)
        if len(lines) > LONG_FILE:
            long_files.append(f"{len(lines)} {path.relative_to(root)}")
    return counts, long_files


def main():
    parser = argparse.ArgumentParser(description=__doc__.splitlines()[0])
    parser.add_argument("source", nargs="?", default=pathlib.Path(__file__).parents[2], type=pathlib.Path)
    parser.add_argument("--list", action="store_true", help="also what each figure counts")
    words = parser.parse_args()
    root = words.source.resolve()
    rooms, units = graphs(root)
    up = [problem for problem in order.problems_of(root) if "may not include" in problem]
    counts, long_files = lines_of(root)
    long = long_definitions(root)
    rows = [
        ("rooms", rooms.number_of_nodes(), sorted(rooms)),
        ("arrows between rooms", rooms.number_of_edges(), [f"{a} -> {b}" for a, b in sorted(rooms.edges)]),
        ("includes up the order", len(up), up),
        ("circles of rooms", len(circles(rooms)), map(", ".join, circles(rooms))),
        ("units", units.number_of_nodes(), []),
        ("arrows between units", units.number_of_edges(), []),
        ("circles of units", len(circles(units)), map(", ".join, circles(units))),
        (f"files over {LONG_FILE} lines", len(long_files), sorted(long_files)),
        (f"functions over {LONG_FUNCTION} lines", len(long["function"]), sorted(long["function"])),
        (f"classes in a .cpp over {LONG_CLASS} lines", len(long["class"]), sorted(long["class"])),
        ("lines that are not empty", counts["all"], []),
        ("of them comments", f"{100 * counts['comment'] / counts['all']:.1f} %", []),
    ]
    for name, figure, members in rows:
        print(f"{name:36} {figure:>8}")
        for member in members if words.list else []:
            print(f"    {member}")
    return 0


if __name__ == "__main__":
    sys.exit(main())
