//! How surely there is a step of colour, along lines that were laid straight.
//!
//! A step is two flat halves: what they differ by is held against what each half itself varies by and against the noise of
//! the whole. So a soft shadow is no step, and a strong step near by hides no weak one.

/// Half the width of a step's window: so many pixels on each side of its middle one.
pub(crate) const HALF: usize = 4;

/// How much of the light a shadow beside a sheet leaves. `Chosen:` on photos of seeds 50001–50740, 60001–60200 and 70001–70200.
const LIGHT: std::ops::Range<f32> = 0.55..0.985;
/// How far, in levels, a shadow may be from the table's colour with less light. `Chosen:` likewise; noise makes one or two.
const SAME: f32 = 3.0;

/// Row by row: for every place along (a row) and distance across (a column).
#[derive(Debug)]
pub(crate) struct Stepped {
    /// How surely there is a step, 0 to 1, there or a pixel beside.
    pub(crate) steps: Vec<f32>,
    /// The same, less a pixel beside the step itself: for choosing between lines that are hardly apart.
    pub(crate) sharp: Vec<f32>,
    /// How often one is there by chance.
    pub(crate) chance: f64,
}

/// `colors`: rows of `wide` = `offs` + 2 × [`HALF`].
pub(crate) fn stepped(colors: &[[f32; 3]], rows: usize, wide: usize, offs: usize) -> Stepped {
    let mut jumps = vec![(0.0_f32, 0.0_f32); rows * offs];
    for place in 0..rows {
        let row = &colors[place * wide..(place + 1) * wide];
        for off in 0..offs {
            let middle = off + HALF;
            let (mut jump, mut within) = (0.0, 0.0);
            for channel in [0, 1, 2] {
                let flat = |from: usize| {
                    let [a, b, c] = [0, 1, 2].map(|by| row[from + by][channel]);
                    let mean = (a + b + c) / 3.0;
                    let off = [a - mean, b - mean, c - mean];
                    (mean, off.iter().map(|off| off * off).sum::<f32>() / 2.0)
                };
                let (before, after) = (flat(middle - 3), flat(middle + 1));
                jump += (after.0 - before.0) * (after.0 - before.0);
                within += before.1 + after.1;
            }
            jumps[place * offs + off] = (jump, within);
        }
    }
    let mut calm: Vec<f32> = jumps.iter().map(|(_, within)| *within).collect();
    calm.sort_by(f32::total_cmp);
    // What varies within flat halves at calm places; `Chosen:` never less than rounding to whole levels gives.
    let noise = calm.get(calm.len() / 5).map_or(0.6, |within| (2.0 * within).max(0.6));
    let mut steps = vec![0.0_f32; rows * offs];
    let mut sharp = vec![0.0_f32; rows * offs];
    for place in 0..rows {
        let row = &jumps[place * offs..(place + 1) * offs];
        for off in 0..offs {
            let (jump, within) = row[off];
            let top = row[off.saturating_sub(3)..(off + 4).min(offs)].iter().all(|(other, _)| *other <= jump);
            if !top {
                continue;
            }
            // `Chosen:` on photos of seeds 50001–50100: noise alone seldom makes 0.35.
            let sure = jump / (jump + 1.2 * within + 1.3 * noise + f32::MIN_POSITIVE);
            let sure = ((sure - 0.35) / 0.3).clamp(0.0, 1.0);
            for near in off.saturating_sub(1)..(off + 2).min(offs) {
                let at = place * offs + near;
                steps[at] = steps[at].max(sure);
                sharp[at] = sharp[at].max(if near == off { sure } else { 0.8 * sure });
            }
        }
    }
    #[allow(clippy::cast_precision_loss, reason = "small numbers")]
    let chance = f64::from(steps.iter().sum::<f32>()) / steps.len().max(1) as f64;
    Stepped { steps, sharp, chance: chance.min(0.5) }
}

/// Where the darker, inner half is the outer one's colour with less light on it: the far side of the shadow that a sheet throws on the
/// table is so, and few edges of papers are. 1 or 0 for every place and distance, as in [`stepped`], whose rows run outward.
pub(crate) fn shaded(colors: &[[f32; 3]], rows: usize, wide: usize, offs: usize) -> Vec<f32> {
    let mut shaded = vec![0.0; rows * offs];
    for place in 0..rows {
        let row = &colors[place * wide..(place + 1) * wide];
        for off in 0..offs {
            let middle = off + HALF;
            let mean = |from: usize| [0, 1, 2].map(|at| (row[from][at] + row[from + 1][at] + row[from + 2][at]) / 3.0);
            let (inner, outer) = (mean(middle - 3), mean(middle + 1));
            let light = inner.iter().sum::<f32>() / outer.iter().sum::<f32>().max(1.0);
            let alike = inner.iter().zip(outer).all(|(inner, outer)| (inner - light * outer).abs() < SAME);
            shaded[place * offs + off] = f32::from(u8::from(LIGHT.contains(&light) && alike));
        }
    }
    shaded
}
