//! Writing a project as a project file: what [`read`](super::read) reads back as the same project.
//!
//! What is at its usual value is left out, as a maker would; lengths are bare numbers in the project's unit.
//! Left out on purpose: the maker's own comments and spellings, which a project does not hold.

mod background;
mod strip;
mod trade;

use std::fmt::Write as _;

use cards::Project;
use cards::model::{
    Anchor, Batch, Cardstock, Choice, Collage, Decided, Design, Edges, Envelope, Face, Fold, Goal, Grain, Layer, Lies,
    Look, Material, Meeting, Pack, Placement, Placing, Price, PrintSize, Range, Recipe, Region, Side, StockSheet,
    Supplies, Supply, Take, Tape, Trimmer, Wanted, Way,
};
use cards::pairs::Apart;
use measure::{Length, Mark, Rect, Size, Unit, formats, write_exact_in};

use super::form::{APART, FOLDS, GRAINS, KINDS, LIES, PLACINGS, POINTS, PRINTS, SIDES, UNITS, WAYS};
use super::names::Catalogue;
use super::{paper, recipe, supplies};

/// The text of a project file that reads back as this project.
///
/// # Shape
/// True for every project that [`read`](super::read) can give: the same project. One with a dangling index or a name
/// that no file can hold gives a text that does not read; whoever makes projects reads the text again before it is kept.
///
/// # Examples
/// ```
/// use store::project_file::{read, write};
/// let text = "name = \"Mine\"\n[[pack]]\nname = \"Spring\"\nsheet = \"12 x 12\"\n[[pack.design]]\n\
///     [[cardstock]]\nname = \"Milk\"\ncolor = \"#f6f0e2\"\n[[recipe]]\nname = \"Plain\"\nformat = \"3 1/2 x 5\"\n\
///     [[recipe.layer]]\nname = \"panel\"\nsize = \"3 x 4 1/2\"\n";
/// let project = read(text).unwrap();
/// assert_eq!(read(&write(&project)).unwrap(), project);
/// ```
pub fn write(project: &Project) -> String {
    // Every field by name: a new one cannot be forgotten here.
    let Project {
        name,
        maker,
        date,
        unit,
        mark,
        trimmer,
        placing,
        packs,
        backgrounds,
        cardstocks,
        ribbons,
        greetings,
        supplies,
        envelope,
        recipes,
        meeting,
        goal,
        batches,
        choices,
        trade,
    } = project;
    let prices = Usual::of(project);
    let mut pen = Pen { text: String::new(), unit: *unit, project, prices };
    pen.text("name", name);
    pen.maybe("maker", maker.as_deref());
    if let Some(date) = date {
        pen.line("date", date);
    }
    pen.text("unit", UNITS[usize::from(*unit == Unit::Millimetre)]);
    if *mark != Mark::usual(*unit) {
        pen.length("mark", mark.step());
    }
    if !pen.prices.currency.is_empty() {
        let currency = pen.prices.currency.clone();
        pen.text("currency", &currency);
    }
    if let Some(date) = pen.prices.date.clone() {
        pen.line("priced_on", &date);
    }
    match placing {
        Placing::Alike => {}
        Placing::Each => pen.text("placing", PLACINGS[1]),
        Placing::Plain => pen.text("placing", PLACINGS[2]),
    }
    if let Some(envelope) = envelope {
        pen.envelope(envelope);
    }
    pen.trimmer(trimmer);
    // The reader takes packs first, then loose sheets; a loose sheet is a pack of one design that has its name.
    let loose = packs.iter().rev().take_while(|pack| is_loose(pack)).count();
    let (whole, loose) = packs.split_at(packs.len() - loose);
    for pack in whole {
        pen.pack(pack);
    }
    for pack in loose {
        pen.loose(pack);
    }
    for background in backgrounds {
        pen.background(background);
    }
    for cardstock in cardstocks {
        pen.cardstock(cardstock);
    }
    for ribbon in ribbons {
        pen.heading("[[ribbon]]");
        pen.text("name", &ribbon.name);
        pen.text("color", &ribbon.color);
        pen.length("width", ribbon.width);
        pen.thickness("thickness", ribbon.thickness_um);
        if let Some(spool) = ribbon.spool {
            let spool = pen.rolled(spool);
            pen.text("spool", &spool);
        }
        pen.price(ribbon.price.as_ref());
    }
    for greeting in greetings {
        pen.heading("[[greeting]]");
        pen.text("words", &greeting.words);
        pen.size("inked", greeting.inked);
        pen.text("ink", &greeting.ink);
        pen.stamp(greeting.stamp.as_ref());
        pen.mark(greeting);
    }
    pen.supplies(supplies);
    for recipe in recipes {
        pen.recipe(recipe, *mark);
    }
    pen.meeting(meeting);
    pen.goal(goal);
    for batch in batches {
        pen.batch(batch);
    }
    for choice in choices {
        pen.choice(choice);
    }
    pen.trade(trade);
    pen.text
}

