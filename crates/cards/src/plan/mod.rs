//! What Octavo answers: layouts, cards, cardstock sheets, counts, costs and findings.
//!
//! A plan is a pure function of the project and the budget.

mod answer;

pub use answer::{
    Alternative, Card, CardPart, CostLine, Costs, Counts, Exist, Layout, LayoutGrade, PartKind, Piece, Plan, SheetUse,
    StockCut, StockPiece, StockPlan, StockSheetPlan,
};
