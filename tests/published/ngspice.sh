#!/usr/bin/env bash
# Writes ngspice.csv anew: every case in spice/, exported and solved by the ngspice of this machine. Needs the SDK and ngspice.
set -euo pipefail
cd "$(dirname "$0")/../.."
folder=$(mktemp -d)
trap 'rm -rf "$folder"' EXIT
dotnet build sim/App -c Release -v q >&2

for case in tests/published/spice/*.toml; do
  name=$(basename "$case" .toml)
  dotnet run -c Release --no-build --project sim/App -- export spice "$case" --out "$folder/$name.cir" >&2
  LC_ALL=C ngspice -b "$folder/$name.cir" 2>&1 | awk -v name="$name" '/^[a-z0-9_]+ = [-+0-9.e]+$/ { printf "%s,%s,%s\n", name, $1, $3 }' > "$folder/$name.rows"
  [ -s "$folder/$name.rows" ] || { echo "ngspice printed no figure of $name" >&2; exit 1; }
done

{
  echo "# What ngspice makes of the cases in spice/. Written by: bash tests/published/ngspice.sh"
  echo "# $(ngspice --version | grep -o 'ngspice-[0-9.]*' | head -1), $(grep -h '^\.options' "$folder"/*.cir | sort -u), steps of at most $(grep -h '^tran' "$folder"/*.cir | awk '{ print $5 }' | sort -u) s"
  echo "case,figure,value"
  cat "$folder"/*.rows
} > "$folder/table"
mv "$folder/table" tests/published/ngspice.csv
