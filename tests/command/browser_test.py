"""The page for a phone, in a real browser (headless Chromium, by the WebDriver protocol of the W3C): it fits a narrow
screen, keeps its ticks, fetches nothing, and prints the card and the list on a page each. Runs where chromedriver is."""
import base64
import json
import pathlib
import subprocess
import sys
import tempfile
import time
import unittest
import urllib.request

PROGRAM, EXAMPLES, DRIVER = sys.argv[1], pathlib.Path(sys.argv[2]), sys.argv[3]
SCREENS = pathlib.Path(sys.argv[4]) if len(sys.argv) > 4 else None  # where to keep what is seen

PHONE, DESK = (390, 844), (1280, 800)


class Browser:
    def __init__(self):
        self.driver = subprocess.Popen([DRIVER, "--port=0"], stdout=subprocess.PIPE, stderr=subprocess.DEVNULL, text=True)
        for line in self.driver.stdout:
            if "port" in line and line.rstrip(". \n").split()[-1].isdigit() and "successfully" in line:
                self.at = f"http://127.0.0.1:{line.rstrip('. ' + chr(10)).split()[-1]}"
                break
        flags = ["--headless", "--no-sandbox", "--disable-gpu", "--disable-quic", "--no-first-run", "--disable-background-networking",
                 "--disable-component-update", "--disable-sync", "--hide-scrollbars"]
        found = self.call("POST", "/session", {"capabilities": {"alwaysMatch": {
            "goog:chromeOptions": {"args": flags}, "goog:loggingPrefs": {"performance": "ALL", "browser": "ALL"}}}})
        self.session = f"/session/{found['sessionId']}"

    def call(self, method, path, body=None):
        asked = urllib.request.Request(self.at + path, method=method, headers={"Content-Type": "application/json"},
                                       data=None if body is None else json.dumps(body).encode())
        with urllib.request.urlopen(asked, timeout=60) as answer:
            return json.loads(answer.read())["value"]

    def here(self, method, path, body=None):
        return self.call(method, self.session + path, body)

    def run(self, script):
        return self.here("POST", "/execute/sync", {"script": script, "args": []})

    def chrome(self, command, **params):
        return self.here("POST", "/goog/cdp/execute", {"cmd": command, "params": params})

    def open(self, file, size, dark=False):
        self.chrome("Emulation.setDeviceMetricsOverride", width=size[0], height=size[1], deviceScaleFactor=1, mobile=size[0] < 500)
        self.chrome("Emulation.setEmulatedMedia", features=[{"name": "prefers-color-scheme", "value": "dark" if dark else "light"}])
        self.here("POST", "/url", {"url": file.as_uri()})

    def log(self, kind):
        return self.here("POST", "/se/log", {"type": kind})

    def seen(self, name):
        if SCREENS is not None:
            (SCREENS / f"{name}.png").write_bytes(base64.b64decode(self.here("GET", "/screenshot")))

    def close(self):
        self.here("DELETE", "")
        self.driver.kill()
        self.driver.wait()
        self.driver.stdout.close()


