"""`riserun identify`, run as a person runs it: text, JSON, exit statuses, and every mistake of a command line at once."""

import json
import subprocess
import sys

RISERUN = sys.argv[1]
failures = []


def run(*words):
    done = subprocess.run([RISERUN, "identify", *words], capture_output=True, text=True, timeout=120)
    return done.returncode, done.stdout, done.stderr


def answer(*words):
    status, out, err = run(*words, "--json")
    check(err == "", f"{words}: {err}")
    return status, json.loads(out)


def check(condition, what):
    if not condition:
        failures.append(what)
        print("FAILED:", what)


def ports(found):
    return [entry["port"] for entry in found["candidates"]]


def tape_cannot_tell_pipe_from_hose_thread():
    status, found = answer("--od", "1-1/16 in")
    check(status == 0, "done")
    check({"3/4 MNPT", "3/4 MGHT", "3/4 MBSPT"} <= set(ports(found)), f"look-alikes are candidates: {ports(found)}")
    check(found["verdict"] == "cannot tell yet" and not found["certain"], found["verdict"])
    check("--tpi" in found["next"]["instruction"], f"threads are counted next: {found['next']}")
    pair = [p for p in found["lookalikes"] if p["of"] == "3/4 MNPT" and p["port"] == "3/4 MGHT"]
    check(len(pair) == 1 and "11.5" in pair[0]["reason"], f"named with the reason: {pair}")
    check(abs(sum(c["confidence"] for c in found["candidates"]) - 1) < 1e-9, "shares add up")
    check(all(c["why"] for c in found["candidates"]), "each says why")


def count_tells_them_apart():
    check(ports(answer("--od", "1.05 in", "--tpi", "14")[1])[0] == "3/4 MNPT", "14 threads: pipe thread")
    status, hose = answer("--od", "1-1/16 in", "--tpi", "11.5")
    check(status == 0 and ports(hose)[0] == "3/4 MGHT" and hose["verdict"] == "known", f"hose thread: {hose['verdict']}")
    check("MHT" in hose["candidates"][0]["names"], "the shelf's own name")
    over = answer("--od", "1-1/16 in", "--threads", "6", "--over", "1/2 in")[1]
    check(ports(over)[0] == "3/4 MGHT", f"6 threads over 1/2 in: {ports(over)}")


def cannot_tell_npt_from_bsp_by_tape_and_pitch():
    words = ("--od", "1.05 in", "--tpi", "14", "--taper", "yes")
    found = answer(*words)[1]
    check(found["verdict"] == "cannot tell yet" and "3/4 MBSPT" in found["undecided"], str(found["undecided"]))
    asked = " ".join(n["instruction"] for n in [found["next"], *found["further"]])
    for way in ("--flank", "--into", "--made"):
        check(way in asked, f"{way} is offered")
    status, text, _ = run(*words)
    check(status == 0 and "Cannot tell yet" in text and "3/4 MBSPT" in text and "55 and 60 degrees" in text, text)
    check("MIP" in text and "MPT" in text, "synonyms are printed")
    check(answer(*words, "--flank", "60")[1]["verdict"] == "known", "a thread gauge decides")
    check(ports(answer(*words, "--units", "metric")[1])[0] == "3/4 MBSPT", "a metric shop's shelf holds BSP first")
    check(ports(answer(*words, "--marks", "R 3/4")[1])[0] == "3/4 MBSPT", "a mark decides")


def string_caliper_and_inside_are_read():
    check("1 MNPT" in ports(answer("--round", "4-1/8 in")[1])[:2], "string round 1 in pipe")
    check("1 MNPT" in ports(answer("--round", "105 mm")[1])[:2], "string in mm")
    check(ports(answer("--id", "0.93 in", "--tool", "caliper", "--tpi", "14", "--swivel", "no")[1])[0] == "3/4 FNPT",
          "inside of a female")
    check(ports(answer("--plain", "--od", "7/8 in")[1])[0] == "3/4 copper tube", "a tube without a thread")


def turns_by_hand_speak():
    words = ("--od", "1-1/16 in", "--into", "3/4 FIP")
    stays = {c["port"]: c["confidence"] for c in answer(*words, "--turns", "4.5")[1]["candidates"]}
    binds = {c["port"]: c["confidence"] for c in answer(*words, "--turns", "0.5")[1]["candidates"]}
    check(stays["3/4 MNPT"] > 0.6 > binds["3/4 MNPT"], f"{stays['3/4 MNPT']} {binds['3/4 MNPT']}")
    check(binds["3/4 MGHT"] > stays["3/4 MGHT"], "hose thread does not go into pipe thread")


def nothing_fits_is_said_with_the_nearest():
    words = ("--od", "1.05 in", "--tool", "caliper", "--tpi", "40")
    status, found = answer(*words)
    check(status == 1 and found["candidates"] == [] and found["verdict"] == "nothing fits", "no candidates")
    check(len(found["nearest"]) == 3 and all(n["misses"] for n in found["nearest"]), str(found["nearest"]))
    status, text, err = run(*words)
    check(status == 1 and "Nearest" in text and "where it has" in text and err == "", text)


def wrong_words_are_refused_all_at_once():
    status, out, err = run("--od", "1.05", "--tpi", "abc", "--taper", "perhaps", "--flank", "50", "--marks", "XYZ",
                           "--turns", "3", "--tool", "ruler", "--seat", "flat")
    check(status == 2 and out == "", "refused")
    for part in ("--od", "no unit", "--tpi", "--taper", "allowed: yes, no", "--flank", "allowed: 55, 60", "--marks",
                 "'XYZ' is no mark", "--turns N --into PORT", "--tool", "--seat"):
        check(part in err, f"{part!r} is named in {err}")
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
        check(status == 2 and out == "" and part in err, f"{words}: {status} {err}")


for test in (tape_cannot_tell_pipe_from_hose_thread, count_tells_them_apart, cannot_tell_npt_from_bsp_by_tape_and_pitch,
             string_caliper_and_inside_are_read, turns_by_hand_speak, nothing_fits_is_said_with_the_nearest,
             wrong_words_are_refused_all_at_once):
    test()
print(f"{len(failures)} failures")
sys.exit(1 if failures else 0)
