//! Which sums sheets can cost.

use super::SheetKind;

/// Chosen: sums are listed up to here; above, only the common divisor counts.
const LISTED: u64 = 1 << 18;

/// The least sum of sheet costs that is at least `bound`; never above `best`, which is such a sum.
pub(super) fn next_sum(sheets: &[SheetKind], bound: u64, best: u64) -> u64 {
    if bound >= best {
        return best;
    }
    let Some(limit) = usize::try_from(best).ok().filter(|_| best <= LISTED) else {
        let step = sheets.iter().fold(0, |d, s| gcd(d, s.cost)).max(1);
        return bound.div_ceil(step).saturating_mul(step).min(best);
    };
    let mut reached = vec![false; limit + 1];
    reached[0] = true;
    for sheet in sheets {
        let Some(cost) = usize::try_from(sheet.cost).ok().filter(|&c| c > 0 && c <= limit) else { continue };
        // `used[sum]`: the fewest copies of this sheet in a way to reach the sum.
        let mut used: Vec<u32> = reached.iter().map(|&r| if r { 0 } else { u32::MAX }).collect();
        for sum in cost..=limit {
            let before = used[sum - cost];
            if before < sheet.copies.unwrap_or(u32::MAX) && before < u32::MAX - 1 {
                used[sum] = used[sum].min(before + 1);
            }
        }
        reached = used.into_iter().map(|n| n < u32::MAX).collect();
    }
    let from = usize::try_from(bound).unwrap_or(limit);
    (from..limit).find(|&sum| reached[sum]).and_then(|sum| u64::try_from(sum).ok()).unwrap_or(best)
}

fn gcd(a: u64, b: u64) -> u64 {
    if b == 0 { a } else { gcd(b, a % b) }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn sums_respect_copies() {
        let sheet = |copies, cost| SheetKind::whole(1, 1, copies, cost);
        assert_eq!(next_sum(&[sheet(Some(2), 5), sheet(Some(1), 7)], 11, 17), 12);
        assert_eq!(next_sum(&[sheet(Some(2), 5)], 11, 20), 20);
        assert_eq!(next_sum(&[sheet(None, 5)], 11, 20), 15);
    }
}
