//! The program itself, serving a store of a test's own.
#![allow(dead_code, reason = "not every file of tests uses every part")]

use std::io::{BufRead, BufReader, Read, Write};
use std::net::TcpStream;
use std::path::Path;
use std::process::{Child, Command, Stdio};
use std::time::Duration;

/// A served workroom, killed when it goes.
pub(crate) struct Served {
    pub(crate) child: Child,
    pub(crate) port: u16,
}

impl Served {
    /// Over a file of projects.
    pub(crate) fn over(data: &Path) -> Served {
        let mut command = Command::new(env!("CARGO_BIN_EXE_octavo"));
        command.args(["--no-open", "--port", "0", "--data"]).arg(data);
        Served::by(&mut command)
    }

    /// Begun by a shell: `script` has the program as `$0`, the file as `$1`, and ends in `exec "$0" --no-open …`.
    pub(crate) fn through(shell: &[&str], script: &str, data: &Path, more: &str) -> Served {
        let (first, rest) = shell.split_first().unwrap();
        let mut command = Command::new(first);
        command.args(rest).args(["-c", script, env!("CARGO_BIN_EXE_octavo")]).arg(data).arg(more);
        Served::by(&mut command)
    }

    fn by(command: &mut Command) -> Served {
        let mut child = command.stdout(Stdio::piped()).spawn().unwrap();
        let mut line = String::new();
        BufReader::new(child.stdout.take().unwrap()).read_line(&mut line).unwrap();
        let port = line.split("127.0.0.1:").nth(1).unwrap().split('/').next().unwrap().parse().unwrap();
        Served { child, port }
    }

    /// How to talk to it, also from another thread.
    pub(crate) fn line(&self) -> Line {
        Line { port: self.port }
    }

    /// `SIGKILL`: it has no time for anything.
    pub(crate) fn kill(&mut self) {
        self.child.kill().unwrap();
        self.child.wait().unwrap();
    }
}

impl Drop for Served {
    fn drop(&mut self) {
        let _ = self.child.kill();
        let _ = self.child.wait();
    }
}

/// One port of this computer.
#[derive(Clone, Copy)]
pub(crate) struct Line {
    pub(crate) port: u16,
}

impl Line {
    pub(crate) fn connect(self) -> Option<TcpStream> {
        let stream = TcpStream::connect(("127.0.0.1", self.port)).ok()?;
        stream.set_read_timeout(Some(Duration::from_secs(30))).ok()?;
        Some(stream)
    }

    /// Sends bytes as they are; what comes back until the other side closes. Empty if nobody is there.
    pub(crate) fn send(self, head: &str, rest: &[u8]) -> String {
        let Some(mut stream) = self.connect() else { return String::new() };
        // The other side may have heard enough before everything is said.
        let _ = stream.write_all(head.as_bytes()).and_then(|()| stream.write_all(rest));
        let mut back = Vec::new();
        let _ = stream.read_to_end(&mut back);
        String::from_utf8_lossy(&back).into_owned()
    }

    pub(crate) fn head(self, method: &str, path: &str, more: &str) -> String {
        format!("{method} {path} HTTP/1.1\r\nHost: 127.0.0.1:{}\r\nConnection: close\r\n{more}\r\n", self.port)
    }

    /// The headers of a form from one of our own pages, so many bytes long.
    pub(crate) fn form(self, length: usize) -> String {
        format!(
            "Origin: http://127.0.0.1:{}\r\nContent-Type: application/x-www-form-urlencoded\r\nContent-Length: {length}\r\n",
            self.port
        )
    }

    pub(crate) fn get(self, path: &str) -> (u16, String) {
        let back = self.send(&self.head("GET", path, ""), b"");
        (status(&back), back)
    }

    /// A page of a project, once its plan is there.
    pub(crate) fn page(self, path: &str) -> (u16, String) {
        let shown = std::iter::repeat_with(|| self.get(path));
        shown.take(600).find(|(_, page)| !page.contains("data-enhance=\"progress\"")).unwrap()
    }

    /// Sends a form; the status is 0 if no whole answer came.
    pub(crate) fn post(self, path: &str, fields: &[(&str, &str)]) -> (u16, String) {
        let body = encoded(fields);
        let back = self.send(&self.head("POST", path, &self.form(body.len())), body.as_bytes());
        (status(&back), back)
    }

    /// Sends a form with a file; the status is 0 if no whole answer came.
    pub(crate) fn upload(self, path: &str, fields: &[(&str, &str)], file: &[u8]) -> (u16, String) {
        let field = |(name, value): &(&str, &str)| {
            format!("--b\r\nContent-Disposition: form-data; name=\"{name}\"\r\n\r\n{value}\r\n")
        };
        let fields: String = fields.iter().map(field).collect();
        let named = "--b\r\nContent-Disposition: form-data; name=\"file\"; filename=\"a.jpg\"\r\n\r\n";
        let body = [fields.as_bytes(), named.as_bytes(), file, b"\r\n--b--\r\n"].concat();
        let form = self.form(body.len());
        let form = form.replace("application/x-www-form-urlencoded", "multipart/form-data; boundary=b");
        let back = self.send(&self.head("POST", path, &form), &body);
        (status(&back), back)
    }

    /// The revision that a page of a project was made of.
    pub(crate) fn seen(self, path: &str) -> String {
        let (_, page) = self.page(path);
        page.split("name=\"seen\" value=\"").nth(1).unwrap().split('"').next().unwrap().to_owned()
    }
}

/// The status of an answer whose head came whole; 0 otherwise.
pub(crate) fn status(back: &str) -> u16 {
    if !back.contains("\r\n\r\n") {
        return 0;
    }
    back.strip_prefix("HTTP/1.1 ").and_then(|rest| rest.get(..3)).and_then(|number| number.parse().ok()).unwrap_or(0)
}

/// The fields of a form as its body.
pub(crate) fn encoded(fields: &[(&str, &str)]) -> String {
    let one = |text: &str| -> String {
        text.bytes()
            .map(
                |byte| if byte.is_ascii_alphanumeric() { char::from(byte).to_string() } else { format!("%{byte:02X}") },
            )
            .collect()
    };
    fields.iter().map(|(key, value)| format!("{}={}", one(key), one(value))).collect::<Vec<_>>().join("&")
}
