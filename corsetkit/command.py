"""One command for those who do not open the lessons: wearers and choices in, a folder for each wearer out."""

import argparse
import sys
from pathlib import Path

from tqdm import tqdm

from corsetkit.errors import CorsetkitError
from corsetkit.fitting.corrections_file import Kept, read_file, whose
from corsetkit.folders import mended
from corsetkit.lay.cloth import Cloth
from corsetkit.lay.planning import checked_seconds
from corsetkit.output import Wish, checked, disk_refused, write_all
from corsetkit.printing.names import names_apart
from corsetkit.quantity import quantities
from corsetkit.stopping import STOPPED, Stop
from corsetkit.style_file import Choices, read_choices
from corsetkit.units import check_unit, shown
from corsetkit.wearers import read_rows

ALL, NOT_ALL, NOT_BEGUN = 0, 1, 2
"""What the command ends with, beside STOPPED: all was done; a wearer was not written, or corrections belong to nobody;
nothing could be begun."""

_WORDS = {
    "wearers": "the table of wearers, saved as CSV: a row for each, with her measurements and their unit",
    "style": 'a file of choices, JSON or CSV, such as {"cup_parts": 2, "waist_reduction": "1 1/2 in"}; what the '
    "lessons keep will do as well",
    "into": "the folder in which each wearer's folder is made; it is made where it is not there yet",
    "fittings": "the file of corrections that the lessons keep, by the wearers' names",
    "cloth": "how wide the cloth is, such as 54 in or 137 cm (54 in where nothing is said); whether it lies folded or has a "
    "nap is said in the file of choices",
    "search": "for how many seconds a closer cutting plan is looked for, for each cloth of each wearer (none where nothing "
    "is said: then the pieces lie in rows)",
    "paper": "A4 or Letter, joined from pages; A0 or roll, for a copy shop (A4 where nothing is said)",
    "unit": "in or cm, for all lengths in words (in where nothing is said)",
    "date": "what is printed as the date (today's where nothing is said)",
    "again": "write folders anew that are there already; files of your own in them are kept",
}


def main(arguments=None, stop=None):
    """Run the command; what it ends with is one of ALL, NOT_ALL, NOT_BEGUN and STOPPED.

    `stop` is a `Stop` that listens already, where one does.
    """
    if stop is None:
        with Stop() as stop:
            return main(arguments, stop)
    run = None
    try:
        stop.heed()
        given = _parser().parse_args(arguments)
        choices = read_choices(given.style) if given.style else Choices()
        wish = checked(Wish(given.paper, given.unit, given.date, _cloth(choices.cloth, given), _seconds(given.search)))
        wearers = read_rows(given.wearers)
        fittings = _fittings(given.fittings)
        into = _made(Path(given.into))
        for text in (*(f"Note: {one}." for one in choices.said), *(f"Note: {one}" for one in mended(into))):
            _tell(text)
        run = _Run(wearers, choices, fittings, into, wish, given.again, stop)
        return run.run()
    except CorsetkitError as refusal:
        print(f"Nothing was written: {str(refusal).removesuffix('.')}.", file=sys.stderr)
        return NOT_BEGUN
    except KeyboardInterrupt:
        stop.later()
        if run is None:
            print("Nothing was written: stopped by hand.", file=sys.stderr)
        else:
            run.sum_up("stopped by hand")
        return STOPPED


def _parser():
    parser = argparse.ArgumentParser(
        "python -m corsetkit",
        description="Draft a corset for every wearer of a table, and write for each a folder: the "
        "pattern to print "
        "and cut, the draft by hand, SVG and DXF in millimetres, the lists of pieces and seams, the cutting "
        "plans, and the order of sewing.",
    )
    parser.add_argument("wearers", metavar="WEARERS.csv", help=_WORDS["wearers"])
    parser.add_argument("--into", required=True, metavar="FOLDER", help=_WORDS["into"])
    parser.add_argument("--style", metavar="FILE", help=_WORDS["style"])
    parser.add_argument("--fittings", metavar="FILE", help=_WORDS["fittings"])
    parser.add_argument("--cloth", metavar="WIDTH", help=_WORDS["cloth"])
    parser.add_argument("--search", metavar="SECONDS", help=_WORDS["search"])
    parser.add_argument("--paper", default="A4", metavar="PAPER", help=_WORDS["paper"])
    parser.add_argument("--unit", default="in", metavar="UNIT", help=_WORDS["unit"])
    parser.add_argument("--date", metavar="DATE", help=_WORDS["date"])
    parser.add_argument("--again", action="store_true", help=_WORDS["again"])
    return parser


def _cloth(cloth, given):
    """The file's cloth, or one as wide as is said beside it."""
    if given.cloth is None:
        return cloth
    width = next(one for one in quantities(Cloth) if one.name == "width")
    return cloth.replaced(width=width.read(given.cloth, check_unit(given.unit), "--cloth: "))


