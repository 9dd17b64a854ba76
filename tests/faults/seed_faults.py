"""Shows what the tests would not see: seeds faults into a copy of the tree, one at a time, builds and runs the tests that
belong to the place, and says which fault none of them caught.

    python3 tests/faults/seed_faults.py hydraulics transfer --count 40 --seed 1     # forty in each of two rooms
    python3 tests/faults/seed_faults.py hydraulics --list                           # the faults, nothing built

The same seed seeds the same faults. The copy and its build stand in --work (build-faults/), so that the next run need not
build again; the tree itself is only read. Status 1 when a fault survived.
"""
import argparse
import pathlib
import random
import re
import shutil
import subprocess
import sys

TREE = pathlib.Path(__file__).resolve().parents[2]

# What sees the answers of chains and of plans whole: asked where the tests of the room itself saw nothing.
CHAINS = [("unit_cli", "*"), ("unit_plan", "*"), ("chain_properties", "*")]
PLANS = [("unit_plan", "*"), ("unit_report", "*"), ("unit_cli", "*"), ("property_plan", "*")]

# Room of core: its tests, each with the tests within that are asked, quick ones first.
ROOMS = {
    "quantity": [("unit_quantity", "*"), ("published_quantity", "*"), ("property_quantity", "*")],
    "hydraulics": [("unit_hydraulics", "*"), ("published_hydraulics", "*"), ("property_hydraulics", "*")],
    "reservoir": [("unit_reservoir", "*"), ("published_reservoir", "*"), ("property_reservoir", "*")],
    "transfer": [("unit_transfer", "*"), ("published_transfer", "*"), ("property_transfer", "*")],
    "plan/judge": [("unit_plan", "*Judged*:*Limits*:*Verdict*:*ReliefPlaces*")] + PLANS,
    "plan/settle": [("unit_plan", "*Assumption*:*Settled*")] + PLANS,
    "plan/stage": PLANS,
    "plan/advice": PLANS,
    "plan/job": PLANS,
    "catalog/identify": [("published_catalog", "*Identify*:*EverySize*:Thread*:Next*:HandT*:PlainEnds*")],
    "chain/bin": [("unit_chain", "*"), ("chain_properties", "OneBin*:LeastSpares*")] + CHAINS,
    "chain/build": [("unit_chain", "*"), ("published_chain", "*"), ("chain_properties", "BestChain.*:MakesTheSpan*")] + CHAINS,
    "chain/graph": [("unit_chain", "*"), ("chain_properties", "BestChain.*:TakenRuns.*")] + CHAINS,
    "chain/part": [("unit_chain", "*"), ("published_chain", "*"), ("chain_properties", "BestChain.*:MakesTheSpan*")] + CHAINS,
    "chain/refusal": [("unit_chain", "*"), ("chain_properties", "Conflicts.*")] + CHAINS,
    "chain/rules": [("unit_chain", "*"), ("chain_properties", "BestChain.*:Conflicts.*:BestAssembly.*")] + CHAINS,
    "chain/search": [("unit_chain", "*"), ("published_chain", "*"), ("chain_properties", "BestChain.*:TakenRuns.*:Needs*")] + CHAINS,
    "chain/span": [("unit_chain", "*"), ("chain_properties", "MakesTheSpan*")] + CHAINS,
    "chain/tree": [("unit_chain", "*"), ("chain_properties", "BestAssembly.*")] + CHAINS,
}
MOST_SECONDS = 180  # of one test: a fault may run for ever

NUMBER = re.compile(r"(?<![\w.])(\d+\.\d+(?:e[-+]?\d+)?)(?![\w.])")
# What is turned into what: the pattern, the replacement.
TURNS = [
    (re.compile(r" < (?!<)"), " <= "), (re.compile(r" <= "), " < "), (re.compile(r" > "), " >= "), (re.compile(r" >= "), " > "),
    (re.compile(r" == "), " != "), (re.compile(r" != "), " == "), (re.compile(r" \+ "), " - "), (re.compile(r" - "), " + "),
    (re.compile(r" \* (?=[\w(])"), " / "), (re.compile(r" / "), " * "), (re.compile(r" && "), " || "), (re.compile(r" \|\| "), " && "),
    (re.compile(r"std::max\("), "std::min("), (re.compile(r"std::min\("), "std::max("),
    (re.compile(r"\btrue\b"), "false"), (re.compile(r"\bfalse\b"), "true"),
]
TWO_ARGUMENTS = re.compile(r"\b(\w+\()(\w[\w.]*), (\w[\w.]*)(?=[,)])")
STATEMENT = re.compile(r"^\s+(?:[\w.>()\[\]-]+ [-+*/]?= |\w[\w.>-]*\([^{}]*\);$)[^{}]*;?$")
NOT_CODE = re.compile(r"^\s*(//|#|\*|static_assert|assert|using |namespace |template|case |return;|struct |class |enum )")


def without_texts(line):
    """The line with what stands in quotes or behind // made blank, of the same length."""
    line = re.sub(r'"(?:[^"\\]|\\.)*"', lambda text: '"' + " " * (len(text[0]) - 2) + '"', line)
    return re.sub(r"//.*", lambda text: " " * len(text[0]), line)


