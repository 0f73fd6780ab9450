//! The HTTP side: reads a request, lets planned trouble and rate limits have their say, checks it
//! against the description, carries it out, and writes it into the log.

use std::{
    sync::{Arc, Mutex, MutexGuard},
    time::{Duration, Instant},
};

use axum::{
    Router,
    body::{Body, to_bytes},
    extract::{DefaultBodyLimit, FromRequest, Multipart, Request, State},
    http::{HeaderMap, HeaderValue, StatusCode, header},
    response::{IntoResponse, Response},
    routing::any,
};
use serde_json::{Value, json};
use tokio::sync::watch;

use super::{
    errors::Refusal,
    faults::{Fate, Moment, Trouble},
    gateway,
    log::{Audience, LogEntry, SentFile},
    rates::Standing,
    routes::{self, Call},
    world::World,
};

/// The world, with a bell that rings whenever it may have changed.
#[derive(Debug)]
pub struct Shared {
    world: Mutex<World>,
    bell: watch::Sender<u64>,
}

impl Shared {
    /// A world of its own.
    pub fn new(world: World) -> Arc<Self> {
        Arc::new(Self {
            world: Mutex::new(world),
            bell: watch::Sender::new(0),
        })
    }

    /// The world, locked; rings the bell when let go is up to the caller ([`Shared::ring`]).
    pub fn world(&self) -> MutexGuard<'_, World> {
        match self.world.lock() {
            Ok(world) => world,
            Err(poisoned) => poisoned.into_inner(),
        }
    }

    /// Tells those who wait that something changed.
    pub fn ring(&self) {
        self.bell.send_modify(|count| *count += 1);
    }

    /// Hears the bell.
    pub fn listen(&self) -> watch::Receiver<u64> {
        self.bell.subscribe()
    }
}

/// The most a request may weigh before it is looked at.
const LARGEST_REQUEST: usize = 64 << 20;

/// The router of the whole server.
pub fn router(shared: Arc<Shared>) -> Router {
    Router::new()
        .route("/gateway-socket", any(gateway::connect))
        .route("/gateway-socket/", any(gateway::connect))
        .route("/files/{id}/{name}", any(serve_file))
        .fallback(serve)
        // The bound is our own, and large enough to refuse with Discord's words rather than the framework's.
        .layer(DefaultBodyLimit::disable())
        .with_state(shared)
}

async fn serve_file(
    State(shared): State<Arc<Shared>>,
    axum::extract::Path((id, _)): axum::extract::Path<(u64, String)>,
) -> Response {
    let file = shared.world().files.get(&id).cloned();
    match file {
        Some(file) => (
            [(header::CONTENT_TYPE, file.kind.clone())],
            file.bytes.clone(),
        )
            .into_response(),
        None => StatusCode::NOT_FOUND.into_response(),
    }
}

