"""Outside judge of the transfer: the same equations written again, solved by SciPy's solve_ivp (LSODA) over random
systems. Usage: transfer_judge.py PROBE

Equations from their sources: Darcy-Weisbach with Colebrook-White by Lambert's W (exact form, Keady 1998), laminar 64/Re
below 2000 and the cubic in (ln Re, ln f) between 2000 and 4000; Borda-Carnot and Crane's 0.5 (1 - beta^2) for changes
of bore; isentropic orifice, choked below its critical ratio; ideal gas at one temperature.
"""
import math
import random
import subprocess
import sys
import time

from scipy.integrate import solve_ivp
from scipy.optimize import brentq
from scipy.special import lambertw

G = 9.80665
R_AIR = 287.05287
GAMMA = 1.4
TOLERANCE = 1e-9
FILLS = DRAINS = 50


def colebrook(reynolds, roughness):
    a, b = roughness / 3.7, 2.51 / reynolds
    # x = 1/sqrt(f): x = -2 log10(a + b x)  ->  Lambert W
    c = math.log(10.0) / 2.0
    if c * a / b > 300.0:
        x = -2.0 * math.log10(a)
        for _ in range(60):
            x = -2.0 * math.log10(a + b * x)
        return 1.0 / x**2
    w = lambertw(c / b * math.exp(c * a / b)).real
    return 1.0 / (w / c - a / b) ** 2


class Friction:
    def __init__(self, roughness):
        self.roughness = roughness
        at = math.log(colebrook(4000.0, roughness))
        step = 1e-5
        self.high = at
        self.high_slope = (math.log(colebrook(4000.0 * math.exp(step), roughness))
                           - math.log(colebrook(4000.0 * math.exp(-step), roughness))) / (2 * step)

    def factor(self, reynolds):
        if reynolds <= 2000.0:
            return 64.0 / reynolds
        if reynolds >= 4000.0:
            return colebrook(reynolds, self.roughness)
        width = math.log(2.0)
        t = math.log(reynolds / 2000.0) / width
        low, high = math.log(0.032), self.high
        return math.exp(low * (2 * t**3 - 3 * t**2 + 1) - width * (t**3 - 2 * t**2 + t)
                        + high * (3 * t**2 - 2 * t**3) + self.high_slope * width * (t**3 - t**2))


class Line:
    """Head taken by a flow one way, and the flow that a head drives."""

    def __init__(self, elements, entry_k, exit_k, water):
        self.parts = []  # (area, K) and (area, L/D, Re per flow, Friction)
        self.constant = 0.0
        area = lambda bore: math.pi / 4 * bore**2
        per_k = lambda bore: 1.0 / (2 * G * area(bore) ** 2)
        self.constant += per_k(elements[0][0]) * entry_k + per_k(elements[-1][0]) * exit_k
        for (bore, length, roughness, fixed_k) in elements:
            self.constant += per_k(bore) * fixed_k
            if length > 0:
                self.parts.append((per_k(bore) * length / bore, bore / area(bore) * water[0] / water[1],
                                   Friction(roughness / bore)))
        for before, after in zip(elements, elements[1:]):
            small, large = sorted((before[0], after[0]))
            beta2 = (small / large) ** 2
            self.constant += per_k(small) * ((1 - beta2) ** 2 if after[0] > before[0] else 0.5 * (1 - beta2))
        self.guess = 1e-4

    def head(self, flow):
        return flow * flow * (self.constant + sum(s * f.factor(r * flow) for s, r, f in self.parts))

    def flow(self, head):
        if head <= 0.0:
            return 0.0
        # Secant steps on ln head against ln flow, from the last solution.
        x0 = math.log(self.guess)
        y0 = math.log(self.head(self.guess) / head)
        x1 = x0 - y0 / 1.9
        for _ in range(60):
            y1 = math.log(self.head(math.exp(x1)) / head)
            if abs(y1) < 1e-13 or x1 == x0 or y1 == y0:
                break
            x0, x1, y0 = x1, x1 - y1 * (x1 - x0) / (y1 - y0), y1
            if abs(x1 - x0) < 1e-15:
                break
        else:
            raise RuntimeError("no flow for head %g" % head)
        self.guess = math.exp(x1)
        return self.guess


CRITICAL = (2 / (GAMMA + 1)) ** (GAMMA / (GAMMA - 1))


