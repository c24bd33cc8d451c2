"""The same draws in numpy: 10,000 draws of one tile against 50 groups. Reads the problem as JSON from stdin, prints ms.

Every step is what api/domain/uncertainty does: normals for paint and slip, closure, slip drawn off, centred
log-ratios, scores, distance and D2 to every group, and the 2.5, 50 and 97.5 % points of both; best of 5 runs.
"""
import json
import sys
import time

import numpy as np

problem = json.load(sys.stdin)
draws = problem["draws"]
paint, paint_sigma = np.array(problem["paint"]), np.array(problem["paintSigma"])
slip, slip_sigma = np.array(problem["slip"]), np.array(problem["slipSigma"])
axes = np.array(problem["axes"])
means = np.array(problem["means"])
inverse = np.array(problem["inverse"])
loadings, origin = np.array(problem["loadings"]), np.array(problem["origin"])


def run(rng):
    p = paint + paint_sigma * rng.standard_normal((draws, paint.size))
    s = slip + slip_sigma * rng.standard_normal((draws, slip.size))
    f = problem["f"] + problem["fSigma"] * rng.standard_normal((draws, 1))
    p *= paint.sum() / p.sum(axis=1, keepdims=True)
    s *= slip.sum() / s.sum(axis=1, keepdims=True)
    left = p - f * s
    left *= 100 / left.sum(axis=1, keepdims=True)
    y = np.log(left)
    y -= y.mean(axis=1, keepdims=True)
    scores = (y - origin) @ loadings.T
    found = []
    distances = np.empty((means.shape[0], draws))
    d2 = np.empty((means.shape[0], draws))
    for g in range(means.shape[0]):
        centred = y - means[g]
        distances[g] = np.sqrt((centred**2).sum(axis=1))
        d2[g] = (((centred @ axes.T) @ inverse[g].T) ** 2).sum(axis=1)
    found.append(np.quantile(distances, [0.025, 0.5, 0.975], axis=1))
    found.append(np.quantile(d2, [0.025, 0.5, 0.975], axis=1))
    nearest = np.bincount(distances.argmin(axis=0), minlength=means.shape[0])
    return found, nearest, np.cov(scores.T)


best = 1e9
for repeat in range(5):
    rng = np.random.default_rng(repeat)
    start = time.perf_counter()
    found, nearest, cov = run(rng)
    best = min(best, time.perf_counter() - start)
print(json.dumps({"ms": 1000 * best, "version": np.__version__, "median": found[1][1][:3].tolist()}))
