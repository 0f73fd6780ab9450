//! A club room run by the built binary, on a store of its own; it can be killed and started again.

use std::{
    io::{BufRead, BufReader},
    net::TcpListener,
    path::PathBuf,
    process::{Child, Command, Stdio},
};

use tempfile::TempDir;

use crate::browser::Browser;

/// A running room.
pub struct RunningRoom {
    folder: TempDir,
    port: u16,
    process: Option<Child>,
    /// The link for members, as the program printed it.
    pub member_link: String,
    /// The coach's link.
    pub coach_link: String,
}

impl RunningRoom {
    /// Starts `serve` on a new store, with an invented group whose posts go out half a day from now, so
    /// that nothing goes out by itself during a test.
    ///
    /// # Panics
    /// When it does not start.
    pub fn start() -> Self {
        Self::start_for("Lantern Lane chess club")
    }

    /// The same for a group of this name.
    ///
    /// # Panics
    /// When it does not start.
    pub fn start_for(group: &str) -> Self {
        let folder = tempfile::tempdir().expect("a folder");
        let post_time = (chrono::Utc::now() + chrono::Duration::hours(12)).format("%H:%M");
        let settings =
            format!("[group]\nname = \"{group}\"\nzone = \"UTC\"\npost_time = \"{post_time}\"\n");
        std::fs::write(folder.path().join("sealed-move.toml"), settings).expect("written");
        let mut room = Self {
            folder,
            port: free_port(),
            process: None,
            member_link: String::new(),
            coach_link: String::new(),
        };
        room.launch();
        room
    }

    fn launch(&mut self) {
        let mut process = crate::command()
            .arg("serve")
            .arg("--store")
            .arg(self.store())
            .arg("--config")
            .arg(self.folder.path().join("sealed-move.toml"))
            .arg("--port")
            .arg(self.port.to_string())
            .stdin(Stdio::null())
            .stdout(Stdio::piped())
            .spawn()
            .expect("the binary starts");
        let out = BufReader::new(process.stdout.take().expect("piped"));
        let mut links = out.lines().map_while(Result::ok).filter_map(|line| {
            let at = line.find("http://")?;
            Some(line[at..].trim().to_owned())
        });
        // Members first.
        self.member_link = links.next().expect("both links are printed");
        self.coach_link = links.next().expect("both links are printed");
        // Whatever else is printed is read, so that the pipe never fills.
        std::thread::spawn(move || links.for_each(drop));
        self.process = Some(process);
    }

    /// The store's file.
    pub fn store(&self) -> PathBuf {
        self.folder.path().join("club.sqlite")
    }

    /// Where the room listens.
    pub fn origin(&self) -> String {
        format!("http://127.0.0.1:{}", self.port)
    }

    /// The secret in a link.
    pub fn secret(link: &str) -> &str {
        link.rsplit('/').next().unwrap_or_default()
    }

    /// Kills the process in the middle of whatever it does (SIGKILL).
    pub fn kill(&mut self) {
        if let Some(mut process) = self.process.take() {
            process.kill().expect("killed");
            process.wait().expect("gone");
        }
    }

    /// Asks the program to stop (SIGTERM), and waits until it has.
    ///
    /// # Panics
    /// When it does not run, or does not end in good order.
    pub fn stop(&mut self) {
        let mut process = self.process.take().expect("it runs");
        let asked = Command::new("kill")
            .arg("-TERM")
            .arg(process.id().to_string())
            .status();
        assert!(asked.is_ok_and(|status| status.success()), "asked");
        assert!(process.wait().is_ok_and(|status| status.success()), "ended");
    }

    /// Starts the program again, on the same store and port.
    pub fn start_again(&mut self) {
        let links = (self.member_link.clone(), self.coach_link.clone());
        self.launch();
        assert_eq!(
            links,
            (self.member_link.clone(), self.coach_link.clone()),
            "the links stay what they were"
        );
    }

    /// Brings a browser in as a member with this name.
    pub async fn member(&self, browser: &Browser, name: &str) {
        browser.goto(&self.member_link).await;
        browser.find("#name").await;
        browser.type_into("#name", name).await;
        browser.click("#enter button").await;
        browser.find("#text").await;
        browser.until_says("#group", "").await;
    }

    /// Brings a browser in as the coach.
    pub async fn coach(&self, browser: &Browser) {
        self.coach_called(browser, "Rosalind").await;
    }

    /// Brings a browser in as a coach with this name; one who has given it before is not asked again.
    pub async fn coach_called(&self, browser: &Browser, name: &str) {
        browser.goto(&self.coach_link).await;
        browser.find("#week-title, #name").await;
        let asked = "return document.querySelector('#name')?.checkVisibility() ?? false";
        if browser.run(asked, vec![]).await == true {
            browser.type_into("#name", name).await;
            browser.click("#enter-name button").await;
        }
        browser.find("#week-title").await;
    }
}

impl Drop for RunningRoom {
    fn drop(&mut self) {
        self.kill();
    }
}

/// A port nobody listens on just now.
fn free_port() -> u16 {
    TcpListener::bind("127.0.0.1:0")
        .and_then(|listener| listener.local_addr())
        .expect("a free port")
        .port()
}
