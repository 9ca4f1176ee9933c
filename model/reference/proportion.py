"""Proportions that published authors advise. Guides to hold a design beside, never rules."""

from model.reference.sourced import Sourced, Standing

VIGNOLA = "Vignola, Regola, in Moxon's English edition, 1673"
RUDIMENTS = "Rudiments of Ancient Architecture, 1810"
LE_MUET = "Palladio's First Book with Le Muet's additions, Richards's English edition, 1668, ch. 36-40"
SERLIO_DORIC = "Serlio, Book IV, English edition, 1611, ch. 6"
SERLIO_IONIC = "Serlio, Book IV, English edition, 1611, ch. 7"
SERLIO_CORINTHIAN = "Serlio, Book IV, English edition, 1611, ch. 8"
MORRIS = "Robert Morris, Lectures on Architecture, 1734"
USUAL = "usual heights of mantels; trade pages differ"


def _ratio(value: float, source: str) -> Sourced:
    return Sourced(value, "ratio", Standing.PUBLISHED, source)


ENTABLATURE_TO_COLUMN = _ratio(1 / 4, VIGNOLA)
INDOOR_ENTABLATURE_TO_COLUMN = _ratio(1 / 5, RUDIMENTS)

TUSCAN_DIAMETERS = _ratio(7.0, VIGNOLA)
CORINTHIAN_DIAMETERS = _ratio(10.0, VIGNOLA)
"""Height of the column in its own widths: the stoutest order and the slimmest."""

ARCHITRAVE_TO_OPENING_LOW = _ratio(1 / 6, LE_MUET)
ARCHITRAVE_TO_OPENING_HIGH = _ratio(1 / 5, LE_MUET)
FRIEZE_TO_ARCHITRAVE = _ratio(3 / 4, LE_MUET)
CORNICE_TO_ARCHITRAVE = _ratio(5 / 4, LE_MUET)
"""Architrave, frieze and cornice are as 4, 3 and 5."""

DORIC_OPENING_HEIGHTS = _ratio(4.5, SERLIO_DORIC)
DORIC_OPENING_HEIGHTS_SMALL = _ratio(7.0, SERLIO_DORIC)
"""The opening's height in widths of the pilaster: in general, and for a small room."""
IONIC_WIDTHS_TO_ARCHITRAVE = _ratio(8.0, SERLIO_IONIC)
"""Height up to the architrave in widths of the support."""
CORINTHIAN_TO_OPENING = _ratio(1 / 6, SERLIO_CORINTHIAN)
CORINTHIAN_TO_OPENING_SEEMLY = _ratio(1 / 8, SERLIO_CORINTHIAN)
CARVED_FRIEZE_TO_HEAD = _ratio(5 / 4, SERLIO_CORINTHIAN)

SHELF_OVER_FLOOR_LOW = Sourced(48.0, "in", Standing.COMMON_PRACTICE, USUAL)
SHELF_OVER_FLOOR_HIGH = Sourced(60.0, "in", Standing.COMMON_PRACTICE, USUAL)

ROOT_TO_OPENING = _ratio(1 / 2, MORRIS)
"""The opening is high half the root of the room's length and height, wide half the root of its length,
breadth and height; all in feet."""
