"""The shop's own bin: what a job takes out of it, what is bought goes in, the last change can be taken back; comments
and order stay, and whatever moment the program is killed at, the bin is whole."""
import json
import os
import pathlib
import random
import re
import shutil
import signal
import subprocess
import sys
import tempfile
import time
import unittest

PROGRAM, EXAMPLES = sys.argv[1], pathlib.Path(sys.argv[2])
KILLS = int(os.environ.get("RISERUN_KILLS", "20"))

BIN = """# Shelf by the saw
units: inch
bin:
  - {part: 1-1/4 x 18 threaded pipe black iron, count: 3}   # long ones
  # barbs
  - {part: 1-1/4 barb x 1-1/4 MNPT brass, count: 2}
  - {part: 1 x 1/2 hex bushing black iron, count: 1}
  - {part: 1-1/4 rubber hose, length: 30 in}   # from the old table
"""


def run(*words, **how):
    return subprocess.run([PROGRAM, *map(str, words)], capture_output=True, text=True, **how)


class Shop(unittest.TestCase):
    def setUp(self):
        self.folder = tempfile.TemporaryDirectory()
        self.path = pathlib.Path(self.folder.name)
        self.bin = self.path / "bin.yaml"
        self.bin.write_text(BIN, encoding="utf-8")
        job = (EXAMPLES / "bevel-bench.yaml").read_text(encoding="utf-8")
        before, _, rest = job.partition("\nbin:\n")
        self.job = self.path / "job.yaml"
        self.job.write_text(before + "\nbin: bin.yaml\n\n" + rest[rest.index("measured:"):], encoding="utf-8")

    def tearDown(self):
        self.folder.cleanup()

    def plan(self):
        return json.loads(run("plan", self.job, "--json").stdout)["list"]

    def counts(self):
        text = self.bin.read_text(encoding="utf-8")
        self.assertEqual(run("check", self.bin).returncode, 0, text)
        return text

    def test_a_job_taken_asks_for_what_is_left(self):
        first = self.plan()
        taken = {item["id"]: item["qty"] for item in first["bin"]}
        self.assertGreaterEqual(len(taken), 4, taken)
        done = run("bin", "take", self.job)
        self.assertEqual((done.returncode, done.stderr), (0, ""))
        text = self.counts()
        self.assertIn("# Shelf by the saw\nunits: inch\nbin:\n", text)
        self.assertIn("black iron, count: 2}   # long ones\n", text)
        self.assertNotIn("barb x", text)
        self.assertIn("length: 17-5/8 in}", text)  # 30 in less 12-3/8
        again = self.plan()
        self.assertLess(len(again["bin"]), len(first["bin"]))
        self.assertGreater(again["total_usd"], first["total_usd"])

    def test_what_is_bought_goes_in_and_comes_out_again(self):
        table = self.path / "list.csv"
        self.assertEqual(run("plan", self.job, "--out", table).returncode, 0)
        bought = len(self.plan()["buy"])
        self.assertEqual(run("bin", "add", table, "--bin", self.bin).returncode, 0)
        self.assertEqual(self.plan()["buy"], [])
        self.assertGreater(self.counts().count("- {"), bought)
        done = run("bin", "take", self.job)
        self.assertEqual(done.returncode, 0)
        self.assertNotIn("3/4 MNPT relief", self.counts())
        # What the leak test alone borrows comes back to the bin, and is not bought again.
        self.assertIn("lent to the leak test alone", done.stdout)
        self.assertEqual([item["name"] for item in self.plan()["buy"] if item["for"] == ["leak test"]], [])

    def test_a_bin_file_is_added_row_by_row(self):
        more = self.path / "more.yaml"
        more.write_text("bin:\n  - {part: 1 x 1/2 hex bushing black iron, count: 4}\n"
                        "  - {part: 1-1/4 rubber hose, length: 8 in}\n", encoding="utf-8")
        self.assertEqual(run("bin", "add", more, "--bin", self.bin).returncode, 0)
        text = self.counts()
        self.assertIn("1 x 1/2 hex bushing black iron, count: 5}", text)
        self.assertIn("length: 8 in}", text)

    def test_of_several_bins_each_gives_what_lies_in_it(self):
        shelf, truck = self.path / "shelf.yaml", self.path / "truck.yaml"
        truck.write_text("bin:\n  - {part: 1-1/4 barb x 1-1/4 MNPT brass, count: 1}   # loose\n", encoding="utf-8")
        shelf.write_text(BIN, encoding="utf-8")
        job = self.job.read_text(encoding="utf-8")
        self.job.write_text(job.replace("\nbin: bin.yaml\n", "\nbin: {truck: truck.yaml, by the saw: shelf.yaml}\n"), encoding="utf-8")
        in_job = self.plan()["bin"]
        barbs = next(item for item in in_job if "barb" in item["name"])
        self.assertEqual((barbs["qty"], barbs["lies_in"]), (2, {"truck": 1, "by the saw": 1}))
        self.assertIn("brass [1 truck, 1 by the saw] (2)", run("plan", self.job).stdout.replace("\n                ", " "))
        self.job.write_text(job, encoding="utf-8")
        named = run("plan", self.job, "--json", "--bin", truck, "--bin", shelf)
        self.assertEqual([item["lies_in"] for item in json.loads(named.stdout)["list"]["bin"] if "barb" in item["name"]],
                         [{"truck": 1, "shelf": 1}])
        self.assertEqual(run("bin", "take", self.job, "--bin", truck, "--bin", shelf).returncode, 0)
        self.assertIn("brass, count: 0}   # loose", truck.read_text(encoding="utf-8"))
        self.assertIn("1-1/4 barb x 1-1/4 MNPT brass, count: 1}", shelf.read_text(encoding="utf-8"))
        self.assertEqual(self.bin.read_text(encoding="utf-8"), BIN)
        self.assertEqual(run("bin", "undo", truck).returncode, 0)
        self.assertIn("count: 1}   # loose", truck.read_text(encoding="utf-8"))

    def test_the_shortest_piece_that_does_is_cut_and_its_end_goes_back_where_it_came_from(self):
        truck, shop = self.path / "truck.yaml", self.path / "shop.yaml"
        for lengths in (("30 in", "108 in"), ("108 in", "30 in")):
            for file, length in zip((truck, shop), lengths):
                file.write_text(f"bin:\n  - {{part: 1-1/4 rubber hose, length: {length}}}\n", encoding="utf-8")
            self.assertEqual(run("bin", "take", self.job, "--bin", truck, "--bin", shop).returncode, 0)
            kept, cut = (shop, truck) if lengths[0] == "30 in" else (truck, shop)
            self.assertIn("length: 108 in}", kept.read_text(encoding="utf-8"))
            rest = cut.read_text(encoding="utf-8")
            self.assertRegex(rest, r"length: 1\d-\d+/16 in\}")  # of the 30 in
            self.assertEqual(rest.count("- {"), 1)

    def test_a_bin_named_twice_and_a_table_that_would_be_changed_are_refused(self):
        table = self.path / "stock.csv"
        table.write_text("part,count\n1 x 1/2 hex bushing black iron,1\n", encoding="utf-8")
        self.assertEqual(run("plan", self.job, "--bin", table).returncode, 0)
        done = run("bin", "take", self.job, "--bin", table)
        self.assertEqual(done.returncode, 2)
        self.assertIn("is a table", done.stderr)
        self.assertEqual(run("plan", self.job, "--bin", self.bin, "--bin", self.bin).returncode, 2)

    def test_prices_as_a_table_and_what_holds_is_said(self):
        bought = run("plan", self.job, "--out", self.path / "list.csv")
        self.assertEqual(bought.returncode, 0)
        item = self.plan()["buy"][0]
        first, second = self.path / "first.csv", self.path / "second.csv"
        each = round(item["price_usd"] / item["qty"], 2)
        first.write_text(f"id,price\n{item['id']},{each + 0.01:.2f}\n", encoding="utf-8")
        comma = f"{each + 0.02:.2f}".replace(".", ",")
        second.write_text(f"part;price\n{item['id']};{comma}\n", encoding="utf-8")
        dear = json.loads(run("plan", self.job, "--json", "--catalog", first, "--catalog", second).stdout)["list"]["buy"]
        priced = {one["id"]: (round(one["price_usd"] / one["qty"], 2), pathlib.Path(one["priced_by"]).name) for one in dear}
        self.assertEqual(priced[item["id"]], (round(each + 0.02, 2), "second.csv"))
        self.assertIn("prices 1, 1 of them in place of what a file before it says",
                      run("check", second, "--catalog", first).stdout)
        # The list of a plan, priced by hand, is read back as it is.
        again = run("plan", self.job, "--all", "--catalog", self.path / "list.csv").stdout
        self.assertRegex(" ".join(again.split()), r"prices are indicative, but for \d+ from list.csv\.")

    def test_an_undo_and_its_undo(self):
        run("bin", "take", self.job)
        changed = self.bin.read_text(encoding="utf-8")
        self.assertEqual(run("bin", "undo", self.bin).returncode, 0)
        self.assertEqual(self.bin.read_text(encoding="utf-8"), BIN)
        self.assertEqual(run("bin", "undo", self.bin).returncode, 0)
        self.assertEqual(self.bin.read_text(encoding="utf-8"), changed)
        self.assertEqual(run("bin", "undo", self.job).returncode, 1)

    def test_the_last_row_leaves_an_empty_bin(self):
        self.bin.write_text("bin:\n  - {part: 1-1/4 x 18 threaded pipe black iron, count: 1}\n", encoding="utf-8")
        self.assertEqual(run("bin", "take", self.job).returncode, 0)
        self.assertIn("pipe black iron, count: 0}", self.counts())

    # A riser takes one thread of the pipe; the saw leaves the other, and of what is cut next none.
    def test_what_is_left_of_a_pipe_is_kept_with_its_ends_and_cut_again(self):
        pipe = "1-1/4 x 36 threaded pipe black iron"
        self.bin.write_text(f"bin:\n  - {{part: {pipe}, count: 1}}\n", encoding="utf-8")
        first = self.plan()
        riser = next(cut for cut in first["cut"] if cut["for"] == "riser")
        left = 36 - riser["length_m"] / 0.0254 - 1 / 16  # the kerf
        self.assertAlmostEqual(riser["offcut_m"] / 0.0254, left, places=6)
        self.assertEqual(run("bin", "take", self.job).returncode, 0)
        text = self.counts()
        self.assertRegex(text, r"length: 21-7/8 in, ends: one thread\}")
        self.assertNotIn("count: 1", text)
        again = self.plan()
        piece = next(item for item in again["bin"] if item["for"] == ["riser"])
        self.assertIn("a piece of 21-7/8 in, one thread left", piece["name"])
        second = next(cut for cut in again["cut"] if cut["for"] == "riser")
        self.assertEqual(second["length_m"], riser["length_m"])
        self.assertIn("from the threaded end", second["datum"])
        book = " ".join(run("plan", self.job, "--all").stdout.split())
        self.assertNotIn("keeps the other thread", book)
        card = " ".join(run("plan", self.job).stdout.split())
        self.assertIn("1-1/4 x 36 pipe, a piece of 21-7/8 in, black iron, from the threaded end (riser)", card)
        self.assertEqual(run("bin", "take", self.job).returncode, 0)
        self.assertRegex(self.counts(), r"length: 7-3/4 in, ends: plain\}")
        self.assertFalse([item for item in self.plan()["bin"] if item["for"] == ["riser"]])
        self.assertEqual(run("bin", "undo", self.bin).returncode, 0)
        self.assertEqual(self.bin.read_text(encoding="utf-8"), text)

    def test_a_piece_of_pipe_joins_nothing_and_says_its_ends(self):
        pipe = "1-1/4 x 36 threaded pipe black iron"
        for row, said in ((f"part: {pipe}, length: 20 in", "one thread or plain"),
                          (f"part: {pipe}, length: 40 in, ends: plain", "no longer than 36 in"),
                          (f"part: {pipe}, length: 20 in, ends: both", "allowed: one thread, plain"),
                          (f"part: {pipe}, ends: plain", "'length'"),
                          ("part: 1-1/4 rubber hose, length: 20 in, ends: plain", "no threads"),
                          ("part: 1 x 1/2 hex bushing black iron, length: 2 in, ends: plain", "'measured'")):
            self.bin.write_text(f"bin:\n  - {{{row}}}\n", encoding="utf-8")
            done = run("check", self.bin)
            self.assertEqual(done.returncode, 2, row)
            self.assertIn(said, " ".join(done.stderr.split()), row)
        # As a nipple it would make the run.
        ends = ("1-1/4 FNPT", "1-1/4 FNPT", "--order", "bin", "--bin", self.bin, "--json")
        for row, from_bin in ((f"part: {pipe}, count: 1", True), (f"part: {pipe}, length: 20 in, ends: one thread", False)):
            self.bin.write_text(f"bin:\n  - {{{row}}}\n", encoding="utf-8")
            parts = json.loads(run("chain", *ends).stdout)["chains"][0]["parts"]
            self.assertEqual([part["from_bin"] for part in parts], [from_bin], row)
        more = self.path / "more.yaml"
        more.write_text(self.bin.read_text(encoding="utf-8"), encoding="utf-8")
        self.assertEqual(run("bin", "add", more, "--bin", self.bin).returncode, 0)
        self.assertEqual(self.counts().count("ends: one thread"), 2)

    def test_hose_by_the_foot_leaves_its_true_length_but_for_a_roll(self):
        for feet, left in ((2, r"length: 13-9/16 in\}"), (50, r"count: 4\d\}")):
            self.bin.write_text(f"bin:\n  - {{part: 1-1/4 rubber hose, count: {feet}}}\n", encoding="utf-8")
            cut = next(cut for cut in self.plan()["cut"] if "hose" in cut["stock"])
            self.assertEqual(run("bin", "take", self.job).returncode, 0)
            text = self.counts()
            self.assertRegex(text, left)
            if feet == 2:
                true = 24 - cut["length_m"] / 0.0254
                whole, _, part = re.search(r"length: (\S+) in", text).group(1).partition("-")
                top, _, bottom = (part or "0/1").partition("/")
                self.assertAlmostEqual(int(whole) + int(top) / int(bottom), true, delta=1 / 32)

    def test_the_comment_of_a_row_goes_with_it(self):
        self.assertIn("# barbs", self.bin.read_text(encoding="utf-8"))
        self.assertEqual(run("bin", "take", self.job).returncode, 0)
        text = self.counts()
        self.assertNotIn("# barbs", text)
        self.assertIn("# Shelf by the saw", text)
        self.assertIn("# long ones", text)

    def test_what_a_kill_left_beside_the_bin_is_swept_up(self):
        for name in (".bin.yaml", ".bin.yaml.before"):
            (self.path / f"{name}.999999999.unfinished").write_text("half", encoding="utf-8")
        busy = self.path / f".bin.yaml.{os.getpid()}.unfinished"  # of a program that runs
        busy.write_text("half", encoding="utf-8")
        self.assertEqual(run("bin", "take", self.job).returncode, 0)
        self.assertEqual([file.name for file in self.path.glob(".*unfinished")], [busy.name])

    def test_which_price_stands_and_which_was_beaten_is_said(self):
        item = self.plan()["buy"][0]
        table, keys = self.path / "p.csv", self.path / "p2.yaml"
        table.write_text(f"id,price\n{item['id']},7.01\n", encoding="utf-8")
        keys.write_text(f"prices:\n  - {{part: {item['id']}, price: 8.02 usd}}\n", encoding="utf-8")
        files = ("--catalog", table, "--catalog", keys)
        priced = json.loads(run("plan", self.job, "--json", *files).stdout)["list"]["buy"]
        now = next(one for one in priced if one["id"] == item["id"])
        own = item["price_usd"] / item["qty"]
        self.assertEqual([(round(one["price_each_usd"], 2), pathlib.Path(one["priced_by"]).name) for one in now["beaten_prices"]],
                         [(round(own, 2), ""), (7.01, "p.csv")])
        book = " ".join(run("plan", self.job, "--all", *files).stdout.split())
        self.assertIn(f"8.02 from p2.yaml, in place of $7.01 from p.csv and ${own:.2f} of the catalog", book)
        self.assertFalse(any(one["beaten_prices"] for one in priced if one["id"] != item["id"]))

    def test_a_refused_job_and_a_wrong_list_take_nothing(self):
        shutil.copy(EXAMPLES / "walls-too-thin.yaml", self.path / "thin.yaml")
        self.assertEqual(run("bin", "take", self.path / "thin.yaml", "--bin", self.bin).returncode, 1)
        refused = self.path / "refused.csv"
        self.assertEqual(run("plan", EXAMPLES / "air-too-weak.yaml", "--out", refused).returncode, 1)
        done = run("bin", "add", refused, "--bin", self.bin)
        self.assertEqual((done.returncode, done.stdout), (2, ""))
        self.assertIn("refused", done.stderr)
        wrong = self.path / "wrong.csv"
        for text in ("a,b\r\n1,2\r\n", "what,quantity,id\r\nbuy,many,plug/brass/1\r\n", "what,quantity,id\r\nbuy,1,no such part\r\n"):
            wrong.write_text(text, encoding="utf-8")
            done = run("bin", "add", wrong, "--bin", self.bin)
            self.assertEqual((done.returncode, done.stdout), (2, ""), text)
            self.assertIn("error", done.stderr)
        self.assertEqual(run("bin", "add", wrong).returncode, 2)
        self.assertEqual(self.bin.read_text(encoding="utf-8"), BIN)

    def test_changes_at_once_come_one_after_the_other(self):
        more = self.path / "more.yaml"
        more.write_text("bin:\n  - {part: 1 x 1/2 hex bushing black iron, count: 1}\n", encoding="utf-8")
        adding = [subprocess.Popen([PROGRAM, "bin", "add", more, "--bin", self.bin], stdout=subprocess.DEVNULL) for _ in range(6)]
        self.assertEqual([one.wait() for one in adding], [0] * 6)
        self.assertIn("1 x 1/2 hex bushing black iron, count: 7}", self.counts())

    # Killed at any moment the bin is as it was or as it should be, and never half.
    def test_a_kill_loses_nothing(self):
        run("bin", "take", self.job)
        after = self.bin.read_text(encoding="utf-8")
        dice = random.Random(1)
        started = time.monotonic()
        run("plan", self.job)
        usual = time.monotonic() - started
        for _ in range(KILLS):
            self.bin.write_text(BIN, encoding="utf-8")
            taking = subprocess.Popen([PROGRAM, "bin", "take", self.job], stdout=subprocess.DEVNULL, stderr=subprocess.DEVNULL)
            time.sleep(dice.uniform(0.2, 1.3) * usual)
            taking.send_signal(signal.SIGKILL)
            taking.wait()
            self.assertIn(self.bin.read_text(encoding="utf-8"), (BIN, after))


if __name__ == "__main__":
    unittest.main(argv=sys.argv[:1])
