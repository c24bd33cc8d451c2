"""Reference answers for tests/domain/batch, by scipy. Run: python3 scripts/reference/batch.py

Writes tests/fixtures/batch/scipy.json: ranges of lead phases in roasted charges (linear programmes, HiGHS) and the
nearest batches of a few materials by two metrics (SLSQP from many starts). All inputs are invented; the atomic
weights are IUPAC 2021 (Prohaska et al. 2022, doi 10.1515/pac-2019-0603).
"""

import json
import pathlib
import sys

import numpy as np
import scipy
from scipy.optimize import linprog, minimize

PB, S, O = 207.2, 32.06, 15.999
M = dict(SI=28.085, AL=26.9815384, C=12.011, H=1.008, CA=40.078, K=39.098, FE=55.845, MN=54.938)
PHASES = [(1, 1, 0), (1, 1, 4), (2, 1, 5), (3, 1, 6), (5, 1, 8), (1, 0, 1)]
MASS = np.array([p * PB + s * S + o * O for p, s, o in PHASES])
LEAD = np.array([p for p, _, _ in PHASES], float)
SULFUR = np.array([s for _, s, _ in PHASES], float)


def roast(galena, inert, out, weighing, sulfur=None):
    """Ranges of grams of each phase and of moles of sulfur kept."""
    moles = galena / (PB + S)
    a_ub = [MASS, -MASS, SULFUR]
    b_ub = [out + weighing - inert, -(out - weighing - inert), moles]
    if sulfur:
        low, high = max(0, sulfur[0] - 2 * sulfur[1]), sulfur[0] + 2 * sulfur[1]
        row = SULFUR * S * 100 / out
        a_ub += [row, -row]
        b_ub += [high, -low]

    def best(goal):
        r = linprog(goal, A_ub=np.array(a_ub), b_ub=b_ub, A_eq=[LEAD], b_eq=[moles], method="highs")
        assert r.status == 0, r.message
        return r.fun

    goals = [np.eye(6)[i] * MASS[i] for i in range(6)] + [SULFUR]
    return [[float(best(g)), float(-best(-g))] for g in goals]


def oxide(form):
    table = dict(
        PbO=PB + O, SiO2=M["SI"] + 2 * O, Al2O3=2 * M["AL"] + 3 * O, CaO=M["CA"] + O, K2O=2 * M["K"] + O,
        Fe2O3=2 * M["FE"] + 3 * O, MnO=M["MN"] + O,
    )
    return table[form]


def shelf():
    """Grams of oxide from one gram: cerussite, quartz, kaolinite, potash feldspar, calcite, hematite, pyrolusite."""
    g = oxide
    kaolin = 2 * M["AL"] + 2 * M["SI"] + 9 * O + 4 * M["H"]
    spar = M["K"] + M["AL"] + 3 * M["SI"] + 8 * O
    return {
        "cerussite": {"PbO": g("PbO") / (PB + M["C"] + 3 * O)},
        "quartz": {"SiO2": 1.0},
        "kaolinite": {"Al2O3": g("Al2O3") / kaolin, "SiO2": 2 * g("SiO2") / kaolin},
        "potash-feldspar": {
            "K2O": g("K2O") / 2 / spar, "Al2O3": g("Al2O3") / 2 / spar, "SiO2": 3 * g("SiO2") / spar,
        },
        "calcite": {"CaO": g("CaO") / (M["CA"] + M["C"] + 3 * O)},
        "hematite": {"Fe2O3": 1.0},
        "pyrolusite": {"MnO": g("MnO") / (M["MN"] + 2 * O)},
    }


def nearest(target, ids, metric, floor=0.01, seed=1):
    parts = list(target)
    a = np.array([[shelf()[i].get(p, 0.0) for i in ids] for p in parts])
    t = np.array([target[p] for p in parts], float)
    t = 100 * t / t.sum()
    sigma = np.maximum(0.05, 0.05 * t)

    def cost(x):
        y = a @ x
        y = 100 * y / y.sum()
        if metric == "error":
            return float((((y - t) / sigma) ** 2).sum())
        r = np.log((y + floor) / (t + floor))
        return float(((r - r.mean()) ** 2).sum())

    rng = np.random.default_rng(seed)
    best = None
    for _ in range(60):
        x0 = rng.dirichlet(np.ones(len(ids))) * 100
        r = minimize(cost, x0, method="SLSQP", bounds=[(0, 100)] * len(ids),
                     constraints=[dict(type="eq", fun=lambda x: x.sum() - 100)],
                     options=dict(maxiter=2000, ftol=1e-14))
        if best is None or r.fun < best.fun:
            best = r
    return dict(target=target, ids=ids, metric=metric, x=[float(v) for v in best.x], value=float(best.fun))


ROASTS = [
    dict(galena=100, inert=0, out=105, weighing=0.1),
    dict(galena=100, inert=0, out=98.5, weighing=0.05),
    dict(galena=92, inert=8, out=104, weighing=0.2),
    dict(galena=100, inert=0, out=105, weighing=0.1, sulfur=[5.0, 0.2]),
    dict(galena=70, inert=30, out=100, weighing=0.1),
]
TARGETS = [
    ({"PbO": 60, "SiO2": 30, "Al2O3": 6, "Fe2O3": 4}, ["cerussite", "quartz", "kaolinite", "hematite"]),
    ({"PbO": 45, "SiO2": 30, "Al2O3": 12, "K2O": 5, "CaO": 3, "MnO": 5},
     ["cerussite", "quartz", "potash-feldspar", "calcite", "pyrolusite"]),
    ({"PbO": 40, "SiO2": 20, "Al2O3": 18, "K2O": 8, "MnO": 14},
     ["cerussite", "quartz", "kaolinite", "potash-feldspar", "pyrolusite"]),
]

out = {
    "_meta": {"python": sys.version.split()[0], "scipy": scipy.__version__, "numpy": np.__version__,
              "script": "scripts/reference/batch.py", "note": "inputs invented"},
    "roasts": [dict(input=r, ranges=roast(**r)) for r in ROASTS],
    "nearest": [nearest(t, ids, m) for t, ids in TARGETS for m in ("distance", "error")],
}
path = pathlib.Path(__file__).resolve().parents[2] / "tests/fixtures/batch/scipy.json"
path.write_text(json.dumps(out, indent=1) + "\n")
