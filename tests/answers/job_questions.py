"""Questions that read a job: the examples as they are, examples with something changed, and made-up jobs."""
import json
import re

from dice import Dice, listed
from shop import BIN_COUNT, ORDERS, OWN_FILES, bin_name, own_name

VERBS = ("plan", "transfer", "walls", "riser", "list", "check")
CHANGED, MADE = 95, 75
NUMBER = re.compile(r"(?<![\w/-])(?:\d+-\d+/\d+|\d+/\d+|\d+(?:\.\d+)?)(?![\w/-])")
OTHER_WORDS = (
    ("ball valve", "union"), ("check valve", "ball valve"), ("hose", "union"), ("black iron", "copper"), ("brass", "galvanized"),
    ("FNPT", "MNPT"), ("FNPT", "FNTP"), ("1-1/4 FNPT", "3/4 MGHT"), ("lid", "side"), ("floor", "over rim"), ("fixed", "loose"),
    ("fixed", "stuck"), ("price", "loss"), ("yes", "no"), ("10 ga", "16 ga"), ("10 ga steel", "2 mm stainless"), ("steel", "aluminium"),
    (" in,", " mm,"), (" in}", " mm}"), (" psi", " in"), (" gal", " L"), ("inch", "metric"), ("water", "air"), ("full coupling", "half coupling"),
    ("half coupling", "double-tapped bushing"), ("3/4", "1/2"), ("stainless", "brass"), ("open", "welded"), ("count", "cuont"))
MORE_OF_A_CONNECTION = (
    "vacuum: yes", "hottest: 140 F", "hottest: 400 F", "special order: yes", "galvanic: avoid", "most parts: 2", "most bushings: 0",
    "room: 1-1/2 in", "rating: 150 psi", "smallest bore: 3/4 in", "order: length", "order: price", "gap: 20 in", "offset: 3 in",
    "hose length: 3 ft", "avoid: [brass]", "avoid: [just nipple, union]", "need: [union]", "in order: yes", "colour: red",
    "held: {from: loose}", "need: [gate valve, union, check valve]", "most parts: many", "rating: 3 in")
MORE_OF_A_JOB = (
    "altitude: 5000 ft", "water temperature: 120 degF", "water temperature: 5 degC", "liquid: diesel", "liquid: brine",
    "test pressure: 3 psi", "test pressure: 40 psi", "cutting: [aluminium, steel]", "vent: {bore: 1/4 in, count: 2}",
    "wishes: {fill time: 20 s}", "wishes: {cost cap: 10 usd, order: loss}", f"bin: ../{bin_name(0)}", f"bin: ../{bin_name(5)}",
    "prices: ../own/none.yaml", "measured:\n  - {part: \"1 union, black iron\", length: 2-1/4 in}", "units: metric", "color: red",
    "bin:\n  - {part: \"1 union, black iron\", count: 1}\n  - {part: \"1 close nipple, black iron\", count: 2}")


def split_comment(line):
    head, sign, tail = line.partition("#")
    return head, sign + tail


def other_number(dice, text):
    whole = sum((float(a) / float(b) if b else float(a)) for a, _, b in (w.partition("/") for w in text.split("-")))
    return f"{whole * dice.choice((0, 0.3, 0.5, 0.7, 0.8, 0.9, 0.9, 1.1, 1.1, 1.2, 1.5, 2, 40)):.4g}"


def change_number(dice, lines):
    row = dice.choice([i for i, line in enumerate(lines) if NUMBER.search(split_comment(line)[0])])
    head, tail = split_comment(lines[row])
    spot = dice.choice(list(NUMBER.finditer(head)))
    lines[row] = head[:spot.start()] + other_number(dice, spot.group()) + head[spot.end():] + tail


def change_word(dice, lines):
    spots = [(i, pair) for i, line in enumerate(lines) for pair in OTHER_WORDS if pair[0] in split_comment(line)[0]]
    row, (old, new) = dice.choice(spots)
    lines[row] = lines[row].replace(old, new, 1)


def drop_line(dice, lines):
    del lines[dice.choice([i for i, line in enumerate(lines) if split_comment(line)[0].strip()])]


def misspell(dice, lines):
    row = dice.choice([i for i, line in enumerate(lines) if re.match(r"\s*[a-z ]{4,}:", line)])
    spot = dice.randrange(len(lines[row]) - len(lines[row].lstrip()), lines[row].index(":"))
    lines[row] = lines[row][:spot] + lines[row][spot + 1:]


def add_to_connection(dice, lines):
    rows = [i for i, line in enumerate(lines) if line.startswith("    carries:")]
    if rows:
        lines.insert(dice.choice(rows) + 1, "    " + dice.choice(MORE_OF_A_CONNECTION))
    else:
        add_to_job(dice, lines)


