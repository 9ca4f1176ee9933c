"""Shaping by hand: edges of the elevations picked and moved by pointer or keys, one step each.

Which edges there are is model.shaping's, what becomes of the value app.edge_hold's, how it looks
app.grip_mark's.
"""

from __future__ import annotations

from collections.abc import Callable
from contextlib import ExitStack
from typing import TYPE_CHECKING

from PySide6.QtCore import QEvent, QObject, QPointF, Qt, Signal
from PySide6.QtGui import QAccessible, QAccessibleAnnouncementEvent, QFocusEvent, QKeyEvent, QMouseEvent

from app.canvas import CLICK_SLACK, Canvas
from app.drafting import Drafting
from app.edge_hold import DOWN, UP, EdgeHold
from app.grip_mark import GripMark, distance_to
from app.pause import build_pause
from app.session import Session
from app.sweeping import unswept
from model.units import format_length

if TYPE_CHECKING:
    from model.cutting.stock_list import StockList
    from model.shaping.grip import Grip

REACH = 5.0
"""Pixels from which an edge can be taken hold of."""
AT_REST = 30
"""Milliseconds without a move after which limits are looked for without a pause."""
LOOKING_LATEST = 0.1
"""Seconds after which the next of them is looked for even if that holds up a move."""
COARSE = 8
"""Fractions that an arrow key moves an edge by with Shift."""
KEPT_FOCUS = (Qt.FocusReason.PopupFocusReason, Qt.FocusReason.ActiveWindowFocusReason)
ARROWS = {
    Qt.Key.Key_Left: (0, DOWN),
    Qt.Key.Key_Right: (0, UP),
    Qt.Key.Key_Down: (1, DOWN),
    Qt.Key.Key_Up: (1, UP),
}
HINTS = (
    "arrows left and right move it, Page keys go to the next stop, Tab to the next edge",
    "arrows up and down move it, Page keys go to the next stop, Tab to the next edge",
)
"""What keys do with an edge that goes across, and with one that goes up."""


