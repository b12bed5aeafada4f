"""Least squares of numpy (BSD) for reference.csv beside this file: pip install numpy; python reference_numpy.py

Forty sets of patches drawn from a seed: so many, what was seen and what is real (linear light), then numpy's factors (3), factors and
constants (6) and matrix (9, with the pull to the factors written as extra rows). Seen by our fit: crates/photo/tests/reference.rs.
"""
import pathlib
import numpy as np

RIDGE = 0.001
rng = np.random.default_rng(20261127)
lines = ["# patches; seen r,g,b each; real r,g,b each; factors; factor,constant each; matrix by rows; numpy " + np.__version__]
for case in range(40):
    n = int(rng.integers(6, 25))
    seen = rng.uniform(0.03, 0.9, (n, 3))
    camera = np.diag(rng.uniform(0.7, 1.5, 3)) + rng.uniform(-0.08, 0.08, (3, 3))
    real = seen @ camera.T + rng.uniform(-0.02, 0.02, 3) + rng.normal(0, 0.01, (n, 3))
    factors = [np.linalg.lstsq(seen[:, [c]], real[:, c], rcond=None)[0][0] for c in range(3)]
    lifted = [np.linalg.lstsq(np.c_[seen[:, c], np.ones(n)], real[:, c], rcond=None)[0] for c in range(3)]
    root = np.sqrt(RIDGE * n)
    rows = [np.linalg.lstsq(np.r_[seen, root * np.eye(3)], np.r_[real[:, c], root * factors[c] * np.eye(3)[c]], rcond=None)[0]
            for c in range(3)]
    numbers = np.r_[seen.ravel(), real.ravel(), factors, np.ravel(lifted), np.ravel(rows)]
    lines.append(",".join([str(n), *(f"{value:.12g}" for value in numbers)]))
(pathlib.Path(__file__).parent / "reference.csv").write_text("\n".join(lines) + "\n")