async fn serve(State(shared): State<Arc<Shared>>, request: Request) -> Response {
    let method = request.method().as_str().to_string();
    let path = request.uri().path().to_string();
    let query = request.uri().query().unwrap_or_default().to_string();
    let headers = request.headers().clone();
    let Some(path) = path
        .strip_prefix("/api/v10")
        .filter(|rest| rest.starts_with('/'))
        .map(str::to_string)
    else {
        return StatusCode::NOT_FOUND.into_response();
    };
    let agent = headers
        .get(header::USER_AGENT)
        .and_then(|value| value.to_str().ok());
    if !agent.is_some_and(|agent| agent.starts_with("DiscordBot (")) {
        // The wall before the service turns away clients that do not say who they are.
        return (StatusCode::FORBIDDEN, "error code: 1010").into_response();
    }
    let (body, files) = match read_body(request).await {
        Ok(read) => read,
        Err(message) => {
            shared
                .world()
                .violation(format!("{method} {path}: {message}"));
            return answer(
                &Refusal::new(400, 50109, "The request body contains invalid JSON."),
                None,
            );
        }
    };

    let trouble = shared.world().faults.next(&method, &path);
    match trouble {
        Some(Trouble::Status(status)) => {
            record(
                &shared,
                &method,
                &path,
                &query,
                &body,
                &files,
                status,
                &Value::Null,
                Audience::Nobody,
            );
            return (
                StatusCode::from_u16(status).unwrap_or(StatusCode::BAD_GATEWAY),
                "upstream error",
            )
                .into_response();
        }
        Some(Trouble::TooMany(after)) => {
            record(
                &shared,
                &method,
                &path,
                &query,
                &body,
                &files,
                429,
                &Value::Null,
                Audience::Nobody,
            );
            shared.world().rates.refused += 1;
            return too_many(Duration::from_secs_f64(after), false, None);
        }
        Some(Trouble::Slow(wait)) => tokio::time::sleep(wait).await,
        Some(Trouble::Held(Moment::Before)) => {
            if held(&shared).await == Fate::Dropped {
                return StatusCode::GATEWAY_TIMEOUT.into_response();
            }
        }
        Some(Trouble::LostAnswer | Trouble::DoneBut(_) | Trouble::Held(_)) | None => {}
    }

    let segments: Vec<&str> = path.trim_matches('/').split('/').collect();
    let taken = shared.world().rates.take(&method, &segments);
    let standing = match taken {
        Ok(standing) => standing,
        Err(refused) => {
            shared.world().faults.turned_away(&method, &path);
            let (after, global) = (refused.retry_after, refused.global);
            return too_many(after, global, refused.standing);
        }
    };
    let call = Call {
        method: &method,
        segments: &segments,
        query: &query,
        body: &body,
        files: &files,
    };
    let outcome = {
        let mut world = shared.world();
        check_against_description(&mut world, &method, &path, &query, &body);
        if !routes::needs_no_token(&segments) && !authorised(&world, &headers) {
            Err(Refusal::unauthorized())
        } else {
            routes::carry_out(&mut world, &call)
        }
    };
    let (status, value, audience) = match &outcome {
        Ok(done) => (done.status, done.value.clone(), done.audience.clone()),
        Err(refusal) => (refusal.status, refusal.body(), Audience::Nobody),
    };
    record(
        &shared, &method, &path, &query, &body, &files, status, &value, audience,
    );
    match trouble {
        Some(Trouble::LostAnswer) => {
            // The connection stays open without an answer until the client gives up.
            tokio::time::sleep(Duration::from_secs(600)).await;
            return StatusCode::GATEWAY_TIMEOUT.into_response();
        }
        Some(Trouble::DoneBut(status)) => {
            return StatusCode::from_u16(status)
                .unwrap_or(StatusCode::BAD_GATEWAY)
                .into_response();
        }
        Some(Trouble::Held(Moment::Unanswered)) => match held(&shared).await {
            Fate::Dropped => return StatusCode::GATEWAY_TIMEOUT.into_response(),
            Fate::Waits | Fate::Goes => {}
        },
        Some(Trouble::Held(Moment::Answered)) => {
            shared.world().faults.reach();
            shared.ring();
        }
        _ => {}
    }
    match outcome {
        Ok(done) if done.status == 204 => {
            let mut response = StatusCode::NO_CONTENT.into_response();
            stand(response.headers_mut(), standing.as_ref());
            response
        }
        Ok(done) => {
            let status = StatusCode::from_u16(done.status).unwrap_or(StatusCode::OK);
            let mut response = (status, axum::Json(done.value)).into_response();
            stand(response.headers_mut(), standing.as_ref());
            response
        }
        Err(refusal) => answer(&refusal, standing.as_ref()),
    }
}

/// Holds a request until a test has decided about it.
async fn held(shared: &Shared) -> Fate {
    let mut bell = shared.listen();
    shared.world().faults.reach();
    shared.ring();
    loop {
        let fate = shared.world().faults.fate();
        if fate != Fate::Waits || bell.changed().await.is_err() {
            return fate;
        }
    }
}

