"""More of what a fitter buys: ordinary connections of a shop, each answer read by its sizes from end to end, what it is
made of and what closes it. None of it by price.

Trade practice, from memory. Run with the program."""
import pathlib
import sys
import unittest

sys.path.insert(0, str(pathlib.Path(__file__).parent))
from fitter_run import PROGRAM, Run  # noqa: E402

NIPPLE = {"nipple", "close nipple", "hex nipple"}
HELD = "--held"


def need(*words):
    return tuple(word for one in words for word in ("--need", one))


# asked; sizes from end to end; families in their order, NIPPLE for any plain one; materials, where they matter.
CASES = [
    # Rigid pipe in one size.
    (("1/2 FNPT", "1/2 FNPT", HELD), "1/2", [NIPPLE, "union", NIPPLE], None),
    (("1-1/2 FNPT", "1-1/2 FNPT", HELD), "1-1/2", [NIPPLE, "union", NIPPLE], None),
    (("1 MNPT", "1 MNPT"), "1", ["coupling"], None),
    (("1 MNPT", "1 MNPT", HELD), "1", ["union"], None),
    (("1 FNPT", "1 MNPT", HELD), "1", [NIPPLE, "union"], None),
    (("2 FNPT", "2 FNPT", *need("ball valve")), "2", [NIPPLE, "ball valve", NIPPLE], None),
    (("1 FNPT", "1 FNPT", HELD, *need("gate valve")), "1", [NIPPLE, "gate valve", NIPPLE, "union", NIPPLE], None),
    (("3/4 FNPT", "3/4 FNPT", HELD, *need("check valve")), "3/4",
     [NIPPLE, "spring check valve", NIPPLE, "union", NIPPLE], None),
    (("1 FNPT", "1 FNPT", HELD, *need("strainer")), "1", [NIPPLE, "pipe strainer", NIPPLE, "union", NIPPLE], None),
    (("1/4 FNPT", "1/4 FNPT", HELD, *need("needle valve")), "1/4",
     [NIPPLE, "needle valve", NIPPLE, "union", NIPPLE], None),
    (("1 FNPT", "1 FNPT", HELD, *need("dielectric union")), "1", [NIPPLE, "dielectric union", NIPPLE], None),
    (("1 FNPT", "1 FNPT", HELD, *need("elbow")), "1", ["90 street elbow", NIPPLE, "union", NIPPLE], None),
    # The ends' own metal.
    (("1 FNPT brass", "1 FNPT brass", HELD), "1", [NIPPLE, "union", NIPPLE], {"brass"}),
    (("1 FNPT stainless", "1 FNPT stainless", HELD), "1", [NIPPLE, "union", NIPPLE], {"stainless"}),
    (("1 FNPT galvanized", "1 FNPT galvanized", HELD, *need("ball valve")), "1",
     [NIPPLE, "ball valve", NIPPLE, "union", NIPPLE], {"galvanized", "brass"}),
    # Sizes change once.
    (("1 FNPT", "3/4 MNPT"), "1 3/4", ["hex bushing"], None),
    (("1/4 FNPT", "1/8 MNPT"), "1/4 1/8", ["hex bushing"], None),
    (("1/2 FNPT", "1/4 MNPT"), "1/2 1/4", ["hex bushing"], None),
    (("1-1/4 FNPT", "3/4 MNPT"), "1-1/4 3/4", ["hex bushing"], None),
    (("1 MNPT", "3/4 MNPT"), "1 3/4", ["reducing coupling"], None),
    (("1 MNPT", "3/4 FNPT"), "1 3/4", ["reducing coupling", NIPPLE], None),
    (("2 FNPT", "1 FNPT", HELD), "2 1", ["hex bushing", NIPPLE, "union", NIPPLE], None),
    # A distance.
    (("1-1/2 FNPT", "1-1/2 FNPT", HELD, *need("union"), "--span", "10 in"), "1-1/2", [NIPPLE, "union", NIPPLE], None),
    (("2 FNPT", "2 FNPT", HELD, *need("ball valve"), "--span", "24 in"), "2",
     [NIPPLE, "ball valve", NIPPLE, "union", NIPPLE], None),
    (("1 FNPT", "1 FNPT", *need("hose"), "--span", "18 in", "--offset", "3 in"), "1",
     ["barb to male pipe", "hose", "barb to male pipe"], {"brass", "rubber"}),
    # One piece of tube is bowed into its second nut where it has room; into a short gap something else must close.
    (("3/8 compression", "3/8 compression", "--span", "20 in"), "1/4", ["copper tube"], {"copper"}),
    (("3/8 compression", "3/8 FNPT", "--span", "20 in"), "1/4 3/8", ["copper tube", "compression to male pipe"],
     {"copper", "brass"}),
    (("5/8 compression", "1/2 FNPT", HELD), "1/2 5/8 1/2", ["copper tube", "compression to male pipe"],
     {"copper", "brass"}),
    # A line of tube goes on in tube.
    (("3/8 air tube", "1/4 FNPT", "--air", "--span", "15 ft"), "3/8 1/4", ["push-in connector", "air tube", "push-in to male pipe"],
     None),
    (("3/4 PEX tube", "3/4 FNPT", "--span", "8 ft"), "3/4", ["PEX coupling", "PEX tube", "PEX to male pipe"], None),
    (("1/2 PEX tube", "1/2 PEX tube", "--span", "30 in", "--offset", "10 in"), "1/2",
     ["PEX 90 elbow", "PEX tube", "PEX 90 elbow", "PEX tube", "PEX coupling"], {"PEX", "brass"}),
    # And a line of hose in hose.
    # PEX comes in coils: no pipe in the middle of it.
    (("1/2 PEX tube", "1/2 PEX tube", "--span", "20 ft"), "1/2", ["PEX coupling", "PEX tube", "PEX coupling"], None),
    (("1/2 hose end", "1/2 FNPT", "--span", "6 ft"), "1/2", ["barb splicer", "hose", "barb to male pipe"], None),
    # Hoses that come with their ends on, longer than their gap, also aside.
    (("3/4 MGHT", "3/4 FGHT", "--span", "9 ft"), "3/4", ["garden hose"], {"rubber"}),
    (("3/4 MGHT", "3/4 FGHT", "--span", "24 ft"), "3/4", ["garden hose"], {"rubber"}),
    (("3/4 MGHT", "3/4 FGHT", "--span", "50 ft"), "3/4", ["garden hose", "garden hose"], {"rubber"}),
    (("3/4 MGHT", "3/4 MGHT", "--span", "42 in"), "3/4", ["fill hose"], {"rubber"}),
    (("3/4 MNPT", "3/4 MNPT", "--span", "17 in", "--offset", "4 in", *need("flexible connector")), "3/4",
     ["flexible connector"], {"brass"}),
    (("1 MNPT", "1 MNPT", "--span", "16 in", "--offset", "3 in", *need("flexible connector")), "1",
     ["flexible connector"], {"brass"}),
    (("3/4 MNPT", "3/4 MNPT", "--span", "11 in", *need("flexible connector")), "3/4", ["flexible connector"], {"brass"}),
    # Hose.
    (("1 FNPT", "1 FNPT", *need("hose")), "1", ["barb to male pipe", "hose", "barb to male pipe"],
     {"brass", "rubber"}),
    (("3/4 FNPT", "3/4 barb", HELD), "3/4", ["barb to male pipe", "hose"], {"brass", "rubber"}),
    (("1-1/2 FNPT", "1-1/2 hose end"), "1-1/2", ["combination nipple"], None),
    (("1-1/2 FNPT", "1-1/2 hose end", HELD, *need("ball valve")), "1-1/2", [NIPPLE, "ball valve", "combination nipple"],
     None),
    (("3/4 MGHT", "3/4 MGHT"), "3/4", ["female hose thread to female hose thread adapter"], None),
    (("3/4 FGHT", "3/4 FNPT"), "3/4", ["male hose thread to male pipe adapter"], None),
    (("1/2 FNPT", "3/4 MGHT"), "1/2 3/4", ["female hose thread to male pipe adapter"], None),
    # Tube and plastic.
    (("1/2 FNPT", "1/2 copper tube"), "1/2", ["cup to male pipe"], None),
    (("3/4 copper tube", "1/2 copper tube"), "3/4 1/2", ["copper reducing coupling"], {"copper"}),
    # Copper stays copper; to iron by one proper break, and iron beyond it.
    (("1-1/2 copper tube", "1-1/4 FNPT", HELD), "1-1/2 1-1/4",
     ["copper union", "copper tube", "cup to male pipe"], {"copper"}),
    (("1-1/2 copper tube", "1-1/4 FNPT black iron", HELD), "1-1/2 1-1/4", ["dielectric union", "hex bushing", NIPPLE],
     {"galvanized", "black iron"}),
    (("3/4 copper tube", "3/4 FNPT black iron", HELD), "3/4", ["dielectric union", NIPPLE],
     {"galvanized", "black iron"}),
    # One metal all the way is not worth thrice the price.
    (("1 MNPT", "3/4 FGHT"), "1 3/4", ["reducing coupling", "male hose thread to male pipe adapter"], {"black iron", "brass"}),
    (("1/2 PEX tube", "1/2 PEX tube"), "1/2", ["PEX coupling"], None),
    (("1/2 PEX tube", "1/2 FNPT"), "1/2", ["PEX to male pipe"], None),
    (("1 spigot", "1 spigot"), "1", ["PVC coupling"], {"PVC"}),
    (("2 socket", "1-1/2 socket"), "2 1-1/2", ["PVC reducing bushing", "PVC pipe"], {"PVC"}),
    (("1 socket", "1 socket", HELD, *need("ball valve")), "1",
     ["PVC pipe", "PVC ball valve", "PVC pipe", "PVC union", "PVC pipe"], {"PVC"}),
    (("3/8 male 45 flare", "3/8 FNPT"), "3/8", ["45 flare swivel to male pipe"], {"brass"}),
    (("1-1/2 FNPT", "1-1/2 cam coupler"), "1-1/2", ["cam adapter F"], None),
    (("2 MNPT", "2 cam adapter"), "2", ["cam coupler D"], None),
    # Shop air: brass and iron, nothing of the garden.
    (("1/4 FNPT", "1/4 FNPT", "--air", HELD, *need("regulator")), "1/4",
     [NIPPLE, "air regulator", NIPPLE, "union", NIPPLE], None),
    (("1/4 FNPT", "1/4 FNPT", "--air", HELD, *need("air filter")), "1/4",
     [NIPPLE, "air filter", NIPPLE, "union", NIPPLE], None),
    (("1/2 FNPT", "1/2 FNPT", "--air", HELD, *need("ball valve")), "1/2",
     [NIPPLE, "ball valve", NIPPLE, "union", NIPPLE], None),
    (("1/2 FNPT", "3/8 barb", "--air"), "1/2 3/8", ["barb to male pipe", "hose"], {"brass", "rubber"}),
    (("1/4 FNPT", "1/4 air tube", "--air"), "1/4", ["push-in to male pipe"], None),
]


