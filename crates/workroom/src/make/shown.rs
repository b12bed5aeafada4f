//! A plan as [`PlanView`]: names instead of indices, text instead of ticks.

use cards::model::Project;
use cards::money::to_coin;
use cards::plan::{
    Alternative, Card, CardPart, Exist, Gain, Layout, LayoutGrade, PartKind, Piece, Plan, PrintGain, StockPlan,
    StockSheetPlan, per_card,
};
use cards::{Fact, Severity, Subject, Way, WayChange};
use cutting::Tree;
use cutting::steps::{Caution, CutPlan, CutStep, Fate, Part, Step, Turn};
use measure::{Length, Rect, Size, Unit};

use super::view::{
    AlternativeView, CardView, ChangeView, CostView, CostsView, CountsView, CutView, ExistView, FORMAT, FindingView,
    GradeView, HandView, LayoutView, PartKindView, PartView, PatternView, PieceView, PlaceView, PlacingView, PlanView,
    PrintPlacingView, RecipeCount, RibbonView, SheetView, StepView, StockCutView, StockPieceView, StockView, TreeView,
    WayView, WorkView,
};
use crate::wording;

/// The whole plan for other programs.
pub fn show(plan: &Plan) -> PlanView {
    let told = Told { project: &plan.project, plan };
    let project = &plan.project;
    PlanView {
        format: FORMAT,
        project: project.name.clone(),
        maker: project.maker.clone(),
        date: project.date.clone(),
        unit: project.unit.sign(),
        mark: project.mark.to_string(),
        counts: told.counts(),
        backgrounds: super::backgrounds::backgrounds(plan),
        layouts: plan.layouts.iter().enumerate().map(|(index, layout)| told.layout(index, layout)).collect(),
        batches: super::shares::show(&told),
        cards: plan.cards.iter().map(|card| told.card(card)).collect(),
        cardstock: plan.stocks.iter().map(|stock| told.stock(stock)).collect(),
        borders: super::borders::show(plan),
        costs: costs(plan),
        findings: plan.findings.iter().map(|finding| self::finding(finding, project)).collect(),
    }
}

pub(super) struct Told<'a> {
    pub(super) project: &'a Project,
    pub(super) plan: &'a Plan,
}

