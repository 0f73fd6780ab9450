//! A real Chromium, driven over WebDriver. Each [`Browser`] has a profile of its own, so that two
//! members in one test are two people.
//!
//! Chromium and its driver must be installed; `tests/run` does that.

use std::{
    io::{BufRead, BufReader},
    process::{Child, Command, Stdio},
    time::{Duration, Instant},
};

use fantoccini::{
    Client, ClientBuilder, Locator,
    actions::{InputSource, KeyAction, KeyActions, MOUSE_BUTTON_LEFT, MouseActions, PointerAction},
    elements::Element,
    error::{CmdError, ErrorStatus},
    wd::WebDriverCompatibleCommand,
};
use hyper_util::client::legacy::connect::HttpConnector;
use serde_json::{Value, json};

/// How long a page may take to show what is waited for. Long, because the machine may be busy; nothing
/// is measured by it.
pub const PATIENCE: Duration = Duration::from_secs(60);

/// The driver's process; several browsers can be started from one.
pub struct Driver {
    process: Child,
    port: u16,
}

impl Driver {
    /// Starts the driver on a free port.
    ///
    /// # Panics
    /// When it is not installed or does not start.
    pub fn start() -> Self {
        // It looks for a port by one protocol and then wants it by both, so another may have taken it.
        (0..5)
            .find_map(|_| Self::start_once())
            .expect("chromedriver says which port it listens on")
    }

    /// The same, unless the driver ends without having found a port.
    fn start_once() -> Option<Self> {
        let mut process = Command::new("chromedriver")
            .arg("--port=0")
            .stdout(Stdio::piped())
            .stderr(Stdio::null())
            .spawn()
            .unwrap_or_else(|error| {
                panic!(
                    "chromedriver cannot be started ({error}); start the tests by tests/run, which installs it"
                )
            });
        let out = BufReader::new(process.stdout.take().expect("piped"));
        let port = out.lines().map_while(Result::ok).find_map(|line| {
            let (_, port) = line.split_once("started successfully on port ")?;
            port.trim_end_matches('.').parse().ok()
        });
        let Some(port) = port else {
            process.wait().expect("the driver has ended");
            return None;
        };
        Some(Self { process, port })
    }

    /// Opens a browser with a profile of its own, as wide as a desk's screen, whose reader wants English.
    ///
    /// # Panics
    /// When Chromium is not installed or does not start.
    pub async fn open(&self) -> Browser {
        self.open_in("en-GB,en").await
    }

    /// The same for a reader of other languages: their tags, the best one first.
    ///
    /// # Panics
    /// When Chromium is not installed or does not start.
    pub async fn open_in(&self, languages: &str) -> Browser {
        let arguments = [
            "--headless",
            "--no-sandbox",
            "--disable-gpu",
            "--disable-quic",
            "--disable-dev-shm-usage",
            "--no-first-run",
            "--disable-background-networking",
            "--disable-component-update",
            "--disable-sync",
            "--hide-scrollbars",
            "--window-size=1280,900",
            "--lang=en-GB",
        ];
        let capabilities = json!({
            "goog:chromeOptions": {
                "args": arguments,
                "prefs": { "intl.accept_languages": languages },
            },
            "goog:loggingPrefs": { "browser": "ALL" },
        });
        let Value::Object(capabilities) = capabilities else {
            unreachable!("an object was written")
        };
        let client = ClientBuilder::new(HttpConnector::new())
            .capabilities(capabilities)
            .connect(&format!("http://127.0.0.1:{}", self.port))
            .await
            .unwrap_or_else(|error| {
                panic!(
                    "Chromium cannot be started ({error}); start the tests by tests/run, which installs it"
                )
            });
        Browser { client }
    }
}

impl Drop for Driver {
    fn drop(&mut self) {
        // The driver's end takes its browsers along. It is our own child, so failing to end it means
        // that it has ended.
        let _ = self.process.kill();
        let _ = self.process.wait();
    }
}

/// A browser.
pub struct Browser {
    client: Client,
}

impl Browser {
    /// The WebDriver client, for what is not covered here.
    pub fn client(&self) -> &Client {
        &self.client
    }

    /// Goes to an address.
    pub async fn goto(&self, address: &str) {
        self.client.goto(address).await.expect("the page opens");
    }

    /// Where the browser is.
    pub async fn address(&self) -> String {
        self.client
            .current_url()
            .await
            .expect("an address")
            .to_string()
    }

    /// Runs a script and returns what it returns.
    pub async fn run(&self, script: &str, arguments: Vec<Value>) -> Value {
        self.client
            .execute(script, arguments)
            .await
            .unwrap_or_else(|error| panic!("{script}: {error}"))
    }

