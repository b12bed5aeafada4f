//! What is written reads back as the same project: every example, and any project the reader can give.
#![allow(clippy::unwrap_used, reason = "tests")]

use cards::Project;
use cards::background::{Arrangement, EdgeRule, SHAPES, Turning};
use cards::model::{
    Anchor, Background, Batch, Cardstock, Choice, Class, Collage, Decided, Design, Edges, Envelope, Face, Fold, Goal,
    Grain, Greeting, Layer, Lies, Look, Material, Meeting, Minutes, Motif, MotifShape, Offer, Pack, Placement, Placing,
    Post, Price, PrintSize, Range, Rate, Recipe, Region, Ribbon, Selling, Side, Spot, Stamp, StockSheet, Supplies,
    Supply, Take, Tape, Third, Trade, Trimmer, Wanted, Way,
};
use cards::pairs::Apart;
use cards::weight::Weight;
use measure::{Length, Mark, Rect, Size, Unit};
use proptest::prelude::*;
use proptest::sample::select;
use store::project_file::{DRAWN, read, read_bytes, write};

#[test]
fn every_example_is_written_and_reads_back() {
    let folder = std::path::Path::new(env!("CARGO_MANIFEST_DIR")).join("../../examples");
    let mut seen = 0;
    for entry in std::fs::read_dir(folder).unwrap() {
        let path = entry.unwrap().path();
        if path.extension().is_some_and(|end| end == "toml") {
            let project = read_bytes(&std::fs::read(&path).unwrap()).unwrap();
            let text = write(&project);
            assert_eq!(read(&text).as_ref(), Ok(&project), "{}:\n{text}", path.display());
            assert_eq!(write(&read(&text).unwrap()), text, "{}", path.display());
            seen += 1;
        }
    }
    assert!(seen >= 7);
}

#[test]
fn what_is_usual_is_left_out() {
    let text = "name = \"First cards\"\n[[pack]]\nname = \"Spring pack\"\nsheet = \"12 x 12\"\n[[pack.design]]\nname = \
                \"Meadow\"\n[[cardstock]]\nname = \"Milk\"\ncolor = \"#f6f0e2\"\nsheet = \"Letter\"\n[[recipe]]\nname = \
                \"Plain\"\nformat = \"3 1/2 x 5\"\n[[recipe.layer]]\nname = \"panel\"\nsize = \"3 x 4 1/2\"\n";
    let written = write(&read(text).unwrap());
    let lines: Vec<&str> = written.lines().filter(|line| !line.is_empty()).collect();
    assert_eq!(
        lines,
        [
            "name = \"First cards\"",
            "unit = \"in\"",
            "[[pack]]",
            "name = \"Spring pack\"",
            "sheet = \"12 x 12\"",
            "[[pack.design]]",
            "letter = \"A\"",
            "name = \"Meadow\"",
            "[[cardstock]]",
            "name = \"Milk\"",
            "color = \"#f6f0e2\"",
            "sheet = \"letter\"",
            "[[recipe]]",
            "name = \"Plain\"",
            "format = \"3 1/2 x 5\"",
            "[[recipe.layer]]",
            "name = \"panel\"",
            "size = \"3 x 4 1/2\"",
        ]
    );
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(400))]

    #[test]
    fn any_project_is_written_and_reads_back(project in project()) {
        let text = write(&project);
        match read(&text) {
            Ok(back) => prop_assert_eq!(back, project, "{}", text),
            Err(problems) => prop_assert!(false, "{:#?}\n{}", problems, text),
        }
    }
}

/// A length at least so many ticks long and at most 300 mm: on a fraction of an inch, on hundredths of a millimetre, or on
/// neither.
fn length(least: i64) -> impl Strategy<Value = Length> {
    let on = move |step: i64| {
        let first = least.div_euclid(step) + i64::from(least.rem_euclid(step) > 0);
        (first..=300 * 720_000 / step).prop_map(move |steps| Length::from_ticks(steps * step))
    };
    prop_oneof![on(142_875), on(4 * 571_500), on(7_200), on(720_000), on(1)]
}

