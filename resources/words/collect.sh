#!/bin/sh
# collect.sh brings the catalogues of this folder up to date with the texts in src: new ones stand
# there untranslated, changed ones marked as fuzzy, those that are gone at the end. Translate them in
# a text editor, then see tests/words.
set -eu
cd "$(dirname -- "$0")/../.."
texts=$(mktemp)
trap 'rm -f "$texts"' EXIT
sh resources/words/extract.sh >"$texts"
for catalogue in resources/words/*.po; do
  msgmerge --quiet --update --backup=none --no-wrap --sort-by-file "$catalogue" "$texts"
done