def of_family(family, wanted):
    return family in wanted if isinstance(wanted, set) else family == wanted


class Cases(unittest.TestCase):
    def test_each_is_what_a_fitter_buys(self):
        for asked, along, families, materials in CASES:
            with self.subTest(asked=asked):
                run = Run(*asked)
                self.assertEqual(" ".join(run.along), along, run.text)
                self.assertEqual(len(run.families), len(families), run.text)
                for family, wanted in zip(run.families, families):
                    self.assertTrue(of_family(family, wanted), f"{family}, not {wanted}: {run.text}")
                if materials is not None:
                    self.assertEqual(run.materials, materials, run.text)


class Valves(unittest.TestCase):
    def test_a_valve_that_shuts_is_no_check_valve(self):
        run = Run("1 FNPT", "1 FNPT", HELD, *need("valve", "check valve"))
        self.assertEqual(run.along, ["1"], run.text)
        self.assertEqual(sum("check valve" in family for family in run.families), 1, run.text)
        self.assertEqual(sum(family in ("ball valve", "gate valve") for family in run.families), 1, run.text)
        self.assertEqual(run.closing, ["union"], run.text)

    def test_on_air_all_three_stand_in_the_line(self):
        run = Run("1/2 FNPT", "1/2 FNPT", "--air", HELD, *need("union", "check valve", "valve"))
        self.assertEqual(run.along, ["1/2"], run.text)
        self.assertIn("spring check valve", run.families)
        self.assertIn("ball valve", run.families)
        self.assertEqual(run.closing, ["union"], run.text)
        self.assertLessEqual(run.materials, {"brass", "black-iron", "black iron"}, run.text)