fn piece() -> impl Strategy<Value = Length> {
    length(720_000)
}

fn size() -> impl Strategy<Value = Size> {
    (piece(), piece()).prop_map(|(width, height)| Size::new(width, height))
}

fn sheet() -> impl Strategy<Value = Size> {
    let named: Vec<Size> =
        measure::sheets::sheets().map(|row| row.size).filter(|size| size.height < Length::mm(1_500)).collect();
    prop_oneof![size(), select(named)].prop_filter("over 100 mm", |size| size.width > Length::mm(100))
}

fn text() -> impl Strategy<Value = String> {
    "[ -~é¾×“\\\\\"#]{0,12}[a-z\"\\\\]".prop_map(|text| text.trim().to_owned())
}

fn color() -> impl Strategy<Value = String> {
    "#[0-9a-f]{6}"
}

fn date() -> impl Strategy<Value = String> {
    (1900..2100_u32, 1..=12_u32, 1..=28_u32).prop_map(|(year, month, day)| format!("{year}-{month:02}-{day:02}"))
}

fn price() -> impl Strategy<Value = Option<Price>> {
    let amount = (0..=1_000_000_i64, 0..=4_u32).prop_map(|(units, scale)| rust_decimal::Decimal::new(units, scale));
    let price =
        (amount, select(vec!["", "GBP", "EUR"]), proptest::option::of(select(vec!["2026-01-02", "2025-12-31"])));
    proptest::option::of(price.prop_map(|(amount, currency, date)| Price {
        amount,
        currency: currency.to_owned(),
        date: date.map(str::to_owned),
    }))
}

fn backgrounds() -> impl Strategy<Value = Vec<Background>> {
    let shape = prop_oneof![
        select(SHAPES.to_vec()).prop_map(|name| MotifShape::Drawn(name.to_owned())),
        (1..9_000_i64).prop_map(|high| MotifShape::Corners(vec![(0, 0), (4_000, -1), (2_005, high)])),
        "[a-z]{1,8}\\.(png|jpg)".prop_map(|name| MotifShape::Picture(name, None)),
    ];
    let turning = prop_oneof![Just(Turning::Free), Just(Turning::Upright), (1..180_u16).prop_map(Turning::Within)];
    let size = (100..4_000_i64).prop_map(|hundredths| Length::from_ticks(hundredths * 7_200));
    let stamp = (text(), shape, size, 1..=100_u32, turning, color(), proptest::option::of(color()), 1..=3_u32)
        .prop_map(|(name, shape, size, share, turning, ink, fill, per_inking)| Motif {
            name,
            shape,
            size,
            share,
            turning,
            ink,
            fill,
            per_inking,
        });
    let place = || (-40_000..40_000_i64).prop_map(|hundredths| Length::from_ticks(hundredths * 7_200));
    let stand = move || {
        (place(), place(), 0..360_u16).prop_map(|(x, y, turn)| cards::background::Placement { motif: 0, x, y, turn })
    };
    let arrangements =
        vec![Arrangement::Toss, Arrangement::Grid, Arrangement::Brick, Arrangement::HalfDrop, Arrangement::Diagonal];
    let how = (
        select(arrangements),
        select(vec![EdgeRule::RunOff, EdgeRule::Inside, EdgeRule::Wrap]),
        proptest::option::of(1..=10_000_u32),
        0..=1_000_000_000_u32,
        (0..9_000_i64).prop_map(|hundredths| Length::from_ticks(hundredths * 7_200)),
    );
    let things = (
        proptest::collection::vec(stamp, 1..4),
        proptest::collection::vec(stand(), 0..3),
        proptest::collection::vec(stand(), 0..3),
        proptest::collection::vec((text(), color()), 0..3),
    );
    let one = (text(), sheet(), color(), how, things).prop_map(
        |(name, sheet, paper, (arrangement, edge, count, seed, gap), (mut motifs, locked, stands, markers))| {
            for (number, stamp) in motifs.iter_mut().enumerate() {
                stamp.name = format!("{} {number}", stamp.name);
                // No larger than the sheet.
                let half = Length::from_ticks(sheet.width.min(sheet.height).ticks() / 14_400 * 7_200);
                stamp.size = stamp.size.min(half).max(Length::MM);
            }
            let markers = (0..).zip(markers).map(|(number, (name, color))| {
                let number: u32 = number;
                cards::model::Marker { name: format!("{name} {number}"), color }
            });
            Background {
                name,
                sheet,
                paper,
                seed,
                arrangement,
                gap,
                edge,
                count,
                // A number or a density, never both.
                density: if count.is_none() { Some(1 + seed % 90).filter(|_| seed % 3 == 0) } else { None },
                motifs,
                locked,
                stands,
                markers: markers.collect(),
            }
        },
    );
    proptest::collection::vec(one, 0..3).prop_map(|mut all| {
        for (number, background) in all.iter_mut().enumerate() {
            background.name = format!("{} {number}", background.name);
        }
        all
    })
}

