"""Undo: the scenes that were, one for each drag and not one for each step of it."""

from collections.abc import Callable
from time import monotonic

from boomsim.lab.scene.scene import Scene

TOGETHER = 1.0
"""Moves of one control that follow one another within this time are one drag [s]."""

LONGEST = 200


class History:
    """Scenes to go back to."""

    def __init__(self, *, clock: Callable[[], float] = monotonic) -> None:
        self._scenes: list[Scene] = []
        self._undone: list[Scene] = []
        self._last: tuple[str, float] = ("", -TOGETHER)
        self._clock = clock

    def left(self, scene: Scene, *, by: str) -> None:
        """Remember a scene that is being left.

        Parameters
        ----------
        by : str
            Control that moves; empty for a jump, which is never part of a drag
        """
        now = self._clock()
        drags = bool(by) and by == self._last[0] and now - self._last[1] <= TOGETHER
        self._last = (by, now)
        if not drags:
            self._scenes = [*self._scenes[-LONGEST + 1 :], scene]
        self._undone = []

    @property
    def goes_back(self) -> bool:
        """Whether there is a scene to go back to."""
        return bool(self._scenes)

    @property
    def goes_forward(self) -> bool:
        """Whether something was undone since the last move."""
        return bool(self._undone)

    def back(self, *, now: Scene | None = None) -> Scene | None:
        """Take off the scene before the last drag; None if there is none.

        Parameters
        ----------
        now : Scene, optional
            That is left so: :meth:`forward` leads to it again
        """
        self._last = ("", -TOGETHER)
        if not self._scenes:
            return None
        if now is not None:
            self._undone.append(now)
        return self._scenes.pop()

    def forward(self, *, now: Scene) -> Scene | None:
        """Take back the last step back; None if there is none.

        Parameters
        ----------
        now : Scene
            That is left so
        """
        self._last = ("", -TOGETHER)
        if not self._undone:
            return None
        self._scenes.append(now)
        return self._undone.pop()
