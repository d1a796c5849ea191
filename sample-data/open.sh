#!/bin/sh
# Builds Sparewell, makes the database of the sample clinic and opens the window on it; without a
# display it writes the sample clinic's orders. A second run opens what is there.
set -eu
sample=$(CDPATH='' cd -- "$(dirname -- "$0")" && pwd)
top=$(dirname -- "$sample")
programs=$top/build/release/bin
data=${XDG_DATA_HOME:-$HOME/.local/share}/sparewell
database=$data/sample-clinic.db
stamp=$database.stamp
today=2026-11-25 # the day after the sample's last entry

say() { printf '%s\n' "$*"; }
checksum() { LC_ALL=C sha256sum "$@" | sha256sum | cut -d ' ' -f 1; }
sample_checksum() { (cd "$sample/clinic" && checksum ./*.csv); }
database_checksum() { checksum "$database"; }

build() {
  sh "$top/.ci/install-packages" build run
  cd "$top"
  # An existing build keeps its settings, so that it is not undone what the tests were built with.
  [ -f build/release/build.ninja ] || cmake --preset release -DSPAREWELL_TESTS=OFF
  cmake --build --preset release --target sparewell sparewell-batch
}

write_stamp() {
  printf '%s\n%s\n' "$(database_checksum)" "$(sample_checksum)" >"$stamp"
}

# True when nobody has changed the database since this script made it.
is_untouched() {
  [ -f "$stamp" ] && [ ! -s "$database-wal" ] &&
    [ "$(sed -n 1p "$stamp")" = "$(database_checksum)" ]
}

is_of_this_sample() { [ -f "$stamp" ] && [ "$(sed -n 2p "$stamp")" = "$(sample_checksum)" ]; }

make_database() {
  mkdir -p "$data"
  rm -f "$database.new" "$database.new-wal" "$database.new-shm"
  "$programs/sparewell-batch" --db "$database.new" clinic \
    --name 'Harbourmoth Prosthetics (sample clinic)' \
    --ship-to '12 Lanternfish Lane\n00000 Nettlebrook' \
    --currency EUR --main-place 'main store' >/dev/null
  "$programs/sparewell-batch" --db "$database.new" --today $today import "$sample/clinic"
  mv -- "$database.new" "$database"
  rm -f "$database-wal" "$database-shm"
  write_stamp
  say "The sample clinic is in $database"
}

put_aside() {
  kept=$data/sample-clinic-kept-$(date +%Y%m%d-%H%M%S).db
  for ending in '' -wal -shm; do
    [ ! -e "$database$ending" ] || mv -- "$database$ending" "$kept$ending"
  done
  say "Your changed sample clinic was kept as $kept"
}

# Changed by somebody: kept unless they ask for a new one, and even then only put aside.
keep_or_renew() {
  if [ ! -t 0 ]; then
    say "The sample clinic was changed since it was made; it is kept as it is."
    return
  fi
  printf 'The sample clinic was changed since it was made. Keep it [Enter], or make it new and put the changed one aside [n]? '
  read -r answer || answer=
  case $answer in
    [nN]*) put_aside && make_database ;;
    *) say "Kept." ;;
  esac
}

provide_database() {
  if [ ! -e "$database" ]; then
    make_database
  elif ! is_untouched; then
    keep_or_renew
  elif ! is_of_this_sample; then
    say "The sample has changed, and nobody has changed its database: it is made again."
    make_database
  fi
}

write_orders() {
  orders=$data/sample-orders
  untouched=no
  if is_untouched; then untouched=yes; fi
  "$programs/sparewell-batch" --db "$database" --today $today orders --out "$orders"
  if [ $untouched = yes ]; then write_stamp; fi
  say "There is no display, so the window was not opened. The order workbooks are in $orders"
}

build
provide_database
if [ -n "${DISPLAY:-}${WAYLAND_DISPLAY:-}" ]; then
  say "Sparewell opens with $today as its day, the day after the sample's last entry."
  exec "$programs/sparewell" --today $today "$database"
fi
write_orders
