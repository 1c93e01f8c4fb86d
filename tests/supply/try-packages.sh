#!/usr/bin/env bash
# Packs everything and uses it as a stranger would: tests/supply/try-packages.sh
# The example of the package's page in an empty folder, the program as a dotnet tool, and as a single file where nothing else is.
# SINGLE ("linux-x64 linux-musl-x64 linux-arm64 win-x64 osx-arm64"; empty for none) says for which machines single files are made.
set -euo pipefail
here=$(cd "$(dirname "$0")/../.." && pwd)
work=$(mktemp -d)
trap 'rm -rf "$work"' EXIT
demo=$here/fixtures/campaigns/receiver-cabin-curtain
export NUGET_PACKAGES=$work/cache DOTNET_CLI_TELEMETRY_OPTOUT=1 DOTNET_NOLOGO=1

dotnet pack "$here/SweepStats.sln" -c Release -o "$work/packages" >"$work/told" || { cat "$work/told"; exit 1; }
cat >"$work/nuget.config" <<CONFIG
<configuration><packageSources>
  <clear />
  <add key="own" value="$work/packages" />
  <add key="nuget.org" value="https://api.nuget.org/v3/index.json" />
</packageSources><packageSourceMapping>
  <packageSource key="own"><package pattern="SweepStats*" /></packageSource>
  <packageSource key="nuget.org"><package pattern="*" /></packageSource>
</packageSourceMapping></configuration>
CONFIG

mkdir "$work/five-lines"
cd "$work/five-lines"
dotnet new console >/dev/null
dotnet add package SweepStats >/dev/null
sed -n '/^```csharp/,/^```/p' "$here/src/SweepStats.Library/package.md" | sed '1d; /^```/,$d' | sed "s|autumn-lots|$demo|" >Program.cs
echo "five lines, from the package:"
dotnet run | sed 's/^/  /'
grep -q '<svg' a01.svg
echo "  a01.svg is a chart"

dotnet tool install --tool-path "$work/tool" --configfile "$work/nuget.config" SweepStats.Cli >/dev/null
echo "the tool:"
"$work/tool/sweepstats" check "$demo" | sed -n '1,2s/^/  /p'

for machine in ${SINGLE-linux-x64 linux-musl-x64 linux-arm64 win-x64 osx-arm64}; do
    dotnet publish "$here/src/SweepStats.Cli" -c Release -r "$machine" --self-contained true -p:SelfContained=true \
        -p:PublishSingleFile=true -p:IncludeNativeLibrariesForSelfExtract=true -o "$work/single/$machine" >"$work/told" ||
        { cat "$work/told"; exit 1; }
    file=$work/single/$machine/sweepstats
    [ -e "$file" ] || file=$file.exe
    echo "single file for $machine: $(($(stat -c %s "$file") / 1000000)) MB"
done

# A root that holds the file, the libraries it asks for, OpenSSL for the hashes, what a container has of /proc and /dev, and the demo.
file=$work/single/linux-x64/sweepstats
if [ -e "$file" ] && [ "$(id -u)" -eq 0 ]; then
    root=$work/root
    mkdir -p "$root/tmp" "$root/proc" "$root/dev"
    cp "$file" "$root/sweepstats"
    cp -r "$demo" "$root/demo"
    { ldd "$file"; ldconfig -p | grep -E 'lib(ssl|crypto)\.so\.3 .*x86-64'; } | grep -oE '/[^ ]+' | sort -u |
        while read -r library; do cp --parents -L "$library" "$root"; done
    mknod -m 666 "$root/dev/null" c 1 3
    mknod -m 666 "$root/dev/urandom" c 1 9
    echo "in a root without the SDK or anything else:"
    # The file unpacks what draws charts; without a home it is told where. The mount ends with the namespace.
    export DOTNET_BUNDLE_EXTRACT_BASE_DIR=/tmp/unpacked
    unshare -m sh -c 'mount --bind /proc "$1/proc" && chroot "$1" /sweepstats run /demo --out /tmp/report --charts summary' sh "$root" |
        sed -n '1,2s/^/  /p'
    [ -s "$root/tmp/report/index.html" ] && echo "  the report is there"
fi
