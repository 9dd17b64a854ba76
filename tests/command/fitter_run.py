"""An answer of the default order as a fitter reads it: the sizes along the run, its kinds of joint, its families and
materials, and what closes it."""
import sys

from asked_program import AskedProgram

PROGRAM = AskedProgram(sys.argv[1])
FAMILY = {part["id"]: part["family"] for part in PROGRAM.ask("catalog")["parts"]}


class Run:
    def __init__(self, *words):
        chains = PROGRAM.ask("chain", *words)["chains"]
        assert chains, f"no chain for {words}"
        self.chain = chains[0]
        self.parts = self.chain["parts"]
        ports = [part[side].rsplit(" ", 2) for part in self.parts for side in ("enter", "leave")]
        self.sizes = [port[0] for port in ports]
        self.along = [size for at, size in enumerate(self.sizes) if at == 0 or self.sizes[at - 1] != size]
        self.kinds = {port[1] for port in ports}
        self.families = [FAMILY[part["id"]] for part in self.parts]
        self.materials = {part["material"] for part in self.parts}
        self.closing = [family for family, part in zip(self.families, self.parts) if part["closing"]]
        self.kept = "; ".join(fact["text"] for fact in self.chain["kept"])
        self.text = f"{words}: " + " + ".join(f"{part['name']} ({part['material']})" for part in self.parts)
