//! A scene as SVG.
//!
//! Words stay words: `<text>` in "Libertinus Serif" (a serif where that is absent), each line at its
//! place. Presentation attributes only, no `style`, so that a strict page policy lets it through.
//! Pictures travel inside as JPEG, each once. One user unit is 1/72 in.
//!
//! Roles become the roles of WAI-ARIA 1.2, so that a browser reads a drawing out as it reads its page: a scene that
//! is one figure is an image with a name and a description, any other is a document of headings, lists and tables.

use std::fmt::Write as _;

use measure::{Length, Rect};

use crate::scene::{Color, Mark, Outline, Pen, Point, Role, Scene, Stretch};
use crate::text::{Face, outlined};

/// The scene as a whole SVG file, at true size.
pub fn write(scene: &Scene) -> String {
    let mut writer = Writer::default();
    writer.marks(&scene.marks);
    let (width, height) = (scene.size.width.to_points(), scene.size.height.to_points());
    let (w, h) = (decimal(width), decimal(height));
    let title = escape(&scene.title);
    let (role, described) = match scene.marks.as_slice() {
        [Mark::Group { role: Some(Role::Figure(alt)), .. }] => {
            let other = *alt != scene.title;
            ("img", if other { format!("<desc>{}</desc>", escape(alt)) } else { String::new() })
        }
        _ => ("graphics-document document", String::new()),
    };
    format!(
        "<svg xmlns=\"http://www.w3.org/2000/svg\" xmlns:xlink=\"http://www.w3.org/1999/xlink\" role=\"{role}\" \
         width=\"{w}pt\" height=\"{h}pt\" viewBox=\"0 0 {w} {h}\" font-family=\"'Libertinus Serif', serif\">\
         <title>{title}</title>{described}<defs>{}</defs>{}</svg>\n",
        writer.defs, writer.body
    )
}

/// As [`write()`], every letter an outline: for a picture in a page, which gets no fonts of its page.
pub fn write_outlined(scene: &Scene) -> String {
    write(&Scene { marks: drawn(&scene.marks), ..scene.clone() })
}

fn drawn(marks: &[Mark]) -> Vec<Mark> {
    let one = |mark: &Mark| match mark {
        Mark::Text { line, at, color } => outlined(line, *at, *color),
        Mark::Group { role, clip, turn, marks } => {
            Mark::Group { role: role.clone(), clip: *clip, turn: *turn, marks: drawn(marks) }
        }
        other => other.clone(),
    };
    marks.iter().map(one).collect()
}

#[derive(Default)]
struct Writer {
    defs: String,
    body: String,
    clips: u32,
    /// Pictures already in `defs`, by address.
    pictures: Vec<usize>,
}

impl Writer {
    fn marks(&mut self, marks: &[Mark]) {
        for mark in marks {
            self.mark(mark);
        }
    }

    fn mark(&mut self, mark: &Mark) {
        match mark {
            Mark::Shape { outline, fill, pen } => self.shape(outline, *fill, pen.as_ref()),
            Mark::Text { line, at, color } => {
                let style = match line.style.face {
                    Face::Regular => "",
                    Face::Italic => " font-style=\"italic\"",
                    Face::Semibold => " font-weight=\"600\"",
                    Face::Bold => " font-weight=\"700\"",
                };
                let _ = write!(
                    self.body,
                    "<text x=\"{}\" y=\"{}\" font-size=\"{}\"{style}{} xml:space=\"preserve\">{}</text>",
                    pt(at.x),
                    pt(at.y),
                    pt(line.style.size),
                    paint("fill", *color),
                    escape(&line.text)
                );
            }
            Mark::Image { picture, rect, clip } => {
                let address = picture.address();
                let id = self.pictures.iter().position(|&seen| seen == address).unwrap_or_else(|| {
                    let _ = write!(
                        self.defs,
                        "<image id=\"p{}\" width=\"1\" height=\"1\" preserveAspectRatio=\"none\" xlink:href=\"data:image/jpeg;base64,{}\"/>",
                        self.pictures.len(),
                        base64(&picture.jpeg())
                    );
                    self.pictures.push(address);
                    self.pictures.len() - 1
                });
                let open = if clip == rect { String::new() } else { self.clip(*clip) };
                let _ = write!(
                    self.body,
                    "<g{open}><use xlink:href=\"#p{id}\" transform=\"translate({} {}) scale({} {})\"/></g>",
                    pt(rect.x),
                    pt(rect.y),
                    pt(rect.size.width),
                    pt(rect.size.height)
                );
            }
            Mark::Group { role, clip, turn, marks } => {
                let mut open = String::new();
                if let Some((quarters, about)) = turn {
                    let degrees = u32::from(*quarters % 4) * 90;
                    let _ = write!(open, " transform=\"rotate({degrees} {} {})\"", pt(about.x), pt(about.y));
                }
                if let Some(clip) = clip {
                    open.push_str(&self.clip(*clip));
                }
                let told = role.as_ref().map(told).unwrap_or_default();
                let _ = write!(self.body, "<g{told}{open}>");
                if let Some(Role::Figure(alt)) = role {
                    let _ = write!(self.body, "<title>{}</title>", escape(alt));
                }
                self.marks(marks);
                self.body.push_str("</g>");
            }
        }
    }

    fn clip(&mut self, rect: Rect) -> String {
        self.clips += 1;
        let _ = write!(self.defs, "<clipPath id=\"c{}\">{}/></clipPath>", self.clips, rect_open(rect));
        format!(" clip-path=\"url(#c{})\"", self.clips)
    }

