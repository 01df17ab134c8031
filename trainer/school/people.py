"""Many learners at once, out of a table that is pasted or read from a file: all its faults at once.

A line a learner: a name, and a code where they have one already. What stands
between the columns may be a tab, a semicolon or a comma; a first line may name the columns, and
then the codes may stand alone.
"""

from __future__ import annotations

import csv
import io
from collections.abc import Collection, Mapping, Sequence
from dataclasses import dataclass
from typing import Final

from exercises.sitting.codes import LONGEST_CODE, code_key, is_code
from exercises.strict_json import quoted
from geometry.faults import Fault
from trainer.school.codes import made_code, mistyped, spelt, tidy_code

__all__ = [
    "LONGEST_NAME",
    "MOST",
    "Newcomer",
    "code_faults",
    "csv_of",
    "newcomers",
    "there_already",
]

LONGEST_NAME: Final = 200
MOST: Final = 2000
"""Learners in one table."""

_COLUMNS: Final[Mapping[str, str]] = {
    "name": "name", "learner": "name", "nombre": "name", "alumno": "name", "alumna": "name",
    "code": "code", "código": "code", "codigo": "code",
    "group": "group", "grupo": "group",
}  # fmt: skip
"""What a first line may call the columns, in the languages that the program speaks."""


@dataclass(frozen=True, slots=True)
class Newcomer:
    """Somebody to be added.

    Parameters
    ----------
    name
        What they are called on this machine; it never leaves it.
    code
        What they are called in sittings and on the school's server.
    line
        Which line of the table says so, from 1.
    """

    name: str
    code: str
    line: int


def newcomers(
    text: str,
    names: Collection[str] = (),
    codes: Collection[str] = (),
    there: Collection[tuple[str, str]] = (),
) -> tuple[list[Newcomer], list[Fault]]:
    r"""Return who a table adds, and everything that is wrong with it; places are its lines.

    Parameters
    ----------
    text
        The table. Who has no code gets one that is made; who has no name is called by their code.
    names, codes
        Those that are there already.
    there
        Names and codes that belong together: lines that say just that are passed over, as when a
        table that was taken in before has come to be longer.

    Examples
    --------
    >>> found, _ = newcomers("Pia; K-7\nOdo; K-8", ["Pia"], ["K-7"], there=[("Pia", "K-7")])
    >>> [each.name for each in found]
    ['Odo']
    >>> found, faults = newcomers("name; code\nPia; Kestrel-7\nOdo; \n")
    >>> [(each.name, len(each.code)) for each in found], faults
    ([('Pia', 9), ('Odo', 7)], [])
    >>> found, faults = newcomers("Pia, AAA-ACN\nPia, k-08\n", codes=["K-08"])
    >>> [(fault.at, fault.code) for fault in faults]
    [('/1', 'code-mistyped'), ('/2', 'code-taken'), ('/2', 'learner-name-twice')]
    """
    every = _rows(text)
    known = _keys(there)
    rows = [row for row in every if _key(row) not in known]
    if len(rows) > MOST:
        said = f"{len(rows)} learners are named"
        params: dict[str, float | str] = {"count": len(rows), "most": MOST}
        return [], [Fault("/", "learners-too-many", said, f"at most {MOST} at once", params)]
    found: list[Newcomer] = []
    faults: list[Fault] = []
    names_at: dict[str, int] = dict.fromkeys(names, 0)
    codes_at: dict[str, int] = {code_key(code): 0 for code in codes}
    for line, name, code in rows:
        at = f"/{line}"
        faults += _code_faults(at, code, codes_at) if code else []
        faults += _name_faults(at, name, names_at) if name else []
        if code:
            codes_at.setdefault(code_key(code), line)
        if name:
            names_at.setdefault(name, line)
        found.append(Newcomer(name, tidy_code(code), line))
    if not every:
        faults.append(Fault("/", "learners-none", "no learner is named", "a line for each"))
    return ([] if faults else _with_codes(found, codes, names)), faults


def there_already(text: str, there: Collection[tuple[str, str]]) -> int:
    r"""Return how many lines of a table say a name and a code that belong together already.

    Examples
    --------
    >>> there_already("Pia; k-7\nOdo; K-8\nAna\n", [("Pia", "K-7"), ("Ana", "K-9")])
    1
    """
    known = _keys(there)
    return sum(_key(row) in known for row in _rows(text))


def _keys(there: Collection[tuple[str, str]]) -> set[tuple[str, str]]:
    return {(name, code_key(code)) for name, code in there}


