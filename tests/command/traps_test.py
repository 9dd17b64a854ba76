"""Assemblies with a trap in them, each as a fitter would ask for it: the answer must name the trap, its reason and the
cheapest way out, and never a chain that cannot be made or that hurts.

Run with the program and the folder of the examples."""
import pathlib
import subprocess
import sys
import tempfile
import unittest

PROGRAM, EXAMPLES = sys.argv[1], pathlib.Path(sys.argv[2])


def said(*words, cwd=None):
    """Exit status, and what is printed with its line breaks as blanks."""
    done = subprocess.run([PROGRAM, *map(str, words)], capture_output=True, text=True, cwd=cwd)
    assert done.stderr == "", done.stderr
    return done.returncode, " ".join(done.stdout.split())


def mends(text):
    """What is offered, in order."""
    part = text.split("Any one of these mends it")[1].split(" Do not try ")[0].split(" What can be got to ")[0]
    return [line.strip() for line in part.split(" - ") if line.strip()]


class Trap(unittest.TestCase):
    def refused(self, *words, cwd=None):
        status, text = said(*words, cwd=cwd)
        self.assertEqual(status, 1, text)
        self.assertNotIn("Build order", text)
        return text

    def found(self, *words):
        status, text = said(*words)
        self.assertEqual(status, 0, text)
        self.assertIn("Build order", text)
        return text


class TwoWeldedPortsInLine(Trap):
    """A plain coupling cannot join two lengths that are held; a union must (army ordnance course "Iron pipe unions")."""
    BIN = """bin:
  - {part: "1-1/2 full-bore ball valve, brass", count: 1}
  - {part: "1-1/2 close nipple, black iron", count: 2}
  - {part: "1-1/2 x 3 nipple, black iron", count: 2}
  - {part: "1-1/2 coupling, black iron", count: 1}
"""

    def ask(self, bin_text, *more):
        with tempfile.TemporaryDirectory() as folder:
            pathlib.Path(folder, "bin.yaml").write_text(bin_text)
            return said("chain", "1-1/2 FNPT", "1-1/2 FNPT", "--held", "--need", "ball valve", "--from-bin", "--bin",
                        "bin.yaml", *more, cwd=folder)

    def test_without_a_union_it_is_refused_and_the_union_is_the_first_mend(self):
        status, text = self.ask(self.BIN)
        self.assertEqual(status, 1)
        self.assertIn("these two cannot both be kept: both ends held, so that neither turns; only what is in the bin", text)
        self.assertIn("Between held ends the last joint must be made without turning either: by a union, a swivel nut, a "
                      "hose or a flange.", text)
        self.assertEqual(mends(text), [
            "buy the 1-1/2 union (black iron), about $17.10: then 5 parts, 1 to buy, about $17.10",
            "let the first port (1-1/2 FNPT) turn and move: then 3 parts, nothing to buy",
            "let the last port (1-1/2 FNPT) turn and move: then 3 parts, nothing to buy"])

    def test_the_mend_works_and_closes_at_the_union_beyond_the_valve(self):
        status, text = self.ask(self.BIN + '  - {part: "1-1/2 union, black iron", count: 1}\n', "--valve-stays", "first")
        self.assertEqual(status, 0)
        self.assertIn("Last, close part 4 (1-1/2 union)", text)
        self.assertLess(text.index("ball valve, brass"), text.index("1-1/2 union, black iron"))


class HoseThreadOnPipeThread(Trap):
    """3/4 NPT and 3/4 hose thread differ by 1/80 in across, 14 against 11-1/2 threads an inch (ASME B1.20.1, B1.20.7)."""

    def test_the_adapter_is_found_and_the_trap_is_named(self):
        text = self.found("chain", "3/4 FNPT", "3/4 MGHT")
        self.assertIn("3/4 FGHT swivel x 3/4 MNPT adapter", text)
        self.assertIn("never screw 3/4 FNPT and 3/4 MGHT straight together", text)
        self.assertIn("Washer in the female, hand tight, no tape on the thread.", text)

    def test_straight_together_is_refused(self):
        text = self.refused("chain", "3/4 FNPT", "3/4 MGHT", "--most-parts", "0")
        self.assertIn("it cross-threads in one turn; it takes a pipe-to-hose-thread adapter", text)
        self.assertEqual(mends(text), ["allow more parts: then 1 part, 1 to buy, about $7.15"])


