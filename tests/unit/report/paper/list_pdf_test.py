"""The list as PDF, read back by pdftotext: every line of the printed list is on a page, and the pages have their size.

`list_pdf_test.py PROGRAM FOLDER` runs the small program that writes list-inch.pdf, list-metric.pdf and list.txt there.
"""
import os
import pathlib
import subprocess
import sys
import tempfile
import unittest

PROGRAM, JOB = sys.argv[1], sys.argv[2]


def words(text):
    return text.replace("[ ]", " ").split()


class ListPdf(unittest.TestCase):
    @classmethod
    def setUpClass(cls):
        cls.folder = tempfile.TemporaryDirectory()
        # The system's fontconfig keeps its tables until the end; any other leak still fails.
        known = pathlib.Path(cls.folder.name) / "known-leaks"
        known.write_text("leak:libfontconfig\n", encoding="utf-8")
        subprocess.run([PROGRAM, JOB, cls.folder.name], check=True,
                       env={**os.environ, "LSAN_OPTIONS": f"suppressions={known}:print_suppressions=0"})

    @classmethod
    def tearDownClass(cls):
        cls.folder.cleanup()

    def read(self, name):
        file = pathlib.Path(self.folder.name) / name
        return subprocess.run(["pdftotext", "-layout", str(file), "-"], capture_output=True, text=True, check=True).stdout

    def test_every_word_of_the_printed_list_is_on_the_pages(self):
        printed = (pathlib.Path(self.folder.name) / "list.txt").read_text(encoding="utf-8")
        on_pages = set(words(self.read("list-inch.pdf")))
        rows = [line for line in printed.splitlines() if "[ ]" in line]
        self.assertGreater(len(rows), 15)
        for row in rows:
            for word in words(row):
                self.assertIn(word.strip(";,"), {w.strip(";,") for w in on_pages}, row)

    def test_it_says_the_sum_and_the_caution(self):
        text = self.read("list-inch.pdf")
        self.assertIn("prices are indicative", text)
        self.assertIn("stores dangerous energy", " ".join(text.split()))

    def test_pages_are_letter_in_inch_and_a4_in_metric(self):
        for name, size in (("list-inch.pdf", "612 x 792 pts (letter)"), ("list-metric.pdf", "(A4)")):
            info = subprocess.run(["pdfinfo", str(pathlib.Path(self.folder.name) / name)], capture_output=True,
                                  text=True, check=True).stdout
            self.assertIn(size, info)

    def test_measures_follow_the_units(self):
        self.assertIn("14-1/16 in", self.read("list-inch.pdf"))
        self.assertIn("357 mm", self.read("list-metric.pdf"))


if __name__ == "__main__":
    unittest.main(argv=sys.argv[:1])
