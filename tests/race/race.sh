#!/usr/bin/env bash
# Races the published program against scripts that only read, average and write Welch intervals: tests/race/race.sh [PROGRAM]
# Without PROGRAM it is published as machine code first. ROUNDS (5), SPECIMENS ("10 100") and PYTHON (python3) may be set.
set -euo pipefail
here=$(cd "$(dirname "$0")" && pwd)
rounds=${ROUNDS:-5}
python=${PYTHON:-python3}
work=$(mktemp -d)
trap 'rm -rf "$work"' EXIT

program=${1:-}
if [ -z "$program" ]; then
    dotnet publish "$here/../../src/SweepStats.Cli" -c Release -r linux-x64 -p:PublishAot=true -o "$work/program" >&2
    program=$work/program/sweepstats
fi
program=$(realpath "$program")

has_python() { "$python" -c "import $1" 2>"$work/why" || { echo "left out: $2 ($python has no ${1//,/ or no }; on Debian: $3)"; return 1; }; }
racers=()
has_python numpy,scipy numpy "python3-numpy python3-scipy" && racers+=("numpy=$python $here/plain_numpy.py")
has_python pandas,scipy pandas "python3-pandas python3-scipy" && racers+=("pandas=$python $here/plain_pandas.py")
if command -v Rscript >/dev/null; then racers+=("R=Rscript $here/plain.R"); else echo "left out: R (no Rscript; on Debian: r-base-core)"; fi

echo "$(sed -n 's/^model name[^:]*: //p' /proc/cpuinfo | head -1), $(nproc) cores, $(date +%F), median of $rounds rounds"
for specimens in ${SPECIMENS:-10 100}; do
    campaign=$work/$specimens
    # Lots of ten, as a bench would have them.
    "$program" rehearse "$campaign" --points 1601 --floor-sweeps 10 --reference-sweeps 10 --sweeps 20 \
        --lots $(((specimens + 9) / 10)) --specimens $((specimens < 10 ? specimens : 10)) --specimen-spread 0.5 >"$work/told"
    commands=("run --charts none=$program run $campaign --out $work/none --charts none --quiet"
        "run=$program run $campaign --out $work/report --quiet"
        "check=$program check $campaign --quiet")
    for racer in "${racers[@]}"; do commands+=("$racer $campaign $work/plain.csv"); done
    printf '\n%s specimens, %s files\n' "$specimens" "$((20 + 20 * specimens))"
    python3 "$here/timing.py" "$rounds" "${commands[@]}"
done
