"""The drawings of `riserun plan JOB --out FILE`, read back: SVG by an XML parser and librsvg, PDF by poppler. Nothing
stands outside its page, what users write stays text, and figures are the plan's.

`drawings_test.py PROGRAM EXAMPLES`.
"""
import json
import pathlib
import re
import subprocess
import sys
import tempfile
import unittest
import xml.etree.ElementTree as ElementTree

PROGRAM, EXAMPLES = sys.argv[1], pathlib.Path(sys.argv[2])
JOBS = ("one-air-bung", "bevel-bench", "air-too-weak", "one-part-short", "walls-too-thin")
HOSTILE = "]]></text><script>x</script> & \"q\" " + "long " * 30
SVG = "{http://www.w3.org/2000/svg}"


def run(*words):
    return subprocess.run([PROGRAM, *map(str, words)], capture_output=True, text=True)


class Drawings(unittest.TestCase):
    @classmethod
    def setUpClass(cls):
        cls.folder = tempfile.TemporaryDirectory()
        cls.path = pathlib.Path(cls.folder.name)
        text = (EXAMPLES / "bevel-bench.yaml").read_text(encoding="utf-8")
        text = text.replace("name: Bevelling bench", "name: " + json.dumps(HOSTILE), 1)
        text = text.replace("gauge bung", "'<b>&gauge bung'").replace("name: gauge\n", "name: '</svg>'\n")
        cls.hostile = cls.path / "hostile.yaml"
        cls.hostile.write_text(text, encoding="utf-8")

    @classmethod
    def tearDownClass(cls):
        cls.folder.cleanup()

    def jobs(self):
        return [EXAMPLES / f"{name}.yaml" for name in JOBS] + [self.hostile]

    def made(self, job, ending, units):
        file = self.path / f"{job.stem}-{units}{ending}"
        if not file.exists():
            done = run("plan", job, "--out", file, "--units", units)
            self.assertIn(done.returncode, (0, 1), done.stderr)
        return file

    def test_svg_is_xml_and_librsvg_draws_it(self):
        for job in self.jobs():
            for units in ("inch", "metric"):
                file = self.made(job, ".svg", units)
                root = ElementTree.parse(file).getroot()
                self.assertEqual(root.tag, SVG + "svg")
                self.assertFalse({SVG + "script", SVG + "b", SVG + "image"} & {element.tag for element in root.iter()})
                wide, high = map(float, root.get("viewBox").split()[2:])
                self.assertGreater(len(list(root.iter(SVG + "text"))), 20)
                for text in root.iter(SVG + "text"):
                    self.assertTrue(0 <= float(text.get("x")) <= wide and 0 < float(text.get("y")) < high, text.text)
                for shape in list(root.iter(SVG + "polygon")) + list(root.iter(SVG + "polyline")):
                    for x, y in (map(float, point.split(",")) for point in shape.get("points").split()):
                        self.assertTrue(-1 <= x <= wide + 1 and -1 <= y <= high + 1, (job.stem, x, y))
                png = file.with_suffix(".png")
                subprocess.run(["rsvg-convert", str(file), "-o", str(png)], check=True)
                self.assertGreater(png.stat().st_size, 10_000)

    def test_svg_says_the_plans_figures(self):
        job = EXAMPLES / "bevel-bench.yaml"
        words = " ".join(text.text for text in ElementTree.parse(self.made(job, ".svg", "inch")).getroot().iter(SVG + "text"))
        plan = json.loads(run("plan", job, "--json").stdout)
        riser = plan["riser"]
        self.assertIn("clearance " + tape(riser["clearance_m"]), words)
        self.assertIn("riser, cut " + tape(riser["cut_length_m"]), words)
        self.assertRegex(words, r"scale 1:\d+")
        for connection in plan["connections"]:
            self.assertIn(connection["name"] + ":", words)

    def test_nothing_stands_outside_its_page_and_all_fonts_are_in_the_document(self):
        for job in self.jobs():
            for units, size in (("inch", (612, 792)), ("metric", (595.276, 841.89))):
                file = self.made(job, ".pdf", units)
                boxes = subprocess.run(["pdftotext", "-bbox", str(file), "-"], capture_output=True, text=True, check=True).stdout
                pages = re.findall(r'<page width="([\d.]+)" height="([\d.]+)">(.*?)</page>', boxes, re.DOTALL)
                self.assertGreater(len(pages), 4)
                for wide, high, words in pages:
                    self.assertAlmostEqual(float(wide), size[0], delta=1)
                    self.assertAlmostEqual(float(high), size[1], delta=1)
                    for box in re.findall(r'xMin="([-\d.]+)" yMin="([-\d.]+)" xMax="([-\d.]+)" yMax="([-\d.]+)">(.*?)<', words):
                        left, top, right, bottom = map(float, box[:4])
                        self.assertTrue(left >= 18 and top >= 18 and right <= float(wide) - 18 and bottom <= float(high) - 10,
                                        (job.stem, units, box))
                fonts = subprocess.run(["pdffonts", str(file)], capture_output=True, text=True, check=True).stdout
                for line in fonts.splitlines()[2:]:
                    self.assertRegex(line, r"\byes +yes +yes\b")

    def test_the_book_has_drawings_plots_and_a_sheet_to_fill_in(self):
        file = self.made(EXAMPLES / "bevel-bench.yaml", ".pdf", "inch")
        text = subprocess.run(["pdftotext", "-layout", str(file), "-"], capture_output=True, text=True, check=True).stdout
        for words in ("Reservoir and table in section", "The riser's lower end", "scale 1:", "Flow, gpm", "Levels, in",
                      "Air pressure, psi", "walls hold", "Leak test, to be filled in", "tested by"):
            self.assertIn(words, text)

    def test_a_drawn_run_has_the_length_that_its_text_has(self):
        for example in ("bevel-bench.yaml", "one-air-bung.yaml"):
            file = self.made(EXAMPLES / example, ".pdf", "inch")
            text = subprocess.run(["pdftotext", "-layout", str(file), "-"], capture_output=True, text=True, check=True).stdout
            drawn = re.findall(r"(\S+ in) from port to port", text)
            said = re.findall(r"Port to port\s+(\S+ in)", text)
            self.assertTrue(drawn, example)
            for length in drawn:
                self.assertIn(length, said, example)

    def test_html_holds_the_drawings(self):
        text = self.made(self.hostile, ".html", "inch").read_text(encoding="utf-8")
        pictures = re.findall(r"<svg .*?</svg>", text, re.DOTALL)
        self.assertGreater(len(pictures), 6)
        for picture in pictures:
            ElementTree.fromstring(picture)
        self.assertIn("prefers-color-scheme:dark", text)
        self.assertNotIn("<b>", text)
        self.assertEqual(text.count("<script>"), 1)


def tape(metres):
    sixteenths = round(metres / 0.0254 * 16)
    whole, rest = divmod(sixteenths, 16)
    if rest == 0:
        return f"{whole} in"
    below = 16
    while rest % 2 == 0:
        rest, below = rest // 2, below // 2
    return f"{whole}-{rest}/{below} in" if whole else f"{rest}/{below} in"


if __name__ == "__main__":
    unittest.main(argv=sys.argv[:1])
