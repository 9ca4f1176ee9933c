"""The ways input can be wrong. A design that breaks a rule is a finding (model.check), not an error."""


class MantelwrightError(Exception):
    """Base of every error this program raises on purpose; its text is fit to show to the user."""


class Refused(MantelwrightError, ValueError):
    """A value was turned away at the door.

    The message names the field, what was read and what is wanted, with an example:
    ``opening width "3x": write a length such as 36, 36 1/2, 3' 0-1/2" or 914 mm``.
    """

    def __init__(self, field: str, read: object, wanted: str) -> None:
        self.field = field
        self.read = read
        self.wanted = wanted
        shown = f'"{read}"' if isinstance(read, str) else str(read)
        super().__init__(f"{field} {shown}: {wanted}")


class JobRefused(MantelwrightError, ValueError):
    """A job text was turned away; ``faults`` holds one sentence for each fault, all of them."""

    def __init__(self, faults: tuple[str, ...]) -> None:
        self.faults = faults
        super().__init__("\n".join(faults))