/// True if the pack is what a single sheet or a scrap reads as.
fn is_loose(pack: &Pack) -> bool {
    matches!(pack.designs.as_slice(), [design] if design.name == pack.name)
}

/// The currency and the day that most prices can leave out.
struct Usual {
    currency: String,
    date: Option<String>,
}

impl Usual {
    /// Those of the first price, unless some price has none at all: it would be given these.
    fn of(project: &Project) -> Usual {
        let stock = project.cardstocks.iter().flat_map(|stock| &stock.sheets).map(|sheet| &sheet.price);
        let ribbons = project.ribbons.iter().map(|ribbon| &ribbon.price);
        let Supplies { tape, foam, envelopes, ink_pad, stamps } = &project.supplies;
        let small = [foam, envelopes, ink_pad, stamps].into_iter().flatten().map(|supply| &supply.price);
        let small = tape.iter().map(|tape| &tape.price).chain(small);
        let papers = project.packs.iter().map(|pack| &pack.price);
        let trade = &project.trade;
        let selling = [&trade.selling.price, &trade.selling.hour].into_iter();
        let class = trade.class.iter().flat_map(|class| [&class.room, &class.hour, &class.shared, &class.price]);
        let offers = trade.offers.iter().map(|offer| &offer.price);
        let traded =
            selling.chain(class).chain(offers).flatten().chain(trade.post.rates.iter().map(|rate| &rate.price));
        let prices: Vec<&Price> = papers.chain(stock).chain(ribbons).chain(small).flatten().chain(traded).collect();
        let all_have = prices.iter().all(|price| !price.currency.is_empty());
        let all_dated = prices.iter().all(|price| price.date.is_some());
        let first = prices.first();
        Usual {
            currency: first.filter(|_| all_have).map(|price| price.currency.clone()).unwrap_or_default(),
            date: first.filter(|_| all_dated).and_then(|price| price.date.clone()),
        }
    }
}

/// The text so far, and what its bare numbers mean.
struct Pen<'p> {
    text: String,
    unit: Unit,
    project: &'p Project,
    prices: Usual,
}