fn face() -> impl Strategy<Value = Face> {
    let look = prop_oneof![
        "[a-z]{1,8}\\.(png|jpg)".prop_map(Look::Picture),
        select(DRAWN.to_vec()).prop_map(|name| Look::Drawn(name.to_owned())),
        color().prop_map(Look::Plain),
        Just(Look::Plain("#ffffff".to_owned())),
    ];
    let lengths = || proptest::collection::vec(length(720_000).prop_map(|length| length.min(Length::mm(30))), 1..4);
    let collage = proptest::option::of((lengths(), lengths()).prop_map(|(columns, rows)| Collage {
        columns,
        rows,
        panels: Vec::new(),
    }));
    let side = || length(720_000).prop_map(|length| length.min(Length::mm(30)));
    let region = (side(), side(), side(), side(), any::<bool>()).prop_map(|(x, y, width, height, avoid)| Region {
        rect: Rect::new(x, y, Size::new(width, height)),
        wanted: if avoid { Wanted::Avoid } else { Wanted::Keep { show_on: None } },
    });
    let regions = proptest::collection::vec(region, 0..3);
    (
        prop_oneof![Just("front".to_owned()), Just("back".to_owned()), text()],
        select(vec![Way::Any, Way::OneWay, Way::TwoWays]),
        proptest::option::of(select(vec![PrintSize::Large, PrintSize::Medium, PrintSize::Small, PrintSize::Solid])),
        look,
        collage,
        regions,
    )
        .prop_map(|(name, way, print_size, look, collage, mut regions)| {
            regions.sort_by_key(|region| region.wanted == Wanted::Avoid);
            Face { name, way, print_size, look, collage, regions }
        })
}

fn design() -> impl Strategy<Value = Design> {
    (text(), 1..200_u32, proptest::option::of(0..200_u32), face(), face(), any::<(bool, bool)>()).prop_map(
        |(name, copies, used, front, back, (book, up))| Design {
            letter: String::new(),
            name,
            copies,
            use_sheets: used.map(|used| used.min(copies)),
            front,
            back,
            lies: if book { Lies::LikeABook } else { Lies::HeadToFoot },
            up: if up { Side::Front } else { Side::Back },
        },
    )
}

fn edges() -> impl Strategy<Value = Edges> {
    let edge = || length(0).prop_map(|length| length.min(Length::mm(20)));
    let some =
        (edge(), edge(), edge(), edge()).prop_map(|(left, top, right, bottom)| Edges { left, top, right, bottom });
    prop_oneof![Just(Edges::default()), some]
}

fn pack() -> impl Strategy<Value = Pack> {
    let designs = proptest::collection::vec(design(), 1..4);
    (text(), sheet(), edges(), proptest::option::of(20..=1000_u32), price(), designs)
        .prop_filter("room", |(_, sheet, edges, ..)| {
            edges.left + edges.right < sheet.width
                && edges.top + edges.bottom < sheet.height
                && sheet.height > Length::mm(100)
        })
        .prop_map(|(name, sheet, unusable, grammage_gsm, price, designs)| Pack {
            name,
            sheet,
            unusable,
            grammage_gsm,
            thickness_um: grammage_gsm,
            price,
            designs,
        })
}

