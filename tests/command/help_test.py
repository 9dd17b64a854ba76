"""Help by words, the schema that editors check a job with, the manual page and what completes words in a shell."""
import json
import pathlib
import re
import shlex
import shutil
import subprocess
import sys
import tempfile
import unittest

import jsonschema
import yaml

PROGRAM, EXAMPLES = sys.argv[1], pathlib.Path(sys.argv[2])

# Each one wrong in one place: what is put in the place of what, and the path at which it must be refused.
WRONG = [
    ("name: Bevelling bench", "nome: Bevelling bench", ""), ("units: inch", "units: inches", "units"),
    ("sheet: 3/16 in steel", "sheets: 3/16 in steel", "reservoir"), ("lid: open", "lid: ajar", "reservoir.lid"),
    ("lid: open", "lid: [open]", "reservoir.lid"), ("baffles across: 2", "baffles across: [2]", "reservoir.supports.baffles across"),
    ("baffles across: 2", "baffles accross: 2", "reservoir.supports"), ("passages: yes", "passages: maybe", "reservoir.supports.passages"),
    ("height: 15 in}", "hight: 15 in}", "reservoir.inside"), ("height: 15 in}", "height: {in: 15}}", "reservoir.inside.height"),
    ("length: 48 in, width: 20 in, height", "width: 20 in, height", "reservoir.inside"),
    ("charge: 8-1/2 in", "charge: {depth: 8 in}", "reservoir.charge"), ("charge:", "charges:", "reservoir"),
    ("bung: full coupling", "bung: whole coupling", "reservoir.ports.riser bung"),
    ("where: lid, projects", "where: top, projects", "reservoir.ports.riser bung"),
    ("projects: 1 in", "project: 1 in", "reservoir.ports.riser bung"),
    ("{port: 1/4 FNPT, bung: half coupling", "{prot: 1/4 FNPT, bung: half coupling", "reservoir.ports.gauge bung"),
    ("carries: water", "carries: steam", "connections.0.carries"), ("carries: water", "carrys: water", "connections.0"),
    ("need: [hose]", "need: {hose: 1}", "connections.0.need"), ("need: [hose]", "needs: [hose]", "connections.0"),
    ("offset: 1-1/4 in", "offset: [1]", "connections.0.offset"), ("held: {from: fixed", "held: {form: fixed", "connections.0.held"),
    ("held: {from: fixed", "held: {from: stuck", "connections.0.held.from"), ("held: {from: fixed, to: fixed}", "held: fixed", "connections.0.held"),
    ("in order: yes", "in order: sometimes", "connections.1.in order"), ("special order: yes ", "special order: 3 ", "connections.1.special order"),
    ("from: riser bung", "form: riser bung", "connections.0"), ("    to: table inlet", "    too: table inlet", "connections.0"),
    ("connections:", "connection:", ""), ("table:", "tabel:", ""), ("air:", "air supply:", ""), ("\nriser:", "\nriser tube:", ""),
    ("relief valve:", "relief valves:", ""), ("bin:\n", "bins:\n", ""), ("ends in: 5 psi gauge", "ends in: [5 psi gauge]", "connections.2.ends in"),
    ("name: gauge", "name: {x: 1}", "connections.2.name"), ("delivery:", "delivers:", "air"), ("receiver:", "reciever:", "air"),
    ("rim:", "rims:", "table"), ("depth:", "deep:", "table"), ("floor height:", "floor hight:", "table"),
]

# The same in a catalog: file, what stands there, what is put in its place, and where the schema marks it.
WRONG_CATALOG = [
    ("joints", "seals:", "seal:", ""), ("joints", "- name: thread sealant", "- nam: thread sealant", "seals.0"),
    ("joints", "tape: {per joint: 0.25 m, per roll: 13.2 m}", "tape: {per joint: 0.25 m}", "seals.0.tape"),
    ("joints", "tape: {per joint: 0.25 m, per roll: 13.2 m}", "tape: 13.2 m", "seals.0.tape"),
    ("joints", "washer: yes", "washer: maybe", "seals.2.washer"), ("joints", "thread: taper", "thread: tapered", "kinds.0.thread"),
    ("joints", "flank angle:", "flank angel:", "kinds.0.recognise"), ("joints", "turns: either", "turns: both", "mating.0.turns"),
    ("joints", "look-alikes:", "lookalikes:", ""), ("materials", "watch above: 0.25 V", "watch over: 0.25 V", "galvanic"),
    ("materials", "- id: black-iron", "- ident: black-iron", "materials.0"),
    ("materials", "roughness: 0.046 mm", "roughness: [0.046 mm]", "materials.0.roughness"),
    ("materials", "aliases: [black,", "alias: [black,", "materials.0"), ("losses", "items:", "losses:", ""),
    ("losses", "scatter: 0.3", "spread: 0.3", "items.0"), ("losses", "crane n: 30", "crane n: {n: 30}", "items.0.crane n"),
    ("pipe", "- name: schedule 40", "- title: schedule 40", "bores.0"), ("pipe", "columns: [size,", "column: [size,", "bores.0"),
    ("duty", "vacuum: stands", "vacuum: holds", "duties.0.vacuum"), ("nipples", "shelf:", "shelves:", "families.0"),
    ("valves", "role:", "rôle:", "families.0"), ("tees", "ports:", "port:", "families.0"),
]