impl Told<'_> {
    fn unit(&self) -> Unit {
        self.project.unit
    }

    fn text(&self, length: Length) -> String {
        wording::exact(length, self.unit())
    }

    fn size(&self, size: Size) -> String {
        wording::exact_size(size, self.unit())
    }

    fn place(&self, rect: Rect) -> PlaceView {
        PlaceView {
            x: self.text(rect.x),
            y: self.text(rect.y),
            width: self.text(rect.size.width),
            height: self.text(rect.size.height),
        }
    }

    pub(super) fn recipe(&self, index: usize) -> String {
        self.project.recipes.get(index).map(|recipe| recipe.name.clone()).unwrap_or_default()
    }

    pub(super) fn layer(&self, recipe: usize, layer: usize) -> String {
        self.project.layer(recipe, layer).map(|layer| layer.name.clone()).unwrap_or_default()
    }

    fn cardstock(&self, index: usize) -> String {
        self.project.cardstocks.get(index).map(|stock| stock.name.clone()).unwrap_or_default()
    }

    pub(super) fn pack(&self, index: usize) -> String {
        self.project.packs.get(index).map(|pack| pack.name.clone()).unwrap_or_default()
    }

    pub(super) fn letter(&self, pack: usize, design: usize) -> String {
        self.project.design(pack, design).map(|design| design.letter.clone()).unwrap_or_default()
    }

    fn by_recipe(&self, counts: &[u32]) -> Vec<RecipeCount> {
        counts.iter().enumerate().map(|(index, &cards)| RecipeCount { recipe: self.recipe(index), cards }).collect()
    }

    fn counts(&self) -> CountsView {
        let counts = &self.plan.counts;
        let ribbon = counts.ribbon.iter().zip(&self.project.ribbons).filter(|((length, _), _)| *length > Length::ZERO);
        CountsView {
            cards: counts.cards,
            by_recipe: self.by_recipe(&counts.cards_by_recipe),
            paper_sheets: counts.paper_sheets,
            paper_pieces: counts.paper_pieces,
            bases: counts.bases,
            mats: counts.mats,
            strips: counts.strips,
            foam_squares: counts.foam_squares,
            foam_packs: counts.foam_packs,
            ribbon: ribbon
                .map(|((length, spools), ribbon)| RibbonView {
                    name: ribbon.name.clone(),
                    length: self.text(*length),
                    spools: *spools,
                })
                .collect(),
            tape: self.project.supplies.tape.as_ref().zip(counts.tape).map(|(tape, (length, rolls))| RibbonView {
                name: tape.name.clone(),
                length: self.text(length),
                spools: rolls,
            }),
            envelopes: counts.envelopes.map(|(envelopes, _)| envelopes),
            envelope_packs: counts.envelopes.and_then(|(_, packs)| packs),
            impressions: counts.impressions,
        }
    }

    fn layout(&self, index: usize, layout: &Layout) -> LayoutView {
        let pack = self.project.packs.get(layout.pack);
        let sheets = layout.sheets.iter().map(|used| SheetView {
            design: self.letter(layout.pack, used.design),
            name: pack.and_then(|pack| pack.designs.get(used.design)).map(|d| d.name.clone()).unwrap_or_default(),
            side: used.side.name(),
            sheets: used.sheets,
        });
        LayoutView {
            number: index + 1,
            pack: self.pack(layout.pack),
            sheet: pack.map(|pack| self.size(pack.sheet)).unwrap_or_default(),
            usable: self.place(layout.usable),
            grade: grade(layout.grade),
            exist: match layout.exist {
                Exist::Exactly(count) => ExistView::Exactly(count),
                Exist::AtLeast(count) => ExistView::AtLeast(count),
            },
            waste_square_inches: square_inches(layout.waste),
            cards_per_sheet: self.by_recipe(&layout.recipe_counts),
            sheets: sheets.collect(),
            pieces: layout.pieces.iter().map(|piece| self.piece(piece)).collect(),
            settings: layout.effort.settings,
            cuts: layout.effort.cuts,
            tree: self.tree(&layout.tree, layout.step),
            parts: self.in_hand(&layout.cut_plan, layout.cut_step),
            steps: self.steps(&layout.cut_plan, layout.cut_step),
            alternatives: layout.alternatives.iter().map(|other| self.alternative(other)).collect(),
            placing: layout.gain.as_ref().map(|gain| self.placing(layout.pack, gain)),
        }
    }

    fn placing(&self, pack: usize, gain: &Gain) -> PlacingView {
        let (whole_plain, whole, pictures) = gain.whole();
        let print = |print: &PrintGain| PrintPlacingView {
            design: self.letter(pack, print.design),
            side: print.side.name(),
            pictures: print.spots.len(),
            whole_plain: print.before.whole,
            whole: print.after.whole,
            kept: print.after.kept,
            lost: print.after.lost,
        };
        PlacingView {
            pictures,
            whole_plain,
            whole,
            proven: gain.proven,
            prints: gain.prints.iter().map(print).collect(),
        }
    }

    fn piece(&self, piece: &Piece) -> PieceView {
        PieceView {
            mark: piece.mark.clone(),
            recipe: self.recipe(piece.recipe),
            layer: self.layer(piece.recipe, piece.layer),
            card: piece.card.map(|card| card + 1),
            place: self.place(piece.rect),
            turned: piece.turned,
        }
    }

    fn alternative(&self, other: &Alternative) -> AlternativeView {
        AlternativeView {
            waste_square_inches: square_inches(other.waste),
            cards_per_sheet: self.by_recipe(&other.recipe_counts),
            settings: other.effort.settings,
            cuts: other.effort.cuts,
            pieces: other.pieces.iter().map(|piece| self.piece(piece)).collect(),
        }
    }

    fn tree(&self, tree: &Tree, step: Length) -> TreeView {
        let text = |steps: u32| self.text(step * i64::from(steps));
        match tree {
            Tree::Waste => TreeView::Waste,
            Tree::Piece { width, height, turned, .. } => {
                TreeView::Piece { width: text(*width), height: text(*height), turned: *turned }
            }
            Tree::Cut { axis, at, first, second } => TreeView::Cut {
                axis: if *axis == cutting::Axis::X { "x" } else { "y" },
                at: text(*at),
                first: Box::new(self.tree(first, step)),
                second: Box::new(self.tree(second, step)),
            },
        }
    }

    fn in_hand(&self, plan: &CutPlan, step: Length) -> Vec<HandView> {
        plan.parts.iter().map(|part| self.hand(part, step)).collect()
    }

    fn hand(&self, part: &Part, step: Length) -> HandView {
        let text = |steps: u32| self.text(step * i64::from(steps));
        let (fate, piece) = match part.fate {
            Fate::Cut => ("cut", None),
            Fate::Piece { number, .. } => ("piece", Some(number)),
            Fate::Waste => ("waste", None),
            Fate::Edge => ("edge", None),
        };
        let rect = part.rect;
        let place = PlaceView { x: text(rect.x), y: text(rect.y), width: text(rect.width), height: text(rect.height) };
        HandView { part: part.id.0, place, fate, piece }
    }

    fn steps(&self, plan: &CutPlan, step: Length) -> Vec<StepView> {
        let text = |steps: u32| self.text(step * i64::from(steps));
        let show = |todo: &Step| match todo {
            Step::Cut(cut) => StepView::Cut(self.cut(cut, step)),
            Step::Score(score) => StepView::Score {
                at: text(score.fold.at),
                strokes: score.strokes,
                parts: score.parts.iter().map(|part| part.0).collect(),
            },
        };
        plan.steps.iter().map(show).collect()
    }

    fn cut(&self, cut: &CutStep, step: Length) -> CutView {
        CutView {
            stop: cut.stop + 1,
            setting: self.text(step * i64::from(cut.setting)),
            turn: match cut.turn {
                Turn::None => "none",
                Turn::Right => "right",
                Turn::Half => "half",
                Turn::Left => "left",
            },
            cuts: cut.cuts,
            layers: cut.layers,
            strokes: cut.strokes,
            work: cut
                .work
                .iter()
                .map(|work| WorkView {
                    part: work.part.0,
                    off: work.off.iter().map(|part| part.0).collect(),
                    rest: work.rest.0,
                })
                .collect(),
            cautions: cut
                .cautions
                .iter()
                .map(|caution| match caution {
                    Caution::LongCut { .. } => "long-cut",
                    Caution::NarrowStrip { .. } => "narrow-strip",
                    Caution::NarrowRest { .. } => "narrow-rest",
                })
                .collect(),
        }
    }

    fn card(&self, card: &Card) -> CardView {
        CardView {
            number: card.number,
            recipe: self.recipe(card.recipe),
            pack: self.pack(card.pack),
            design: self.letter(card.pack, card.design),
            parts: card.parts.iter().map(|part| self.part(card, part)).collect(),
        }
    }

    fn part(&self, card: &Card, part: &CardPart) -> PartView {
        let kind = match part.kind {
            PartKind::Patterned { layout, piece, design, side: showing, sheet } => {
                let found = self.plan.layouts.get(layout);
                PartKindView::Paper {
                    layout: layout + 1,
                    piece: found.and_then(|l| l.pieces.get(piece)).map(|p| p.mark.clone()).unwrap_or_default(),
                    design: found.map(|l| self.letter(l.pack, design)).unwrap_or_default(),
                    side: showing.name(),
                    sheet,
                }
            }
            PartKind::Cardstock(index) => PartKindView::Cardstock { cardstock: self.cardstock(index) },
            PartKind::Strip(index, greeting) => PartKindView::Strip {
                cardstock: self.cardstock(index),
                greeting: self.project.greetings.get(greeting).map(|g| g.words.clone()).unwrap_or_default(),
            },
            PartKind::Ribbon(index, bow) => PartKindView::Ribbon {
                ribbon: self.project.ribbons.get(index).map(|ribbon| ribbon.name.clone()).unwrap_or_default(),
                bow,
            },
        };
        PartView { layer: self.layer(card.recipe, part.layer), place: self.place(part.rect), kind }
    }

    fn stock(&self, stock: &StockPlan) -> StockView {
        let cuts = stock.cuts.iter().map(|cut| StockCutView {
            recipe: self.recipe(cut.recipe),
            also: cut.also.iter().map(|&recipe| self.recipe(recipe)).collect(),
            piece: match (cut.inside, cut.layer) {
                (true, _) => "inside".to_owned(),
                (false, None) => "base".to_owned(),
                (false, Some(layer)) => self.layer(cut.recipe, layer),
            },
            size: self.size(cut.size),
            count: cut.count,
            scores: cut.scores.iter().map(|score| self.text(*score)).collect(),
            may_turn: cut.may_turn,
        });
        StockView {
            cardstock: self.cardstock(stock.cardstock),
            sheets: stock.sheet_count,
            area_bound: stock.area_bound,
            grade: grade(stock.grade),
            cuts: cuts.collect(),
            patterns: stock.sheets.iter().map(|sheet| self.pattern(stock.cardstock, sheet)).collect(),
        }
    }

    fn pattern(&self, cardstock: usize, sheet: &StockSheetPlan) -> PatternView {
        let size = self.project.cardstocks.get(cardstock).and_then(|stock| stock.sheets.get(sheet.size));
        PatternView {
            sheet: size.map(|size| self.size(size.size)).unwrap_or_default(),
            times: sheet.times,
            pieces: sheet
                .pieces
                .iter()
                .map(|piece| StockPieceView { cut: piece.cut, place: self.place(piece.rect), turned: piece.turned })
                .collect(),
            parts: self.in_hand(&sheet.cut_plan, sheet.step),
            steps: self.steps(&sheet.cut_plan, sheet.step),
        }
    }
}

