//! Backgrounds as the file has them.

use cards::background::{Arrangement, EdgeRule, Placement, Turning};
use cards::model::{Background, Greeting, Marker, Motif, MotifShape};

use super::super::background::{ARRANGEMENTS, EDGES, INK, TURNS, usual_gap};
use super::super::form::MIDDLES;
use super::super::paper::WHITE;
use super::{Pen, inline, quoted};

impl Pen<'_> {
    pub(super) fn background(&mut self, background: &Background) {
        let Background {
            name,
            sheet,
            paper,
            seed,
            arrangement,
            gap,
            edge,
            count,
            density,
            motifs,
            locked,
            stands,
            markers,
        } = background;
        self.heading("[[background]]");
        self.text("name", name);
        let sheet = self.sheet(*sheet);
        self.text("sheet", &sheet);
        if paper != WHITE {
            self.text("paper", paper);
        }
        self.other_count("seed", *seed, 1);
        let at = match arrangement {
            Arrangement::Toss => 0,
            Arrangement::Grid => 1,
            Arrangement::Brick => 2,
            Arrangement::HalfDrop => 3,
            Arrangement::Diagonal => 4,
        };
        if at > 0 {
            self.text("arrangement", ARRANGEMENTS[at]);
        }
        if *gap != usual_gap(self.unit) {
            self.length("gap", *gap);
        }
        match edge {
            EdgeRule::RunOff => {}
            EdgeRule::Inside => self.text("edge", EDGES[1]),
            EdgeRule::Wrap => self.text("edge", EDGES[2]),
        }
        self.count("count", *count);
        self.count("density", *density);
        for (key, places) in [("locked", locked), ("stands", stands)] {
            if !places.is_empty() {
                let rows: Vec<String> = places.iter().map(|place| self.stand(place, motifs)).collect();
                self.line(key, &format!("[\n    {},\n]", rows.join(",\n    ")));
            }
        }
        if !markers.is_empty() {
            let row = |Marker { name, color }: &Marker| {
                inline(&[format!("name = {}", quoted(name)), format!("color = {}", quoted(color))])
            };
            let rows: Vec<String> = markers.iter().map(row).collect();
            self.line("marker", &format!("[\n    {},\n]", rows.join(",\n    ")));
        }
        for stamp in motifs {
            self.motif(stamp);
        }
    }

    fn stand(&self, place: &Placement, motifs: &[Motif]) -> String {
        let Placement { motif, x, y, turn } = place;
        let name = motifs.get(*motif).map_or("", |stamp| stamp.name.as_str());
        let mut entries = vec![
            format!("stamp = {}", quoted(name)),
            format!("x = {}", quoted(&self.bare(*x))),
            format!("y = {}", quoted(&self.bare(*y))),
        ];
        if *turn != 0 {
            entries.push(format!("turn = {turn}"));
        }
        inline(&entries)
    }

    fn shape(&mut self, shape: &MotifShape) {
        match shape {
            MotifShape::Drawn(shape) => self.text("shape", shape),
            MotifShape::Corners(corners) => {
                let number = |value: i64| rust_decimal::Decimal::new(value, 3).normalize();
                let corner = |(x, y): &(i64, i64)| format!("{},{}", number(*x), number(*y));
                let corners: Vec<String> = corners.iter().map(corner).collect();
                self.text("outline", &corners.join(" "));
            }
            // What was traced belongs to the picture, not to the file.
            MotifShape::Picture(picture, _) => self.text("picture", picture),
        }
    }

    /// What a greeting's stamp leaves, and what counts as its middle.
    pub(super) fn mark(&mut self, greeting: &Greeting) {
        if let Some(mark) = &greeting.mark {
            self.shape(mark);
        }
        if greeting.balanced {
            self.text("middle", MIDDLES[1]);
        }
    }

    fn motif(&mut self, stamp: &Motif) {
        let Motif { name, shape, size, share, turning, ink, fill, per_inking } = stamp;
        self.heading("[[background.stamp]]");
        self.text("name", name);
        self.shape(shape);
        self.length("size", *size);
        self.other_count("share", *share, 1);
        match turning {
            Turning::Free => {}
            Turning::Upright => self.text("turn", TURNS[1]),
            Turning::Within(most) => self.count("turn_within", Some(u32::from(*most))),
        }
        if ink != INK {
            self.text("ink", ink);
        }
        self.maybe("fill", fill.as_deref());
        self.other_count("per_inking", *per_inking, 1);
    }
}
