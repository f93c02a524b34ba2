"""Where a function of one number is zero: bracketed, so that it cannot run away."""

from collections.abc import Callable


def root(function: Callable[[float], float], low: float, high: float, tolerance: float = 1e-12) -> float:
    """A number in [low, high] at which `function` is zero.

    Regula falsi with halved weights (Illinois), with a bisection where it stalls.
    Raises ValueError where the two ends do not bracket a root: callers turn that into a sentence.
    """
    at_low, at_high = function(low), function(high)
    if at_low == 0:
        return low
    if at_high == 0:
        return high
    if (at_low > 0) == (at_high > 0):
        raise ValueError("no change of sign between the ends")
    kept = 0
    for _ in range(100):
        middle = (low * at_high - high * at_low) / (at_high - at_low)
        if not low < middle < high:
            middle = (low + high) / 2
        value = function(middle)
        if value == 0 or high - low < tolerance:
            return middle
        if (value > 0) == (at_low > 0):
            if low == middle:
                return middle
            step, low, at_low = middle - low, middle, value
            if kept == 1:
                at_high /= 2
            kept = 1
        else:
            if high == middle:
                return middle
            step, high, at_high = high - middle, middle, value
            if kept == -1:
                at_low /= 2
            kept = -1
        if abs(step) < tolerance and abs(value) < tolerance:
            return middle
    return (low + high) / 2


def root_near(function: Callable[[float], float], guess: float, low: float, high: float, tolerance: float = 1e-12) -> float:
    """A number in [low, high] at which `function` is zero, where a good guess is at hand.

    The secant method from the guess, which takes a few steps where the function is nearly straight; where it leaves
    the bracket or does not settle, `root` serves, and raises ValueError where there is no root to find.
    """
    last, at_last = guess, function(guess)
    now = guess + 1e-3 * (high - low)
    for _ in range(12):
        if abs(at_last) < tolerance:
            return last
        value = function(now)
        if value == at_last:
            break
        step = value * (now - last) / (value - at_last)
        last, at_last, now = now, value, now - step
        if not low <= now <= high:
            break
        if abs(step) < tolerance:
            return now
    return root(function, low, high, tolerance)


def bernstein_roots(b0: float, b1: float, b2: float, b3: float) -> list[float]:
    """The numbers t in [0, 1] at which the cubic with these Bernstein coefficients is zero, rising.

    Sign changes of the coefficients bound the number of roots (Descartes' rule in Bernstein form);
    where there is one change there is one root, found by Newton's method inside its bracket.
    """
    found: list[float] = []
    todo = [(b0, b1, b2, b3, 0.0, 1.0)]
    while todo:
        b0, b1, b2, b3, low, high = todo.pop()
        signs = [b > 0 for b in (b0, b1, b2, b3) if b != 0]
        changes = sum(a != b for a, b in zip(signs, signs[1:]))
        if b0 == 0:
            found.append(low)
        if b3 == 0:
            found.append(high)
        if changes == 0 or high - low < 1e-13:
            if changes and high - low < 1e-13:
                found.append((low + high) / 2)
            continue
        if changes == 1 and b0 != 0 and b3 != 0:
            found.append(low + (high - low) * _one_root(b0, b1, b2, b3))
            continue
        c01, c12, c23 = (b0 + b1) / 2, (b1 + b2) / 2, (b2 + b3) / 2
        d0, d1 = (c01 + c12) / 2, (c12 + c23) / 2
        middle, half = (d0 + d1) / 2, (low + high) / 2
        todo.append((middle, d1, c23, b3, half, high))
        todo.append((b0, c01, d0, middle, low, half))
    found.sort()
    return [t for i, t in enumerate(found) if i == 0 or t - found[i - 1] > 1e-12]


def _one_root(b0: float, b1: float, b2: float, b3: float) -> float:
    """The single root in (0, 1) of a cubic in Bernstein form whose ends have unlike signs."""
    c1, c2, c3 = 3 * (b1 - b0), 3 * (b2 - 2 * b1 + b0), b3 - 3 * b2 + 3 * b1 - b0
    low, high = 0.0, 1.0
    rising = b3 > b0
    t = b0 / (b0 - b3)
    for _ in range(60):
        value = ((c3 * t + c2) * t + c1) * t + b0
        if value == 0:
            return t
        if (value < 0) == rising:
            low = t
        else:
            high = t
        slope = (3 * c3 * t + 2 * c2) * t + c1
        nearer = t - value / slope if slope else low
        if not low < nearer < high:
            nearer = (low + high) / 2
        if abs(nearer - t) < 1e-15:
            return nearer
        t = nearer
    return t
