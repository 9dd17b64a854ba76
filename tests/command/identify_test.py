"""`riserun identify` as a person runs it: text, JSON, exit statuses, every mistake of a command line at once."""

import json
import subprocess
import sys
import unittest

PROGRAM = sys.argv[1]


def run(*words):
    done = subprocess.run([PROGRAM, "identify", *words], capture_output=True, text=True, timeout=120)
    return done.returncode, done.stdout, done.stderr


def answer(*words):
    status, out, err = run(*words, "--json")
    assert err == "", f"{words}: {err}"
    return status, json.loads(out)


def ports(found):
    return [entry["port"] for entry in found["candidates"]]


class Identify(unittest.TestCase):
    def test_tape_cannot_tell_pipe_from_hose_thread(self):
        status, found = answer("--od", "1-1/16 in")
        self.assertTrue(status == 0, "done")
        self.assertLessEqual({"3/4 MNPT", "3/4 MGHT", "3/4 MBSPT"}, set(ports(found)))
        self.assertTrue(found["verdict"] == "cannot tell yet" and not found["certain"], found["verdict"])
        self.assertTrue("--tpi" in found["next"]["instruction"], f"threads are counted next: {found['next']}")
        pair = [p for p in found["lookalikes"] if p["of"] == "3/4 MNPT" and p["port"] == "3/4 MGHT"]
        self.assertTrue(len(pair) == 1 and "11.5" in pair[0]["reason"], f"named with the reason: {pair}")
        self.assertTrue(abs(sum(c["confidence"] for c in found["candidates"]) - 1) < 1e-9, "shares add up")
        self.assertTrue(all(c["why"] for c in found["candidates"]), "each says why")

    def test_count_tells_them_apart(self):
        self.assertTrue(ports(answer("--od", "1.05 in", "--tpi", "14")[1])[0] == "3/4 MNPT", "14 threads: pipe thread")
        status, hose = answer("--od", "1-1/16 in", "--tpi", "11.5")
        self.assertEqual((status, ports(hose)[0], hose["verdict"]), (0, "3/4 MGHT", "known"))
        self.assertTrue("MHT" in hose["candidates"][0]["names"], "the shelf's own name")
        over = answer("--od", "1-1/16 in", "--threads", "6", "--over", "1/2 in")[1]
        self.assertTrue(ports(over)[0] == "3/4 MGHT", f"6 threads over 1/2 in: {ports(over)}")

    def test_cannot_tell_npt_from_bsp_by_tape_and_pitch(self):
        words = ("--od", "1.05 in", "--tpi", "14", "--taper", "yes")
        found = answer(*words)[1]
        self.assertEqual(found["verdict"], "cannot tell yet")
        self.assertIn("3/4 MBSPT", found["undecided"])
        asked = " ".join(n["instruction"] for n in [found["next"], *found["further"]])
        for way in ("--flank", "--into", "--made"):
            self.assertTrue(way in asked, f"{way} is offered")
        status, text, _ = run(*words)
        self.assertEqual(status, 0)
        for part in ("Cannot tell yet", "3/4 MBSPT", "55 and 60 degrees"):
            self.assertIn(part, text)
        self.assertTrue("MIP" in text and "MPT" in text, "synonyms are printed")
        self.assertTrue(answer(*words, "--flank", "60")[1]["verdict"] == "known", "a thread gauge decides")
        metric = answer(*words, "--units", "metric")[1]
        self.assertEqual(ports(metric)[0], "3/4 MBSPT", "a metric shop's shelf holds BSP first")
        self.assertTrue(ports(answer(*words, "--marks", "R 3/4")[1])[0] == "3/4 MBSPT", "a mark decides")

    def test_string_caliper_and_inside_are_read(self):
        self.assertTrue("1 MNPT" in ports(answer("--round", "4-1/8 in")[1])[:2], "string round 1 in pipe")
        self.assertTrue("1 MNPT" in ports(answer("--round", "105 mm")[1])[:2], "string in mm")
        inside = answer("--id", "0.93 in", "--tool", "caliper", "--tpi", "14", "--swivel", "no")[1]
        self.assertEqual(ports(inside)[0], "3/4 FNPT")
        self.assertEqual(ports(answer("--plain", "--od", "7/8 in")[1])[0], "3/4 copper tube")

    def test_turns_by_hand_speak(self):
        words = ("--od", "1-1/16 in", "--into", "3/4 FIP")
        stays = {c["port"]: c["confidence"] for c in answer(*words, "--turns", "4.5")[1]["candidates"]}
        binds = {c["port"]: c["confidence"] for c in answer(*words, "--turns", "0.5")[1]["candidates"]}
        self.assertTrue(stays["3/4 MNPT"] > 0.6 > binds["3/4 MNPT"], f"{stays['3/4 MNPT']} {binds['3/4 MNPT']}")
        self.assertTrue(binds["3/4 MGHT"] > stays.get("3/4 MGHT", 0.0), "hose thread does not go into pipe thread")

    def test_nothing_fits_is_said_with_the_nearest(self):
        words = ("--od", "1.05 in", "--tool", "caliper", "--tpi", "40")
        status, found = answer(*words)
        self.assertEqual((status, found["candidates"], found["verdict"]), (1, [], "nothing fits"))
        self.assertEqual(len(found["nearest"]), 3)
        self.assertTrue(all(n["misses"] for n in found["nearest"]), found["nearest"])
        status, text, err = run(*words)
        self.assertTrue(status == 1 and "Nearest" in text and "where it has" in text and err == "", text)

    def test_wrong_words_are_refused_all_at_once(self):
        status, out, err = run("--od", "1.05", "--tpi", "abc", "--taper", "perhaps", "--flank", "50", "--marks", "XYZ",
                               "--turns", "3", "--tool", "ruler", "--seat", "flat")
        self.assertTrue(status == 2 and out == "", "refused")
        for part in ("--od", "no unit", "--tpi", "--taper", "allowed: yes, no", "--flank", "allowed: 55, 60", "--marks",
                     "'XYZ' is no mark", "--turns N --into PORT", "--tool", "--seat"):
            self.assertTrue(part in err, f"{part!r} is named in {err}")
        for words, part in (((), "nothing measured"),
                            (("--tpi", "14"), "--end male or --end female"),
                            (("--od", "1 in", "--id", "1 in"), "makes it a female end"),
                            (("--od", "1 in", "--tpi", "0"), "allowed is 2 to 100"),
                            (("--od", "90 ft"), "out of range"),
                            (("--od", "1 in", "--threads", "9"), "--threads N --over L"),
                            (("--od", "1 in", "--threads", "900", "--over", "1 in"), "900 threads per inch"),
                            (("--od", "1 in", "--plain", "--tpi", "14"), "--plain says that there is none"),
                            (("--od", "1 in", "--turns", "2", "--into", "1/2 socket"), "no thread"),
                            (("--od", "1 in", "--turns", "2", "--into", "1 MNPT"), "makes it a female end")):
            status, out, err = run(*words)
            self.assertTrue(status == 2 and out == "" and part in err, f"{words}: {status} {err}")


if __name__ == "__main__":
    unittest.main(argv=sys.argv[:1])
