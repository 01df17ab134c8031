"""Sealed files: only the passphrase opens them, and no byte of them can be changed unnoticed."""

from __future__ import annotations

import hashlib
import hmac
import re
from pathlib import Path

import pytest
from cryptography.hazmat.primitives.ciphers.aead import ChaCha20Poly1305
from hypothesis import given
from hypothesis import strategies as st

from trainer.sealing.key import Cost, Key, SealError
from trainer.sealing.seal import FORMAT, LARGEST, Opener, Unsealed, seal, unseal

CHEAP = Cost(log_n=4)
GOLDEN = Path(__file__).parent / "golden" / "herons.sitting"
KEY = Key.made("three weathered herons", CHEAP)
SEALED = seal("result", b'{"score": 0.75}', KEY)


def trouble(data: bytes, secret: Key | str = KEY, kind: str | None = None) -> str | None:
    """What a file is refused for; None if it is opened."""
    try:
        unseal(data, secret, kind)  # type: ignore[arg-type]  # one that isn't known is tried too
    except SealError as error:
        return error.trouble
    return None


def summed(data: bytes) -> bytes:
    """The file with its sum made to fit: what someone does who knows the format, not the key."""
    line, _, sealed = data.partition(b"\n")
    head = line.rpartition(b" ")[0]
    return b"%s %s\n%s" % (head, hashlib.sha256(head + sealed).hexdigest().encode(), sealed)


# --- round trip -----------------------------------------------------------------------------------


@given(st.binary(max_size=300), st.text(min_size=1, max_size=40))
def test_what_was_sealed_is_what_is_opened(body: bytes, passphrase: str) -> None:
    sealed = seal("sitting", body, passphrase, CHEAP)
    opened = unseal(sealed, passphrase, "sitting")
    assert (opened.kind, opened.body) == ("sitting", body)
    assert unseal(sealed, opened.key).body == body
    assert len(body) < 16 or body not in sealed


def test_the_same_is_never_sealed_alike() -> None:
    assert len({seal("result", b"the same", KEY) for _ in range(50)}) == 50
    assert len({Key.made("the same", CHEAP).secret for _ in range(10)}) == 10


def test_a_sealed_file_shows_neither_passphrase_nor_key() -> None:
    for each in (b"herons", KEY.secret, KEY.secret.hex().encode(), KEY.branch("file")):
        assert each not in SEALED


def test_an_empty_passphrase_seals_nothing() -> None:
    with pytest.raises(ValueError, match="empty"):
        seal("sitting", b"a", "")


# --- outside checks -------------------------------------------------------------------------------


def test_keys_are_those_of_rfc_7914() -> None:
    """Section 12, the third vector; a shorter key is the beginning of a longer one (RFC 8018)."""
    key = Key.derived("pleaseletmein", Cost(14, 8, 1), b"SodiumChloride")
    assert key.secret.hex() == "7023bdcb3afd7348461c06cd81fd38ebfda8fbba904f8e3ea9b543f6545da1f2"


def test_keys_are_those_of_the_standard_library() -> None:
    for cost in (Cost(4, 1, 1), Cost(6, 8, 3), Cost(10, 4, 2)):
        other = hashlib.scrypt(b"a", salt=b"b" * 16, n=2**cost.log_n, r=cost.r, p=cost.p, dklen=32)
        assert Key.derived("a", cost, b"b" * 16).secret == other


def test_the_cipher_is_that_of_rfc_8439() -> None:
    """Section 2.8.2, the example of the AEAD construction."""
    text = (
        b"Ladies and Gentlemen of the class of '99: If I could offer you only one tip for the "
        b"future, sunscreen would be it."
    )
    sealed = ChaCha20Poly1305(bytes(range(0x80, 0xA0))).encrypt(
        bytes.fromhex("070000004041424344454647"), text, bytes.fromhex("50515253c0c1c2c3c4c5c6c7")
    )
    assert sealed[:16].hex() == "d31a8d34648e60db7b86afbc53ef7ec2"
    assert sealed[-16:].hex() == "1ae10b594f09e26a7e902ecbd0600691"


