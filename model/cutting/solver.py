"""The linear and whole-number solver, silent; whoever solves imports this file inside a function.

highspy's own class writes two lines to standard output when it sets up its callbacks, which nothing here
uses; standard output carries data, so they are not set up.
"""

from __future__ import annotations

from collections.abc import Callable
from typing import Any

import highspy

INFINITY = highspy.kHighsInf
SIMPLEX = highspy.cb.HighsCallbackType.kCallbackSimplexInterrupt


class Solver(highspy.Highs):
    """A HiGHS model that writes nothing and answers the same every time."""

    def __init__(self) -> None:
        super(highspy.Highs, self).__init__()
        for option, value in OPTIONS.items():
            self.setOptionValue(option, value)

    def solved(self) -> bool:
        """Solve, and say whether the answer is an optimum."""
        self.run()
        return bool(self.getModelStatus() == highspy.HighsModelStatus.kOptimal)

    def is_infeasible(self) -> bool:
        """Whether the last solving found that there is no solution."""
        return bool(self.getModelStatus() == highspy.HighsModelStatus.kInfeasible)

    def has_solution(self) -> bool:
        """Whether the last solving found a solution, the best one or not."""
        return bool(self.getInfo().primal_solution_status == highspy.SolutionStatus.kSolutionStatusFeasible)

    def heed(self, should_stop: Callable[[], bool]) -> None:
        """Ask now and then while solving whether to stop; the model's status is then that of an interrupt."""

        def ask(kind: Any, message: str, out: Any, into: Any, data: Any) -> None:
            if into is not None and should_stop():
                into.user_interrupt = 1

        super(highspy.Highs, self).setCallback(ask, None)
        for kind in (highspy.cb.HighsCallbackType.kCallbackMipInterrupt, SIMPLEX):
            super(highspy.Highs, self).startCallback(kind)


OPTIONS: dict[str, Any] = {
    "output_flag": False,
    "threads": 1,
    "random_seed": 1,
    "mip_rel_gap": 0.0,
    "mip_abs_gap": 0.999,
}
"""A plan dearer by less than a hundredth is as good: costs are whole hundredths."""
