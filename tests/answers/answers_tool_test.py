"""A dump of a few answers is the same when made again; and compare.py sees an answer that is not."""
import gzip
import json
import pathlib
import subprocess
import sys
import tempfile
import unittest

PROGRAM, HERE = sys.argv[1], pathlib.Path(__file__).parent


def change(record):
    if record["part"] == "chain" and '"price_usd": ' in record["out"]:
        return {**record, "out": record["out"].replace('"price_usd": ', '"price_usd": 1', 1)}
    return record


def reword(record):
    return {**record, "out": record["out"].replace('"text": "', '"text": "so ')}


class AnswersTool(unittest.TestCase):
    def setUp(self):
        place = tempfile.TemporaryDirectory()
        self.addCleanup(place.cleanup)
        self.folder = pathlib.Path(place.name)

    def run_tool(self, name, *words):
        return subprocess.run([sys.executable, HERE / name, *words], capture_output=True, text=True)

    def dump(self, name):
        done = self.run_tool("dump.py", PROGRAM, self.folder / name, "--every", "200")
        self.assertEqual(done.returncode, 0, done.stderr)
        return self.folder / name

    def changed(self, dump, name, how):
        with gzip.open(dump, "rt") as lines, gzip.open(self.folder / name, "wt") as out:
            out.writelines(json.dumps(how(json.loads(line))) + "\n" for line in lines)
        return self.folder / name

    def test_the_same_program_answers_the_same_and_a_changed_answer_is_seen(self):
        old, again = self.dump("old"), self.dump("again")
        self.assertEqual(old.read_bytes(), again.read_bytes())
        same = self.run_tool("compare.py", old, again)
        self.assertEqual(same.returncode, 0, same.stdout + same.stderr)
        self.assertIn("answers are equal, 0 differ", same.stdout)
        changed = self.changed(old, "changed", change)
        for mode in ((), ("--ignore-words",)):
            other = self.run_tool("compare.py", old, changed, *mode)
            self.assertEqual(other.returncode, 1)
            self.assertIn('"price_usd": 1', other.stdout)
        reworded = self.changed(old, "reworded", reword)
        self.assertEqual(self.run_tool("compare.py", old, reworded, "--ignore-words").returncode, 0)


if __name__ == "__main__":
    unittest.main(argv=sys.argv[:1])
