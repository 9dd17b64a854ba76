"""Every finding and every caution of a plan, every reason why there is no run, and every kind of mistake in what is written has a row that `riserun explain`
prints, and every row is of such a code.

Reads the codes of core/plan and core/chain/refusal that are given as reasons, those of core/plan and core/chain/build
that are given as cautions, and the rows of core/report/words/explain_*.cpp. Reasons that reach a finding through a name
are seen by tests/unit/plan, which looks up the code of each finding that a test makes. `explained_test.py SOURCE_DIR` checks a tree; `--self-test` sees each kind of
slip in a small tree of its own.
"""

import pathlib
import re
import sys
import tempfile

COMMENT = re.compile(r"//.*")
CODE = re.compile(r'"([a-z0-9_]+)"')
FACT = re.compile(r"\bfact\(([^,;)]*)")
REASONS = [
    # open.not_yet(Topic::walls, fact("code"...), remarks.refuse({Topic::riser, fact("code"...)
    re.compile(r"\b(?:not_yet|refuse)\(\s*\{?\s*Topic::\w+,\s*(?:[\w.()]+ \? )?fact\(([^,;)]*)"),
    re.compile(r"\breason(?: =|\.emplace\(|\() *fact\(([^,;)]*)"),
]
# The statement of a caution of the plan or of its connections, in core/plan; each fact in it is one that it may be.
CAUTION = re.compile(r"\b(?:remarks\.(?:standing_)?caution|plan\.cautions\.push_back)\(([^;]*);")
# What a run cautions of, in core/chain/build; a fact within is the value of another and no caution.
OF_RUN = [re.compile(r"\b(?:say|note|note_part|warn_of_no_play|facts\.push_back|add_once\(said_last_,|run\.cautions\.push_back)"
                     r"[( ]fact\(([^,;)]*)")]
OF_RUNS = ["build_order.cpp", "cautions.cpp"]
# A caution that is a value with a name, and the codes that this value has there.
NAMED = {"chosen.basis": {"walls_too_weak_for_test"}}  # reservoir::TestPressure without a pressure, none asked for
ROW = re.compile(r'^ {6}\{"([a-z0-9_]+)",', re.MULTILINE)


def text_of(path):
    return COMMENT.sub("", path.read_text(encoding="utf-8"))


def codes(paths, patterns):
    return {code for path in paths for pattern in patterns for found in pattern.findall(text_of(path))
            for code in CODE.findall(found)}


def cautions(root):
    """Codes, and the statements that show none."""
    build = root / "core" / "chain" / "build"
    found, hidden = codes([build / name for name in OF_RUNS if (build / name).is_file()], OF_RUN), []
    for path in sorted((root / "core" / "plan").rglob("*.cpp")):
        for statement in CAUTION.findall(text_of(path)):
            here = {code for fact in FACT.findall(statement) for code in CODE.findall(fact)}
            here |= {code for name, made in NAMED.items() if name in statement for code in made}
            found |= here
            if not here:
                hidden.append(path.name)
    return found, hidden


def problems_of(root):
    core = root / "core"
    of_input = set(CODE.findall(text_of(core / "quantity" / "error_codes.h"))) if (core / "quantity" / "error_codes.h").is_file() else set()
    rows = [code for path in sorted((core / "report" / "words").glob("explain_*.cpp"))
            for code in ROW.findall(path.read_text(encoding="utf-8"))]
    reasons = codes(sorted((core / "plan").rglob("*.cpp")) + sorted((core / "chain" / "refusal").glob("*.cpp")), REASONS)
    for code in sorted(reasons - set(rows)):
        yield f"reason {code}: no row of core/report/words/explain_*.cpp explains it"
    for code in sorted(of_input - set(rows)):
        yield f"mistake {code}: no row of core/report/words/explain_*.cpp explains it"
    cautioned, hidden = cautions(root)
    for code in sorted(cautioned - set(rows)):
        yield f"caution {code}: no row of core/report/words/explain_*.cpp explains it"
    for name in hidden:
        yield f"caution in {name}: its code is not seen here (NAMED)"
    for code in sorted({code for code in rows if rows.count(code) > 1}):
        yield f"row {code}: stands twice"
    made = codes(sorted(core.rglob("*.cpp")) + sorted(core.rglob("*.h")), [FACT])
    table = core / "chain" / "ask" / "askable.cpp"
    asked = {code + "_alone" for code in re.findall(r'\.code = "([a-z0-9_]+)"', text_of(table))} if table.is_file() else set()
    for code in sorted(set(rows) - made - asked - of_input):
        yield f"row {code}: no fact of core/ is made with it"


def self_test():
    files = {
        "core/plan/judge/a.cpp": 'open.not_yet(Topic::walls, fact("told", 1), {});\n'
                                 'remarks.refuse({Topic::riser, fact("untold", 2)});\nreason = fact("hidden");\n',
        "core/plan/stage/b.cpp": 'remarks.caution(Topic::care, calm ? fact("calm", 2)\n : fact("warned", 1), "s");\n'
                                 'plan.cautions.push_back(what);\n',
        "core/chain/build/cautions.cpp": 'note(fact("rusts", a), fact("meets", b));\nadd_once(said_last_, fact("thin", c));\n',
        "core/quantity/error_codes.h": 'kTold = "said"; kUntold = "unsaid";\n',
        "core/report/words/explain_a.cpp": '      {"said", "m"},\n      {"told", "m"},\n      {"told", "m"},\n      {"idle", "m"},\n',
    }
    with tempfile.TemporaryDirectory() as folder:
        root = pathlib.Path(folder)
        for name, text in files.items():
            (root / name).parent.mkdir(parents=True, exist_ok=True)
            (root / name).write_text(text, encoding="utf-8")
        seen = [line.split(":")[0] for line in problems_of(root)]
    expected = ["reason hidden", "reason untold", "mistake unsaid", "caution calm", "caution rusts", "caution thin", "caution warned",
                "caution in b.cpp", "row told", "row idle"]
    return [] if seen == expected else [f"saw {seen}, expected {expected}"]


problems = self_test() if sys.argv[1:] == ["--self-test"] else list(problems_of(pathlib.Path(sys.argv[1])))
for problem in problems:
    print(problem)
print(f"{len(problems)} problems")
sys.exit(1 if problems else 0)