/// Reads the body: JSON, or a form with `payload_json` and files.
async fn read_body(request: Request) -> Result<(Value, Vec<SentFile>), String> {
    let kind = request
        .headers()
        .get(header::CONTENT_TYPE)
        .and_then(|value| value.to_str().ok())
        .unwrap_or_default()
        .to_string();
    if kind.starts_with("multipart/form-data") {
        let (parts, body) = request.into_parts();
        let bytes = to_bytes(body, LARGEST_REQUEST)
            .await
            .map_err(|e| e.to_string())?;
        let request = Request::from_parts(parts, Body::from(bytes));
        let mut form = Multipart::from_request(request, &())
            .await
            .map_err(|e| e.to_string())?;
        let (mut payload, mut files) = (Value::Null, Vec::new());
        while let Some(field) = form.next_field().await.map_err(|e| e.to_string())? {
            let name = field.name().unwrap_or_default().to_string();
            if name == "payload_json" {
                let text = field.text().await.map_err(|e| e.to_string())?;
                payload = serde_json::from_str(&text).map_err(|e| e.to_string())?;
            } else {
                files.push(SentFile {
                    field: name,
                    name: field.file_name().unwrap_or_default().to_string(),
                    kind: field.content_type().unwrap_or_default().to_string(),
                    bytes: field.bytes().await.map_err(|e| e.to_string())?.to_vec(),
                });
            }
        }
        return Ok((payload, files));
    }
    let bytes = to_bytes(request.into_body(), LARGEST_REQUEST)
        .await
        .map_err(|e| e.to_string())?;
    if bytes.is_empty() {
        return Ok((Value::Null, Vec::new()));
    }
    if !kind.starts_with("application/json") {
        return Err(format!("content type \"{kind}\""));
    }
    serde_json::from_slice(&bytes)
        .map(|value| (value, Vec::new()))
        .map_err(|e| e.to_string())
}

fn check_against_description(
    world: &mut World,
    method: &str,
    path: &str,
    query: &str,
    body: &Value,
) {
    let Some(openapi) = world.openapi.clone() else {
        return;
    };
    let body = (!body.is_null()).then_some(body);
    for fault in openapi.check(method, path, query, body) {
        world.violation(format!("the OpenAPI description refuses {fault}"));
    }
}

fn authorised(world: &World, headers: &HeaderMap) -> bool {
    headers
        .get(header::AUTHORIZATION)
        .and_then(|value| value.to_str().ok())
        .is_some_and(|value| value == format!("Bot {}", world.token))
}

#[allow(clippy::too_many_arguments)]
fn record(
    shared: &Shared,
    method: &str,
    path: &str,
    query: &str,
    body: &Value,
    files: &[SentFile],
    status: u16,
    answer: &Value,
    audience: Audience,
) {
    shared.world().log.push(LogEntry {
        at: Instant::now(),
        method: method.into(),
        path: path.into(),
        query: query.into(),
        body: body.clone(),
        files: files.to_vec(),
        status,
        answer: answer.clone(),
        audience,
    });
    shared.ring();
}

fn answer(refusal: &Refusal, standing: Option<&Standing>) -> Response {
    let status = StatusCode::from_u16(refusal.status).unwrap_or(StatusCode::BAD_REQUEST);
    let mut response = (status, axum::Json(refusal.body())).into_response();
    stand(response.headers_mut(), standing);
    response
}

/// Writes the rate-limit headers.
fn stand(headers: &mut HeaderMap, standing: Option<&Standing>) {
    let Some(standing) = standing else { return };
    let reset = super::ids::now_ms() as f64 / 1000.0 + standing.reset_after.as_secs_f64();
    for (name, value) in [
        ("x-ratelimit-limit", standing.limit.to_string()),
        ("x-ratelimit-remaining", standing.remaining.to_string()),
        ("x-ratelimit-reset", format!("{reset:.3}")),
        (
            "x-ratelimit-reset-after",
            format!("{:.3}", standing.reset_after.as_secs_f64()),
        ),
        ("x-ratelimit-bucket", standing.bucket.clone()),
    ] {
        if let Ok(value) = HeaderValue::from_str(&value) {
            headers.insert(name, value);
        }
    }
}

fn too_many(after: Duration, global: bool, standing: Option<Standing>) -> Response {
    let seconds = after.as_secs_f64();
    let body = json!({
        "message": "You are being rate limited.", "retry_after": seconds, "global": global,
    });
    let mut response = (StatusCode::TOO_MANY_REQUESTS, axum::Json(body)).into_response();
    let headers = response.headers_mut();
    stand(headers, standing.as_ref());
    for (name, value) in [
        ("retry-after", format!("{:.0}", seconds.ceil())),
        (
            "x-ratelimit-scope",
            if global {
                "global".into()
            } else {
                "user".to_string()
            },
        ),
    ] {
        if let Ok(value) = HeaderValue::from_str(&value) {
            headers.insert(name, value);
        }
    }
    if global {
        headers.insert("x-ratelimit-global", HeaderValue::from_static("true"));
    }
    response
}
