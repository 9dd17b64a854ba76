"""The plan in each form of `riserun plan JOB --out FILE`, read back by what reads such files: an HTML parser, a CSV
reader, pdftotext. What the user calls things is hostile here, and stays text in every form."""
import csv
import fractions
import html.parser
import io
import json
import pathlib
import subprocess
import sys
import tempfile
import unittest

PROGRAM, EXAMPLES = sys.argv[1], pathlib.Path(sys.argv[2])
HOSTILE = "=1+1 <img src=x onerror=alert(1)> \"q\" & `[a](b)`"
VOID = {"meta", "input", "br"}


def run(*words, **how):
    return subprocess.run([PROGRAM, *map(str, words)], capture_output=True, text=True, **how)


def inches_of(size):
    """'14-1/16 in' as a number."""
    whole, _, part = size.removesuffix(" in").partition("-")
    return float(fractions.Fraction(whole)) + float(fractions.Fraction(part or 0))


class Page(html.parser.HTMLParser):
    """Tags, their attributes, and the text that a person sees."""

    def __init__(self, text):
        super().__init__()
        self.open, self.tags, self.seen = [], [], ""
        self.feed(text)
        self.close()

    def handle_starttag(self, tag, attrs):
        self.tags.append((tag, dict(attrs)))
        if tag not in VOID:
            self.open.append(tag)

    def handle_endtag(self, tag):
        assert self.open and self.open[-1] == tag, f"</{tag}> closes {self.open[-1:]}"
        self.open.pop()

    def handle_data(self, data):
        if not {"style", "script"} & set(self.open):
            self.seen += data


