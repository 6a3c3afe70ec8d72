#!/usr/bin/env bash
# Bytes of the board's program and its libraries as the compiler wrote them, without the runtime's own library. With
# STARTERCTL_METADATA_PROCESSOR (the command that makes what is flashed) also the bytes behind it, and with STARTERCTL_INTERPRETER
# (the command that runs such files, given behind it in the order in which they need each other) what the same sources do and cost there.
set -euo pipefail
cd "$(dirname "$0")/../.."
read -ra processor <<< "${STARTERCTL_METADATA_PROCESSOR:-}"
read -ra interpreter <<< "${STARTERCTL_INTERPRETER:-}"
flashed=out/board
built=firmware/board/bin/Release/netnano1.0
course=tests/Interpreter/bin/Release/netnano1.0

dotnet build firmware/board/StarterCtl.Board.csproj -c Release -v q >&2
dotnet build tests/Interpreter/StarterCtl.Interpreter.csproj -c Release -v q >&2

# Sizes of files under a heading.
sizes() {
  local heading=$1 total=0 part bytes
  shift
  printf '%s\n' "$heading"
  for part in "$@"; do
    bytes=$(wc -c < "$part")
    total=$((total + bytes))
    printf '  %-24s %8d\n' "$(basename "$part")" "$bytes"
  done
  printf '  %-24s %8d\n' together "$total"
}

# What the metadata processor makes of a library or program.
flash() {
  local name=$1 file=$2 folder hints=() library
  folder=$(dirname "$file")
  for library in mscorlib StarterCtl.Core StarterCtl.Firmware StarterCtl.DeviceApi; do
    [ ! -f "$folder/$library.dll" ] || hints+=(-loadHints "$library" "$folder/$library.dll")
  done
  "${processor[@]}" "${hints[@]}" -parse "$file" -compile "$flashed/$name.pe" false >&2
}

sizes "bytes as compiled" "$built/StarterCtl.Core.dll" "$built/StarterCtl.Firmware.dll" "$built/StarterCtl.Board.exe"

if [ ${#processor[@]} -eq 0 ]; then
  echo "bytes behind the metadata processor: left out, STARTERCTL_METADATA_PROCESSOR names none"
  exit 0
fi
mkdir -p "$flashed"
flash StarterCtl.Core "$built/StarterCtl.Core.dll"
flash StarterCtl.Firmware "$built/StarterCtl.Firmware.dll"
flash StarterCtl.Board "$built/StarterCtl.Board.exe"
sizes "bytes behind the metadata processor" "$flashed/StarterCtl.Core.pe" "$flashed/StarterCtl.Firmware.pe" "$flashed/StarterCtl.Board.pe"

if [ ${#interpreter[@]} -eq 0 ]; then
  echo "on the interpreter: left out, STARTERCTL_INTERPRETER names none"
  exit 0
fi
flash StarterCtl.Interpreter "$course/StarterCtl.Interpreter.exe"
echo "on the interpreter"
"${interpreter[@]}" "$course/mscorlib.pe" "$flashed/StarterCtl.Core.pe" "$flashed/StarterCtl.Firmware.pe" "$flashed/StarterCtl.Interpreter.pe" \
  | sed -n '/^boot check/,/^end/p' | sed 's/^/  /'