def orifice(area, high, low, temperature):
    """kg/s from high to low, with the program's stated cubic in the first hundred-thousandth of the pressure."""
    if low > high:
        return -orifice(area, low, high, temperature)
    if high <= 0.0:
        return 0.0

    def shape(drop):
        r = max(1 - drop, CRITICAL)
        shrink = -math.expm1((GAMMA - 1) / GAMMA * math.log1p(-min(drop, 1 - CRITICAL)))
        return math.sqrt(r ** (2 / GAMMA) * shrink)

    drop = (high - low) / high
    join = 1e-5
    if drop < join:
        value = shape(join)
        step = 1e-3 * join
        slope = (shape(join + step) - shape(join - step)) / (2 * step) * join
        x = drop / join
        f = x * ((3 * value - slope) / 2 + x * x * (slope - value) / 2)
    else:
        f = shape(drop)
    return area * high * math.sqrt(2 * GAMMA / ((GAMMA - 1) * R_AIR * temperature)) * f


class Case:
    """One random transfer: its numbers, as the probe reads them, and the same equations."""

    def __init__(self, rng, task):
        u = rng.uniform
        self.task = task
        self.ra, self.rh = u(0.2, 2.5), u(0.25, 0.6)
        self.ta, self.floor, self.rim = u(0.3, 3.0), u(0.6, 1.2), u(0.08, 0.25)
        self.end = u(0.008, 0.03)
        self.inlet = rng.choice([0.0, 0.0, 0.0, u(0.0, 0.05), self.rim + u(0.0, 0.05)])
        bore = rng.choice([0.0158, 0.0209, 0.0266, 0.0351, 0.0409, 0.0525])
        self.elements = [(bore, u(0.25, 0.6), 4.6e-5, 0.0)]
        for _ in range(rng.randint(0, 4)):
            self.elements.append((bore * rng.choice([0.75, 1.0, 1.0, 1.35]), rng.choice([0.0, u(0.03, 0.8)]),
                                  rng.choice([1.5e-6, 4.6e-5, 1.5e-4]), rng.choice([0.0, u(0.1, 4.0)])))
        self.ends = [u(0.5, 1.2), 1.0, u(0.3, 0.8), 1.0]
        t = u(278.0, 320.0)
        self.water = (u(988.0, 1000.0), u(5.5e-4, 1.5e-3))
        self.temperature, self.atmosphere = t, u(85000.0, 103000.0)
        self.gas = R_AIR * t
        self.rho_g = self.water[0] * G
        self.depth = self.rh * u(0.75, 0.95)
        most = self.ra * (self.depth - self.end) * 0.9
        self.line_volume = sum(math.pi / 4 * b**2 * l for b, l, _, _ in self.elements)
        self.want = min(self.rim * u(0.5, 0.95), (most - self.line_volume) / self.ta * u(0.6, 1.0))
        self.table0, self.ullage0 = 0.0, 0.0
        self.inlet_level = self.floor + self.inlet
        goal_level = max(self.floor + self.want, self.inlet_level)
        self.hold = self.rho_g * (goal_level - self.depth + self.want * self.ta / self.ra)
        self.set = self.hold * u(1.15, 3.0)
        self.droop, self.rated = u(0.05, 0.3), u(0.002, 0.02)
        self.fad = rng.choice([-1.0, u(0.0003, 0.006), u(0.0003, 0.006)])
        self.receiver = rng.choice([0.0, u(0.005, 0.2)])
        self.pr = u(4e5, 8e5)
        self.feed, self.feed_cd = u(0.004, 0.01), 0.8
        self.vent, self.vent_cd, self.vents = u(0.006, 0.02), 0.6, rng.randint(1, 2)
        # Behind the regulator: holes down to a few mm2 and a check valve's spring, which the setting has on top.
        self.behind = [(10 ** u(-5.5, -4), 0.0) for _ in range(rng.choice([0, 0, 1, 2]))]
        if self.behind:
            self.behind[-1] = (self.behind[-1][0], rng.choice([0.0, u(500.0, 4000.0)]))
            self.set += sum(spring for _, spring in self.behind)
        if task == 1:
            self.inlet = rng.choice([0.0, u(0.0, 0.03)])
            self.inlet_level = self.floor + self.inlet
            self.table0 = max(self.want, self.inlet + 0.01)
            self.depth = self.end + u(0.0, 0.4) * (self.rh * 0.9 - self.end - self.table0 * self.ta / self.ra)
            self.depth = max(self.depth, 0.02)
            self.rh = max(self.rh, self.depth + self.table0 * self.ta / self.ra + 0.02)
            self.ullage0 = self.rho_g * (self.floor + self.table0 - self.depth) * u(0.3, 1.2)
        self.forward = Line(self.elements, self.ends[0], self.ends[3], self.water)
        self.backward = Line(self.elements[::-1], self.ends[2], self.ends[1], self.water)

    def question(self):
        numbers = [self.task, TOLERANCE, self.ra, self.rh, self.ta, self.floor, self.rim, self.end, self.inlet,
                   len(self.elements)]
        for element in self.elements:
            numbers += element
        numbers += self.ends + list(self.water) + [
            self.temperature, self.atmosphere, self.set, self.droop, self.rated, self.fad, self.receiver, self.pr,
            self.feed, self.feed_cd, self.vent, self.vent_cd, self.vents, len(self.behind)]
        for opening in self.behind:
            numbers += opening
        numbers += [self.depth, self.table0, self.ullage0,
            self.want]
        return " ".join(repr(float(n)) for n in numbers)

    # The equations.
    def prepare(self):
        self.v0 = self.ra * (self.rh - self.depth)
        self.m0 = (self.atmosphere + self.ullage0) * self.v0 / self.gas
        self.feed_area = self.feed_cd * math.pi / 4 * self.feed**2
        self.vent_area = self.vent_cd * math.pi / 4 * self.vent**2 * self.vents
        self.free_air = self.atmosphere / self.gas
        self.inlet_volume = self.inlet * self.ta
        if self.table0 > self.inlet:
            self.line0 = self.line_volume
        else:
            self.line0 = self.line_volume * min(1.0, max(0.0, (self.depth + self.ullage0 / self.rho_g - self.end)
                                                         / (self.inlet_level - self.end)))

    def outlet(self, water):
        past_line = water + self.line0 - self.line_volume
        if past_line < 0.0 and self.table0 <= self.inlet:
            return self.end + (self.line0 + water) / self.line_volume * (self.inlet_level - self.end)
        table = self.table0 + past_line / self.ta
        return max(self.inlet_level, self.floor + table)

    def pressure(self, y):
        return (self.m0 + y[1] - y[2]) * self.gas / (self.v0 + y[0])

    def receiver_pressure(self, y):
        stop = self.atmosphere + self.pr
        return stop + (y[3] - y[1]) * self.gas / self.receiver if self.receiver > 0 and self.fad >= 0 else stop

    def regulated(self, y):
        p, pr = self.pressure(y), self.receiver_pressure(y)
        if self.task == 1 or p >= self.atmosphere + self.set:
            return 0.0
        def let_in(outlet):
            opening = min(1.0, max(0.0, (self.atmosphere + self.set - outlet) / (self.droop * self.set)))
            return min(self.free_air * self.rated * opening, max(0.0, orifice(self.feed_area, pr, outlet, self.temperature)))

        def taken(outlet, row):
            """Flow of the openings behind the regulator, from its outlet's pressure to the ullage's."""
            (area, spring), rest = row[0], row[1:]
            if outlet - sum(s for _, s in row) <= p:
                return 0.0
            if not rest:
                return orifice(area, outlet - spring, p, self.temperature)
            between = brentq(lambda x: orifice(area, outlet - spring, x, self.temperature) - taken(x, rest), p,
                             outlet - spring, xtol=1e-9, rtol=1e-15, maxiter=300)
            return taken(between, rest)

        outlet = p
        if self.behind:
            top = self.atmosphere + self.set
            if top - sum(s for _, s in self.behind) <= p:
                return 0.0
            outlet = brentq(lambda x: let_in(x) - taken(x, self.behind), p, top, xtol=1e-9, rtol=1e-15, maxiter=300)
        flow = let_in(outlet)
        return min(flow, self.free_air * self.fad) if self.fad >= 0 and self.receiver == 0 else flow

    def rates(self, y, idle):
        p = self.pressure(y)
        head = (p - self.atmosphere) / self.rho_g + self.depth - y[0] / self.ra - self.outlet(y[0])
        water = self.forward.flow(head) if head > 0 else -self.backward.flow(-head)
        regulated = self.regulated(y)
        vented = orifice(self.vent_area, p, self.atmosphere, self.temperature) if self.task == 1 else 0.0
        compressed = 0.0
        if self.receiver > 0 and self.fad >= 0:
            compressed = self.free_air * self.fad
            if idle:
                compressed = min(compressed, regulated)
        return [water, regulated, vented, compressed]

    def solve(self):
        """Time, state at the goal, solver's seconds; None if the goal is not reached."""
        self.prepare()
        past = lambda y: self.table0 * self.ta + y[0] + self.line0 - self.line_volume
        scale = self.atmosphere * self.want * self.ta / self.gas
        goal = ((lambda t, y: past(y) - self.want * self.ta) if self.task == 0
                else (lambda t, y: past(y) - self.inlet_volume))
        line_full = lambda t, y: y[0] + self.line0 - self.line_volume
        covered = lambda t, y: past(y) - self.inlet_volume
        receiver_full = lambda t, y: y[3] - y[1] + 1e-12 * scale  # a hair early: it may start at zero
        draws = lambda t, y: self.regulated(y) - self.free_air * self.fad
        for event in (goal, line_full, covered, receiver_full, draws):
            event.terminal = True
        goal.direction = 1 if self.task == 0 else -1
        line_full.direction = covered.direction = receiver_full.direction = draws.direction = 1
        idle = True
        y, now = [0.0] * 4, 0.0
        if self.receiver > 0 and self.fad >= 0 and draws(0, y) > 0:
            idle = False
        absolute = [1e-9 * self.want * self.ta, 1e-9 * scale, 1e-9 * scale, 1e-9 * scale]
        spent = 0.0
        done_line = line_full(0, y) >= 0 or self.table0 > self.inlet
        done_cover = covered(0, y) >= 0
        for _ in range(100):
            events = [goal]
            if self.task == 0:
                events += ([] if done_line else [line_full]) + ([] if done_cover else [covered])
                if self.receiver > 0 and self.fad >= 0:
                    events.append(draws if idle else receiver_full)
            began = time.perf_counter()
            r = solve_ivp(lambda t, z: self.rates(z, idle), (now, now + 40000.0), y, method="LSODA", rtol=1e-10,
                          atol=absolute, events=events, first_step=1e-5)
            spent += time.perf_counter() - began
            if r.status != 1:
                return None
            fired = next(e for e, times in zip(events, r.t_events) if len(times))
            now, y = r.t[-1], list(r.y[:, -1])
            done_cover = done_cover or abs(covered(0, y)) < 1e-9 * self.want * self.ta
            done_line = done_line or abs(line_full(0, y)) < 1e-9 * self.want * self.ta
            if fired is goal:
                return now, y, spent
            if fired is line_full:
                done_line = True
            elif fired is covered:
                done_cover = True
            elif fired is draws:
                idle = False
            else:
                idle = True
        raise RuntimeError("no end")


