"""The order of the folders, kept by a test.

Reads every #include under core/ and gui/ and fails when one goes up the order of the folders, when units (a header and
the source of the same name) reach each other in a circle, when a library is included outside the folder that may see it
or in a header, when the tree holds a folder or a top-level file that has no place in the design, or when tests stand in
a folder that the sources do not have. `include_order_test.py SOURCE_DIR` checks a tree; `--self-test` plants one
violation of each kind in a small tree of its own and sees each reported.
"""

import fnmatch
import pathlib
import re
import sys
import tempfile

# A folder may include itself and those before it.
ORDER = ["quantity", "catalog", "hydraulics", "chain", "reservoir", "transfer", "plan", "report", "cli"]
# The window stands on the plan and the report, and on what they stand on.
SEEN_BY_GUI = ORDER[: ORDER.index("report") + 1]

# The rooms of a folder, lowest first: a room may include itself and those before it. "." is what stands in the folder
# itself: at the end its door, at the beginning (of catalog, of plan behind the job) the plain values that the others
# stand on.
ROOMS = {
    "core/catalog": [".", "yaml", "edit", "words", "identify", "load"],
    "core/chain": [
        "ask", "part", "rules", "graph", "search", "tree", "span", "build", "refusal", "answers", "bin", ".",
    ],
    "core/plan": ["job", ".", "settle", "judge", "advice", "stage", "shop"],
    "core/report": ["words", "figures", "card", "drawing", "text", "json", "paper", "page", "file"],
    "gui": ["model", "views", "app"],
    "gui/model": ["text", "canvas", "edit", "session"],
    "gui/views": ["drawing", "scene", "canvas", "sheets", "."],
}
# What of a folder's rooms others may include: its own door, and these rooms.
DOORS = {"chain": ["ask"]}

# Which folders may include a library, and then in .cpp files only.
LIBRARIES = [
    (re.compile(r"yaml-cpp/"), "yaml-cpp", {"catalog", "plan"}),
    (re.compile(r"boost/graph/"), "Boost.Graph", {"chain"}),
    (re.compile(r"nlohmann/"), "nlohmann-json", {"report"}),
    (re.compile(r"(cairo|pango)"), "Cairo or Pango", {"report"}),
    (re.compile(r"CLI/"), "CLI11", {"cli", "gui"}),
    (re.compile(r"(imgui|imstb|GLFW/|GL/)"), "Dear ImGui, GLFW or OpenGL", {"gui"}),
]

# Headers of libraries that only name things, which our headers may include too.
FORWARD = {"nlohmann/json_fwd.hpp"}

# Headers of ours that show a library to the .cpp files of their own folder, and so are no other header's to include.
LIBRARY_HEADERS = {"chain/graph/row_graph_traits.h"}

TOP_LEVEL = {"CMakeLists.txt", "README.md", "DEVELOPERS.md", "core", "gui", "catalog", "tests", "examples"}
TEST_FOLDERS = {
    "unit", "published", "property", "fuzz", "bench", "window", "structure", "command", "answers", "data", "faults",
}

# The groups of tests that repeat the folders and rooms of the sources, and where those stand.
MIRRORS = {"unit": "core", "published": "core", "property": "core", "window": "gui"}

INCLUDE = re.compile(r'^[ \t]*#[ \t]*include[ \t]*([<"])([^>"]+)[>"]', re.MULTILINE)
SOURCES = {".h", ".hpp", ".cpp", ".cc", ".inc"}


def ignored_names(root):
    """What .gitignore leaves out at the top level: the build folders."""
    file = root / ".gitignore"
    lines = file.read_text(encoding="utf-8").split() if file.is_file() else []
    return [line.strip("/") for line in lines if not line.startswith("#")]


def check_places(root):
    ignored = ignored_names(root)
    for entry in sorted(root.iterdir()):
        known = entry.name in TOP_LEVEL or entry.name.startswith(".")
        if not known and not any(fnmatch.fnmatch(entry.name, pattern) for pattern in ignored):
            yield f"{entry.name}: the top level holds only {', '.join(sorted(TOP_LEVEL))} and dot-files"
    for folder, allowed in (("core", set(ORDER)), ("tests", TEST_FOLDERS)):
        place = root / folder
        for entry in sorted(place.iterdir()) if place.is_dir() else []:
            if entry.is_dir() and entry.name not in allowed and not entry.name.startswith((".", "__")):
                yield f"{folder}/{entry.name}: {folder}/ has no such folder"


