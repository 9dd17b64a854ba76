"""Checks an answer of `riserun chain` against nothing but the catalog's own JSON: that every joint mates, the ends match,
the rules hold, the bin is not overdrawn, the sums and lengths add up, and the build order can be carried out step by
step. It looks for no chain itself and shares no code with the program."""
import collections
import re

# Hand-tight engagement L1 plus wrench make-up L3, inches: ASME B1.20.1, table 2 (L3 is three threads).
NPT_MAKE_UP = {"1/8": 0.1615 + 0.1111, "1/4": 0.2278 + 0.1667, "3/8": 0.2400 + 0.1667, "1/2": 0.3200 + 0.2143,
               "3/4": 0.3390 + 0.2143, "1": 0.4000 + 0.2609, "1-1/4": 0.4200 + 0.2609, "1-1/2": 0.4200 + 0.2609,
               "2": 0.4360 + 0.2609}
INCH = 0.0254


class Fault(Exception):
    pass


def expect(holds, what):
    if not holds:
        raise Fault(what)


class Ask:
    """What was asked, as far as it is checked."""

    def __init__(self, first, last, held=False, air=False, rating_pa=0.0, needs=(), avoided=(), bin_counts=None,
                 most_parts=None, bore_m=0.0, special_order=False, names=("the first port", "the last port"),
                 fixed=None, span_m=None):
        self.first, self.last, self.air, self.rating_pa = first, last, air, rating_pa
        self.needs, self.avoided = needs, set(avoided)  # needs: sets of part ids
        self.bin_counts = bin_counts or {}
        self.most_parts, self.bore_m, self.special_order, self.names = most_parts, bore_m, special_order, names
        self.fixed = fixed if fixed is not None else (held, held)
        self.span_m = span_m  # between two ports in line


def port_name(port):
    return f"{port['size']} {port['kind']} {port['end']}"


