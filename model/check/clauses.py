"""What each check asks, in our own words: clauses by the name they have in findings, and what has no clause.

The arithmetic of a finding is model.check.sums', its page model.check.explain's.
"""

from __future__ import annotations

from model.check.anchors import CHECK as ANCHORS
from model.check.chart import AMENDMENT, CHART
from model.check.cord_way import CHECK as CORD_WAY
from model.check.holding import FIXING, SAG, WEIGHED
from model.check.joinery import CHECK as JOINTS
from model.check.mantel import CHECK as MANTEL
from model.check.mantel import IRC_RULE, NBC_RULE, NFPA211_RULE
from model.check.manuals_hearth import CHECK as HEARTH
from model.check.manuals_hearth import MANUAL
from model.check.nailers_held import CHECK as HELD
from model.check.panels import CHECK as PANELS
from model.check.plain import FIT, SURVEY
from model.check.plinths import CHECK as PLINTHS
from model.check.television import CHECK as TELEVISION
from model.check.zone import CHECK as ZONE

CLAUSES = {
    IRC_RULE.name: (
        "Exposed wood may lie on the masonry front, but none of it within 6 in. of the opening. Within 12 "
        "in. it may stand out no more than 1/8 in. for each inch of distance; from 12 in. on it is free. "
        "Top and sides alike. Distance is taken in the plane of the front from the opening's edge, "
        "projection square out from the masonry to the finished face, furring included."
    ),
    NFPA211_RULE.name: (
        "No woodwork within 6 in. of the opening. What stands out more than 1 1/2 in. keeps 12 in. above the "
        "opening, and beside it 6 in. and as much again as it stands out."
    ),
    NBC_RULE.name: (
        "Nothing that burns within 150 mm of the opening. What stands out more than 38 mm above the opening "
        "keeps 300 mm over its top."
    ),
    CHART: (
        "The appliance's manual governs, and no other figure does. Its table gives the least height for each "
        "greatest projection, and the least distance for what stands beside the opening."
    ),
    AMENDMENT: (
        "The place has enacted its own distances: the least for each greatest projection, above the opening "
        "and beside it."
    ),
    "IRC R1001.10": (
        "Before an opening under 6 sq ft the hearth reaches 16 in. out and 8 in. beyond each side; before "
        "one of 6 sq ft or more 20 in. and 12 in. The front counts from the opening."
    ),
    "IRC R1001.9.2": (
        "The hearth in front is 2 in. thick at least; 3/8 in. are enough where the firebox's floor lies 8 "
        "in. or more above it."
    ),
    "NFPA 211 11.3": (
        "Before an opening under 6 sq ft the hearth reaches 16 in. out and 8 in. beyond each side; before "
        "one of 6 sq ft or more 20 in. and 12 in. The front counts from the finished facing; 2 in. thick."
    ),
    "NBC 9.22.5.1": (
        "The hearth reaches 400 mm in front of the facing and 200 mm beyond each side; further where the "
        "fire's floor lies more than 150 mm above it."
    ),
    "NBC 9.22.5.2": "The slab is 100 mm thick at its supports and 50 mm at a cantilevered edge.",
    "ABCB 12.4.2": (
        "The hearth reaches 300 mm in front and 150 mm beyond each side of the opening; nothing that burns "
        "lies within 150 mm below its top."
    ),
    "AD J Diagrams 24 and 25": (
        "The constructional hearth reaches 500 mm in front of the jambs and 150 mm beyond each side."
    ),
    "AD J constructional hearth": "A hearth under an open fire is 125 mm thick at least.",
    "IRC R1001.11": (
        "Framing and all else that burns keeps 2 in. of air off the front and sides of a masonry fireplace "
        "and 4 in. off its back. Exposed mantels and trim are excepted; hidden blocking is not plainly so."
    ),
    "NEC": (
        "A flexible cord may not stand in for wiring, run through walls, ceilings or floors, or be hidden by "
        "them. Low-voltage cable inside a dwelling's wall carries an in-wall rating, CL2 or CL3, or better."
    ),
    "40 CFR 745.83": (
        "In a house built before 1978 work for pay that disturbs more than 6 sq ft of painted surface in a "
        "room falls under the renovation rule. A part that comes off counts with its whole surface; jobs in "
        "one room within 30 days are added up."
    ),
    "asbestos": (
        "Old board, paper and cement sheet round a fireplace may hold asbestos. Sound material is left "
        "alone; what is to be drilled, sawn or taken off is tested before, and taken out by trained people."
    ),
    MANUAL: "The appliance's own manual says how large the hearth before it must be.",
    "IRC R1004.2": "The hearth before a factory-built fireplace is what its listing says.",
}
"""Each clause in our own words, by the name it has in findings."""
ASKED = {
    FIT: "No clause stands behind this: it follows from how the parts go together and what room there is.",
    SURVEY: "No clause stands behind this: measurements are held against one another.",
    ZONE: "The manual wants stone, tile, brick or metal there, and nothing that burns behind it.",
    MANTEL: (
        "Nothing that is known here gives a figure for wood round this opening, and none is offered. Figures "
        "for masonry do not hold for an appliance: its manual has its own."
    ),
    HEARTH: "Nothing that is known here says how large this hearth must be, and no figure is offered.",
    SAG: (
        "The shelf is taken as a beam on the two columns, its boards not glued to each other: five times the "
        "load on each inch times the span to the fourth, over 384 times stiffness and moment of inertia. In "
        "time seasoned wood sags half as much again."
    ),
    WEIGHED: (
        "The same beam with one weight more at its middle, whether somebody leaves a heavy thing there or "
        "leans on it: the weight times the span to the third, over 48 times stiffness and moment of inertia. "
        "It is taken off again, so that nothing is added for time."
    ),
    FIXING: (
        "Whoever leans on the front edge turns the shelf about the frieze's face; the screws at its back "
        "hold against that. What a screw may hold is the wood's specific gravity squared, times its "
        "diameter, times 2850 lb, for each inch of thread."
    ),
    HELD: (
        "Every nailer wants anchors of its own: one near each end and the rest no further apart than is set, "
        "in masonry away from its edges and the opening's, or in framing beside or over it, and not at the "
        "nailer's own edge. They may lie on any line in its width and be moved along it by half a bay. What "
        "has none is held by nothing and is counted for nothing."
    ),
    TELEVISION: "A seated person should not have to look up more than 15 degrees to the screen's middle.",
    ANCHORS: (
        "The whole weight is hung on the upper anchors, as if no foot bore any of it: what tips it forward "
        "is the weight times how far out it acts, what holds it the anchors times how high over the feet "
        "they are. The shares of pull and shear that are used are added up. Where an anchor was tested, at "
        "most a fifth of what it held on average is allowed: a safety factor of 5."
    ),
    JOINTS: (
        "Wood moves across its grain and not along it, so that a mitre opens at one end by the movement of "
        "a piece's width times the root of two; 1/16 in. may show. Stiles and rails are 3/4 in. thick, and "
        "wide enough for the screws or dowels that hold them square."
    ),
    PLINTHS: (
        "No clause stands behind this: a baseboard ends against the side of a plinth, and one that is higher "
        "shows its end over it."
    ),
    PANELS: (
        "Panels of solid wood must be free to move in their frames. A panel is cut so much short of the "
        "grooves' bottoms that it still has play when the room's air is at its dampest, and the grooves are "
        "so deep that it stays in them when it is driest, even if it slid over to one side. It is not "
        "glued; a pin in the middle of each end keeps it centred. Along the grain wood hardly moves."
    ),
    CORD_WAY: (
        "No clause stands behind this: the plug has to pass, holes stay clear of edges, and cords keep out "
        "of where wood may not be."
    ),
}
"""What is asked where no clause is named, by check."""
