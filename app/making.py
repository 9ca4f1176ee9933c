"""What the files of one job are made from, each thing worked out once, some of it by a second process.

Which files there are, and what goes into each, is decided in app.outputs.
"""

from __future__ import annotations

from collections.abc import Callable, Iterable
from functools import cached_property
from typing import TYPE_CHECKING

from app.drawing_files import USUAL_VERSION, build_assembly_drawings, leave_titles
from export.progress import Step
from model.cutting.stock_list import StockList

if TYPE_CHECKING:
    from app.second_process import Asked, SecondProcess
    from model.check.finding import Finding, Guide
    from model.cutting.plan import CuttingPlan
    from model.job import Job
    from model.surround import Surround
    from model.takeoff.takeoff import Takeoff
    from render.desk import Draft
    from render.drawing import Sheet
    from render.packet import Chapter, Plans

MOST_STEPS = 150
"""How far a cheaper cutting plan is looked for, for each material: about half a second. Steps, not seconds,
so that the same job gives the same packet; the packet says how good the plan is."""
SETTING_OUT = 0.35
"""How much of the work on the part that first needs the sheets is setting them out."""


class Making:
    """Everything is worked out when a part first asks for it. `name` is what a cutting plan calls the job."""

    def __init__(
        self,
        name: str,
        job: Job,
        paper: str,
        date_text: str,
        stock: StockList | CuttingPlan | None,
        dxf_version: str = USUAL_VERSION,
        tell_plan: Callable[[CuttingPlan], None] | None = None,
    ) -> None:
        self.job, self.paper, self.date_text, self.dxf_version = job, paper, date_text, dxf_version
        self._name, self._stock, self._tell_plan = name, stock, tell_plan
        self._sheets: tuple[Sheet, ...] = ()
        self._second: SecondProcess | None = None
        self._planning: Asked[CuttingPlan] | None = None
        self._drawing: Asked[tuple[tuple[str, str], ...]] | None = None
        self._second_draws = False
        self.style = job.about.length_style

    def share_with(self, second: SecondProcess, draws: bool) -> None:
        """Have `second` look for the cutting plan, if none is there yet; then draft the assembly steps, which
        are half of all drafting; then, where it `draws`, write the drawings of sub-assemblies.
        """
        self._second, self._second_draws = second, draws
        if self._known_plan is None:
            self._planning = second.ask(_plan_job, self._name, self.job, self._find_stock())

    @cached_property
    def surround(self) -> Surround:
        """The job worked out."""
        from model.surround import plan_surround

        return plan_surround(self.job)

    @cached_property
    def takeoff(self) -> Takeoff:
        """What is taken off the boards, glued up of such as the stock list has."""
        from model.cutting.pieces import plan_glued
        from model.cutting.serving import Serving
        from model.takeoff.takeoff import take_off

        plan = self._known_plan
        stock = self._find_stock() if plan is None else plan.order.stock_list
        return take_off(self.surround, plan_glued(self.surround, Serving(stock).widest))

    @cached_property
    def plan(self) -> CuttingPlan:
        """What is bought and how it is cut."""
        plan = self._find_plan()
        if self._tell_plan is not None:
            self._tell_plan(plan)
        return plan

    def _find_plan(self) -> CuttingPlan:
        if self._known_plan is not None:
            return self._known_plan
        if self._planning is not None:
            return self._planning.wait(lambda: None)
        return plan_to_write(self._name, self.surround, self._find_stock())

    @property
    def _known_plan(self) -> CuttingPlan | None:
        return None if isinstance(self._stock, StockList) else self._stock

    def _find_stock(self) -> StockList:
        from app.stock_lists import read_shipped_list

        return self._stock if isinstance(self._stock, StockList) else read_shipped_list()

    @cached_property
    def findings(self) -> tuple[Finding, ...]:
        """What the checks find."""
        from model.check.all import check_surround

        return check_surround(self.surround)

    @cached_property
    def guides(self) -> tuple[Guide, ...]:
        """Proportions beside the design's own."""
        from model.check.proportion import list_guides

        return list_guides(self.surround)

    def set_out(self, tell: Step) -> tuple[tuple[Sheet, ...], Step]:
        """The packet's sheets, numbered alike in drawing files; and what tells of the work after them."""
        if self._sheets:
            return self._sheets, tell
        self._sheets = self.build_sheets(share(tell, 0.0, SETTING_OUT))
        if self._second is not None and self._second_draws:
            sheets = leave_titles(self._sheets)
            self._drawing = self._second.ask(
                _draw_assemblies, self.job, sheets, self.dxf_version, self.takeoff, self.date_text
            )
        return self._sheets, share(tell, SETTING_OUT, 1 - SETTING_OUT)

    def build_sheets(self, tell: Step) -> tuple[Sheet, ...]:
        """The packet's sheets."""
        from render.packet import build_packet

        surround = self.surround
        tell(0.0, "Checking")
        findings, guides = self.findings, self.guides
        tell(0.15, "Taking off the materials")
        lists = self.takeoff
        tell(0.3, "Setting out the sheets")
        return build_packet(
            surround,
            findings,
            guides,
            lists.cuts,
            self.paper,
            self.date_text,
            lists,
            lambda: self._find_plans(tell),
            self._draft_elsewhere(tell),
        )

    def _draft_elsewhere(self, tell: Step) -> dict[Chapter, Callable[[], list[Draft]]]:
        """The chapters that the second process drafts from now on, where there is one."""
        from render.chapters.steps import draft_steps

        if self._second is None:
            return {}
        steps = self._second.ask(_draft_steps, self.job, self.paper, self.takeoff)
        if self._second_draws:
            self._second.ask(_load_dxf)

        def fetch() -> list[Draft]:
            _load_pdf()  # while the other is still at it
            _load_dxf()
            return steps.wait(lambda: tell(0.95, "Setting out the sheets"))

        return {draft_steps: fetch}

    def _find_plans(self, tell: Step) -> Plans:
        def tell_planning() -> None:
            tell(0.7, "Planning what to buy and how to cut it")

        tell_planning()
        if self._planning is not None:
            self._planning.wait(tell_planning)
        tell(0.95, "Setting out the sheets")
        return self.plan, self.bought

    @cached_property
    def bought(self) -> CuttingPlan | None:
        """The boards bought already that stay as they were planned; None where there are none."""
        from model.cutting.frozen import show_bought

        return show_bought(self.job.purchase, self.plan.order)

    def build_assemblies(self, tell: Step) -> Iterable[tuple[str, str]]:
        """The drawing files of sub-assemblies: each one's name and text."""
        sheets, tell = self.set_out(tell)
        if self._drawing is not None:
            return self._drawing.wait(lambda: tell(0.5, "Drawing the sub-assemblies"))
        return build_assembly_drawings(
            self.surround, self.takeoff.cuts, sheets, self.dxf_version, tell, self.takeoff, self.date_text
        )

    def build_offer(self) -> tuple[Sheet, ...]:
        """The offer's sheets."""
        from app.photo_on_paper import draw_for_paper
        from model.estimate import make_estimate
        from model.price import make_price
        from render.offer import build_offer

        estimate = make_estimate(self.surround, self.takeoff, self.plan)
        price = make_price(estimate, self.job.shop.offer, self.plan.order.stock_list.supplies)
        return build_offer(self.surround, price, self.paper, self.date_text, draw_for_paper(self.surround))


