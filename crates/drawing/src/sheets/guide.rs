//! The placing guide of a stamped background: what to stamp in which order, every place, and the sheet at true size.
//!
//! Left out on purpose: which marker is nearest to a colour; the rim knows colours and says so.

use cards::Plan;
use cards::background::{self, Impression, Laid, Slipped, StampUse};
use cards::model::{Background, Look, Side};
use measure::{Length, Mark as Rule, Rect, Size, Unit};

use super::edition::{Edition, Hand};
use super::labels::{Label, Placer, centred};
use super::look::{ACCENT, Fit, INK, RULE, SOFT, half, inset, pt, say, sixteenths};
use super::pages::{Column, Pages};
use super::stamped::{ink_of, picture_marks, rims, steps};
use super::templates::{Drawing, Press, on_pages};
use super::told::Told;
use crate::scene::{Color, Mark, Outline, Pen, Point, Role, Scene, Stretch, points, share};
use crate::text::{Align, Face, Style};

/// What a guide is made of.
#[derive(Debug, Clone, Copy)]
pub struct Guide<'a> {
    /// What the maker said.
    pub background: &'a Background,
    /// The sheet, numbered for the hand that the edition is for.
    pub laid: &'a Laid,
    /// The finest mark the maker cuts to.
    pub mark: Rule,
    /// How each stamp is coloured in.
    pub colored: &'a [ColoredIn],
    /// What slips of the hand do.
    pub slips: &'a [Slipped],
}

/// A stamp that is coloured in, and the marker that is nearest.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct ColoredIn {
    /// Which stamp, counted from 0.
    pub stamp: usize,
    /// The nearest marker: its name and its colour, `#rrggbb`; `None` where there is none.
    pub marker: Option<(String, String)>,
    /// How far its colour is from the wished one, in words.
    pub near: String,
}

/// The hand that stamps in an edition.
pub fn hand_of(edition: &Edition) -> background::Hand {
    match edition.hand {
        Hand::Right => background::Hand::Right,
        Hand::Left => background::Hand::Left,
    }
}

/// Every page of the guide: the order, the table of places, and the sheet at true size over as many pages as it needs.
///
/// # Shape
/// `square` is what a printed square of one inch measured. Impressions drawn are impressions listed.
pub fn placing_guide(guide: &Guide<'_>, edition: &Edition, square: Length) -> Vec<Scene> {
    words::speaking(edition.language, || {
        let told = Told::new(guide.mark, *edition);
        let mut pages = Pages::new(told, &guide.background.name);
        chapter(guide, told, &mut pages);
        pages.section(&say("page-cautions-title", &[]));
        for id in ["page-caution-solvent", "page-caution-heat"] {
            pages.item(&say(id, &[]));
        }
        places(guide, told, &mut pages);
        let mut scenes = pages.finish(&guide.background.name);
        let press = Press { told, square: square.max(Length::MM) };
        scenes.extend(on_pages(&true_size(guide, press), press));
        scenes
    })
}

/// The whole sheet on one page of its own, outlines only: to lie under the paper on a light box.
///
/// # Shape
/// The page is half an inch larger than the sheet all round, with its corners marked.
pub fn light_box(guide: &Guide<'_>, edition: &Edition) -> Scene {
    words::speaking(edition.language, || {
        let room = sixteenths(8);
        let sheet = Rect::new(room, room, guide.laid.sheet);
        let fit = Fit::scaled(Point::new(room, room), Length::INCH, Length::INCH);
        let thin = Pen::solid(INK, share(pt(1), 3, 4));
        let mut marks = vec![Mark::frame(sheet, Pen::solid(SOFT, share(pt(1), 1, 2)))];
        for one in &guide.laid.impressions {
            for step in steps(guide.background, guide.laid, one) {
                marks.extend(outlined(guide, one, fit, step, &thin));
            }
        }
        let title = say("guide-light-box", &[("name", (&guide.background.name).into())]);
        let name = crate::text::shape(&title, Style::new(Face::Regular, 11));
        let base = Point::new(room, sheet.bottom() + pt(20));
        let size = Size::new(sheet.size.width + room * 2, sheet.size.height + room * 2);
        let heading = crate::text::place(name, base, Align::Start, SOFT);
        Scene {
            size,
            title: title.clone(),
            marks: vec![
                Mark::role(Role::Heading(1), vec![heading]),
                Mark::role(Role::Figure(title), vec![Mark::clipped(inset(sheet, -pt(1)), marks)]),
            ],
        }
    })
}

