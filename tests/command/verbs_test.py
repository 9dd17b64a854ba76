"""Runs the built program the way a person does, and looks at what it prints and at its exit status."""
import json
import pathlib
import subprocess
import sys
import tempfile
import unittest

PROGRAM, EXAMPLES = sys.argv[1], pathlib.Path(sys.argv[2])


def run(*words, cwd=None):
    return subprocess.run([PROGRAM, *map(str, words)], capture_output=True, text=True, cwd=cwd)


class Help(unittest.TestCase):
    def test_help_lists_every_verb_and_is_done(self):
        done = run("--help")
        self.assertEqual(done.returncode, 0)
        for verb in ("plan", "chain", "riser", "transfer", "walls", "list", "catalog", "check", "new"):
            self.assertIn(f"  {verb} ", done.stdout)
        self.assertIn("stores dangerous energy", done.stdout)

    def test_no_verb_is_bad_input(self):
        done = run()
        self.assertEqual(done.returncode, 2)
        self.assertEqual(done.stdout, "")
        self.assertIn("riserun --help lists the verbs", done.stderr)

    def test_an_unknown_verb_is_bad_input(self):
        done = run("plumb", "x")
        self.assertEqual(done.returncode, 2)
        self.assertIn("plumb", done.stderr)


class Chain(unittest.TestCase):
    def chain(self, *words):
        done = run("chain", *words, "--json")
        return done.returncode, json.loads(done.stdout)

    def test_bench_pair_needs_two_parts(self):
        status, answer = self.chain("1 FNPT", "3/4 MGHT")
        self.assertEqual(status, 0)
        self.assertEqual(answer["ports"], ["1 npt female", "3/4 ght male"])
        chain = answer["chains"][0]
        self.assertEqual((chain["part_count"], len(chain["joints"])), (2, 3))
        self.assertTrue(chain["buildable"])
        self.assertIsNone(answer["why_none"])
        self.assertEqual(set(chain["parts"][0]) & {"id", "name", "size", "material", "enter", "leave", "from_bin"},
                         {"id", "name", "size", "material", "enter", "leave", "from_bin"})

    def test_every_port_as_json_spells_it_is_read(self):
        _, answer = self.chain("1 FNPT", "3/4 MGHT")
        again_status, again = self.chain(*answer["ports"])
        self.assertEqual(again_status, 0)
        self.assertEqual(again["chains"], answer["chains"])

    def test_a_refusal_names_a_least_set_of_rules_and_what_each_change_costs(self):
        status, answer = self.chain("1 FNPT", "1/2 FNPT", "--bore", "3/4 in", "--most-parts", "1")
        self.assertEqual(status, 1)
        why = answer["why_none"]
        self.assertEqual([rule["rule"] for rule in why["conflict"]], ["smallest_bore"])
        self.assertEqual([lift["text"] for lift in why["lifts"]], why["mends"])
        self.assertTrue(all(lift["part_count"] >= 1 for lift in why["lifts"]))

    def test_needs_come_in_the_order_given(self):
        for first, second in (("ball valve", "check valve"), ("check valve", "ball valve")):
            status, answer = self.chain("1 FNPT", "1 FNPT", "--need", first, "--need", second, "--in-order")
            self.assertEqual(status, 0)
            names = [part["name"] for part in answer["chains"][0]["parts"] if "valve" in part["name"]]
            self.assertIn(first, names[0])
            self.assertIn(second, names[1])

    def test_a_union_goes_beyond_the_valve_that_stays(self):
        for end in ("first", "last"):
            status, answer = self.chain("1 FNPT", "1 FNPT", "--held", "--need", "ball valve", "--valve-stays", end)
            self.assertEqual(status, 0)
            names = [part["id"].split("/")[0] for part in answer["chains"][0]["parts"]]
            pair = [name for name in names if name in ("ball-valve", "union")]
            self.assertEqual(pair, ["ball-valve", "union"][::1 if end == "first" else -1])
        _, answer = self.chain("1 FNPT", "1 FNPT", "--held", "--need", "union", "--need", "ball valve", "--in-order",
                               "--valve-stays", "first")
        names = [part["id"].split("/")[0] for part in answer["chains"][0]["parts"]]
        self.assertEqual([name for name in names if name in ("ball-valve", "union")], ["union", "ball-valve", "union"])
        unweighed = ("cannot be weighed where one part may meet two needs, or a need and the union's, or where both "
                     "fittings and devices may meet a need: name them more closely, or give their order, the union "
                     "among them, with --in-order")
        for words, message in ((("--need", "ball valve", "--need", "brass", "--valve-stays", "first"), unweighed),
                               (("--valve-stays", "first"), 'asks for a valve that shuts: --need "ball valve"'),
                               (("--need", "check valve", "--valve-stays", "first"),
                                'asks for a valve that shuts: --need "ball valve"'),
                               (("--need", "ball valve", "--valve-stays", "middle"),
                                "'middle' is not known here; allowed: first, last"),
                               (("--need", "ball valve", "--valve-stays", "first", "--span", "20 in"),
                                "does not go with --span")):
            done = run("chain", "1 FNPT", "1 FNPT", *words)
            self.assertEqual((done.returncode, done.stdout), (2, ""), words)
            self.assertIn(f"--valve-stays: error: {message}\n", done.stderr)

    def test_more_than_one_bushing_is_taken_only_where_it_is_allowed(self):
        _, one = self.chain("2 FNPT", "1/4 MNPT")
        names = [part["name"] for part in one["chains"][0]["parts"]]
        self.assertLessEqual(sum("bushing" in name for name in names), 1)
        status, none = self.chain("1 FNPT", "3/4 MNPT", "--most-bushings", "0", "--most-parts", "1")
        if status == 1:
            self.assertIn("most_bushings", [rule["rule"] for rule in none["why_none"]["conflict"]])

    def test_heat_and_vacuum_leave_out_what_is_not_proved(self):
        _, answer = self.chain("3/4 barb", "3/4 barb", "--held")
        self.assertEqual(answer["chains"][0]["proved"]["vacuum"], "collapses")
        status, answer = self.chain("3/4 barb", "3/4 barb", "--held", "--vacuum")
        self.assertEqual(status, 1)
        self.assertEqual([rule["rule"] for rule in answer["why_none"]["conflict"]], ["vacuum"])
        status, answer = self.chain("1 PVC male", "1 PVC male", "--need", "PVC coupling", "--hottest", "150 F")
        self.assertEqual(status, 1)

    def test_wrong_limits_are_said(self):
        done = run("chain", "1 FNPT", "1 FNPT", "--hottest", "900 F")
        self.assertEqual(done.returncode, 2)
        self.assertIn("--hottest", done.stderr)
        done = run("chain", "1 FNPT", "1 FNPT", "1 FNPT", "--in-order", "--most-bushings", "1")
        self.assertEqual(done.returncode, 2)
        self.assertIn("is for a chain between two ports: an assembly branches, so its needs have no one order; "
                      "--branch-in-order puts those of one branch in order", done.stderr)
        self.assertNotIn("--most-bushings", done.stderr)

    def test_a_bend_is_left_out_where_it_cannot_swing(self):
        wide, _ = self.chain("1 FNPT", "1 FNPT", "--need", "90 elbow", "--room", "2 in")
        tight, answer = self.chain("1 FNPT", "1 FNPT", "--need", "90 elbow", "--room", "1 in")
        self.assertEqual((wide, tight), (0, 1))
        self.assertIn("make more room round the run than 1 in", answer["why_none"]["mends"])
        self.assertEqual(run("chain", "1 FNPT", "1 FNPT", "--room", "wide").returncode, 2)

    def test_no_head_of_water_is_told_of_air(self):
        self.assertIn("Head lost", run("chain", "1 FNPT", "1/2 FNPT").stdout)
        self.assertNotIn("Head lost", run("chain", "1 FNPT", "1/2 FNPT", "--air").stdout)

    def test_where_no_part_is_needed_none_is_counted(self):
        text = run("chain", "1 FNPT", "1 MNPT").stdout
        self.assertIn("go straight together", text)
        self.assertNotIn("to buy", text)

    def test_held_ends_get_a_closing_joint(self):
        _, loose = self.chain("1 FNPT", "1 FNPT")
        self.assertEqual(loose["chains"][0]["part_count"], 1)  # a nipple
        _, held = self.chain("1 FNPT", "1 FNPT", "--held")
        chain = held["chains"][0]
        self.assertTrue(any(j["closing"] for j in chain["joints"]) or any(p["closing"] for p in chain["parts"]))

    def test_needed_part_is_in_the_chain(self):
        _, answer = self.chain("1 FNPT", "1 MNPT", "--need", "ball valve")
        self.assertTrue(any("ball valve" in part["name"] for part in answer["chains"][0]["parts"]))

    def test_avoided_material_is_not(self):
        _, answer = self.chain("1 FNPT", "3/4 MGHT", "--avoid", "black iron")
        self.assertNotIn("black iron", [part["material"] for part in answer["chains"][0]["parts"]])

    def test_what_is_avoided_is_all_that_is_called_so(self):
        def nipples(*avoided):
            words = [word for text in avoided for word in ("--avoid", text)]
            _, answer = self.chain("1 FNPT", "1 FNPT", *words)
            return [part["id"].split("/")[0] for part in answer["chains"][0]["parts"] if "nipple" in part["name"]]

        self.assertTrue(nipples())
        self.assertEqual(nipples("nipple"), [])
        self.assertEqual(nipples("nipples"), [])
        self.assertEqual(nipples("just nipple"), ["close-nipple"])
        self.assertNotIn("close-nipple", nipples("close nipple"))
        done = run("chain", "1 FNPT", "1 FNPT", "--avoid", "just nippel")
        self.assertEqual(done.returncode, 2)
        self.assertIn("--avoid: error: no part knows the word 'nippel'; close to it: nipple\n"
                      "  just nippel\n       ^\n", done.stderr)

    def test_air_never_gets_plastic(self):
        _, answer = self.chain("1/2 FNPT", "1/2 MNPT", "--air", "--order", "price")
        self.assertTrue(answer["chains"][0]["air"])

    def test_orders_keep_their_promise(self):
        answers = {order: self.chain("1 FNPT", "3/4 MGHT", "--order", order)[1]["chains"][0]
                   for order in ("parts", "price", "loss", "length", "bin")}
        best = {"parts": "part_count", "price": "price_usd", "loss": "head_m", "length": "length_m", "bin": "buy_count"}
        for order, key in best.items():
            self.assertEqual(answers[order][key], min(other[key] for other in answers.values()), order)

    def test_alternatives_stand_behind_the_best_each_with_its_reason(self):
        _, alone = self.chain("1 FNPT", "3/4 MGHT")
        status, answer = self.chain("1 FNPT", "3/4 MGHT", "--alternatives", "5")
        self.assertEqual(status, 0)
        self.assertEqual(len(answer["chains"]), 5)
        self.assertTrue(all(chain["reason"] and chain["buildable"] for chain in answer["chains"]))
        best = dict(answer["chains"][0])
        self.assertEqual(best.pop("reason"), "the best by the order asked for")
        best.pop("same_in")
        self.assertEqual(best, alone["chains"][0])
        keys = ("part_count", "price_usd", "length_m", "head_m", "buy_count")
        for a in answer["chains"]:
            for b in answer["chains"]:
                self.assertFalse(a is not b and all(a[key] <= b[key] for key in keys), "one row makes another idle")

    def test_each_bought_part_has_an_answer_to_an_empty_shelf(self):
        _, answer = self.chain("1 FNPT", "3/4 MGHT", "--alternatives", "1")
        bought = [part["id"] for part in answer["chains"][0]["parts"] if not part["from_bin"]]
        self.assertEqual([substitute["instead_of"] for substitute in answer["shelf_empty"]], bought)
        for substitute in answer["shelf_empty"]:
            self.assertNotIn(substitute["instead_of"], [part["id"] for part in substitute["chain"]["parts"]])
            self.assertTrue(substitute["chain"]["buildable"])

    def test_alternatives_are_printed_side_by_side(self):
        done = run("chain", "1 FNPT", "3/4 MGHT", "--alternatives", "3")
        self.assertEqual(done.returncode, 0)
        self.assertIn("beside the first", done.stdout)
        self.assertIn("or, if the shelf is empty: ", done.stdout)
        self.assertLessEqual(max(map(len, done.stdout.splitlines())), 100)

    def test_no_alternatives_are_no_number(self):
        done = run("chain", "1 FNPT", "3/4 MGHT", "--alternatives", "0")
        self.assertEqual(done.returncode, 2)
        self.assertIn("at least 1 is wanted", done.stderr)

    def test_an_unreadable_port_says_which_word(self):
        done = run("chain", "1 FNTP", "3/4 MGHT")
        self.assertEqual(done.returncode, 2)
        self.assertIn("FNTP", done.stderr)
        self.assertIn("FNPT", done.stderr)

    def test_all_mistakes_of_a_command_line_come_at_once(self):
        done = run("chain", "1 FNTP", "3/4 XX", "--rating", "100", "--order", "cheap")
        self.assertEqual(done.returncode, 2)
        for word in ("FNTP", "XX", "--rating", "cheap"):
            self.assertIn(word, done.stderr)

    def test_one_port_is_bad_input(self):
        self.assertEqual(run("chain", "1 FNPT").returncode, 2)

    def test_no_chain_says_why_and_exits_one(self):
        done = run("chain", "1 FNPT", "1 FNPT", "--most-parts", "1", "--held")
        self.assertEqual(done.returncode, 1)
        self.assertIn("No chain", done.stdout)


