"""Shortest chains on the shipped catalog by networkx, against the program's: 1,000 random port pairs.

An open end is a node; a stocked two-ended connector that goes onto it is an arc to the end that it is left by.
"""

import random
import subprocess
import sys

import networkx


def read(dump):
    types, mates, parts = [], {}, []
    for line in dump.splitlines():
        word, *rest = line.split()
        if word == "type":
            types.append(int(rest[0]))
        elif word == "mate":
            mates.setdefault(int(rest[0]), []).append(int(rest[1]))
        elif word == "part":
            connector, stocked, one_way = (field == "1" for field in rest[2:5])
            parts.append((connector, stocked, one_way, [int(port) for port in rest[5:]]))
    return types, mates, parts


def graph_of(types, mates, parts):
    graph = networkx.DiGraph()
    graph.add_nodes_from(types)
    for connector, stocked, one_way, ports in parts:
        if not (connector and stocked and len(ports) == 2):
            continue
        ways = [(ports[0], ports[1])] if one_way else [(ports[0], ports[1]), (ports[1], ports[0])]
        for enter, leave in ways:
            graph.add_edges_from((open_end, leave) for open_end in mates.get(enter, []))
    return graph


def parts_between(graph, mates, start, goal):
    """Fewest parts from an end to another: the chain's last open end must go onto the goal."""
    lengths = []
    for last in mates.get(goal, []):
        try:
            lengths.append(networkx.shortest_path_length(graph, start, last))
        except networkx.NetworkXNoPath:
            pass
    return str(min(lengths)) if lengths else "none"


def main(probe):
    dump = subprocess.run([probe, "dump"], check=True, capture_output=True, text=True).stdout
    types, mates, parts = read(dump)
    graph = graph_of(types, mates, parts)
    dice = random.Random(20)
    pairs = [(dice.choice(types), dice.choice(types)) for _ in range(1500)]
    asked = "".join(f"{a} {b}\n" for a, b in pairs)
    answers = subprocess.run([probe, "answer"], input=asked, check=True, capture_output=True, text=True).stdout
    wrong, joined = 0, 0
    for line, (start, goal) in zip(answers.splitlines(), pairs, strict=True):
        expected = parts_between(graph, mates, start, goal)
        joined += expected != "none"
        if line.split() != [str(start), str(goal), expected]:
            print(f"{line}, but networkx finds {expected}")
            wrong += 1
    print(f"{len(parts)} parts, {graph.number_of_nodes()} open ends, {graph.number_of_edges()} arcs; "
          f"{joined} of {len(pairs)} pairs joined, {wrong} wrong")
    return 1 if wrong or joined < 100 else 0


if __name__ == "__main__":
    sys.exit(main(sys.argv[1]))