def check_mirrors(root):
    """The test of a unit stands where the unit's own room says: no folder of tests but those of the sources."""
    for group, sources in MIRRORS.items():
        for path in sorted((root / "tests" / group).rglob("*")):
            place = path.relative_to(root / "tests" / group)
            if path.is_dir() and not path.name.startswith((".", "__")) and not (root / sources / place).is_dir():
                yield f"tests/{group}/{place}: {sources}/ has no folder {place}"


def check_own_include(folder, target):
    head, slash, _ = target.partition("/")
    seen = SEEN_BY_GUI + ["gui"] if folder == "gui" else ORDER[: ORDER.index(folder) + 1]
    if not slash or (head not in ORDER and head != "gui"):
        return f'"{target}" does not begin with a folder of core/ or gui/'
    if head not in seen:
        return f'"{target}": {folder} may not include {head}'
    return None


def room_of(path):
    """The room that a path within a folder of ROOMS lies in: `graph/row_graph.h` in graph, `finder.h` in `.`."""
    first, slash, _ = path.partition("/")
    return first if slash else "."


def check_room(path, target):
    """An include that goes up the order of the rooms of its own folder, or past the door of another one."""
    for folder, rooms in ROOMS.items():
        include_prefix = folder.removeprefix("core/") + "/"
        if not target.startswith(include_prefix) or not path.startswith(folder + "/"):
            continue
        here, there = room_of(path[len(folder) + 1 :]), room_of(target[len(include_prefix) :])
        unknown = [room for room in (here, there) if room not in rooms]
        if unknown:
            return f'"{target}": {folder} has no room {unknown[0]}; its rooms are {", ".join(rooms)}'
        if rooms.index(there) > rooms.index(here):
            return f'"{target}": room {here} of {folder} may not include room {there}'
    for folder, open_rooms in DOORS.items():
        if not target.startswith(folder + "/") or path.startswith(f"core/{folder}/"):
            continue
        there = room_of(target[len(folder) + 1 :])
        if there != "." and there not in open_rooms:
            return f'"{target}": of {folder} only its door and {", ".join(open_rooms)} are seen from outside'
    return None


def check_library_header(path, target):
    """An include of a header that shows a library, where no library may be seen."""
    if target not in LIBRARY_HEADERS:
        return None
    if not path.startswith(f"core/{target.split('/')[0]}/"):
        return f'"{target}" shows a library to its own folder only'
    if not path.endswith(".cpp"):
        return f'"{target}" shows a library and is not included in a header'
    return None


def check_library(folder, target, is_header):
    for pattern, name, folders in LIBRARIES:
        if not pattern.match(target):
            continue
        if folder not in folders:
            return f"<{target}>: {name} is for {' and '.join(sorted(folders))} only"
        if is_header and target not in FORWARD:
            return f"<{target}>: {name} is not included in a header"
    return None


def check_file(root, path, folder):
    text = path.read_text(encoding="utf-8")
    for match in INCLUDE.finditer(text):
        quote, target = match.groups()
        is_library = any(pattern.match(target) for pattern, _, _ in LIBRARIES)
        if is_library or quote == "<":
            shows_it = path.relative_to(root).as_posix().removeprefix("core/") in LIBRARY_HEADERS
            problem = check_library(folder, target, path.suffix != ".cpp" and not shows_it)
        else:
            place = path.relative_to(root).as_posix()
            problem = (check_own_include(folder, target) or check_room(place, target)
                       or check_library_header(place, target))
        if problem:
            line = text.count("\n", 0, match.start()) + 1
            yield f"{path.relative_to(root)}:{line}: {problem}"


def sources_of(root):
    for folder in ORDER:
        for path in sorted((root / "core" / folder).rglob("*")):
            if path.suffix in SOURCES:
                yield path, folder
    for path in sorted((root / "gui").rglob("*")):
        if path.suffix in SOURCES:
            yield path, "gui"