SIDES = ("--length", "44 in", "--width", "22 in")


class Riser(unittest.TestCase):
    def test_worked_cut_length(self):
        # Inside 14 in, bung 1/2 in below the lid, clearance 1/2 in, make-up of 1 in NPT L1 + L3 = 0.661 in
        # (ASME B1.20.1): 14 - 1/2 - 1/2 + 0.661 = 13.661, to the tape 13-11/16 in.
        done = run("riser", "--height", "14 in", *SIDES, "--bung", "1 FNPT", "--projects", "1/2 in", "--clearance", "1/2 in")
        self.assertEqual(done.returncode, 0, done.stderr)
        self.assertIn("13-11/16 in (347 mm)", done.stdout)

    def test_half_coupling_is_refused(self):
        done = run("riser", "--height", "14 in", *SIDES, "--bung-kind", "half coupling")
        self.assertEqual(done.returncode, 1)
        self.assertIn("full coupling", done.stdout)

    def test_wrong_unit_is_bad_input(self):
        done = run("riser", "--height", "14", *SIDES)
        self.assertEqual(done.returncode, 2)
        self.assertIn("--height", done.stderr)


class Files(unittest.TestCase):
    def test_new_makes_a_job_that_plans_and_never_writes_over(self):
        with tempfile.TemporaryDirectory() as folder:
            self.assertEqual(run("new", "job.yaml", cwd=folder).returncode, 0)
            self.assertIn(run("plan", "job.yaml", cwd=folder).returncode, (0,))
            self.assertIn("nothing wrong; a job", run("check", "job.yaml", cwd=folder).stdout)
            job = pathlib.Path(folder, "job.yaml")
            job.write_text("mine\n")
            again = run("new", "job.yaml", cwd=folder)
            self.assertEqual((again.returncode, job.read_text()), (2, "mine\n"))

    def test_files_of_duties_are_checked_as_catalog_files(self):
        shipped = EXAMPLES.parent / "catalog" / "duty.yaml"
        done = run("check", shipped)
        self.assertEqual((done.returncode, done.stderr), (0, ""))
        self.assertIn("nothing wrong; part of the shipped catalog of", done.stdout)
        own = "duties:\n  - materials: [brass]\n    heat: {150 F: 1}\n    air: %s\n    vacuum: stands\n    source: ours\n"
        with tempfile.TemporaryDirectory() as folder:
            pathlib.Path(folder, "own.yaml").write_text(own % "as water")
            done = run("check", "own.yaml", cwd=folder)
            self.assertEqual((done.returncode, done.stderr), (0, ""))
            self.assertIn("own.yaml: nothing wrong; a catalog file that adds 0 parts.", done.stdout)
            pathlib.Path(folder, "own.yaml").write_text(own % "some")
            done = run("check", "own.yaml", cwd=folder)
            self.assertEqual((done.returncode, done.stdout), (2, ""))
            self.assertRegex(done.stderr, r"own\.yaml:4:10: error: duties\[1\]\.air: ")

    def test_a_missing_file_is_bad_input(self):
        done = run("plan", "nowhere.yaml")
        self.assertEqual(done.returncode, 2)
        self.assertIn("nowhere.yaml", done.stderr)

    def test_a_typo_in_a_job_is_shown_with_place_and_caret(self):
        main = next(EXAMPLES.glob("bevel-bench.yaml")).read_text()
        with tempfile.TemporaryDirectory() as folder:
            pathlib.Path(folder, "job.yaml").write_text(main.replace("\nreservoir:", "\nresevoir:", 1))
            done = run("plan", "job.yaml", cwd=folder)
        self.assertEqual(done.returncode, 2)
        self.assertEqual(done.stdout, "")
        self.assertRegex(done.stderr, r"job\.yaml:\d+:1: error: .*resevoir.*reservoir")
        self.assertIn("\n  ^", done.stderr)