class Tube(unittest.TestCase):
    """A distance in tube: stubs between the fittings, one piece on each axis cut to measure, all of its own material."""

    def test_a_union_in_pvc(self):
        run = Run("1 socket", "1 socket", HELD, *need("union"), "--span", "14 in")
        self.assertEqual(run.materials, {"PVC"}, run.text)
        self.assertEqual(run.families, ["PVC pipe", "PVC union", "PVC pipe"], run.text)

    def test_an_offset_in_its_own_elbows(self):
        for port, elbow, material in (("1 socket", "PVC 90 elbow", "PVC"), ("3/4 solder cup", "copper 90 elbow", "copper")):
            run = Run(port, port, HELD, "--span", "20 in", "--offset", "6 in")
            self.assertEqual(run.materials, {material}, run.text)
            self.assertEqual(sum("elbow" in family for family in run.families), 2, run.text)


class GardenHose(unittest.TestCase):
    """Garden hose thread stands at the end that has it, and pipe thread runs as far as that."""

    def test_none_before_the_first_valve(self):
        for valve in ("ball valve", "gate valve"):
            run = Run("1 FNPT", "3/4 MGHT", *need(valve))
            hose = [family for family in run.families if "hose" in family]
            self.assertEqual(hose, ["female hose thread to male pipe adapter"], run.text)

    def test_a_hose_that_is_asked_for_keeps_its_own_ends(self):
        run = Run("1 FNPT", "3/4 MGHT", *need("garden hose"))
        self.assertIn("garden hose", run.families, run.text)


