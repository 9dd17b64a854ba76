"""Chains that make a distance, as a person asks for them."""
import json
import pathlib
import subprocess
import sys
import tempfile
import unittest

PROGRAM = sys.argv[1]
INCH = 0.0254


def run(*words):
    return subprocess.run([PROGRAM, *map(str, words)], capture_output=True, text=True)


def answer(*words):
    done = run("chain", *words, "--json")
    return done.returncode, json.loads(done.stdout)


# Needs of a heat-treating bay: nipple, valve, nipple, union, nipple between two ports 13-7/8 in apart.
QUENCH_BIN = """bin:
  - {part: "1-1/2 x 3 nipple stainless", count: 2}
  - {part: "1-1/2 x 5 nipple stainless", count: 1}
  - {part: "1-1/2 union stainless", measured: {length: 3 in}}
  - {part: "1-1/2 ball valve brass", measured: {length: 4 in}}
"""


class Span(unittest.TestCase):
    def test_the_pieces_less_what_goes_in_add_up_to_where_it_lands(self):
        for span in ("7 in", "13-7/8 in", "22 in", "33 in", "400 mm"):
            status, found = answer("1 FNPT", "1 FNPT", "--span", span)
            self.assertEqual(status, 0, span)
            chain = found["chains"][0]
            fit = chain["span"]
            self.assertEqual(len(fit["pieces"]), len(chain["parts"]))
            total = sum(piece["length_m"] for piece in fit["pieces"]) - sum(j["make_up_m"] for j in chain["joints"])
            self.assertAlmostEqual(total, fit["lands_m"], delta=2e-5)
            self.assertAlmostEqual(fit["miss_m"], fit["lands_m"] - fit["wanted_m"], places=9)
            self.assertLessEqual(abs(fit["miss_m"]), fit["band_m"] + 1e-6)
            self.assertTrue(chain["buildable"])
            closing = [j for j in chain["joints"] if j["closing"]] + [p for p in chain["parts"] if p["closing"]]
            self.assertTrue(closing, "both ends are held")

    def test_five_pieces_from_the_bin_close_thirteen_and_seven_eighths(self):
        with tempfile.TemporaryDirectory() as folder:
            path = pathlib.Path(folder) / "bin.yaml"
            path.write_text(QUENCH_BIN)
            words = ("1-1/2 FNPT", "1-1/2 FNPT", "--span", "13-7/8 in", "--need", "ball valve", "--order", "bin",
                     "--bin", path)
            _, found = answer(*words)
            chain = found["chains"][0]
            self.assertEqual(chain["buy_count"], 0)
            self.assertEqual(len(chain["joints"]), 6)
            lengths = sorted(round(piece["length_m"] / INCH, 3) for piece in chain["span"]["pieces"])
            self.assertEqual(lengths, [3, 3, 3, 4, 5])
            # 18 in of bodies less six engagements of 11/16 in.
            self.assertAlmostEqual(chain["span"]["lands_m"] / INCH, 13.875, delta=0.05)
            self.assertEqual(chain["span"]["made_by"], "stock_near")
            text = run("chain", *words).stdout
            self.assertIn("Spans 13-7/8 in: lands ", text)
            self.assertIn("six joints give plus or minus ", text)

    def test_cut_pipe_lands_on_the_mark_and_says_what_to_cut(self):
        words = ("1 FNPT", "1 FNPT", "--span", "33-3/16 in", "--avoid", "nipple", "--avoid", "PVC nipple",
                 "--avoid", "close nipple", "--avoid", "hose", "--first-end", "spinning")
        status, found = answer(*words)
        self.assertEqual(status, 0)
        fit = found["chains"][0]["span"]
        self.assertEqual(fit["made_by"], "cut_pipe")
        self.assertAlmostEqual(fit["lands_m"], 33.1875 * INCH, delta=2e-6)
        cut = [piece for piece in fit["pieces"] if piece["cut"]]
        self.assertEqual([piece["threads"] for piece in cut], [2])
        text = run("chain", *words).stdout
        self.assertIn("At the bench, cut part ", text)
        self.assertIn("thread the sawn one", text)
        self.assertIn("lands on the mark", text)

    # What a job before has left of a pipe is cut again, and a thread that is left is one less to cut.
    def test_a_piece_is_cut_from_what_is_left_of_a_pipe(self):
        words = ("1 FNPT", "1 FNPT", "--span", "14-1/2 in", "--need", "union", "--held", "--avoid", "nipple", "--avoid", "close nipple",
                 "--avoid", "hose")
        _, found = answer(*words)
        self.assertEqual(found["chains"][0]["buy_count"], 3)
        with tempfile.TemporaryDirectory() as folder:
            path = pathlib.Path(folder) / "bin.yaml"
            for ends, threads in (("one thread", "thread the sawn one"), ("plain", "thread both ends")):
                path.write_text(f"bin:\n- {{part: 1 x 24 threaded pipe black iron, length: 13 in, ends: {ends}}}\n")
                _, found = answer(*words, "--bin", path)
                chain = found["chains"][0]
                self.assertEqual(chain["buy_count"], 2, ends)
                place = next(row for row, part in enumerate(chain["parts"]) if "a piece of 13 in" in part["name"])
                piece = next(piece for piece in chain["span"]["pieces"] if piece["part"] == place)
                self.assertTrue(piece["cut"])
                self.assertLessEqual(piece["length_m"], 13 * INCH)
                text = " ".join(run("chain", *words, "--bin", path).stdout.split())
                self.assertRegex(text, r"cut part \d \(1 x 24 pipe, a piece of 13 in, [^)]*\) to [^.]* end to end,[^.]* " + threads)
            # As it is it joins nothing, and no piece is cut longer than it is.
            path.write_text("bin:\n- {part: 1 x 24 threaded pipe black iron, length: 2 in, ends: one thread}\n")
            _, found = answer(*words, "--bin", path)
            self.assertEqual(found["chains"][0]["buy_count"], 3)

    def test_spares_are_not_for_a_distance(self):
        done = run("chain", "1 FNPT", "1 FNPT", "--span", "14 in", "--spares")
        self.assertEqual(done.returncode, 2)
        self.assertIn("a stand-in would have to make it too", done.stderr)

    def test_a_hose_takes_an_offset_that_elbows_cannot(self):
        status, found = answer("1 FNPT", "1 FNPT", "--span", "20 in", "--offset", "1 in", "--bore", "3/4 in",
                               "--avoid", "45 street elbow")
        self.assertEqual(status, 0)
        self.assertEqual(found["chains"][0]["span"]["made_by"], "hose")
        self.assertGreater(found["chains"][0]["span"]["hose_radius_m"], 6 * INCH)

    def test_two_elbows_make_a_set(self):
        words = ("1 FNPT", "1 FNPT", "--span", "24 in", "--offset", "10 in", "--avoid", "hose")
        status, found = answer(*words)
        self.assertEqual(status, 0)
        fit = found["chains"][0]["span"]
        self.assertIn(round(fit["bend_degrees"]), (45, 90))
        self.assertLessEqual(abs(fit["lands_aside_m"] - 10 * INCH), fit["band_aside_m"] + 2e-6)
        text = run("chain", *words).stdout
        self.assertIn("degree bends: set ", text)
        self.assertIn("at most one turn further and never back", " ".join(text.split()))

    def test_too_short_a_span_is_refused_with_the_nearest_one(self):
        done = run("chain", "1 FNPT", "1 FNPT", "--span", "1 in")
        self.assertEqual(done.returncode, 1)
        text = " ".join(done.stdout.split())
        self.assertIn("the two ports can be joined, but not by stock pieces, cut pipe or a hose at 1 in", text)
        self.assertIn("farther apart", text)
        self.assertIn("let the last port slide along its axis", text)
        status, found = answer("1 FNPT", "1 FNPT", "--span", "1 in")
        above = found["why_none"]["nearest_above_m"]
        self.assertGreater(above, INCH)
        self.assertEqual(answer("1 FNPT", "1 FNPT", "--span", f"{above * 1000} mm")[0], 0)

    def test_an_end_that_slides_takes_up_the_rest(self):
        status, found = answer("1 FNPT", "1 FNPT", "--span", "5 in", "--first-end", "loose")
        self.assertEqual(status, 0)
        self.assertEqual(found["chains"][0]["span"]["made_by"], "moving_end")
        done = run("chain", "1 FNPT", "1 FNPT", "--span", "5 in", "--first-end", "loose")
        self.assertIn("is only a guide", done.stdout)

    def test_wrong_words_are_told_exactly(self):
        for words, message in (
                (("--span", "5"), "--span"),
                (("--span", "61 ft"), "60 ft"),
                (("--offset", "1 in"), "asks for --span too: the distance between the faces, along the axes"),
                (("--span", "9 in", "--roll", "1 in"),
                 "asks for --offset too: it is the second offset, at right angles to the first")):
            done = run("chain", "1 FNPT", "1 FNPT", *words)
            self.assertEqual(done.returncode, 2, words)
            self.assertEqual(done.stdout, "")
            self.assertIn(message, done.stderr)

    def test_alternatives_each_make_the_distance(self):
        status, found = answer("1 FNPT", "1 FNPT", "--span", "30 in", "--alternatives", "3")
        self.assertEqual(status, 0)
        self.assertGreater(len(found["chains"]), 1)
        for chain in found["chains"]:
            self.assertLessEqual(abs(chain["span"]["miss_m"]), chain["span"]["band_m"] + 1e-9)
        self.assertEqual(found["shelf_empty"], [])  # what stands in would have to make the distance too

    def test_a_branched_assembly_has_no_span(self):
        done = run("chain", "1 FNPT", "1/2 FNPT", "1/4 FNPT", "--span", "9 in")
        self.assertEqual(done.returncode, 2)
        self.assertIn("--span", done.stderr)


if __name__ == "__main__":
    unittest.main(argv=sys.argv[:1])