fn cardstock() -> impl Strategy<Value = Cardstock> {
    let grain = select(vec![Grain::AlongWidth, Grain::AlongHeight, Grain::Unknown]);
    let stock = (sheet(), proptest::option::of(0..99_u32), grain, price(), 1..60_u32, edges())
        .prop_filter("room", |(size, .., edges)| {
            edges.left + edges.right < size.width && edges.top + edges.bottom < size.height
        })
        .prop_map(|(size, count, grain, price, pack_of, unusable)| StockSheet {
            size,
            count,
            grain,
            price,
            pack_of,
            unusable,
        });
    let sheets = proptest::collection::vec(stock, 1..3);
    (text(), color(), proptest::option::of(20..=1000_u32), proptest::option::of(1..3_000_u32), sheets).prop_map(
        |(name, color, grammage_gsm, thickness_um, sheets)| Cardstock {
            name,
            color,
            grammage_gsm,
            thickness_um,
            sheets,
        },
    )
}

/// The middle of a range on a mark if one lies within, as the reader chooses it.
fn range() -> impl Strategy<Value = Range> {
    prop_oneof![
        piece().prop_map(Range::exactly),
        (piece(), piece()).prop_map(|(a, b)| Range { least: a.min(b), most: a.max(b) }),
    ]
}

/// A layer that refers to nothing but the first cardstock, greeting and ribbon; `refine` gives it its neighbours.
/// Where words come on a strip.
fn spot() -> impl Strategy<Value = Spot> {
    let third = || select(vec![Third::First, Third::Middle, Third::Last]);
    let edge = select(vec![Anchor::TopLeft, Anchor::Top, Anchor::Right, Anchor::BottomLeft, Anchor::BottomRight]);
    prop_oneof![
        2 => Just(Spot::default()),
        1 => (third(), third()).prop_map(|(across, down)| Spot::On { across, down }),
        1 => (edge, length(0)).prop_map(|(anchor, border)| Spot::Border { anchor, border }),
    ]
}

fn layer() -> impl Strategy<Value = (Layer, u64)> {
    let patterned = (range(), range(), 0..=4_i64, any::<[bool; 3]>(), proptest::option::of(text())).prop_map(
        |(width, height, at, [free_size, may_turn, from_partner], die)| {
            let within = |range: Range| {
                Length::from_ticks(range.least.ticks() + (range.most.ticks() - range.least.ticks()) / 4 * at)
            };
            let prefer = Size::new(within(width), within(height));
            Material::Patterned { width, height, prefer, free_size, may_turn, from_partner, die }
        },
    );
    let border = prop_oneof![Just(Length::mm(3)), Just(Unit::Inch.thousandths(125)), length(1)];
    let material = prop_oneof![
        3 => patterned,
        2 => border.prop_map(|border| Material::Mat { follows: 0, border, cardstock: vec![(None, 0)] }),
        1 => size().prop_map(|size| Material::Plain { size, cardstock: 0 }),
        1 => (size(), spot(), 0..=100_u32).prop_map(|(size, spot, foam_squares)| {
            Material::Strip { size, cardstock: 0, greeting: 0, spot, foam_squares }
        }),
        1 => (piece(), any::<bool>()).prop_map(|(length, bow)| Material::Ribbon { ribbon: 0, length, bow }),
    ];
    let anchor = select(vec![
        Anchor::TopLeft,
        Anchor::Top,
        Anchor::TopRight,
        Anchor::Left,
        Anchor::Middle,
        Anchor::Right,
        Anchor::BottomLeft,
        Anchor::Bottom,
        Anchor::BottomRight,
    ]);
    let shift = || prop_oneof![Just(Length::ZERO), length(1), length(1).prop_map(|length| -length)];
    (text(), material, anchor, shift(), shift(), any::<bool>(), any::<u64>()).prop_map(
        |(name, material, anchor, right, down, overlap, seed)| {
            let placement = Placement { on: None, anchor, right, down, overlap };
            (Layer { name, material, placement, stamped: None }, seed)
        },
    )
}

type Drawn = (Recipe, Vec<u64>, u64);

