"""What questions are drawn from: ports and parts of the catalog, words of the trade, bins and files of own parts."""
from dice import Dice

SIZES = ("1/4", "3/8", "1/2", "3/4", "1", "1-1/4", "1-1/2", "2")
COMMON_PORTS = [f"{size} {end}" for size in SIZES for end in ("FNPT", "MNPT")] + [
    "3/4 MGHT", "3/4 FGHT", "1/2 barb", "3/4 barb", "1 barb", "1/2 cup", "3/4 cup", "1 FNPT plastic", "1/2 MNPT plastic",
    "G 3/4 female", "R 3/4", "1/2 MBSPT", "1/2 hose end"]
NEEDS = ["ball valve", "union", "check valve", "hose", "gate valve", "90 elbow", "45 elbow", "90 street elbow", "coupling",
         "nipple", "close nipple", "tee", "reducing coupling", "brass union", "flexible connector", "dielectric union",
         "hex bushing", "threaded pipe", "air regulator", "restrictor", "full-bore ball valve", "PVC coupling",
         "galvanized nipple", "stainless ball valve", "hose shut-off valve", "reducing nipple", "hex nipple"]
AVOID = ["brass", "galvanized", "black iron", "stainless", "PVC", "nylon", "copper", "rubber", "nipple", "just nipple",
         "bushing", "just bushing", "close nipple", "union", "hose", "reducing coupling", "coupling", "hex bushing", "barb",
         "street elbow", "swivel"]
ORDERS = ("line", "parts", "price", "loss", "length", "bin")
BIN_COUNT, OWN_COUNT = 40, 3


class Shop:
    """@param catalog  what `riserun catalog --json` says"""

    def __init__(self, catalog):
        self.parts = sorted(catalog["parts"], key=lambda part: part["id"])
        connectors = [part for part in self.parts if part["stocked"] and part["role"] in ("connector", "plug")]
        self.ports = sorted({spelled(port) for part in connectors for port in part["ports"]})
        self.all_ports = sorted({spelled(port) for part in self.parts for port in part["ports"]})
        self.connectors = [part for part in connectors if len(part["ports"]) > 1]
        self.usual = [part for part in self.connectors if all(port["size"] in SIZES for port in part["ports"])]
        self.pipe_fittings = [part for part in self.usual if all(port["kind"] == "npt" for port in part["ports"])]

    def port(self, dice):
        pool = dice.choices((COMMON_PORTS, self.ports, self.all_ports), (60, 33, 7))[0]
        return dice.choice(pool)

    def need(self, dice):
        return dice.choice(NEEDS) if dice.maybe(0.8) else dice.choice(self.pipe_fittings)["name"]

    def avoid(self, dice):
        return dice.choice(AVOID) if dice.maybe(0.85) else dice.choice(self.pipe_fittings)["name"]

    def bin_items(self, dice):
        """Parts of a few sizes, so that some of them go together."""
        sizes = set(dice.several(SIZES[1:], 2, 4))
        pool = [part for part in self.usual if {port["size"] for port in part["ports"]} <= sizes]
        return [(part["id"], dice.choice((1, 1, 2, 3, 0))) for part in dice.several(pool, 6, 60)]

    def files(self):
        """Bins and own parts by their names, relative to the folder that the questions are asked in."""
        bins = {bin_name(i): bin_text(self.bin_items(Dice(bin_name(i)))) for i in range(BIN_COUNT)}
        return bins | OWN_FILES | WRONG_FILES


def spelled(port):
    return f"{port['size']} {port['kind']} {port['end']}"


def bin_name(number):
    return f"bins/bin-{number:02}.yaml"


def own_name(number):
    return f"own/own-{number}.yaml"


def bin_text(items):
    return "bin:\n" + "".join(f'  - {{part: "{part}", count: {count}}}\n' for part, count in items)


OWN_FILES = {
    own_name(0): """parts:
  - id: own-manifold
    name: manifold
    size: 1 x 1/2
    material: brass
    rating: 150 psi
    source: measured
    ports: [{port: 1 FNPT, bore: 1 in, reach: 2 in}, {port: 1/2 FIP, bore: 0.6 in, reach: 2 in}]
prices:
  - {part: "1 x 3/4 reducing coupling, black iron", price: 3.10 usd}
""",
    own_name(1): """prices:
  - {part: "1 x 3/4 hex bushing, black iron", price: 30 usd}
  - {part: "1 union, black iron", price: 0.10 usd}
  - {part: "3/4 close nipple, black iron", price: 9 usd}
""",
    own_name(2): """bin:
  - {part: "1 union, black iron", count: 2}
  - {part: "1 close nipple, black iron", count: 2}
  - {part: 1 x 4 nipple, material: black iron, count: 1, measured: {length: 3-7/8 in, rating: 100 psi}}
  - {part: "1 full-bore ball valve, brass", count: 1}
""",
}

WRONG_FILES = {
    "own/empty.yaml": "",
    "own/broken.yaml": "bin:\n  - {part: 1 union\n",
    "own/wrong-bin.yaml": "bin:\n  - {part: 1 unoin, count: 2}\n  - {part: nipple, count: 1}\n"
                          "  - {part: \"1 union, black iron\", count: -1, colour: red}\n  - {count: 3}\n",
    "own/wrong-parts.yaml": "parts:\n  - {id: x, name: thing, size: 1, material: cheese, rating: 10 in, ports: []}\n"
                            "prices:\n  - {part: no such thing, price: 3 usd}\n  - {part: 1 union, price: 3 psi}\n",
    "own/no-sections.yaml": "name: nothing\nprice: 3\n",
    "own/list.yaml": "- 1\n- 2\n",
}
