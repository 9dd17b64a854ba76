"""Files with slips of every kind, through every verb: a status of 0, 1 or 2, in bounded time and memory, and words.

RISERUN_MUTATIONS=3000 runs so many files (60 when left out), RISERUN_SEED=7 begins elsewhere. What fails is kept in the
folder RISERUN_KEEP, if it is given.
"""
import json
import os
import pathlib
import random
import re
import subprocess
import sys
import tempfile
import time

PROGRAM, EXAMPLES = os.path.abspath(sys.argv[1]), pathlib.Path(sys.argv[2]).resolve()
COUNT = int(os.environ.get("RISERUN_MUTATIONS", "60"))
SEED = int(os.environ.get("RISERUN_SEED", "1"))
KEEP = os.environ.get("RISERUN_KEEP")
MOST_SECONDS = float(os.environ.get("RISERUN_MOST_SECONDS", "60"))
MOST_MEGABYTES = float(os.environ.get("RISERUN_MOST_MEGABYTES", "2000"))  # an instrumented build takes more than its own

OWN = """parts:
  - {id: own/tee, name: shop tee, family: tee, size: "1", material: brass, rating: 150 psi, price: 3 usd, source: mine,
     across flats: 1 in, ports: [{port: 1 MNPT, bore: 1 in, reach: 1 in}, {port: 3/4 MGHT, bore: 0.7 in, reach: 1 in},
     {port: 1/2 FNPT, bore: 0.5 in, reach: 1-1/4 in, heading: 90}]}
  - {id: own/valve, name: shop valve, role: check valve, check: spring, opening pressure: 0.5 psi, size: 3/4,
     material: bronze, rating: 10 bar, source: mine, one way: yes, loss: none, stocked: no,
     ports: [{port: 3/4 FNPT, bore: 18 mm, reach: 30 mm}, {port: 3/4 FNPT, bore: 18 mm, reach: 30 mm}]}
duties:
  - {materials: [brass], heat: {150 F: 1, 200 F: 0.8}, air: as water, vacuum: stands, source: mine}
prices:
  - {part: "1 x 3/4 hex bushing brass", price: 4.50 usd}
  - {part: nipple/galvanized/1-2x4, price: 1 usd}
"""
BIN = """bin:
  - {part: "1 x 3/4 hex bushing brass", count: 3}
  - {part: "1/2 x 4 nipple, galvanized", measured: {length: 3-7/8 in, rating: 150 psi}}
  - {part: "1/2 garden hose, by the foot", count: 1, length: 7 ft}
  - {part: union/black-iron/1, material: black iron}
"""
PRICES = "prices:\n  - {part: \"3/4 ball valve brass\", price: $12.30}\n  - {part: \"1 union galvanized\", price: 9 usd}\n"

ODD = ["", "0", "-1", "1e300", "1e-300", "nan", "inf", "0 in", "-3 in", "1e9 in", "1/0 in", "999999999999999999999", "1 psi",
       "no", "yes", "[]", "{}", "[[]]", "{a: b}", "\"\"", "\"\\n\"", "\"\\x1b[31m\"", "\"\\u202e\"", "~", "*a", "&a b", "!x y",
       "'", "\"", "|", ">", "- -", "?", ": :", "#", "\u00bd in", "\u202e", "\u0085", "\x1b[2J", "\x00", "\u8def", "x" * 3000,
       "1 FNPT", "1/8 MBSPT", "3/4 FGHT", "hose", "union", "brass", "lid", "side", "riser bung", "table inlet", "100 ft", "1 gal",
       "1e6 scfm", "0.0001 scfm", "212 degF", "-40 degC", "[hose, hose, hose]", "[1, 2, 3]", "first", "both", "welded riser"]
VERBS = ("plan", "riser", "transfer", "walls", "leak-test", "list", "check")
UNPRINTABLE = re.compile("[\x00-\x09\x0b-\x1f\x7f-\x9f\u200b\u200e\u200f\u2028-\u202e\u2066-\u2069\ufeff]")


def mutated(text, rng):
    for _ in range(rng.choice((1, 1, 1, 2, 3, 8))):
        if not text:
            return ""
        lines = text.split("\n")
        at = rng.randrange(len(lines))
        kind = rng.randrange(18)
        numbers = [found.span() for found in re.finditer(r"(?<![\w.])\d+(\.\d+)?(?![\w.])", text)]
        values = [found.span(1) for found in re.finditer(r"[:,\[] *([^:,\[\]{}\n#]+)", text)]
        if kind == 0:
            del lines[at]
        elif kind == 1:
            lines.insert(rng.randrange(len(lines)), lines[at])
        elif kind == 2:
            other = rng.randrange(len(lines))
            lines[at], lines[other] = lines[other], lines[at]
        elif kind == 3:
            lines[at] = " " * rng.randrange(5) + lines[at].lstrip()
        elif kind == 4:
            place = rng.randrange(len(text) + 1)
            return text[:place] + rng.choice(ODD) + text[place:]
        elif kind == 5:
            text = text[: rng.randrange(len(text))]
            continue
        if kind < 5:
            text = "\n".join(lines)
        elif numbers and kind > 9:
            first, last = rng.choice(numbers)
            text = text[:first] + f"{float(text[first:last]) * rng.choice((0, 0.1, 0.5, 0.9, 1.1, 2, 10)):.4g}" + text[last:]
        elif values and kind < 8:
            first, last = rng.choice(values)
            text = text[:first] + rng.choice(ODD) + text[last:]
        elif values:
            (first, last), (other, end) = rng.choice(values), rng.choice(values)
            text = text[:first] + text[other:end] + text[last:]
    return text