def _key(row: tuple[int, str, str]) -> tuple[str, str]:
    return row[1], code_key(row[2])


def code_faults(code: str, codes: Collection[str] = ()) -> list[Fault]:
    """Return what keeps `code` from being a learner's, beside those that are taken.

    Examples
    --------
    >>> [fault.code for fault in code_faults("k-07", ["K-07"])], code_faults("k-08", ["K-07"])
    (['code-taken'], [])
    >>> [fault.code for fault in code_faults("aaa aan", ["AAA-AAN"])]
    ['code-taken']
    """
    return _code_faults("", code, {code_key(one): 0 for one in codes})


def csv_of(people: Sequence[tuple[str, str, str]]) -> str:
    r"""Return names, codes and groups as CSV, to be read by a spreadsheet or by `newcomers`.

    Examples
    --------
    >>> csv_of([("Pia", "AAA-AAN", "Tuesday")])
    'name,code,group\r\nPia,AAA-AAN,Tuesday\r\n'
    """
    out = io.StringIO()
    writer = csv.writer(out, lineterminator="\r\n")
    writer.writerow(("name", "code", "group"))
    # What begins like a formula a spreadsheet would work out.
    writer.writerows(
        [f"'{cell}" if cell.startswith(("=", "+", "-", "@", "\t", "\r")) else cell for cell in row]
        for row in people
    )
    return out.getvalue()


def _rows(text: str) -> list[tuple[int, str, str]]:
    """Line, name and code of every line that says anything."""
    text = text.removeprefix("\ufeff")
    first = next((line for line in text.splitlines() if line.strip()), "")
    between = max("\t;,", key=first.count)
    reader = csv.reader(io.StringIO(text, newline=""), delimiter=between, skipinitialspace=True)
    columns: tuple[str, ...] | None = None
    found: list[tuple[int, str, str]] = []
    for row in reader:
        # Written by us for a spreadsheet, such a cell has an apostrophe before it.
        cells = [cell.strip().removeprefix("'") for cell in row]
        if not any(cells):
            continue
        if columns is None:
            named = tuple(_COLUMNS.get(cell.casefold(), "") for cell in cells)
            columns = named if any(named) else ("name", "code")
            if any(named):
                continue
        said = dict(zip(columns, cells, strict=False))
        found.append((reader.line_num, said.get("name", ""), said.get("code", "")))
    return found


def _code_faults(at: str, code: str, taken: Mapping[str, int]) -> list[Fault]:
    code = code.strip()
    value: dict[str, float | str] = {"value": quoted(code)}
    if not is_code(code):
        params = {**value, "most": LONGEST_CODE}
        right = f"1 to {LONGEST_CODE} characters that can be seen"
        return [Fault(at, "code-none", f"{quoted(code)} is no code", right, params)]
    if mistyped(code):
        right = "the code as it was given out"
        return [Fault(at, "code-mistyped", f"{quoted(code)} is mistyped", right, value)]
    # Without its hyphen it is the same to whoever reads it out.
    line = taken.get(code_key(code), taken.get(code_key(spelt(code))))
    if line is None:
        return []
    right = "a code of their own"
    if line:
        params = {**value, "line": line}
        text = f"{quoted(code)} is the code of line {line} too"
        return [Fault(at, "code-twice", text, right, params)]
    return [Fault(at, "code-taken", f"{quoted(code)} is another learner's code", right, value)]


def _name_faults(at: str, name: str, taken: Mapping[str, int]) -> list[Fault]:
    if len(name) > LONGEST_NAME:
        params: dict[str, float | str] = {"most": LONGEST_NAME}
        right = f"at most {LONGEST_NAME} characters"
        return [Fault(at, "learner-name-long", "the name is too long", right, params)]
    line = taken.get(name)
    if line is None:
        return []
    value: dict[str, float | str] = {"value": quoted(name)}
    right = "a name that tells them apart"
    if line:
        text = f"line {line} is called {quoted(name)} too"
        return [Fault(at, "learner-name-twice", text, right, {**value, "line": line})]
    text = f"another learner is called {quoted(name)}"
    return [Fault(at, "learner-name-taken", text, right, value)]


def _with_codes(
    found: Sequence[Newcomer], codes: Collection[str], names: Collection[str]
) -> list[Newcomer]:
    taken = [*codes, *(each.code for each in found if each.code), *names]
    done: list[Newcomer] = []
    for each in found:
        code = each.code or made_code(taken)
        taken.append(code)
        done.append(Newcomer(each.name or code, code, each.line))
    return done