/// A chapter for every background that a face of the project shows.
pub(super) fn chapters(plan: &Plan, told: Told, pages: &mut Pages) {
    let designs = || plan.project.packs.iter().flat_map(|pack| &pack.designs);
    for (index, background) in plan.project.backgrounds.iter().enumerate() {
        let shows = |side: Side| designs().any(|design| design.face(side).look == Look::Stamped(index));
        let Some(Some(laid)) = plan.backgrounds.get(index).filter(|_| shows(Side::Front) || shows(Side::Back)) else {
            continue;
        };
        let laid = match hand_of(&told.edition) {
            background::Hand::Right => laid.clone(),
            hand @ background::Hand::Left => background::lay(background, hand).unwrap_or_else(|_| laid.clone()),
        };
        let slips = background::slips(background, &laid);
        let guide = Guide { background, laid: &laid, mark: plan.project.mark, colored: &[], slips: &slips };
        chapter(&guide, told, pages);
        pages.note(&say("guide-see-guide", &[]));
    }
}

/// What there is to do, without the single places.
fn chapter(guide: &Guide<'_>, told: Told, pages: &mut Pages) {
    let Guide { background, laid, .. } = guide;
    pages.chapter(&say("guide-title", &[("name", (&background.name).into())]));
    let facts = [
        ("size", told.size(background.sheet).into()),
        ("count", laid.impressions.len().into()),
        ("stamps", laid.stamps.len().into()),
    ];
    pages.say(&say("guide-lead", &facts));
    let wide = pages.width().min(Length::INCH * 3);
    let high = share(wide, laid.sheet.height.ticks(), laid.sheet.width.ticks());
    pages.room(high + sixteenths(16));
    let place = Rect::new(pages.left(), pages.y, Size::new(wide, high));
    let fit = Fit::into(laid.sheet, place);
    let alt = say("background-alt", &[("name", (&background.name).into()), ("count", laid.impressions.len().into())]);
    let mut picture = vec![Mark::clipped(place, picture_marks(background, laid, fit))];
    picture.push(Mark::frame(place, Pen::solid(RULE, pt(1))));
    pages.push(Mark::role(Role::Figure(alt), picture));
    pages.gap(high + pt(18));
    order(guide, told, pages);
    edge(guide, pages);
    sure(guide, told, pages);
    colored(guide, pages);
}

/// Which stamp comes when, how often it is inked, and why in that order.
fn order(guide: &Guide<'_>, told: Told, pages: &mut Pages) {
    let Guide { background, laid, .. } = guide;
    pages.section(&say("guide-order", &[]));
    pages.say(&if told.edition.hand == Hand::Left {
        say("guide-order-left", &[])
    } else {
        say("guide-order-right", &[])
    });
    let columns = [
        ("guide-stamp", 6, Align::Start),
        ("guide-numbers", 4, Align::Start),
        ("guide-first", 3, Align::End),
        ("guide-second", 3, Align::End),
        ("guide-inkings", 3, Align::End),
        ("guide-off", 3, Align::End),
    ];
    let columns = columns.map(|(id, share, align)| Column { head: say(id, &[]), share, align });
    let mut next = 1;
    let mut rows: Vec<Vec<String>> = Vec::new();
    let row = |name: String, numbers: String, of: [u32; 4]| {
        let mut row = vec![name, numbers];
        row.extend(of.map(|count| count.to_string()));
        row
    };
    let counted = |used: &StampUse| {
        [used.of_generation[0], used.of_generation[1] + used.of_generation[2], used.inkings, used.off_edge]
    };
    for used in &laid.stamps {
        let name = background.motifs.get(used.stamp).map_or("", |stamp| stamp.name.as_str());
        let last = next + used.impressions() - 1;
        let numbers = if last > next { format!("{next} – {last}") } else { next.to_string() };
        rows.push(row(name.to_owned(), numbers, counted(used)));
        next = last + 1;
    }
    if rows.len() > 1 {
        let total = laid.stamps.iter().map(counted).fold([0; 4], |sum, of| std::array::from_fn(|at| sum[at] + of[at]));
        rows.push(row(say("guide-all", &[]), laid.impressions.len().to_string(), total));
    }
    let totals = usize::from(rows.len() > 1);
    pages.table_with_total(&columns, &rows, totals);
    if laid.stamps.iter().any(|used| used.of_generation[1] > 0) {
        pages.note(&say("guide-paler", &[]));
    }
}

