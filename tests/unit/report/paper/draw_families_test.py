"""Each family of the catalog has its picture on one sheet: well-formed SVG, every name there once, drawn by librsvg.

`draw_families_test.py PROGRAM CATALOG`.
"""
import os
import pathlib
import re
import subprocess
import sys
import tempfile
import unittest
import xml.etree.ElementTree as ElementTree

PROGRAM, CATALOG = sys.argv[1], pathlib.Path(sys.argv[2])
SVG = "{http://www.w3.org/2000/svg}"


class Families(unittest.TestCase):
    def test_every_family_is_drawn(self):
        names = []
        for file in sorted(CATALOG.glob("*.yaml")):
            if re.search(r"^families:", text := file.read_text(encoding="utf-8"), re.MULTILINE):
                names += re.findall(r"^  - name: (.+)$", text, re.MULTILINE)
        self.assertGreater(len(names), 100)
        with tempfile.TemporaryDirectory() as folder:
            sheet = pathlib.Path(folder) / "families.svg"
            # The system's fontconfig keeps its tables until the end; any other leak still fails.
            known = pathlib.Path(folder) / "known-leaks"
            known.write_text("leak:libfontconfig\n", encoding="utf-8")
            subprocess.run([PROGRAM, str(sheet)], check=True,
                           env={**os.environ, "LSAN_OPTIONS": f"suppressions={known}:print_suppressions=0"})
            root = ElementTree.parse(sheet).getroot()
            drawn = [text.text for text in root.iter(SVG + "text")]
            self.assertEqual(sorted(drawn), sorted(name.strip('"') for name in names))
            png = pathlib.Path(folder) / "families.png"
            subprocess.run(["rsvg-convert", str(sheet), "-o", str(png)], check=True)
            self.assertGreater(png.stat().st_size, 50_000)


if __name__ == "__main__":
    unittest.main(argv=sys.argv[:1])
