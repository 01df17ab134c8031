"""What is looked up: the entry shown, the way there and back, the words that are searched for."""

from __future__ import annotations

from dataclasses import dataclass, replace
from typing import Final

__all__ = ["Lookup", "back", "browsed", "forward", "known", "led", "opened", "searched"]

_KEPT: Final = 100
"""Entries of the way back that are kept."""


@dataclass(frozen=True, slots=True)
class Lookup:
    """What is looked up.

    Parameters
    ----------
    shown
        Key of the entry that is shown.
    words
        What is searched for, as typed.
    before, after
        Keys to go back to, the last first at the end; and forward to, the next at the end.
    browsing
        Whether the entry was come to by going along the list: the next one takes its place.
    came_from
        Key of the screen that a link led here from; empty where none did.
    """

    shown: str
    words: str = ""
    before: tuple[str, ...] = ()
    after: tuple[str, ...] = ()
    browsing: bool = False
    came_from: str = ""


def opened(state: Lookup, key: str) -> Lookup:
    """Show an entry that was asked for; the one that was shown is a step back.

    Examples
    --------
    >>> opened(Lookup("a"), "b").before
    ('a',)
    """
    if key == state.shown:
        return replace(state, browsing=False)
    before = (*state.before, state.shown)[-_KEPT:]
    return replace(state, shown=key, before=before, after=(), browsing=False)


def browsed(state: Lookup, key: str) -> Lookup:
    """Show the entry that the list has come to: a way along it is one step.

    Examples
    --------
    >>> browsed(browsed(Lookup("a"), "b"), "c").before
    ('a',)
    """
    if key == state.shown:
        return state
    if not state.browsing:
        return replace(opened(state, key), browsing=True)
    return replace(state, shown=key, after=())


def back(state: Lookup) -> Lookup:
    """Show what was shown before, if anything was.

    Examples
    --------
    >>> back(opened(Lookup("a"), "b"))
    Lookup(shown='a', words='', before=(), after=('b',), browsing=False, came_from='')
    """
    if not state.before:
        return state
    *before, key = state.before
    after = (*state.after, state.shown)
    return replace(state, shown=key, before=tuple(before), after=after, browsing=False)


def forward(state: Lookup) -> Lookup:
    """Take a step back again, if one was taken.

    Examples
    --------
    >>> forward(back(opened(Lookup("a"), "b"))).shown
    'b'
    """
    if not state.after:
        return state
    *after, key = state.after
    before = (*state.before, state.shown)
    return replace(state, shown=key, before=before, after=tuple(after), browsing=False)


def searched(state: Lookup, words: str) -> Lookup:
    """Search for some words: the list changes, the entry that is read stays.

    Examples
    --------
    >>> searched(Lookup("a"), "throat").words
    'throat'
    """
    return replace(state, words=words)


def led(state: Lookup, came_from: str) -> Lookup:
    """Keep which screen a link led here from; an empty key forgets it.

    Examples
    --------
    >>> led(Lookup("a"), "bench").came_from
    'bench'
    """
    return replace(state, came_from=came_from)


def known(state: Lookup, keys: frozenset[str], first: str) -> Lookup:
    """Leave out every entry that there isn't any more: a tray's own rules go with the tray.

    Examples
    --------
    >>> known(opened(Lookup("a"), "b"), frozenset("a"), "a")
    Lookup(shown='a', words='', before=('a',), after=(), browsing=False, came_from='')
    """
    return replace(
        state,
        shown=state.shown if state.shown in keys else first,
        before=tuple(key for key in state.before if key in keys),
        after=tuple(key for key in state.after if key in keys),
    )
