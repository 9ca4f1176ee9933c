"""A second process that works out the first drawing while the window's library is still loading.

It is started before anything else, on a system that can copy a process; elsewhere the window draws by itself,
a little later. Once the window can draw by itself, the second process ends. Hardly anything is loaded
before the copy is made.
"""

from __future__ import annotations

import os
from typing import TYPE_CHECKING, BinaryIO

if TYPE_CHECKING:
    from app.working import FirstSight, Wish, Worked
    from model.job import Job

PATIENCE = 5.0
"""Seconds to wait for an answer before the window draws by itself."""


class Ahead:
    """The second process, seen from the first. Its answer to what it cannot do is None."""

    def __init__(self, pid: int, questions: BinaryIO, answers: BinaryIO) -> None:
        self._pid = pid
        self._questions = questions
        self._answers = answers

    @property
    def answers_from(self) -> int:
        """What can be watched for an answer, by its number."""
        return self._answers.fileno()

    def ask_to_see(self, name: str, wish: Wish) -> None:
        """Ask for the first sight of a job by its name, see `take_sight`: a file, a shipped job, or "" for a
        new one.
        """
        self._ask((name, wish))

    def take_sight(self) -> FirstSight | None:
        """The answer to `ask_to_see`; None where it could not be seen, or the process is gone."""
        from app.working import FirstSight

        answer = self._take()
        return answer if isinstance(answer, FirstSight) else None

    def work_out(self, job: Job, wish: Wish) -> Worked | None:
        """What app.working's `work_out` makes of a job, but for its plan; None where it cannot or is gone."""
        from app.working import Worked

        self._ask((job, wish))
        answer = self._take()
        return answer if isinstance(answer, Worked) else None

    def _ask(self, question: object) -> None:
        import pickle

        try:
            pickle.dump(question, self._questions)
            self._questions.flush()
        except OSError:  # it is gone, which its answer will tell
            return

    def _take(self) -> object:
        import pickle
        import select

        try:
            if not select.select([self._answers], [], [], PATIENCE)[0]:
                return None
            return pickle.load(self._answers)
        except (OSError, EOFError, pickle.PickleError):
            return None

    def end(self) -> None:
        """Let the second process go."""
        for pipe in (self._questions, self._answers):
            try:
                pipe.close()
            except OSError:  # what was asked last could not be sent: it has ended by itself
                continue
        os.waitpid(self._pid, 0)


def start_ahead(name: str = "") -> Ahead | None:
    """Start the second process, which will be asked for the job called `name`; None where a process cannot be
    copied. To be called before threads are.
    """
    if not hasattr(os, "fork"):
        return None
    asked, asking = os.pipe()
    answered, answering = os.pipe()
    pid = os.fork()
    if pid == 0:
        os.close(asking)
        os.close(answered)
        _serve(asked, answering, name)
    os.close(asked)
    os.close(answering)
    return Ahead(pid, os.fdopen(asking, "wb"), os.fdopen(answered, "rb", buffering=0))


def _serve(asked: int, answering: int, name: str) -> None:
    """Answer until nobody asks any more, then end without a word; what fails here fails in the window too."""
    try:
        import pickle
        import select

        from app.working import Wish, load_drawing_parts, see_first, work_out

        load_drawing_parts()
        job = _read_named(name)
        named = {name: job}
        if job and not select.select([asked], [], [], 0)[0]:
            work_out(job, Wish(("front", "side"), 12.0, clearance=False))
        with os.fdopen(asked, "rb") as questions, os.fdopen(answering, "wb") as answers:
            while True:
                wanted, wish = pickle.load(questions)
                if isinstance(wanted, str):
                    if wanted not in named:
                        named[wanted] = _read_named(wanted)
                    job = named[wanted]
                    pickle.dump(see_first(job, wish) if job else None, answers)
                else:
                    pickle.dump(work_out(wanted, wish).without_plan(), answers)
                answers.flush()
    except BaseException:
        os._exit(0)


def _read_named(name: str) -> Job | None:
    """The job of that name; None where it cannot be read, or not twice."""
    from pathlib import Path

    from app.demo import names_demo, read_demo
    from app.files import FileTrouble, read_job_file
    from model.errors import JobRefused
    from model.job import default_job

    if not name:
        return default_job()
    if names_demo(name):
        return read_demo(name)
    try:
        return read_job_file(Path(name)) if os.path.isfile(name) else None
    except (FileTrouble, JobRefused):
        return None
