#!/usr/bin/env bash
# Bytes of the board's program and its libraries as the compiler wrote them, without the runtime's own library.
set -euo pipefail
cd "$(dirname "$0")/../.."
dotnet build firmware/board/StarterCtl.Board.csproj -c Release -v q
total=0
for part in StarterCtl.Core.dll StarterCtl.Firmware.dll StarterCtl.Board.exe; do
  bytes=$(wc -c < "firmware/board/bin/Release/netnano1.0/$part")
  total=$((total + bytes))
  printf '%-24s %8d\n' "$part" "$bytes"
done
printf '%-24s %8d\n' together "$total"
