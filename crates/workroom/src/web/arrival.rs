//! Connections on which the head of a request comes too slowly, or nothing comes at all.
//!
//! The library that reads requests waits for the end of a head as long as it takes, and the limit on a request's body
//! begins only after it. So a connection is listened to on its way: a head that is begun and does not end in time is
//! told why, and one that says nothing is closed. Left out: what a request says; only the empty line after its head is
//! looked for (RFC 9112, section 2.1).

use std::io;
use std::net::SocketAddr;
use std::pin::Pin;
use std::task::{Context, Poll, ready};
use std::time::Duration;

use axum::serve::Listener;
use tokio::io::{AsyncRead, AsyncWrite, ReadBuf};
use tokio::net::{TcpListener, TcpStream};
use tokio::time::{Instant, Sleep, sleep};

/// How long each may take.
#[derive(Debug, Clone, Copy)]
pub(super) struct Patience {
    /// The head of a request, from its first byte.
    pub(super) head: Duration,
    /// Nothing at all: before a first request, and after an answer.
    pub(super) silence: Duration,
}

/// Hands out connections that are listened to.
pub(super) struct Door {
    pub(super) listener: TcpListener,
    pub(super) patience: Patience,
    /// What is sent to who was too slow: an answer, head and all.
    pub(super) too_slow: &'static [u8],
}

impl Listener for Door {
    type Io = Heard;
    type Addr = SocketAddr;

    async fn accept(&mut self) -> (Heard, SocketAddr) {
        let (stream, address) = Listener::accept(&mut self.listener).await;
        let alarm = Box::pin(sleep(self.patience.silence));
        let patience = self.patience;
        (Heard { stream, part: Part::Silence, alarm, patience, too_slow: self.too_slow }, address)
    }

    fn local_addr(&self) -> io::Result<SocketAddr> {
        self.listener.local_addr()
    }
}

/// Where a connection is in its talk.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
enum Part {
    /// Nothing of the next request is there.
    Silence,
    /// A head is coming.
    Head(Line),
    /// The head is there: a body may be coming, or an answer is being made. Others keep that time.
    Rest,
    /// It was too slow, and so many bytes of the answer are sent.
    Told(usize),
}

/// The line of a head that is coming.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
enum Line {
    /// Before the first: empty lines do not count there.
    First,
    /// Something is on it.
    Begun,
    /// Nothing is on it yet: if it stays so, it ends the head.
    Empty,
}

/// The part after one more byte.
fn after(part: Part, byte: u8) -> Part {
    match (part, byte) {
        (Part::Silence, b'\r' | b'\n') => Part::Head(Line::First),
        (Part::Silence, _) => Part::Head(Line::Begun),
        (Part::Head(Line::Begun), b'\n') => Part::Head(Line::Empty),
        (Part::Head(Line::Empty), b'\n') => Part::Rest,
        (Part::Head(line), b'\r') => Part::Head(line),
        (Part::Head(Line::First), b'\n') => Part::Head(Line::First),
        (Part::Head(_), _) => Part::Head(Line::Begun),
        (part @ (Part::Rest | Part::Told(_)), _) => part,
    }
}

/// A connection that is listened to.
pub(super) struct Heard {
    stream: TcpStream,
    part: Part,
    alarm: Pin<Box<Sleep>>,
    patience: Patience,
    too_slow: &'static [u8],
}

impl Heard {
    fn wake_in(&mut self, time: Duration) {
        self.alarm.as_mut().reset(Instant::now() + time);
    }

    fn hear(&mut self, bytes: &[u8]) {
        if self.part == Part::Silence && !bytes.is_empty() {
            self.wake_in(self.patience.head);
        }
        self.part = bytes.iter().fold(self.part, |part, byte| after(part, *byte));
    }

    /// An answer goes out: what comes next is another request.
    fn said(&mut self, bytes: &[u8]) {
        // "Go on" is no answer: the body is still to come.
        if !bytes.starts_with(b"HTTP/1.1 100") {
            self.part = Part::Silence;
            self.wake_in(self.patience.silence);
        }
    }

