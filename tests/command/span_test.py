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
                               "--avoid", "45 street elbow", "--avoid", "flexible connector")
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

    # A hose is cut to its length anyhow: from the piece that is long enough, not from whichever.
    def test_a_hose_to_an_end_that_slides_is_cut_from_the_piece_that_is_long_enough(self):
        with tempfile.TemporaryDirectory() as folder:
            path = pathlib.Path(folder) / "bin.yaml"
            path.write_text("bin:\n- {part: 1 rubber hose, length: 9 in}\n- {part: 1 rubber hose, length: 20 in}\n")
            _, found = answer("1 barb", "1 barb", "--span", "12 in", "--last-end", "sliding", "--bin", path)
            self.assertEqual([part["name"] for part in found["chains"][0]["parts"]],
                             ["1 rubber hose, a piece of 20 in"])
            self.assertAlmostEqual(found["chains"][0]["span"]["miss_m"], 0.0, delta=1e-5)

    # What a fitter takes, as one told it (common practice): three plain pieces that fall a little long, and not a
    # brass hex nipple for the sake of a sixteenth.
    def test_stock_of_one_metal_goes_before_a_nearer_landing(self):
        _, found = answer("1 FNPT", "1 FNPT", "--span", "8 in")
        self.assertEqual([(part["name"], part["material"]) for part in found["chains"][0]["parts"]],
                         [("1 x 2-1/2 nipple", "black iron"), ("1 union", "black iron"),
                          ("1 x 6 nipple", "black iron")])

    # What falls short has to be backed off, which no taper joint is: then a piece is cut.
    def test_stock_that_falls_short_by_more_than_half_its_band_is_cut(self):
        _, found = answer("1/2 FNPT", "1/2 FNPT", "--span", "17-3/8 in", "--offset", "4 in")
        fit = found["chains"][0]["span"]
        self.assertTrue(any(piece["cut"] for piece in fit["pieces"]))
        self.assertAlmostEqual(fit["miss_m"], 0.0, delta=1e-5)

    def test_the_width_on_the_way_is_what_it_is(self):
        for ends, kept in ((("1/8 FNPT", "3/8 FNPT", "--span", "13 in"),
                            "Is nowhere narrower than 1/8 in; keeps to NPT all the way."),
                           (("3/8 compression", "3/8 FNPT", "--span", "20 in"),
                            "is nowhere narrower than 1/4 copper tube."),
                           (("1/2 FNPT", "1/2 FNPT", "--held"), "Keeps 1/2 in and NPT all the way.")):
            self.assertIn(kept, " ".join(run("chain", *ends).stdout.split()))

    def test_round_elbows_the_run_is_longer_than_its_ports_are_apart(self):
        text = " ".join(run("chain", "1/2 PEX tube", "1/2 PEX tube", "--span", "30 in", "--offset", "10 in").stdout.split())
        self.assertIn("Port to port 30 in along the axes, 40 in along the run", text)

    def test_a_hose_that_comes_with_its_ends_says_how_much_hangs_over(self):
        text = " ".join(run("chain", "3/4 FNPT", "3/4 MGHT", "--span", "13 in", "--offset", "10 in",
                            "--need", "flexible connector").stdout.split())
        self.assertIn("As it comes it is 6-9/16 in longer than what it fills", text)
        self.assertIn("no bend under 3-5/8 in radius", text)

    # A saw is all that plastic pipe and copper tube take, so a length is cut before stock and couplings make one.
    def test_tube_is_cut_before_stock_makes_a_distance(self):
        for ends, tube in ((("1 spigot", "1 FNPT", "--span", "30 in"), "schedule 40 PVC pipe"),
                           (("3/4 copper tube", "3/4 FNPT", "--span", "20 in"), "copper tube")):
            _, found = answer(*ends)
            names = [part["name"] for part in found["chains"][0]["parts"]]
            self.assertEqual(len(names), 3, names)
            self.assertIn(tube, names[1])
            self.assertEqual(found["chains"][0]["span"]["made_by"], "cut_pipe")

    # Who asks for the fewest parts or the lowest price gets them, whatever makes the distance.
    def test_parts_and_price_mean_what_they_say(self):
        for ends in (("1 spigot", "1 FNPT", "--span", "30 in"), ("1 FNPT", "1 FNPT", "--span", "8 in"),
                     ("3/4 FNPT", "3/4 FNPT", "--span", "17 in")):
            chains = {order: answer(*ends, "--order", order)[1]["chains"][0] for order in ("line", "parts", "price")}
            # What may be done with less let in is no better than what may be done with all.
            chains["no nipple"] = answer(*ends, "--avoid", "nipple")[1]["chains"][0]
            for chain in chains.values():
                self.assertLessEqual(chains["price"]["price_usd"], chain["price_usd"], ends)
                self.assertLessEqual(chains["parts"]["part_count"], chain["part_count"], ends)

    # One metal all the way is worth something, and not stainless at any price.
    def test_flanges_of_one_metal_are_not_taken_at_any_price(self):
        _, found = answer("2 FNPT", "2 FNPT", "--held", "--need", "flange", "--special-order")
        self.assertEqual({part["material"] for part in found["chains"][0]["parts"]}, {"black iron", "forged steel"})

    # Pipes that stand still are not pulled two inches apart for a cam coupling.
    def test_no_cam_closes_between_held_ends(self):
        for ends in (("3 FNPT", "3 FNPT", "--held"), ("1 FNPT", "1 FNPT", "--held", "--avoid", "union"),
                     ("2 cam coupler", "2 cam adapter", "--held")):
            _, found = answer(*ends)
            last = found["chains"][0]["steps"][-1]
            self.assertNotIn("both arms", last, ends)
            self.assertFalse([one for one in found["chains"][0]["cautions"] if "slides together" in str(one)], ends)

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