/// Which impressions run off, and what they need.
fn edge(guide: &Guide<'_>, pages: &mut Pages) {
    let off: Vec<String> = guide
        .laid
        .impressions
        .iter()
        .filter(|one| one.inside_percent < 100)
        .map(|one| one.number.to_string())
        .collect();
    if off.is_empty() {
        return;
    }
    pages.section(&say("guide-edge", &[]));
    pages.say(&say("guide-edge-mat", &[("count", off.len().into()), ("numbers", off.join(", ").into())]));
}

/// What slips of the hand do.
fn sure(guide: &Guide<'_>, told: Told, pages: &mut Pages) {
    if guide.slips.is_empty() {
        return;
    }
    pages.section(&say("guide-sure", &[]));
    let planned = guide.laid.closest.map_or_else(String::new, |closest| told.length(closest));
    pages.say(&say("guide-sure-lead", &[("planned", planned.into())]));
    for Slipped { slip, loosened } in guide.slips {
        let facts = [
            ("place", told.length(slip.place).into()),
            ("turn", u32::from(slip.turn_deg).into()),
            ("usual", apart(told, loosened.usual).into()),
            ("worst", apart(told, loosened.worst).into()),
            ("touch", loosened.touch_per_mille.div_ceil(10).into()),
        ];
        pages.item(&say("guide-sure-row", &facts));
    }
    askew(guide, told, pages);
}

/// The worst sheet of each hand side by side; what touches is ringed.
fn askew(guide: &Guide<'_>, told: Told, pages: &mut Pages) {
    let Guide { background, laid, slips, .. } = guide;
    let gap = pt(14);
    let wide = half(pages.width() - gap).min(Length::INCH * 3);
    let high = share(wide, laid.sheet.height.ticks(), laid.sheet.width.ticks());
    let line = told.small().leading();
    pages.room(high + line * 3);
    let mut shown = false;
    for (at, of) in (0..).zip(slips.iter().take(2)) {
        let Some((sheet, touch)) = background::askew(background, laid, of.slip) else { continue };
        let corner = Point::new(pages.left() + (wide + gap) * at, pages.y);
        let place = Rect::new(corner.x, corner.y, Size::new(wide, high));
        let fit = Fit::into(laid.sheet, place);
        let facts = [
            ("place", told.length(of.slip.place).into()),
            ("turn", u32::from(of.slip.turn_deg).into()),
            ("count", touch.len().into()),
        ];
        let caption = say("guide-askew", &facts);
        let mut inside = picture_marks(background, &sheet, fit);
        inside.extend(touch.iter().filter_map(|at| sheet.impressions.get(*at)).map(|one| ring(&sheet, one, fit)));
        let mut picture = vec![Mark::clipped(place, inside), Mark::frame(place, Pen::solid(RULE, pt(1)))];
        picture = vec![Mark::role(Role::Figure(caption.clone()), picture)];
        let style = told.small();
        for (row, said) in (1..).zip(crate::text::wrap(&caption, style, wide)) {
            let base = Point::new(corner.x, place.bottom() + style.leading() * row);
            picture.push(crate::text::place(said, base, Align::Start, SOFT));
        }
        picture.into_iter().for_each(|mark| pages.push(mark));
        shown = true;
    }
    if shown {
        pages.gap(high + line * 3);
    }
}

