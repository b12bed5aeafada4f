//! Laws of colours that hold for every one of them.
#![allow(clippy::unwrap_used, reason = "tests")]

use color::{Lab, Nearness, Srgb, ciede2000, contrast_ratio, nearest, stamped};
use proptest::prelude::*;

fn any_color() -> impl Strategy<Value = Srgb> {
    any::<(u8, u8, u8)>().prop_map(|(r, g, b)| Srgb::new(r, g, b))
}

proptest! {
    #[test]
    fn hex_and_cielab_come_back(color in any_color()) {
        prop_assert_eq!(Srgb::from_hex(&color.to_string()), Some(color));
        prop_assert_eq!(Lab::of(color).srgb(), color);
    }

    #[test]
    fn difference_is_symmetric_and_nothing_on_itself(one in any_color(), other in any_color()) {
        let (one, other) = (Lab::of(one), Lab::of(other));
        prop_assert!((ciede2000(one, other) - ciede2000(other, one)).abs() < 1e-9);
        prop_assert!(ciede2000(one, one).abs() < 1e-9);
        prop_assert_eq!(Nearness::of(ciede2000(one, one)), Nearness::Same);
    }

    #[test]
    fn contrast_lies_between_1_and_21(one in any_color(), other in any_color()) {
        let ratio = contrast_ratio(one, other);
        prop_assert!((1.0..=21.0 + 1e-9).contains(&ratio));
    }

    #[test]
    fn ink_never_lightens(ink in any_color(), paper in any_color()) {
        let seen = stamped(ink, paper);
        prop_assert!(seen.r <= paper.r && seen.g <= paper.g && seen.b <= paper.b);
    }

    #[test]
    fn the_nearest_is_none_farther(wanted in any_color(), list in proptest::collection::vec(any_color(), 0..12)) {
        let list: Vec<Lab> = list.into_iter().map(Lab::of).collect();
        let found = nearest(Lab::of(wanted), &list);
        prop_assert_eq!(found.is_none(), list.is_empty());
        if let Some((at, least)) = found {
            prop_assert!(list.iter().all(|have| ciede2000(Lab::of(wanted), *have) >= least - 1e-12));
            prop_assert!((ciede2000(Lab::of(wanted), list[at]) - least).abs() < 1e-12);
        }
    }
}
