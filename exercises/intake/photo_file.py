"""Pictures out of files: what is too large is refused from its header, before it is unpacked."""

from __future__ import annotations

import io
import logging
import struct
import warnings
import zlib
from dataclasses import dataclass, field
from pathlib import Path
from typing import Final

import numpy as np
from numpy.typing import NDArray
from PIL import Image, ImageOps, UnidentifiedImageError

from exercises.file_faults import FileError, TrayFault, read_bytes
from geometry.faults import Fault

__all__ = [
    "LARGEST_PHOTO",
    "MOST_PIXELS",
    "WORKED_PIXELS",
    "Picture",
    "load_picture",
    "picture_of",
]

# What is wrong with a picture is said by a fault; the reader's own log would tell a terminal.
logging.getLogger("PIL").addHandler(logging.NullHandler())
logging.getLogger("PIL").propagate = False

LARGEST_PHOTO: Final = 256 * 1024 * 1024
"""Bytes of a file: eighty megapixels at three bytes each, not packed at all."""

MOST_PIXELS: Final = 80_000_000
"""What is unpacked at most: 240 MB for a moment."""

WORKED_PIXELS: Final = 24_000_000
"""What is worked on at most: a larger picture is reduced by a whole factor, which is said."""

_LONGEST_SIDE: Final = 30_000
_SHORTEST_SIDE: Final = 32
_MOST_NAMED: Final = 120

_FORMATS: Final = ("PNG", "JPEG", "TIFF", "WEBP")
"""No others are tried: every decoder is one more way in for a file that was made to do harm."""

_DEEP: Final = frozenset({"I;16", "I;16L", "I;16B", "I;16N", "I", "F"})
"""Modes with more than 8 bits a pixel: grey, stretched over their own range."""

_BROKEN: Final = (
    OSError, SyntaxError, ValueError, EOFError, struct.error, zlib.error, IndexError, KeyError,
    TypeError, OverflowError, ZeroDivisionError, AttributeError, RuntimeError,
)  # fmt: skip
"""What a decoder raises on files that were made, or fell, to pieces; none is ours to mend."""

_WHITE: Final = (255, 255, 255, 255)
_LUMA: Final = np.array([0.299, 0.587, 0.114], np.float32)
"""Rec. 601: how bright a colour is to an eye."""


@dataclass(frozen=True, slots=True, eq=False)
class Picture:
    """A picture as it is worked on.

    Parameters
    ----------
    name
        The file's own name.
    pixels
        Red, green, blue, uint8, shape (height, width, 3): what is shown.
    grey
        How bright each pixel is, 0 to 255, float32, shape (height, width): what is measured.
    reduced
        How many of the file's pixels, along a side, one pixel here stands for.
    """

    name: str
    pixels: NDArray[np.uint8] = field(repr=False)
    grey: NDArray[np.float32] = field(repr=False)
    reduced: int = 1

    @property
    def size(self) -> tuple[int, int]:
        """Width and height, pixels."""
        height, width = self.grey.shape
        return width, height


def load_picture(path: Path | str) -> Picture:
    """Return the picture in a PNG, JPEG, TIFF or WebP file, upright, on white, in 8 bits of colour.

    Raises
    ------
    FileError
        If it can't be read, is of another kind, is cut short or broken, or too large or too small;
        the size is looked at before anything is unpacked.
    """
    file = Path(path)
    data = read_bytes(file, LARGEST_PHOTO)
    if len(data) > LARGEST_PHOTO:
        mib = LARGEST_PHOTO // 1024 // 1024
        words, right = f"the file is larger than {mib} MiB", "a smaller one"
        raise _refused(str(file), "photo-file-large", words, right, mib=mib)
    return picture_of(data, str(file))


def picture_of(data: bytes, name: str) -> Picture:
    """Return the picture that the bytes of a file hold; `name` is its path.

    Raises
    ------
    FileError
        As `load_picture`.

    Examples
    --------
    >>> picture_of(b"GIF89a", "weld.gif")
    Traceback (most recent call last):
    ...
    exercises.file_faults.FileError: weld.gif: (whole document): this is no picture that can be \
read; right would be: PNG, JPEG, TIFF or WebP
    """
    with warnings.catch_warnings():
        # Of odd tags in the file; its pixels are looked at all the same.
        warnings.simplefilter("ignore")
        try:
            image = _opened(data, name)
            _check_size(image.size, name)
            image.load()
            return _picture(image, name)
        except MemoryError as error:
            words = "there is too little memory for the picture"
            raise _refused(name, "photo-memory", words, "a smaller one") from error
        except FileError:
            raise
        except _BROKEN as error:
            raise _broken(name, error) from error


