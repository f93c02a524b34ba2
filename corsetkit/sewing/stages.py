"""The whole order of sewing of one finished pattern."""

from corsetkit.sewing.closing import eyelets, lacing
from corsetkit.sewing.inside import back_edges, bones, lining, top_edge
from corsetkit.sewing.outside import inside_out
from corsetkit.sewing.preparing import cutting, layering, toile
from corsetkit.sewing.work import work_of


def sewing_order(finished):
    """The stages of sewing a `Finished` pattern, from the toile to the first lacing: a tuple of `Stage`.

    Every seam of the pattern is sewn in exactly one move, after the seams it crosses; every bone and eyelet of the bill
    is put in.
    """
    work = work_of(finished)
    return (toile(work), cutting(work), layering(work), *inside_out(work), back_edges(work), bones(work), top_edge(work),
            lining(work), eyelets(work), lacing(work))