impl Pen<'_> {
    /// An empty line and the head of a table.
    fn heading(&mut self, heading: &str) {
        self.text.push('\n');
        self.text.push_str(heading);
        self.text.push('\n');
    }

    fn line(&mut self, key: &str, value: &str) {
        // Writing to a text cannot fail.
        let _ = writeln!(self.text, "{key} = {value}");
    }

    fn text(&mut self, key: &str, text: &str) {
        self.line(key, &quoted(text));
    }

    fn maybe(&mut self, key: &str, text: Option<&str>) {
        if let Some(text) = text {
            self.text(key, text);
        }
    }

    fn count(&mut self, key: &str, count: Option<u32>) {
        if let Some(count) = count {
            self.line(key, &count.to_string());
        }
    }

    /// A count, unless it is what is meant where none is written.
    fn other_count(&mut self, key: &str, count: u32, usual: u32) {
        self.count(key, Some(count).filter(|count| *count != usual));
    }

    fn length(&mut self, key: &str, length: Length) {
        self.text(key, &self.bare(length));
    }

    fn size(&mut self, key: &str, size: Size) {
        self.text(key, &self.sides(size));
    }

    /// Exactly, without the sign of the project's own unit.
    fn bare(&self, length: Length) -> String {
        let written = write_exact_in(length, self.unit);
        let sign = format!(" {}", self.unit.sign());
        written.strip_suffix(&sign).unwrap_or(&written).to_owned()
    }

    fn sides(&self, size: Size) -> String {
        self.pair(size.width, "x", size.height)
    }

    /// Two lengths, each with its sign if one is not in the project's unit: a sign behind the second holds for both.
    fn pair(&self, first: Length, between: &str, second: Length) -> String {
        let (one, other) = (self.bare(first), self.bare(second));
        if [&one, &other].iter().any(|text| text.contains(char::is_alphabetic)) {
            return format!("{} {between} {}", write_exact_in(first, self.unit), write_exact_in(second, self.unit));
        }
        format!("{one} {between} {other}")
    }

    /// The name of a sheet where it has one that is not two numbers, else its sides.
    fn sheet(&self, size: Size) -> String {
        let plain = |name: &&str| name.starts_with(|sign: char| sign.is_alphabetic()) && !name.contains('/');
        let named = measure::sheets::sheets().find(|row| row.size == size && plain(&row.name));
        named.map_or_else(|| self.sides(size), |row| row.name.to_owned())
    }

    fn range(&self, range: Range) -> String {
        if range.least == range.most {
            return self.bare(range.least);
        }
        self.pair(range.least, "to", range.most)
    }

    /// A length on a spool or a roll, in whole yards or metres where it is.
    fn rolled(&self, length: Length) -> String {
        let yard = Length::INCH * 36;
        let metre = Length::mm(1_000);
        if length.ticks() % yard.ticks() == 0 {
            format!("{} yd", length.ticks() / yard.ticks())
        } else if length.ticks() % metre.ticks() == 0 {
            format!("{} m", length.ticks() / metre.ticks())
        } else {
            self.bare(length)
        }
    }

    fn supplies(&mut self, supplies: &Supplies) {
        if *supplies == Supplies::default() {
            return;
        }
        self.heading("[supplies]");
        let Supplies { tape, foam, envelopes, ink_pad, stamps } = supplies;
        if let Some(tape) = tape {
            let mut entries = self.supply_name("tape", &tape.name);
            if let Some(roll) = tape.roll {
                entries.push(format!("roll = {}", quoted(&self.rolled(roll))));
            }
            if let Some(price) = &tape.price {
                entries.push(format!("price = {}", self.worth(price)));
            }
            if tape.two_lines_from != Tape::usual_two_lines_from(self.unit) {
                entries.push(format!("two_lines_from = {}", quoted(&self.bare(tape.two_lines_from))));
            }
            self.line("tape", &inline(&entries));
        }
        for (key, count, supply) in [
            ("foam", "pack_of", foam),
            ("envelopes", "pack_of", envelopes),
            ("ink_pad", "lasts", ink_pad),
            ("stamps", "lasts", stamps),
        ] {
            let Some(Supply { name, lasts, price }) = supply else { continue };
            let mut entries = self.supply_name(key, name);
            if *lasts != 1 {
                entries.push(format!("{count} = {lasts}"));
            }
            if let Some(price) = price {
                entries.push(format!("price = {}", self.worth(price)));
            }
            self.line(key, &inline(&entries));
        }
    }

    /// The entry of a supply's name, unless it is the usual one.
    fn supply_name(&self, key: &str, name: &str) -> Vec<String> {
        if name == supplies::usual_name(key) { Vec::new() } else { vec![format!("name = {}", quoted(name))] }
    }

    fn price(&mut self, price: Option<&Price>) {
        self.priced("price", price);
    }

    /// A price under another key.
    fn priced(&mut self, key: &str, price: Option<&Price>) {
        if let Some(price) = price {
            let worth = self.worth(price);
            self.line(key, &worth);
        }
    }

    fn worth(&self, price: &Price) -> String {
        let amount = quoted(&price.amount.to_string());
        if price.currency == self.prices.currency && price.date == self.prices.date {
            return amount;
        }
        let mut entries = vec![format!("amount = {amount}")];
        if price.currency != self.prices.currency {
            entries.push(format!("currency = {}", quoted(&price.currency)));
        }
        if let Some(date) = price.date.as_ref().filter(|_| price.date != self.prices.date) {
            entries.push(format!("date = {date}"));
        }
        inline(&entries)
    }

    fn envelope(&mut self, envelope: &Envelope) {
        let Envelope { name, size } = envelope;
        // Two lengths are read as lengths before they are read as a name.
        let reads_as_sides = measure::parse_size(name, Some(self.unit)).is_ok();
        if !reads_as_sides && Catalogue::Envelopes.find(name) == Some(*size) {
            return self.text("envelope", name);
        }
        let size = quoted(&self.sides(*size));
        self.line("envelope", &inline(&[format!("name = {}", quoted(name)), format!("size = {size}")]));
    }

    fn trimmer(&mut self, trimmer: &Trimmer) {
        let usual = Trimmer::usual(self.unit);
        if *trimmer == usual {
            return;
        }
        self.heading("[trimmer]");
        if trimmer.longest_cut != usual.longest_cut {
            self.length("longest_cut", trimmer.longest_cut);
        }
        if trimmer.smallest_strip != usual.smallest_strip {
            self.length("smallest_strip", trimmer.smallest_strip);
        }
        self.other_count("stack_paper", trimmer.stack_paper, usual.stack_paper);
        self.other_count("stack_cardstock", trimmer.stack_cardstock, usual.stack_cardstock);
    }

    /// What a pack and a loose sheet share.
    fn paper(&mut self, pack: &Pack) {
        self.text("name", &pack.name);
        let sheet = self.sheet(pack.sheet);
        self.text("sheet", &sheet);
        if let Some(lost) = self.edges(pack.unusable) {
            self.line("unusable", &lost);
        }
        self.count("gsm", pack.grammage_gsm);
        self.thickness("thickness", pack.thickness_um);
        self.price(pack.price.as_ref());
    }

    fn pack(&mut self, pack: &Pack) {
        self.heading("[[pack]]");
        self.paper(pack);
        for design in &pack.designs {
            self.heading("[[pack.design]]");
            self.text("letter", &design.letter);
            self.maybe("name", Some(&*design.name).filter(|name| *name != design.letter));
            self.design(design);
        }
    }

    fn loose(&mut self, pack: &Pack) {
        self.heading("[[loose]]");
        self.paper(pack);
        for design in &pack.designs {
            self.text("letter", &design.letter);
            self.design(design);
        }
    }

    fn design(&mut self, design: &Design) {
        self.other_count("copies", design.copies, 1);
        self.count("use", design.use_sheets);
        if design.up == Side::Back {
            self.text("up", SIDES[1]);
        }
        if design.lies == Lies::HeadToFoot {
            self.text("back_lies", LIES[1]);
        }
        self.face("front", &design.front);
        self.face("back", &design.back);
    }

    /// A face on one line; nothing for one that is plain white.
    fn face(&mut self, key: &str, face: &Face) {
        let mut entries = Vec::new();
        if face.name != key {
            entries.push(format!("name = {}", quoted(&face.name)));
        }
        match face.way {
            Way::Any => {}
            Way::OneWay => entries.push(format!("way = {}", quoted(WAYS[1]))),
            Way::TwoWays => entries.push(format!("way = {}", quoted(WAYS[2]))),
        }
        if let Some(size) = face.print_size {
            let index = match size {
                PrintSize::Large => 0,
                PrintSize::Medium => 1,
                PrintSize::Small => 2,
                PrintSize::Solid => 3,
            };
            entries.push(format!("print = {}", quoted(PRINTS[index])));
        }
        match &face.look {
            Look::Picture(name) => entries.push(format!("picture = {}", quoted(name))),
            Look::Drawn(name) => entries.push(format!("drawn = {}", quoted(name))),
            Look::Plain(color) if color == paper::WHITE => {}
            Look::Stamped(index) => {
                let name = named(&self.project.backgrounds, *index, |background| &background.name);
                entries.push(format!("background = {}", quoted(name)));
            }
            Look::Plain(color) => entries.push(format!("color = {}", quoted(color))),
        }
        if let Some(Collage { columns, rows, panels }) = &face.collage {
            let list = |lengths: &[Length]| {
                let texts: Vec<String> = lengths.iter().map(|length| quoted(&self.bare(*length))).collect();
                format!("[{}]", texts.join(", "))
            };
            let panel = |panel: &Rect| {
                inline(&[
                    format!("left = {}", quoted(&self.bare(panel.x))),
                    format!("top = {}", quoted(&self.bare(panel.y))),
                    format!("size = {}", quoted(&self.sides(panel.size))),
                ])
            };
            let told = if panels.is_empty() {
                vec![format!("columns = {}", list(columns)), format!("rows = {}", list(rows))]
            } else {
                vec![format!("panels = [{}]", panels.iter().map(panel).collect::<Vec<_>>().join(", "))]
            };
            entries.push(format!("collage = {}", inline(&told)));
        }
        for (key, keep) in [("keep", true), ("avoid", false)] {
            let own = face.regions.iter().filter(|region| (region.wanted != Wanted::Avoid) == keep);
            let told: Vec<String> = own.map(|region| self.region(region)).collect();
            if !told.is_empty() {
                entries.push(format!("{key} = [{}]", told.join(", ")));
            }
        }
        if !entries.is_empty() {
            self.line(key, &inline(&entries));
        }
    }

    fn region(&self, Region { rect, wanted }: &Region) -> String {
        let mut entries = vec![
            format!("left = {}", quoted(&self.bare(rect.x))),
            format!("top = {}", quoted(&self.bare(rect.y))),
            format!("size = {}", quoted(&self.sides(rect.size))),
        ];
        if let Wanted::Keep { show_on: Some((recipe, layer)) } = wanted {
            entries.push(format!("show_on = {}", quoted(&format!("{recipe}/{layer}"))));
        }
        inline(&entries)
    }

    fn cardstock(&mut self, cardstock: &Cardstock) {
        self.heading("[[cardstock]]");
        self.text("name", &cardstock.name);
        self.text("color", &cardstock.color);
        self.count("gsm", cardstock.grammage_gsm);
        self.thickness("thickness", cardstock.thickness_um);
        let sheets: Vec<String> = cardstock.sheets.iter().map(|sheet| self.stock_sheet(sheet)).collect();
        match sheets.as_slice() {
            [sheet] => self.line("sheet", sheet),
            _ => self.line("sheet", &format!("[\n    {},\n]", sheets.join(",\n    "))),
        }
    }

    /// What is lost at the edges of a sheet, if anything is.
    fn edges(&self, Edges { left, top, right, bottom }: Edges) -> Option<String> {
        let lost: Vec<String> = [("left", left), ("top", top), ("right", right), ("bottom", bottom)]
            .into_iter()
            .filter(|(_, length)| *length != Length::ZERO)
            .map(|(key, length)| format!("{key} = {}", quoted(&self.bare(length))))
            .collect();
        (!lost.is_empty()).then(|| inline(&lost))
    }

    fn stock_sheet(&self, sheet: &StockSheet) -> String {
        let size = quoted(&self.sheet(sheet.size));
        let mut entries = vec![format!("size = {size}")];
        if let Some(count) = sheet.count {
            entries.push(format!("count = {count}"));
        }
        match sheet.grain {
            Grain::AlongWidth => entries.push(format!("grain = {}", quoted(GRAINS[2]))),
            Grain::AlongHeight => entries.push(format!("grain = {}", quoted(GRAINS[3]))),
            Grain::Unknown => {}
        }
        if sheet.pack_of != 1 {
            entries.push(format!("pack_of = {}", sheet.pack_of));
        }
        if let Some(price) = &sheet.price {
            entries.push(format!("price = {}", self.worth(price)));
        }
        if let Some(lost) = self.edges(sheet.unusable) {
            entries.push(format!("unusable = {lost}"));
        }
        if entries.len() == 1 { size } else { inline(&entries) }
    }

    /// The key of a cardstock, left out where there is only one.
    fn of_cardstock(&mut self, key: &str, index: usize) {
        if self.project.cardstocks.len() != 1 {
            self.text(key, named(&self.project.cardstocks, index, |stock| &stock.name));
        }
    }

    fn recipe(&mut self, recipe: &Recipe, mark: Mark) {
        self.heading("[[recipe]]");
        self.text("name", &recipe.name);
        self.size("format", recipe.finished);
        let fold = match recipe.fold {
            Fold::Side => 0,
            Fold::Top => 1,
            Fold::Gate => 2,
            Fold::Zed => 3,
            Fold::Flat => 4,
        };
        if fold > 0 {
            self.text("fold", FOLDS[fold]);
        }
        self.of_cardstock("base", recipe.base);
        if let Some((size, cardstock)) = recipe.inside {
            let stock = named(&self.project.cardstocks, cardstock, |stock| &stock.name);
            let entries = [format!("size = {}", quoted(&self.sides(size))), format!("cardstock = {}", quoted(stock))];
            self.line("inside", &inline(&entries));
        }
        if !recipe.designs.is_empty() {
            let letters: Vec<String> = recipe.designs.iter().map(|letter| quoted(letter)).collect();
            self.line("designs", &format!("[{}]", letters.join(", ")));
        }
        self.other_count("least", recipe.least, 0);
        self.count("most", recipe.most);
        for index in 0..recipe.layers.len() {
            self.layer(recipe, index, mark);
        }
    }

    fn layer(&mut self, recipe: &Recipe, index: usize, mark: Mark) {
        let layer: &Layer = &recipe.layers[index];
        self.heading("[[recipe.layer]]");
        self.text("name", &layer.name);
        let project = self.project;
        match &layer.material {
            Material::Patterned { .. } => self.patterned(&layer.material, mark),
            Material::Mat { follows, border, cardstock } => {
                self.text("kind", KINDS[1]);
                if *follows != index + 1 {
                    self.text("follows", named(&recipe.layers, *follows, |layer| &layer.name));
                }
                if *border != formats::usual_border(self.unit) {
                    self.length("border", *border);
                }
                self.mat_cardstock(cardstock);
            }
            Material::Plain { size, cardstock } => {
                self.text("kind", KINDS[2]);
                self.size("size", *size);
                self.of_cardstock("cardstock", *cardstock);
            }
            Material::Strip { size, cardstock, greeting, spot, foam_squares } => {
                self.text("kind", KINDS[3]);
                self.size("size", *size);
                self.of_cardstock("cardstock", *cardstock);
                if project.greetings.len() != 1 {
                    self.text("greeting", named(&project.greetings, *greeting, |greeting| &greeting.words));
                }
                self.spot(*spot);
                self.other_count("foam_squares", *foam_squares, 0);
            }
            Material::Ribbon { ribbon, length, bow } => {
                self.text("kind", KINDS[4]);
                if project.ribbons.len() != 1 {
                    self.text("ribbon", named(&project.ribbons, *ribbon, |ribbon| &ribbon.name));
                }
                self.length("length", *length);
                self.yes("bow", *bow);
            }
        }
        if let Some((greeting, spot)) = layer.stamped {
            self.text("greeting", named(&project.greetings, greeting, |greeting| &greeting.words));
            self.spot(spot);
        }
        self.placement(recipe, index);
    }

    fn yes(&mut self, key: &str, yes: bool) {
        if yes {
            self.line(key, "true");
        }
    }

    fn patterned(&mut self, material: &Material, mark: Mark) {
        let Material::Patterned { width, height, prefer, free_size, may_turn, from_partner, die } = material else {
            return;
        };
        if width.least == width.most && height.least == height.most {
            self.size("size", Size::new(width.least, height.least));
        } else {
            let (width, height) = (self.range(*width), self.range(*height));
            self.text("width", &width);
            self.text("height", &height);
        }
        if *prefer != Size::new(recipe::middle(*width, mark), recipe::middle(*height, mark)) {
            self.size("prefer", *prefer);
        }
        self.yes("free_size", *free_size);
        self.yes("may_turn", *may_turn);
        self.yes("from_partner", *from_partner);
        self.maybe("die", die.as_deref());
    }

    fn mat_cardstock(&mut self, cardstock: &[(Option<String>, usize)]) {
        let stocks = &self.project.cardstocks;
        if let [(None, index)] = cardstock {
            return self.of_cardstock("cardstock", *index);
        }
        let entries: Vec<String> = cardstock
            .iter()
            .map(|(letter, index)| {
                let letter = letter.as_deref().unwrap_or_default();
                format!("{} = {}", key(letter), quoted(named(stocks, *index, |stock| &stock.name)))
            })
            .collect();
        self.line("cardstock", &inline(&entries));
    }

    fn placement(&mut self, recipe: &Recipe, index: usize) {
        let Placement { on, anchor, right, down, overlap } = &recipe.layers[index].placement;
        let follows = |layer: &Layer| matches!(layer.material, Material::Mat { follows, .. } if follows == index);
        let usual = recipe.layers[..index].iter().rposition(follows);
        if let Some(on) = on.filter(|on| Some(*on) != usual) {
            self.text("on", named(&recipe.layers, on, |layer| &layer.name));
        }
        let point = match anchor {
            Anchor::TopLeft => 0,
            Anchor::Top => 1,
            Anchor::TopRight => 2,
            Anchor::Left => 3,
            Anchor::Middle => 4,
            Anchor::Right => 5,
            Anchor::BottomLeft => 6,
            Anchor::Bottom => 7,
            Anchor::BottomRight => 8,
        };
        if *anchor != Anchor::Middle {
            self.text("at", POINTS[point]);
        }
        for (key, shift) in [("right", *right), ("down", *down)] {
            if shift != Length::ZERO {
                self.length(key, shift);
            }
        }
        self.yes("overlap", *overlap);
    }

    fn goal(&mut self, goal: &Goal) {
        let usual = Goal::unsaid();
        if *goal == usual {
            return;
        }
        self.heading("[goal]");
        self.wishes(goal);
    }

    fn batch(&mut self, batch: &Batch) {
        let Batch { name, takes, recipes, goal, kits } = batch;
        self.heading("[[batch]]");
        self.text("name", name);
        if !recipes.is_empty() {
            let name = |&recipe: &usize| quoted(named(&self.project.recipes, recipe, |recipe| &recipe.name));
            let names: Vec<String> = recipes.iter().map(name).collect();
            self.line("recipes", &format!("[{}]", names.join(", ")));
        }
        let take = |take: &Take| {
            let design = self.project.design(take.pack, take.design)?;
            let mut entries = vec![format!("design = {}", quoted(&design.letter)), format!("count = {}", take.sheets)];
            if take.side != design.up {
                entries.push(format!("up = {}", quoted(SIDES[usize::from(take.side == Side::Back)])));
            }
            Some(inline(&entries))
        };
        let rows: Vec<String> = takes.iter().filter_map(take).collect();
        if rows.is_empty() {
            self.line("each", "0");
        }
        self.rows("sheets", rows);
        self.count("kits", *kits);
        self.wishes(goal);
    }

    fn choice(&mut self, choice: &Choice) {
        let Choice { card, layer, decided } = choice;
        self.heading("[[choice]]");
        self.count("card", Some(*card));
        self.text("layer", layer);
        match decided {
            Decided::Swap(with) => self.count("with", Some(*with)),
            Decided::Shows(side) => self.text("shows", SIDES[usize::from(*side == Side::Back)]),
            Decided::CutFrom(cardstock) => {
                let name = self.project.cardstocks.get(*cardstock).map_or("", |stock| stock.name.as_str());
                self.text("cardstock", name);
            }
        }
    }

    fn pairs(&mut self, key: &str, pairs: &[(String, String)]) {
        let pairs = pairs.iter().map(|(one, other)| format!("[{}, {}]", quoted(one), quoted(other)));
        self.rows(key, pairs.collect());
    }

    fn meeting(&mut self, meeting: &Meeting) {
        if *meeting == Meeting::default() {
            return;
        }
        self.heading("[pairs]");
        let Meeting { apart, one_large, only, never } = meeting;
        match apart {
            Apart::Designs => {}
            Apart::Faces => self.text("apart", APART[1]),
            Apart::Anything => self.text("apart", APART[2]),
        }
        if *one_large {
            self.line("one_large", "true");
        }
        self.pairs("only", only);
        self.pairs("never", never);
    }

    /// The keys that a goal and a batch share, where they are not the usual ones.
    fn wishes(&mut self, goal: &Goal) {
        let usual = Goal::unsaid();
        let Goal { cards_per_sheet, cards, set_of, overs, spares, partners, pins, alternatives } = goal;
        self.count("cards_per_sheet", *cards_per_sheet);
        self.count("cards", *cards);
        self.other_count("set_of", *set_of, usual.set_of);
        self.other_count("overs", *overs, usual.overs);
        self.other_count("alternatives", *alternatives, usual.alternatives);
        self.pairs("partners", partners);
        let spare = |(recipe, layer, count): &(String, String, u32)| {
            inline(&[
                format!("recipe = {}", quoted(recipe)),
                format!("layer = {}", quoted(layer)),
                format!("count = {count}"),
            ])
        };
        self.rows("spares", spares.iter().map(spare).collect());
        let pin = |(recipe, layer, left, top, size): &(String, String, Length, Length, Size)| {
            inline(&[
                format!("recipe = {}", quoted(recipe)),
                format!("layer = {}", quoted(layer)),
                format!("left = {}", quoted(&self.bare(*left))),
                format!("top = {}", quoted(&self.bare(*top))),
                format!("size = {}", quoted(&self.sides(*size))),
            ])
        };
        self.rows("pins", pins.iter().map(pin).collect());
    }

    /// A list, one entry a line if there is more than one; nothing for none.
    fn rows(&mut self, key: &str, entries: Vec<String>) {
        match entries.as_slice() {
            [] => {}
            [entry] => self.line(key, &format!("[{entry}]")),
            _ => self.line(key, &format!("[\n    {},\n]", entries.join(",\n    "))),
        }
    }
}

/// The name of the thing at an index; an empty one, which no file can hold, if there is none.
fn named<T>(things: &[T], index: usize, name: impl Fn(&T) -> &String) -> &str {
    things.get(index).map_or("", |thing| name(thing))
}

/// A table on one line.
fn inline(entries: &[String]) -> String {
    format!("{{ {} }}", entries.join(", "))
}

/// A key, in quotes where TOML asks for them.
fn key(key: &str) -> String {
    let bare = !key.is_empty() && key.bytes().all(|sign| sign.is_ascii_alphanumeric() || sign == b'-' || sign == b'_');
    if bare { key.to_owned() } else { quoted(key) }
}

/// A text as TOML quotes it.
///
/// # Source
/// TOML 1.0.0, section String: basic strings.
fn quoted(text: &str) -> String {
    let mut quoted = String::from('"');
    for sign in text.chars() {
        if matches!(sign, '"' | '\\') {
            quoted.push('\\');
            quoted.push(sign);
        } else if sign.is_control() {
            let _ = write!(quoted, "\\u{:04X}", u32::from(sign));
        } else {
            quoted.push(sign);
        }
    }
    quoted.push('"');
    quoted
}
