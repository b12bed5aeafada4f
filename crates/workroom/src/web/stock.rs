//! Cardstock: sheets by colour with their cuts, and how sure it is that no fewer would do.

use cards::plan::LayoutGrade;
use cards::{Severity, Subject};
use maud::{Markup, html};

use super::answer::Desk;
use super::{fields, matched, say, shell};

/// The page.
pub(super) fn page(desk: &Desk<'_>) -> Markup {
    let plan = &desk.made.plan;
    let project = desk.made.project();
    let length = |length| fields::length(desk, length);
    let inside = html! {
        div.lead {
            h1 { (say("stock-title", &[])) }
            p.facts { (say("stock-lead", &[("count", plan.stocks.iter().map(|stock| stock.sheet_count).fold(0_u32, u32::saturating_add).into())])) }
        }
        (fields::findings(desk, |finding| matches!(finding.subject, Subject::Cardstock(_)) && finding.severity >= Severity::Note))
        @for (index, stock) in plan.stocks.iter().enumerate() {
            @if let Some(cardstock) = project.cardstocks.get(stock.cardstock) {
                section.stock {
                    h2 {
                        svg.swatch viewBox="0 0 20 20" width="28" height="28" aria-hidden="true" {
                            rect x="1" y="1" width="18" height="18" fill=(cardstock.color) stroke="currentColor" stroke-width="1" {}
                        }
                        (cardstock.name) " " small { (say("count-sheets", &[("count", stock.sheet_count.into())])) }
                    }
                    p {
                        @match stock.grade {
                            LayoutGrade::ProvenBest => { (say("stock-best", &[])) }
                            LayoutGrade::BestFound { .. } => { (say("stock-found", &[("bound", stock.area_bound.into())])) }
                            LayoutGrade::Stopped => { (say("stock-stopped", &[])) }
                        }
                    }
                    ul.wanted {
                        @for cut in &stock.cuts {
                            li {
                                @let name = match cut.layer {
                                    Some(layer) => project.layer(cut.recipe, layer).map(|layer| layer.name.clone()).unwrap_or_default(),
                                    None if cut.inside => say("stock-inside", &[]),
                                    None => say("cards-base", &[]),
                                };
                                (say("stock-cut", &[("count", cut.count.into()), ("name", name.into()), ("width", length(cut.size.width).into()), ("height", length(cut.size.height).into())]))
                            }
                        }
                    }
                    div.sheets {
                        @for (number, sheet) in stock.sheets.iter().enumerate() {
                            figure {
                                img src=(format!("/w/{}/{}/stock-{index}-{number}.svg", desk.kept.id.0, desk.kept.now.number))
                                    alt=(say("stock-sheet-alt", &[("name", (&cardstock.name).into()), ("count", sheet.pieces.len().into())])) loading="lazy" width="360" height="420";
                                figcaption { (say("stock-times", &[("times", sheet.times.into()), ("count", sheet.pieces.len().into())])) }
                            }
                        }
                    }
                }
            }
        }
        (matched::section(desk))
        section { ul.findings { li.note { (say("page-caution-colors", &[])) } li.note { (say("page-caution-sample", &[])) } } }
    };
    shell::of_project(desk, "cardstock", &inside)
}
