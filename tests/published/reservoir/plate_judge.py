"""Judges the plate series by another method: Ritz, polynomials and SciPy.

The plate's energy, with Poisson's ratio in it, is made least over products of Legendre polynomials times a factor that
holds the edges, (1 - x^2)^2 for held ones and (1 - x^2) for free ones; no series, no edge moments. Random aspect ratios
from 1 to 10 and Poisson ratios from 0 to 0.5. Also looks over the whole plate for the greatest principal moment, which
must be the one that the walls are judged by.
"""
import subprocess
import sys

import numpy as np
from numpy.polynomial import Legendre, Polynomial, legendre
from scipy.linalg import cho_factor, cho_solve


def basis(power, count):
    """Even functions on [-1, 1] that hold the edges, each with its first two derivatives."""
    factor = (Polynomial([1.0, 0.0, -1.0]) ** power).convert(kind=Legendre)  # powers of x would lose all digits
    functions = []
    for i in range(count):
        f = factor * Legendre.basis(2 * i)
        functions.append((f, f.deriv(), f.deriv(2)))
    return functions


def values(functions, points):
    """[derivative][function][point]"""
    return [np.array([f[d](points) for f in functions]) for d in range(3)]


def solve(ratio, nu, power, nx, ny):
    """Coefficients of w (a = q = D = 1), short side along x, and the bases."""
    points, weights = legendre.leggauss(2 * (2 * max(nx, ny) + 4))
    fx, fy = basis(power, nx), basis(power, ny)
    x, y = values(fx, points), values(fy, points)
    sx, sy = 2.0, 2.0 / ratio  # d/dX = sx d/dx on the plate of sides 1 and ratio

    def gram(v, i, j):
        return (v[i] * weights) @ v[j].T

    bend_x = np.kron(gram(x, 2, 2), gram(y, 0, 0)) * sx**4
    bend_y = np.kron(gram(x, 0, 0), gram(y, 2, 2)) * sy**4
    cross = np.kron(gram(x, 2, 0), gram(y, 0, 2)) * sx**2 * sy**2
    twist = np.kron(gram(x, 1, 1), gram(y, 1, 1)) * sx**2 * sy**2
    stiffness = bend_x + bend_y + nu * (cross + cross.T) + 2.0 * (1.0 - nu) * twist
    load = np.outer(x[0] @ weights, y[0] @ weights).ravel()
    scale = 1.0 / np.sqrt(np.diag(stiffness))
    c = scale * cho_solve(cho_factor(stiffness * np.outer(scale, scale)), scale * load)
    return c.reshape(nx, ny), fx, fy, sx, sy


def moments(solution, nu, px, py):
    """w, Mx, My, Mxy on the grid of points px, py."""
    c, fx, fy, sx, sy = solution
    x, y = values(fx, px), values(fy, py)

    def field(i, j):
        return x[i].T @ c @ y[j] * sx**i * sy**j

    wxx, wyy, wxy = field(2, 0), field(0, 2), field(1, 1)
    return field(0, 0), -(wxx + nu * wyy), -(wyy + nu * wxx), (1.0 - nu) * wxy


def greatest_principal(mx, my, mxy):
    mean, radius = (mx + my) / 2.0, np.hypot((mx - my) / 2.0, mxy)
    return float(np.max(np.maximum(np.abs(mean + radius), np.abs(mean - radius))))


def judge(name, ratio, nu, got, want, relative, failures):
    if abs(got - want) > relative * max(abs(want), 0.005):
        failures.append(f"{name} at {ratio:.4f}, nu {nu:.3f}: {got:.7f}, Ritz {want:.7f}")
    return abs(got - want) / max(abs(want), 0.005)


def main():
    random = np.random.default_rng(20240611)
    cases = [(r, nu) for r, nu in zip(np.exp(random.uniform(0.0, np.log(10.0), 36)), random.uniform(0.0, 0.5, 36))]
    cases += [(1.0, 0.3), (1.0, 0.0), (1.0, 0.5), (2.0, 0.3), (8.0, 0.3), (8.001, 0.33)]
    text = "\n".join(f"{r!r} {nu!r}" for r, nu in ((float(r), float(nu)) for r, nu in cases))
    lines = subprocess.run([sys.argv[1]], input=text, capture_output=True, text=True, check=True).stdout.splitlines()
    assert len(lines) == 2 * len(cases), "one line for each plate"

    failures, worst = [], {}

    def check(name, ratio, nu, got, want, relative):
        worst[name] = max(worst.get(name, 0.0), judge(name, ratio, nu, got, want, relative, failures))

    for row, (ratio, nu) in enumerate(cases):
        held = [float(v) for v in lines[2 * row].split()]
        free = [float(v) for v in lines[2 * row + 1].split()]
        ny = int(12 + 3 * ratio)
        grid_x, grid_y = np.linspace(0.0, 1.0, 41), np.linspace(0.0, 1.0, 81)

        w, mx, my, mxy = moments(solve(ratio, nu, 2, 12, ny), nu, grid_x, grid_y)
        check("held bulge", ratio, nu, held[0], w[0, 0], 1e-6)
        check("held short span", ratio, nu, held[1], mx[0, 0], 1e-6)
        check("held long span", ratio, nu, held[2], my[0, 0], 1e-5)
        check("held long edge", ratio, nu, held[3], -mx[-1, 0], 1e-5)
        check("held short edge", ratio, nu, held[4], -my[0, -1], 1e-5)
        # along the long edge of a long plate the moment is 0.4 % greater some way off the middle
        if greatest_principal(mx, my, mxy) > 1.005 * held[6]:
            failures.append(f"held plate {ratio:.4f}, nu {nu:.3f}: greater moment {greatest_principal(mx, my, mxy):.6f}"
                            f" elsewhere than {held[6]:.6f}")

        w, mx, my, mxy = moments(solve(ratio, nu, 1, 12, ny), nu, grid_x, grid_y)
        check("free bulge", ratio, nu, free[0], w[0, 0], 1e-9)
        check("free short span", ratio, nu, free[1], mx[0, 0], 1e-7)
        check("free long span", ratio, nu, free[2], my[0, 0], 1e-7)
        check("free twist", ratio, nu, free[5], abs(mxy[-1, -1]), 1e-4)
        if greatest_principal(mx, my, mxy) > 1.001 * free[6]:
            failures.append(f"free plate {ratio:.4f}, nu {nu:.3f}: greater moment {greatest_principal(mx, my, mxy):.6f}"
                            f" elsewhere than {free[6]:.6f}")

    for name, difference in worst.items():
        print(f"{name:16} greatest relative difference {difference:.2e} over {len(cases)} plates")
    for failure in failures:
        print("FAIL", failure)
    sys.exit(1 if failures else 0)


main()