class BritishThreadOnPipeThread(Trap):
    """3/4 NPT and 3/4 BSP taper have 14 threads an inch both and start to screw in (ISO 7-1 against ASME B1.20.1)."""

    def test_they_are_never_joined_whatever_it_costs(self):
        text = self.found("chain", "3/4 FNPT", "3/4 BSPT male", "--special-order")
        self.assertIn("never screw 3/4 FNPT and 3/4 MBSPT straight together", text)
        self.assertIn("it starts to screw in, but the thread angles are 60 and 55 degrees", text)
        self.assertIn("it takes a BSP-to-NPT adapter", text)

    def test_straight_together_is_refused(self):
        text = self.refused("chain", "3/4 FNPT", "3/4 BSPT male", "--most-parts", "0")
        self.assertIn("Do not try - never join 3/4 FNPT and 3/4 MBSPT", text)


class PlasticUnderAir(Trap):
    """Compressed air shatters PVC (OSHA Hazard Information Bulletin, 13 December 1990)."""

    def test_asked_for_by_name_it_is_refused(self):
        text = self.refused("chain", "1 FNPT", "1 FNPT", "--air", "--need", "PVC coupling")
        self.assertIn("these two cannot both be kept: the PVC coupling asked for; parts proved for compressed air alone.", text)
        self.assertEqual(mends(text)[0], "do without the PVC coupling: then 1 part, 1 to buy, about $1.85")
        self.assertIn("use the chain for water only, never under compressed air", text)

    def test_a_port_that_is_plastic_itself_is_named(self):
        text = self.found("chain", "1 MNPT plastic", "1 FNPT", "--air")
        self.assertIn("if the first port (1 MNPT plastic) is polypropylene or PVC, compressed air can burst it and throw splinters", text)
        self.assertNotIn("can burst it", self.found("chain", "1 MNPT", "1 FNPT", "--air"))

    def test_unasked_it_stays_out(self):
        self.assertNotIn("PVC", self.found("chain", "1 FNPT", "1 FNPT", "--air", "--order", "price"))


class ElbowWithoutRoom(Trap):
    """A body with a bend sweeps its full radius while it is screwed up; it is faced within one turn, never back (C16)."""

    def test_without_room_to_swing_it_is_refused(self):
        text = self.refused("chain", "1 FNPT", "1 FNPT", "--need", "90 street elbow", "--room", "1 in")
        self.assertIn("every chain holds a body that cannot be turned within 1 in of the run", text)
        self.assertEqual(mends(text), ["make more room round the run than 1 in, at least 2.25 in: then 2 parts, 2 to buy, about $6.35"])

    def test_with_room_it_is_faced_and_never_turned_back(self):
        text = self.found("chain", "1 FNPT", "1 FNPT", "--need", "90 street elbow", "--room", "2-1/2 in")
        self.assertIn("Stop where its other end faces right, at most one turn further and never back.", text)


class CloseNippleUnderAWrench(Trap):
    """A close nipple has no bare pipe to hold (common practice), so no swivel nut is tightened against it."""

    def test_a_longer_nipple_is_taken_before_a_swivel_nut(self):
        text = self.found("chain", "3/4 FNPT", "3/4 FNPSM")
        self.assertIn("3/4 x 2 nipple", text)
        self.assertNotIn("close nipple", text)

    def test_alone_before_a_swivel_nut_it_is_refused(self):
        text = self.refused("chain", "3/4 FNPT", "3/4 FNPSM", "--need", "close nipple", "--most-parts", "1")
        self.assertEqual(mends(text)[0], "do without the close nipple: then 1 part, 1 to buy, about $1.54")

    def test_it_is_turned_by_hand_and_nothing_grips_it(self):
        text = self.found("chain", "1 FNPT", "1 FNPT", "--need", "close nipple")
        self.assertIn("turn part 1 hand-tight and no more: what goes onto it draws it up", text)
        self.assertIn("part 1 draws up in both, so no wrench touches its threads", text)
        self.assertNotIn("hold part 1 with", text)


