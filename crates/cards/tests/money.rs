//! Sums of money to the coin, and days of the calendar.
//!
//! Source: `tests/data/money.csv` (Python's decimal, 50 digits) and `days.csv`, `times.csv` (Python's
//! datetime), made with seed 7.
#![allow(clippy::unwrap_used, reason = "tests")]

use cards::days::{Day, Time};
use cards::model::{Price, Selling};
use cards::money::{leaves, minor_units, share_out, to_coin, up_to_coin, wished};
use rust_decimal::{Decimal, RoundingStrategy};

fn rows(text: &str) -> Vec<Vec<&str>> {
    text.lines().filter(|line| !line.starts_with('#')).skip(1).map(|line| line.split(',').collect()).collect()
}

fn decimals(text: &str) -> Vec<Decimal> {
    text.split(' ').map(|number| number.parse().unwrap()).collect()
}

#[test]
fn shares_add_up_to_the_coin() {
    let mut seen = 0;
    for row in rows(include_str!("data/money.csv")).iter().filter(|row| row[0] == "share") {
        let (total, weights) = (row[2].parse().unwrap(), decimals(row[3]));
        let shares = share_out(total, row[1], &weights);
        assert_eq!(shares, decimals(row[4]), "{row:?}");
        if weights.iter().any(|weight| !weight.is_zero()) {
            assert_eq!(shares.iter().sum::<Decimal>(), to_coin(total, row[1]), "{row:?}");
        }
        assert!(shares.iter().all(|share| share.scale() == minor_units(row[1])));
        seen += 1;
    }
    assert_eq!(seen, 200);
}

#[test]
fn prices_leave_what_python_says() {
    let four = |amount: Decimal| amount.round_dp_with_strategy(4, RoundingStrategy::MidpointAwayFromZero);
    let mut seen = 0;
    for row in rows(include_str!("data/money.csv")).iter().filter(|row| row[0] == "price") {
        let [material, minutes, price, fees, tax, margin, hour] = decimals(row[2])[..] else { panic!("{row:?}") };
        let hour = Some(Price { amount: hour, currency: row[1].to_owned(), date: None });
        let selling = Selling { price: None, fees, tax, margin, hour };
        let found = leaves(price, material, minutes, &selling).unwrap();
        let [over, wage, wish] = decimals(row[4])[..] else { panic!("{row:?}") };
        assert_eq!((four(found.over), four(found.wage.unwrap())), (over, wage), "{row:?}");
        assert_eq!(up_to_coin(wished(material, minutes, &selling).unwrap(), row[1]), wish, "{row:?}");
        seen += 1;
    }
    assert_eq!(seen, 100);
}

#[test]
fn what_nothing_stays_of_has_no_price() {
    let selling =
        Selling { fees: Decimal::from(60), tax: Decimal::from(20), margin: Decimal::from(20), ..Selling::default() };
    assert_eq!(wished(Decimal::ONE, Decimal::ONE, &selling), None);
    let no_time = leaves(Decimal::from(3), Decimal::ONE, Decimal::ZERO, &Selling::default()).unwrap();
    assert_eq!((no_time.over, no_time.wage), (Decimal::TWO, None));
    assert_eq!(share_out(Decimal::TEN, "GBP", &[]), Vec::<Decimal>::new());
}

#[test]
fn times_of_the_day_are_as_python_has_them() {
    let all = rows(include_str!("data/times.csv"));
    assert_eq!(all.len(), 200);
    for row in all {
        let (to, midnights) = Time::parse(row[0]).unwrap().later(row[1].parse().unwrap());
        assert_eq!((to.to_string().as_str(), midnights.to_string().as_str()), (row[2], row[3]), "{row:?}");
        assert_eq!(Time::parse(row[2]), Some(to));
    }
    assert_eq!(Time::parse("14:00:00"), Time::parse("14:00"), "as TOML has it");
    for bad in ["24:00", "12:60", "", "12", "12:00:30", "1:2:3:4", "-1:00", "noon", "012:00", "12:+1"] {
        assert_eq!(Time::parse(bad), None, "{bad}");
    }
}

#[test]
fn days_are_counted_as_python_counts_them() {
    let all = rows(include_str!("data/days.csv"));
    assert!(all.len() > 300);
    for row in all {
        let day = Day::parse(row[0]).unwrap();
        assert_eq!(day.to_string(), row[0]);
        assert_eq!(day.weekday().to_string(), row[1], "{row:?}");
        let back: i64 = row[2].parse().unwrap();
        let earlier = day.earlier(back);
        assert_eq!((earlier.to_string().as_str(), earlier.weekday().to_string().as_str()), (row[3], row[4]), "{row:?}");
        assert_eq!(day.since(earlier), back);
    }
    assert_eq!(Day::of_seconds(0).to_string(), "1970-01-01");
    assert_eq!(Day::of_seconds(1_764_115_199).to_string(), "2025-11-25");
    assert_eq!(Day::of_seconds(-1).to_string(), "1969-12-31");
    for bad in ["2026-13-01", "2026-00-10", "2025-02-29", "2100-02-29", "26-1-1", "2026-1-01", "", "2026-01-01-01", "x"]
    {
        assert_eq!(Day::parse(bad), None, "{bad}");
    }
}
