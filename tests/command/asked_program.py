"""The built program, asked for JSON."""
import json
import subprocess


class AskedProgram:
    def __init__(self, path):
        self.path = path

    def ask(self, *words):
        done = subprocess.run([self.path, *map(str, words), "--json"], capture_output=True, text=True)
        if done.returncode == 2:
            raise AssertionError(done.stderr)
        return json.loads(done.stdout)

    def ids_of(self, words):
        return {part["id"] for part in self.ask("catalog", words)["parts"]}
