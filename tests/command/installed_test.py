"""The installed program finds its catalog and its examples wherever it is moved to, and notices when it is not whole."""
import os
import pathlib
import re
import shutil
import subprocess
import sys
import tempfile
import unittest

sys.path.insert(0, str(pathlib.Path(__file__).parent.parent / "window" / "app"))
from screen import Screen, Window  # noqa: E402

BUILD = pathlib.Path(sys.argv[1])


class Installed(unittest.TestCase):
    @classmethod
    def setUpClass(cls):
        cls.folder = tempfile.TemporaryDirectory()
        first = pathlib.Path(cls.folder.name) / "first"
        subprocess.run(["cmake", "--install", str(BUILD), "--prefix", str(first)], check=True, capture_output=True)
        cls.root = pathlib.Path(cls.folder.name) / "moved to" / "here"
        cls.root.parent.mkdir()
        first.rename(cls.root)
        cls.share = cls.root / "share" / "riserun"

    @classmethod
    def tearDownClass(cls):
        cls.folder.cleanup()

    def run_moved(self, *words, **how):
        return subprocess.run([self.root / "bin" / "riserun", *words], capture_output=True, text=True, cwd="/", **how)

    def test_it_plans_the_installed_example(self):
        done = self.run_moved("plan", self.share / "examples" / "bevel-bench.yaml")
        self.assertEqual((done.returncode, done.stderr), (0, ""))
        self.assertIn("READY", done.stdout)

    def test_it_reads_the_catalog_that_moved_with_it(self):
        gone = self.share / "catalog" / "bushings.yaml"
        away = pathlib.Path(self.folder.name) / "bushings.yaml"
        shutil.move(gone, away)
        try:
            done = self.run_moved("chain", "1 FNPT", "3/4 MGHT")
            self.assertEqual(done.returncode, 2)
            self.assertIn("bushings", done.stderr)
        finally:
            shutil.move(away, gone)

    def test_its_window_offers_the_examples_that_moved_with_it(self):
        shutil.copy(self.share / "examples" / "bevel-bench.yaml", self.share / "examples" / "moved-bench.yaml")
        screen = Screen(1280, 800)
        window = Window(screen, self.root / "bin" / "riserun-view", self.folder.name)
        try:
            window.wait_for(lambda p: "example moved-bench" in p and "example bevel-bench" in p, "the examples")
        finally:
            window.kill()
            screen.close()

    def test_another_program_stands_on_the_libraries(self):
        libraries = pathlib.Path(self.folder.name) / "libraries"
        build = pathlib.Path(self.folder.name) / "adapter"
        for command in (["cmake", "--install", BUILD, "--component", "development", "--prefix", libraries],
                        ["cmake", "-S", pathlib.Path(__file__).parent / "consumer", "-B", build, "-G", "Ninja", f"-DCMAKE_PREFIX_PATH={libraries}"],
                        ["cmake", "--build", build]):
            done = subprocess.run([*map(str, command)], capture_output=True, text=True)
            self.assertEqual(done.returncode, 0, done.stdout + done.stderr)
        done = subprocess.run([build / "adapter", self.share / "catalog"], capture_output=True, text=True)
        self.assertEqual(done.returncode, 0, done.stderr)
        said = self.run_moved("chain", "1 FNPT", "3/4 MGHT").stdout
        parts = done.stdout.splitlines()
        self.assertEqual(len(parts), 2)
        for part in parts:
            self.assertIn(part, said)
        self.assertFalse((self.root / "include").exists())

    def test_manual_completion_and_desktop_entry_are_there(self):
        for file in ("man/man1/riserun.1", "man/man1/riserun-view.1", "bash-completion/completions/riserun", "zsh/vendor-completions/_riserun",
                     "fish/vendor_completions.d/riserun.fish",
                     *(f"riserun/{name}.schema.json" for name in ("job", "bin", "catalog", "joints", "materials", "losses", "pipe", "plan")),
                     "applications/riserun.desktop",
                     "mime/packages/riserun.xml", "icons/hicolor/scalable/apps/riserun.svg"):
            self.assertGreater((self.root / "share" / file).stat().st_size, 100, file)
        asked = subprocess.run([self.root / "bin" / "riserun-view", "--help"], capture_output=True, text=True, check=True).stdout
        versions = [subprocess.run([self.root / "bin" / name, "--version"], capture_output=True, text=True, check=True).stdout.split()[1]
                    for name in ("riserun", "riserun-view")]
        self.assertEqual(versions[0], versions[1])
        page = (self.root / "share/man/man1/riserun-view.1").read_text(encoding="utf-8").replace("\\-", "-")
        options = set(re.findall(r"--[a-z]+", asked)) - {"--help"}
        self.assertGreater(len(options), 4)
        for option in options:
            self.assertIn(option, page)
        entry = (self.root / "share/applications/riserun.desktop").read_text(encoding="utf-8")
        program = re.search(r"^Exec=(\S+)", entry, re.M).group(1)
        self.assertTrue((self.root / "bin" / program).exists())

    def test_a_double_click_opens_what_is_a_job_and_leaves_other_files_alone(self):
        # As the freedesktop shared-mime-info specification has it: the longest pattern of a name, and only where no
        # pattern fits what the file begins with. GIO is the judge.
        home = pathlib.Path(self.folder.name) / "mime home"
        (home / "mime" / "packages").mkdir(parents=True)
        shutil.copy(self.root / "share/mime/packages/riserun.xml", home / "mime/packages")
        subprocess.run(["update-mime-database", home / "mime"], check=True, capture_output=True)
        environment = {**os.environ, "XDG_DATA_HOME": str(home), "XDG_DATA_DIRS": "/usr/share"}

        def kind(name, text):
            file = home / name
            if text is None:
                self.run_moved("new", file)
            else:
                file.write_text(text, encoding="utf-8")
            said = subprocess.run(["gio", "info", "-a", "standard::content-type", file], env=environment, capture_output=True,
                                  text=True, check=True).stdout
            return said.split("standard::content-type: ")[1].split()[0]

        ours = re.search(r"^MimeType=([^;]+);", (self.root / "share/applications/riserun.desktop").read_text("utf-8"), re.M).group(1)
        for name in ("bench.riserun", "bench.riserun.yaml", "bench"):
            self.assertEqual(kind(name, None), ours, name)
        for name, text in (("bench.yaml", None), ("other.yaml", "name: bench\n"), ("other", "name: bench\n"), ("other.txt", "A job\n")):
            self.assertNotEqual(kind(name, text), ours, name)


if __name__ == "__main__":
    unittest.main(argv=sys.argv[:1])
