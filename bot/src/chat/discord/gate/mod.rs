//! The gate: every REST request of the Discord client passes through here, on its way to Discord or to
//! whatever server stands in for it.
//!
//! The client library keeps rate limits itself, but only towards discord.com: pointed elsewhere it wants
//! its limiter off. So that what is tested is what is shipped, the limiter is always off, and this one,
//! which listens on a free port of the loopback, does the work in both cases: limits by route as the
//! answers' headers state them, the limit over all, waiting out a 429, trying again after a 5xx or a
//! broken line where that cannot do a thing twice, and a time limit on each attempt.
//!
//! It knows HTTP and Discord's published rules, and nothing of chess, desk or store. The token is passed
//! on and never written anywhere.

mod limits;

use std::{net::SocketAddr, sync::Arc, time::Duration};

use axum::{
    Router,
    body::{Body, Bytes, to_bytes},
    extract::{Request, State},
    http::{HeaderMap, StatusCode, header},
    response::{IntoResponse, Response},
};

use self::limits::{Limits, Route};
use crate::chat::Shutdown;

/// The most one request may weigh: Discord's own bound on uploads, with room for the rest.
const LARGEST: usize = 32 << 20;
/// How long one attempt may take.
const ATTEMPT: Duration = Duration::from_secs(30);
/// How long one attempt to answer an interaction may take; the whole must fit into three seconds.
const QUICK_ATTEMPT: Duration = Duration::from_millis(1200);
/// Pauses between attempts after trouble at the other end.
const PAUSES: [Duration; 4] = [
    Duration::from_millis(300),
    Duration::from_secs(1),
    Duration::from_secs(3),
    Duration::from_secs(8),
];
/// The same for the answer to an interaction.
const QUICK_PAUSES: [Duration; 2] = [Duration::from_millis(150), Duration::from_millis(400)];
/// How often a 429 is waited out for one request before it is given up.
const MOST_REFUSALS: usize = 20;

/// A gate with its port, to be served.
pub struct Gate {
    /// Where the client must send its requests.
    pub address: SocketAddr,
    listener: tokio::net::TcpListener,
    router: Router,
}

struct Keeper {
    http: reqwest::Client,
    target: String,
    authorization: String,
    limits: Limits,
}

impl Gate {
    /// Opens a gate to `target` (such as `https://discord.com`) for one bot's token.
    ///
    /// # Errors
    /// When no port of the loopback can be had, or the HTTP client cannot be made.
    pub async fn open(target: &str, token: &str) -> std::io::Result<Self> {
        let http = reqwest::Client::builder()
            .connect_timeout(Duration::from_secs(10))
            .redirect(reqwest::redirect::Policy::none())
            .build()
            .map_err(std::io::Error::other)?;
        let listener = tokio::net::TcpListener::bind("127.0.0.1:0").await?;
        let address = listener.local_addr()?;
        let keeper = Arc::new(Keeper {
            http,
            target: target.trim_end_matches('/').to_owned(),
            authorization: format!("Bot {token}"),
            limits: Limits::default(),
        });
        let router = Router::new().fallback(pass).with_state(keeper);
        Ok(Self {
            address,
            listener,
            router,
        })
    }

    /// Passes requests on until `shutdown`, and then those under way.
    ///
    /// # Errors
    /// When its port is lost.
    pub async fn serve(self, mut shutdown: Shutdown) -> std::io::Result<()> {
        axum::serve(self.listener, self.router)
            .with_graceful_shutdown(async move { shutdown.wait().await })
            .await
    }
}

/// What is sent on, held so that it can be sent again.
struct Passage {
    method: reqwest::Method,
    url: String,
    headers: HeaderMap,
    body: Bytes,
    route: Route,
    /// Whether doing it twice does what doing it once does.
    repeatable: bool,
}

