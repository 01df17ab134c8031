"""The rules that no checker off the shelf holds: late imports, sizes, names, places and words."""

from __future__ import annotations

import ast
import re
import tomllib
from collections.abc import Iterator
from pathlib import Path

import pytest

ROOT = Path(__file__).resolve().parents[2]
PACKAGES = ("geometry", "exercises", "trainer")
SOURCES = sorted(path for name in PACKAGES for path in (ROOT / name).rglob("*.py"))
TESTS = sorted((ROOT / "tests").rglob("*.py"))
TEXTS = [
    path
    for path in [
        *SOURCES,
        *TESTS,
        *(ROOT / "assets").rglob("*"),
        *(ROOT / "tests").rglob("*.json*"),
        *ROOT.glob("*.md"),
        ROOT / "pyproject.toml",
        ROOT / ".ci" / "run",
    ]
    if path.is_file() and "out" not in path.relative_to(ROOT).parts
]
BINARY = {".pic", ".ico", ".png", ".ttf", ".otf", ".qm"}
FUNCTIONS = (ast.FunctionDef, ast.AsyncFunctionDef, ast.Lambda)


def name_of(path: Path) -> str:
    """Return the path below the root, for a test's name and its message."""
    return path.relative_to(ROOT).as_posix()


def inner_imports(tree: ast.AST) -> Iterator[ast.stmt]:
    """Yield the imports of a module that run only when a function of it is called."""
    for function in ast.walk(tree):
        if isinstance(function, FUNCTIONS):
            for node in ast.walk(function):
                if isinstance(node, ast.Import | ast.ImportFrom):
                    yield node


def outer_imports(node: ast.AST) -> Iterator[str]:
    """Yield the modules that are imported when this one is, wherever the statement stands."""
    for child in ast.iter_child_nodes(node):
        if isinstance(child, ast.Import):
            yield from (alias.name for alias in child.names)
        elif isinstance(child, ast.ImportFrom):
            yield child.module or ""
        elif not isinstance(child, FUNCTIONS) and not is_typing_only(child):
            yield from outer_imports(child)


def is_typing_only(node: ast.AST) -> bool:
    """Return whether `node` is an ``if TYPE_CHECKING:`` block."""
    return isinstance(node, ast.If) and ast.unparse(node.test).endswith("TYPE_CHECKING")


def parsed(path: Path) -> ast.Module:
    return ast.parse(path.read_text(encoding="utf-8"), filename=str(path))


def test_there_is_something_to_look_at() -> None:
    assert {path.relative_to(ROOT).parts[0] for path in SOURCES} == set(PACKAGES)
    assert len(SOURCES) > 30


@pytest.mark.parametrize("path", SOURCES, ids=name_of)
def test_only_late_imports_late(path: Path) -> None:
    found = [f"line {node.lineno}: {ast.unparse(node)}" for node in inner_imports(parsed(path))]
    found += re.findall(r"\b(?:import_module|__import__)\(.*", path.read_text(encoding="utf-8"))
    if name_of(path) not in {"trainer/late.py", "trainer/late_commands.py", "trainer/screens.py"}:
        assert not found


def test_late_imports_no_qt_before_it_is_called() -> None:
    tree = parsed(ROOT / "trainer" / "late.py")
    assert list(inner_imports(tree)), "then nothing starts late, and this file needn't be"
    heavy = ("PySide6", "trainer.window", "trainer.bench", "trainer.canvas", "trainer.look")
    assert not [name for name in outer_imports(tree) if name.startswith(heavy)]


@pytest.mark.parametrize("path", [*SOURCES, *TESTS], ids=name_of)
def test_files_and_functions_stay_small(path: Path) -> None:
    """At most 500 lines a file and 60 a function, its docstring not counted."""
    assert len(path.read_text(encoding="utf-8").splitlines()) <= 500
    for node in ast.walk(parsed(path)):
        if isinstance(node, ast.FunctionDef | ast.AsyncFunctionDef):
            first = node.body[1] if ast.get_docstring(node) and len(node.body) > 1 else node.body[0]
            length = (node.end_lineno or 0) - first.lineno + 1
            assert length <= 60, f"{node.name} has {length} lines"


@pytest.mark.parametrize("path", [*SOURCES, *TESTS], ids=name_of)
def test_modules_are_named_by_role(path: Path) -> None:
    drawers = {"utils", "util", "helpers", "helper", "common", "misc", "base", "tools", "core"}
    names = {part.removesuffix(".py").strip("_") for part in path.relative_to(ROOT).parts}
    assert not names & drawers


@pytest.mark.parametrize("path", SOURCES, ids=name_of)
def test_no_module_keeps_state_in_a_global(path: Path) -> None:
    found = [node for node in ast.walk(parsed(path)) if isinstance(node, ast.Global)]
    assert not [f"line {node.lineno}: global {', '.join(node.names)}" for node in found]


@pytest.mark.parametrize("path", [*SOURCES, *TESTS], ids=name_of)
def test_no_test_is_skipped_and_nothing_is_left_to_do(path: Path) -> None:
    text = path.read_text(encoding="utf-8")
    words = ["TO" + "DO", "FIX" + "ME", "X" + "XX", "mark." + "skip", "mark." + "xfail"]
    words += ["pytest." + "skip(", "pytest." + "xfail(", "Not" + "ImplementedError"]
    assert not [word for word in words if word in text]


@pytest.mark.parametrize("path", TEXTS, ids=name_of)
def test_no_file_knows_a_machine_or_a_registry(path: Path) -> None:
    if path.suffix in BINARY:
        return
    text = path.read_text(encoding="utf-8")
    words = ["/" + "work/", "/" + "tmp/", "/" + "home/", "/" + "root/", "C:" + "\\Users"]
    words += ["py" + "pi.", "index" + "-url", "/sim" + "ple/", "find" + "-links"]
    assert not [word for word in words if word in text]


def test_top_level_holds_what_the_map_says() -> None:
    """A new top-level name is a decision; it belongs in DEVELOPERS.md before it belongs here."""
    shown = {path.name for path in ROOT.iterdir() if not path.name.startswith(".")}
    made_by_running = {"build", "dist"}
    assert shown - made_by_running == {
        "CHANGELOG.md", "DEVELOPERS.md", "LICENSE", "README.md", "pyproject.toml",
        "assets", "exercises", "geometry", "tests", "trainer",
    }  # fmt: skip
    written = (ROOT / "DEVELOPERS.md").read_text(encoding="utf-8")
    assert not [name for name in shown - made_by_running if name not in written]


def test_every_package_of_ours_is_a_package() -> None:
    folders = {path.parent for path in SOURCES}
    assert not [name_of(folder) for folder in folders if not (folder / "__init__.py").is_file()]


def test_no_folder_of_tests_is_a_package() -> None:
    """`tests/geometry` must never answer to the name `geometry`."""
    assert not [name_of(path) for path in TESTS if path.name == "__init__.py"]


def test_versions_agree() -> None:
    project = tomllib.loads((ROOT / "pyproject.toml").read_text(encoding="utf-8"))["project"]
    changes = (ROOT / "CHANGELOG.md").read_text(encoding="utf-8")
    released = re.findall(r"^## \[(\d+\.\d+\.\d+)\]", changes, re.MULTILINE)
    assert released[:1] == [project["version"]]