fn recipe() -> impl Strategy<Value = Drawn> {
    let fold = select(vec![Fold::Side, Fold::Top, Fold::Gate, Fold::Zed, Fold::Flat]);
    let layers = proptest::collection::vec(layer(), 1..6);
    let most = proptest::option::of(1..40_u32);
    (text(), size(), fold, proptest::option::of(size()), layers, 0..40_u32, most, any::<u64>()).prop_map(
        |(name, finished, fold, inside, layers, least, most, seed)| {
            let (layers, seeds) = layers.into_iter().unzip();
            let least = least.min(most.unwrap_or(least));
            let inside = inside.map(|size| (size, 0));
            (Recipe { name, finished, fold, base: 0, inside, layers, designs: Vec::new(), least, most }, seeds, seed)
        },
    )
}

fn supplies() -> impl Strategy<Value = Supplies> {
    let supply = |name: &'static str| {
        let name = prop_oneof![text(), Just(name.to_owned())];
        let supply = (name, 1..999_u32, price()).prop_map(|(name, lasts, price)| Supply { name, lasts, price });
        proptest::option::of(supply)
    };
    let roll = proptest::option::of(prop_oneof![piece(), Just(Length::mm(12_000))]);
    let tape = (text(), roll, price(), length(0)).prop_map(|(name, roll, price, two_lines_from)| Tape {
        name,
        roll,
        price,
        two_lines_from,
    });
    let packed = (supply("Foam squares"), supply("Envelopes"), supply("Ink pad"), supply("Stamps"));
    (proptest::option::of(tape), packed).prop_map(|(tape, (foam, envelopes, ink_pad, stamps))| Supplies {
        tape,
        foam,
        envelopes,
        ink_pad,
        stamps,
    })
}

fn post() -> impl Strategy<Value = Post> {
    let weight = || {
        let ounces = (1..9_999_u32).prop_map(|n| Weight::parse(&format!("{}.{:04} oz", n / 1_000, n % 1_000)).unwrap());
        prop_oneof![(0..9_999_u64).prop_map(Weight::milligrams), ounces]
    };
    let paid = price().prop_filter_map("a price", |price| price);
    let rate = (text(), text(), proptest::option::of(weight()), paid)
        .prop_map(|(operator, class, up_to, price)| Rate { operator, class, up_to, price });
    let rates = proptest::collection::vec(rate, 0..3);
    let um = || proptest::option::of(1..9_000_u32);
    let gsm = proptest::option::of(20..1_000_u32);
    (gsm, any::<[bool; 2]>(), proptest::option::of(weight()), um(), um(), rates).prop_map(
        |(envelope_gsm, [addressed_upright, stiff], extras, foam_um, bow_um, rates)| Post {
            envelope_gsm,
            addressed_upright,
            stiff,
            extras,
            foam_um,
            bow_um,
            rates,
        },
    )
}

fn class() -> impl Strategy<Value = Class> {
    let counts = (1..=500_u32, 0..=50_u32, proptest::option::of(0..=500_u32), 0..=500_u32, 0..=9_u32, 1..=600_u32);
    let money = (price(), price(), price(), price(), (0..9_000_i64).prop_map(|n| rust_decimal::Decimal::new(n, 2)));
    (counts, money, proptest::option::of(date()), proptest::option::of(1..=500_u32)).prop_map(
        |(counts, (room, hour, shared, price, hours), date, break_even)| {
            let (seats, demonstrators, spare_kits, left_handed, cut_kits, minutes_a_card) = counts;
            Class {
                batch: None,
                date,
                starts: cards::days::Time::parse(&format!("{}:{:02}", seats % 24, seats % 60))
                    .filter(|_| seats % 3 > 0),
                welcome_minutes: left_handed % 40,
                pause_minutes: seats % 20,
                end_minutes: seats % 31,
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
            }
        },
    )
}

