"""Files made to break the readers, guided by what they reach in the code.

    python -m tests.measure.fuzz TARGET SECONDS [CORPUS]

TARGET is one of csv, dxf, svg, picture, tray, sitting, result, sealed, journal. A reader may answer
with what it read or refuse with faults that say what, where and what would be right; anything else
is a finding: kept in a file under `tests/out/fuzz/TARGET/findings`, one for each place, and the run
goes on. An input that takes longer than twenty seconds or more than 2 GiB ends the run. The corpus
grows in CORPUS, by default beside the findings, and the next run goes on from it. Needs the extra
`fuzz`.
"""

from __future__ import annotations

import io
import json
import sys
import traceback
from collections import Counter
from collections.abc import Callable
from pathlib import Path

import atheris

with atheris.instrument_imports(
    include=[
        "exercises",
        "trainer.sealing",
        "ezdxf",
        "svgelements",
        "defusedxml",
        "xml",
        "json",
        "PIL",
    ]
):
    from PIL import Image

    from exercises.file_faults import FileError
    from exercises.intake.dxf import read_dxf
    from exercises.intake.photo_file import picture_of
    from exercises.intake.svg import read_svg
    from exercises.intake.table import read_table
    from exercises.sitting.plan_file import plan_bytes, read_plan
    from exercises.sitting.result_file import read_result, result_bytes
    from exercises.strict_json import parse_json
    from exercises.tray import read_tray
    from tests.exercises.sitting import specimens
    from tests.measure import forging

OUT = Path(__file__).resolve().parents[1] / "out" / "fuzz"
TRAYS = Path(__file__).resolve().parents[2] / "assets" / "trays"


def read_tray_text(data: bytes) -> None:
    """Read a tray as the loader does, from its bytes."""
    parsed = parse_json(data)
    if not parsed.faults:
        read_tray(parsed.value)


def read_sitting(data: bytes) -> None:
    """Read a sitting; what was read has to be written and read back the same."""
    plan = read_plan(data, "a.sitting")
    assert read_plan(plan_bytes(plan), "a.sitting") == plan


def read_result_text(data: bytes) -> None:
    """Read a result; what was read has to be written and read back the same."""
    result = read_result(data, "a.result")
    assert result_bytes(read_result(result_bytes(result), "a.result")) == result_bytes(result)


READERS: dict[str, Callable[[bytes], object]] = {
    "csv": lambda data: read_table(data, "a.csv"),
    "dxf": lambda data: read_dxf(data, "a.dxf"),
    "svg": lambda data: read_svg(data, "a.svg"),
    "picture": lambda data: picture_of(data, "a.png"),
    "tray": read_tray_text,
    "sitting": read_sitting,
    "result": read_result_text,
    "sealed": forging.open_forged,
    "journal": forging.resume_forged,
}

_DXF = b"0\nSECTION\n2\nENTITIES\n%s0\nENDSEC\n0\nEOF\n"
_SVG = b'<svg xmlns="http://www.w3.org/2000/svg" width="9mm" viewBox="0 0 9 9">%s</svg>'

_TRAY = (
    b'{"format": "toe-and-throat/tray", "version": 1, "coupons": [{"id": "a",'
    b'"bead": {"leg_base": 8, "leg_upright": 7}, "callout": {"size": "5/16 in"}}]}'
)


def pictures() -> list[bytes]:
    """Return a small picture in each format that is read."""
    picture = Image.radial_gradient("L").resize((40, 36)).convert("RGB")
    made = []
    for kind in ("PNG", "JPEG", "TIFF", "WEBP"):
        file = io.BytesIO()
        picture.save(file, kind)
        made.append(file.getvalue())
    return made


