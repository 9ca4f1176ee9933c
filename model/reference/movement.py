"""How much wood swells and shrinks across its grain. What is done about it belongs to the checks."""

from model.reference.sourced import Sourced, Standing

TABLE_13_5 = "Wood Handbook FPL-GTR-190, equation 13-2 and Table 13-5, flat-sawn"
FROM_SHRINKAGE = "Wood Handbook FPL-GTR-190, coefficient from the shrinkage in Table 4-3, flat-sawn"


def _change(value: float, source: str = TABLE_13_5, standing: Standing = Standing.PUBLISHED) -> Sourced:
    return Sourced(value, "per % moisture", standing, source)


ACROSS = {
    "poplar": _change(0.00289, FROM_SHRINKAGE),
    "white_pine": _change(0.00212, FROM_SHRINKAGE),
    "ponderosa": _change(0.00216, FROM_SHRINKAGE, Standing.FROM_MEMORY),
    "maple": _change(0.00353),
    "red_oak": _change(0.00369),
    "white_oak": _change(0.00365),
    "cherry": _change(0.00248),
    "walnut": _change(0.00274),
    "alder": _change(0.00256),
    "basswood": _change(0.00330),
}
"""Change of width for each percent of moisture, 6 to 14 %; by the words for species."""
