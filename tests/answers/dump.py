"""Asks the command some thousands of questions and stores what it answers, for compare.py.

`dump.py PROGRAM OUT` writes gzip'd JSON lines, one for each question: its words, a sum of the files that they name, exit status,
stdout and stderr. The questions are asked in a folder of their own that holds the files and a link to the program's catalog, so that
no path differs between two checkouts. A run that takes longer than a minute of processor time has no exit status.
"""
import argparse
import concurrent.futures
import functools
import gzip
import hashlib
import json
import os
import pathlib
import signal
import subprocess
import tempfile
import time

from asked import asked

MOST_CPU_S, TIME_OUT_S = 60, 600
ENVIRONMENT = {"PATH": "/usr/bin:/bin", "LC_ALL": "C.UTF-8", "TZ": "UTC"}


def write_files(folder, program, files):
    for name, text in files.items():
        path = folder / name
        path.parent.mkdir(exist_ok=True)
        path.write_text(text, encoding="utf-8")
    (folder / "catalog").symlink_to(program.parents[1] / "catalog")


def sum_of_files(words, files):
    """So that an example that was changed is not taken for an answer that was."""
    named = "".join(files[word] for word in words if word in files)
    return hashlib.sha1(named.encode()).hexdigest()[:12] if named else ""


def answer(question, program, folder, files):
    """The record of one question, and the seconds that it took."""
    started = time.monotonic()
    try:
        # Processor time, so that a busy machine makes no other dump.
        done = subprocess.run(["prlimit", f"--cpu={MOST_CPU_S}", program, *question.words], cwd=folder, env=ENVIRONMENT,
                              capture_output=True, stdin=subprocess.DEVNULL, timeout=TIME_OUT_S)
        status, out, err = done.returncode, done.stdout, done.stderr
        if status in (-signal.SIGXCPU, -signal.SIGKILL):
            status, out, err = None, b"", b""
    except subprocess.TimeoutExpired:
        status, out, err = None, b"", b""
    text = functools.partial(without_paths, paths={str(folder) + "/": "", str(program.parents[1]) + "/": ""})
    record = {**question._asdict(), "files": sum_of_files(question.words, files), "status": status, "out": text(out), "err": text(err)}
    return record, time.monotonic() - started


def without_paths(output, paths):
    text = output.decode("utf-8", "replace")
    for path, instead in paths.items():
        text = text.replace(path, instead)
    return text


def dump(program, out, jobs=2, part=None, every=1):
    """Writes the dump and returns the records with their seconds."""
    program = pathlib.Path(program).resolve()
    questions, files = asked(program)
    questions = [question for question in questions if part in (None, question.part)][::every]
    with tempfile.TemporaryDirectory() as place:
        folder = pathlib.Path(place)
        write_files(folder, program, files)
        with concurrent.futures.ThreadPoolExecutor(jobs) as pool:
            asking = functools.partial(answer, program=program, folder=folder, files=files)
            timed = list(pool.map(asking, questions))
    # No name and no time in the head: two equal dumps are equal byte for byte.
    with open(out, "wb") as raw, gzip.GzipFile("", "wb", 6, raw, mtime=0) as packed:
        for record, _ in timed:
            packed.write((json.dumps(record, ensure_ascii=False) + "\n").encode("utf-8"))
    return timed


def main():
    parser = argparse.ArgumentParser(description=__doc__, formatter_class=argparse.RawDescriptionHelpFormatter)
    parser.add_argument("program", help="build/riserun of the checkout to be asked")
    parser.add_argument("out", help="the file to write")
    parser.add_argument("--jobs", type=int, default=2, help="so many at once (2)")
    parser.add_argument("--part", help="only this part; asked.py names them")
    parser.add_argument("--every", type=int, default=1, help="only each Nth question")
    words = parser.parse_args()
    started = time.monotonic()
    timed = dump(words.program, words.out, words.jobs, words.part, words.every)
    statuses = [record["status"] for record, _ in timed]
    print(f"{len(timed)} answers in {time.monotonic() - started:.0f} s, {os.path.getsize(words.out) / 1e6:.1f} MB: " +
          ", ".join(f"{statuses.count(status)} with status {status}" for status in sorted(set(statuses), key=str)))
    print("The slowest:")
    for record, seconds in sorted(timed, key=lambda pair: -pair[1])[:5]:
        print(f"  {seconds:5.1f} s  {record['name']}")


if __name__ == "__main__":
    main()
