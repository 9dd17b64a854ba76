"""Every finding of a plan, and every reason why there is no run, has a row that `riserun explain` prints, and every row
is of such a code.

Reads the codes of core/plan and core/chain/refusal that are given as reasons, and the rows of
core/report/words/explain_*.cpp. Reasons that reach a finding through a name are seen by tests/unit/plan, which looks up
the code of each finding that a test makes. `explained_test.py SOURCE_DIR` checks a tree; `--self-test` sees each kind of
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
ROW = re.compile(r'^ {6}\{"([a-z0-9_]+)",', re.MULTILINE)


def text_of(path):
    return COMMENT.sub("", path.read_text(encoding="utf-8"))


def codes(paths, patterns):
    return {code for path in paths for pattern in patterns for found in pattern.findall(text_of(path))
            for code in CODE.findall(found)}


def problems_of(root):
    core = root / "core"
    rows = [code for path in sorted((core / "report" / "words").glob("explain_*.cpp"))
            for code in ROW.findall(path.read_text(encoding="utf-8"))]
    reasons = codes(sorted((core / "plan").rglob("*.cpp")) + sorted((core / "chain" / "refusal").glob("*.cpp")), REASONS)
    for code in sorted(reasons - set(rows)):
        yield f"reason {code}: no row of core/report/words/explain_*.cpp explains it"
    for code in sorted({code for code in rows if rows.count(code) > 1}):
        yield f"row {code}: stands twice"
    made = codes(sorted(core.rglob("*.cpp")) + sorted(core.rglob("*.h")), [FACT])
    table = core / "chain" / "ask" / "askable.cpp"
    asked = {code + "_alone" for code in re.findall(r'\.code = "([a-z0-9_]+)"', text_of(table))} if table.is_file() else set()
    for code in sorted(set(rows) - made - asked):
        yield f"row {code}: no fact of core/ is made with it"


def self_test():
    files = {
        "core/plan/judge/a.cpp": 'open.not_yet(Topic::walls, fact("told", 1), {});\n'
                                 'remarks.refuse({Topic::riser, fact("untold", 2)});\nreason = fact("hidden");\n',
        "core/report/words/explain_a.cpp": '      {"told", "m"},\n      {"told", "m"},\n      {"idle", "m"},\n',
    }
    with tempfile.TemporaryDirectory() as folder:
        root = pathlib.Path(folder)
        for name, text in files.items():
            (root / name).parent.mkdir(parents=True, exist_ok=True)
            (root / name).write_text(text, encoding="utf-8")
        seen = [line.split(":")[0] for line in problems_of(root)]
    expected = ["reason hidden", "reason untold", "row told", "row idle"]
    return [] if seen == expected else [f"saw {seen}, expected {expected}"]


problems = self_test() if sys.argv[1:] == ["--self-test"] else list(problems_of(pathlib.Path(sys.argv[1])))
for problem in problems:
    print(problem)
print(f"{len(problems)} problems")
sys.exit(1 if problems else 0)