class Checker:
    def __init__(self, catalog):
        self.parts = {part["id"]: part for part in catalog["parts"]}
        self.rules = {}
        for rule in catalog["mates"]:
            for a, b, turned in ((rule["a"], rule["b"], False), (rule["b"], rule["a"], True)):
                self.rules[(a["kind"], a["end"], b["kind"], b["end"])] = (rule, turned)

    def rule(self, a, b):
        """The mating rule of two ports spelled `SIZE KIND END`, or None."""
        (size_a, kind_a, end_a), (size_b, kind_b, end_b) = a.split(" "), b.split(" ")
        rule, turned = self.rules.get((kind_a, end_a, kind_b, end_b), (None, False))
        if rule is None:
            return None
        if rule["sizes"] == "same":
            return rule if size_a == size_b else None
        pair = [size_b, size_a] if turned else [size_a, size_b]
        return rule if pair in rule["sizes"] else None

    def port(self, part_id, row):
        return port_name(self.parts[part_id]["ports"][row])

    def check(self, ask, chain):
        """Raises Fault with what is wrong."""
        self.check_ends_and_joints(ask, chain)
        self.check_rules(ask, chain)
        self.check_sums(ask, chain)
        self.check_lengths(chain)
        self.check_span(ask, chain)
        BuildOrder(self, ask, chain).carry_out()

    def check_ends_and_joints(self, ask, chain):
        parts, joints = chain["parts"], chain["joints"]
        expect(len(joints) == len(parts) + 1, "one joint more than parts")
        for part in parts:
            known = self.parts.get(part["id"])
            expect(known, f"no such part: {part['id']}")
            expect(part["enter_port"] != part["leave_port"], "a part is left by the port that it is entered by")
            expect(part["enter"] == self.port(part["id"], part["enter_port"]), "the port entered is another one")
            expect(part["leave"] == self.port(part["id"], part["leave_port"]), "the port left is another one")
            expect(not known["arrow"] or (part["enter_port"], part["leave_port"]) == (0, 1), "against the flow")
            spare = [row for row in range(len(known["ports"])) if row not in (part["enter_port"], part["leave_port"])]
            expect(len(part["plugs"]) == len(spare), f"spare ports of {part['id']} are not all plugged")
            for row, plug in zip(spare, part["plugs"]):
                expect(len(self.parts[plug["id"]]["ports"]) == 1, "a plug has one port")
                expect(self.rule(self.port(part["id"], row), self.port(plug["id"], 0)), "the plug does not fit")
        left = [ask.first] + [part["leave"] for part in parts]
        right = [part["enter"] for part in parts] + [ask.last]
        for joint, a, b in zip(joints, left, right):
            expect((joint["a"], joint["b"]) == (a, b), f"the joint is between other ports: {joint}")
            rule = self.rule(a, b)
            expect(rule, f"{a} and {b} do not go together")
            expect((joint["seal"], joint["closing"]) == (rule["seal"], rule["closing"]), "the rule says otherwise")

    def all_parts(self, chain):
        for part in chain["parts"]:
            for _ in range(part["pieces"]):
                yield part["id"], part["from_bin"]
            for plug in part["plugs"]:
                yield plug["id"], plug["from_bin"]

    def check_rules(self, ask, chain):
        taken = collections.Counter()
        for part_id, from_bin in self.all_parts(chain):
            part = self.parts[part_id]
            expect(part_id not in ask.avoided, f"{part_id} was to be avoided")
            expect(part["rating_pa"] >= ask.rating_pa, f"{part_id} stands too little")
            expect(part["air"] or not ask.air, f"{part_id} must not hold compressed air")
            expect(part["stocked"] or ask.special_order or from_bin, f"{part_id} is special order")
            taken[part_id] += from_bin
        for part_id, count in taken.items():
            expect(count <= ask.bin_counts.get(part_id, 0), f"the bin has not so many {part_id}")
        for part in chain["parts"]:
            ports = self.parts[part["id"]]["ports"]
            for row in (part["enter_port"], part["leave_port"]):
                expect(ports[row]["bore_m"] >= ask.bore_m - 1e-9, f"{part['id']} is too narrow")
        for ids in ask.needs:
            expect(any(part["id"] in ids for part in chain["parts"]), "a need is not met")
        expect(ask.most_parts is None or chain["part_count"] <= ask.most_parts, "too many parts")
        if all(ask.fixed):
            expect(any(j["closing"] for j in chain["joints"]) or any(p["closing"] for p in chain["parts"]),
                   "nothing closes between two held ends")

    def check_sums(self, ask, chain):
        every = list(self.all_parts(chain))
        bought = [part_id for part_id, from_bin in every if not from_bin]
        more = sum(part["pieces"] - 1 for part in chain["parts"])  # several pieces in one length are one part
        more_bought = sum(part["pieces"] - 1 for part in chain["parts"] if not part["from_bin"])
        expect(chain["part_count"] == len(every) - more, "the parts are counted wrongly")
        expect(chain["buy_count"] == len(bought) - more_bought, "the purchases are counted wrongly")
        price = sum(self.parts[part_id]["price_usd"] for part_id in bought)
        expect(abs(chain["price_usd"] - price) < 0.005, f"the price is {price}")
        if chain["parts"]:
            weakest = min(self.parts[part_id]["rating_pa"] for part_id, _ in every)
            expect(abs(chain["rating_pa"] - weakest) < 1.0, "the weakest part is another one")

    def body(self, part):
        """End to end: as the catalog has it, or as it is cut."""
        if part["cut_length_m"] is not None:
            return part["cut_length_m"]
        ports = self.parts[part["id"]]["ports"]
        return sum(ports[row]["reach_m"] for row in (part["enter_port"], part["leave_port"]))

    def check_span(self, ask, chain):
        if ask.span_m is None:
            expect(chain["span"] is None, "nobody asked for a distance")
            return
        span = chain["span"]
        lands = sum(map(self.body, chain["parts"])) - sum(joint["make_up_m"] for joint in chain["joints"])
        band = sum(joint["make_up_tolerance_m"] for joint in chain["joints"])
        expect(abs(span["wanted_m"] - ask.span_m) < 1e-6, "another distance was asked for")
        if span["made_by"] == "hose":
            # With slack between its barbs, 4 %, and what goes over them left out.
            expect(0 <= lands - ask.span_m <= 0.04 * lands, f"a hose of that length lands at {lands}")
            lands = ask.span_m
        expect(abs(span["lands_m"] - lands) < 2e-5, f"it lands at {lands}")
        # Each joint's is kept to the micrometre.
        rounding = 1e-6 + 0.5e-6 * len(chain["joints"])
        expect(abs(span["band_m"] - band) < rounding, f"its band is {band}")
        cut = any(piece["cut"] for piece in span["pieces"])
        expect(abs(lands - ask.span_m) <= (2e-5 if cut else band + 2e-6), "it does not make the distance")
        expect((span["made_by"] in ("cut_pipe", "hose")) == cut, f"made by {span['made_by']}")
        for part in chain["parts"]:
            ports = self.parts[part["id"]]["ports"]
            turn = ports[part["leave_port"]]["heading_degrees"] - ports[part["enter_port"]]["heading_degrees"]
            expect(turn % 360 == 180, f"{part['id']} leads out of line")

    def check_lengths(self, chain):
        bodies = sum(map(self.body, chain["parts"]))
        make_up = sum(joint["make_up_m"] for joint in chain["joints"])
        band = sum(joint["make_up_tolerance_m"] for joint in chain["joints"])
        expect(chain["length_m"] >= bodies - make_up - 1e-6, "shorter than its bodies less its make-ups")
        short_bodies = any(
            self.body(p) <
            chain["joints"][i]["make_up_m"] + chain["joints"][i + 1]["make_up_m"] for i, p in enumerate(chain["parts"]))
        if not short_bodies:
            expect(abs(chain["length_m"] - (bodies - make_up)) < 2e-6, "the lengths do not add up")
        expect(abs(chain["length_tolerance_m"] - band) < 1e-9, "the bands do not add up")
        for joint in chain["joints"]:
            kinds = {joint[side].split(" ")[1] for side in "ab"}
            size = joint["a"].split(" ")[0]
            if kinds == {"npt"} and size in NPT_MAKE_UP:
                expect(abs(joint["make_up_m"] - NPT_MAKE_UP[size] * INCH) < 2e-5, f"make-up of {size} NPT")