def run(*words, **how):
    return subprocess.run([PROGRAM, *map(str, words)], capture_output=True, text=True, **how)


class Help(unittest.TestCase):
    @classmethod
    def setUpClass(cls):
        cls.schema = json.loads(run("help", "--schema", "job").stdout)
        cls.validator = jsonschema.Draft202012Validator(cls.schema)
        cls.bench = (EXAMPLES / "bevel-bench.yaml").read_text(encoding="utf-8")

    def test_every_key_is_found_by_its_own_words(self):
        paths = re.findall(r"^  (\S.*?)(?: \(needed\))?: ", run("help", "job").stdout, re.M)
        self.assertGreater(len(paths), 100)
        for path in paths:
            name = re.split(r"[.\]]", path)[-1] or path
            self.assertIn(path, run("help", *name.split()).stdout)

    def test_words_that_nothing_says_are_told_what_there_is(self):
        done = run("help", "flux", "capacitor")
        self.assertEqual(done.returncode, 1)
        self.assertIn("riserun help job", done.stdout)

    def test_alone_and_with_no_word_it_lists_the_verbs(self):
        for words in ((), ("help",), ("--help",)):
            done = run(*words)
            self.assertEqual(done.returncode, 0)
            self.assertIn("  plan ", done.stdout)
        self.assertRegex(run("--version").stdout, r"^riserun \d+\.\d+\.\d+\n$")

    def test_the_schema_is_one_and_takes_every_shipped_job(self):
        jsonschema.Draft202012Validator.check_schema(self.schema)
        with tempfile.TemporaryDirectory() as folder:
            starter = pathlib.Path(folder) / "starter.yaml"
            run("new", starter)
            for file in [*EXAMPLES.glob("*.yaml"), starter]:
                job = yaml.safe_load(file.read_text(encoding="utf-8"))
                if "reservoir" in job:
                    self.assertEqual([error.message for error in self.validator.iter_errors(job)], [], file)

    def test_the_schema_refuses_what_is_wrong_at_its_place(self):
        self.assertGreaterEqual(len(WRONG), 40)
        for old, new, place in WRONG:
            self.assertIn(old, self.bench, "not in the example")
            job = yaml.safe_load(self.bench.replace(old, new, 1))
            found = {".".join(map(str, error.absolute_path)) for error in self.validator.iter_errors(job)}
            self.assertTrue(any(at == place or at.startswith(place + ".") for at in found) if place else "" in found,
                            f"{new}: {found}")

    def test_each_mistake_in_a_file_or_a_word_has_a_code_that_is_explained(self):
        codes = set()
        with tempfile.TemporaryDirectory() as folder:
            file = pathlib.Path(folder) / "wrong.yaml"
            wrong = [self.bench.replace(old, new, 1) for old, new, _ in WRONG]
            wrong += [self.bench + "name: again\n", self.bench.replace("height: 15 in}", "height: 15}", 1).replace("units: inch", "", 1),
                      self.bench.replace("3/16 in steel", "3/16 psi steel", 1), self.bench.replace("height: 15 in}", "height: 15 x in}", 1),
                      self.bench.replace("8-1/2 in", "8 miles", 1), self.bench.replace("8-1/2 in", "-8 in", 1), "name: [", "\x00",
                      self.bench.replace("name: Bevelling bench", "name:", 1), self.bench.replace("ends in: 5 psi gauge", "ends in: kazoo", 1)]
            for text in wrong:
                file.write_text(text, encoding="utf-8")
                done = run("plan", file)
                said = re.findall(r"^\S+: error: .*?(?: \[(\w+)\])?$", done.stderr, re.M)
                self.assertTrue(said and all(said), done.stderr)
                errors = json.loads(run("plan", file, "--json").stderr)["errors"]
                self.assertEqual([error["code"] for error in errors], said)
                codes.update(said)
            words = [("plan", file.with_name("none.yaml")), ("chain", "1/2 flux", "1 FNPT"), ("catalog", "--json", "flux capacitor"),
                     ("new", file)]
            for asked in words:
                codes.update(re.findall(r"\[(\w+)\]$", run(*asked).stderr, re.M))
        self.assertGreaterEqual(codes, {"unknown_key", "missing_key", "duplicate_key", "empty_key", "wrong_shape", "not_yaml", "not_one_of",
                                        "no_unit", "wrong_unit", "out_of_range", "unknown_part", "unknown_port", "file_not_read",
                                        "file_not_written"})
        for code in codes:
            self.assertIn("mend", run("explain", code).stdout, code)

    def test_the_schema_of_a_plan_takes_every_plan_and_refuses_what_none_says(self):
        schema = json.loads(run("help", "--schema", "plan").stdout)
        jsonschema.Draft202012Validator.check_schema(schema)
        validator = jsonschema.Draft202012Validator(schema)
        plans = {file.stem: json.loads(run("plan", file, "--json").stdout) for file in sorted(EXAMPLES.glob("*.yaml"))
                 if "\nreservoir:" in file.read_text(encoding="utf-8")}
        with tempfile.TemporaryDirectory() as folder:
            file = pathlib.Path(folder) / "no-passages.yaml"
            file.write_text(self.bench.replace("passages: yes", "passages: no"), encoding="utf-8")
            plans[file.stem] = json.loads(run("plan", file, "--json", "--units", "metric").stdout)
        self.assertEqual({plan["verdict"] for plan in plans.values()}, {"ready", "not yet", "refused"})
        for name, plan in plans.items():
            found = [(".".join(map(str, error.absolute_path)), error.message[:200]) for error in validator.iter_errors(plan)]
            self.assertEqual(found, [], name)

        def places(change):
            plan = json.loads(json.dumps(plans["bevel-bench"]))
            change(plan)
            return {".".join(map(str, error.absolute_path)) for error in validator.iter_errors(plan)}

        for change, place in ((lambda p: p.update(verdict="fine"), "verdict"), (lambda p: p.pop("list"), ""),
                              (lambda p: p.update(more=1), ""), (lambda p: p["list"]["buy"][0].update(qty="two"), "list.buy.0.qty"),
                              (lambda p: p["walls"].update(limit_pa="7 psi"), "walls.limit_pa"),
                              (lambda p: p["levels"].pop("charge_m3"), "levels"),
                              (lambda p: p["walls"]["panels"][1].update(limit=3), "walls.panels.1"),
                              (lambda p: p["riser"].update(cut_length_m=True), "riser.cut_length_m")):
            self.assertIn(place, places(change))

    def test_every_shipped_file_is_taken_by_the_schema_of_its_kind_and_each_refuses_what_is_wrong(self):
        def found(name, text):
            return {".".join(map(str, error.absolute_path)): error.message[:120]
                    for error in schemas[name].iter_errors(yaml.safe_load(text))}

        own = {"joints", "materials", "losses", "pipe"}  # a schema of their own; all else in a catalog is families or duties
        schemas = {}
        for name in own | {"catalog", "job", "bin"}:
            schema = json.loads(run("help", "--schema", name).stdout)
            jsonschema.Draft202012Validator.check_schema(schema)
            schemas[name] = jsonschema.Draft202012Validator(schema)
        texts = {file.stem: file.read_text(encoding="utf-8") for file in (EXAMPLES.parent / "catalog").iterdir()}
        self.assertGreater(len(texts), 25)
        for name, text in texts.items():
            self.assertEqual(found(name if name in own else "catalog", text), {}, name)
        jobs = 0
        for file in EXAMPLES.rglob("*.yaml"):
            text = file.read_text(encoding="utf-8")
            kind = "job" if "\nreservoir:" in "\n" + text else "bin" if "\nbin:" in "\n" + text else "catalog"
            jobs += kind == "job"
            self.assertEqual(found(kind, text), {}, file)
        self.assertGreater(jobs, 3)
        for name, old, new, place in WRONG_CATALOG:
            self.assertIn(old, texts[name])
            self.assertIn(place, found(name if name in own else "catalog", texts[name].replace(old, new, 1)), (name, new))
        # And each schema is of its own kind of file alone.
        for name in own:
            for other in own - {name}:
                self.assertIn("", found(name, texts[other]), (name, other))

    def test_the_schemas_of_bin_and_catalog_take_what_is_shipped_and_refuse_what_is_wrong(self):
        def places(schema, text):
            errors = jsonschema.Draft202012Validator(schema).iter_errors(yaml.safe_load(text))
            return {".".join(map(str, error.absolute_path)) for error in errors}

        catalog, bin_ = (json.loads(run("help", "--schema", name).stdout) for name in ("catalog", "bin"))
        part = ("parts:\n- {id: shop/a, name: adapter, size: '1', material: brass, rating: 100 psi, source: measured,\n"
                "   ports: [{port: 1 FNPT, bore: 1 in, reach: 1 in}, {port: 1 MNPT, bore: 1 in, reach: 1 in}]}\n"
                "prices:\n- {part: 1 union brass, price: 12 usd}\n")
        self.assertEqual(places(catalog, part), set())
        for old, new, place in (("material", "metal", "parts.0"), ("bore: 1 in, reach: 1 in}]", "bore: 1 in}]", "parts.0.ports.1"),
                                ("price: 12 usd", "cost: 12 usd", "prices.0"), ("parts:", "part:", ""),
                                ("size: '1'", "role: flange", "parts.0.role")):
            self.assertIn(place, places(catalog, part.replace(old, new, 1)), new)
        content = "bin:\n- {part: 1 x 4 nipple black iron, count: 2}\n- {part: 1 rubber hose, length: 3 ft, measured: {length: 3 ft}}\n"
        self.assertEqual(places(bin_, content), set())
        for old, new, place in (("count", "number", "bin.0"), ("part: 1 x", "parts: 1 x", "bin.0"), ("bin:", "bins:", ""),
                                ("{length: 3 ft}}", "{width: 3 ft}}", "bin.1.measured")):
            self.assertIn(place, places(bin_, content.replace(old, new, 1)), new)

    def test_the_manual_page_has_every_verb_option_and_key(self):
        page = run("help", "--man").stdout.replace("\\-", "-")
        for verb in re.findall(r"^  ([a-z][a-z-]*)  ", run("--help").stdout, re.M):
            self.assertIn(f".SS {verb}\n", page)
        for path in re.findall(r"^  (\S.*?)(?: \(needed\))?: ", run("help", "job").stdout, re.M):
            self.assertIn(f".B {path}\n", page)
        for line in page.splitlines():
            self.assertTrue(not line.startswith(".") or re.match(r"\.(TH|SH|SS|TP|PP|B|I) ?", line), line)

    def test_bash_completes_verbs_options_and_names(self):
        def completed(*words):
            script = run("help", "--completion", "bash").stdout + (
                f"COMP_WORDS=({' '.join(map(shlex.quote, words))}); COMP_CWORD={len(words) - 1}; _riserun; "
                "printf '%s\\n' \"${COMPREPLY[@]}\"")
            return subprocess.run(["bash", "-c", script], capture_output=True, text=True, check=True, cwd="/proc").stdout.splitlines()

        self.assertEqual(completed("riserun", "le"), ["leak-test"])
        self.assertIn("--out", completed("riserun", "plan", "--o"))
        self.assertIn("--units", completed("riserun", "plan", "--u"))
        self.assertLessEqual({"1-1/4 FNPT", "1-1/4 MNPT"}, set(completed("riserun", "chain", "1-1/4 ")))
        self.assertIn("3/4 MGHT", completed("riserun", "chain", "1 FNPT", '"3/4 M'))
        self.assertIn("ball valve", completed("riserun", "chain", "1 FNPT", "1 FNPT", "--need", "ball"))
        self.assertIn("union", completed("riserun", "catalog", "un"))
        self.assertIn("set pressure", completed("riserun", "help", "set"))
        self.assertIn("self", completed("riserun", "plan", "sel"))  # a file
        for shell in ("zsh", "fish"):
            script = run("help", "--completion", shell).stdout
            for name in ("leak-test", "'1-1/4 FNPT'", "'ball valve'", "'set pressure'"):
                self.assertIn(name, script)
            if shutil.which(shell):
                subprocess.run([shell, "--no-execute"], input=script, text=True, check=True)



if __name__ == "__main__":
    unittest.main(argv=sys.argv[:1])
