"""What is common to all rows of a stock list: its name, currency, trim, spare boards, as lines to type in."""

from __future__ import annotations

from dataclasses import replace

from PySide6.QtCore import Qt, Signal
from PySide6.QtWidgets import QHBoxLayout, QLineEdit, QSizePolicy, QVBoxLayout, QWidget

from app.dialog_parts import build_label
from app.fields.tape_edit import TapeEdit
from app.stock_session import StockSession
from app.theme import RHYTHM, ROW_HEIGHT, SMALL_POINTS, text_font
from model.cutting.stock_fields import LIST_FIELDS, Field, Holds
from model.errors import Refused
from model.sentences import capitalise
from model.units import INCHES_16, LengthStyle

WIDTHS = {"name": 248, "currency": 112, "trim_end": 72, "trim_sheet": 72, "keep": 72, "spare": 56}
WORDS = {
    "trim_end": "Trim at each end",
    "trim_sheet": "At a sheet's edges",
    "keep": "Offcuts kept from",
}


class ListFields(QWidget):
    """One row of small fields. `told` says that an entry was refused, or put right."""

    told = Signal()

    def __init__(self, session: StockSession) -> None:
        super().__init__()
        self._session = session
        self._style = INCHES_16
        self._sentences: dict[str, str] = {}
        self.edits: dict[str, TapeEdit] = {}
        row = QHBoxLayout(self)
        row.setContentsMargins(2 * RHYTHM, RHYTHM, 2 * RHYTHM, RHYTHM)
        row.setSpacing(2 * RHYTHM)
        for field in LIST_FIELDS:
            row.addLayout(self._add(field), 3 if field.name == "name" else 0)
        row.addStretch(1)
        session.changed.connect(self._follow)
        self._follow()

    def _add(self, field: Field) -> QVBoxLayout:
        words = WORDS.get(field.name, field.label.capitalize())
        edit = TapeEdit(steps=False)
        edit.setFrame(True)
        edit.setAlignment(Qt.AlignmentFlag.AlignLeft)
        edit.setFixedHeight(ROW_HEIGHT)
        edit.setMinimumWidth(min(WIDTHS[field.name], 96))
        edit.setMaximumWidth(WIDTHS[field.name] * (2 if field.name == "name" else 1))
        edit.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Fixed)
        edit.setAccessibleDescription(field.wanted)
        edit.setToolTip(capitalise(field.wanted))
        edit.entered.connect(lambda text: self._enter(field, text))
        edit.given_up.connect(lambda: self._settle(field))
        self.edits[field.name] = edit
        label = build_label(words, edit)
        label.setFont(text_font(SMALL_POINTS))
        column = QVBoxLayout()
        column.setSpacing(2)
        column.addWidget(label)
        column.addWidget(edit)
        return column

    @property
    def sentence(self) -> str:
        """What is wrong with the first refused entry, "" where none was refused."""
        return next(iter(self._sentences.values()), "")

    def show_style(self, style: LengthStyle) -> None:
        """Write lengths in another style."""
        self._style = style
        self._follow()

    def commit(self) -> None:
        """Enter what is being typed."""
        for edit in self.edits.values():
            if edit.hasFocus():
                edit.commit()

    def _enter(self, field: Field, text: str) -> None:
        stock_list = self._session.stock_list
        try:
            value = field.parse(text, "", self._style)
        except Refused as refusal:
            self._sentences[field.name] = str(refusal)
            self.told.emit()
            return
        self._sentences.pop(field.name, None)
        self._session.change(field.label, replace(stock_list, **{field.name: value}))
        self._show(field)
        self.told.emit()

    def _settle(self, field: Field) -> None:
        if self._sentences.pop(field.name, None):
            self.told.emit()

    def _follow(self) -> None:
        for field in LIST_FIELDS:
            if field.name not in self._sentences:
                self._show(field)

    def _show(self, field: Field) -> None:
        value = getattr(self._session.stock_list, field.name)
        empty = "0" if field.holds is Holds.LENGTH else ""
        edit: QLineEdit = self.edits[field.name]
        assert isinstance(edit, TapeEdit)
        edit.show_text(field.format(value, self._style) or empty)
