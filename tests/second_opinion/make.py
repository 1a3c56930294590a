"""Makes reference values for stepped pinned-pinned links and for bar sections.

It uses general-purpose libraries only and nothing of this project; see README.md.
A link is a row of pieces from eye A (x = 0) to eye B (x = L), free to turn in both
eyes.  The strike is a side force; the push squeezes the link along the line from
eye to eye.  Small deflections, no shear deflection, SI units.
"""
import csv
import math
import random
import subprocess
import tempfile
from pathlib import Path

import numpy as np
from Pynite import FEModel3D
from scipy.integrate import quad, solve_ivp
from scipy.linalg import eigh
from scipy.optimize import brentq
from sectionproperties.analysis import Section
from sectionproperties.pre import Geometry
from shapely import Polygon

SEED = 20240611
STEEL, ALUMINUM = 200e9, 71e9
COLUMNS = "deflection", "pushed deflection", "pushed moment", "folding"
LINKS, SLENDER = 48, 4          # the last four links have very slender bars
CUTS = 8                        # elements between two fixed stations; checked against twice as many

def ring(outside, bore=0.0):
    return math.pi / 64 * (outside**4 - bore**4)

def draw_link(rng, slender):
    """Pieces (length, EI) of one random link; draws again until the lengths fit."""
    while True:
        total = rng.uniform(0.9, 1.2) if slender else rng.uniform(0.25, 1.2)
        e = rng.choice([STEEL, ALUMINUM])
        shank = [rng.uniform(0.009, 0.010 if slender else 0.030) for _ in "AB"]
        # A slender bar is thinner than the ordinary rule allows; it keeps a 2 mm wall.
        low, high, wall = (0.014, 0.018, 0.002) if slender else (0.025, 0.076, 0.006)
        outside = rng.uniform(low, high)
        if outside < 1.08 * max(shank) + 2 * wall:
            continue
        plain = e * ring(outside, rng.choice([0.0, rng.uniform(0.4, 0.9) * min(shank)]))
        ends = [((rng.uniform(0.02, 0.08), STEEL * ring(d)),
                 (rng.uniform(0.03, 0.09), e * ring(outside, 1.08 * d))) for d in shank]
        flats = (rng.uniform(0.02, 0.05), plain * rng.uniform(0.5, 0.95))
        rest = total - flats[0] - sum(piece[0] for end in ends for piece in end)
        if rest < 0.02:
            continue
        middle = [flats, (rest, plain)][::1 if rng.random() >= 0.5 else -1]
        return [*ends[0], *middle, *reversed(ends[1])]

def edges_of(pieces):
    return np.concatenate([[0.0], np.cumsum([length for length, _ in pieces])])

def grid(pieces, extra, cuts):
    """Node places and the EI of each element; every step and extra station is a node."""
    edges = edges_of(pieces)
    marks = sorted({float(x) for x in [*edges, *extra]})
    x = np.concatenate([[0.0]] + [np.linspace(a, b, cuts + 1)[1:] for a, b in zip(marks, marks[1:])])
    middle = (x[1:] + x[:-1]) / 2
    return x, np.array([pieces[np.searchsorted(edges, m) - 1][1] for m in middle])

def folding_load(pieces, cuts):
    """Lowest buckling load: cubic beam elements, elastic against geometric stiffness."""
    x, ei = grid(pieces, [], cuts)
    k, g = np.zeros((2, 2 * len(x), 2 * len(x)))
    for i, (h, b) in enumerate(zip(np.diff(x), ei)):
        part, to = slice(2 * i, 2 * i + 4), np.outer([1, h, 1, h], [1, h, 1, h])
        k[part, part] += b / h**3 * to * [[12, 6, -12, 6], [6, 4, -6, 2], [-12, -6, 12, -6], [6, 2, -6, 4]]
        g[part, part] += to / (30 * h) * [[36, 3, -36, 3], [3, 4, -3, -1], [-36, -3, 36, -3], [3, -1, -3, 4]]
    free = [i for i in range(2 * len(x)) if i not in (0, 2 * len(x) - 2)]
    # eigh wants the positive matrix second and gives its largest value best: g v = (1/P) k v.
    # Scaling by the diagonal of k keeps meters and radians from spoiling the numbers.
    s = 1 / np.sqrt(np.diag(k)[free])
    k, g = (m[np.ix_(free, free)] * np.outer(s, s) for m in (k, g))
    return 1 / float(eigh(g, k, eigvals_only=True)[-1])

