"""The clinic file that the tests of the window open."""

import subprocess

TODAY = "2026-11-25"


def make_database(batch, folder, database):
    for command in (["clinic", "--name", "Test clinic", "--currency", "EUR"], ["import", folder]):
        subprocess.run([batch, "--db", database, "--today", TODAY, *command], check=True,
                       stdout=subprocess.DEVNULL)
