#!/usr/bin/env python3
"""What a careful user of numpy writes: mean shielding with Welch intervals. plain_numpy.py CAMPAIGN OUT.csv"""
import sys
from pathlib import Path

import numpy as np
from scipy import stats

NEAR_FLOOR_DB = 10


def read(folder):
    """Frequencies, and levels with one row a sweep."""
    frequencies, levels = None, []
    for path in sorted(folder.glob("*.csv")):
        table = np.loadtxt(path, delimiter=",", skiprows=1)
        if frequencies is not None and not np.array_equal(frequencies, table[:, 0]):
            sys.exit(f"{path}: other frequencies than the sweeps before it")
        frequencies = table[:, 0]
        levels.append(table[:, 1])
    if len(levels) < 2:
        sys.exit(f"{folder}: two sweeps are needed at least")
    return frequencies, np.array(levels)


def main(campaign, out):
    frequencies, floor = read(campaign / "floor")
    same, reference = read(campaign / "reference")
    assert np.array_equal(frequencies, same)
    noise, top = floor.mean(axis=0), reference.mean(axis=0)
    var_top = reference.var(axis=0, ddof=1) / len(reference)
    with open(out, "w") as csv:
        csv.write("lot,specimen,frequency_hz,se_db,low_db,high_db,dof,near_floor\n")
        for folder in sorted(campaign.glob("covered/*/*")):
            same, covered = read(folder)
            assert np.array_equal(frequencies, same)
            level, var = covered.mean(axis=0), covered.var(axis=0, ddof=1) / len(covered)
            dof = (var_top + var) ** 2 / (var_top**2 / (len(reference) - 1) + var**2 / (len(covered) - 1))
            reach = stats.t.ppf(0.975, dof) * np.sqrt(var_top + var)
            se = top - level
            rows = np.column_stack([frequencies, se, se - reach, se + reach, dof, level < noise + NEAR_FLOOR_DB])
            name = f"{folder.parent.name},{folder.name},"
            csv.write("".join(name + "%.0f,%.4f,%.4f,%.4f,%.2f,%d\n" % tuple(row) for row in rows.tolist()))


main(Path(sys.argv[1]), sys.argv[2])