def pynite(pieces, push, strike, at, station, cuts):
    """Deflection at the strike and moment at the station, by PyNite's P-Delta."""
    x, ei = grid(pieces, [at, station], cuts)
    m = FEModel3D()
    m.add_material("m", STEEL, STEEL / 2.6, 0.3, 0.0)
    for value in set(ei):       # a huge area, since shortening plays no part here
        m.add_section(repr(value), 1.0, value / STEEL, value / STEEL, 2 * value / STEEL)
    for i, place in enumerate(x):
        m.add_node(f"n{i}", float(place), 0, 0)
    last = len(ei)
    for i, value in enumerate(ei):
        m.add_member(f"b{i}", f"n{i}", f"n{i+1}", "m", repr(value))
    m.def_support("n0", True, True, True, True)
    m.def_support(f"n{last}", False, True, True)
    hit, look = (int(np.argmin(abs(x - place))) for place in (at, station))
    m.add_node_load(f"n{hit}", "FY", -strike)
    m.add_node_load(f"n{last}", "FX", -push)
    (m.analyze_PDelta if push else m.analyze_linear)(check_stability=False)
    # The sign is dropped: sagging under the strike counts as positive.
    moment = float(m.members[f"b{look}"].moment("Mz", 0.0, "Combo 1"))
    return -float(m.nodes[f"n{hit}"].DY["Combo 1"]), abs(moment)

def shooting(pieces, push, strike, at, station):
    """The same by integrating EI v'' = -M piece by piece with scipy, with no mesh at all.

    Two runs from eye A, one with a unit slope and no load, one with the load, are mixed so that
    eye B stays on the line.  Also gives how far the unit-slope run ends off that line.
    """
    edges, total = edges_of(pieces), sum(length for length, _ in pieces)
    statics = lambda x: strike * ((total - at) / total * x - max(x - at, 0.0))
    marks = sorted({float(x) for x in [*edges, at, station]})
    state, seen = np.array([0.0, 1.0, 0.0, 0.0]), {}
    for a, b in zip(marks, marks[1:]):
        ei = pieces[np.searchsorted(edges, (a + b) / 2) - 1][1]
        slope = lambda x, y: [y[1], -push * y[0] / ei, y[3], -(push * y[2] + statics(x)) / ei]
        seen[b] = state = solve_ivp(slope, (a, b), state, "DOP853", rtol=1e-12, atol=1e-16).y[:, -1]
    mix = -state[2] / state[0]
    v = {x: mix * y[0] + y[2] for x, y in seen.items()}
    return v[at], statics(station) + push * v[station], state[0]

def strip(pieces, extra, cuts, slim):
    """A link as a thin strip of plane-stress elements for CalculiX, one through the depth.

    The section is the same throughout, length / slim deep; each piece gets its EI by its own E.
    CPS8R will not do: CalculiX 2.20 gives twice the right folding load with it (plain bar tried).
    Column i has nodes 5i+1 (low), 5i+2 (mid depth), 5i+3 (high); 5i+4 and 5i+5 lie halfway on.
    """
    x, ei = grid(pieces, extra, cuts)
    side, end = x[-1] / slim, 5 * len(ei) + 2
    text = ["*NODE, NSET=ALL"]
    text += [f"{5*i+1+j},{v:.12e},{side*(j-1)/2:.12e}" for i, v in enumerate(x) for j in range(3)]
    half = enumerate((x[1:] + x[:-1]) / 2)
    text += [f"{5*i+4+j},{v:.12e},{side*(2*j-1)/2:.12e}" for i, v in half for j in range(2)]
    for i, value in enumerate(ei):
        corners = [i + 1, *(5 * i + j for j in (1, 6, 8, 3, 4, 7, 5, 2))]
        text += [f"*ELEMENT, TYPE=CPS8, ELSET=E{i}", ",".join(map(str, corners)),
                 f"*MATERIAL, NAME=M{i}", "*ELASTIC", f"{value * 12 / side**4:.12e},0",
                 f"*SOLID SECTION, ELSET=E{i}, MATERIAL=M{i}", f"{side:.12e}"]
    return x, end, [*text, "*BOUNDARY", "2,1,2", f"{end},2,2"]