    fn shape(&mut self, outline: &Outline, fill: Option<Color>, pen: Option<&Pen>) {
        match outline {
            Outline::Rect(rect) => self.body.push_str(&rect_open(*rect)),
            Outline::Line(from, to) => {
                let _ = write!(
                    self.body,
                    "<line x1=\"{}\" y1=\"{}\" x2=\"{}\" y2=\"{}\"",
                    pt(from.x),
                    pt(from.y),
                    pt(to.x),
                    pt(to.y)
                );
            }
            Outline::Path(stretches) => {
                self.body.push_str("<path d=\"");
                for stretch in stretches {
                    let at = |p: &Point| format!("{} {}", pt(p.x), pt(p.y));
                    let _ = match stretch {
                        Stretch::Move(to) => write!(self.body, "M{}", at(to)),
                        Stretch::Line(to) => write!(self.body, "L{}", at(to)),
                        Stretch::Curve(one, two, to) => write!(self.body, "C{} {} {}", at(one), at(two), at(to)),
                        Stretch::Close => write!(self.body, "Z"),
                    };
                }
                self.body.push('"');
            }
        }
        match fill {
            Some(color) => self.body.push_str(&paint("fill", color)),
            None => self.body.push_str(" fill=\"none\""),
        }
        if let Some(pen) = pen {
            let _ = write!(self.body, "{} stroke-width=\"{}\"", paint("stroke", pen.color), pt(pen.width));
            if !pen.dash.is_empty() {
                let dashes: Vec<String> = pen.dash.iter().map(|&dash| pt(dash)).collect();
                let _ = write!(self.body, " stroke-dasharray=\"{}\"", dashes.join(" "));
            }
        }
        self.body.push_str("/>");
    }
}

/// What a group is, as attributes.
fn told(role: &Role) -> String {
    let name = match role {
        Role::Heading(level) => return format!(" role=\"heading\" aria-level=\"{level}\""),
        Role::Artifact | Role::Foot => return " aria-hidden=\"true\"".to_owned(),
        Role::Paragraph => "paragraph",
        Role::List => "list",
        Role::Item => "listitem",
        // Words of its item.
        Role::Label => return String::new(),
        Role::Figure(_) => "img",
        Role::Table => "table",
        Role::Row => "row",
        Role::HeadCell => "columnheader",
        Role::Cell => "cell",
    };
    format!(" role=\"{name}\"")
}

fn rect_open(rect: Rect) -> String {
    format!(
        "<rect x=\"{}\" y=\"{}\" width=\"{}\" height=\"{}\"",
        pt(rect.x),
        pt(rect.y),
        pt(rect.size.width),
        pt(rect.size.height)
    )
}

fn paint(what: &str, color: Color) -> String {
    let [r, g, b] = color.rgb;
    let mut text = format!(" {what}=\"#{r:02x}{g:02x}{b:02x}\"");
    if color.alpha != 255 {
        let _ = write!(text, " {what}-opacity=\"{}\"", decimal(f64::from(color.alpha) / 255.0));
    }
    text
}

fn pt(length: Length) -> String {
    decimal(length.to_points())
}

/// At most four decimals, none that are zero at the end.
fn decimal(value: f64) -> String {
    let text = format!("{value:.4}");
    let text = text.trim_end_matches('0').trim_end_matches('.');
    if text == "-0" { "0".to_owned() } else { text.to_owned() }
}

pub(crate) fn escape(text: &str) -> String {
    let mut out = String::with_capacity(text.len());
    for sign in text.chars() {
        match sign {
            '&' => out.push_str("&amp;"),
            '<' => out.push_str("&lt;"),
            '>' => out.push_str("&gt;"),
            '"' => out.push_str("&quot;"),
            // XML 1.0 has no place for other control signs.
            sign if sign.is_control() => out.push(' '),
            sign => out.push(sign),
        }
    }
    out
}

/// RFC 4648 base64 with padding.
fn base64(bytes: &[u8]) -> String {
    const SIGNS: &[u8; 64] = b"ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789+/";
    let mut out = String::with_capacity(bytes.len().div_ceil(3) * 4);
    for chunk in bytes.chunks(3) {
        let word =
            chunk.iter().enumerate().fold(0_u32, |word, (place, &byte)| word | u32::from(byte) << (16 - 8 * place));
        for place in 0..4 {
            if place <= chunk.len() {
                out.push(char::from(SIGNS[(word >> (18 - 6 * place) & 63) as usize]));
            } else {
                out.push('=');
            }
        }
    }
    out
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn base64_gives_the_vectors_of_rfc_4648_section_10() {
        for (plain, coded) in [
            ("", ""),
            ("f", "Zg=="),
            ("fo", "Zm8="),
            ("foo", "Zm9v"),
            ("foob", "Zm9vYg=="),
            ("fooba", "Zm9vYmE="),
            ("foobar", "Zm9vYmFy"),
        ] {
            assert_eq!(base64(plain.as_bytes()), coded);
        }
    }

    #[test]
    fn words_of_the_maker_cannot_break_out() {
        assert_eq!(escape("a<b>&\"\u{1}"), "a&lt;b&gt;&amp;&quot; ");
    }

    #[test]
    fn decimals_are_short() {
        assert_eq!(decimal(4.0), "4");
        assert_eq!(decimal(-0.00001), "0");
        assert_eq!(decimal(0.25), "0.25");
    }
}
