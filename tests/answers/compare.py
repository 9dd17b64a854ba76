"""Compares two dumps of dump.py: how many answers are equal, and what differs. Exit status 1 when something does.

`--ignore-words` compares JSON answers only, and leaves out what is a sentence in them.
"""
import argparse
import collections
import difflib
import gzip
import json
import shlex
import sys

# Keys whose value is a sentence, or a list of sentences.
SENTENCES = {"text", "reason", "cautions", "all_cautions", "steps", "notes", "mends", "mend", "why", "what", "value", "measured", "source",
             "instruction", "measure", "datum", "misses", "refusals", "asked", "allowed", "lookalikes", "limited_by",
             "not_buildable_because"}


def load(path, without):
    with gzip.open(path, "rt", encoding="utf-8") as lines:
        records = map(json.loads, lines)
        return {record["name"]: record for record in records if not set(without) & set(record["words"])}


def is_sentence(value):
    return isinstance(value, str) or isinstance(value, list) and bool(value) and all(isinstance(item, str) for item in value)


def without_sentences(value):
    """A list of sentences counts by its length."""
    if isinstance(value, list):
        return [without_sentences(item) for item in value]
    if not isinstance(value, dict):
        return value
    return {key: (len(item) if isinstance(item, list) else "...") if key in SENTENCES and is_sentence(item) else without_sentences(item)
            for key, item in value.items()}


def without_new_keys(new, old):
    """What `old` knows nothing of is left out of `new`."""
    if isinstance(new, dict) and isinstance(old, dict):
        return {key: without_new_keys(item, old[key]) for key, item in new.items() if key in old}
    if isinstance(new, list) and isinstance(old, list) and len(new) == len(old):
        return [without_new_keys(a, b) for a, b in zip(new, old)]
    return new


def answers(old, new, words):
    """What of the two is compared, as text; None where nothing of it is."""
    if not words.ignore_words:
        return [f"exit status {record['status']}\n{record['out']}\n--- stderr\n{record['err']}" for record in (old, new)]
    if "--json" not in old["words"]:
        return None
    pair = []
    for record in (old, new):
        try:
            pair.append(without_sentences(json.loads(record["out"])))
        except ValueError:
            pair.append("no JSON" if record["out"] else "no answer")
    if words.ignore_new_keys:
        pair[1] = without_new_keys(pair[1], pair[0])
    return [f"exit status {record['status']}\n{json.dumps(value, indent=1, sort_keys=True)}" for record, value in zip((old, new), pair)]


def show(old, pair, words):
    print(f"\n{old['name']}: riserun {shlex.join(old['words'])}")
    diff = list(difflib.unified_diff(*(text.splitlines() for text in pair), "old", "new", n=1, lineterm=""))[2:]
    print("\n".join("  " + line for line in diff[:words.lines]))
    if len(diff) > words.lines:
        print(f"  ... {len(diff) - words.lines} lines more")


def main():
    parser = argparse.ArgumentParser(description=__doc__, formatter_class=argparse.RawDescriptionHelpFormatter)
    parser.add_argument("old")
    parser.add_argument("new")
    parser.add_argument("--ignore-words", action="store_true", help="JSON answers only, without the sentences in them")
    parser.add_argument("--ignore-new-keys", action="store_true", help="with --ignore-words: keys that the old JSON does not have")
    parser.add_argument("--without", action="append", default=[], metavar="WORD",
                        help="leave out the questions with this word, as metric; may be given again")
    parser.add_argument("--limit", type=int, default=3, help="show so many differences of each part (3)")
    parser.add_argument("--lines", type=int, default=14, help="show so many lines of each (14)")
    words = parser.parse_args()
    old, new = load(words.old, words.without), load(words.new, words.without)
    both = [name for name in old if name in new]
    asked_otherwise = [name for name in both if any(old[name][key] != new[name][key] for key in ("words", "files"))]
    late = [name for name in both if None in (old[name]["status"], new[name]["status"])]
    equal, different = 0, collections.defaultdict(list)
    for name in both:
        pair = None if name in asked_otherwise or name in late else answers(old[name], new[name], words)
        if pair and pair[0] == pair[1]:
            equal += 1
        elif pair:
            different[old[name]["part"]].append((name, pair))
    for part, rows in different.items():
        print(f"\n== {part}: {len(rows)} differ")
        for name, pair in rows[:words.limit]:
            show(old[name], pair, words)
    alone = len(old) + len(new) - 2 * len(both)
    print(f"{equal} answers are equal, {sum(map(len, different.values()))} differ"
          f"; {len(asked_otherwise)} asked otherwise, {alone} in one dump only, {len(late)} out of time" +
          (": " if late else "") + ", ".join(late))
    return 1 if different or asked_otherwise or alone or late or not equal else 0


if __name__ == "__main__":
    sys.exit(main())