    /// Waits until a script returns something true, and returns it.
    ///
    /// # Panics
    /// When it does not in [`PATIENCE`]; the page's text is shown then.
    pub async fn until(&self, what: &str, script: &str, arguments: Vec<Value>) -> Value {
        let deadline = Instant::now() + PATIENCE;
        loop {
            // A page that is being left cannot run scripts; the next one can.
            let seen = self
                .client
                .execute(script, arguments.clone())
                .await
                .unwrap_or(Value::Null);
            let holds = match &seen {
                Value::Null => false,
                Value::Bool(held) => *held,
                Value::String(text) => !text.is_empty(),
                _ => true,
            };
            if holds {
                return seen;
            }
            if Instant::now() > deadline {
                panic!(
                    "waited in vain for {what}; the page says:\n{}",
                    self.text("body").await
                );
            }
            tokio::time::sleep(Duration::from_millis(60)).await;
        }
    }

    /// Waits until the visible text of `selector` contains `wanted`.
    pub async fn until_says(&self, selector: &str, wanted: &str) {
        self.until(
            &format!("\"{wanted}\" in {selector}"),
            "return [...document.querySelectorAll(arguments[0])].some((e) => e.innerText.includes(arguments[1]))",
            vec![json!(selector), json!(wanted)],
        )
        .await;
    }

    /// Waits for an element that is displayed, and returns it.
    pub async fn find(&self, selector: &str) -> Element {
        self.until(
            selector,
            "return [...document.querySelectorAll(arguments[0])].some((e) => e.checkVisibility())",
            vec![json!(selector)],
        )
        .await;
        self.client
            .find(Locator::Css(selector))
            .await
            .unwrap_or_else(|error| panic!("{selector}: {error}"))
    }

    /// Clicks the first element `selector` finds, once it is there and not covered.
    pub async fn click(&self, selector: &str) {
        let deadline = Instant::now() + PATIENCE;
        loop {
            let clicked = self.find(selector).await.click().await;
            match clicked {
                Ok(()) => return,
                Err(error) if passing(&error) && Instant::now() < deadline => {
                    tokio::time::sleep(Duration::from_millis(100)).await;
                }
                Err(error) => panic!("{selector}: {error}"),
            }
        }
    }

    /// Clicks the button or link with this text (or accessible name).
    pub async fn press(&self, label: &str) {
        let script = "const e = [...document.querySelectorAll('button, a, summary')].find((e) => \
            e.checkVisibility() && !e.disabled && e.ariaDisabled !== 'true' && (e.getAttribute('aria-label') ?? e.innerText).trim() === arguments[0]); \
            if (!e) return false; e.scrollIntoView({ block: 'center' }); e.click(); return true;";
        self.until(&format!("the button {label}"), script, vec![json!(label)])
            .await;
    }

    /// Clicks the first element `selector` finds, wherever on the page it is.
    pub async fn press_first(&self, selector: &str) {
        let script = "const e = document.querySelector(arguments[0]); if (!e?.checkVisibility()) return false; \
            e.scrollIntoView({ block: 'center' }); e.click(); return true;";
        self.until(selector, script, vec![json!(selector)]).await;
    }

    /// Loads the page again.
    pub async fn refresh(&self) {
        self.client.refresh().await.expect("the page loads again");
    }

    /// Drags what `from` finds to the top of what `to` finds, with the mouse.
    pub async fn drag(&self, from: &str, to: &str) {
        let place = "const e = document.querySelector(arguments[0]); e.scrollIntoView({ block: 'center' }); return true";
        self.run(place, vec![json!(from)]).await;
        let (x, y) = self.middle(from).await;
        let (_, top, ..) = self.rectangle(to).await;
        let mouse = MouseActions::new("mouse".into())
            .then(move_to(x, y))
            .then(PointerAction::Down {
                button: MOUSE_BUTTON_LEFT,
            })
            .then(move_to(x, y - 12.0))
            .then(move_to(x, f64::midpoint(y, top)))
            .then(move_to(x, top + 4.0))
            .then(PointerAction::Up {
                button: MOUSE_BUTTON_LEFT,
            });
        self.client
            .perform_actions(mouse)
            .await
            .unwrap_or_else(|error| panic!("dragging {from}: {error}"));
    }

    async fn rectangle(&self, selector: &str) -> (f64, f64, f64, f64) {
        let script = "const r = document.querySelector(arguments[0]).getBoundingClientRect(); return [r.x, r.y, r.width, r.height]";
        let seen = self.run(script, vec![json!(selector)]).await;
        let side = |at: usize| seen[at].as_f64().expect("a number");
        (side(0), side(1), side(2), side(3))
    }

