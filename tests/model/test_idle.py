"""A value without a say changes nothing that is built or found, and is named as such."""

from __future__ import annotations

import pytest

from model.check.all import check_surround
from model.idle import list_idle
from model.job import Job, default_job, read_value, with_value
from model.steps.finishing import list_finishing
from model.surround import plan_surround
from model.takeoff.takeoff import take_off

CHANGED = {
    "baseboard.thickness": 1.0,
    "baseboard.meets": "notched",
    "baseboard.thickness_left": 1.0,
    "baseboard.thickness_right": 1.0,
    "old_ledger.tall": 5.0,
    "old_ledger.thick": 1.0,
    "old_ledger.left": 30.0,
    "old_ledger.right": 30.0,
    "old_ledger.use": "remove",
    **{
        f"bolt_{which}.{row}": value
        for which in ("one", "two", "three")
        for row, value in (("up", 20.0), ("out", 2.0), ("diameter", 1.0))
    },
    "column.over_edge": "stepped",
    "level.floor_left": 30.0,
    "level.floor_right": 30.0,
    "outlet.height_left": 30.0,
    "outlet.height_right": 30.0,
    "outlet.width": 5.0,
    "outlet.tall": 6.0,
    "casing.bottom_left": 30.0,
    "casing.top_left": 60.0,
    "casing.bottom_right": 30.0,
    "casing.top_right": 60.0,
    "casing.proud": 2.0,
    "chart.shelf": ((0.75, 30.0),),
    "chart.legs": ((0.75, 30.0),),
    "chart.source": "another page",
    "chart.hood": True,
    "chart.shelf_hood": ((0.75, 30.0),),
    "chart.datum": "base",
    "chart.datum_height": 4.0,
    "chart.between": "linear",
    "chart.plus": 12.0,
    "chart.greatest": 2.0,
    "chart.none_above": 60.0,
    "chart.none_beside": 60.0,
    "local.shelf": ((0.75, 30.0),),
    "local.legs": ((0.75, 30.0),),
    "local.source": "another text",
    "local.hearth_front": 40.0,
    "local.hearth_side": 40.0,
    "local.hearth_thickness": 6.0,
    "facing.added": 2.0,
    "tv.gap": 5.0,
    "tv.eye": 40.0,
    "tv.away": 100.0,
    "house.painted": 20.0,
    "chart.hearth_front": 40.0,
    "chart.hearth_side": 40.0,
    "chart.hearth_thickness": 6.0,
    "bed_mould.profile": "crown_38",
    "bed_mould.size": 2.5,
    "capital.profile": "astragal",
    "capital.size": 3.0,
    "plinth_cap.profile": "bevel",
    "plinth_cap.size": 0.5,
    "panel_mould.profile": "cavetto",
    "panel_mould.size": 0.5,
    "back_band.profile": "torus",
    "back_band.size": 2.0,
    "shelf.edge_size": 0.5,
    "own_section.first": "ovolo 1 down, 1 back; foot 1/8",
    "own_section.second": "cavetto 1 down, 1 back; foot 1/8",
    "own_section.third": "cyma recta 1 down, 1 back; foot 1/8",
    "job.precision": "32",
    "column.stile": 2.0,
    "column.rail": 2.0,
    "column.panels": 2,
    "flute.count": 3,
    "flute.width": 0.5,
    "flute.depth": 0.125,
    "flute.between": 0.5,
    "flute.stop": 3.0,
    "raised.margin": 2.0,
    "raised.thickness": 0.75,
    "plinth.height": 10.0,
    "plinth.projection": 1.0,
    "plinth_cap.on": True,
    "panel_mould.on": True,
    "frieze.projection": 2.0,
    "frieze.stile": 3.0,
    "frieze.rail": 1.5,
    "frieze.panels": 2,
    "tablet.width": 12.0,
    "tablet.height": 4.0,
    "tablet.thickness": 0.25,
    "panel.kind": "solid",
    "panel.reveal": 0.25,
    "panel.grain": "free",
    "panel.thickness": 0.5,
    "shelf.edge_height": 3.0,
    "slip.width": 3.0,
    "over.reach": "height",
    "over.height": 20.0,
    "over.projection": 3.0,
    "over.stile": 2.0,
    "over.rail": 2.0,
    "over.panels": 2,
    "slip.thickness": 0.25,
    "piece_one.name": "old beam",
    "piece_one.length": 90.0,
    "piece_one.width": 9.0,
    "piece_one.thickness": 2.0,
    "piece_one.clear": 6.0,
    "piece_two.name": "old board",
    "piece_two.length": 90.0,
    "piece_two.width": 9.0,
    "piece_two.thickness": 2.0,
    "piece_two.clear": 6.0,
    "cord.place": "left",
    "cord.plug": "hdmi_body",
    "cord.own_width": 2.0,
    "cord.own_height": 2.0,
    "cord.clearance": 0.5,
    "cord.exit_height": 20.0,
    "cord.panel_clearance": 0.125,
}
HOODLESS = {"chart.shelf_hood", "chart.datum_height"}
READ = ("hood", "datum", "between", "plus", "greatest", "none_above", "none_beside")
CHART = {"chart.shelf", "chart.legs", "chart.source", *(f"chart.{row}" for row in READ)} | HOODLESS
OWN = {"own_section.first", "own_section.second", "own_section.third"}
BED = {"bed_mould.profile", "bed_mould.size"}
MOULDINGS = {
    f"{place}.{row}"
    for place in ("capital", "plinth_cap", "panel_mould", "back_band")
    for row in ("profile", "size")
} | {"shelf.edge_size"}
RAISED = {"raised.margin", "raised.thickness"}
FLUTES = {f"flute.{row}" for row in ("count", "width", "depth", "between", "stop")}
TABLET = {f"tablet.{row}" for row in ("width", "height", "thickness")}
COLUMN_FRAME = {f"column.{row}" for row in ("stile", "rail", "panels")}
FRIEZE_FRAME = {f"frieze.{row}" for row in ("stile", "rail", "panels")}
NO_PANELS = {f"panel.{row}" for row in ("kind", "reveal", "thickness", "grain")} | {"panel_mould.on"}
NO_PLINTHS = {"plinth.height", "plinth.projection", "plinth_cap.on"}
SLIP = {"slip.width", "slip.thickness"}
OWN_PLUG = {"cord.own_width", "cord.own_height"}
CORDS = OWN_PLUG | {f"cord.{row}" for row in ("place", "plug", "clearance", "exit_height", "panel_clearance")}
OVER = {f"over.{row}" for row in ("reach", "height", "projection", "stile", "rail", "panels")}
HEARTH = {"chart.hearth_front", "chart.hearth_side", "chart.hearth_thickness"}
LOCAL = {f"local.{row}" for row in ("shelf", "legs", "source")} | {
    hearth.replace("chart", "local") for hearth in HEARTH
}
PIECE = {"name", "length", "width", "thickness", "clear"}
PIECES = {f"{path}.{row}" for path in ("piece_one", "piece_two") for row in PIECE}
SIDES = ("left", "right")
OUTLETS = {"outlet.width", "outlet.tall", *(f"outlet.height_{side}" for side in SIDES)}
CASINGS = {"casing.proud", *(f"casing.{end}_{side}" for end in ("bottom", "top") for side in SIDES)}
BASEBOARD = {"baseboard.thickness", "baseboard.meets", "baseboard.thickness_left"}
BASEBOARDS = BASEBOARD | {"baseboard.thickness_right"}
OLD_LEDGER = {f"old_ledger.{row}" for row in ("tall", "thick", "left", "right", "use")}
BOLT = {"bolt_one.up", "bolt_one.out", "bolt_one.diameter"}
BOLTS = BOLT | {f"bolt_{which}.{row}" for which in ("two", "three") for row in ("up", "out", "diameter")}
FLOORS = {"level.floor_left", "level.floor_right"}
OBSTACLES = OUTLETS | CASINGS | BASEBOARDS | OLD_LEDGER | BOLTS | FLOORS | {"column.over_edge"}
ASKED = {"tv.gap", "tv.eye", "tv.away", "house.painted"}
OFF = (
    ASKED
    | LOCAL
    | OBSTACLES
    | HEARTH
    | PIECES
    | MOULDINGS
    | OWN
    | FLUTES
    | RAISED
    | TABLET
    | SLIP
    | OVER
    | CORDS
)


