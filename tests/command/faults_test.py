"""What can go wrong around the program: a full disk, a closed output, files that are none, signals, little memory.

Each time the exit status is looked at, what was said, and what was kept.
"""
import json
import os
import pathlib
import resource
import select
import shutil
import signal
import subprocess
import sys
import tempfile
import threading
import time
import unittest

PROGRAM, EXAMPLES = os.path.abspath(sys.argv[1]), pathlib.Path(sys.argv[2]).resolve()
JOB = EXAMPLES / "bevel-bench.yaml"
CHAIN = ("chain", "1 FNPT", "3/4 MGHT")
IDENTIFY = ("identify", "--od", "1.05 in", "--tpi", "14")
ANSWERS = (CHAIN, (*CHAIN, "--json"), ("--help",), ("chain", "--help"), ("catalog",), ("check", JOB), IDENTIFY, ("plan", JOB),
           ("plan", JOB, "--json"), *((verb, JOB) for verb in ("riser", "transfer", "walls", "leak-test", "list")))
NOT_WRITTEN = "error: the answer could not be written.\n"


def run(*words, **how):
    how.setdefault("stdout", subprocess.PIPE)
    how.setdefault("stderr", subprocess.PIPE)
    return subprocess.run([PROGRAM, *map(os.fspath, words)], text=True, errors="backslashreplace", timeout=60, **how)


class InAFolder(unittest.TestCase):
    def setUp(self):
        self.folder = pathlib.Path(tempfile.mkdtemp())
        self.addCleanup(shutil.rmtree, self.folder, ignore_errors=True)

    def refused(self, why, *words, **how):
        done = run(*words, **how)
        self.assertEqual((done.returncode, done.stdout), (2, ""), words)
        self.assertIn(why, done.stderr)


class Output(InAFolder):
    def test_on_a_full_disk_is_an_error_of_every_verb(self):
        for words in ANSWERS:
            with open("/dev/full", "w", encoding="utf-8") as full:
                done = run(*words, stdout=full)
            self.assertEqual((done.returncode, done.stderr), (2, NOT_WRITTEN), words)

    def test_that_is_closed_is_an_error_of_every_verb(self):
        for words in ANSWERS:
            done = run(*words, stdout=None, preexec_fn=lambda: os.close(1))
            self.assertEqual((done.returncode, done.stderr), (2, NOT_WRITTEN), words)

    def test_into_a_closed_pipe_ends_by_the_signal_or_says_so(self):
        for ignored, status in ((False, -signal.SIGPIPE), (True, 2)):
            reader, writer = os.pipe()
            os.close(reader)
            action = signal.SIG_IGN if ignored else signal.SIG_DFL
            done = run("catalog", stdout=writer, restore_signals=False,
                       preexec_fn=lambda action=action: signal.signal(signal.SIGPIPE, action))
            os.close(writer)
            self.assertEqual((done.returncode, done.stderr), (status, NOT_WRITTEN if ignored else ""))

    def test_never_goes_into_a_file_of_the_program(self):
        job = self.folder / "job.yaml"
        done = run("new", job, stdout=None, stderr=None, preexec_fn=lambda: os.closerange(0, 3))
        self.assertEqual(done.returncode, 2)
        self.assertEqual(job.read_text(), self.starter_job())

    def starter_job(self):
        run("new", self.folder / "other.yaml")
        return (self.folder / "other.yaml").read_text()


class WrittenFiles(InAFolder):
    def test_on_a_full_disk_leave_what_was_there(self):
        disk = self.folder / "disk"
        disk.mkdir()
        mounted = subprocess.run(["mount", "-t", "tmpfs", "-o", "size=8k", "none", disk], capture_output=True, check=False)
        if mounted.returncode != 0:
            self.skipTest("no small disk can be had here")
        self.addCleanup(subprocess.run, ["umount", disk], check=False)
        (disk / "old.dot").write_text("old picture")
        (disk / "filling").write_text("x" * 4096)
        self.refused("job.yaml: error: cannot be written: No space left on device", "new", disk / "job.yaml")
        self.refused("old.dot: error: cannot be written: No space left on device", *CHAIN, "--picture", disk / "old.dot")
        self.assertEqual((disk / "old.dot").read_text(), "old picture")
        self.assertEqual(sorted(path.name for path in disk.iterdir()), ["filling", "old.dot"])

    def test_into_a_folder_that_takes_none(self):
        closed = self.folder / "closed"
        closed.mkdir()
        closed.chmod(0o555)
        if os.access(closed, os.W_OK):  # the superuser may write everywhere but there
            closed = pathlib.Path("/proc")
        self.refused("cannot be made", "new", closed / "job.yaml")
        self.refused("cannot be made", *CHAIN, "--picture", closed / "a.dot")

    def test_longer_than_a_file_may_be(self):
        def little():
            signal.signal(signal.SIGXFSZ, signal.SIG_IGN)
            resource.setrlimit(resource.RLIMIT_FSIZE, (1000, 1000))
        self.refused("File too large", "new", self.folder / "job.yaml", preexec_fn=little)
        self.assertEqual(list(self.folder.iterdir()), [])

    def test_as_a_pipe_are_written_into_it(self):
        pipe = self.folder / "pipe"
        os.mkfifo(pipe)
        got = []
        reader = threading.Thread(target=lambda: got.append(pipe.read_text()))
        reader.start()
        self.assertEqual(run(*CHAIN, "--picture", pipe).returncode, 0)
        reader.join()
        self.assertTrue(got[0].startswith("digraph") and got[0].endswith("}\n"))


