"""Questions to `riserun chain`: runs between two ports, runs that make a distance, and branched assemblies."""
from dice import drawn, listed
from shop import BIN_COUNT, ORDERS, OWN_COUNT, SIZES, bin_name, own_name

FREEDOMS = ("loose", "spinning", "sliding", "fixed")
BORES = ("1/4 in", "3/8 in", "1/2 in", "0.7 in", "3/4 in", "1 in", "1.3 in", "20 mm", "2 in")
RATINGS = ("15 psi", "60 psi", "120 psi", "150 psi", "7 bar", "250 psi", "300 psi", "600 psi", "2000 psi")
ROOMS = ("3/4 in", "1 in", "1.5 in", "2 in", "60 mm", "3 in", "6 in")
HEATS = ("70 F", "100 F", "140 F", "60 degC", "180 F", "212 F", "300 F")


def output(dice):
    """Text or JSON, inch or metric."""
    words = ["--json"] if dice.maybe(0.5) else []
    return words + (["--units", dice.choice(("metric", "metric", "inch"))] if dice.maybe(0.35) else [])


def limits(dice, busy):
    """Rules that hold for two ports as for more; the busier, the more of them."""
    words = []
    for chance, option, values in ((0.10, "--rating", RATINGS), (0.12, "--bore", BORES), (0.08, "--room", ROOMS),
                                   (0.06, "--hottest", HEATS), (0.10, "--galvanic", ("avoid", "avoid", "warn")),
                                   (0.10, "--most-bushings", ("0", "1", "2", "4"))):
        if dice.maybe(chance * busy):
            words += [option, dice.choice(values)]
    for chance, flag in ((0.14, "--air"), (0.05, "--vacuum"), (0.2, "--special-order")):
        if dice.maybe(chance * busy):
            words.append(flag)
    return words


def stock(dice, chance):
    """A bin or a file of own parts, or neither."""
    words = []
    if dice.maybe(chance):
        words += ["--bin", bin_name(dice.randrange(BIN_COUNT)) if dice.maybe(0.9) else own_name(2)]
        if dice.maybe(0.3):
            words.append("--from-bin")
    if dice.maybe(0.03):
        words += ["--catalog", own_name(dice.randrange(OWN_COUNT - 1))]
    return words


def avoided(shop, dice, busy):
    words = []
    while len(words) < 6 and dice.maybe(0.18 * busy):
        words += ["--avoid", shop.avoid(dice)]
    return words


def ends(dice):
    if dice.maybe(0.35):
        return ["--held"]
    words = ["--first-end", dice.choice(FREEDOMS)] if dice.maybe(0.2) else []
    return words + (["--last-end", dice.choice(FREEDOMS)] if dice.maybe(0.2) else [])


def needed(shop, dice, counts):
    needs = [shop.need(dice) for _ in range(dice.choice(counts))]
    words = [word for need in needs for word in ("--need", need)]
    return words + (["--in-order"] if len(needs) > 1 and dice.maybe(0.4) else [])


def ordered(dice, i, orders=ORDERS):
    """Each order equally often; now and then none is named."""
    return [] if dice.maybe(0.12) else ["--order", orders[i % len(orders)]]


def chain_words(shop, dice, i):
    busy = dice.choice((0.15, 0.6, 1.0, 1.6))
    words = ["chain", shop.port(dice), shop.port(dice), *ends(dice), *ordered(dice, i)]
    words += needed(shop, dice, (0, 0, 0, 0, 1, 1, 1, 2, 2, 3) if busy > 0.3 else (0, 0, 0, 1))
    words += limits(dice, busy) + avoided(shop, dice, busy) + stock(dice, 0.18 * busy)
    if dice.maybe(0.1 * busy):
        words += ["--most-parts", str(dice.choice((0, 1, 2, 3, 4, 6, 9)))]
    if dice.maybe(0.1 * busy):
        words += ["--flow", dice.choice(("2 gpm", "5 gpm", "12 gpm", "40 gpm", "30 l/min"))]
    if dice.maybe(0.14):
        words += ["--alternatives", str(dice.choice((1, 2, 3, 5, 8)))]
    return words + output(dice)


