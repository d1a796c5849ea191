#!/bin/sh
# run.sh [PRESET...] installs what is missing, builds and runs the tests of each preset:
# release (with the window), sanitize and no-window. Without a preset: release, then sanitize,
# which is built without the window and sparewell-batch. Speed ratios are measured in release only.
# Where both are run, the tests of single rooms run under the sanitizers alone, and the pictures of
# the screens are taken beside the rest.
set -u
cd "$(dirname -- "$0")/.." || exit 2

[ $# -gt 0 ] || set -- release sanitize
for preset; do
  case $preset in
    release | debug | sanitize | no-window) ;;
    *)
      echo "There is no preset '$preset'; choose from release, debug, sanitize, no-window." >&2
      exit 2
      ;;
  esac
done

sh .ci/install-packages build run test || exit 1
left_to_sanitizers=OFF
case "$*" in *release*sanitize* | *sanitize*release*) left_to_sanitizers=ON ;; esac
jobs=$(nproc 2>/dev/null || echo 2)
failed=
beside=
for preset; do
  echo "== $preset"
  left=OFF
  [ "$preset" = release ] && left=$left_to_sanitizers
  if ! cmake --preset "$preset" -DSPAREWELL_TESTS=ON -DSPAREWELL_LEAVE_TO_SANITIZERS="$left" ||
    ! cmake --build --preset "$preset" --parallel "$jobs"; then
    failed="$failed $preset"
    continue
  fi
  without=none
  [ "$preset" = release ] || without=slow
  [ "$left" = ON ] && without=beside
  ctest --preset "$preset" --parallel "$jobs" --label-exclude "^$without\$" || failed="$failed $preset"
  if [ "$left" = ON ]; then
    ctest --preset release -L '^beside$' >build/beside.txt 2>&1 &
    beside=$!
  fi
done

if [ -n "$beside" ]; then
  wait "$beside" || failed="$failed screens"
  cat build/beside.txt
fi

if [ -n "$failed" ]; then
  echo "Failed:$failed" >&2
  exit 1
fi
