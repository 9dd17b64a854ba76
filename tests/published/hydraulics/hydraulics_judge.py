"""Judges the hydraulic formulas against outside libraries over wide grids.

usage: hydraulics_judge.py PROBE LOSSES_YAML

Outside judges: python3-fluids (friction factors, Crane's, Hooper's and Darby's coefficients), python3-iapws (water),
SciPy (flow of a line by a bracketing root finder), and the isentropic nozzle equations written here by Mach number.
Prints the worst relative difference of each comparison and fails if one exceeds its bound.
"""
import math
import subprocess
import sys
import warnings

import numpy
import yaml

warnings.filterwarnings("ignore")
import fluids
import fluids.fittings
import fluids.friction
import iapws
from scipy.optimize import brentq

INCH = 0.0254
G = 9.80665


class Judge:
    """Gathers requests, asks the probe for all of them at once, compares."""

    def __init__(self, probe):
        self.probe = probe
        self.rows = []

    def ask(self, name, bound, request, *expected):
        self.rows.append((name, bound, request, expected))

    def verdict(self):
        requests = "".join(" ".join([word, *("%.17g" % x for x in numbers)]) + "\n"
                           for _, _, (word, *numbers), _ in self.rows)
        run = subprocess.run([self.probe], input=requests, capture_output=True, text=True, check=True)
        answers = run.stdout.splitlines()
        assert len(answers) == len(self.rows), "the probe did not answer every request"
        worst = {}
        for (name, bound, request, expected), answer in zip(self.rows, answers):
            numbers = [float(word) for word in answer.split()]
            assert len(numbers) == len(expected), (request, answer)
            for got, wanted in zip(numbers, expected):
                difference = abs(got - wanted) / abs(wanted) if wanted else abs(got)
                if not difference <= worst.get(name, (-1.0,))[0]:
                    worst[name] = (difference, bound, request, got, wanted)
        failed = False
        counts = {}
        for name, *_ in self.rows:
            counts[name] = counts.get(name, 0) + 1
        for name, (difference, bound, request, got, wanted) in worst.items():
            bad = not difference <= bound
            failed = failed or bad
            print("%-4s %-48s %6d cases, worst %.2e of %.0e" % ("FAIL" if bad else "ok", name, counts[name], difference, bound))
            if bad:
                print("     request %s: got %.17g, outside judge %.17g" % (request, got, wanted))
        return 1 if failed else 0


def friction(judge):
    roughnesses = [0.0, *numpy.logspace(-6, math.log10(0.05), 40)]
    for reynolds in numpy.logspace(math.log10(5.0), 8.0, 80):
        for roughness in roughnesses:
            if reynolds <= 2000.0:
                judge.ask("laminar factor, 64/Re", 1e-15, ("friction", reynolds, roughness), 64.0 / reynolds)
            elif reynolds >= 4000.0:
                exact = fluids.friction.Colebrook(reynolds, roughness)
                judge.ask("Colebrook, fluids.Colebrook", 1e-9, ("friction", reynolds, roughness), exact)
                whole = fluids.friction_factor(Re=reynolds, eD=roughness, Method="Colebrook")
                judge.ask("Colebrook, fluids.friction_factor", 1e-9, ("colebrook", reynolds, roughness), whole)
                # The equation itself, whatever a library does: solved by bisection on x = 1/sqrt(f).
                root = brentq(lambda x: x + 2 * math.log10(roughness / 3.7 + 2.51 * x / reynolds), 0.5, 30.0, xtol=1e-15,
                              rtol=1e-15)
                judge.ask("Colebrook, SciPy brentq", 1e-13, ("friction", reynolds, roughness), root ** -2)


