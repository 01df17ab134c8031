"""How many small wrongs in the truth of the program the tests notice.

    python -m tests.measure.mutants                  # 600 mutants of everything that judges
    python -m tests.measure.mutants reading          # all of that number from this module
    python -m tests.measure.mutants --count 50 --seed 2
    python -m tests.measure.mutants --part 1/2       # the odd ones; 2/2 the even, beside it
    python -m tests.measure.mutants --again OUTPUT   # what survived then, with the tests of now
    python -m tests.measure.mutants --total OUTPUT.. # runs one after another: what came of it all

Mutants of rules, judging, readings and measures are drawn by a seed, and each is run against the
tests of its module in a process of its own, which stops at the first failure. A mutant is killed
by a failing test, by a module that no longer loads, or by a hang (more than five times the
processor time that the sound module takes). Whatever else happens is survival. Hypothesis tries
the first thirty of its hundred examples and doesn't shrink, or a mutant would cost minutes; so a
run notices a little less than the tests do.

`survivors.toml` says of mutants that are known to survive why they do. They count as survivors all
the same; the account at the end shows them with their reasons, and apart from them those that have
none, and those that are listed though something kills them.
"""

from __future__ import annotations

import argparse
import importlib
import importlib.machinery
import importlib.util
import os
import random
import resource
import signal
import sys
import time
import traceback
from collections import Counter
from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass
from pathlib import Path
from types import ModuleType
from typing import Final

import hypothesis
import numpy as np  # noqa: F401  Loaded once here, not again in each process.
import pytest
import shapely  # noqa: F401

from tests.measure.mutations import Mutant, mutants_of
from tests.measure.survivors import Reason, known_survivors

ROOT: Final = Path(__file__).resolve().parents[2]

_NO_MODULE: Final = 71
_CRASH: Final = 70

_MEASURES: Final = (
    "tests/geometry/test_values.py",
    "tests/references/test_eurocode_throat.py",
    "tests/references/test_inspection_trends.py",
    "tests/geometry/test_measures.py",
    "tests/geometry/test_oracle.py",
)
_READING: Final = (
    "tests/geometry/test_values.py",
    "tests/geometry/test_reading_fine.py",
    "tests/references/test_inspection_trends.py",
    "tests/references/test_skewed_joints.py",
    "tests/geometry/test_reading.py",
    "tests/geometry/test_reading_obstacles.py",
    "tests/geometry/test_reading_skewed.py",
    "tests/geometry/test_reading_throat.py",
    "tests/geometry/test_reading_exact.py",
    "tests/geometry/test_gaps.py",
    "tests/geometry/test_reading_dense.py",
    "tests/geometry/test_oracle.py",
)
_RULES: Final = (
    "tests/exercises/test_values.py",
    "tests/exercises/test_checks.py",
    "tests/references/test_iso_5817.py",
    "tests/references/test_aws_d1_1.py",
    "tests/exercises/test_limits_judged.py",
    "tests/exercises/test_rules.py",
    "tests/exercises/test_rule_files.py",
    "tests/exercises/test_judging.py",
)
_JUDGING: Final = (
    "tests/exercises/test_values.py",
    "tests/exercises/test_checks.py",
    "tests/exercises/test_settling.py",
    "tests/references/test_iso_5817.py",
    "tests/references/test_aws_d1_1.py",
    "tests/references/test_light_and_sight.py",
    "tests/exercises/test_doubt.py",
    "tests/exercises/test_limits_judged.py",
    "tests/exercises/test_judging.py",
    "tests/exercises/test_gauging.py",
    "tests/exercises/test_heron_footbridge.py",
)

TARGETS: Final[dict[str, tuple[str, ...]]] = {
    "geometry.measures": _MEASURES,
    "geometry.reading": _READING,
    "exercises.rules.formula": _RULES,
    "exercises.rules.limits": _RULES,
    "exercises.rules.reading": _RULES,
    "exercises.rules.ruleset": _RULES,
    "exercises.rules.sizes": _RULES,
    "exercises.rules.shipped": _RULES,
    "exercises.doubt": _JUDGING,
    "exercises.required": _JUDGING,
    "exercises.checks": _JUDGING,
    "exercises.settling": _JUDGING,
    "exercises.gauging": _JUDGING,
    "exercises.judging": _JUDGING,
}
"""The modules that are mutated, each with its tests, the quick ones first."""