class Metals(unittest.TestCase):
    """What a run is made of: the ends' own metal, brass into copper, black iron round a brass valve."""

    def test_brass_goes_into_copper(self):
        for words in (("1 FNPT", "1 FNPT copper"), ("1 FNPT copper", "1 FNPT copper", HELD),
                      ("3/4 MNPT copper", "3/4 MNPT"), ("1 FNPT steel", "3/4 MNPT copper")):
            run = Run(*words)
            self.assertEqual(run.materials, {"brass"}, run.text)

    def test_brass_between_steel_and_copper(self):
        run = Run("1 FNPT steel", "1 FNPT copper", HELD)
        self.assertEqual(run.materials, {"brass"}, run.text)

    def test_iron_round_a_brass_valve(self):
        for ends in (("1 FNPT", "1 FNPT"), ("1 FNPT steel", "1 FNPT steel"), ("1/2 FNPT aluminium", "1/2 FNPT")):
            for valve in ("ball valve", "gate valve", "spring check valve"):
                run = Run(*ends, HELD, *need(valve))
                fittings = {part["material"] for part, family in zip(run.parts, run.families) if "valve" not in family}
                self.assertEqual(fittings, {"black iron"}, run.text)

    def test_no_dielectric_union_for_the_sake_of_a_length(self):
        for distance in ("24 in", "96 in", "200 in", "260 in"):
            for ends in (("1 FNPT", "1 FNPT"), ("1 FNPT steel", "1 FNPT steel")):
                run = Run(*ends, HELD, "--span", distance)
                self.assertEqual(run.materials, {"black iron"}, run.text)
                self.assertNotIn("dielectric union", run.families, run.text)


