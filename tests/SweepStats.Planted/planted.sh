#!/usr/bin/env bash
# Plants faults in the core, one at a time, and says how many the unit tests catch: planted.sh [SEED [COUNT [PAGE]]]
# SEED of the draw (1), COUNT of faults (100), PAGE to write (reports/planted/study.md). Two at a time; what is new takes minutes a
# fault. planted.sh look SECONDS SEED COUNT tries a draw, and look SECONDS WORDS all faults that hold the words, with those classes
# of tests alone that take no longer; nothing is written.
set -euo pipefail
cd "$(dirname "$0")/../.."
nice -n 10 dotnet build tests/SweepStats.Planted -c Release -v quiet --nologo
run="nice -n 10 dotnet tests/SweepStats.Planted/bin/Release/net10.0/SweepStats.Planted.dll"
if [ "${1:-}" = look ]; then
    exec $run "$@"
fi

page=${3:-reports/planted/study.md}
mkdir -p "$(dirname "$page")"
exec $run study "${1:-1}" "${2:-100}" "$page"
