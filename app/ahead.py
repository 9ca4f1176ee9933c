"""A second process that works out the first drawing while the window's library is still loading.

It is started before anything else, on a system that can copy a process; elsewhere the window draws by itself,
a little later. Once the window can draw by itself, the second process ends. Hardly anything is loaded
before the copy is made.
"""

from __future__ import annotations

import os
from typing import TYPE_CHECKING, BinaryIO

if TYPE_CHECKING:
    from app.working import Wish, Worked
    from model.job import Job

PATIENCE = 5.0
"""Seconds to wait for an answer before the window draws by itself."""


class Ahead:
    """The second process, seen from the first."""

    def __init__(self, pid: int, questions: BinaryIO, answers: BinaryIO) -> None:
        self._pid = pid
        self._questions = questions
        self._answers = answers

    def work_out(self, job: Job, wish: Wish) -> Worked | None:
        """What `work_out` makes of a job, but for its plan; None when no answer comes."""
        import pickle
        import select

        from app.working import Worked

        try:
            pickle.dump((job, wish), self._questions)
            self._questions.flush()
            if not select.select([self._answers], [], [], PATIENCE)[0]:
                return None
            answer = pickle.load(self._answers)
        except (OSError, EOFError, pickle.PickleError):
            return None
        return answer if isinstance(answer, Worked) else None

    def end(self) -> None:
        """Let the second process go."""
        for pipe in (self._questions, self._answers):
            try:
                pipe.close()
            except OSError:  # what was asked last could not be sent: it has ended by itself
                continue
        os.waitpid(self._pid, 0)


def start_ahead() -> Ahead | None:
    """Start the second process; None where a process cannot be copied. To be called before threads are."""
    if not hasattr(os, "fork"):
        return None
    asked, asking = os.pipe()
    answered, answering = os.pipe()
    pid = os.fork()
    if pid == 0:
        os.close(asking)
        os.close(answered)
        _serve(asked, answering)
    os.close(asked)
    os.close(answering)
    return Ahead(pid, os.fdopen(asking, "wb"), os.fdopen(answered, "rb", buffering=0))


def _serve(asked: int, answering: int) -> None:
    """Answer until nobody asks any more, then end without a word; what fails here fails in the window too."""
    try:
        import pickle

        from app.working import Wish, load_heavy_parts, work_out
        from model.job import default_job

        load_heavy_parts()
        work_out(default_job(), Wish(("front", "side"), 12.0, clearance=False))
        with os.fdopen(asked, "rb") as questions, os.fdopen(answering, "wb") as answers:
            while True:
                job, wish = pickle.load(questions)
                worked = work_out(job, wish)
                pickle.dump(worked.without_plan(), answers)
                answers.flush()
    except BaseException:
        os._exit(0)
