"""Checks branched assemblies and spare parts of `riserun chain` against nothing but the catalog's own JSON, as
answer_checker does with chains: joints mate, ports are followed by one thing each, targets hang where they were asked
for, rules of branches hold, the bin is not overdrawn, and the build order can be carried out step by step."""
import collections
import re

from answer_checker import expect

# What can stand between a vessel and its relief valve and shut it off (trade names; common practice).
SHUTS = {"ball valve", "PVC ball valve", "BSP ball valve", "gate valve", "check valve", "hose bibb", "hose shut-off valve",
         "hose wye", "air regulator", "air coupler"}


class AssemblyAsk:
    """What was asked, as far as it is checked. By branch, from 0: needs (lists of sets of ids), feeds, relief, bore."""

    def __init__(self, base, targets, held=False, air=False, avoided=(), bin_counts=None, most_bushings=None, needs=None,
                 in_order=(), feeds=(), reliefs=(), bores=None):
        self.base, self.targets, self.held, self.air, self.avoided = base, targets, held, air, set(avoided)
        self.bin_counts, self.most_bushings = bin_counts or {}, most_bushings
        self.needs, self.in_order, self.feeds, self.reliefs = needs or {}, set(in_order), set(feeds), set(reliefs)
        self.bores = bores or {}


class AssemblyChecker:
    def __init__(self, checker):
        self.checker, self.parts = checker, checker.parts

    def check(self, ask, assembly):
        """Raises Fault with what is wrong."""
        self.check_tree(ask, assembly)
        self.check_stock(ask, assembly)
        for target in range(len(ask.targets)):
            self.check_branch(ask, assembly, target)
        TreeBuild(self.checker, ask, assembly).carry_out()

    def check_tree(self, ask, assembly):
        parts = assembly["parts"]
        children, targets, joints = [], [], []
        for row, part in enumerate(parts):
            known = self.parts.get(part["id"])
            expect(known, f"no such part: {part['id']}")
            expect(part["enter"] == self.checker.port(part["id"], part["enter_port"]), "the port entered is another one")
            rows = sorted([part["enter_port"], *(port["port"] for port in part["ports"])])
            expect(rows == list(range(len(known["ports"]))), f"a port of {part['id']} is left open or used twice")
            ways_on = 0
            for port in part["ports"]:
                expect(port["type"] == self.checker.port(part["id"], port["port"]), "that port is another one")
                if "part" in port:
                    children.append(port["part"])
                    expect(port["part"] < len(parts), "a port is followed by no part")
                    joints.append((port["type"], parts[port["part"]]["enter"]))
                elif "target" in port:
                    targets.append(port["target"])
                    joints.append((port["type"], ask.targets[port["target"]]))
                else:
                    plug = self.parts[port["plug"]["id"]]
                    expect(len(plug["ports"]) == 1, "a plug has one port")
                    joints.append((port["type"], self.checker.port(plug["id"], 0)))
                ways_on += "plug" not in port
            expect(ways_on > 0, f"{part['id']} leads nowhere")
        expect(sorted(children) == list(range(1, len(parts))), "a part hangs nowhere, or in two places")
        expect(sorted(targets) == list(range(len(ask.targets))), "a target hangs nowhere, or in two places")
        for a, b in [(ask.base, parts[0]["enter"]), *joints]:
            expect(self.checker.rule(a, b), f"{a} and {b} do not go together")
        expect(len(assembly["joints"]) == len(parts) + len(ask.targets), "a joint for each part and each target")
        for joint in assembly["joints"]:
            inner = ask.base if joint["from_part"] is None else None
            if inner is None:
                own = [port["type"] for port in parts[joint["from_part"]]["ports"]
                       if port.get("part", -1) == joint.get("to_part", -2) or port.get("target", -1) == joint.get("to_target", -2)]
                expect(len(own) == 1, "a joint between two that are no neighbours")
                inner = own[0]
            outer = ask.targets[joint["to_target"]] if "to_target" in joint else parts[joint["to_part"]]["enter"]
            expect((joint["a"], joint["b"]) == (inner, outer), f"the joint is between other ports: {joint}")
            rule = self.checker.rule(inner, outer)
            expect((joint["seal"], joint["closing"]) == (rule["seal"], rule["closing"]), "the rule says otherwise")

    @staticmethod
    def every_part(assembly):
        for part in assembly["parts"]:
            yield part["id"], part["from_bin"]
            for port in part["ports"]:
                if "plug" in port:
                    yield port["plug"]["id"], port["plug"]["from_bin"]
        for end in assembly["ends"]:
            if end["device"]:
                yield end["device"]["id"], end["device"]["from_bin"]

    def check_stock(self, ask, assembly):
        every = list(self.every_part(assembly))
        taken = collections.Counter(part_id for part_id, from_bin in every if from_bin)
        for part_id, count in taken.items():
            expect(count <= ask.bin_counts.get(part_id, 0), f"the bin has not so many {part_id}")
        for part_id, from_bin in every:
            part = self.parts[part_id]
            expect(part["stocked"] or from_bin, f"{part_id} is special order")
            expect(part["air"] or not ask.air, f"{part_id} must not hold compressed air")
            expect(part_id not in ask.avoided, f"{part_id} was to be avoided")
        bought = [part_id for part_id, from_bin in every if not from_bin]
        expect(assembly["part_count"] == len(every), "the parts are counted wrongly")
        expect(assembly["buy_count"] == len(bought), "the purchases are counted wrongly")
        price = sum(self.parts[part_id]["price_usd"] for part_id in bought)
        expect(abs(assembly["price_usd"] - price) < 0.005, f"the price is {price}")
        bushings = sum("bushing" in self.parts[part["id"]]["family"] for part in assembly["parts"])
        expect(ask.most_bushings is None or bushings <= ask.most_bushings, "too many bushings")

    @staticmethod
    def way_to(assembly, target):
        """Parts from the base to the target, each with the port that leads on."""
        way, seek = [], ("target", target)
        for row in reversed(range(len(assembly["parts"]))):
            for port in assembly["parts"][row]["ports"]:
                if port.get(seek[0]) == seek[1]:
                    way.append((assembly["parts"][row], port["port"]))
                    seek = ("part", row)
                    break
        return way[::-1]

    def check_branch(self, ask, assembly, target):
        way = self.way_to(assembly, target)
        for part, leave in way:
            known = self.parts[part["id"]]
            outwards = part["enter_port"] == 0
            expect(not known["arrow"] or outwards != (target in ask.feeds), f"{part['id']} points the wrong way")
            expect(target not in ask.reliefs or known["family"] not in SHUTS, f"{part['id']} shuts a relief valve off")
            bore = min(known["ports"][row]["bore_m"] for row in (part["enter_port"], leave))
            expect(bore >= ask.bores.get(target, 0.0) - 1e-9, f"{part['id']} is too narrow")
        needs, ids = ask.needs.get(target, []), [part["id"] for part, _ in way]
        if target not in ask.in_order:
            for need in needs:
                expect(any(part_id in need for part_id in ids), "a need of a branch is not met")
            return
        left = list(needs)
        for part_id in ids:
            if left and part_id in left[0]:
                left.pop(0)
        expect(not left, "the needs of a branch are not met in their order")

    def check_spares(self, ask, answer):
        """That each stand-in can be made of the bin, the rest of what is bought, and its spares."""
        chain = answer["chains"][0]
        every = list(self.checker.all_parts(chain))
        bought = collections.Counter(part_id for part_id, from_bin in every if not from_bin)
        qty = {spare["id"]: spare["qty"] for spare in answer["spares"]}
        expect(sorted({out["missing"] for out in answer["stock_outs"]}) == sorted(bought), "a bought part is left out")
        for out in answer["stock_outs"]:
            at_hand = bought + collections.Counter(ask.bin_counts) + collections.Counter(out["spares"])
            at_hand[out["missing"]] -= 1
            for part_id, count in collections.Counter(out["spares"]).items():
                expect(count <= qty.get(part_id, 0), f"{part_id} is no spare, or not so often")
            for part_id, count in collections.Counter(out["stand_in"]).items():
                expect(count <= at_hand[part_id], f"there are not so many {part_id} when {out['missing']} is missing")
            expect(self.makes_a_run(ask, out["stand_in"]), f"the stand-in for {out['missing']} does not join the ports")
        price = sum(self.parts[part_id]["price_usd"] * count for part_id, count in qty.items())
        expect(abs(answer["spares_usd"] - price) < 0.005, f"the spares come to {price}")

    def makes_a_run(self, ask, ids):
        """Some way through the parts' ports joins the two ends, and closes where both are held."""
        open_ends = {(ask.first, not all(ask.fixed))}
        for part_id in ids:
            part, following = self.parts[part_id], set()
            rows = range(len(part["ports"]))
            for end, closed in open_ends:
                for enter in rows:
                    rule = self.checker.rule(end, self.checker.port(part_id, enter))
                    for leave in rows if rule else ():
                        if leave != enter and not (part["arrow"] and enter > leave):
                            now_closed = closed or rule["closing"] or part["closing"]
                            following.add((self.checker.port(part_id, leave), now_closed))
            open_ends = following
        last = [(self.checker.rule(end, ask.last), closed) for end, closed in open_ends]
        return (any(rule and (closed or rule["closing"]) for rule, closed in last) and
                all(any(part_id in need for part_id in ids) for need in ask.needs))