class CheckValveOnAir(Trap):
    """A metal flap seeps on air and must not hang in falling flow: a soft-seated spring check (common practice)."""

    def test_a_spring_check_between_pipe_threads(self):
        text = self.found("chain", "1/2 FNPT", "1/2 FNPT", "--air", "--held", "--need", "check valve")
        self.assertIn("1/2 spring check valve", text)
        self.assertIn("Its arrow points to the last port.", text)
        for word in ("swing", "GHT", "nylon", "hose"):
            self.assertNotIn(word, text)

    def test_a_swing_check_on_air_is_refused(self):
        self.assertIn("parts proved for compressed air alone",
                      self.refused("chain", "1/2 FNPT", "1/2 FNPT", "--air", "--need", "swing check valve"))

    def test_on_water_it_says_how_it_must_be_mounted(self):
        text = self.found("chain", "1 FNPT", "1 FNPT", "--need", "swing check valve")
        self.assertIn("never with the flow downward", text)


class StackedBushings(Trap):
    """Bushings are not stacked: thin walls crack, ledges hold water; a reducing coupling is the way (common practice)."""
    NO_OTHER = ("--avoid", "reducing coupling", "--avoid", "nipple", "--avoid", "adapter", "--avoid", "tube")

    def test_two_are_refused_and_the_one_bushing_that_does_it_is_the_first_mend(self):
        text = self.refused("chain", "2 FNPT", "1/4 MNPT", *self.NO_OTHER)
        self.assertIn("no more than one bushing", text)
        self.assertEqual(mends(text)[0], "order the 2 x 1/4 hex bushing: then 1 part, 1 to buy, about $7.25")
        self.assertNotIn("One part would complete it", text)

    def test_where_they_are_allowed_the_stack_is_named(self):
        text = self.found("chain", "2 FNPT", "1/4 MNPT", *self.NO_OTHER, "--most-bushings", "2")
        self.assertIn("a bushing sits in another bushing: a reducing coupling is the sounder way", text)

    def test_left_free_there_is_no_stack(self):
        self.assertNotIn("sits in another bushing", self.found("chain", "2 FNPT", "1/4 MNPT"))


class RiserThroughItsBung(Trap):
    """Pipe never passes its own size's female thread; a half coupling takes a thread from one side only (C18)."""
    BOX = ("--height", "14 in", "--length", "44 in", "--width", "22 in", "--bung", "1 FNPT")

    def test_a_half_coupling_from_both_sides_is_refused(self):
        text = self.refused("riser", *self.BOX, "--bung-kind", "half coupling")
        self.assertIn("A half coupling is threaded from one end only, so it cannot take the riser from below and a nipple "
                      "from above: weld in a full coupling, or weld the riser itself through the lid.", text)

    def test_through_its_own_size_it_goes_in_before_the_lid_is_closed(self):
        status, text = said("riser", *self.BOX)
        self.assertEqual(status, 0)
        self.assertIn("It goes in from inside, before the lid closes.", text)
        self.assertIn("It cannot be drawn out once the lid is closed.", text)


