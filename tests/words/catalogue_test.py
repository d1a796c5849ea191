"""Every text of the program has a translation in every language of resources/words, and each translation fits
its English: the same values, an access key where there is one, blanks and line ends where they are.

usage: catalogue_test.py SOURCE-FOLDER

Needs xgettext and msgcat of GNU gettext.
"""

import pathlib
import re
import subprocess
import sys

QUOTED = re.compile(r'"((?:[^"\\]|\\.)*)"')
FIELD = re.compile(r"\{([^{}]*(?:\{[^{}]*\}[^{}]*)*)\}")


def entries(catalogue):
    """(msgctxt, msgid) -> (msgid_plural or None, translations, flags) of the text of a catalogue."""
    made = {}
    for block in catalogue.split("\n\n"):
        lines = [line for line in block.splitlines() if not line.startswith("#~")]
        flags = [line for line in lines if line.startswith("#,")]
        texts, key = {}, None
        for line in lines:
            if line.startswith("msg"):
                key = line.split(" ", 1)[0]
                texts[key] = ""
            if key and not line.startswith("#"):
                texts[key] += "".join(QUOTED.findall(line))
        if texts.get("msgid"):
            said = [texts[key] for key in sorted(texts) if key.startswith("msgstr")]
            made[texts.get("msgctxt", ""), texts["msgid"]] = (texts.get("msgid_plural"), said, " ".join(flags))
    return made


def values(text):
    """The values that a text of fmt shows, by their number."""
    found, counted = [], 0
    for field in FIELD.findall(text.replace("{{", "").replace("}}", "")):
        name = field.split(":", 1)[0]
        if not name:
            name, counted = str(counted), counted + 1
        found.append(name)
    return sorted(set(found))


def ends(text):
    return text[:1] == " ", text[-1:] == " ", text.endswith("\\n")


def access_key(text):
    return bool(re.search(r"&\w", text))


def faults_of(english, plural, said):
    forms = [english, plural] if plural else [english]
    if len(said) != len(forms) or not all(said):
        return ["is not translated"]
    faults = []
    for form, translation in zip(forms, said):
        # Of one thing, a language may leave the number out or say it.
        shown = values(translation)
        if shown != values(form) and not (plural and set(shown) <= set(values(plural))):
            faults.append(f"shows other values: {translation}")
        if ends(form) != ends(translation):
            faults.append(f"begins or ends with other blanks: '{translation}'")
        if access_key(form) != access_key(translation):
            faults.append(f"differs in having an access key: {translation}")
    return faults


def main():
    source = pathlib.Path(sys.argv[1])
    words = source / "resources" / "words"
    texts = entries(subprocess.run(["sh", words / "extract.sh"], check=True, text=True,
                                   stdout=subprocess.PIPE).stdout)
    assert len(texts) > 2000, f"only {len(texts)} texts were found"
    faults = []
    for file in sorted(words.glob("*.po")):
        normal = subprocess.run(["msgcat", "--no-wrap", file], check=True, text=True,
                                stdout=subprocess.PIPE).stdout
        translated = entries(normal)
        for (context, english), (plural, _, _) in texts.items():
            _, said, flags = translated.get((context, english), (None, [], ""))
            found = ["is marked as fuzzy"] if "fuzzy" in flags else faults_of(english, plural, said)
            faults += [f"{file.name}: \"{english}\" {fault}" for fault in found]
        faults += [f"{file.name}: \"{english}\" is no text of the program any more"
                   for context, english in translated if (context, english) not in texts]
    print("\n".join(faults))
    sys.exit(1 if faults else 0)


if __name__ == "__main__":
    main()
