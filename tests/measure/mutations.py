"""Every small wrong that a module could do: mutants of its syntax tree, in a fixed order.

What is mutated is what runs. Docstrings, annotations, imports, `__all__` and type aliases are left
alone, since nothing happens by them; everything else counts, the words of messages included.
"""

from __future__ import annotations

import ast
import copy
from collections import Counter
from collections.abc import Callable, Iterator
from dataclasses import dataclass

__all__ = ["Mutant", "mutants_of"]

_ARITHMETIC: dict[type[ast.operator], tuple[type[ast.operator], ...]] = {
    ast.Add: (ast.Sub,),
    ast.Sub: (ast.Add,),
    ast.Mult: (ast.Div,),
    ast.Div: (ast.Mult,),
    ast.FloorDiv: (ast.Mult,),
    ast.Mod: (ast.Mult,),
    ast.Pow: (ast.Mult,),
    ast.BitOr: (ast.BitAnd,),
    ast.BitAnd: (ast.BitOr,),
    ast.MatMult: (),
}

# The boundary first, then the contrary.
_COMPARISONS: dict[type[ast.cmpop], tuple[type[ast.cmpop], ...]] = {
    ast.Lt: (ast.LtE, ast.GtE),
    ast.LtE: (ast.Lt, ast.Gt),
    ast.Gt: (ast.GtE, ast.LtE),
    ast.GtE: (ast.Gt, ast.Lt),
    ast.Eq: (ast.NotEq,),
    ast.NotEq: (ast.Eq,),
    ast.In: (ast.NotIn,),
    ast.NotIn: (ast.In,),
    ast.Is: (ast.IsNot,),
    ast.IsNot: (ast.Is,),
}

_NAMES = {
    "min": "max", "max": "min", "any": "all", "all": "any", "sin": "cos", "cos": "sin",
    "tan": "cos", "ceil": "floor", "degrees": "radians", "radians": "degrees",
}  # fmt: skip


_SYMMETRIC = {"min", "max", "dist", "hypot"}
"""Functions that give the same whichever of two arguments comes first."""


Place = tuple[tuple[str, int | None], ...]
"""The way from the module to a node: fields, and indices where a field is a list."""


@dataclass(frozen=True)
class Mutant:
    """One change: where it is, what kind it is, what it does, and the module that has it.

    `within` is the line of the source that the change begins in, and `ordinal` numbers those in
    it that read alike, from 1.
    """

    module: str
    line: int
    within: str
    ordinal: int
    kind: str
    change: str
    sound: ast.Module
    place: Place
    instead: ast.AST | None

    @property
    def tree(self) -> ast.Module:
        """The module with the change in it."""
        return _replaced(self.sound, self.place, self.instead)

    def __str__(self) -> str:
        number = f" #{self.ordinal}" if self.ordinal > 1 else ""
        return f"{self.module}:{self.line} [{self.kind}] {self.change}{number}"


Change = tuple[str, ast.AST | None]
"""A kind of mutant, and what stands in the node's place; None takes a statement out."""


def _operators(node: ast.AST) -> Iterator[Change]:
    if isinstance(node, ast.BinOp):
        for operator in _ARITHMETIC.get(type(node.op), ()):
            yield "arithmetic", ast.BinOp(node.left, operator(), node.right)
    elif isinstance(node, ast.AugAssign):
        for operator in _ARITHMETIC.get(type(node.op), ()):
            yield "arithmetic", ast.AugAssign(node.target, operator(), node.value)
    elif isinstance(node, ast.UnaryOp):
        yield ("boolean" if isinstance(node.op, ast.Not) else "arithmetic"), node.operand
    elif isinstance(node, ast.BoolOp):
        other = ast.Or() if isinstance(node.op, ast.And) else ast.And()
        yield "boolean", ast.BoolOp(other, node.values)
    elif isinstance(node, ast.Compare):
        for place, compared in enumerate(node.ops):
            for instead in _COMPARISONS[type(compared)]:
                operators = [*node.ops[:place], instead(), *node.ops[place + 1 :]]
                yield "comparison", ast.Compare(node.left, operators, node.comparators)


def _values(node: ast.AST) -> Iterator[Change]:
    if not isinstance(node, ast.Constant):
        return
    value = node.value
    if isinstance(value, bool):
        yield "constant", ast.Constant(not value)
    elif isinstance(value, int):
        yield "constant", ast.Constant(value + 1)
        yield "constant", ast.Constant(value - 1)
    elif isinstance(value, float):
        yield "constant", ast.Constant(value * 1.25 if value else 0.25)
        yield "constant", ast.Constant(value * 0.8 if value else -0.25)
    elif isinstance(value, str):
        yield "text", ast.Constant(f"{value}?")
    elif value is None:
        yield "constant", ast.Constant(value=1)


def _name(function: ast.expr) -> str:
    return ast.unparse(function).rpartition(".")[2]