SEEDS: dict[str, list[bytes]] = {
    "csv": [
        b"x [mm];z [mm]\n0,5;1,5\n0,6;NaN\n0,7;oops\n",
        b"# units: in\n0.1\t0.2\n0.2\t0.3\n",
        b'"1,5","2,5"\n"3,5","4,5"\n',
        b"1 2 3\n2 4 5\n3 8 9\n",
        "x;z\n1;2\n".encode("utf-16"),
    ],
    "dxf": [
        _DXF % b"0\nLINE\n8\n0\n10\n0\n20\n0\n11\n5\n21\n5\n",
        _DXF % b"0\nARC\n8\n0\n10\n0\n20\n0\n40\n5\n50\n0\n51\n90\n",
        _DXF % b"0\nLWPOLYLINE\n90\n2\n70\n1\n10\n0\n20\n0\n42\n1\n10\n5\n20\n5\n",
        _DXF % b"0\nSPLINE\n71\n2\n72\n6\n73\n3\n40\n0\n40\n0\n40\n0\n40\n1\n40\n1\n40\n1\n"
        b"10\n0\n20\n0\n10\n1\n20\n2\n10\n3\n20\n0\n",
        _DXF % b"0\nINSERT\n2\nB\n10\n0\n20\n0\n70\n3\n71\n3\n",
    ],
    "svg": [
        _SVG % b'<path d="M0 0L1 1A5 5 0 0 1 3 3Q1 1 2 2T3 3C1 1 2 2 3 3S4 4 5 5HV1z"/>',
        _SVG % b'<g transform="rotate(3) scale(2,3) matrix(1 0 0 1 2 3)"><rect width="3"/></g>',
        _SVG % b'<defs><circle id="a" r="3"/></defs><use href="#a" x="3"/><ellipse rx="1"/>',
        _SVG % b'<polyline points="0,0 1,1 2,0"/><polygon points="0 0 1 1 2 0"/><line x1="3"/>',
    ],
    "picture": pictures(),
    "tray": [
        next(TRAYS.glob("*.json")).read_bytes(),
        _TRAY,
    ],
    "sitting": [plan_bytes(specimens.plan())],
    "result": [result_bytes(specimens.result(of=specimens.plan(parts=(specimens.chosen(),))))],
    "sealed": forging.SEALED,
    "journal": forging.JOURNALS,
}


class Watch:
    """Runs one reader, and keeps what it did not foresee."""

    def __init__(self, target: str) -> None:
        self._read, self._out = READERS[target], OUT / target / "findings"
        self._out.mkdir(parents=True, exist_ok=True)
        self.counts: Counter[str] = Counter()

    def one(self, data: bytes) -> None:
        """Let the reader have one file."""
        self.counts["executions"] += 1
        try:
            self._read(data)
        except forging.SealError:
            self.counts["refused"] += 1
        except FileError as error:
            self.counts["refused"] += 1
            if not all(f.text and f.right and f.code for f in error.faults) or not error.faults:
                self._keep("refused-without-words", data)
        except Exception as error:  # noqa: BLE001  # whatever it is, it is the finding
            last = traceback.extract_tb(error.__traceback__)[-1]
            place = f"{type(error).__name__}-{Path(last.filename).stem}-{last.lineno}"
            if self._keep(place, data):
                traceback.print_exc()
        else:
            self.counts["read"] += 1
        if self.counts["executions"] % 1000 == 0:
            # The fuzzer ends the process without a word to Python.
            (self._out / "counts.json").write_text(json.dumps(self.counts), encoding="utf-8")

    def _keep(self, place: str, data: bytes) -> bool:
        """Count a finding; keep the first of its kind, and say that it is."""
        self.counts[f"finding {place}"] += 1
        if self.counts[f"finding {place}"] > 1:
            return False
        (self._out / place).write_bytes(data)
        return True


def main() -> None:
    """Fuzz one reader for a while."""
    target, seconds = sys.argv[1], int(sys.argv[2])
    corpus = Path(sys.argv[3]) if len(sys.argv) > 3 else OUT / target / "corpus"
    corpus.mkdir(parents=True, exist_ok=True)
    for number, seed in enumerate(SEEDS[target]):
        (corpus / f"seed-{number}").write_bytes(seed)
    watch = Watch(target)
    flags = [f"-max_total_time={seconds}", "-timeout=20", "-rss_limit_mb=2048", "-max_len=8192"]
    prefix = f"-artifact_prefix={OUT / target}/"
    atheris.Setup([sys.argv[0], str(corpus), *flags, prefix], watch.one)
    atheris.Fuzz()


if __name__ == "__main__":
    main()