def calculix(pieces, push, strike, at, station, slim, folder):
    """Deflection, pushed deflection, pushed moment and folding load of one strip by CalculiX."""
    x, end, text = strip(pieces, [at, station], 32, slim)
    hit, look = (5 * int(np.argmin(abs(x - place))) + 2 for place in (at, station))
    side_force = ["*STATIC", "*CLOAD, OP=NEW", f"{hit},2,{-strike:.12e}", "*NODE PRINT, NSET=ALL", "U", "*END STEP"]
    along = ["*CLOAD, OP=NEW", f"{end},1,{-push:.12e}", "*END STEP"]
    # A perturbation step bends the strip with the stress of the push before it.
    bend = [*text, "*STEP", *side_force, "*STEP", "*STATIC", *along, "*STEP, PERTURBATION", *side_force]
    fold = [*text, "*STEP", "*BUCKLE", "1,1e-6", *along]
    for name, lines in (("bend", bend), ("fold", fold)):
        Path(folder, name + ".inp").write_text("\n".join(lines) + "\n")
        subprocess.run(["ccx", name], cwd=folder, check=True, stdout=subprocess.DEVNULL)
    _, first, *_, final = Path(folder, "bend.dat").read_text().split("displacements")
    still, pushed = ({int(w[0]): -float(w[2]) for w in map(str.split, part.splitlines())
                      if len(w) == 4 and w[0].isdigit()} for part in (first, final))
    factor = float(Path(folder, "fold.dat").read_text().split()[-1])
    # CalculiX gives the bent shape; the moment follows from statics on that shape.
    moment = strike * ((x[-1] - at) / x[-1] * station - max(station - at, 0)) + push * pushed[look]
    return np.array([still[hit], pushed[hit], moment, push * factor])

def calculix_without_shear(*load):
    """Shear adds an amount that goes with the depth squared; two depths let it be taken out."""
    with tempfile.TemporaryDirectory() as folder:
        thick, thin = (calculix(*load, slim, folder) for slim in (150, 150 * math.sqrt(2)))
    return 2 * thin - thick