def spares_words(shop, dice, i):
    """Few needs, and a small bin: each part that may be missing is a search of its own."""
    ports = [f"{dice.choice(SIZES)} {dice.choice(('FNPT', 'MNPT'))}" for _ in range(2)]
    words = ["chain", *ports, *ends(dice), *ordered(dice, i, ("parts", "price", "bin")), "--spares"]
    words += needed(shop, dice, (0, 0, 1)) + limits(dice, 0.4)
    words += ["--bin", own_name(2)] if dice.maybe(0.2) else []
    return words + output(dice)


def valve_words(shop, dice, i):
    ports = [f"{dice.choice(SIZES[2:])} {dice.choice(('FNPT', 'MNPT'))}" for _ in range(2)]
    words = ["chain", *ports, *ends(dice), *ordered(dice, i), "--valve-stays", dice.choice(("first", "last"))]
    for need in (dice.choice(("ball valve", "gate valve", "full-bore ball valve")), *dice.several(
            ("hose", "union", "check valve", "90 elbow"), 0, 2)):
        words += ["--need", need]
    words += ["--in-order"] if dice.maybe(0.2) else []
    return words + limits(dice, 0.5) + avoided(shop, dice, 0.5) + stock(dice, 0.15) + output(dice)


def distance(dice, longest, shortest=0.5):
    """@param longest,shortest  in inches"""
    if dice.maybe(0.2):
        return f"{dice.randrange(int(shortest * 25.4), int(longest * 25.4))} mm"
    whole, part = divmod(dice.randrange(int(shortest * 16), longest * 16), 16)
    return f"{whole}-{part}/16 in" if whole and part else f"{whole or part / 16} in"


def span_words(shop, dice, i):
    busy = dice.choice((0.1, 0.5, 1.0))
    if dice.maybe(0.6):
        size = dice.choice(SIZES[2:])
        ports = [f"{size} {dice.choice(('FNPT', 'MNPT'))}" for _ in range(2)]
    else:
        ports = [shop.port(dice), shop.port(dice)]
    offset = dice.maybe(0.22)
    # Slow: why a short run makes no offset (few of those); the least loss with an offset, an offset with needs (none).
    far = distance(dice, dice.choice((20, 45, 150)), 8) if offset and dice.maybe(0.95) else distance(dice, dice.choice((6, 20, 45, 150)))
    words = ["chain", *ports, "--span", far, *ordered(dice, i, ("parts", "price", "length", "bin") if offset else ORDERS)]
    if offset:
        words += ["--offset", distance(dice, 12)]
        words += ["--roll", distance(dice, 8)] if dice.maybe(0.3) else []
    words += [word for word in ends(dice) if word != "--held"] if dice.maybe(0.3) else []
    words += ([] if offset else needed(shop, dice, (0, 0, 0, 1, 1, 2))) + limits(dice, busy) + avoided(shop, dice, busy)
    words += stock(dice, 0.2)
    if dice.maybe(0.08):
        words += ["--most-parts", str(dice.choice((1, 2, 3, 5, 8)))]
    return words + output(dice)


def branch_options(shop, dice, branches):
    words = []
    any_branch = lambda: str(dice.randint(1, branches))  # noqa: E731
    if dice.maybe(0.35):
        branch = any_branch()
        for need in dice.several(("ball valve", "check valve", "air regulator", "union", "restrictor", "hose"), 1, 3):
            words += ["--branch-need", f"{branch}={need}"]
        words += ["--branch-in-order", branch] if dice.maybe(0.5) else []
        words += ["--branch-feeds", branch] if dice.maybe(0.4) else []
    for chance, option, values in ((0.2, "--branch-bore", BORES), (0.2, "--branch-looks", ("straight on", "to a side")),
                                   (0.2, "--branch-avoid", ("check valve", "bushing", "brass", "nipple", "union"))):
        if dice.maybe(chance):
            words += [option, f"{any_branch()}={dice.choice(values)}"]
    return words + (["--branch-relief", any_branch()] if dice.maybe(0.2) else [])


def assembly_words(shop, dice, i):
    branches = dice.choice((2, 2, 2, 3, 3, 3, 4, 5))
    base = f"{dice.choice(SIZES[2:6])} {dice.choice(('FNPT', 'FNPT', 'MNPT'))}"
    targets = [f"{dice.choice(SIZES[:5])} {dice.choice(('FNPT', 'MNPT'))}" if dice.maybe(0.85) else shop.port(dice)
               for _ in range(branches)]
    words = ["chain", base, *targets, *ordered(dice, i, ("parts", "price", "bin"))]
    words += ["--held"] if dice.maybe(0.25) else []
    words += needed(shop, dice, (0, 0, 0, 0, 1)) if branches < 4 else []
    words = [word for word in words if word != "--in-order"]
    words += limits(dice, 0.5) + avoided(shop, dice, 0.4) + stock(dice, 0.2)
    return words + (branch_options(shop, dice, branches) if dice.maybe(0.7) else []) + output(dice)