class Shaping(QObject):
    """Watches the canvas. `typed` names a parameter to be typed over, where, and what was typed of it."""

    typed = Signal(str, QPointF, str)

    def __init__(
        self,
        session: Session,
        canvas: Canvas,
        drafting: Drafting,
        find_list: Callable[[], StockList],
        find_guide: Callable[[], str] = lambda: "",
    ) -> None:
        super().__init__(canvas)
        self._session, self._canvas, self._drafting = session, canvas, drafting
        self._find_list, self._find_guide = find_list, find_guide
        self._grips: tuple[Grip, ...] | None = None
        self._pressed: tuple[QPointF, Grip] | None = None
        self._under: tuple[float, float] = (0.0, 0.0)
        self._from = self._seen = 0.0
        self._at: QPointF | None = None
        self._by_keys = False
        self._last = ("", "", "")
        self.hold: EdgeHold | None = None
        self._ready: EdgeHold | None = None
        self._readying = build_pause(self, 0, self._make_ready)
        self._unswept = ExitStack()
        self._looking = build_pause(self, AT_REST, self._look_on)
        canvas.laid.connect(self._forget_grips)
        drafting.drawn.connect(self._follow)
        drafting.spared.connect(self._look_after_paint)
        self._trial = drafting.between.add(self._look_after_paint, LOOKING_LATEST)
        canvas.installEventFilter(self)

    @property
    def grips(self) -> tuple[Grip, ...]:
        """Edges of the views on the sheet, in the order in which keys go through them."""
        if self._grips is None:
            self._grips = self._list_grips()
        return self._grips

    def _list_grips(self) -> tuple[Grip, ...]:
        if self._drafting.surround is None:
            return ()
        from model.shaping.grips import list_grips

        return tuple(g for v in self._canvas.views for g in list_grips(self._drafting.surround, v.name))

    def find_grip(self, pixel: QPointF) -> Grip | None:
        """The edge in reach of a pixel, None where there is none or a dimension is nearer."""
        if self._canvas.find_dimension(pixel) is not None:
            return None
        best, found = REACH, None
        for view in self._canvas.views:
            place = self._canvas.place_of(view.name)
            for grip in self.grips:
                if grip.view == view.name:
                    away = min(distance_to(place, segment, pixel) for segment in grip.segments)
                    if away < best:
                        best, found = away, grip
        return found

    def pick(self) -> None:
        """Take hold of an edge by keys: the one that was held last, or the first there is."""
        self._canvas.setFocus(Qt.FocusReason.ShortcutFocusReason)
        self.take()
        keys = [grip.key for grip in self.grips]
        if keys:
            self._pick(self.grips[keys.index(self._last) if self._last in keys else 0])

    def take(self) -> None:
        """What is held stays where it is, as one step, and is let go."""
        if self.hold is not None:
            path, moved = self.hold.grip.path, self.hold.is_moved
            self._release()
            if moved:
                self._session.take(path)
            else:
                self._session.put_back()
            self._show_none()

    def put_back(self) -> None:
        """What is held goes back to where it was taken, and is let go."""
        self._pressed = None
        if self.hold is not None:
            self._release()
            self._session.put_back()
            self._show_none()

    # --- events of the canvas

    def eventFilter(self, _watched: QObject, event: QEvent) -> bool:
        """Take what an edge under the pointer or in hold is meant by; leave the rest to the sheet."""
        match event.type():
            case QEvent.Type.MouseButtonPress | QEvent.Type.MouseButtonDblClick if isinstance(
                event, QMouseEvent
            ):
                return self._press(event)
            case QEvent.Type.MouseMove if isinstance(event, QMouseEvent):
                return self._move(event)
            case QEvent.Type.MouseButtonRelease if isinstance(event, QMouseEvent):
                return self._let_up(event)
            case QEvent.Type.KeyPress if isinstance(event, QKeyEvent):
                return self._key(event)
            case QEvent.Type.FocusOut if isinstance(event, QFocusEvent):
                if self._by_keys and event.reason() not in KEPT_FOCUS:
                    self.take()
            case QEvent.Type.Leave:
                if self.hold is None:
                    self._show_none()
        return False

    def _press(self, event: QMouseEvent) -> bool:
        if self._by_keys:
            self.take()
        if event.button() is not Qt.MouseButton.LeftButton or self.hold is not None:
            return self.hold is not None
        grip = self.find_grip(event.position())
        if grip is None:
            self._show_none()
            return False
        self._pressed = (event.position(), grip)
        self._under = self._canvas.place.to_model(event.position())
        self._readying.start()
        return True

    def _move(self, event: QMouseEvent) -> bool:
        if self._pressed is None:
            return self.hold is None and not event.buttons() and self._hover(event.position())
        pressed, grip = self._pressed
        if self.hold is None:
            if (event.position() - pressed).manhattanLength() <= CLICK_SLACK:
                return True
            self._begin(grip, by_keys=False)
            self._from = self._seen = self._under[grip.way]
        if self.hold is not None and not self._canvas.shows_another:
            self._drag(self.hold, event)
        return True

    def _drag(self, hold: EdgeHold, event: QMouseEvent) -> None:
        """With Shift the edge goes one fraction for a pixel, from wherever it is."""
        self._drafting.note_move()
        if self._looking.isActive():
            self._looking.start(AT_REST)
        place, way = self._canvas.place, hold.grip.way
        here = place.to_model(event.position())[way]
        if event.modifiers() & Qt.KeyboardModifier.ShiftModifier:
            pixels = round((here - self._seen) * place.scale)
            if pixels:
                hold.step(pixels)
            self._seen += pixels / place.scale
            self._from = here - hold.moved
        else:
            hold.move_to(here - self._from, 1 / place.scale)
            self._seen = here
        self._show_hold(event.position())
        self._canvas.tell_painted()

    def _let_up(self, event: QMouseEvent) -> bool:
        if self._pressed is None or event.button() is not Qt.MouseButton.LeftButton:
            return False
        self._pressed = self._ready = None
        if self.hold is not None:
            self.take()
        else:
            self._canvas.click(event.position())
        self._hover(event.position())
        return True

    def _key(self, event: QKeyEvent) -> bool:
        key = Qt.Key(event.key())
        if self.hold is None:
            if key in (Qt.Key.Key_Return, Qt.Key.Key_Enter) and self.grips:
                self.pick()
                return True
            return False
        if key is Qt.Key.Key_Escape:
            self.put_back()
        elif self._by_keys:
            return self._key_on_edge(key, event)
        return True

    def _key_on_edge(self, key: Qt.Key, event: QKeyEvent) -> bool:
        assert self.hold is not None
        if key in (Qt.Key.Key_Return, Qt.Key.Key_Enter):
            self.take()
        elif key in (Qt.Key.Key_Tab, Qt.Key.Key_Backtab):
            self._go_on(-1 if key is Qt.Key.Key_Backtab else 1)
        elif key in ARROWS:
            way, count = ARROWS[key]
            coarse = event.modifiers() & Qt.KeyboardModifier.ShiftModifier
            if way == self.hold.grip.way:
                self._look_out()
                self.hold.step(count * (COARSE if coarse else 1))
                self._show_hold()
        elif key in (Qt.Key.Key_PageUp, Qt.Key.Key_PageDown):
            self._look_out()
            self.hold.jump(UP if key is Qt.Key.Key_PageUp else DOWN)
            self._show_hold()
        elif key is Qt.Key.Key_F2 or event.text().strip()[:1] in tuple("0123456789.'\u00bc\u00bd\u00be"):
            self._type(event.text().strip())
        else:
            return False
        return True

    # --- holding

    def _make_ready(self) -> None:
        """Find what is worth stopping at once an edge is pressed, so that its first move need not wait."""
        if self._pressed is not None and self.hold is None:
            self._ready = EdgeHold(self._session, self._pressed[1])
            self._ready.find_marks(self._find_list(), self._find_guide())

    def _begin(self, grip: Grip, by_keys: bool) -> None:
        self._canvas.hold_still((grip.view,))
        self._readying.stop()
        ready, self._ready = self._ready, None
        is_right = ready is not None and ready.is_of(self._session.job, grip)
        self.hold = ready if is_right else EdgeHold(self._session, grip)
        self._by_keys, self._last = by_keys, grip.key
        if not by_keys:
            self._unswept.enter_context(unswept())  # a search of memory would hold up the hand
            self._drafting.lead(grip.view)
            self._look_out()

    def _look_out(self) -> None:
        """Find what is worth stopping at, when the edge is about to be moved."""
        if self.hold is not None and not self.hold.is_looking:
            self.hold.look_out(self._find_list(), self._find_guide())
            self._looking.start(AT_REST)
            self._trial.ask()

    def _look_after_paint(self) -> None:
        """One trial for each picture of a moved edge, so that no move waits for more than one."""
        if self._looking.isActive():
            self._look_on(AT_REST)

    def _look_on(self, pause: int = 0) -> None:
        if self.hold is not None and self.hold.look_on():
            self._looking.start(pause)
            self._trial.ask()
            return
        self._looking.stop()
        if self.hold is not None:
            self._show_hold(self._at)

    def _release(self) -> None:
        self._looking.stop()
        self._trial.drop()
        self._drafting.lead("")
        self._unswept.close()
        self.hold, self._by_keys = None, False
        self._canvas.let_go()

    def _pick(self, grip: Grip) -> None:
        self._begin(grip, by_keys=True)
        self._show_hold()

    def _go_on(self, way: int) -> None:
        """Let go of this edge where it is and take hold of the next, or the one before."""
        assert self.hold is not None
        key = self.hold.grip.key
        self.take()
        keys = [grip.key for grip in self.grips]
        if keys:
            at = keys.index(key) if key in keys else -1
            self._pick(self.grips[(at + way) % len(keys)])

    def _type(self, text: str) -> None:
        """Type the value instead, in a field on the sheet."""
        assert self.hold is not None
        path, mark = self.hold.grip.path, self._canvas.overlay.grip
        at = (
            mark.middle_of(self._canvas.place_of(mark.view))
            if mark
            else QPointF(self._canvas.rect().center())
        )
        self.take()
        self.typed.emit(path, at, text)

    # --- what is shown

    def _forget_grips(self) -> None:
        """Something else is on the sheet, or it lies elsewhere."""
        self._grips = None

    def _follow(self) -> None:
        """Another job was drawn; what was tried may have been ended elsewhere."""
        if self.hold is not None and self.hold.is_moved and not self._session.is_trying:
            self._release()
            self._pressed = None
            self._show_none()

    def _hover(self, pixel: QPointF) -> bool:
        """Say what the pointer would take hold of; whether there is anything."""
        grip = self.find_grip(pixel)
        if grip is None:
            self._show_none()
            return False
        self._point(grip)
        self._canvas.overlay.hover = grip.path
        value = format_length(grip.value, self._session.job.about.length_style)
        self._show(GripMark(grip.view, grip.segments, grip.way, grip.label, value, grip.name, at=pixel))
        return True

    def _show_hold(self, at: QPointF | None = None) -> None:
        self._at = at
        hold = self.hold
        assert hold is not None
        now = self._find_held(hold.grip)
        style = self._session.job.about.length_style
        note = hold.reason or (
            hold.grip.name
            if hold.is_moved or not self._by_keys
            else f"{hold.grip.name}: {HINTS[hold.grip.way]}"
        )
        mark = GripMark(
            hold.grip.view,
            now.segments if now else hold.grip.segments,
            hold.grip.way,
            hold.grip.label,
            format_length(hold.value, style),
            note,
            format_length(hold.grip.value, style) if hold.is_moved else "",
            at,
            tuple((mark.value - hold.value) / hold.grip.factor for mark in hold.marks),
            is_held=True,
            is_stopped=hold.is_on_mark,
            is_over=hold.is_over,
        )
        self._canvas.overlay.hover = hold.grip.path
        self._point(hold.grip)
        self._show(mark)
        if self._by_keys:
            self._tell(mark.words)

    def _find_held(self, grip: Grip) -> Grip | None:
        """The edge in hold as it is now; the others are listed once somebody asks for them."""
        from model.shaping.grips import follow_grip

        surround = self._drafting.surround
        if surround is None or all(view.name != grip.view for view in self._canvas.views):
            return None
        return follow_grip(surround, grip.key)

    def _show(self, mark: GripMark) -> None:
        self._canvas.overlay.grip = mark
        self._canvas.update()

    def _point(self, grip: Grip) -> None:
        """Have the pointer say which way the edge goes."""
        shape = Qt.CursorShape.SizeVerCursor if grip.way else Qt.CursorShape.SizeHorCursor
        if self._canvas.cursor().shape() is not shape:
            self._canvas.setCursor(shape)

    def _show_none(self) -> None:
        if self._canvas.overlay.grip is not None:
            self._canvas.overlay.grip = None
            self._canvas.overlay.hover = ""
            self._canvas.unsetCursor()
            self._canvas.update()

    def _tell(self, words: str) -> None:
        """Have it read out, where anybody listens."""
        QAccessible.updateAccessibility(QAccessibleAnnouncementEvent(self._canvas, words))