def plan_to_write(name: str, surround: Surround, stock_list: StockList) -> CuttingPlan:
    """As good a cutting plan as is looked for when something is written, the same each time."""
    from model.cutting.order import build_order
    from model.cutting.plan import plan_order
    from model.cutting.task import Effort, Steps

    order = build_order([(name, surround)], stock_list)
    steps = Steps(MOST_STEPS)
    return plan_order(order, Effort(steps.are_over), lambda *_: steps.begin())


def load_planners() -> None:
    """What cutting plans are made with."""
    import model.cutting.order
    import model.cutting.plan  # noqa: F401


def _load_pdf() -> None:
    import reportlab.pdfgen.canvas  # noqa: F401

    from export.pdf import load_typeface

    load_typeface()


def _load_dxf() -> None:
    import ezdxf.filemanagement  # noqa: F401

    import export.dxf  # noqa: F401


def _plan_job(name: str, job: Job, stock_list: StockList) -> CuttingPlan:
    from model.surround import plan_surround

    return plan_to_write(name, plan_surround(job), stock_list)


def _draft_steps(job: Job, paper: str, takeoff: Takeoff) -> list[Draft]:
    from model.surround import plan_surround
    from render.chapters.steps import draft_steps
    from render.desk import Desk
    from render.sheets import paper_size

    return draft_steps(Desk(plan_surround(job), paper_size(paper), takeoff=takeoff))


def _draw_assemblies(
    job: Job, sheets: tuple[Sheet, ...], version: str, takeoff: Takeoff, date_text: str
) -> tuple[tuple[str, str], ...]:
    from model.surround import plan_surround

    surround = plan_surround(job)
    return tuple(
        build_assembly_drawings(surround, takeoff.cuts, sheets, version, tell_nobody, takeoff, date_text)
    )


def share(tell: Step, start: float, part: float) -> Step:
    """Tells of a part of the work as the part of the whole that it is."""
    return lambda done, words: tell(start + part * done, words)


def tell_nobody(_done: float, _words: str) -> None:
    """Nobody watches."""
