"""The page about the program: what it is, who decides, what is new, what it is built on."""

from __future__ import annotations

from importlib.resources import files

from PySide6.QtCore import QSize, Qt
from PySide6.QtWidgets import QDialog, QHBoxLayout, QLabel, QTextBrowser, QVBoxLayout, QWidget

from app.dialog_parts import build_close, fit_screen
from app.icon import SIZES, icon_picture
from app.theme import RHYTHM
from app.version import describe_ground, program_version, version_of

SIZE = QSize(640, 560)
SHOWN = 96
"""Pixels across the icon at the top."""
ABOUT = (
    "Mantelwright draws a wood surround for a fireplace, holds it against the clearance rules and writes "
    "what is needed to buy, cut, build and finish it."
)
WHO_DECIDES = (
    "It approves nothing: the code adopted where you build, the appliance's manual and the authority having "
    "jurisdiction decide."
)
BUILT_ON = (
    ("PySide6_Essentials", "LGPL 3"),
    ("numpy", "BSD"),
    ("shapely", "BSD"),
    ("ezdxf", "MIT"),
    ("reportlab", "BSD"),
    ("msgspec", "BSD"),
    ("highspy", "MIT"),
    ("pillow", "MIT-CMU"),
)
"""Libraries, with the licences that their own records give."""
TYPEFACE = "Source Sans 3, SIL Open Font License 1.1"


def read_changes() -> str:
    """What is new, version by version, the latest first; Markdown."""
    return files("assets").joinpath("changes.md").read_text("utf-8")


def list_built_on() -> str:
    """Markdown: each library with its version and licence."""
    lines = [f"- {name.replace('_', ' ')} {version_of(name)}, {licence}" for name, licence in BUILT_ON]
    return "\n".join([*lines, f"- the typeface {TYPEFACE}"])


class AboutWindow(QDialog):
    """Stays beside the work until it is closed."""

    def __init__(self, parent: QWidget) -> None:
        super().__init__(parent)
        self.setWindowTitle("About Mantelwright")
        self.setAttribute(Qt.WidgetAttribute.WA_DeleteOnClose)
        fit_screen(self, SIZE)
        column = QVBoxLayout(self)
        column.setContentsMargins(3 * RHYTHM, 3 * RHYTHM, 3 * RHYTHM, 2 * RHYTHM)
        column.setSpacing(2 * RHYTHM)
        column.addLayout(self._build_head())
        self.text = QTextBrowser()
        self.text.setAccessibleName("What is new, and what the program is built on")
        text = f"{read_changes()}\n\n# Built on\n\n{list_built_on()}\n\n{describe_ground()}"
        self.text.setMarkdown(text.replace("# ", "### "))
        column.addWidget(self.text, 1)
        column.addWidget(build_close(self), 0, Qt.AlignmentFlag.AlignRight)

    def _build_head(self) -> QHBoxLayout:
        row = QHBoxLayout()
        row.setSpacing(2 * RHYTHM)
        picture = QLabel()
        smooth = Qt.TransformationMode.SmoothTransformation
        picture.setPixmap(icon_picture(SIZES[-1]).scaledToHeight(SHOWN, smooth))
        picture.setAccessibleName("The program's icon")
        row.addWidget(picture, 0, Qt.AlignmentFlag.AlignTop)
        self.words = QLabel(f"Mantelwright {program_version()}\n\n{ABOUT}\n\n{WHO_DECIDES}")
        self.words.setWordWrap(True)
        self.words.setTextInteractionFlags(Qt.TextInteractionFlag.TextSelectableByMouse)
        row.addWidget(self.words, 1)
        return row


def show_about(parent: QWidget) -> None:
    """Open the page."""
    AboutWindow(parent).show()
