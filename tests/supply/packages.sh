#!/usr/bin/env bash
# Asks the package registry which packages of the program have known vulnerabilities, are no longer kept, or have later versions.
# Needs the network, so it is no part of the tests. Ends with 1 where a vulnerability is known. What was decided stands in reports/studies/attacks.md.
set -uo pipefail
cd "$(dirname "$0")/../.."
status=0
for project in src/SweepStats.Cli tests/SweepStats.Acceptance tests/SweepStats.Browser; do
    found=$(dotnet list "$project" package --vulnerable --include-transitive) || status=1
    echo "$found" | grep -v '^ *$'
    if echo "$found" | grep -q 'has the following vulnerable packages'; then
        status=1
    fi
    dotnet list "$project" package --deprecated --include-transitive | grep -E '^ *(>|The given|Project)'
    dotnet list "$project" package --outdated | grep -E '^ *(>|The given|Project)'
done
exit "$status"