/// A ring round an impression that touches another.
fn ring(laid: &Laid, one: &Impression, fit: Fit) -> Mark {
    let reach = laid.outlines.get(one.placed.motif).map_or(0.0, cards::background::Outline::reach);
    let far = fit.length(points(reach * 72.0 / 25.4)) + pt(1);
    let middle = fit.point(one.placed.x, one.placed.y);
    let at = |step: u32| {
        let angle = f64::from(step) * core::f64::consts::TAU / 32.0;
        let along = |part: f64| points(far.to_points() * part);
        Point::new(middle.x + along(libm::cos(angle)), middle.y + along(libm::sin(angle)))
    };
    let mut path = vec![Stretch::Move(at(0))];
    path.extend((1..32).map(|step| Stretch::Line(at(step))));
    path.push(Stretch::Close);
    Mark::Shape { outline: Outline::Path(path), fill: None, pen: Some(Pen::solid(ACCENT, pt(1))) }
}

fn apart(told: Told, length: Length) -> String {
    if length > Length::ZERO { told.length(length) } else { say("guide-sure-none", &[]) }
}

/// Which marker colours what in.
fn colored(guide: &Guide<'_>, pages: &mut Pages) {
    if guide.colored.is_empty() {
        return;
    }
    pages.section(&say("guide-colored", &[]));
    pages.say(&say("guide-colored-lead", &[]));
    let columns = [
        ("guide-stamp", 5, Align::Start),
        ("guide-marker", 5, Align::Start),
        ("guide-near", 6, Align::Start),
        ("guide-how-many", 3, Align::End),
    ];
    let columns = columns.map(|(id, share, align)| Column { head: say(id, &[]), share, align });
    let row = |of: &ColoredIn| {
        let name = guide.background.motifs.get(of.stamp).map_or("", |stamp| stamp.name.as_str());
        let count = guide.laid.stamps.iter().find(|used| used.stamp == of.stamp).map_or(0, StampUse::impressions);
        let marker = of.marker.as_ref().map_or_else(|| say("guide-no-marker", &[]), |(name, _)| name.clone());
        vec![name.to_owned(), marker, of.near.clone(), count.to_string()]
    };
    let rows: Vec<Vec<String>> = guide.colored.iter().map(row).collect();
    pages.table(&columns, &rows);
}

/// One field of the grid over the sheet: an inch, or 20 mm.
fn field(unit: Unit) -> Length {
    match unit {
        Unit::Inch => Length::INCH,
        Unit::Millimetre => Length::mm(20),
    }
}

/// `C4`: the column by its letter, the row by its number.
fn field_name(sheet: Size, one: &Impression, unit: Unit) -> String {
    let last = Length::from_ticks(1);
    let of = |at: Length, side: Length| {
        at.clamp(Length::ZERO, (side - last).max(Length::ZERO)).ticks() / field(unit).ticks()
    };
    format!("{}{}", column_name(of(one.placed.x, sheet.width)), of(one.placed.y, sheet.height) + 1)
}

fn column_name(column: i64) -> String {
    let letter = u32::try_from(column % 26).ok().and_then(|at| char::from_u32(u32::from('A') + at)).unwrap_or('A');
    if column < 26 { letter.to_string() } else { format!("{letter}{}", column / 26 + 1) }
}

/// The hour to which the top of a turned motif points.
fn hour(turn: u16) -> u32 {
    match (u32::from(turn) + 15) / 30 % 12 {
        0 => 12,
        hour => hour,
    }
}