class _Swap(importlib.machinery.SourceFileLoader):
    """Loads a mutant in its module's place."""

    def __init__(self, mutant: Mutant, path: str) -> None:
        super().__init__(mutant.module, path)
        self._tree = mutant.tree

    def exec_module(self, module: ModuleType) -> None:
        exec(compile(self._tree, self.path, "exec"), module.__dict__)


class _Finder:
    """Finds the mutant before anything else finds the module."""

    def __init__(self, mutant: Mutant) -> None:
        self._mutant = mutant

    def find_spec(
        self, name: str, path: Sequence[str] | None = None, target: ModuleType | None = None
    ) -> importlib.machinery.ModuleSpec | None:
        if name != self._mutant.module:
            return None
        file = str(_file(name))
        return importlib.util.spec_from_file_location(name, file, loader=_Swap(self._mutant, file))


@dataclass(frozen=True)
class Outcome:
    """What became of a mutant: `by` is the end of what pytest said, or how it died."""

    killed: bool
    by: str
    seconds: float


def _file(module: str) -> Path:
    return ROOT / (module.replace(".", "/") + ".py")


def _run_tests(mutant: Mutant | None, tests: Sequence[str], log: Path) -> int:
    """Run in a child process: pytest's exit code, with the mutant in its module's place."""
    out = os.open(log, os.O_WRONLY | os.O_CREAT | os.O_TRUNC)
    os.dup2(out, 1)
    os.dup2(out, 2)
    if mutant is not None:
        # Loaded before pytest looks for it, since pytest has a way of its own to load modules.
        sys.meta_path.insert(0, _Finder(mutant))
        try:
            importlib.import_module(mutant.module)
        except Exception:  # noqa: BLE001  Whatever it is, it kills.
            traceback.print_exc()
            return _NO_MODULE
    options = ["-x", "-q", "--tb=line", "-p", "no:cacheprovider", "--hypothesis-profile=mutants"]
    # Hypothesis was loaded before pytest could look into its assertions, which nobody needs.
    options.append("-Wignore::pytest.PytestAssertRewriteWarning")
    return int(pytest.main([*options, *tests]))


def run(mutant: Mutant | None, tests: Sequence[str], seconds: float) -> Outcome:
    """Run the tests on a mutant (or on the sound code) for at most `seconds` of processor time."""
    log = ROOT / "tests" / "out" / f"mutant-{os.getpid()}.log"
    log.parent.mkdir(exist_ok=True)
    began = resource.getrusage(resource.RUSAGE_CHILDREN)
    child = os.fork()
    if child == 0:
        # A limit on processor time, since a busy machine must not count as a hang.
        resource.setrlimit(resource.RLIMIT_CPU, (int(seconds), int(seconds) + 5))
        resource.setrlimit(resource.RLIMIT_AS, (4 << 30, 4 << 30))
        code = _CRASH
        try:
            code = _run_tests(mutant, tests, log)
        except BaseException:  # noqa: BLE001  The child ends here and nowhere else.
            traceback.print_exc()
        finally:
            os._exit(code)
    _, status = os.waitpid(child, 0)
    ended = resource.getrusage(resource.RUSAGE_CHILDREN)
    used = ended.ru_utime + ended.ru_stime - began.ru_utime - began.ru_stime
    if os.WIFSIGNALED(status):
        number = os.WTERMSIG(status)
        hung = number in {signal.SIGXCPU, signal.SIGKILL}
        return Outcome(hung, f"hung ({signal.Signals(number).name})", used)
    code = os.WEXITSTATUS(status)
    text = log.read_text(encoding="utf-8", errors="replace").splitlines()
    named = [line for line in text if line.startswith(("FAILED", "ERROR"))]
    if code == _NO_MODULE:
        return Outcome(True, "doesn't load", used)
    # 1: a test failed; 2: a test module couldn't be collected.
    return Outcome(code in {1, 2}, named[0] if named else f"exit {code}", used)


def chosen(names: Sequence[str], count: int, seed: int) -> list[Mutant]:
    """`count` mutants of the named modules, drawn evenly from all that there are."""
    everything: list[Mutant] = []
    for name in names:
        everything += mutants_of(name, _file(name).read_text(encoding="utf-8"))
    drawn = random.Random(seed).sample(range(len(everything)), min(count, len(everything)))
    print(f"{len(drawn)} of {len(everything)} mutants, seed {seed}", flush=True)
    return [everything[index] for index in sorted(drawn)]


