"""Assemblies read joint by joint for which way round their parts stand: no check valve that cannot close, no regulator,
strainer or filter backwards, nothing that shuts before a relief valve.

Trade practice, from memory. Run with the program and the folder of the examples."""
import json
import pathlib
import subprocess
import sys
import tempfile
import unittest

PROGRAM, EXAMPLES = sys.argv[1], pathlib.Path(sys.argv[2])


def answer(*words, cwd=None):
    done = subprocess.run([PROGRAM, *map(str, words), "--json"], capture_output=True, text=True, cwd=cwd)
    assert done.returncode in (0, 1), done.stderr
    return json.loads(done.stdout)


CATALOG = {part["id"]: part for part in answer("catalog")["parts"]}


def steps(run):
    """Every part with the port by which it is entered, seen from the first port or the base, and those it is left by."""
    for part in run["parts"]:
        ports = [port["port"] for port in part["ports"]] if "ports" in part else [part["leave_port"]]
        yield CATALOG[part["id"]], part["enter_port"], ports


def arrows(run):
    """Of each part with an arrow its family, and whether it points away from the first port or the base."""
    found = {}
    for part, enter, leave in steps(run):
        if part["arrow"]:
            found[part["family"]] = (enter, leave) == (0, [1])
            assert found[part["family"]] or (enter, leave) == (1, [0]), part["id"]
    return found


def joints_match(run):
    """Each part's entering port is of the type that its row says, so that the ports above are the real ones."""
    return all(part["enter"] == "{size} {kind} {end}".format(**CATALOG[part["id"]]["ports"][part["enter_port"]])
               for part in run["parts"])


class Chains(unittest.TestCase):
    def chain(self, *words):
        chains = answer("chain", *words)["chains"]
        self.assertTrue(chains, words)
        self.assertTrue(joints_match(chains[0]))
        return chains[0]

    def test_a_shop_air_line_from_the_supply_on(self):
        needs = ("air filter", "1/16 in hole restrictor", "0 to 10 psi air regulator", "light spring check valve")
        words = [word for need in needs for word in ("--need", need)]
        run = self.chain("1/4 FNPT", "1/2 FNPT", "--air", "--in-order", "--special-order", *words)
        self.assertEqual(arrows(run), {"air filter": True, "air regulator": True, "light spring check valve": True})
        families = [part["family"] for part, _, _ in steps(run)]
        self.assertLess(families.index("air filter"), families.index("air regulator"))
        self.assertLess(families.index("restrictor"), families.index("air regulator"))

    def test_a_swing_check_points_to_the_last_port_either_way_round(self):
        for ends in (("1 FNPT", "3/4 FNPT"), ("3/4 FNPT", "1 FNPT")):
            run = self.chain(*ends, "--held", "--need", "swing check valve", "--need", "valve")
            self.assertEqual(arrows(run), {"check valve": True})

    def test_a_strainer_stands_before_the_check_valve_that_it_guards(self):
        run = self.chain("1 FNPT", "1 FNPT", "--held", "--in-order", "--need", "strainer", "--need", "check valve")
        self.assertEqual(arrows(run), {"pipe strainer": True, "spring check valve": True})

    def test_a_needle_valve_has_its_seat_to_the_supply(self):
        run = self.chain("1/4 FNPT", "1/4 MNPT", "--air", "--need", "needle valve")
        self.assertEqual(arrows(run), {"needle valve": True})

    def test_a_sediment_filter_is_passed_from_in_to_out(self):
        run = self.chain("1 socket", "1 socket", "--need", "sediment filter")
        self.assertEqual(arrows(run), {"sediment filter housing": True})


class Branched(unittest.TestCase):
    def assembly(self, *words):
        assemblies = answer("chain", *words)["assemblies"]
        self.assertTrue(assemblies, words)
        self.assertTrue(joints_match(assemblies[0]))
        return assemblies[0]

    def test_what_feeds_the_base_points_to_it(self):
        run = self.assembly("1/2 FNPT", "1/4 FNPT", "1/4 MNPT", "--air", "--branch-feeds", "1", "--branch-need",
                            "1=air regulator", "--branch-need", "1=check valve")
        self.assertEqual(arrows(run), {"air regulator": False, "spring check valve": False})

    def test_what_is_fed_by_the_base_points_away(self):
        run = self.assembly("1 FNPT", "3/4 FNPT", "3/4 MNPT", "--branch-need", "1=check valve", "--branch-need",
                            "1=strainer")
        self.assertEqual(arrows(run), {"pipe strainer": True, "spring check valve": True})

    def test_one_bung_with_feed_gauge_and_relief(self):
        run = self.assembly("3/4 FNPT", "1/4 FNPT", "1/4 MNPT", "3/4 MNPT", "--air", "--branch-feeds", "1", "--branch-need",
                            "1=check valve", "--branch-need", "1=air regulator", "--branch-relief", "3")
        self.assertEqual(arrows(run), {"air regulator": False, "spring check valve": False})
        rows = {port["part"]: row for row, part in enumerate(run["parts"]) for port in part["ports"] if "part" in port}
        [at] = [row for row, part in enumerate(run["parts"]) for port in part["ports"] if port.get("target") == 2]
        while at is not None:
            self.assertNotIn(CATALOG[run["parts"][at]["id"]]["role"], ("check valve", "regulator", "device"))
            at = rows.get(at)


class Jobs(unittest.TestCase):
    def plan(self, changes=()):
        text = (EXAMPLES / "bevel-bench.yaml").read_text()
        for old, new in changes:
            assert text.count(old) == 1, old
            text = text.replace(old, new)
        with tempfile.TemporaryDirectory() as folder:
            pathlib.Path(folder, "job.yaml").write_text(text)
            return answer("plan", "job.yaml", cwd=folder)

    def test_air_goes_from_the_shop_into_the_reservoir(self):
        for connection in self.plan()["connections"]:
            run = connection["chains"][0]
            wanted = {"air regulator": True, "light spring check valve": True} if connection["name"] == "air in" else {}
            self.assertEqual(arrows(run), wanted, connection["name"])

    def test_on_one_bung_it_comes_back_to_the_bung(self):
        [manifold] = answer("plan", EXAMPLES / "one-air-bung.yaml")["manifolds"]
        self.assertEqual(arrows(manifold["assemblies"][0]), {"air regulator": False, "light spring check valve": False})

    def test_a_check_valve_in_the_water_line_is_refused(self):
        plan = self.plan([("need: [hose]               # takes up the offset, and closes the run between two welded ports",
                           "need: [hose, spring check valve]"),
                          ("floor height: 31 in", "floor height: 35 in"),
                          ("face height: 29-3/4 in", "face height: 33-3/4 in")])
        self.assertEqual(plan["verdict"], "refused")
        self.assertTrue(any("check" in json.dumps(finding) for finding in plan["findings"]), plan["findings"])

    def test_air_that_falls_through_the_lid_is_given_a_spring_check_and_no_flap(self):
        plan = self.plan([("need: [1/16 in hole restrictor, 0 to 10 psi air regulator, light spring check valve]",
                           "need: [1/16 in hole restrictor, 0 to 10 psi air regulator, check valve]")])
        [air] = [connection for connection in plan["connections"] if connection["name"] == "air in"]
        kinds = [CATALOG[part["id"]]["check"] for part in air["chains"][0]["parts"] if CATALOG[part["id"]]["check"]]
        self.assertEqual(kinds, ["spring"])
        self.assertTrue(arrows(air["chains"][0])["air regulator"])


if __name__ == "__main__":
    unittest.main(argv=sys.argv[:1])
