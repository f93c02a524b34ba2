"""Bodies from all over what each measurement allows alone, however unlike anybody: each is drafted, or refused in a sentence.

    .venv/bin/python tests/fuzz.py 5000

drafts so many, in turn to the wearer and by the guides, with and without yoke, and says what became of them.
"""

import random
import sys
import time
import traceback
from collections import Counter

from corsetkit import CorsetkitError, Measurements, Style, demo_wearers, draft
from corsetkit.quantity import quantities

STYLES = (
    Style(),
    Style(cup_parts=2),
    Style(method="guides"),
    Style(yoke=False),
    Style(method="guides", yoke=False, cup_parts=2),
)


def bodies_from_everywhere(count, seed):
    """So many bodies that `Measurements` accepts: half of them drawn evenly over all sixteen ranges, half demo wearers with
    some measurements changed to anywhere in theirs."""
    draw, known, found = random.Random(seed), [body for _, body in demo_wearers()], 0
    limits = quantities(Measurements)
    while found < count:
        values = {one.name: draw.uniform(one.low, one.high) for one in limits}
        if draw.random() < 0.5:
            values["high_bust_girth"] = None
        if draw.random() < 0.5:
            values["bust_point_to_fold"] = None
        if found % 2:
            body, share = draw.choice(known), draw.uniform(0.05, 0.6)
            values = {name: value if draw.random() < share else getattr(body, name) for name, value in values.items()}
        try:
            yield Measurements(**values)
        except CorsetkitError:
            continue
        found += 1


def fuzzed(count, seed):
    """What became of so many bodies: a Counter of "drafted" and "refused", and a line for each that was neither."""
    became, wrong = Counter(), []
    for number, body in enumerate(bodies_from_everywhere(count, seed)):
        try:
            draft(body, STYLES[number % len(STYLES)])
            became["drafted"] += 1
        except CorsetkitError as refusal:
            said = str(refusal)
            became["refused"] += 1
            if "\n" in said or not 20 < len(said) < 500:
                wrong.append(f"no one sentence: {said!r}")
        except Exception as error:
            place = traceback.extract_tb(error.__traceback__)[-1]
            wrong.append(f"{type(error).__name__} at {place.name}, line {place.lineno}: {error}; {body!r}")
    return became, wrong


if __name__ == "__main__":
    began, count = time.perf_counter(), int(sys.argv[1]) if sys.argv[1:] else 5000
    became, wrong = fuzzed(count, seed=int(sys.argv[2]) if sys.argv[2:] else 1)
    print(
        f"{count} bodies in {time.perf_counter() - began:.0f} s: {became['drafted']} drafted, {became['refused']} refused in "
        f"one sentence, {len(wrong)} otherwise"
    )
    print(*wrong[:20], sep="\n")
    sys.exit(bool(wrong))
