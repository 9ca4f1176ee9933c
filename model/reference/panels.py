"""Figures for solid panels that float in grooves, each with its source; built by in model.build.groove."""

from model.reference.sourced import Sourced, Standing

FREE = "ANSI/AWI 0622, 3.3 b: panels must be free to move"
USUAL_DEPTH = Sourced(3 / 8, "in", Standing.COMMON_PRACTICE, "depth of a groove for a 1/4 in. panel")
PLAY = Sourced(
    1 / 32, "in", Standing.SHOP_CHOICE, "left free at either edge at the dampest, beyond what it swells"
)
ENDS = Sourced(
    1 / 16,
    "in",
    Standing.PUBLISHED,
    "an exchange of woodworkers on what panels need to expand, second-hand: a solid panel, lengthways",
)
LEAST_HELD = Sourced(
    1 / 16, "in", Standing.SHOP_CHOICE, "still in its groove at the driest, pushed over to the other edge"
)
LEAST_WEB = Sourced(1 / 4, "in", Standing.SHOP_CHOICE, "wood left beside a groove, or between two")
CHEEK = Sourced(1 / 8, "in", Standing.SHOP_CHOICE, "wood left behind a panel's groove")
A_FOOT = Sourced(
    1 / 8,
    "in per ft",
    Standing.PUBLISHED,
    "a page of woodworking tips on panels in frames, second-hand: allow up to 1/8 in. for 12 in. of width",
)
"""The rule of thumb that movement is held beside; nothing is built by it."""