/// Offers get the names they are of from `refine`.
fn trade() -> impl Strategy<Value = Trade> {
    let percent = || (0..=10_000_i64).prop_map(|hundredths| rust_decimal::Decimal::new(hundredths, 2));
    let selling = (price(), percent(), percent(), percent(), price())
        .prop_map(|(price, fees, tax, margin, hour)| Selling { price, fees, tax, margin, hour });
    let minutes = proptest::collection::vec((0..10_usize, 0..9_000_i64), 0..4).prop_map(|told| {
        let mut minutes = Minutes::default();
        for (index, hundredths) in told {
            let key = minutes.by_key()[index].0;
            *minutes.of_key(key).unwrap() = rust_decimal::Decimal::new(hundredths, 2);
        }
        minutes
    });
    let offer = (1..99_u32, price()).prop_map(|(pack_of, price)| Offer {
        of: String::new(),
        pack_of: Some(pack_of),
        length: None,
        price,
    });
    let offers = proptest::collection::vec(offer, 0..3);
    (post().boxed(), offers, selling.boxed(), minutes, proptest::option::of(class().boxed()))
        .prop_map(|(post, offers, selling, minutes, class)| Trade { post, offers, selling, minutes, class })
}

/// A project as the reader gives it: names are unique, what refers to something refers to something that is there.
fn project() -> impl Strategy<Value = Project> {
    let ribbon =
        (text(), color(), piece(), proptest::option::of(prop_oneof![piece(), Just(Length::INCH * 360)]), price())
            .prop_map(|(name, color, width, spool, price)| Ribbon {
                name,
                color,
                width,
                thickness_um: Some(300).filter(|_| spool.is_some()),
                spool,
                price,
            });
    let around = proptest::option::of((length(0), length(0), length(0), length(0)));
    let greeting = (text(), size(), color(), around).prop_map(|(words, inked, ink, around)| {
        let stamp = around.map(|(left, top, right, bottom)| {
            let size = Size::new(left + inked.width + right, top + inked.height + bottom);
            Stamp { size, left, top }
        });
        // Every third with its outline, every second of those centred by its weight.
        let third = ink.ends_with(|end| "0369c".contains(end));
        let mark = third.then(|| MotifShape::Corners(vec![(0, 0), (9_500, 0), (9_500, 2_000), (250, 2_000)]));
        let balanced = third && ink.ends_with(|end| "06c".contains(end));
        Greeting { words, inked, ink, stamp, mark, balanced }
    });
    let trimmer = (piece(), length(0), 1..=100_u32, 1..=100_u32).prop_map(|(longest_cut, smallest_strip, a, b)| {
        Trimmer { longest_cut, smallest_strip, stack_paper: a, stack_cardstock: b }
    });
    let envelope = prop_oneof![
        Just(None),
        Just(Some(Envelope { name: "C6".to_owned(), size: measure::envelope("C6").unwrap().size })),
        (text(), size()).prop_map(|(name, size)| Some(Envelope { name, size })),
    ];
    let goal = (proptest::option::of(1..99_u32), proptest::option::of(1..999_u32), 1..9_u32, 0..9_u32, 1..=50_u32);
    let head =
        (text(), proptest::option::of(text()), proptest::option::of(date()), select(Mark::ALL.to_vec()), any::<bool>());
    let things = (
        proptest::collection::vec(pack().boxed(), 1..4),
        proptest::collection::vec(cardstock().boxed(), 1..4),
        proptest::collection::vec(ribbon, 1..3),
        proptest::collection::vec(greeting, 1..3),
        supplies().boxed(),
        proptest::collection::vec(recipe().boxed(), 1..4),
        trade().boxed(),
        backgrounds().boxed(),
    );
    (head, prop_oneof![trimmer], envelope, goal, things, any::<u64>()).prop_map(
        |((name, maker, date, mark, inches), trimmer, envelope, wanted, things, seed)| {
            let (packs, cardstocks, ribbons, greetings, supplies, recipes, trade, backgrounds) = things;
            let (cards_per_sheet, cards, set_of, overs, alternatives) = wanted;
            let goal = Goal { cards_per_sheet, cards, set_of, overs, alternatives, ..Goal::default() };
            let unit = if inches { Unit::Inch } else { Unit::Millimetre };
            let mut project = Project {
                name,
                maker,
                date,
                unit,
                mark,
                trimmer,
                placing: [Placing::Alike, Placing::Each, Placing::Plain][usize::try_from(seed % 3).unwrap()],
                packs,
                backgrounds,
                cardstocks,
                ribbons,
                greetings,
                supplies,
                envelope,
                recipes: Vec::new(),
                goal,
                meeting: Meeting::default(),
                batches: Vec::new(),
                choices: Vec::new(),
                trade,
            };
            settle(&mut project, recipes, seed);
            // The first face may show the first background.
            if seed % 3 == 0 && !project.backgrounds.is_empty() {
                project.packs[0].designs[0].front.look = Look::Stamped(0);
            }
            project
        },
    )
}

