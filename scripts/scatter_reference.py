"""Reference values for crates/scatter/tests/data, by general-purpose libraries (pip install scipy shapely numpy)."""
import csv, math, sys
import numpy as np, scipy, shapely
from scipy.stats import qmc
from shapely.geometry import Polygon, box

out = sys.argv[1]
rng = np.random.default_rng(8)

def star(n, size):
    angles = np.sort(rng.uniform(0, 2 * math.pi, n))
    radii = rng.uniform(0.3, 1.0, n) * size
    return [(round(r * math.cos(a), 2), round(r * math.sin(a), 2)) for a, r in zip(angles, radii)]

with open(f"{out}/polygon_pairs.csv", "w", newline="") as f:
    f.write(f"# shapely {shapely.__version__}; scripts/scatter_reference.py; mm. one and other: x y x y ...\n")
    w = csv.writer(f, lineterminator="\n"); w.writerow(["one", "other", "distance", "overlap", "area_of_one", "share_in_20x20"])
    kept = 0
    while kept < 80:
        a = Polygon(star(rng.integers(3, 14), 12)); b = Polygon(star(rng.integers(3, 14), 12))
        if not (a.is_valid and b.is_valid and a.area > 1 and b.area > 1): continue
        b = shapely.affinity.translate(b, round(rng.uniform(-25, 25), 2), round(rng.uniform(-25, 25), 2))
        flat = lambda p: " ".join(f"{v:.2f}" for c in list(p.exterior.coords)[:-1] for v in c)
        w.writerow([flat(a), flat(b), f"{a.distance(b):.6f}", int(a.intersects(b)), f"{a.area:.6f}", f"{b.intersection(box(0,0,20,20)).area / b.area:.6f}"])
        kept += 1

def measures(points, size, r):
    n = len(points)
    d = np.hypot(*(points[:, None] - points[None]).transpose(2, 0, 1)); np.fill_diagonal(d, 9e9)
    inner = ((points > 1.5 * r) & (points < size - 1.5 * r)).all(axis=1)
    near = d.min(axis=1)[inner]
    ce = near.mean() * 2 * math.sqrt(n / size**2)
    low, peak = [], []
    for i in range(-40, 41):
        for j in range(-40, 41):
            f = math.hypot(i, j) / size
            band = low if 0 < f < 0.5 / r else peak if 0.9 / r < f < 1.2 / r else None
            if band is None or i == 0 or j == 0: continue   # the axes hold the sheet's own outline
            band.append(abs(np.exp(-2j * math.pi * (points @ np.array([i, j])) / size).sum()) ** 2 / n)
    return n, near.min(), ce, np.mean(low), np.mean(peak)

with open(f"{out}/scipy_poisson_disk.csv", "w", newline="") as f:
    f.write(f"# scipy {scipy.__version__} stats.qmc.PoissonDisk, 12 x 12, r = 1, ncandidates 30; scripts/scatter_reference.py\n")
    f.write("# points, least distance, Clark-Evans index of points 1.5 r inside, mean power at 0 < f < 0.5/r and 0.9/r < f < 1.2/r off the axes\n")
    w = csv.writer(f, lineterminator="\n"); w.writerow(["seed", "points", "least", "clark_evans", "low_power", "peak_power"])
    for seed in range(12):
        p = qmc.PoissonDisk(d=2, radius=1 / 12, ncandidates=30, rng=np.random.default_rng(seed)).fill_space() * 12
        n, least, ce, low, peak = measures(p, 12, 1)
        w.writerow([seed, n, f"{least:.4f}", f"{ce:.4f}", f"{low:.4f}", f"{peak:.4f}"])