def faults_of_line(line):
    code = without_texts(line)
    if NOT_CODE.match(code) or not code.strip():
        return
    for pattern, instead in TURNS:
        for found in pattern.finditer(code):
            yield line[:found.start()] + instead + line[found.end():]
    for found in NUMBER.finditer(code):
        if float(found[1]) != 0.0:
            yield line[:found.start()] + repr(float(found[1]) * 1.05) + line[found.end():]
    for found in TWO_ARGUMENTS.finditer(code):
        if found[2] != found[3]:
            yield line[:found.start()] + f"{found[1]}{found[3]}, {found[2]}" + line[found.end():]
    if STATEMENT.match(code.rstrip()) and code.rstrip().endswith(";"):
        yield line[:len(line) - len(line.lstrip())] + ";"


def faults_of(room):
    for path in sorted((TREE / "core" / room).glob("*.cpp")) + sorted((TREE / "core" / room).glob("*.h")):
        for number, line in enumerate(path.read_text(encoding="utf-8").split("\n")):
            for changed in faults_of_line(line):
                yield path.relative_to(TREE), number, line, changed


def copy_tree(work):
    """What is unchanged keeps its time, so that it is not built again."""
    for folder in ("core", "tests", "catalog", "examples"):
        wanted = {path.relative_to(TREE) for path in (TREE / folder).rglob("*") if path.is_file()}
        for path in wanted:
            there = work / path
            if not there.exists() or there.read_bytes() != (TREE / path).read_bytes():
                there.parent.mkdir(parents=True, exist_ok=True)
                shutil.copyfile(TREE / path, there)
        for old in [path for path in (work / folder).rglob("*") if path.is_file() and path.relative_to(work) not in wanted]:
            old.unlink()
    shutil.copyfile(TREE / "CMakeLists.txt", work / "CMakeLists.txt")


def build(work, targets):
    return subprocess.run(["cmake", "--build", work / "build", "--target", *targets], capture_output=True, text=True)


def caught_by(work, tests):
    for name, which in tests:
        command = [work / "build" / "tests" / name, f"--gtest_filter={which}", "--gtest_fail_fast", "--gtest_brief=1"]
        try:
            if subprocess.run(command, capture_output=True, timeout=MOST_SECONDS).returncode != 0:
                return name
        except subprocess.TimeoutExpired:
            return f"{name}, which ran for ever"
    return None


def try_room(work, room, faults, count):
    """@return caught, not built, survivors"""
    tests = ROOMS[room]
    targets = sorted({name for name, _ in tests})
    done = build(work, targets)
    if done.returncode != 0 or (red := caught_by(work, tests)):
        sys.exit(f"{room}: without a fault it does not pass: {done.stdout[-2000:] if done.returncode else red}")
    caught, not_built, survivors = 0, 0, []
    for path, number, line, changed in faults:
        if caught + len(survivors) == count:
            break
        file = work / path
        whole = file.read_text(encoding="utf-8")
        lines = whole.split("\n")
        lines[number] = changed
        file.write_text("\n".join(lines), encoding="utf-8")
        try:
            if build(work, targets).returncode != 0:
                not_built += 1
                continue
            test = caught_by(work, tests)
        finally:
            file.write_text(whole, encoding="utf-8")
        caught += test is not None
        if test is None:
            survivors.append((path, number, line, changed))
            print(f"survived  {path}:{number + 1}\n  - {line.strip()}\n  + {changed.strip()}", flush=True)
    return caught, not_built, survivors


def main():
    parser = argparse.ArgumentParser(description=__doc__, formatter_class=argparse.RawDescriptionHelpFormatter)
    parser.add_argument("rooms", nargs="*", metavar="ROOM", help="of " + ", ".join(ROOMS))
    parser.add_argument("--count", type=int, default=40, help="faults in each room")
    parser.add_argument("--seed", type=int, default=1)
    parser.add_argument("--work", type=pathlib.Path, default=TREE / "build-faults")
    parser.add_argument("--list", action="store_true", help="print the faults and stop")
    asked = parser.parse_args()
    rooms = asked.rooms or list(ROOMS)
    if unknown := [room for room in rooms if room not in ROOMS]:
        parser.error(f"no such room: {', '.join(unknown)}")
    chosen = {}
    for room in rooms:
        chosen[room] = list(faults_of(room))
        random.Random(f"{asked.seed} {room}").shuffle(chosen[room])
    if asked.list:
        for room in rooms:
            for path, number, line, changed in chosen[room][:asked.count]:
                print(f"{path}:{number + 1}\n  - {line.strip()}\n  + {changed.strip()}")
            print(f"{room}: {len(chosen[room])} to choose from")
        return 0
    work = asked.work.resolve()
    work.mkdir(parents=True, exist_ok=True)
    copy_tree(work)
    # A fault may make a warning: that is no matter here. The tests of plans take four times as long without -O1.
    subprocess.run(["cmake", "-S", work, "-B", work / "build", "-G", "Ninja", "-DCMAKE_BUILD_TYPE=None", "-DCMAKE_CXX_FLAGS=-O1",
                    "-DRISERUN_WINDOW=OFF", "-DRISERUN_WARNINGS_AS_ERRORS=OFF", "-DRISERUN_TESTS=ON"], check=True,
                   stdout=subprocess.DEVNULL)
    table = []
    for room in rooms:
        table.append((room, *try_room(work, room, chosen[room], asked.count)))
    print(f"\n{'room':<18}{'seeded':>8}{'caught':>8}{'survived':>10}{'not built':>11}")
    for room, caught, not_built, survivors in table:
        print(f"{room:<18}{caught + len(survivors):>8}{caught:>8}{len(survivors):>10}{not_built:>11}")
    return 1 if any(survivors for *_, survivors in table) else 0


if __name__ == "__main__":
    sys.exit(main())
