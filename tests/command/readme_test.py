"""Every command that README shows is run as it stands there, and prints what README says it prints.

A fenced block that starts with a line `$ riserun ...` is one such command with its output. A line `...` in the output
stands for any lines left out.
"""
import pathlib
import re
import subprocess
import sys
import tempfile

program, readme = pathlib.Path(sys.argv[1]), pathlib.Path(sys.argv[2])
source = readme.parent


def shown_commands(text):
    for block in re.findall(r"^```\w*\n(\$ riserun .*?)^```", text, re.M | re.S):
        first, _, output = block.partition("\n")
        yield first[2:], output


def matches(expected, actual):
    pieces = [re.escape(piece) for piece in re.split(r"^\.\.\.\n", expected, flags=re.M)]
    return re.fullmatch("(?:.*\n)*?".join(pieces), actual) is not None


failures = 0
count = 0
with tempfile.TemporaryDirectory() as folder:
    (pathlib.Path(folder) / "examples").symlink_to(source / "examples")
    for command, expected in shown_commands(readme.read_text()):
        count += 1
        line = f'"{program}"' + command[len("riserun"):]
        run = subprocess.run(line, shell=True, cwd=folder, capture_output=True, text=True)
        actual = run.stdout + run.stderr
        if not matches(expected, actual):
            failures += 1
            print(f"README shows something else for: {command}\n--- README\n{expected}--- now\n{actual}")
print(f"{count} commands of README run, {failures} differ")
sys.exit(1 if failures or count == 0 else 0)