class Plan(unittest.TestCase):
    def test_the_examples_end_as_they_say(self):
        for name, status in (("bevel-bench", 0), ("air-too-weak", 1), ("one-air-bung", 0), ("one-part-short", 1),
                             ("walls-too-thin", 1)):
            self.assertEqual(run("plan", EXAMPLES / f"{name}.yaml").returncode, status, name)

    def test_json_has_the_promised_keys(self):
        plan = json.loads(run("plan", EXAMPLES / "bevel-bench.yaml", "--json").stdout)
        self.assertLessEqual({"cut_length_m", "clearance_m", "make_up_m", "heel_m3", "curtain_to_bore", "inlet_k", "stock",
                              "offcut_m"}, set(plan["riser"]))
        self.assertLessEqual({"stop", "time_s", "time_low_s", "time_high_s", "volume_m3", "mean_flow_m3_s",
                              "peak_flow_m3_s", "pressure_to_start_pa", "pressure_to_finish_pa", "free_air_m3",
                              "table_depth_m", "reservoir_depth_m"}, set(plan["transfer"]["fill"]))
        self.assertLessEqual({"stop", "time_s", "left_in_table_m3"}, set(plan["transfer"]["drain"]))
        self.assertLessEqual({"panels", "limit_pa", "relief", "stored_energy_j", "tnt_kg", "standoff_m"},
                             set(plan["walls"]))
        self.assertLessEqual({"buy", "bin", "cut", "consumables"}, set(plan["list"]))

    def test_every_pressure_of_the_filling_stands_beside_the_walls_limit(self):
        for name in ("bevel-bench", "air-too-weak", "walls-too-thin"):
            text = run("plan", EXAMPLES / f"{name}.yaml").stdout
            filling = text.split("\nFilling\n")[1].split("\n\n")[0]
            rows = [row for row in filling.splitlines() if row.startswith("  ") and row[2] not in " RC" and " psi" in row]
            self.assertGreater(len(rows), 3, name)
            for row in rows:
                self.assertRegex(row, r"psi .*\(walls' limit [0-9.]+ psi", name)

    def test_units_change_the_print_and_not_the_plan(self):
        inch = run("plan", EXAMPLES / "bevel-bench.yaml", "--units", "inch")
        metric = run("plan", EXAMPLES / "bevel-bench.yaml", "--units", "metric")
        self.assertIn(" psi (", inch.stdout)
        self.assertIn(" bar (", metric.stdout)
        self.assertNotIn(" psi", metric.stdout.split("Connections")[0].replace("psig", ""))

    def test_single_verbs_print_their_section(self):
        job = EXAMPLES / "bevel-bench.yaml"
        for verb, words in (("transfer", "Filling"), ("walls", "Walls' limit"), ("list", "Shopping list"),
                            ("riser", "cut length")):
            self.assertIn(words, run(verb, job).stdout)


class Catalog(unittest.TestCase):
    def test_words_find_the_part(self):
        done = run("catalog", "1 x 3/4 hex bushing brass")
        self.assertEqual(done.returncode, 0, done.stderr)
        self.assertIn("hex-bushing/brass/1x3-4", done.stdout)

    def test_nonsense_words_are_bad_input(self):
        self.assertEqual(run("catalog", "left-handed smoke bender").returncode, 2)


if __name__ == "__main__":
    unittest.main(argv=sys.argv[:1])