class WithoutNipples(unittest.TestCase):
    """Where nipples are kept out, short pieces are cut from pipe and threaded."""

    def test_pipe_is_cut_short(self):
        for words in (("1 FNPT steel", "1 FNPT steel", HELD, "--span", "20 in"),
                      ("1-1/2 FNPT steel", "1-1/2 FNPT steel", HELD, "--span", "30 in", *need("ball valve"))):
            run = Run(*words, "--avoid", "nipple")
            self.assertEqual(run.kinds, {"npt"}, run.text)
            self.assertEqual(run.closing, ["union"], run.text)
            self.assertGreaterEqual(run.families.count("threaded pipe"), 2, run.text)
            self.assertFalse([family for family in run.families if "nipple" in family], run.text)


class KeptApart(unittest.TestCase):
    """Unlike metals in water: plastic or a dielectric fitting between them, as a fitter does it (common practice)."""

    def test_plastic_parts_an_aluminium_wall_from_the_run(self):
        for needs in ((), need("ball valve")):
            run = Run("1 FNPT aluminium", "1 FNPT brass", "--galvanic", "avoid", *needs)
            self.assertLessEqual(len(run.families), 4, run.text)
            self.assertTrue(any("PVC" in family or "dielectric" in family for family in run.families), run.text)

    def test_iron_in_wet_aluminium_is_said(self):
        wet = Run("1 FNPT aluminium", "1 FNPT aluminium", *need("black iron union"))
        self.assertIn("aluminium corrodes", " ".join(wet.chain["cautions"]))
        dry = Run("1 FNPT aluminium", "1 FNPT aluminium", "--air", *need("black iron union"))
        self.assertNotIn("corrodes", " ".join(dry.chain["cautions"]))


class AirAlone(unittest.TestCase):
    def test_no_air_regulator_in_a_run_of_water(self):
        for thing in ("air regulator", "air filter"):
            asked = ["1/4 FNPT", "1/4 FNPT", *need(thing)]
            reason = PROGRAM.ask("chain", *asked)["why_none"]["why"]
            self.assertEqual(reason["code"], "need_is_for_air_alone", reason)
            self.assertIn(thing, Run(*asked, "--air").families)


class Galvanic(unittest.TestCase):
    """Where it is dry nothing carries the current: iron with brass in air is nothing to print."""

    def cautions(self, *words):
        return " ".join(Run(*words, *need("brass ball valve")).chain["cautions"])

    def test_iron_with_brass_is_watched_in_water_alone(self):
        self.assertIn("black iron corrodes", self.cautions("1-1/4 FNPT black iron", "1-1/4 FNPT black iron"))
        self.assertNotIn("corrodes", self.cautions("1-1/4 FNPT black iron", "1-1/4 FNPT black iron", "--air"))

    def test_metals_far_apart_are_kept_apart_in_air_too(self):
        # Zinc lies 0.8 V from brass, aluminium 0.5 V: that much is let be where it is dry (MIL-STD-889 practice).
        said = self.cautions("1/2 MNPT galvanized", "1/2 MNPT galvanized", "--air")
        self.assertIn("galvanized corrodes", said)
        self.assertNotIn("in water", said)
        self.assertNotIn("corrodes", self.cautions("1/2 MNPT aluminum", "1/2 MNPT aluminum", "--air"))


if __name__ == "__main__":
    unittest.main(argv=sys.argv[:1])
