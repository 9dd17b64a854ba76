"""The runs that a connection can have, side by side in the window."""
import pathlib
import re
import sys
import unittest

sys.path.insert(0, str(pathlib.Path(__file__).parent))
from driven import Driven  # noqa: E402


class Runs(Driven):
    def rows(self):
        """What stands in the table: how many runs, and of those in sight their fill times and prices."""
        places = self.window.wait_for(
            lambda p: any(re.match("run 0 fill [^.]", n) for n in p), "the runs with their fill times")
        cells = [re.match(r"run (\d+) (fill|price) (.+)", name) for name in places]
        count = next(name for name in places if name.startswith("runs "))
        return count, {(int(c[1]), c[2]): c[3] for c in cells if c}

    def test_the_others_stay_after_one_is_used(self):
        window = self.window
        places = window.places()
        window.click(next(n for n in sorted(places) if n.startswith("part ") and "hex-bushing" in n and "1-1-2" in n))
        count, before = self.rows()
        used = window.revision()
        window.click("take 1")
        window.wait_for_act(used)
        count_after, after = self.rows()
        self.assertEqual(count, count_after, "as many runs as before")
        in_sight = before.keys() & after.keys()
        self.assertIn((1, "fill"), in_sight)
        self.assertEqual({c: before[c] for c in in_sight}, {c: after[c] for c in in_sight}, "the same times and prices")
        self.assertIn("in use 1 pinned", window.places())
        used = window.revision()
        window.click("take 0")
        window.wait_for_act(used)
        self.rows()
        self.assertIn("in use 0", window.places())


if __name__ == "__main__":
    unittest.main(argv=sys.argv[:1])