class ReadFiles(InAFolder):
    def test_that_are_none_are_refused(self):
        loop, gone = self.folder / "loop", self.folder / "gone"
        loop.symlink_to("loop")
        gone.symlink_to("nowhere")
        for file, why in ((self.folder, "this is a folder"), (loop, "cannot be opened for reading: Too many levels"),
                          (gone, "there is no such file"), ("/proc/self/mem", "cannot be read to its end"),
                          ("", "")):
            for words in (("plan", file), ("check", file), (*CHAIN, "--catalog", file), (*CHAIN, "--bin", file)):
                if file or words[0] in ("plan", "check"):  # an option without a value is another matter
                    self.refused(why, *words)

    def test_without_an_end_are_refused(self):
        self.refused("larger than 4 MB", "plan", "/dev/zero")

    def test_that_a_job_names_and_that_vanished_are_named(self):
        job = self.folder / "job.yaml"
        job.write_text(JOB.read_text().replace("\nbin:\n", "\nbin: drawer.yaml\nwas:\n"))
        self.refused("drawer.yaml: error: there is no such file", "plan", job)

    def test_as_a_pipe_are_read_or_refused_but_never_waited_for(self):
        pipe = self.folder / "pipe.yaml"
        os.mkfifo(pipe)
        writer = threading.Thread(target=lambda: pipe.write_text(JOB.read_text()))
        writer.start()
        done = run("plan", pipe, "--json")
        writer.join()
        self.assertEqual(json.loads(done.stdout), json.loads(run("plan", JOB, "--json").stdout))
        self.refused("is no file that can be read twice", "check", pipe)

    def test_that_never_come_end_with_the_signal(self):
        pipe = self.folder / "pipe.yaml"
        os.mkfifo(pipe)
        for number in (signal.SIGINT, signal.SIGTERM, signal.SIGHUP):
            waiting = subprocess.Popen([PROGRAM, "plan", pipe], stdout=subprocess.PIPE, stderr=subprocess.PIPE)
            time.sleep(0.2)
            waiting.send_signal(number)
            out, err = waiting.communicate(timeout=10)
            self.assertEqual((waiting.returncode, out, err), (-number, b"", b""))


class LongSearch(unittest.TestCase):
    """One that takes many seconds: four needs in an order without the line that keeps the parts few."""
    NEEDS = [word for need in ("ball valve", "union", "check valve", "strainer") for word in ("--need", need)]
    WORDS = [PROGRAM, *CHAIN, *NEEDS, "--spares", "--order", "loss"]

    def test_says_on_a_terminal_what_it_is_at_and_ends_with_the_signal(self):
        for number in (signal.SIGINT, signal.SIGTERM):
            terminal, its_end = os.openpty()
            searching = subprocess.Popen(self.WORDS, stdout=subprocess.PIPE, stderr=its_end)
            os.close(its_end)
            said = b""
            while b"2 s (Ctrl-C ends it)" not in said:  # the line is written anew each second
                ready, _, _ = select.select([terminal], [], [], 40)
                self.assertTrue(ready, said)
                said += os.read(terminal, 1000)
            searching.send_signal(number)
            out, _ = searching.communicate(timeout=10)
            os.close(terminal)
            self.assertEqual((searching.returncode, out), (-number, b""))
            first_two = b"".join(b"\r\x1b[KLooking for the fewest spares ... %d s (Ctrl-C ends it)" % second
                                 for second in (1, 2))
            self.assertEqual(said[:len(first_two)], first_two)

    def test_says_nothing_where_no_terminal_is(self):
        searching = subprocess.Popen(self.WORDS, stdout=subprocess.PIPE, stderr=subprocess.PIPE)
        time.sleep(3)
        searching.send_signal(signal.SIGINT)
        self.assertEqual((*searching.communicate(timeout=10), searching.returncode), (b"", b"", -signal.SIGINT))


class Surroundings(unittest.TestCase):
    def test_do_not_matter_to_the_answer(self):
        usual = run("plan", JOB).stdout
        installed = subprocess.run(["locale", "-a"], capture_output=True, text=True, check=False).stdout.split()
        comma = [name for name in installed if name.startswith(("de_", "fr_", "ru_", "sv_", "tr_"))]
        for locale in ["C", "C.UTF-8", "de_DE.UTF-8", "tr_TR.UTF-8", *comma[:3]]:
            self.assertEqual(run("plan", JOB, env={"LC_ALL": locale, "LANG": locale}).stdout, usual, locale)
        self.assertEqual(run("plan", JOB, env={}).stdout, usual)
        self.assertEqual(run("plan", JOB, cwd="/").stdout, usual)

    @unittest.skipIf(b"__asan_init" in pathlib.Path(PROGRAM).read_bytes(), "the address sanitizer takes terabytes")
    def test_of_little_memory_end_in_words(self):
        told = 0
        for megabytes in (24, 32, 40, 48, 64, 96, 128):
            limit = megabytes << 20
            done = run("plan", JOB, preexec_fn=lambda limit=limit: resource.setrlimit(resource.RLIMIT_AS, (limit, limit)))
            if "shared libraries" in done.stderr:  # not begun
                continue
            self.assertIn(done.returncode, (0, 2), (megabytes, done.stderr))
            if done.returncode == 2:
                self.assertIn("error: ", done.stderr)
                told += 1
        self.assertGreater(told, 0)


if __name__ == "__main__":
    unittest.main(argv=sys.argv[:1])