class Pages(unittest.TestCase):
    @classmethod
    def setUpClass(cls):
        cls.folder = tempfile.TemporaryDirectory()
        cls.path = pathlib.Path(cls.folder.name)
        text = (EXAMPLES / "bevel-bench.yaml").read_text(encoding="utf-8")
        text = text.replace("name: Bevelling bench", "name: " + json.dumps(HOSTILE), 1)
        text = text.replace("gauge bung", "'@gauge <b>'")
        text = text.replace("name: gauge\n", "name: '=gauge'\n").replace("name: relief\n", "name: '@SUM(A1)'\n")
        for name in ("bin.yaml", "prices.yaml"):
            text = text.replace(f" {name}", f" {EXAMPLES / name}")
        cls.job = cls.path / "job.yaml"
        cls.job.write_text(text, encoding="utf-8")
        cls.plan = json.loads(run("plan", cls.job, "--json").stdout)

    @classmethod
    def tearDownClass(cls):
        cls.folder.cleanup()

    def made(self, ending, job=None, *options):
        file = self.path / f"plan{ending}"
        file.unlink(missing_ok=True)
        done = run("plan", job or self.job, "--out", file, *options)
        self.assertIn(done.returncode, (0, 1), done.stderr)
        return file

    def test_html_needs_nothing_else_and_runs_nothing_of_the_users(self):
        text = self.made(".html").read_text(encoding="utf-8")
        page = Page(text)
        self.assertEqual(page.open, [])
        for tag, attributes in page.tags:
            self.assertNotIn(tag, ("img", "link", "iframe", "b"))
            self.assertFalse({"src", "href", "onerror"} & set(attributes), (tag, attributes))
        self.assertNotIn("url(", text)
        self.assertIn(HOSTILE, page.seen)
        self.assertEqual([tag for tag, _ in page.tags].count("script"), 1)

    def test_html_has_every_item_with_a_box_of_its_own(self):
        page = Page(self.made(".html").read_text(encoding="utf-8"))
        keys = [attributes["data-key"] for tag, attributes in page.tags if tag == "input"]
        self.assertEqual(len(keys), len(set(keys)))
        for item in self.plan["list"]["buy"]:
            self.assertTrue(any(item["name"] in key for key in keys), item["name"])
        self.assertGreater(len(keys), 60)

    def test_html_ticks_belong_to_one_plan(self):
        def mark(file):
            return [attributes["data-job"] for tag, attributes in Page(file.read_text("utf-8")).tags if tag == "body"]

        mine = mark(self.made(".html"))
        self.assertEqual(mark(self.made(".html")), mine)
        other = self.path / "other.yaml"
        other.write_text(self.job.read_text("utf-8").replace("floor height: 31 in", "floor height: 32 in"), encoding="utf-8")
        self.assertNotEqual(mark(self.made(".html", other)), mine)

    def test_csv_adds_up_and_holds_no_formula(self):
        rows = list(csv.DictReader(io.StringIO(self.made(".csv").read_text(encoding="utf-8"), newline="")))
        bought = [row for row in rows if row["what"] == "buy"]
        self.assertEqual(len(bought), len(self.plan["list"]["buy"]))
        self.assertTrue(any("SUM" in row["for"] for row in bought))
        self.assertAlmostEqual(sum(float(row["price ($)"]) for row in bought), self.plan["list"]["total_usd"], places=2)
        for row in rows:
            self.assertNotIn(None, row)
            if "SUM" in row["for"]:
                self.assertEqual(row["for"], "'@SUM(A1)")
            for cell in row.values():
                self.assertFalse(cell and cell[0] in "=+-@\t", cell)
            if row["what"] == "cut":
                self.assertGreater(float(row["length (in)"]), 0)
                self.assertAlmostEqual(inches_of(row["cut to"].split(" x ")[0]), float(row["length (in)"]), delta=1 / 32)
        metric = list(csv.DictReader(io.StringIO(self.made(".csv", None, "--units", "metric").read_text("utf-8"), newline="")))
        cut = [(inch, mm) for inch, mm in zip(rows, metric) if inch["what"] == "cut"]
        self.assertTrue(cut)
        for inch, mm in cut:
            self.assertAlmostEqual(float(mm["length (mm)"]), 25.4 * float(inch["length (in)"]), delta=0.06)

    def test_holes_for_bungs_to_weld_in_stand_on_every_list_of_cuts(self):
        job = self.path / "holes.yaml"
        text = self.job.read_text("utf-8").replace("drain bung:   {", "drain bung:   {welded in: no, face height: 3 in, ")
        job.write_text(text.replace("vent bung:    {", "vent bung:    {welded in: no, at: [42 in, 4 in], "), encoding="utf-8")
        rows = list(csv.DictReader(io.StringIO(self.made(".csv", job).read_text("utf-8"), newline="")))
        holes = {row["for"]: (row["cut to"], float(row["length (in)"]), row["or else; how"])
                 for row in rows if row["name"] == "hole in the reservoir"}
        # What is cut in the lid over the two baffles is there, too: 3/16 in wide as they are thick.
        slots = [(row["quantity"], row["length (in)"], row["width (in)"]) for row in rows if row["name"] == "slot in the lid"]
        self.assertEqual(slots, [("10", "1.7500", "0.1875")])
        # Bosses of 1.38 and 1.75 in (ASME B16.11, class 3000), and 1/32 in all round.
        self.assertEqual(holes, {"vent bung": ("1-7/16 in", 1.4425, "42 in from the left, 4 in from the front"),
                                 "drain bung": ("1-13/16 in", 1.8125, "in the right end, 10 in from the front, 3 in over the floor (proposed)")})
        for words in (run("list", job).stdout, run("plan", job).stdout, self.made(".html", job).read_text("utf-8")):
            plain = " ".join(words.split())
            for port, (size, _, where) in holes.items():
                self.assertIn(size, plain)
                self.assertIn(where.split(",")[0], plain)

    def test_pdf_has_the_card_on_its_first_page_and_then_all(self):
        file = self.made(".pdf", EXAMPLES / "bevel-bench.yaml")
        read = lambda *options: subprocess.run(["pdftotext", "-layout", *options, str(file), "-"], capture_output=True,
                                               text=True, check=True).stdout
        first = read("-l", "1")
        card = run("plan", EXAMPLES / "bevel-bench.yaml").stdout
        for line in card.splitlines():
            for word in line.split():
                self.assertIn(word, first)
        self.assertNotIn("Where the head is lost", first)
        whole = read()
        for word in ("Where the head is lost", "Leak test", "Assumed, because the job does not say", "With every plan"):
            self.assertIn(word, whole)
        book = run("plan", EXAMPLES / "bevel-bench.yaml", "--all").stdout
        on_pages = set(whole.split())
        missing = {word for word in book.split() if word not in on_pages and set(word) != {"-"}}
        self.assertEqual(missing, set())
        info = subprocess.run(["pdfinfo", str(file)], capture_output=True, text=True, check=True).stdout
        self.assertIn("612 x 792 pts (letter)", info)

    def test_markdown_shows_names_letter_by_letter(self):
        text = self.made(".md").read_text(encoding="utf-8")
        self.assertNotIn("<img", text.lower().replace("\\<img", ""))
        self.assertIn("\\[a\\](b)", text)
        self.assertEqual(text.count("- [ ] "), len(self.plan["list"]["buy"]) + len(self.plan["list"]["bin"])
                         + len(self.plan["list"]["cut"]) + len(self.plan["list"]["consumables"])
                         + len(self.plan["lid_map"]["openings"]))

    def test_json_and_text_are_what_is_printed(self):
        self.assertEqual(json.loads(self.made(".json").read_text(encoding="utf-8")), self.plan)
        self.assertEqual(self.made(".txt").read_text(encoding="utf-8"), run("plan", self.job).stdout)

    def test_of_a_refused_job_no_form_has_anything_to_buy(self):
        for ending in (".html", ".md", ".txt"):
            text = self.made(ending, EXAMPLES / "walls-too-thin.yaml").read_text(encoding="utf-8")
            self.assertIn("REFUSED", text)
            self.assertNotIn("hopping list", text)
            self.assertNotIn("[ ]", text)
        for name in ("walls-too-thin", "air-too-weak"):
            job = EXAMPLES / f"{name}.yaml"
            plan = json.loads(run("plan", job, "--json").stdout)
            self.assertTrue(plan["list"]["buy"])
            rows = list(csv.DictReader(io.StringIO(self.made(".csv", job).read_text(encoding="utf-8"), newline="")))
            self.assertEqual({row["what"] for row in rows}, {"refused"})
            self.assertEqual({row["name"] for row in rows}, {plan["name"]})
            pages = self.pages_of(self.made(".pdf", job))
            whole = "".join(pages)
            for word in ("to be filled in", "tested by", "Shopping list", "Cut list", "Order of work", "[ ]", "gauge ____"):
                self.assertNotIn(word, whole)

    @staticmethod
    def pages_of(file):
        text = subprocess.run(["pdftotext", "-layout", str(file), "-"], capture_output=True, text=True, check=True).stdout
        return text.split("\f")[:-1]

    def test_every_page_names_the_job_and_its_verdict_at_its_foot(self):
        for name in ("walls-too-thin", "bevel-bench"):
            plan = json.loads(run("plan", EXAMPLES / f"{name}.yaml", "--json").stdout)
            pages = self.pages_of(self.made(".pdf", EXAMPLES / f"{name}.yaml"))
            self.assertGreater(len(pages), 2)
            for number, page in enumerate(pages, 1):
                foot = " ".join(page.strip().splitlines()[-1].split())
                self.assertEqual(foot, f"page {number} {plan['name']}: {plan['verdict']}")

    def test_a_file_that_is_there_stays_unless_force_is_asked(self):
        file = self.made(".md")
        file.write_text("mine", encoding="utf-8")
        done = run("plan", self.job, "--out", file)
        self.assertEqual((done.returncode, done.stdout, file.read_text("utf-8")), (2, "", "mine"))
        self.assertIn("--force", done.stderr)
        self.assertEqual(run("plan", self.job, "--out", file, "--force").returncode, 0)
        self.assertNotEqual(file.read_text("utf-8"), "mine")

    def test_another_ending_is_refused_with_those_there_are(self):
        for name in ("plan.doc", "plan", ".."):
            done = run("plan", self.job, "--out", self.path / name)
            self.assertEqual((done.returncode, done.stdout), (2, ""))
            for ending in (".html", ".pdf", ".svg", ".csv", ".md", ".json", ".txt"):
                self.assertIn(ending, done.stderr)


if __name__ == "__main__":
    unittest.main(argv=sys.argv[:1])
