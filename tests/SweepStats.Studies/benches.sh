#!/bin/sh
# Draws campaigns of known truth with R and says what the program makes of them: benches.sh [COUNT [KINDS [REPORTS [SEED]]]].
# COUNT campaigns of each kind (30), KINDS such as "floor-*,clipped" (all), tables in REPORTS (reports/benches).
set -eu
cd "$(dirname "$0")/../.."
count=${1:-30}
kinds=${2:-*}
reports=${3:-reports/benches}
seed=${4:-1}
scratch=$(mktemp -d)
trap 'rm -rf "$scratch"' EXIT
dotnet build tests/SweepStats.Studies -c Release -v quiet --nologo
Rscript --vanilla fixtures/oracles/benches/make.R "$kinds" "$scratch" "$count" "$seed"
dotnet tests/SweepStats.Studies/bin/Release/net10.0/SweepStats.Studies.dll benches "$scratch" "$reports"