    async fn middle(&self, selector: &str) -> (f64, f64) {
        let (x, y, width, height) = self.rectangle(selector).await;
        (x + width / 2.0, y + height / 2.0)
    }

    /// Presses one key on the keyboard, whatever has the focus.
    pub async fn key(&self, key: char) {
        let keys = KeyActions::new("keyboard".into())
            .then(KeyAction::Down { value: key })
            .then(KeyAction::Up { value: key });
        self.client
            .perform_actions(keys)
            .await
            .unwrap_or_else(|error| panic!("the key {key:?}: {error}"));
    }

    /// Types a text by the keyboard, whatever has the focus.
    pub async fn keys(&self, text: &str) {
        for key in text.chars() {
            self.key(key).await;
        }
    }

    /// Types into an element; into its successor where news from the room renews it just then.
    pub async fn type_into(&self, selector: &str, text: &str) {
        let deadline = Instant::now() + PATIENCE;
        loop {
            match self.find(selector).await.send_keys(text).await {
                Ok(()) => return,
                Err(error) if passing(&error) && Instant::now() < deadline => {
                    tokio::time::sleep(Duration::from_millis(100)).await;
                }
                Err(error) => panic!("{selector}: {error}"),
            }
        }
    }

    /// The visible text of the first element `selector` finds; empty when there is none.
    pub async fn text(&self, selector: &str) -> String {
        self.run(
            "return document.querySelector(arguments[0])?.innerText ?? ''",
            vec![json!(selector)],
        )
        .await
        .as_str()
        .unwrap_or_default()
        .to_owned()
    }

    /// How many elements `selector` finds.
    pub async fn count(&self, selector: &str) -> usize {
        self.run(
            "return document.querySelectorAll(arguments[0]).length",
            vec![json!(selector)],
        )
        .await
        .as_u64()
        .and_then(|n| usize::try_from(n).ok())
        .expect("a number")
    }

    /// Drops a file on the element `selector` finds, as from the file manager.
    pub async fn drop_file(&self, selector: &str, name: &str, content: &str) {
        let script = "const data = new DataTransfer(); \
            data.items.add(new File([arguments[2]], arguments[1])); \
            const target = document.querySelector(arguments[0]); \
            for (const type of ['dragover', 'drop']) \
              target.dispatchEvent(new DragEvent(type, { dataTransfer: data, bubbles: true, cancelable: true }));";
        self.run(script, vec![json!(selector), json!(name), json!(content)])
            .await;
    }

    /// Lays the page out for a screen of this size, with the colours the reader prefers.
    pub async fn screen(&self, width: u32, height: u32, colours: Colours) {
        self.developer(
            "Emulation.setDeviceMetricsOverride",
            json!({ "width": width, "height": height, "deviceScaleFactor": 1, "mobile": false }),
        )
        .await;
        let scheme = match colours {
            Colours::Light => "light",
            Colours::Dark => "dark",
        };
        let features = json!([{ "name": "prefers-color-scheme", "value": scheme }]);
        self.developer(
            "Emulation.setEmulatedMedia",
            json!({ "features": features }),
        )
        .await;
    }

    /// A command of the browser's developer protocol.
    async fn developer(&self, command: &'static str, parameters: Value) {
        let sent = self
            .client
            .issue_cmd(Developer {
                command,
                parameters,
            })
            .await;
        sent.unwrap_or_else(|error| panic!("{command}: {error}"));
    }

    /// Closes the browser.
    pub async fn close(self) {
        // One that is gone already is closed.
        let _ = self.client.close().await;
    }
}

/// Which colours the reader prefers.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[allow(missing_docs)]
pub enum Colours {
    Light,
    Dark,
}

fn move_to(x: f64, y: f64) -> PointerAction {
    PointerAction::MoveTo {
        duration: Some(Duration::from_millis(40)),
        x,
        y,
    }
}

fn passing(error: &CmdError) -> bool {
    matches!(error, CmdError::Standard(wd) if matches!(
        wd.error,
        ErrorStatus::ElementClickIntercepted | ErrorStatus::StaleElementReference | ErrorStatus::ElementNotInteractable
    ))
}

#[derive(Debug)]
struct Developer {
    command: &'static str,
    parameters: Value,
}

impl WebDriverCompatibleCommand for Developer {
    fn endpoint(
        &self,
        base: &url::Url,
        session: Option<&str>,
    ) -> Result<url::Url, url::ParseError> {
        base.join(&format!(
            "session/{}/goog/cdp/execute",
            session.unwrap_or_default()
        ))
    }

    fn method_and_body(&self, _: &url::Url) -> (http::Method, Option<String>) {
        let body = json!({ "cmd": self.command, "params": self.parameters });
        (http::Method::POST, Some(body.to_string()))
    }
}
