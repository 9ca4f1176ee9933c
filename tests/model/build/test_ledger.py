"""What could not be built as asked is noted once for each value, and only then."""

from model.build.ledger import LEFT_OUT, Ledger, Shortfall


def test_a_value_built_as_asked_is_not_noted():
    ledger = Ledger()
    assert ledger.hold("bed_mould.size", 1.5, 1.5 + 1e-12, "never") == 1.5 + 1e-12
    assert ledger.shortfalls == []


def test_the_first_reason_stands():
    ledger = Ledger()
    ledger.hold("bed_mould.size", 4, 2, "the overhang")
    ledger.hold("bed_mould.size", 4, 1, "something else")
    ledger.swap("capital.profile", "own_1", LEFT_OUT, "no room")
    assert ledger.shortfalls == [
        Shortfall("bed_mould.size", 4, 2, "the overhang"),
        Shortfall("capital.profile", "own_1", LEFT_OUT, "no room"),
    ]
