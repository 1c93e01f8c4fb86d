#!/usr/bin/env bash
# Runs every test with the full number of draws: some ten minutes on two cores. Without it seeded tests draw a quarter, see DEVELOPERS.md.
set -euo pipefail
cd "$(dirname "$0")/.."
SWEEPSTATS_DRAWS=full exec dotnet test SweepStats.sln "$@"