/// Gives things names of their own, layers their neighbours and the goal its wishes.
fn settle(project: &mut Project, recipes: Vec<Drawn>, seed: u64) {
    for (index, pack) in project.packs.iter_mut().enumerate() {
        pack.name.push_str(&index.to_string());
        for (at, design) in pack.designs.iter_mut().enumerate() {
            design.letter = format!("{}{at}", ['A', 'É', 'b'][index]);
            design.name = if seed % 5 == at as u64 { design.letter.clone() } else { format!("{}{at}", design.name) };
        }
    }
    // Sometimes the last pack is what a loose sheet reads as.
    if let Some(pack) = project.packs.last_mut().filter(|_| seed.is_multiple_of(3)) {
        pack.designs.truncate(1);
        pack.designs[0].name.clone_from(&pack.name);
    }
    for (index, stock) in project.cardstocks.iter_mut().enumerate() {
        stock.name.push_str(&index.to_string());
    }
    let first = project.cardstocks[0].name.clone();
    for offer in &mut project.trade.offers {
        offer.of.clone_from(&first);
    }
    for (index, ribbon) in project.ribbons.iter_mut().enumerate() {
        ribbon.name.push_str(&index.to_string());
    }
    for (index, greeting) in project.greetings.iter_mut().enumerate() {
        greeting.words.push_str(&index.to_string());
    }
    let letters: Vec<String> =
        project.packs.iter().flat_map(|pack| &pack.designs).map(|design| design.letter.clone()).collect();
    let pair = |at: u64| {
        let letter = |at: u64| letters[usize::try_from(at % letters.len() as u64).unwrap()].clone();
        (letter(at), letter(at / 3 + 1))
    };
    let apart = [Apart::Designs, Apart::Faces, Apart::Anything][usize::try_from(seed % 3).unwrap()];
    let pairs = |from: u64| (from..from + seed % 3).map(pair).collect();
    project.meeting =
        Meeting { apart, one_large: seed.is_multiple_of(5), only: pairs(seed / 5), never: pairs(seed / 7) };
    for (number, (mut recipe, seeds, seed)) in recipes.into_iter().enumerate() {
        recipe.name.push_str(&number.to_string());
        if seed.is_multiple_of(4) {
            recipe.designs = letters.iter().skip(usize::from(seed.is_multiple_of(8))).cloned().collect();
        }
        let pick = |seed: u64, count: usize| usize::try_from(seed % count as u64).unwrap();
        recipe.base = pick(seed, project.cardstocks.len());
        if let Some((_, cardstock)) = &mut recipe.inside {
            *cardstock = pick(seed / 7, project.cardstocks.len());
        }
        let count = recipe.layers.len();
        let laced = |layer: &Layer| matches!(layer.material, Material::Ribbon { .. });
        for (index, seed) in seeds.into_iter().enumerate() {
            // A mat follows a later layer that is no ribbon; one that finds none becomes plain.
            let later: Vec<usize> = (index + 1..count).filter(|at| !laced(&recipe.layers[*at])).collect();
            let layer = &mut recipe.layers[index];
            layer.name.push_str(&index.to_string());
            match &mut layer.material {
                Material::Mat { follows, border, cardstock } => {
                    if later.is_empty() {
                        layer.material =
                            Material::Plain { size: Size::new(*border + Length::MM, Length::INCH), cardstock: 0 };
                    } else {
                        *follows = later[pick(seed, later.len())];
                        let stock = |at: usize| pick(seed / (at as u64 + 1), project.cardstocks.len());
                        *cardstock = match seed % 2 {
                            0 => vec![(None, stock(0))],
                            _ => letters
                                .iter()
                                .enumerate()
                                .map(|(at, letter)| (Some(letter.clone()), stock(at)))
                                .collect(),
                        };
                        cardstock.sort();
                    }
                }
                Material::Plain { cardstock, .. } => *cardstock = pick(seed, project.cardstocks.len()),
                Material::Strip { cardstock, greeting, .. } => {
                    *cardstock = pick(seed, project.cardstocks.len());
                    *greeting = pick(seed / 3, project.greetings.len());
                }
                Material::Ribbon { ribbon, .. } => *ribbon = pick(seed, project.ribbons.len()),
                Material::Patterned { .. } => {}
            }
            let kept = matches!(layer.material, Material::Strip { .. } | Material::Ribbon { .. });
            if !kept && seed.is_multiple_of(4) {
                let border = Spot::Border { anchor: Anchor::BottomRight, border: Length::mm(2) };
                let spot = if seed.is_multiple_of(8) { Spot::default() } else { border };
                layer.stamped = Some((pick(seed / 7, project.greetings.len()), spot));
            }
            let follows = |layer: &Layer| matches!(layer.material, Material::Mat { follows, .. } if follows == index);
            let mat = recipe.layers[..index].iter().rposition(follows);
            recipe.layers[index].placement.on =
                if seed.is_multiple_of(3) && index > 0 { Some(pick(seed / 5, index)) } else { mat };
        }
        project.recipes.push(recipe);
    }
    for pair in letters.chunks_exact(2).take(usize::try_from(seed % 3).unwrap()) {
        project.goal.partners.push((pair[0].clone(), pair[1].clone()));
    }
    for recipe in &project.recipes {
        for layer in &recipe.layers {
            if let Material::Patterned { prefer, width, .. } = &layer.material {
                let named = (recipe.name.clone(), layer.name.clone());
                if seed.is_multiple_of(4) {
                    project.goal.spares.push((
                        named.0.clone(),
                        named.1.clone(),
                        1 + u32::try_from(prefer.width.ticks() % 9).unwrap(),
                    ));
                }
                if seed.is_multiple_of(7) {
                    project.goal.pins.push((named.0, named.1, Length::ZERO, width.least, *prefer));
                }
            }
        }
    }
    for (number, (_, layer, ..)) in (1..).zip(&project.goal.pins) {
        for decided in [Decided::Swap(number + 3), Decided::Shows(Side::Back), Decided::Shows(Side::Front)] {
            project.choices.push(Choice { card: number, layer: layer.clone(), decided });
        }
    }
    let plain = |layer: &&Layer| matches!(layer.material, Material::Mat { .. } | Material::Plain { .. });
    if let Some(layer) = project.recipes.iter().flat_map(|recipe| &recipe.layers).find(plain) {
        let decided = Decided::CutFrom(project.cardstocks.len() - 1);
        project.choices.push(Choice { card: 4, layer: layer.name.clone(), decided });
    }
    if seed.is_multiple_of(2) {
        batches(project, seed);
    }
}

/// Turns the goal into two batches, some of whose sheets lie the other way up.
fn batches(project: &mut Project, seed: u64) {
    let goal = std::mem::replace(&mut project.goal, Goal { set_of: 1, alternatives: 3, ..Goal::default() });
    for (number, kits) in [(0_u32, None), (1, Some(4))] {
        let mut takes = Vec::new();
        for (pack, paper) in project.packs.iter().enumerate() {
            for (design, printed) in paper.designs.iter().enumerate() {
                let side = if (seed / 3 + u64::from(number)).is_multiple_of(2) { Side::Back } else { printed.up };
                takes.push(Take { pack, design, sheets: number + 1, side });
            }
        }
        let recipes = if number == 0 { Vec::new() } else { vec![0] };
        let name = format!("batch {number}");
        project.batches.push(Batch { name, takes, recipes, goal: goal.clone(), kits });
    }
}