fn costs(plan: &Plan) -> CostsView {
    let costs = &plan.costs;
    let currency = costs.lines.iter().find(|line| line.used.is_some()).map_or("", |line| line.currency.as_str());
    CostsView {
        lines: costs
            .lines
            .iter()
            .map(|line| CostView {
                name: line.name.clone(),
                used: line.used.map(|used| used.round_dp(4).normalize().to_string()),
                currency: Some(line.currency.clone()).filter(|code| !code.is_empty()),
                date: line.date.clone(),
            })
            .collect(),
        total_used: costs.total_used.map(|total| total.round_dp(4).normalize().to_string()),
        per_card: per_card(costs, &plan.cards).map(|each| to_coin(each, currency).to_string()),
        at_least: costs.at_least,
    }
}

fn finding(finding: &cards::Finding, project: &Project) -> FindingView {
    let worded = wording::finding(finding, project.mark);
    FindingView {
        severity: match finding.severity {
            Severity::Note => "note",
            Severity::Warning => "warning",
            Severity::Serious => "serious",
        },
        code: finding.code,
        about: about(&finding.subject),
        said: worded.said,
        remedy: worded.remedy,
        ways: finding.ways.iter().map(|way| self::way(way, project)).collect(),
    }
}

/// A way out for other programs.
pub(crate) fn way(way: &Way, project: &Project) -> WayView {
    let fact = |fact: &Fact| match fact {
        Fact::Length(length) => wording::exact(*length, project.unit),
        Fact::Count(count) => count.to_string(),
        Fact::Text(text) => text.clone(),
    };
    let change = |change: &WayChange| ChangeView {
        code: change.code,
        facts: change.facts.iter().map(|(name, told)| (*name, fact(told))).collect(),
    };
    WayView {
        said: wording::way(way, project.mark),
        changes: way.changes.iter().map(change).collect(),
        cards_per_sheet: way.cards,
        left_percent: way.left_percent,
        smallest: way.smallest,
    }
}

