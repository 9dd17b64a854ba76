"""Every field of what can be asked has a row in the table of what can be asked.

Reads the structs RunRules and WayRules, ChainRequest and BranchRules, and core/chain/ask/askable.cpp: each field is named there as
`&RunRules::field`, or stands in the list below with the row that is about it. `asked_test.py SOURCE_DIR` checks a tree; `--self-test`
sees a forgotten field.
"""
import pathlib
import re
import sys

# Fields that no single row reads, and the rows that are about them.
OTHER_ROWS = {
    "RunRules": {"needs": "need", "avoided": "avoid"},
    "ChainRequest": {
        "from": "first_end", "to": "last_end", "order": "order", "banned": "ruled_out", "not_sold": "bin_only", "service": "air", "dry": "air", "may_narrow": "distance",
        "flow": "flow",
    },
    "WayRules": {"needs": "branch_need"},
    "BranchRules": {"flow": "feeds", "relief": "relief", "banned": "branch_avoid", "avoid": "branch_avoid", "devices": "device"},
}
NOT_ASKED = {"ChainRequest": {"bin"}}  # what the shop has
HEADERS = {"RunRules": "request.h", "ChainRequest": "request.h", "WayRules": "assembly.h", "BranchRules": "assembly.h"}

BODY = r"struct %s(?: : \w+)? \{\n(.*?)\n\};"
FIELD = re.compile(r"^  [\w:<>]+ (\w+)(?: = [^;]+)?;", re.MULTILINE)


def fields_of(text, name):
    body = re.search(BODY % name, text, re.DOTALL)
    return FIELD.findall(body.group(1)) if body else []


def problems_of(headers, table):
    codes = set(re.findall(r'\.code = "(\w+)"', table))
    for struct in HEADERS:
        fields = fields_of(headers, struct)
        if not fields:
            yield f"{struct}: no fields found"
        for field in fields:
            row = OTHER_ROWS[struct].get(field)
            has_row = f"&{struct}::{field}" in table if row is None else row in codes
            if not has_row and field not in NOT_ASKED.get(struct, ()):
                yield f"{struct}::{field} has no row in core/chain/ask/askable.cpp"


def read(root):
    ask = root / "core" / "chain" / "ask"
    headers = "\n".join((ask / name).read_text(encoding="utf-8") for name in sorted(set(HEADERS.values())))
    return headers, (ask / "askable.cpp").read_text(encoding="utf-8")


def self_test(root):
    headers, table = read(root)
    forgotten = headers.replace("  bool vacuum", "  bool no_aluminium = false;\n  bool vacuum")
    seen = list(problems_of(forgotten, table))
    return [] if seen == ["RunRules::no_aluminium has no row in core/chain/ask/askable.cpp"] else [f"saw {seen}"]


ROOT = pathlib.Path(sys.argv[1])
problems = list(problems_of(*read(ROOT))) + self_test(ROOT)
for problem in problems:
    print(problem)
print(f"{len(problems)} problems")
sys.exit(1 if problems else 0)
