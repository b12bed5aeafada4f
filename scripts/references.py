#!/usr/bin/env python3
"""Runs general-purpose references beside the fixed-piece engine on the same instances and prints ratios.

    python3 scripts/references.py [--bench ../shared/bench] [--limit SECONDS] [--out FILE] [--docs FILE] [NAME ...]

HiGHS and OR-Tools CP-SAT solve one plate/cut flow model (Furini, Malaguti, Thomopulos 2016, after Silva, Alvelos,
Valerio de Carvalho 2010; from memory); rectpack runs its guillotine rules under several orders. They are installed
by name with pip into `target/references`. All times are processor seconds; the limit is of the wall clock. Each finished row is kept in the results file, and a later run goes on
from there. `--docs` writes the table between its marks in a document.

`--packing TABLE` runs rectpack alone on all rows of free cuts of the engine's table (`docs/fixed_table.csv`) and adds
its best to `docs/rectpack.csv`, resuming like the rest. No test needs any of this.
"""

import argparse
import csv
import itertools
import json
import math
import os
import subprocess
import sys
import time
from pathlib import Path

HOUSE = Path(__file__).resolve().parent.parent
PLACE = HOUSE / "target" / "references"
PACKAGES = ["highspy", "ortools", "rectpack"]
# A moderate set: those of the bench's own baseline, and small ones of the other families.
NAMES = """hr/2 hr/OF2 hr/A1 hr/CHL2 hr/STS4s gcut/gcut1 gcut/gcut2 gcut/gcut3 gcut/gcut5 gcut/gcut6
ngcutap/ngcutap11 herz/Herz okp/okp1 csp-c/OF2 csp-c/Hchl8s csp-c/A5
bwmv/CLASS01_020_01 bwmv/CLASS01_020_04 bwmv/CLASS03_020_01 craft/craft-01-bases
craft/craft-07-mats craft/craft-09-mats craft/craft-14-shelf craft/craft-17-small craft/craft-24-metric
craft/craft-25-batch craft/craft-27-pick ht-var/M1a abmr/ABMR1 abmr/ABMR7""".split()
MOST_VARIABLES = 150_000
# A first run shorter than so many seconds is made so many times, for the median.
SHORT = 0.05
REPEATS = 31
HEAD = ["instance", "sense", "best known", "ours", "our bound", "our s", "highs", "highs bound", "highs s",
        "cp-sat", "cp-sat bound", "cp-sat s", "rectpack", "rectpack s", "variables"]


def install():
    """Go on inside a Python that has the packages."""
    python = PLACE / "bin" / "python"
    if not python.exists():
        subprocess.check_call([sys.executable, "-m", "venv", str(PLACE)])
        subprocess.check_call([str(python), "-m", "pip", "-q", "install", *PACKAGES])
    if Path(sys.prefix).resolve() != PLACE.resolve():
        os.execv(str(python), [str(python), *sys.argv])


def beside():
    """The bench beside the project, or beside the place of its worktrees."""
    places = [HOUSE.parent / "shared" / "bench", HOUSE.parent.parent / "shared" / "bench"]
    return next((place for place in places if place.is_dir()), places[0])


def instances(bench):
    found = {}
    for path in sorted((bench / "data").glob("*.jsonl")):
        for line in path.read_text().splitlines():
            one = json.loads(line)
            if "pieces" in one:
                found[f"{one['family']}/{one['name']}"] = one
    for path in sorted((bench / "data" / "craft").glob("*.json")):
        one = json.loads(path.read_text())
        found[f"{one['family']}/{one['name']}"] = one
    return found


def rows_of(path):
    """The rows of a file of the engine: free cuts, as the instance itself says about turning and numbers."""
    return [row for row in csv.DictReader(path.open())]


def sums(sides, length):
    """All sums of sides up to a length; each side with how often it may come."""
    reached = {0}
    for side, most in sides:
        layer = set(reached)
        for _ in range(most):
            layer = {s + side for s in layer if s + side <= length} - reached
            if not layer:
                break
            reached |= layer
    return sorted(reached)


