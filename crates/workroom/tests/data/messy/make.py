#!/usr/bin/env python3
"""Makes the messy pictures of `tests/messy_pictures.rs`, and what Pillow says of their colours.

    pip install pillow==13.0.0 numpy && python3 crates/workroom/tests/data/messy/make.py

Every picture shows four flat quarters of one colour each, 48 x 32 pixels. `colors.json` holds the colour in the middle
of each quarter (top left, top right, bottom left, bottom right) as Pillow, a general-purpose library, reads it, upright
and on white. Pictures are drawn here; nothing was taken from elsewhere.
"""

import json
import struct
import zlib
from pathlib import Path

import numpy as np
from PIL import Image, ImageOps

HERE = Path(__file__).resolve().parent
QUARTERS = [(201, 64, 52), (236, 222, 180), (38, 92, 140), (88, 130, 74)]
WIDE, HIGH = 48, 32


def quarters(channels):
    """Four flat quarters of these colours."""
    first = np.asarray(channels)
    pixels = np.zeros((HIGH, WIDE, first.shape[1]), first.dtype)
    for at, color in enumerate(first):
        top, left = at // 2 * HIGH // 2, at % 2 * WIDE // 2
        pixels[top:top + HIGH // 2, left:left + WIDE // 2] = color
    return pixels


def plain():
    return Image.fromarray(quarters(np.array(QUARTERS, np.uint8)), "RGB")


def chunk(kind, data):
    return struct.pack(">I", len(data)) + kind + data + struct.pack(">I", zlib.crc32(kind + data))


def png(wide, high, depth, color, rows):
    """A PNG file with raw rows; Pillow does not write 16 bits a channel with colour."""
    head = struct.pack(">IIBBBBB", wide, high, depth, color, 0, 0, 0)
    return b"\x89PNG\r\n\x1a\n" + chunk(b"IHDR", head) + chunk(b"IDAT", zlib.compress(rows, 9)) + chunk(b"IEND", b"")


def deep(color, channels):
    """16 bits a channel: the low byte is noise that must not come out."""
    pixels = quarters(np.array(channels, np.uint16) * 256 + 93).astype(">u2")
    return png(WIDE, HIGH, 16, color, b"".join(b"\0" + row.tobytes() for row in pixels))


def ycck(path):
    """Pillow writes CMYK with a marker that says so; told as YCCK, the same channels are read as luma, two chromas, black."""
    cmy = 255 - quarters(np.array(QUARTERS, np.uint8)).astype(int)
    black = cmy.min(axis=2, keepdims=True)
    ink = np.clip(np.round((cmy - black) / np.maximum(255 - black, 1) * 255), 0, 255)
    # As Adobe writes it: 255 less ink is stored, and YCCK turns the colour inks round once more.
    inks = Image.fromarray(ink.astype(np.uint8), "RGB").convert("YCbCr")
    held = np.concatenate([np.asarray(inks), 255 - black.astype(np.uint8)], axis=2)
    # Pillow turns CMYK round as it writes.
    Image.fromarray(255 - held, "CMYK").save(path, quality=95, subsampling=0)
    data = bytearray(path.read_bytes())
    marker = data.index(b"Adobe")
    data[marker + 11] = 2
    path.write_bytes(bytes(data))


def good():
    base = plain()
    cmyk = base.convert("CMYK")
    made = {
        "plain.jpg": lambda p: base.save(p, quality=95, subsampling=0),
        "progressive.jpg": lambda p: base.save(p, quality=95, progressive=True),
        "grey.jpg": lambda p: base.convert("L").save(p, quality=95),
        "cmyk.jpg": lambda p: cmyk.save(p, quality=95, subsampling=0),
        "ycck.jpg": ycck,
        "grey.png": lambda p: base.convert("L").save(p),
        "grey-clear.png": lambda p: Image.fromarray(quarters(np.array(
            [(40, 255), (40, 128), (200, 0), (90, 64)], np.uint8)), "LA").save(p),
        "clear.png": lambda p: Image.fromarray(quarters(np.array(
            [(*QUARTERS[0], 255), (*QUARTERS[1], 0), (*QUARTERS[2], 128), (*QUARTERS[3], 30)], np.uint8)), "RGBA").save(p),
        "palette.png": lambda p: base.convert("P", palette=Image.Palette.ADAPTIVE, colors=4).save(p, transparency=0),
        "two-tones.png": lambda p: base.convert("1", dither=Image.Dither.NONE).save(p),
        "deep.png": lambda p: p.write_bytes(deep(2, QUARTERS)),
        "deep-clear.png": lambda p: p.write_bytes(deep(6, [(*c, 120) for c in QUARTERS])),
        "moving.png": lambda p: base.save(p, save_all=True, append_images=[Image.new("RGB", base.size, "black")]),
        "moving.webp": lambda p: base.save(p, save_all=True, lossless=True,
                                           append_images=[Image.new("RGB", base.size, "black")]),
        "lossy.webp": lambda p: base.save(p, quality=95),
        "clear.webp": lambda p: Image.open(HERE / "clear.png").save(p, lossless=True, exact=True),
        "a-png-named.jpg": lambda p: base.save(p, format="PNG"),
        "a-webp-named.png": lambda p: base.save(p, format="WEBP", lossless=True),
    }
    for turn in range(1, 9):
        exif = Image.Exif()
        exif[0x0112] = turn
        made[f"turned-{turn}.jpg"] = lambda p, exif=exif: base.save(p, quality=95, subsampling=0, exif=exif)
    colors = {}
    for name, write in made.items():
        path = HERE / name
        write(path)
        read = ImageOps.exif_transpose(Image.open(path))
        read.seek(0) if hasattr(read, "seek") else None
        if read.mode in ("RGBA", "LA") or "transparency" in read.info:
            over = read.convert("RGBA")
            read = Image.alpha_composite(Image.new("RGBA", over.size, "white"), over)
        read = read.convert("RGB")
        w, h = read.size
        spots = [(w // 4, h // 4), (3 * w // 4, h // 4), (w // 4, 3 * h // 4), (3 * w // 4, 3 * h // 4)]
        colors[name] = {"size": [w, h], "colors": [list(read.getpixel(spot)) for spot in spots]}
    (HERE / "colors.json").write_text(json.dumps(colors, indent=1) + "\n")


def bad():
    base = Image.fromarray(np.random.default_rng(7).integers(0, 256, (96, 96, 3), np.uint8), "RGB")
    for name in ("cut-off.jpg", "cut-off.png", "cut-off.webp"):
        path = HERE / name
        base.save(path, **({"lossless": True} if name.endswith("webp") else {}))
        path.write_bytes(path.read_bytes()[: path.stat().st_size * 6 // 10])
    # Kilobytes that would be hundreds of megabytes: 16 000 x 16 000 white pixels of one bit.
    rows = (b"\0" + b"\xff" * 2000) * 16000
    (HERE / "bomb.png").write_bytes(png(16000, 16000, 1, 0, rows))
    # A head that claims 65 000 x 65 000 pixels.
    jpeg = bytearray((HERE / "plain.jpg").read_bytes())
    frame = jpeg.index(b"\xff\xc0")
    jpeg[frame + 5:frame + 9] = struct.pack(">HH", 65000, 65000)
    (HERE / "bomb.jpg").write_bytes(bytes(jpeg))
    plain().save(HERE / "moving.gif", save_all=True, append_images=[Image.new("RGB", (WIDE, HIGH))])


good()
bad()