def outline(radius, half_flat, count):
    """A circle, or a circle between two flats, as points; flat corners are exact points."""
    if half_flat is None:
        turns = np.arange(count) * 2 * math.pi / count
    else:
        arc = math.asin(half_flat / radius) * np.linspace(-1, 1, count // 2 + 1)
        turns = np.concatenate([arc, arc + math.pi])
    return [(radius * math.cos(t), radius * math.sin(t)) for t in turns]

def section(outside, bore, flat, count):
    """Area and second moments (weak, strong) by sectionproperties, worked in mm."""
    holes = [outline(bore * 500, None, count)] if bore else []
    shape = Geometry(Polygon(outline(outside * 500, flat and flat * 500, count), holes))
    shape.create_mesh([(outside * 1000 / 30) ** 2])
    sec = Section(shape)
    sec.calculate_geometric_properties()
    ixx, iyy, _ = sec.get_ic()
    return np.array([sec.get_area() * 1e-6, min(ixx, iyy) * 1e-12, max(ixx, iyy) * 1e-12])

def true_section(outside, bore, flat):
    """The same by scipy's quadrature up the height (y = r sin t), only to check the values."""
    r, turn = outside / 2, math.asin(flat / outside) if flat else math.pi / 2
    c, s = (lambda t: r * math.cos(t)), (lambda t: r * math.sin(t))
    parts = (lambda t: 4 * c(t)**2), (lambda t: 4 * c(t)**2 * s(t)**2), (lambda t: 4 / 3 * c(t)**4)
    whole = [quad(f, 0, turn, epsrel=1e-12, epsabs=0)[0] for f in parts]
    return np.array(whole) - [math.pi / 4 * bore**2, ring(bore), ring(bore)]

def off(a, b):
    return float(np.max(np.abs(np.asarray(a) / np.asarray(b) - 1)))

def write(name, head, rows):
    with open(Path(__file__).with_name(name), "w", newline="") as out:
        csv.writer(out, lineterminator="\n").writerows([head.split(), *rows])

def make_links(rng):
    rows, worst = [], {}
    for n in range(LINKS):
        name, pieces = f"L{n + 1:02}", draw_link(rng, n >= LINKS - SLENDER)
        edges = edges_of(pieces).tolist()
        total = edges[-1]
        fold = folding_load(pieces, 2 * CUTS)
        push, strike = rng.uniform(0.02, 0.85) * fold, 500 * 120 ** rng.random()
        at = rng.uniform(0.1, 0.9) * total
        if n % 4 == 0:          # now and then exactly at a step
            at = rng.choice([x for x in edges if 0.1 * total <= x <= 0.9 * total] or [at])
        load = (strike, at, at if n % 6 == 5 else rng.uniform(0.05, 0.95) * total)
        fine, coarse = ([pynite(pieces, 0, *load, c)[0], *pynite(pieces, push, *load, c), folding_load(pieces, c)]
                        for c in (2 * CUTS, CUTS))
        root = brentq(lambda p: shooting(pieces, p, 0, *load[1:])[2], 0.9 * fold, 1.1 * fold, xtol=1e-9 * fold)
        exact = [shooting(pieces, 0, *load)[0], *shooting(pieces, push, *load)[:2], root]
        checks = [("mesh", coarse), ("shooting", exact)]
        if n % 3 == 2:          # CalculiX is slower, so every third link
            checks.append(("calculix", calculix_without_shear(pieces, push, *load)))
        for kind, other in checks:
            for what, a, b in zip(COLUMNS, other, fine):
                key = f"{kind}: {what}"
                worst[key] = max(worst.get(key, (0.0, "")), (off(a, b), name))
        numbers = map(float, (push, strike, at, *fine[:2], load[2], *fine[2:]))
        rows.append([name, ";".join(f"{a!r}:{b!r}" for a, b in pieces), *map(repr, numbers)])
        print(name, {k: f"{off(o, fine):.1e}" for k, o in checks}, f"push/folding {push / fold:.2f}", flush=True)
    write("links.csv", "id pieces push_N strike_N at_m deflection_m pushed_deflection_m "
          "moment_station_m pushed_moment_Nm folding_N", rows)
    return worst

def make_sections(rng):
    rows, worst = [], {"sections: polygon": (0.0, ""), "sections: quadrature": (0.0, "")}
    for n in range(32):
        name, flats = f"S{n + 1:02}", n >= 16
        outside = rng.uniform(0.009, 0.076)
        flat = outside * rng.uniform(0.7, 0.95) if flats else None
        bore = 0.0 if n % 3 == 0 else rng.uniform(0.2, 0.85) * (flat or outside)
        one, two, four = (section(outside, bore, flat, c) for c in (128, 256, 512))
        # A polygon's error falls with the square of its points, so the next term can be taken out.
        value, check = (4 * four - two) / 3, (4 * two - one) / 3
        for key, other in (("sections: polygon", check), ("sections: quadrature", true_section(outside, bore, flat))):
            worst[key] = max(worst[key], (off(value, other), name))
        rows.append([name, repr(outside), repr(bore), repr(flat) if flats else "", *map(repr, map(float, value))])
    write("sections.csv", "id outside_m bore_m across_flats_m area_m2 "
          "second_moment_weak_m4 second_moment_strong_m4", rows)
    return worst

if __name__ == "__main__":
    links = make_links(random.Random(SEED))
    for what, (value, name) in {**links, **make_sections(random.Random(SEED + 1))}.items():
        print(f"{what:32} worst {value:.1e} at {name}")