def wrong_values():
    """Each option with what it does not take, and options that do not go together."""
    pair = ("chain", "1 FNPT", "3/4 MNPT")
    for option, values in (
            ("--order", ("fastest", "", "Price")), ("--need", ("bal valve", "flux capacitor", "1 x 17 nipple", "")),
            ("--avoid", ("unobtainium", "just", "just nipples", "bras")), ("--rating", ("100", "100 in", "-5 psi", "1e9 psi")),
            ("--bore", ("3/4", "0 in", "-1 in", "1000 ft", "3//4 in")), ("--room", ("wide", "0 in", "1 psi")),
            ("--flow", ("12 gmp", "0 gpm", "-3 gpm", "12")), ("--galvanic", ("shun",)), ("--alternatives", ("0", "-1", "x", "400")),
            ("--span", ("-1 in", "61 ft", "9 psi", "0 in", "1/3")), ("--offset", ("2 in",)), ("--roll", ("2 in",)),
            ("--valve-stays", ("first", "middle", "last")), ("--most-parts", ("-1", "x", "1000000", "1.5")),
            ("--most-bushings", ("-1", "few")), ("--hottest", ("9 F", "900 F", "hot", "140")),
            ("--first-end", ("stuck", "FIXED")), ("--last-end", ("held",)), ("--units", ("feet",)), ("--color", ("always",)),
            ("--bin", ("bins/none.yaml", "own/wrong-bin.yaml", "own/broken.yaml", "own/empty.yaml", "own/list.yaml")),
            ("--catalog", ("own/none.yaml", "own/wrong-parts.yaml", "own/no-sections.yaml", "own/own-0.yaml")),
            ("--branch-bore", ("1=1 in",)), ("--branch-need", ("1=union",)), ("--branch-relief", ("1",)), ("--blend", ("it",))):
        for value in values:
            yield *pair, option, value
    yield *pair, "--held", "--first-end", "fixed"
    yield *pair, "--span", "10 in", "--spares"
    yield *pair, "--span", "10 in", "--alternatives", "3"
    yield *pair, "--offset", "1 in", "--roll", "1 in"
    yield *pair, "--valve-stays", "first", "--need", "ball valve", "--spares", "--alternatives", "2"
    yield *pair, "--valve-stays", "first", "--need", "ball valve", "--need", "brass ball valve"
    yield *pair, "--from-bin"
    yield *pair, "--order", "x", "--need", "y", "--avoid", "z", "--bore", "w", "--hottest", "v", "--flow", "u"
    yield *pair, *(word for _ in range(9) for word in ("--need", "union"))
    yield *pair, *(word for need in ("union", "ball valve", "check valve", "gate valve", "tee") for word in ("--need", need))
    yield "chain", "1 FNPT"
    yield ("chain",)


def wrong_assemblies():
    three = ("chain", "1 FNPT", "1/2 MNPT", "1/4 FNPT")
    for words in (("--first-end", "fixed"), ("--last-end", "loose"), ("--flow", "3 gpm"), ("--most-parts", "4"), ("--in-order",),
                  ("--alternatives", "2"), ("--span", "9 in"), ("--valve-stays", "first"), ("--spares",), ("--order", "loss"),
                  ("--order", "length"), ("--branch-need", "3=union"), ("--branch-need", "0=union"), ("--branch-need", "union"),
                  ("--branch-need", "1="), ("--branch-need", "1=unoin"), ("--branch-bore", "1=3"), ("--branch-bore", "x=1 in"),
                  ("--branch-looks", "1=up"), ("--branch-avoid", "2=cheese"), ("--branch-relief", "7"), ("--branch-feeds", "-1"),
                  ("--branch-in-order", "two"), ("--branch-bore", "1=4 in"), ("--branch-need", "1=ball valve", "--branch-relief", "1"),
                  ("--from-bin",), ("--rating", "9000 psi"), ("--vacuum",), ("--hottest", "400 F"), ("--avoid", "tee", "--avoid", "cross"),
                  ("--branch-looks", "1=straight on", "--branch-looks", "2=straight on"), ("--most-bushings", "0"),
                  ("--held", "--avoid", "union", "--avoid", "hose", "--avoid", "flexible connector"), ("--room", "1/2 in")):
        yield *three, *words
        yield *three, *words, "--json"
    yield "chain", *["1 FNPT"] * 10
    yield "chain", "1 FNTP", "1/2 MNPT", "1/4 XNPT"


