"""The learner's cutting plans in a file for each wearer, read back only while the pieces are the same."""

from corsetkit.errors import CorsetkitError
from corsetkit.lay import plan_file as kept
from corsetkit.lay.cloth import Cloth
from corsetkit.lay.items import fingerprint, items_of, layers_of
from corsetkit.lay.planning import plain_plan
from corsetkit.printing.names import file_name
from corsetkit.teaching.desk import PLANS


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

    def keep(self, name, items, plan) -> str:
        """Keep a plan in the place of the one of the same cloth; CorsetkitError where the disk is in the way.

        Where the file that is there cannot be read it is put beside, and the sentence that says so is given back. A plan of
        other pieces cannot be cut any more, and goes.
        """
        path = self._path(name)
        if path is None:
            self._memory[plan.layer] = plan
            return ""
        said = self.desk.rewrite(
            path.name, lambda there: kept.read_file(there, items),
            lambda there, found: kept.write_file(there, {**found.plans, plan.layer: plan}.values()))
        self._seen = None
        return said

    def _path(self, name):
        return self.desk.folder / f"{PLANS}{file_name(name)}.json" if self.desk.folder else None


def items_by_layer(finished):
    """The items of each cloth of a `Finished` pattern."""
    return {layer: items_of(finished, layer) for layer in layers_of(finished)}


def plans_at_hand(desk, name, finished):
    """A plan for each cloth of the wearer's pattern: the kept one, else the plain lay on the usual cloth.

    CorsetkitError where a piece cannot lie on that cloth.
    """
    items = items_by_layer(finished)
    found = KeptPlanFile(desk).read(name, items).plans
    return {layer: found.get(layer) or plain_plan(mine, Cloth(), layer) for layer, mine in items.items()}


def _read(path, items):
    try:
        return kept.read_file(path, items)
    except CorsetkitError as error:
        return kept.KeptPlans({}, (f"{error}; lay the pieces again",))
