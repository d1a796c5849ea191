#!/bin/sh
# extract.sh writes every text of src that is to be translated, as a catalogue without translations.
# The functions that mark one are those of src/clinic/say.hpp, and count_words of the desk. The program
# without a window speaks English only, because scripts read what it says.
set -eu
exec 3>&1
cd "$(dirname -- "$0")/../.."
# It takes "10 % for" for a placeholder of C, and what is in English alone for no text of UTF-8.
{
  find src -path src/batch -prune -o -name '*.cpp' -print -o -name '*.hpp' -print | LC_ALL=C sort |
    xgettext --files-from=- --language=C++ --from-code=UTF-8 --no-wrap --sort-by-file --add-location=file \
      --keyword --keyword=say:1 --keyword=said:1 --keyword=said_of:1c,2 --keyword=to_say:1 \
      --keyword=say_n:1,2 --keyword=said_n:1,2 --keyword=count_words:2,3 \
      --package-name=Sparewell --output=- |
    sed -e 's/charset=CHARSET/charset=UTF-8/' -e '/^#, .*c-format$/d' >&3
} 2>&1 | grep -v 'with\(out\)\? plural\|Workaround: If the msgid' >&2 || true