def expanded(secret: bytes, salt: bytes, info: bytes, length: int) -> bytes:
    """HKDF with SHA-256 as RFC 5869 writes it, sections 2.2 and 2.3."""
    pseudorandom = hmac.digest(salt or bytes(32), secret, "sha256")
    out, block = b"", b""
    while len(out) < length:
        block = hmac.digest(pseudorandom, block + info + bytes([len(out) // 32 + 1]), "sha256")
        out += block
    return out[:length]


def test_branches_are_those_of_rfc_5869() -> None:
    """Our second opinion gives test case 1 of appendix A.1; the program gives what it gives."""
    salt, info = bytes.fromhex("000102030405060708090a0b0c"), bytes.fromhex("f0f1f2f3f4f5f6f7f8f9")
    assert expanded(b"\x0b" * 22, salt, info, 42).hex() == (
        "3cb25f25faacd57a90434f64d0362f2a2d2d0a90cf1a5a4c5db02d56ecc4c5bf34007208d5b887185865"
    )
    key = Key(CHEAP, b"s" * 16, b"k" * 32)
    assert key.branch("a", b"b") == expanded(b"k" * 32, b"b", b"toe-and-throat/a", 32)
    assert key.branch("a") == expanded(b"k" * 32, b"", b"toe-and-throat/a", 32)


def test_a_file_of_the_first_version_opens_for_ever() -> None:
    """Golden, and by a second reader that shares no code with the first but the cipher."""
    data = GOLDEN.read_bytes()
    assert unseal(data, "drei verwitterte Fischreiher äöü", "sitting").body == b"twelve coupons\n"
    line, _, sealed = data.partition(b"\n")
    said = line.decode().split(" ")
    assert said[:6] == [FORMAT, "1", "sitting", "17", "8", "1"]
    salt, check, nonce = (bytes.fromhex(each) for each in said[6:9])
    assert int(said[9]) == len(sealed)
    passphrase = "drei verwitterte Fischreiher äöü".encode()
    secret = hashlib.scrypt(passphrase, salt=salt, n=2**17, r=8, p=1, dklen=32, maxmem=2**28)
    assert check == expanded(secret, b"", b"toe-and-throat/check", 32)
    cipher = ChaCha20Poly1305(expanded(secret, b"", b"toe-and-throat/file", 32))
    assert cipher.decrypt(nonce, sealed, " ".join(said[:10]).encode()) == b"twelve coupons\n"


# --- passphrases ----------------------------------------------------------------------------------


@pytest.mark.parametrize(
    "other",
    ["three weathered heron", "Three weathered herons", " three weathered herons", "x", "herons\0"],
)
def test_another_passphrase_is_known_as_one(other: str) -> None:
    assert trouble(SEALED, other) == "passphrase"


def test_the_key_of_another_sitting_is_no_key() -> None:
    assert trouble(SEALED, Key.made("three weathered herons", CHEAP)) == "passphrase"
    forged = Key(KEY.cost, KEY.salt, b"k" * 32)
    assert trouble(SEALED, forged) == "passphrase"


@pytest.mark.parametrize(
    ("typed", "again"),
    [("caf\u00e9", "cafe\u0301"), ("\u212b", "\u00c5"), ("\uac00", "\u1100\u1161")],
)
def test_an_accent_is_the_same_however_it_is_typed(typed: str, again: str) -> None:
    assert unseal(seal("sitting", b"a", typed, CHEAP), again).body == b"a"


@pytest.mark.parametrize(
    ("typed", "again"),
    # NFC, not NFKC: letters that only look alike stay apart. Case counts, and so does every space.
    [("\ufb01n", "fin"), ("e", "\u0435"), ("\u017f", "s"), ("a b", "a\u00a0b"), ("a", "a ")],
)
def test_letters_that_look_alike_are_not_the_same(typed: str, again: str) -> None:
    assert trouble(seal("sitting", b"a", typed, CHEAP), again) == "passphrase"


def test_any_text_is_a_passphrase() -> None:
    for odd in ("\ud83d", "\0", "🔒" * 500, "\u202eabc", "ß" * 10_000):
        assert unseal(seal("sitting", b"a", odd, CHEAP), odd).body == b"a"


# --- changed --------------------------------------------------------------------------------------


def test_every_changed_byte_is_refused() -> None:
    """All bytes, one by one, to several other values; and again with the sum made to fit."""
    for at in range(len(SEALED)):
        for other in (SEALED[at] ^ 1, SEALED[at] ^ 0x20, 0, 0x31):
            if other == SEALED[at]:
                continue
            changed = SEALED[:at] + bytes([other]) + SEALED[at + 1 :]
            assert trouble(changed) is not None, (at, other)
            assert trouble(changed, "three weathered herons") is not None, (at, other)
            if b"\n" in changed:
                again = summed(changed)
                assert again == SEALED or trouble(again) is not None, (at, other)


def test_a_changed_body_is_told_from_a_wrong_passphrase() -> None:
    body = SEALED.index(b"\n") + 1
    for at in range(body, len(SEALED)):
        changed = SEALED[:at] + bytes([SEALED[at] ^ 1]) + SEALED[at + 1 :]
        assert trouble(changed) == trouble(summed(changed)) == "changed"
        # Damage shows before anybody types a passphrase.
        assert trouble(changed, "wrong") == "changed"


def test_every_length_but_the_whole_is_refused() -> None:
    for length in range(len(SEALED)):
        assert trouble(SEALED[:length]) == "truncated", length
    assert trouble(SEALED + b"\n") == "changed"
    assert trouble(summed(SEALED + b"\n")) == "changed"


def test_bytes_taken_out_or_put_in_are_refused() -> None:
    for at in range(len(SEALED)):
        assert trouble(SEALED[:at] + SEALED[at + 1 :]) is not None
        assert trouble(SEALED[:at] + SEALED[at : at + 1] * 2 + SEALED[at + 1 :]) is not None


def test_two_files_can_t_be_spliced() -> None:
    other = seal("result", b'{"score": 0.25}', KEY)
    one, two = SEALED.partition(b"\n"), other.partition(b"\n")
    assert trouble(one[0] + b"\n" + two[2]) == "changed"
    assert trouble(summed(one[0] + b"\n" + two[2])) == "changed"


@given(st.binary(max_size=400))
def test_whatever_follows_the_name_is_refused_in_words(tail: bytes) -> None:
    assert trouble(f"{FORMAT} ".encode() + tail) is not None
    assert trouble(f"{FORMAT} 1 result ".encode() + tail + b"\n") is not None


@pytest.mark.parametrize("data", [b"{}", b"PK\x03\x04", b"\0" * 400, b"toe-and-throat/tray 1"])
def test_what_is_no_sealed_file_is_said_to_be_none(data: bytes) -> None:
    assert trouble(data) == "not sealed"


# --- versions, kinds, costs, sizes ----------------------------------------------------------------


@pytest.mark.parametrize("version", [2, 17, 999_999])
def test_a_newer_version_is_refused_as_newer(version: int) -> None:
    newer = SEALED.replace(b"/sealed 1 ", b"/sealed %d " % version, 1)
    with pytest.raises(SealError) as caught:
        unseal(newer, KEY)
    assert caught.value.trouble == "newer"
    assert caught.value.params == {"version": version, "known": 1}


@pytest.mark.parametrize("version", [b"0", b"01", b"-1", b"1.5", b"\xd9\xa1", b"9" * 5000])
def test_what_is_no_version_is_refused(version: bytes) -> None:
    assert trouble(SEALED.replace(b"/sealed 1 ", b"/sealed " + version + b" ", 1)) == "changed"


def test_a_result_is_no_sitting() -> None:
    assert trouble(SEALED, KEY, "sitting") == "kind"
    assert trouble(SEALED, KEY, "result") is None
    # Renamed by somebody without the key it is neither.
    renamed = summed(SEALED.replace(b" result ", b" sitting ", 1))
    assert trouble(renamed, KEY, "sitting") == trouble(renamed, KEY) == "changed"
    assert trouble(summed(SEALED.replace(b" result ", b" letter ", 1))) == "changed"


BOMBS = ["40 8 1", "19 8 1", "99 8 1", "18 9 1", "17 99 1", "17 8 5", "17 8 99", "30 1 1", "16 1 1"]


@pytest.mark.parametrize("costs", BOMBS)
def test_a_file_can_t_ask_for_all_memory_or_all_day(
    monkeypatch: pytest.MonkeyPatch, costs: str
) -> None:
    """Not even the object that would allocate is made."""

    def never(**_: object) -> None:
        raise AssertionError("derived")

    monkeypatch.setattr("trainer.sealing.key.Scrypt", never)
    bomb = summed(SEALED.replace(b" 4 8 1 ", f" {costs} ".encode(), 1))
    assert trouble(bomb, "herons") == "cost"


def test_the_usual_cost_is_bearable() -> None:
    assert Cost().is_bearable
    assert Cost(18, 8, 4).is_bearable
    assert not Cost(10**30, 8, 1).is_bearable


def test_a_machine_without_memory_is_told(monkeypatch: pytest.MonkeyPatch) -> None:
    def none_left(**_: object) -> None:
        raise MemoryError

    monkeypatch.setattr("trainer.sealing.key.Scrypt", none_left)
    with pytest.raises(SealError) as caught:
        unseal(SEALED, "herons")
    assert (caught.value.trouble, set(caught.value.params)) == ("memory", {"mib"})


def test_what_nobody_could_read_back_is_not_sealed() -> None:
    with pytest.raises(SealError) as caught:
        seal("result", bytes(LARGEST), KEY)
    assert caught.value.trouble == "too large"
    assert trouble(SEALED + bytes(LARGEST)) == "too large"
    body = bytes(LARGEST - 400)
    assert unseal(seal("result", body, KEY), KEY).body == body


# --- one passphrase for many files ----------------------------------------------------------------


def test_many_files_of_one_sitting_cost_one_derivation(monkeypatch: pytest.MonkeyPatch) -> None:
    files = [seal("result", bytes([number]), KEY) for number in range(5)]
    files.append(seal("result", b"of another sitting", "three weathered herons", CHEAP))
    derived: list[bytes] = []
    true = Key.derived

    def counted(passphrase: str, cost: Cost, salt: bytes) -> Key:
        derived.append(salt)
        return true(passphrase, cost, salt)

    monkeypatch.setattr(Key, "derived", counted)
    opener = Opener("three weathered herons")
    opened: list[Unsealed] = [opener.unseal(data, "result") for data in files]
    assert [each.body for each in opened][:5] == [bytes([number]) for number in range(5)]
    assert len(derived) == 2
    with pytest.raises(SealError, match="kind"):
        opener.unseal(files[0], "sitting")


def test_what_is_said_of_a_key_holds_no_secret() -> None:
    assert not re.search(KEY.secret.hex() + "|secret|herons", repr(KEY) + str(KEY))
