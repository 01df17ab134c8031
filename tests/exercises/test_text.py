"""Texts in several languages."""

from __future__ import annotations

import pytest

from exercises.text import NO_TEXT, Text


@pytest.mark.parametrize(
    ("language", "words"),
    [("es", "hola"), ("es-MX", "hola"), ("es_MX", "hola"), ("EN", "hi"), ("de", "hi"), ("", "hi")],
)
def test_the_nearest_language_is_taken(language: str, words: str) -> None:
    assert Text.of({"es": "hola", "en": "hi"}).in_language(language) == words


def test_a_region_of_its_own_comes_first() -> None:
    text = Text.of({"es": "zumo", "es-MX": "jugo"})
    assert (text.in_language("es-MX"), text.in_language("es-AR")) == ("jugo", "zumo")


def test_without_english_the_first_is_taken() -> None:
    assert Text.of({"fr": "salut", "de": "hallo"}).in_language("es") == "salut"


def test_a_plain_text_holds_for_any_language() -> None:
    assert str(Text.of("hi")) == Text.of("hi").in_language("es") == "hi"


@pytest.mark.parametrize("source", ["", "hi", {"en": "hi"}, {"en": "hi", "es": "hola"}])
def test_a_text_goes_back_as_it_came(source: str | dict[str, str]) -> None:
    assert Text.of(source).as_document() == source


def test_an_empty_text_is_false_and_says_nothing() -> None:
    assert not NO_TEXT
    assert not Text.of("")
    assert not Text.of({"en": ""})
    assert NO_TEXT.in_language("en") == ""
    assert Text.of("x")