def _outcome(job: Job) -> object:
    surround = plan_surround(job)
    return surround.boards, check_surround(surround)


def _job(**values: object) -> Job:
    job = default_job()
    for path, value in values.items():
        job = with_value(job, path.replace("__", "."), value)
    return job


@pytest.mark.parametrize(
    ("job", "idle"),
    [
        (_job(), CHART | OFF),
        (_job(site__rule="manual"), OFF | HOODLESS),
        (
            _job(site__rule="manual", chart__hood=True, chart__datum="outlet"),
            OFF | {"chart.shelf"},
        ),
        (_job(site__rule="local"), CHART | OFF - LOCAL | {"facing.added"}),
        (_job(site__rule="canada"), CHART | OFF),
        (_job(tv__diagonal=55.0), CHART | OFF - ASKED | {"house.painted"}),
        (_job(house__year=1950.0), CHART | OFF - {"house.painted"}),
        (_job(site__rule="england"), CHART | OFF),
        (
            _job(site__rule="manual", piece_two__use="shelf"),
            HOODLESS | OFF - {f"piece_two.{row}" for row in PIECE},
        ),
        (_job(site__fireplace="gas"), CHART - {"chart.source"} | OFF - HEARTH | {"facing.added"}),
        (_job(site__fireplace="gas", site__rule="manual"), HOODLESS | OFF - HEARTH | {"facing.added"}),
        (_job(site__rule="manual", bed_mould__on=False), HOODLESS | OFF | BED),
        (_job(site__rule="manual", job__units="millimetres"), HOODLESS | OFF | {"job.precision"}),
        (_job(capital__on=True), CHART | OFF - {"capital.profile", "capital.size"}),
        (_job(shelf__edge_profile="ovolo"), CHART | OFF - {"shelf.edge_size"}),
        (_job(column__kind="plain"), CHART | OFF | COLUMN_FRAME),
        (_job(column__kind="fluted"), CHART | OFF - FLUTES | COLUMN_FRAME),
        (_job(column__kind="raised"), CHART | OFF - RAISED | COLUMN_FRAME),
        (_job(frieze__kind="tablet"), CHART | OFF - TABLET | FRIEZE_FRAME),
        (
            _job(frieze__kind="plain", column__kind="plain"),
            CHART | OFF | FRIEZE_FRAME | COLUMN_FRAME | NO_PANELS,
        ),
        (_job(frieze__place="in_front"), CHART | OFF | {"frieze.projection"}),
        (_job(plinth__on=False), CHART | OFF | NO_PLINTHS),
        (_job(over__on=True), CHART | OFF - OVER | {"over.height"}),
        (_job(over__on=True, over__reach="height"), CHART | OFF - OVER),
        (_job(slip__on=True), CHART | OFF - SLIP),
        (_job(cord__on=True), CHART | OFF - CORDS | OWN_PLUG),
        (_job(cord__on=True, cord__plug="own"), CHART | OFF - CORDS),
        (_job(cord__on=True, cord__place="frieze"), CHART | OFF - CORDS | OWN_PLUG | {"cord.exit_height"}),
        (_job(baseboard__height_left=5.0), CHART | OFF - BASEBOARD),
        (_job(old_ledger__top=50.0), CHART | OFF - OLD_LEDGER),
        (_job(old_ledger__top=50.0, old_ledger__use="remove"), CHART | OFF - {"old_ledger.use"}),
        (_job(bolt_one__across=30.0), CHART | OFF - BOLT),
        (_job(hearth__height=8.0), CHART | OFF - {"column.over_edge"}),
        (
            _job(hearth__height=8.0, column__over_edge="stepped"),
            CHART | OFF - FLOORS - {"column.over_edge"},
        ),
        (_job(outlet__left=60.0), CHART | OFF - OUTLETS | {"outlet.height_right"}),
        (_job(casing__right=60.0), CHART | OFF - CASINGS | {"casing.bottom_left", "casing.top_left"}),
        (_job(shelf__kind="plank"), CHART | OFF | {"shelf.edge_height"}),
        (
            _job(bed_mould__profile="own_2", own_section__second="ovolo 2 down, 2 back; foot 1/8"),
            CHART | OFF - {"own_section.second"} | {"bed_mould.size"},
        ),
    ],
)
def test_idle_rows_are_named_and_have_no_say(job: Job, idle: set[str]):
    assert list_idle(job) - PAINT - CLEAR - STAIN == idle
    for path in idle:
        assert _outcome(with_value(job, path, CHANGED[path])) == _outcome(job), path