def _opened(data: bytes, name: str) -> Image.Image:
    try:
        return Image.open(io.BytesIO(data), formats=_FORMATS)
    except Image.DecompressionBombError as error:
        # Raised by the header alone: it counts pixels, and names no sides.
        number = "".join(c for c in str(error).partition("pixels")[0] if c.isdigit())
        raise _too_many(name, int(number or 0)) from error
    except UnidentifiedImageError as error:
        words = "this is no picture that can be read"
        raise _refused(name, "photo-kind", words, "PNG, JPEG, TIFF or WebP") from error


def _check_size(size: tuple[int, int], name: str) -> None:
    width, height = size
    if width * height > MOST_PIXELS:
        raise _too_many(name, width * height)
    if max(size) > _LONGEST_SIDE or min(size) < _SHORTEST_SIDE:
        words = f"the picture has {width} by {height} pixels"
        right = f"sides of {_SHORTEST_SIDE} to {_LONGEST_SIDE} pixels"
        limits = {"least": _SHORTEST_SIDE, "most": _LONGEST_SIDE}
        raise _refused(name, "photo-sides", words, right, width=width, height=height, **limits)


def _picture(image: Image.Image, name: str) -> Picture:
    image = ImageOps.exif_transpose(image)
    factor = 1
    while image.width * image.height > WORKED_PIXELS * factor * factor:
        factor += 1
    if image.mode in _DEEP:
        deep = _shrunk(np.asarray(image, np.float32), factor)
        grey = _stretched(deep)
        level = np.rint(grey).astype(np.uint8)
        return Picture(Path(name).name, np.repeat(level[..., None], 3, axis=2), grey, factor)
    flat = _flat(image)
    if factor > 1:
        flat = flat.reduce(factor)
    pixels = np.asarray(flat, np.uint8)
    return Picture(Path(name).name, pixels, pixels @ _LUMA, factor)


def _flat(image: Image.Image) -> Image.Image:
    """The picture in red, green and blue; what is clear is white."""
    if image.has_transparency_data:
        clear = image.convert("RGBA")
        ground = Image.new("RGBA", clear.size, _WHITE)
        return Image.alpha_composite(ground, clear).convert("RGB")
    # A conversion to colour takes CMYK as ink on paper, and the palette's colours for its numbers.
    return image.convert("RGB")


def _shrunk(levels: NDArray[np.float32], factor: int) -> NDArray[np.float32]:
    if factor == 1:
        return levels
    height, width = (side // factor * factor for side in levels.shape)
    blocks = levels[:height, :width].reshape(height // factor, factor, width // factor, factor)
    means: NDArray[np.float32] = blocks.mean(axis=(1, 3), dtype=np.float32)
    return means


def _stretched(levels: NDArray[np.float32]) -> NDArray[np.float32]:
    """Grey levels of any depth over 0 to 255: a camera's 12 bits leave most of 16 empty."""
    finite = np.nan_to_num(levels, nan=0.0, posinf=0.0, neginf=0.0)
    least, most = np.percentile(finite, (0.05, 99.95))
    span = float(most - least) or 1.0
    scaled = (finite - np.float32(least)) * np.float32(255.0 / span)
    return np.asarray(np.clip(scaled, 0.0, 255.0), np.float32)


def _refused(file: str, code: str, text: str, right: str, **params: float | str) -> FileError:
    return FileError([TrayFault.of(file, Fault("", code, text, right, params))])


def _too_many(name: str, pixels: int) -> FileError:
    stated, most = round(pixels / 1e6), MOST_PIXELS // 1_000_000
    words, right = f"the picture has {stated} megapixels", f"at most {most}"
    return _refused(name, "photo-pixels", words, right, megapixels=stated, at_most=most)


def _broken(name: str, error: BaseException) -> FileError:
    reason = " ".join(str(error).split())[:_MOST_NAMED]
    if "truncated" in reason or isinstance(error, EOFError):
        words, right = "the picture is cut short", "the whole file, copied or saved again"
        return _refused(name, "photo-cut", words, right)
    words, right = "the picture is broken", "the file, copied or saved again"
    return _refused(name, "photo-broken", words, right)
