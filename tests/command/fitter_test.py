"""What a fitter buys, case by case: each answer of the default order is read as a fitter reads it, by the sizes along
the run, its kinds of joint, its materials and what closes it. None of it by price.

Trade practice, from memory; the cases are ordinary connections of a shop.

Run with the program."""
import pathlib
import sys
import unittest

sys.path.insert(0, str(pathlib.Path(__file__).parent))
from fitter_run import PROGRAM, Run  # noqa: E402


class Fitter(unittest.TestCase):
    def all_in(self, run, size, kinds=("npt",)):
        self.assertEqual(set(run.sizes), {size}, run.text)
        self.assertLessEqual(run.kinds, set(kinds), run.text)

    def test_a_ball_valve_between_held_ports_is_of_their_size_beside_a_union(self):
        run = Run("1 FNPT", "1 FNPT", "--held", "--need", "ball valve")
        self.all_in(run, "1")
        self.assertEqual(sorted(family for family in run.families if "nipple" not in family), ["ball valve", "union"],
                         run.text)
        self.assertEqual(len(run.parts), 5, run.text)
        self.assertEqual(run.kept, "keeps 1 in and NPT all the way")

    def test_a_union_is_of_the_size_of_its_line(self):
        run = Run("2 FNPT", "2 FNPT", "--held", "--need", "union")
        self.all_in(run, "2")
        self.assertEqual(len(run.parts), 3, run.text)
        self.assertEqual(len(run.materials), 1, run.text)

    def test_three_needs_are_all_of_the_size_of_their_line(self):
        run = Run("1-1/4 FNPT", "1-1/4 FNPT", "--held", "--need", "ball valve", "--need", "union", "--need", "check valve")
        self.all_in(run, "1-1/4")
        self.assertEqual(len(run.closing), 1, run.text)

    def test_a_distance_is_made_by_one_piece_of_the_lines_size(self):
        run = Run("1 FNPT", "1 FNPT", "--held", "--need", "ball valve", "--need", "union", "--span", "14 in")
        self.all_in(run, "1")
        self.assertEqual(run.closing, ["union"], run.text)

    def test_an_offset_takes_two_elbows_and_a_union_of_the_runs_metal(self):
        run = Run("1 FNPT", "1 FNPT", "--held", "--span", "20 in", "--offset", "6 in")
        self.all_in(run, "1")
        self.assertEqual(sum("elbow" in family for family in run.families), 2, run.text)
        self.assertEqual(run.closing, ["union"], run.text)
        self.assertEqual(len(run.materials), 1, run.text)

    def test_a_reduction_is_made_once_and_closed_in_the_smaller_size(self):
        run = Run("2 FNPT", "3/4 FNPT", "--held")
        self.assertEqual(set(run.sizes), {"2", "3/4"}, run.text)
        self.assertEqual(run.sizes, sorted(run.sizes, key=lambda size: size != "2"), run.text)
        self.assertEqual(run.kinds, {"npt"}, run.text)
        self.assertEqual([part["enter"].split(" ")[0] for part in run.parts if part["closing"]], ["3/4"], run.text)

    def test_onto_pvc_it_goes_by_a_male_adapter_and_pipe(self):
        run = Run("1-1/2 FNPT", "1-1/2 socket")
        self.all_in(run, "1-1/2", ("npt-plastic", "pvc"))
        self.assertEqual(run.materials, {"PVC"}, run.text)
        self.assertEqual(len(run.parts), 2, run.text)

    def test_pvc_is_reduced_in_pvc(self):
        run = Run("1-1/2 spigot", "3 socket")
        self.assertEqual(run.kinds, {"pvc"}, run.text)
        self.assertEqual(run.materials, {"PVC"}, run.text)

    def test_the_union_of_a_pvc_run_is_of_pvc(self):
        run = Run("1 FNPT", "1 socket", "--held", "--need", "union")
        self.all_in(run, "1", ("npt-plastic", "pvc"))
        self.assertEqual(run.materials, {"PVC"}, run.text)

    def test_onto_a_garden_hose_it_goes_by_one_swivel_adapter(self):
        run = Run("3/4 FNPT", "3/4 MGHT")
        self.assertEqual(len(run.parts), 1, run.text)
        self.assertEqual(run.kinds, {"npt", "ght"}, run.text)
        self.assertEqual([joint["seal"] for joint in run.chain["joints"]], ["thread sealant", "hose washer"])

    def test_onto_a_45_degree_flare_it_goes_by_one_stocked_adapter(self):
        run = Run("1/2 FNPT", "1/2 male 45 flare")
        self.assertLessEqual(len(run.parts), 2, run.text)
        self.assertEqual(run.kinds, {"npt", "flare-45"}, run.text)

    def test_a_tank_of_water_is_met_by_a_barb_and_rubber_hose(self):
        run = Run("1 FNPT", "1 barb")
        self.all_in(run, "1", ("npt", "hose"))
        self.assertEqual(run.families, ["barb to male pipe", "hose"], run.text)
        self.assertEqual(run.materials, {"brass", "rubber"}, run.text)

    def test_a_check_valve_on_air_is_a_spring_check_between_nipples_with_a_union(self):
        run = Run("1/2 FNPT", "1/2 FNPT", "--air", "--held", "--need", "check valve")
        self.all_in(run, "1/2")
        self.assertEqual([family for family in run.families if "nipple" not in family], ["spring check valve", "union"],
                         run.text)
        self.assertEqual(len(run.parts), 5, run.text)

    def test_of_a_g_port_the_adapter_on_a_bonded_washer_is_named_first_though_it_must_be_ordered(self):
        none = PROGRAM.ask("chain", "3/4 FBSPP", "3/4 MGHT")["why_none"]
        self.assertIn("order the G 3/4 male x 3/4 FNPT adapter", none["mends"][0])
        run = Run("3/4 FBSPP", "3/4 MGHT", "--special-order")
        self.all_in(run, "3/4", ("bspp", "npt", "ght"))
        self.assertEqual(run.chain["joints"][0]["seal"], "bonded washer")


if __name__ == "__main__":
    unittest.main(argv=sys.argv[:1])