def crane(judge):
    # Crane prints the rough limit with 0.0018 in; fluids fits the printed column with a curve of its own, up to 1.5 % off
    # between NPS 1/2 and 12. The n of K = n fT and the changes of bore are compared exactly, each on its own fT.
    for inches in [0.622, 0.824, 1.049, 1.38, 1.61, 2.067, 2.469, 3.068, 4.026, 5.047, 6.065, 7.981, 10.02, 11.938]:
        bore = inches * INCH
        theirs = fluids.fittings.ft_Crane(bore)
        judge.ask("Crane fT, fluids.ft_Crane", 0.016, ("crane", bore), theirs)
        judge.ask("Crane fT, formula of TP-410 (2009)", 1e-13, ("crane", bore),
                  0.25 / math.log10(0.0018 / inches / 3.7) ** 2)
    for small in [0.1, 0.5, 0.622, 1.0, 3.9]:
        for ratio in [1.0, 0.999, 0.9, 0.75, 0.5, 0.3, 0.1, 0.01]:
            bores = (small * INCH, small * INCH / ratio)
            judge.ask("widening, fluids.diffuser_sharp", 1e-12, ("widening", *bores),
                      fluids.fittings.diffuser_sharp(*bores))
            # fluids names the bores in the direction of flow.
            judge.ask("narrowing, fluids.contraction_sharp Crane", 1e-12, ("narrowing", *bores),
                      fluids.fittings.contraction_sharp(Di1=bores[1], Di2=bores[0], method="Crane"))
    for reynolds in numpy.logspace(1, 7, 13):
        for nps in [0.125, 0.5, 1.0, 2.0, 4.0]:
            judge.ask("3-K, fluids.Darby3K", 1e-12, ("darby", 800, 0.14, 4.0, nps, reynolds),
                      fluids.fittings.Darby3K(NPS=nps, Re=reynolds, K1=800, Ki=0.14, Kd=4.0))
            judge.ask("2-K, fluids.Hooper2K", 1e-12, ("hooper", 800, 0.4, nps * INCH, reynolds),
                      fluids.fittings.Hooper2K(Di=nps, Re=reynolds, K1=800, Kinfty=0.4))
    # fluids takes 1000 kg/m^3 and rounded factors for Cv: 1.4e-4 away.
    for k in [0.05, 1.0, 12.0, 400.0]:
        for bore in [0.005, 0.0254, 0.1]:
            judge.ask("Cv of K, fluids.K_to_Cv", 3e-4, ("valve", k, bore), fluids.fittings.K_to_Cv(k, bore))


def fittings(judge, losses_file):
    """The catalog's n in K = n fT and the default ends, against fluids' valves, bends, entries and exits."""
    with open(losses_file) as text:
        n = {item["name"]: item["crane n"] for item in yaml.safe_load(text)["items"] if "crane n" in item}
    theirs = {
        "ball valve full bore": lambda bore, f: fluids.fittings.K_ball_valve_Crane(bore, bore, 0.0, fd=f),
        "gate valve": lambda bore, f: fluids.fittings.K_gate_valve_Crane(bore, bore, 0.0, fd=f),
        "globe valve": lambda bore, f: fluids.fittings.K_globe_valve_Crane(bore, bore, fd=f),
        "swing check": lambda bore, f: fluids.fittings.K_swing_check_valve_Crane(D=bore, fd=f, angled=True),
        # Its bends take no fT, so the ratio to fluids' own fT is carried over to ours.
        "elbow 90 short sweep": lambda bore, f: f / fluids.fittings.ft_Crane(bore) * fluids.fittings.bend_rounded_Crane(
            Di=bore, angle=90.0, rc=bore),
    }
    for name, coefficient in theirs.items():
        for inches in [0.364, 0.622, 0.824, 1.049, 1.61, 2.067, 4.026]:
            bore = inches * INCH
            factor = float(ask_now(judge.probe, "crane", bore))
            judge.ask("K of catalog's %s" % name, 1e-12, ("fitting", n[name], bore, 1e-3), coefficient(bore, factor),
                      fluids.fittings.entrance_sharp(method="Crane"), fluids.fittings.exit_normal())


def water(judge):
    for celsius in numpy.linspace(0.0, 80.0, 33):
        kelvin = celsius + 273.15
        # The library carries volume to other pressures with the wrong sign, so only its value and slope at 0.1 MPa count.
        liquid = iapws._iapws._Liquid(kelvin, 0.1)
        density = 1 / (liquid["v"] + liquid["vp"] * (0.101325 - 0.1))
        saturation = iapws.iapws97._PSat_T(kelvin) * 1e6
        judge.ask("water, SR6-08 in iapws", 1e-13, ("water", kelvin), density, liquid["mu"], saturation)
    for celsius in numpy.linspace(0.5, 80.0, 17):
        kelvin = celsius + 273.15
        whole = iapws.IAPWS95(T=kelvin, P=0.101325)
        got = ask_now(judge.probe, "water", kelvin).split()
        # SR6-08 states 1 ppm for density and 1 % for viscosity against IAPWS-95 and R12-08.
        assert abs(float(got[0]) / whole.rho - 1) < 1e-6, (kelvin, got, whole.rho)
        assert abs(float(got[1]) / whole.mu - 1) < 2e-4, (kelvin, got, whole.mu)
    for kelvin in [273.14, 353.16, 0.0, 1e300]:
        assert ask_now(judge.probe, "water", kelvin) == "none", kelvin


def ask_now(probe, word, number):
    return subprocess.run([probe], input="%s %.17g\n" % (word, number), capture_output=True, text=True,
                          check=True).stdout.strip()