async fn pass(State(keeper): State<Arc<Keeper>>, request: Request) -> Response {
    // Whoever else is on this machine has no business here.
    let known = request
        .headers()
        .get(header::AUTHORIZATION)
        .is_some_and(|value| value.as_bytes() == keeper.authorization.as_bytes());
    if !known {
        return StatusCode::FORBIDDEN.into_response();
    }
    let (parts, body) = request.into_parts();
    let Ok(body) = to_bytes(body, LARGEST).await else {
        return StatusCode::PAYLOAD_TOO_LARGE.into_response();
    };
    let path = parts.uri.path_and_query().map_or("/", |path| path.as_str());
    let mut headers = HeaderMap::new();
    for name in [
        header::AUTHORIZATION,
        header::CONTENT_TYPE,
        header::USER_AGENT,
    ] {
        if let Some(value) = parts.headers.get(&name) {
            headers.insert(name, value.clone());
        }
    }
    let route = Route::of(parts.method.as_str(), parts.uri.path());
    let repeatable = route.repeatable(parts.method.as_str(), &body);
    let passage = Passage {
        method: parts.method,
        url: format!("{}{path}", keeper.target),
        headers,
        body,
        route,
        repeatable,
    };
    keeper.carry(passage).await
}

impl Keeper {
    /// Sends a request on until it is answered, refused for good, or out of attempts.
    async fn carry(&self, passage: Passage) -> Response {
        let quick = passage.route.answers_interaction();
        let pauses: &[Duration] = if quick { &QUICK_PAUSES } else { &PAUSES };
        let mut troubles = pauses.iter();
        let mut refusals = 0;
        // Whether an earlier attempt may have been carried out without our hearing of it.
        let mut maybe_done = false;
        loop {
            let turn = self.limits.enter(&passage.route).await;
            let sent = self
                .http
                .request(passage.method.clone(), &passage.url)
                .headers(passage.headers.clone())
                .body(passage.body.clone())
                .timeout(if quick { QUICK_ATTEMPT } else { ATTEMPT })
                .send()
                .await;
            let answer = match sent {
                Ok(answer) => {
                    let (status, headers) = (answer.status(), answer.headers().clone());
                    answer.bytes().await.map(|body| (status, headers, body))
                }
                Err(error) => Err(error),
            };
            let (status, headers, body) = match answer {
                Ok(answer) => answer,
                Err(error) => {
                    turn.leave(None);
                    // A request that never reached the other end can always be made again.
                    let retry = error.is_connect() || passage.repeatable;
                    maybe_done |= !error.is_connect();
                    let what = if error.is_timeout() {
                        "no answer in time"
                    } else {
                        "the line broke"
                    };
                    match troubles.next().filter(|_| retry) {
                        Some(pause) => {
                            tracing::debug!(route = %passage.route, "{what}; trying again");
                            tokio::time::sleep(*pause).await;
                            continue;
                        }
                        None => {
                            tracing::warn!(route = %passage.route, "Discord cannot be reached: {what}");
                            return no_answer(what);
                        }
                    }
                }
            };
            turn.leave(Some(&headers));
            self.limits.count(status.as_u16());
            if status == StatusCode::TOO_MANY_REQUESTS && refusals < MOST_REFUSALS {
                refusals += 1;
                let wait = limits::retry_after(&headers, &body);
                tracing::debug!(route = %passage.route, ?wait, "Discord asks for patience");
                self.limits.hold(&passage.route, &headers, wait);
                tokio::time::sleep(wait).await;
                continue;
            }
            if status.is_server_error() && passage.repeatable {
                maybe_done = true;
                if let Some(pause) = troubles.next() {
                    tracing::debug!(route = %passage.route, %status, "trouble at Discord; trying again");
                    tokio::time::sleep(*pause).await;
                    continue;
                }
            }
            if quick && maybe_done && limits::error_code(&body) == Some(limits::ALREADY_ANSWERED) {
                // The attempt whose answer was lost has done it.
                return StatusCode::NO_CONTENT.into_response();
            }
            return respond(status, &headers, body);
        }
    }
}

/// In the form of Discord's own errors, so that the client can read it.
fn no_answer(what: &str) -> Response {
    let body = serde_json::json!({ "code": 0, "message": what });
    (StatusCode::GATEWAY_TIMEOUT, axum::Json(body)).into_response()
}

fn respond(status: StatusCode, headers: &HeaderMap, body: Bytes) -> Response {
    let mut response = Response::new(Body::from(body));
    *response.status_mut() = status;
    if let Some(kind) = headers.get(header::CONTENT_TYPE) {
        response
            .headers_mut()
            .insert(header::CONTENT_TYPE, kind.clone());
    }
    response
}