def model(one, turn, limited):
    """The plate/cut flow model: plates, cuts (plate, children), pieces (plate, item); None if it is too large."""
    import bisect

    items = []
    for k, piece in enumerate(one["pieces"]):
        ways = {(piece["w"], piece["h"])}
        if turn == "yes" or (turn == "per piece" and piece.get("rotate")):
            ways.add((piece["h"], piece["w"]))
        items.append((k, sorted(ways), piece.get("demand") if limited else None))
    plates, cuts, keeps, roots = {}, [], [], []
    grids = []
    for sheet in one["sheets"]:
        def sides(axis):
            for _, ways, demand in items:
                for way in ways:
                    yield way[axis], demand if demand is not None else 10**6
        grids.append((sums(sides(0), sheet["w"]), sums(sides(1), sheet["h"])))
    xs = sorted(set(itertools.chain.from_iterable(g[0] for g in grids)))
    ys = sorted(set(itertools.chain.from_iterable(g[1] for g in grids)))

    def down(points, length):
        return points[bisect.bisect_right(points, length) - 1]

    smallest = [min(w[0] for _, ways, _ in items for w in ways), min(w[1] for _, ways, _ in items for w in ways)]

    def plate(w, h):
        w, h = down(xs, w), down(ys, h)
        if w < smallest[0] or h < smallest[1]:
            return None
        if not any(a <= w and b <= h for _, ways, _ in items for a, b in ways):
            return None
        if (w, h) not in plates:
            plates[(w, h)] = len(plates)
            todo.append((w, h))
        return plates[(w, h)]

    todo = []
    for sheet in one["sheets"]:
        roots.append(plate(sheet["w"], sheet["h"]))
    while todo:
        w, h = todo.pop()
        here = plates[(w, h)]
        # Cuts up to the half do: a smaller part may always come first. What is larger than both halves is trimmed.
        for k, ways, _ in items:
            if any(w // 2 < a <= w and h // 2 < b <= h for a, b in ways):
                keeps.append((here, k))
        seen = set()
        for p in xs:
            if 0 < p <= w // 2:
                children = tuple(sorted(c for c in (plate(p, h), plate(w - p, h)) if c is not None))
                if children and children not in seen:
                    seen.add(children)
                    cuts.append((here, children))
        for p in ys:
            if 0 < p <= h // 2:
                children = tuple(sorted(c for c in (plate(w, p), plate(w, h - p)) if c is not None))
                if children and children not in seen:
                    seen.add(children)
                    cuts.append((here, children))
        if len(cuts) > MOST_VARIABLES:
            return None
    return items, len(plates), cuts, keeps, roots


def flow(one, flows):
    """Columns of the model as (objective, upper bound, {row: coefficient}) and rows as (lower, upper)."""
    items, plates, cuts, keeps, roots = flows
    most_value = one["kind"] == "knapsack"
    rows = [(0, math.inf)] * plates + [
        ((piece.get("min") or 0) if most_value else demand, math.inf if demand is None else demand)
        for (_, _, demand), piece in zip(items, one["pieces"])
    ]
    columns = []
    for sheet, root in zip(one["sheets"], roots):
        copies = 1 if most_value else sheet["copies"]
        if root is not None:
            columns.append((0 if most_value else sheet["cost"], copies, {root: 1}))
    for here, children in cuts:
        entry = {here: -1}
        for child in children:
            entry[child] = entry.get(child, 0) + 1
        columns.append((0, None, {row: n for row, n in entry.items() if n}))
    for here, k in keeps:
        columns.append((one["pieces"][k]["value"] if most_value else 0, items[k][2], {here: -1, plates + k: 1}))
    if not most_value:
        # A piece too many may be thrown away.
        rows = rows[:plates] + [(low, math.inf) for low, _ in rows[plates:]]
    return most_value, rows, columns


def highs(one, flows, limit):
    import highspy

    most_value, rows, columns = flow(one, flows)
    solver = highspy.Highs()
    for name, value in [("output_flag", False), ("threads", 1), ("time_limit", float(limit))]:
        solver.setOptionValue(name, value)
    lp = highspy.HighsLp()
    lp.num_col_, lp.num_row_ = len(columns), len(rows)
    lp.sense_ = highspy.ObjSense.kMaximize if most_value else highspy.ObjSense.kMinimize
    lp.col_cost_ = [c for c, _, _ in columns]
    lp.col_lower_ = [0] * len(columns)
    lp.col_upper_ = [highspy.kHighsInf if u is None or u == math.inf else u for _, u, _ in columns]
    lp.row_lower_ = [low for low, _ in rows]
    lp.row_upper_ = [highspy.kHighsInf if up == math.inf else up for _, up in rows]
    lp.integrality_ = [highspy.HighsVarType.kInteger] * len(columns)
    starts, index, value = [0], [], []
    for _, _, entry in columns:
        for row, n in entry.items():
            index.append(row)
            value.append(n)
        starts.append(len(index))
    lp.a_matrix_.format_ = highspy.MatrixFormat.kColwise
    lp.a_matrix_.start_, lp.a_matrix_.index_, lp.a_matrix_.value_ = starts, index, value
    times = []
    while not times or (times[0] < SHORT and len(times) < REPEATS):
        solver.clearModel()
        solver.passModel(lp)
        start = time.process_time()
        solver.run()
        times.append(time.process_time() - start)
    seconds = sorted(times)[len(times) // 2]
    info = solver.getInfo()
    found = info.primal_solution_status == 2
    bound = info.mip_dual_bound
    bound = None if not math.isfinite(bound) else (math.floor(bound + 1e-6) if most_value else math.ceil(bound - 1e-6))
    return round(info.objective_function_value) if found else None, bound, seconds


def cp_sat(one, flows, limit):
    from ortools.sat.python import cp_model

    most_value, rows, columns = flow(one, flows)
    solver, model_ = cp_model.CpSolver(), cp_model.CpModel()
    large = 10**5
    terms = [[] for _ in rows]
    objective = []
    for cost, upper, entry in columns:
        x = model_.NewIntVar(0, large if upper is None or upper == math.inf else upper, "")
        if cost:
            objective.append(cost * x)
        for row, n in entry.items():
            terms[row].append(n * x)
    for (low, up), parts in zip(rows, terms):
        if parts:
            model_.AddLinearConstraint(sum(parts), low, 10**9 if up == math.inf else up)
    (model_.Maximize if most_value else model_.Minimize)(sum(objective))
    solver.parameters.max_time_in_seconds = limit
    solver.parameters.num_workers = 1
    start = time.process_time()
    status = solver.Solve(model_)
    seconds = time.process_time() - start
    found = status in (cp_model.OPTIMAL, cp_model.FEASIBLE)
    return round(solver.ObjectiveValue()) if found else None, round(solver.BestObjectiveBound()), seconds


def packed(one, turn, limited):
    """The best that rectpack's guillotine rules and orders give; whole-instance turning only."""
    import rectpack
    from rectpack import guillotine

    rules = [getattr(guillotine, f"Guillotine{choice}{split}")
             for choice in ("Baf", "Bssf", "Blsf") for split in ("Sas", "Las", "Slas", "Llas", "Maxas", "Minas")]
    orders = [None, *(getattr(rectpack, f"SORT_{n}") for n in ("AREA", "PERI", "DIFF", "SSIDE", "LSIDE", "RATIO"))]
    most_value = one["kind"] == "knapsack"
    start, best = time.process_time(), None
    for rule, order in itertools.product(rules, orders):
        packer = rectpack.newPacker(mode=rectpack.PackingMode.Offline, bin_algo=rectpack.PackingBin.BBF,
                                    pack_algo=plain(rule), rotation=turn == "yes",
                                    sort_algo=order or rectpack.SORT_NONE)
        for k, piece in enumerate(one["pieces"]):
            room = (one["sheets"][0]["w"] * one["sheets"][0]["h"]) // (piece["w"] * piece["h"])
            demand = piece.get("demand") if limited else None
            for _ in range(room if demand is None else min(demand, room) if most_value else demand):
                packer.add_rect(piece["w"], piece["h"], rid=k)
        for s, sheet in enumerate(one["sheets"]):
            count = 1 if most_value else sheet["copies"] if sheet["copies"] is not None else 400
            packer.add_bin(sheet["w"], sheet["h"], count=count, bid=s)
        packer.pack()
        placed = packer.rect_list()
        if most_value:
            value = sum(one["pieces"][rid]["value"] for *_, rid in placed)
            best = value if best is None else max(best, value)
        elif len(placed) == sum(piece["demand"] for piece in one["pieces"]):
            value = sum(one["sheets"][used.bid]["cost"] for used in packer)
            best = value if best is None else min(best, value)
    return best, time.process_time() - start


def plain(rule):
    """Without merging of free rectangles: merged ones can break edge-to-edge cutting."""
    def make(*args, **kwargs):
        return rule(*args, merge=False, **kwargs)
    return make


def ours(names, bench, engine):
    """The engine's own rows, measured now, with the time until the proof.

    `engine` is a built `fixed_table`, else cargo builds one.
    """
    out = PLACE / "ours.csv"
    out.unlink(missing_ok=True)
    built = ["cargo", "run", "--release", "-q", "-p", "cutting", "--example", "fixed_table", "--"]
    call = [*([str(engine)] if engine else built), "--bench", str(bench), "--results", str(out), "--proof"]
    for name in names:
        call += ["--only", name]
    subprocess.check_call(call, cwd=HOUSE, stdout=subprocess.DEVNULL)
    found = {}
    for row in rows_of(out):
        # One row an instance: free cuts, limited, turning as written where there is a choice.
        better = (row["limited"] == "yes", row["turn"] != "yes")
        if row["stages"] == "free" and (row["instance"] not in found or better > found[row["instance"]][0]):
            found[row["instance"]] = (better, row)
    return {name: row for name, (_, row) in found.items()}


def packing(table, bench, out):
    """The best of rectpack's guillotine rules on all rows of free cuts of the engine's table."""
    head = ["instance", "turn", "limited", "sense", "rectpack"]
    key = lambda row: tuple(row[name] for name in head[:3])
    done = {key(row) for row in csv.DictReader(out.open())} if out.exists() else set()
    known = instances(bench)
    with out.open("a", newline="") as file:
        writer = csv.writer(file, lineterminator="\n")
        if not done:
            writer.writerow(head)
        for row in rows_of(table):
            if row["stages"] == "free" and key(row) not in done and row["instance"] in known:
                best, _ = packed(known[row["instance"]], row["turn"], row["limited"] == "yes")
                writer.writerow([*key(row), row["sense"], "" if best is None else best])
                file.flush()


def text(value):
    return "-" if value in (None, "") else str(value)


def table(rows):
    lines = [
        "| instance | sense | best known | ours [bound], s | HiGHS [bound], s | CP-SAT [bound], s | rectpack, s | HiGHS / ours, time |",
        "|---|---|---:|---:|---:|---:|---:|---:|",
    ]
    for r in rows:
        def cell(name):
            if not r[f"{name} s"]:
                return "model too large"
            bound = f" [{text(r[f'{name} bound'])}]"
            seconds = float(r[f"{name} s"])
            return f"{text(r[name])}{bound}, {seconds:.2f}" if seconds >= 0.05 else f"{text(r[name])}{bound}, {seconds:.5f}"
        ours_s = max(float(r["our s"]), 0.000001)
        ratio = f"{float(r['highs s']) / ours_s:.0f}" if r["highs s"] else "-"
        if r["highs s"] and not (r["highs"] and r["highs"] == r["highs bound"]):
            ratio = f"over {ratio}"
        lines.append(
            f"| {r['instance']} | {r['sense']} | {r['best known']} | {r['ours']} [{r['our bound']}], {float(r['our s']):.6f} "
            f"| {cell('highs')} | {cell('cp-sat')} | {text(r['rectpack'])}, {float(r['rectpack s']):.2f} | {ratio} |"
        )
    return "\n".join(lines)


BEGIN = "<!-- references: begin, written by `python3 scripts/references.py` -->"
END = "<!-- references: end -->"


def main():
    parser = argparse.ArgumentParser()
    parser.add_argument("--bench", type=Path, default=beside())
    parser.add_argument("--limit", type=float, default=20)
    parser.add_argument("--out", type=Path, default=HOUSE / "docs" / "references.csv")
    parser.add_argument("--engine", type=Path)
    parser.add_argument("--docs", type=Path)
    parser.add_argument("--packing", type=Path)
    parser.add_argument("names", nargs="*", default=NAMES)
    args = parser.parse_args()
    args.names = args.names or NAMES
    install()
    if args.packing:
        return packing(args.packing, args.bench, HOUSE / "docs" / "rectpack.csv")
    done = {row["instance"]: row for row in csv.DictReader(args.out.open())} if args.out.exists() else {}
    todo = [name for name in args.names if name not in done]
    known = instances(args.bench)
    measured = ours([name for name in todo if name in known], args.bench, args.engine) if todo else {}
    for name in todo:
        if name not in known or name not in measured:
            print("no such row:", name)
            continue
        one, row = known[name], measured[name]
        turn, limited = row["turn"], row["limited"] == "yes"
        flows = model(one, turn, limited)
        h = highs(one, flows, args.limit) if flows else (None, None, "")
        c = cp_sat(one, flows, args.limit / 4) if flows else (None, None, "")
        p = packed(one, turn, limited)
        done[name] = dict(zip(HEAD, [name, row["sense"], row["best known"], row["ours"], row["our bound"],
                                     row["seconds"], *h, *c, *p, len(flows[2]) if flows else ""]))
        print(done[name], flush=True)
        with args.out.open("w", newline="") as file:
            writer = csv.DictWriter(file, HEAD)
            writer.writeheader()
            writer.writerows({k: "" if v is None else v for k, v in row.items()} for row in done.values())
    rows = [row for row in csv.DictReader(args.out.open())]
    print(table(rows))
    if args.docs:
        before, rest = args.docs.read_text().split(BEGIN)
        head = f"{time.strftime('%Y-%m-%d')}, at most {args.limit:.0f} s of the wall clock for HiGHS and a quarter for CP-SAT, one thread each; times are processor seconds, on a machine shared with other builds; a run shorter than 50 ms is the median of 31."
        args.docs.write_text(f"{before}{BEGIN}\n\n{head}\n\n{table(rows)}\n\n{END}{rest.split(END)[1]}")


if __name__ == "__main__":
    main()
