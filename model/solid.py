"""What space a board fills and where the middle of it lies; what it weighs is model.takeoff.weight's."""

from __future__ import annotations

from dataclasses import replace

from model.board import AXES, CROSS, Board, End, Point2, Point3


def fill_space(board: Board) -> tuple[float, Point3]:
    """Cubic inches, and the centre of gravity in the room; exact: ends are planes, holes are off."""
    volume, centre = _fill_unbored(board)
    if not board.bores:
        return volume, centre
    left = volume - sum(bore.volume for bore in board.bores)
    x, y, z = (
        (volume * centre[i] - sum(bore.volume * bore.middle[i] for bore in board.bores)) / left
        for i in range(3)
    )
    return left, (x, y, z)


def _fill_unbored(board: Board) -> tuple[float, Point3]:
    """Volume and centre of gravity of a board before it is bored.

    Reckoned from one of its own corners: from the room's origin, little of a small piece would be left of
    differences of large numbers.
    """
    if board.is_box:
        (x0, y0, z0), (x1, y1, z1) = board.bounds
        return (x1 - x0) * (y1 - y0) * (z1 - z0), ((x0 + x1) / 2, (y0 + y1) / 2, (z0 + z1) / 2)
    u0, v0 = board.section[0]
    t0 = board.low.position(u0, v0)
    low, high = (replace(end, at=end.position(u0, v0) - t0) for end in (board.low, board.high))
    area, first, second = _moments([(u - u0, v - v0) for u, v in board.section])
    rise = tuple(getattr(high, s) - getattr(low, s) for s in ("at", "slope_u", "slope_v"))
    volume = rise[0] * area + rise[1] * first[0] + rise[2] * first[1]
    uu, uv, vv = second
    u = (rise[0] * first[0] + rise[1] * uu + rise[2] * uv) / volume
    v = (rise[0] * first[1] + rise[1] * uv + rise[2] * vv) / volume
    along = sum(sign * _squared(end, area, first, second) for sign, end in ((1, high), (-1, low)))
    at = [0.0, 0.0, 0.0]
    iu, iv = CROSS[board.axis]
    at[iu], at[iv], at[AXES.index(board.axis)] = u0 + u, v0 + v, t0 + along / (2 * volume)
    return volume, (at[0], at[1], at[2])


def _squared(end: End, area: float, first: tuple[float, float], second: tuple[float, float, float]) -> float:
    """The end's place along the grain, squared, summed over the section."""
    at, su, sv = end.at, end.slope_u, end.slope_v
    linear = 2 * at * (su * first[0] + sv * first[1])
    return at * at * area + linear + su * su * second[0] + 2 * su * sv * second[1] + sv * sv * second[2]


def _moments(section: list[Point2]) -> tuple[float, tuple[float, float], tuple[float, float, float]]:
    """Of the section: area; sums of u and v; sums of uu, uv and vv."""
    area = su = sv = uu = uv = vv = 0.0
    for (a, b), (c, d) in zip(section, section[1:] + section[:1], strict=True):
        cross = a * d - c * b
        area += cross / 2
        su += (a + c) * cross / 6
        sv += (b + d) * cross / 6
        uu += (a * a + a * c + c * c) * cross / 12
        uv += (a * d + 2 * a * b + 2 * c * d + c * b) * cross / 24
        vv += (b * b + b * d + d * d) * cross / 12
    return area, (su, sv), (uu, uv, vv)
