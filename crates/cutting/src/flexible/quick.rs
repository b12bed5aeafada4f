//! A small open-addressing table that is emptied in time of its use, not of its size.
//!
//! `std`'s ordered map is ten times slower here and its hash map's order is not the same on every run.

/// Finds the number given to (counts, width).
#[derive(Debug, Default)]
pub(super) struct QuickSet {
    slots: Vec<(u128, u32, u32)>,
    used: Vec<u32>,
}

/// Marks an empty slot.
const EMPTY: u32 = u32::MAX;

impl QuickSet {
    pub(super) fn clear(&mut self) {
        for &slot in &self.used {
            self.slots[slot as usize].2 = EMPTY;
        }
        self.used.clear();
    }

    pub(super) fn find(&self, counts: u128, w: u32) -> Option<u32> {
        if self.slots.is_empty() {
            return None;
        }
        let mask = self.slots.len() - 1;
        let mut at = spread(counts, w) & mask;
        while self.slots[at].2 != EMPTY {
            if self.slots[at].0 == counts && self.slots[at].1 == w {
                return Some(self.slots[at].2);
            }
            at = (at + 1) & mask;
        }
        None
    }

    pub(super) fn insert(&mut self, counts: u128, w: u32, number: u32) {
        if self.used.len() * 2 >= self.slots.len() {
            self.grow();
        }
        let mask = self.slots.len() - 1;
        let mut at = spread(counts, w) & mask;
        while self.slots[at].2 != EMPTY {
            at = (at + 1) & mask;
        }
        self.slots[at] = (counts, w, number);
        self.used.push(at as u32);
    }

    fn grow(&mut self) {
        let held: Vec<(u128, u32, u32)> = self.used.iter().map(|&s| self.slots[s as usize]).collect();
        let size = (self.slots.len() * 2).max(64);
        self.slots.clear();
        self.slots.resize(size, (0, 0, EMPTY));
        self.used.clear();
        for (counts, w, number) in held {
            self.insert(counts, w, number);
        }
    }
}

#[allow(clippy::cast_possible_truncation, reason = "a hash keeps what bits it likes")]
fn spread(counts: u128, w: u32) -> usize {
    let mixed = (counts as u64) ^ ((counts >> 64) as u64).rotate_left(31) ^ (u64::from(w) << 48);
    (mixed.wrapping_mul(0x9E37_79B9_7F4A_7C15) >> 20) as usize
}
