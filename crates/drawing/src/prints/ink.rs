//! The pack's six colours and the tones mixed from them.

/// A colour with cover: channels and `cover` in 0–1.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct Ink {
    red: f32,
    green: f32,
    blue: f32,
    cover: f32,
}

pub(super) const MILK: Ink = Ink::hex(0x00F6_F0E2);
pub(super) const POT_BLUE: Ink = Ink::hex(0x002F_5D73);
pub(super) const BRICK: Ink = Ink::hex(0x00A8_483A);
pub(super) const HEDGE: Ink = Ink::hex(0x005E_7B4C);
pub(super) const QUINCE: Ink = Ink::hex(0x00D9_A441);
pub(super) const SLATE: Ink = Ink::hex(0x003B_4148);
/// Not of the pack: the white of a highlight, a little lighter than Milk.
pub(super) const LIGHT: Ink = Ink::hex(0x00FF_FCF4);

impl Ink {
    const fn hex(rgb: u32) -> Ink {
        Ink {
            red: ((rgb >> 16) & 0xFF) as f32 / 255.0,
            green: ((rgb >> 8) & 0xFF) as f32 / 255.0,
            blue: (rgb & 0xFF) as f32 / 255.0,
            cover: 1.0,
        }
    }

    /// This ink with `share` (0–1) of `other` stirred in.
    pub(super) fn with(self, other: Ink, share: f32) -> Ink {
        let stir = |a: f32, b: f32| a + (b - a) * share;
        Ink {
            red: stir(self.red, other.red),
            green: stir(self.green, other.green),
            blue: stir(self.blue, other.blue),
            cover: stir(self.cover, other.cover),
        }
    }

    /// A tint: `share` of Milk.
    pub(super) fn tint(self, share: f32) -> Ink {
        self.with(MILK, share)
    }

    /// A shade: `share` of a near black slate.
    pub(super) fn shade(self, share: f32) -> Ink {
        self.with(Ink::hex(0x001C_2227), share)
    }

    /// The same ink laid thinly.
    pub(super) fn thin(self, cover: f32) -> Ink {
        Ink { cover, ..self }
    }

    /// Its channels, an opaque fourth, and its cover, as pixels are painted.
    pub(super) fn paint(self) -> ([u8; 4], f32) {
        let [red, green, blue] = self.channels().map(|channel| (channel.clamp(0.0, 255.0) + 0.5) as u8);
        ([red, green, blue, 255], self.cover.clamp(0.0, 1.0))
    }

    /// Opaque channels, 0–255, still unrounded.
    pub(super) fn channels(self) -> [f32; 3] {
        [self.red * 255.0, self.green * 255.0, self.blue * 255.0]
    }
}