def wrong_ports():
    for text in ("1 FNTP", "1 NPT", "FNPT", "7/9 FNPT", "1 1 FNPT", "", "one inch female", "1 FNPT male", "3/4 GHT", "99 FNPT",
                 "1 thing", "1/2 barb barb", "1 FNPT;", "3/4", "1/0 FNPT", "-1 FNPT", "1.25 FNPT"):
        yield "chain", text, "1 MNPT"
        yield "chain", "1 MNPT", text, "--json"
    for text in ('1" FIP', "1 1/4 MIP", "1-1/4 MNPT", "3/4 GHT male", "G 1/2 female", "R 3/4", "Rc 3/4", "1/2 cup", "1/2 barb", "1 fpt",
                 "1 in female NPT", "1½ FNPT", "3/4 mght", "DN25 FNPT", "3/4 flare male", "1/2 OD tube", "3/4 hose end", "1 pvc socket"):
        yield "chain", text, "1 MNPT"
        yield "chain", "3/4 FGHT", text


def refused():
    """What cannot be had: rules that speak against each other, look-alikes, nothing on the shelf."""
    for ports, words in (
            (("1 FNPT", "1 FNPT"), "--held|--most-parts|2"), (("1 FNPT", "1 FNPT"), "--air|--need|PVC coupling"),
            (("3/4 FNPT", "3/4 MGHT"), "--most-parts|0"), (("3/4 FNPT", "3/4 MBSPT"), "--most-parts|0"),
            (("1 FNPT", "1 FNPT"), "--need|90 street elbow|--room|1 in"), (("1 FNPT", "1 FNPT"), "--rating|5000 psi"),
            (("1 FNPT", "1 FNPT"), "--bore|3 in"), (("1 FNPT", "1/4 MNPT"), "--bore|1 in"), (("1 FNPT", "2 FNPT"), "--avoid|nipple"),
            (("1 FNPT", "1 MNPT"), "--need|union|--avoid|union"), (("1 FNPT", "1 MNPT"), "--hottest|500 F|--vacuum"),
            (("1 FNPT", "1/2 cup"), "--galvanic|avoid|--avoid|brass"), (("1 FNPT", "1 FNPT"), "--from-bin|--bin|own/own-2.yaml"),
            (("1 FNPT", "1 FNPT"), "--from-bin|--bin|own/own-2.yaml|--held|--need|ball valve"),
            (("1 FNPT", "1 FNPT"), "--need|stainless ball valve"), (("1 FNPT", "1 FNPT"), "--need|gate valve|--air|--vacuum"),
            (("1-1/2 FNPT", "1-1/2 FNPT"), "--span|1 in|--need|union"), (("1-1/2 FNPT", "1-1/2 FNPT"), "--span|13-7/8 in|--need|union"),
            (("1 FNPT", "1 FNPT"), "--span|10 in|--avoid|pipe|--avoid|hose|--avoid|nipple"), (("2 FNPT", "2 FNPT"), "--span|50 ft"),
            (("1 FNPT", "1 FNPT"), "--span|10 in|--most-parts|1"), (("1 FNPT", "1 FNPT"), "--span|10 in|--vacuum|--rating|900 psi"),
            (("1 FNPT", "1 FNPT"), "--span|12 in|--offset|3 in|--avoid|45 elbow|--avoid|hose")):
        for extra in ((), ("--json",), ("--units", "metric"), ("--special-order",), ("--order", "price", "--json")):
            yield "chain", *ports, *words.split("|"), *extra


def questions(shop):
    draw = lambda words: lambda dice, i: words(shop, dice, i)  # noqa: E731
    return (drawn("chain", 2950, draw(chain_words)) + drawn("valve", 160, draw(valve_words)) +
            drawn("spares", 60, draw(spares_words)) + drawn("span", 600, draw(span_words)) +
            drawn("assembly", 420, draw(assembly_words)) + listed("wrong-value", wrong_values()) +
            listed("wrong-assembly", wrong_assemblies()) + listed("wrong-port", wrong_ports()) + listed("refused", refused()))
