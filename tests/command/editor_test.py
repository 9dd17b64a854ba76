"""A job in an editor: a YAML language server, given the schema that the program writes, marks what is wrong in its line
and completes the keys. The server is no Debian package, so this runs where one is found (DEVELOPERS.md says how)."""
import itertools
import json
import pathlib
import subprocess
import sys
import tempfile
import unittest

PROGRAM, EXAMPLES, SERVER = sys.argv[1], pathlib.Path(sys.argv[2]), sys.argv[3]

# What is put in the place of what: the line of the new text is marked.
WRONG = [("sheet: 3/16 in steel", "sheets: 3/16 in steel"), ("lid: open", "lid: ajar"), ("baffles across: 2", "baffles accross: 2"),
         ("carries: water", "carries: steam"), ("where: lid, projects", "where: top, projects"), ("units: inch", "units: inches")]


class Server:
    """Speaks the Language Server Protocol over the server's standard streams."""

    def __init__(self):
        self.process = subprocess.Popen([SERVER, "--stdio"], stdin=subprocess.PIPE, stdout=subprocess.PIPE)
        self.numbers = itertools.count(1)
        self.diagnostics = {}
        self.ask("initialize", {"processId": None, "rootUri": None, "capabilities": {
            "textDocument": {"publishDiagnostics": {}, "completion": {"completionItem": {}}}}})
        self.tell("initialized", {})

    def send(self, message):
        body = json.dumps({"jsonrpc": "2.0", **message}).encode()
        self.process.stdin.write(b"Content-Length: %d\r\n\r\n" % len(body) + body)
        self.process.stdin.flush()

    def tell(self, method, params):
        self.send({"method": method, "params": params})

    def read(self):
        length = 0
        while (line := self.process.stdout.readline().strip()):
            if line.lower().startswith(b"content-length:"):
                length = int(line.split(b":")[1])
        message = json.loads(self.process.stdout.read(length))
        if message.get("method") == "textDocument/publishDiagnostics":
            self.diagnostics[message["params"]["uri"]] = message["params"]["diagnostics"]
        elif "method" in message and "id" in message:  # a question of the server's own: its settings
            items = message.get("params", {}).get("items", []) if isinstance(message.get("params"), dict) else []
            self.send({"id": message["id"], "result": [{} for _ in items]})
        return message

    def ask(self, method, params):
        number = next(self.numbers)
        self.send({"id": number, "method": method, "params": params})
        while True:
            message = self.read()
            if message.get("id") == number and "method" not in message:
                return message["result"]

    def opened(self, file, text):
        file.write_text(text, encoding="utf-8")
        uri = file.as_uri()
        self.tell("textDocument/didOpen", {"textDocument": {"uri": uri, "languageId": "yaml", "version": 1, "text": text}})
        while uri not in self.diagnostics:
            self.read()
        return uri, self.diagnostics[uri]

    def close(self):
        self.process.kill()
        self.process.wait()
        for stream in (self.process.stdin, self.process.stdout):
            stream.close()


class Editor(unittest.TestCase):
    def setUp(self):
        self.folder = tempfile.TemporaryDirectory()
        self.path = pathlib.Path(self.folder.name)
        for name in ("job", "bin", "catalog"):
            schema = subprocess.run([PROGRAM, "help", "--schema", name], capture_output=True, text=True, check=True).stdout
            (self.path / f"{name}.schema.json").write_text(schema, encoding="utf-8")
        self.server = Server()

    def tearDown(self):
        self.server.close()
        self.folder.cleanup()

    def opened(self, name, text, schema="job"):
        return self.server.opened(self.path / name, f"# yaml-language-server: $schema={schema}.schema.json\n{text}")

    def test_what_is_shipped_has_no_mark(self):
        for example in sorted(EXAMPLES.glob("*.yaml")):
            _, marks = self.opened(example.name, example.read_text(encoding="utf-8"))
            self.assertEqual([mark["message"] for mark in marks], [], example.name)
        part = self.path / "part.yaml"
        subprocess.run([PROGRAM, "new", "--part", part], check=True, capture_output=True)
        _, marks = self.opened("own.yaml", part.read_text(encoding="utf-8"), "catalog")
        self.assertEqual(marks, [])

    def test_a_mistake_is_marked_in_its_line(self):
        bench = (EXAMPLES / "bevel-bench.yaml").read_text(encoding="utf-8")
        for row, (good, bad) in enumerate(WRONG):
            self.assertIn(good, bench)
            text = bench.replace(good, bad, 1)
            _, marks = self.opened(f"wrong{row}.yaml", text)
            line = text[:text.index(bad)].count("\n") + 1  # the schema's line stands before
            self.assertIn(line, [mark["range"]["start"]["line"] for mark in marks], (bad, marks))

    def test_keys_and_choices_are_completed(self):
        text = "name: A\nreservoir:\n  \n"
        uri, _ = self.opened("begun.yaml", text)
        found = self.server.ask("textDocument/completion", {"textDocument": {"uri": uri}, "position": {"line": 3, "character": 2}})
        labels = {item["label"] for item in found["items"]}
        self.assertLessEqual({"inside", "sheet", "supports", "charge", "lid", "ports"}, labels)
        uri, _ = self.opened("chosen.yaml", "name: A\nreservoir:\n  lid: \n")
        found = self.server.ask("textDocument/completion", {"textDocument": {"uri": uri}, "position": {"line": 3, "character": 7}})
        self.assertLessEqual({"open", "welded"}, {item["label"].strip() for item in found["items"]})


if __name__ == "__main__":
    unittest.main(argv=sys.argv[:1])