def includes_of(root, path):
    """The own files that a source includes, as paths from the root."""
    for quote, target in INCLUDE.findall(path.read_text(encoding="utf-8")):
        place = target if target.startswith("gui/") else f"core/{target}"
        if quote == '"' and (root / place).is_file():
            yield pathlib.Path(place)


def units_of(root):
    """Each unit with the units that it includes."""
    units = {}
    for path, _ in sources_of(root):
        here = path.relative_to(root).with_suffix("").as_posix()
        there = {target.with_suffix("").as_posix() for target in includes_of(root, path)}
        units.setdefault(here, set()).update(there - {here})
    return units


def check_circles(root):
    """A circle of units, if there is one: what is left when those that include none are taken away, again and again."""
    units = units_of(root)
    while free := [unit for unit, there in units.items() if not there & units.keys()]:
        for unit in free:
            del units[unit]
    way = sorted(units)[:1]
    while way and (following := min(units[way[-1]] & units.keys())) not in way:
        way.append(following)
    if way:
        yield f"{' -> '.join([*way[way.index(following) :], following])}: units include each other in a circle"


def problems_of(root):
    problems = [*check_places(root), *check_mirrors(root), *check_circles(root)]
    for path, folder in sources_of(root):
        problems += check_file(root, path, folder)
    return problems


CLEAN = {
    "CMakeLists.txt": "",
    ".gitignore": "build/\nbuild-*/\n",
    "build/riserun": "",
    "core/quantity/read.h": "#include <string>\n",
    "core/quantity/text.h": '#include "quantity/read.h"\n',
    "core/catalog/load/load.cpp": '#include <yaml-cpp/yaml.h>\n#include "catalog/catalog.h"\n#include "quantity/read.h"\n',
    "gui/app/main.cpp": "#include <CLI/CLI.hpp>\n",
    "core/report/fact_json.h": "#include <nlohmann/json_fwd.hpp>\n",
    "core/report/json.cpp": "#include <nlohmann/json.hpp>\n#include <cairo.h>\n",
    "core/cli/main.cpp": '#include <CLI/CLI.hpp>\n#include "report/text.h"\n',
    "core/chain/graph/rows.h": '#include "chain/ask/request.h"\n#include "chain/part/move.h"\n',
    "core/chain/finder.cpp": '#include "chain/bin/allocate.h"\n',
    "core/chain/graph/row_graph_traits.h": "#include <boost/graph/graph_traits.hpp>\n",
    "core/chain/search/potentials.cpp": '#include "chain/graph/row_graph_traits.h"\n#include <boost/graph/relax.hpp>\n',
    "gui/views/desk.cpp": '#include <imgui.h>\n#include "gui/model/edit/act.h"\n#include "plan/plan.h"\n',
    "tests/unit/chain/graph/x.cpp": '#include "cli/anything.h"\n',
    "tests/window/app/x.py": "",
}

