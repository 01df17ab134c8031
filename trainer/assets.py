"""The one way to the files that ship beside the code: icons, trays, translations.

In a checkout they lie in ``assets/`` beside the three packages; in a wheel the same tree lies
inside this package as ``_assets``, so that nothing of ours takes a top-level name but the packages.
"""

from __future__ import annotations

from pathlib import Path
from typing import Final

__all__ = ["asset"]

_HERE: Final = Path(__file__).resolve().parent


def _root() -> Path:
    """Return the folder of assets.

    The wheel's place comes first: beside an installed `trainer` lie other people's packages, and
    an ``assets`` among them is not ours.
    """
    inside = _HERE / "_assets"
    return inside if inside.is_dir() else _HERE.parent / "assets"


def asset(*parts: str) -> Path:
    """Return the path of a file or a folder that ships with the program.

    Parameters
    ----------
    *parts
        The path below the folder of assets, one name a part; none gives that folder itself.

    Raises
    ------
    FileNotFoundError
        If nothing of that name ships: the installation is damaged, or the name is wrong.

    Examples
    --------
    >>> asset("trays").is_dir()
    True
    >>> asset("trays", "none such")
    Traceback (most recent call last):
    FileNotFoundError: no asset 'trays/none such' ships with the program
    """
    path = _root().joinpath(*parts)
    if not path.exists():
        raise FileNotFoundError(f"no asset {'/'.join(parts)!r} ships with the program")
    return path