/// Every place: number, stamp, field, measures, turn, which impression, what else.
fn places(guide: &Guide<'_>, told: Told, pages: &mut Pages) {
    pages.section(&say("guide-places", &[]));
    pages.say(&say("guide-places-lead", &[("field", told.length(field(told.edition.unit)).into())]));
    let columns = [
        ("guide-number", 2, Align::Start),
        ("guide-stamp", 5, Align::Start),
        ("guide-field", 2, Align::Start),
        ("guide-right", 3, Align::End),
        ("guide-down", 3, Align::End),
        ("guide-turn", 4, Align::End),
        ("guide-which", 4, Align::End),
    ];
    let columns = columns.map(|(id, share, align)| Column { head: say(id, &[]), share, align });
    let row = |one: &Impression| {
        let name = guide.background.motifs.get(one.placed.motif).map_or("", |stamp| stamp.name.as_str());
        let which = if one.generation > 1 {
            say("guide-paler-one", &[("which", one.generation.into())])
        } else {
            String::new()
        };
        vec![
            one.number.to_string(),
            name.to_owned(),
            field_name(guide.laid.sheet, one, told.edition.unit),
            told.bare(one.placed.x).replace("≈\u{a0}", ""),
            told.bare(one.placed.y).replace("≈\u{a0}", ""),
            say("guide-clock", &[("hour", hour(one.placed.turn).into()), ("turn", u32::from(one.placed.turn).into())]),
            which,
        ]
    };
    let rows: Vec<Vec<String>> = guide.laid.impressions.iter().map(row).collect();
    pages.table(&columns, &rows);
}

/// The outline of an impression, thick where it runs off, dashed where it is the paler one.
fn outlined(guide: &Guide<'_>, one: &Impression, fit: Fit, step: (Length, Length), pen: &Pen) -> Vec<Mark> {
    let Some(ink) = guide.laid.outlines.get(one.placed.motif) else { return Vec::new() };
    let path = Outline::Path(rims(ink, one, fit, step));
    vec![Mark::Shape { outline: path, fill: None, pen: Some(pen.clone()) }]
}

/// The numbered sheet at true size with its grid.
fn true_size<'a>(guide: &'a Guide<'a>, press: Press) -> Drawing<'a> {
    let unit = press.told.edition.unit;
    let sheet = Rect::new(Length::ZERO, Length::ZERO, guide.laid.sheet);
    let draw = move |fit: Fit, shown: Rect| {
        let mut marks = grid(guide, press, fit, shown);
        let mut placer = Placer::new(shown);
        let mut seen: Vec<(&Impression, (Length, Length))> = Vec::new();
        for one in &guide.laid.impressions {
            for step in steps(guide.background, guide.laid, one) {
                let at = fit.point(one.placed.x + step.0, one.placed.y + step.1);
                let reach = guide.laid.outlines.get(one.placed.motif).map_or(0.0, background::Outline::reach);
                let far = fit.length(crate::scene::points(reach * 72.0 / 25.4));
                if at.x + far > shown.x
                    && at.x - far < shown.right()
                    && at.y + far > shown.y
                    && at.y - far < shown.bottom()
                {
                    seen.push((one, step));
                }
            }
        }
        for (one, step) in &seen {
            let Some(stamp) = guide.background.motifs.get(one.placed.motif) else { continue };
            let color = darkened(ink_of(stamp, 1, Color::hex(0xff_ff_ff)));
            let dash = if one.generation > 1 { vec![pt(4), pt(2)] } else { Vec::new() };
            let width = if one.inside_percent < 100 { pt(2) } else { share(pt(1), 3, 4) };
            marks.extend(outlined(guide, one, fit, *step, &Pen { color, width, dash }));
            marks.extend(centre(one, fit, *step));
        }
        // Words last, where no others are: in the middle if they go there, else beside it.
        let style = Style::new(Face::Semibold, press.told.points(10));
        for (one, step) in &seen {
            // Of what runs off, the number still stands on the sheet.
            let at = fit.point(one.placed.x + step.0, one.placed.y + step.1);
            let near = inset(shown, pt(12));
            let at = Point::new(at.x.clamp(near.x, near.right()), at.y.clamp(near.y, near.bottom()));
            let text = one.number.to_string();
            let spots = [
                (9, -8),
                (-9, -8),
                (9, 9),
                (-9, 9),
                (0, -14),
                (0, 15),
                (16, 0),
                (-16, 0),
                (20, -16),
                (-20, 16),
                (24, 20),
            ];
            let label = |(dx, dy): (i64, i64)| centred(&text, style, Point::new(at.x + pt(dx), at.y + pt(dy)), INK);
            let paper = Color::hex(0xff_ff_ff).with_alpha(200);
            let backed = |label: Label| {
                let mut marks = vec![Mark::fill(inset(label.around, -pt(1)), paper)];
                marks.extend(label.marks);
                Label { marks, around: label.around }
            };
            let labels: Vec<Label> = spots.into_iter().map(label).map(backed).collect();
            let first = labels.first().map(|label| label.marks.clone());
            // A number over another is better than none.
            marks.extend(placer.first(labels).or(first).unwrap_or_default());
        }
        marks
    };
    let facts = [("size", press.told.size(guide.laid.sheet).into()), ("field", press.told.length(field(unit)).into())];
    Drawing {
        title: say("guide-true-title", &[("name", (&guide.background.name).into())]),
        note: say("guide-true-note", &facts),
        size: sheet.size,
        draw: Box::new(draw),
    }
}