def add_to_job(dice, lines):
    more = dice.choice(MORE_OF_A_JOB)
    key = more.partition(":")[0] + ":"
    # A key that stands there already is replaced, with what is under it; now and then it stands twice, which is a mistake.
    if dice.maybe(0.9):
        start = next((i for i, line in enumerate(lines) if line.startswith(key)), None)
        if start is not None:
            end = next((i for i in range(start + 1, len(lines)) if lines[i][:1].strip()), len(lines))
            del lines[start:end]
    lines += more.split("\n")


CHANGES = (change_number, change_number, change_number, change_word, change_word, drop_line, misspell, add_to_connection,
           add_to_connection, add_to_job)


def changed_job(dice, examples):
    lines = examples[dice.choice(sorted(examples))].rstrip("\n").split("\n")
    for _ in range(dice.choice((1, 1, 1, 2, 3))):
        dice.choice(CHANGES)(dice, lines)
    return "\n".join(lines) + "\n"


def inches(dice, low, high):
    return f"{dice.randrange(low * 8, high * 8 + 1) / 8:g} in"


def made_reservoir(dice):
    long, wide, high = sorted((dice.randint(20, 60), dice.randint(14, 36), dice.randint(9, 20)), reverse=True)
    bung = lambda sizes: {"port": f"{dice.choice(sizes)} FNPT", "bung": dice.choice(("full coupling", "half coupling"))}  # noqa: E731
    riser = {**bung(("3/4", "1", "1-1/4", "1-1/2")), "bung": "full coupling", "where": "lid", "projects": inches(dice, 0, 1)}
    reservoir = {
        "inside": {"length": f"{long} in", "width": f"{wide} in", "height": f"{high} in"},
        "sheet": dice.choice(("10 ga steel", "3/16 in steel", "1/4 in steel", "12 ga stainless", "4 mm aluminium", "14 ga galvanized")),
        "supports": dice.choice(({"baffles across": "2"}, {"baffles across": "3", "baffles along": "1"}, {"lid bays": "3 x 2"},
                                 {"widest bare panel": {"length": "14 in", "width": "9 in", "in": "lid"}},
                                 {"baffles across": "4", "floor carried": "yes", "solid share": "2 %"})),
        "ports": {"riser bung": riser, "air bung": bung(("1/2", "3/4", "1")), "gauge bung": "1/4 FNPT",
                  "relief bung": bung(("1/2", "3/4")), "drain bung": {**bung(("3/4", "1")), "where": "side"}}}
    for chance, key, value in ((0.3, "charge", inches(dice, 4, high)), (0.2, "under the riser", inches(dice, 0, 2)),
                               (0.4, "lid", dice.choice(("open", "welded"))), (0.1, "yield", "30 ksi")):
        if dice.maybe(chance):
            reservoir[key] = value
    if dice.maybe(0.3):
        riser["welded in"] = "no"
    return reservoir


def made_runs(dice):
    water = {"name": "water up", "from": "riser bung", "to": "inlet", "carries": "water", "held": {"from": "fixed", "to": "fixed"}}
    air = {"name": "air in", "from": "outlet", "to": "air bung", "carries": "air", "need": ["check valve"]}
    drain = {"name": "drain", "from": "drain bung", "ends in": dice.choice(("hose bibb", "3/4 ball valve", "plug", "gate valve")),
             "carries": "water"}
    gauge = {"name": "gauge", "from": "gauge bung", "ends in": "5 psi gauge", "special order": "yes", "carries": "air"}
    relief = {"name": "relief", "from": "relief bung", "ends in": "relief valve set 2 psi", "special order": "yes", "carries": "air"}
    runs = [water] + [run for run in (air, drain, gauge, relief) if dice.maybe(0.6)]
    for run in runs:
        for chance, key, values in (
                (0.25, "order", ORDERS), (0.3, "need", (["hose"], ["union"], ["ball valve", "union"], ["hose", "check valve"], ["union", "tee"])),
                (0.2, "avoid", (["brass"], ["bushing"], ["galvanized", "nylon"], ["union"])), (0.12, "gap", ("14 in", "500 mm", "30 in")),
                (0.1, "offset", ("1 in", "3 in")), (0.1, "rating", ("100 psi", "250 psi")), (0.1, "smallest bore", ("1/2 in", "3/4 in", "1 in")),
                (0.08, "room", ("1-1/2 in", "3 in")), (0.08, "most parts", ("2", "4")), (0.08, "galvanic", ("avoid",)),
                (0.06, "hottest", ("140 F",)), (0.05, "vacuum", ("yes",)), (0.2, "special order", ("yes", "no")), (0.06, "in order", ("yes",))):
            if dice.maybe(chance):
                run[key] = dice.choice(values)
    return runs