class TreeBuild:
    """Replays the steps as they are printed. A body is `base`, a part's number, half of a part, or `target N`."""

    def __init__(self, checker, ask, assembly):
        self.checker, self.ask, self.assembly = checker, ask, assembly
        self.apart = {int(found.group(1)) for step in assembly["steps"]
                      if (found := re.match(r"To close, bring the halves of part (\d+) ", step))}
        self.cluster = {"base": "base"}
        for number in range(1, len(assembly["parts"]) + 1):
            for body in ((number, "first"), (number, "second")) if number in self.apart else (number,):
                self.cluster[body] = body
        for row in range(len(ask.targets)):
            self.cluster[f"target {row + 1}"] = f"target {row + 1}"
        self.made = set()

    def body(self, text):
        if text.startswith("the base ("):
            return "base"
        half = re.match(r"the (first|second) half of part (\d+) ", text)
        if half:
            return int(half.group(2)), half.group(1)
        named = re.match(r"(part|target) (\d+) \(", text)
        expect(named, f"who is that: {text}")
        body = int(named.group(2)) if named.group(1) == "part" else f"target {named.group(2)}"
        expect(body in self.cluster, f"there is no {text}")
        return body

    def of_joint(self, joint):
        """The two bodies of a joint, the one nearer to the base first."""
        inner = "base" if joint["from_part"] is None else joint["from_part"] + 1
        outer = f"target {joint['to_target'] + 1}" if "to_target" in joint else joint["to_part"] + 1
        return ((inner, "second") if inner in self.apart else inner), ((outer, "first") if outer in self.apart else outer)

    def joint_between(self, a, b):
        for row, joint in enumerate(self.assembly["joints"]):
            if set(self.of_joint(joint)) == {a, b}:
                expect(row not in self.made, "a joint is made twice")
                self.made.add(row)
                return joint, self.of_joint(joint)[0] == a
        expect(False, f"{a} and {b} are no neighbours")

    def members(self, body):
        return [b for b in self.cluster if self.cluster[b] == self.cluster[body]]

    def held(self, body):
        return self.ask.held and any(b == "base" or str(b).startswith("target") for b in self.members(body))

    def join(self, a, b):
        gone, kept = self.cluster[b], self.cluster[a]
        expect(gone != kept, "both sides are one already")
        for body in self.members(b):
            self.cluster[body] = kept

    def is_straight(self, body):
        """A part, or half of one, whose ways on are two."""
        number = body[0] if isinstance(body, tuple) else body
        return isinstance(number, int) and sum("plug" not in port for port in self.assembly["parts"][number - 1]["ports"]) == 1

    def screw(self, match):
        a, b = self.body(match.group("who")), self.body(match.group("where"))
        joint, a_is_inner = self.joint_between(a, b)
        expect(self.checker.rule(joint["a"], joint["b"])["turning"] == "either", "nothing turns in that joint")
        expect(not self.held(a), f"{match.group('who')} is held and cannot turn")
        carried = self.members(a)
        expect((len(carried) > 1) == bool(match.group("carrying")), f"{match.group('who')} carries {carried}")
        expect(len(carried) == 1 or all(self.is_straight(body) for body in carried), f"one of {carried} swings")
        own = joint["a"] if a_is_inner else joint["b"]
        expect((match.group("way") == "into") == own.endswith(" male"), f"a {own} does not go {match.group('way')} anything")
        gripped = re.search(r"(?:hold part (\d+) with a second wrench|part (\d+) is held in the vise)", match.string)
        if gripped:
            name = self.assembly["parts"][int(gripped.group(1) or gripped.group(2)) - 1]["name"]
            expect("close nipple" not in name, "a wrench on a close nipple")
        self.join(a, b)

    def bring(self, match, last):
        a, b = self.body(match.group("a")), self.body(match.group("b"))
        joint, _ = self.joint_between(a, b)
        rule = self.checker.rule(joint["a"], joint["b"])
        expect(rule["turning"] == "neither", "that joint is made by turning")
        expect(rule["closing"] or not last, "that joint closes nothing")
        expect(last or not (self.held(a) and self.held(b)), "both sides are held")
        self.join(a, b)

    def carry_out(self):
        plugs = sum("plug" in port for part in self.assembly["parts"] for port in part["ports"])
        for step in self.assembly["steps"]:
            screw = re.match(r"Screw (?P<who>.+?\))(?P<carrying>, with what is made up on it,)? (?P<way>into|onto) (?P<where>.+?\)): turn ", step)
            halves = re.match(r"To close, bring the halves of part (\d+) ", step)
            bring = re.match(r"(?P<last>To close, b|B)ring (?P<a>.+?\)) and (?P<b>.+?\)) together", step)
            if step.startswith("At the bench, screw the "):
                plugs -= 1
                expect(not self.made, "a plug goes in when the run stands already")
            elif screw:
                self.screw(screw)
            elif halves:
                number = int(halves.group(1))
                expect(self.checker.parts[self.assembly["parts"][number - 1]["id"]]["closing"], "that part is no union")
                self.join((number, "first"), (number, "second"))
            elif bring:
                self.bring(bring, bring.group("last") != "B")
            else:
                expect(step.startswith("Tighten the nut of part "), f"what is to be done here: {step}")
        expect(plugs == 0, "a plug is left over")
        expect(len(self.made) == len(self.assembly["joints"]), "a joint is not made")
        expect(len(set(self.cluster.values())) == 1, "the assembly is not whole at the end")
