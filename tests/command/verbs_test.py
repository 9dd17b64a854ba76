"""Runs the built program the way a person does, and looks at its exit status and at what it writes where.

What each verb and option answers is tested without a process, in tests/unit/cli.
"""
import fcntl
import json
import os
import pathlib
import pty
import re
import struct
import subprocess
import sys
import tempfile
import termios
import unittest

PROGRAM, EXAMPLES = sys.argv[1], pathlib.Path(sys.argv[2])


def run(*words, **how):
    how.setdefault("stdout", subprocess.PIPE)
    return subprocess.run([PROGRAM, *map(str, words)], stderr=subprocess.PIPE, text=True, **how)


def on_terminal(columns, *words, **environment):
    """What the program prints on a terminal of so many columns."""
    ours, its = pty.openpty()
    fcntl.ioctl(its, termios.TIOCSWINSZ, struct.pack("HHHH", 40, columns, 0, 0))
    done = subprocess.Popen([PROGRAM, *map(str, words)], stdout=its, stderr=subprocess.DEVNULL, env={**os.environ, "NO_COLOR": "1", **environment})
    os.close(its)
    text = b""
    while True:
        try:
            more = os.read(ours, 65536)
        except OSError:  # the program has let go of the terminal
            break
        if not more:
            break
        text += more
    done.wait()
    os.close(ours)
    return text.decode().replace("\r\n", "\n")


