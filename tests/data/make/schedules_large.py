"""Twenty larger scheduling instances (13 to 16 set-ups, five days, four locations) with proven optima.

The problem, the drawing and the outside solver (CP-SAT of OR-Tools, Apache-2.0) are those of `schedules.py`; only the
sizes differ. Each instance has a seed of its own, which is its id, and five instances are kept of each size; what is not
proved within the time limit is left out.

    python schedules_large.py --out ../schedules_large.json
"""
import argparse, json, random
import schedules


def draw(seed, count):
    """As `schedules.draw`, with the three sizes given instead of drawn."""
    rng = random.Random(seed)
    plain, sizes = rng.randint, iter([4, 5, count])
    rng.randint = lambda a, b: next(sizes, None) or plain(a, b)
    return schedules.draw(rng, seed)


def keep(count, seconds, wanted=5):
    rows, seed = [], count * 1000
    while len(rows) < wanted:
        seed += 1
        instance = draw(seed, count)
        best = schedules.solve(instance, seconds)
        print(seed, best, flush=True)
        if best is not None:
            rows.append(instance | {"optimum": best})
    return rows


if __name__ == "__main__":
    parser = argparse.ArgumentParser()
    parser.add_argument("--seconds", type=float, default=120)
    parser.add_argument("--out", required=True)
    args = parser.parse_args()
    import ortools
    rows = [row for count in (13, 14, 15, 16) for row in keep(count, args.seconds)]
    head = {"what": "larger scheduling instances with proven optima; the problem is stated in make/schedules.py",
            "solver": f"OR-Tools CP-SAT {ortools.__version__}", "licence": "CC0-1.0", "instances": rows}
    with open(args.out, "w") as f:
        f.write(json.dumps(head, separators=(",", ":")).replace('{"id"', '\n{"id"') + "\n")
