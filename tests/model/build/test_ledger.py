"""What could not be built as asked is noted once for each value, as it is worst, and only then."""

from model.build.ledger import LEFT_OUT, Ledger, Shortfall


def test_a_value_built_as_asked_is_not_noted():
    ledger = Ledger()
    assert ledger.hold("bed_mould.size", 1.5, 1.5 + 1e-12, "never") == 1.5 + 1e-12
    assert ledger.shortfalls == []


def test_what_is_furthest_from_what_was_asked_is_noted():
    ledger = Ledger()
    ledger.hold("bed_mould.size", 4, 2, "the overhang")
    ledger.swap("capital.profile", "own_1", LEFT_OUT, "no room")
    ledger.hold("bed_mould.size", 4, 3, "something less")
    ledger.hold("bed_mould.size", 4, 1, "something more")
    ledger.hold("bed_mould.size", 4, 1, "something as much")
    assert ledger.shortfalls == [
        Shortfall("bed_mould.size", 4, 1, "something more"),
        Shortfall("capital.profile", "own_1", LEFT_OUT, "no room"),
    ]


def test_the_first_reason_for_another_choice_stands():
    ledger = Ledger()
    ledger.swap("capital.profile", "own_1", LEFT_OUT, "no room")
    ledger.swap("capital.profile", "own_1", "ogee", "something else")
    assert ledger.shortfalls == [Shortfall("capital.profile", "own_1", LEFT_OUT, "no room")]
