"""Questions to the verbs that need no job and no ports to join: identify, riser, catalog, check, new, help."""
from chain_questions import output, stock
from dice import drawn, listed
from shop import SIZES

VERBS = ("plan", "chain", "riser", "transfer", "walls", "list", "catalog", "check", "identify", "new")
MARKS = ("NPT", "G 3/4", "Rc", "R 1/2", "GHT", "NH", "BSP", "NPSM", "FIP", "Rp 1", "M12", "xyz")
WORDS = (
    "", "1 x 3/4 hex bushing", "hex bushing", "bell reducer", "union brass", "ball valve", "3/4", "1 FNPT", "stainless", "1/2 x 4 nipple",
    "cross", "copper tube", "PVC", "cam coupler B", "tee", "gauge", "relief valve set 2 psi", "5 psi gauge", "hose by the foot", "flange",
    "dielectric union", "1-1/4 coupling", "unoin", "7 union", "cheese", "1 x 9 hex bushing", "galv nipple", "threaded pipe", "wye", "NPT",
    "0 to 15 psi air regulator", "1/16 in hole restrictor", "G 1/2 female", "barb", "PEX", "flare", "hose bibb", "bulkhead fitting", "swivel")


def identify_words(dice, _):
    words, end = ["identify"], dice.choice(("male", "female"))
    across = dice.choice((0.405, 0.54, 0.675, 0.84, 1.05, 1.315, 1.66, 1.9, 2.375, 1.0625, 0.75, 0.8125, 1.042, dice.uniform(0.3, 3)))
    if dice.maybe(0.75):
        size = f"{across * dice.uniform(0.98, 1.02):.3f} in" if dice.maybe(0.7) else f"{across * 25.4:.1f} mm"
        words += [dice.choice(("--od", "--round") if end == "male" else ("--id",)), size]
        words += ["--tool", dice.choice(("tape", "rule", "caliper"))] if dice.maybe(0.4) else []
    else:
        words += ["--end", end]
    if dice.maybe(0.65):
        pitch = dice.choice((8, 11, 11.5, 14, 14, 18, 19, 27, 16, 12))
        words += ["--tpi", f"{pitch}"] if dice.maybe(0.7) else ["--threads", f"{pitch // 2}", "--over", "1/2 in"]
    for chance, option, values in (
            (0.4, "--taper", ("yes", "no")), (0.15, "--washer", ("yes", "no")), (0.15, "--swivel", ("yes", "no")),
            (0.15, "--seat", ("none", "37", "45", "cone")), (0.15, "--flank", ("55", "60")), (0.15, "--marks", MARKS),
            (0.15, "--made", ("inch", "metric")), (0.12, "--material", ("brass", "black iron", "PVC", "cheese"))):
        if dice.maybe(chance):
            words += [option, dice.choice(values)]
    if dice.maybe(0.12):
        words += ["--turns", dice.choice(("1", "2.5", "4", "7")), "--into",
                  f"{dice.choice(SIZES)} {'FNPT' if end == 'male' else 'MNPT'}"]
    return words + (["--plain"] if dice.maybe(0.06) else []) + output(dice)


def wrong_identify():
    for words in ((), ("--od", "1 in", "--id", "1 in"), ("--tpi", "14"), ("--od", "9 ft"), ("--od", "1"), ("--end", "both"),
                  ("--od", "1 in", "--tpi", "999"), ("--threads", "7"), ("--over", "1 in"), ("--plain", "--tpi", "14", "--end", "male"),
                  ("--turns", "3"), ("--into", "1/2 barb", "--turns", "2"), ("--seat", "38", "--end", "male"), ("--marks", "??"),
                  ("--tpi", "14", "--threads", "7", "--over", "1/2 in", "--end", "male"), ("--od", "0.84 in", "--tool", "eye")):
        yield "identify", *words


def riser_words(dice, _):
    words = ["riser", "--height", f"{dice.randint(6, 30)} in", "--length", f"{dice.randint(12, 60)} in", "--width", f"{dice.randint(10, 30)} in"]
    for chance, option, values in (
            (0.7, "--bung", [f"{size} FNPT" for size in SIZES[2:]] + ["1 MNPT", "3/4 FGHT"]), (0.5, "--projects", ("0 in", "1/2 in", "1 in")),
            (0.4, "--bung-kind", ("full coupling", "half coupling", "welded riser", "double-tapped bushing")),
            (0.2, "--bung-length", ("1 in", "2-3/8 in")), (0.25, "--pipe", ("1/2", "3/4", "1", "1-1/4")),
            (0.25, "--material", ("brass", "galvanized", "stainless", "copper", "PVC")), (0.6, "--clearance", ("1/16 in", "1/2 in", "1 in", "4 in")),
            (0.2, "--obstacle", ("1 in", "2 in", "40 in")), (0.3, "--headroom", ("2 in", "12 in", "40 in"))):
        if dice.maybe(chance):
            words += [option, dice.choice(values)]
    return words + (["--lid-closed"] if dice.maybe(0.2) else []) + [word for word in stock(dice, 0.2) if word != "--from-bin"] + output(dice)


def wrong_riser():
    box = ("riser", "--height", "14 in", "--length", "44 in", "--width", "22 in")
    yield ("riser",)
    yield "riser", "--height", "14 in"
    yield "riser", "examples/bevel-bench.yaml", "--height", "14 in"
    for words in (("--bung", "1 FNTP"), ("--bung-kind", "weldolet"), ("--pipe", "9/7"), ("--material", "cheese"), ("--clearance", "-1 in"),
                  ("--clearance", "1"), ("--projects", "90 in"), ("--headroom", "tall")):
        yield *box, *words
    yield "riser", "--height", "0 in", "--length", "-1 in", "--width", "wide"


def catalog_lines():
    for words in WORDS:
        yield "catalog", *words.split()
        if words:  # the whole catalog as JSON makes up most of a dump
            yield "catalog", *words.split(), "--json"
    for words in ("hex bushing", "ball valve", "threaded pipe", "5 psi gauge"):
        yield "catalog", *words.split(), "--units", "metric"
    yield "catalog", "manifold", "--catalog", "own/own-0.yaml"


def other_lines(catalog_files):
    for file in catalog_files:
        yield "check", f"catalog/{file}"
    yield "new", "jobs/new.yaml"
    yield "new", "own/empty.yaml"
    yield "new", "nowhere/new.yaml"
    yield ()
    for flag in ("--help", "-h", "--version", "--frobnicate", "plna", "chian", "plan --units", "walls", "list a b", "--json"):
        yield tuple(flag.split())
    for verb in VERBS:
        yield verb, "--help"


def questions(catalog_files):
    return (drawn("identify", 220, identify_words) + listed("wrong-identify", wrong_identify()) + drawn("riser", 130, riser_words) +
            listed("wrong-riser", wrong_riser()) + listed("catalog", catalog_lines()) + listed("other", other_lines(catalog_files)))
