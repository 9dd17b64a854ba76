"""Quantities of different kinds do not mix: `quantities_do_not_mix_test.py COMPILER SOURCE_DIR`.

Compiles quantities_do_not_mix.cpp as it stands, which must succeed, and once for each forbidden line, which must fail with
an error on just that line.
"""

import concurrent.futures
import pathlib
import re
import subprocess
import sys

compiler, source_dir = sys.argv[1], pathlib.Path(sys.argv[2])
snippet = pathlib.Path(__file__).with_name("quantities_do_not_mix.cpp")
lines = snippet.read_text(encoding="utf-8").splitlines()


def compile_with(mix):
    command = [compiler, "-std=c++20", "-fsyntax-only", f"-DMIX={mix}", "-I", str(source_dir / "core"), str(snippet)]
    return subprocess.run(command, capture_output=True, text=True, check=False)


def complaint(mix):
    result = compile_with(mix)
    if mix == 0:
        return "" if result.returncode == 0 else f"the right lines do not compile:\n{result.stderr}"
    place = next(i for i, line in enumerate(lines) if re.search(rf"MIX == {mix}\b", line)) + 2
    errors = re.findall(rf"{re.escape(snippet.name)}:(\d+):\d+: error", result.stderr)
    if result.returncode != 0 and errors == [str(place)]:
        return ""
    return f"line {place} compiles, or fails elsewhere: {lines[place - 1].strip()}\n{result.stderr}"


mixes = [0] + [int(number) for line in lines for number in re.findall(r"^#(?:el)?if MIX == (\d+)", line)]
with concurrent.futures.ThreadPoolExecutor(max_workers=2) as pool:
    complaints = [text for text in pool.map(complaint, mixes) if text]
for text in complaints:
    print(text)
print(f"{len(mixes) - 1} forbidden lines tried, {len(complaints)} complaints")
sys.exit(1 if complaints or len(mixes) < 5 else 0)