def _seconds(text):
    """How long is searched; None for the plain lays."""
    if text is None:
        return None
    try:
        number = float(text)
    except ValueError:
        number = text
    return checked_seconds(number)


def _fittings(path):
    """The kept corrections; a file that was named has to be there."""
    if path is None:
        return Kept()
    if not Path(path).is_file():
        raise CorsetkitError(f"{path} cannot be read: there is no such file")
    return read_file(path)


def _made(into):
    """The folder, made where it is not there yet."""
    try:
        into.mkdir(parents=True, exist_ok=True)
    except FileExistsError:
        raise CorsetkitError(f"{into} is no folder: name another one") from None
    except (OSError, ValueError) as error:
        raise CorsetkitError(f"the folder {into} cannot be made: {getattr(error, 'strerror', None) or error}") from None
    return into


def _tell(text, to=None):
    # Through the bar's own way of writing, so that it does not break the line.
    tqdm.write(text, file=to or sys.stderr)


def _short(name):
    """A name in a line of the terminal."""
    return name if len(name) <= 40 else f"{name[:37]}..."


class _Run:
    """One run over the wearers, and what has come of it."""

    def __init__(self, wearers, choices, fittings, into, wish, again, stop):
        self.wearers, self.choices, self.fittings = wearers, choices, fittings
        self.into, self.wish, self.again, self.stop = into, wish, again, stop
        names = [row.name for row in wearers]
        self.called, self.whose = names_apart(names), whose(fittings, names)
        self.written, self.refused = {}, {}

    def run(self):
        """Write each wearer's folder, say what became of it, and return what the command ends with."""
        stopped = ""
        for name in self.whose.nobody:
            _tell(f"The corrections for {shown(name)} are not used: no wearer of the table is called so.")
        # None shows it where someone looks on, and not in a log.
        hidden = None if len(self.wearers) > 1 else True
        # A row that cannot be used is told like a body that cannot be drafted; the others go on.
        with tqdm(self.wearers, unit="wearer", file=sys.stderr, disable=hidden) as bar:
            for row in bar:
                self.stop.heed()
                bar.set_postfix_str(self.called[row.name].file.text, refresh=False)
                if why := row.refused or self.whose.of.get(row.name):
                    self._refuse(row.name, why, False)
                elif stopped := self._write(row.name, row.body):
                    break
        self.stop.heed()
        self.stop.later()
        self.sum_up(stopped)
        if self.stop.asked:
            return STOPPED
        return ALL if len(self.written) == len(self.wearers) and not self.whose.nobody else NOT_ALL

    def _write(self, name, body):
        """Write one folder; why the rest need not be tried, or nothing."""
        called = self.called[name]
        try:
            made = write_all(
                name,
                body,
                self.choices.style,
                self.choices.finish,
                self.fittings.of(name),
                self.into / called.file.text,
                wish=self.wish,
                called=called,
                again=self.again,
                placing=self.stop.later,
            )
        except CorsetkitError as refusal:
            self.stop.heed()
            return self._refuse(name, str(refusal), disk_refused(refusal))
        except Exception as mistake:
            # A module that was being loaded may have made this of a Ctrl-C.
            self.stop.heed()
            # A mistake of ours with one body is no reason to leave the others without a pattern.
            return self._refuse(
                name, f"a mistake in this program, not in the numbers ({type(mistake).__name__}: {mistake})", False
            )
        # Until this is told, Ctrl-C has to wait: what stands in its place is counted.
        self.written[name] = made
        _tell(str(made), sys.stdout)
        return ""

    def _refuse(self, name, why, by_disk):
        why = why.replace("ask for it to be written again", "add --again")
        self.refused[name] = why
        _tell(f"{_short(name)}: not written: {' '.join(why.split())}")
        return "the disk is in the way" if by_disk else ""

    def sum_up(self, stopped):
        """Say what was written, what was not, and why not."""
        told = {}
        for name, made in self.written.items():
            for text in made.said:
                told.setdefault(text, []).append(name)
        for text, names in told.items():
            whom = ", ".join(map(_short, names))
            _tell(f"Note: {text}" if len(names) == len(self.written) else f"Note, {whom}: {text}")
        count, all_of_them = len(self.written), len(self.wearers)
        print(
            f"{count} of {all_of_them} {'wearer' if all_of_them == 1 else 'wearers'} written into {self.into}."
            + (f" The rest was not tried: {stopped}." if stopped and count + len(self.refused) < all_of_them else "")
            + (f" Not written: {', '.join(map(_short, self.refused))}." if self.refused else "")
            + (
                f" Corrections of nobody in the table: {', '.join(map(_short, self.whose.nobody))}."
                if self.whose.nobody
                else ""
            )
        )
        if count:
            print("Print at 100 % and measure the test square before cutting.")
            if self.wish.seconds is None:
                print("The cutting plans lie in rows: with --search 2 a closer lay is looked for, two seconds for each cloth.")
