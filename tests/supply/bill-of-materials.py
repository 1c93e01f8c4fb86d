#!/usr/bin/env python3
"""Writes reports/bill-of-materials.json: every package the program holds, from its lock file, as CycloneDX 1.5 (an open standard, ECMA-424).

    tests/supply/bill-of-materials.py
"""
import json
import pathlib

ROOT = pathlib.Path(__file__).resolve().parents[2]
LOCK = ROOT / "src/SweepStats.Cli/packages.lock.json"
TARGET = ROOT / "reports/bill-of-materials.json"


def reference(name, version):
    return f"pkg:nuget/{name}@{version}"


def main():
    packages = {}
    for framework in json.loads(LOCK.read_text(encoding="utf-8"))["dependencies"].values():
        packages.update({name: entry for name, entry in framework.items() if entry["type"] != "Project"})
    named = sorted(packages.items(), key=lambda package: package[0].lower())
    references = {name.lower(): reference(name, entry["resolved"]) for name, entry in named}
    bill = {
        "bomFormat": "CycloneDX",
        "specVersion": "1.5",
        "version": 1,
        "metadata": {"component": {"type": "application", "name": "sweepstats", "bom-ref": "sweepstats"}},
        "components": [
            {"type": "library", "bom-ref": references[name.lower()], "name": name, "version": entry["resolved"], "purl": references[name.lower()]}
            for name, entry in named
        ],
        "dependencies": [
            {"ref": references[name.lower()], "dependsOn": sorted(references[d.lower()] for d in entry.get("dependencies", {}) if d.lower() in references)}
            for name, entry in named
        ],
    }
    TARGET.write_text(json.dumps(bill, indent=2) + "\n", encoding="utf-8")
    print(f"{len(named)} packages in {TARGET.relative_to(ROOT)}")


if __name__ == "__main__":
    main()