class BuildOrder:
    """Replays the steps as they are printed. A body is `first`, `last`, a part's number, or half of a part."""

    def __init__(self, checker, ask, chain):
        self.checker, self.ask, self.chain = checker, ask, chain
        count = len(chain["parts"])
        self.split = None
        for step in chain["steps"]:
            apart = re.match(r"Last, close part (\d+) ", step)
            if apart:
                self.split = int(apart.group(1))
        self.bodies = ["first"]
        for number in range(1, count + 1):
            self.bodies += [(number, "first"), (number, "second")] if number == self.split else [number]
        self.bodies.append("last")
        self.cluster = {body: row for row, body in enumerate(self.bodies)}
        self.made = set()

    def body(self, text, joint_side):
        for end, name in zip(("first", "last"), self.ask.names):
            if text == name or text.startswith(name + " ("):
                return end
        half = re.match(r"the (first|second) half of part (\d+)", text)
        if half:
            return int(half.group(2)), half.group(1)
        part = re.match(r"part (\d+)", text)
        expect(part, f"who is that: {text}")
        number = int(part.group(1))
        return (number, joint_side) if number == self.split else number

    def is_held(self, body):
        members = [b for b in self.bodies if self.cluster[b] == self.cluster[body]]
        return ("first" in members and self.ask.fixed[0]) or ("last" in members and self.ask.fixed[1])

    def joint_between(self, a, b):
        rows = sorted((self.bodies.index(a), self.bodies.index(b)))
        expect(rows[1] - rows[0] == 1, f"{a} and {b} are no neighbours")
        left = self.bodies[rows[0]]
        number = 0 if left == "first" else left[0] if isinstance(left, tuple) else left
        expect(number not in self.made, "a joint is made twice")
        self.made.add(number)
        return self.chain["joints"][number]

    def join(self, a, b):
        old, new = self.cluster[b], self.cluster[a]
        expect(old != new, "both sides are one already")
        for body, cluster in self.cluster.items():
            if cluster == old:
                self.cluster[body] = new

    def screw(self, match):
        who, way, where, turned = match.group("who", "way", "where", "turned")
        a, b = self.body(who, "first"), self.body(where, "first")
        joint = self.joint_between(a, b)
        rule = self.checker.rule(joint["a"], joint["b"])
        expect(rule["turning"] == "either", f"nothing turns in a joint sealed with {rule['seal']}")
        expect(not self.is_held(a), f"{who} cannot turn any more")
        own = joint["a"] if self.bodies.index(a) < self.bodies.index(b) else joint["b"]
        expect((way == "into") == own.endswith(" male"), f"a {own} does not go {way} anything")
        held = re.search(r"(?:hold part (\d+) with a second wrench|part (\d+) is held in the vise)", match.string)
        if held:
            name = self.chain["parts"][int(held.group(1) or held.group(2)) - 1]["name"]
            expect("close nipple" not in name, "a wrench on a close nipple")
        expect(turned in ("that half", "part " + str(a)) or turned in self.ask.names, f"what turns is {turned}")
        self.join(a, b)

    def bring(self, match):
        a, b = self.body(match.group("a"), "second"), self.body(match.group("b"), "first")
        joint = self.joint_between(a, b)
        rule = self.checker.rule(joint["a"], joint["b"])
        expect(rule["turning"] == "neither", "that joint is made by turning")
        expect(rule["closing"] or not (self.is_held(a) and self.is_held(b)), "neither side can be pushed in")
        self.join(a, b)

    def carry_out(self):
        expect(self.chain["buildable"], self.chain["not_buildable_because"])
        plugs = sum(len(part["plugs"]) for part in self.chain["parts"])
        cut = set()
        nuts = 0
        for row, step in enumerate(self.chain["steps"]):
            expect(step.startswith("Last, ") == (row + 1 == len(self.chain["steps"])), "the last step closes the run")
            nut = re.match(r"First slide the nut of part (\d+) over (.+?), its thread towards part \1: it does not pass "
                           r"later\. (.*)$", step)
            if nut:
                expect(int(nut.group(1)) == self.split, "that part has no nut that comes apart")
                step = nut.group(3)
                joined = re.match(r"Bring the (?:first|second) half of part (\d+) |.* and the (?:first|second) half of "
                                  r"part (\d+) \(", step)
                expect(joined and self.split == int(joined.group(1) or joined.group(2)), "no half is put on behind the nut")
                expect(nut.group(2) in step, "the nut goes over something that is not joined here")
                nuts += 1
            screw = re.match(r"(?:Last, s|S)crew (?P<who>.+?) (?P<way>into|onto) (?P<where>.+?): turn (?P<turned>.+?) "
                             r"hand-tight", step)
            bring = re.match(r"(?:Last, b|B)ring (?P<a>.+\)) and (?P<b>.+\)) together", step)
            if step.startswith("At the bench, screw the "):
                plugs -= 1
            elif step.startswith("At the bench, cut part "):
                number = int(re.match(r"At the bench, cut part (\d+) ", step).group(1))
                expect(self.chain["parts"][number - 1]["cut_length_m"] is not None, "that part is not to be cut")
                expect(number not in cut, "cut twice")
                expect(not self.made, "cut when it is in the run already")
                cut.add(number)
            elif screw:
                self.screw(screw)
            elif bring:
                self.bring(bring)
            elif step.startswith("Last, close part "):
                self.join((self.split, "first"), (self.split, "second"))
            else:
                expect(step.startswith("Tighten the nut of part "), f"what is to be done here: {step}")
        expect(plugs == 0, "a plug is left over")
        expect(nuts <= 1, "a nut is put on twice")
        expect(len(cut) == sum(part["cut_length_m"] is not None for part in self.chain["parts"]), "a cut is left out")
        expect(len(self.made) == len(self.chain["joints"]), "a joint is not made")
        expect(len(set(self.cluster.values())) == 1, "the run is not whole at the end")
