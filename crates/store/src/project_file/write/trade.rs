//! Post, other packs on sale, selling, working time and a class, as a project file has them.

use cards::model::{Class, Minutes, Offer, Post, Selling, Trade};

use super::{Pen, inline, quoted};
use crate::project_file::form::ADDRESSED;
use measure::{Length, Unit, write_exact_in};

impl Pen<'_> {
    /// All of it, as far as it is not the usual.
    pub(super) fn trade(&mut self, trade: &Trade) {
        let Trade { post, offers, selling, minutes, class } = trade;
        self.post(post);
        for offer in offers {
            let Offer { of, pack_of, length, price } = offer;
            self.heading("[[offer]]");
            self.text("of", of);
            self.count("pack_of", *pack_of);
            if let Some(length) = length {
                let length = self.rolled(*length);
                self.text("length", &length);
            }
            self.price(price.as_ref());
        }
        self.selling(selling);
        self.minutes(minutes);
        if let Some(class) = class {
            self.class(class);
        }
    }

    /// A thickness in millimetres.
    pub(super) fn thickness(&mut self, key: &str, um: Option<u32>) {
        if let Some(um) = um {
            let thickness = Length::from_ticks(Length::MM.ticks() / 1_000 * i64::from(um));
            self.text(key, &write_exact_in(thickness, Unit::Millimetre));
        }
    }

    fn post(&mut self, post: &Post) {
        if *post == Post::default() {
            return;
        }
        let Post { envelope_gsm, addressed_upright, stiff, extras, foam_um, bow_um, rates } = post;
        self.heading("[post]");
        self.count("envelope_gsm", *envelope_gsm);
        if *addressed_upright {
            self.text("addressed", ADDRESSED[1]);
        }
        self.yes("stiff", *stiff);
        self.maybe("extras", extras.map(cards::weight::Weight::exact_text).as_deref());
        self.thickness("foam_thickness", *foam_um);
        self.thickness("bow_thickness", *bow_um);
        let rate = |rate: &cards::model::Rate| {
            let mut entries =
                vec![format!("operator = {}", quoted(&rate.operator)), format!("class = {}", quoted(&rate.class))];
            if let Some(up_to) = rate.up_to {
                entries.push(format!("up_to = {}", quoted(&up_to.exact_text())));
            }
            entries.push(format!("price = {}", self.worth(&rate.price)));
            inline(&entries)
        };
        let rates = rates.iter().map(rate).collect();
        self.rows("rate", rates);
    }

    fn selling(&mut self, selling: &Selling) {
        if *selling == Selling::default() {
            return;
        }
        let Selling { price, fees, tax, margin, hour } = selling;
        self.heading("[selling]");
        self.price(price.as_ref());
        for (key, percent) in [("fees", fees), ("tax", tax), ("margin", margin)] {
            if !percent.is_zero() {
                self.text(key, &percent.to_string());
            }
        }
        self.priced("hour", hour.as_ref());
    }

    fn minutes(&mut self, minutes: &Minutes) {
        let usual = Minutes::default();
        if *minutes == usual {
            return;
        }
        self.heading("[minutes]");
        for ((key, told), (_, usual)) in minutes.by_key().into_iter().zip(usual.by_key()) {
            if told != usual {
                self.text(key, &told.to_string());
            }
        }
    }

    fn class(&mut self, class: &Class) {
        let usual = Class::default();
        let Class {
            batch,
            date,
            starts,
            welcome_minutes,
            pause_minutes,
            end_minutes,
            seats,
            demonstrators,
            spare_kits,
            left_handed,
            cut_kits,
            minutes_a_card,
            room,
            hours,
            hour,
            shared,
            break_even,
            price,
        } = class;
        self.heading("[class]");
        self.maybe("batch", batch.as_deref());
        if let Some(date) = date {
            self.line("date", date);
        }
        if let Some(starts) = starts {
            self.text("starts", &starts.to_string());
        }
        self.other_count("welcome_minutes", *welcome_minutes, usual.welcome_minutes);
        self.other_count("pause_minutes", *pause_minutes, usual.pause_minutes);
        self.other_count("end_minutes", *end_minutes, usual.end_minutes);
        self.count("seats", Some(*seats));
        self.other_count("demonstrators", *demonstrators, usual.demonstrators);
        self.count("spare_kits", *spare_kits);
        self.other_count("left_handed", *left_handed, usual.left_handed);
        self.other_count("cut_kits", *cut_kits, usual.cut_kits);
        self.other_count("minutes_a_card", *minutes_a_card, usual.minutes_a_card);
        self.priced("room", room.as_ref());
        if !hours.is_zero() {
            self.text("hours", &hours.to_string());
        }
        self.priced("hour", hour.as_ref());
        self.priced("shared", shared.as_ref());
        self.count("break_even", *break_even);
        self.priced("price", price.as_ref());
    }
}