def outcomes(logs: Iterable[Path]) -> dict[str, bool]:
    """Whether each mutant of earlier runs was killed; the last run that has it says so."""
    found: dict[str, bool] = {}
    for log in logs:
        for line in log.read_text(encoding="utf-8").splitlines():
            word, _, rest = line.partition(" ")
            if word in {"killed", "SURVIVED"}:
                found[rest.rpartition(" | ")[0].rpartition(" | ")[0]] = word == "killed"
    return found


def measure(names: Sequence[str], mutants: Sequence[Mutant]) -> dict[str, bool]:
    """Run the mutants and print what became of each; nothing if the tests fail without one."""
    limits: dict[tuple[str, ...], float] = {}
    for tests in dict.fromkeys(TARGETS[name] for name in names):
        sound = run(None, tests, 600.0)
        if sound.by != "exit 0":
            print(f"the tests fail without a mutant: {sound.by}")
            return {}
        limits[tests] = 10.0 + 5.0 * sound.seconds
        print(f"{len(tests)} test files: sound in {sound.seconds:.1f} s", flush=True)
    found: dict[str, bool] = {}
    for mutant in mutants:
        tests = TARGETS[mutant.module]
        outcome = run(mutant, (str(_file(mutant.module)), *tests), limits[tests])
        found[str(mutant)] = outcome.killed
        word = "killed" if outcome.killed else "SURVIVED"
        print(f"{word} {mutant} | {outcome.by} | {outcome.seconds:.1f} s", flush=True)
    return found


def account(mutants: Sequence[Mutant], found: Mapping[str, bool]) -> None:
    """Print the share killed by module and in all, and of each survivor why it is one."""
    ran = [mutant for mutant in mutants if str(mutant) in found]
    drawn = Counter(mutant.module for mutant in ran)
    killed = Counter(mutant.module for mutant in ran if found[str(mutant)])
    for name, count in drawn.items():
        print(f"{name}: {killed[name]} of {count} killed")
    share = killed.total() / max(1, drawn.total())
    print(f"all: {killed.total()} of {drawn.total()} killed, {share:.1%}")
    known = known_survivors(mutants)
    survived = [mutant for mutant in ran if not found[str(mutant)]]
    for kind in Reason:
        listed = [m for m in survived if m in known and known[m].reason is kind]
        print(f"{len(listed)} survived: {kind.value}")
        for mutant in listed:
            print(f"  {mutant}\n    {known[mutant].why}")
    bare = [mutant for mutant in survived if mutant not in known]
    wrong = [mutant for mutant in ran if found[str(mutant)] and mutant in known]
    print("\n  ".join([f"{len(bare)} survived with no reason known", *map(str, bare)]))
    print("\n  ".join([f"{len(wrong)} killed that are listed as survivors", *map(str, wrong)]))


def main() -> int:
    """Read the command line and measure."""
    parser = argparse.ArgumentParser(description=(__doc__ or "").partition("\n")[0])
    parser.add_argument("modules", nargs="*", help="the ends of modules' names; all without")
    parser.add_argument("--count", type=int, default=600)
    parser.add_argument("--seed", type=int, default=1)
    parser.add_argument("--part", default="1/1", help="of so many runs, which this is")
    parser.add_argument("--again", type=Path, help="only what survived, by an earlier output")
    parser.add_argument("--total", type=Path, nargs="+", help="the account of earlier outputs")
    given = parser.parse_args()
    ends = given.modules or [""]
    names = [name for name in TARGETS if any(name.endswith(end) for end in ends)]
    os.chdir(ROOT)
    hypothesis.settings.register_profile(
        "mutants",
        deadline=None,
        derandomize=True,
        max_examples=30,
        database=None,
        phases=(hypothesis.Phase.explicit, hypothesis.Phase.generate),
    )
    began = time.monotonic()
    mutants = chosen(names, given.count, given.seed)
    if given.total:
        account(mutants, outcomes(given.total))
        return 0
    part, parts = (int(figure) for figure in given.part.split("/"))
    wanted = mutants[part - 1 :: parts]
    if given.again:
        once = outcomes([given.again])
        wanted = [mutant for mutant in wanted if once.get(str(mutant)) is False]
    found = measure(list(dict.fromkeys(mutant.module for mutant in wanted)), wanted)
    account(mutants, found)
    print(f"{(time.monotonic() - began) / 60.0:.1f} minutes")
    return 0 if len(found) == len(wanted) else 2


if __name__ == "__main__":
    sys.exit(main())