PAINT = {"rates.primer_coverage", "rates.top_coverage", "times.primer", "times.top", "times.hard"}
CLEAR = {"rates.clear_coverage", "times.clear", "times.clear_hard"}
STAIN = {"rates.stain_coverage", "times.stain"}


@pytest.mark.parametrize(
    ("finish", "idle"), [("painted", CLEAR | STAIN), ("stained", PAINT), ("clear", PAINT | STAIN)]
)
def test_coats_of_another_finish_have_no_say_and_those_of_its_own_do(finish: str, idle: set[str]):
    def finished(job: Job):
        materials = take_off(plan_surround(job)).materials
        return materials, list_finishing(job, materials)

    job = _job(look__finish=finish)
    assert list_idle(job) & (PAINT | CLEAR | STAIN) == idle
    for path in PAINT | CLEAR | STAIN:
        changed = with_value(job, path, 2 * float(read_value(job, path)))
        assert (finished(changed) == finished(job)) is (path in idle), path


def test_rows_of_a_face_have_a_say_in_its_own_kind():
    for kind, paths in (("framed", COLUMN_FRAME), ("fluted", FLUTES), ("raised", RAISED)):
        job = _job(column__kind=kind)
        assert all(_outcome(with_value(job, path, CHANGED[path])) != _outcome(job) for path in paths)
    for kind, paths in (("framed", FRIEZE_FRAME), ("tablet", TABLET)):
        job = _job(frieze__kind=kind)
        assert all(_outcome(with_value(job, path, CHANGED[path])) != _outcome(job) for path in paths)


def test_a_row_that_is_not_idle_has_a_say():
    job = _job(site__rule="manual")
    for place in ("capital", "plinth_cap", "panel_mould", "back_band"):
        job = with_value(job, f"{place}.on", True)
    job = with_value(job, "shelf.edge_profile", "cavetto")
    for path in {"chart.shelf", "chart.legs"} | BED | MOULDINGS:
        assert _outcome(with_value(job, path, CHANGED[path])) != _outcome(job), path


@pytest.mark.parametrize("place", ["bed_mould", "capital", "plinth_cap", "panel_mould", "back_band"])
def test_a_section_of_ones_own_has_a_say_where_it_is_chosen(place: str):
    job = with_value(_job(**{f"{place}__on": True}), f"{place}.profile", "own_1")
    written = with_value(job, "own_section.first", "ovolo 3/8 down, 3/8 back; foot 1/8")
    assert _outcome(written) != _outcome(job)
    assert "own_section.first" not in list_idle(written)