# A file planted in the clean tree, and a piece of the one complaint that it must bring.
VIOLATIONS = [
    ("core/quantity/a.h", '#include "catalog/part.h"\n', "core/quantity/a.h:1: \"catalog/part.h\": quantity may not include"),
    ("core/hydraulics/a.cpp", '\n  #  include "chain/ask/answer.h"\n', "core/hydraulics/a.cpp:2: \"chain/ask/answer.h\": hydraulics may"),
    ("core/plan/sub/a.cpp", '#include "report/text.h"\n', "plan may not include report"),
    ("gui/a.cpp", '#include "cli/verbs.h"\n', "gui may not include cli"),
    ("core/plan/a.cpp", '#include "gui/model.h"\n', "plan may not include gui"),
    ("core/plan/a.cpp", '#include "job.h"\n', "does not begin with a folder"),
    ("core/plan/a.cpp", '#include "../chain/graph.h"\n', "does not begin with a folder"),
    ("core/chain/a.cpp", "#include <yaml-cpp/yaml.h>\n", "yaml-cpp is for catalog and plan only"),
    ("core/catalog/a.h", "#include <yaml-cpp/yaml.h>\n", "yaml-cpp is not included in a header"),
    ("core/catalog/a.cpp", '#include "boost/graph/graph_traits.hpp"\n', "Boost.Graph is for chain only"),
    ("core/plan/a.cpp", "#include <boost/graph/graph_traits.hpp>\n", "Boost.Graph is for chain only"),
    ("core/chain/graph/a.h", "#include <boost/graph/graph_traits.hpp>\n", "Boost.Graph is not included in a header"),
    ("core/chain/graph/a.h", '#include "chain/graph/row_graph_traits.h"\n', "shows a library and is not included in a header"),
    ("core/chain/finder.h", '#include "chain/graph/row_graph_traits.h"\n', "shows a library and is not included in a header"),
    ("core/cli/a.cpp", "#include <nlohmann/json.hpp>\n", "nlohmann-json is for report only"),
    ("core/report/a.h", "#include <nlohmann/json.hpp>\n", "nlohmann-json is not included in a header"),
    ("core/plan/a.h", "#include <nlohmann/json_fwd.hpp>\n", "nlohmann-json is for report only"),
    ("core/report/a.h", "#include <cairo-pdf.h>\n", "not included in a header"),
    ("core/plan/a.cpp", "#include <cairo.h>\n", "is for report only"),
    ("core/report/a.cpp", "#include <CLI/App.hpp>\n", "CLI11 is for cli and gui only"),
    ("core/report/a.cpp", "#include <imgui.h>\n", "is for gui only"),
    ("gui/a.h", "#include <imgui.h>\n", "not included in a header"),
    ("core/chain/graph/a.cpp", '#include "chain/search/best_chain.h"\n', "room graph of core/chain may not include room search"),
    ("core/chain/ask/a.h", '#include "chain/finder.h"\n', "room ask of core/chain may not include room ."),
    ("core/chain/a/a.h", '#include "chain/ask/request.h"\n', "core/chain has no room a"),
    ("core/plan/a.cpp", '#include "chain/build/assemble.h"\n', "of chain only its door and ask are seen from outside"),
    ("gui/model/canvas/a.cpp", '#include "gui/model/edit/act.h"\n', "room canvas of gui/model may not include room edit"),
    ("gui/views/canvas/a.cpp", '#include "gui/views/desk.h"\n', "room canvas of gui/views may not include room ."),
    ("core/quantity/read.cpp", '#include "quantity/text.h"\n', "quantity/text -> core/quantity/read: units include each other"),
    ("notes.txt", "", "notes.txt: the top level holds only"),
    ("core/utils/a.h", "", "core/utils: core/ has no such folder"),
    ("tests/unit/chain/old/a.cpp", "", "tests/unit/chain/old: core/ has no folder chain/old"),
    ("tests/odd/a.cpp", "", "tests/odd: tests/ has no such folder"),
]


def write(root, name, text):
    path = root / name
    path.parent.mkdir(parents=True, exist_ok=True)
    path.write_text(text, encoding="utf-8")


def self_test():
    failures = []
    for planted in [None, *VIOLATIONS]:
        with tempfile.TemporaryDirectory() as folder:
            root = pathlib.Path(folder)
            for name, text in CLEAN.items():
                write(root, name, text)
            if planted:
                write(root, planted[0], planted[1])
            problems = problems_of(root)
        seen = len(problems) == 1 and planted[2] in problems[0] if planted else not problems
        if not seen:
            failures.append(f"{planted[0] + ': ' + planted[1] if planted else 'the clean tree'}: {problems}")
    return failures


def main():
    if sys.argv[1:] == ["--self-test"]:
        problems = self_test()
        checked = len(VIOLATIONS) + 1
    else:
        root = pathlib.Path(sys.argv[1])
        checked = sum(1 for _ in sources_of(root))
        problems = problems_of(root)
        if checked == 0:
            problems.append("no sources found: nothing was checked")
    for problem in problems:
        print(problem)
    print(f"{checked} checked, {len(problems)} problems")
    return 1 if problems else 0


if __name__ == "__main__":
    sys.exit(main())
