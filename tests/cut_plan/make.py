"""Writes instances.csv: 1,000 random lists of blanks with their best plans, found by a general solver.

Independent of the project's code: every way to fill a bar is written out, and an integer program (HiGHS, through
scipy.optimize.milp) chooses among them. Lengths are whole numbers of a unit, so that every comparison is exact.

    python3 -m venv venv && venv/bin/pip install scipy==1.17.1 numpy==2.4.6 && venv/bin/python -B make.py

Made with Python 3.11 in about 15 minutes. A list with more than 6,000 fills, without a plan, or on which one program
takes more than 20 seconds is drawn anew: a slower machine may keep others.

Where remnants suffice, new_bars is 0, and the two lengths are those of the remnants.
"""

import csv
import random
from multiprocessing import Pool
from pathlib import Path

import numpy as np
from scipy.optimize import Bounds, LinearConstraint, milp
from scipy.sparse import csc_array

SEED = 20261130
ROWS = 1000
MOST_FILLS = 6_000
INCH_32 = 793_750
TENTH_MM = 100_000


class TooLarge(Exception):
    pass


def fills(sizes, counts, room, maximal):
    """Every way to fill a bar, or only those into which nothing more goes."""
    found, taken = [], [0] * len(sizes)

    def go(at, room):
        if at == len(sizes):
            rest = [size for size, count, had in zip(sizes, counts, taken) if had < count]
            if not maximal or all(size > room for size in rest):
                found.append(tuple(taken))
                if len(found) > MOST_FILLS:
                    raise TooLarge
            return
        for count in range(min(counts[at], room // sizes[at]), -1, -1):
            taken[at] = count
            go(at + 1, room - count * sizes[at])
        taken[at] = 0

    go(0, room)
    return found


def solve(columns, costs, rows, lows, highs):
    """The least cost of whole numbers of columns; None where there are none."""
    if not columns:
        return None
    matrix = csc_array(np.array(columns, dtype=float).T)
    result = milp(
        np.array(costs, dtype=float),
        constraints=LinearConstraint(matrix, lows, highs),
        integrality=np.ones(len(columns)),
        bounds=Bounds(0, np.inf),
        options={"mip_rel_gap": 0.0, "time_limit": 20.0},
    )
    if result.status == 2:
        return None
    if result.status != 0:
        raise TooLarge
    value = sum(round(x) * cost for x, cost in zip(result.x, costs))
    return value


def best(sizes, counts, free, bought, start):
    """Fewest bars bought, then shortest in all, then the largest piece left of one of them."""
    n = len(sizes)
    kinds = [(length, room, limit, False) for length, room, limit in free]
    kinds += [(length, room, limit, True) for length, room, limit in bought]
    kinds = [kind for kind in kinds if kind[1] >= min(sizes)]
    columns, number, lengths = [], [], []
    for index, (length, room, _, buy) in enumerate(kinds):
        for fill in fills(sizes, counts, room, True):
            columns.append(list(fill) + [1 if index == k else 0 for k in range(len(kinds))] + [int(buy), length * buy])
            number.append(int(buy))
            lengths.append(length * buy)
    limits = [np.inf if limit is None else limit for _, _, limit, _ in kinds]
    lows = np.array(list(counts) + [0] * len(kinds) + [0, 0], dtype=float)
    highs = np.array([np.inf] * n + limits + [np.inf, np.inf])
    bars = solve(columns, number, n, lows, highs)
    if bars is None:
        return None
    if bars == 0:
        return 0, 0, 0
    lows[-2] = highs[-2] = bars
    total = solve(columns, lengths, n, lows, highs)
    left = 0
    for index, (length, room, limit, buy) in enumerate(kinds):
        if not buy or (limit is not None and limit < 1):
            continue
        light = [fill for fill in fills(sizes, counts, room, False) if any(fill)]
        load = [sum(size * taken for size, taken in zip(sizes, fill)) for fill in light]
        more = [list(fill) + [1 if index == k else 0 for k in range(len(kinds))] + [1, length] for fill in light]
        all_columns = [column + [0] for column in columns] + [column + [1] for column in more]
        costs = [0] * len(columns) + load
        low = np.append(lows, 1.0)
        high = np.append(highs, 1.0)
        low[-2] = high[-2] = total
        least = solve(all_columns, costs, n, low, high)
        if least is not None:
            left = max(left, length - start - least)
    return bars, total, left


def draw(dice, index):
    inches = dice.random() < 0.75
    unit = INCH_32 if inches else TENTH_MM
    inch = 32 if inches else 254
    stock = dice.choice([144, 144, 240, 120, 96]) * inch if inches else dice.choice([30_000, 60_000, 36_600])
    kerf = dice.choice([0, 2, 2, 3, 4]) if inches else dice.choice([0, 15, 20, 32])
    trim = dice.choice([0, 0, 4, 8]) if inches else dice.choice([0, 0, 30, 50])
    grip = dice.choice([0, 0, 2, 3, 4]) * inch
    kind = index % 5
    if kind < 3:
        different, most, step = dice.randint(3, 8), 30, dice.choice([1, 2, 4])
        count = lambda: dice.choice([1, 2, 2, 2, 4])
        low, high = 8 * inch, 50 * inch
    elif kind == 3:
        different, most, step = dice.randint(8, 14), 30, dice.choice([1, 4])
        count = lambda: dice.choice([2, 2, 3, 4])
        low, high = 16 * inch, 50 * inch
    else:
        different, most, step = dice.randint(12, 30), 30, 1
        count = lambda: 1
        low, high = stock // 5, stock * 3 // 5
    high = min(high, stock - 2 * trim - 2 * kerf - grip)
    blanks = {}
    while len(blanks) < different and sum(blanks.values()) < most:
        length = dice.randint(low, high) // step * step
        if length not in blanks:
            blanks[length] = min(count(), most - sum(blanks.values()))
    bought = [(stock, None)]
    if dice.random() < 0.2:
        other = stock * dice.choice([2, 3]) // dice.choice([4, 6])
        bought.append((other, dice.choice([None, 1, 2, 3])))
    remnants = sorted(dice.randint(low, stock - 1) for _ in range(dice.choice([0, 0, 1, 2, 3, 5])))
    return unit, kerf, trim, grip, bought, remnants, sorted(blanks.items(), reverse=True)


def plan(kerf, trim, grip, bought, remnants, blanks):
    start = trim + kerf if trim else 0
    end = max(trim, grip) + kerf if max(trim, grip) else 0
    # Every blank goes with a kerf; where nothing stands over at the end, the last needs none.
    room = lambda length: length - start - end + kerf
    sizes = [length + kerf for length, _ in blanks]
    counts = [count for _, count in blanks]
    new = [(length, room(length), limit) for length, limit in bought]
    old = {}
    for length in remnants:
        old[length] = old.get(length, 0) + 1
    old = [(length, room(length), count) for length, count in old.items()]
    found = best(sizes, counts, old, new, start)
    if found is None or found[0] > 0:
        return found and (found[0], found[1], max(found[2], 0))
    used = best(sizes, counts, [], old, start)
    # Fewest remnants, shortest in all, and the largest piece left of one.
    return 0, used[1], max(used[2], 0)


def row(index):
    """One row: lists are drawn anew until one has a plan; each row has dice of its own."""
    dice = random.Random(SEED * 10_000 + index)
    while True:
        unit, kerf, trim, grip, bought, remnants, blanks = draw(dice, index)
        try:
            found = plan(kerf, trim, grip, bought, remnants, blanks)
        except TooLarge:
            continue
        if found is not None:
            return [
                unit, kerf, trim, grip,
                ";".join(f"{length}x{limit}" if limit is not None else str(length) for length, limit in bought),
                ";".join(map(str, remnants)),
                ";".join(f"{length}x{count}" for length, count in blanks),
                *found,
            ]


def main():
    with open(Path(__file__).with_name("instances.csv"), "w", newline="") as file, Pool(2) as pool:
        writer = csv.writer(file, lineterminator="\n")
        writer.writerow("unit_nm kerf trim grip stock remnants blanks new_bars total_length largest_left".split())
        for cells in pool.imap(row, range(ROWS), chunksize=5):
            writer.writerow(cells)
            file.flush()


if __name__ == "__main__":
    main()