def made_manifold(dice):
    """The air line, the gauge, relief and exhaust on the one bung for air."""
    supply = {"to": "outlet", "need": dice.several(("check valve", "0 to 15 psi air regulator", "1/16 in hole restrictor"), 1, 3)}
    branches = [supply, {"name": "gauge", "ends in": "5 psi gauge", "special order": "yes"},
                {"name": "relief valve", "ends in": "relief valve set 2 psi", "special order": "yes"},
                {"name": "exhaust", "ends in": "1/2 brass ball valve", "smallest bore": dice.choice(("1/4 in", "1/2 in"))}]
    if dice.maybe(0.5):
        supply["in order"] = "yes"
    if dice.maybe(0.3):
        branches[1]["looks"] = dice.choice(("straight on", "to a side"))
    manifold = {"name": "manifold", "from": "air bung", "carries": "air", "branches": branches[:dice.choice((2, 3, 4, 4))]}
    if dice.maybe(0.3):
        manifold["order"] = dice.choice(("parts", "price", "bin", "loss"))
    return manifold


def made_job(shop, dice):
    job = {"name": "Made-up bench", "reservoir": made_reservoir(dice),
           "table": {"inside": {"length": inches(dice, 24, 60), "width": inches(dice, 18, 36)}, "depth": inches(dice, 1, 5),
                     "floor height": inches(dice, 24, 40),
                     "ports": {"inlet": {"port": f"{dice.choice(('3/4', '1', '1-1/4', '1-1/2'))} {dice.choice(('FNPT', 'FNPT', 'MNPT'))}",
                                         "where": dice.choice(("floor", "side", "over rim"))}}},
           "air": {"delivery": f"{dice.randint(1, 12)} scfm", "receiver": f"{dice.randint(2, 60)} gal",
                   "ports": {"outlet": dice.choice(("1/4 FNPT", "3/8 FNPT", "1/2 MNPT"))}}}
    runs = made_runs(dice)
    if dice.maybe(0.3):
        runs = [run for run in runs if "outlet" not in run.values()] + [made_manifold(dice)]
    job["connections"] = runs
    for chance, key, value in (
            (0.3, "units", dice.choice(("inch", "metric"))), (0.3, "riser", {"clearance": inches(dice, 1, 2), "headroom": "12 in"}),
            (0.2, "vent", {"bore": dice.choice(("1/4 in", "3/4 in"))}), (0.2, "altitude", "3000 ft"), (0.2, "water temperature", "80 degF"),
            (0.35, "bin", [{"part": part, "count": count} for part, count in shop.bin_items(dice)]),
            (0.15, "wishes", {"fill time": f"{dice.randint(1, 5)} min", "order": dice.choice(ORDERS)}),
            (0.1, "prices", [{"part": "1 union, black iron", "price": "2 usd"}]),
            (0.1, "measured", [{"part": "3/4 union, black iron", "length": "2-1/8 in"}]), (0.1, "test pressure", "2 psi")):
        if dice.maybe(chance):
            job[key] = value
    return written(job)


def written(job):
    """YAML, one line for each key of each section."""
    text = ""
    for key, value in job.items():
        if isinstance(value, dict):
            text += f"{key}:\n" + "".join(f"  {name}: {json.dumps(item)}\n" for name, item in value.items())
        elif isinstance(value, list):
            text += f"{key}:\n" + "".join(f"  - {json.dumps(item)}\n" for item in value)
        else:
            text += f"{key}: {value}\n"
    return text


def files(shop, examples):
    jobs = {f"jobs/changed-{i:03}.yaml": changed_job(Dice(f"changed-{i}"), examples) for i in range(CHANGED)}
    return jobs | {f"jobs/made-{i:03}.yaml": made_job(shop, Dice(f"made-{i}")) for i in range(MADE)}


def of_example(job):
    """Everything that can be asked of it; the spares of a whole job are slow, so once only."""
    for verb in VERBS:
        for extra in ((), ("--json",), ("--units", "metric"), ("--units", "inch", "--json")):
            yield verb, job, *extra
    yield "list", job, "--spares", "--json"
    for extra in (("--bin", bin_name(1)), ("--bin", bin_name(7), "--json"), ("--bin", own_name(2)), ("--catalog", own_name(0), "--json"),
                  ("--catalog", own_name(1))):
        yield "plan", job, *extra


def of_other_job(job):
    dice = Dice(job)
    yield "check", job
    yield "plan", job
    yield "plan", job, "--json", *(("--units", "metric") if dice.maybe(0.5) else ())
    yield dice.choice(VERBS[1:5]), job, "--units", dice.choice(("inch", "metric"))
    if dice.maybe(0.35):
        yield dice.choice(VERBS[1:5]), job, "--json", "--bin", bin_name(dice.randrange(BIN_COUNT))


def wrong_files():
    for file in ("jobs/none.yaml", "own", "own/empty.yaml", "own/broken.yaml", "own/list.yaml", "own/no-sections.yaml", bin_name(0)):
        for verb in VERBS:
            yield verb, file
    for file in (*OWN_FILES, "own/wrong-bin.yaml", "own/wrong-parts.yaml"):
        yield "check", file


def questions(example_names, job_names):
    """@param example_names  files of whole examples; @param job_names  files of changed and made-up jobs"""
    return (listed("example", (words for job in example_names for words in of_example(job))) +
            listed("job", (words for job in job_names for words in of_other_job(job))) + listed("wrong-file", wrong_files()))
