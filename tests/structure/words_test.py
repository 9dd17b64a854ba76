"""Every fact has words, and all words are used.

Compares the codes of the facts that core/ makes (`fact("code", ...)`) with the rows `{"code", "text"}` of the tables in
core/report/words/*_words.cpp. `words_test.py SOURCE_DIR` checks a tree; `--self-test` sees each kind of slip in a small
tree of its own.
"""

import pathlib
import re
import sys
import tempfile

CODE = r'"([a-z0-9_]+)"'
MADE = re.compile(r"\bfact\(([^,;]*)")  # the first argument: a code, or one of several
ROW = re.compile(r'^\s*\{("[a-z0-9_]+"),', re.MULTILINE)


# The rows of what can be asked give their codes to facts: what is asked, why nothing keeps it, what to do about it. That
# each has its sentences is seen by tests/unit/chain/ask.
ASKED = re.compile(r'\.code = "([a-z0-9_]+)"')
ENDINGS = ("", "_alone", "_relief")

COMMENT = re.compile(r"//.*")


def codes_in(paths, pattern):
    texts = (COMMENT.sub("", path.read_text(encoding="utf-8")) for path in paths)
    return {code for text in texts for found in pattern.findall(text) for code in re.findall(CODE, found)}


def problems_of(root):
    core = root / "core"
    tables = sorted((core / "report" / "words").glob("*_words.cpp"))
    made = codes_in((path for path in sorted(core.rglob("*.cpp")) + sorted(core.rglob("*.h")) if path not in tables), MADE)
    rows = codes_in(tables, ROW)
    for code in sorted(made - rows):
        yield f"fact {code}: no table of core/report/words has a sentence for it"
    table = core / "chain" / "ask" / "askable.cpp"
    asked = ASKED.findall(table.read_text(encoding="utf-8")) if table.is_file() else []
    for code in sorted(rows - made - {code + ending for code in asked for ending in ENDINGS}):
        yield f"sentence {code}: no fact of core/ is made with it"


def self_test():
    files = {
        "core/plan/a.cpp": 'x = fact("said", 1);\ny = fact(\n    many ? "unsaid" : "too", 2, "name");\n',
        "core/report/words/a_words.cpp": '    {"said", "one {0}"},\n    {"too", "2"},\n    {"unused", "two"},\n',
    }
    with tempfile.TemporaryDirectory() as folder:
        root = pathlib.Path(folder)
        for name, text in files.items():
            (root / name).parent.mkdir(parents=True, exist_ok=True)
            (root / name).write_text(text, encoding="utf-8")
        seen = list(problems_of(root))
    expected = ["fact unsaid", "sentence unused"]
    return [] if [line.split(":")[0] for line in seen] == expected else [f"saw {seen}, expected {expected}"]


problems = self_test() if sys.argv[1:] == ["--self-test"] else list(problems_of(pathlib.Path(sys.argv[1])))
for problem in problems:
    print(problem)
print(f"{len(problems)} problems")
sys.exit(1 if problems else 0)