class Page(unittest.TestCase):
    @classmethod
    def setUpClass(cls):
        cls.folder = tempfile.TemporaryDirectory()
        cls.pages = {}
        for example in sorted(EXAMPLES.glob("*.yaml")):
            page = pathlib.Path(cls.folder.name) / f"{example.stem}.html"
            subprocess.run([PROGRAM, "plan", example, "--out", page], capture_output=True)
            cls.pages[example.stem] = page
        cls.browser = Browser()

    @classmethod
    def tearDownClass(cls):
        cls.browser.close()
        cls.folder.cleanup()

    def test_nothing_is_wider_than_the_screen(self):
        for name, page in self.pages.items():
            for size in (PHONE, DESK):
                for dark in (False, True):
                    self.browser.open(page, size, dark)
                    self.browser.seen(f"{name}-{size[0]}{'-dark' if dark else ''}")
                    wide = self.browser.run("return document.documentElement.scrollWidth")
                    self.assertLessEqual(wide, size[0], (name, size))
                    outside = self.browser.run(
                        "return [...document.querySelectorAll('p, li, h1, h2, h3, dt, dd, label')].filter(e => "
                        "e.getBoundingClientRect().right > innerWidth + 0.5 || e.scrollWidth > e.clientWidth + 1 && "
                        "getComputedStyle(e).display != 'inline').map(e => e.textContent.slice(0, 60))")
                    self.assertEqual(outside, [], (name, size))
                    small = self.browser.run("return Math.min(...[...document.querySelectorAll('main p, main li, main dd')]"
                                             ".map(e => parseFloat(getComputedStyle(e).fontSize)))")
                    self.assertGreaterEqual(small, 15, (name, size))

    def test_ticks_stay_and_other_jobs_have_their_own(self):
        self.browser.open(self.pages["bevel-bench"], PHONE)
        boxes = self.browser.run("return document.querySelectorAll('input[type=checkbox]').length")
        self.assertGreater(boxes, 40)
        self.browser.run("const all = document.querySelectorAll('input[type=checkbox]'); all[3].click(); all[17].click()")
        ticked = "return [...document.querySelectorAll('input[type=checkbox]')].flatMap((e, i) => e.checked ? [i] : [])"
        self.assertEqual(self.browser.run(ticked), [3, 17])
        self.browser.here("POST", "/refresh", {})
        self.assertEqual(self.browser.run(ticked), [3, 17])
        self.browser.open(self.pages["one-air-bung"], PHONE)
        self.assertEqual(self.browser.run(ticked), [])
        self.browser.open(self.pages["bevel-bench"], PHONE)
        self.assertEqual(self.browser.run(ticked), [3, 17])
        self.browser.run("document.querySelectorAll('input[type=checkbox]')[3].click()")
        self.browser.here("POST", "/refresh", {})
        self.assertEqual(self.browser.run(ticked), [17])

    def test_nothing_is_fetched_and_nothing_is_wrong(self):
        self.browser.log("performance")
        for page in self.pages.values():
            self.browser.open(page, DESK)
        time.sleep(0.5)
        asked = [json.loads(row["message"])["message"] for row in self.browser.log("performance")]
        urls = {row["params"]["request"]["url"] for row in asked if row["method"] == "Network.requestWillBeSent"}
        self.assertLessEqual({url.split(":")[0] for url in urls}, {"file", "data"}, urls)
        self.assertEqual([row["message"] for row in self.browser.log("browser") if row["level"] == "SEVERE"], [])

    def test_a_measure_is_never_broken_over_two_lines(self):
        for page in self.pages.values():
            for width in range(320, 480, 16):
                self.browser.open(page, (width, 844))
                broken = self.browser.run(
                    "const bad = []; const walk = document.createTreeWalker(document.querySelector('main'), NodeFilter.SHOW_TEXT);"
                    "for (let node; node = walk.nextNode();) for (const m of node.data.matchAll(/[0-9]+-[0-9]+\\/[0-9]+/g)) {"
                    "const r = document.createRange(); r.setStart(node, m.index); r.setEnd(node, m.index + m[0].length);"
                    "if (!node.parentElement.closest('svg') && r.getClientRects().length > 1) bad.push(m[0]); } return bad")
                self.assertEqual(broken, [], (page.name, width))

    def test_card_and_list_print_on_a_page_each(self):
        for name in ("bevel-bench", "one-air-bung"):
            for paper in ((21.59, 27.94), (21.0, 29.7)):
                self.browser.open(self.pages[name], DESK, dark=True)  # a printer has white paper all the same
                printed = self.browser.here("POST", "/print", {"page": {"width": paper[0], "height": paper[1]}, "background": True})
                file = pathlib.Path(self.folder.name) / "printed.pdf"
                file.write_bytes(base64.b64decode(printed))
                if SCREENS is not None:
                    (SCREENS / f"{name}-{paper[0]}.pdf").write_bytes(file.read_bytes())
                text = subprocess.run(["pdftotext", "-layout", file, "-"], capture_output=True, text=True, check=True).stdout
                pages = text.split("\f")
                self.assertIn("READY", pages[0])
                self.assertIn("Before air goes on", pages[0], (name, paper))
                self.assertNotIn("Shopping list", pages[0])
                self.assertIn("Shopping list", pages[1])
                self.assertIn("in all; prices are indicative", pages[1], (name, paper))
                self.assertIn("1-1/4 barb x 1-1/4 MNPT, brass" if name == "bevel-bench" else "From the bin", pages[1], (name, paper))
                self.assertTrue(pages[2].lstrip().startswith("Order of work"), (name, paper, pages[2][:200]))


if __name__ == "__main__":
    unittest.main(argv=sys.argv[:1])
