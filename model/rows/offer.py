"""What the homeowner is offered: prices of work, percentages, words about what is in and what is out."""

from __future__ import annotations

from model.measures import HOUR, MONEY, PERCENT
from model.rows.kinds import choice, text, yes_no
from model.rows.row import Kind, Parameter
from model.rows.words import OFFERED

GROUP = "Offer"
IN_IT = (
    "Making the surround as drawn, out of the wood and sheets named here\n"
    "Bringing it, fitting it to wall and hearth, fastenings, filling and sanding"
)
NOT_IN_IT = (
    "Masonry, chimney, gas and electrical work, and repairs to them\n"
    "Permits and inspections; what is found behind the old surround and cannot be seen today\n"
    "Moving furniture, covering floors in other rooms, painting walls"
)
"""What an offer begins with, a line for each thing, until the maker writes another. Shop choices."""


def _money(path: str, label: str, help: str) -> Parameter:
    return Parameter(
        path, label, GROUP, Kind.NUMBER, None, help, 0, 1_000_000, 1, optional=True, measure=MONEY
    )


def _percent(path: str, label: str, help: str) -> Parameter:
    return Parameter(path, label, GROUP, Kind.NUMBER, 0.0, help, 0, 200, 1, measure=PERCENT)


def _hours(path: str, label: str, help: str) -> Parameter:
    return Parameter(path, label, GROUP, Kind.NUMBER, None, help, 0, 2000, 0.5, optional=True, measure=HOUR)


# fmt: off
OFFER_ROWS: tuple[Parameter, ...] = (
    _money("offer.hour", "Work, an hour",
           "What an hour costs the homeowner, in the stock list's currency; leave empty until it is set."),
    _hours("offer.hours", "Hours of work", "All of it together; leave empty for the hours by kind below."),
    _hours("offer.cutting_hours", "Hours of cutting", "Leave empty for the hours of the steps."),
    _hours("offer.building_hours", "Hours of building", "Leave empty for the hours of the steps."),
    _hours("offer.fitting_hours", "Hours of fitting", "On site; leave empty for the hours of the steps."),
    _hours("offer.finishing_hours", "Hours of finishing", "Leave empty for the hours of the steps."),
    _money("offer.sundries", "Fastenings and finish",
           "Screws, nails, glue, filler, primer and paint together; leave empty to add up what is used, at "
           "the stock list's prices."),
    _percent("offer.waste", "Waste allowance",
             "On wood, for what is spoiled or found unsound; the plan's offcuts are paid for already."),
    _percent("offer.overhead", "Overhead", "On wood, fastenings, finish and work."),
    _percent("offer.margin", "Margin", "On all of that with the overhead."),
    _percent("offer.tax", "Tax", "On everything."),
    choice("offer.shows", "Price shown", GROUP, OFFERED, "Which lines the homeowner sees."),
    yes_no("offer.waste_shown", "Waste shown", GROUP, True, "As a line, or spread over the wood."),
    yes_no("offer.overhead_shown", "Overhead shown", GROUP, True, "As a line, or spread over the others."),
    yes_no("offer.margin_shown", "Margin shown", GROUP, True, "As a line, or spread over the others."),
    yes_no("offer.tax_shown", "Tax shown", GROUP, True, "As a line, or named with the total."),
    text("offer.colour", "Colour and finish", GROUP, "What the homeowner chose, in words."),
    text("offer.promised", "In the price", GROUP, "A line for each thing that is in the price of every job.",
         IN_IT),
    text("offer.included", "Included as well", GROUP, "A line for each thing that is in the price besides."),
    text("offer.left_out", "Not in the price", GROUP, "A line for each thing that is in no job's price.",
         NOT_IN_IT),
    text("offer.excluded", "Not included as well", GROUP, "A line for each thing that is not."),
    text("offer.allowances", "Allowances", GROUP,
         "A line for each sum set aside for what is not known yet, such as wood found rotten."),
    text("offer.terms", "Payment and dates", GROUP, "A line for each: when is paid, when is begun."),
    text("offer.notes", "Notes on the offer", GROUP, "Anything else that the homeowner is to read."),
    Parameter("offer.days", "Offer holds, days", GROUP, Kind.COUNT, 30, "From the date on the sheets.",
              1, 365, 1),
)
# fmt: on