def main():
    rng = random.Random(20240611)
    probe = subprocess.Popen([sys.argv[1]], stdin=subprocess.PIPE, stdout=subprocess.PIPE, text=True)
    worst, reached, failures, spent = 0.0, 0, 0, 0.0
    for number in range(FILLS + DRAINS):
        case = Case(rng, 0 if number < FILLS else 1)
        probe.stdin.write(case.question() + "\n")
        probe.stdin.flush()
        answer = probe.stdout.readline().split()
        judged = case.solve()
        if judged is None:
            print("case %d: no end by the judge; probe says %s" % (number, answer[:2]))
            failures += answer[0] == "goal"
            continue
        reached += 1
        when, y, seconds = judged
        spent += seconds
        errors = {"time": abs(float(answer[1]) / when - 1)}
        for name, theirs, mine in (("water", answer[2], y[0]), ("regulated", answer[3], y[1]),
                                   ("vented", answer[4], y[2]), ("compressed", answer[5], y[3])):
            if abs(mine) > 1e-9:
                errors[name] = abs(float(theirs) / mine - 1)
        errors["pressure"] = abs(float(answer[6]) / case.pressure(y) - 1)
        error = max(errors.values())
        worst = max(worst, error)
        if answer[0] != "goal" or error > 1e-4:
            failures += 1
            print("case %d: %s judge %.6f s; relative errors %s\n  %s" % (number, answer, when, errors,
                                                                      case.question()))
    probe.stdin.close()
    print("%d of %d transfers reach their goal; worst relative difference %.2e; SciPy took %.2f s" %
          (reached, FILLS + DRAINS, worst, spent))
    sys.exit(failures > 0 or reached < 0.9 * (FILLS + DRAINS))


if __name__ == "__main__":
    main()
