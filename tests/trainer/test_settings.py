"""Settings and the places of files: kept whole, set aside when damaged, moved from old places."""

from __future__ import annotations

import json
from pathlib import Path

import pytest

from trainer.placement import Placement
from trainer.places import Places, move_in, old_places, places
from trainer.settings import MOST_RECENT, Settings, load_settings, read_settings, save_settings

FULL = Settings(
    appearance="dark",
    unit="in",
    language="es",
    symbols="iso-b",
    loupe=False,
    less_motion=True,
    first_start_seen=True,
    guide_done=True,
    recent=("shop/a.tray.json", "shop/b.tray.json"),
    folders=(("trays", "shop"), ("pictures", "slides")),
    placement=Placement(10, 20, 1000, 700, maximised=True, screen="DP-1"),
)


def test_everything_comes_back(tmp_path: Path) -> None:
    file = tmp_path / "settings.json"
    assert save_settings(file, FULL)
    kept = read_settings(file)
    assert kept.settings == FULL
    assert (kept.damaged, kept.aside) == (None, None)


@pytest.mark.parametrize("data", [b"{", b"", b"[]", b"\xff\xfe", b"[" * 100_000, b'"dark"'])
def test_a_damaged_file_is_set_aside_with_what_it_held(tmp_path: Path, data: bytes) -> None:
    file = tmp_path / "settings.json"
    file.write_bytes(data)
    kept = read_settings(file)
    assert kept.settings == Settings()
    assert kept.damaged
    assert kept.aside is not None
    assert kept.aside.read_bytes() == data
    assert not file.exists()
    assert read_settings(file).damaged is None, "it is said once"


def test_a_file_that_cannot_be_read_is_said_and_the_defaults_hold(tmp_path: Path) -> None:
    file = tmp_path / "settings.json"
    file.mkdir()
    kept = read_settings(file)
    assert kept.settings == Settings()
    assert kept.damaged


@pytest.mark.parametrize(
    ("key", "value", "wanted"),
    [
        ("recent", "x", ()), ("recent", [1, "a", "a", "", "b"], ("a", "b")),
        ("recent", [str(n) for n in range(30)], tuple(str(n) for n in range(MOST_RECENT))),
        ("folders", ["x"], ()), ("folders", {"trays": 1, "pictures": "p"}, (("pictures", "p"),)),
        ("placement", {"x": 1}, None), ("placement", "left", None),
    ],
)  # fmt: skip
def test_one_value_that_is_no_choice_costs_only_itself(
    tmp_path: Path, key: str, value: object, wanted: object
) -> None:
    file = tmp_path / "settings.json"
    file.write_text(json.dumps({"appearance": "dark", key: value}), encoding="utf-8")
    kept = load_settings(file)
    assert kept.appearance == "dark"
    assert getattr(kept, key) == wanted


def test_the_old_file_stays_whole_when_the_new_one_cannot_be_written(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    file = tmp_path / "settings.json"
    save_settings(file, FULL)

    def full_disk(_: int) -> None:
        raise OSError(28, "No space left on device")

    monkeypatch.setattr("os.fsync", full_disk)
    assert not save_settings(file, Settings())
    assert load_settings(file) == FULL
    assert [path.name for path in tmp_path.iterdir() if path.is_file()] == ["settings.json"]


def test_recent_trays_are_few_and_each_is_there_once() -> None:
    settings = Settings()
    for n in [*range(12), 5]:
        settings = settings.with_recent(Path(f"{n}.tray.json"))
    assert settings.recent[0] == "5.tray.json"
    assert len(settings.recent) == len(set(settings.recent)) == MOST_RECENT
    assert "5.tray.json" not in settings.without_recent("5.tray.json").recent
    assert settings.without_recent().recent == ()


def test_both_lie_below_the_folders_that_the_system_names(home: Path) -> None:
    found = places()
    assert found.settings == home / "config" / "toe-and-throat" / "settings.json"
    assert found.data == home / "data" / "toe-and-throat"


def test_only_macos_had_another_place() -> None:
    (old,) = old_places("darwin", Path("h"))
    assert old.settings == Path("h/Library/Preferences/toe-and-throat/settings.json")
    assert old_places("linux") == old_places("win32") == ()


def test_what_lies_in_the_old_places_moves_once(tmp_path: Path) -> None:
    (old,) = old_places("darwin", tmp_path)
    new = Places(tmp_path / "config" / "settings.json", tmp_path / "data")
    save_settings(old.settings, FULL)
    old.data.mkdir(parents=True)
    old.calls.write_text("{}\n", encoding="utf-8")
    move_in([old], new)
    assert load_settings(new.settings) == FULL
    assert new.calls.read_text(encoding="utf-8") == "{}\n"
    assert not old.settings.exists()
    assert not old.calls.exists()


def test_what_is_in_the_new_place_is_never_overwritten(tmp_path: Path) -> None:
    old = Places(tmp_path / "old.json", tmp_path / "old")
    new = Places(tmp_path / "settings.json", tmp_path / "data")
    save_settings(old.settings, FULL)
    save_settings(new.settings, Settings(unit="mm"))
    move_in([old, new], new)
    assert load_settings(new.settings) == Settings(unit="mm")
    assert old.settings.exists()


def test_what_cannot_be_moved_stays(tmp_path: Path) -> None:
    old = Places(tmp_path / "old.json", tmp_path / "old")
    save_settings(old.settings, FULL)
    (tmp_path / "file").write_text("", encoding="utf-8")
    move_in([old], Places(tmp_path / "file" / "settings.json", tmp_path / "file"))
    assert load_settings(old.settings) == FULL
