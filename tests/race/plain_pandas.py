#!/usr/bin/env python3
"""What a careful user of pandas writes: mean shielding with Welch intervals. plain_pandas.py CAMPAIGN OUT.csv"""
import sys
from pathlib import Path

import numpy as np
import pandas as pd
from scipy import stats

NEAR_FLOOR_DB = 10


def read(folder):
    """Levels: a row a frequency, a column a sweep."""
    sweeps = {path.stem: pd.read_csv(path, index_col=0).iloc[:, 0] for path in sorted(folder.glob("*.csv"))}
    if len(sweeps) < 2:
        sys.exit(f"{folder}: two sweeps are needed at least")
    first = next(iter(sweeps.values()))
    if not all(sweep.index.equals(first.index) for sweep in sweeps.values()):
        sys.exit(f"{folder}: sweeps of different frequencies")
    return pd.DataFrame(sweeps)


def main(campaign, out):
    floor, reference = read(campaign / "floor"), read(campaign / "reference")
    assert floor.index.equals(reference.index)
    noise, top, n_top = floor.mean(axis=1), reference.mean(axis=1), reference.shape[1]
    var_top = reference.var(axis=1) / n_top
    tables = []
    for folder in sorted(campaign.glob("covered/*/*")):
        covered = read(folder)
        assert covered.index.equals(reference.index)
        level, n = covered.mean(axis=1), covered.shape[1]
        var = covered.var(axis=1) / n
        dof = (var_top + var) ** 2 / (var_top**2 / (n_top - 1) + var**2 / (n - 1))
        reach = stats.t.ppf(0.975, dof) * np.sqrt(var_top + var)
        se = top - level
        tables.append(pd.DataFrame({
            "lot": folder.parent.name, "specimen": folder.name, "se_db": se, "low_db": se - reach, "high_db": se + reach,
            "dof": dof, "near_floor": (level < noise + NEAR_FLOOR_DB).astype(int),
        }))
    pd.concat(tables).to_csv(out, float_format="%.4f")


main(Path(sys.argv[1]), sys.argv[2])
