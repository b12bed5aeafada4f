//! The pages of a whole plan, seen from outside.
#![allow(clippy::unwrap_used, clippy::expect_used, reason = "tests")]

#[path = "common/drive.rs"]
mod drive;

use std::sync::Arc;

use cards::model::{Look, Side};
use cards::{Plan, Project};
use cutting::Budget;
use drawing::sheets::{Faces, Paper, handout};
use drawing::{Picture, pdf, prints};

fn faces(project: &Project, per_inch: u32) -> Faces {
    let mut faces = Faces::new();
    for (pack_index, pack) in project.packs.iter().enumerate() {
        for (index, design) in pack.designs.iter().enumerate() {
            for (side, face) in [(Side::Front, &design.front), (Side::Back, &design.back)] {
                let picture = match &face.look {
                    Look::Drawn(name) => {
                        let drawn = prints::draw(name, pack.sheet, per_inch, 7).unwrap();
                        Picture::new(drawn.width_px, drawn.height_px, Arc::from(drawn.rgb)).unwrap()
                    }
                    _ => Picture::plain([230, 220, 200]),
                };
                faces.insert((pack_index, index, side), picture);
            }
        }
    }
    faces
}

fn planned() -> Plan {
    cards::plan::plan(&drive::project(), &mut Budget::nodes(20_000_000))
}

/// Writes the pages where a person can look at them: `OCTAVO_LOOK=/tmp/x cargo test -p drawing -- --ignored look`.
#[test]
#[ignore = "for looking"]
#[allow(clippy::disallowed_methods, reason = "asked for by a person")]
fn look() {
    let to = std::env::var("OCTAVO_LOOK").unwrap();
    let plan = planned();
    let faces = faces(&plan.project, 100);
    for (name, paper) in [("letter", Paper::Letter), ("a4", Paper::A4)] {
        let bytes = pdf::write(&handout(&plan, &faces, paper), &pdf::About::default()).unwrap();
        std::fs::write(format!("{to}/{name}.pdf"), bytes).unwrap();
    }
}
