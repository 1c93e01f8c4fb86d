#!/usr/bin/env bash
# Attacks the program for some seconds each way (3600 in all takes an hour): tests/faults/faults.sh [SECONDS]
# Kills, signals, races, full disks, mounts and exchanges in two steps from outside (faults.py), then 20 000 mutated setups and manifests and 5 000 mutated command lines
# within the test program, of which the usual tests try a hundredth.
set -euo pipefail
cd "$(dirname "$0")/../.."
seconds=${1:-3600}
dotnet build tests/SweepStats.Acceptance -v q
program=tests/SweepStats.Acceptance/bin/Debug/net10.0
status=0
SWEEPSTATS_ATTACKS=full dotnet test tests/SweepStats.Acceptance --no-build --filter 'FullyQualifiedName~Faults.Mutated' || status=1
cat "$program"/attacks-*.txt
dotnet build src/SweepStats.Cli -v q
tests/faults/faults.py src/SweepStats.Cli/bin/Debug/net10.0/sweepstats --seconds "$((seconds / 8))" || status=1
exit "$status"