class Program(unittest.TestCase):
    def test_sentences_are_as_wide_as_the_terminal(self):
        for words in (("chain", "1-1/2 FNPT", "1-1/2 FNPT", "--held", "--need", "ball valve"), ("chain", "1 FNPT", "1 FNPT", "--held", "--most-parts", "2"),
                      ("identify", "--od", "1.05 in", "--tpi", "14"), ("transfer", EXAMPLES / "bevel-bench.yaml"), ("plan", EXAMPLES / "bevel-bench.yaml")):
            widest = {}
            for columns in (40, 80, 100, 120, 200):
                lines = [line for line in on_terminal(columns, *words).split("\n") if "  " not in line.strip()]  # no table
                widest[columns] = max(map(len, lines))
                self.assertGreater(len(lines), 3, words)
                self.assertLessEqual(widest[columns], min(max(columns, 80), 120), (words, columns))
            if words[0] == "chain":
                self.assertGreater(widest[120], widest[80], words)
        text = run("chain", "1 FNPT", "1 FNPT", "--held", "--most-parts", "2").stdout
        self.assertEqual(text, on_terminal(100, "chain", "1 FNPT", "1 FNPT", "--held", "--most-parts", "2"))

    def test_the_list_is_no_wider_than_the_terminal(self):
        for columns in (80, 100):
            lines = on_terminal(columns, "list", EXAMPLES / "bevel-bench.yaml").split("\n")
            self.assertEqual([line for line in lines if len(line) > columns], [], columns)
            self.assertGreater(sum("[ ]" in line for line in lines), 20)

    def test_nothing_of_the_book_is_wider_than_the_terminal(self):
        for example in sorted(EXAMPLES.glob("*.yaml")):
            if "\nreservoir:" not in example.read_text(encoding="utf-8"):
                continue
            for units in ("inch", "metric"):
                lines = on_terminal(80, "plan", example, "--all", "--units", units).split("\n")
                self.assertGreater(len(lines), 20, example)
                self.assertEqual([line for line in lines if len(line) > 80], [], (example.name, units))

    def test_a_dumb_terminal_gets_no_escapes_and_an_empty_no_color_counts_for_nothing(self):
        job = EXAMPLES / "bevel-bench.yaml"
        self.assertIn("\x1b[", on_terminal(80, "plan", job, NO_COLOR="", TERM="xterm"))
        for quiet in ({"NO_COLOR": "", "TERM": "dumb"}, {"NO_COLOR": "1", "TERM": "xterm"}):
            self.assertNotIn("\x1b", on_terminal(80, "plan", job, **quiet))

    def test_help_is_done(self):
        done = run("--help")
        self.assertEqual((done.returncode, done.stderr), (0, ""))
        self.assertIn("  chain ", done.stdout)

    def test_an_answer_goes_to_standard_output(self):
        done = run("chain", "1 FNPT", "3/4 MGHT", "--json")
        self.assertEqual((done.returncode, done.stderr), (0, ""))
        self.assertEqual(json.loads(done.stdout)["chains"][0]["part_count"], 2)

    def test_no_answer_is_an_answer_and_exits_one(self):
        done = run("chain", "1 FNPT", "1 FNPT", "--most-parts", "1", "--held")
        self.assertEqual((done.returncode, done.stderr), (1, ""))
        self.assertIn("No chain", done.stdout)

    def test_a_job_comes_by_the_standard_input(self):
        text = (EXAMPLES / "bevel-bench.yaml").read_text(encoding="utf-8")
        by_name, by_input = run("plan", EXAMPLES / "bevel-bench.yaml"), run("plan", "-", input=text)
        self.assertEqual((by_input.returncode, by_input.stderr), (0, ""))
        foot = "  each joint, figure and source"  # names the file
        self.assertEqual(by_input.stdout.partition(foot)[0], by_name.stdout.partition(foot)[0])
        self.assertIn("source: the same with --all", " ".join(by_input.stdout.split()))
        wrong = run("plan", "-", input=text.replace("length: 48 in", "length: 48 inn"))
        self.assertEqual((wrong.returncode, wrong.stdout), (2, ""))
        self.assertRegex(wrong.stderr, r"^-:\d+:\d+: error: ")
        for words in (("bin", "take", "-"), ("bin", "undo", "--bin", "-")):
            done = run(*words, input=text)
            self.assertEqual((done.returncode, done.stdout), (2, ""), words)

    def test_check_reads_the_standard_input_and_nothing_is_named_that_cannot_be_typed_back(self):
        bin_text = "bin:\n  - {part: 1 x 1/2 hex bushing black iron, count: 2}\n"
        for what, said in (((EXAMPLES / "bevel-bench.yaml").read_text(encoding="utf-8"), "a job with"), (bin_text, "a bin with")):
            done = subprocess.run([PROGRAM, "check", "-"], input=what, capture_output=True, text=True)
            self.assertEqual((done.returncode, done.stderr), (0, ""))
            self.assertIn(f"-: nothing wrong; {said}", done.stdout)
        done = subprocess.run([PROGRAM, "check", "-"], input="bin:\n  - {part: no such thing}\n", capture_output=True, text=True)
        self.assertEqual((done.returncode, done.stdout), (2, ""))
        self.assertIn("-:2:", done.stderr)
        with open(EXAMPLES / "bevel-bench.yaml", encoding="utf-8") as text:
            card = run("plan", "-", stdin=text, cwd=EXAMPLES).stdout
        self.assertNotIn("riserun plan -", card)
        self.assertIn("the same with --all", " ".join(card.split()))

    def test_what_is_unknown_is_said_beside_what_is_missing(self):
        done = run("plan", "--bogus")
        self.assertEqual((done.returncode, done.stdout), (2, ""))
        for word in ("job", "--bogus"):
            self.assertIn(word, done.stderr)

    def test_a_starter_in_metric_is_a_job_like_that_in_inch(self):
        with tempfile.TemporaryDirectory() as folder:
            for units in ("inch", "metric"):
                self.assertEqual(run("new", "--units", units, "job.yaml", cwd=folder).returncode, 0)
                file = pathlib.Path(folder) / "job.yaml"
                text = file.read_text(encoding="utf-8")
                file.unlink()
                self.assertIn(f"\nunits: {units} ", text)
                file.write_text(text, encoding="utf-8")
                self.assertEqual(json.loads(run("plan", file, "--json").stdout)["verdict"], "ready", units)
                file.unlink()
            measures = [line.split("#")[0] if not line.lstrip().startswith("#") else line for line in text.splitlines()[9:]]
            # Threads, and dials that are sold in psi, are called what they are called.
            left = [line for line in measures if re.search(r"\d (in|ft|psi|gal|scfm|degF|ksi)\b", line)
                    and not re.search(r"need:|ends in:|part:|regulator range", line)]
            self.assertEqual(left, [])

    def test_a_port_that_is_not_there_is_one_mistake(self):
        text = (EXAMPLES / "bevel-bench.yaml").read_text(encoding="utf-8")
        text = re.sub(r"from: (gauge|relief) bung", "from: 1/4 MNPT", text)
        for name in ("bin.yaml", "prices.yaml"):
            text = text.replace(f" {name}", f" {EXAMPLES / name}")
        with tempfile.TemporaryDirectory() as folder:
            job = pathlib.Path(folder) / "job.yaml"
            job.write_text(text, encoding="utf-8")
            done = run("check", job)
        self.assertEqual(done.returncode, 2)
        self.assertEqual(done.stderr.count("no port is called '1/4 MNPT'"), 2)
        self.assertNotIn("taken", done.stderr)

    def test_a_program_gets_its_mistakes_as_json(self):
        with tempfile.TemporaryDirectory() as folder:
            job = pathlib.Path(folder, "job.yaml")
            text = (EXAMPLES / "bevel-bench.yaml").read_text(encoding="utf-8")
            job.write_text(text.replace("length: 48 in", "length: 48 inn").replace("rim: 5", "rimm: 5"), encoding="utf-8")
            done = run("plan", job, "--json")
            self.assertEqual((done.returncode, done.stdout), (2, ""))
            errors = json.loads(done.stderr)["errors"]
            self.assertEqual(len(errors), 2)
            for error in errors:
                self.assertEqual(error["file"], str(job))
                self.assertGreater(error["line"], 0)
        for words in (("plumb", "--json"), ("chain", "1 FTP", "3/4 MGHT", "--json"), ("--json", "chain", "1 FNPT")):
            done = run(*words)
            self.assertEqual((done.returncode, done.stdout), (2, ""), words)
            self.assertTrue(json.loads(done.stderr)["errors"][0]["message"], words)

    def test_bad_input_goes_to_standard_error_alone_and_exits_two(self):
        for words in (("plumb", "x"), ("chain", "1 FTP", "3/4 MGHT"), ("plan", "nowhere.yaml"), ("plan", "/"),
                      ("chain", "1 FNPT", "1 FNPT", "--need", b"union \xff".decode(errors="surrogateescape"))):
            done = run(*words, errors="backslashreplace")
            self.assertEqual((done.returncode, done.stdout), (2, ""), words)
            self.assertNotEqual(done.stderr, "", words)

    def test_an_answer_that_cannot_be_written_exits_with_two(self):
        with open("/dev/full", "w", encoding="utf-8") as full:
            done = run("chain", "1 FNPT", "3/4 MGHT", stdout=full)
        self.assertEqual((done.returncode, done.stderr), (2, "error: the answer could not be written.\n"))

    def test_what_is_piped_on_has_no_colour(self):
        self.assertNotIn("\x1b", run("plan", EXAMPLES / "bevel-bench.yaml").stdout)

    def test_files_are_found_from_the_folder_that_one_stands_in(self):
        with tempfile.TemporaryDirectory() as folder:
            self.assertEqual(run("new", "job.yaml", cwd=folder).returncode, 0)
            self.assertEqual(run("plan", "job.yaml", cwd=folder).returncode, 0)
            self.assertIn("nothing wrong; a job", run("check", "job.yaml", cwd=folder).stdout)


if __name__ == "__main__":
    unittest.main(argv=sys.argv[:1])
