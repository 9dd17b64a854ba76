"""A screen without glass, the window on it, and a hand: Xvfb, riserun-view, xdotool."""
import os
import pathlib
import subprocess
import time


class Screen:
    def __init__(self, width, height):
        read, write = os.pipe()
        self.server = subprocess.Popen(
            ["Xvfb", "-displayfd", str(write), "-screen", "0", f"{width}x{height}x24", "-nolisten", "tcp"],
            pass_fds=[write], stdout=subprocess.DEVNULL, stderr=subprocess.DEVNULL)
        os.close(write)
        with os.fdopen(read) as number:
            self.display = ":" + number.readline().strip()

    def close(self):
        self.server.terminate()
        self.server.wait()


class Window:
    """riserun-view on a screen. It writes where its things stand into a file, which tells the hand where to go."""

    PATIENCE = 120.0  # s; the machine may be busy, and the test build is slow

    def __init__(self, screen, program, folder, *words, size="1280x800", scale="1", path=""):
        self.screen = screen
        self.places_file = pathlib.Path(folder) / "places.txt"
        self.environment = {**os.environ, "DISPLAY": screen.display, "LIBGL_ALWAYS_SOFTWARE": "1",
                            # The screen's own driver leaks a little at its end.
                            "ASAN_OPTIONS": "detect_leaks=0"}
        if path:
            self.environment["PATH"] = path + os.pathsep + os.environ["PATH"]
        self.process = subprocess.Popen(
            [program, *(["--size", size] if size else []), "--scale", scale, "--state", str(pathlib.Path(folder) / "state"),
             "--places", str(self.places_file), "--cost", *map(str, words)],
            env=self.environment, stdout=subprocess.PIPE, stderr=subprocess.PIPE, text=True)

    def hand(self, *words):
        subprocess.run(["xdotool", *map(str, words)], env=self.environment, check=True, capture_output=True)

    def places(self):
        """Name -> (left, top, right, bottom), and the counters `revision` and `planned`."""
        try:
            lines = self.places_file.read_text(encoding="utf-8").splitlines()
        except FileNotFoundError:
            return {}
        if not lines or lines[-1] != "end":
            return {}
        found = {}
        for line in lines[:-1]:
            name, _, numbers = line.rpartition("\t")
            found[name] = tuple(float(n) for n in numbers.split())
        return found

    def wait_for(self, what, why):
        end = time.monotonic() + self.PATIENCE
        while time.monotonic() < end:
            places = self.places()
            if places and what(places):
                return places
            if self.process.poll() is not None:
                raise AssertionError(f"the window ended while waiting for {why}: {self.process.communicate()}")
            time.sleep(0.1)
        raise AssertionError(f"waited in vain for {why}; there is {sorted(self.places())}")

    def ready(self):
        """The job is open, not the one that a window starts with, and planned as it stands."""
        return self.wait_for(lambda p: p["has file"] == (1.0,) and p["planned"] == p["revision"] and
                             p["current"] == (1.0,) and any(name.startswith("part ") for name in p), "the first plan")

    def revision(self):
        return self.places()["revision"][0]

    def wait_for_act(self, before):
        return self.wait_for(lambda p: p["revision"][0] > before and p["planned"] == p["revision"] and
                             p["current"] == (1.0,), f"the act after revision {before}")

    def roll_to(self, name, pane):
        """Turns the wheel over the pane until the thing is in sight, with room to spare under it."""
        place = self.wait_for(lambda p: pane in p, pane)[pane]
        self.hand("mousemove", int(place[2] - 60), int((place[1] + place[3]) / 2))
        for _ in range(80):
            places = self.places()
            if name in places and places[name][3] < place[3] - 60:
                if self.still(name):
                    return
                continue
            self.hand("click", 5)
            time.sleep(0.25)
        raise AssertionError(f"{name} is not in {pane}")

    def still(self, name):
        """A busy machine draws what the wheel and the keys have asked for much later."""
        before = self.places().get(name)
        time.sleep(0.5)
        return before is not None and self.places().get(name) == before

    def click(self, name, button=1):
        self.wait_for(lambda p: name in p and self.still(name), name)
        place = self.places()[name]
        x, y = int((place[0] + place[2]) / 2), int((place[1] + place[3]) / 2)
        self.hand("mousemove", x, y)
        time.sleep(0.2)
        self.hand("click", button)
        time.sleep(0.3)

    def key(self, keys):
        self.hand("key", keys)  # not --clearmodifiers, which lets go of a button that is held, too
        time.sleep(0.3)

    def type(self, text):
        self.hand("type", "--delay", "30", text)
        time.sleep(0.3)

    def wait_for_end(self):
        out, err = self.process.communicate(timeout=self.PATIENCE)
        return self.process.returncode, out, err

    def kill(self):
        if self.process.poll() is None:
            self.process.kill()
            self.process.communicate()