/// No ink so light that its outline would not be seen on white.
fn darkened(color: Color) -> Color {
    let [r, g, b] = color.rgb.map(u32::from);
    if (r * 3 + g * 6 + b) / 10 > 130 { color.mix(INK, 140) } else { color }
}

/// A cross in the middle of an impression, with a longer arm towards its top.
fn centre(one: &Impression, fit: Fit, step: (Length, Length)) -> Vec<Mark> {
    let at = fit.point(one.placed.x + step.0, one.placed.y + step.1);
    let angle = f64::from(one.placed.turn).to_radians();
    let (sin, cos) = (libm::sin(angle), libm::cos(angle));
    let spot = |right: f64, up: f64| {
        let (x, y) = (right * cos + up * sin, right * sin - up * cos);
        Point::new(at.x + crate::scene::points(x), at.y + crate::scene::points(y))
    };
    let pen = Pen::solid(ACCENT, share(pt(1), 3, 4));
    vec![
        Mark::line(spot(-3.0, 0.0), spot(3.0, 0.0), pen.clone()),
        Mark::line(spot(0.0, -3.0), spot(0.0, 8.0), pen.clone()),
        Mark::line(spot(-2.0, 5.5), spot(0.0, 8.0), pen.clone()),
        Mark::line(spot(2.0, 5.5), spot(0.0, 8.0), pen),
    ]
}

/// Thin lines an inch or 20 mm apart, with letters and numbers at the edges of what is shown.
fn grid(guide: &Guide<'_>, press: Press, fit: Fit, shown: Rect) -> Vec<Mark> {
    let step = field(press.told.edition.unit);
    let sheet = guide.laid.sheet;
    let whole = fit.rect(Rect::new(Length::ZERO, Length::ZERO, sheet));
    let pen = Pen::solid(RULE, share(pt(1), 1, 2));
    let style = Style::new(Face::Regular, press.told.points(9));
    let mut marks = vec![];
    let (mut at, mut number) = (Length::ZERO, 0);
    let (left, top) = (shown.x.max(whole.x), shown.y.max(whole.y));
    while at < sheet.width {
        let x = fit.point(at, Length::ZERO).x;
        marks.push(Mark::line(Point::new(x, whole.y), Point::new(x, whole.bottom()), pen.clone()));
        let middle = x + half(fit.length(step));
        if middle > shown.x && middle < shown.right() {
            marks.extend(centred(&column_name(number), style, Point::new(middle, top + pt(7)), SOFT).marks);
        }
        (at, number) = (at + step, number + 1);
    }
    let (mut at, mut number) = (Length::ZERO, 1);
    while at < sheet.height {
        let y = fit.point(Length::ZERO, at).y;
        marks.push(Mark::line(Point::new(whole.x, y), Point::new(whole.right(), y), pen.clone()));
        let middle = y + half(fit.length(step));
        if middle > shown.y && middle < shown.bottom() {
            marks.extend(centred(&number.to_string(), style, Point::new(left + pt(8), middle), SOFT).marks);
        }
        (at, number) = (at + step, number + 1);
    }
    marks.push(Mark::frame(whole, Pen::solid(INK, pt(1))));
    marks
}