def _calls(node: ast.AST) -> Iterator[Change]:
    if isinstance(node, ast.Call):
        starred = any(isinstance(arg, ast.Starred) for arg in node.args[:2])
        if len(node.args) > 1 and not starred and _name(node.func) not in _SYMMETRIC:
            swapped = [node.args[1], node.args[0], *node.args[2:]]
            yield "arguments", ast.Call(node.func, swapped, node.keywords)
        for place in range(len(node.keywords)):
            kept = node.keywords[:place] + node.keywords[place + 1 :]
            yield "arguments", ast.Call(node.func, node.args, kept)
    elif isinstance(node, ast.Name) and node.id in _NAMES:
        yield "function", ast.Name(_NAMES[node.id], node.ctx)
    elif isinstance(node, ast.Attribute) and node.attr in _NAMES:
        yield "function", ast.Attribute(node.value, _NAMES[node.attr], node.ctx)


def _flow(node: ast.AST) -> Iterator[Change]:
    if isinstance(node, ast.Return) and node.value is not None:
        if not (isinstance(node.value, ast.Constant) and node.value.value is None):
            yield "return", ast.Return(ast.Constant(None))
    elif isinstance(node, ast.If):
        yield "branch", ast.If(ast.UnaryOp(ast.Not(), node.test), node.body, node.orelse)
    elif isinstance(node, ast.IfExp):
        yield "branch", ast.IfExp(node.test, node.orelse, node.body)
    elif isinstance(node, ast.Expr | ast.AugAssign | ast.Raise | ast.Continue | ast.Break):
        yield "statement", None
    elif isinstance(node, ast.comprehension):
        for place in range(len(node.ifs)):
            kept = node.ifs[:place] + node.ifs[place + 1 :]
            yield "branch", ast.comprehension(node.target, node.iter, kept, node.is_async)


_KINDS: tuple[Callable[[ast.AST], Iterator[Change]], ...] = (_operators, _values, _calls, _flow)


def _is_idle(node: ast.AST, field: str) -> bool:
    """Whether nothing happens by what stands in a field of a node."""
    if field in {"annotation", "returns"}:
        return True
    return isinstance(node, ast.Subscript) and field == "slice" and _names_a_type(node.value)


def _names_a_type(node: ast.AST) -> bool:
    return isinstance(node, ast.Name) and node.id in {"Literal", "Final", "NDArray", "Callable"}


def _is_docstring(node: ast.AST) -> bool:
    return (
        isinstance(node, ast.Expr)
        and isinstance(node.value, ast.Constant)
        and isinstance(node.value.value, str)
    )


def _is_export(node: ast.AST) -> bool:
    return isinstance(node, ast.Assign) and ast.unparse(node.targets[0]) == "__all__"


def _places(node: ast.AST, at: Place = ()) -> Iterator[tuple[Place, ast.AST]]:
    """Every node that does something, with the way to it from the module."""
    for field, value in ast.iter_fields(node):
        if _is_idle(node, field):
            continue
        children = list(enumerate(value)) if isinstance(value, list) else [(None, value)]
        for index, child in children:
            if not isinstance(child, ast.AST) or _is_docstring(child) or _is_export(child):
                continue
            if isinstance(child, ast.Import | ast.ImportFrom):
                continue
            place = (*at, (field, index))
            yield place, child
            yield from _places(child, place)


def _replaced(tree: ast.Module, place: Place, instead: ast.AST | None) -> ast.Module:
    changed = copy.deepcopy(tree)
    parent: ast.AST = changed
    for field, index in place[:-1]:
        value = getattr(parent, field)
        parent = value if index is None else value[index]
    field, index = place[-1]
    new = copy.deepcopy(instead) if instead is not None else ast.Pass()
    if index is None:
        setattr(parent, field, new)
    else:
        getattr(parent, field)[index] = new
    return ast.fix_missing_locations(changed)


def _shown(node: ast.AST) -> str:
    text = " ".join(ast.unparse(node).split())
    return text if len(text) <= 90 else f"{text[:87]}..."


def mutants_of(module: str, source: str) -> Iterator[Mutant]:
    """Yield every mutant of a module's source, in the order of its tree."""
    tree, lines = ast.parse(source), source.splitlines()
    alike = Counter[tuple[int, str]]()
    for place, node in _places(tree):
        # A generator's clause has no place of its own: it is where what it binds is.
        at = node.target if isinstance(node, ast.comprehension) else node
        line = getattr(at, "lineno", 1)
        for kind_of in _KINDS:
            for kind, instead in kind_of(node):
                new = "nothing" if instead is None else _shown(instead)
                change = f"{_shown(node)}  ->  {new}"
                alike[line, change] += 1
                yield Mutant(
                    module,
                    line,
                    lines[line - 1].strip(),
                    alike[line, change],
                    kind,
                    change,
                    tree,
                    place,
                    instead,
                )
