//! Layouts placed on prints: the same pieces, settings and cards as the plain layout, and pictures kept whole.
#![allow(clippy::unwrap_used, clippy::cast_possible_truncation, dead_code, reason = "tests share helpers")]

#[path = "common/drive.rs"]
mod drive;

use std::collections::BTreeMap;

use cards::model::{Placing, Project, Region, Side, Wanted};
use cards::plan::{Plan, PrintMap, PrintMaps, Spot, plan, plan_on};
use cutting::steps::effort;
use cutting::tree::pieces;
use cutting::{Axis, Budget, Tree};
use measure::{Length, Rect, parse_length, parse_size};

const NODES: u64 = 40_000_000;

/// Pictures of nearly two inches, three across and three down on a sheet in marks of 1/8 in, further by a mark for each design.
fn maps(project: &Project) -> PrintMaps {
    maps_moved(project, 1)
}

/// The same, further by so many marks.
fn maps_moved(project: &Project, by: u32) -> PrintMaps {
    let mut maps = PrintMaps::new();
    for (pack, paper) in project.packs.iter().enumerate() {
        for (design, _) in paper.designs.iter().enumerate() {
            for side in [Side::Front, Side::Back] {
                let spot = |at: u32| {
                    let (left, top) = (at % 3 * 30 + 3 + by * design as u32, at / 3 * 31 + 20 - 2 * by * design as u32);
                    Spot { left, top, right: left + 14, bottom: (top + 10).min(96), weight: 800 }
                };
                let weights = vec![100; 96 * 96];
                maps.insert(
                    (pack, design, side),
                    PrintMap { columns: 96, rows: 96, weights, spots: (0..9).map(spot).collect() },
                );
            }
        }
    }
    maps
}

fn made(project: &Project, maps: &PrintMaps) -> Plan {
    plan_on(project, maps, &mut Budget::nodes(NODES))
}

/// What a placed plan shares with the plain one.
fn the_same_work(placed: &Plan, plain: &Plan) {
    assert_eq!(placed.counts, plain.counts);
    assert_eq!(placed.costs, plain.costs);
    assert_eq!(placed.cards.len(), plain.cards.len());
    let sizes = |plan: &Plan| {
        let mut count: BTreeMap<(usize, usize, i64, i64), u32> = BTreeMap::new();
        for layout in &plan.layouts {
            let sheets: u32 = layout.sheets.iter().map(|used| used.sheets).sum();
            for piece in &layout.pieces {
                let size = piece.rect.size;
                *count.entry((piece.recipe, piece.layer, size.width.ticks(), size.height.ticks())).or_default() +=
                    sheets;
            }
        }
        count
    };
    assert_eq!(sizes(placed), sizes(plain));
    for layout in &placed.layouts {
        let Some(gain) = &layout.gain else { continue };
        let steps = |length: measure::Length| u32::try_from(length.ticks() / layout.step.ticks()).unwrap();
        let (width, height) = (steps(layout.usable.size.width), steps(layout.usable.size.height));
        assert_eq!(effort(&layout.tree, width, height), effort(&gain.plain_tree, width, height));
        assert!(gain.score >= gain.plain && gain.proven);
    }
}

#[test]
fn prints_are_cut_at_better_places_with_the_same_work() {
    let project = drive::project();
    let plain = plan(&project, &mut Budget::nodes(NODES));
    assert!(plain.layouts.iter().all(|layout| layout.gain.is_none()));
    // The pictures of every design in the same places: what is good for one is good for all.
    let placed = made(&project, &maps_moved(&project, 0));
    the_same_work(&placed, &plain);
    let gain = placed.layouts[0].gain.as_ref().unwrap();
    let (before, after, all) = gain.whole();
    assert!(gain.moved && before + all / 10 <= after && after <= all, "{before} {after} {all}");
    // In places of their own hardly more can be kept by one layout: then it stays tidy, and what it keeps is told.
    let stays = made(&project, &maps(&project));
    let gain = stays.layouts[0].gain.as_ref().unwrap();
    let (before, after, all) = gain.whole();
    assert!(!gain.moved && gain.score > gain.plain && before == after && after < all);
    assert_eq!(stays.layouts[0].tree, plain.layouts[0].tree);
    // One layout for all designs.
    assert_eq!(placed.layouts.len(), plain.layouts.len());
    assert_eq!(stays, made(&project, &maps(&project)));
}

#[test]
fn each_design_by_itself_is_no_worse() {
    let alike = drive::project();
    let each = Project { placing: Placing::Each, ..alike.clone() };
    let (one, other) = (made(&alike, &maps(&alike)), made(&each, &maps(&each)));
    the_same_work(&other, &one);
    let sum =
        |plan: &Plan| plan.layouts.iter().filter_map(|layout| Some(layout.gain.as_ref()?.score.worth)).sum::<i64>();
    assert!(sum(&other) >= sum(&one));
    assert!(other.layouts.len() > one.layouts.len());
    let numbers: Vec<u32> = other.cards.iter().map(|card| card.number).collect();
    assert_eq!(numbers, (1..=other.counts.cards).collect::<Vec<u32>>());
}

#[test]
fn plain_stays_plain_and_pins_stay() {
    let project = Project { placing: Placing::Plain, ..drive::project() };
    assert_eq!(made(&project, &maps(&project)).layouts, plan(&project, &mut Budget::nodes(NODES)).layouts);
    let mut project = drive::project();
    let first = plan(&project, &mut Budget::nodes(NODES)).layouts[0].pieces[0].clone();
    let recipe = &project.recipes[first.recipe];
    let pin =
        (recipe.name.clone(), recipe.layers[first.layer].name.clone(), first.rect.x, first.rect.y, first.rect.size);
    project.goal.pins.push(pin);
    assert_eq!(made(&project, &maps(&project)).layouts, plan(&project, &mut Budget::nodes(NODES)).layouts);
}