class CastingAsWeldBung(Trap):
    """Malleable castings crack beside the weld, zinc burns to fume (common practice)."""
    BUNG = "air bung:     {port: 1/2 FNPT, bung: half coupling, where: lid, material: forged steel}"

    def plan(self, bung):
        job = (EXAMPLES / "bevel-bench.yaml").read_text()
        assert job.count(self.BUNG) == 1
        with tempfile.TemporaryDirectory() as folder:
            pathlib.Path(folder, "job.yaml").write_text(job.replace(self.BUNG, f"air bung: {{port: 1/2 FNPT, {bung}, where: lid}}"))
            return said("plan", "--all", "job.yaml", cwd=folder)

    def test_still_to_be_welded_in_it_is_refused(self):
        status, text = self.plan("bung part: 1/2 coupling galvanized, welded in: no")
        self.assertEqual(status, 1)
        self.assertIn("REFUSED The bung of 'air bung': galvanized is no weld bung: its zinc burns to a poisonous fume", text)
        self.assertIn("Mend: weld in a half or full coupling of forged steel, class 3000", text)

    def test_welded_in_already_its_weld_is_to_be_watched(self):
        status, text = self.plan("bung part: 1/2 coupling black iron, welded in: yes")
        self.assertEqual(status, 0)
        self.assertIn("black iron is no weld bung: a malleable casting, which cracks beside the weld", text)
        self.assertIn("Look at its weld for cracks before each leak test", text)

    def test_with_no_word_that_it_is_there_it_is_refused(self):
        status, text = self.plan("bung part: 1/2 coupling black iron")
        self.assertEqual(status, 1)
        self.assertIn("black iron is no weld bung: a malleable casting, which cracks beside the weld", text)


class ValveBeforeReliefValve(Trap):
    """Nothing that can shut stands between a vessel and its relief valve (ASME BPVC section VIII UG-135, from memory)."""

    def test_a_shut_off_valve_on_its_way_is_refused_with_the_reason(self):
        text = self.refused("chain", "1 FNPT", "3/4 MNPT", "1/2 MNPT", "--branch-relief", "1", "--branch-need", "1=ball valve")
        self.assertIn("a ball valve can shut, and nothing that can may stand between a tank and its relief valve.", text)
        self.assertEqual(mends(text), ["do without the ball valve on the way to target 1 (3/4 MNPT)"])

    def test_on_another_branch_it_may_stand(self):
        text = self.found("chain", "1 FNPT", "3/4 MNPT", "1/2 MNPT", "--branch-relief", "1", "--branch-need", "2=ball valve")
        self.assertIn("ball valve", text)


class SealsThatDoNotMatch(Trap):
    """An end is thread and seal: a straight male jams in a taper female, and flares meet only their own cone (C5, C6)."""

    def test_a_swivel_seals_on_its_gasket_and_takes_no_tape(self):
        self.assertIn("Gasket in the swivel nut against the end of the male, tighten the nut, hold the body, no tape.",
                      self.found("chain", "1/2 FNPSM", "1/2 MNPT"))

    def test_a_straight_male_in_a_taper_female_is_refused(self):
        text = self.refused("chain", "3/4 MNPSM", "3/4 FNPT", "--most-parts", "0")
        self.assertIn("a straight male jams on a few threads of a taper female and cannot seal", text)

    def test_two_kinds_of_flare_are_refused(self):
        text = self.refused("chain", "1/2 37 flare male", "1/2 45 flare female")
        self.assertIn("screw together, but the cones touch on a line only and leak", text)

    def test_a_flare_goes_onto_pipe_by_its_adapter(self):
        text = self.refused("chain", "1/2 37 flare male", "1/2 FNPT")
        self.assertEqual(mends(text),
                         ["order the 1/2 female 37 flare swivel x 1/2 MNPT adapter: then 1 part, 1 to buy, about $2.95"])


class AFlareBetweenTwoFittings(Trap):
    """A flaring bar clamps the loose tube: it goes between no two fittings three inches apart (common practice)."""

    def test_the_tube_is_flared_before_it_goes_in(self):
        for words in (("1/2 FNPT", "1/2 FNPT", "--span", "5 in", "--held", "--need", "copper tube"),
                      ("3/8 male 45 flare", "1/4 FNPT", "--need", "copper tube")):
            text = self.found("chain", *words)
            order = text.split("Build order")[1]
            self.assertIn("then flare the tube", order)
            flared = order.index("then flare the tube")
            for port in ("the first port", "the last port", "Tape 3 to 4 turns"):
                if port in order:
                    self.assertLess(flared, order.index(port), text)


if __name__ == "__main__":
    unittest.main(argv=sys.argv[:1])