/// The pieces of a layout for other programs.
pub(crate) fn pieces(pieces: &[Piece], plan: &Plan) -> Vec<PieceView> {
    let told = Told { project: &plan.project, plan };
    pieces.iter().map(|piece| told.piece(piece)).collect()
}

/// What a finding is about, as a path for programs.
fn about(subject: &Subject) -> String {
    match subject {
        Subject::Project => "project".to_owned(),
        Subject::Recipe(name) => format!("recipe {name}"),
        Subject::Design(letter) => format!("design {letter}"),
        Subject::Layout(number) => format!("layout {number}"),
        Subject::Cardstock(name) => format!("cardstock {name}"),
        Subject::Envelope(name) => format!("envelope {name}"),
    }
}

fn grade(grade: LayoutGrade) -> GradeView {
    match grade {
        LayoutGrade::ProvenBest => GradeView::ProvenBest,
        LayoutGrade::BestFound { bound } => GradeView::BestFound { bound },
        LayoutGrade::Stopped => GradeView::Stopped,
    }
}

/// Square ticks as square inches, rounded to a ten-thousandth.
fn square_inches(square_ticks: i128) -> f64 {
    let inch = i128::from(Length::INCH.ticks());
    let parts = square_ticks.saturating_mul(10_000) / (inch * inch);
    f64::from(i32::try_from(parts).unwrap_or(i32::MAX)) / 10_000.0
}