#[test]
fn a_region_is_kept_on_the_piece_that_was_named() {
    let length = |text: &str| parse_length(text, Some(measure::Unit::Inch)).unwrap();
    let mut project = drive::project();
    let plain = plan(&project, &mut Budget::nodes(NODES));
    let layout = &plain.layouts[0];
    // On a band of the plain layout, where a panel would show it below its own band.
    let first =
        layout.pieces.iter().filter(|piece| piece.rect.x == layout.usable.x).min_by_key(|piece| piece.rect.y).unwrap();
    let size = parse_size("1 x 1/2", Some(measure::Unit::Inch)).unwrap();
    let rect = Rect::new(first.rect.x + length("1/2"), length("5 1/2"), size);
    let used = layout.sheets[0].clone();
    let named =
        (project.recipes[first.recipe].name.clone(), project.recipes[first.recipe].layers[first.layer].name.clone());
    let design = &mut project.packs[layout.pack].designs[used.design];
    let face = if used.side == Side::Front { &mut design.front } else { &mut design.back };
    face.regions.push(Region { rect, wanted: Wanted::Keep { show_on: Some(named) } });
    // No map is needed for what the maker marked herself.
    let placed = plan(&project, &mut Budget::nodes(NODES));
    the_same_work(&placed, &plain);
    let layout = &placed.layouts[0];
    let holds = layout.pieces.iter().find(|piece| piece.rect.contains(rect)).unwrap();
    assert_eq!((holds.recipe, holds.layer), (first.recipe, first.layer));
    assert!(!placed.findings.iter().any(|finding| finding.code == "region-cut"));
    // A region larger than any piece cannot be kept, and that is said.
    let design = &mut project.packs[layout.pack].designs[used.design];
    let face = if used.side == Side::Front { &mut design.front } else { &mut design.back };
    face.regions[0].rect.size = parse_size("9 x 9", Some(measure::Unit::Inch)).unwrap();
    face.regions[0].rect.x = length("1");
    face.regions[0].rect.y = length("1");
    let told = plan(&project, &mut Budget::nodes(NODES));
    assert!(told.findings.iter().any(|finding| finding.code == "region-cut"));
}

#[test]
fn a_map_that_is_no_grid_says_nothing() {
    let project = drive::project();
    let mut maps = maps(&project);
    for map in maps.values_mut() {
        map.columns = 95;
    }
    assert_eq!(made(&project, &maps), plan(&project, &mut Budget::nodes(NODES)));
}

/// What any order of a tree's branches has in common: its rows, the parts of each sorted.
fn unordered(tree: &Tree, width: u32, height: u32) -> String {
    fn parts(tree: &Tree, along: Axis, (width, height): (u32, u32), out: &mut Vec<String>) {
        match tree {
            Tree::Cut { axis, at, first, second } if *axis == along => {
                let (one, other) = match along {
                    Axis::X => ((*at, height), (width - at, height)),
                    Axis::Y => ((width, *at), (width, height - at)),
                };
                parts(first, along, one, out);
                parts(second, along, other, out);
            }
            _ => out.push(unordered(tree, width, height)),
        }
    }
    match tree {
        Tree::Cut { axis, .. } => {
            let mut all = Vec::new();
            parts(tree, *axis, (width, height), &mut all);
            all.sort();
            format!("{axis:?}({})", all.join(" "))
        }
        Tree::Piece { kind, turned, .. } => format!("{kind} {turned} {width}x{height}"),
        Tree::Waste => format!("rest {width}x{height}"),
    }
}

/// Prints take other cuts for the same pieces where those keep more pictures than any order of the first.
#[test]
fn layouts_as_good_otherwise_are_chosen_among() {
    let project = drive::project();
    let plain = plan(&project, &mut Budget::nodes(NODES));
    let layout = &plain.layouts[0];
    let steps = |length: Length| u32::try_from(length.ticks() / layout.step.ticks()).unwrap();
    let (width, height) = (steps(layout.usable.size.width), steps(layout.usable.size.height));
    let other = layout.equals.first().unwrap();
    assert_ne!(unordered(other, width, height), unordered(&layout.tree, width, height));
    // A long picture at the upper edge of every piece of the other cuts, on both sides of every design.
    let cell = |at: u32, whole: u32| at * 96 / whole;
    let spot = |piece: &cutting::tree::Placed| {
        let (left, top) = (cell(piece.x, width) + 2, cell(piece.y, height) + 2);
        Spot { left, top, right: cell(piece.x + piece.width, width) - 2, bottom: top + 3, weight: 800 }
    };
    let spots: Vec<Spot> = pieces(other, width, height).unwrap().iter().map(spot).collect();
    let mut maps = maps(&project);
    maps.values_mut().for_each(|map| map.spots.clone_from(&spots));
    let placed = made(&project, &maps);
    the_same_work(&placed, &plain);
    let gain = placed.layouts[0].gain.as_ref().unwrap();
    let (before, after, all) = gain.whole();
    assert!(gain.moved && before < after && after <= all, "{before} {after} {all}");
    assert_eq!(unordered(&placed.layouts[0].tree, width, height), unordered(other, width, height));
}