    /// Sends what is left of the answer to who was too slow; whoever does not take it is left.
    fn tell(&mut self, cx: &mut Context<'_>, mut sent: usize) -> Poll<()> {
        while let Some(left) = self.too_slow.get(sent..).filter(|left| !left.is_empty()) {
            match ready!(Pin::new(&mut self.stream).poll_write(cx, left)) {
                Ok(some) if some > 0 => sent += some,
                _ => break,
            }
            self.part = Part::Told(sent);
        }
        Poll::Ready(())
    }
}

impl AsyncRead for Heard {
    fn poll_read(self: Pin<&mut Self>, cx: &mut Context<'_>, buffer: &mut ReadBuf<'_>) -> Poll<io::Result<()>> {
        let heard = self.get_mut();
        if !matches!(heard.part, Part::Told(_)) {
            let before = buffer.filled().len();
            if let Poll::Ready(read) = Pin::new(&mut heard.stream).poll_read(cx, buffer) {
                heard.hear(&buffer.filled()[before..]);
                return Poll::Ready(read);
            }
            if heard.part == Part::Rest {
                return Poll::Pending;
            }
            ready!(heard.alarm.as_mut().poll(cx));
            if heard.part == Part::Silence {
                // Nothing read, and no error: the end of the connection.
                return Poll::Ready(Ok(()));
            }
            heard.part = Part::Told(0);
        }
        if let Part::Told(sent) = heard.part {
            ready!(heard.tell(cx, sent));
        }
        Poll::Ready(Ok(()))
    }
}

impl AsyncWrite for Heard {
    fn poll_write(self: Pin<&mut Self>, cx: &mut Context<'_>, bytes: &[u8]) -> Poll<io::Result<usize>> {
        let heard = self.get_mut();
        heard.said(bytes);
        Pin::new(&mut heard.stream).poll_write(cx, bytes)
    }

    fn poll_write_vectored(
        self: Pin<&mut Self>,
        cx: &mut Context<'_>,
        all: &[io::IoSlice<'_>],
    ) -> Poll<io::Result<usize>> {
        let heard = self.get_mut();
        heard.said(all.iter().find(|bytes| !bytes.is_empty()).map_or(&[], |bytes| &**bytes));
        Pin::new(&mut heard.stream).poll_write_vectored(cx, all)
    }

    fn is_write_vectored(&self) -> bool {
        self.stream.is_write_vectored()
    }

    fn poll_flush(self: Pin<&mut Self>, cx: &mut Context<'_>) -> Poll<io::Result<()>> {
        Pin::new(&mut self.get_mut().stream).poll_flush(cx)
    }

    fn poll_shutdown(self: Pin<&mut Self>, cx: &mut Context<'_>) -> Poll<io::Result<()>> {
        Pin::new(&mut self.get_mut().stream).poll_shutdown(cx)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn heard(text: &str) -> Part {
        text.bytes().fold(Part::Silence, after)
    }

    #[test]
    fn a_head_ends_with_an_empty_line_and_not_before() {
        for whole in
            ["GET / HTTP/1.1\r\nHost: a\r\n\r\n", "GET / HTTP/1.1\n\n", "\r\n\r\nGET / HTTP/1.1\r\nA: b\r\n\r\n"]
        {
            assert_eq!(heard(whole), Part::Rest, "{whole:?}");
            assert_eq!(heard(&format!("{whole}name=\n\nx")), Part::Rest, "{whole:?} with a body");
            for cut in 1..whole.len() {
                assert!(matches!(heard(&whole[..cut]), Part::Head(_)), "{:?}", &whole[..cut]);
            }
        }
        assert_eq!(heard(""), Part::Silence);
        assert_eq!(heard("\r\n\r\n\r\n"), Part::Head(Line::First), "empty lines before a request are no request");
    }
}
