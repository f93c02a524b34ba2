"""The learner's cutting plans in a file for each wearer, read back only while the pieces are the same."""

from corsetkit.errors import CorsetkitError
from corsetkit.lay import kept
from corsetkit.lay.items import fingerprint
from corsetkit.showing.names import file_name


class KeptPlanFile:
    """The plans kept for the wearers of a desk, one for each cloth; without a folder they last as long as this does."""

    def __init__(self, desk):
        self.desk = desk
        self._memory = {}
        self._seen, self._read = None, None

    def read(self, name, items):
        """The wearer's `KeptPlans`, given the items of each cloth; what cannot be read is told among what is obsolete."""
        prints = tuple(map(fingerprint, items.values()))
        path = self._path(name)
        if path is None:
            return kept.KeptPlans({layer: one for layer, one in self._memory.items() if one.fingerprint in prints})
        try:
            seen = path, path.stat().st_mtime_ns, prints
        except OSError:
            seen = None
        if seen is None or seen != self._seen:
            # Each plan is checked as it is read, which takes longer than to look at the file's time.
            self._seen, self._read = seen, _read(path, items)
        return self._read

    def keep(self, name, items, plan):
        """Keep a plan in the place of the one of the same cloth; CorsetkitError where the disk is in the way."""
        path = self._path(name)
        if path is None:
            self._memory[plan.layer] = plan
            return
        self.desk.make_folder()
        # What cannot be read, or belongs to other pieces, holds no plan that could be lost.
        kept.write_file(path, ({**_read(path, items).plans, plan.layer: plan}).values())
        self._seen = None

    def _path(self, name):
        return self.desk.folder / f"cutting_plans_{file_name(name)}.json" if self.desk.folder else None


def _read(path, items):
    try:
        return kept.read_file(path, items)
    except CorsetkitError as error:
        return kept.KeptPlans({}, (f"{error}; lay the pieces again",))
