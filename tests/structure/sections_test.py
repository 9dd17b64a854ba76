"""Every section of the plan is worked out, stands in the list of figures and is printed, and so is what is said of it.

Reads core/plan, core/report and the window's sheets as text: each field of `Plan` is set in make_plan.cpp, each list of figures is
named in `figures_of` and written in core/report/text, each section's text is named in `plan_text`, and the remarks of each `Topic`
are printed and drawn, as is each list of steps. `sections_test.py SOURCE_DIR` checks a tree, and sees each place that is forgotten in it.
"""

import pathlib
import re
import sys

FILES = {
    "plan": "core/plan/plan.h",
    "remarks": "core/plan/remarks.h",
    "make_plan": "core/plan/stage/make_plan.cpp",
    "figures.h": "core/report/figures/figures.h",
    "figures": "core/report/figures/figures.cpp",
    "plan_text.h": "core/report/text/plan_text.h",
    "plan_text": "core/report/text/plan_text.cpp",
    "steps.h": "core/report/words/step_lists.h",
}
FOLDERS = {"lists": "core/report/figures", "text": "core/report/text", "sheets": "gui/views/sheets"}


def read(root):
    texts = {name: (root / file).read_text(encoding="utf-8") for name, file in FILES.items()}
    for name, folder in FOLDERS.items():
        texts[name] = "\n".join(file.read_text(encoding="utf-8") for file in sorted((root / folder).glob("*.cpp")))
    return texts


def body(text, head):
    """What stands from the line that begins with `head` to the line that closes it."""
    found = re.search(rf"^{re.escape(head)}.*?^\}}", text, re.DOTALL | re.MULTILINE)
    return found.group(0) if found else ""


def problems_of(texts):
    fields = re.findall(r"^  [\w:<> ]+ (\w+)(?: = [^;]+)?;", body(texts["plan"], "struct Plan {"), re.MULTILINE)
    lists = re.findall(r"^FigureGroup (\w+_figures)\(", texts["figures.h"], re.MULTILINE)
    sections = re.findall(r"^std::string (\w+_text)\(const plan::Plan& plan, const Style& style\);", texts["plan_text.h"], re.MULTILINE)
    steps = re.findall(r"^std::vector<StepList> (\w+_steps)\(const plan::Plan& plan", texts["steps.h"], re.MULTILINE)
    topics = re.findall(r"\w+", re.search(r"enum class Topic \{(.*?)\}", texts["remarks"], re.DOTALL).group(1))
    for name, found in (("Plan", fields), ("figures.h", lists), ("plan_text.h", sections), ("step_lists.h", steps),
                        ("Topic", topics)):
        if not found:
            yield f"{name}: nothing found"
    for field in fields:
        if not re.search(rf"\bplan\.{field} =", texts["make_plan"]):
            yield f"Plan::{field} is not set in {FILES['make_plan']}"
    before_headline = texts["figures"].partition("headline_of")[0]
    for name in lists:
        if f"{name}(" not in before_headline:
            yield f"{name} is not among figures_of in {FILES['figures']}"
        if f"{name}(" not in texts["text"]:
            yield f"{name} is printed nowhere in {FOLDERS['text']}"
    printed = body(texts["plan_text"], "std::string plan_text(")
    for name in sections:
        if name != "plan_text" and f"{name}(" not in printed:
            yield f"{name} is not named in plan_text, {FILES['plan_text']}"
    for name in steps:
        for place in ("text", "sheets"):
            if f"{name}(" not in texts[place]:
                yield f"{name} stands nowhere in {FOLDERS[place]}"
    for topic in topics:
        if not re.search(rf"remarks_text\(plan, (?:plan::)?Topic::{topic}\b", texts["text"]):
            yield f"the remarks of Topic::{topic} are printed nowhere in {FOLDERS['text']}"
        drawn = re.search(rf"draw_remarks\(\w+, plan::Topic::{topic}\b|Group k\w+\{{[^;]*Topic::{topic}\b", texts["sheets"])
        # The sheet of numbers draws the remarks of each list of figures under it.
        if not drawn and not re.search(rf"FigureGroup group\{{[^;]*Topic::{topic}\b", texts["lists"]):
            yield f"the remarks of Topic::{topic} are drawn nowhere in {FOLDERS['sheets']}"


def self_test(texts):
    """A section of which everything is declared, and no place that must be kept in step is."""
    planted = {
        **texts,
        "plan": texts["plan"].replace("struct Plan {\n", "struct Plan {\n  PlantedPlan planted;\n"),
        "remarks": texts["remarks"].replace("enum class Topic {", "enum class Topic { planted,"),
        "figures.h": texts["figures.h"] + "FigureGroup planted_figures(const plan::Plan& plan);\n",
        "steps.h": texts["steps.h"] + "std::vector<StepList> planted_steps(const plan::Plan& plan, UnitSystem units);\n",
        "plan_text.h": texts["plan_text.h"] + "std::string planted_text(const plan::Plan& plan, const Style& style);\n",
    }
    seen = [" ".join(problem.split()[:4]) for problem in problems_of(planted)]
    expected = ["Plan::planted is not set", "planted_figures is not among", "planted_figures is printed nowhere",
                "planted_text is not named", "planted_steps stands nowhere in", "planted_steps stands nowhere in", "the remarks of Topic::planted", "the remarks of Topic::planted"]
    return [] if seen == expected else [f"of what was planted it saw {seen}"]


TEXTS = read(pathlib.Path(sys.argv[1]))
problems = list(problems_of(TEXTS)) or self_test(TEXTS)
for problem in problems:
    print(problem)
print(f"{len(problems)} problems")
sys.exit(1 if problems else 0)