def ask(words, folder):
    """Status, seconds of the processor, megabytes, what was printed and what was said."""
    out, err = folder / "out", folder / "err"
    begun = time.monotonic()
    with open(out, "wb") as to, open(err, "wb") as said:
        process = subprocess.Popen([PROGRAM, *words], stdout=to, stderr=said, cwd=folder)
        while True:
            ended, status, used = os.wait4(process.pid, os.WNOHANG)
            if ended:
                break
            if time.monotonic() - begun > 10 * MOST_SECONDS:  # however busy the machine is
                process.kill()
            time.sleep(0.002)
    process.returncode = os.waitstatus_to_exitcode(status)
    return process.returncode, used.ru_utime + used.ru_stime, used.ru_maxrss / 1024, out.read_bytes(), err.read_bytes()


def complaints(words, answer):
    status, seconds, megabytes, out, err = answer
    if status not in (0, 1, 2):
        yield f"status {status}"
    if seconds > MOST_SECONDS:
        yield f"{seconds:.1f} s"
    if megabytes > MOST_MEGABYTES:
        yield f"{megabytes:.0f} MB"
    if (status == 2) != bool(err):
        yield "words without a mistake, or a mistake without words"
    for what in (out, err):
        try:
            if found := UNPRINTABLE.search(what.decode().replace("\t", " ")):
                yield f"prints {found.group()!r}"
        except UnicodeDecodeError as error:
            yield f"prints what is no UTF-8: {error}"
    if "--json" in words and status in (0, 1):
        try:
            json.loads(out)
        except ValueError as error:
            yield f"no JSON: {error}"


def question(rng, jobs, folder):
    """A file with slips, written into the folder, and the words of a command that reads it."""
    kind = rng.choice(("job", "job", "job", "own", "bin", "prices"))
    seed = rng.choice(jobs) if kind == "job" else {"own": OWN, "bin": BIN, "prices": PRICES}[kind]
    (folder / "file.yaml").write_bytes(mutated(seed, rng).encode("utf-8", "surrogatepass"))
    (folder / "job.yaml").write_text(rng.choice(jobs))
    more = rng.choice(([], ["--json"], ["--units", "metric"]))
    if kind == "job":
        verb = rng.choice(VERBS)
        return [verb, "file.yaml", *([] if verb == "check" else more)]
    option = ["--bin" if kind == "bin" else "--catalog", "file.yaml"]
    return rng.choice((["check", "file.yaml"], ["chain", "1 FNPT", "3/4 MGHT", *option, *more], ["plan", "job.yaml", *option, *more],
                       ["chain", "1 FNPT", "3/4 MGHT", "1/2 FNPT", *option, *more], ["list", "job.yaml", *option, *more],
                       ["chain", "1 FNPT", "1/2 MNPT", "--alternatives", "3", *option, *more]))


def main():
    jobs = [path.read_text() for path in sorted(EXAMPLES.glob("*.yaml"))]
    rng = random.Random(SEED)
    failures = 0
    slowest, largest, statuses = 0.0, 0.0, {}
    with tempfile.TemporaryDirectory() as place:
        folder = pathlib.Path(place)
        for number in range(COUNT):
            words = question(rng, jobs, folder)
            answer = ask(words, folder)
            statuses[answer[0]] = statuses.get(answer[0], 0) + 1
            slowest, largest = max(slowest, answer[1]), max(largest, answer[2])
            for complaint in complaints(words, answer):
                failures += 1
                print(f"{number}: {' '.join(words)}: {complaint}\n{answer[4][:400].decode(errors='replace')}")
                if KEEP:
                    kept = pathlib.Path(KEEP, f"{SEED}-{number}.yaml")
                    kept.write_bytes((folder / "file.yaml").read_bytes())
                    kept.with_suffix(".job").write_bytes((folder / "job.yaml").read_bytes())
    print(f"{COUNT} files, seed {SEED}: statuses {statuses}, at most {slowest:.2f} s and {largest:.0f} MB, {failures} complaints")
    return 1 if failures or COUNT == 0 else 0


if __name__ == "__main__":
    sys.exit(main())
