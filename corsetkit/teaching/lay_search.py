"""One search for a closer lay: what it is given, and what comes of it."""

from dataclasses import dataclass

from corsetkit.errors import CorsetkitError
from corsetkit.lay.planning import plan, plan_further
from corsetkit.lay.planning import plain_plan
from corsetkit.errors import sentence


@dataclass(frozen=True)
class Search:
    """One search as it was asked for: `known` is the plan that is kept for this cloth, or None; another `offset` searches
    elsewhere."""

    items: tuple
    cloth: object
    layer: str
    known: object
    seconds: int
    offset: int


def searched(search, progress):
    """The best plan and a sentence; where the search itself fails, the plain lay and why."""
    try:
        if search.known:
            best = plan_further(search.known, search.items, search.seconds, progress, search.offset)
            closer = best.length < search.known.length - 1e-6
            return best, "A closer one was found." if closer else "No closer one was found in that time; the kept one stays."
        return plan(search.items, search.cloth, search.seconds, progress, search.layer, search.offset), "Laid, and kept."
    except CorsetkitError:
        raise
    except Exception as error:  # Whatever becomes of the search, cloth can be laid without it.
        best = search.known or plain_plan(search.items, search.cloth, search.layer)
        return best, sentence(f"No closer lay could be searched for ({type(error).__name__}: {error}), so the one that was "
                              "there stays")
