"""Whose the kept corrections are, among the wearers of a table: none of them is passed over unsaid."""

import unicodedata
from dataclasses import dataclass, field

from corsetkit.units import shown


@dataclass(frozen=True)
class Whose:
    """`of` maps wearers of the table to why they cannot be corrected as the file says; `nobody` are names not in the table."""

    of: dict = field(default_factory=dict)
    nobody: tuple = ()


def whose(kept, names):
    """Match a `Kept` with the wearers' names of a table.

    A wearer may not be drafted without her corrections, so one is told of whose corrections cannot all be made, and one whose
    name the file writes in other letters.
    """
    of, nobody, alike = {}, [], {}
    for name in names:
        alike.setdefault(_plain(name), []).append(name)
    exact = set(names)
    for given in dict.fromkeys((*kept.by_wearer, *kept.amiss)):
        if given in exact:
            if why := kept.amiss.get(given):
                more = f", and {len(why) - 1} more" if why[1:] else ""
                of[given] = (f"a correction kept for her cannot be made ({why[0]}{more}): mend it in the file of corrections, "
                             "or take it out there")
        elif meant := alike.get(_plain(given)):
            of.update({name: of.get(name) or _other_letters(given, name) for name in meant})
        else:
            nobody.append(given)
    return Whose(of, tuple(nobody))


def _plain(name):
    """What is left of a name without capitals, accents and blanks beside one another."""
    letters = unicodedata.normalize("NFKD", name.casefold())
    return " ".join("".join(one for one in letters if not unicodedata.combining(one)).casefold().split())


def _other_letters(given, name):
    if unicodedata.normalize("NFC", given) == unicodedata.normalize("NFC", name):
        return (f"the file of corrections has the name {shown(name)} with its accents stored in another way: copy the name from "
                "the table into that file")
    return f"the file of corrections has the name {shown(given)}: write it there as in the table, {shown(name)}"
