"""A job of its own, a screen without glass and the window on it, for each test."""
import pathlib
import shutil
import sys
import tempfile
import unittest

from screen import Screen, Window

VIEW, COMMAND, EXAMPLES = sys.argv[1], sys.argv[2], pathlib.Path(sys.argv[3])


class Driven(unittest.TestCase):
    EXAMPLE = "bevel-bench.yaml"
    SIZE = (1280, 800)

    def setUp(self):
        self.folder = pathlib.Path(tempfile.mkdtemp(prefix="riserun-window-"))
        self.job = self.folder / "bench.yaml"
        shutil.copy(EXAMPLES / self.EXAMPLE, self.job)
        self.prepare()
        self.original = self.job.read_text(encoding="utf-8")
        # A printer that takes its time.
        printer = self.folder / "lp"
        printer.write_text(f'#!/bin/sh\nsleep 6\ncat > "{self.folder}/printed.pdf"\n', encoding="utf-8")
        printer.chmod(0o755)
        self.screen = Screen(*self.SIZE)
        self.window = Window(self.screen, VIEW, self.folder, self.job, size="{}x{}".format(*self.SIZE),
                             path=str(self.folder))
        self.window.ready()

    def prepare(self):
        """Changes the job before the window opens it."""

    def tearDown(self):
        self.window.kill()
        self.screen.close()
        shutil.rmtree(self.folder)

    def type_into(self, field, text):
        before = self.window.revision()
        self.window.key("ctrl+3")
        self.window.roll_to("field " + field, "pane measurements")
        self.window.click("field " + field)
        self.window.key("ctrl+a")
        self.window.type(text)
        self.window.key("Tab")
        return before

    def leave(self):
        self.window.key("ctrl+q")
        code, out, err = self.window.wait_for_end()
        self.assertEqual(code, 0, err)
        self.assertIn("processor time to build one", out)