def nozzle_flow(area, upstream, downstream, kelvin, ratio=1.4, gas=287.05287):
    """Isentropic nozzle by Mach number at the throat: rho V A there. Another way than the program's."""
    mach = min(1.0, math.sqrt(2 / (ratio - 1) * math.expm1((ratio - 1) / ratio * math.log(upstream / downstream))))
    stretch = 1 + (ratio - 1) / 2 * mach * mach
    throat_kelvin = kelvin / stretch
    throat_density = upstream / (gas * kelvin) * stretch ** (-1 / (ratio - 1))
    return throat_density * mach * math.sqrt(ratio * gas * throat_kelvin) * area


def air(judge):
    for upstream in [50e3, 101325.0, 108e3, 136e3, 300e3, 1.0e6]:
        for ratio in [0.01, 0.1, 0.4, 0.52, 0.5282, 0.5283, 0.53, 0.6, 0.8, 0.95, 0.99, 0.9999, 0.99998]:
            for kelvin in [260.0, 293.15, 330.0]:
                expected = nozzle_flow(1.3e-5, upstream, ratio * upstream, kelvin)
                judge.ask("air through an opening, by Mach number", 1e-10, ("air", 1.3e-5, upstream, ratio * upstream, kelvin),
                          expected)
                judge.ask("air the other way", 1e-10, ("air", 1.3e-5, ratio * upstream, upstream, kelvin), -expected)


def flow(judge):
    """Flow of single pipes with ends: SciPy's root of the head equation with fluids' friction factor."""
    density, viscosity = 998.2, 1.0016e-3
    for bore in [0.004, 0.0127, 0.0266446, 0.1]:
        for length in [0.0, 0.3, 6.0]:
            for roughness in [0.0, 4.572e-5, 1.5e-4]:
                for head in [0.01, 0.1, 1.0, 30.0]:
                    k = (0.78, 2.3, 1.0)

                    def lost(velocity):
                        reynolds = density * velocity * bore / viscosity
                        factor = 64 / reynolds if reynolds <= 2000 else fluids.friction.Colebrook(reynolds, roughness / bore)
                        return (sum(k) + factor * length / bore) * velocity ** 2 / (2 * G) - head

                    velocity = brentq(lost, 1e-9, 100.0, xtol=1e-15, rtol=1e-14)
                    reynolds = density * velocity * bore / viscosity
                    if 1900 < reynolds < 4100 and length > 0:
                        continue  # the join between laminar and turbulent is the program's own
                    judge.ask("flow at a head, SciPy and fluids", 1e-9,
                              ("flow", bore, length, roughness, *k, density, viscosity, head),
                              velocity * math.pi / 4 * bore ** 2)


def air_line(judge):
    """Openings in a row: the pressures between them found one inside the other by a bracketing root finder."""
    gas = 287.05287 * 293.15
    critical = (2 / 2.4) ** 3.5

    def opening(area, p0, p1):
        if p1 >= p0:
            return 0.0
        r = max(p1 / p0, critical)
        return area * p0 * math.sqrt(7.0 / gas) * math.sqrt(r ** (2 / 1.4) - r ** (2.4 / 1.4))

    def passed(row, p0, p1):
        """Flow of the row; the pressure behind its first opening is where the rest takes what comes."""
        (area, spring), rest = row[0], row[1:]
        p0 -= spring
        if not rest:
            return opening(area, p0, p1)
        if p0 - sum(s for _, s in rest) <= p1:
            return 0.0
        surplus = lambda p: opening(area, p0, p) - passed(rest, p, p1)
        between = brentq(surplus, p1, p0, xtol=1e-12 * p0, rtol=1e-14, maxiter=300)
        return passed(rest, between, p1) if between > 0.9 * p0 else opening(area, p0, between)

    random = numpy.random.default_rng(7)
    for case in range(60):
        row = [(10 ** random.uniform(-6.5, -4), random.choice([0.0, 0.0, random.uniform(100, 5000)]))
               for _ in range(random.integers(1, 4))]
        low = random.uniform(90e3, 130e3)
        high = low + sum(s for _, s in row) + low * 10 ** random.uniform(-2, 1)
        numbers = [high, low, gas] + [x for pair in row for x in pair]
        judge.ask("air through openings in a row", 1e-4, ("airline", *numbers), passed(row, high, low))


def main():
    judge = Judge(sys.argv[1])
    for topic in (friction, crane, water, air, air_line, flow):
        topic(judge)
    fittings(judge, sys.argv[2])
    return judge.verdict()


if __name__ == "__main__":
    sys.exit(main())
