"""The list of questions, always the same for the same catalog and examples.

`asked.py PROGRAM` prints how many there are of each part; `asked.py PROGRAM --lines` prints them all.
"""
import argparse
import collections
import json
import pathlib
import shlex
import subprocess

import chain_questions
import job_questions
import small_questions
from shop import Shop

EXAMPLES = pathlib.Path(__file__).parents[2] / "examples"


def asked(program):
    """The questions, and the files that they name: the text of each by its name."""
    told = subprocess.run([program, "catalog", "--json"], capture_output=True, text=True, check=True)
    shop = Shop(json.loads(told.stdout))
    examples = {path.name: path.read_text(encoding="utf-8") for path in sorted(EXAMPLES.glob("*.yaml"))}
    jobs = job_questions.files(shop, examples)
    example_files = {f"examples/{name}": text for name, text in examples.items()}
    catalog_files = sorted(path.name for path in (pathlib.Path(program).parents[1] / "catalog").glob("*.yaml"))
    questions = chain_questions.questions(shop) + job_questions.questions(sorted(example_files), sorted(jobs))
    return questions + small_questions.questions(catalog_files), shop.files() | jobs | example_files


def main():
    parser = argparse.ArgumentParser(description=__doc__, formatter_class=argparse.RawDescriptionHelpFormatter)
    parser.add_argument("program", type=pathlib.Path)
    parser.add_argument("--lines", action="store_true", help="every question, not only how many")
    words = parser.parse_args()
    questions, _ = asked(words.program.resolve())
    if words.lines:
        for question in questions:
            print(question.name, shlex.join(question.words))
    for part, count in collections.Counter(question.part for question in questions).items():
        print(f"{count:5} {part}")
    print(f"{len(questions):5} in all")


if __name__ == "__main__":
    main()
